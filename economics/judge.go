package economics

import (
	"cmp"
	"slices"

	"coldreckon/economics/chance"
	"coldreckon/economics/cost"
	"coldreckon/economics/quantity"
)

// FuturesFigures is what the futures say of the whole decision. A loss is a
// present cost less what the option's cold days are worth, where the owner
// told that worth; money is the owner's, in today's prices.
type FuturesFigures struct {
	Count            int // of futures
	Seed             uint64
	NoneWorksOf100   int // of 100 futures, in how many no option works
	RefrigerateOf100 int // of 100 futures, in how many a unit is best
	// Preferred has the lowest expected loss, Runner the next, or Preferred
	// again when nothing else ever works. The verdict goes by counts and can
	// differ.
	Preferred, Runner OptionID
	// EVPI is the loss that knowing everything before deciding would save on
	// average, with its standard error.
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
	// EVPPI is the loss that knowing this figure alone would save on average;
	// 0 for a matter of taste, which is not a thing to measure.
	EVPPI float64
	// SwitchAt is the figure at which another option becomes preferred; it
	// counts only when SwitchKnown.
	SwitchAt     float64
	SwitchAbove  bool     // the other option lies above SwitchAt, else below
	SwitchTo     OptionID // best most often beyond it, the preferred one apart
	ChanceBeyond float64  // of lying beyond, 0 to 1
	SwitchKnown  bool
	// SwingLow and SwingHigh are the mean loss of the preferred option less the
	// runner-up's where the figure lies in its lowest and highest fifth.
	SwingLow, SwingHigh float64
}

// loss is what the decision makes small: the present cost less what the cold
// days are worth over the horizon, when that was told.
func loss(b *Boat, t *Trial, f *Future) quantity.Money {
	if !b.told("money.cold_day_worth") {
		return quantity.Money(t.Present)
	}
	worth := float64(b.Money.ColdDayWorth) * f.Worth * t.ColdDays
	return quantity.Money(t.Present - worth*cost.UPV(cost.Rate(b.Money.Discount), b.Money.Years))
}

// judgeFutures reckons up the fitted options' trials, rows in the order of Options.
func judgeFutures(b *Boat, ins []Input, futures []Future, fitted [][]Trial, options *[4]OptionFigures) FuturesFigures {
	first := make([]quantity.Money, 4)
	for i := range options {
		first[i] = quantity.Money(options[i].Fitted.First)
	}
	byMoney, byWorth := chance.NewOutcomes(len(futures), first), chance.NewOutcomes(len(futures), first)
	for k := range futures {
		for i := range options {
			t := &fitted[i][k]
			out := chance.Outcome{Loss: quantity.Money(t.Present), Works: t.Works, Wasted: quantity.Money(t.First + t.PerYear)}
			byMoney.Set(k, i, out)
			out.Loss = loss(b, t, &futures[k])
			byWorth.Set(k, i, out)
		}
	}
	money, judged := byMoney.Judge(), byWorth.Judge()
	out := FuturesFigures{
		Count: len(futures), NoneWorksOf100: judged.NoneWorksOf100,
		EVPI: float64(judged.EVPI), EVPIError: float64(judged.EVPIError),
	}
	for i := range options {
		o := &options[i]
		o.WorkableOf100, o.CheapestOf100, o.BestOf100 = judged.WorkableOf100[i], money.BestOf100[i], judged.BestOf100[i]
		o.ExpectedRegret = float64(judged.ExpectedRegret[i])
		o.FittedBands = bands(fitted[i])
		if isUnit(o.ID) {
			out.RefrigerateOf100 += o.BestOf100
		}
	}
	runner := runnerUp(&judged)
	out.Preferred, out.Runner = Options[judged.Preferred], Options[runner]
	winners := winners(b, futures, fitted, first)
	for _, in := range ins {
		values := make([]float64, len(futures))
		for k := range futures {
			values[k] = *in.at(&futures[k])
		}
		fig := InputFigures{Input: in, Low: in.Value(in.Factor.Low), High: in.Value(in.Factor.High)}
		if !in.Taste {
			fig.EVPPI = float64(judged.EVPPI(values))
		}
		if s, ok := judged.SwitchingValue(values); ok {
			fig.SwitchAt, fig.SwitchAbove, fig.ChanceBeyond, fig.SwitchKnown = in.Value(s.At), s.Above, float64(s.Beyond), true
			fig.SwitchTo = mostBeyond(winners, values, s, judged.Preferred)
		}
		fig.SwingLow, fig.SwingHigh = swing(values, func(k int) float64 {
			return float64(loss(b, &fitted[judged.Preferred][k], &futures[k]) - loss(b, &fitted[runner][k], &futures[k]))
		})
		out.Inputs = append(out.Inputs, fig)
	}
	return out
}

// winners gives the best working option of each future, -1 where none works.
func winners(b *Boat, futures []Future, fitted [][]Trial, first []quantity.Money) []int {
	out := make([]int, len(futures))
	for k := range futures {
		out[k] = -1
		var least quantity.Money
		for i := range fitted {
			t := &fitted[i][k]
			if !t.Works {
				continue
			}
			l := loss(b, t, &futures[k])
			if out[k] < 0 || l < least || l == least && first[i] < first[out[k]] {
				out[k], least = i, l
			}
		}
	}
	return out
}

// mostBeyond gives the option, the preferred one apart, that wins most of the
// futures beyond a switching value; the preferred one where no other wins any.
func mostBeyond(winners []int, values []float64, s chance.Switch, preferred int) OptionID {
	var wins [4]int
	for k, winner := range winners {
		if winner >= 0 && winner != preferred && (values[k] > s.At) == s.Above {
			wins[winner]++
		}
	}
	most := -1
	for i, n := range wins {
		if n > 0 && (most < 0 || n > wins[most]) {
			most = i
		}
	}
	if most < 0 {
		return Options[preferred]
	}
	return Options[most]
}

// bands reads what trials cost.
func bands(trials []Trial) Bands {
	of := func(figure func(*Trial) float64) quantity.Range {
		values := make([]float64, len(trials))
		for i := range trials {
			values[i] = figure(&trials[i])
		}
		slices.Sort(values)
		return marks(values)
	}
	return Bands{
		First:   of(func(t *Trial) float64 { return t.First }),
		PerYear: of(func(t *Trial) float64 { return t.PerYear }),
		Present: of(func(t *Trial) float64 { return t.Present }),
		Yearly:  of(func(t *Trial) float64 { return t.Yearly }),
	}
}

// marks reads the 10th, 50th and 90th percentile of ascending values.
func marks(sorted []float64) quantity.Range {
	n := float64(len(sorted) - 1)
	return quantity.Range{Low: sorted[int(0.1*n)], Typical: sorted[int(0.5*n)], High: sorted[int(0.9*n)]}
}

// runnerUp gives the option of least expected regret beside the preferred one,
// which it gives itself when nothing else ever works.
func runnerUp(j *chance.Judgement) int {
	runner := -1
	for i, regret := range j.ExpectedRegret {
		if i == j.Preferred || j.WorkableOf100[i] == 0 {
			continue
		}
		if runner < 0 || regret < j.ExpectedRegret[runner] {
			runner = i
		}
	}
	if runner < 0 {
		return j.Preferred
	}
	return runner
}

// swing gives the mean of a figure over the futures with the lowest and the
// highest fifth of an input.
func swing(input []float64, figure func(int) float64) (low, high float64) {
	order := ascending(input)
	fifth := max(1, len(order)/5)
	for _, k := range order[:fifth] {
		low += figure(k) / float64(fifth)
	}
	for _, k := range order[len(order)-fifth:] {
		high += figure(k) / float64(fifth)
	}
	return low, high
}

// ascending gives the indices of values from the least to the greatest.
func ascending(values []float64) []int {
	order := make([]int, len(values))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	return order
}

// paidBands reads the 10th, 50th and 90th percentile of what has been paid by
// each year's end.
func paidBands(paid [][]float64, ends int) (bands [4][]quantity.Range) {
	column := make([]float64, 0)
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
