package forms

import (
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Line is one line of a form: what to do, and a box for the result.
type Line struct {
	Mark string // by which later lines call it, such as "A" or "7"
	Text string // what to write or work out
	Unit string // printed in the box, at its right; may be empty
	// Working is the line worked out with somebody's figures: in italics,
	// behind the text if it fits there, else below it. It may be empty.
	Working string
	// Example is a worked figure, printed before the box. It may be empty.
	Example string
	// Heavy frames the box darkly, for results that are carried on.
	Heavy bool
	// Head makes the line the head of those that follow: bold, without a box.
	Head bool
}

// Form is a run of lines below one another.
type Form struct {
	Lines []Line
	// Type is the size of the text; the zero Type is that of table cells.
	Type sheet.Type
	// BoxWidth is the room for writing and for the unit, mm; ExampleWidth that
	// for the examples, 0 when there are none.
	BoxWidth, ExampleWidth float64
	// ExampleHead stands over the examples.
	ExampleHead string

	width float64 // of the column it stands in, mm
}

const (
	boxPad     = 0.45 // above and below a box
	textPad    = 0.6  // above and below the text
	markWidth  = 6.0
	between    = 2.5 // text to example to box
	workingGap = 2.0 // text to its worked figures behind it
	headAbove  = 2.4 // over a head among the lines
)

func (f Form) text() sheet.Type {
	if f.Type.Size == 0 {
		return layout.Cell
	}
	return f.Type
}

// textWidth is the room of the text of a line.
func (f Form) textWidth(l Line) float64 {
	if l.Head {
		return f.width
	}
	w := f.width - markWidth - between - f.BoxWidth
	if f.ExampleWidth > 0 {
		w -= between + f.ExampleWidth
	}
	return w
}

// lineType is the type of a line's text.
func (f Form) lineType(l Line) sheet.Type {
	t := f.text()
	if l.Head {
		t.Face, t.Size = sheet.Bold, t.Size+1.5
	}
	return t
}

func (f Form) lines(l Line) []string { return sheet.Wrap(l.Text, f.lineType(l), f.textWidth(l)) }

func (f Form) workingType() sheet.Type {
	t := f.text().In(sheet.Italic)
	t.Grey = sheet.Dark
	return t
}

// working breaks a line's worked figures into lines of their own.
func (f Form) working(l Line) []string {
	if l.Working == "" {
		return nil
	}
	return sheet.Wrap(l.Working, f.workingType(), f.textWidth(l))
}

// behind reports whether the worked figures stand on the text's last line.
func (f Form) behind(l Line) bool {
	lines := f.lines(l)
	end := sheet.Width(lines[len(lines)-1], f.lineType(l)) + workingGap + sheet.Width(l.Working, f.workingType())
	return l.Working != "" && end <= f.textWidth(l)
}

func (f Form) lineHeight(l Line) float64 {
	h := float64(len(f.lines(l))+len(f.working(l))) * pitch(f.lineType(l))
	if f.behind(l) {
		h -= pitch(f.lineType(l))
	}
	if l.Head {
		return headAbove + h + headPad
	}
	return max(h+2*textPad, boxHeight+2*boxPad)
}

func (f Form) headHeight() float64 {
	if f.ExampleHead == "" {
		return 0
	}
	return pitch(layout.Run) + headPad
}

// opens reports whether a line is a head with nothing of the form over it,
// which then needs no air of its own there.
func (f Form) opens(i int) bool { return i == 0 && f.Lines[i].Head && f.ExampleHead == "" }

// Block gives the form as a block of a document.
func (f Form) Block() layout.Block {
	return layout.OnPaper{Name: "form", Height: f.height, Draw: f.draw, Instead: f.instead()}
}

// instead says the lines as tables, with a column to write in.
func (f Form) instead() []layout.Block {
	var out []layout.Block
	columns := []layout.Column{{Head: "Line"}, {Head: "What to write"}}
	if f.ExampleWidth > 0 {
		columns = append(columns, layout.Column{Head: capital(f.ExampleHead), Right: true})
	}
	table := layout.Table{Columns: append(columns, layout.Column{Head: "Yours"})}
	end := func() {
		if len(table.Rows) > 0 {
			out = append(out, table)
		}
		table.Rows = nil
	}
	for _, l := range f.Lines {
		if l.Head {
			end()
			out = append(out, layout.Heading{Level: 2, Text: l.Text})
			continue
		}
		row := []string{l.Mark, strings.TrimSpace(l.Text + " " + l.Working)}
		if f.ExampleWidth > 0 {
			row = append(row, l.Example)
		}
		table.Rows = append(table.Rows, append(row, "____ "+l.Unit))
	}
	end()
	return out
}

func (f Form) height(w float64) float64 {
	f.width = w
	h := f.headHeight()
	for i, l := range f.Lines {
		h += f.lineHeight(l)
		if f.opens(i) {
			h -= headAbove
		}
	}
	return h
}

func (f Form) draw(s sheet.Sheet, r sheet.Rect) error {
	f.width = r.W
	y := r.Y
	if f.ExampleHead != "" {
		t := layout.Run
		s.Text(r.X+f.width-f.BoxWidth-between, y+drop(t), f.ExampleHead, t.In(sheet.Italic).To(sheet.Right))
		y += f.headHeight()
	}
	for i, l := range f.Lines {
		h := f.lineHeight(l)
		if f.opens(i) {
			y -= headAbove
		}
		if !l.Head || i > 0 {
			s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + f.width, Y: y}, linePen)
		}
		if l.Head {
			t := f.lineType(l)
			for k, text := range f.lines(l) {
				s.Text(r.X, y+headAbove+float64(k)*pitch(t)+drop(t), text, t)
			}
		} else {
			f.drawLine(s, l, r.X, y, h)
		}
		y += h
	}
	s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + f.width, Y: y}, linePen)
	return s.Err()
}

func (f Form) drawLine(s sheet.Sheet, l Line, x, y, h float64) {
	t := f.text()
	lines, working := f.lines(l), f.working(l)
	room := len(lines) + len(working)
	if f.behind(l) {
		room--
	}
	top := y + (h-float64(room)*pitch(t))/2
	s.Text(x, top+drop(t), l.Mark, t.In(sheet.Bold))
	for i, text := range lines {
		s.Text(x+markWidth, top+float64(i)*pitch(t)+drop(t), text, t)
	}
	for i, text := range working {
		at, line := x+markWidth, len(lines)+i
		if f.behind(l) {
			at, line = at+sheet.Width(lines[len(lines)-1], t)+workingGap, line-1
		}
		s.Text(at, top+float64(line)*pitch(t)+drop(t), text, f.workingType())
	}
	mid, boxX := y+h/2, x+f.width-f.BoxWidth
	if l.Example != "" {
		s.Text(boxX-between, mid-pitch(t)/2+drop(t), l.Example, sheet.Type{Size: t.Size, Face: sheet.Italic, Grey: sheet.Dark, Align: sheet.Right})
	}
	pen := boxPen
	if l.Heavy {
		pen = heavyPen
	}
	box := sheet.Rect{X: boxX, Y: mid - boxHeight/2, W: f.BoxWidth, H: boxHeight}
	s.Rect(box, sheet.Fill{}, pen)
	inBlank(s, box, l.Unit, layout.Run)
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
