package heat

import (
	"testing"

	"coldreckon/economics/quantity"
)

// The ranges that reports state and futures draw from, each as low, typical
// and high, written down a second time: whoever moves one says so here too.
// Where they are from stands beside each in constants.go; the soaked foam, seals
// and drains are judgement (engineering judgement, from memory), and published
// figures must lie within the others.
func TestStatedRanges(t *testing.T) {
	must := func(f Figure, err error) quantity.Range {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		if f.Name == "" || f.Source == "" {
			t.Errorf("a figure without a name or source: %+v", f)
		}
		return f.Range
	}
	for name, row := range map[string]struct{ got, want quantity.Range }{
		"old polyurethane": {must(Conductivity(OldPolyurethane)), quantity.Range{Low: 0.025, Typical: 0.028, High: 0.033}},
		"polyurethane":     {must(Conductivity(Polyurethane)), quantity.Range{Low: 0.022, Typical: 0.024, High: 0.026}},
		"xps":              {must(Conductivity(XPS)), quantity.Range{Low: 0.029, Typical: 0.033, High: 0.035}},
		"eps":              {must(Conductivity(EPS)), quantity.Range{Low: 0.033, Typical: 0.036, High: 0.040}},
		"cork":             {must(Conductivity(Cork)), quantity.Range{Low: 0.041, Typical: 0.043, High: 0.050}},
		"soaked":           {must(soakedConductivity(), nil), quantity.Range{Low: 0.10, Typical: 0.20, High: 0.30}},
		"chest foam":       {must(ChestFoam(), nil), quantity.Range{Low: 0.018, Typical: 0.025, High: 0.035}},
		"good seal":        {must(SealLoss(GoodSeal)), quantity.Range{Low: 0.05, Typical: 0.08, High: 0.15}},
		"worn seal":        {must(SealLoss(PoorSeal)), quantity.Range{Low: 0.10, Typical: 0.20, High: 0.35}},
		"no seal":          {must(SealLoss(NoSeal)), quantity.Range{Low: 0.20, Typical: 0.35, High: 0.50}},
		"open drain":       {must(DrainLoss(OpenDrain)), quantity.Range{Low: 0.05, Typical: 0.15, High: 0.40}},
		"trapped drain":    {must(DrainLoss(TrappedDrain)), quantity.Range{}},
		"no drain":         {must(DrainLoss(NoDrain)), quantity.Range{}},
		"top lid":          {must(SwapShare(TopLid)), quantity.Range{Low: 0.2, Typical: 0.3, High: 0.6}},
		"front door":       {must(SwapShare(FrontDoor)), quantity.Range{Low: 0.6, Typical: 0.8, High: 1}},
		"block":            {must(BulkDensity(Block)), quantity.Range{Low: 0.85, Typical: 0.92, High: 0.92}},
		"crushed":          {must(BulkDensity(Crushed)), quantity.Range{Low: 0.66, Typical: 0.68, High: 0.71}},
		"cubes":            {must(BulkDensity(Cubes)), quantity.Range{Low: 0.50, Typical: 0.56, High: 0.62}},
		"film of ice":      {must(IceFilm(), nil), quantity.Range{Low: 6, Typical: 9, High: 14}},
		"lump of block":    {must(LumpDensity(Block)), quantity.Exactly(920)},
		"heap":             {must(LumpDensity(Cubes)), quantity.Exactly(560)},
	} {
		if row.got != row.want {
			t.Errorf("%s: %+v, want %+v", name, row.got, row.want)
		}
	}
	for state, want := range map[State]quantity.Fraction{Dry: 0, Damp: 0.04, Wet: 0.12} {
		if w, err := WaterContent(state); err != nil || w != want {
			t.Errorf("%s: %v, %v", state, w, err)
		}
	}
	// 3 mm of laminate and 15 mm of foam on 0.15 m² of wall for 10 L, half as much
	// again for lid and rim: 1.5 · 0.15 · (0.003·1600·1.2 + 0.015·35·1.4) = 1.46 kJ/K.
	within(t, "an empty box of 10 L, kJ/K", float64(BareKJPerK(10)), 1.46, 0.05)
	// Beside it, what lives in the box: 0.4 kJ/K a litre, 40 at most.
	within(t, "50 L in use, kJ/K", float64(StowedKJPerK(50, 50, 1)), 0.15*50+0.4*50, 1e-9)
	within(t, "200 L in use, kJ/K", float64(StowedKJPerK(200, 200, 1)), 0.15*200+40, 1e-9)
	if GoneShare != 0.05 {
		t.Errorf("ice is gone at a share of %v", GoneShare)
	}
	for known, want := range map[bool]float64{true: 0.25, false: 0.5} {
		if e := Drawing(Conductance{Cabin: 1}, known); e != (Estimate{FromDrawing, 1, want}) {
			t.Errorf("a drawing, known %t: %+v", known, e)
		}
	}
	// EN ISO 10456, table 4, from memory.
	for material, want := range map[Material]float64{OldPolyurethane: 6, Polyurethane: 6, Cork: 6, EPS: 4, XPS: 2.5} {
		if f, err := MoistureFactor(material); err != nil || f != want {
			t.Errorf("%s: %v, %v", material, f, err)
		}
	}
}
