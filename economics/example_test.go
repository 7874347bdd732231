package economics_test

import (
	"fmt"

	"coldreckon/economics"
)

// A boat told in full, reckoned in 20 futures with a book of prices and
// criteria. (Package answers makes a Boat of an answers file, package rules a
// Book of rule files.)
func ExampleReckon() {
	boat, book := economics.Dunlin(), economics.TestBook()
	ground, err := boat.Ground()
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := economics.Reckon(boat, book, ground, economics.Settings{Futures: 20, Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the box leaks %.1f W/K\n", r.Box.Leak)
	fmt.Printf("%s, yes from $%v a cold day, no under $%v\n", r.Answer.Way(), r.Answer.YesWorth, r.Answer.NoWorth)
	// Output:
	// the box leaks 1.9 W/K
	// small, yes from $6 a cold day, no under $2.5
}
