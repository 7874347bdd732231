package economics

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"

	"coldreckon/economics/cost"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// Outcome is what a proposal came to in one future. Money is the owner's, in
// today's prices.
type Outcome struct {
	Facts    Facts
	Failing  []Criterion // why it does not work; empty when it does
	Lines    []CostLine
	Flows    cost.Flows // year 0 first, costs positive
	First    float64    // paid today
	PerYear  float64    // paid in a usual year, renewals left out
	Present  float64    // life-cycle cost: all years, brought back to today
	Yearly   float64    // the same as an even sum at each year's end
	ColdDays float64    // a year, of those that pass the exam at 5 °C
	// KeptDays are those, or those at 10 °C, as the owner goes by (Boat.CoolDecides);
	// there are none where the option fails otherwise than by warmth.
	KeptDays float64

	year aYear
}

// Works reports whether no criterion failed, hazards apart.
func (o *Outcome) Works() bool {
	for i := range o.Failing {
		if o.Failing[i].Kind != Hazard {
			return false
		}
	}
	return true
}

// Fails tells whether a criterion of the kind failed.
func (o *Outcome) Fails(kind CriterionKind) bool {
	return slices.ContainsFunc(o.Failing, func(c Criterion) bool { return c.Kind == kind })
}

// Year gives the ice of an average year aboard: bought, and which share of that
// was lost on the way, at the end of trips or for want of room.
func (o *Outcome) IceBoughtKg() (kg, lostShare float64) {
	y := &o.year
	if y.iceBoughtKg <= 0 {
		return 0, 0
	}
	return y.iceBoughtKg, y.iceLostKg / y.iceBoughtKg
}

// Shares gives the parts of the days aboard, 0 to 1, that pass the exams at 5 and at 10 °C.
func (o *Outcome) Shares() (cold, cool float64) { return o.year.coldShare, o.year.coolShare }

// typicalYears is how many years of weather a report's typical figures are taken over.
const typicalYears = 20

// stream names a run of weather: the years first, first + 1, ... of a seed.
type stream struct{ seed, first uint64 }

// weatherYears is years of weather as the boat meets them in a future: the same for
// every option, since it depends on stream and future alone. It is kept from
// use to use so that a thousand futures allocate no more than one.
type weatherYears struct {
	plan    *season.Plan // the nights of a year that are lived
	years   []season.Air
	weather season.Weather
	random  rand.PCG
	selling rand.PCG
}

// fill draws whole years anew.
func (a *weatherYears) fill(b *Boat, w *world, f *Future, from stream, years int) {
	a.draw(b, w, f, from, w.plan, years)
}

// fillFuture draws what is lived of the years of a seed's future k.
func (a *weatherYears) fillFuture(b *Boat, w *world, f *Future, seed uint64, k int) {
	a.draw(b, w, f, stream{seed, futureStream + uint64(k)}, w.lived[k%len(w.lived)], w.yearsAFuture)
}

func (a *weatherYears) draw(b *Boat, w *world, f *Future, from stream, plan *season.Plan, years int) {
	a.plan = plan
	if len(a.years) < years {
		a.years = make([]season.Air, years)
	}
	a.years = a.years[:years]
	draw, stops := rand.New(&a.random), rand.New(&a.selling)
	panel := energy.Panel{Wp: 1, Mounting: b.Power.Mounting, Controller: b.Power.Controller}.Chain()
	for year := range a.years {
		a.random.Seed(from.seed, from.first+uint64(year))
		a.selling.Seed(^from.seed, from.first+uint64(year))
		plan.Draw(&a.weather, w.sky, draw, stops, 1)
		plan.FillAir(&a.years[year], &a.weather, &w.months, b.Box.CabinOffset+quantity.Kelvin(f.CabinK), panel, b.Power.EngineHoursPerDay)
	}
}

// live puts the proposal through years of air. base keeps what the boat's
// electricity does without cooling, for the fit-outs met so far in this air.
// w sees it, unless it is nil.
func (p *proposal) live(f *Future, a *weatherYears, base *baseLoads, w *recorder) aYear {
	s := p.setup(f)
	s.Plan = a.plan
	var tally season.Tally
	var ice season.IcePlan
	var fridge season.Refrigerator
	switch {
	case p.option == IceOnly:
		ice = s.IcePlan(p.icing(f))
	case p.unit != nil:
		fridge = p.refrigerator(f)
	default:
		return dryYear(p.average(base.of(p, &s, a), base.of(p, &s, a), float64(len(a.years)), float64(s.Power.Bank.FullWh)))
	}
	for year := range a.years {
		trace := w.trace(24 * len(a.plan.Nights))
		if p.option == IceOnly {
			s.Ice(&a.years[year], &ice, &tally, trace)
		} else {
			s.Unit(&a.years[year], fridge, &tally, trace)
		}
		w.review(s.LimitC)
	}
	return p.average(&tally, base.of(p, &s, a), float64(len(a.years)), float64(s.Power.Bank.FullWh))
}

// baseLoads remembers the boat's electricity without cooling, by what panel and
// battery were added. It must be emptied for every new air. Searches that run
// side by side share it.
type baseLoads struct {
	mu    sync.Mutex
	added []FitOut
	tally []season.Tally
}

func (m *baseLoads) reset() { m.added, m.tally = m.added[:0], m.tally[:0] }

func (m *baseLoads) of(p *proposal, s *season.Setup, a *weatherYears) *season.Tally {
	added := FitOut{PanelWp: p.fit.PanelWp, Battery: p.fit.Battery}
	m.mu.Lock()
	defer m.mu.Unlock()
	for i := range m.added {
		if m.added[i] == added {
			return &m.tally[i]
		}
	}
	m.added, m.tally = append(m.added, added), append(m.tally, season.Tally{})
	t := &m.tally[len(m.tally)-1]
	for year := range a.years {
		s.Stores(&a.years[year], t)
	}
	return t
}

// dryYear leaves of a season without cooling only what dry stores promise:
// no cold days, and nothing aboard that could go warm.
func dryYear(y aYear) aYear {
	y.coldDays, y.coldShare, y.coolShare, y.keptShare = 0, 0, 0, 0
	y.warmDays, y.hoursOver5, y.longestOff = 0, 0, 0
	y.medicineKept = false
	return y
}

// calculator works the outcomes of one proposal out, one after the
// other: what no year changes is worked out once, and its memory is used again.
type calculator struct {
	p      *proposal
	about  *subject
	facts  Facts
	lines  []CostLine
	ledger []cost.Line
	flows  cost.Flows
	counts []float64 // see costLines
	// standing holds of each criterion whether it fails, where no year changes that
	// and it has been worked out.
	standing []struct{ known, fails bool }
}

func (p *proposal) calculator() *calculator {
	d := &calculator{facts: make(Facts, len(vocabulary)), counts: make([]float64, len(p.book.Prices)), standing: make([]struct{ known, fails bool }, len(p.book.Criteria))}
	d.take(p)
	return d
}

// take turns to another proposal of the same book.
func (d *calculator) take(p *proposal) {
	d.p, d.about = p, &subject{p, p.steady()}
	d.about.stand(d.facts)
	for i := range d.counts {
		d.counts[i] = math.NaN()
	}
	clear(d.standing)
}

// fails tells whether a criterion of the book fails by the facts.
func (d *calculator) fails(i int) (bool, error) {
	if d.standing[i].known {
		return d.standing[i].fails, nil
	}
	c := &d.p.book.Criteria[i]
	fails, err := c.Fails.Holds(d.facts)
	if err == nil && c.Standing {
		d.standing[i].known, d.standing[i].fails = true, fails
	}
	return fails, err
}

// outcome bills and examines a year of a future. The outcome's facts, lines and
// flows are the calculator's own; the next outcome overwrites them.
func (d *calculator) outcome(f *Future, y aYear) (Outcome, error) {
	p := d.p
	d.about.lived(d.facts, &y)
	delete(d.facts, firstCostFact) // the last year's: no price line may ask for it
	lines, err := p.costLines(d.lines[:0], f, &y, d.facts, d.counts)
	if err != nil {
		return Outcome{}, err
	}
	d.lines = lines
	o := Outcome{Facts: d.facts, Lines: lines, year: y, First: firstCost(lines), PerYear: perYear(lines),
		ColdDays: y.coldDays * f.Nights}
	d.facts[firstCostFact] = o.First
	years, rate := int(p.boat.Money.Years), cost.Rate(p.boat.Money.Discount)
	d.ledger = Ledger(lines, d.ledger[:0])
	d.flows = cost.Schedule(d.ledger, years, d.flows)
	o.Flows = d.flows
	o.Present = float64(o.Flows.PresentCost(rate))
	o.Yearly = float64(o.Flows.YearlyEquivalent(rate))
	for i := range p.book.Criteria {
		c := &p.book.Criteria[i]
		if !slices.Contains(c.Options, p.option) {
			continue
		}
		fails, err := d.fails(i)
		if err != nil {
			return Outcome{}, fmt.Errorf("criterion %s: %w", c.ID, err)
		}
		if fails {
			o.Failing = append(o.Failing, *c)
		}
	}
	o.KeptDays = y.keptShare * y.nights * f.Nights
	for i := range o.Failing {
		if k := o.Failing[i].Kind; k != Warmth && k != Hazard {
			o.KeptDays = 0
		}
	}
	return o, nil
}
