package economics_test

import (
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// oldBox is an ice box as many small cruisers of the seventies still have it.
//
// Inputs taken: an inch of damp old foam all round, none under the lid, which
// rests bare on its rim; drain open to the bilge, one side along the hull; the
// Chesapeake in July, lived in (2 K over the air outside); two people, a third
// of the food needing cold, eight openings a day; a quarter of the box in cubes.
func oldBox(volume quantity.Litre) economics.Boat {
	b := economics.Dunlin()
	b.Cruising.Ground, b.Cruising.Nights = "chesapeake-bay", [12]float64{6: 14}
	b.Box.Volume, b.Box.LidSeal, b.Box.OpensPerDay = volume, heat.NoSeal, 8
	for side, f := range b.Box.Faces {
		f.Foam, f.Material, f.State = 0.025, heat.OldPolyurethane, heat.Damp
		if side == heat.Top {
			f.Foam, f.State = 0, heat.Missing
		}
		b.Box.Faces[side] = f
	}
	b.Food.MustBeColdShare = 1. / 3
	b.Ice.ShareOfBox, b.Ice.Kind = 0.25, heat.Cubes
	return b
}

// Common practice, no source: an old small ice box of 110 to 140 L with little
// foam and a bare lid empties its ice in about a day in summer.
func TestOldBoxEmptiesItsIceInAboutADay(t *testing.T) {
	for _, volume := range []quantity.Litre{110, 125, 140} {
		r := told(t, oldBox(volume))
		july := r.Months[0]
		days := r.Box.IceKg / july.IceKgPerDay
		t.Logf("%v L: %.2f W/K, %.0f W in July, %.1f kg of ice last %.2f days", volume, float64(r.Box.Leak), july.HeatGainW, r.Box.IceKg, days)
		if days < 0.7 || days > 1.5 {
			t.Errorf("%v L: a load of ice lasts %.2f days; practice says about one", volume, days)
		}
		if days := r.Of(economics.IceOnly).AsTold.ColdDays; days > 3 {
			t.Errorf("%v L: %v of 14 days are cold", volume, days)
		}
	}
}

// Common practice, no source: an inch of foam on a bare counter is a plain
// gain. Inputs taken: the old box, 125 L, with an inch more under its lid.
func TestInchOfFoamOnABareLidIsAPlainGain(t *testing.T) {
	b := oldBox(125)
	before := told(t, b).Months[0].IceKgPerDay
	b.Box.Faces[heat.Top] = economics.Face{Foam: 0.0254, Material: heat.XPS, State: heat.Dry, Neighbour: heat.Cabin}
	after := told(t, b).Months[0].IceKgPerDay
	t.Logf("%.1f kg of ice a day, %.1f with an inch under the lid", before, after)
	if saved := 1 - after/before; saved < 0.10 || saved > 0.5 {
		t.Errorf("an inch of foam saves %.0f %% of the ice; a plain gain is a tenth or more", 100*saved)
	}
}

// Common practice, no source: a plate that stores cold runs near -10 °C.
// Inputs taken: the fixture with a cold-storing plate on its larger unit, at
// three grounds from cool to hot.
func TestStoringPlateRunsNearMinusTen(t *testing.T) {
	for _, ground := range []string{"scottish-west-coast", "maine-coast", "virgin-islands"} {
		b := economics.Dunlin()
		b.Cruising.Ground = ground
		b.Larger.Plate = energy.Eutectic
		u := told(t, b).Units[1]
		t.Logf("%s: plate %.1f °C, runs %.0f %% of the time", ground, u.PlateC, 100*u.RunShare)
		if u.PlateC < -14 || u.PlateC > -8 {
			t.Errorf("%s: the plate runs at %.1f °C; practice says near -10", ground, u.PlateC)
		}
		if u.HoldOverHours <= 0 {
			t.Errorf("%s: a plate that stores cold holds over %v hours", ground, u.HoldOverHours)
		}
	}
}

// Common practice, no source: makers quote about 0.4 A at 12 V for boxes near
// 100 L and 0.5 A near 200 L at 5 to 6 °C, on the same compressor, reachable
// only with thick dry foam in a cool room. Inputs taken: 100 mm of new dry
// foam, a good seal, no drain, a cabin of 20 to 22 °C (Brittany in July, 3 K
// over the air outside), food at 5 °C, two openings and 1 kg of chilled food a
// day, a 50 W unit with a fan.
func TestMakersAverageCurrentNeedsAThickDryBox(t *testing.T) {
	thick := func(volume quantity.Litre) economics.Boat {
		b := economics.Dunlin()
		b.Cruising.Ground, b.Cruising.Nights = "brittany", [12]float64{6: 10}
		b.Box.Volume, b.Box.LidSeal, b.Box.Drain, b.Box.OpensPerDay, b.Box.CabinOffset = volume, heat.GoodSeal, heat.NoDrain, 2, 3
		for side := range b.Box.Faces {
			b.Box.Faces[side] = economics.Face{Foam: 0.1, Material: heat.Polyurethane, State: heat.Dry, Neighbour: heat.Cabin}
		}
		b.Food.Target, b.Food.KgPerPersonDay, b.Food.MustBeColdShare = 5, 1, 0.5
		b.Small.CooledBy = energy.Fan
		return b
	}
	amps := func(b economics.Boat) float64 { return told(t, b).Units[0].AhPerDay / 24 }
	small, large := amps(thick(100)), amps(thick(200))
	wet := thick(100)
	for side, f := range wet.Box.Faces {
		f.Foam, f.Material, f.State = 0.04, heat.OldPolyurethane, heat.Wet
		wet.Box.Faces[side] = f
	}
	old := amps(wet)
	t.Logf("100 L: %.2f A, 200 L: %.2f A; 100 L of thin wet foam: %.2f A", small, large, old)
	if small < 0.25 || small > 0.5 || large < 0.35 || large > 0.7 {
		t.Errorf("100 L takes %.2f A, 200 L %.2f A; makers quote about 0.4 and 0.5", small, large)
	}
	if old < 2*small {
		t.Errorf("thin wet foam takes %.2f A, thick dry foam %.2f A; want more than twice as much", old, small)
	}
}
