package wizard

import (
	"errors"

	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// follow says what follows from an answer: how it was understood, whether it
// is unusual or at odds with another, and what box and power come to.
func (t *conversation) follow(row questions.Row, v visit, text string) error {
	boat := t.File.Told()
	if text != "" && row.Kind == questions.Months && boat.Known[row.Key] != quantity.Unsure {
		t.Prompter.Say("That is " + row.Print(&boat) + ".")
	}
	meant, _ := questions.Find(t.meant(row.Key, text))
	if text != "" && meant.Key == insideKey && boat.Told(insideKey) {
		t.Prompter.Say("That is " + text + ", or " + quantity.FormatVolume(boat.Box.Inside.Volume(), t.filled().Units) + ".")
	}
	if text != "" && t.File.Guessed(meant.Key) {
		t.Prompter.Say("Taken as " + meant.Print(&boat) + ".")
	}
	if doubt := meant.Doubt(&boat); doubt != "" && text != "" {
		t.Prompter.Say(doubt + " If it was a slip, < goes back.")
	}
	if text != "" {
		if err := t.agree(v); err != nil {
			return err
		}
	}
	return t.settle(v)
}

// agree asks again for an answer that another one contradicts.
func (t *conversation) agree(v visit) error {
	boat := t.File.Told()
	for _, fault := range questions.Check(boat) {
		if fault.Key == v.key || !answered(&boat, fault.Key) {
			continue
		}
		t.Prompter.Say(sentence(fault))
		err := t.ask(visit{key: fault.Key})
		if errors.Is(err, ErrBack) { // to this one, not to the one before it
			return t.ask(v)
		}
		if err != nil {
			return err
		}
		break
	}
	return nil
}

// settle says what box and power come to, once a group of questions is through,
// and what an answer that was asked for its worth has changed.
func (t *conversation) settle(v visit) error {
	switch {
	case v.why != "":
		return t.tellIfChanged()
	case t.All || t.at < len(t.asked)-1: // only passed by
		return nil
	case v.key == historyKey:
		return t.tellBox()
	case v.key == "power.solar":
		return t.tellPower()
	}
	return nil
}
