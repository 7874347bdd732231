package wizard

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
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

// Who accepts one amount and hesitates at the next has accepted no more than
// the first; who has only refused may still mean the amount hesitated at.
func TestHesitation(t *testing.T) {
	for _, tt := range []struct {
		first float64
		said  []bool
		want  quantity.Money
	}{
		{5, []bool{true}, 7},          // 5, then 10: sqrt 50
		{6, []bool{false}, 3},         // not 6; 3
		{6, []bool{false, true}, 3},   // not 6, but 3; 4: sqrt 12 = 3.46
		{6, []bool{true, false}, 7},   // 6, not 10; 8: sqrt 48 = 6.9
		{15, []bool{true, false}, 17}, // 15, not 30; 20: sqrt 300 = 17.3
		{1, []bool{true}, 1},          // 1, then 2
	} {
		if got := rounded(hesitant(tt.first, tt.said)); got != tt.want {
			t.Errorf("%g first, then %v and a pause: found %g, expected %g", tt.first, tt.said, float64(got), float64(tt.want))
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
