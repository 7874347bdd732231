package heat

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// within fails unless got is within tol of want.
func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g ± %.3g", what, got, want, tol)
	}
}

var bare = math.Inf(1) // film of a surface at the temperature of its surroundings

// Guards the resistance sum in transmittance: leaving out a film fails the
// Singh and Theodore rows, adding slabs as conductances fails the two of cork.
func TestTransmittance(t *testing.T) {
	tests := []struct {
		source          string
		filmIn, filmOut float64
		slabs           []slab
		differenceK     float64
		want, tol       float64 // W/m²
	}{
		{"Geankoplis, Transport Processes, ex. 4.3-1 (pine, cork board, concrete)", bare, bare,
			[]slab{{0.0127, 0.151}, {0.1016, 0.0433}, {0.0762, 0.768}}, 297.1 - 255.4, 16.48, 0.01},
		{"Dutta, Heat Transfer, ex. 2.1 (cement, cork, brick)", bare, bare,
			[]slab{{0.060, 0.72}, {0.100, 0.043}, {0.250, 0.70}}, 45, 16.27, 0.01},
		{"Dutta, ex. 2.1, with the 5.1 cm of cork more that saves 30 %", bare, bare,
			[]slab{{0.060, 0.72}, {0.151, 0.043}, {0.250, 0.70}}, 45, 0.70 * 16.27, 0.04},
		{"Theodore, Heat Transfer Applications, ill. ex. 19.5: 22.18 kW through a bare 8 × 3 m wall", bare, 21,
			nil, 44, 22180. / 24, 1},
		{"Theodore, ill. ex. 19.5: with 8.25 mm of cork a fifth is left", bare, 21,
			[]slab{{0.00825, 0.0433}}, 44, 0.2 * 22180 / 24, 0.2},
		{"Singh, Applied Thermodynamics, ex. 12.2: 112 kJ/h through 2 m², films of 40 and 50 kJ/m²hK", 40 / 3.6, 50 / 3.6,
			[]slab{{0.002, 160}, {0.050, 0.16 / 3.6}, {0.002, 160}}, 20, 112 / 3.6 / 2, 0.01 * 112 / 7.2},
		{"Incropera, prob. 1.12: 25 mm polystyrene, 2 and 20 °C", bare, bare,
			[]slab{{0.025, 0.023}}, 18, 16.56, 0.005},
	}
	for _, tt := range tests {
		within(t, tt.source, tt.differenceK*transmittance(tt.filmIn, tt.filmOut, tt.slabs), tt.want, tt.tol)
	}
}

// Guards EN ISO 10456's k = k_dry·exp(f·w) in moist, and the f of each foam.
// The standard's factor, computed from its f, at 2, 5 and 10 % of water.
func TestMoisture(t *testing.T) {
	tests := []struct {
		source   string
		material Material
		percent  [3]float64
	}{
		{"EN ISO 10456, polyurethane", Polyurethane, [3]float64{1.13, 1.35, 1.82}},
		{"EN ISO 10456, polyurethane of any age", OldPolyurethane, [3]float64{1.13, 1.35, 1.82}},
		{"EN ISO 10456, expanded polystyrene", EPS, [3]float64{1.08, 1.22, 1.49}},
		{"EN ISO 10456, extruded polystyrene", XPS, [3]float64{1.05, 1.13, 1.28}},
	}
	for _, tt := range tests {
		f, err := MoistureFactor(tt.material)
		if err != nil {
			t.Fatal(err)
		}
		for i, w := range [3]float64{0.02, 0.05, 0.10} {
			within(t, tt.source, moist(1, f, w), tt.percent[i], 0.006)
		}
	}
}

// The dry conductivities lie inside what handbooks and data sheets print, and
// so does each of its marks.
func TestDryConductivity(t *testing.T) {
	for _, row := range []struct {
		source    string
		material  Material
		low, high float64 // W/m·K
	}{
		{"new, faced foam 0.020 (from memory); cold-store wall table (Dossat) 0.025; fish-box studies 0.023 and 0.026", Polyurethane, 0.020, 0.026},
		{"CIBSE Guide A 0.028 board, 0.030 older gas-blown; EN 13165 ageing allowance of up to 0.006 on 0.020 to 0.027", OldPolyurethane, 0.025, 0.033},
		{"cold-store wall table (Dossat) 0.029; EN 13164 data sheet 0.035", XPS, 0.029, 0.035},
		{"Çengel, prob. 3-162, 0.033; cold-store wall table (Dossat) 0.036; EN 13163 boards to 0.040 (from memory)", EPS, 0.033, 0.040},
		{"Dutta, ex. 2.1, 0.043 and Geankoplis, ex. 4.3-1, 0.0433; dense cork 0.05", Cork, 0.041, 0.050},
	} {
		k, err := Conductivity(row.material)
		if err != nil || k.Range.Low < row.low || k.Range.High > row.high {
			t.Errorf("%s: %+v, %v", row.source, k.Range, err)
		}
	}
	if soaked := soakedConductivity().Range; soaked.High > 0.6 {
		t.Errorf("soaked foam conducts %g W/m·K, better than the water in it (0.6)", soaked.High)
	}
	damp, err := Layer{XPS, Damp, 0.1}.conductivity()
	if err != nil {
		t.Fatal(err)
	}
	within(t, "damp is 4 % of water: EN ISO 10456", damp, 0.033*1.10517, 1e-6)
	wet, err := Layer{OldPolyurethane, Wet, 0.1}.conductivity()
	if err != nil {
		t.Fatal(err)
	}
	within(t, "wet is 12 % of water: EN ISO 10456", wet, 0.028*2.05443, 1e-6)
}

// isothermal gives six walls of one thickness with surfaces at the
// temperatures of their surroundings.
func isothermal(inside quantity.Dimensions, thicknessM, wPerMK float64) [6]wall {
	var walls [6]wall
	for i := range walls {
		walls[i] = wall{faceArea(inside, i), thicknessM, transmittance(bare, bare, []slab{{thicknessM, wPerMK}}), Cabin}
	}
	return walls
}

// Guards shell: dropping the corners fails the cube (by 0.12 m of 18.36), a
// wrong edge length or edgeShape fails every row, double counting too.
func TestShapeFactor(t *testing.T) {
	tests := []struct {
		source    string
		inside    quantity.Dimensions
		thickness float64
		want, tol float64 // m
	}{
		{"Holman, Heat Transfer, ex. 3-2, and Kreith, ex. 2.9: cube furnace", quantity.Dimensions{Length: 0.5, Width: 0.5, Height: 0.5}, 0.1, 18.36, 1e-9},
		{"Incropera, prob. 4.20: outside 5 m, wall 0.35 m (S from memory)", quantity.Dimensions{Length: 4.3, Width: 4.3, Height: 4.3}, 0.35, 345.3, 0.1},
		// Solved once with finite volumes on two grids, extrapolated to none.
		{"three-dimensional finite volumes, 0.5 × 0.4 × 0.4 m", quantity.Dimensions{Length: 0.5, Width: 0.4, Height: 0.4}, 0.1, 14.19, 0.01 * 14.19},
		{"three-dimensional finite volumes, 0.4 × 0.3 × 0.3 m", quantity.Dimensions{Length: 0.4, Width: 0.3, Height: 0.3}, 0.15, 6.76, 0.01 * 6.76},
		{"three-dimensional finite volumes, the cube furnace", quantity.Dimensions{Length: 0.5, Width: 0.5, Height: 0.5}, 0.1, 18.44, 0.01 * 18.44},
	}
	for _, tt := range tests {
		c := shell(tt.inside, isothermal(tt.inside, tt.thickness, 1))
		within(t, tt.source, float64(c.Total()), tt.want, tt.tol)
		if len(c.Notes) > 0 {
			t.Errorf("%s: unexpected note %q", tt.source, c.Notes)
		}
	}
}

// Guards shell and GainW together, through the published watts.
func TestFurnaces(t *testing.T) {
	cube := quantity.Dimensions{Length: 0.5, Width: 0.5, Height: 0.5}
	c := shell(cube, isothermal(cube, 0.1, 1.04))
	within(t, "Holman ex. 3-2, W from 500 to 50 °C", float64(c.GainW(50, 500, 500, false)), 8592, 1)

	// Incropera, prob. 4.20: h 5 W/m²K on the outside of 5 m, 1100 to 25 °C;
	// R_conv 0.00133 K/W as printed, 316 kW from memory.
	big := quantity.Dimensions{Length: 4.3, Width: 4.3, Height: 4.3}
	c = shell(big, isothermal(big, 0.35, 1.4))
	within(t, "Incropera prob. 4.20, W", 1075/(1/float64(c.Total())+1/(5*6*25.)), 316e3, 300)
}

// Areas taken outside overstate, inside ones alone understate: the same 80 L
// box by 70 and 21 %, from the shape factor 14.13 m of the rows above.
func TestShapeFactorAgainstAreas(t *testing.T) {
	in := quantity.Dimensions{Length: 0.5, Width: 0.4, Height: 0.4}
	out := quantity.Dimensions{Length: 0.7, Width: 0.6, Height: 0.6}
	s := float64(shell(in, isothermal(in, 0.1, 1)).Total())
	var inside, outside float64
	for _, side := range Sides {
		inside += float64(FaceArea(in, side)) / 0.1
		outside += float64(FaceArea(out, side)) / 0.1
	}
	within(t, "outside area over shape factor", outside/s, 1.70, 0.01)
	within(t, "inside area over shape factor", inside/s, 0.79, 0.005)
	within(t, "80 L box, 100 mm of 0.025: UA of the walls", 0.025*s, 0.353, 0.0005)
}

// plain is an 80 L box of 60 mm old polyurethane all round, in the cabin.
func plain() Spec {
	return uniform(quantity.Dimensions{Length: 0.5, Width: 0.4, Height: 0.4}, Layer{OldPolyurethane, Dry, 0.060})
}

func uniform(inside quantity.Dimensions, layers ...Layer) Spec {
	s := Spec{Inside: inside, Lid: TopLid, LidPerimeter: 1.4, Seal: GoodSeal, Drain: NoDrain}
	for i, side := range Sides {
		s.Faces[i] = FaceSpec{Side: side, Layers: layers, Neighbour: Cabin}
	}
	return s
}

func conductance(t *testing.T, s Spec) Conductance {
	t.Helper()
	c, err := s.Conductance()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Added up by hand, U in W/m²K: sides 1/(2/8.3+0.06/0.028) = 0.41948, top
// 1/(2/6.1+0.06/0.028) = 0.40475, bottom 1/(2/9.3+0.06/0.028) = 0.42412.
// Faces: 0.4·0.5 = 0.2 m² top, bottom, inboard, outboard; 0.16 fore and aft.
// 0.2·(0.40475+0.42412+2·0.41948) + 0.32·0.41948 = 0.467799.
// Edges: 0.54·Σ length·mean(U·t), corners 0.15·Σ mean(U·t)·0.06, seal 0.08·1.4.
func TestConductanceByHand(t *testing.T) {
	s := plain()
	s.Drain = OpenDrain
	c := conductance(t, s)

	uT, uB, uS := 1/(2/6.1+0.06/0.028), 1/(2/9.3+0.06/0.028), 1/(2/8.3+0.06/0.028)
	faces := 0.2*(uT+uB+2*uS) + 0.32*uS
	// Long edges, 0.5 m: two at the top, two at the bottom (areas 0.2 and 0.2).
	// Short edges, 0.4 m: two at the top and two at the bottom (0.2 against
	// 0.16), four upright between sides.
	long := 0.5 * (2*(uT+uS)/2 + 2*(uB+uS)/2)
	short := 0.4 * (2*(0.2*uT+0.16*uS)/0.36 + 2*(0.2*uB+0.16*uS)/0.36 + 4*uS)
	edges := 0.54 * 0.06 * (long + short)
	corners := 0.15 * 0.06 * 0.06 * 4 * ((uT+2*uS)/3 + (uB+2*uS)/3)
	for i, want := range []float64{0.2 * uT, 0.2 * uB, 0.2 * uS, 0.2 * uS, 0.16 * uS, 0.16 * uS, edges, corners, 0.112, 0.15} {
		within(t, "part "+c.Parts[i].Name+" "+string(c.Parts[i].Side), float64(c.Parts[i].UA), want, 1e-12)
	}
	within(t, "total", float64(c.Total()), faces+edges+corners+0.112+0.15, 1e-12)
	within(t, "faces as printed above", faces, 0.467799, 1e-5)
}

// Guards share, towards and GainW: each neighbour gets its own face, half of
// that face's edges, a third of its corners; the lid's seal goes where the lid
// is, the drain to the cabin.
func TestNeighbours(t *testing.T) {
	whole := conductance(t, plain())
	s := plain()
	s.Faces[3].Neighbour = Engine // outboard
	s.Drain = OpenDrain
	c := conductance(t, s)
	uS, uT, uB := 1/(2/8.3+0.06/0.028), 1/(2/6.1+0.06/0.028), 1/(2/9.3+0.06/0.028)
	edges := 0.54 * 0.06 * (0.5*((uT+uS)/2+(uB+uS)/2) + 0.4*2*uS)
	corners := 0.15 * 0.06 * 0.06 * 2 * ((uT+2*uS)/3 + (uB+2*uS)/3)
	within(t, "engine's share", float64(c.Engine), 0.2*uS+edges/2+corners/3, 1e-12)
	within(t, "total with the drain", float64(c.Total()), float64(whole.Total())+0.15, 1e-12)
	within(t, "gain at 25/5 °C, motoring", float64(c.GainW(5, 25, 15, true)), 20*float64(c.Total())+8*float64(c.Engine), 1e-12)
	within(t, "gain at 25/5 °C, at anchor", float64(c.GainW(5, 25, 15, false)), 20*float64(c.Total()), 1e-12)

	s = plain()
	s.Faces[0].Neighbour = Deck
	c = conductance(t, s)
	within(t, "deck in sun is 3 K over the cabin", float64(c.GainW(5, 25, 15, false)), 20*float64(c.Total())+3*float64(c.Deck), 1e-12)
	if seal := 0.08 * 1.4; float64(c.Deck) < 0.2*uT+seal {
		t.Errorf("deck has %.4f W/K; want at least the top face and its seal", float64(c.Deck))
	}
	s.Lid = FrontDoor
	if front := conductance(t, s); !(front.Deck < c.Deck) {
		t.Errorf("a front door leaves its seal to the deck: %g, %g", front.Deck, c.Deck)
	}

	s = plain()
	s.Faces[3].Neighbour = Sea
	c = conductance(t, s)
	uSea := 1 / (1/8.3 + 1/500. + 0.06/0.028)
	within(t, "face against the sea", float64(c.Parts[3].UA), 0.2*uSea, 1e-12)
	within(t, "sea at 15 °C", float64(c.GainW(5, 25, 15, true)), 20*float64(c.Cabin)+10*float64(c.Sea), 1e-12)
	within(t, "one outside temperature for all", float64(c.Total())*float64(c.OutsideC(25, 15, true)-5), float64(c.GainW(5, 25, 15, true)), 1e-9)
}

// Guards the leaving out of missing layers in FaceSpec.wall.
func TestMissingFoam(t *testing.T) {
	dims := plain().Inside
	films := conductance(t, uniform(dims))
	gone := conductance(t, uniform(dims, Layer{State: Missing, Thickness: 0.05}))
	within(t, "missing foam is films only", float64(gone.Total()), float64(films.Total()), 0)
	within(t, "side face of films only", float64(films.Parts[2].UA), 0.2/(2/8.3), 1e-12)
	within(t, "two layers are one of both", float64(conductance(t, uniform(dims, Layer{XPS, Dry, 0.03}, Layer{XPS, Dry, 0.02})).Total()),
		float64(conductance(t, uniform(dims, Layer{XPS, Dry, 0.05})).Total()), 1e-12)
}

// Edges and corners by the shape factors of Langmuir 1913, half of them at 15
// mm. Guards noRimM and fullRimM.
func TestEdgesFadeIn(t *testing.T) {
	rim := func(mm float64) float64 {
		c := conductance(t, uniform(quantity.Dimensions{Length: 0.5, Width: 0.5, Height: 0.5}, Layer{XPS, Dry, quantity.Metre(mm / 1000)}))
		return float64(c.Parts[6].UA + c.Parts[7].UA)
	}
	want := func(mm float64) float64 { // a cube: the mean over its six faces
		var ut float64
		for _, film := range []float64{6.1, 9.3, 8.3, 8.3, 8.3, 8.3} {
			ut += mm / 1000 / (2/film + mm/1000/0.033) / 6
		}
		return ut * (12*0.54*0.5 + 8*0.15*mm/1000)
	}
	for mm, share := range map[float64]float64{5: 0, 10: 0, 15: 0.5, 20: 1, 40: 1} {
		within(t, fmt.Sprintf("edges and corners at %g mm", mm), rim(mm), share*want(mm), 1e-9)
	}
}

// Guards the fading in of edges: a step at any thickness fails, as do edges
// that come in faster than the foam keeps heat out.
func TestMoreFoamNeverLeaksMore(t *testing.T) {
	for _, m := range []Material{OldPolyurethane, XPS, Cork} {
		for _, state := range []State{Dry, Wet, Soaked} {
			for _, volume := range []quantity.Litre{10, 80, 300} {
				before := math.Inf(1)
				for mm := 0.0; mm <= 120; mm += 0.25 {
					leak := float64(conductance(t, uniform(CubeLike(volume), Layer{m, state, quantity.Metre(mm / 1000)})).Total())
					if leak > before || leak < 0.96*before && mm > 0 {
						t.Fatalf("%s, %s, %g L, %g mm: %g W/K after %g", m, state, float64(volume), mm, leak, before)
					}
					before = leak
				}
			}
		}
	}
}

// Langmuir 1913 and Holman: inside lengths over a fifth of the wall. Guards
// shapeLengthPerWall.
func TestTooSmallForItsWalls(t *testing.T) {
	s := uniform(quantity.Dimensions{Length: 0.3, Width: 0.3, Height: 0.019}, Layer{XPS, Dry, 0.1})
	if c := conductance(t, s); len(c.Notes) != 1 {
		t.Errorf("got notes %q; want one on the walls", c.Notes)
	}
	s.Inside.Height = 0.021
	if c := conductance(t, s); len(c.Notes) != 0 {
		t.Errorf("got notes %q; want none", c.Notes)
	}
}

// Guards the figures that errors quote.
func TestErrorsOfAddedFoamQuoteIt(t *testing.T) {
	for mm, want := range map[float64]string{300: "300 mm of foam leaves nothing", -5: "added foam of -5 mm"} {
		_, err := plain().WithAddedFoam([]Side{Inboard, Outboard}, quantity.Metre(mm/1000))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%g mm: %v, want %q", mm, err, want)
		}
	}
}
