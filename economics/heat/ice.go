package heat

import (
	"math"

	"coldreckon/economics/quantity"
)

// MeltKgPerDay gives the ice at 0 °C that a steady heat gain melts in a day, its
// water leaving at drain °C. A box that loses heat melts none.
func MeltKgPerDay(gain quantity.Watt, drain quantity.Celsius) quantity.Kilogram {
	return quantity.Kilogram(max(0, float64(gain)*86.4/MeltKJPerKg(drain)))
}

// MeltKJPerKg gives the heat that a kilogram of ice at 0 °C takes up until its
// water leaves at drain °C, kJ/kg.
func MeltKJPerKg(drain quantity.Celsius) float64 {
	return FusionKJPerKg + WaterKJPerKgK*float64(drain)
}

// FreezerBonusKJ gives the heat that ice colder than 0 °C takes up until it
// starts to melt; none at 0 °C or above.
func FreezerBonusKJ(ice quantity.Kilogram, start quantity.Celsius) quantity.Kilojoule {
	return quantity.Kilojoule(float64(ice) * IceKJPerKgK * max(0, -float64(start)))
}

// StowedKJPerK gives the heat capacity of a box in use, without the food of
// the shop days.
func StowedKJPerK(box quantity.Litre) quantity.KilojoulePerKelvin {
	return quantity.KilojoulePerKelvin(StowedKJPerKPerL * float64(box))
}

// BareKJPerK gives the heat capacity of an empty box: liner and inner foam.
func BareKJPerK(box quantity.Litre) quantity.KilojoulePerKelvin {
	return quantity.KilojoulePerKelvin(BareKJPerKPerL * float64(box))
}

// IceToChill gives the ice at 0 °C that takes up a given heat, its water
// staying at 0 °C: FAO Fisheries Technical Paper 331 (1992), ch. 3. No heat to
// take up needs no ice.
func IceToChill(heat quantity.Kilojoule) quantity.Kilogram {
	return quantity.Kilogram(max(0, float64(heat)/FusionKJPerKg))
}

// CapacityKg gives the ice that stows in the share of a box given to it, 0 to 1,
// at the kind's typical BulkDensity. An unknown kind is an error.
func CapacityKg(box quantity.Litre, share quantity.Fraction, kind IceKind) (quantity.Kilogram, error) {
	density, err := BulkDensity(kind)
	if err != nil {
		return 0, err
	}
	return quantity.Kilogram(float64(box) * float64(share) * density.Range.Typical), nil
}

// HoldCelsius is the food temperature that a full load of ice holds in the
// hottest month. Engineering judgement, from memory.
const HoldCelsius quantity.Celsius = 4

// Surface is how ice cools: at 0 °C, through a surface that shrinks with the
// two-thirds power of its mass.
type Surface struct {
	FullKg    quantity.Kilogram      // a full load, > 0
	FullWPerK quantity.WattPerKelvin // heat it takes up per kelvin of food over 0 °C, >= 0
}

// Hold sizes the surface so that a full load holds HoldCelsius against
// gainAtHold: leak and use together, reckoned at that food temperature. A gain
// under 0 counts as none; such a box needs no ice.
func Hold(full quantity.Kilogram, gainAtHold quantity.Watt) Surface {
	return Surface{FullKg: full, FullWPerK: quantity.WattPerKelvin(max(0, float64(gainAtHold)/float64(HoldCelsius)))}
}

// WPerK gives the heat that ice of a mass takes up per kelvin of food over
// 0 °C, within 1e-8 of the exact power; more than a full load counts as full,
// less than nothing as none.
func (s Surface) WPerK(ice quantity.Kilogram) quantity.WattPerKelvin {
	if !(ice > 0 && s.FullKg > 0) {
		return 0
	}
	return s.FullWPerK * quantity.WattPerKelvin(twoThirds(min(1, float64(ice/s.FullKg))))
}

// twoThirds is x to the power 2/3, for x from 0 to 1. From an eighth up it is
// read from a table by cubic Hermite interpolation, for hourly loops; below,
// eight times x gives four times as much.
func twoThirds(x float64) float64 {
	part := 1.0
	for x < 1.0/8 && x > 0 {
		x, part = 8*x, part/4
	}
	at := x * surfaceSteps
	i := int(at)
	if i >= surfaceSteps {
		return part
	}
	u, c := at-float64(i), &surfaceTable[i]
	return part * (c[0] + u*c[1] + u*u*(c[2]+u*c[3]))
}

const surfaceSteps = 256

// surfaceTable holds x^(2/3) as cubics over each step, in powers of the part
// of the step gone; nothing writes to it after the program has started.
var surfaceTable = func() (table [surfaceSteps][4]float64) {
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
		table[i] = [4]float64{a, slopeA, 3*(b-a) - 2*slopeA - slopeB, slopeA + slopeB - 2*(b-a)}
	}
	return table
}()

// FoodCelsius gives the steady food temperature beside ice of a mass: the leak
// from outside and the heat of use on one side, the ice on the other. Without
// ice it is what the leak and the use lead to. leak must be over 0 W/K.
func (s Surface) FoodCelsius(ice quantity.Kilogram, leak quantity.WattPerKelvin, outside quantity.Celsius, use quantity.Watt) quantity.Celsius {
	return quantity.Celsius((float64(leak)*float64(outside) + float64(use)) / float64(leak+s.WPerK(ice)))
}

// FloorKg gives the least ice that still holds food at limit °C against a
// steady gain, reckoned at that temperature. It is 0 when no ice is needed or
// the surface takes up nothing, and a full load when even that does not hold a
// limit, or the limit is not over 0 °C.
func (s Surface) FloorKg(limit quantity.Celsius, gainAtLimit quantity.Watt) quantity.Kilogram {
	if gainAtLimit <= 0 || s.FullWPerK <= 0 {
		return 0
	}
	need := float64(gainAtLimit) / float64(limit) / float64(s.FullWPerK)
	if limit <= 0 || need > 1 {
		return s.FullKg
	}
	return s.FullKg * quantity.Kilogram(math.Pow(need, 1.5))
}
