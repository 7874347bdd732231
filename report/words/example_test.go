package words_test

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
)

// A voice speaks in the owner's units and currency, no finer than is known.
func ExampleVoice() {
	r := economics.Reckoning{Boat: economics.Boat{Units: quantity.US, Currency: "$"}}
	r.Months = []economics.MonthFigures{
		{Month: 7, Nights: 20, HeatGainW: 30, LeakW: 24, IceKgPerDay: 7.7, SolarWhPerDay: 400, HouseWhPerDay: 150, SmallWhPerDay: 300},
		{Month: 8, Nights: 10, HeatGainW: 25, LeakW: 20, IceKgPerDay: 6.4, SolarWhPerDay: 420, HouseWhPerDay: 150, SmallWhPerDay: 250},
	}
	v := words.Of(&r, economics.Book{})
	fmt.Println(v.IceAtMost())
	fmt.Println(v.SunAgainstDemand())
	fmt.Println(v.MostHeat(r.Months[0]))
	fmt.Println(v.Tight(1412, 903, 2087))
	// Output:
	// In July the box melts 17 lb of ice a day.
	// The sun alone carries the small unit, but not in July.
	// In July 80 parts in 100 of the heat leak in through walls, lid and drain; use brings the rest.
	// $1,400 (900–2,100)
}

func ExampleScaleText() {
	fmt.Println(words.ScaleText())
	// Output:
	// Words of the answer, by futures of 100: worth it 90 to 100; likely worth it 75 to 89; more likely than not worth it 60 to 74; a close call 41 to 59; rather not 26 to 40; not worth it 0 to 25.
}

func ExamplePlural() {
	fmt.Println(words.Plural(1, "night"), words.Plural(128, "night"))
	// Output:
	// 1 night 130 nights
}
