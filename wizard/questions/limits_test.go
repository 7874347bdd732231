package questions

import (
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// A limit as it is printed must itself be an answer that passes: whoever copies
// it is not refused, nor told that it is unusual.
func TestPrintedLimitsPass(t *testing.T) {
	rows := All()
	for _, r := range All() {
		parts, _, _ := recordFields(r.Key, nil)
		rows = append(rows, parts...)
	}
	for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
		o := owner{sys: sys, currency: "$"}
		for _, r := range rows {
			if r.Limits == (Limits{}) || r.Kind == WireSize { // a gauge stands for its nearest section
				continue
			}
			one := r
			switch r.Kind {
			case Dimensions, Opening:
				one.Kind = Length
			case MonthTemperatures, MonthOverrides:
				one.Kind = Temperature
			case Months:
				one.Kind = Number
			case MoneySpan:
				one.Kind = Money
			}
			for i, printed := range []string{r.lower(r.Limits.Min, o), r.lower(r.Limits.Low, o), r.upper(r.Limits.High, o), r.upper(r.Limits.Max, o)} {
				v, err := ways[one.Kind].parse(one, printed, o)
				if err != nil {
					t.Errorf("%s: printed %q: %v", r.Key, printed, err)
					continue
				}
				if f := floatOf(v); !r.Limits.holds(f) || i%3 != 0 && !r.Limits.usual(f) {
					t.Errorf("%s: printed %q, which is %g; expected within %v", r.Key, printed, f, r.Limits)
				}
			}
		}
	}
}

// Limits read well in US units too.
func TestBoundsInUSUnits(t *testing.T) {
	for key, want := range map[string]string{
		"box.inside":       "sides from 4 to 78 in, or not measured, mostly 8 to 47 in",
		"box.lid_opening":  "mostly 6 to 39 in",
		"box.foam":         "from 1/4 to 11 in, or none",
		"ice.carry_limit":  "from 2.4 to 850 lb, mostly 9 to 170 lb",
		"ice.price":        "from $0.01/lb to $22.00/lb",
		"food.target":      "from 32 to 59 °F, mostly 36 to 46 °F",
		"power.cable_run":  "from 0.7 to 130 ft",
		"power.battery":    "from 5 to 3000 Ah",
		"power.cable_size": "from 22 to 4/0 AWG",
	} {
		row, _ := Find(key)
		if got := row.Bounds(quantity.US, "$"); !strings.Contains(got, want) {
			t.Errorf("%s: found %q, expected %q", key, got, want)
		}
	}
}
