package forms_test

import (
	"fmt"

	"coldreckon/report/forms"
	"coldreckon/report/sheet"
)

// A sheet of two questions, and the text it holds.
func ExampleQuestionnaire_Document() {
	c := forms.Questionnaire{
		Title: "The ice box", Intro: "Write or tick.",
		Sections: []forms.Section{{Title: "Inside", Questions: []forms.Question{
			{Key: "box.volume", Ask: "How much does it hold?", Help: "Usual: 60 to 120 L.", Blanks: []forms.Blank{{Unit: "L"}}},
			{Key: "box.drain", Ask: "Is there a drain?", Ticks: []string{"yes", "no"}},
		}}},
	}
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := c.Document("An example").Draw(s); err != nil {
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
	// The ice box
	// Write or tick.
	// Inside
	// 1
	// How much does it hold?
	// Usual: 60 to 120 L.
	// box.volume
	// L
	// 2
	// Is there a drain?
	// box.drain
	// yes
	// no
}
