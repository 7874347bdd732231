package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Hundred shows chances as counts: of a hundred equally likely futures, so
// many end this way. Each row is a hundred squares in groups by pattern.
type Hundred struct {
	Head
	Groups []string // names, at most six
	Rows   []HundredRow
}

// HundredRow is a hundred futures shared out among the groups.
type HundredRow struct {
	Label  string // may be empty if there is one row
	Counts []int  // one for each group, >= 0, adding up to 100
}

func (c Hundred) check() error {
	if len(c.Groups) > 6 {
		return fmt.Errorf("%d groups; 6 are the most that can be told apart", len(c.Groups))
	}
	for _, row := range c.Rows {
		if len(row.Counts) != len(c.Groups) {
			return fmt.Errorf("%q has %d counts for %d groups", row.Label, len(row.Counts), len(c.Groups))
		}
		sum := 0
		for _, n := range row.Counts {
			if n < 0 {
				return fmt.Errorf("%q has a count of %d; counts are 0 or more", row.Label, n)
			}
			sum += n
		}
		if sum != 100 {
			return fmt.Errorf("the counts of %q add up to %d, not 100", row.Label, sum)
		}
	}
	return nil
}

// Draw draws the chart in r. Errors: more than six groups, a count missing or
// below zero, counts that do not add up to 100.
func (c Hundred) Draw(s sheet.Sheet, r sheet.Rect) error { return c.end(s, c.draw(s, r)) }

func (c Hundred) draw(s sheet.Sheet, r sheet.Rect) error {
	if err := c.check(); err != nil {
		return err
	}
	r, err := c.begin(s, r)
	if err != nil {
		return err
	}
	if len(c.Rows) == 0 || len(c.Groups) == 0 {
		c.nothing(s, r)
		return nil
	}
	alone := len(c.Rows) == 1 && c.Rows[0].Label == ""
	var entries []entry
	for i, g := range c.Groups {
		if alone { // the key says the counts, a line of words would say them again
			if c.Rows[0].Counts[i] == 0 {
				continue
			}
			g = fmt.Sprintf("%d %s", c.Rows[0].Counts[i], g)
		}
		entries = append(entries, entry{g, swatchH, func(at sheet.Rect) { square(s, i, at) }})
	}
	r = key(s, r, entries)
	// Rows of fifty, with a gap after every ten.
	side := min(r.W/(perLine-1+squareShare+tenGap*(perLine/10-1)), 3.4)
	deep := 100 / perLine * side
	label := 0.0
	if !alone {
		for _, line := range c.Rows {
			label = max(label, float64(len(sheet.Wrap(line.text(c.Groups), labelType, r.W)))*pitch(labelType))
		}
	}
	row := r.H / float64(len(c.Rows))
	if side < 1.5 || label+deep+1 > row {
		return fmt.Errorf("%d rows of 100 squares do not fit %.0f x %.0f mm", len(c.Rows), r.W, r.H)
	}
	row = min(row, label+deep+5)
	for i, line := range c.Rows {
		y := r.Y + row*float64(i)
		if !alone {
			for k, text := range sheet.Wrap(line.text(c.Groups), labelType, r.W) {
				s.Text(r.X, y+lead(labelType)+float64(k)*pitch(labelType), text, labelType)
			}
		}
		line.drawSquares(s, r.X, y+label+0.8, side)
	}
	return nil
}

// text says in words what the squares show.
func (h HundredRow) text(groups []string) string {
	text := h.Label
	if text != "" {
		text += ": "
	}
	first := true
	for i, n := range h.Counts {
		if n == 0 {
			continue
		}
		if !first {
			text += ", "
		}
		text += fmt.Sprintf("%d %s", n, groups[i])
		first = false
	}
	return text
}

// perLine is how many squares stand in a line, tenGap the gap after every ten
// of them, in squares.
const perLine, tenGap = 50, 0.5

// squareShare is the drawn part of a square's place; the rest is the gap that
// makes squares countable.
const squareShare = 0.72

func (h HundredRow) drawSquares(s sheet.Sheet, x, y, side float64) {
	k := 0
	for i, n := range h.Counts {
		for range n {
			along := float64(k%perLine) + tenGap*float64(k%perLine/10)
			square(s, i, sheet.Rect{X: x + side*along, Y: y + side*float64(k/perLine), W: side * squareShare, H: side * squareShare})
			k++
		}
	}
}

// square draws one future of a group. At two millimetres hatches fail, so
// these signs differ in shape: full, open, crossed, half, pale, dotted.
func square(s sheet.Sheet, group int, r sheet.Rect) {
	pen := sheet.Pen{Width: 0.12, Grey: sheet.Black}
	a, b := sheet.Point{X: r.X, Y: r.Y}, sheet.Point{X: r.Right(), Y: r.Bottom()}
	c, d := sheet.Point{X: r.Right(), Y: r.Y}, sheet.Point{X: r.X, Y: r.Bottom()}
	switch group {
	case 0:
		s.Rect(r, sheet.Shade(sheet.Dark), pen)
	case 1:
		s.Rect(r, sheet.Shade(sheet.White), pen)
	case 2:
		s.Rect(r, sheet.Shade(sheet.White), pen)
		s.Line(a, b, pen)
		s.Line(c, d, pen)
	case 3:
		s.Rect(r, sheet.Shade(sheet.White), pen)
		s.Polygon([]sheet.Point{c, b, d}, sheet.Shade(sheet.Black), sheet.Pen{})
	case 4:
		s.Rect(r, sheet.Shade(sheet.Light), pen)
	default:
		s.Rect(r, sheet.Shade(sheet.White), pen)
		s.Rect(r.Inset(r.W*0.3, r.H*0.3, r.W*0.3, r.H*0.3), sheet.Shade(sheet.Black), sheet.Pen{})
	}
}
