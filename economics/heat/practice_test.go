package heat

import (
	"testing"

	"coldreckon/economics/quantity"
)

// Common practice, no source: an old small ice box of 110 to 140 L with little
// foam and a bare lid empties its ice in about a day in summer.
//
// Inputs taken: near-cubic, 25 mm of damp old polyurethane all round but a lid
// without any, the lid resting on its rim all round the top, drain open; cabin
// 27 °C (a warm temperate July with a closed cabin), food at 5 °C, sea 22 °C on
// the outboard face; a quarter of the box in cubes; 8 openings of a top lid at
// 70 % humidity and 3 kg of food a day from cabin temperature.
func TestOldBoxEmptiesInADay(t *testing.T) {
	for _, volume := range []quantity.Litre{110, 125, 140} {
		s := uniform(CubeLike(volume), Layer{OldPolyurethane, Damp, 0.025})
		s.Faces[0].Layers = nil
		s.Faces[3].Neighbour = Sea
		s.Seal, s.Drain = NoSeal, OpenDrain
		s.LidPerimeter = 4 * s.Inside.Length
		c := conductance(t, s)

		leak := c.GainW(5, 27, 22, false)
		openKJ := 8 * float64(OpeningHeatKJ(volume*3/4, 0.3, 27, HumidityRatio(27, 0.7), 5))
		goodsKJ := float64(GoodsHeatKJ(3, 27, 5))
		gain := leak + quantity.Watt((openKJ+goodsKJ)/86.4)
		full, err := CapacityKg(volume, 0.25, Cubes)
		if err != nil {
			t.Fatal(err)
		}
		days := float64(full / MeltKgPerDay(gain, DrainCelsius))
		t.Logf("%g L: %.2f W/K, %.0f W, %.1f kg of ice last %.2f days", float64(volume), float64(c.Total()), float64(gain), float64(full), days)
		if days < 0.7 || days > 1.5 {
			t.Errorf("%g L: ice lasts %.2f days; practice says about one", float64(volume), days)
		}
	}
}

// Common practice, no source: an inch of foam on a bare counter is a plain
// gain. Inputs taken: the box above, 125 L; an inch of extruded polystyrene
// under the counter that is its lid.
func TestInchOnABareCounter(t *testing.T) {
	s := uniform(CubeLike(125), Layer{OldPolyurethane, Damp, 0.025})
	s.Faces[0].Layers = nil
	s.Seal, s.Drain = PoorSeal, TrappedDrain
	lined, err := s.WithAddedFoam([]Side{Top}, 0.0254)
	if err != nil {
		t.Fatal(err)
	}
	before, after := conductance(t, s), conductance(t, lined)
	saved := 1 - float64(after.Total()/before.Total())
	lost := 1 - float64(lined.Inside.Volume()/s.Inside.Volume())
	t.Logf("%.2f to %.2f W/K: %.0f %% less heat for %.0f %% less room", float64(before.Total()), float64(after.Total()), 100*saved, 100*lost)
	if saved < 0.15 || saved > 0.5 || lost > 0.06 {
		t.Errorf("an inch on the counter saves %.0f %% of the heat for %.0f %% of the room", 100*saved, 100*lost)
	}
}
