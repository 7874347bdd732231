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
	v := words.Of(&r, economics.Book{})
	fmt.Println(v.Tight(1412, quantity.Range{Low: 903, High: 2087}))
	// Output:
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
