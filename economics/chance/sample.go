package chance

import "math/rand/v2"

// Samples are the places, between 0 and 1, of n futures in the distributions of
// several independent inputs.
type Samples struct {
	futures int
	places  []float64 // input by input
}

// LatinHypercube spreads n futures, 1 to 2^20, over a number of inputs so that
// each n-th part of every input's distribution holds exactly one future, at a
// random place within it, and the inputs are paired at random (McKay, Beckman
// and Conover, Technometrics 21, 1979; from memory). The same arguments give
// the same futures, and an input's places depend on its own number, n and the
// seed only: more inputs do not move those before them.
func LatinHypercube(n, inputs int, seed uint64) Samples {
	s := Samples{futures: n, places: make([]float64, n*inputs)}
	for input := range inputs {
		random := rand.New(rand.NewPCG(seed, uint64(input)))
		column := s.places[input*n : (input+1)*n]
		for stratum := range column {
			column[stratum] = (float64(stratum) + openUnit(random)) / float64(n)
		}
		random.Shuffle(n, func(i, j int) { column[i], column[j] = column[j], column[i] })
	}
	return s
}

// openUnit is a random number above 0 and below 1, coarse enough that adding a
// stratum's number below 2^20 cannot round it into the next stratum.
func openUnit(random *rand.Rand) float64 {
	return (float64(random.Uint32()) + 0.5) / (1 << 32)
}

// U is the place of a future in an input's distribution, above 0 and below 1,
// for Quantile. Futures and inputs count from 0.
func (s Samples) U(future, input int) float64 { return s.places[input*s.futures+future] }
