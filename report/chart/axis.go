package chart

import (
	"math"

	"coldreckon/report/sheet"
)

// upAxis draws the grid of an upright axis over a range, with its values in
// a gutter at the left that it takes from the rectangle. It gives the plot
// and the scale. Where values would touch, it sets every second, third, ... only.
func upAxis(s sheet.Sheet, r sheet.Rect, low, high float64) (sheet.Rect, scale) {
	lo, hi, by := fit(low, high+(high-low)*0.03, max(2, int(r.H/9)))
	marks := ticks(lo, hi, by)
	if top := marks[len(marks)-1]; hi-top > by/3 { // so that the upper end has a value too
		hi = top + by
		marks = ticks(lo, hi, by)
	}
	gutter := 0.0
	for _, v := range marks {
		gutter = max(gutter, sheet.Width(Number(v, by), noteType))
	}
	plot := r.Inset(gutter+2, noteType.Ascent()/2, 0, 0)
	sc := scale{lo, hi, plot.Bottom(), -plot.H}
	every := 1
	if len(marks) > 1 {
		every = max(1, int(math.Ceil(pitch(noteType)/math.Abs(sc.of(marks[1])-sc.of(marks[0])))))
	}
	for i, v := range marks {
		y := sc.of(v)
		pen := sheet.Pen{Width: 0.1, Grey: sheet.Light}
		if v == 0 {
			pen = axisPen
		}
		s.Line(sheet.Point{X: plot.X, Y: y}, sheet.Point{X: plot.Right(), Y: y}, pen)
		if i%every == 0 {
			s.Text(plot.X-2, middle(y, noteType), Number(v, by), noteType.To(sheet.Right))
		}
	}
	return plot, sc
}

// stacked reports whether names stand over what they name, for want of width.
func stacked(w float64) bool { return w < 100 }

// gutter is the room of the names at the left of a drawing, of which the longest
// takes so much; none where they stand over what they name.
func gutter(w, longest float64) float64 {
	if stacked(w) {
		return 0
	}
	return min(longest, w/3)
}

// outer is the range of some values, zero included.
func outer(values ...float64) (low, high float64) {
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	return low, high
}

// tickRow sets values below a level axis from left to right, leaving out
// those that would touch the one before.
type tickRow struct {
	from, to float64 // x the values must keep within; from moves on
	baseline float64
}

func (t *tickRow) put(s sheet.Sheet, x float64, text string) {
	w := sheet.Width(text, noteType)
	left := min(max(x-w/2, t.from), t.to-w)
	if left < t.from || left > x || left+w < x {
		return
	}
	s.Text(left, t.baseline, text, noteType)
	t.from = left + w + 1.5
}
