package economics

import (
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Freezing is how much the crew wants frozen aboard by a unit.
type Freezing string

// The wishes.
const (
	FreezesNothing Freezing = "nothing"
	FreezesCubes   Freezing = "cubes" // a tray of ice cubes a day
	FreezesMeals   Freezing = "meals" // a few meals kept frozen
)

// freezingWishes lists what may be wanted beyond nothing.
var freezingWishes = [2]Freezing{FreezesCubes, FreezesMeals}

// corner is the part of the cold space that is kept frozen.
type corner struct {
	litres   float64
	kgPerDay float64 // of water, or of what freezes like it, frozen in a day
}

// corner gives what a wish asks of the box. Engineering judgement, from memory.
func (f Freezing) corner() corner {
	switch f {
	case FreezesCubes:
		return corner{litres: 5, kgPerDay: 0.4}
	case FreezesMeals:
		return corner{litres: 14, kgPerDay: 0.8}
	}
	return corner{}
}

const (
	// A plate that freezes runs at this temperature or colder whenever it runs.
	// Common practice, no source.
	freezingPlateC = -12
	// What is frozen ends at this temperature. Engineering judgement, from memory.
	frozenC = -10
	// The corner has so much of the walls at most. Engineering judgement, from memory.
	mostCornerShare = 0.8
)

// FreezeKJPerKg gives the heat to be taken from a kilogram of water at a
// temperature, 0 °C or more, until it is ice at -10 °C.
func FreezeKJPerKg(from quantity.Celsius) float64 {
	return heat.WaterKJPerKgK*max(0, float64(from)) + heat.FusionKJPerKg - heat.IceKJPerKgK*frozenC
}

// wallShare gives the part of the walls' leak that lies behind the corner: a
// like shape of its own volume.
func (c corner) wallShare(boxL float64) float64 {
	if c.litres <= 0 || boxL <= 0 {
		return 0
	}
	return min(mostCornerShare, math.Pow(c.litres/boxL, 2.0/3))
}

// corner is the frozen one of the proposal's unit; none where nothing freezes.
func (p *proposal) corner() corner {
	if p.unit == nil {
		return corner{}
	}
	return p.boat.Food.Freeze.corner()
}

// cornerW gives the heat that a frozen corner adds in a month, 0 for January:
// its walls leak to a colder space, and what is to be frozen comes from the cabin.
func (p *proposal) cornerW(month int) float64 {
	c := p.corner()
	if c.litres <= 0 {
		return 0
	}
	colder := float64(p.boat.Food.Target) - freezingPlateC
	return float64(p.leak().Total())*c.wallShare(p.volumeL)*colder + c.kgPerDay*FreezeKJPerKg(quantity.Celsius(p.cabinC(month)))/86.4
}

// cabinC gives the mean cabin of a month, 0 for January.
func (p *proposal) cabinC(month int) float64 {
	var mean float64
	for _, c := range p.world.months[month].OutdoorC {
		mean += c / 24
	}
	return mean + float64(p.boat.Box.CabinOffset)
}

// cornerWPerK gives the same heat as one that grows with the cabin's warmth over
// the food, as the hours take it: exact in the hottest month aboard, less in
// cooler ones.
func (p *proposal) cornerWPerK() float64 {
	w := p.cornerW(p.world.aboard)
	if w <= 0 {
		return 0
	}
	const least = 3 // K, so that a cool ground gives no absurd conductance
	return w / max(least, p.cabinC(p.world.aboard)-float64(p.boat.Food.Target))
}

// freezing makes a cycle's plate cold enough to freeze whenever it runs: it is so
// much smaller against its compressor.
func (p *proposal) freezing(c energy.Cycle) energy.Cycle {
	if p.corner().litres <= 0 || c.Stores { // a plate that stores cold is that cold already
		return c
	}
	deep := c.Evaporating(freezingPlateC, quantity.Celsius(p.cabinC(p.world.aboard)))
	depth := float64(p.boat.Food.Target) - freezingPlateC
	c.Plate = min(c.Plate, quantity.WattPerKelvin(float64(deep.CapacityW)/depth))
	return c
}

// FreezingFigures is what freezing takes with one unit and its work, steady, in
// the hottest month aboard.
type FreezingFigures struct {
	Option   OptionID
	Wish     Freezing
	AhPerDay float64 // of the unit, with the wish
	MoreAh   float64 // beyond what it takes with nothing frozen
	RunShare float64 // over 1 it cannot hold the box
	PlateC   float64
	CornerL  float64
	PanelWp  float64 // rated watts of panel that give what it takes more; 0 without sun
}

// weighFreezing works out what each wish takes with each unit, in the box that its
// work makes of hers.
func (r *Reckoning) weighFreezing(s *study) error {
	for _, id := range [2]OptionID{SmallUnit, LargerUnit} {
		at := func(wish Freezing) (UnitFigures, *proposal, error) {
			b := r.Boat
			b.Food.Freeze = wish
			p, err := newProposal(&b, s.book, s.world, s.scale, id, r.Of(id).Fit.Out)
			if err != nil {
				return UnitFigures{}, nil, err
			}
			return p.unitFigures(), p, nil
		}
		none, p, err := at(FreezesNothing)
		if err != nil {
			return err
		}
		r.SunWhPerWp = p.sunWhPerWp()
		for _, wish := range freezingWishes {
			with, _, err := at(wish)
			if err != nil {
				return err
			}
			f := FreezingFigures{Option: id, Wish: wish, AhPerDay: with.AhPerDay, MoreAh: with.AhPerDay - none.AhPerDay,
				RunShare: with.RunShare, PlateC: with.PlateC, CornerL: wish.corner().litres}
			if r.SunWhPerWp > 0 {
				f.PanelWp = (with.WhPerDay - none.WhPerDay) / r.SunWhPerWp
			}
			r.Freezing = append(r.Freezing, f)
		}
	}
	return nil
}

// sunWhPerWp gives what a rated watt of panel, mounted as the boat's, yields on a
// mean day of the hottest month aboard, Wh.
func (p *proposal) sunWhPerWp() float64 {
	s := p.setup(&Typical)
	const rated = 100
	s.Power.Panel = energy.Panel{Wp: rated, Mounting: p.boat.Power.Mounting, Controller: p.boat.Power.Controller}.Chain()
	return s.SunWh(p.world.aboard) / rated
}
