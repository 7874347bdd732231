package climate

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics/quantity"
)

// MaxLatitudeDeg bounds the latitudes known here: beyond it the sun stays
// down for part of the year, and shares of no sun mean nothing.
const MaxLatitudeDeg = 66

// Bounds of the island formula: a mean daily range under 7 K within 30° of the
// equator. Measured on the stations of the embedded tables, where it errs less
// than the coast formula; see the test.
const (
	islandRangeK      = 7
	islandLatitudeDeg = 30
)

// estimatedID is the id of every ground that Estimated describes.
const estimatedID = "own"

// Estimated describes a ground of which only a latitude of -66 to 66° and the
// mean daily lowest and highest air temperatures of twelve months are known,
// January first.
//
// Air mean is half way between them. The sea is 1.2 K warmer than a mean of
// the air of this month (counted twice), the two before and the whole year, as
// the sea stores heat; not below freezing sea water. The sun follows the daily
// range of temperature on a coast, or the island formula where the range is
// small near the equator (FAO-56 eq. 50, its factor falling polewards, and
// 51), with clearness kept between 0.20 and a clear sky's 0.75. Humidity is
// 70 % at the mean. On stations such estimates miss the monthly sun by 15 %
// and the sea by 1.3 K (root mean square), neither to one side.
//
// It fails when the latitude or a temperature is out of range, or a lowest
// is above its highest.
func Estimated(name string, latDeg float64, airMin, airMax [12]quantity.Celsius) (Ground, error) {
	if !(-MaxLatitudeDeg <= latDeg && latDeg <= MaxLatitudeDeg) {
		return Ground{}, fmt.Errorf("latitude: found %g, expected a number from %d to %d degrees", latDeg, -MaxLatitudeDeg, MaxLatitudeDeg)
	}
	g := Ground{ID: estimatedID, Name: name, LatDeg: latDeg}
	var yearRangeK float64
	for i := range g.Months {
		month := i + 1
		low, high := airMin[i], airMax[i]
		if !(lowestAirC <= low && low <= high && high <= highestAirC) {
			return Ground{}, fmt.Errorf("air of month %d: found lowest %g and highest %g, expected %d °C <= lowest <= highest <= %d °C",
				month, low, high, lowestAirC, highestAirC)
		}
		yearRangeK += float64(high-low) / 12
		mean := (low + high) / 2
		g.Months[i] = Month{
			AirMean: mean, AirMax: high, AirMin: low,
			HumidityRatio: humidityRatio(mean, assumedHumidity),
			Provenance:    Provenance{Air: fromOwner, AirRange: fromOwner, Sea: seaFromAir},
		}
	}
	island := yearRangeK < islandRangeK && -islandLatitudeDeg <= latDeg && latDeg <= islandLatitudeDeg
	for i := range g.Months {
		m := &g.Months[i]
		m.Sea = laggedSea(g, i)
		most := monthlyExtraterrestrialMJ(latDeg, i+1)
		sunMJ := hargreavesMJ(coastFactor(latDeg), most, float64(m.AirMax-m.AirMin))
		m.Provenance.Sun = sunFromRange
		if island {
			sunMJ = islandMJ(most)
			m.Provenance.Sun = sunOfIsland
		}
		sunMJ = min(max(sunMJ, lowestClearness*most), clearSkyMJ(most, 0))
		m.Sun = quantity.KWhPerM2Day(sunMJ / mjPerKWh)
	}
	return g, nil
}

// What an estimate rests on, as printed.
const (
	estimatedPrefix = "estimated: "

	seaFromAir   = estimatedPrefix + "from the air of this month, the two before and the year"
	sunFromRange = estimatedPrefix + "from the daily range of temperature on a coast"
	sunOfIsland  = estimatedPrefix + "as on a small low island"
)

// EstimatedSunRange is how far the true sun of a ground may lie from an
// estimated one, as a share to either side, in four cases of five. Measured:
// single months miss by 0.13 to 0.16 (root mean square) on coasts that were
// not fitted, and 1.28 standard deviations make four cases of five.
const EstimatedSunRange = 0.20

// SunEstimated tells whether the month's sun was estimated from temperatures,
// rather than read from an archive or remembered.
func (m Month) SunEstimated() bool { return strings.HasPrefix(m.Provenance.Sun, estimatedPrefix) }

// SunEstimated tells whether the sun of any month was estimated from
// temperatures; EstimatedSunRange tells how far off it may then be.
func (g Ground) SunEstimated() bool { return slices.ContainsFunc(g.Months[:], Month.SunEstimated) }

// The sea above the air, K, and the weights of the air it follows: fitted to
// the grounds whose sea was read from ships, and rounded. The fit without
// rounding is 0.42, 0.13, 0.21, 0.23 and 1.5 K, and no nearer by 0.1 K. Shallow
// bays follow the air twice as closely; there it misses by 2.4 K, not 1.3.
const (
	seaAboveAirK   = 1.2
	seaOfThisMonth = 0.4
	seaOfLastMonth = 0.2
	seaOfTwoBefore = 0.2
	seaOfTheYear   = 0.2
)

// laggedSea is the sea of a month as the air makes it; i counts from 0.
func laggedSea(g Ground, i int) quantity.Celsius {
	air := func(monthsAgo int) quantity.Celsius { return g.Months[(i+12-monthsAgo)%12].AirMean }
	var year quantity.Celsius
	for _, m := range g.Months {
		year += m.AirMean / 12
	}
	sea := seaOfThisMonth*air(0) + seaOfLastMonth*air(1) + seaOfTwoBefore*air(2) + seaOfTheYear*year
	return max(lowestSeaC, sea+seaAboveAirK)
}
