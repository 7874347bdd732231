package sheet_test

import (
	"fmt"
	"strings"

	"coldreckon/report/sheet"
)

// A small drawing, and what a recording keeps of it.
func Example() {
	s, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.AddPage()
	s.Text(22, 30, "Ice a day, kg", sheet.Type{Size: 10})
	s.Rect(sheet.Rect{X: 22, Y: 35, W: 60, H: 6}, sheet.Shade(sheet.Light), sheet.Pen{Width: 0.15, Grey: sheet.Mid})
	s.Line(sheet.Point{X: 22, Y: 45}, sheet.Point{X: 100, Y: 45}, sheet.Pen{Width: 0.15, Grey: sheet.Mid})
	if err := s.Err(); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s)
	// Output:
	// 1 page
	// 1 text 22.0,30.0 w20.6 10pt regular grey 0 "Ice a day, kg"
	// 1 area 22.0,35.0 82.0,35.0 82.0,41.0 22.0,41.0 fill solid 190 pen 0.15 grey 130
	// 1 line 22.0,45.0 100.0,45.0 pen 0.15 grey 130
}

// The first fault is kept with the name of the figure.
func ExampleSheet_err() {
	s, err := sheet.NewRecording(sheet.Letter)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.AddPage()
	s.Picture("cold days")
	s.Text(22, 30, "a week", sheet.Type{})
	s.Text(22, 40, "a month", sheet.Type{Size: 10})
	fmt.Println(s.Err())
	// Output:
	// picture "cold days": type of 0 points; sizes are above 0
}

func ExampleWrap() {
	lines := sheet.Wrap("A box of ninety litres melts six kilograms of ice a day.", sheet.Type{Size: 10}, 50)
	fmt.Println(strings.Join(lines, "\n"))
	// Output:
	// A box of ninety litres melts six
	// kilograms of ice a day.
}

func ExampleClean() {
	fmt.Println(sheet.Clean("Nguyễn\tpaid ₹ 500"))
	// Output:
	// Nguyên paid INR 500
}
