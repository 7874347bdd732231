package season_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

// TestBalances puts boats at random through whole years of weather: what heat
// came in was taken out or stored, and what electricity came in was used, lost
// in charging, stored or spilled. (What was called for in vain came from
// nowhere, so it stands with what came in.)
//
// Source: conservation of energy.
func TestBalances(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	grounds := climate.Grounds()
	for range 150 {
		b, unit, ice := anyScene(r, grounds)
		b.setup.Box.OpensPerDay = 12
		byUnit, unitRows := b.runUnit(unit)
		byIce, iceRows := b.runIce(ice)
		for _, row := range []struct {
			name  string
			tally *season.Tally
			rows  []season.Hour
		}{{"unit", byUnit, unitRows}, {"ice", byIce, iceRows}} {
			// Both sides are sums of terms of either sign: the measure is what they
			// would come to with their signs left out.
			var starts []float64
			var before account
			b.walk(func(_ int, trip season.Trip, firstDay int) {
				var startC float64
				if row.name == "unit" {
					startC, _, _ = b.start(unit, trip, firstDay, new(account))
				} else {
					startC, _ = b.dayBefore(ice, trip, firstDay, &before)
				}
				starts = append(starts, startC)
			})
			var last, water, iceKg float64
			measure, cooled, stored := before.chillKJ, before.chillKJ+before.dayBeforeKJ, -before.chillKJ
			for _, h := range row.rows {
				if h.Hour == 0 {
					last, water = starts[h.Trip], 0
				}
				measure += 3.6 * (math.Abs(h.GainW) + h.CooledW)
				cooled += 3.6 * h.CooledW
				// Every hour by itself: heat of the contents over 0 °C, water that was
				// bailed at its start left out and what melted in it let in at 0 °C.
				melted := 0.0
				if ice.WaterKept && row.name == "ice" {
					melted = h.MeltedKg
				}
				water = h.WaterKg - melted
				if h.Hour > 0 && h.Clock != 12 { // only noons bring ice
					near(t, row.name+": an hour's ice", h.IceKg+h.MeltedKg, iceKg, 1e-9)
				}
				iceKg = h.IceKg
				rise := (b.setup.Box.HeatKJPerK+4.19*h.WaterKg)*h.FoodC - (b.setup.Box.HeatKJPerK+4.19*water)*last
				near(t, row.name+": an hour", 3.6*(h.GainW-h.CooledW), rise, 1e-9*(1000+3.6*math.Abs(h.GainW)))
				stored += rise
				last = h.FoodC
			}
			x := row.tally
			near(t, row.name+": heat", x.GainKJ, x.CooledKJ+x.StoredKJ, 1e-9*measure)
			// The tally's stored heat against the rows' temperatures.
			near(t, row.name+": stored", x.StoredKJ, stored, 1e-9*measure)
			near(t, row.name+": cooled", x.CooledKJ, cooled, 1e-9*measure)
			balanceOfPower(t, row.name, x)
		}
		balanceOfPower(t, "stores", b.runStores())
		// All ice brought aboard melts or is lost.
		near(t, "ice", byIce.IceBoughtKg+byIce.IceHomeKg, total(byIce.MeltKgBy)+byIce.ChilledKg+byIce.IceLostKg, 1e-6)
		if t.Failed() {
			t.Fatalf("%s %+v\n%+v\n%+v", b.ground.ID, b.setup, unit, ice)
		}
	}
}

func balanceOfPower(t *testing.T, name string, x *season.Tally) {
	t.Helper()
	in := x.SunWh + x.EngineWh + x.ShoreWh + x.HouseUnmetWh
	near(t, name+": electricity", in, x.HouseWh+x.UnitWh+x.LostWh+x.StoredWh+x.SpillWh, 1e-9*max(1, in))
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.12g against %.12g", what, got, want)
	}
}

// TestMelting checks the melt in every hour: what the ice took up is what its
// loss of mass, and the cold of a load from the freezer, account for.
//
// Source: 333.6 kJ/kg and 4.19 kJ/kg·K as in the trace by hand.
func TestMelting(t *testing.T) {
	c := sloop()
	c.nights, c.tripNights, c.shopEvery = [12]float64{7: 9}, 9, 30
	for _, kept := range []bool{false, true} {
		for _, home := range []bool{false, true} {
			ice := cubes()
			ice.WaterKept, ice.CarryLoss = kept, 0
			if home {
				ice.HomeKg = 27
			}
			ice.RoomKg, ice.CarryKg, ice.PortionKg = 27, 27, 27
			_, rows := c.aboard(t).runIce(ice)
			left, frostKJ := 27.0, 0.0
			if home {
				frostKJ = 2.1 * 18 * left
			}
			for _, h := range rows {
				perKg := 333.6 + 4.19*2
				if kept {
					perKg = 333.6
				}
				thaw := min(frostKJ, 3.6*h.CooledW)
				frostKJ -= thaw
				within := 1e-9
				if h.IceKg == 0 { // the last ice leaves before the food has warmed
					within = 0.01
				}
				near(t, "ice left", h.IceKg, left-(3.6*h.CooledW-thaw)/perKg, within)
				left = h.IceKg
			}
		}
	}
}

// TestSeasonAllocatesNothingByTheHour runs a short and a long season: both
// allocate no more than a handful of times.
//
// Guards that a run of the hours makes nothing: with the hour's surroundings
// put on the heap the long season allocates thousands of times.
func TestSeasonAllocatesNothingByTheHour(t *testing.T) {
	c := sloop()
	c.shore = 0.2
	for _, nights := range []float64{2, 30} {
		c.nights = [12]float64{5: nights, 6: nights, 7: nights}
		b := c.aboard(t)
		thin, plate := unitOf(energy.Fan, energy.Thin, season.StartOnShore), unitOf(energy.Fan, energy.Eutectic, season.StartOnOwnSun)
		bought, home := b.setup.IcePlan(cubes()), b.setup.IcePlan(block())
		rng := rand.New(rand.NewPCG(1, 1))
		var tally season.Tally
		allocs := testing.AllocsPerRun(5, func() {
			tally = season.Tally{}
			b.setup.Plan.Draw(b.weather, b.sky, rng, rng, 1)
			b.fillAir()
			b.setup.Unit(&b.air, thin, &tally, nil)
			b.setup.Unit(&b.air, plate, &tally, nil)
			b.setup.Ice(&b.air, &bought, &tally, nil)
			b.setup.Ice(&b.air, &home, &tally, nil)
			b.setup.Stores(&b.air, &tally)
		})
		if allocs > 20 {
			t.Errorf("%g nights a month: %g allocations", nights, allocs)
		}
		if want := 5 * 3 * int(nights); tally.Nights != want {
			t.Errorf("%d nights, want %d", tally.Nights, want)
		}
	}
}
