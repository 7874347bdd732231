package chart

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"coldreckon/report/sheet"
)

func TestStepIsRound(t *testing.T) {
	for _, c := range []struct {
		span float64
		n    int
		want float64
	}{{10, 5, 2}, {10, 4, 5}, {7, 7, 1}, {0.9, 5, 0.2}, {6400, 6, 2000}, {1, 1, 1}, {12_345_678, 5, 5_000_000}, {0, 5, 1}} {
		if got := step(c.span, c.n); math.Abs(got-c.want) > 1e-9*c.want {
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

func TestApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for range 3000 {
		var labels []*label
		for range 1 + rng.IntN(6) {
			labels = append(labels, &label{want: 100 * rng.Float64(), height: 2 + 6*rng.Float64()})
		}
		if !apart(labels, 0, 100) {
			t.Fatal("labels that fit are said not to")
		}
		slices.SortStableFunc(labels, func(a, b *label) int {
			if a.want < b.want {
				return -1
			}
			return 1
		})
		edge := 0.0
		for i, l := range labels {
			if l.got-l.height/2 < edge-1e-9 || l.got+l.height/2 > 100+1e-9 {
				t.Fatalf("label %d of %d: overlap or outside", i, len(labels))
			}
			edge = l.got + l.height/2
		}
		if len(labels) == 1 && labels[0].want > 10 && labels[0].want < 90 && math.Abs(labels[0].got-labels[0].want) > 1e-9 {
			t.Fatal("a lone label moved without need")
		}
	}
	if apart([]*label{{height: 60}, {height: 60}}, 0, 100) {
		t.Error("labels that do not fit are said to")
	}
	// Two that wish for one place share it evenly.
	a, b := &label{want: 50, height: 4}, &label{want: 50, height: 4}
	apart([]*label{a, b}, 0, 100)
	if a.got != 48 || b.got != 52 {
		t.Errorf("placed at %v and %v, want 48 and 52", a.got, b.got)
	}
}

// The area between a line and a level is that of its positive part.
func TestBeyond(t *testing.T) {
	line := []sheet.Point{{X: 0, Y: 10}, {X: 10, Y: 0}, {X: 20, Y: 10}, {X: 30, Y: 10}, {X: 40, Y: 0}}
	area := func(shapes [][]sheet.Point) float64 {
		var sum float64
		for _, s := range shapes {
			twice := 0.0
			for i, p := range s {
				q := s[(i+1)%len(s)]
				twice += p.X*q.Y - q.X*p.Y
			}
			sum += math.Abs(twice) / 2
		}
		return sum
	}
	// Above y = 5 on paper: a triangle 10 wide and 5 high, and half of one.
	if got := beyond(line, 5, false); len(got) != 2 || math.Abs(area(got)-37.5) > 1e-9 {
		t.Errorf("above: %v, area %v", got, area(got))
	}
	// Below it: a half triangle, then a trapezium from 15 to 35.
	if got := beyond(line, 5, true); len(got) != 2 || math.Abs(area(got)-(12.5+75)) > 1e-9 {
		t.Errorf("below: %v, area %v", got, area(got))
	}
	if got := beyond(line, -1, false); len(got) != 0 {
		t.Errorf("never beyond: %v", got)
	}
}
