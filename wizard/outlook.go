package wizard

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// outlook is what a conversation needs of a reckoning.
type outlook struct {
	ways  []economics.OptionID // that lead
	kind  economics.Case
	words string  // the answer
	price float64 // of a cold day by the way that leads, 0 where the answer does not turn on its worth
}

// outlook reads a reckoning.
func (t *conversation) outlook(r *economics.Reckoning) outlook {
	o := outlook{ways: r.Answer.Ways, kind: r.Answer.Case, words: t.Headline(r)}
	switch r.Answer.Case {
	case economics.ByWorth, economics.RatherNot:
		o.price = r.Of(r.Answer.Way()).PriceOfCold.Typical
	}
	return o
}

// same tells whether two outlooks are of one answer, whatever its figures.
func (o outlook) same(other outlook) bool {
	return o.kind == other.kind && slices.Equal(o.ways, other.ways)
}

// Below hardlyWorth, a share of what the way that leads costs a year, an answer
// is unlikely to change the choice; below hardlyMoves, a share of the price of a
// cold day, it hardly moves that. Engineering judgement, from memory.
const hardlyWorth, hardlyMoves = 0.02, 0.2

// dearestPrice of a cold day is the most that is told; beyond, it is all one.
const dearestPrice = 50

// worth is what an answer is worth: money saved a year on average by choosing the
// way better, and the prices of a cold day that it may move to, the lower first.
type worth struct {
	money  float64
	prices [2]float64
}

// worthOf gives what knowing an uncertain figure is worth.
func worthOf(in economics.InputFigures) worth {
	return worth{in.EVPPI, [2]float64{min(in.PriceLow, in.PriceHigh), max(in.PriceLow, in.PriceHigh)}}
}

// A scale weighs worths against a reckoning: 1 is as little as is worth asking for.
type scale struct{ money, price float64 }

func scaleOf(r *economics.Reckoning) scale {
	s := scale{1, math.Inf(1)}
	if way := r.Answer.Way(); way != "" {
		s.money = max(1, hardlyWorth*math.Abs(r.Of(way).Fitted.Yearly))
	}
	if p := dayPrice(r); p < dearestPrice {
		s.price = max(0.25, hardlyMoves*p)
	}
	return s
}

func (s scale) of(w worth) float64 {
	low, high := min(w.prices[0], dearestPrice), min(w.prices[1], dearestPrice)
	return max(w.money/s.money, (high-low)/s.price)
}

// why tells why a question is asked.
func (s scale) why(w worth, b *economics.Boat) string {
	switch {
	case w.money >= s.money:
		return fmt.Sprintf("This could move the answer: worth about %s a year to know.", quantity.FormatMoney(rounded(w.money), b.Currency))
	case s.of(w) >= 1:
		return fmt.Sprintf("This could move the price of a %s day: from %s to %s.", coldOrCool(b), price(w.prices[0], b.Currency), price(w.prices[1], b.Currency))
	}
	return "This one only sharpens the figures."
}

// price says what a cold day costs, to the nearest step that a person would say.
func price(x float64, currency string) string {
	if x > dearestPrice {
		return "over " + quantity.FormatMoney(dearestPrice, currency)
	}
	return quantity.FormatMoney(quantity.Money(economics.Say(x)), currency)
}

// dayPrice is the middle price of a cold day by the way that leads, infinite
// where none does.
func dayPrice(r *economics.Reckoning) float64 {
	if len(r.Futures.Weighed) == 0 {
		return math.Inf(1)
	}
	return r.Of(r.Answer.Way()).PriceOfCold.Typical
}

// lossOf is what a choice loses a year against the best way: on average of the
// futures where it is one of those weighed, at typical figures where it is not.
func lossOf(r *economics.Reckoning, choice economics.OptionID) float64 {
	f := r.Futures
	switch {
	case choice == "" || len(f.Weighed) == 0:
		return 0
	case slices.Contains(f.Weighed, choice):
		return max(0, r.Of(choice).ExpectedRegret-r.Of(f.Preferred).ExpectedRegret)
	}
	return max(0, r.TypicalLoss(choice)-r.TypicalLoss(f.Preferred))
}

// unitInPlay names the unit that the answer turns on.
func unitInPlay(r *economics.Reckoning) string {
	if way := r.Answer.Way(); way == economics.LargerUnit || way != economics.SmallUnit && r.Futures.Runner == economics.LargerUnit {
		return "larger"
	}
	return "small"
}
