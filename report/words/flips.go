package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Flip is one thing that would change the answer.
type Flip struct {
	Text   string
	Beyond int // futures of 100 that lie beyond; -1 when it is not a chance
}

// leastBeyond is the chance of lying beyond a switching value under which it
// is not worth a line.
const leastBeyond = 0.05

// Flips lists what would change the answer: the switching values of the figures
// between ways, with the chance of lying beyond them, the likeliest first; the
// figures that move the price of a day most; and the nights at which a unit
// costs what ice costs. It is empty where there is no way to speak of.
func (v Voice) Flips() []Flip {
	var out []Flip
	if v.r.Answer.Way() == "" || len(v.r.Futures.Weighed) == 0 {
		return out
	}
	var ins []economics.InputFigures
	for _, in := range v.r.Futures.Inputs {
		if in, ok := v.awayFromTheAnswer(in); ok && in.ChanceBeyond >= leastBeyond {
			ins = append(ins, in)
		}
	}
	slices.SortStableFunc(ins, func(a, b economics.InputFigures) int { return cmp.Compare(b.ChanceBeyond, a.ChanceBeyond) })
	for _, in := range ins {
		out = append(out, Flip{v.flip(in), share100(in.ChanceBeyond)})
	}
	for _, in := range v.movers() {
		out = append(out, Flip{v.movesTheDay(in), -1})
	}
	for _, b := range v.r.BreakEven {
		if text := v.breakEven(b); text != "" && v.rival(b.Option) {
			out = append(out, Flip{text, -1})
		}
	}
	if len(out) == 0 {
		out = append(out, Flip{"No single figure turns this answer within the range it is reckoned with.", -1})
	}
	return out
}

// movers lists the inputs that move the price of a day as it is printed, the
// strongest first.
func (v Voice) movers() []economics.InputFigures {
	var out []economics.InputFigures
	for _, in := range v.r.Futures.Inputs {
		if v.movesPrice(in) && v.Price(in.PriceLow) != v.Price(in.PriceHigh) {
			out = append(out, in)
		}
	}
	slices.SortStableFunc(out, func(a, b economics.InputFigures) int {
		return cmp.Compare(math.Abs(b.PriceHigh-b.PriceLow), math.Abs(a.PriceHigh-a.PriceLow))
	})
	return out
}

// movesTheDay says what an input does to the price of a day.
func (v Voice) movesTheDay(in economics.InputFigures) string {
	low, high := v.Ends(in)
	if in.Unit == "nights" && in.High > 365 { // no year has so many
		return fmt.Sprintf("%s: at %s a %s day costs %s.", Capital(in.Short), low, v.ColdOrCool(), v.Price(in.PriceLow))
	}
	return fmt.Sprintf("%s: at %s a %s day costs %s, at %s %s.", Capital(in.Short), low, v.ColdOrCool(), v.Price(in.PriceLow), high, v.Price(in.PriceHigh))
}

// rival tells whether a unit's break-even with ice can change the answer: one
// of the two is the answer, and the other works now and then.
func (v Voice) rival(unit economics.OptionID) bool {
	other := economics.IceOnly
	switch v.r.Answer.Way() {
	case economics.IceOnly:
		other = unit
	case unit:
	default:
		return false
	}
	return v.r.Of(other).WorksOf100 >= 10
}

// awayFromTheAnswer gives an input's switching value as what would turn the
// answer. Switching values are those of the mean loss, and the answer goes by
// counts: where the mean prefers another option and the input turns it to the
// answer, the other side of the value is what turns away from it, unless most
// futures lie there already.
func (v Voice) awayFromTheAnswer(in economics.InputFigures) (economics.InputFigures, bool) {
	answer, preferred := v.r.Answer.Way(), v.r.Futures.Preferred
	switch {
	case !in.SwitchKnown:
		return in, false
	case in.SwitchTo != answer:
		return in, preferred == answer
	case preferred == answer:
		return in, false
	}
	in.SwitchTo, in.SwitchAbove, in.ChanceBeyond = preferred, !in.SwitchAbove, 1-in.ChanceBeyond
	return in, in.ChanceBeyond <= 0.5
}

// flip says at which value of an input the answer turns.
func (v Voice) flip(in economics.InputFigures) string {
	to := in.SwitchTo
	turns := fmt.Sprintf("%s %s better", In(to), is(to))
	lie := "lie"
	if share100(in.ChanceBeyond) == 1 {
		lie = "lies"
	}
	return fmt.Sprintf("If %s, %s. %s futures %s there.", v.beyond(in), turns, Capital(of100(share100(in.ChanceBeyond))), lie)
}

// beyond words "the figure lies beyond its switching value".
func (v Voice) beyond(in economics.InputFigures) string {
	at := v.Value(in.Input, in.SwitchAt)
	more, fewer := "less than", "fewer than"
	if in.SwitchAbove {
		more, fewer = "more than", "more than"
	}
	return strings.NewReplacer("{more}", more, "{fewer}", fewer, "{at}", at).Replace(in.Beyond)
}

// Value prints a figure of an uncertain input in the owner's units. An input
// without a unit of its own is printed as a share of what was reckoned.
func (v Voice) Value(in economics.Input, x float64) string {
	switch in.Unit {
	case "W/K":
		return v.leak(x)
	case "K":
		return quantity.FormatTemperatureDifference(quantity.Kelvin(x), v.sys)
	case "nights":
		return Plural(x, "night")
	case "money/kg":
		return quantity.FormatPricePerMass(quantity.MoneyPerKg(x), v.r.Boat.Currency, v.sys)
	case "money", "money/year":
		return v.Money(x)
	case "years":
		return quantity.FormatYears(quantity.Year(Round(x)))
	case "W":
		return power(x)
	case "Ah/day":
		return Charge(x) + " a day"
	case "cans a person and day":
		return Plural(math.Round(x), "can") + " a day"
	case "Ah":
		return Charge(x)
	}
	return strings.TrimSuffix(quantity.FormatShare(quantity.Fraction(Round(x/cmp.Or(in.Typical, 1)))), " %") + " % of what was reckoned"
}

// Ends prints the ends of an input's range as short as a chart wants them.
func (v Voice) Ends(in economics.InputFigures) (low, high string) {
	const tail = " of what was reckoned"
	return strings.TrimSuffix(v.Value(in.Input, in.Low), tail), strings.TrimSuffix(v.Value(in.Input, in.High), tail)
}

// BySwing lists the uncertain inputs that move the difference of the best two,
// the widest swing first. Inputs that do not vary are left out.
func (v Voice) BySwing() []economics.InputFigures {
	var out []economics.InputFigures
	for _, in := range v.r.Futures.Inputs {
		if in.Low != in.High {
			out = append(out, in)
		}
	}
	slices.SortStableFunc(out, func(a, b economics.InputFigures) int {
		return cmp.Compare(math.Abs(b.SwingHigh-b.SwingLow), math.Abs(a.SwingHigh-a.SwingLow))
	})
	return out
}

// MovesMost names the inputs that move the choice most.
func (v Voice) MovesMost() string {
	ins := v.BySwing()
	if len(ins) < 2 {
		return "Nothing uncertain moves the choice."
	}
	return fmt.Sprintf("The choice moves most with %s and with %s.", ins[0].Label, ins[1].Label)
}

// Apart is how much more the first of two options loses a year than the
// second, at typical figures.
func (v Voice) Apart(lead, next economics.OptionID) float64 {
	return v.r.TypicalLoss(lead) - v.r.TypicalLoss(next)
}

// BestTwo gives the options of least and next to least mean loss over all
// futures, whose difference the swings are of; false when only one is weighed.
func (v Voice) BestTwo() (lead, next economics.OptionID, ok bool) {
	f := v.r.Futures
	return f.Preferred, f.Runner, f.Preferred != f.Runner
}
