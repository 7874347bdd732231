package wizard

import (
	"math"
	"testing"
)

func TestHandy(t *testing.T) {
	for amount, want := range map[float64]float64{0: 0.5, 0.3: 0.5, 0.8: 0.8, 1.4: 1.5, 2.6: 2.5, 6.2: 6, 7.3: 7, 13: 15, 47: 50, 180: 200, 1730: 1500, math.NaN(): 0.5} {
		if got := handy(amount); got != want {
			t.Errorf("handy(%g): found %g, expected %g", amount, got, want)
		}
	}
}
