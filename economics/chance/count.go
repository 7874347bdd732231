package chance

import (
	"math"
	"slices"

	"coldreckon/economics/quantity"
)

// shareOut scales counts that add up to total into whole counts that add up
// to 100: each is rounded down, and those with the largest remainders get the
// rest (Hamilton's method of apportionment). Equal remainders go by before.
func shareOut(counts []int, total int, before func(a, b int) bool) []int {
	shares := make([]int, len(counts))
	order := make([]int, len(counts))
	left := 100
	for i, count := range counts {
		shares[i] = 100 * count / total
		left -= shares[i]
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		if difference := (100 * counts[b] % total) - (100 * counts[a] % total); difference != 0 {
			return difference
		}
		if before(a, b) {
			return -1
		}
		return 1
	})
	for _, i := range order[:left] {
		shares[i]++
	}
	return shares
}

// ShareError is the standard error of a share found in n independent futures,
// sqrt(p(1-p)/n).
func ShareError(share quantity.Fraction, n int) quantity.Fraction {
	return quantity.Fraction(math.Sqrt(float64(share*(1-share)) / float64(n)))
}

// Mean is the average of one or more figures, and its standard error if they
// are independent, s/sqrt(n); 0 for a single one.
func Mean[T ~float64](figures []T) (mean, standardError T) {
	n := float64(len(figures))
	sum := 0.0
	for _, figure := range figures {
		sum += float64(figure)
	}
	centre := sum / n
	squares := 0.0
	for _, figure := range figures {
		off := float64(figure) - centre
		squares += float64(off * off)
	}
	return T(centre), T(math.Sqrt(squares / max(n-1, 1) / n))
}

// Band is the range that 8 of 10 figures lie in, from the 10th to the 90th
// percentile of one or more figures, straight lines between neighbours. The
// figures are left as they are.
func Band[T ~float64](figures []T) (low, high T) {
	sorted := slices.Sorted(slices.Values(figures))
	at := func(p float64) T {
		place := p * float64(len(sorted)-1)
		below := int(place)
		above := min(below+1, len(sorted)-1)
		return sorted[below] + T(T(place-float64(below))*(sorted[above]-sorted[below]))
	}
	return at(0.1), at(0.9)
}
