package cost

import (
	"math"

	"coldreckon/economics/quantity"
)

// Comparison sets one option beside a base option, usually ice, over the same
// horizon and at the same rate. Rank several options by present cost or net
// savings only: the ratio, the return and the payback of each against the base
// say whether it beats the base, not which of two beats the other (NIST
// Handbook 135, from memory).
type Comparison struct {
	// ExtraInvestment is the present cost of owning the option, over that of
	// owning the base: first costs and renewals less what is seen at the sale.
	ExtraInvestment quantity.Money
	// OperatingSavings is the present worth of running the option for less
	// than the base.
	OperatingSavings quantity.Money

	rate            Rate
	owning, running Flows // the option's less the base's
}

// Compare sets option beside base over a horizon of 1 year or more.
func Compare(base, option []Line, years int, d Rate) Comparison {
	c := Comparison{rate: d, owning: blank(years, nil), running: blank(years, nil)}
	for i := range base {
		base[i].enter(c.owning, c.running)
	}
	for year := range c.owning {
		c.owning[year], c.running[year] = -c.owning[year], -c.running[year]
	}
	for i := range option {
		option[i].enter(c.owning, c.running)
	}
	c.ExtraInvestment = c.owning.PresentCost(d)
	c.OperatingSavings = -c.running.PresentCost(d)
	return c
}

// NetSavings is the base's present cost less the option's: what the option
// saves over the horizon, in today's money (ASTM E1074; 10 CFR 436.20).
func (c Comparison) NetSavings() quantity.Money { return c.OperatingSavings - c.ExtraInvestment }

// SavingsToInvestment is the operating savings per unit of extra investment
// (ASTM E964; 10 CFR 436.21-22). There is none unless the extra investment is
// above zero.
func (c Comparison) SavingsToInvestment() (ratio float64, ok bool) {
	if c.ExtraInvestment <= 0 {
		return 0, false
	}
	ratio = float64(c.OperatingSavings / c.ExtraInvestment)
	if math.IsInf(ratio, 0) { // an investment of next to nothing
		return 0, false
	}
	return ratio, true
}

// AdjustedReturn is the yearly return on the extra investment when every
// saving is put by at the discount rate until the end of the horizon,
// (1+d)·SIR^(1/N) - 1 (ASTM E1057; 10 CFR 436.22). There is none without a
// savings-to-investment ratio of zero or more.
func (c Comparison) AdjustedReturn() (yearly Rate, ok bool) {
	ratio, ok := c.SavingsToInvestment()
	if !ok || ratio < 0 {
		return 0, false
	}
	return adjustedReturn(ratio, len(c.owning)-1, c.rate), true
}

func adjustedReturn(savingsToInvestment float64, years int, reinvested Rate) Rate {
	return (1+reinvested)*Rate(math.Pow(savingsToInvestment, 1/float64(years))) - 1
}

// DiscountedPayback is the time until the discounted savings have returned the
// extra first cost and the renewals so far (ASTM E1121). There is none when
// the option costs no more at first, nor when the horizon ends before. It is
// the first such time: a later renewal may open the gap again, so it does not
// replace NetSavings.
func (c Comparison) DiscountedPayback() (quantity.Year, bool) { return c.payback(c.rate) }

// payback finds the first year end at which the balance is made good, then
// where in that year the running savings alone would do it. Within a year they
// are taken to accrue as UPV(d, f) does, which for even savings gives the
// closed form -ln(1-I·d/S)/ln(1+d). What is left then falls at the year end,
// with a sale.
func (c Comparison) payback(d Rate) (quantity.Year, bool) {
	if c.owning[0] <= 0 {
		return 0, false
	}
	owed := float64(c.owning[0])
	for year := 1; year < len(c.owning); year++ {
		worth := SPV(d, quantity.Year(year))
		saved := -float64(c.running[year])
		after := owed - (saved-float64(c.owning[year]))*worth
		if after > 1e-9*float64(c.owning[0]) { // not for a rounding error's sake
			owed = after
			continue
		}
		part := 1.0
		if start := SPV(d, quantity.Year(year-1)); saved*worth >= owed {
			part = yearsToReach(owed/(saved*start), d)
		}
		return quantity.Year(float64(year-1) + part), true
	}
	return 0, false
}

// yearsToReach inverts UPV: the n at which UPV(d, n) is the given factor.
func yearsToReach(factor float64, d Rate) float64 {
	if d == 0 {
		return factor
	}
	return -math.Log1p(-factor*float64(d)) / math.Log1p(float64(d))
}
