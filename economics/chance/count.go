package chance

import (
	"math"
	"slices"
)

// ShareOut scales counts that add up to total into whole counts that add up
// to 100: each is rounded down, and those with the largest remainders get the
// rest (Hamilton's method of apportionment), of equal ones the first.
func ShareOut(counts []int, total int) []int {
	shares := make([]int, len(counts))
	order := make([]int, len(counts))
	left := 100
	for i, count := range counts {
		shares[i] = 100 * count / total
		left -= shares[i]
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return 100*counts[b]%total - 100*counts[a]%total })
	for _, i := range order[:left] {
		shares[i]++
	}
	return shares
}

// Mean is the average of one or more figures, and its standard error if they
// are independent, s/sqrt(n) with s their standard deviation; 0 for a single one.
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
