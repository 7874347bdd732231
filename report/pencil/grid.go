package pencil

import (
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Grid is an empty table with a head, for readings.
type Grid struct {
	Width float64  // of the column it stands in, mm, > 0
	Heads []string // one for each column; all are alike in width
	// Rows names the rows in the first column; an empty name leaves the cell
	// to the pencil.
	Rows []string
}

const gridRow = 5.8 // height of a row: enough for a pencilled figure

// Block gives the grid as a figure of the text's flow.
func (g Grid) Block() layout.Block {
	return layout.Figure{Name: "readings", Height: g.headHeight() + gridRow*float64(len(g.Rows)), Draw: g.draw}
}

func (g Grid) column() float64 { return g.Width / float64(max(1, len(g.Heads))) }

const cellInset = 1.2

func (g Grid) headLines(head string) []string {
	return sheet.Wrap(head, layout.Run, g.column()-2*cellInset)
}

func (g Grid) headHeight() float64 {
	most := 1
	for _, h := range g.Heads {
		most = max(most, len(g.headLines(h)))
	}
	return float64(most)*pitch(layout.Run) + headPad
}

func (g Grid) draw(s sheet.Sheet, r sheet.Rect) error {
	t, w := layout.Run, g.column()
	top := r.Y + g.headHeight()
	bottom := top + gridRow*float64(len(g.Rows))
	for i, head := range g.Heads {
		lines := g.headLines(head)
		y := top - headPad/2 - float64(len(lines))*pitch(t)
		for k, line := range lines {
			s.Text(r.X+float64(i)*w+cellInset, y+float64(k)*pitch(t)+drop(t), line, t)
		}
	}
	for k := range len(g.Rows) + 1 {
		y := top + gridRow*float64(k)
		s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + g.Width, Y: y}, boxPen)
	}
	for i := range len(g.Heads) + 1 {
		x := r.X + float64(i)*w
		s.Line(sheet.Point{X: x, Y: top}, sheet.Point{X: x, Y: bottom}, boxPen)
	}
	for k, name := range g.Rows {
		s.Text(r.X+cellInset, top+gridRow*float64(k)+gridRow/2-pitch(t)/2+drop(t), name, t)
	}
	return s.Err()
}
