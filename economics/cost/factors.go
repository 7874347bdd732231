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

// CRF is the capital recovery factor, 1/UPV: the even yearly payment over n
// years, n above 0, that is worth 1 today. It is 1/n when d is 0.
func CRF(d Rate, n quantity.Year) float64 { return 1 / UPV(d, n) }
