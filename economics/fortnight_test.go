package economics

import (
	"math/rand/v2"
	"slices"
	"testing"

	"coldreckon/economics/season"
)

// The worst spell of invented years, found by looking at every one: a
// fortnight that starts on any day of a trip, or a shorter trip whole.
//
// Guards worseThan and read: without the tails' "continue", or with the sum
// alone, it fails.
func TestWitnessFindsTheWorstSpell(t *testing.T) {
	const limitC = 6
	rng := rand.New(rand.NewPCG(3, 5))
	for range 200 {
		var w recorder
		var worst []season.Hour
		coldestC := -8 * float64(rng.IntN(2)) // in half of the years nothing comes over the limit
		over := func(spell []season.Hour) (hours int, sum float64) {
			for _, h := range spell {
				if h.FoodC > limitC {
					hours++
				}
				sum += h.FoodC
			}
			return hours, sum
		}
		for range 2 {
			year := w.trace(0)
			for trip := range 1 + rng.IntN(4) {
				from := len(year.Hours)
				for hour := range 24 * (1 + rng.IntN(30)) {
					year.Hours = append(year.Hours, season.Hour{Trip: trip, Hour: hour, Month: 5, FoodC: coldestC + float64(rng.IntN(32))/4})
				}
				nights := year.Hours[from:]
				for first := 0; first == 0 || first+24*fortnightDays <= len(nights); first += 24 {
					spell := nights[first:min(len(nights), first+24*fortnightDays)]
					hours, sum := over(spell)
					if most, warmest := over(worst); worst == nil || hours > most || hours == most && sum > warmest {
						worst = slices.Clone(spell)
					}
				}
			}
			w.review(limitC)
		}
		if !slices.Equal(w.hours, worst) {
			hours, sum := over(w.hours)
			wantHours, wantSum := over(worst)
			t.Fatalf("a spell of %d hours, %d over the limit, sum %v; want %d, %d, %v", len(w.hours), hours, sum, len(worst), wantHours, wantSum)
		}
	}
}

// Every option but dry stores is seen.
func TestFortnights(t *testing.T) {
	ground, err := dunlin().Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := Reckon(dunlin(), testBook(), ground, Settings{Futures: 20, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range r.Options {
		if seen := len(o.Fortnight.Hours) > 0; seen != (o.ID != DryStores) || o.Fortnight.Days != len(o.Fortnight.Hours)/24 {
			t.Errorf("%s: %d hours, %d days", o.ID, len(o.Fortnight.Hours), o.Fortnight.Days)
		}
	}
}
