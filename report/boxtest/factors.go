package boxtest

import (
	"math"
	"strconv"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Units are exact by definition (NIST SP 811): the international pound and
// foot, the Btu of the international table, degrees.
const (
	kgPerLb  = float64(quantity.Pound)
	lPerCuFt = 28.316846592
	kJPerBtu = 1.05505585262
	kPerF    = 5.0 / 9
)

// factors are the figures of the pencil's formulas, for heat in the unit
// system's own measure: Wh and °C, or Btu and °F.
type factors struct {
	Ice   float64 // heat per mass of ice melted
	Water float64 // heat per mass of water and degree
	Liner float64 // heat per volume of box and degree, of its liner and inner foam
}

// factorsOf gives the figures as printed: three significant digits.
func factorsOf(sys quantity.System) factors {
	const kJPerWh = 3.6
	if sys == quantity.US {
		return factors{
			Ice:   round3(heat.FusionKJPerKg * kgPerLb / kJPerBtu),
			Water: round3(heat.WaterKJPerKgK * kgPerLb * kPerF / kJPerBtu),
			Liner: round3(heat.BareKJPerKPerL * lPerCuFt * kPerF / kJPerBtu),
		}
	}
	return factors{
		Ice:   round3(heat.FusionKJPerKg / kJPerWh),
		Water: round3(heat.WaterKJPerKgK / kJPerWh),
		Liner: round3(heat.BareKJPerKPerL / kJPerWh),
	}
}

// round3 rounds to three significant digits.
func round3(x float64) float64 {
	return quantity.Significant(x, 3)
}

// say prints a figure with three significant digits: 92.7, 1.16, 0.333.
func say(x float64) string {
	digits := 2
	if x != 0 {
		digits = max(0, 2-int(math.Floor(math.Log10(math.Abs(x)))))
	}
	return strconv.FormatFloat(x, 'f', digits, 64)
}

// iceReadings are the blanks of the ice test, in the unit system's own units.
type iceReadings struct {
	Before, After    float64 // ice, kg or lb
	Hours            float64
	Water, WaterTemp float64 // meltwater caught, and its temperature, °C or °F
	Outside, Inside  float64 // mean air
}

// iceLeak works the ice test as the page says: heat, W·h or Btu, and leak,
// W/K or Btu/h·°F.
func iceLeak(sys quantity.System, r iceReadings) (heatTaken, leak float64) {
	f, zero := factorsOf(sys), 0.0
	if sys == quantity.US {
		zero = 32
	}
	heatTaken = f.Ice*(r.Before-r.After) + f.Water*r.Water*(r.WaterTemp-zero)
	return heatTaken, heatTaken / (r.Hours * (r.Outside - r.Inside))
}

// jugReadings are the blanks of the water test, in the unit system's own units.
type jugReadings struct {
	Water, Box      float64 // kg and L, or lb and cu ft
	Start, End      float64 // of the water, °C or °F
	Hours           float64
	Outside, BoxAir float64 // mean air
}

// jugLeak works the water test as the page says: heat per degree of water and
// liner, and leak.
func jugLeak(sys quantity.System, r jugReadings) (perDegree, leak float64) {
	f := factorsOf(sys)
	perDegree = f.Water*r.Water + f.Liner*r.Box
	return perDegree, perDegree * (r.End - r.Start) / (r.Hours * (r.Outside - r.BoxAir))
}

// The worked examples: one invented box in both systems, tested twice.
var (
	iceExample = map[quantity.System]iceReadings{
		quantity.Metric: {Before: 12, After: 4.2, Hours: 24, Water: 7.5, WaterTemp: 3, Outside: 24.5, Inside: 3.5},
		quantity.US:     {Before: 26, After: 9, Hours: 24, Water: 16.5, WaterTemp: 37, Outside: 76, Inside: 38},
	}
	jugExample = map[quantity.System]jugReadings{
		quantity.Metric: {Water: 10, Box: 100, Start: 4, End: 13, Hours: 8, Outside: 24, BoxAir: 12},
		quantity.US:     {Water: 20, Box: 3.5, Start: 39, End: 56.5, Hours: 8, Outside: 76, BoxAir: 54},
	}
)

// trust gives within how many of 100 each test is right, eight times in ten.
func trust() (ice, jug int) {
	within := func(e heat.Estimate, err error) int {
		if err != nil { // the examples are sound; a test says so
			return 0
		}
		return int(math.Round(100 * (e.Range().High/float64(e.UA) - 1)))
	}
	i, j := iceExample[quantity.Metric], jugExample[quantity.Metric]
	return within(iceTest(i).Estimate()), within(jugTest(j).Estimate(heat.BareKJPerK(quantity.Litre(j.Box))))
}

// iceTest is the record of metric readings.
func iceTest(r iceReadings) heat.IceTest {
	return heat.IceTest{
		Melted: quantity.Kilogram(r.Before - r.After), IceMass: quantity.Kilogram(r.Before), Hours: r.Hours,
		Water: quantity.Kilogram(r.Water), WaterEnd: quantity.Celsius(r.WaterTemp),
		Out: quantity.Celsius(r.Outside), In: quantity.Celsius(r.Inside),
	}
}

// jugTest is the record of metric readings.
func jugTest(r jugReadings) heat.JugTest {
	return heat.JugTest{
		Water: quantity.Kilogram(r.Water), Hours: r.Hours, Start: quantity.Celsius(r.Start), End: quantity.Celsius(r.End),
		Out: quantity.Celsius(r.Outside), BoxAir: quantity.Celsius(r.BoxAir), BoxAirRead: true,
	}
}
