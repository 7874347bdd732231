package cost

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/quantity"
)

// internalReturn finds the rate at which flows are worth nothing, for checks
// against the documented examples of spreadsheets. The program has no use for it.
func internalReturn(f Flows) float64 {
	rate, ok := Crossing(func(d float64) float64 { return float64(f.PresentCost(Rate(d))) }, -0.9, 2)
	if !ok {
		return math.NaN()
	}
	return rate
}

// gains turns incomes, as published examples write them, into flows.
func gains(incomes ...float64) Flows {
	flows := make(Flows, len(incomes))
	for i, income := range incomes {
		flows[i] = quantity.Money(-income)
	}
	return flows
}

// Guards the recurrence in PresentCost: with year 0 discounted too, run from
// year 0 instead of the last, or with step = 1+d, rows fail.
func TestPresentCost(t *testing.T) {
	const (
		a94      = "OMB Circular A-94 (1992) appendix B, sample table, from memory"
		green    = "HM Treasury Green Book 2003, discounting annex, from memory"
		numpy    = "numpy-financial documentation, npv: first value today"
		excel    = "Microsoft, NPV function (Excel): first value a year from now"
		excelOld = "Microsoft, NPV function (Excel), from memory"
	)
	for _, row := range []struct {
		name      string
		d         Rate
		flows     Flows
		worth     float64 // as published: incomes positive
		tolerance float64
		source    string
	}{
		{"costs", 0.07, gains(0, -10, -20, -30, -30, -20, -10, -5, -5, -5, -5), -106.40, 0.005, a94},
		{"benefits", 0.07, gains(0, 0, 0, 5, 10, 30, 40, 40, 40, 40, 25), 142.41, 0.005, a94},
		{"net", 0.07, gains(0, -10, -20, -25, -20, 10, 30, 35, 35, 35, 20), 36.01, 0.005, a94},
		{"A", 0.035, gains(-10, 2.5, 2.5, 2.5, 2.5), -0.82, 0.005, green},
		{"B", 0.035, gains(-5, 1.5, 1.5, 1.5, 1.5), 0.51, 0.005, green},
		{"four years", 0.08, gains(-40000, 5000, 8000, 12000, 30000), 3065.22267, 1e-5, numpy},
		{"first a year from now", 0.10, gains(0, -10000, 3000, 4200, 6800), 1188.4434123352, 1e-9, excel},
		{"with a first outlay", 0.08, gains(-40000, 8000, 9200, 10000, 12000, 14500), 1922.06, 0.005, excelOld},
		{"and a late loss", 0.08, gains(-40000, 8000, 9200, 10000, 12000, 14500, -9000), -3749.47, 0.005, excelOld},
		{"three even years", 0.05, gains(-10000, 5000, 5000, 5000), 3616.24, 0.005, "inputs: Social Cost-Benefit Analysis, University of Queensland open textbook, ch. 3; answer worked by hand"},
	} {
		near(t, row.name+" ("+row.source+")", float64(-row.flows.PresentCost(row.d)), row.worth, row.tolerance)
	}
}

// The documented rates make PresentCost vanish.
func TestPresentCostAtInternalReturn(t *testing.T) {
	const excel, numpy = "Microsoft, IRR function (Excel)", "numpy-financial documentation, irr"
	for _, row := range []struct {
		flows     Flows
		rate      float64
		tolerance float64
		source    string
	}{
		{gains(-70000, 12000, 15000, 18000, 21000), -0.021, 0.0005, excel},
		{gains(-70000, 12000, 15000, 18000, 21000, 26000), 0.087, 0.0005, excel},
		{gains(-70000, 12000, 15000), -0.444, 0.0005, excel},
		{gains(-250000, 100000, 150000, 200000, 250000, 300000), 0.5672303344358536, 1e-8, numpy},
		{gains(-100, 39, 59, 55, 20), 0.28095, 0.5e-5, numpy},
		{gains(-100, 0, 0, 74), -0.0955, 0.5e-4, numpy},
		{gains(-100, 100, 0, 7), 0.06206, 0.5e-5, numpy},
		{gains(-800, 100, 100, 100, 100, 100, 100, 100, 100, 100, 100), 0.043, 0.0005, "Sullivan, Wicks and Koelling, Engineering Economy, 17th ed., problem 8.1"},
	} {
		near(t, row.source, internalReturn(row.flows), row.rate, row.tolerance)
	}
}

// Guards YearlyEquivalent's CRF and horizon: with the number of flows instead
// of the number of years, every row fails.
func TestYearlyEquivalent(t *testing.T) {
	for _, row := range []struct {
		name      string
		line      Line
		years     int
		d         Rate
		want      float64
		tolerance float64
		source    string
	}{
		{"M1", Line{First: 20000, Yearly: 8500, Resale: 5000.0 / 20000}, 3, 0.15, 15820, 0.5, "textbook problem, two machines at 15 %, as worked at wizedu.com/questions/1097152"},
		{"M2", Line{First: 15000, Yearly: 7000, Resale: 3000.0 / 15000}, 2, 0.15, 14831.2, 0.5, "as above, printed with rounded factors"},
		{"A", Line{First: 15000, Yearly: 1500, Resale: 3000.0 / 15000}, 2, 0.10, 8714.4, 0.5, "textbook problem, machine A at 10 %, as worked at techwhiff.com/72677, printed with rounded factors"},
		{"A", Line{First: 7000, Yearly: 2000, Resale: 3000.0 / 7000}, 5, 0.08, 3241.83, 0.005, "inputs and choice of A: textbook problem at justaaa.com/240549; figures worked by hand"},
		{"B", Line{First: 9000, Yearly: 2400, Resale: 1600.0 / 9000}, 10, 0.08, 3630.82, 0.005, "inputs and choice of A: textbook problem at justaaa.com/240549; figures worked by hand"},
	} {
		flows := Schedule([]Line{row.line}, row.years, nil)
		near(t, row.name+" ("+row.source+")", float64(flows.YearlyEquivalent(row.d)), row.want, row.tolerance)
	}
	near(t, "110 after one year", float64((Flows{0, 110}).YearlyEquivalent(0.1)), 110, 1e-9)
	if got := (Flows{120}).YearlyEquivalent(0.03); got != 120 {
		t.Errorf("year 0 alone: %v, want its present cost", got)
	}
	if got := (Flows{}).YearlyEquivalent(0.03); got != 0 {
		t.Errorf("no flows: %v, want 0", got)
	}
}

// Constant money at a real rate and current money at the nominal rate give the
// same present cost (10 CFR 436.14 allows either; NIST Handbook 135, from memory).
func TestInflationLeavesPresentCostAlone(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	for range 300 {
		d, inflation := Rate(random.Float64()*0.1), Rate(random.Float64()*0.2-0.02)
		constant := make(Flows, 1+random.IntN(25))
		current := make(Flows, len(constant))
		for year := range constant {
			constant[year] = quantity.Money(random.Float64() * 1000)
			current[year] = constant[year] * quantity.Money(SCA(inflation, quantity.Year(year)))
		}
		want := float64(constant.PresentCost(d))
		near(t, "present cost", float64(current.PresentCost(Nominal(d, inflation))), want, 1e-9*want)
	}
}

func TestReckoningAllocatesNothing(t *testing.T) {
	lines := []Line{{First: 900, Renewal: 900, Life: 3.7, Resale: 0.1}, {Yearly: 60}}
	buffer := make(Flows, 0, 21)
	if n := testing.AllocsPerRun(100, func() {
		Schedule(lines, 20, buffer).YearlyEquivalent(0.03)
	}); n != 0 {
		t.Errorf("%v allocations a run, want none", n)
	}
}

func BenchmarkScheduleAndSpread(b *testing.B) {
	lines := make([]Line, 12)
	for i := range lines {
		lines[i] = Line{First: 100, Yearly: 10, Renewal: 50, Life: 4.5}
	}
	buffer := make(Flows, 0, 11)
	for b.Loop() {
		Schedule(lines, 10, buffer).YearlyEquivalent(0.03)
	}
}
