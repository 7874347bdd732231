package climate

import (
	"fmt"

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

// EstimatedID is the id of every ground that Estimated describes.
const EstimatedID = "own"

// Estimated describes a ground of which only a latitude of -66 to 66° and the
// mean daily lowest and highest air temperatures of twelve months are known,
// January first.
//
// Air mean is half way between them. The sea is the air's mean smoothed over
// three months (1, 2, 1) and a month late, as the sea stores heat; not below
// freezing sea water. The sun follows the daily range of temperature on a
// coast, or the island formula where the range is small near the equator
// (FAO-56 eq. 50 and 51), with clearness kept between 0.20 and a clear sky's
// 0.75. Humidity is 70 % at the mean. On the embedded grounds such estimates
// miss the monthly sun by 15 % and the sea by 2 K (root mean square), the sea
// mostly on the cool side.
//
// It fails when the latitude or a temperature is out of range, or a lowest
// is above its highest.
func Estimated(name string, latDeg float64, airMin, airMax [12]quantity.Celsius) (Ground, error) {
	if !(-MaxLatitudeDeg <= latDeg && latDeg <= MaxLatitudeDeg) {
		return Ground{}, fmt.Errorf("latitude: found %g, expected a number from %d to %d degrees", latDeg, -MaxLatitudeDeg, MaxLatitudeDeg)
	}
	g := Ground{ID: EstimatedID, Name: name, LatDeg: latDeg}
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
		sunMJ := hargreavesMJ(hargreavesCoast, most, float64(m.AirMax-m.AirMin))
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
	seaFromAir   = "estimated: mean air, smoothed and a month late"
	sunFromRange = "estimated: from the daily range of temperature on a coast"
	sunOfIsland  = "estimated: as on a small low island"
)

// laggedSea is the smoothed air of the month before; i counts from 0.
func laggedSea(g Ground, i int) quantity.Celsius {
	air := func(monthsAgo int) quantity.Celsius { return g.Months[(i+12-monthsAgo)%12].AirMean }
	return max(lowestSeaC, (air(0)+2*air(1)+air(2))/4)
}
