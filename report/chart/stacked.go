package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Stacked shows sums made of parts, a horizontal bar a row. Parts below zero
// stand to the left of the zero line.
type Stacked struct {
	Head
	Parts []string // names, at most eight
	Rows  []StackedRow
	// Say prints a value; nil prints a Number.
	Say func(float64) string
}

// StackedRow is one bar: a value for each part.
type StackedRow struct {
	Label  string
	Values []float64
	// Total is printed after the bar, e.g. with its range; empty prints the sum.
	Total string
}

func (c Stacked) check() error {
	if len(c.Parts) > 8 {
		return fmt.Errorf("%d parts; 8 are the most that can be told apart", len(c.Parts))
	}
	for _, row := range c.Rows {
		if len(row.Values) != len(c.Parts) {
			return fmt.Errorf("%s has %d values for %d parts", row.Label, len(row.Values), len(c.Parts))
		}
		if err := sound(row.Label, row.Values...); err != nil {
			return err
		}
	}
	return nil
}

// Draw draws the chart in r. Errors: more than eight parts, rows that do not
// match the parts.
func (c Stacked) Draw(s sheet.Sheet, r sheet.Rect) error { return c.end(s, c.draw(s, r)) }

func (c Stacked) draw(s sheet.Sheet, r sheet.Rect) error {
	if err := c.check(); err != nil {
		return err
	}
	r, err := c.begin(s, r)
	if err != nil {
		return err
	}
	if len(c.Rows) == 0 || len(c.Parts) == 0 {
		c.nothing(s, r)
		return nil
	}
	var entries []entry
	for i, p := range c.Parts {
		entries = append(entries, area(s, p, fills(i)))
	}
	r = key(s, r, entries)

	var names, totals column
	var low, high float64
	for _, row := range c.Rows {
		var neg, pos, sum float64
		for _, v := range row.Values {
			neg, pos, sum = neg+min(v, 0), pos+max(v, 0), sum+v
		}
		low, high = min(low, neg), max(high, pos)
		total := row.Total
		if total == "" {
			total = say(c.Say, sum, step(max(pos, -neg), 50))
		}
		names.add(row.Label, labelType, r.W*0.3)
		totals.add(total, labelType.In(sheet.Bold), r.W*0.25)
	}
	foot := pitch(tickType) + 1.5
	plot := r.Inset(names.width+3, 0, totals.width+3, foot)
	if err := roomy(plot); err != nil {
		return err
	}
	pitchOf := plot.H / float64(len(c.Rows))
	if tall := max(names.height, totals.height); tall > pitchOf {
		return fmt.Errorf("%d rows of %.1f mm do not fit %.0f mm", len(c.Rows), tall, plot.H)
	}
	pitchOf = min(pitchOf, 13)
	plot.H = pitchOf * float64(len(c.Rows))
	across := acrossAxis(s, r, plot, low, high, c.Say)
	for i, row := range c.Rows {
		mid := plot.Y + pitchOf*(float64(i)+0.5)
		names.draw(s, i, plot.X-3, mid, sheet.Right)
		totals.draw(s, i, r.Right(), mid, sheet.Right)
		c.drawBar(s, row, mid, min(7, pitchOf*0.62), across)
	}
	return nil
}

func (c Stacked) drawBar(s sheet.Sheet, row StackedRow, mid, h float64, across scale) {
	neg, pos := 0.0, 0.0
	for i, v := range row.Values {
		from := pos
		if v < 0 {
			from = neg
			neg += v
		} else {
			pos += v
		}
		a, b := across.of(min(from, from+v)), across.of(max(from, from+v))
		if b-a < 0.05 {
			continue // thinner than its own outline
		}
		f := fills(i)
		s.Rect(sheet.Rect{X: a, Y: mid - h/2, W: b - a, H: h}, f, outline)
		text := say(c.Say, v, step(across.high-across.low, 50))
		w := sheet.Width(text, tickType)
		if w+2 > b-a || h < 4 {
			continue
		}
		t := tickType.To(sheet.Centre)
		switch {
		case f.Texture != sheet.Solid: // a clear patch behind the figure
			s.Rect(sheet.Rect{X: (a+b)/2 - w/2 - 0.6, Y: mid - 1.7, W: w + 1.2, H: 3.4}, sheet.Shade(sheet.White), sheet.Pen{})
			t.Grey = sheet.Black
		case f.Grey < sheet.Mid:
			t.Grey = sheet.White
		default:
			t.Grey = sheet.Black
		}
		s.Text((a+b)/2, middle(mid, t), text, t)
	}
}
