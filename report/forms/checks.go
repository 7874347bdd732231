package forms

import (
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Check is a thing to see to before anything else. Topic, if any, stands before
// the text with a colon.
type Check struct{ Topic, Text string }

// Checks is a close-set list of checks, each with a square to tick.
type Checks struct {
	Title string
	Items []Check
}

var checkType = sheet.Type{Size: 8}

const (
	checkIndent = 4.0
	checkPad    = 0.15 // above and below an item
)

func (c Checks) lines(i Check, w float64) []string {
	text := i.Text
	if i.Topic != "" {
		text = i.Topic + ": " + text
	}
	return sheet.Wrap(text, checkType, w-checkIndent)
}

// head is the height of the title.
func (c Checks) head() float64 { return pitch(titles) + headPad/2 }

// Block gives the list as a block of a document.
func (c Checks) Block() layout.Block {
	instead := layout.List{Mark: layout.Tick}
	for _, i := range c.Items {
		lead := i.Topic
		if lead != "" {
			lead += ":"
		}
		instead.Items = append(instead.Items, layout.Item{Lead: lead, Text: i.Text})
	}
	words := []layout.Block{layout.Heading{Level: 2, Text: c.Title}, instead}
	return layout.OnPaper{Name: "checks", Height: c.height, Draw: c.draw, Instead: words}
}

func (c Checks) height(w float64) float64 {
	h := c.head()
	for _, i := range c.Items {
		h += float64(len(c.lines(i, w)))*pitch(checkType) + 2*checkPad
	}
	return h
}

func (c Checks) draw(s sheet.Sheet, r sheet.Rect) error {
	t, y := checkType, r.Y+c.head()
	s.Text(r.X, r.Y+drop(titles), c.Title, titles)
	for _, i := range c.Items {
		y += checkPad
		square(s, r.X+0.1, y+drop(t), t, boxPen)
		for _, line := range c.lines(i, r.W) {
			s.Text(r.X+checkIndent, y+drop(t), line, t)
			y += pitch(t)
		}
		y += checkPad
	}
	return s.Err()
}
