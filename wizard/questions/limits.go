package questions

import (
	"math"

	"coldreckon/economics/quantity"
)

// The limits are round figures in metric units. In US units they are printed
// a little inward of where they lie, at a round figure: 78 in for 2 m. Answers
// are held against the limits themselves.

// lower prints a lower limit, upper an upper one.
func (r Row) lower(v float64, o owner) string { return r.bound(r.inward(v, 1, o), o) }
func (r Row) upper(v float64, o owner) string { return r.bound(r.inward(v, -1, o), o) }

// inward takes a limit to a round figure in the owner's unit: upward where way
// is 1, downward where it is -1.
func (r Row) inward(v, way float64, o owner) float64 {
	kind, handy := r.Kind, handyStep
	switch kind {
	case Length, Dimensions, Opening:
		kind, handy = Length, inchStep
	case Temperature, MonthTemperatures, MonthOverrides:
		kind, handy = Temperature, func(float64) float64 { return 1 }
	case MoneySpan:
		kind = Money
	case PricePerMass: // to the cent
		handy = func(figure float64) float64 { return math.Max(0.01, handyStep(figure)) }
	case WireSize: // gauges are whole, and run backward
		return v
	}
	parse := ways[kind].parse
	if o.sys != quantity.US || parse == nil || r.None != "" && v == 0 {
		return v
	}
	// A bare figure is read in the owner's own unit.
	of := func(text string, sys quantity.System) float64 {
		value, err := parse(r, text, owner{sys: sys, currency: o.currency})
		if err != nil || len(figures(value)) != 1 {
			return math.NaN()
		}
		return floatOf(value)
	}
	zero := of("0", quantity.US)
	unit := of("1", quantity.US) - zero
	if math.IsNaN(unit) || unit == of("1", quantity.Metric)-of("0", quantity.Metric) {
		return v // no unit of its own
	}
	figure := (v - zero) / unit
	step := handy(math.Abs(figure))
	if step == 0 {
		return v
	}
	const slack = 1e-6 // forgives the last digits of a conversion
	return zero + unit*step*way*math.Ceil(way*figure/step-slack)
}

// handyStep gives steps of which a figure has 10 to 25.
func handyStep(figure float64) float64 {
	if figure == 0 {
		return 0
	}
	power := math.Pow(10, math.Floor(math.Log10(figure)))
	switch {
	case figure < 2*power:
		return power / 10
	case figure < 5*power:
		return power / 5
	}
	return power / 2
}

// inchStep gives steps of a tape: eighths for small figures, whole inches for
// large ones.
func inchStep(figure float64) float64 {
	switch {
	case figure < 1:
		return 1.0 / 8
	case figure < 10:
		return 1.0 / 2
	}
	return 1
}
