package heat

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/economics/quantity"
)

// Layer is one sheet of a wall.
type Layer struct {
	Material  Material // not read when the layer is missing or has no thickness
	State     State
	Thickness quantity.Metre // >= 0
}

// FaceSpec is one face of a box: its layers from the inside out, and what lies
// beyond them. No layers, or only missing ones, leaves the surface films.
type FaceSpec struct {
	Side      Side
	Layers    []Layer
	Neighbour Neighbour
}

// Spec describes a box's walls.
//
// Inside.Length runs fore and aft, Inside.Width from inboard to outboard. The
// faces may stand in any order but each side must be there once. The lid is
// the top face or, of a front door, the inboard face.
type Spec struct {
	Inside       quantity.Dimensions
	Faces        [6]FaceSpec
	Lid          Lid
	LidPerimeter quantity.Metre // length of the lid's seal, >= 0
	Seal         Seal
	Drain        Drain
}

// CubeLike gives the inside of a box of which only the volume is known: length
// to width to height as 1 : 1 : 1.1. Engineering judgement, from memory.
func CubeLike(volume quantity.Litre) quantity.Dimensions {
	side := quantity.Metre(math.Cbrt(float64(volume) / 1000 / 1.1))
	return quantity.Dimensions{Length: side, Width: side, Height: 1.1 * side}
}

// FaceArea gives the inside area of a face; of a side that is not known, none.
func FaceArea(inside quantity.Dimensions, side Side) quantity.SquareMetre {
	i, ok := sideIndex(side)
	if !ok {
		return 0
	}
	return quantity.SquareMetre(faceArea(inside, i))
}

// WithAddedFoam lines the given sides with a sheet of dry extruded polystyrene
// on the inside, which shrinks the box. It is an error when the sheet is less
// than nothing, when a side is not known or named twice, and when no box is left.
func (s Spec) WithAddedFoam(sides []Side, thickness quantity.Metre) (Spec, error) {
	if !(thickness >= 0) {
		return Spec{}, fmt.Errorf("added foam of %g mm; want 0 or more", 1000*float64(thickness))
	}
	var lined [6]bool
	for _, side := range sides {
		i, ok := sideIndex(side)
		if !ok || lined[i] {
			return Spec{}, fmt.Errorf("foam added to side %q; want each of top, bottom, inboard, outboard, fore, aft once at most", side)
		}
		lined[i] = true
		shrink(&s.Inside, i, thickness)
	}
	if in := s.Inside; !(in.Length > 0 && in.Width > 0 && in.Height > 0) {
		return Spec{}, fmt.Errorf("%g mm of foam leaves nothing of the box; want a thinner sheet", 1000*float64(thickness))
	}
	foam := Layer{Material: XPS, State: Dry, Thickness: thickness}
	for f := range s.Faces {
		if i, ok := sideIndex(s.Faces[f].Side); ok && lined[i] {
			s.Faces[f].Layers = append([]Layer{foam}, s.Faces[f].Layers...)
		}
	}
	return s, nil
}

// WithFoamBehind adds a sheet of dry extruded polystyrene behind the given
// sides, outside the box, which keeps its room. Sides that are not known are
// passed over; thickness is over 0.
func (s Spec) WithFoamBehind(sides []Side, thickness quantity.Metre) Spec {
	for f := range s.Faces {
		if slices.Contains(sides, s.Faces[f].Side) {
			layers := slices.Clone(s.Faces[f].Layers)
			s.Faces[f].Layers = append(layers, Layer{Material: XPS, State: Dry, Thickness: thickness})
		}
	}
	return s
}

func shrink(d *quantity.Dimensions, side int, by quantity.Metre) {
	switch axisOf(side) {
	case vertical:
		d.Height -= by
	case athwart:
		d.Width -= by
	case foreAndAft:
		d.Length -= by
	}
}

// A side is known by its place in Sides. Sides 2i and 2i+1 face each other
// across axis i.
const (
	vertical = iota
	athwart
	foreAndAft
)

func axisOf(side int) int { return side / 2 }

func sideIndex(s Side) (int, bool) {
	i := slices.Index(Sides[:], s)
	return i, i >= 0
}

// conductivity gives the conductivity of a layer as it lies, W/m·K.
func (l Layer) conductivity() (float64, error) {
	if l.State == Soaked {
		return soakedConductivity().Range.Typical, nil
	}
	dry, err := Conductivity(l.Material)
	if err != nil {
		return 0, err
	}
	f, err := MoistureFactor(l.Material)
	if err != nil {
		return 0, err
	}
	w, err := WaterContent(l.State)
	if err != nil {
		return 0, fmt.Errorf("foam state %q is not known; want dry, damp, wet, soaked or missing", l.State)
	}
	return moist(dry.Range.Typical, f, float64(w)), nil
}

// moist gives the conductivity of a filling with water in it: EN ISO 10456.
func moist(dryWPerMK, factor, waterShare float64) float64 {
	return dryWPerMK * math.Exp(factor*waterShare)
}

// slab is a sheet with its conductivity.
type slab struct{ thicknessM, wPerMK float64 }

// transmittance gives the heat through a square metre of wall per kelvin:
// films in W/m²·K and sheets, in series. An infinite film is a surface at the
// temperature of its surroundings.
func transmittance(filmIn, filmOut float64, slabs []slab) float64 {
	resistance := 1/filmIn + 1/filmOut
	for _, s := range slabs {
		resistance += s.thicknessM / s.wPerMK
	}
	return 1 / resistance
}

// films gives the inner and outer film of a side, for heat that flows into the box.
func films(side int, n Neighbour) (in, out float64) {
	switch Sides[side] {
	case Top:
		in = filmDownWPerM2K
	case Bottom:
		in = filmUpWPerM2K
	default:
		in = filmVerticalWPerM2K
	}
	if n == Sea {
		return in, filmWaterWPerM2K
	}
	return in, in
}
