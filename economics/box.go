package economics

import (
	"math"
	"slices"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// shape gives the inside dimensions, near-cubic when only a volume is known.
func (b Box) shape() quantity.Dimensions {
	if b.Inside.Zero() {
		return heat.CubeLike(b.Volume)
	}
	return b.Inside
}

// spec describes the box as it stands to the heat ledger.
func (b Box) spec() heat.Spec {
	inside := b.shape()
	s := heat.Spec{Inside: inside, Lid: b.Lid, Seal: b.LidSeal, Drain: b.Drain, LidPerimeter: b.lidPerimeter()}
	for i, side := range heat.Sides {
		f := b.Faces[side]
		s.Faces[i] = heat.FaceSpec{Side: side, Neighbour: f.Neighbour}
		if f.State != heat.Missing && f.Foam > 0 {
			s.Faces[i].Layers = []heat.Layer{{Material: f.Material, State: f.State, Thickness: f.Foam}}
		}
	}
	return s
}

// lidPerimeter gives the length of the lid's seal: of the opening when told,
// else of the whole top (a chest) or inboard face (a front door).
func (b Box) lidPerimeter() quantity.Metre {
	if b.LidOpening.Length > 0 && b.LidOpening.Width > 0 {
		return 2 * (b.LidOpening.Length + b.LidOpening.Width)
	}
	in := b.shape()
	if b.Lid == heat.FrontDoor {
		return 2 * (in.Length + in.Height)
	}
	return 2 * (in.Length + in.Width)
}

// turningOut gives the box as it may turn out to be when it is opened.
func (b Box) turningOut(c FoamCase) Box {
	if c == FoamAsTold {
		return b
	}
	faces := make(map[heat.Side]Face, len(b.Faces))
	for side, f := range b.Faces {
		if c == BareAllRound || side == heat.Bottom {
			f.State = heat.Missing
		}
		faces[side] = f
	}
	b.Faces = faces
	return b
}

// chestSpec describes a free-standing chest of the given volume.
func chestSpec(volume quantity.Litre) heat.Spec {
	inside := heat.CubeLike(volume)
	s := heat.Spec{Inside: inside, Lid: heat.TopLid, Seal: heat.GoodSeal, Drain: heat.NoDrain, LidPerimeter: 2 * (inside.Length + inside.Width)}
	for i, side := range heat.Sides {
		s.Faces[i] = heat.FaceSpec{Side: side, Neighbour: heat.Cabin,
			Layers: []heat.Layer{{Material: heat.Polyurethane, State: heat.Dry, Thickness: quantity.Metre(heat.ChestFoam().Range.Typical)}}}
	}
	return s
}

// foamKnown reports whether foam and its state were told rather than assumed.
func (b Boat) foamKnown() bool {
	return b.toldOfFaces("foam") && b.toldOfFaces("state")
}

// toldOfFaces reports whether the owner gave an item of the whole box or of any
// single face.
func (b Boat) toldOfFaces(item string) bool {
	return b.Told("box."+item) || slices.ContainsFunc(heat.Sides[:], func(side heat.Side) bool {
		return b.Told("box.faces." + string(side) + "." + item)
	})
}

// Told reports whether the answer of a key is the owner's own, or from a test.
func (b Boat) Told(key string) bool {
	how := b.Known[key]
	return how == quantity.Told || how == quantity.Measured
}

// thinnestFoam gives the thinnest foam of any face.
func (b Box) thinnestFoam() quantity.Metre {
	thinnest := quantity.Metre(math.Inf(1))
	for _, f := range b.Faces {
		if f.State == heat.Missing {
			return 0
		}
		thinnest = min(thinnest, f.Foam)
	}
	return thinnest
}

// worstState gives the wettest state of any face.
func (b Box) worstState() heat.State {
	order := []heat.State{heat.Dry, heat.Damp, heat.Wet, heat.Soaked, heat.Missing}
	worst := 0
	for _, f := range b.Faces {
		for i, s := range order {
			if f.State == s {
				worst = max(worst, i)
			}
		}
	}
	return order[worst]
}
