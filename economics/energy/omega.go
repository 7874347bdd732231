package energy

import "math"

// omega is the Wright omega function: the w for which w + ln w = y (Corless
// and Jeffrey 2002, from memory; it is Lambert's W of exp(y)). Between the
// table's ends it is read by cubic Hermite interpolation, to better than 2e-9
// of w or, near 0, of 1; outside it is solved.
func omega(y float64) float64 {
	at := (y - omegaFrom) * omegaPerUnit
	if !(at >= 0 && at < omegaEntries-1) {
		return solveOmega(y)
	}
	i := int(at)
	return hermite(&omegaTable[i], &omegaTable[i+1], at-float64(i))
}

const (
	omegaFrom    = -8
	omegaTo      = 8
	omegaPerUnit = 32
	omegaEntries = (omegaTo-omegaFrom)*omegaPerUnit + 1
)

// knot is a function's value and its slope times the table's step.
type knot struct{ value, rise float64 }

// hermite is the cubic through two knots with their slopes, at u from 0 to 1.
func hermite(a, b *knot, u float64) float64 {
	d := b.value - a.value
	return a.value + u*(a.rise+u*(3*d-2*a.rise-b.rise+u*(a.rise+b.rise-2*d)))
}

// omegaTable and fallTable are filled when the program starts; nothing writes
// to them later.
var omegaTable = func() (table [omegaEntries]knot) {
	for i := range table {
		w := solveOmega(omegaFrom + float64(i)/omegaPerUnit)
		table[i] = knot{w, w / (1 + w) / omegaPerUnit}
	}
	return table
}()

// solveOmega solves w + ln w = y by Halley's method on w = exp(y - w), which
// keeps w positive from any start; the error after a step is at most a twelfth
// of the cube of the error before it.
func solveOmega(y float64) float64 {
	w := math.Exp(min(y, 0))
	if y > 1 {
		w = y
	}
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
	if !(at >= 0 && at < fallEntries-1) {
		return math.Log(max(1e-6, 1-capacityFall*(tc-ratingCondenserC)))
	}
	i := int(at)
	return hermite(&fallTable[i], &fallTable[i+1], at-float64(i))
}

const fallEntries = 71

var fallTable = func() (table [fallEntries]knot) {
	for i := range table {
		left := 1 - capacityFall*(condenserFloorC+float64(i)-ratingCondenserC)
		table[i] = knot{math.Log(left), -capacityFall / left}
	}
	return table
}()
