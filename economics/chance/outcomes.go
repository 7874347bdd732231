package chance

import (
	"math"

	"coldreckon/economics/quantity"
)

// Outcome is how one option fares in one future.
type Outcome struct {
	// Loss is what the decision is to make small: a cost, or a cost less what
	// it brings. It must be finite.
	Loss quantity.Money
	// Works tells whether the option does what is wanted of it.
	Works bool
	// Wasted, 0 or above, is the money spent in vain when it does not work: its
	// first cost and what it ran up until it was given up. An option for which
	// nothing is wasted costs nothing to try, and so is preferred however
	// seldom it works. It is not looked at when the option works.
	Wasted quantity.Money
}

// Outcomes is the table of every option in every future.
type Outcomes struct {
	firstCost []quantity.Money
	cells     []Outcome // future by future
}

// NewOutcomes makes a table for a number of futures, 1 or more, and for as
// many options as first costs are given, 1 or more. Of options that do equally
// well the one with the lower first cost comes first, then the one named first.
func NewOutcomes(futures int, firstCost []quantity.Money) *Outcomes {
	return &Outcomes{firstCost: firstCost, cells: make([]Outcome, futures*len(firstCost))}
}

// Set enters one outcome of a future and an option, both counted from 0.
// Different futures may be set at the same time.
func (o *Outcomes) Set(future, option int, outcome Outcome) {
	o.cells[future*len(o.firstCost)+option] = outcome
}

// Judgement is what a table of outcomes comes to. Its slices go by option, in
// the order of the table.
type Judgement struct {
	// WorkableOf100 is in how many of 100 futures each option works, rounded so
	// that it agrees with the counts below.
	WorkableOf100 []int
	// BestOf100 is in how many of 100 each option has the lowest loss of those
	// that work. These counts and NoneWorksOf100 add up to 100.
	BestOf100      []int
	NoneWorksOf100 int
	// Preferred is the number of the option with the lowest expected loss; one
	// that works in no future is not preferred while another works in some.
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

// Judge reckons the table up, once every outcome has been set.
//
// An option that does not work in a future is not let off with its own loss:
// there it is charged what it wasted and then the loss of the surest option,
// the one that works in most futures, as an owner is who will not be caught
// out twice. Where that fails too it is the best option that works; where none
// works each is left with its own loss. (Engineering judgement, from memory.
// To charge the best option of each future instead would reward failing with
// foreknowledge: what fails early and cheaply would seem the best choice.)
func (o *Outcomes) Judge() Judgement {
	options := len(o.firstCost)
	futures := len(o.cells) / options
	working := make([]int, options)
	best := make([]int, options+1) // the last counts futures in which none works
	winners := make([]int, futures)
	means := make([]float64, options) // of the loss where the option works
	for future := range futures {
		row := o.cells[future*options : (future+1)*options]
		winners[future] = o.winner(row)
		best[winners[future]]++
		for option, cell := range row {
			if cell.Works {
				working[option]++
				means[option] += float64(cell.Loss)
			}
		}
	}
	for option, count := range working {
		means[option] /= max(1, float64(count))
	}
	surest := o.surest(working, means)

	losses := make([][]float64, options)
	for option := range losses {
		losses[option] = make([]float64, futures)
	}
	for future, winner := range winners {
		row := o.cells[future*options : (future+1)*options]
		next := winner
		if row[surest].Works {
			next = surest
		}
		for option, cell := range row {
			loss := float64(cell.Loss)
			if !cell.Works && winner < options {
				loss = float64(row[next].Loss + cell.Wasted)
			}
			losses[option][future] = loss
		}
	}

	j := Judgement{futures: futures}
	j.count(working, best, o.before)
	j.prefer(losses, working, o.before)
	return j
}

// surest is the option that works in most futures; among equals the one with
// the lowest mean loss, then by before.
func (o *Outcomes) surest(working []int, means []float64) int {
	surest := 0
	for option := range working {
		switch {
		case working[option] != working[surest]:
			if working[option] > working[surest] {
				surest = option
			}
		case means[option] != means[surest]:
			if means[option] < means[surest] {
				surest = option
			}
		case o.before(option, surest):
			surest = option
		}
	}
	return surest
}

// winner is the option with the lowest loss of those that work in a future, or
// the number of options when none works.
func (o *Outcomes) winner(row []Outcome) int {
	winner := len(row)
	for option, cell := range row {
		if !cell.Works {
			continue
		}
		if winner == len(row) || cell.Loss < row[winner].Loss ||
			cell.Loss == row[winner].Loss && o.before(option, winner) {
			winner = option
		}
	}
	return winner
}

// before tells which of two options wins a tie. "None works", numbered after
// all options, loses every tie.
func (o *Outcomes) before(a, b int) bool {
	none := len(o.firstCost)
	if a == none || b == none || o.firstCost[a] == o.firstCost[b] {
		return a < b
	}
	return o.firstCost[a] < o.firstCost[b]
}

// prefer fills in everything that follows from the expected losses.
func (j *Judgement) prefer(losses [][]float64, working []int, before func(a, b int) bool) {
	someWork := false
	for _, count := range working {
		someWork = someWork || count > 0
	}
	eligible := func(option int) bool { return working[option] > 0 || !someWork }

	lowest := make([]float64, j.futures) // of all options, by future
	copy(lowest, losses[0])
	for _, loss := range losses[1:] {
		for future := range lowest {
			lowest[future] = min(lowest[future], loss[future])
		}
	}
	j.ExpectedRegret = make([]quantity.Money, len(losses))
	j.Preferred = -1
	regret := make([]float64, j.futures)
	for option, loss := range losses {
		for future := range regret {
			regret[future] = loss[future] - lowest[future]
		}
		mean, standardError := Mean(regret)
		j.ExpectedRegret[option] = quantity.Money(mean)
		if !eligible(option) {
			continue
		}
		if j.Preferred < 0 || j.ExpectedRegret[option] < j.EVPI ||
			j.ExpectedRegret[option] == j.EVPI && before(option, j.Preferred) {
			j.Preferred, j.EVPI, j.EVPIError = option, quantity.Money(mean), quantity.Money(standardError)
		}
	}
	for option, loss := range losses {
		if option == j.Preferred || !eligible(option) {
			continue
		}
		rival := make([]float64, j.futures)
		for future := range rival {
			rival[future] = loss[future] - losses[j.Preferred][future]
		}
		j.rivals = append(j.rivals, rival)
	}
}

// count turns numbers of futures into counts of 100 that agree with each other.
func (j *Judgement) count(working, best []int, before func(a, b int) bool) {
	options := len(working)
	of100 := shareOut(best, j.futures, before)
	j.BestOf100, j.NoneWorksOf100 = of100[:options], of100[options]
	j.WorkableOf100 = make([]int, options)
	for option, count := range working {
		// Rounding must not print an option as best more often than it works,
		// nor as working where none does.
		rounded := int(math.Round(100 * float64(count) / float64(j.futures)))
		j.WorkableOf100[option] = min(max(rounded, j.BestOf100[option]), 100-j.NoneWorksOf100)
	}
}
