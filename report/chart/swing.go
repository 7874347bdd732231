package chart

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/report/sheet"
)

// Swing shows what each uncertain figure does to a difference between two
// options when it alone moves from its low to its high end, widest first. A bar
// runs from the one to the other and changes its shade at the base, or half-way
// where the base lies beyond it.
type Swing struct {
	Head
	Base float64    // the difference with every figure at its middle
	Rows []SwingRow // in any order
	// Left and Right say what a difference below and above zero means.
	Left, Right string
	// Say prints a difference; nil prints a Number.
	Say func(float64) string
}

// SwingRow is one figure: the difference at its low and its high end, and the
// two ends as printed, with their unit.
type SwingRow struct {
	Label         string
	AtLow, AtHigh float64
	Low, High     string
}

// Draw draws the chart in r. Errors: too many rows for the rectangle.
func (c Swing) Draw(s sheet.Sheet, r sheet.Rect) error { return c.end(s, c.draw(s, r)) }

func (c Swing) draw(s sheet.Sheet, r sheet.Rect) error {
	if err := sound("the difference", c.Base); err != nil {
		return err
	}
	low, high := outer(c.Base)
	for _, row := range c.Rows {
		if err := sound(row.Label, row.AtLow, row.AtHigh); err != nil {
			return err
		}
		low, high = min(low, row.AtLow, row.AtHigh), max(high, row.AtLow, row.AtHigh)
	}
	r, err := c.begin(s, r)
	if err != nil {
		return err
	}
	if len(c.Rows) == 0 {
		c.nothing(s, r)
		return nil
	}
	rows := slices.Clone(c.Rows)
	slices.SortStableFunc(rows, func(a, b SwingRow) int {
		wide := func(r SwingRow) float64 { return math.Abs(r.AtHigh - r.AtLow) }
		switch {
		case wide(a) > wide(b):
			return -1
		case wide(a) < wide(b):
			return 1
		}
		return 0
	})
	r = key(s, r, []entry{area(s, "at its low end", swingLow), area(s, "at its high end", swingHigh)})

	var names, left, right column
	ends := make([][2]string, len(rows))
	for i, row := range rows {
		names.add(row.Label, labelType, r.W*0.3)
		ends[i] = [2]string{row.Low, row.High}
		if row.AtLow > row.AtHigh {
			ends[i] = [2]string{row.High, row.Low}
		}
		left.add(ends[i][0], tickType, r.W*0.14)
		right.add(ends[i][1], tickType, r.W*0.14)
	}
	r = c.drawSides(s, r)
	foot := pitch(tickType) + 1.5
	plot := r.Inset(names.width+left.width+5, 0, right.width+2, foot)
	if err := roomy(plot); err != nil {
		return err
	}
	each := plot.H / float64(len(rows))
	if tall := max(names.height, left.height, right.height); tall > each {
		return fmt.Errorf("%d rows of %.1f mm do not fit %.0f mm", len(rows), tall, plot.H)
	}
	each = min(each, 9)
	plot.H = each * float64(len(rows))
	across := acrossAxis(s, r, plot, low, high, c.Say)
	base := across.of(c.Base)
	middleOf := func(i int) float64 { return plot.Y + each*(float64(i)+0.5) }
	for i, row := range rows {
		a, b := across.of(row.AtLow), across.of(row.AtHigh)
		turn := base
		if base < min(a, b) || base > max(a, b) {
			turn = (a + b) / 2
		}
		h := each * 0.55
		bar(s, turn, a, middleOf(i), h, swingLow)
		bar(s, turn, b, middleOf(i), h, swingHigh)
	}
	s.Line(sheet.Point{X: base, Y: plot.Y}, sheet.Point{X: base, Y: plot.Bottom()}, sheet.Pen{Width: 0.3, Grey: sheet.Black})
	for i, row := range rows { // names last: they are clear of the line
		a, b := across.of(row.AtLow), across.of(row.AtHigh)
		names.draw(s, i, r.X, middleOf(i), sheet.Left)
		left.drawClear(s, i, min(a, b)-1, middleOf(i), sheet.Right)
		right.drawClear(s, i, max(a, b)+1, middleOf(i), sheet.Left)
	}
	return nil
}

var (
	swingLow  = sheet.Fill{Texture: sheet.Solid, Grey: sheet.White}
	swingHigh = sheet.Fill{Texture: sheet.Solid, Grey: sheet.Dark}
)

func bar(s sheet.Sheet, from, to, mid, h float64, f sheet.Fill) {
	if math.Abs(to-from) < 0.05 {
		return
	}
	s.Rect(sheet.Rect{X: min(from, to), Y: mid - h/2, W: math.Abs(to - from), H: h}, f, outline)
}

// drawSides says at the top of r what lies to the left and to the right of
// zero, and gives what is left of r.
func (c Swing) drawSides(s sheet.Sheet, r sheet.Rect) sheet.Rect {
	most := 0
	put := func(text string, x float64, a sheet.Align) {
		if text == "" {
			return
		}
		lines := sheet.Wrap(text, quietType, r.W/2-4)
		for k, l := range lines {
			s.Text(x, r.Y+lead(quietType)+float64(k)*pitch(quietType), l, quietType.To(a))
		}
		most = max(most, len(lines))
	}
	left, right := c.Left, c.Right
	if left != "" {
		left = "← " + left
	}
	if right != "" {
		right += " →"
	}
	put(left, r.X, sheet.Left)
	put(right, r.Right(), sheet.Right)
	return r.Inset(0, float64(most)*pitch(quietType)+1.5, 0, 0)
}
