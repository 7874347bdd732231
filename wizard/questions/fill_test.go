package questions

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func TestFillListsWhatWasAssumed(t *testing.T) {
	var b economics.Boat
	for _, kv := range [][2]string{{"box.foam", "2 in"}, {"box.state", "don't know"}, {"ice.price", "?"}, {"safety.co_alarm", "unknown"}, {"box.faces.top.foam", "none"}} {
		if err := Set(&b, kv[0], kv[1]); err != nil {
			t.Fatal(err)
		}
	}
	book := economics.Book{Currency: "$", Prices: []economics.PriceLine{{ID: "ice_cubes", Label: "Bagged cube ice", Price: quantity.Range{Low: 1, Typical: 2, High: 3}}}}
	Fill(&b, book)
	listed := map[string]economics.Assumption{}
	for _, a := range b.Assumptions {
		listed[a.Key] = a
	}
	if _, ok := listed["box.foam"]; ok {
		t.Error("a told answer is listed as assumed")
	}
	if a := listed["box.state"]; b.Known["box.state"] != quantity.Unsure || a.Value != "damp" || !strings.Contains(a.Why, "you do not know") {
		t.Errorf("an unsure answer is kept as %q, listed as %+v", b.Known["box.state"], a)
	}
	if a := listed["ice.price"]; b.Ice.Price != 2 || a.Why == "" || a.Value != "$0.91/lb" || !strings.Contains(a.Why, "price book") {
		t.Errorf("ice price %v, listed as %+v", b.Ice.Price, a)
	}
	if b.Safety.COAlarm != quantity.Unknown || b.Known["safety.co_alarm"] != quantity.Unsure {
		t.Error("don't know on a safety question")
	}
	if b.Known["box.drain"] != quantity.Assumed || listed["box.drain"].Label != "Drain" {
		t.Error("an unanswered row is not marked assumed")
	}
	for _, side := range heat.Sides {
		f, ok := b.Box.Faces[side]
		foam := quantity.Metre(0.0508)
		if side == heat.Top {
			foam = 0
		}
		neighbour := heat.Cabin
		if side == heat.Outboard {
			neighbour = heat.Sea
		}
		if !ok || math.Abs(float64(f.Foam-foam)) > 1e-12 || f.State != heat.Damp || f.Neighbour != neighbour || f.Material != heat.OldPolyurethane || f.Reach != economics.FromInside {
			t.Errorf("%s: %+v", side, f)
		}
	}
	once := b
	first := leaves(b)
	firstKnown := fmt.Sprint(b.Known)
	Fill(&b, book)
	if !reflect.DeepEqual(first, leaves(b)) || !reflect.DeepEqual(once.Assumptions, b.Assumptions) || firstKnown != fmt.Sprint(b.Known) {
		t.Error("filling twice changes the boat")
	}
}

// The order of answers makes no difference: what is told of one face stands
// against what is told or taken for the whole box, and measures stand against
// a volume.
func TestTheFinerAnswerStands(t *testing.T) {
	orders := map[string][][2]string{
		"the whole after the part": {{"box.faces.top.foam", "1 in"}, {"box.foam", "3 in"}, {"box.inside", "20 x 20 x 20 in"}, {"box.volume", "120 L"}},
		"the part after the whole": {{"box.volume", "120 L"}, {"box.inside", "20 x 20 x 20 in"}, {"box.foam", "3 in"}, {"box.faces.top.foam", "1 in"}},
		"only the part":            {{"box.faces.top.foam", "1 in"}, {"box.inside", "20 x 20 x 20 in"}},
	}
	for name, answers := range orders {
		var b economics.Boat
		for _, kv := range answers {
			if err := Set(&b, kv[0], kv[1]); err != nil {
				t.Fatal(err)
			}
		}
		Fill(&b, economics.Book{})
		rest := 3 * 0.0254
		if name == "only the part" {
			rest = 0.038 // the default
		}
		if !same(float64(b.Box.Faces[heat.Top].Foam), 0.0254) || !same(float64(b.Box.Faces[heat.Bottom].Foam), rest) {
			t.Errorf("%s: faces %v", name, b.Box.Faces)
		}
		if !same(float64(b.Box.Volume), 8000*0.016387064) || b.Known["box.volume"] != quantity.Told {
			t.Errorf("%s: volume %v, known %q", name, b.Box.Volume, b.Known["box.volume"])
		}
	}
}

func TestDefaultsFollowOtherAnswers(t *testing.T) {
	tests := []struct {
		answers    [][2]string
		key, value string
	}{
		{[][2]string{{"units_considered.small.price", "$2000"}}, "units_considered.small.upkeep", "$40"}, // 2 in 100
		{[][2]string{{"units", "metric"}, {"ice.unit_size", "30 kg"}}, "ice.carry_limit", "30 kg"},
		{nil, "ice.unit_size", "10 lb"},
		{[][2]string{{"units", "metric"}}, "ice.unit_size", "2 kg"},
		{[][2]string{{"power.volts", "24 V"}}, "power.battery", "50 Ah"},
		{[][2]string{{"power.solar", "350 W"}}, "power.max_panel", "350 W"},
		{[][2]string{{"cruising.nights", "live aboard"}}, "cruising.trip_nights", "365 nights"},
		{[][2]string{{"cruising.nights", "two weeks' holiday"}}, "cruising.trip_nights", "7 nights"},
		{[][2]string{{"cruising.nights", "60 nights in summer"}}, "cruising.trip_nights", "7 nights"},
		{[][2]string{{"cruising.nights", "weekends"}}, "cruising.trip_nights", "2 nights"},
		{[][2]string{{"cruising.nights", "jan 8, feb 8, mar 8, apr 8, may 8, jun 13, jul 8, aug 8, sep 8, oct 8, nov 8, dec 8"}}, "cruising.trip_nights", "2 nights"},
		{[][2]string{{"cruising.nights", "july 14"}}, "cruising.trip_nights", "7 nights"}, // more than its weekends
		{[][2]string{{"cruising.trip_nights", "2"}}, "cruising.shop_every_days", "2 days"},
		{[][2]string{{"cruising.ground", "fiji-west"}}, "cruising.nights", "32 nights (Jan 8, Feb 8, Mar 8, Dec 8)"},
		{[][2]string{{"money.fitted_by", "yard"}}, "units_considered.larger.fitting", "$1,500"},
		{[][2]string{{"units_considered.small.form", "free_standing"}}, "units_considered.small.fitting", "$0"},
		{[][2]string{{"units_considered.small.form", "free_standing"}}, "units_considered.small.life_years", "8 years"},
		{[][2]string{{"box.inside", "10 x 10 x 30 in"}}, "box.lid_opening", "10 x 10 in"},
	}
	for _, tt := range tests {
		var b economics.Boat
		for _, kv := range tt.answers {
			if err := Set(&b, kv[0], kv[1]); err != nil {
				t.Fatal(err)
			}
		}
		Fill(&b, economics.Book{})
		row, _ := Find(tt.key)
		if got := row.Print(&b); got != tt.value {
			t.Errorf("%v: %s is taken as %s, want %s", tt.answers, tt.key, got, tt.value)
		}
	}
}

// A figure from a price book in another currency says so.
func TestPricesInAnotherCurrency(t *testing.T) {
	book := economics.Book{Currency: "$", Prices: []economics.PriceLine{{ID: "small_unit", Label: "Small unit", Price: quantity.Exactly(900)}}}
	for currency, says := range map[string]bool{"$": false, "€": true} {
		var b economics.Boat
		if err := Set(&b, "currency", currency); err != nil {
			t.Fatal(err)
		}
		Fill(&b, book)
		for _, a := range b.Assumptions {
			if a.Key == "units_considered.small.price" && (a.Value != currency+"900" || strings.Contains(a.Why, "a figure in $") != says) {
				t.Errorf("in %s: %+v", currency, a)
			}
		}
		if b.Small.Price != 900 {
			t.Errorf("price %v", b.Small.Price)
		}
	}
}
func TestCheckOfTheWholeBoat(t *testing.T) {
	tests := []struct {
		answers [][2]string
		key     string // of the fault; "" for none
	}{
		{[][2]string{{"cruising.nights", "june 31"}}, "cruising.nights"},
		{[][2]string{{"cruising.nights", "june 30, feb 29"}}, ""},
		{[][2]string{{"cruising.nights", "june 6"}, {"cruising.trip_nights", "7"}}, "cruising.trip_nights"},
		{[][2]string{{"box.volume", "90 L"}, {"box.inside", "20 x 20 x 20 in"}}, "box.volume"},
		{[][2]string{{"box.volume", "130 L"}, {"box.inside", "20 x 20 x 20 in"}}, ""},
		{[][2]string{{"cruising.ground", "own"}}, "cruising.latitude"},
		{[][2]string{{"cruising.ground", "own"}, {"cruising.latitude", "40 N"}, {"cruising.air_min", "jan 5 C, jul 20 C"}, {"cruising.air_max", "jan 12 C, jul 28 C"}}, ""},
		{[][2]string{{"cruising.ground", "own"}, {"cruising.latitude", "40 N"}, {"cruising.air_min", "jan 5 C, jul 20 C"}, {"cruising.air_max", "jan 12 C, jul 18 C"}}, "cruising.air_min"},
		{[][2]string{{"ice.carry_limit", "5 lb"}, {"ice.unit_size", "10 lb"}}, "ice.carry_limit"},
		{[][2]string{{"power.solar", "200"}, {"power.max_panel", "100"}}, "power.max_panel"},
		{[][2]string{{"box.inside", "12 x 12 x 12 in"}, {"box.lid_opening", "12 x 30 in"}}, "box.lid_opening"},
		{[][2]string{{"units_considered.small.form", "built_in"}, {"units_considered.small.chest_volume", "40 L"}}, "units_considered.small.chest_volume"},
		{[][2]string{{"units_considered.small.rated_box", "100 L"}}, "units_considered.small.rated_box"},
		{[][2]string{{"units_considered.small.rated_box", "100 L"}, {"units_considered.small.rated_amps", "0.4 A"}}, ""},
	}
	for _, tt := range tests {
		var b economics.Boat
		for _, kv := range tt.answers {
			if err := Set(&b, kv[0], kv[1]); err != nil {
				t.Fatal(err)
			}
		}
		faults := Check(b)
		switch {
		case tt.key == "" && len(faults) > 0:
			t.Errorf("%v: %v", tt.answers, faults)
		case tt.key != "" && (len(faults) == 0 || faults[0].Key != tt.key):
			t.Errorf("%v: faults %v, want one at %s", tt.answers, faults, tt.key)
		}
	}
}
