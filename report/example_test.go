package report

import (
	"fmt"
	"strings"

	"coldreckon/economics"
	"coldreckon/rules"
)

// An invented boat is reckoned and reported as Markdown; its headings show what
// stands where.
func ExampleDocument() {
	pack, err := rules.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	boat := weekender()
	ground, err := boat.Ground()
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := economics.Reckon(boat, pack.Book, ground, economics.Settings{Futures: 20, Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	doc, err := Document(Input{Reckoning: r, Pack: pack, Version: "1.0.0"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(doc.Markdown()) {
		if strings.HasPrefix(line, "# ") || strings.HasPrefix(line, "## ") {
			fmt.Print(line)
		}
	}
	// Output:
	// # Fit the small unit if a cold day is worth $5.50 or more to you. Under $2.50, live on food that keeps. Between, it is close.
	// ## Three reasons
	// ## What would change this
	// ## The four ways
	// ## A tight lid and drain and 3 in more foam inside the walls take the heat in August from 31 to 16 W
	// ## Cold days of 100: small unit 100, larger unit 100 and ice alone 83
	// ## The sun carries the small unit but for September, when up to 2 Wh a day are short
	// ## Buy this: about $1,400, by your own hands
	// ## Cut 2 pieces from 1 sheet, and set them in this order
	// ## Do it in this order, and take care (■ hold point: what follows hides it)
	// ## Expect some 17 Ah a day in August: measure it before you trust it
	// ## The first two weeks
	// ## If the cold fails: food without cold in August, at 70 °F: 3 days to the next shop
}
