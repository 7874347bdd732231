package cost

import (
	"math"
	"testing"
)

// A zero at the far end is a crossing whichever side the difference comes from.
func TestCrossingAtTheEnd(t *testing.T) {
	for name, f := range map[string]func(float64) float64{
		"falling to it": func(x float64) float64 { return 1 - x },
		"rising to it":  func(x float64) float64 { return x - 1 },
	} {
		if x, ok := Crossing(f, 0, 1); !ok || math.Abs(x-1) > 1e-9 {
			t.Errorf("%s: %v, %v; want 1", name, x, ok)
		}
	}
}

// Half a unit of money is an investment: ASTM E964 asks for one above zero.
func TestSavingsToASmallInvestment(t *testing.T) {
	if ratio, ok := (Comparison{ExtraInvestment: 0.5, OperatingSavings: 2}).SavingsToInvestment(); !ok || ratio != 4 {
		t.Errorf("%v, %v; want 4", ratio, ok)
	}
	if _, ok := (Comparison{OperatingSavings: 2}).SavingsToInvestment(); ok {
		t.Error("a ratio to no investment")
	}
}
