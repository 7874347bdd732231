package chance

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// Guards the sort by remainder in ShareOut: without it the third row fails.
// Source: Hamilton's method, worked by hand; the first row is the classic
// three-way split.
func TestShareOut(t *testing.T) {
	for _, row := range []struct {
		counts, want []int
	}{
		{[]int{1, 1, 1}, []int{34, 33, 33}},
		{[]int{10, 29, 161}, []int{5, 15, 80}}, // 5.0, 14.5, 80.5: the tie goes to the one before
		{[]int{4, 333, 663}, []int{1, 33, 66}}, // 0.4, 33.3, 66.3: the last one left goes to the first
		{[]int{0, 7, 0}, []int{0, 100, 0}},
		{[]int{1, 1998, 1}, []int{0, 100, 0}}, // 0.05, 99.9, 0.05
	} {
		total := 0
		for _, count := range row.counts {
			total += count
		}
		if got := ShareOut(row.counts, total); !slices.Equal(got, row.want) {
			t.Errorf("%v: %v, want %v", row.counts, got, row.want)
		}
	}
}

// Source: s/sqrt(n), any statistics text; the figure for a standard deviation
// of 300 and 10,000 futures, worked by hand.
func TestErrors(t *testing.T) {
	const n = 10000
	figures := make([]float64, n)
	for i := range figures {
		figures[i] = 40 + 300*NormalQuantile((float64(i)+0.5)/n)
	}
	mean, standardError := Mean(figures)
	near(t, "mean", mean, 40, 1e-9)
	near(t, "error of a mean", standardError, 3.00, 0.005)

	if mean, standardError := Mean([]quantity.Money{5}); mean != 5 || standardError != 0 {
		t.Errorf("a single figure: %v ± %v", mean, standardError)
	}
}

// Two options reckoned over the same futures, standard deviation 300 each and
// correlation 0.9, differ with a standard error of sqrt(300²+300²-2·0.9·300²)
// over 100 = 1.342; over futures of their own it is 4.243 (variance of a
// difference, any statistics text).
func TestSharedFuturesSharpenADifference(t *testing.T) {
	const n = 10000
	random := rand.New(rand.NewPCG(8, 8))
	a, b, difference := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range n {
		shared := random.NormFloat64()
		a[i] = 300 * shared
		b[i] = 300 * (0.9*shared + math.Sqrt(1-0.81)*random.NormFloat64())
		difference[i] = a[i] - b[i]
	}
	_, errorA := Mean(a)
	_, errorB := Mean(b)
	_, together := Mean(difference)
	near(t, "over the same futures", together, 1.342, 0.03)
	near(t, "over futures of their own", math.Hypot(errorA, errorB), 4.243, 0.09)
}
