package forms

import (
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Grid is an empty table with a head, for readings.
type Grid struct {
	Heads []string // one for each column; all are alike in width
	// Rows names the rows in the first column; an empty name leaves the cell
	// to the pencil.
	Rows []string
}

const gridRow = 5.8 // height of a row: enough for a pencilled figure

// Block gives the grid as a block of a document.
func (g Grid) Block() layout.Block {
	instead := layout.Table{}
	for _, head := range g.Heads {
		instead.Columns = append(instead.Columns, layout.Column{Head: head})
	}
	for _, name := range g.Rows {
		row := []string{name}
		if name == "" {
			row[0] = "____"
		}
		for len(row) < len(g.Heads) {
			row = append(row, "____")
		}
		instead.Rows = append(instead.Rows, row)
	}
	height := func(w float64) float64 { return g.headHeight(w) + gridRow*float64(len(g.Rows)) }
	return layout.OnPaper{Name: "readings", Height: height, Draw: g.draw, Instead: []layout.Block{instead}}
}

func (g Grid) column(w float64) float64 { return w / float64(max(1, len(g.Heads))) }

const cellInset = 1.2

func (g Grid) headLines(head string, w float64) []string {
	return sheet.Wrap(head, layout.Run, g.column(w)-2*cellInset)
}

func (g Grid) headHeight(w float64) float64 {
	most := 1
	for _, h := range g.Heads {
		most = max(most, len(g.headLines(h, w)))
	}
	return float64(most)*pitch(layout.Run) + headPad
}

func (g Grid) draw(s sheet.Sheet, r sheet.Rect) error {
	t, w := layout.Run, g.column(r.W)
	top := r.Y + g.headHeight(r.W)
	bottom := top + gridRow*float64(len(g.Rows))
	for i, head := range g.Heads {
		lines := g.headLines(head, r.W)
		y := top - headPad/2 - float64(len(lines))*pitch(t)
		for k, line := range lines {
			s.Text(r.X+float64(i)*w+cellInset, y+float64(k)*pitch(t)+drop(t), line, t)
		}
	}
	for k := range len(g.Rows) + 1 {
		y := top + gridRow*float64(k)
		s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + r.W, Y: y}, boxPen)
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
