package chart

import (
	"math"
	"strconv"
	"strings"

	"coldreckon/report/sheet"
)

// scale maps values to millimetres: low to at, high to at+span. span is
// negative for an axis that grows upwards.
type scale struct{ low, high, at, span float64 }

func (s scale) of(v float64) float64 { return s.at + s.span*(v-s.low)/(s.high-s.low) }

// step is the round distance between ticks, 1, 2 or 5 times a power of ten,
// that gives at most n of them over a range.
func step(span float64, n int) float64 {
	if !(span > 0) || n < 1 {
		return 1
	}
	rough := span / float64(n)
	power := math.Pow(10, math.Floor(math.Log10(rough)))
	for _, f := range []float64{1, 2, 5} {
		if f*power >= rough*(1-1e-9) {
			return f * power
		}
	}
	return 10 * power
}

// ticks gives the multiples of a step within a range.
func ticks(low, high, step float64) []float64 {
	var out []float64
	first, last := math.Ceil(low/step-1e-6), math.Floor(high/step+1e-6)
	for k := first; k <= last; k++ {
		out = append(out, k*step+0) // +0 turns -0 into 0
	}
	return out
}

// widen moves the ends of a range outwards to whole steps. An empty range
// becomes one step.
func widen(low, high float64, n int) (lo, hi, by float64) {
	if high <= low {
		high = low + math.Max(1, math.Abs(low))
	}
	by = step(high-low, n)
	return math.Floor(low/by+1e-6) * by, math.Ceil(high/by-1e-6) * by, by
}

// Number prints a value as finely as a step needs, with commas between the
// thousands: 1,250 or 0.25 or −3. Above a milliard it says "billion".
func Number(v, step float64) string {
	suffix := ""
	if math.Abs(v) >= 1e9 {
		v, step, suffix = v/1e9, step/1e9, " billion"
	}
	decimals := 0
	for d := step; d > 0 && decimals < 6 && math.Abs(d-math.Round(d)) > 1e-6*d; d *= 10 {
		decimals++
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	whole, part, _ := strings.Cut(text, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if part != "" {
		whole += "." + part
	}
	if v < 0 && strings.Trim(whole, "0.,") != "" {
		whole = "−" + whole
	}
	return whole + suffix
}

// say prints a tick's value the caller's way, or as a Number.
func say(f func(float64) string, v, step float64) string {
	if f != nil {
		return f(v)
	}
	return Number(v, step)
}

// upAxis draws the grid of an upright axis over a range, with its values in
// a gutter at the left that it takes from the rectangle. It gives the plot
// and the scale.
func upAxis(s sheet.Sheet, r sheet.Rect, low, high float64, f func(float64) string) (sheet.Rect, scale) {
	lo, hi, by := widen(low, high, max(2, int(r.H/9)))
	marks := ticks(lo, hi, by)
	gutter := 0.0
	for _, v := range marks {
		gutter = max(gutter, sheet.Width(say(f, v, by), tickType))
	}
	plot := r.Inset(gutter+2, tickType.Ascent()/2, 0, 0)
	sc := scale{lo, hi, plot.Bottom(), -plot.H}
	for _, v := range marks {
		y := sc.of(v)
		pen := sheet.Pen{Width: 0.1, Grey: sheet.Light}
		if v == 0 {
			pen = axisPen
		}
		s.Line(sheet.Point{X: plot.X, Y: y}, sheet.Point{X: plot.Right(), Y: y}, pen)
		s.Text(plot.X-2, middle(y, tickType), say(f, v, by), tickType.To(sheet.Right))
	}
	return plot, sc
}

// outer is the range of some values, zero included.
func outer(values ...float64) (low, high float64) {
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	return low, high
}
