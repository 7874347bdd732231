package rules_test

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/rules"
)

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
	// Output: warm.yaml:3:38: warm: when: found "warmest_food"; expected the name of a fact (did you mean "warmest_food_c"?)
}
