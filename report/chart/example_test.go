package chart_test

import (
	"fmt"

	"coldreckon/report/chart"
	"coldreckon/report/sheet"
)

// A hundred futures in two groups: the words of the drawing, and its squares.
func ExampleHundred() {
	c := chart.Hundred{
		Head:   chart.Head{Name: "best of 100", Finding: "A small unit is best in 72 of 100 futures."},
		Groups: []string{"small unit", "ice alone"},
		Rows:   []chart.HundredRow{{Counts: []int{72, 28}}},
	}
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.AddPage()
	if err := c.Draw(s, sheet.Rect{X: 22, Y: 24, W: 166, H: 30}); err != nil {
		fmt.Println(err)
		return
	}
	squares := -len(c.Groups) // the key has one of each
	for _, op := range s.Ops {
		switch op.Kind {
		case sheet.TextOp:
			fmt.Println(op.Text)
		case sheet.AreaOp:
			squares++
		}
	}
	fmt.Println(squares, "squares")
	// Output:
	// A small unit is best in 72 of 100 futures.
	// 72 small unit
	// 28 ice alone
	// 100 squares
}

// What cannot be drawn is told with the figure's name.
func ExampleMonths_Draw() {
	c := chart.Months{
		Head: chart.Head{Name: "ice by month", Finding: "July melts most."},
		Bars: []chart.ByMonth{{Label: "ice", Values: map[int]float64{7: 4.2, 13: 1}}},
	}
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.AddPage()
	fmt.Println(c.Draw(s, sheet.Rect{X: 22, Y: 24, W: 166, H: 60}))
	// Output:
	// picture "ice by month": ice has a month that is not 1 to 12
}

func ExampleNumber() {
	fmt.Println(chart.Number(1250, 50), chart.Number(0.25, 0.05), chart.Number(-3, 1))
	// Output:
	// 1,250 0.25 −3
}
