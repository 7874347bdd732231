package questions

import (
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

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
			if !ok || fault.Key != key && fault.Key != quantity.Clip(key, 60) || fault.Wrong == "" {
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
