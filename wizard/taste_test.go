package wizard

import (
	"math"
	"testing"
)

// Whoever holds a cold day to be worth so much, and answers by it, is
// understood to within the last gap between two amounts.
func TestTasteFindsTheWorth(t *testing.T) {
	for _, first := range []float64{1, 2, 3, 6, 15, 40, 1500} {
		for _, share := range []float64{0.1, 0.4, 0.6, 0.8, 0.95, 1.05, 1.3, 1.7, 2.5, 6} {
			truth := first * share
			var said []bool
			asked := []float64{}
			var found float64
			for {
				amount, done := bid(first, said)
				if done {
					found = amount
					break
				}
				asked = append(asked, amount)
				said = append(said, truth >= amount)
			}
			if len(asked) > 3 {
				t.Errorf("%g first: %d amounts, expected at most 3", first, len(asked))
			}
			low, high := 0.0, math.Inf(1)
			for i, amount := range asked {
				if said[i] {
					low = math.Max(low, amount)
				} else {
					high = math.Min(high, amount)
				}
			}
			if found < low || found > high && high > 1 {
				t.Errorf("asked %v, worth %g: found %g, expected %g to %g", asked, truth, found, low, high)
			}
		}
	}
}

func TestHandy(t *testing.T) {
	for amount, want := range map[float64]float64{0: 1, 0.3: 1, 1.4: 1, 2.6: 3, 6.2: 6, 7.3: 8, 13: 15, 47: 50, 180: 200, 1730: 1500, math.NaN(): 1} {
		if got := handy(amount); got != want {
			t.Errorf("handy(%g): found %g, expected %g", amount, got, want)
		}
	}
}
