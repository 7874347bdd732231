package cost

import "math"

// halvings of an interval leave a billionth of it: finer than any price is known.
const halvings = 30

// Crossing finds where a difference of two costs changes sign between lo and
// hi, lo below hi, by bisection: the break-even quantity, such as the nights a
// year at which a unit costs what ice costs. f must rise or fall throughout;
// where it does not, one of its crossings is found. There is none when f has
// the same sign at both ends or is not a number somewhere on the way.
func Crossing(f func(x float64) float64, lo, hi float64) (x float64, ok bool) {
	atLo, atHi := f(lo), f(hi)
	switch {
	case atLo == 0:
		return lo, true
	case atHi == 0:
		return hi, true
	case math.IsNaN(atLo), math.IsNaN(atHi), math.Signbit(atLo) == math.Signbit(atHi):
		return 0, false
	}
	for range halvings {
		middle := lo + (hi-lo)/2
		at := f(middle)
		switch {
		case math.IsNaN(at):
			return 0, false
		case at == 0:
			return middle, true
		case math.Signbit(at) == math.Signbit(atLo):
			lo = middle
		default:
			hi = middle
		}
	}
	return lo + (hi-lo)/2, true
}
