package handout_test

import (
	"fmt"

	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/report/handout"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

// The two sheets for one ground: their title, how many pages they take, and
// the entries of the outline.
func Example() {
	ground, err := climate.Find("maine-coast")
	if err != nil {
		fmt.Println(err)
		return
	}
	pack, err := rules.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	h, err := handout.New(ground, quantity.US, pack)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := sheet.NewRecording(sheet.Letter)
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := h.Document("An example").Draw(s); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(h.Title())
	fmt.Println(s.Page(), "pages")
	for _, op := range s.Ops {
		if op.Kind == sheet.BookmarkOp {
			fmt.Printf("page %d: %s\n", op.Page, op.Text)
		}
	}
	// Output:
	// Ice, dry stores or a fridge? Maine coast, USA
	// 2 pages
	// page 1: Ice, dry stores or a fridge?
	// page 2: Tables
}
