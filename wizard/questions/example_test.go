package questions_test

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// Two answers are put into a boat, each in a unit of the owner's choice, one is
// refused, and everything else is assumed.
func Example() {
	var boat economics.Boat
	for _, answer := range [][2]string{{"box.volume", "3.2 cu ft"}, {"box.foam", "1 1/2 in"}, {"box.lid_opening", "9 in"}} {
		if err := questions.Set(&boat, answer[0], answer[1]); err != nil {
			fmt.Println(err)
		}
	}
	questions.Fill(&boat, economics.Book{})
	volume, _ := questions.Find("box.volume")
	fmt.Printf("%.1f L, printed %s\n", boat.Box.Volume, volume.Print(&boat))
	for _, a := range boat.Assumptions {
		if a.Key == "cruising.crew" {
			fmt.Printf("%s: %s (%s)\n", a.Label, a.Value, a.Why)
		}
	}
	// Output:
	// box.lid_opening: "9 in" is not understood. Give length × width, such as 12 x 18 in.
	// 90.6 L, printed 3.2 cu ft
	// People aboard: 2 people (a couple)
}

// A row says how its question is put and what it takes.
func ExampleFind() {
	row, _ := questions.Find("power.battery")
	fmt.Println(row.Ask)
	fmt.Println(row.Bounds(quantity.Metric, "EUR"))
	fmt.Println(row.Spellings(quantity.Metric, "EUR"))
	// Output:
	// How large is the battery for lights and pumps, or the only one?
	// from 5 to 3000 Ah, or none, mostly 30 to 900 Ah
	// [100 Ah]
}
