package chart_test

import (
	"fmt"

	"coldreckon/report/chart"
	"coldreckon/report/sheet"
)

// A hundred futures in two groups: the words of the drawing, and its squares.
func ExampleTenByTen() {
	c := chart.TenByTen{Fields: []chart.HundredFutures{{Counts: [3]int{72, 0, 28}}}, Groups: [3]string{"small unit", "", "dry stores"}}
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.AddPage()
	if err := c.Draw(s, sheet.Rect{X: 22, Y: 24, W: 100, H: c.Height(100)}); err != nil {
		fmt.Println(err)
		return
	}
	squares := -len(c.Groups) + 1 // the key has one of each
	for _, op := range s.Ops {
		switch op.Kind {
		case sheet.TextOp:
			fmt.Println(op.Text)
		case sheet.AreaOp:
			squares++
		}
	}
	fmt.Println(squares, "squares")
}

// What cannot be drawn is told with the picture's name.
func ExamplePower_Draw() {
	c := chart.Power{Months: []chart.PowerMonth{{SeasonMonth: chart.SeasonMonth{Name: "May"}}}}
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.AddPage()
	fmt.Println(c.Draw(s, sheet.Rect{X: 22, Y: 24, W: 166, H: 60}))
}

func ExampleNumber() {
	fmt.Println(chart.Number(1250, 50), chart.Number(0.25, 0.05), chart.Number(-3, 1))
	// Output:
	// 1,250 0.25 −3
}
