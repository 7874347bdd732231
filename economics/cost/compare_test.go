package cost

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/quantity"
)

// Sullivan, Wicks and Koelling, Engineering Economy, 17th ed., problem 8.1: an
// extra 800 for a more efficient cooling unit saves 100 a year for 10 years at
// a real rate of 2 %; justified. The measures are worked by hand from the
// formulas of 10 CFR 436.20 to 436.22.
//
// Guards the signs in Compare, the ratio's order in SavingsToInvestment and
// the exponent in adjustedReturn.
func TestCompareTextbookCoolingUnit(t *testing.T) {
	c := Compare([]Line{{Yearly: 100}}, []Line{{First: 800}}, 10, 0.02)
	near(t, "net savings", float64(c.NetSavings()), 98.26, 0.005)
	ratio, ok := c.SavingsToInvestment()
	near(t, "savings to investment", ratio, 1.12282, 0.5e-5)
	yearly, ok2 := c.AdjustedReturn()
	near(t, "adjusted return", float64(yearly), 0.031885, 0.5e-6)
	simple, ok3 := c.SimplePayback()
	near(t, "simple payback", float64(simple), 8, 1e-12)
	if !ok || !ok2 || !ok3 {
		t.Error("a measure is missing")
	}
}

// With one outlay today, the adjusted return is what spreadsheets call the
// modified internal return at one reinvestment rate. Source: Microsoft, MIRR
// function (Excel): 13 %, -5 % (three years) and 13 % again at 14 %.
func TestAdjustedReturnOfDocumentedFlows(t *testing.T) {
	for _, row := range []struct {
		incomes Flows
		rate    Rate
		want    float64
	}{
		{gains(0, 39000, 30000, 21000, 37000, 46000), 0.12, 0.126094},
		{gains(0, 39000, 30000, 21000), 0.12, -0.048045},
		{gains(0, 39000, 30000, 21000, 37000, 46000), 0.14, 0.134759},
	} {
		ratio := float64(-row.incomes.PresentCost(row.rate)) / 120000
		near(t, "adjusted return", float64(adjustedReturn(ratio, len(row.incomes)-1, row.rate)), row.want, 0.5e-6)
	}
}

// Guards payback: with a straight line within the year, without the renewals
// and the sale, undiscounted in both or without the allowance for rounding,
// rows fail.
func TestPayback(t *testing.T) {
	const closed = "closed form -ln(1-I·d/S)/ln(1+d), ASTM E1121, from memory"
	const hand = "worked by hand"
	for _, row := range []struct {
		name             string
		base, option     Line
		years            int
		d                Rate
		simple, discount float64 // 0 for none
		source           string
	}{
		{"even", Line{Yearly: 2000}, Line{First: 8000}, 10, 0.05, 4, 4.5735, closed},
		{"too late", Line{Yearly: 2000}, Line{First: 8000}, 4, 0.05, 4, 0, closed},
		{"interest eats it", Line{Yearly: 400}, Line{First: 8000}, 100, 0.05, 20, 0, closed},
		{"within the first year", Line{Yearly: 100}, Line{First: 50}, 5, 0, 0.5, 0.5, hand},
		{"with a renewal", Line{Yearly: 40}, Line{First: 100, Life: 2, Renewal: 31}, 10, 0, 4.05, 4.05, "by hand: owed 60, 51, 11, 2 at the ends of years 1 to 4, then 2 of 40"},
		{"to the cent, by the end", Line{Yearly: 0.1}, Line{First: 0.7}, 7, 0, 7, 7, "by hand; in binary 0.7 less seven times 0.1 leaves a little"},
		{"by the sale", Line{Yearly: 10}, Line{First: 100, Resale: 0.8}, 5, 0, 5, 5, hand},
		{"costs no more at first", Line{First: 10, Yearly: 2}, Line{First: 10}, 5, 0.05, 0, 0, "nothing to pay back"},
		{"never saves", Line{}, Line{First: 10, Yearly: 1}, 5, 0.05, 0, 0, hand},
	} {
		c := Compare([]Line{row.base}, []Line{row.option}, row.years, row.d)
		for _, measure := range []struct {
			name    string
			payback func() (quantity.Year, bool)
			want    float64
		}{{"simple", c.SimplePayback, row.simple}, {"discounted", c.DiscountedPayback, row.discount}} {
			got, ok := measure.payback()
			if ok != (measure.want > 0) {
				t.Errorf("%s, %s (%s): %v, %v", row.name, measure.name, row.source, got, ok)
			}
			near(t, row.name+", "+measure.name+" ("+row.source+")", float64(got), measure.want, 0.5e-4)
		}
	}
}

func randomLines(random *rand.Rand) []Line {
	lines := make([]Line, 1+random.IntN(4))
	for i := range lines {
		lines[i] = Line{
			First:   quantity.Money(random.Float64() * 2000),
			Yearly:  quantity.Money(random.Float64() * 300),
			Life:    quantity.Year(random.Float64() * 12),
			Renewal: quantity.Money(random.Float64() * 500),
		}
		lines[i].Resale = quantity.Fraction(random.Float64() * 0.4)
	}
	return lines
}

// The agreement rule, 10 CFR 436.18(c): lower life-cycle cost, net savings
// above 0, savings-to-investment above 1 and an adjusted return above the rate
// say the same when the extra investment is above zero.
func TestMeasuresAgree(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	better, worse := 0, 0
	for range 4000 {
		base, option := randomLines(random), randomLines(random)
		years, d := 1+random.IntN(25), Rate(random.Float64()*0.12-0.01)
		c := Compare(base, option, years, d)

		ours, theirs := Schedule(option, years, nil).PresentCost(d), Schedule(base, years, nil).PresentCost(d)
		near(t, "net savings", float64(c.NetSavings()), float64(theirs-ours), 1e-8*float64(theirs+ours))
		if math.Abs(float64(theirs-ours)) < 1e-6 {
			continue
		}
		ratio, ok := c.SavingsToInvestment()
		if ok != (c.ExtraInvestment > 0) {
			t.Fatalf("extra investment %v has a ratio: %v", c.ExtraInvestment, ok)
		}
		if !ok {
			continue
		}
		cheaper := ours < theirs
		if cheaper {
			better++
		} else {
			worse++
		}
		if (c.NetSavings() > 0) != cheaper || (ratio > 1) != cheaper {
			t.Fatalf("cheaper %v, net savings %v, ratio %v", cheaper, c.NetSavings(), ratio)
		}
		yearly, ok := c.AdjustedReturn()
		if ok != (ratio >= 0) || (ok && (yearly > d) != cheaper) {
			t.Fatalf("cheaper %v, ratio %v, adjusted return %v at %v", cheaper, ratio, yearly, d)
		}
	}
	if better < 200 || worse < 200 {
		t.Errorf("only %d better and %d worse options tried", better, worse)
	}
}

// Payback within the horizon is the first year end at which the discounted
// balance is made good, counted here year by year without the ledger's code.
func TestPaybackYear(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	paid := 0
	for range 4000 {
		base, option := randomLines(random), randomLines(random)
		years, d := 1+random.IntN(25), Rate(random.Float64()*0.12)
		ours, theirs := Schedule(option, years, nil), Schedule(base, years, nil)
		want := 0
		if balance := float64(theirs[0] - ours[0]); balance < 0 {
			for year := 1; year <= years && want == 0; year++ {
				balance += float64(theirs[year]-ours[year]) / math.Pow(1+float64(d), float64(year))
				if balance >= 0 {
					want = year
				}
			}
		}
		got, ok := Compare(base, option, years, d).DiscountedPayback()
		if ok != (want > 0) || ok && int(math.Ceil(float64(got)-1e-9)) != want {
			t.Fatalf("payback %v, %v; want in year %d of %d", got, ok, want, years)
		}
		if ok {
			paid++
		}
	}
	if paid < 200 {
		t.Errorf("only %d paybacks tried", paid)
	}
}

func TestNoMeasureIsInfinite(t *testing.T) {
	same := []Line{{First: 0.1, Yearly: 0.7, Life: 3, Renewal: 0.3}}
	c := Compare(same, same, 10, 0.03)
	if ratio, ok := c.SavingsToInvestment(); ok {
		t.Errorf("the same option twice has a ratio %v", ratio)
	}
	if _, ok := c.AdjustedReturn(); ok {
		t.Error("the same option twice has a return")
	}
	c = Compare([]Line{{Yearly: 1e10}}, []Line{{First: 5e-324}}, 10, 0.03)
	if ratio, ok := c.SavingsToInvestment(); ok {
		t.Errorf("an investment of nothing has a ratio %v", ratio)
	}
}

// What is not there is nothing, whichever way it is not there. Guards the
// returns of SavingsToInvestment and AdjustedReturn beside false, and both signs
// of an overflow.
func TestNoRatioIsNothing(t *testing.T) {
	for name, c := range map[string]Comparison{
		"no investment":                      {OperatingSavings: 100},
		"next to none, saving":               {ExtraInvestment: 5e-324, OperatingSavings: 1},
		"next to none, costing":              {ExtraInvestment: 5e-324, OperatingSavings: -1},
		"costs more to run, so has no yield": {ExtraInvestment: 100, OperatingSavings: -1},
	} {
		if ratio, ok := c.SavingsToInvestment(); !ok && ratio != 0 || ok != (c.ExtraInvestment == 100) {
			t.Errorf("%s: ratio %v, %v", name, ratio, ok)
		}
		if yearly, ok := c.AdjustedReturn(); ok || yearly != 0 {
			t.Errorf("%s: return %v, %v", name, yearly, ok)
		}
	}
}
