package cost

import "coldreckon/economics/quantity"

// Flows are the payments of one option, year 0 first, costs positive, in
// constant prices. The last entry is the last year of the horizon.
type Flows []quantity.Money

// PresentCost is the life-cycle cost: every payment brought back to year 0 at
// the real rate d and added up. It allocates nothing.
func (f Flows) PresentCost(d Rate) quantity.Money {
	// From the last year backwards, so that each year costs one multiplication
	// and no power. The conversion keeps a compiler from fusing the two steps,
	// which would make the last digit depend on the machine.
	step := 1 / (1 + float64(d))
	worth := 0.0
	for year := len(f) - 1; year >= 0; year-- {
		worth = float64(worth*step) + float64(f[year])
	}
	return quantity.Money(worth)
}

// YearlyEquivalent is the even payment at the end of each year of the horizon
// that has the same present cost at the rate d. Flows of year 0 alone have no
// year to spread over; for them it is the present cost itself.
func (f Flows) YearlyEquivalent(d Rate) quantity.Money {
	years := len(f) - 1
	if years < 1 {
		return f.PresentCost(d)
	}
	return f.PresentCost(d) * quantity.Money(CRF(d, quantity.Year(years)))
}
