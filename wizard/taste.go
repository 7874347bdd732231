package wizard

import (
	"errors"
	"math"

	"coldreckon/economics/quantity"
)

// worthKey is the answer that taste questions find.
const worthKey = "money.cold_day_worth"

// taste brackets what a day with cold food is worth by two or three amounts to
// take or leave, around the one at which the answer turns, and gives the text
// of the worth found.
func (t *talk) taste(why string) (string, error) {
	r, err := t.figures()
	if err != nil {
		return "", err
	}
	first := handy(6)
	if r.Verdict.TurnKnown {
		first = handy(r.Verdict.TurnWorth)
	}
	var said []bool
	for {
		amount, done := bid(first, said)
		if done {
			return t.concluded(amount, r.Boat.Currency), nil
		}
		q := Question{
			Text: quantity.FormatMoney(quantity.Money(amount), r.Boat.Currency) + " a night for cold milk and fresh meat: would you pay it?",
			Help: "Typical: many would pay $2 to $10 a night. Think of it as money that could go to a meal ashore. There is no wrong answer.",
		}
		if len(said) == 0 {
			q.Why = why
		}
		i, err := t.Prompter.Choose(t.ctx, q, []Choice{
			{Label: "yes", Also: []string{"y"}}, {Label: "no", Also: []string{"n"}},
			{Label: dontKnow, Also: []string{"unknown", "not sure", "dk"}},
		}, 2)
		switch {
		case errors.Is(err, ErrBack) && len(said) > 0:
			said = said[:len(said)-1]
		case err != nil:
			return "", err
		case i == 2 && len(said) == 0:
			return "unknown", nil
		case i == 2:
			return t.concluded(hesitant(first, said), r.Boat.Currency), nil
		default:
			said = append(said, i == 0)
		}
	}
}

// concluded says what the answers come to, and gives it as the text of an answer.
func (t *talk) concluded(amount float64, currency string) string {
	text := quantity.FormatMoney(rounded(amount), currency)
	t.Prompter.Say("I take it that a day with cold food is worth about " + text + " to you, from your answers.")
	return text
}

// hesitant gives the worth that an owner points at who cannot say whether the
// next amount is too much: halfway, as ratios go, from the most accepted so
// far; that amount itself when all before it were refused.
func hesitant(first float64, said []bool) float64 {
	at, _ := bid(first, said)
	accepted := 0.0
	for i, yes := range said {
		if amount, _ := bid(first, said[:i]); yes {
			accepted = math.Max(accepted, amount)
		}
	}
	if accepted == 0 {
		return at
	}
	return math.Sqrt(accepted * at)
}

// bid gives the next amount to ask about after the answers so far, or, when
// they are enough, the worth they point at. The second amount is twice or half
// the first; a third halves the gap when the first two closed one.
func bid(first float64, said []bool) (amount float64, done bool) {
	if len(said) == 0 {
		return first, false
	}
	second := handy(first / 2)
	if said[0] {
		second = handy(first * 2)
	}
	if len(said) == 1 {
		return second, false
	}
	switch {
	case said[0] && said[1]: // more than both
		return handy(second * 1.5), true
	case !said[0] && !said[1]: // less than both
		return math.Max(1, second/2), true
	}
	low, high := math.Min(first, second), math.Max(first, second)
	third := handy(math.Sqrt(low * high))
	if third <= low || third >= high {
		return math.Sqrt(low * high), true
	}
	if len(said) == 2 {
		return third, false
	}
	if said[2] {
		return math.Sqrt(third * high), true
	}
	return math.Sqrt(low * third), true
}

// handy rounds an amount to one that people think in: 1, 1.5, 2, 3, 4, 5, 6 or
// 8 of some power of ten, and at least 1.
func handy(amount float64) float64 {
	if !(amount > 1) {
		return 1
	}
	power := math.Pow(10, math.Floor(math.Log10(amount)))
	best := 10 * power
	for _, step := range []float64{1, 1.5, 2, 3, 4, 5, 6, 8} {
		if v := step * power; v == math.Trunc(v) && math.Abs(math.Log(amount/v)) < math.Abs(math.Log(amount/best)) {
			best = v
		}
	}
	return best
}
