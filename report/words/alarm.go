package words

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Alarm says what a unit that stops unseen spoils, and what a thermometer with an
// alarm costs and saves; fit is the unit's work, which has one where it pays.
func (v Voice) Alarm(a economics.Alarm, fit economics.FitOut) string {
	if a.Aboard {
		return fmt.Sprintf("Should the unit stop, your alarm saves most of the %s of food then aboard. What is lost all the same comes to %s a year.",
			v.Mass(a.FoodKg), v.Small(a.Lost.Typical))
	}
	verdict := "by the food alone it does not pay, so it is not among the work"
	if fit.Alarm {
		verdict = "it is among the work"
	}
	return fmt.Sprintf("A unit that stops unseen spoils some %s of food. That may come once in %.0f years spent aboard (%.0f to %.0f). A thermometer with an alarm saves %s a year of it and costs %s a year, renewals included: %s.",
		v.Mass(a.FoodKg), a.YearsBetween.Typical, a.YearsBetween.Low, a.YearsBetween.High, v.smallRange(a.Saved), v.Small(a.PricePerYear), verdict)
}

// smallRange prints a range of whole units: "$2 to $6", "up to $2" from under one
// on, "under $1".
func (v Voice) smallRange(r quantity.Range) string {
	switch low, high := v.Small(r.Low), v.Small(r.High); {
	case low == high:
		return low
	case r.Low < 0.5:
		return "up to " + high
	default:
		return quantity.Span(low, high)
	}
}
