package climate

import "math"

// What published examples give and the ledgers do not need. Each is built on
// what the ledgers do use, so that an example that agrees speaks for that.

// Angstrom's coefficients where none are calibrated (FAO-56 eq. 35).
const (
	angstromOvercast = 0.25
	angstromSunshine = 0.50
)

// gamma is the parameter as the paper has it.
func (b bendt) gamma() float64 { return b.steep / (b.high - b.low) }

// sd is the standard deviation.
func (b bendt) sd() float64 {
	variance := 1.0 / 12
	if math.Abs(b.steep) > 1e-2 {
		s := 2 * math.Sinh(b.steep/2)
		variance = 1/(b.steep*b.steep) - 1/(s*s)
	}
	return (b.high - b.low) * math.Sqrt(variance)
}

// MeanKWh is the mean sun of a day of the year, 1 to 365, kWh/m².
func (s *Sky) MeanKWh(day int) float64 { return s.meanKWh[day] }

// DaylightHours is the time from sunrise to sunset, h (FAO-56 eq. 34).
func DaylightHours(latDeg float64, day int) float64 {
	return 24 / math.Pi * sunsetAngle(latDeg, day)
}

// sunshineMJ is the irradiation, MJ/m² a day, of a day with some hours of
// bright sunshine out of those of daylight (FAO-56 eq. 35).
func sunshineMJ(extraterrestrialMJ, sunshineH, daylightH float64) float64 {
	return (angstromOvercast + angstromSunshine*sunshineH/daylightH) * extraterrestrialMJ
}
