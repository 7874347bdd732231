package wizard

import (
	"fmt"
	"reflect"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// futures is how many futures a reckoning between two questions looks at: a quick
// look, whose search for work is quick as well. A trial looks at as many as the
// answer it is held against, and so at the same ones.
const futures = 100

// unlike is the chance that an owner's boat differs from a default, which is
// what most boats have. Engineering judgement, from memory.
const unlike = 0.3

// others gives the boats that another answer to a row would make, each as
// likely as the next: the other choices, or figures halfway to the ends of
// what is usual. The boats are filled.
func (t *conversation) others(row questions.Row) []economics.Boat {
	var boats []economics.Boat
	add := func(value any) {
		boat := t.File.Told()
		if boat.Known == nil {
			boat.Known = map[string]quantity.How{}
		}
		row.Field(&boat).Put(value)
		boat.Known[row.Key] = quantity.Told
		questions.Fill(&boat, t.Book())
		boats = append(boats, boat)
	}
	now := t.filled()
	taken := row.Print(&now)
	for _, r := range choicesOf(row) {
		if r.Label != taken {
			add(choiceOf(row, r))
		}
	}
	if v := reflect.ValueOf(row.Field(&now).Get()); v.CanFloat() {
		low, high, from := row.Limits.Low, row.Limits.High, v.Float()
		if from < low || from > high { // such as 0 for "no limit"
			from = questions.Middle(low, high)
		}
		for _, end := range []float64{low, high} {
			if end != from {
				add(questions.Middle(from, end))
			}
		}
	}
	return boats
}

// decides are details that are tried all the same: they turn answers.
var decides = map[string]bool{"ice.share_of_box": true, "ice.carry_limit": true}

// tryAll weighs every open question whose answer the reckoning takes for
// granted, details apart, and what is in the box already, which moves no figure.
func (t *conversation) tryAll(uncertain []economics.InputFigures) error {
	t.Prompter.Say("One moment. I am trying what else could turn this.")
	boat := t.File.Told()
	t.trials = []candidate{}
	var sharpens []string
	for _, in := range uncertain {
		sharpens = append(sharpens, in.SharpenedBy...)
	}
	for _, row := range questions.All() {
		if row.Detail && !decides[row.Key] || row.Safety || row.Key == worthKey || row.Key == "box.fitted_unit" ||
			slices.Contains(sharpens, row.Key) || !open(row.Key, &boat) {
			continue
		}
		c := candidate{key: row.Key}
		if err := t.try(&c); err != nil {
			return err
		}
		t.trials = append(t.trials, c)
	}
	return nil
}

// try works out what the answer to a question is worth: what standing by the
// present choice would lose a year, on average, were another answer the true
// one; and between which prices of a cold day the other answers lie.
func (t *conversation) try(c *candidate) error {
	row, _ := questions.Find(c.key)
	now, err := t.figures()
	if err != nil {
		return err
	}
	*c = candidate{key: c.key, asOf: t.saved, worth: worth{prices: [2]float64{dayPrice(now), dayPrice(now)}}}
	boats := t.others(row)
	for _, boat := range boats {
		r, err := t.Reckon(boat, futures)
		if err != nil {
			return fmt.Errorf("trying other answers to %s: %w", row.Key, err)
		}
		c.money += unlike / float64(len(boats)) * lossOf(r, now.Futures.Preferred)
		c.prices[0], c.prices[1] = min(c.prices[0], dayPrice(r)), max(c.prices[1], dayPrice(r))
	}
	return nil
}

// choiceOf gives the value of one of a row's fixed answers, as its field takes it.
func choiceOf(row questions.Row, r reply) any {
	if row.Kind == questions.YesNo {
		return r.text == "yes"
	}
	return r.text
}
