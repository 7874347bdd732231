package heat

import (
	"math"

	"coldreckon/economics/quantity"
)

// Moist air as a mixture of perfect gases, at sea level. ASHRAE Fundamentals
// 2017, ch. 1, states errors under 0.7 % from -50 to 50 °C; equations and
// coefficients from memory.

// seaLevelKPa is the pressure of the standard atmosphere.
const seaLevelKPa = 101.325

// saturationKPa gives the pressure of water vapour over water, or under 0 °C
// over ice, for -100 to 200 °C: Hyland and Wexler 1983, as in ASHRAE
// Fundamentals 2017, ch. 1, equations 5 and 6.
func saturationKPa(t quantity.Celsius) float64 {
	k := float64(t) + 273.15
	var lnPa float64
	if t < 0 {
		lnPa = -5.6745359e3/k + 6.3925247 + k*(-9.6778430e-3+k*(6.2215701e-7+k*(2.0747825e-9-k*9.4840240e-13))) + 4.1635019*math.Log(k)
	} else {
		lnPa = -5.8002206e3/k + 1.3914993 + k*(-4.8640239e-2+k*(4.1764768e-5-k*1.4452093e-8)) + 6.5459673*math.Log(k)
	}
	return math.Exp(lnPa) / 1000
}

// HumidityRatio gives the kilograms of water in air with a kilogram of dry
// air, at relative humidity rh from 0 to 1. ASHRAE Fundamentals 2017, ch. 1.
func HumidityRatio(t quantity.Celsius, rh quantity.Fraction) float64 {
	vapour := float64(rh) * saturationKPa(t)
	return 0.621945 * vapour / (seaLevelKPa - vapour)
}

// EnthalpyKJ gives the heat in moist air, kJ per kilogram of dry air, at
// humidity ratio w. ASHRAE Fundamentals 2017, ch. 1.
func EnthalpyKJ(t quantity.Celsius, w float64) float64 {
	return 1.006*float64(t) + w*(2501+1.86*float64(t))
}

// specificVolume gives the cubic metres of moist air with a kilogram of dry
// air, at sea level and humidity ratio w. ASHRAE Fundamentals 2017, ch. 1.
func specificVolume(t quantity.Celsius, w float64) float64 {
	return 0.287042 * (float64(t) + 273.15) * (1 + 1.607858*w) / seaLevelKPa
}

// Of saturated air hourly loops read tables: every quarter kelvin from -20 to
// 50 °C, the enthalpy within 0.01 kJ/kg of the formula and the density within
// 1e-5; outside them it is the formula itself. Nothing writes to them after the
// program has started.
const (
	saturatedFromC = -20
	saturatedPerK  = 4
	saturatedSteps = 70 * saturatedPerK
)

var saturated, coldAir = tabled(saturatedEnthalpyKJ), tabled(coldAirDensity)

type airTable [saturatedSteps + 1]float64

func tabled(formula func(quantity.Celsius) float64) (table airTable) {
	for i := range table {
		table[i] = formula(quantity.Celsius(saturatedFromC + float64(i)/saturatedPerK))
	}
	return table
}

// inTables gives the step of the tables in which a temperature lies, and the part
// of it gone; ok is false outside them.
func inTables(t quantity.Celsius) (step int, part float64, ok bool) {
	at := (float64(t) - saturatedFromC) * saturatedPerK
	if !(at >= 0 && at < saturatedSteps) {
		return 0, 0, false
	}
	step = int(at)
	return step, at - float64(step), true
}

func (t *airTable) at(step int, part float64) float64 { return t[step] + part*(t[step+1]-t[step]) }

// SaturatedEnthalpyKJ gives EnthalpyKJ of saturated air.
func SaturatedEnthalpyKJ(t quantity.Celsius) float64 {
	if step, part, ok := inTables(t); ok {
		return saturated.at(step, part)
	}
	return saturatedEnthalpyKJ(t)
}

func saturatedEnthalpyKJ(t quantity.Celsius) float64 { return EnthalpyKJ(t, HumidityRatio(t, 1)) }

// ColdAirDensity gives the kilograms of dry air in a cubic metre of saturated
// air: the air that falls out of an opened box, whose place as much cabin air
// takes. FAO's heat per cubic metre of a cold store's air change fits this
// density, not the cabin's.
func ColdAirDensity(box quantity.Celsius) float64 {
	if step, part, ok := inTables(box); ok {
		return coldAir.at(step, part)
	}
	return coldAirDensity(box)
}

func coldAirDensity(t quantity.Celsius) float64 { return 1 / specificVolume(t, HumidityRatio(t, 1)) }
