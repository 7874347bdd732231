package climate

import "math"

// The grid of normal scores on which relative sun is tabulated.
const (
	scoreLimit   = 4 // one day in thirty thousand lies beyond
	scoresPerOne = 16
	scoreCount   = 2*scoreLimit*scoresPerOne + 1
)

// scores tabulates a day's sun relative to its month's mean, by the day's
// normal score: the standard-normal deviate of its rank among all such days.
type scores [scoreCount]float64

// darkTail is the power with which narrowing lets go of the dullest days. It
// was chosen, in steps of 2, to bring the worst three and five days of a month
// and the loss of load nearest to those of the coastal stations (see the tests
// of both); plain narrowing leaves out the black days that even clear months
// have, and with them most of the rare losses.
const darkTail = 8

// newScores tabulates the Bendt distribution for a monthly mean clearness,
// narrowed as measured on coasts (spread) and, black days and all, in the trade
// winds (tradeWindSpread).
//
// Deviations above the mean shrink in proportion. Below it they shrink alike
// near the mean and hardly at all near the darkest day. Shrinking one side
// more than the other shifts the mean; dividing by it brings it back to 1.
func newScores(mean, latDeg float64) scores {
	b, narrowed := newBendt(mean), spread(mean)
	var s scores
	for i := range s {
		deviation := b.quantile(normalCDF(scoreAt(i))) - mean
		part := narrowed
		if deviation < 0 {
			part += (1 - narrowed) * math.Pow(deviation/(darkest-mean), darkTail)
		}
		s[i] = 1 + part*deviation/mean
	}
	whole, alike := s.mean(), latitudeSpread(latDeg)
	for i := range s {
		s[i] = 1 + alike*(s[i]/whole-1)
	}
	return s
}

// at reads the table at a normal score, on a straight line between marks.
func (s *scores) at(score float64) float64 {
	x := (score + scoreLimit) * scoresPerOne
	if !(x > 0) {
		return s[0]
	}
	if x >= scoreCount-1 {
		return s[scoreCount-1]
	}
	i := int(x)
	return s[i] + (x-float64(i))*(s[i+1]-s[i])
}

// mean is the expectation of at over standard-normal scores.
func (s *scores) mean() float64 {
	var sum float64
	for i, weight := range markWeights {
		sum += weight * s[i]
	}
	return sum
}

// markWeights are the weights of the marks in the expectation of a table read
// on straight lines: the integral, under the normal density, of a line falling
// from 1 at a mark to 0 at its neighbours. They add up to 1.
var markWeights = func() (weights [scoreCount]float64) {
	for i := range scoreCount - 1 {
		from, to := scoreAt(i), scoreAt(i+1)
		chance := normalCDF(to) - normalCDF(from)
		moment := normalDensity(from) - normalDensity(to) // ∫ z φ(z) dz
		weights[i] += (to*chance - moment) * scoresPerOne
		weights[i+1] += (moment - from*chance) * scoresPerOne
	}
	weights[0] += normalCDF(-scoreLimit)
	weights[scoreCount-1] += normalCDF(-scoreLimit)
	return weights
}()

func scoreAt(i int) float64 { return float64(i)/scoresPerOne - scoreLimit }

func normalCDF(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

func normalDensity(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }
