package cost

import (
	"math"

	"coldreckon/economics/quantity"
)

// Rate is a yearly rate: 0.03 is 3 % a year. Always above -1; a rate of 0 or
// below is allowed.
type Rate float64

// The factors below are those of NIST Handbook 135, appendix D, and ASTM E917
// (from memory): payments at year ends, n years from 0 up. They are written
// with log1p and expm1 so that a rate near 0 loses no digits.

// SPV is the single present value factor, (1+d)^-n: the worth today of 1 paid
// at the end of year n.
func SPV(d Rate, n quantity.Year) float64 {
	return math.Exp(-float64(n) * math.Log1p(float64(d)))
}

// UPV is the uniform present value factor, (1-(1+d)^-n)/d: the worth today of
// 1 paid at the end of each of n years. It is n when d is 0.
func UPV(d Rate, n quantity.Year) float64 {
	if d == 0 {
		return float64(n)
	}
	return -math.Expm1(-float64(n)*math.Log1p(float64(d))) / float64(d)
}

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

// CRF is the capital recovery factor, 1/UPV: the even yearly payment over n
// years, n above 0, that is worth 1 today. It is 1/n when d is 0.
func CRF(d Rate, n quantity.Year) float64 { return 1 / UPV(d, n) }

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
