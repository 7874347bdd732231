package economics

import (
	"slices"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// FitOut is the work and the habits that an option is reckoned with. The zero
// value is the boat as told.
type FitOut struct {
	// ColdStart has the box cold before a trip starts: ice is put in the day
	// before; a unit is run on shore power the day before or, where the boat sees
	// none, left running on its own sun.
	ColdStart   bool
	Seal        bool              // a new lid gasket
	Drain       bool              // the drain trapped or plugged
	LidFoam     quantity.Metre    // foam added to the face that the lid is in
	InsideFoam  quantity.Metre    // foam added inside every other face reached from there
	OutsideFoam quantity.Metre    // foam added behind every other face reached from outside
	Spacer      quantity.Fraction // of the box's length, filled by a loose block of foam at its fore end
	Poured      bool              // foam poured into the void round the liner
	Cover       bool              // an insulating cover over the contents
	IceShare    quantity.Fraction // of the box given to ice; 0 = as told
	NoIceRuns   bool              // ice is fetched only where food is bought, though the owner would run for it
	ByDay       bool              // the unit runs by day only
	Bottles     bool              // beside bottles of water that it freezes; only with ByDay
	Vent        bool              // ducted air with a fan for the condenser
	Alarm       bool              // a thermometer that sounds an alarm when the box gets warm
	PanelWp     quantity.Watt     // rated watts of panel added
	Battery     quantity.AmpHour  // nominal ampere-hours of battery added
}

// LidSide gives the face that the lid is in.
func (b Box) LidSide() heat.Side {
	if b.Lid == heat.FrontDoor {
		return heat.Inboard
	}
	return heat.Top
}

// Reached lists the faces, the lid's left out, where foam can be added from a side.
func (b Box) Reached(from Reach) []heat.Side {
	var sides []heat.Side
	for _, side := range heat.Sides {
		if side != b.LidSide() && b.Faces[side].Reach == from {
			sides = append(sides, side)
		}
	}
	return sides
}

// AreaM2 is the inside area of some faces.
func (b Box) AreaM2(sides []heat.Side) (m2 float64) {
	for _, side := range sides {
		m2 += float64(heat.FaceArea(b.shape(), side))
	}
	return m2
}

// apply gives the walls after the work, and the area of foam added.
func (f FitOut) apply(b Box) (spec heat.Spec, foamM2 float64, err error) {
	spec = b.spec()
	if f.Seal {
		spec.Seal = heat.GoodSeal
	}
	if f.Drain && spec.Drain == heat.OpenDrain {
		spec.Drain = heat.TrappedDrain
	}
	add := func(sides []heat.Side, thickness quantity.Metre, outside bool) error {
		if thickness <= 0 || len(sides) == 0 {
			return nil
		}
		for _, side := range sides {
			foamM2 += float64(heat.FaceArea(spec.Inside, side))
		}
		if outside {
			spec = spec.WithFoamBehind(sides, thickness)
			return nil
		}
		thicker, err := spec.WithAddedFoam(sides, thickness)
		if err == nil {
			spec = thicker
		}
		return err
	}
	lid := []heat.Side{b.LidSide()}
	if err := add(lid, f.LidFoam, b.Faces[lid[0]].Reach == FromOutside); err != nil {
		return spec, 0, err
	}
	if err := add(b.Reached(FromOutside), f.OutsideFoam, true); err != nil {
		return spec, 0, err
	}
	if err := add(b.Reached(FromInside), f.InsideFoam, false); err != nil {
		return spec, 0, err
	}
	if f.Poured {
		spec = spec.WithFoamBehind(b.poured(), b.pouredThickness())
	}
	if f.Spacer > 0 { // last: it stands in the box that is left
		spec, err = spec.WithAddedFoam([]heat.Side{heat.Fore}, spec.Inside.Length*quantity.Metre(f.Spacer))
	}
	return spec, foamM2, err
}

// poured lists the faces that foam runs behind when it is poured into the void:
// all but the one that the lid is in.
func (b Box) poured() []heat.Side {
	return slices.DeleteFunc(slices.Clone(heat.Sides[:]), func(side heat.Side) bool { return side == b.LidSide() })
}

// pouredFills is the part of a void that poured foam fills: it sets round bulges
// and leaves hollows. Engineering judgement, from memory.
const pouredFills = 0.7

// pouredThickness spreads what fills the void evenly behind those faces.
func (b Box) pouredThickness() quantity.Metre {
	return quantity.Metre(pouredFills * float64(b.VoidVolume) / 1000 / b.AreaM2(b.poured()))
}
