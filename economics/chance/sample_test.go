package chance

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestLatinHypercubeFillsEveryStratumOnce(t *testing.T) {
	const n, inputs = 700, 9
	s := LatinHypercube(n, inputs, 42)
	for input := range inputs {
		var seen [n]bool
		for future := range n {
			u := s.U(future, input)
			if !(u > 0 && u < 1) {
				t.Fatalf("place %v", u)
			}
			stratum := int(u * n)
			if seen[stratum] {
				t.Fatalf("input %d: stratum %d twice", input, stratum)
			}
			seen[stratum] = true
		}
	}
}

// steady is a source of one number.
type steady uint64

func (s steady) Uint64() uint64 { return uint64(s) }

// The least and the greatest number of a source lie within the first and the
// last of a million strata. Guards openUnit.
func TestOpenUnitKeepsOffItsEnds(t *testing.T) {
	for _, bits := range []steady{0, math.MaxUint64} {
		u := openUnit(rand.New(bits))
		if !(u > 0) || !(1<<20-1+u < 1<<20) {
			t.Errorf("source of %x: %v", uint64(bits), u)
		}
	}
}

func TestLatinHypercubeIsDeterminedBySeed(t *testing.T) {
	a, b, wider, other := LatinHypercube(50, 3, 7), LatinHypercube(50, 3, 7), LatinHypercube(50, 5, 7), LatinHypercube(50, 3, 8)
	differs := false
	for future := range 50 {
		for input := range 3 {
			if a.U(future, input) != b.U(future, input) || a.U(future, input) != wider.U(future, input) {
				t.Fatal("the same seed gave other places")
			}
			differs = differs || a.U(future, input) != other.U(future, input)
		}
	}
	if !differs {
		t.Error("another seed gave the same places")
	}
}

// The inputs are paired at random: the correlation of two of them has mean 0
// and standard deviation 1/sqrt(n-1) (any statistics text).
func TestLatinHypercubePairsAtRandom(t *testing.T) {
	const n, inputs = 2000, 12
	s := LatinHypercube(n, inputs, 3)
	squares, pairs := 0.0, 0.0
	for a := range inputs {
		for b := range a {
			sum := 0.0
			for future := range n {
				sum += (s.U(future, a) - 0.5) * (s.U(future, b) - 0.5)
			}
			r := sum / n * 12
			if math.Abs(r) > 5/math.Sqrt(n) {
				t.Errorf("inputs %d and %d: correlation %v", a, b, r)
			}
			squares += r * r
			pairs++
		}
	}
	near(t, "root mean square correlation times sqrt(n)", math.Sqrt(squares/pairs*n), 1, 0.25)
}

// The mean of the sum of five uniform inputs over 100 futures has a standard
// error of sqrt(5/12/100) = 0.06455 when drawn at random and of 1/100 of that
// when spread evenly, for each stratum is 1/100 as wide (worked from the
// variance of a uniform distribution; for the method McKay, Beckman and
// Conover 1979, from memory).
//
// Guards openUnit's use within the stratum: with the middle of each stratum
// instead, the second error is nothing; without strata it is the first.
func TestLatinHypercubeErrorOfASum(t *testing.T) {
	const n, inputs, runs = 100, 5, 1500
	plain, spread := make([]float64, runs), make([]float64, runs)
	random := rand.New(rand.NewPCG(9, 9))
	for run := range runs {
		s := LatinHypercube(n, inputs, uint64(run))
		for future := range n {
			for input := range inputs {
				spread[run] += s.U(future, input) / n
				plain[run] += random.Float64() / n
			}
		}
	}
	deviation := func(means []float64) float64 {
		_, standardError := Mean(means)
		return standardError * math.Sqrt(runs)
	}
	near(t, "error at random", deviation(plain), 0.064550, 0.05*0.064550)
	near(t, "error when spread", deviation(spread), 0.00064550, 0.05*0.00064550)
}

func BenchmarkLatinHypercube(b *testing.B) {
	for b.Loop() {
		LatinHypercube(2000, 20, 1)
	}
}
