package climate

import (
	"math"

	"coldreckon/economics/quantity"
)

// pressureKPa is the standard atmosphere at sea level.
const pressureKPa = 101.325

// vapourToAir is the ratio of the molar masses of water and dry air
// (ASHRAE Handbook, Fundamentals, psychrometrics: 0.621945).
const vapourToAir = 0.621945

// assumedHumidity is the relative humidity where no measurement is at hand:
// usual over warm seas, engineering judgement, from memory.
const assumedHumidity = 0.70

// saturationKPa is the pressure of saturated water vapour over water
// (FAO-56 eq. 11).
func saturationKPa(t quantity.Celsius) float64 {
	return 0.6108 * math.Exp(17.27*float64(t)/(float64(t)+237.3))
}

// humidityRatio is the water in air, kg/kg of dry air, at a relative humidity
// of 0 to 1.
func humidityRatio(t quantity.Celsius, relative float64) float64 {
	vapour := relative * saturationKPa(t)
	return vapourToAir * vapour / (pressureKPa - vapour)
}

// relativeHumidity undoes humidityRatio.
func relativeHumidity(t quantity.Celsius, ratio float64) float64 {
	vapour := pressureKPa * ratio / (vapourToAir + ratio)
	return vapour / saturationKPa(t)
}
