package climate

import "math"

// HourShape gives the share of a day's sun that falls in each of its 24
// hours of solar time, the first beginning at midnight, at a latitude and on a
// day of the year, 1 to 365. The shares add up to 1; on a day without sun all
// are 0.
//
// Each hour is taken at its middle. The formula's own shares add up to 0.99 to
// 1.00 and are stretched to 1.
func HourShape(latDeg float64, day int) [24]float64 {
	sunset := sunsetAngle(latDeg, day)
	var shape [24]float64
	var sum float64
	for hour := range shape {
		shape[hour] = hourShare((float64(hour)+0.5-12)*math.Pi/12, sunset)
		sum += shape[hour]
	}
	if sum > 0 {
		for hour := range shape {
			shape[hour] /= sum
		}
	}
	return shape
}

// hourShare is the long-term mean share of a day's sun in the hour about an
// hour angle, with the hour angle of sunset, both rad (Collares-Pereira and
// Rabl 1979; Duffie and Beckman, Solar Engineering of Thermal Processes, eq.
// 2.13.1 and 2.13.2).
func hourShare(hourAngle, sunset float64) float64 {
	if math.Abs(hourAngle) >= sunset {
		return 0
	}
	a := 0.409 + 0.5016*math.Sin(sunset-math.Pi/3)
	b := 0.6609 - 0.4767*math.Sin(sunset-math.Pi/3)
	return math.Pi / 24 * (a + b*math.Cos(hourAngle)) *
		(math.Cos(hourAngle) - math.Cos(sunset)) / (math.Sin(sunset) - sunset*math.Cos(sunset))
}
