package season_test

import (
	"math"
	"slices"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// TestExam works the rule of the cold day hour by hour: a box that only drifts
// with the cabin, and a limit laid just over or just under its third warmest
// hour. 5 °C is the limit of the FDA Food Code, 3-501.16 (41 °F); the two hours
// are common practice, no source.
//
// Guards the limit's +1 K, examHours, examToleranceK and the day from noon to noon.
func TestExam(t *testing.T) {
	for _, row := range []struct {
		target      float64
		onlyCool    bool
		limit, cool float64
	}{{3, false, 5, 10}, {5, false, 5, 10}, {5.5, false, 6.5, 6.5}, {7, true, 8, 8}, {9.5, false, 10, 10}, {4, true, 10, 10}} {
		limit, cool := season.Limits(quantity.Celsius(row.target), row.onlyCool)
		near(t, "limit", limit, row.limit, 1e-12)
		near(t, "limit of a cool day", cool, row.cool, 1e-12)
	}
	c := sloop()
	c.nights, c.tripNights = [12]float64{6: 3}, 3
	b := c.aboard(t)
	none := season.Icing{PortionKg: 1, LumpKgPerM3: 560}
	_, rows := b.runIce(none)
	for day := range 3 {
		var warmest []float64
		for _, h := range rows[24*day : 24*day+24] {
			if h.Counted {
				warmest = append(warmest, h.FoodC)
			}
		}
		slices.Sort(warmest)
		slices.Reverse(warmest)
		for _, row := range []struct {
			what   string
			limitC float64
			cold   bool
		}{
			{"two hours over", warmest[2] - 0.01 + 1e-9, true},
			{"three hours over", warmest[2] - 0.01 - 1e-9, false},
		} {
			b.setup.LimitC, b.setup.CoolLimitC = row.limitC, row.limitC
			x, rows := b.runIce(none)
			want := 0
			for d := range 3 {
				over := 0
				for _, h := range rows[24*d : 24*d+24] {
					if h.Counted && h.FoodC > row.limitC+0.01 {
						over++
					}
				}
				if d == day && over <= 2 != row.cold {
					t.Errorf("day %d, %s: %d hours are over", d, row.what, over)
				}
				if over <= 2 {
					want++
				}
			}
			if x.CoolDays != want {
				t.Errorf("day %d, %s: %d cool days, by the hours %d", day, row.what, x.CoolDays, want)
			}
		}
	}
}

// TestWarmest holds WarmestC to the sorted hours of the trace: the upper edge
// of the quarter kelvin in which the hour lies that the share of the others passes.
//
// Guards foodBinK, foodFloorC and that hours that do not count are left out.
func TestWarmest(t *testing.T) {
	for _, tripNights := range []float64{1, 4} {
		c := sloop()
		c.nights, c.tripNights, c.panelWp, c.batteryAh = [12]float64{6: 12}, tripNights, 40, 50
		x, rows := c.aboard(t).runUnit(unitOf(energy.Fins, energy.Thin, season.StartWarm))
		var food []float64
		for _, h := range rows {
			if h.Counted {
				food = append(food, h.FoodC)
			}
		}
		slices.Sort(food)
		for _, share := range []float64{0, 0.02, 0.1, 0.5, 0.9} {
			got, ok := x.WarmestC(share)
			at := food[len(food)-1-int(share*float64(len(food)))]
			if want := (math.Floor(at*4) + 1) / 4; !ok || got != want {
				t.Errorf("trips of %g: share %g has %g °C, the hours %g, %g", tripNights, share, got, at, want)
			}
		}
	}
	c := sloop()
	c.offsetK = 60 // beyond the bins: the outermost ends at 55 °C
	x, _ := c.aboard(t).runIce(season.Icing{PortionKg: 1, LumpKgPerM3: 560})
	got, _ := x.WarmestC(0)
	near(t, "warmest", got, 55, 0)
	if c, ok := new(season.Tally).WarmestC(0); c != 0 || ok {
		t.Errorf("no hours, and yet %g °C, %t", c, ok)
	}
}
