package pencil

import (
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
	Width float64 // of the column it stands in, mm, > 0
	Lines []Line
	// Type is the size of the text; the zero Type is that of table cells.
	Type sheet.Type
	// BoxWidth is the room for writing and for the unit, mm; ExampleWidth that
	// for the examples, 0 when there are none.
	BoxWidth, ExampleWidth float64
	// ExampleHead stands over the examples.
	ExampleHead string
}

const (
	boxHeight  = 5.4  // enough for a pencilled figure
	boxPad     = 0.45 // above and below a box
	textPad    = 0.6  // above and below the text
	markWidth  = 6.0
	between    = 2.5 // text to example to box
	unitInset  = 1.2 // unit to the box's edge
	workingGap = 2.0 // text to its worked figures behind it
	pitchOf    = 1.3 // line pitch over type size
	headPad    = 1.0
	headAbove  = 2.4 // over a head among the lines
)

var (
	boxPen   = sheet.Pen{Width: 0.15, Grey: sheet.Dark}
	heavyPen = sheet.Pen{Width: 0.5, Grey: sheet.Black}
	linePen  = sheet.Pen{Width: 0.1, Grey: sheet.Light}
)

func (f Form) text() sheet.Type {
	if f.Type.Size == 0 {
		return layout.Cell
	}
	return f.Type
}

func pitch(t sheet.Type) float64 { return pitchOf * t.Size * sheet.MMPerPoint }

// drop is where a line's baseline stands under its top.
func drop(t sheet.Type) float64 { return (pitch(t)-t.Ascent()-t.Descent())/2 + t.Ascent() }

// textWidth is the room of the text of a line.
func (f Form) textWidth(l Line) float64 {
	if l.Head {
		return f.Width
	}
	w := f.Width - markWidth - between - f.BoxWidth
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

// Block gives the form as a figure of the text's flow.
func (f Form) Block() layout.Block {
	h := f.headHeight()
	for i, l := range f.Lines {
		h += f.lineHeight(l)
		if f.opens(i) {
			h -= headAbove
		}
	}
	return layout.Figure{Name: "form", Height: h, Draw: f.draw}
}

func (f Form) draw(s sheet.Sheet, r sheet.Rect) error {
	y := r.Y
	if f.ExampleHead != "" {
		small := layout.Run
		s.Text(r.X+f.Width-f.BoxWidth-between, y+drop(small), f.ExampleHead, small.In(sheet.Italic).To(sheet.Right))
		y += f.headHeight()
	}
	for i, l := range f.Lines {
		h := f.lineHeight(l)
		if f.opens(i) {
			y -= headAbove
		}
		if !l.Head || i > 0 {
			s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + f.Width, Y: y}, linePen)
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
	s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.X + f.Width, Y: y}, linePen)
	return s.Err()
}

func (f Form) drawLine(s sheet.Sheet, l Line, x, y, h float64) {
	t, small := f.text(), layout.Run
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
	mid, boxX := y+h/2, x+f.Width-f.BoxWidth
	if l.Example != "" {
		s.Text(boxX-between, mid-pitch(t)/2+drop(t), l.Example, sheet.Type{Size: t.Size, Face: sheet.Italic, Grey: sheet.Dark, Align: sheet.Right})
	}
	pen := boxPen
	if l.Heavy {
		pen = heavyPen
	}
	s.Rect(sheet.Rect{X: boxX, Y: mid - boxHeight/2, W: f.BoxWidth, H: boxHeight}, sheet.Fill{}, pen)
	if l.Unit != "" {
		s.Text(x+f.Width-unitInset, mid-pitch(small)/2+drop(small), l.Unit, small.To(sheet.Right))
	}
}
