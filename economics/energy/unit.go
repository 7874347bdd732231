package energy

import (
	"math"

	"coldreckon/economics/quantity"
)

// Unit is a compressor unit as an owner knows it.
type Unit struct {
	RatedW   quantity.Watt // cooling at the rating point, -10/45 °C; 10 to 500 W
	Eta      float64       // share of Carnot's efficiency, see Eta; 0.15 to 0.6
	CooledBy Condenser     // anything unknown counts as LockerFan
	Plate    Plate         // anything unknown counts as Thin
}

// Cycle gives the unit's numbers at their typical values. Its plate grows with
// a cooling power over 50 W, so that of two units on like compressors neither
// works at a colder plate than the other.
func (u Unit) Cycle() Cycle {
	size := max(1, float64(u.RatedW)/plateRatedW)
	return Cycle{
		Rated:     u.RatedW,
		Eta:       u.Eta,
		Plate:     quantity.WattPerKelvin(size * PlateConductance(u.Plate).Typical),
		Rise:      quantity.Kelvin(CondenserRise(u.CooledBy).Typical),
		Condenser: quantity.Watt(CondenserPower(u.CooledBy).Typical),
		Standby:   quantity.Watt(Standby().Typical),
		Stores:    u.Plate == Eutectic,
	}
}

// Working is Cycle().Working.
func (u Unit) Working(box, coolant quantity.Celsius) Work { return u.Cycle().Working(box, coolant) }

// Cycle is a unit as numbers, ready for use hour after hour.
type Cycle struct {
	Rated     quantity.Watt          // cooling at -10/45 °C
	Eta       float64                // share of Carnot's efficiency
	Plate     quantity.WattPerKelvin // box air to evaporator
	Rise      quantity.Kelvin        // condensing temperature over coolant
	Condenser quantity.Watt          // fan or pump, while running
	Standby   quantity.Watt          // all day
	Stores    bool                   // the plate holds an eutectic
}

// Work is how a cycle works at one moment.
type Work struct {
	Te, Tc    quantity.Celsius // evaporating and condensing temperature
	CapacityW quantity.Watt    // heat it can take out of the box, always above 0
	COP       float64          // heat moved per electrical energy of the compressor; fan and standby are apart
}

// Working gives how the unit works in a box of this temperature while its
// condenser breathes coolant of that temperature: cabin or locker air, or sea
// water. Box -30 to 60 °C, coolant -10 to 60 °C.
//
// The plate lies below the box by capacity / conductance, but never over
// 5 °C; capacity grows exponentially with the plate's temperature. With w the
// growth times the depth of the plate below the box, the two conditions
// become w + ln w = ln k + growth·(box + 10 °C): see omega. Relative error
// of the capacity below 1e-8.
func (c Cycle) Working(box, coolant quantity.Celsius) Work {
	r := c.Ready()
	return r.Working(box, coolant)
}

// Ready is a cycle with the logarithm of its plate worked out, for loops over
// hours; make one with Cycle.Ready. A change to its Cycle spoils it.
type Ready struct {
	Cycle
	lnK float64 // logarithm of growth · rated / conductance
}

// Ready prepares the cycle for hourly loops.
func (c Cycle) Ready() Ready { return Ready{c, c.lnK(float64(c.Plate))} }

// Working is Cycle.Working.
func (r *Ready) Working(box, coolant quantity.Celsius) Work {
	tc := r.condensing(coolant)
	w := omega(r.lnK + lnFall(tc) + capacityGrowth*(float64(box)-ratingPlateC))
	depth := w * (1 / capacityGrowth)
	te := float64(box) - depth
	if te > plateCeilingC {
		return r.working(plateCeilingC, tc, r.atRatedPlate(tc)*growthAtCeiling)
	}
	// What the plate takes up is the capacity.
	return r.working(te, tc, float64(r.Plate)*depth)
}

// Storing gives how the unit works while it freezes the solution of a
// cold-storing plate: the plate stays at the freezing point whatever the box
// does.
func (c Cycle) Storing(coolant quantity.Celsius) Work {
	r := c.Ready()
	return r.Storing(coolant)
}

// Storing is Cycle.Storing.
func (r *Ready) Storing(coolant quantity.Celsius) Work {
	tc := r.condensing(coolant)
	return r.working(eutecticC, tc, r.atRatedPlate(tc)*growthAtEutectic)
}

// Evaporating gives how the unit works at an evaporating temperature of its own,
// whatever box it stands in.
func (c Cycle) Evaporating(at, coolant quantity.Celsius) Work {
	return c.work(float64(at), c.condensing(coolant))
}

// PowerW is the electrical power while running, fan or pump included.
func (c Cycle) PowerW(w Work) quantity.Watt {
	return w.CapacityW/quantity.Watt(w.COP) + c.Condenser
}

// Carnot is the highest possible efficiency of a refrigerator between an
// evaporating and a condensing temperature, te below tc: te / (tc - te), with te
// in kelvin.
func Carnot(te, tc quantity.Celsius) float64 {
	return (float64(te) + kelvinAt0C) / float64(tc-te)
}

func (c *Cycle) condensing(coolant quantity.Celsius) float64 {
	return max(condenserFloorC, float64(coolant)+float64(c.Rise))
}

// capacity is the cooling in watts between two saturation temperatures.
func (c *Cycle) capacity(te, tc float64) float64 {
	return c.atRatedPlate(tc) * growth(te)
}

// growth is what a plate at te cools over one at the rating's temperature.
func growth(te float64) float64 { return math.Exp(capacityGrowth * (te - ratingPlateC)) }

// Worked out once, because plates stand at these two temperatures for hours.
var growthAtCeiling, growthAtEutectic = growth(plateCeilingC), growth(eutecticC)

func (c *Cycle) atRatedPlate(tc float64) float64 {
	return float64(c.Rated) * (1 - capacityFall*(tc-ratingCondenserC))
}

func (c *Cycle) work(te, tc float64) Work { return c.working(te, tc, c.capacity(te, tc)) }

func (c *Cycle) working(te, tc, capacityW float64) Work {
	return Work{
		Te:        quantity.Celsius(te),
		Tc:        quantity.Celsius(tc),
		CapacityW: quantity.Watt(capacityW),
		COP:       c.Eta * Carnot(quantity.Celsius(te), quantity.Celsius(tc)),
	}
}

// lnK is the logarithm of growth · rated / conductance, the plate's k at the
// rated condenser.
func (c *Cycle) lnK(conductanceWPerK float64) float64 {
	return math.Log(capacityGrowth * float64(c.Rated) / conductanceWPerK)
}

// evaporating solves te = min(5, source - capacity(te)/conductance), source
// being the temperature that feeds the plate through the conductance.
func (c *Cycle) evaporating(source, conductanceWPerK, tc float64) float64 {
	w := omega(c.lnK(conductanceWPerK) + lnFall(tc) + capacityGrowth*(source-ratingPlateC))
	return min(plateCeilingC, source-w/capacityGrowth)
}
