package forms

import (
	"strings"
	"testing"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// drawn sets blocks on a page and holds them to the page's promises.
func drawn(t *testing.T, blocks ...layout.Block) *sheet.Recording {
	t.Helper()
	r, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		t.Fatal(err)
	}
	var doc layout.Document
	doc.Add(blocks...)
	if err := doc.Draw(r); err != nil {
		t.Fatal(err)
	}
	w, h := r.Paper()
	for _, o := range r.Outside(sheet.Rect{W: w, H: h}.Inset(21.9, 23.9, 21.9, 11)) { // the usual margins, and the foot
		t.Errorf("outside the frame: %v", o)
	}
	for _, pair := range r.Collisions() {
		t.Errorf("collision: %v\n%v", pair[0], pair[1])
	}
	return r
}

func count(r *sheet.Recording, k sheet.Kind) int {
	n := 0
	for _, o := range r.Ops {
		if o.Kind == k {
			n++
		}
	}
	return n
}

func TestFormGrowsWithItsText(t *testing.T) {
	long := strings.Repeat("look the leak up in the table and multiply it ", 6)
	form := Form{BoxWidth: 30, ExampleWidth: 12, ExampleHead: "example", Lines: []Line{
		{Mark: "1", Text: "Volume of the box", Unit: "cu ft", Example: "3.5"},
		{Mark: "2", Text: long, Unit: "Btu/h·°F", Example: "2.76", Heavy: true},
		{Mark: "20", Text: "Cost a year", Unit: "$"},
	}}
	r := drawn(t, form.Block(), layout.Para{Text: "After the form."})
	if boxes := count(r, sheet.AreaOp); boxes != 3 {
		t.Errorf("%d boxes, want one for each line", boxes)
	}
	last := r.Ops[0]
	for _, o := range r.Ops {
		if o.Kind == sheet.AreaOp {
			last = o
		}
	}
	for _, o := range r.Ops {
		if o.Text == "Cost a year" && (o.Box.Y+o.Box.H/2 < last.Box.Y+1.5 || o.Box.Y+o.Box.H/2 > last.Box.Bottom()-1.5) {
			t.Errorf("%v does not stand beside its box %v", o, last.Box)
		}
	}
	for _, box := range r.Ops {
		for _, o := range r.Ops {
			if box.Kind == sheet.AreaOp && o.Kind == sheet.TextOp && o.Text != "cu ft" && o.Text != "Btu/h·°F" && o.Text != "$" && o.Box.Overlaps(box.Box) {
				t.Errorf("%v stands in a box", o)
			}
		}
	}
}

func TestGridHoldsItsRowsAndNames(t *testing.T) {
	g := Grid{Heads: []string{"Time", "Air outside, in the shade and out of the wind, °C", "Inside"}, Rows: []string{"", "", "Mean"}}
	r := drawn(t, g.Block(), layout.Para{Text: "After the grid."})
	if lines := count(r, sheet.LineOp); lines != 4+4 {
		t.Errorf("%d lines, want 4 across and 4 down", lines)
	}
	if !strings.Contains(r.String(), "Mean") {
		t.Error("the name of a row is missing")
	}
}

func TestListingKeepsItsIndent(t *testing.T) {
	r := drawn(t, Listing{Lines: []string{"evidence:", "  jug_tests:", "    - water: ___ kg"}}.Block())
	var at []float64
	for _, o := range r.Ops {
		if o.Kind == sheet.TextOp && strings.Contains(o.Text, ":") {
			at = append(at, o.Box.X)
		}
	}
	if len(at) != 3 || !(at[0] < at[1] && at[1] < at[2]) {
		t.Errorf("lines start at %v, want each further in", at)
	}
}

// Each box of a row stands under its name, and the row says itself in words.
func TestBlanksStandUnderTheirNames(t *testing.T) {
	row := Blanks{Title: "The quotation", Note: "As it stands.", Boxes: []Blank{{Name: "Price", Unit: "$"}, {Name: "Watts"}}, Shares: []float64{1, 2}}
	r := drawn(t, row.Block(), layout.Para{Text: "After the row."})
	var boxes []sheet.Rect
	for _, o := range r.Ops {
		if o.Kind == sheet.AreaOp {
			boxes = append(boxes, o.Box)
		}
	}
	if len(boxes) != 2 || boxes[1].W < 1.9*boxes[0].W {
		t.Fatalf("boxes %v, want two, the second twice as wide", boxes)
	}
	for i, name := range []string{"Price", "Watts"} {
		for _, o := range r.Ops {
			if o.Text == name && (o.Box.X != boxes[i].X || o.Box.Bottom() > boxes[i].Y) {
				t.Errorf("%v does not stand over %v", o, boxes[i])
			}
		}
	}
	var doc layout.Document
	doc.Add(row.Block())
	if text := doc.Text(); !strings.Contains(text, "Price ____ $") {
		t.Errorf("in words: %q", text)
	}
}
