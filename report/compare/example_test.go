package compare

import (
	"fmt"
	"slices"

	"coldreckon/rules"
)

// Invented boats set side by side, the least leaky box first. A boat that cannot
// be reckoned is a row as well.
func ExampleCompare() {
	pack, err := rules.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	t := Compare(slices.Values(entries()), pack, few, nil)
	if err := t.Sort("leak"); err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range t.Rows {
		if row.Error != "" {
			fmt.Println(row.Name, "could not be reckoned")
			continue
		}
		fmt.Printf("%s leaks %.1f W/K\n", row.Name, row.Box.Leak.Typical)
	}
	// Output:
	// Plover leaks 1.4 W/K
	// Avocet leaks 1.6 W/K
	// Osprey leaks 1.8 W/K
	// Nowhere could not be reckoned
}
