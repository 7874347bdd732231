package forms

import (
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Ready is a close-set table to look figures up in. The first column names
// the rows, the others hold figures.
type Ready struct {
	Mark  string // by which a form calls it, such as "B"
	Title string
	Entry string // in the outline, at level 1; may be empty
	// Note stands under the title, small; it may be empty.
	Note  string
	Heads []string // one for each column
	Rows  [][]string
	First float64 // width of the first column, mm; the others are alike
}

var (
	figures = sheet.Type{Size: 8.5}
	titles  = sheet.Type{Size: 9.5, Face: sheet.Bold}
)

const (
	readyRow  = 3.9
	readyRoom = 1.0 // between title, note and head
	readyGap  = 1.2 // between columns
)

// Block gives the table as a block of a document.
func (t Ready) Block() layout.Block {
	height := func(w float64) float64 { return t.top(w) + readyRow*float64(len(t.Rows)) }
	instead := layout.Table{Rows: t.Rows, Fine: true}
	for i, head := range t.Heads {
		instead.Columns = append(instead.Columns, layout.Column{Head: head, Right: i > 0})
	}
	words := []layout.Block{layout.Para{Lead: strings.TrimSpace(t.Mark + " " + t.Title), Text: t.Note, Keep: true}, instead}
	return layout.OnPaper{Name: "table " + t.Mark, Height: height, Draw: t.draw, Instead: words}
}

// columns gives each column's left edge and width.
func (t Ready) columns(room float64) (xs, ws []float64) {
	x, width := 0.0, t.First
	for range t.Heads {
		xs, ws = append(xs, x), append(ws, width-readyGap)
		x, width = x+width, (room-t.First)/float64(len(t.Heads)-1)
	}
	return xs, ws
}

func (t Ready) headLines(i int, w float64) []string {
	_, ws := t.columns(w)
	return sheet.Wrap(t.Heads[i], small, ws[i])
}

func (t Ready) noteLines(w float64) []string {
	if t.Note == "" {
		return nil
	}
	return sheet.Wrap(t.Note, small, w)
}

// top is the height of title, note and head.
func (t Ready) top(w float64) float64 {
	most := 0
	for i := range t.Heads {
		most = max(most, len(t.headLines(i, w)))
	}
	return pitch(titles) + float64(len(t.noteLines(w)))*pitch(small) + readyRoom + float64(most)*pitch(small) + readyRoom
}

func (t Ready) draw(s sheet.Sheet, r sheet.Rect) error {
	if t.Entry != "" {
		s.Bookmark(t.Entry, 1, r.Y)
	}
	y := r.Y
	s.Text(r.X, y+drop(titles), t.Mark, titles)
	s.Text(r.X+sheet.Width(t.Mark, titles)+2, y+drop(titles), t.Title, titles)
	y += pitch(titles)
	for _, line := range t.noteLines(r.W) {
		s.Text(r.X, y+drop(small), line, small)
		y += pitch(small)
	}
	xs, ws := t.columns(r.W)
	top := r.Y + t.top(r.W)
	for i := range t.Heads {
		lines := t.headLines(i, r.W)
		for k, line := range lines {
			base := top - readyRoom - float64(len(lines)-k)*pitch(small) + drop(small)
			t.cell(s, r.X+xs[i], ws[i], base, i, line, small)
		}
	}
	s.Line(sheet.Point{X: r.X, Y: top}, sheet.Point{X: r.X + r.W, Y: top}, sheet.Pen{Width: 0.25, Grey: sheet.Black})
	for k, row := range t.Rows {
		y := top + readyRow*float64(k)
		if k > 0 {
			s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + r.W, Y: y}, linePen)
		}
		base := y + (readyRow-figures.Ascent())/2 + figures.Ascent()
		for i, text := range row {
			if i < len(xs) {
				t.cell(s, r.X+xs[i], ws[i], base, i, text, figures)
			}
		}
	}
	return s.Err()
}

// cell sets the first column to the left and in bold, the others to the right.
func (t Ready) cell(s sheet.Sheet, x, w, base float64, column int, text string, typ sheet.Type) {
	if column == 0 {
		if typ == figures {
			typ = typ.In(sheet.Bold)
		}
		s.Text(x, base, text, typ)
		return
	}
	s.Text(x+w, base, text, typ.To(sheet.Right))
}
