package economics

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"coldreckon/economics/cost"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// Outcome is what a proposal came to in one future.
type Outcome struct {
	Facts    Facts
	Failing  []Criterion // why it does not work; empty when it does
	Lines    []CostLine
	Flows    cost.Flows // year 0 first, costs positive
	First    float64
	PerYear  float64
	Present  float64 // life-cycle cost
	Yearly   float64 // its yearly equivalent
	ColdDays float64 // a year
	Year     aYear
}

// Works reports whether no criterion failed.
func (o *Outcome) Works() bool { return len(o.Failing) == 0 }

// PerColdDay gives the yearly equivalent over the year's cold days; ok is
// false when there are none.
func (o *Outcome) PerColdDay() (money float64, ok bool) {
	if o.ColdDays < 0.5 {
		return 0, false
	}
	return o.Yearly / o.ColdDays, true
}

// typicalYears is the number of years of weather behind a figure "as told".
const typicalYears = 20

// seasons holds what simulating needs, for use again and again.
type seasons struct {
	weather season.Weather
	tally   season.Tally
	base    season.Tally
}

// stream names a run of weather: the years First, First + 1, ... of a seed.
type stream struct{ seed, first uint64 }

// live simulates years of weather into the tally. Weather depends on the
// stream alone, so every proposal meets the same.
func (p *proposal) live(f *Future, from stream, years int, w *seasons) aYear {
	s := p.setup(f)
	w.tally.Reset()
	w.base.Reset()
	var rng rand.PCG
	draw := rand.New(&rng)
	var ice season.Icing
	var fridge season.Refrigerator
	switch {
	case p.option == IceOnly:
		ice = p.icing(&s)
	case p.unit != nil:
		fridge = p.refrigerator(f)
	}
	for year := range years {
		rng.Seed(from.seed, from.first+uint64(year))
		p.world.plan.Draw(&w.weather, p.world.sky, draw, 1)
		switch {
		case p.option == IceOnly:
			s.Ice(&w.weather, ice, &w.tally, nil)
		case p.unit != nil:
			s.Unit(&w.weather, fridge, &w.tally, nil)
			s.Stores(&w.weather, &w.base)
		default:
			s.Stores(&w.weather, &w.tally)
		}
	}
	base := &w.base
	if p.unit == nil {
		base = &w.tally // ice and dry stores add nothing to the boat's electricity
	}
	y := p.average(&w.tally, base, float64(years), float64(s.Power.Bank.FullWh))
	if p.option == DryStores {
		y = dryYear(y)
	}
	return y
}

// dryYear leaves of a season without cooling only what dry stores promise:
// no cold days, and nothing aboard that could go warm.
func dryYear(y aYear) aYear {
	y.coldDays, y.coldShare, y.warmDays, y.hoursOver5, y.longestOff, y.worstRun = 0, 0, 0, 0, 0, 0
	return y
}

// outcome bills and examines a year of a future.
func (p *proposal) outcome(f *Future, y aYear, st *steady, buffer cost.Flows) (Outcome, error) {
	facts := p.facts(&y, st, 0)
	lines, err := p.costLines(f, &y, facts)
	if err != nil {
		return Outcome{}, err
	}
	o := Outcome{Facts: facts, Lines: lines, Year: y, First: firstCost(lines), PerYear: perYear(lines), ColdDays: y.coldDays * f.Nights}
	facts["first_cost"] = o.First
	years, rate := int(p.boat.Money.Years), cost.Rate(p.boat.Money.Discount)
	o.Flows = flows(lines, years, buffer)
	o.Present = float64(o.Flows.PresentCost(rate))
	o.Yearly = float64(o.Flows.YearlyEquivalent(rate))
	for _, c := range p.book.Criteria {
		if !slices.Contains(c.Options, p.option) {
			continue
		}
		fails, err := c.Fails.Holds(facts)
		if err != nil {
			return Outcome{}, fmt.Errorf("criterion %s: %w", c.ID, err)
		}
		if fails {
			o.Failing = append(o.Failing, c)
		}
	}
	return o, nil
}

// netWorth gives the yearly worth of an outcome at a worth of a cold day.
func (o *Outcome) netWorth(coldDay quantity.Money) float64 {
	return float64(coldDay)*o.ColdDays - o.Yearly
}
