package forms

import (
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Listing sets lines of a file as they are, leading spaces included. What
// stands between underscores is for the reader to write in. Lines are not broken: each
// must fit the column.
type Listing struct {
	Lines []string
}

var listingType = sheet.Type{Size: 8.5, Grey: sheet.Dark}

// indentOf is what a leading space is wide, mm.
const indentOf = 1.4

// Block gives the listing as a block of a document.
func (l Listing) Block() layout.Block {
	t := listingType
	height := func(float64) float64 { return float64(len(l.Lines)) * pitch(t) }
	instead := []layout.Block{layout.Para{Text: strings.Join(l.Lines, "\n")}}
	return layout.OnPaper{Name: "listing", Height: height, Instead: instead, Draw: func(s sheet.Sheet, r sheet.Rect) error {
		for i, line := range l.Lines {
			text := strings.TrimLeft(line, " ")
			in := indentOf * float64(len(line)-len(text))
			s.Text(r.X+in, r.Y+float64(i)*pitch(t)+drop(t), text, t)
		}
		return s.Err()
	}}
}
