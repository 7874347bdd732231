package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Hundred shows chances as counts: of a hundred equally likely futures, so
// many end this way. Each row is a hundred squares in groups by pattern.
type Hundred struct {
	Head
	Groups []string // names, at most eight
	Rows   []HundredRow
}

// HundredRow is a hundred futures shared out among the groups.
type HundredRow struct {
	Label  string // may be empty if there is one row
	Counts []int  // one for each group, >= 0, adding up to 100
}

func (c Hundred) check() error {
	if len(c.Groups) > 8 {
		return fmt.Errorf("%d groups; 8 are the most that can be told apart", len(c.Groups))
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

// Draw draws the chart in r. Errors: counts that do not add up to 100, too
// small a rectangle.
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
	var entries []entry
	for i, g := range c.Groups {
		entries = append(entries, area(s, g, fills(i)))
	}
	r = key(s, r, entries)
	// A gap between groups is worth one square, so that every row lines up
	// whatever its groups.
	units := 100 + float64(len(c.Groups)-1)
	side := min(r.W/units, 3.2)
	row := r.H / float64(len(c.Rows))
	label := 0.0
	for _, line := range c.Rows {
		label = max(label, float64(len(sheet.Wrap(line.text(c.Groups), labelType, r.W)))*pitch(labelType))
	}
	if side < 0.9 || label+side+1 > row {
		return fmt.Errorf("%d rows of 100 squares do not fit %.0f x %.0f mm", len(c.Rows), r.W, r.H)
	}
	row = min(row, label+side+5)
	for i, line := range c.Rows {
		y := r.Y + row*float64(i)
		for k, text := range sheet.Wrap(line.text(c.Groups), labelType, r.W) {
			s.Text(r.X, y+lead(labelType)+float64(k)*pitch(labelType), text, labelType)
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

func (h HundredRow) drawSquares(s sheet.Sheet, x, y, side float64) {
	for i, n := range h.Counts {
		if n == 0 {
			continue
		}
		for range n {
			s.Rect(sheet.Rect{X: x, Y: y, W: side * 0.82, H: side * 0.82}, fills(i), sheet.Pen{Width: 0.12, Grey: sheet.Dark})
			x += side
		}
		x += side
	}
}
