package boxtest_test

import (
	"fmt"
	"strings"

	"coldreckon/economics/quantity"
	"coldreckon/report/boxtest"
	"coldreckon/report/sheet"
)

// The page in metric units: its headings, and the formulas to work by pencil.
func ExampleDocument() {
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := boxtest.Document(quantity.Metric, "An example").Draw(s); err != nil {
		fmt.Println(err)
		return
	}
	for _, op := range s.Ops {
		if op.Kind == sheet.BookmarkOp || op.Kind == sheet.TextOp && (strings.Contains(op.Text, "×") || strings.HasPrefix(op.Text, "Leak")) {
			fmt.Println(op.Text)
		}
	}
	fmt.Println(s.Page(), "page")
	// Output:
	// How much does the box leak?
	// The ice test
	// 92.7 × C + 1.16 × E × F
	// Leak: H ÷ (D × G)
	// The water-jug test
	// 1.16 × A + 0.0417 × B
	// Leak: C × F ÷ (G × H)
	// 1 page
}
