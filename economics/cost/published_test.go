package cost

import "coldreckon/economics/quantity"

// What published tables and examples give and the ledger does not need. Each
// is built on what the ledger does use, so that a table that agrees speaks for
// that.

// SimplePayback is the time until the savings, not discounted, have returned
// the extra first cost and the renewals so far (10 CFR 436.23). See
// DiscountedPayback for when there is none.
func (c Comparison) SimplePayback() (quantity.Year, bool) { return c.payback(0) }

// ModifiedSPV is the single present value factor SPV*, ((1+e)/(1+d))^n, of a
// payment whose price, 1 today, rises by e a year faster than prices at large.
func ModifiedSPV(d, e Rate, n quantity.Year) float64 { return SPV(netOf(d, e), n) }

// ModifiedUPV is the uniform present value factor UPV* of yearly payments
// whose price, 1 today, rises by e a year faster than prices at large: the sum
// of ((1+e)/(1+d))^t over the years, so the first payment has risen once
// already. It is n when e equals d.
func ModifiedUPV(d, e Rate, n quantity.Year) float64 { return UPV(netOf(d, e), n) }

// netOf gives the rate that alone does what discounting at d and rising at e
// do together.
func netOf(d, e Rate) Rate { return (d - e) / (1 + e) }

// SCA is the single compound amount factor, (1+d)^n: what 1 today has grown to
// at the end of year n.
func SCA(d Rate, n quantity.Year) float64 { return 1 / SPV(d, n) }

// UCA is the uniform compound amount factor, ((1+d)^n-1)/d: what 1 put by at
// the end of each of n years has grown to at the end of the last.
func UCA(d Rate, n quantity.Year) float64 { return UPV(d, n) * SCA(d, n) }

// USF is the uniform sinking fund factor, 1/UCA: the even yearly payment over
// n years, n above 0, that grows to 1 at the end of the last.
func USF(d Rate, n quantity.Year) float64 { return 1 / UCA(d, n) }

// Real takes inflation out of a nominal rate: (1+D)/(1+I) - 1.
func Real(nominal, inflation Rate) Rate { return netOf(nominal, inflation) }

// Nominal puts inflation into a real rate: (1+d)(1+I) - 1.
func Nominal(real, inflation Rate) Rate { return real + inflation + real*inflation }
