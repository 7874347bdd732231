package season_test

import (
	"testing"

	"coldreckon/economics/season"
)

// He plans to the stop by which he has met ice nine times in ten, the third at
// most or the last within seven days: by hand, 0.2² = 0.04, 0.5⁴ = 0.06, and
// 0.9^7 = 0.48.
func TestStopsPlannedFor(t *testing.T) {
	for _, row := range []struct {
		found            float64
		shopEvery, stops int
	}{{1, 3, 1}, {0.9, 3, 1}, {0.89, 3, 2}, {0.8, 3, 2}, {0.5, 1, 4}, {0.1, 1, 7}, {0.1, 2, 3}, {0.1, 3, 3}, {0, 9, 3}} {
		c, ice := sloop(), cubes()
		c.shopEvery, ice.FoundShare = row.shopEvery, row.found
		b := c.aboard(t)
		if p := b.setup.IcePlan(ice); p.Stops != row.stops {
			t.Errorf("%+v: %d stops", row, p.Stops)
		}
	}
}

// TestIceLasts holds the hours of a load to the oracle's, in weather that is the
// month's mean: bought and from home, drained and kept, in a warm box and in a
// cooled one.
//
// Guards that all of the load is fetched, that nothing is bought later, and the
// part of an hour at its end.
func TestIceLasts(t *testing.T) {
	c := sloop()
	c.nights, c.tripNights = [12]float64{7: 12}, 12
	b := c.aboard(t)
	for i := range b.weather.AirK {
		b.weather.AirK[i], b.weather.SunKWh[i] = 0, 0
	}
	for i := range b.weather.Stops {
		b.weather.Stops[i] = 1
	}
	b.fillAir()
	for _, kg := range []float64{6, 13, 24} {
		for _, from := range []season.Icing{cubes(), block()} {
			for _, precooled := range []bool{false, true} {
				if from.Precooled = precooled; from.HomeKg > 0 {
					from.HomeKg = kg
				}
				got := b.setup.IceLasts(7, from, kg, 0.05, 24*11)
				// In the oracle a block of just that weight that lasts to the trip's end.
				ice := from
				ice.RoomKg, ice.PortionKg, ice.CarryLoss, ice.FirstCarryKg = kg, kg/1000, 0, 0
				rows, _ := b.ice(ice)
				if there := rows[0].IceKg + rows[0].MeltedKg; there < kg-1e-9 {
					t.Fatalf("the oracle starts with %g kg, not %g", there, kg)
				}
				want := 0.0
				for hour, h := range rows {
					if h.IceKg < 0.05*kg && hour < 24*11 {
						want = float64(hour) + (h.IceKg+h.MeltedKg-0.05*kg)/h.MeltedKg
						break
					}
				}
				if want == 0 {
					t.Fatalf("%g kg last longer than eleven days", kg)
				}
				near(t, "hours", got, want, 1e-3)
			}
		}
	}
}
