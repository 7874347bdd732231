package energy

import "math"

// omega is the Wright omega function: the w for which w + ln w = y (Corless
// and Jeffrey 2002, from memory; it is Lambert's W of exp(y)). Between the
// table's ends it is read by cubic Hermite interpolation, to better than 2e-9
// of w or, near 0, of 1; outside it is solved.
func omega(y float64) float64 {
	at := (y - omegaFrom) * omegaPerUnit
	if !(at >= 0 && at < omegaSteps) {
		return solveOmega(y)
	}
	i := int(at)
	return omegaTable[i].at(at - float64(i))
}

const (
	omegaFrom    = -8
	omegaTo      = 8
	omegaPerUnit = 32
	omegaSteps   = (omegaTo - omegaFrom) * omegaPerUnit
)

// cubic is a polynomial over one step of a table, in powers of the part of the
// step gone, 0 to 1.
type cubic [4]float64

// hermite is the cubic from a value to the next with these slopes, which are
// per step.
func hermite(value, slope, nextValue, nextSlope float64) cubic {
	d := nextValue - value
	return cubic{value, slope, 3*d - 2*slope - nextSlope, slope + nextSlope - 2*d}
}

// at sums the two halves apart, as neither then waits for the other.
func (c *cubic) at(u float64) float64 { return c[0] + u*c[1] + u*u*(c[2]+u*c[3]) }

// omegaTable and fallTable are filled when the program starts; nothing writes
// to them later.
var omegaTable = func() (table [omegaSteps]cubic) {
	slope := func(w float64) float64 { return w / (1 + w) / omegaPerUnit }
	w := solveOmega(omegaFrom)
	for i := range table {
		next := solveOmega(omegaFrom + float64(i+1)/omegaPerUnit)
		table[i] = hermite(w, slope(w), next, slope(next))
		w = next
	}
	return table
}()

// solveOmega solves w + ln w = y by Halley's method on w = exp(y - w), which
// keeps w positive from any start; the error after a step is at most a twelfth
// of the cube of the error before it.
func solveOmega(y float64) float64 {
	w := max(y, 1)
	for range 40 {
		e := math.Exp(y - w)
		off, slope := w-e, 1+e
		step := 2 * off * slope / (2*slope*slope + off*e)
		w -= step
		if math.Abs(step) <= 1e-5*w {
			break
		}
	}
	return w
}

// lnFall is the logarithm of what a condensing temperature leaves of the rated
// capacity. Between 30 and 100 °C it is read from a table, to 1e-10.
func lnFall(tc float64) float64 {
	at := tc - condenserFloorC
	if !(at >= 0 && at < fallSteps) {
		return math.Log(max(1e-6, 1-capacityFall*(tc-ratingCondenserC)))
	}
	i := int(at)
	return fallTable[i].at(at - float64(i))
}

const fallSteps = 70

var fallTable = func() (table [fallSteps]cubic) {
	left := func(i int) float64 { return 1 - capacityFall*(condenserFloorC+float64(i)-ratingCondenserC) }
	for i := range table {
		a, b := left(i), left(i+1)
		table[i] = hermite(math.Log(a), -capacityFall/a, math.Log(b), -capacityFall/b)
	}
	return table
}()
