package forms_test

import (
	"fmt"

	"coldreckon/report/forms"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// A form of two lines: the words, and how many boxes there are to write in.
func ExampleForm() {
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	var doc layout.Document
	doc.Add(forms.Form{
		BoxWidth: 28, ExampleWidth: 12,
		Lines: []forms.Line{
			{Mark: "A", Text: "Ice melted", Unit: "kg", Example: "7.8"},
			{Mark: "B", Text: "Heat: 92.7 × A", Unit: "Wh", Example: "723", Heavy: true},
		},
	}.Block())
	if err := doc.Draw(s); err != nil {
		fmt.Println(err)
		return
	}
	boxes := 0
	for _, op := range s.Ops {
		switch op.Kind {
		case sheet.TextOp:
			fmt.Println(op.Text)
		case sheet.AreaOp:
			boxes++
		}
	}
	fmt.Println(boxes, "boxes")
	// Output:
	// Page 1 of 1
	// A
	// Ice melted
	// 7.8
	// kg
	// B
	// Heat: 92.7 × A
	// 723
	// Wh
	// 2 boxes
}
