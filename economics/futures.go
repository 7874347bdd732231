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
			var air air
			var idle idle
			var buffer cost.Flows
			for k := worker; k < len(futures); k += workers {
				air.breathe(ps[0].boat, ps[0].world, &futures[k], stream{seed, futureStream + uint64(k)}, 1)
				idle.empty()
				for i, p := range ps {
					o, err := p.outcome(&futures[k], p.live(&futures[k], &air, &idle), steadies[i], buffer)
					if err != nil {
						errs[worker] = fmt.Errorf("future %d, %s: %w", k, p.option, err)
						return
					}
					buffer = o.Flows
					out[i][k] = Trial{Works: o.Works(), First: o.First, PerYear: o.PerYear, Present: o.Present,
						Yearly: o.Yearly, ColdShare: o.Year.coldShare, ColdDays: o.ColdDays}
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

// futureStream keeps the weather of futures apart from that of the typical years.
const futureStream = 1 << 32
