package layout_test

import (
	"fmt"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// A page with a heading, a paragraph and a table, and the text it holds.
func Example() {
	doc := layout.Document{Running: "Ice", Foot: "An example"}
	doc.Add(
		layout.Heading{Level: 0, Text: "Ice"},
		layout.Text{Type: layout.Body, Words: layout.Plain("What a season takes.")},
		layout.Table{
			Columns: []layout.Column{{Head: "Month"}, {Head: "Ice, kg", Align: sheet.Right}},
			Rows: []layout.Row{
				{Cells: []layout.Words{layout.Plain("July"), layout.Plain("130")}},
				{Cells: []layout.Words{layout.Plain("Both"), layout.Plain("250")}, Heavy: true},
			},
		})
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := doc.Draw(s); err != nil {
		fmt.Println(err)
		return
	}
	for _, op := range s.Ops {
		if op.Kind == sheet.TextOp {
			fmt.Println(op.Text)
		}
	}
	// Output:
	// Page 1 of 1
	// An example
	// Ice
	// What a season takes.
	// Month
	// Ice, kg
	// July
	// 130
	// Both
	// 250
}
