package questions

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
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
		if name := t.Type().Field(i).Name; name != "Known" && name != "Assumptions" && name != "Offered" {
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
	case [2]quantity.Money:
		return [2]quantity.Money{1, 2}
	case []heat.IceTest:
		return []heat.IceTest{{Hours: 1}}
	case []heat.JugTest:
		return []heat.JugTest{{Hours: 1}}
	case []heat.IceHistory:
		return []heat.IceHistory{{Hours: 1}}
	case []economics.Quotation:
		return []economics.Quotation{{Name: "x"}}
	case []heat.Learnt:
		return []heat.Learnt{{Rows: 1}}
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
		if row.Kind == MoneySpan {
			want = 2
		}
		if len(changed) != want {
			t.Errorf("%s changes %v, want %d fields", row.Key, changed, want)
		}
		if want <= 2 && len(changed) == want {
			for _, path := range changed {
				reached[path] = append(reached[path], row.Key)
			}
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
		if row.Kind == Choice && len(row.Options) == 0 {
			t.Errorf("%s: kind %q with %d options", row.Key, row.Kind, len(row.Options))
		}
		if _, plain := ways[row.Kind]; !plain && !structured(row.Kind) {
			t.Errorf("%s: kind %q cannot be read", row.Key, row.Kind)
		}
		if row.Essential {
			essentials++
			words += len(strings.Fields(row.Ask))
		}
	}
	if essentials != 14 || words > 130 {
		t.Errorf("%d essential questions of %d words, want 14 of at most 130", essentials, words)
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
			if structured(row.Kind) || !row.Asked(b) || row.Kind == YesNoUnknown || row.Kind == Text {
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

// structured reports whether answers of the kind may be lists or groups of
// keys in the answers file.
func structured(k Kind) bool {
	switch k {
	case Dimensions, Opening, Months, MonthTemperatures, MonthOverrides, Records:
		return true
	}
	return false
}

// The first round covers the answers that move most, down to the last one that
// it asks for by the ranking; what it leaves out has a reason, and no answer has
// one that needs none.
func TestFirstRoundAsksWhatMovesMost(t *testing.T) {
	with := []string{TripKey, "food.freeze"} // told in the sentence on nights, and in the list of what must be cold
	ranking, last := Ranking(), 0
	for place, key := range ranking {
		row, ok := Find(key)
		if !ok {
			t.Errorf("%s is ranked, and no key of the table", key)
		}
		if row.Essential && !slices.Contains(foremost, key) {
			last = place
		}
	}
	if len(ranking) < 40 || last < 5 {
		t.Fatalf("%d answers are ranked, the last asked for in place %d", len(ranking), last)
	}
	for place, key := range ranking {
		row, _ := Find(key)
		covered := row.Essential || slices.Contains(with, key)
		if covered == (later[key] != "") && place <= last || place > last && later[key] != "" {
			t.Errorf("%s in place %d: asked for %v, left out because %q", key, place, covered, later[key])
		}
		if later[key] != "" {
			t.Logf("%s, in place %d, is left out: %s", key, place, later[key])
		}
	}
}
