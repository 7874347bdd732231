package chance

import (
	"coldreckon/economics/quantity"
)

// Outcomes is the table of every option's loss in every future: what the
// decision is to make small.
type Outcomes struct {
	firstCost []quantity.Money
	cells     []quantity.Money // future by future
}

// NewOutcomes makes a table for a number of futures, 1 or more, and for as
// many options as first costs are given, 1 or more. Of options that do equally
// well the one with the lower first cost comes first, then the one named first.
func NewOutcomes(futures int, firstCost []quantity.Money) *Outcomes {
	return &Outcomes{firstCost: firstCost, cells: make([]quantity.Money, futures*len(firstCost))}
}

// Set enters the loss of an option in a future, both counted from 0. It must
// be finite. Different futures may be set at the same time.
func (o *Outcomes) Set(future, option int, loss quantity.Money) {
	o.cells[future*len(o.firstCost)+option] = loss
}

// Judgement is what a table of losses comes to. Its slices go by option, in
// the order of the table.
type Judgement struct {
	// Preferred is the number of the option with the lowest expected loss.
	Preferred int
	// ExpectedRegret is, on average over the futures, how much more each
	// option loses than the best does.
	ExpectedRegret []quantity.Money
	// EVPI is the expected value of perfect information: what knowing the
	// future before deciding would save on average, which is the preferred
	// option's expected regret (Raiffa and Schlaifer 1961; Rothery et al.,
	// Value in Health 23, 2020, algorithm 1). EVPIError is its standard error,
	// on the large side because the futures are spread evenly.
	EVPI, EVPIError quantity.Money

	futures int
	rivals  [][]float64 // for each other option, its loss less the preferred's, by future
}

// Judge reckons the table up, once every loss has been set.
func (o *Outcomes) Judge() Judgement {
	options := len(o.firstCost)
	futures := len(o.cells) / options
	losses := make([][]float64, options)
	for option := range losses {
		losses[option] = make([]float64, futures)
		for future := range futures {
			losses[option][future] = float64(o.cells[future*options+option])
		}
	}
	j := Judgement{futures: futures, Preferred: -1}
	regret := make([]float64, futures)
	for option, loss := range losses {
		for future := range regret {
			lowest := loss[future]
			for _, other := range losses {
				lowest = min(lowest, other[future])
			}
			regret[future] = loss[future] - lowest
		}
		mean, standardError := Mean(regret)
		j.ExpectedRegret = append(j.ExpectedRegret, quantity.Money(mean))
		if m := quantity.Money(mean); j.Preferred < 0 || m < j.EVPI || m == j.EVPI && o.firstCost[option] < o.firstCost[j.Preferred] {
			j.Preferred, j.EVPI, j.EVPIError = option, m, quantity.Money(standardError)
		}
	}
	for option, loss := range losses {
		if option == j.Preferred {
			continue
		}
		rival := make([]float64, futures)
		for future := range rival {
			rival[future] = loss[future] - losses[j.Preferred][future]
		}
		j.rivals = append(j.rivals, rival)
	}
	return j
}
