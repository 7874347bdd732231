package questions

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// leaves lists every answer field of a boat by its path, with a printed value.
func leaves(b economics.Boat) map[string]string {
	out := map[string]string{}
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		switch {
		case v.Type() == reflect.TypeFor[quantity.Dimensions](), v.Kind() == reflect.Array, v.Kind() == reflect.Slice,
			v.Type() == reflect.TypeFor[map[int]quantity.Celsius]():
			out[path] = sprint(v)
		case v.Kind() == reflect.Struct:
			for i := range v.NumField() {
				walk(path+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case v.Kind() == reflect.Map:
			for _, side := range heat.Sides {
				f := v.MapIndex(reflect.ValueOf(side))
				if !f.IsValid() {
					f = reflect.ValueOf(economics.Face{})
				}
				walk(path+"."+string(side), f)
			}
		default:
			out[path] = sprint(v)
		}
	}
	b.Known, b.Assumptions = nil, nil
	t := reflect.ValueOf(b)
	for i := range t.NumField() {
		if name := t.Type().Field(i).Name; name != "Known" && name != "Assumptions" {
			walk(name, t.Field(i))
		}
	}
	return out
}

func sprint(v reflect.Value) string {
	if v.Kind() == reflect.Map || v.Kind() == reflect.Slice {
		if v.Len() == 0 {
			return ""
		}
	}
	return strings.TrimSpace(fmt.Sprint(v.Interface()))
}

// another gives a value of a field that differs from its zero.
func another(v any) any {
	switch v.(type) {
	case quantity.Dimensions:
		return quantity.Dimensions{Length: 1, Width: 2, Height: 3}
	case [12]float64:
		return [12]float64{1}
	case [12]quantity.Celsius:
		return [12]quantity.Celsius{1}
	case map[int]quantity.Celsius:
		return map[int]quantity.Celsius{1: 1}
	case bool:
		return true
	case []heat.IceTest:
		return []heat.IceTest{{Hours: 1}}
	case []heat.JugTest:
		return []heat.JugTest{{Hours: 1}}
	case []heat.IceHistory:
		return []heat.IceHistory{{Hours: 1}}
	}
	if reflect.ValueOf(v).Kind() == reflect.String {
		return "other"
	}
	return 7.0
}

// Every field of a Boat is reached by one row, and every row reaches one
// field; the rows for the whole box reach the six faces at once.
func TestEveryFieldHasOneRow(t *testing.T) {
	reached := map[string][]string{}
	for _, row := range All() {
		var b economics.Boat
		before := leaves(b)
		slot := row.Field(&b)
		slot.Put(another(slot.Get()))
		var changed []string
		for path, v := range leaves(b) {
			if v != before[path] {
				changed = append(changed, path)
			}
		}
		want := 1
		if item, ok := strings.CutPrefix(row.Key, "box."); ok && strings.Contains("foam material state reachable", item) {
			want = 6
		}
		if len(changed) != want {
			t.Errorf("%s changes %v, want %d fields", row.Key, changed, want)
		}
		if want == 1 && len(changed) == 1 {
			reached[changed[0]] = append(reached[changed[0]], row.Key)
		}
	}
	for path := range leaves(economics.Boat{}) {
		if len(reached[path]) != 1 {
			t.Errorf("field %s is reached by %v, want one row", path, reached[path])
		}
	}
}

func TestKeysAreUnique(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range All() {
		if seen[row.Key] {
			t.Errorf("%s stands twice", row.Key)
		}
		seen[row.Key] = true
	}
}

func TestWords(t *testing.T) {
	typical := regexp.MustCompile(`^Typical: .+`)
	essentials, words := 0, 0
	for _, row := range All() {
		if !typical.MatchString(row.Help) || !strings.HasSuffix(row.Help, ".") {
			t.Errorf("%s: help %q does not begin with a typical value and end a sentence", row.Key, row.Help)
		}
		if !strings.HasSuffix(row.Ask, "?") || len(strings.Fields(row.Ask)) > 22 {
			t.Errorf("%s: question %q", row.Key, row.Ask)
		}
		if row.Label == "" || row.Group == "" || row.Default == nil || row.Field == nil {
			t.Errorf("%s lacks a part", row.Key)
		}
		if (row.Kind == Choice) != (len(row.Options) > 0) {
			t.Errorf("%s: kind %q with %d options", row.Key, row.Kind, len(row.Options))
		}
		if _, plain := ways[row.Kind]; !plain && !row.Kind.Structured() {
			t.Errorf("%s: kind %q cannot be read", row.Key, row.Kind)
		}
		if row.Essential {
			essentials++
			words += len(strings.Fields(row.Ask))
		}
	}
	if essentials != 12 || words > 200 {
		t.Errorf("%d essential questions of %d words, want 12 of at most 200", essentials, words)
	}
}

// An empty boat filled with defaults passes its own checks, and each default
// printed for its owner is an answer that is accepted.
func TestDefaultsPassTheirChecks(t *testing.T) {
	starts := map[string][][2]string{
		"nothing told":    nil,
		"metric":          {{"units", "metric"}, {"currency", "EUR"}},
		"live aboard":     {{"cruising.nights", "live aboard"}, {"cruising.ground", "windward-islands"}},
		"chests, by yard": {{"units_considered.small.form", "free_standing"}, {"units_considered.larger.form", "free_standing"}, {"money.fitted_by", "yard"}},
		"no nights":       {{"cruising.nights", "june: 0"}},
		"24 volts":        {{"power.volts", "24"}},
		"inside measured": {{"box.inside", "12 x 12 x 12 in"}, {"box.lid", "front"}},
	}
	for name, start := range starts {
		var b economics.Boat
		for _, kv := range start {
			if err := Set(&b, kv[0], kv[1]); err != nil {
				t.Fatal(err)
			}
		}
		Fill(&b, economics.Book{})
		for _, f := range Check(b) {
			t.Errorf("%s: %v", name, f)
		}
		for _, row := range All() {
			v := row.Field(&b).Get()
			if vs := figures(v); row.Limits != (Limits{}) && !(row.None != "" && zero(v)) && row.Asked(b) {
				for _, f := range vs {
					if !row.Limits.usual(f) && !(row.Key == "box.volume" && name == "inside measured") {
						t.Errorf("%s: default of %s, %s, is outside its usual range", name, row.Key, row.Print(&b))
					}
				}
			}
			if row.Kind.Structured() || !row.Asked(b) || row.Kind == YesNoUnknown || row.Kind == Text {
				continue
			}
			text := row.Print(&b)
			again := economics.Boat{Units: b.Units, Currency: b.Currency}
			if err := Set(&again, row.Key, text); err != nil {
				t.Errorf("%s: default of %s is printed as %q, which is refused: %v", name, row.Key, text, err)
			} else if again.Known[row.Key] == quantity.Told && row.Print(&again) != text {
				t.Errorf("%s: %s printed as %q reads back as %q", name, row.Key, text, row.Print(&again))
			}
		}
	}
}

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
		if !ok || math.Abs(float64(f.Foam-foam)) > 1e-12 || f.State != heat.Damp || f.Neighbour != neighbour || f.Material != heat.OldPolyurethane || !f.Reachable {
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
		{"box.foam", "25", quantity.US, "did you mean 25 mm?"},
		{"box.foam", "2", quantity.Metric, "did you mean 2 in?"},
		{"box.inside", "45 x 40 x 50", quantity.Metric, "did you mean 45 x 40 x 50 cm?"},
		{"food.target", "80 °C", quantity.Metric, "did you mean 8 °C?"},
		{"food.target", "40", quantity.Metric, "did you mean 40 °F?"},
		{"food.target", "4", quantity.US, "did you mean 4 °C?"},
		{"power.battery", "12000 Ah", quantity.US, "did you mean 120 Ah?"},
		{"power.battery", "12,000 Ah", quantity.US, "write 12000"},
		{"ice.price", "110 /kg", quantity.Metric, "did you mean $1.10/kg?"},
		{"ice.carry_loss", "8", quantity.US, "did you mean 8 %?"},
		{"box.lid", "tpo", quantity.US, "did you mean top?"},
		{"cruising.ground", "aegaen-cyclades", quantity.US, "did you mean aegean-cyclades?"},
		{"cruising.crew", "NaN", quantity.US, "a number"},
		{"cruising.crew", "-2", quantity.US, "from 0.5 to 16 people"},
		{"money.years", "2.5", quantity.US, "a whole number"},
		{"money.budget", "€500", quantity.US, "another currency"},
		{"cruising.nights", "60", quantity.US, "60 nights in summer"},
		{"cruising.nights", "often", quantity.US, "nights by month"},
		{"cruising.nights", "june: 32", quantity.US, "at most the days"},
		{"currency", "12", quantity.US, "sign or code"},
		{"boat.name", strings.Repeat("x", 61), quantity.US, "at most 60 characters"},
		{"units", "furlongs", quantity.US, "one of: us, metric"},
		{"evidence.ice_history", "10 kg", quantity.US, "keys such as ice"},
		{"evidence.ice_history", "ice: 10 kg; hours: 36", quantity.US, "no month"},
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

func TestNights(t *testing.T) {
	tests := []struct {
		text  string
		south bool
		want  [12]float64
	}{
		{"weekends in summer", false, [12]float64{5: 8, 6: 8, 7: 8, 8: 8}},
		{"weekends in summer", true, [12]float64{11: 8, 0: 8, 1: 8, 2: 8}},
		{"Two weeks' holiday", false, [12]float64{6: 14}},
		{"two weeks holiday", true, [12]float64{0: 14}},
		{"weekends in summer and two weeks’ holiday", false, [12]float64{5: 8, 6: 22, 7: 8, 8: 8}},
		{"3 weeks in august", false, [12]float64{7: 21}},
		{"live aboard", false, DaysIn},
		{"winter in the sun", false, [12]float64{31, 28, 31, 30, 0, 0, 0, 0, 0, 0, 30, 31}},
		{"winter in the sun", true, [12]float64{4: 31, 5: 30, 6: 31, 7: 31, 8: 30, 9: 31}},
		{"jun 8, jul 12, aug 10", false, [12]float64{5: 8, 6: 12, 7: 10}},
		{"jun: 8; jul=12", false, [12]float64{5: 8, 6: 12}},
		{"jun-aug 10", false, [12]float64{5: 10, 6: 10, 7: 10}},
		{"November to January: 5", false, [12]float64{10: 5, 11: 5, 0: 5}},
		{"60 nights in summer", false, [12]float64{5: 15, 6: 15, 7: 15, 8: 15}},
		{"all summer", false, [12]float64{5: 30, 6: 31, 7: 31, 8: 30}},
		{"weekends", false, [12]float64{8, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8, 8}},
		{"weekends in may", false, [12]float64{4: 8}},
	}
	for _, tt := range tests {
		got, err := nightsOf(tt.text, tt.south)
		if err != nil || got != tt.want {
			t.Errorf("nightsOf(%q, south %v) = %v, %v; want %v", tt.text, tt.south, got, err, tt.want)
		}
	}
}

// The months between the coldest and the warmest follow a cosine.
func TestEased(t *testing.T) {
	year := eased(map[int]float64{1: 5, 7: 19})
	for m, got := range year {
		want := 12 - 7*math.Cos(2*math.Pi*float64(m)/12)
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("month %d: %v, want %v", m+1, got, want)
		}
	}
}

func TestRecords(t *testing.T) {
	var b economics.Boat
	if err := Set(&b, "evidence.ice_history", "ice: 10 kg; hours: 1 1/2 days; month: july | ice 20 lb; hours 20; month aug; in_use no"); err != nil {
		t.Fatal(err)
	}
	want := []heat.IceHistory{{Ice: 10, Hours: 36, Month: 7, InUse: true}, {Ice: 20 * kgPerLb, Hours: 20, Month: 8}}
	if fmt.Sprintf("%.6v", b.Evidence.IceHistory) != fmt.Sprintf("%.6v", want) || b.Known["evidence.ice_history"] != quantity.Measured {
		t.Errorf("%+v, known %q", b.Evidence.IceHistory, b.Known["evidence.ice_history"])
	}
	printed := PrintRecords(&b, "evidence.ice_history")
	if len(printed) != 2 || printed[0][0].Name.Text != "ice" || printed[0][0].Value.Text != "22 lb" || printed[1][3].Value.Text != "no" {
		t.Errorf("printed %+v", printed)
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

// Whatever is typed at whatever question, the table gives a value within its
// limits or a Fault that names the key.
func FuzzSet(f *testing.F) {
	for _, row := range All() {
		var b economics.Boat
		Fill(&b, economics.Book{})
		f.Add(row.Key, row.Print(&b))
	}
	f.Add("cruising.nights", "weekends in summer and two weeks' holiday")
	f.Add("evidence.jug_tests", "water: 10 kg; hours: 12; start: 4 °C; end: 9 °C; outside: 24 °C; box_air: 10 °C | water 2 kg")
	f.Fuzz(func(t *testing.T, key, text string) {
		var b economics.Boat
		err := Set(&b, key, text)
		if err != nil {
			fault, ok := err.(Fault)
			if !ok || fault.Key != key || fault.Found == "" {
				t.Errorf("%s %q: %#v", key, text, err)
			}
			return
		}
		row, _ := Find(key)
		if row.Limits != (Limits{}) && b.Known[key] == quantity.Told {
			for _, v := range figures(row.Field(&b).Get()) {
				if !(row.Limits.holds(v) || row.None != "" && v == 0) {
					t.Errorf("%s %q: %v is outside the limits", key, text, v)
				}
			}
		}
		row.Print(&b)
		row.Doubt(&b)
		Check(b)
		Fill(&b, economics.Book{})
	})
}
