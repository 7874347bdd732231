package questions

import (
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

var bothSystems = []quantity.System{quantity.US, quantity.Metric}

// What the reference shows as an answer is one, for every row.
func TestSpellingsAreAnswers(t *testing.T) {
	for _, sys := range bothSystems {
		for _, row := range All() {
			spellings := row.Spellings(sys, "$")
			if len(spellings) == 0 && row.Kind != Text && row.Kind != Choice {
				t.Errorf("%s: no spelling of a %s", row.Key, row.Kind)
			}
			for _, text := range spellings {
				b := economics.Boat{Units: sys}
				if err := Set(&b, row.Key, text); err != nil {
					t.Errorf("%s, %s: %v", row.Key, sys, err)
				}
			}
		}
	}
}

// A figure written into a blank, with the unit printed there, is an answer of
// the size that the row's limits are printed in.
func TestBlanksTakeAnswers(t *testing.T) {
	figure := map[Kind]string{Text: "EUR", Length: "2", Temperature: "5", Latitude: "44 N", Voltage: "12", Share: "0.25", WireSize: "10"}
	for _, sys := range bothSystems {
		for _, row := range All() {
			blanks := row.Blanks(sys, "$")
			ticks := row.Kind == Choice || row.Kind == YesNo || row.Kind == YesNoUnknown
			if ticks != (len(blanks) == 0) {
				t.Errorf("%s: %d blanks for a %s", row.Key, len(blanks), row.Kind)
			}
			text := figure[row.Kind]
			if text == "" {
				text = "3"
			}
			switch {
			case len(blanks) == 0 || row.Kind == Records:
				continue
			case row.Kind == Length && sys == quantity.Metric:
				text = "40"
			case row.Kind == Temperature && sys == quantity.US:
				text = "40"
			case row.Kind == Volume && sys == quantity.Metric || row.Kind == Charge || row.Kind == Power || row.Kind == Money:
				text = "100"
			case row.Kind == Mass && sys == quantity.US:
				text = "10"
			}
			switch len(blanks) {
			case 12:
				text = "Jan " + text + ", Jul 20"
			case 2, 3:
				text = map[quantity.System]string{quantity.US: "16 x 16", quantity.Metric: "400 x 400"}[sys]
				if len(blanks) == 3 {
					text += " x " + strings.Fields(text)[0]
				}
			}
			b := economics.Boat{Units: sys}
			if err := Set(&b, row.Key, strings.TrimSpace(text+" "+blanks[0].Unit)); err != nil {
				t.Errorf("%s, %s: %v", row.Key, sys, err)
			}
			unit := strings.Trim(blanks[0].Unit, "$")
			printed := row.Print(&b)
			if len(blanks) == 1 && row.Kind != TemperatureDifference && !strings.HasSuffix(printed, unit) {
				t.Errorf("%s, %s: the blank says %q, the answer is printed as %s", row.Key, sys, unit, printed)
			}
		}
	}
}

func TestBounds(t *testing.T) {
	tests := []struct {
		key      string
		sys      quantity.System
		currency string
		want     string
	}{
		{"box.volume", quantity.Metric, "$", "from 10 to 1200 L, mostly 25 to 350 L"},
		{"box.foam", quantity.US, "$", "from 1/4 to 11 in, or none, mostly 1/2 to 5 1/2 in"}, // 5 to 300 mm is 0.197 to 11.8 in; 10 to 150 mm 0.39 to 5.9
		{"money.budget", quantity.US, "€", "from €1 to €1,000,000, or no limit, mostly €50 to €20,000"},
		{"cruising.shore_power_share", quantity.US, "$", "from 0 to 100 %"},
		{"box.lid", quantity.US, "$", ""},
	}
	for _, tt := range tests {
		row, _ := Find(tt.key)
		if got := row.Bounds(tt.sys, tt.currency); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.key, got, tt.want)
		}
	}
}

func TestUnanswered(t *testing.T) {
	taken := Unanswered(quantity.Metric, economics.Book{})
	for key, want := range map[string]string{"units": "US: cu ft, lb, in, °F", "box.volume": "100 L", "ice.unit_size": "2 kg", "safety.children": "not known", "box.faces.outboard.neighbour": "the hull and the sea"} {
		if a := taken[key]; a.Value != want || a.Why == "" {
			t.Errorf("%s: %+v, want %s", key, a, want)
		}
	}
	for _, row := range All() {
		if _, ok := taken[row.Key]; ok == (row.When != nil) {
			t.Errorf("%s: taken %v, though its question %v", row.Key, ok, row.When == nil)
		}
	}
}
