package forms

import (
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Line is one line of a form: what to do, and a box for the result.
type Line struct {
	Mark    string // by which later lines call it, such as "A" or "7"
	Text    string // what to write or work out
	Unit    string // printed in the box, at its right; may be empty
	Example string // a worked figure, printed before the box; may be empty
	Heavy   bool   // frames the box darkly, for results that are carried on
}

// Form is a run of lines below one another, in the type of table cells.
type Form struct {
	Lines []Line
	// BoxWidth is the room for writing and for the unit, mm; ExampleWidth that
	// for the examples.
	BoxWidth, ExampleWidth float64
	ExampleHead            string // stands over the examples
}

const (
	boxPad    = 0.45 // above and below a box
	textPad   = 0.6  // above and below the text
	markWidth = 6.0
	between   = 2.5 // text to example to box
)

// lines breaks a line's text in a column w wide.
func (f Form) lines(l Line, w float64) []string {
	return sheet.Wrap(l.Text, layout.Cell, w-markWidth-2*between-f.BoxWidth-f.ExampleWidth)
}

func (f Form) lineHeight(l Line, w float64) float64 {
	return max(float64(len(f.lines(l, w)))*pitch(layout.Cell)+2*textPad, boxHeight+2*boxPad)
}

func (f Form) headHeight() float64 { return pitch(layout.Run) + headPad }

// Block gives the form as a block of a document; in words its lines are a table
// with a column to write in.
func (f Form) Block() layout.Block {
	table := layout.Table{Columns: []layout.Column{{Head: "Line"}, {Head: "What to write"}, {Head: capital(f.ExampleHead), Right: true}, {Head: "Yours"}}}
	for _, l := range f.Lines {
		table.Rows = append(table.Rows, []string{l.Mark, l.Text, l.Example, "____ " + l.Unit})
	}
	return layout.OnPaper{Name: "form", Height: f.height, Draw: f.draw, Instead: []layout.Block{table}}
}

func (f Form) height(w float64) float64 {
	h := f.headHeight()
	for _, l := range f.Lines {
		h += f.lineHeight(l, w)
	}
	return h
}

func (f Form) draw(s sheet.Sheet, r sheet.Rect) error {
	run := layout.Run
	s.Text(r.Right()-f.BoxWidth-between, r.Y+drop(run), f.ExampleHead, run.In(sheet.Italic).To(sheet.Right))
	y := r.Y + f.headHeight()
	rule := func() { s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.Right(), Y: y}, linePen) }
	for _, l := range f.Lines {
		rule()
		h := f.lineHeight(l, r.W)
		f.drawLine(s, l, sheet.Rect{X: r.X, Y: y, W: r.W, H: h})
		y += h
	}
	rule()
	return s.Err()
}

func (f Form) drawLine(s sheet.Sheet, l Line, r sheet.Rect) {
	t := layout.Cell
	lines := f.lines(l, r.W)
	top := r.Y + (r.H-float64(len(lines))*pitch(t))/2
	s.Text(r.X, top+drop(t), l.Mark, t.In(sheet.Bold))
	for i, text := range lines {
		s.Text(r.X+markWidth, top+float64(i)*pitch(t)+drop(t), text, t)
	}
	mid := r.Y + r.H/2
	box := sheet.Rect{X: r.Right() - f.BoxWidth, Y: mid - boxHeight/2, W: f.BoxWidth, H: boxHeight}
	if l.Example != "" {
		s.Text(box.X-between, mid-pitch(t)/2+drop(t), l.Example, sheet.Type{Size: t.Size, Face: sheet.Italic, Grey: sheet.Dark, Align: sheet.Right})
	}
	pen := boxPen
	if l.Heavy {
		pen = heavyPen
	}
	s.Rect(box, sheet.Fill{}, pen)
	inBlank(s, box, l.Unit, layout.Run)
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
