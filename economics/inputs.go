package economics

import (
	"math"

	"coldreckon/economics/chance"
	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
)

// Input is one uncertain figure of a boat: a factor on (or, where it is a
// Difference, a difference from) its typical value, with the 10th and 90th
// percentiles of it, and all that is said of it.
type Input struct {
	Name       string // stable key
	Label      string // in plain words, within a sentence
	Short      string // the same, for charts and tables
	Unit       string // of Typical; "" when only the factor means something
	Difference bool   // whether Factor is a difference in Unit

	// Beyond says that the figure lies beyond a value: {more} stands for "more
	// than" or "less than", {fewer} for the same of what is counted, {at} for
	// the value.
	Beyond string
	// FindOut is the cheapest way to find the figure out, in whole sentences;
	// {cost} stands for FindOutCost.
	FindOut     string
	FindOutCost quantity.Money
	// SharpenedBy are the keys of the answers that sharpen the figure, the most
	// telling first. {unit} stands for the unit that the answer turns on.
	SharpenedBy []string

	Typical float64        // value at factor 1, in Unit
	Factor  quantity.Range // low and high are 10th and 90th percentiles

	at func(*Future) *float64
}

// Value gives the figure itself, in Unit, at a factor or difference.
func (in Input) Value(factor float64) float64 {
	if in.Difference {
		return in.Typical + factor
	}
	return in.Typical * factor
}

// inputs lists a boat's uncertain figures in a fixed order.
func inputs(b *Boat, book *Book, w *world, box *BoxFigures) []Input {
	k := &knowledge{b, book, w, box}
	var out []Input
	for i := range uncertain {
		row := &uncertain[i]
		if row.where != nil && !row.where(k) {
			continue
		}
		in := row.Input
		in.Typical, in.Factor = row.figure(k)
		if row.cost != nil {
			in.FindOutCost = row.cost(k)
		}
		out = append(out, in)
	}
	return out
}

// Typical is the future in which every input takes its typical value.
var Typical = func() (f Future) {
	for i := range uncertain {
		if !uncertain[i].Difference {
			*uncertain[i].at(&f) = 1
		}
	}
	return f
}()

// bareShare is the part of futures in which a box whose foam nobody has seen
// has none: in half of them under the bottom, in the others all round.
// Engineering judgement, from memory.
const bareShare = 0.12

// mayBeBare tells whether the box may turn out to have no foam: nobody has
// looked, and nothing that the box has shown says otherwise.
func mayBeBare(b *Boat, box *BoxFigures) bool {
	return b.mayBeUnlined() && len(box.Evidence.Used) <= 1
}

// mayBeUnlined tells whether nobody has looked for foam.
func (b *Boat) mayBeUnlined() bool {
	return b.Box.FoamThere == quantity.Unknown && !b.toldOfFaces("foam")
}

// foamCase reads a share of the futures, 0 to 1.
func foamCase(u float64) FoamCase {
	switch {
	case u < bareShare/2:
		return BareBottom
	case u < bareShare:
		return BareAllRound
	}
	return FoamAsTold
}

// draw spreads futures evenly over the inputs. The result depends on the seed,
// the count and the inputs alone. Where the box may be bare, some futures have
// no foam. The last input is one of money alone: it is drawn after the year's sun
// and the foam, so that it moves neither heat nor electricity.
func draw(ins []Input, bare bool, count int, seed uint64) []Future {
	samples := chance.LatinHypercube(count, len(ins)+2, seed)
	spreads := make([]chance.SplitLogNormal, len(ins))
	for i, in := range ins {
		spreads[i] = chance.Fit(in.Factor)
	}
	futures := make([]Future, count)
	last := len(ins) - 1
	year, foam := last, last+1
	for k := range futures {
		futures[k] = Typical
		for i, in := range ins {
			column := i
			if i == last {
				column = foam + 1
			}
			*in.at(&futures[k]) = spreads[i].Quantile(samples.U(k, column))
		}
		if bare {
			futures[k].Foam = foamCase(samples.U(k, foam))
		}
		futures[k].Sun *= futures[k].Sky * math.Max(0, 1+climate.YearSunSD*chance.NormalQuantile(samples.U(k, year)))
	}
	return futures
}
