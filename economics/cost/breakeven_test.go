package cost

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// Guards Crossing's choice of half: exchanged, every row but the ends fails.
func TestCrossing(t *testing.T) {
	for _, row := range []struct {
		name   string
		f      func(float64) float64
		lo, hi float64
		want   float64
		ok     bool
		source string
	}{
		{"uplift an acre at which benefits equal costs", func(uplift float64) float64 { return 39*uplift + 1.4e6 - 10e6 }, 0, 1e6, 220512.82, true,
			"HM Treasury Green Book 2022, box 12 (39 acres, 1.4 m wider benefit, 10 m cost); the switch worked by hand"},
		{"chance of a good market, nothing against small", func(p float64) float64 { return 100*p - 20*(1-p) }, 0, 1, 1.0 / 6, true,
			"Render and Stair, Quantitative Analysis for Management, storage-shed case; the switch worked by hand"},
		{"chance of a good market, small against large", func(p float64) float64 { return (100*p - 20*(1-p)) - (200*p - 180*(1-p)) }, 0, 1, 8.0 / 13, true,
			"Render and Stair, as above"},
		{"falling", func(x float64) float64 { return 2 - x*x }, 0, 4, math.Sqrt2, true, "definition"},
		{"at the low end", func(x float64) float64 { return x }, 0, 4, 0, true, "definition"},
		{"at the high end", func(x float64) float64 { return x - 4 }, 0, 4, 4, true, "definition"},
		{"exactly in the middle", func(x float64) float64 { return x - 2 }, 0, 4, 2, true, "definition"},
		{"never", func(x float64) float64 { return 1 + x }, 0, 4, 0, false, "definition"},
		{"not a number at an end", func(x float64) float64 { return math.Log(x) }, -1, 4, 0, false, "definition"},
		{"not a number at one end only", func(x float64) float64 {
			if x == 0 {
				return math.NaN()
			}
			return -1
		}, 0, 4, 0, false, "definition"},
		{"not a number on the way", func(x float64) float64 { return 1 / (x - 2) * math.Sqrt((x-1)*(x-3)) }, 0, 4, 0, false, "definition"},
	} {
		got, ok := Crossing(row.f, row.lo, row.hi)
		if ok != row.ok {
			t.Errorf("%s: ok %v, want %v", row.name, ok, row.ok)
		}
		near(t, row.name+" ("+row.source+")", got, row.want, 1e-8*(row.hi-row.lo))
	}
}

// The break-even nights of a worked case: a unit of 1,250 today and 40 a year
// over 10 years at 3 % against ice at 7 a night. By hand: 1250 × 0.11723 =
// 146.54 a year, plus 40, over 7 is 26.65 nights.
func TestCrossingFindsBreakEvenNights(t *testing.T) {
	unit := []Line{{First: 1250, Yearly: 40}}
	nights, ok := Crossing(func(nights float64) float64 {
		return -float64(Compare([]Line{{Yearly: quantity.Money(7 * nights)}}, unit, 10, 0.03).NetSavings())
	}, 0, 365)
	if !ok {
		t.Fatal("no break-even")
	}
	near(t, "nights", nights, 26.65, 0.005)
}
