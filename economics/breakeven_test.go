package economics_test

import (
	"testing"

	"coldreckon/economics"
)

// Break-even nights of the fixture, by hand: a yearly cost is a part that
// comes whatever the nights and a part that comes with them.
//
//	ice     nothing fixed; 427.68 ice + 84.10 spoilage
//	        over 60 nights                    =   8.530 a night
//	small   1,320 × 0.117231 + 18 upkeep      = 172.74 a year
//	        19.72 engine + 8.43 wear + 0.36 spoilage over 60 nights
//	                                          =   0.475 a night
//	        172.74 / (8.530 - 0.475)          =  21.4 nights
//	larger  4,070 × 0.117231 + 56 upkeep      = 533.13 a year
//	        18.77 engine + 7.63 wear over 60 nights
//	                                          =   0.440 a night
//	        533.13 / (8.530 - 0.440)          =  65.9 nights
func TestBreakEvenByHand(t *testing.T) {
	r := told(t, economics.Dunlin())
	perNight := func(o *economics.Outcome, ids ...string) (sum float64) {
		for _, id := range ids {
			sum += line(o, id).Yearly / 60
		}
		return sum
	}
	ice := perNight(&r.Of(economics.IceOnly).AsTold, "ice", "ice_errands", "spoilage")
	for i, row := range []struct {
		id            economics.OptionID
		first, upkeep float64
		about         float64 // the sums above
	}{
		{economics.SmallUnit, 1320, 18, 21.4},
		{economics.LargerUnit, 4070, 56, 65.9},
	} {
		unit := perNight(&r.Of(row.id).AsTold, "shore_kwh", "engine_kwh", "battery_wear", "spoilage")
		want := (row.first*crf10 + row.upkeep) / (ice - unit)
		got := r.BreakEven[i]
		if got.Option != row.id || !got.Known || !near(got.Nights, want, 1e-4) {
			t.Errorf("%s: %+v; by hand %.2f nights", row.id, got, want)
		}
		// A change in the season's figures moves the sums a little, not the answer.
		if !near(got.Nights, row.about, 0.05) {
			t.Errorf("%s: %.1f nights; worked on paper %.1f", row.id, got.Nights, row.about)
		}
		if got.UnitCheaper != (60 > want) {
			t.Errorf("%s is the cheaper one at 60 nights: %v", row.id, got.UnitCheaper)
		}
	}
}

// summer is the fixture with n nights in each of June, July and August, all in
// trips of six nights, and ice at every stop: a pattern that scales.
func summer(n float64) economics.Boat {
	b := economics.Dunlin()
	b.Cruising.Nights = [12]float64{5: n, 6: n, 7: n}
	b.Ice.FoundAtStops = 1
	return b
}

// Reckoned anew with more and fewer nights in the same pattern, a unit is
// dearer than ice below its break-even and cheaper above, and the yearly costs
// are those that the break-even scales to.
func TestBreakEvenReckonedAnew(t *testing.T) {
	const base = 12
	r := told(t, summer(base))
	for i, id := range refrigerated {
		even := r.BreakEven[i]
		if !even.Known || even.Nights < 18 || even.Nights > 72 {
			t.Fatalf("%s: %+v; want a break-even that this season can reach", id, even)
		}
		below := 6 * float64(int(even.Nights/18))
		for _, n := range []float64{below, below + 6} {
			anew := told(t, summer(n))
			unit, ice := anew.Of(id).AsTold.Yearly, anew.Of(economics.IceOnly).AsTold.Yearly
			if cheaper := unit < ice; cheaper != (3*n > even.Nights) {
				t.Errorf("%s, %v nights, break-even %.1f: %.0f a year, ice %.0f", id, 3*n, even.Nights, unit, ice)
			}
			scaled := func(o *economics.Outcome) float64 {
				fixed := o.Yearly
				for _, l := range o.Lines {
					if l.ID != "upkeep" {
						fixed -= l.Yearly
					}
				}
				return fixed + (o.Yearly-fixed)*n/base
			}
			for _, o := range []economics.OptionID{id, economics.IceOnly} {
				if got, want := anew.Of(o).AsTold.Yearly, scaled(&r.Of(o).AsTold); !near(got, want, 0.03) {
					t.Errorf("%s, %v nights: %.1f a year, scaled %.1f", o, 3*n, got, want)
				}
			}
		}
	}
}
