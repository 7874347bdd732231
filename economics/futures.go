package economics

import (
	"fmt"
	"math"
	"runtime"
	"sync"

	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// Trial is what one proposal came to in one future, in the few figures that
// thousands of futures can afford to keep. Its money is as in Outcome.
type Trial struct {
	Works                           bool
	First, PerYear, Present, Yearly float64
	ColdShare, CoolShare, KeptShare float64 // of the days aboard, 0 to 1
	KeptDays                        float64 // a year; none where the option fails otherwise than by warmth
	// ExtraDays are those more than the box keeps with nothing in it, 0 or
	// more; Price is Yearly over them, not under 0, infinite without any. A
	// search leaves both 0.
	ExtraDays, Price float64
	MedicineKept     bool // 2 to 8 °C in every hour aboard
}

// price sets the trial's price of cold, given what the empty box keeps.
func (t *Trial) price(bareDays float64) {
	t.ExtraDays = max(0, t.KeptDays-bareDays)
	t.Price = math.Inf(1)
	if t.ExtraDays > 1e-9 {
		t.Price = max(0, t.Yearly) / t.ExtraDays
	}
}

// futureStream keeps the weather of futures apart from that of the typical years.
const futureStream = 1 << 32

// trials puts every proposal to every future, each with its own year of
// weather, which depends on seed and future alone. Rows are proposals, columns
// futures. paid holds, for each proposal, what has been paid by each year's
// end: one run of years + 1 figures for each future.
func trials(ps []*proposal, futures []Future, seed uint64) (out [][]Trial, paid [][]float64, err error) {
	out, paid = make([][]Trial, len(ps)), make([][]float64, len(ps))
	if len(ps) == 0 {
		return out, paid, nil
	}
	ends := int(ps[0].boat.Money.Years) + 1
	bareBox, err := newProposal(ps[0].boat, ps[0].book, ps[0].world, ps[0].leakScale, IceOnly, FitOut{})
	if err != nil {
		return nil, nil, err
	}
	for i := range ps {
		out[i], paid[i] = make([]Trial, len(futures)), make([]float64, len(futures)*ends)
	}
	err = parallel(len(futures), func(int) func(int) error {
		var air weatherYears
		var base baseLoads
		calculators := make([]*calculator, len(ps))
		for i, p := range ps {
			calculators[i] = p.calculator()
		}
		return func(k int) error {
			f := &futures[k]
			air.fillFuture(ps[0].boat, ps[0].world, f, seed, k)
			base.reset()
			bare := bareBox.bareDays(f, &air)
			for i, d := range calculators {
				var err error
				if out[i][k], err = d.trial(f, &air, &base); err != nil {
					return fmt.Errorf("future %d, %s: %w", k, d.p.option, err)
				}
				out[i][k].price(bare)
				var sum quantity.Money
				for year, flow := range d.flows {
					sum += flow
					paid[i][k*ends+year] = float64(sum)
				}
			}
			return nil
		}
	})
	return out, paid, err
}

// trial puts the calculator's proposal to one future, whose weather and base loads are given.
func (d *calculator) trial(f *Future, a *weatherYears, base *baseLoads) (Trial, error) {
	o, err := d.outcome(f, d.p.live(f, a, base, nil))
	if err != nil {
		return Trial{}, err
	}
	y := &o.year
	medicine := y.medicineKept && !o.Fails(Room) && !o.Fails(Need)
	return Trial{Works: o.Works(), First: o.First, PerYear: o.PerYear, Present: o.Present, Yearly: o.Yearly,
		ColdShare: y.coldShare, CoolShare: y.coolShare, KeptShare: y.keptShare, KeptDays: o.KeptDays, MedicineKept: medicine}, nil
}

// bareDays gives the days a year that the box as told keeps with nothing in it.
func (p *proposal) bareDays(f *Future, a *weatherYears) float64 {
	s := p.setup(f)
	s.Plan = a.plan
	mayBeCold := s.LimitC >= stowedC
	for year := range a.years {
		mayBeCold = mayBeCold || !a.years[year].NeverUnder(s.LimitC)
	}
	if !mayBeCold {
		return 0
	}
	none := p.icing(f)
	none.RoomKg = 0
	plan := s.IcePlan(none)
	var t season.Tally
	for year := range a.years {
		s.Ice(&a.years[year], &plan, &t, nil)
	}
	y := p.average(&t, &t, float64(len(a.years)), 1)
	return y.keptShare * y.nights * f.Nights
}

// trialGround holds a few futures, their air and what the boat does there
// without cooling, for use again and again.
type trialGround struct {
	futures []Future
	airs    []weatherYears
	bases   []baseLoads
	alike   float64 // see alikeHeat
}

func newTrialGround(b *Boat, w *world, futures []Future, seed uint64) *trialGround {
	g := &trialGround{futures: futures, airs: make([]weatherYears, len(futures)), bases: make([]baseLoads, len(futures)), alike: alikeHeat}
	_ = parallel(len(futures), func(int) func(int) error {
		return func(k int) error {
			g.airs[k].fillFuture(b, w, &futures[k], seed, k)
			return nil
		}
	})
	return g
}

// crew are the calculators of one proposal, one for each core.
type crew struct {
	p           *proposal
	calculators []*calculator
}

func (p *proposal) crew() *crew { return &crew{p, make([]*calculator, runtime.GOMAXPROCS(0))} }

// of gives a core its calculator; one that has joined since has none to keep.
func (c *crew) of(core int) *calculator {
	if core >= len(c.calculators) {
		return c.p.calculator()
	}
	if c.calculators[core] == nil {
		c.calculators[core] = c.p.calculator()
	}
	return c.calculators[core]
}

// run has a crew put its proposal to the futures of the given numbers, each once,
// and enters what came of it at its number.
func (g *trialGround) run(c *crew, numbers []int, into []Trial) error {
	return parallel(len(numbers), func(core int) func(int) error {
		calculator := c.of(core)
		return func(i int) (err error) {
			k := numbers[i]
			into[k], err = calculator.trial(&g.futures[k], &g.airs[k], &g.bases[k])
			return err
		}
	})
}

// parallel runs a job for 0 to n-1 on all the machine's cores. Each core has a
// job of its own, made by start for the core of that number, whose scratch space
// no other sees; who does what cannot change a result. A core stops at its first
// error; the one given is that of the lowest number. A panic comes out where
// parallel was called.
func parallel(n int, start func(core int) func(int) error) error {
	workers := min(runtime.GOMAXPROCS(0), n)
	errs, faults := make([]error, workers), make([]any, workers)
	stopped := make([]int, workers) // where each core's error was
	var wg sync.WaitGroup
	for worker := range workers {
		wg.Go(func() {
			defer func() { faults[worker] = recover() }()
			job := start(worker)
			for k := worker; k < n && errs[worker] == nil; k += workers {
				errs[worker], stopped[worker] = job(k), k
			}
		})
	}
	wg.Wait()
	for _, fault := range faults {
		if fault != nil {
			panic(fault) // where the caller can catch it
		}
	}
	var first error
	lowest := n
	for worker, err := range errs {
		if err != nil && stopped[worker] < lowest {
			first, lowest = err, stopped[worker]
		}
	}
	return first
}
