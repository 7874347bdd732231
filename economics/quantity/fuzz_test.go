package quantity

import (
	"errors"
	"math"
	"testing"
)

// Whatever is typed, a parser gives a finite figure or an *Error that names
// what was expected; it never panics.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"90 L", "3.2 cu ft", "1 1/2 in", "2 ft 3 in", `2' 3"`, "2,5 kg", "40 F", "-18 °C", "$1,200", "0.50 /lb",
		"$3.50 per 10 lb bag", "30 %", "2*5+3", "((1))", "18 x 22 x 16 in", "44° 30' N", "10 AWG", "2/0", "1 200,50", "1½",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for name, parse := range parsers {
			for _, sys := range []System{Metric, US} {
				v, err := parse(text, sys)
				var e *Error
				switch {
				case err == nil && (math.IsNaN(v) || math.IsInf(v, 0)):
					t.Errorf("%s %q = %v", name, text, v)
				case err != nil && !errors.As(err, &e):
					t.Errorf("%s %q: %T", name, text, err)
				case err != nil && (e.Wrong == "" || e.Want == ""):
					t.Errorf("%s %q: empty error %+v", name, text, e)
				}
			}
		}
		for _, sys := range []System{Metric, US} {
			if d, err := ParseDimensions(text, sys); err == nil && !(d.Length > 0 && d.Width > 0 && d.Height > 0 && !math.IsInf(float64(d.Volume()), 0)) {
				t.Errorf("dimensions %q = %v", text, d)
			}
			if d, err := ParseOpening(text, sys); err == nil && !(d.Length > 0 && d.Width > 0) {
				t.Errorf("opening %q = %v", text, d)
			}
		}
	})
}
