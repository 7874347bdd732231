package pencil

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

// indentOf is what a leading space is wide, mm.
const indentOf = 1.4

// Block gives the listing as a figure of the text's flow.
func (l Listing) Block() layout.Block {
	t := layout.Small
	return layout.Figure{Name: "listing", Height: float64(len(l.Lines)) * pitch(t), Draw: func(s sheet.Sheet, r sheet.Rect) error {
		for i, line := range l.Lines {
			text := strings.TrimLeft(line, " ")
			in := indentOf * float64(len(line)-len(text))
			s.Text(r.X+in, r.Y+float64(i)*pitch(t)+drop(t), text, t)
		}
		return s.Err()
	}}
}
