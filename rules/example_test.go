package rules_test

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/rules"
)

// A club lays its own price of ice over the embedded book.
func ExamplePack_WithPrices() {
	pack, err := rules.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	own, err := pack.WithPrices("club.yaml", []byte(`kind: own-prices
prices:
  - {id: ice_cubes, unit: lb, low: 0.40, typical: 0.60, high: 0.90, source: "fuel dock, this spring"}
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	line, _ := own.Book.Price("ice_cubes")
	fmt.Printf("%s: %.2f to %.2f a %s (%s)\n", line.Label, line.Price.Low, line.Price.High, line.Unit, line.Source)
	// Output: Bagged cube ice: 0.88 to 1.98 a kg (fuel dock, this spring)
}

// A reason is filled for an owner who reads US units.
func ExampleFill() {
	text, err := rules.Fill("The ice leaves {room_for_food_l} for food. The food between two stops needs {food_to_keep_l}.",
		economics.Facts{"room_for_food_l": 20.0, "food_to_keep_l": 34.0}, quantity.US, "$")
	fmt.Println(text, err)
	// Output: The ice leaves 0.71 cu ft for food. The food between two stops needs 1.2 cu ft. <nil>
}

// A file with one caution, judged over the facts of a boat on ice.
func ExamplePack_Judge() {
	pack, err := rules.Read("warm.yaml", []byte(`kind: cautions
cautions:
  - id: warm
    grade: caution
    when: "warmest_food_c > 5 && crew > 1"
    text: "The food gets warm."
    source: "an example"
    examples:
      - {facts: {warmest_food_c: 6, crew: 2}, fires: "yes"}
      - {facts: {warmest_food_c: 4, crew: 2}, fires: "no"}
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	found, err := pack.Judge(economics.Facts{"option": "ice", "warmest_food_c": 6.5, "crew": 2.0})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range found {
		fmt.Println(f.Grade, f.Options, f.Text)
	}
	// Output: caution [ice] The food gets warm.
}

// Mistakes are told with their place, what was found and what was expected.
func ExampleRead() {
	_, err := rules.Read("warm.yaml", []byte(`kind: cautions
cautions:
  - {id: warm, grade: caution, when: "warmest_food > 5", text: "Warm.", source: "an example",
     examples: [{facts: {warmest_food_c: 6}, fires: "yes"}, {facts: {warmest_food_c: 4}, fires: "no"}]}
`))
	fmt.Println(err)
	// Output: warm.yaml:3:38: warm: when: found "warmest_food", expected the name of a fact (did you mean "warmest_food_c"?)
}
