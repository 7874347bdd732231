package climate

import "math"

// darkest is the clearness of the dullest day (Bendt, Collares-Pereira and
// Rabl 1981).
const darkest = 0.05

// clearest is the clearness of the brightest day of a month whose mean is
// given (Hollands and Huget 1983).
func clearest(mean float64) float64 {
	return 0.6313 + 0.267*mean - 11.9*math.Pow(mean-0.75, 8)
}

// bendt is the distribution of daily clearness within a month: a truncated
// exponential, density in proportion to e^(γK) from low to high (Bendt,
// Collares-Pereira and Rabl 1981, Solar Energy 27:1-5).
type bendt struct {
	low, high float64
	steep     float64 // γ (high - low), so that 0 is the uniform distribution
}

// newBendt fits the distribution to a monthly mean clearness of 0.1 to 0.8.
func newBendt(mean float64) bendt {
	b := bendt{low: darkest, high: clearest(mean)}
	// The mean rises with steep; 60 halvings of this span leave no error.
	flat, sharp := -700.0, 700.0
	for range 60 {
		b.steep = (flat + sharp) / 2
		if b.mean() < mean {
			flat = b.steep
		} else {
			sharp = b.steep
		}
	}
	return b
}

func (b bendt) mean() float64 {
	share := 0.5 + b.steep/12 // the limit near 0, where the exact form is 0/0
	if math.Abs(b.steep) > 1e-4 {
		share = -1/math.Expm1(-b.steep) - 1/b.steep
	}
	return b.low + (b.high-b.low)*share
}

// quantile is the clearness that a share of days, 0 to 1, stays below.
func (b bendt) quantile(share float64) float64 {
	part := share
	if math.Abs(b.steep) > 1e-9 {
		part = math.Log1p(share*math.Expm1(b.steep)) / b.steep
	}
	return b.low + (b.high-b.low)*part
}

// coastSpread is the standard deviation of daily clearness measured in 360
// months at 30 coastal stations (typical meteorological years, mostly US;
// pooled by monthly mean) over that of the Bendt distribution, which is too
// wide in clear months.
var coastSpread = []struct{ mean, measured, bendt float64 }{
	{0.30, 0.136, 0.177},
	{0.40, 0.147, 0.198},
	{0.45, 0.170, 0.199},
	{0.50, 0.154, 0.194},
	{0.55, 0.127, 0.183},
	{0.60, 0.105, 0.167},
	{0.65, 0.076, 0.144},
	{0.70, 0.061, 0.115},
}

// spread is the factor by which deviations from a monthly mean are narrowed,
// between the rows of coastSpread in proportion, beyond them as in the last.
func spread(mean float64) float64 {
	ratio := func(i int) float64 { return coastSpread[i].measured / coastSpread[i].bendt }
	last := len(coastSpread) - 1
	if mean <= coastSpread[0].mean {
		return ratio(0)
	}
	for i := range last {
		low, high := coastSpread[i].mean, coastSpread[i+1].mean
		if mean <= high {
			part := (mean - low) / (high - low)
			return ratio(i) + part*(ratio(i+1)-ratio(i))
		}
	}
	return ratio(last)
}

// The trade winds blow within this latitude, north and south, and bring days
// more alike than those of other coasts with the same mean. Nine stations kept
// out of coastSpread have a standard deviation of daily clearness of 0.10, where
// coastSpread by itself gives 0.13; see TestTradeWindDays.
const (
	tradeWindLatDeg = 25
	tradeWindSpread = 0.78
)

// latitudeSpread is the factor by which a latitude's days differ less than those
// of coastSpread: 1 outside the trade winds.
func latitudeSpread(latDeg float64) float64 {
	if math.Abs(latDeg) <= tradeWindLatDeg {
		return tradeWindSpread
	}
	return 1
}
