package heat

import (
	"fmt"
	"slices"

	"coldreckon/economics/quantity"
)

// Part is one way for heat into the box.
type Part struct {
	Name string // "face", "edges", "corners", "seal" or "drain"
	Side Side   // of a face; empty for the others
	UA   quantity.WattPerKelvin
}

// The names of parts.
const (
	FacePart    = "face"
	edgesPart   = "edges"
	cornersPart = "corners"
	SealPart    = "seal"
	DrainPart   = "drain"
)

// Conductance is the heat that leaks into a box per kelvin, by what lies
// outside. All are >= 0.
type Conductance struct {
	Cabin, Sea, Engine, Deck quantity.WattPerKelvin // see Neighbour

	Parts []Part   // the same total by its ways in: six faces in the order of Sides, then the rest
	Notes []string // doubts about the reckoning, in plain words
}

// wall is one face, ready to be added up.
type wall struct {
	areaM2     float64
	thicknessM float64 // of the layers that are there
	uWPerM2K   float64
	neighbour  Neighbour
}

// Conductance adds up faces with their films, edges, corners, lid seal and
// drain, from inside lengths and areas.
//
// An edge counts 0.54 of its length times the area-weighted mean of U·t of its
// two faces, half of it towards the neighbour of each; a corner 0.15 of the
// mean U·t times the mean t of its three faces, a third towards the neighbour
// of each (Langmuir, Adams and Meikle 1913, with the films drawn into the
// conductivity). What a face brings to its edges and corners fades in between
// 10 and 20 mm of foam. The seal belongs to the lid's neighbour, the drain to
// the cabin.
//
// A length, thickness or word that cannot be is an error. A box too small for
// its walls, where the edge and corner terms no longer hold, is a note.
func (s Spec) Conductance() (Conductance, error) {
	walls, err := s.walls()
	if err != nil {
		return Conductance{}, err
	}
	lidSide, err := s.lidSide()
	if err != nil {
		return Conductance{}, err
	}
	seal, err := SealLoss(s.Seal)
	if err != nil {
		return Conductance{}, err
	}
	drain, err := DrainLoss(s.Drain)
	if err != nil {
		return Conductance{}, err
	}
	if !(s.LidPerimeter >= 0) || s.LidPerimeter > 20 {
		return Conductance{}, fmt.Errorf("lid perimeter of %g m; want 0 to 20", float64(s.LidPerimeter))
	}
	c := shell(s.Inside, walls)
	c.add(SealPart, "", seal.Range.Typical*float64(s.LidPerimeter), walls[lidSide].neighbour)
	c.add(DrainPart, "", drain.Range.Typical, Cabin)
	return c, nil
}

// walls checks the box and gives its faces in the order of Sides.
func (s Spec) walls() ([6]wall, error) {
	var out [6]wall
	if err := checkInside(s.Inside); err != nil {
		return out, err
	}
	var seen [6]bool
	for _, face := range s.Faces {
		i, ok := sideIndex(face.Side)
		if !ok || seen[i] {
			return out, fmt.Errorf("face %q; want each of top, bottom, inboard, outboard, fore, aft once", face.Side)
		}
		seen[i] = true
		w, err := face.wall(i)
		if err != nil {
			return out, fmt.Errorf("%s face: %w", face.Side, err)
		}
		w.areaM2 = faceArea(s.Inside, i)
		out[i] = w
	}
	return out, nil
}

func checkInside(d quantity.Dimensions) error {
	for _, l := range [...]quantity.Metre{d.Length, d.Width, d.Height} {
		if !(l > 0) || l > 5 {
			return fmt.Errorf("inside of %g × %g × %g m; want each length over 0 and up to 5 m",
				float64(d.Length), float64(d.Width), float64(d.Height))
		}
	}
	return nil
}

func (f FaceSpec) wall(side int) (wall, error) {
	switch f.Neighbour {
	case Cabin, Sea, Engine, Deck:
	default:
		return wall{}, fmt.Errorf("neighbour %q is not known; want cabin, sea, engine or deck", f.Neighbour)
	}
	w := wall{neighbour: f.Neighbour}
	slabs := make([]slab, 0, len(f.Layers))
	for _, l := range f.Layers {
		if !(l.Thickness >= 0) || l.Thickness > 1 {
			return wall{}, fmt.Errorf("foam of %g mm; want 0 to 1000", 1000*float64(l.Thickness))
		}
		if l.State == Missing || l.Thickness == 0 {
			continue
		}
		k, err := l.conductivity()
		if err != nil {
			return wall{}, err
		}
		slabs = append(slabs, slab{float64(l.Thickness), k})
		w.thicknessM += float64(l.Thickness)
	}
	in, out := films(side, f.Neighbour)
	w.uWPerM2K = transmittance(in, out, slabs)
	return w, nil
}

func (s Spec) lidSide() (int, error) {
	switch s.Lid {
	case TopLid:
		return slices.Index(Sides[:], Top), nil
	case FrontDoor:
		return slices.Index(Sides[:], Inboard), nil
	}
	return 0, fmt.Errorf("lid %q is not known; want top or front", s.Lid)
}

// across gives the inside length along each axis, in metres.
func across(d quantity.Dimensions) [3]float64 {
	return [3]float64{vertical: float64(d.Height), athwart: float64(d.Width), foreAndAft: float64(d.Length)}
}

func faceArea(d quantity.Dimensions, side int) float64 {
	l := across(d)
	a := axisOf(side)
	return l[(a+1)%3] * l[(a+2)%3]
}

// shell adds up faces, edges and corners.
func shell(inside quantity.Dimensions, walls [6]wall) Conductance {
	length := across(inside)
	c := Conductance{Parts: make([]Part, 0, 10)}
	for i, w := range walls {
		c.add(FacePart, Sides[i], w.areaM2*w.uWPerM2K, w.neighbour)
	}

	c.Parts = append(c.Parts, Part{Name: edgesPart}, Part{Name: cornersPart})
	edges, corners := &c.Parts[6], &c.Parts[7]
	thickest := 0.0
	for i, w := range walls {
		if w.rimWPerMK() > 0 {
			thickest = max(thickest, w.thicknessM)
		}
		for j := i + 1; j < 6; j++ {
			if axisOf(i) == axisOf(j) {
				continue
			}
			along := 3 - axisOf(i) - axisOf(j)
			c.share(edges, edgeShape*length[along]*meanByArea(w, walls[j]), w, walls[j])
			for k := j + 1; k < 6; k++ {
				if axisOf(k) == along {
					c.share(corners, cornerConductance(w, walls[j], walls[k]), w, walls[j], walls[k])
				}
			}
		}
	}
	for _, l := range length {
		if l <= thickest*shapeLengthPerWall {
			c.Notes = append(c.Notes, "the walls are more than five times as thick as the box is wide, so the heat through its edges and corners is a rough guess")
			break
		}
	}
	return c
}

// rimWPerMK gives U·t, the conductivity that a face's edges and corners see
// with the films drawn in, faded out where there is too little foam for them to count.
func (w wall) rimWPerMK() float64 {
	seen := min(1, max(0, (w.thicknessM-noRimM)/(fullRimM-noRimM)))
	return seen * w.uWPerM2K * w.thicknessM
}

func meanByArea(a, b wall) float64 {
	return (a.areaM2*a.rimWPerMK() + b.areaM2*b.rimWPerMK()) / (a.areaM2 + b.areaM2)
}

func cornerConductance(a, b, c wall) float64 {
	meanRim := (a.rimWPerMK() + b.rimWPerMK() + c.rimWPerMK()) / 3
	meanThickness := (a.thicknessM + b.thicknessM + c.thicknessM) / 3
	return cornerShape * meanRim * meanThickness
}

// add books a part and the whole of its heat to one neighbour.
func (c *Conductance) add(name string, side Side, ua float64, n Neighbour) {
	c.Parts = append(c.Parts, Part{Name: name, Side: side, UA: quantity.WattPerKelvin(ua)})
	*c.towards(n) += quantity.WattPerKelvin(ua)
}

// share books heat to a part, and in equal shares to the neighbours of the walls that meet there.
func (c *Conductance) share(p *Part, ua float64, meeting ...wall) {
	p.UA += quantity.WattPerKelvin(ua)
	for _, w := range meeting {
		*c.towards(w.neighbour) += quantity.WattPerKelvin(ua / float64(len(meeting)))
	}
}

func (c *Conductance) towards(n Neighbour) *quantity.WattPerKelvin {
	switch n {
	case Sea:
		return &c.Sea
	case Engine:
		return &c.Engine
	case Deck:
		return &c.Deck
	}
	return &c.Cabin
}

// Total gives the leak to all neighbours together.
func (c Conductance) Total() quantity.WattPerKelvin { return c.Cabin + c.Sea + c.Engine + c.Deck }

// Scale multiplies every part by a factor over 0: a measured leak scales each
// face of the drawing alike.
func (c Conductance) Scale(factor float64) Conductance {
	f := quantity.WattPerKelvin(factor)
	c.Cabin, c.Sea, c.Engine, c.Deck = c.Cabin*f, c.Sea*f, c.Engine*f, c.Deck*f
	parts := make([]Part, len(c.Parts))
	for i, p := range c.Parts {
		p.UA *= f
		parts[i] = p
	}
	c.Parts = parts
	return c
}

// GainW gives the heat through the walls, W, at steady temperatures; it is
// negative where the box is the warmer side. The engine space counts 8 K over
// the cabin while motoring, the deck 3 K over it always, as a mean over the day.
func (c Conductance) GainW(box, cabin, sea quantity.Celsius, motoring bool) quantity.Watt {
	over := quantity.Kelvin(cabin - box)
	gain := float64(c.Cabin)*float64(over) + float64(c.Sea)*float64(sea-box) + float64(c.Deck)*float64(over+deckOverCabin)
	if motoring {
		over += engineOverCabin
	}
	return quantity.Watt(gain + float64(c.Engine)*float64(over))
}

// OutsideC gives the one outside temperature that drives the same heat: the
// mean over the neighbours, weighted by their conductance. Without any
// conductance it is the cabin's.
func (c Conductance) OutsideC(cabin, sea quantity.Celsius, motoring bool) quantity.Celsius {
	if c.Total() == 0 {
		return cabin
	}
	return quantity.Celsius(float64(c.GainW(0, cabin, sea, motoring)) / float64(c.Total()))
}
