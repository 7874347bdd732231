package chart

import (
	"math"

	"coldreckon/report/sheet"
)

// upAxis draws the grid of an upright axis over a range, with its values in
// a gutter at the left that it takes from the rectangle. It gives the plot
// and the scale.
func upAxis(s sheet.Sheet, r sheet.Rect, low, high float64, f func(float64) string) (sheet.Rect, scale) {
	return upAxisIn(s, r, low, high, f, tickType)
}

// upAxisIn is upAxis with its values in another type.
func upAxisIn(s sheet.Sheet, r sheet.Rect, low, high float64, f func(float64) string, t sheet.Type) (sheet.Rect, scale) {
	lo, hi, by := fit(low, high+(high-low)*0.03, max(2, int(r.H/9)))
	marks := ticks(lo, hi, by)
	if top := marks[len(marks)-1]; hi-top > by/3 { // so that the upper end has a value too
		hi = top + by
		marks = ticks(lo, hi, by)
	}
	gutter := 0.0
	for _, v := range marks {
		gutter = max(gutter, sheet.Width(say(f, v, by), t))
	}
	plot := r.Inset(gutter+2, t.Ascent()/2, 0, 0)
	sc := scale{lo, hi, plot.Bottom(), -plot.H}
	for _, v := range marks {
		y := sc.of(v)
		pen := sheet.Pen{Width: 0.1, Grey: sheet.Light}
		if v == 0 {
			pen = axisPen
		}
		s.Line(sheet.Point{X: plot.X, Y: y}, sheet.Point{X: plot.Right(), Y: y}, pen)
	}
	upTicksIn(s, plot.X-2, marks, by, sc, f, t)
	return plot, sc
}

// outer is the range of some values, zero included.
func outer(values ...float64) (low, high float64) {
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	return low, high
}

// upTicks sets the values of an upright axis, right end at x. Where they
// would touch, it sets every second, third, ... only.
func upTicks(s sheet.Sheet, x float64, marks []float64, by float64, up scale, f func(float64) string) {
	upTicksIn(s, x, marks, by, up, f, tickType)
}

// upTicksIn is upTicks in another type.
func upTicksIn(s sheet.Sheet, x float64, marks []float64, by float64, up scale, f func(float64) string, t sheet.Type) {
	every := 1
	if len(marks) > 1 {
		apart := math.Abs(up.of(marks[1]) - up.of(marks[0]))
		every = max(1, int(math.Ceil(pitch(t)/apart)))
	}
	for i := 0; i < len(marks); i += every {
		v := marks[i]
		s.Text(x, middle(up.of(v), t), say(f, v, by), t.To(sheet.Right))
	}
}

// acrossAxis draws the grid of a level axis over a range and its values below
// the plot; they may use the width of r.
func acrossAxis(s sheet.Sheet, r, plot sheet.Rect, low, high float64, f func(float64) string) scale {
	// As many ticks as their texts leave room for.
	lo, hi, by := fit(low, high, 1)
	for n := 6; n > 1; n-- {
		lo, hi, by = fit(low, high, n)
		wide := 0.0
		for _, v := range ticks(lo, hi, by) {
			wide = max(wide, sheet.Width(say(f, v, by), tickType))
		}
		if (wide+3)*(hi-lo) <= plot.W*by {
			break
		}
	}
	sc := scale{lo, hi, plot.X, plot.W}
	row := tickRow{from: r.X, to: r.Right(), baseline: plot.Bottom() + 1.5 + lead(tickType)}
	for _, v := range ticks(lo, hi, by) {
		x := sc.of(v)
		pen := sheet.Pen{Width: 0.1, Grey: sheet.Light}
		if v == 0 {
			pen = axisPen
		}
		s.Line(sheet.Point{X: x, Y: plot.Y}, sheet.Point{X: x, Y: plot.Bottom()}, pen)
		row.put(s, x, say(f, v, by))
	}
	return sc
}

// tickRow sets values below a level axis from left to right, leaving out
// those that would touch the one before.
type tickRow struct {
	from, to float64 // x the values must keep within; from moves on
	baseline float64
	typ      sheet.Type // the zero Type is that of ticks
}

func (t *tickRow) put(s sheet.Sheet, x float64, text string) {
	typ := t.typ
	if typ.Size == 0 {
		typ = tickType
	}
	w := sheet.Width(text, typ)
	left := min(max(x-w/2, t.from), t.to-w)
	if left < t.from || left > x || left+w < x {
		return
	}
	s.Text(left, t.baseline, text, typ)
	t.from = left + w + 1.5
}
