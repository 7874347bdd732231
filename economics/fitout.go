package economics

import (
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// FitOut is the work that an option is reckoned with. The zero value is the
// boat as told.
type FitOut struct {
	// Habit has the box cold before a trip starts: ice is put in the day before;
	// a unit is run on shore power the day before or, where the boat sees none,
	// left running on its own sun.
	Habit    bool
	Seal     bool             // a new lid gasket
	Drain    bool             // the drain trapped or plugged
	LidFoam  quantity.Metre   // foam added to the face that the lid is in
	FaceFoam quantity.Metre   // foam added to every reachable face but the lid's
	Cover    bool             // an insulating cover over the contents
	Vent     bool             // ducted air with a fan for the condenser
	PanelWp  quantity.Watt    // rated watts of panel added
	Battery  quantity.AmpHour // nominal ampere-hours of battery added
}

// lidSide gives the face that the lid is in.
func (b Box) lidSide() heat.Side {
	if b.Lid == heat.FrontDoor {
		return heat.Inboard
	}
	return heat.Top
}

// reachable lists the faces, the lid's left out, where foam can be added.
func (b Box) reachable() []heat.Side {
	var sides []heat.Side
	for _, side := range heat.Sides {
		if side != b.lidSide() && b.Faces[side].Reach != NotReached {
			sides = append(sides, side)
		}
	}
	return sides
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
	add := func(sides []heat.Side, thickness quantity.Metre) error {
		if thickness <= 0 || len(sides) == 0 {
			return nil
		}
		for _, side := range sides {
			foamM2 += float64(heat.FaceArea(spec.Inside, side))
		}
		thicker, err := spec.WithAddedFoam(sides, thickness)
		if err == nil {
			spec = thicker
		}
		return err
	}
	if err := add([]heat.Side{b.lidSide()}, f.LidFoam); err != nil {
		return spec, 0, err
	}
	err = add(b.reachable(), f.FaceFoam)
	return spec, foamM2, err
}
