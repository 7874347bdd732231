package page_test

import (
	"fmt"

	"coldreckon/report/page"
)

// One content, as plain text and as Markdown.
func Example() {
	doc := page.Document{Title: "Ice"}
	doc.Part(
		page.Heading{Level: 0, Text: "Ice"},
		page.List{Items: []page.Item{{Lead: "Leak.", Text: "1.9 W/K."}}},
		page.Table{Columns: []page.Column{{Head: "Month"}, {Head: "kg", Right: true}}, Rows: [][]string{{"July", "130"}, {"August", "120"}}})
	fmt.Println(doc.Text())
	fmt.Print(doc.Markdown())
	// Output:
	// Ice
	// ===
	//
	// - Leak. 1.9 W/K.
	//
	// Month    kg
	// -----------
	// July    130
	// August  120
	//
	// # Ice
	//
	// - **Leak.** 1.9 W/K.
	//
	// | Month | kg |
	// | --- | ---: |
	// | July | 130 |
	// | August | 120 |
}
