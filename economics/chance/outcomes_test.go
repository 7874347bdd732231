package chance

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// tableOf lays out losses[option][state], each state filling as many futures as
// its weight says.
func tableOf(weights []int, losses [][]float64) *Outcomes {
	futures := 0
	for _, weight := range weights {
		futures += weight
	}
	o := NewOutcomes(futures, make([]quantity.Money, len(losses)))
	future := 0
	for state, weight := range weights {
		for range weight {
			for option := range losses {
				o.Set(future, option, quantity.Money(losses[option][state]))
			}
			future++
		}
	}
	return o
}

// negate turns a table of gains into one of losses.
func negate(gains [][]float64) [][]float64 {
	for _, row := range gains {
		for i := range row {
			row[i] = -row[i]
		}
	}
	return gains
}

// Guards the regret in Judge: without the subtraction of the lowest loss, or
// with the highest, every row fails. An option's expected regret is its
// expected loss less the expected loss under perfect information.
func TestTextbookDecisionTables(t *testing.T) {
	for _, row := range []struct {
		name      string
		weights   []int
		losses    [][]float64
		expected  []float64 // losses
		perfect   float64   // expected loss when the state is known
		preferred int
		evpi      float64
		source    string
	}{
		{"storage sheds, thousands", []int{1, 1}, negate([][]float64{{200, -180}, {100, -20}, {0, 0}}),
			[]float64{-10, -40, 0}, -100, 1, 60, "Render and Stair, Quantitative Analysis for Management"},
		{"three costs", []int{2, 4, 4}, [][]float64{{50, 60, 70}, {45, 55, 65}, {40, 60, 85}},
			[]float64{62, 57, 66}, 56, 1, 1, "exercise with a table of costs at solvely.ai/973690977: expected costs as published, the rest worked by hand"},
		{"three projects, thousands", []int{2, 5, 3}, negate([][]float64{{300, 400, 500}, {-100, 900, 1000}, {-400, 300, 3000}}),
			[]float64{-410, -730, -970}, -1410, 2, 440, "inputs of exercise brainmass.com/130024, answers worked by hand"},
		{"books at 20, sold at 30, returned at 4", []int{20, 35, 25, 20}, negate([][]float64{
			{500, 500, 500, 500}, {-300, 1000, 1000, 1000}, {-1100, 200, 1500, 1500}, {-1900, -600, 700, 2000}}),
			[]float64{-500, -740, -525, 15}, -1225, 1, 485, "inputs of a bookshop exercise at homeworkmarket.com, answers worked by hand"},
	} {
		j := tableOf(row.weights, row.losses).Judge()
		if j.Preferred != row.preferred {
			t.Errorf("%s: option %d preferred, want %d (%s)", row.name, j.Preferred, row.preferred, row.source)
		}
		near(t, row.name+", EVPI ("+row.source+")", float64(j.EVPI), row.evpi, 1e-9)
		for option, expected := range row.expected {
			near(t, row.name+", expected regret", float64(j.ExpectedRegret[option]), expected-row.perfect, 1e-9)
		}
	}
}

// benefitTable has two options: nothing, and one whose benefit over it is given
// by future.
func benefitTable(benefit []float64) *Outcomes {
	o := NewOutcomes(len(benefit), []quantity.Money{0, 1})
	for future, b := range benefit {
		o.Set(future, 1, quantity.Money(-b))
	}
	return o
}

// Two options whose difference is normal with mean m and standard deviation s
// have an EVPI of s·L(|m|/s), L the unit normal loss (Raiffa and Schlaifer
// 1961; formula in the vignette of the package predtools), worked with a
// separate tool.
func TestNormalBenefit(t *testing.T) {
	const n = 200000
	for _, row := range []struct{ mean, sd, evpi float64 }{
		{100, 300, 76.2708},
		{0, 1, 0.398942},
		{-50, 200, 57.2689},
		{500, 500, 41.6577},
	} {
		benefit := make([]float64, n)
		for i := range benefit {
			benefit[i] = row.mean + row.sd*NormalQuantile((float64(i)+0.5)/n)
		}
		j := benefitTable(benefit).Judge()
		near(t, "EVPI", float64(j.EVPI), row.evpi, 1e-4*row.evpi)
		if row.mean != 0 && (j.Preferred == 1) != (row.mean > 0) {
			t.Errorf("mean %v: option %d preferred", row.mean, j.Preferred)
		}
	}
}

func TestTiesGoToTheLowerFirstCost(t *testing.T) {
	for _, row := range []struct {
		firstCost []quantity.Money
		want      int
	}{
		{[]quantity.Money{500, 100, 300}, 1},
		{[]quantity.Money{100, 500, 300}, 0},
		{[]quantity.Money{200, 100, 100}, 1},
	} {
		o := NewOutcomes(3, row.firstCost)
		for future := range 3 {
			for option := range 3 {
				o.Set(future, option, 50)
			}
		}
		j := o.Judge()
		if j.Preferred != row.want {
			t.Errorf("first costs %v: preferred %d, want %d", row.firstCost, j.Preferred, row.want)
		}
	}
}

// randomOutcomes has distinct first costs, so that no tie is left open.
func randomOutcomes(random *rand.Rand) (*Outcomes, [][]float64) {
	futures, options := 1+random.IntN(400), 1+random.IntN(5)
	firstCost := make([]quantity.Money, options)
	for option := range options {
		firstCost[option] = quantity.Money(10*option + random.IntN(10))
	}
	random.Shuffle(options, func(a, b int) { firstCost[a], firstCost[b] = firstCost[b], firstCost[a] })
	o := NewOutcomes(futures, firstCost)
	inputs := [][]float64{make([]float64, futures), make([]float64, futures), make([]float64, futures)}
	for future := range futures {
		inputs[0][future] = random.NormFloat64()
		inputs[1][future] = float64(random.IntN(3))
		inputs[2][future] = 4
		for option := range options {
			o.Set(future, option, quantity.Money(math.Round(20*(random.NormFloat64()+inputs[0][future]*float64(option)+inputs[1][future]))))
		}
	}
	return o, inputs
}

func TestJudgementHoldsTogether(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 6))
	for range 600 {
		o, inputs := randomOutcomes(random)
		j := o.Judge()
		for option, regret := range j.ExpectedRegret {
			if regret < 0 || regret < j.ExpectedRegret[j.Preferred] {
				t.Fatalf("option %d preferred, regrets %v; option %d's is less", j.Preferred, j.ExpectedRegret, option)
			}
		}
		if j.EVPI != j.ExpectedRegret[j.Preferred] || j.EVPIError < 0 {
			t.Fatalf("EVPI %v ± %v, regrets %v", j.EVPI, j.EVPIError, j.ExpectedRegret)
		}
		for i, input := range inputs {
			worth := j.EVPPI(input)
			if !(worth >= 0 && worth <= j.EVPI) {
				t.Fatalf("input %d: EVPPI %v, EVPI %v", i, worth, j.EVPI)
			}
			s, ok := j.SwitchingValue(input)
			if ok && !(s.At >= slices.Min(input) && s.At <= slices.Max(input) && s.Beyond >= leastBeyond && s.Beyond < 1) {
				t.Fatalf("input %d: switch %+v", i, s)
			}
			if i == 2 && (worth != 0 || ok) {
				t.Fatalf("an input that never varies: EVPPI %v, switch %v", worth, ok)
			}
		}
	}
}

// No result depends on the order in which the options are named.
func TestOrderOfOptionsDoesNotMatter(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		o, inputs := randomOutcomes(random)
		options := len(o.firstCost)
		place := random.Perm(options)
		firstCost := make([]quantity.Money, options)
		for option, to := range place {
			firstCost[to] = o.firstCost[option]
		}
		futures := len(o.cells) / options
		moved := NewOutcomes(futures, firstCost)
		for i, cell := range o.cells {
			moved.Set(i/options, place[i%options], cell)
		}
		a, b := o.Judge(), moved.Judge()
		if place[a.Preferred] != b.Preferred || a.EVPI != b.EVPI {
			t.Fatalf("preferred %d and %d, EVPI %v and %v", place[a.Preferred], b.Preferred, a.EVPI, b.EVPI)
		}
		for option, to := range place {
			if a.ExpectedRegret[option] != b.ExpectedRegret[to] {
				t.Fatalf("option %d: regret %v and %v", option, a.ExpectedRegret[option], b.ExpectedRegret[to])
			}
		}
		if a.EVPPI(inputs[0]) != b.EVPPI(inputs[0]) {
			t.Fatal("EVPPI differs")
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 1))
	o := NewOutcomes(2000, []quantity.Money{0, 1, 2, 3})
	input := make([]float64, 2000)
	for future := range input {
		input[future] = random.NormFloat64()
		for option := range 4 {
			o.Set(future, option, quantity.Money(float64(option)*input[future]+random.NormFloat64()))
		}
	}
	b.Run("table", func(b *testing.B) {
		for b.Loop() {
			o.Judge()
		}
	})
	j := o.Judge()
	b.Run("EVPPI", func(b *testing.B) {
		for b.Loop() {
			j.EVPPI(input)
		}
	})
}
