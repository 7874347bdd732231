package heat

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/quantity"
)

var (
	materials  = []Material{OldPolyurethane, Polyurethane, XPS, EPS, Cork}
	states     = []State{Dry, Damp, Wet, Soaked, Missing} // from driest to none
	neighbours = []Neighbour{Cabin, Sea, Engine, Deck}
	seals      = []Seal{GoodSeal, PoorSeal, NoSeal}
	drains     = []Drain{OpenDrain, TrappedDrain, NoDrain}
)

func pick[T any](r *rand.Rand, from []T) T { return from[r.IntN(len(from))] }

// anyBox gives a box an owner could have.
func anyBox(r *rand.Rand) Spec {
	length := func() quantity.Metre { return quantity.Metre(0.3 + 0.5*r.Float64()) }
	s := Spec{Inside: quantity.Dimensions{Length: length(), Width: length(), Height: length()},
		Lid: pick(r, []Lid{TopLid, FrontDoor}), LidPerimeter: quantity.Metre(1 + r.Float64()), Seal: pick(r, seals), Drain: pick(r, drains)}
	for i, side := range Sides {
		s.Faces[i] = FaceSpec{Side: side, Neighbour: pick(r, neighbours), Layers: []Layer{
			{pick(r, materials), pick(r, states), quantity.Metre(0.005 * float64(r.IntN(25)))}}}
	}
	return s
}

// with gives the box with one face's layer changed; the faces of s are not shared.
func (s Spec) with(face int, change func(*Layer)) Spec {
	layer := s.Faces[face].Layers[0]
	change(&layer)
	s.Faces[face].Layers = []Layer{layer}
	return s
}

// Guards the signs in transmittance and moist: a k that falls with water, or a
// resistance that falls with thickness, fails at once. Steps are of 5 mm:
// a finer one across 15 mm of foam, where a face's edges begin to count, may
// raise the sum by less than a hundredth.
func TestFoamAndWater(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 3000 {
		s := anyBox(r)
		before := float64(conductance(t, s).Total())
		face := r.IntN(6)

		thicker := s.with(face, func(l *Layer) { l.Thickness += 0.005 })
		if after := float64(conductance(t, thicker).Total()); after > before*(1+1e-12) {
			t.Fatalf("more foam raised %g to %g W/K: %+v", before, after, s)
		}
		all := s
		for i := range all.Faces {
			all = all.with(i, func(l *Layer) { l.Thickness += 0.005 })
		}
		if after := float64(conductance(t, all).Total()); after > before*(1+1e-12) {
			t.Fatalf("more foam all round raised %g to %g W/K: %+v", before, after, s)
		}
		wetter := s.with(face, func(l *Layer) {
			for i, state := range states[:4] {
				if l.State == state {
					l.State = states[i+1]
					break
				}
			}
		})
		if after := float64(conductance(t, wetter).Total()); after < before*(1-1e-12) {
			t.Fatalf("more water lowered %g to %g W/K: %+v", before, after, s)
		}
	}
}

// Guards WithAddedFoam: shrinking the wrong length leaves the volume wrong,
// not lining the face fails the inequality.
func TestAddedFoam(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		s := anyBox(r)
		lined, err := s.WithAddedFoam([]Side{Top, Fore, Aft}, 0.025)
		if err != nil {
			t.Fatal(err)
		}
		in := s.Inside
		want := quantity.Dimensions{Length: in.Length - 0.050, Width: in.Width, Height: in.Height - 0.025}
		within(t, "volume left", float64(lined.Inside.Volume()), float64(want.Volume()), 1e-9)
		if a, b := conductance(t, lined).Total(), conductance(t, s).Total(); a >= b {
			t.Fatalf("an inch of foam on three sides raised %g to %g W/K", b, a)
		}
		if s.Inside != in || len(s.Faces[0].Layers) != 1 {
			t.Fatal("the box before was changed")
		}
	}
	s := plain()
	lined, err := s.WithAddedFoam([]Side{Top}, 0.02)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "a sheet under the lid, by hand", float64(conductance(t, lined).Parts[0].UA),
		0.2/(2/6.1+0.06/0.028+0.02/0.033), 1e-12)
	for name, bad := range map[string]struct {
		sides     []Side
		thickness quantity.Metre
	}{
		"nothing left":   {[]Side{Inboard, Outboard}, 0.2},
		"negative":       {[]Side{Top}, -0.01},
		"not a number":   {[]Side{Top}, quantity.Metre(math.NaN())},
		"twice":          {[]Side{Top, Top}, 0.01},
		"no such side":   {[]Side{"left"}, 0.01},
		"more than half": {[]Side{Top, Bottom}, 0.21},
	} {
		if _, err := s.WithAddedFoam(bad.sides, bad.thickness); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// Conduction's own law: with films taken out, twice the foam passes half.
func TestDoubledFoam(t *testing.T) {
	for _, m := range materials {
		k, _ := Conductivity(m)
		u := func(thickness float64) float64 {
			withFilms := transmittance(8.3, 8.3, []slab{{thickness, k.Range.Typical}})
			return 1 / (1/withFilms - 2/8.3)
		}
		within(t, string(m), u(0.08)/u(0.04), 0.5, 1e-12)
	}
}

// Guards GainW: a sign turned on any neighbour fails.
func TestHotterGainsMore(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 2000 {
		c := conductance(t, anyBox(r))
		cabin, sea, box := quantity.Celsius(40*r.Float64()), quantity.Celsius(30*r.Float64()), quantity.Celsius(10*r.Float64())
		gain := c.GainW(box, cabin, sea, false)
		if c.GainW(box, cabin+1, sea, false) < gain || c.GainW(box, cabin, sea+1, false) < gain ||
			c.GainW(box, cabin, sea, true) < gain || c.GainW(box+1, cabin, sea, false) > gain {
			t.Fatalf("gain is not monotone: %+v", c)
		}
		var parts quantity.WattPerKelvin
		for _, p := range c.Parts {
			parts += p.UA
		}
		within(t, "parts against neighbours", float64(parts), float64(c.Total()), 1e-12*float64(parts))
		half := c.Scale(0.5)
		within(t, "half the leak", float64(half.GainW(box, cabin, sea, true)), float64(c.GainW(box, cabin, sea, true))/2, 1e-9)
		within(t, "half of a part", float64(half.Parts[0].UA), float64(c.Parts[0].UA)/2, 1e-12)
	}
	within(t, "nothing leaks: outside is the cabin", float64(Conductance{}.OutsideC(21, 10, true)), 21, 0)
}

func TestHourlyCallsAllocateNothing(t *testing.T) {
	c := conductance(t, plain())
	surface := NewSurface(9, 920)
	var sink float64
	n := testing.AllocsPerRun(100, func() {
		sink += float64(c.GainW(4, 27, 24, true)) + float64(c.OutsideC(27, 24, true))
		sink += float64(OpeningHeatKJ(60, 0.3, 27, 0.015, 4)) + SaturatedEnthalpyKJ(4)
		sink += float64(surface.FoodCelsius(12, 1, 27, 3)) + float64(MeltKgPerDay(30, 2))
	})
	if n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func TestSpecErrors(t *testing.T) {
	tests := map[string]func(*Spec){
		"no length":         func(s *Spec) { s.Inside.Length = 0 },
		"length of NaN":     func(s *Spec) { s.Inside.Width = quantity.Metre(math.NaN()) },
		"a room":            func(s *Spec) { s.Inside.Height = 6 },
		"a face twice":      func(s *Spec) { s.Faces[0].Side = Bottom },
		"no face":           func(s *Spec) { s.Faces[5].Side = "" },
		"unknown neighbour": func(s *Spec) { s.Faces[2].Neighbour = "lazarette" },
		"unknown material":  func(s *Spec) { s.Faces[2].Layers = []Layer{{"straw", Dry, 0.05}} },
		"unknown state":     func(s *Spec) { s.Faces[2].Layers = []Layer{{XPS, "moist", 0.05}} },
		"negative foam":     func(s *Spec) { s.Faces[2].Layers = []Layer{{XPS, Dry, -0.05}} },
		"foam of NaN":       func(s *Spec) { s.Faces[2].Layers = []Layer{{XPS, Dry, quantity.Metre(math.NaN())}} },
		"no lid":            func(s *Spec) { s.Lid = "" },
		"unknown seal":      func(s *Spec) { s.Seal = "tape" },
		"unknown drain":     func(s *Spec) { s.Drain = "hose" },
		"negative seal":     func(s *Spec) { s.LidPerimeter = -1 },
	}
	for name, spoil := range tests {
		s := plain()
		spoil(&s)
		if c, err := s.Conductance(); err == nil {
			t.Errorf("%s: no error, %g W/K", name, float64(c.Total()))
		}
	}
}

func TestCubeLike(t *testing.T) {
	d := CubeLike(110)
	within(t, "volume", float64(d.Volume()), 110, 1e-9)
	within(t, "height to width", float64(d.Height/d.Width), 1.1, 1e-12)
	within(t, "length to width", float64(d.Length/d.Width), 1, 1e-12)
}

// A range that is out of order, or a figure without a source, would reach the
// printed list of assumptions.
func TestFiguresAreInOrder(t *testing.T) {
	var all []Figure
	add := func(f Figure, err error) {
		if err != nil {
			t.Error(err)
		}
		all = append(all, f)
	}
	for _, m := range materials {
		add(Conductivity(m))
	}
	for _, s := range seals {
		add(SealLoss(s))
	}
	for _, d := range drains {
		add(DrainLoss(d))
	}
	for _, l := range []Lid{TopLid, FrontDoor} {
		add(SwapShare(l))
	}
	for _, k := range []IceKind{Block, Cubes, Crushed} {
		add(BulkDensity(k))
	}
	all = append(all, soakedConductivity())
	for _, f := range all {
		if !(0 <= f.Range.Low && f.Range.Low <= f.Range.Typical && f.Range.Typical <= f.Range.High) || f.Name == "" || f.Unit == "" || f.Source == "" {
			t.Errorf("out of order or without a word: %+v", f)
		}
	}
	for _, err := range []error{
		second(Conductivity("x")), second(MoistureFactor("x")), second(WaterContent(Soaked)), second(SealLoss("x")),
		second(DrainLoss("x")), second(SwapShare("x")), second(BulkDensity("x")), second(CapacityKg(10, 0.3, "x")),
	} {
		if err == nil {
			t.Error("a word that is not known passed")
		}
	}
}

func second[T any](_ T, err error) error { return err }
