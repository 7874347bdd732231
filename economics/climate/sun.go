package climate

import "math"

// solarConstant is in MJ/m² a minute (FAO-56 eq. 21).
const solarConstant = 0.0820

// mjPerKWh converts between the unit of FAO-56 and that of solar trade.
const mjPerKWh = 3.6

// The share of the sun that a clear sky lets through at sea level, and what is
// added with height (FAO-56 eq. 36 and 37).
const (
	clearSkyShare    = 0.75
	clearSkyPerMetre = 2e-5
)

// Factors of Hargreaves' formula, 1/√K (FAO-56 eq. 50): inland, where land
// makes the air, and on a coast.
const (
	hargreavesInland = 0.16
	hargreavesCoast  = 0.19
)

// The coast's factor as it falls from the equator, a degree: 0.19 at 11°, 0.16
// at 49°. One factor for all coasts runs high where they are cloudy, which is
// polewards: by a sixth in New England, a fifth in Britain. Fitted to some 250
// coastal stations outside the island formula's bounds, every region alike
// (typical years, see data/SOURCES.md); British coasts were kept out of the
// fit and serve as its check (TestEstimatedSunInBritain).
const (
	coastAtEquator = 0.199
	coastPerDegree = 0.0008
)

// coastFactor is Hargreaves' factor on a coast at a latitude of -66 to 66°.
func coastFactor(latDeg float64) float64 {
	return coastAtEquator - coastPerDegree*math.Abs(latDeg)
}

// The island formula's share of extraterrestrial radiation and its loss in
// MJ/m² a day (FAO-56 eq. 51, for heights of 0 to 100 m).
const (
	islandShare  = 0.7
	islandLossMJ = 4
)

// inverseSquare is the relative nearness of the sun, d_r (FAO-56 eq. 23).
func inverseSquare(day int) float64 {
	return 1 + 0.033*math.Cos(2*math.Pi/365*float64(day))
}

// declination of the sun, rad (FAO-56 eq. 24).
func declination(day int) float64 {
	return 0.409 * math.Sin(2*math.Pi/365*float64(day)-1.39)
}

// sunsetAngle is the hour angle of sunset, rad, 0 when the sun stays down and
// π when it stays up (FAO-56 eq. 25).
func sunsetAngle(latDeg float64, day int) float64 {
	cosine := -math.Tan(radians(latDeg)) * math.Tan(declination(day))
	return math.Acos(min(1, max(-1, cosine)))
}

// ExtraterrestrialMJ is the irradiation of a level surface above the
// atmosphere, MJ/m² on a day of the year, 1 to 365, at a latitude of -90 to 90°,
// north positive (FAO-56 eq. 21).
func ExtraterrestrialMJ(latDeg float64, day int) float64 {
	lat, decl, sunset := radians(latDeg), declination(day), sunsetAngle(latDeg, day)
	height := sunset*math.Sin(lat)*math.Sin(decl) + math.Cos(lat)*math.Cos(decl)*math.Sin(sunset)
	return 24 * 60 / math.Pi * solarConstant * inverseSquare(day) * height
}

// clearSkyMJ is the irradiation of a cloudless day, MJ/m², at a height above
// the sea (FAO-56 eq. 37; at sea level eq. 36).
func clearSkyMJ(extraterrestrialMJ, heightM float64) float64 {
	return (clearSkyShare + clearSkyPerMetre*heightM) * extraterrestrialMJ
}

// hargreavesMJ estimates irradiation, MJ/m² a day, from the daily range of air
// temperature, never above a clear sky's at sea level (FAO-56 eq. 50).
func hargreavesMJ(factor, extraterrestrialMJ, rangeK float64) float64 {
	return min(factor*math.Sqrt(rangeK)*extraterrestrialMJ, clearSkyMJ(extraterrestrialMJ, 0))
}

// islandMJ estimates irradiation, MJ/m² a day, on small low islands, where the
// sea and not the sun sets the range of temperature (FAO-56 eq. 51).
func islandMJ(extraterrestrialMJ float64) float64 {
	return islandShare*extraterrestrialMJ - islandLossMJ
}

// monthlyExtraterrestrialMJ is the mean over a month's days, MJ/m² a day.
func monthlyExtraterrestrialMJ(latDeg float64, month int) float64 {
	var sum float64
	first := FirstDay(month)
	for day := first; day < first+DaysIn(month); day++ {
		sum += ExtraterrestrialMJ(latDeg, day)
	}
	return sum / float64(DaysIn(month))
}

func radians(deg float64) float64 { return deg * math.Pi / 180 }
