package wizard

import (
	"errors"

	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// follow says what follows from an answer: how it was understood, whether it
// is unusual or at odds with another, and what box and power come to.
func (t *talk) follow(row questions.Row, v visit, text string) error {
	boat := t.File.Told()
	if text != "" && row.Kind == questions.Months && boat.Known[row.Key] != quantity.Unsure {
		t.Prompter.Say("That is " + row.Print(&boat) + ".")
	}
	meant, _ := questions.Find(t.meant(row.Key, text))
	if text != "" && meant.Key == insideKey && known(&boat, insideKey) {
		t.Prompter.Say("That is " + text + ", or " + quantity.FormatVolume(boat.Box.Inside.Volume(), t.filled().Units) + ".")
	}
	if doubt := meant.Doubt(&boat); doubt != "" && text != "" {
		t.Prompter.Say(doubt + " If it was a slip, < goes back.")
	}
	for _, fault := range questions.Check(boat) {
		if text == "" || fault.Key == row.Key || !answered(&boat, fault.Key) {
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
	if row.Essential && text != "" {
		t.verdict, t.enough = nil, false // the first answer is to be given anew
	}
	switch {
	case v.why != "":
		return t.tellIfChanged()
	case text == "" && t.at < len(t.asked)-1: // only passed by
	case row.Group == questions.OfBox && t.lastOf(row):
		return t.tellBox()
	case row.Group == questions.OfPower && t.lastOf(row):
		return t.tellPower()
	}
	return nil
}

// lastOf reports whether a row is the last one asked of its group.
func (t *talk) lastOf(row questions.Row) bool {
	last := ""
	for _, r := range questions.All() {
		if r.Group == row.Group && (t.All || r.Essential) && r.Asked(t.File.Told()) {
			last = r.Key
		}
	}
	return row.Key == last
}
