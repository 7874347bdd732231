package forms

import (
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Blanks is a row of boxes side by side, each under its name.
type Blanks struct {
	Title string // stands in bold over them; may be empty
	Note  string // stands after the title; may be empty
	Boxes []Blank
	// Shares are the widths of the boxes, in any measure; nil makes all alike.
	Shares []float64
}

const (
	blanksGap  = 3.0 // between boxes
	blanksHigh = 6.4 // of a box
)

var blankName = sheet.Type{Size: 9}

func (b Blanks) head() float64 {
	if b.Title == "" {
		return 0
	}
	return pitch(titles) + 0.8
}

// Block gives the row as a block of a document.
func (b Blanks) Block() layout.Block {
	var parts []string
	for _, box := range b.Boxes {
		parts = append(parts, strings.TrimSpace(box.Name+" ____ "+box.Unit))
	}
	return layout.OnPaper{Name: "blanks", Height: func(float64) float64 { return b.head() + pitch(blankName) + blanksHigh }, Draw: b.draw,
		Instead: []layout.Block{layout.Para{Lead: b.Title, Text: strings.TrimSpace(b.Note + " " + strings.Join(parts, "  "))}}}
}

func (b Blanks) draw(s sheet.Sheet, r sheet.Rect) error {
	if b.Title != "" {
		s.Text(r.X, r.Y+drop(titles), b.Title, titles)
		s.Text(r.X+sheet.Width(b.Title, titles)+2.5, r.Y+drop(titles), b.Note, blankName)
	}
	sum := 0.0
	share := func(i int) float64 {
		if b.Shares == nil {
			return 1
		}
		return b.Shares[i]
	}
	for i := range b.Boxes {
		sum += share(i)
	}
	x, y := r.X, r.Y+b.head()
	for i, box := range b.Boxes {
		w := (r.W - blanksGap*float64(len(b.Boxes)-1)) * share(i) / sum
		s.Text(x, y+drop(blankName), sheet.Shorten(box.Name, blankName, w), blankName)
		at := sheet.Rect{X: x, Y: y + pitch(blankName), W: w, H: blanksHigh}
		s.Rect(at, sheet.Fill{}, boxPen)
		inBlank(s, at, box.Unit, blankName)
		x += w + blanksGap
	}
	return s.Err()
}
