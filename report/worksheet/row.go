package worksheet

import (
	"strconv"
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

const (
	numberWidth = 7.0
	answerWidth = 58.0 // of the right half, for boxes and squares
	between     = 4.0  // question to answer
	rowPad      = 0.7  // above and below a row
	boxHeight   = 5.4
	boxWidth    = 30.0 // of a single figure
	boxGap      = 1.4
	boxesAcross = 6   // boxes in a line: half a year of months
	unitInset   = 1.2 // unit to the box's edge
	squareGap   = 1.6 // square to its words
	tickGap     = 4.0 // one tick to the next in a line
	partGap     = 1.2 // boxes to the squares under them
	pitchOf     = 1.3 // line pitch over type size
	keyDrop     = 0.6 // answer to a key under it
	keyGap      = 2.0 // key to what stands before it
)

var (
	asks    = sheet.Type{Size: layout.Cell.Size}
	marks   = layout.Fine // words to tick
	helps   = sheet.Type{Size: 7.5, Grey: sheet.Dark}
	keys    = helps.In(sheet.Italic).To(sheet.Right)
	names   = sheet.Type{Size: 7, Grey: sheet.Dark}
	boxPen  = sheet.Pen{Width: 0.15, Grey: sheet.Dark}
	tickPen = sheet.Pen{Width: 0.2, Grey: sheet.Dark}
	rowPen  = sheet.Pen{Width: 0.1, Grey: sheet.Light}
)

func pitch(t sheet.Type) float64 { return pitchOf * t.Size * sheet.MMPerPoint }

// drop is where a line's baseline stands under its top.
func drop(t sheet.Type) float64 { return (pitch(t)-t.Ascent()-t.Descent())/2 + t.Ascent() }

// row is one question across the page: its words at the left, the room for
// the answer at the right.
type row struct {
	Question
	number int
	width  float64
	last   bool // of its section: a line is drawn below it
}

func (r row) textWidth() float64 { return r.width - numberWidth - between - answerWidth }

func (r row) figure() layout.Figure {
	return layout.Figure{Name: "question " + r.Key, Height: r.height(), Draw: r.draw}
}

func (r row) height() float64 {
	_, h := r.keyPlace()
	return h + 2*rowPad
}

func (r row) textHeight() float64 {
	return float64(len(r.topicLines())+len(r.askLines()))*pitch(asks) + float64(len(r.helpLines()))*pitch(helps)
}

func (r row) topicLines() []string {
	if r.Topic == "" {
		return nil
	}
	return sheet.Wrap(r.Topic, asks.In(sheet.Bold), r.textWidth())
}

func (r row) askLines() []string { return sheet.Wrap(degrees(r.Ask), asks, r.textWidth()) }

func (r row) helpLines() []string { return sheet.Wrap(degrees(r.Help), helps, r.textWidth()) }

// degrees keeps the sign of a temperature on the line of its figure.
func degrees(text string) string { return strings.ReplaceAll(text, " °", "\u00a0°") }

// keyPlace is where the key ends at its right and what height the row's inside
// takes with it: the lower right corner if nothing stands there, else the end
// of the help, else under the answer.
func (r row) keyPlace() (at sheet.Point, height float64) {
	text, w := r.textHeight(), sheet.Width(r.Key, keys)
	height = max(text, r.answerHeight())
	corner := sheet.Rect{X: answerWidth - w - keyGap, Y: height - pitch(helps), W: w + keyGap, H: pitch(helps)}
	if !r.occupies(corner) {
		return sheet.Point{X: r.width, Y: height - pitch(helps)}, height
	}
	lines := r.helpLines()
	if end := sheet.Width(lines[len(lines)-1], helps) + keyGap + w; end <= r.textWidth() {
		return sheet.Point{X: numberWidth + end, Y: text - pitch(helps)}, height
	}
	under := r.answerHeight() + keyDrop
	return sheet.Point{X: r.width, Y: under}, max(text, under+pitch(keys))
}

func (r row) draw(s sheet.Sheet, at sheet.Rect) error {
	across := func(y float64) {
		s.Line(sheet.Point{X: at.X, Y: y}, sheet.Point{X: at.X + r.width, Y: y}, rowPen)
	}
	across(at.Y)
	if r.last {
		across(at.Bottom())
	}
	x, y := at.X+numberWidth, at.Y+rowPad
	s.Text(at.X, y+drop(asks), strconv.Itoa(r.number), asks.In(sheet.Bold))
	put := func(lines []string, t sheet.Type) {
		for _, line := range lines {
			s.Text(x, y+drop(t), line, t)
			y += pitch(t)
		}
	}
	put(r.topicLines(), asks.In(sheet.Bold))
	put(r.askLines(), asks)
	put(r.helpLines(), helps)
	end, _ := r.keyPlace()
	s.Text(at.X+end.X, at.Y+rowPad+end.Y+drop(keys), r.Key, keys)

	x = at.X + r.width - answerWidth
	r.drawBlanks(s, x, at.Y+rowPad)
	r.drawTicks(s, x, at.Y+rowPad+r.ticksTop())
	return s.Err()
}
