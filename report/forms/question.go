package forms

import (
	"strconv"
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

const (
	numberWidth = 6.0
	answerWidth = 52.0 // of the right half, for boxes and squares
	toAnswer    = 3.0  // from the question
	rowPad      = 0.4  // above and below a row
	boxWidth    = 30.0 // of a single figure
	boxGap      = 1.4
	boxesAcross = 6   // boxes in a line: half a year of months
	squareGap   = 1.6 // square to its words
	tickGap     = 4.0 // one tick to the next in a line
	partGap     = 1.2 // boxes to the squares under them
	keyDrop     = 0.6 // answer to a key under it
	keyGap      = 2.0 // key to what stands before it
)

var (
	asks  = sheet.Type{Size: layout.Cell.Size}
	marks = sheet.Type{Size: 8.5} // words to tick
	keys  = names.In(sheet.Italic).To(sheet.Right)
	names = sheet.Type{Size: 7, Grey: sheet.Dark}
)

// row is one question across the page: its words at the left, the room for
// the answer at the right.
type row struct {
	Question
	number int
	width  float64 // of the column it stands in, mm
	last   bool    // of its section: a line is drawn below it
}

func (r row) textWidth() float64 { return r.width - numberWidth - toAnswer - answerWidth }

func (r row) block() layout.Block {
	text := strings.TrimSpace(r.Ask + " " + r.Help)
	if r.Topic != "" {
		text = r.Topic + ": " + text
	}
	var blanks []string
	for _, b := range r.Blanks {
		blanks = append(blanks, strings.Join(strings.Fields(b.Name+" ____ "+b.Unit), " "))
	}
	for _, tick := range r.Ticks {
		blanks = append(blanks, "[ ] "+tick)
	}
	instead := layout.Para{Lead: strconv.Itoa(r.number) + ".", Text: text + "\n" + strings.Join(blanks, "  ") + " (" + r.Key + ")"}
	return layout.OnPaper{Name: "question " + r.Key, Height: r.height, Draw: r.draw, Instead: []layout.Block{instead}}
}

func (r row) height(w float64) float64 {
	r.width = w
	_, h := r.keyPlace()
	return h + 2*rowPad
}

func (r row) textHeight() float64 {
	return float64(len(r.topicLines())+len(r.askLines()))*pitch(asks) + float64(len(r.helpLines()))*pitch(small)
}

func (r row) topicLines() []string {
	if r.Topic == "" {
		return nil
	}
	return sheet.Wrap(r.Topic, asks.In(sheet.Bold), r.textWidth())
}

func (r row) askLines() []string { return sheet.Wrap(degrees(r.Ask), asks, r.textWidth()) }

func (r row) helpLines() []string { return sheet.Wrap(degrees(r.Help), small, r.textWidth()) }

// degrees keeps the sign of a temperature on the line of its figure.
func degrees(text string) string { return strings.ReplaceAll(text, " °", "\u00a0°") }

// keyPlace is where the key ends at its right and what height the row's inside
// takes with it: the lower right corner if nothing stands there, else the end
// of the help, else under the answer.
func (r row) keyPlace() (at sheet.Point, height float64) {
	text, w := r.textHeight(), sheet.Width(r.Key, keys)
	height = max(text, r.answerHeight())
	corner := sheet.Rect{X: answerWidth - w - keyGap, Y: height - pitch(small), W: w + keyGap, H: pitch(small)}
	if !r.occupies(corner) {
		return sheet.Point{X: r.width, Y: height - pitch(small)}, height
	}
	lines := r.helpLines()
	if end := sheet.Width(lines[len(lines)-1], small) + keyGap + w; end <= r.textWidth() {
		return sheet.Point{X: numberWidth + end, Y: text - pitch(small)}, height
	}
	under := r.answerHeight() + keyDrop
	return sheet.Point{X: r.width, Y: under}, max(text, under+pitch(keys))
}

func (r row) draw(s sheet.Sheet, at sheet.Rect) error {
	r.width = at.W
	across := func(y float64) {
		s.Line(sheet.Point{X: at.X, Y: y}, sheet.Point{X: at.X + r.width, Y: y}, linePen)
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
	put(r.helpLines(), small)
	end, _ := r.keyPlace()
	s.Text(at.X+end.X, at.Y+rowPad+end.Y+drop(keys), r.Key, keys)

	x = at.X + r.width - answerWidth
	r.drawBlanks(s, x, at.Y+rowPad)
	r.drawTicks(s, x, at.Y+rowPad+r.ticksTop())
	return s.Err()
}
