package layout_test

import (
	"fmt"
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// One content on paper, as plain text and as Markdown.
func Example() {
	doc := layout.Document{Title: "Ice", Foot: "An example"}
	doc.Part(
		layout.Heading{Level: 0, Text: "Ice"},
		layout.List{Items: []layout.Item{{Lead: "Leak.", Text: "1.9 W/K."}}},
		layout.Table{Columns: []layout.Column{{Head: "Month"}, {Head: "kg", Right: true}}, Rows: [][]string{{"July", "130"}, {"August", "120"}}})
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := doc.Draw(s); err != nil {
		fmt.Println(err)
		return
	}
	var said []string
	for _, op := range s.Ops {
		if op.Kind == sheet.TextOp {
			said = append(said, op.Text)
		}
	}
	fmt.Println(strings.Join(said, "; "))
	fmt.Println(doc.Text())
	fmt.Print(doc.Markdown())
	// Output:
	// Page 1 of 1; An example; Ice; –; Leak. ; 1.9 W/K.; Month; kg; July; 130; August; 120
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
