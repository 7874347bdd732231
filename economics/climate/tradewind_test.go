package climate

import (
	"math"
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// Days in the trade winds against nine stations kept out of coastSpread
// (testdata/tradewinds.csv): the spread of daily clearness and the worst three
// days of a month, drawn with each month's own mean. Guards tradeWindSpread: at
// 1 the spread is a third too wide and the worst three days 0.09 too dark.
func TestTradeWindDays(t *testing.T) {
	rng := newRNG(8)
	var readSD, drawnSD, readWorst, drawnWorst []float64
	for _, r := range readTestdata(t, "tradewinds.csv", "station") {
		clearness := r.number(t, "mean")
		readSD = append(readSD, r.number(t, "sd"))
		readWorst = append(readWorst, r.number(t, "worst_three_days"))
		s := newScores(clearness, r.number(t, "latitude_deg"))
		near(t, "mean kept", s.mean(), 1, 1e-12)
		for range 40 {
			sun := monthOfSun(&s, rng)
			var days deviation
			worst := math.Inf(1)
			for i, day := range sun {
				days.add(day - 1)
				if i >= 2 {
					worst = min(worst, mean(sun[i-2:i+1]))
				}
			}
			drawnSD = append(drawnSD, clearness*days.rms())
			drawnWorst = append(drawnWorst, worst)
		}
	}
	median := func(x []float64) float64 { return slices.Sorted(slices.Values(x))[len(x)/2] }
	t.Logf("sd read %.3f drawn %.3f; worst three days read %.3f drawn %.3f, medians %.3f and %.3f", mean(readSD), mean(drawnSD),
		mean(readWorst), mean(drawnWorst), median(readWorst), median(drawnWorst))
	near(t, "standard deviation of daily clearness", mean(drawnSD), mean(readSD), 0.01)
	near(t, "worst three days", mean(drawnWorst), mean(readWorst), 0.04)
}

func TestLatitudeSpread(t *testing.T) {
	for _, row := range []struct{ latDeg, want float64 }{
		{0, 0.78}, {25, 0.78}, {-25, 0.78}, {25.1, 1}, {-40, 1}, {60, 1},
	} {
		near(t, "spread of a latitude", latitudeSpread(row.latDeg), row.want, 1e-12)
		trade, coast := newScores(0.55, row.latDeg), newScores(0.55, usLatDeg)
		near(t, "spread of its days", sdOf(&trade)/sdOf(&coast), row.want, 1e-9)
	}
}

// Two grounds with the same clearness, either side of the trade winds' edge:
// a dull day takes less from the sun in the trade winds. Guards the latitude in
// NewSky.
func TestSkyKnowsItsLatitude(t *testing.T) {
	dull := func(latDeg float64) float64 {
		g := Ground{LatDeg: latDeg}
		for i := range g.Months {
			g.Months[i].Sun = quantity.KWhPerM2Day(0.55 * monthlyExtraterrestrialMJ(latDeg, i+1) / mjPerKWh)
		}
		s := NewSky(g)
		return 1 - s.SunKWh(100, -1)/s.MeanKWh(100)
	}
	near(t, "what a dull day takes, inside against outside", dull(24)/dull(26), 0.78, 0.005)
	near(t, "the same south of the equator", dull(-24)/dull(-26), 0.78, 0.005)
}
