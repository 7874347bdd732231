package heat

import (
	"math"

	"coldreckon/economics/quantity"
)

// Surface is how ice at 0 °C cools: film · area · difference, where the area is
// that of a cube of its mass. It is the ice's own, whatever box it lies in.
// Above filmRiseCelsius the film grows with the fourth root of the difference,
// as still air's does. Only NewSurface makes one; the zero value takes up nothing.
type Surface struct{ refWPerK float64 } // of surfaceRefKg

const (
	surfaceRefKg = 64
	// filmRiseCelsius is the food temperature up to which the film is constant.
	// Engineering judgement, from memory.
	filmRiseCelsius = 5
)

// NewSurface gives the surface of ice with a film of 0 or more W/m²·K (IceFilm)
// and a density over 0 kg/m³ (LumpDensity).
func NewSurface(filmWPerM2K, lumpKgPerM3 float64) Surface {
	return Surface{filmWPerM2K * 6 * math.Pow(surfaceRefKg/lumpKgPerM3, 2.0/3)}
}

// WPerK gives the heat that ice of a mass takes up per kelvin of food over
// 0 °C, within 1e-8 of the exact power; less than nothing counts as none.
func (s Surface) WPerK(ice quantity.Kilogram, food quantity.Celsius) quantity.WattPerKelvin {
	if !(ice > 0) {
		return 0
	}
	// The power 2/3 is read from a table from an eighth to one; elsewhere, eight
	// times the ice gives four times as much.
	x, w := float64(ice)/surfaceRefKg, s.refWPerK
	for x < 1.0/8 {
		x, w = 8*x, w/4
	}
	for x > 1 {
		x, w = x/8, w*4
	}
	if i := int(x * surfaceSteps); i < surfaceSteps {
		w *= surfaceTable[i].at(x*surfaceSteps - float64(i))
	}
	if food > filmRiseCelsius {
		w *= math.Sqrt(math.Sqrt(float64(food) / filmRiseCelsius))
	}
	return quantity.WattPerKelvin(w)
}

// FoodCelsius gives the steady food temperature beside ice of a mass: the leak
// from outside and the heat of use on one side, the ice on the other. Without
// ice it is what the leak and the use lead to. leak must be over 0 W/K.
func (s Surface) FoodCelsius(ice quantity.Kilogram, leak quantity.WattPerKelvin, outside quantity.Celsius, use quantity.Watt) quantity.Celsius {
	in := float64(leak)*float64(outside) + float64(use)
	food := in / float64(leak+s.WPerK(ice, 0))
	if food <= filmRiseCelsius {
		return quantity.Celsius(food)
	}
	// What is taken up grows by less than the power 1.25, so that each step of
	// this overshoots by less than a quarter of what was missing.
	for range 30 {
		food = in / float64(leak+s.WPerK(ice, quantity.Celsius(food)))
	}
	return quantity.Celsius(food)
}

// FloorKg gives the least ice that holds food at limit °C, over 0, against a
// steady gain, reckoned at that temperature: 0 when no ice is needed, without
// end when the surface takes up nothing.
func (s Surface) FloorKg(limit quantity.Celsius, gainAtLimit quantity.Watt) quantity.Kilogram {
	if gainAtLimit <= 0 {
		return 0
	}
	need := float64(gainAtLimit) / float64(limit) / float64(s.WPerK(surfaceRefKg, limit))
	return quantity.Kilogram(surfaceRefKg * math.Pow(need, 1.5))
}

const surfaceSteps = 256

// surfaceStep is a cubic in the part of the step gone.
type surfaceStep [4]float64

func (c *surfaceStep) at(u float64) float64 { return c[0] + u*c[1] + u*u*(c[2]+u*c[3]) }

// surfaceTable holds x^(2/3) as cubics over each step, in powers of the part
// of the step gone; nothing writes to it after the program has started.
var surfaceTable = func() (table [surfaceSteps]surfaceStep) {
	for i := range table {
		if i == 0 {
			continue // read at 0 alone, which is 0
		}
		power := func(i int) (value, slope float64) {
			x := float64(i) / surfaceSteps
			return math.Pow(x, 2.0/3), 2.0 / 3 * math.Pow(x, -1.0/3) / surfaceSteps
		}
		a, slopeA := power(i)
		b, slopeB := power(i + 1)
		table[i] = surfaceStep{a, slopeA, 3*(b-a) - 2*slopeA - slopeB, slopeA + slopeB - 2*(b-a)}
	}
	return table
}()
