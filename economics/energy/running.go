package energy

import "coldreckon/economics/quantity"

// RatedFor gives the cooling at -10/45 °C with which the unit takes so much
// power while it runs in a box and coolant of these temperatures: what a
// running current says of its compressor. 5 to 1,000 W; RatedW is not looked at.
func (u Unit) RatedFor(running quantity.Watt, box, coolant quantity.Celsius) quantity.Watt {
	return quantity.Watt(firstEnough(5, 1e3, func(rated float64) bool {
		u.RatedW = quantity.Watt(rated)
		c := u.Cycle()
		return c.PowerW(c.Working(box, coolant)) >= running
	}))
}

// flatPlateWPerM2K is what a plate takes up a kelvin on each of its faces:
// still air with some frost. Engineering judgement, from memory; natural
// convection takes 5 to 10.
const flatPlateWPerM2K = 7

// FlatPlate gives what a flat plate of this width and height, both above 0,
// takes up with both its faces.
func FlatPlate(width, height quantity.Metre) quantity.WattPerKelvin {
	return quantity.WattPerKelvin(2 * flatPlateWPerM2K * float64(width) * float64(height))
}

// slowSpeed is the slowest a compressor whose speed can be set turns, as a share
// of its fastest. Common practice, no source.
const slowSpeed = 0.57

// Slowed gives the steady duty at the slowest speed of a compressor whose speed
// can be set. Its cooling falls with the speed, the plate comes nearer to the
// box and the efficiency rises. Where the slow compressor cannot hold the box it
// is the duty at full speed.
func (c Cycle) Slowed(g Gain, box, coolant quantity.Celsius) Duty {
	slow := c
	slow.Rated *= slowSpeed
	if d := slow.Duty(g, box, coolant); d.RunShare <= 1 {
		return d
	}
	return c.Duty(g, box, coolant)
}
