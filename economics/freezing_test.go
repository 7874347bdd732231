package economics_test

import (
	"math"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Heat of freezing by hand: a kilogram from 25 °C, 4.186 kJ/kg·K to 0 °C, 333.55
// kJ/kg to freeze (IAPWS formulation for ice Ih), 2.05 kJ/kg·K down to -10 °C
// (Earle, Unit Operations in Food Processing, appendix 7): 104.65 + 333.55 +
// 20.5 = 458.7 kJ.
func TestHeatOfFreezing(t *testing.T) {
	if got := economics.FreezeKJPerKg(25); math.Abs(got-458.7) > 2 {
		t.Errorf("a kilogram of water of 25 °C takes %.1f kJ, by hand 458.7", got)
	}
}

// rebuilt is a box that was rebuilt well: three inches of new foam all round, a
// good seal, a trapped drain, no more work to do.
func rebuilt(foam float64) economics.Boat {
	b := economics.Dunlin()
	b.Cruising.Ground, b.Cruising.Nights = "chesapeake-bay", [12]float64{6: 14}
	b.Box.Volume, b.Box.LidSeal, b.Box.Drain = 110, heat.GoodSeal, heat.TrappedDrain
	for side, f := range b.Box.Faces {
		b.Box.Faces[side] = economics.Face{Foam: quantity.Metre(foam / 1000), Material: heat.Polyurethane, State: heat.Dry, Neighbour: f.Neighbour, Reach: economics.NotReached}
	}
	b.Small.CooledBy = energy.Fan
	return b
}

// Common practice, no source: rebuilt boxes with a freezer corner take 22, 33 and
// 40 Ah a day at 12 V (low, median, high).
//
// Inputs taken: 110 L with 75 to 100 mm of new foam on the Chesapeake in July,
// lived in, a 50 W unit with a fan, cubes or meals.
func TestRebuiltBoxWithAFreezerCorner(t *testing.T) {
	for _, foam := range []float64{75, 100} {
		for _, f := range reckon(t, rebuilt(foam), few).Freezing {
			if f.Option != economics.SmallUnit {
				continue
			}
			t.Logf("%.0f mm, %s: %.1f Ah a day, %.1f of them for it, runs %.0f %%, plate %.1f °C, %.0f W of panel", foam, f.Wish, f.AhPerDay, f.MoreAh, 100*f.RunShare, f.PlateC, f.PanelWp)
			if f.AhPerDay < 20 || f.AhPerDay > 44 {
				t.Errorf("%.0f mm, %s: %.1f Ah a day; practice says 22 to 40", foam, f.Wish, f.AhPerDay)
			}
		}
	}
}

// Freezing more takes more, with a plate that is cold enough, and the season
// feels it as the steady figures do.
func TestFreezingProperties(t *testing.T) {
	for _, seed := range []uint64{200, 206} {
		b := plausible(seed)
		r := reckon(t, b, few)
		if len(r.Freezing) != 4 {
			t.Fatalf("boat %d: %d figures of freezing, want two wishes for each unit", seed, len(r.Freezing))
		}
		for i := 0; i < 4; i += 2 {
			cubes, meals := r.Freezing[i], r.Freezing[i+1]
			if !(cubes.MoreAh > 0 && meals.RunShare > cubes.RunShare) {
				t.Errorf("boat %d, %s: cubes take %v more, run %v; meals run %v", seed, cubes.Option, cubes.MoreAh, cubes.RunShare, meals.RunShare)
			}
			if cubes.RunShare <= 1 && cubes.PlateC > -9.9 {
				t.Errorf("boat %d, %s: the plate freezes at %.1f °C", seed, cubes.Option, cubes.PlateC)
			}
		}
	}
	nothing := told(t, economics.Dunlin())
	b := economics.Dunlin()
	b.Food.Freeze = economics.FreezesMeals
	meals := told(t, b)
	if got, was := meals.Units[0].AhPerDay, nothing.Units[0].AhPerDay; got <= was {
		t.Errorf("the small unit takes %v Ah with meals frozen, %v without", got, was)
	}
	for _, id := range refrigerated {
		if got, was := meals.Of(id).AsTold.ColdDays, nothing.Of(id).AsTold.ColdDays; got > was {
			t.Errorf("%s keeps %v cold days with meals frozen, %v without", id, got, was)
		}
	}
	if got, was := meals.Of(economics.IceOnly).AsTold, nothing.Of(economics.IceOnly).AsTold; got.Present != was.Present || got.ColdDays != was.ColdDays {
		t.Error("a wish to freeze changes ice alone, which cannot")
	}
}
