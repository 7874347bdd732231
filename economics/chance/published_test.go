package chance

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// The futures of a Latin hypercube, put through a distribution, give back its
// percentiles, mean and standard deviation. The references are the triangular
// distribution and the beta-PERT one, 1+4(c-a)/(b-a) and 1+4(b-c)/(b-a) on
// [a, b] with mode c; their quantiles come from the library gonum. (Closed
// forms, any statistics text; the beta quantiles worked with a separate tool.)
//
// One future lies in each n-th part, so the p·n-th and the next in ascending
// order lie on either side of the true percentile, no further apart than the
// two parts are wide; the mean is off by less than (b-a)/n and the mean square
// by less than (b²-a²)/n. No allowance is made but for the digits printed.
//
// Guards the strata in LatinHypercube: with places drawn at random the
// percentiles are not bracketed.
func TestFuturesGiveADistributionBack(t *testing.T) {
	const n = 2000
	shares := [5]float64{0.05, 0.10, 0.50, 0.90, 0.95}
	pert := func(a, c, b float64) func(float64) float64 {
		beta := distuv.Beta{Alpha: 1 + 4*(c-a)/(b-a), Beta: 1 + 4*(b-c)/(b-a)}
		return func(p float64) float64 { return a + (b-a)*beta.Quantile(p) }
	}
	triangle := func(a, c, b float64) func(float64) float64 {
		return distuv.NewTriangle(a, b, c, nil).Quantile
	}
	for _, row := range []struct {
		name        string
		shape       func(a, c, b float64) func(float64) float64
		a, mode, b  float64
		mean, sd    float64
		percentiles [5]float64
		digit       float64 // of the percentiles
	}{
		{"triangle", triangle, 0, 0.25, 1, 0.416667, 0.212459, [5]float64{0.111803, 0.158114, 0.387628, 0.726139, 0.806351}, 1e-6},
		{"triangle", triangle, 2, 5, 12, 6.333333, 2.094968, [5]float64{3.22474, 3.73205, 6.08392, 9.35425, 10.12917}, 1e-5},
		{"triangle", triangle, 10, 20, 60, 30, 10.801234, [5]float64{15, 17.07107, 28.37722, 45.85786, 50}, 1e-5},
		{"PERT", pert, 0, 0.25, 1, 0.333333, 0.178174, [5]float64{0.07644, 0.11224, 0.31381, 0.58389, 0.65741}, 1e-5},
		{"PERT", pert, 2, 5, 12, 5.666667, 1.821390, [5]float64{2.95704, 3.36200, 5.50999, 8.20755, 8.91551}, 1e-5},
		{"PERT", pert, 10, 20, 60, 25, 8.660254, [5]float64{12.94887, 14.49511, 23.83361, 37.26670, 41.06384}, 1e-5},
	} {
		quantile := row.shape(row.a, row.mode, row.b)
		for seed := range uint64(20) {
			places := LatinHypercube(n, 1, seed)
			figures, squares := make([]float64, n), make([]float64, n)
			for future := range n {
				figures[future] = quantile(places.U(future, 0))
				squares[future] = figures[future] * figures[future]
			}
			mean, standardError := Mean(figures)
			square, _ := Mean(squares)
			near(t, row.name+", mean", mean, row.mean, (row.b-row.a)/n)
			near(t, row.name+", mean square", square, row.mean*row.mean+row.sd*row.sd, (row.b*row.b-row.a*row.a)/n)
			near(t, row.name+", standard deviation", standardError*math.Sqrt(n), row.sd, 1e-3*row.sd)

			slices.Sort(figures)
			for k, p := range shares {
				want, place := row.percentiles[k], int(math.Round(p*n))
				below, above := figures[place-1], figures[place]
				if !(below <= want+row.digit && above >= want-row.digit) {
					t.Errorf("%s %v %v %v, seed %d, percentile %v: %v lies outside %v to %v",
						row.name, row.a, row.mode, row.b, seed, 100*p, want, below, above)
				}
				if wide := quantile(p+1.0/n) - quantile(p-1.0/n); above-below > wide {
					t.Errorf("%s, percentile %v: %v apart, at most %v", row.name, 100*p, above-below, wide)
				}
			}
		}
	}
}

// rankCorrelation is Spearman's, of figures no two of which are equal.
func rankCorrelation(a, b []float64) float64 {
	ranks := func(figures []float64) []float64 {
		order := make([]int, len(figures))
		for i := range order {
			order[i] = i
		}
		slices.SortFunc(order, func(i, j int) int {
			if figures[i] < figures[j] {
				return -1
			}
			return 1
		})
		ranks := make([]float64, len(figures))
		for rank, i := range order {
			ranks[i] = float64(rank)
		}
		return ranks
	}
	n := float64(len(a))
	other, squares := ranks(b), 0.0
	for i, rank := range ranks(a) {
		squares += (rank - other[i]) * (rank - other[i])
	}
	return 1 - 6*squares/(n*(n*n-1))
}

// The inputs are paired at random and nothing is done to correlate them, so the
// rank correlation of any two is what two normal variables of correlation r
// have at r = 0: (6/π)·asin(r/2) = 0, with a standard deviation of exactly
// 1/sqrt(n-1) (Spearman's statistic under random pairing, any text on rank
// methods). Of 20 × 66 pairs none should be off by more than 4.5 of these and
// their mean square should be 1 of them, within 4·sqrt(2/1320).
//
// Guards the shuffle in LatinHypercube and its own stream for each input:
// without either the correlation is 1.
func TestInputsHaveNoRankCorrelation(t *testing.T) {
	const n, inputs, seeds = 500, 12, 20
	squares, pairs := 0.0, 0.0
	for seed := range uint64(seeds) {
		places := LatinHypercube(n, inputs, seed)
		var columns [inputs][]float64
		for input := range inputs {
			for future := range n {
				columns[input] = append(columns[input], places.U(future, input))
			}
			for other := range input {
				r := rankCorrelation(columns[input], columns[other]) * math.Sqrt(n-1)
				if math.Abs(r) > 4.5 {
					t.Errorf("seed %d, inputs %d and %d: rank correlation %v standard deviations", seed, other, input, r)
				}
				squares += r * r
				pairs++
			}
		}
	}
	near(t, "mean square, in standard deviations", squares/pairs, 1, 4*math.Sqrt(2/pairs))
}

// Mixed to a correlation r, the normal scores of two inputs have the rank
// correlation (6/π)·asin(r/2) of a bivariate normal distribution (Pearson 1907;
// the aim of Iman and Conover, Communications in Statistics 11, 1982; both from
// memory): 0.5819 and -0.2876 for 0.6 and -0.3. The mixing is this check's own;
// the futures and their scores are the program's. Each run takes the second
// input as it is and turned round, so that what chance pairing adds to the
// first it takes from the second. The bound is four standard errors as the runs
// show them and the last digit.
//
// Guards the shape of the score in NormalQuantile and the shuffle and the
// streams in LatinHypercube: with a logistic score or the place itself the
// second row fails, without the shuffle both.
func TestRankCorrelationOfMixedScores(t *testing.T) {
	const n, runs = 2000, 150
	for _, row := range []struct{ r, want float64 }{{0.6, 0.5819}, {-0.3, -0.2876}} {
		seen := make([]float64, runs)
		for run := range runs {
			places := LatinHypercube(n, 2, uint64(run))
			first, mixed, turned := make([]float64, n), make([]float64, n), make([]float64, n)
			for future := range n {
				first[future] = NormalQuantile(places.U(future, 0))
				second := math.Sqrt(1-row.r*row.r) * NormalQuantile(places.U(future, 1))
				mixed[future] = row.r*first[future] + second
				turned[future] = row.r*first[future] - second
			}
			seen[run] = (rankCorrelation(first, mixed) + rankCorrelation(first, turned)) / 2
		}
		mean, standardError := Mean(seen)
		near(t, "rank correlation", mean, row.want, 4*standardError+5e-5)
	}
}
