package chart

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

func TestStepIsRound(t *testing.T) {
	for _, c := range []struct {
		span float64
		n    int
		want float64
	}{{10, 5, 2}, {10, 4, 5}, {7, 7, 1}, {0.9, 5, 0.2}, {6400, 6, 2000}, {1, 1, 1}, {12_345_678, 5, 5_000_000}, {0, 5, 1}} {
		if got := Step(c.span, c.n); math.Abs(got-c.want) > 1e-9*c.want {
			t.Errorf("step(%v, %d) = %v, want %v", c.span, c.n, got, c.want)
		}
	}
}

func TestFitPutsTicksInTheRange(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 2000 {
		low := (rng.Float64() - 0.5) * math.Pow(10, float64(rng.IntN(12)-4))
		high := low + rng.Float64()*math.Pow(10, float64(rng.IntN(12)-4))
		n := 1 + rng.IntN(8)
		lo, hi, by := fit(low, high, n)
		marks := ticks(lo, hi, by)
		if lo != low || hi < high || len(marks) < 2 || len(marks) > 2*n+3 {
			t.Errorf("fit(%v, %v, %d) = %v, %v, %v: %v", low, high, n, lo, hi, by, marks)
		}
	}
	for _, low := range []float64{0, 5, -5, 1e15, -1e15, 1e-9} {
		for _, high := range []float64{low, math.Nextafter(low, 2e15), low + 1e-6*math.Abs(low)} {
			if lo, hi, by := fit(low, high, 4); len(ticks(lo, hi, by)) < 2 || len(ticks(lo, hi, by)) > 12 {
				t.Errorf("fit(%v, %v) = %v, %v, %v", low, high, lo, hi, by)
			}
		}
	}
	if got := ticks(-0.3, 0.31, 0.1); !slices.Contains(got, 0) || math.Signbit(got[3]) {
		t.Errorf("ticks %v", got)
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v, step float64
		want    string
	}{
		{0, 1, "0"}, {1250, 50, "1,250"}, {12345678, 1, "12,345,678"}, {0.25, 0.05, "0.25"}, {-3, 1, "−3"},
		{-0.0001, 1, "0"}, {5, 0.5, "5.0"}, {999, 1, "999"}, {1000, 500, "1,000"}, {-1234.5, 0.5, "−1,234.5"},
		{2.5e9, 5e8, "2.5 billion"}, {1e15, 2e14, "1,000,000 billion"}, {0.30000000000000004, 0.1, "0.3"},
	} {
		if got := Number(c.v, c.step); got != c.want {
			t.Errorf("Number(%v, %v) = %q, want %q", c.v, c.step, got, c.want)
		}
	}
}
