package chart

import (
	"errors"
	"fmt"

	"coldreckon/report/sheet"
)

// Strips shows quantities hour by hour, one strip below the other on a common
// clock, so that cause stands over effect.
type Strips struct {
	Head
	Strips []Strip
	// Day names the days under the strips, counted from 1; nil prints "day 1".
	Day func(day int) string
}

// Strip is one quantity. Its traces have a value for each hour; every 24 from
// the first on are a day.
type Strip struct {
	Label  string  // the quantity with its unit
	Traces []Trace // one to three
	Limit  *Limit  // nil draws none
	Zero   bool    // the axis starts at zero
	Filled bool    // the first trace is an area from zero; implies Zero
}

// Trace is one course of a strip's quantity. Its label may be empty if the
// strip has no other.
type Trace struct {
	Label  string
	Values []float64
}

// Limit is a level that should not be passed. The parts of the first trace
// beyond it are filled dark.
type Limit struct {
	Value float64
	Label string
	Below bool // the trace should not fall below; else not rise above
}

func (c Strips) hours() (int, error) {
	n := 0
	for _, st := range c.Strips {
		if len(st.Traces) == 0 || len(st.Traces) > 3 {
			return 0, fmt.Errorf("strip %q has %d traces; 1 to 3 can be told apart", st.Label, len(st.Traces))
		}
		for _, tr := range st.Traces {
			if n == 0 {
				n = len(tr.Values)
			}
			if len(tr.Values) != n {
				return 0, errors.New("the strips have unlike numbers of hours")
			}
			if err := sound(st.Label, tr.Values...); err != nil {
				return 0, err
			}
		}
		if st.Limit != nil {
			if err := sound("the limit of "+st.Label, st.Limit.Value); err != nil {
				return 0, err
			}
		}
	}
	return n, nil
}

// Draw draws the chart in r. Errors: a strip without traces or with more than
// three, traces of unlike length.
func (c Strips) Draw(s sheet.Sheet, r sheet.Rect) error { return c.end(s, c.draw(s, r)) }

func (c Strips) draw(s sheet.Sheet, r sheet.Rect) error {
	hours, err := c.hours()
	if err != nil {
		return err
	}
	r, err = c.begin(s, r)
	if err != nil {
		return err
	}
	if hours == 0 {
		c.nothing(s, r)
		return nil
	}
	// All strips share the gutters, so that their hours stand aligned.
	left, right := 0.0, 0.0
	for _, st := range c.Strips {
		lo, hi, by := st.span()
		for _, v := range ticks(lo, hi, by) {
			left = max(left, sheet.Width(Number(v, by), tickType)+2)
		}
		for _, name := range st.names() {
			right = max(right, min(sheet.Width(name, tickType), r.W*0.2)+4)
		}
	}
	foot := pitch(tickType) + 1
	const between = 4.0
	n := float64(len(c.Strips))
	tall := (r.H - foot - between*(n-1)) / n
	head := pitch(labelType) + 1.2
	if err := roomy(sheet.Rect{W: r.W - left - right, H: tall - head}); err != nil {
		return err
	}
	for i, st := range c.Strips {
		top := r.Y + float64(i)*(tall+between)
		plot := sheet.Rect{X: r.X + left, Y: top + head, W: r.W - left - right, H: tall - head}
		s.Text(plot.X, top+lead(labelType), sheet.Shorten(st.Label, labelType, plot.W), labelType)
		if err := st.draw(s, plot, hours, r.Right()); err != nil {
			return err
		}
	}
	c.drawDays(s, sheet.Rect{X: r.X + left, Y: r.Y, W: r.W - left - right, H: r.H - foot}, hours)
	return nil
}

// names are what stands to the right of a strip.
func (st Strip) names() []string {
	var out []string
	for _, tr := range st.Traces {
		if tr.Label != "" {
			out = append(out, tr.Label)
		}
	}
	if st.Limit != nil && st.Limit.Label != "" {
		out = append(out, st.Limit.Label)
	}
	return out
}

// span is the range of a strip's axis and its step.
func (st Strip) span() (lo, hi, by float64) {
	lo, hi = st.Traces[0].Values[0], st.Traces[0].Values[0]
	for _, tr := range st.Traces {
		for _, v := range tr.Values {
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	if st.Limit != nil {
		lo, hi = min(lo, st.Limit.Value), max(hi, st.Limit.Value)
	}
	if st.Zero || st.Filled {
		lo, hi = min(lo, 0), max(hi, 0)
	}
	return fit(lo, hi, 3)
}

func (st Strip) draw(s sheet.Sheet, plot sheet.Rect, hours int, right float64) error {
	lo, hi, by := st.span()
	up := scale{lo, hi, plot.Bottom(), -plot.H}
	along := scale{0, float64(max(1, hours-1)), plot.X, plot.W}
	for day := 24; day < hours; day += 24 {
		x := along.of(float64(day))
		s.Line(sheet.Point{X: x, Y: plot.Y}, sheet.Point{X: x, Y: plot.Bottom()}, sheet.Pen{Width: 0.08, Grey: sheet.Light})
	}
	marks := ticks(lo, hi, by)
	for _, v := range marks {
		s.Line(sheet.Point{X: plot.X, Y: up.of(v)}, sheet.Point{X: plot.Right(), Y: up.of(v)}, sheet.Pen{Width: 0.1, Grey: sheet.Light})
	}
	upTicks(s, plot.X-2, marks, by, up, nil)
	first := curve(st.Traces[0].Values, along, up)
	if st.Filled && len(first) > 1 {
		base := up.of(0)
		s.Polygon(append(append([]sheet.Point{{X: first[0].X, Y: base}}, first...), sheet.Point{X: first[len(first)-1].X, Y: base}),
			sheet.Shade(sheet.Light), sheet.Pen{})
	}
	if st.Limit != nil {
		y := up.of(st.Limit.Value)
		for _, shape := range beyond(first, y, st.Limit.Below) {
			s.Polygon(shape, sheet.Shade(sheet.Mid), sheet.Pen{})
		}
		s.Line(sheet.Point{X: plot.X, Y: y}, sheet.Point{X: plot.Right(), Y: y}, sheet.Pen{Width: 0.25, Grey: sheet.Black, Dash: []float64{0.5, 1}})
	}
	for i := len(st.Traces) - 1; i >= 0; i-- {
		pts := curve(st.Traces[i].Values, along, up)
		if len(pts) == 1 {
			marker(s, i, pts[0])
			continue
		}
		pen := strokes(i)
		pen.Width *= 0.7
		s.Polyline(pts, pen)
	}
	return st.drawNames(s, plot, up, right)
}

// drawNames sets the names of traces and limit beside their ends.
func (st Strip) drawNames(s sheet.Sheet, plot sheet.Rect, up scale, right float64) error {
	const gap = 3.0
	type name struct {
		*label
		text column
	}
	var names []name
	var places []*label
	put := func(text string, v float64) {
		if text == "" {
			return
		}
		var c column
		c.add(text, tickType, right-plot.Right()-gap)
		l := &label{want: up.of(v), height: c.height}
		names, places = append(names, name{l, c}), append(places, l)
	}
	for _, tr := range st.Traces {
		put(tr.Label, tr.Values[len(tr.Values)-1])
	}
	if st.Limit != nil {
		put(st.Limit.Label, st.Limit.Value)
	}
	if !apart(places, plot.Y-pitch(tickType), plot.Bottom()+pitch(tickType)*0.8) {
		return fmt.Errorf("the names beside the strip %q do not fit %.0f mm", st.Label, plot.H)
	}
	for _, n := range names {
		s.Line(sheet.Point{X: plot.Right() + 0.4, Y: n.want}, sheet.Point{X: plot.Right() + gap - 0.4, Y: n.got}, sheet.Pen{Width: 0.12, Grey: sheet.Mid})
		n.text.draw(s, 0, plot.Right()+gap, n.got, sheet.Left)
	}
	return nil
}

func curve(values []float64, along, up scale) []sheet.Point {
	pts := make([]sheet.Point, len(values))
	for h, v := range values {
		pts[h] = sheet.Point{X: along.of(float64(h)), Y: up.of(v)}
	}
	return pts
}

// beyond gives the shapes between a line and the level y where the line has
// passed it: under it on paper if below, else over it.
func beyond(line []sheet.Point, y float64, below bool) [][]sheet.Point {
	past := func(p sheet.Point) bool { return p.Y != y && (p.Y > y) == below }
	var out [][]sheet.Point
	var shape []sheet.Point
	for i, p := range line {
		if i > 0 && past(p) != past(line[i-1]) {
			a := line[i-1]
			x := a.X + (p.X-a.X)*(y-a.Y)/(p.Y-a.Y)
			shape = append(shape, sheet.Point{X: x, Y: y})
		} else if i == 0 && past(p) {
			shape = append(shape, sheet.Point{X: p.X, Y: y})
		}
		if past(p) {
			shape = append(shape, p)
			if i == len(line)-1 {
				shape = append(shape, sheet.Point{X: p.X, Y: y})
			}
		}
		if (!past(p) || i == len(line)-1) && len(shape) > 0 {
			if len(shape) > 2 {
				out = append(out, shape)
			}
			shape = nil
		}
	}
	return out
}

func (c Strips) drawDays(s sheet.Sheet, plot sheet.Rect, hours int) {
	along := scale{0, float64(max(1, hours-1)), plot.X, plot.W}
	name := c.Day
	if name == nil {
		name = func(day int) string { return fmt.Sprintf("day %d", day) }
	}
	free := plot.X // where the next name may start
	for day := 1; (day-1)*24 < hours; day++ {
		end := min(float64(day*24), float64(max(1, hours-1)))
		mid := (along.of(float64((day-1)*24)) + along.of(end)) / 2
		text := name(day)
		w := sheet.Width(text, tickType)
		if mid-w/2 < free || mid+w/2 > plot.Right() {
			continue
		}
		s.Text(mid, plot.Bottom()+1+lead(tickType), text, tickType.To(sheet.Centre))
		free = mid + w/2 + 1.5
	}
}
