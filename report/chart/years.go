package chart

import (
	"errors"
	"fmt"
	"math"

	"coldreckon/report/sheet"
)

// Years shows sums growing over the years, each line with the range that
// holds four cases in five. The first line's range is shaded and the second's
// hatched; every range is drawn again as a bar at the last year, where the
// names stand.
type Years struct {
	Head
	Lines []OverYears // at most four
	// Across names the level axis; empty says "Years from now".
	Across string
	// Say prints a value; nil prints a Number.
	Say func(float64) string
}

// OverYears is one line, year 0 first. Low and High are its 10th and 90th
// percentiles; both nil draws no range.
type OverYears struct {
	Label     string
	Mid       []float64
	Low, High []float64
	// Style, 1 to 4, is the stroke and marker to draw it with, so that one thing
	// looks alike in every figure; 0 takes those of its place in Lines.
	Style int
}

// style is the stroke and marker of line i, from 0.
func (c Years) style(i int) int {
	if s := c.Lines[i].Style; s > 0 {
		return s - 1
	}
	return i
}

func (c Years) check() ([]float64, error) {
	if len(c.Lines) > 4 {
		return nil, fmt.Errorf("%d lines; 4 are the most that can be told apart", len(c.Lines))
	}
	var all []float64
	for _, l := range c.Lines {
		if l.Style < 0 || l.Style > 4 {
			return nil, fmt.Errorf("%s has the style %d; there are 1 to 4, and 0 for that of its place", l.Label, l.Style)
		}
		if len(l.Mid) != len(c.Lines[0].Mid) {
			return nil, errors.New("the lines have unlike numbers of years")
		}
		if l.Low != nil || l.High != nil {
			if len(l.Low) != len(l.Mid) || len(l.High) != len(l.Mid) {
				return nil, fmt.Errorf("%s has a range of other length than its line", l.Label)
			}
		}
		for _, vs := range [][]float64{l.Mid, l.Low, l.High} {
			if err := sound(l.Label, vs...); err != nil {
				return nil, err
			}
			all = append(all, vs...)
		}
	}
	return all, nil
}

// Draw draws the chart in r. Errors: more than four lines, lines of unlike
// length, a range that is not as long as its line, a style that is not 0 to 4.
func (c Years) Draw(s sheet.Sheet, r sheet.Rect) error { return c.end(s, c.draw(s, r)) }

func (c Years) draw(s sheet.Sheet, r sheet.Rect) error {
	all, err := c.check()
	if err != nil {
		return err
	}
	r, err = c.begin(s, r)
	if err != nil {
		return err
	}
	if len(all) == 0 {
		c.nothing(s, r)
		return nil
	}
	names := make([]column, len(c.Lines))
	var wide float64
	for i, l := range c.Lines {
		names[i].add(l.Label, labelType, r.W*0.28)
		wide = max(wide, names[i].width)
	}
	foot := 2*pitch(tickType) + 1.5
	inner := r.Inset(0, 0, c.endsWidth()+wide, foot)
	if err := roomy(inner); err != nil {
		return err
	}
	low, high := outer(all...)
	plot, up := upAxis(s, inner, low, high, c.Say)
	years := len(c.Lines[0].Mid) - 1
	along := scale{0, math.Max(1, float64(years)), plot.X, plot.W}
	c.drawYears(s, plot, along, years)
	for i, l := range c.Lines {
		if l.Low != nil && i < 2 && years > 0 {
			s.Polygon(ring(l, along, up), bandFill(i), sheet.Pen{Width: 0.12, Grey: sheet.Mid})
		}
	}
	for i := len(c.Lines) - 1; i >= 0; i-- {
		c.drawLine(s, i, along, up, years)
	}
	return c.drawEnds(s, plot, names, up)
}

func bandFill(i int) sheet.Fill {
	return [2]sheet.Fill{sheet.Shade(sheet.Pale), {Texture: sheet.Falling, Grey: sheet.Mid}}[i]
}

// ring is the outline of a line's range.
func ring(l OverYears, along, up scale) []sheet.Point {
	var pts []sheet.Point
	for y, v := range l.High {
		pts = append(pts, sheet.Point{X: along.of(float64(y)), Y: up.of(v)})
	}
	for y := len(l.Low) - 1; y >= 0; y-- {
		pts = append(pts, sheet.Point{X: along.of(float64(y)), Y: up.of(l.Low[y])})
	}
	return pts
}

func (c Years) drawYears(s sheet.Sheet, plot sheet.Rect, along scale, years int) {
	by := math.Max(1, step(float64(years), max(2, int(plot.W/9))))
	row := tickRow{from: plot.X - 10, to: plot.Right() + 10, baseline: plot.Bottom() + 1 + lead(tickType)}
	for _, y := range ticks(0, float64(years), by) {
		row.put(s, along.of(y), Number(y, 1))
	}
	across := c.Across
	if across == "" {
		across = "Years from now"
	}
	across = sheet.Shorten(across, tickType, plot.W)
	s.Text(plot.X+plot.W/2, plot.Bottom()+1+pitch(tickType)+lead(tickType), across, tickType.To(sheet.Centre))
}

func (c Years) drawLine(s sheet.Sheet, i int, along, up scale, years int) {
	pts := make([]sheet.Point, 0, years+1)
	for y, v := range c.Lines[i].Mid {
		pts = append(pts, sheet.Point{X: along.of(float64(y)), Y: up.of(v)})
	}
	if len(pts) > 1 {
		s.Polyline(pts, strokes(c.style(i)))
	}
	every := max(1, years/5)
	for y := years; y >= 0; y -= every {
		marker(s, c.style(i), pts[y])
	}
}

// The ends of the lines: bars a gap apart, then leaders to the names.
const endGap, endLeader = 2.2, 5.0

// endsWidth is the room between the plot and the names.
func (c Years) endsWidth() float64 { return endGap*float64(len(c.Lines)+1) + endLeader }

// drawEnds draws the ranges at the last year as bars side by side, and the
// names beside them, moved apart where they would collide.
func (c Years) drawEnds(s sheet.Sheet, plot sheet.Rect, names []column, up scale) error {
	last := len(c.Lines[0].Mid) - 1
	places := make([]*label, len(c.Lines))
	for i, l := range c.Lines {
		places[i] = &label{want: up.of(l.Mid[last]), height: names[i].height + 0.6}
	}
	if !apart(places, plot.Y-1, plot.Bottom()) {
		return fmt.Errorf("the names beside the lines do not fit %.0f mm", plot.H)
	}
	end := plot.Right() + c.endsWidth()
	for i, l := range c.Lines {
		x := plot.Right() + endGap*(float64(i)+1)
		y := up.of(l.Mid[last])
		if l.Low != nil {
			s.Line(sheet.Point{X: x, Y: up.of(l.Low[last])}, sheet.Point{X: x, Y: up.of(l.High[last])}, sheet.Pen{Width: 0.35, Grey: sheet.Dark})
		}
		marker(s, c.style(i), sheet.Point{X: x, Y: y})
		s.Polyline([]sheet.Point{{X: x + 1.4, Y: y}, {X: end - endLeader, Y: y}, {X: end - 1, Y: places[i].got}},
			sheet.Pen{Width: 0.12, Grey: sheet.Mid})
		names[i].draw(s, 0, end, places[i].got, sheet.Left)
	}
	return nil
}
