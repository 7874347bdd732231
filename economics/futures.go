package economics

import (
	"fmt"
	"runtime"
	"sync"

	"coldreckon/economics/cost"
)

// Trial is one proposal in one future.
type Trial struct {
	Works                           bool
	First, PerYear, Present, Yearly float64
	ColdShare, ColdDays             float64
}

// trials puts every proposal to every future, each with its own year of
// weather, which depends on seed and future alone. The work is shared among
// the machine's cores; who does what cannot change a result. Rows are
// proposals, columns futures.
func trials(ps []*proposal, futures []Future, seed uint64) ([][]Trial, error) {
	out := make([][]Trial, len(ps))
	steadies := make([]*steady, len(ps))
	for i, p := range ps {
		out[i] = make([]Trial, len(futures))
		steadies[i] = p.steady()
	}
	workers := min(runtime.GOMAXPROCS(0), len(futures))
	errs := make([]error, workers)
	var wg sync.WaitGroup
	for worker := range workers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			var sims seasons
			var buffer cost.Flows
			for k := worker; k < len(futures); k += workers {
				for i, p := range ps {
					trial, err := p.trial(&futures[k], seed, k, steadies[i], &sims, &buffer)
					if err != nil {
						errs[worker] = fmt.Errorf("future %d, %s: %w", k, p.option, err)
						return
					}
					out[i][k] = trial
				}
			}
		}()
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// trial puts the proposal to one future.
func (p *proposal) trial(f *Future, seed uint64, index int, st *steady, sims *seasons, buffer *cost.Flows) (Trial, error) {
	y := p.live(f, stream{seed, futureStream + uint64(index)}, 1, sims)
	o, err := p.outcome(f, y, st, *buffer)
	if err != nil {
		return Trial{}, err
	}
	*buffer = o.Flows
	return Trial{Works: o.Works(), First: o.First, PerYear: o.PerYear, Present: o.Present, Yearly: o.Yearly, ColdShare: y.coldShare, ColdDays: o.ColdDays}, nil
}

// futureStream keeps the weather of futures apart from that of the typical years.
const futureStream = 1 << 32
