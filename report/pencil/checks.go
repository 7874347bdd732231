package pencil

import (
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Check is a thing to see to before anything else. Topic, if any, stands before
// the text with a colon.
type Check struct{ Topic, Text string }

// Checks is a close-set list of checks, each with a square to tick.
type Checks struct {
	Width float64 // of the column it stands in, mm, > 0
	Title string  // may be empty
	Items []Check
}

var checkType = sheet.Type{Size: 8}

const (
	checkIndent = 4.0
	checkPad    = 0.15 // above and below an item
)

func (c Checks) lines(i Check) []string {
	text := i.Text
	if i.Topic != "" {
		text = i.Topic + ": " + text
	}
	return sheet.Wrap(text, checkType, c.Width-checkIndent)
}

// head is the height of the title.
func (c Checks) head() float64 {
	if c.Title == "" {
		return 0
	}
	return pitch(titles) + headPad/2
}

// Block gives the list as a figure of the text's flow.
func (c Checks) Block() layout.Block {
	h := c.head()
	for _, i := range c.Items {
		h += float64(len(c.lines(i)))*pitch(checkType) + 2*checkPad
	}
	return layout.Figure{Name: "checks", Height: h, Draw: c.draw}
}

func (c Checks) draw(s sheet.Sheet, r sheet.Rect) error {
	t, y := checkType, r.Y+c.head()
	if c.Title != "" {
		s.Text(r.X, r.Y+drop(titles), c.Title, titles)
	}
	for _, i := range c.Items {
		y += checkPad
		side := t.Ascent() * 0.95
		s.Rect(sheet.Rect{X: r.X + 0.1, Y: y + drop(t) - side, W: side, H: side}, sheet.Fill{}, boxPen)
		for _, line := range c.lines(i) {
			s.Text(r.X+checkIndent, y+drop(t), line, t)
			y += pitch(t)
		}
		y += checkPad
	}
	return s.Err()
}
