package energy

import (
	"math"

	"coldreckon/economics/quantity"
)

// Gain is the heat that flows into a box, as a straight line in the box's
// temperature.
type Gain struct {
	Leak quantity.WattPerKelvin // above 0
	Out  quantity.Celsius       // mean temperature round the box
	Use  quantity.Watt          // openings and goods, whatever the temperature
}

// At gives the heat flowing in at a box temperature; negative when the box is
// the warmer side.
func (g Gain) At(box quantity.Celsius) quantity.Watt {
	return quantity.Watt(float64(g.Leak)*float64(g.Out-box)) + g.Use
}

// rest is the temperature a box comes to without cooling.
func (g Gain) rest() float64 { return float64(g.Out) + float64(g.Use)/float64(g.Leak) }

// Duty is a unit's steady day in a box.
type Duty struct {
	RunShare float64          // share of the day it would have to run, 0 or more; over 1 it cannot hold the box
	Mean     quantity.Watt    // mean electrical power, fan and standby included
	Held     quantity.Celsius // the box temperature really held
	Working  Work             // while running
}

// DayWh is the electrical energy of a day.
func (d Duty) DayWh() quantity.WattHour { return quantity.WattHour(24 * d.Mean) }

// Duty gives the steady duty of holding a box at a temperature against a gain.
// A unit that is too small runs all day and the box floats; one that is not
// needed takes its standby power only.
//
// A cold-storing plate is frozen at its own low temperature. When the heat is
// more than the unit can take out at that temperature it cannot freeze: the
// unit then runs without a pause, at the plate temperature that the heat
// calls for.
func (c Cycle) Duty(g Gain, box, coolant quantity.Celsius) Duty {
	heat := float64(g.At(box))
	working := c.Working(box, coolant)
	switch {
	case heat <= 0:
		return Duty{Mean: c.Standby, Held: quantity.Celsius(min(float64(box), g.rest())), Working: working}
	case heat > float64(working.CapacityW):
		share := heat / float64(working.CapacityW)
		held := c.FloatingBox(g, coolant)
		working = c.Working(held, coolant)
		return Duty{RunShare: share, Mean: c.PowerW(working) + c.Standby, Held: held, Working: working}
	case c.Stores && heat <= float64(c.Plate)*(float64(box)-eutecticC):
		working = c.Storing(coolant)
		if heat > float64(working.CapacityW) {
			tc := float64(working.Tc)
			working = c.work(ratingPlateC+math.Log(heat/c.atRatedPlate(tc))/capacityGrowth, tc)
		}
	}
	share := heat / float64(working.CapacityW)
	return Duty{RunShare: share, Mean: quantity.Watt(share)*c.PowerW(working) + c.Standby, Held: box, Working: working}
}

// FloatingBox gives the temperature a box takes up when the unit runs without
// a pause: where the gain equals the capacity.
//
// Wall and plate are conductances in series, so this is the plate's equation
// once more, with the box's resting temperature in place of the box.
func (c Cycle) FloatingBox(g Gain, coolant quantity.Celsius) quantity.Celsius {
	tc := c.condensing(coolant)
	rest := g.rest()
	leak, plate := float64(g.Leak), float64(c.Plate)
	te := c.evaporating(rest, leak*plate/(leak+plate), tc)
	return quantity.Celsius(rest - c.capacity(te, tc)/leak)
}

// PullDown is the cooling of a warm box.
type PullDown struct {
	Reached bool // false when the unit cannot get there; the rest is then zero
	Hours   float64
	Energy  quantity.WattHour // electrical
}

// PullDown gives the time and energy to bring contents and liner of a heat
// capacity from one temperature down to another, running without a pause
// against a gain that may depend on the box's temperature in any smooth way.
//
// dt = C dT / (capacity - gain), integrated over the temperature by Simpson's
// rule.
func (c Cycle) PullDown(capacity quantity.KilojoulePerKelvin, from, to quantity.Celsius, gain func(box quantity.Celsius) quantity.Watt, coolant quantity.Celsius) PullDown {
	if from <= to {
		return PullDown{Reached: true}
	}
	const intervals = 400
	step := float64(from-to) / intervals
	ready := c.Ready()
	var hours, wattHours float64
	for i := 0; i <= intervals; i++ {
		box := to + quantity.Celsius(float64(i)*step)
		working := ready.Working(box, coolant)
		net := float64(working.CapacityW - gain(box))
		if net <= 0 {
			return PullDown{}
		}
		weight := simpson(i, intervals) * step / net
		hours += weight
		wattHours += weight * float64(c.PowerW(working)+c.Standby)
	}
	scale := float64(capacity) / 3.6 // kJ/K to Wh/K
	return PullDown{Reached: true, Hours: hours * scale, Energy: quantity.WattHour(wattHours * scale)}
}

// simpson is the weight of point i of an even number of intervals, for a step of 1.
func simpson(i, intervals int) float64 {
	switch {
	case i == 0 || i == intervals:
		return 1.0 / 3
	case i%2 == 1:
		return 4.0 / 3
	}
	return 2.0 / 3
}

// ColdStore is the solution frozen in a cold-storing (eutectic) plate.
type ColdStore struct {
	Mass     quantity.Kilogram
	Latent   float64                // kJ/kg, see EutecticLatent
	Usable   quantity.Fraction      // see EutecticUsable
	Freezing quantity.Celsius       // see EutecticPoint
	Plate    quantity.WattPerKelvin // film coefficient times area, see PlateConductance
}

// HoldOver gives for how many hours the melting solution keeps a box at a
// temperature with the unit off: usable · mass · latent / gain. ok is false
// when the plate cannot pass the heat at that temperature: film · area ·
// (box - freezing point) must be at least the gain. Without a gain the hours
// are infinite.
func (s ColdStore) HoldOver(g Gain, box quantity.Celsius) (hours float64, ok bool) {
	load := float64(g.At(box))
	if load <= 0 {
		return math.Inf(1), true
	}
	if float64(s.Plate)*float64(box-s.Freezing) < load {
		return 0, false
	}
	return float64(s.Usable) * float64(s.Mass) * s.Latent / 3.6 / load, true
}
