package energy

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// What a running current says of a compressor is what makes the unit take that
// current.
func TestRatedForTakesThatPower(t *testing.T) {
	for _, by := range []Condenser{Fins, LockerFan, Fan, Seawater} {
		for _, watts := range []quantity.Watt{25, 40, 60, 90} {
			u := Unit{Eta: 0.33, CooledBy: by}
			u.RatedW = u.RatedFor(watts, 5.5, 21)
			c := u.Cycle()
			if got := c.PowerW(c.Working(5.5, 21)); math.Abs(float64(got-watts)) > 0.01 {
				t.Errorf("%s: %g W rated takes %g W, want %g", by, u.RatedW, got, watts)
			}
		}
	}
}

// A compressor of the usual small class takes 2.5 to 5.5 A at 12 V while it
// runs: common practice, no source.
func TestRunningCurrentOfTheUsualCompressor(t *testing.T) {
	small := UsualCooling(Small)
	for _, amps := range []float64{3, 4} {
		u := Unit{Eta: Eta().Typical, CooledBy: LockerFan}
		if got := float64(u.RatedFor(quantity.Watt(12*amps), 5.5, 21)); got < small.Low/1.3 || got > small.High*1.3 {
			t.Errorf("%g A comes to %g W rated, want near %g to %g", amps, got, small.Low, small.High)
		}
	}
}

// Free convection in air takes 5 to 10 W/m²K on each face (VDI Heat Atlas, from
// memory): a plate of 0.4 m by 0.25 m takes 1 to 2 W/K on both.
func TestFlatPlate(t *testing.T) {
	if got := FlatPlate(0.4, 0.25); got < 1 || got > 2 {
		t.Errorf("0.4 x 0.25 m take %g W/K", got)
	}
	if a, b := FlatPlate(0.4, 0.25), FlatPlate(0.25, 0.4); a != b {
		t.Errorf("turned by a quarter it takes %g, not %g", b, a)
	}
}

// A compressor that turns slower never takes more electricity for the same box,
// and it holds the box as cold.
func TestSlowedSaves(t *testing.T) {
	g := Gain{Leak: 1, Out: 26, Use: 5}
	for _, rated := range []quantity.Watt{45, 60, 100, 150} {
		c := Unit{RatedW: rated, Eta: 0.33, CooledBy: Fan}.Cycle()
		full, slow := c.Duty(g, 4, 26), c.Slowed(g, 4, 26)
		if slow.Held > full.Held+1e-9 {
			t.Errorf("%g W: slow it holds %g °C, else %g", rated, slow.Held, full.Held)
		}
		if slow.RunShare < full.RunShare || slow.Mean > full.Mean*1.02 {
			t.Errorf("%g W: slow it runs %g of the time at %g W, else %g at %g", rated, slow.RunShare, slow.Mean, full.RunShare, full.Mean)
		}
	}
	// 0.57 of the speed is the compressor of 57 W at the plate of 100 W.
	c := Unit{RatedW: 100, Eta: 0.33, CooledBy: Fan}.Cycle()
	slow := c
	slow.Rated = 57
	near(t, "slowed to 57 W", float64(c.Slowed(g, 4, 26).Mean), float64(slow.Duty(g, 4, 26).Mean), 1e-12)
	weak := Unit{RatedW: 20, Eta: 0.33, CooledBy: Fins}.Cycle()
	if weak.Slowed(g, 4, 26) != weak.Duty(g, 4, 26) {
		t.Error("one that cannot hold the box when slow is slowed all the same")
	}
}
