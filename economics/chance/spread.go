package chance

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"coldreckon/economics/quantity"
)

// NormalQuantile is the inverse of the standard normal distribution function:
// the normal score of a share p between 0 and 1. A p at or beyond an end is
// held just inside, 8.2 standard deviations out, so no infinity comes back.
func NormalQuantile(p float64) float64 {
	const inside = 0x1p-53
	return mathext.NormalQuantile(min(max(p, inside), 1-inside))
}

// SplitLogNormal is the distribution of an uncertain figure with a given
// median, spread differently below and above it. Each half is log-normal where
// its two marks are above zero: a price is as likely to be twice as high as
// half as high. A half with a mark at or below zero is normal instead, and a
// figure whose low mark is not negative stays at zero or above.
type SplitLogNormal struct {
	median       float64
	below, above half
	floor        float64
}

// half is one side of the distribution: how far a figure moves for each
// standard deviation, as a logarithm or as it stands.
type half struct {
	slope       float64
	logarithmic bool
}

// Fit draws a distribution through the three marks of a range, which must be
// in ascending order. (That marks given as low and high are better read as
// percentiles than as limits is common practice in eliciting judgement.)
func Fit(r quantity.Range) SplitLogNormal {
	s := SplitLogNormal{
		median: r.Typical,
		below:  halfBetween(r.Low, r.Typical),
		above:  halfBetween(r.Typical, r.High),
		floor:  math.Inf(-1),
	}
	if r.Low >= 0 {
		s.floor = 0
	}
	return s
}

func halfBetween(from, to float64) half {
	if from > 0 {
		return half{slope: math.Log(to/from) / quantity.NormalP90, logarithmic: true}
	}
	return half{slope: (to - from) / quantity.NormalP90}
}

// Quantile is the figure that a share p of all futures lie below, 0 < p < 1.
func (s SplitLogNormal) Quantile(p float64) float64 {
	score := NormalQuantile(p)
	side := s.below
	if score > 0 {
		side = s.above
	}
	if side.logarithmic {
		return s.median * math.Exp(side.slope*score)
	}
	return max(s.median+float64(side.slope*score), s.floor)
}
