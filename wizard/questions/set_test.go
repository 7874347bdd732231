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

func TestSet(t *testing.T) {
	tests := []struct {
		key, text string
		sys       quantity.System
		want      any
	}{
		{"box.volume", "3.2 cu ft", quantity.Metric, quantity.Litre(3.2 * 28.316846592)},
		{"box.volume", "90", quantity.Metric, quantity.Litre(90)},
		{"box.foam", "none", quantity.US, quantity.Metre(0)},
		{"power.solar", "2*50 W", quantity.US, quantity.Watt(100)},
		{"power.solar", "none", quantity.US, quantity.Watt(0)},
		{"money.budget", "no limit", quantity.US, quantity.Money(0)},
		{"cruising.crew", "2 people", quantity.US, 2.0},
		{"cruising.ground", "Cyclades", quantity.US, "aegean-cyclades"},
		{"cruising.ground", "Maine coast, USA", quantity.US, "maine-coast"},
		{"box.lid_seal", "gapped", quantity.US, heat.PoorSeal},
		{"power.chemistry", "AGM", quantity.US, "lead"},
		{"food.medicine", "No.", quantity.US, quantity.No},
		{"box.faces.aft.neighbour", "engine room", quantity.US, heat.Engine},
		{"units_considered.larger.plate", "holding plate", quantity.US, "eutectic"},
		{"money.years", "10 years", quantity.US, quantity.Year(10)},
		{"box.opens_per_day", "12 times a day", quantity.US, 12.0},
		{"boat.name", "  Unknown   Waters ", quantity.US, "Unknown Waters"},
	}
	for _, tt := range tests {
		b := economics.Boat{Units: tt.sys}
		err := Set(&b, tt.key, tt.text)
		row, _ := Find(tt.key)
		got := row.Field(&b).Get()
		if err != nil || !same(got, tt.want) || b.Known[tt.key] != quantity.Told {
			t.Errorf("Set(%s, %q) = %v, %v; want %v", tt.key, tt.text, got, err, tt.want)
		}
	}
}

// same compares values that may have passed through a unit's factor.
func same(a, b any) bool {
	if va, vb := reflect.ValueOf(a), reflect.ValueOf(b); va.CanFloat() && vb.CanFloat() {
		return math.Abs(va.Float()-vb.Float()) <= 1e-9*math.Abs(vb.Float())
	}
	return fmt.Sprint(a) == fmt.Sprint(b)
}

func TestRefusalsOfSet(t *testing.T) {
	tests := []struct {
		key, text string
		sys       quantity.System
		says      string
	}{
		{"box.volum", "90 L", quantity.US, "did you mean box.volume?"},
		{"volume", "90 L", quantity.US, "did you mean box.volume?"},
		{"box.volume", "90 kg", quantity.US, "a mass"},
		{"box.volume", "4.4 L", quantity.Metric, "did you mean 4.4 cu ft?"},
		{"box.volume", "90", quantity.US, "did you mean 90 L?"},
		{"food.target", "80 °C", quantity.Metric, "did you mean 8 °C?"},
		{"power.battery", "12000 Ah", quantity.US, "did you mean 120 Ah?"},
		{"power.battery", "12,000 Ah", quantity.US, "write 12000"},
		{"ice.price", "110 /kg", quantity.Metric, "did you mean $1.10/kg?"},
		{"ice.carry_loss", "1.5", quantity.US, "did you mean 1.5 %?"},
		{"ice.price", "$4", quantity.US, "did you mean $4 a bag?"},
		{"ice.price", "8", quantity.Metric, "Give 8 a bag, or 8/kg"},
		{"cruising.trip_nights", "30 to 2", quantity.US, "a number"},
		{"box.volume", "90 to 100 kg", quantity.US, "a volume"},
		{"box.foam", "2", quantity.Metric, "did you mean 2 in?"}, // or 2 cm
		{"box.lid", "tpo", quantity.US, "did you mean top?"},
		{"cruising.ground", "aegaen-cyclades", quantity.US, "did you mean aegean-cyclades?"},
		{"cruising.crew", "NaN", quantity.US, "a number"},
		{"box.volume", "-90 L", quantity.US, "Give 0.36 to 42 cu ft"},
		{"box.foam", "50 in", quantity.US, "did you mean 50 mm?"},
		{"power.volts", "12 A", quantity.US, "is a current"},
		{"ice.unit_size", "10 L", quantity.US, "is a volume"},
		{"ice.price", "-1 /lb", quantity.US, "is too little. Give $0.01/lb"},
		{"box.volume", "90 L 5", quantity.US, "two figures"},
		{"box.volume", "1e309 L", quantity.US, "write the number out"},
		{"cruising.crew", "-2", quantity.US, "Give 0.5 to 16 people"},
		{"money.years", "2.5", quantity.US, "a whole number"},
		{"money.budget", "€500", quantity.US, "another currency"},
		{"cruising.nights", "often", quantity.US, "nights by month"},
		{"cruising.nights", "june: 32", quantity.US, "June has no 32 nights. Give at most 30"},
		{"currency", "12", quantity.US, "sign or code"},
		{"boat.name", strings.Repeat("x", 61), quantity.US, "at most 60"},
		{"units", "furlongs", quantity.US, "one of: us, metric"},
		{"evidence.ice_history", "10 kg", quantity.US, "keys such as ice"},
		{"evidence.ice_history", "ice: 10 kg; hours: 36", quantity.US, "month is missing"},
		{"evidence.ice_history", "ice: 10 kg; hours: 36; mnth: july", quantity.US, "did you mean month?"},
		{"evidence.jug_tests", "water: 10 kg; hours: 12; start: 9 C; end: 4 C; outside: 20 C", quantity.US, "did not warm up"},
		{"cruising.air_min", "july 20 C", quantity.US, "coldest and the warmest"},
	}
	for _, tt := range tests {
		b := economics.Boat{Units: tt.sys}
		err := Set(&b, tt.key, tt.text)
		if err == nil {
			row, _ := Find(tt.key)
			t.Errorf("Set(%s, %q) is accepted as %v", tt.key, tt.text, row.Print(&b))
			continue
		}
		f, ok := err.(Fault)
		if !ok || f.Key != tt.key || !strings.Contains(f.Error()+"; "+f.Hint, tt.says) {
			t.Errorf("Set(%s, %q): %v; hint %q; want %q", tt.key, tt.text, err, f.Hint, tt.says)
		}
		if len(b.Known) > 0 {
			t.Errorf("a refused answer leaves %v", b.Known)
		}
	}
}

func TestRecords(t *testing.T) {
	var b economics.Boat
	if err := Set(&b, "evidence.ice_history", "ice: 10 kg; hours: 1 1/2 days; month: july | ice 20 lb; hours 20; month aug; in_use no"); err != nil {
		t.Fatal(err)
	}
	want := []heat.IceHistory{{Ice: 10, Hours: 36, Month: 7, InUse: true}, {Ice: 20 * quantity.Pound, Hours: 20, Month: 8}}
	if fmt.Sprintf("%.6v", b.Evidence.IceHistory) != fmt.Sprintf("%.6v", want) || b.Known["evidence.ice_history"] != quantity.Measured {
		t.Errorf("%+v, known %q", b.Evidence.IceHistory, b.Known["evidence.ice_history"])
	}
	given, ok := Given(&b, "evidence.ice_history")
	if list := given.List; !ok || len(list) != 2 || list[0].Pairs[0].Name.Text != "ice" || list[0].Pairs[0].Value.Text != "22 lb" || list[1].Pairs[3].Value.Text != "no" {
		t.Errorf("given back %+v", given)
	}
}

func TestDoubt(t *testing.T) {
	var b economics.Boat
	row, _ := Find("box.volume")
	if err := Set(&b, "box.volume", "600 L"); err != nil {
		t.Fatal(err)
	}
	if s := row.Doubt(&b); !strings.Contains(s, "unusual") {
		t.Errorf("doubt about 600 L: %q", s)
	}
	if err := Set(&b, "box.volume", "100 L"); err != nil {
		t.Fatal(err)
	}
	if s := row.Doubt(&b); s != "" {
		t.Errorf("doubt about 100 L: %q", s)
	}
}

// What people write is read, and what had to be guessed can be said back.
func TestReadAsPeopleWrite(t *testing.T) {
	for _, tt := range []struct {
		key, text string
		sys       quantity.System
		want      string // as printed
		guessed   bool
	}{
		{"cruising.nights", "60", quantity.US, "60 nights (Jun 15, Jul 15, Aug 15, Sep 15)", false},
		{"cruising.nights", "400 nights", quantity.US, "all year", false},
		{"cruising.trip_nights", "2 to 30", quantity.US, "7.7 nights", true},
		{"cruising.crew", "two of us", quantity.US, "2 people", false},
		{"cruising.crew", "2-4", quantity.US, "2.8 people", true},
		{"cruising.shore_power_share", "90", quantity.US, "90 %", false},
		{"ice.found_at_stops", "most", quantity.US, "80 %", false},
		{"ice.found_at_stops", "nearly everywhere", quantity.US, "95 %", false},
		{"ice.found_at_stops", "50 to 90 %", quantity.US, "67 %", true},
		{"box.volume", "about 3.9 cubic feet", quantity.US, "3.9 cu ft", false},
		{"box.volume", "~90 litres or so", quantity.Metric, "90 L", false},
		{"box.volume", "80-100 L", quantity.Metric, "89 L", true},
		{"box.foam", "25", quantity.US, "1 in", true},
		{"box.foam", "1 1/2 in", quantity.US, "1 1/2 in", false},
		{"box.inside", "45 x 40 x 50", quantity.Metric, "450 x 400 x 500 mm", true},
		{"food.target", "40", quantity.Metric, "4.5 °C", true},
		{"food.target", "4", quantity.US, "39 °F", true},
		{"food.must_be_cold_share", "the first days", quantity.US, "20 %", false},
		{"food.must_be_cold_share", "40", quantity.US, "40 %", false},
		{"food.drinks_a_day", "none", quantity.US, "none", false},
		{"food.freeze", "frozen meals", quantity.US, "a few meals kept frozen", false},
		{"ice.price", "$4 a bag", quantity.US, "$0.40/lb", false},
		{"ice.price", "3 per bag", quantity.Metric, "$1.50/kg", false},
		{"ice.price", "$4/lb", quantity.US, "$4.00/lb", false},
		{"money.cold_day_worth", "$3 to $6", quantity.US, "$3 to $6", false},
		{"money.cold_day_worth", "between 3 and 6", quantity.US, "$3 to $6", false},
		{"money.budget", "about $2,500", quantity.US, "$2500", false},
		{"money.budget", "$1,000 to $2,000", quantity.US, "$1400", true},
		{"box.reachable", "yes", quantity.US, "from inside, which takes room", false},
		{"power.battery", "2 x 100", quantity.US, "200 Ah", false},
		{"power.solar", "two 50 W panels", quantity.US, "100 W", false},
		{"power.solar", "a 100 W panel", quantity.US, "100 W", false},
		{"power.solar", "no", quantity.US, "none", false},
		{"money.budget", "1.5k", quantity.US, "$1500", false},
		{"ice.price", "3 dollars a bag", quantity.US, "$0.30/lb", false},
		{"ice.carry_limit", "two bags", quantity.US, "20 lb", false},
		{"cruising.crew", "2 adults and 2 kids", quantity.US, "3 people", false},
		{"cruising.crew", "just me", quantity.US, "1 person", false},
		{"cruising.shop_every_days", "once a week", quantity.US, "7 days", false},
		{"cruising.shop_every_days", "every other day", quantity.US, "2 days", false},
		{"box.reachable", "none", quantity.US, "from neither side", false}, // not "which takes none"
		{"box.reachable", "a locker", quantity.US, "from a locker behind, which takes none", false},
	} {
		b := economics.Boat{Units: tt.sys}
		if err := Set(&b, tt.key, tt.text); err != nil {
			t.Errorf("%s: %v", tt.text, err)
			continue
		}
		row, _ := Find(tt.key)
		if got := row.Print(&b); strings.ReplaceAll(got, ",", "") != strings.ReplaceAll(tt.want, ",", "") {
			t.Errorf("%s %q: taken as %q, want %q", tt.key, tt.text, got, tt.want)
		}
		if a, _ := Understand(&economics.Boat{Units: tt.sys}, tt.key, Word(tt.text)); a.Guessed != tt.guessed {
			t.Errorf("%s %q: guessed %v", tt.key, tt.text, a.Guessed)
		}
	}
	b := economics.Boat{Units: quantity.US, Ice: economics.Ice{UnitSize: 8 * quantity.Pound}}
	if err := Set(&b, "ice.price", "$4 a bag"); err != nil || b.Ice.Price != quantity.MoneyPerKg(0.5/float64(quantity.Pound)) {
		t.Errorf("a bag of eight pounds: %v, %v", b.Ice.Price, err)
	}
}
