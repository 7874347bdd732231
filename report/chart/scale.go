package chart

import (
	"math"
	"strconv"
	"strings"
)

// scale maps values to millimetres: low to at, high to at+span. span is
// negative for an axis that grows upwards.
type scale struct{ low, high, at, span float64 }

func (s scale) of(v float64) float64 { return s.at + s.span*(v-s.low)/(s.high-s.low) }

// Step is the round distance between ticks, 1, 2 or 5 times a power of ten,
// that gives at most n of them over a range.
func Step(span float64, n int) float64 {
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

// fit gives an axis for a range: the range itself, made wide enough to have
// extent, and the coarsest step of about n ticks that puts at least two in it.
func fit(low, high float64, n int) (lo, hi, by float64) {
	if high-low <= math.Max(1e-12, 1e-9*math.Max(math.Abs(low), math.Abs(high))) { // also too narrow to be told apart
		high = low + math.Max(1, math.Abs(low))
	}
	for ; ; n++ {
		by = Step(high-low, n)
		if len(ticks(low, high, by)) >= 2 {
			return low, high, by
		}
	}
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
