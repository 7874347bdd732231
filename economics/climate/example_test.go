package climate_test

import (
	"fmt"

	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
)

// The air of July on the coast of Maine, and the sun of its fifteenth when the
// sky is as dull as one day in six, usual, and as clear as one in six.
func ExampleNewSky() {
	ground, err := climate.Find("maine-coast")
	if err != nil {
		fmt.Println(err)
		return
	}
	july := ground.Months[6]
	sky := climate.NewSky(ground)
	day := climate.MidMonthDay(7)
	fmt.Printf("%.0f to %.0f °C\n", july.AirMin, july.AirMax)
	for _, score := range []float64{-1, 0, 1} {
		fmt.Printf("%.1f kWh/m²\n", sky.SunKWh(day, score))
	}
	// Output:
	// 13 to 23 °C
	// 4.4 kWh/m²
	// 6.5 kWh/m²
	// 7.6 kWh/m²
}

// A mistyped id is answered with the nearest known one.
func ExampleFind() {
	_, err := climate.Find("main-coast")
	fmt.Println(err)
	// Output: cruising ground: there is no "main-coast" in the list of grounds; did you mean maine-coast?
}

// A ground of one's own, from its latitude and monthly temperatures.
func ExampleEstimated() {
	var low, high [12]quantity.Celsius
	for i := range 12 {
		low[i], high[i] = 8, 14
	}
	ground, err := climate.Estimated("Home", 54.5, low, high)
	fmt.Printf("sun of June %.1f kWh/m² a day, error %v\n", ground.Months[5].Sun, err)
	// Output: sun of June 4.4 kWh/m² a day, error <nil>
}
