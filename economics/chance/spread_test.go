package chance

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// Source: table of the normal distribution, Abramowitz and Stegun, Handbook of
// Mathematical Functions, table 26.1 and 26.5, from memory.
func TestNormalQuantile(t *testing.T) {
	for _, row := range []struct{ p, want, tolerance float64 }{
		{0.5, 0, 1e-15},
		{0.9, 1.2815515655, 1e-10},
		{0.95, 1.6448536270, 1e-10},
		{0.975, 1.9599639845, 1e-10},
		{0.99, 2.3263478740, 1e-10},
		{0.001349898, -3, 1e-6},
		{0.8413447461, 1, 1e-9},
	} {
		near(t, "score", NormalQuantile(row.p), row.want, row.tolerance)
		near(t, "mirrored score", NormalQuantile(1-row.p), -row.want, row.tolerance)
	}
	near(t, "normalP90", quantity.NormalP90, NormalQuantile(0.9), 1e-14)
	for _, p := range []float64{-1, 0, 5e-324, 1, 2} {
		// The tail beyond it is half a unit in the last place of 1.
		near(t, "score at an end", math.Erfc(math.Abs(NormalQuantile(p))/math.Sqrt2)/2, 0x1p-53, 0.01*0x1p-53)
	}
}

// Source: the log-normal distribution's closed forms, median·exp(s²/2) for the
// mean and median·exp(s·z) for the quantiles (any statistics text), worked
// with a separate tool.
func TestLogNormal(t *testing.T) {
	s := LogNormal(100, 0.5)
	near(t, "P5", s.Quantile(0.05), 43.94, 0.005)
	near(t, "median", s.Quantile(0.5), 100, 1e-12)
	near(t, "P95", s.Quantile(0.95), 227.60, 0.005)
	const n = 20000
	sum, places := 0.0, LatinHypercube(n, 1, 5)
	for future := range n {
		sum += s.Quantile(places.U(future, 0))
	}
	near(t, "mean", sum/n, 113.315, 0.01)
	near(t, "no spread", LogNormal(7, 0).Quantile(0.99), 7, 0)
}

// Guards the two halves and their marks: with the halves exchanged in Quantile
// or without NormalP90 in halfBetween, the first rows fail.
func TestFitGoesThroughItsMarks(t *testing.T) {
	for _, r := range []quantity.Range{
		{Low: 0.5, Typical: 1.1, High: 2}, // a price
		{Low: 7, Typical: 12, High: 20},   // a life
		{Low: 3, Typical: 3, High: 9},
		{Low: 3, Typical: 9, High: 9},
		{Low: 0, Typical: 5, High: 25}, // an errand that may cost nothing
		{Low: 0, Typical: 0, High: 4},
		{Low: -1, Typical: 0, High: 2}, // a drift of prices
		{Low: -3, Typical: -2, High: -1},
		quantity.Exactly(6),
		quantity.Exactly(0),
	} {
		s := Fit(r)
		tolerance := 1e-12 * (math.Abs(r.Low) + math.Abs(r.High))
		near(t, "low", s.Quantile(0.1), r.Low, tolerance)
		near(t, "typical", s.Quantile(0.5), r.Typical, 0)
		near(t, "high", s.Quantile(0.9), r.High, tolerance)
		before := math.Inf(-1)
		for p := 0.0; p <= 1; p += 1.0 / 512 {
			x := s.Quantile(p)
			if x < before || math.IsInf(x, 0) || math.IsNaN(x) {
				t.Errorf("%v at %v: %v after %v", r, p, x, before)
			}
			if r.Low >= 0 && x < 0 {
				t.Errorf("%v at %v: %v is below zero", r, p, x)
			}
			before = x
		}
	}
}

func TestFitShapesItsHalves(t *testing.T) {
	price := Fit(quantity.Range{Low: 1, Typical: 2, High: 8})
	near(t, "each step down halves alike", price.Quantile(0.1)/price.Quantile(0.5), price.Quantile(0.5)/2/price.Quantile(0.5), 1e-12)
	far := 2 * quantity.NormalP90
	share := 0.5 * math.Erfc(far/math.Sqrt2)
	near(t, "twice as far down", price.Quantile(share), 0.5, 1e-9)
	near(t, "twice as far up", price.Quantile(1-share), 32, 1e-9)
	drift := Fit(quantity.Range{Low: -1, Typical: 0, High: 2})
	near(t, "a normal half, twice as far", drift.Quantile(share), -2, 1e-9)
}

func BenchmarkQuantile(b *testing.B) {
	s := Fit(quantity.Range{Low: 1, Typical: 2, High: 7})
	for b.Loop() {
		s.Quantile(0.234)
	}
}

// LogNormal is the distribution of a figure above zero whose logarithm has the
// standard deviation logSD, 0 or above.
func LogNormal(median, logSD float64) SplitLogNormal {
	both := half{slope: logSD, logarithmic: true}
	return SplitLogNormal{median: median, below: both, above: both}
}
