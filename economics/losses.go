package economics

import (
	"cmp"
	"math"
	"slices"

	"coldreckon/economics/chance"
	"coldreckon/economics/quantity"
)

// FuturesFigures is what the futures say of the whole decision. A loss is what
// a way costs a year less what its cold days are worth; dry stores lose nothing,
// as the worth counts their food. Money is the owner's, in today's prices.
type FuturesFigures struct {
	Count int // of futures
	Seed  uint64
	// Weighed are the ways that the losses compare: those that do what is
	// wanted and, where a worth was told, dry stores. It is empty where there
	// are none, and the rest of the losses is then zero.
	Weighed []OptionID
	// Worth is the worth of a cold day at which they are compared: as told, else
	// one at which the cheapest of them would just be had.
	Worth float64
	// Preferred has the lowest expected loss, Runner the next, or Preferred
	// again when it is alone. The answer goes by counts and can differ.
	Preferred, Runner OptionID
	// EVPI is the loss a year that knowing everything before deciding would
	// save on average, with its standard error.
	EVPI, EVPIError float64
	Inputs          []InputFigures // in a fixed order
	// Paid gives, for each fitted option in the order of Options, what has been
	// paid in all by each year's end, today's outlay first: the 10th, 50th and
	// 90th percentile.
	Paid [4][]quantity.Range
}

// InputFigures is what one uncertain input does to the decision.
type InputFigures struct {
	Input
	Low, High float64 // the figure's own 10th and 90th percentiles
	// EVPPI is the loss a year that knowing this figure alone would save on average.
	EVPPI float64
	// PriceLow and PriceHigh are the median price of a cold day by the leading
	// way where the figure lies in its lowest and highest fifth.
	PriceLow, PriceHigh float64
	// SwitchAt is the figure at which another way becomes preferred; it counts
	// only when SwitchKnown.
	SwitchAt     float64
	SwitchAbove  bool     // the other way lies above SwitchAt, else below
	SwitchTo     OptionID // best most often beyond it, the preferred one apart
	ChanceBeyond float64  // of lying beyond, 0 to 1
	SwitchKnown  bool
	// SwingLow and SwingHigh are the mean loss of the preferred way less the
	// runner-up's where the figure lies in its lowest and highest fifth.
	SwingLow, SwingHigh float64
}

// loss is what the decision makes small, money a year.
func loss(id OptionID, t *Trial, worth float64) float64 {
	if id == DryStores {
		return 0
	}
	return t.Yearly - worth*t.ExtraDays
}

// TypicalLoss is what a way costs a year less what its cold days are worth, at
// typical figures with the work done, in the owner's currency. Dry stores lose nothing.
func (r *Reckoning) TypicalLoss(id OptionID) float64 {
	if id == DryStores {
		return 0
	}
	o := r.Of(id)
	return o.Fitted.Yearly - r.Futures.Worth*o.ExtraDays.Typical
}

// losses reckons up the weighed ways' trials, rows in the order of Options.
func (a *answerer) losses(ins []Input, futures []Future, way OptionID) FuturesFigures {
	out := FuturesFigures{Count: len(futures)}
	out.Weighed = a.weighed()
	if len(out.Weighed) > 0 {
		out.Worth = a.referenceWorth(out.Weighed)
	}
	if _, _, told := a.r.Boat.coldDayWorth(); told && len(out.Weighed) > 0 {
		out.Weighed = append(out.Weighed, DryStores)
	}
	var judged chance.Judgement
	if len(out.Weighed) > 0 {
		judged = a.judge(&out)
	}
	out.Inputs = make([]InputFigures, len(ins))
	_ = parallel(len(ins), func(int) func(int) error {
		values := make([]float64, len(futures))
		return func(i int) error {
			in, fig := ins[i], &out.Inputs[i]
			for k := range futures {
				values[k] = *in.at(&futures[k])
			}
			*fig = InputFigures{Input: in, Low: in.Value(in.Factor.Low), High: in.Value(in.Factor.High)}
			order := ascending(values)
			if way != "" {
				fig.PriceLow, fig.PriceHigh = fifths(order, a.medianPrice(way))
			}
			if len(out.Weighed) > 1 {
				a.weigh(fig, &out, &judged, values, order)
			}
			return nil
		}
	})
	return out
}

// judge sets the table of losses up and reads it.
func (a *answerer) judge(out *FuturesFigures) chance.Judgement {
	first := make([]quantity.Money, len(out.Weighed))
	for i, id := range out.Weighed {
		first[i] = quantity.Money(a.r.Of(id).Fitted.First)
	}
	table := chance.NewOutcomes(a.n, first)
	for k := range a.n {
		for i, id := range out.Weighed {
			table.Set(k, i, quantity.Money(loss(id, &a.of(id)[k], out.Worth)))
		}
	}
	judged := table.Judge()
	out.EVPI, out.EVPIError = float64(judged.EVPI), float64(judged.EVPIError)
	out.Preferred = out.Weighed[judged.Preferred]
	out.Runner = out.Preferred
	least := math.Inf(1)
	for i, regret := range judged.ExpectedRegret {
		a.r.Of(out.Weighed[i]).ExpectedRegret = float64(regret)
		if i != judged.Preferred && float64(regret) < least {
			out.Runner, least = out.Weighed[i], float64(regret)
		}
	}
	return judged
}

// weigh tells what an input does to the choice between the weighed ways.
func (a *answerer) weigh(fig *InputFigures, out *FuturesFigures, judged *chance.Judgement, values []float64, order []int) {
	fig.EVPPI = float64(judged.EVPPI(values))
	difference := func(k int) float64 {
		return loss(out.Preferred, &a.of(out.Preferred)[k], out.Worth) - loss(out.Runner, &a.of(out.Runner)[k], out.Worth)
	}
	fig.SwingLow, fig.SwingHigh = fifths(order, mean(difference))
	s, ok := judged.SwitchingValue(values)
	// The other way must gain on the side where it is said to win.
	if ok && s.Above == (fig.SwingHigh > fig.SwingLow) {
		fig.SwitchAt, fig.SwitchAbove, fig.ChanceBeyond, fig.SwitchKnown = fig.Value(s.At), s.Above, float64(s.Beyond), true
		fig.SwitchTo = a.mostBeyond(out, values, s)
	}
}

// mostBeyond gives the way, the preferred one apart, that loses least in most
// of the futures beyond a switching value.
func (a *answerer) mostBeyond(out *FuturesFigures, values []float64, s chance.Switch) OptionID {
	wins := map[OptionID]int{}
	for k := range a.n {
		if (values[k] > s.At) != s.Above {
			continue
		}
		wins[slices.MinFunc(out.Weighed, func(x, y OptionID) int {
			return cmp.Compare(loss(x, &a.of(x)[k], out.Worth), loss(y, &a.of(y)[k], out.Worth))
		})]++
	}
	most := out.Runner
	for _, id := range out.Weighed {
		if id != out.Preferred && wins[id] > wins[most] {
			most = id
		}
	}
	return most
}

// medianPrice gives the median price of a cold day over some futures.
func (a *answerer) medianPrice(way OptionID) func([]int) float64 {
	return func(futures []int) float64 {
		prices := make([]float64, len(futures))
		for i, k := range futures {
			prices[i] = a.of(way)[k].Price
		}
		slices.Sort(prices)
		return prices[len(prices)/2]
	}
}

// mean gives the mean of a figure over some futures.
func mean(figure func(int) float64) func([]int) float64 {
	return func(futures []int) (sum float64) {
		for _, k := range futures {
			sum += figure(k) / float64(len(futures))
		}
		return sum
	}
}

// bands reads what trials cost.
func bands(trials []Trial) Bands {
	return Bands{
		First:   percentiles(trials, func(t *Trial) float64 { return t.First }),
		PerYear: percentiles(trials, func(t *Trial) float64 { return t.PerYear }),
		Present: percentiles(trials, func(t *Trial) float64 { return t.Present }),
		Yearly:  percentiles(trials, func(t *Trial) float64 { return t.Yearly }),
	}
}

// percentiles reads the 10th, 50th and 90th percentile of a figure.
func percentiles[T any](trials []T, figure func(*T) float64) quantity.Range {
	values := make([]float64, len(trials))
	for i := range trials {
		values[i] = figure(&trials[i])
	}
	slices.Sort(values)
	return marks(values)
}

// marks reads the 10th, 50th and 90th percentile of ascending values.
func marks(sorted []float64) quantity.Range {
	n := float64(len(sorted) - 1)
	return quantity.Range{Low: sorted[int(0.1*n)], Typical: sorted[int(0.5*n)], High: sorted[int(0.9*n)]}
}

// fifths reads the futures with the lowest and the highest fifth of an input,
// given them from its least to its greatest.
func fifths(order []int, of func([]int) float64) (low, high float64) {
	fifth := max(1, len(order)/5)
	return of(order[:fifth]), of(order[len(order)-fifth:])
}

// ascending gives the indices of values from the least to the greatest, of equals
// in their order.
func ascending(values []float64) []int {
	order := make([]int, len(values))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(values[a], values[b]), a-b) })
	return order
}

// paidBands reads the 10th, 50th and 90th percentile of what has been paid by
// each year's end.
func paidBands(paid [][]float64, ends int) (bands [4][]quantity.Range) {
	var column []float64
	for i, runs := range paid {
		for year := range ends {
			column = column[:0]
			for at := year; at < len(runs); at += ends {
				column = append(column, runs[at])
			}
			slices.Sort(column)
			bands[i] = append(bands[i], marks(column))
		}
	}
	return bands
}
