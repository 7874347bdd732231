package wizard

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// offersKey is the answer that offers of units are kept in.
const offersKey = "quotations"

// offers takes the offers on the owner's table one by one, and out again.
func (t *conversation) offers() error {
	for {
		boat := t.filled()
		held := boat.Quotations
		choices := []Choice{{Label: "no, these are all", Also: []string{"no", "n", "done"}}}
		if len(held) < economics.MostQuotations {
			choices = append(choices, Choice{Label: "yes, add one", Also: []string{"yes", "y", "add"}})
		}
		first := len(choices)
		for _, q := range held {
			choices = append(choices, Choice{Label: "take out " + q.Name + ", " + quantity.FormatMoney(q.Price, boat.Currency)})
		}
		i := 1
		if len(held) > 0 {
			var err error
			if i, err = t.Prompter.Choose(t.ctx, Question{
				Text: fmt.Sprintf("Offers so far: %d. Another?", len(held)),
				Help: "The best offer stands for its class of unit in the answer. 'coldreckon units' sets them side by side.",
			}, choices, 0); err != nil || i == 0 {
				return err
			}
		}
		if i >= first {
			left := slices.Delete(slices.Clone(held), i-first, i-first+1)
			if err := t.keepOffers(left); err != nil || len(left) == 0 {
				return err
			}
			continue
		}
		offer, err := t.offer(&boat)
		switch {
		case errors.Is(err, ErrBack) && len(held) > 0:
			continue
		case err != nil:
			return err
		}
		if err := t.keepOffers(append(slices.Clone(held), offer)); err != nil {
			return err
		}
	}
}

// offer asks for one offer, part by part; "back" before its name leaves it.
func (t *conversation) offer(boat *economics.Boat) (economics.Quotation, error) {
	type place struct {
		part   int
		before economics.Quotation
	}
	var q economics.Quotation
	var passed []place
	parts := questions.OfferParts(&q)
	for at := 0; at < len(parts); at++ {
		if !parts[at].Asked(*boat) {
			continue
		}
		before := q
		err := t.offerPart(boat, &q, parts[at])
		switch last := len(passed) - 1; {
		case errors.Is(err, ErrBack) && last >= 0:
			at, q, passed = passed[last].part-1, passed[last].before, passed[:last]
		case errors.Is(err, errEnough):
			return q, nil
		case err != nil:
			return q, err
		default:
			passed = append(passed, place{at, before})
		}
	}
	return q, nil
}

// offerPart asks for one part of an offer. All but name and price may be left
// out, and "enough" leaves out the rest.
func (t *conversation) offerPart(boat *economics.Boat, q *economics.Quotation, part questions.Row) error {
	ask := Question{Text: part.Ask, Enter: "if it does not say",
		Help: `As printed on the offer or its data sheet. What it does not say is taken as usual for a unit of its class. "` + enoughWord + `" leaves out the rest.`}
	needed := part.Key == "name" || part.Key == "price"
	if replies := choicesOf(part); replies != nil {
		enter := len(replies)
		replies = append(replies, reply{Choice: Choice{Label: dontKnow, Also: []string{"unknown", "not sure", "dk"}}}, reply{Choice{Label: enoughWord}, enoughWord})
		text, err := t.oneOf(ask, replies, enter)
		if err != nil || text == "" {
			return err
		}
		return questions.PutOffer(boat, q, part.Key, text)
	}
	otherwise := ""
	switch part.Key {
	case "name":
		for n := len(boat.Quotations) + 1; otherwise == "" || slices.ContainsFunc(boat.Quotations, func(q economics.Quotation) bool { return strings.EqualFold(q.Name, otherwise) }); n++ {
			otherwise = fmt.Sprintf("offer %d", n)
		}
		ask.Enter = "calls it " + otherwise
	case "price":
		ask.Enter = ""
	}
	ask.Check = func(text string) error {
		if !needed && (questions.Unsure(text) || strings.EqualFold(text, enoughWord)) {
			return nil
		}
		trial := *q
		err := questions.PutOffer(boat, &trial, part.Key, text)
		var fault questions.Fault
		if errors.As(err, &fault) {
			return refusal(sentence(fault))
		}
		return err
	}
	for {
		text, err := t.Prompter.Line(t.ctx, ask)
		switch {
		case err != nil:
			return err
		case text == "" && part.Key == "price":
			t.Prompter.Say("Without a price there is nothing to weigh. < goes back.")
			continue
		case text == "":
			text = otherwise
		}
		switch {
		case text == "", !needed && questions.Unsure(text):
			return nil
		case !needed && strings.EqualFold(text, enoughWord):
			return errEnough
		}
		return questions.PutOffer(boat, q, part.Key, text)
	}
}

// keepOffers puts the offers into the file and saves it.
func (t *conversation) keepOffers(offers []economics.Quotation) error {
	if len(offers) == 0 {
		if err := t.File.Remove(offersKey); err != nil {
			return err
		}
		return t.changed()
	}
	boat := t.File.Told()
	boat.Quotations, boat.Known[offersKey] = offers, quantity.Measured
	in, _ := questions.Given(&boat, offersKey)
	if err := t.File.Accept(offersKey, in); err != nil {
		return err
	}
	return t.changed()
}
