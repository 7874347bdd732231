package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
)

// Measure is a figure that is worth finding out before money is spent.
type Measure struct {
	What  string  // in plain words
	Short string  // the same, shorter
	Worth float64 // what knowing it alone would save a year on average, in the owner's currency
	// Moves are the prices of a day where the figure is low and where it is
	// high; both 0 where they hardly differ.
	Moves [2]float64
	How   string // the cheapest way to find out
	Key   string // the input's stable name
}

// leastWorth is the saving a year below which finding out is not worth an
// evening: a fiftieth of what the leading way costs a year, and at least one.
// Engineering judgement, from memory.
func (v Voice) leastWorth() float64 {
	return max(1, 0.02*math.Abs(v.r.Of(v.r.Answer.Way()).Fitted.Yearly))
}

// leastMove is the move of the price of a day, between the lowest and the
// highest fifth of a figure, under which it is not worth finding out: a fifth
// of the price. Engineering judgement, from memory.
const leastMove = 0.2

// MeasureFirst lists what is worth finding out first: what the choice between
// ways turns on, the worthiest first, then what moves the price of a day most.
// Matters of taste are never among them.
func (v Voice) MeasureFirst() []Measure {
	var out []Measure
	if v.r.Answer.Way() == "" || v.Nights() == 0 {
		return out
	}
	for _, in := range v.r.Futures.Inputs {
		if v.WorthKnowing(in) || v.movesPrice(in) {
			m := Measure{What: in.Label, Short: in.Short, Worth: in.EVPPI, Key: in.Name,
				How: strings.ReplaceAll(in.FindOut, "{cost}", v.Money(float64(in.FindOutCost)))}
			if v.movesPrice(in) {
				m.Moves = [2]float64{in.PriceLow, in.PriceHigh}
			}
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out, func(a, b Measure) int {
		return cmp.Or(cmp.Compare(v.notable(b.Worth), v.notable(a.Worth)), cmp.Compare(move(b.Moves), move(a.Moves)))
	})
	return out
}

// notable is a worth of knowing, 0 where it is not worth an evening.
func (v Voice) notable(worth float64) float64 {
	if worth <= v.leastWorth() {
		return 0
	}
	return worth
}

func move(prices [2]float64) float64 { return math.Abs(prices[1] - prices[0]) }

// WorthKnowing tells whether finding an input out pays by choosing the way
// better.
func (v Voice) WorthKnowing(in economics.InputFigures) bool {
	return v.r.Answer.Way() != "" && in.EVPPI > v.leastWorth()
}

// movesPrice tells whether an input moves the price of a day enough to be
// worth finding out.
func (v Voice) movesPrice(in economics.InputFigures) bool {
	if v.r.Answer.Way() == "" || !v.Priced(v.Leader()) || math.IsInf(in.PriceLow, 0) || math.IsInf(in.PriceHigh, 0) {
		return false
	}
	return math.Abs(in.PriceHigh-in.PriceLow) > leastMove*v.Leader().PriceOfCold.Typical
}

// MeasureText says what finding out is worth, and how it is done.
func (v Voice) MeasureText(m Measure) string {
	var parts []string
	if v.notable(m.Worth) > 0 {
		parts = append(parts, fmt.Sprintf("worth about %s a year to know", v.Small(m.Worth)))
	}
	if m.Moves != [2]float64{} {
		parts = append(parts, fmt.Sprintf("moves a %s day from %s to %s", v.ColdOrCool(), v.Price(m.Moves[0]), strings.TrimPrefix(v.Price(m.Moves[1]), "about ")))
	}
	return strings.Join(parts, "; ") + ". " + m.How
}

// EVPI says what knowing everything would be worth.
func (v Voice) EVPI() string {
	f := v.r.Futures
	switch {
	case v.Nights() == 0 || v.r.Answer.Way() == "":
		return ""
	case len(f.Weighed) == 0:
		return "First clear what stands in the way: until then there is nothing to choose between."
	case len(f.Weighed) == 1:
		return "Only one way does what you want, so nothing that could be found out would change which."
	case f.EVPI <= v.leastWorth():
		return "Nothing that could be found out would change the choice enough to pay for itself."
	}
	return fmt.Sprintf("To know everything beforehand would save about %s a year (give or take %s). Finding out is worth no more than that.",
		v.Money(f.EVPI), v.Money(2*f.EVPIError))
}
