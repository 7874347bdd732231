package energy

import (
	"math"

	"coldreckon/economics/quantity"
)

// Unit is a compressor unit as an owner knows it.
type Unit struct {
	RatedW   quantity.Watt // cooling at -10/45 °C; 10 to 500 W
	Eta      float64       // share of Carnot's efficiency, see Eta; 0.15 to 0.6
	CooledBy Condenser     // anything unknown counts as Fins
	Plate    Plate         // anything unknown counts as Thin
}

// Cycle gives the unit's numbers at their typical values.
func (u Unit) Cycle() Cycle {
	return Cycle{
		Rated:     u.RatedW,
		Eta:       u.Eta,
		Plate:     quantity.WattPerKelvin(PlateConductance(u.Plate).Typical),
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
// become w = k·exp(-w), the equation of Lambert's function (Corless et al.
// 1996), solved by Halley's method.
func (c Cycle) Working(box, coolant quantity.Celsius) Work {
	var none Last
	return c.WorkingAfter(&none, box, coolant)
}

// Last is how the plate's equation came out an hour ago; the zero value is for
// a first hour. It only saves time: the answer is the same to better than 1e-9
// whatever it holds.
type Last struct{ w, k, x float64 }

// WorkingAfter is Working that starts from the last hour's answer and leaves
// its own there. It is meant for hourly loops.
func (c *Cycle) WorkingAfter(last *Last, box, coolant quantity.Celsius) Work {
	tc := c.condensing(coolant)
	te := c.evaporating(last, float64(box), float64(c.Plate), tc)
	if te == plateCeilingC {
		return c.work(te, tc)
	}
	// What the plate takes up is the capacity: no need to raise e once more.
	return c.working(te, tc, float64(c.Plate)*(float64(box)-te))
}

// Storing gives how the unit works while it freezes the solution of a
// cold-storing plate: the plate stays at the freezing point whatever the box
// does.
func (c Cycle) Storing(coolant quantity.Celsius) Work {
	return c.work(eutecticC, c.condensing(coolant))
}

// PowerW is the electrical power while running, fan or pump included.
func (c Cycle) PowerW(w Work) quantity.Watt {
	return w.CapacityW/quantity.Watt(w.COP) + c.Condenser
}

// Carnot is the highest possible efficiency of a refrigerator between two
// temperatures, te below tc: te / (tc - te), te in kelvin.
func Carnot(te, tc quantity.Celsius) float64 {
	return (float64(te) + kelvinAt0C) / float64(tc-te)
}

func (c *Cycle) condensing(coolant quantity.Celsius) float64 {
	return max(condenserFloorC, float64(coolant)+float64(c.Rise))
}

// capacity is the cooling in watts between two saturation temperatures.
func (c *Cycle) capacity(te, tc float64) float64 {
	return c.atRatedPlate(tc) * math.Exp(capacityGrowth*(te-ratingPlateC))
}

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

// evaporating solves te = min(5, source - capacity(te)/conductance).
//
// Halley's step keeps w positive for any positive start, and the error after
// a step is at most a twelfth of the cube of the error before it. So once a
// step is below 2e-4, what is left is below 1e-12. From w = 0 that takes at
// most five steps for any k up to 60, the value of a 500 W unit on a thin
// plate in a box of 40 °C; from last hour's value, two.
func (c *Cycle) evaporating(last *Last, source, conductanceWPerK, tc float64) float64 {
	k := capacityGrowth * c.atRatedPlate(tc) / conductanceWPerK
	x := capacityGrowth * (source - ratingPlateC)
	w, e := 0.0, 0.0
	if dx := x - last.x; last.k > 0 && math.Abs(dx) < 0.1 {
		// An hour ago k·exp(x-w) was w itself.
		w = last.w
		e = w * k / last.k * expOfSmall(dx)
	} else {
		e = k * math.Exp(x)
	}
	for range 12 {
		off := w - e
		slope := 1 + e
		step := 2 * off * slope / (2*slope*slope + off*e)
		w -= step
		if math.Abs(step) <= 2e-4 {
			break
		}
		if math.Abs(step) < 0.1 {
			e *= expOfSmall(step)
		} else {
			e = k * math.Exp(x-w)
		}
	}
	*last = Last{w, k, x}
	return min(plateCeilingC, source-w/capacityGrowth)
}

// expOfSmall is exp(s) for |s| < 0.1 to 3e-13, in a third of math.Exp's time:
// the first eight terms of its series.
func expOfSmall(s float64) float64 {
	return 1 + s*(1+s*(1.0/2+s*(1.0/6+s*(1.0/24+s*(1.0/120+s*(1.0/720+s*(1.0/5040)))))))
}
