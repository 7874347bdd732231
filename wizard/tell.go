package wizard

import "fmt"

// tellFirst gives the provisional answer.
func (t *talk) tellFirst() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	o := outlookOf(r)
	t.Prompter.Say("First look: " + o.words)
	t.verdict = &o
	return nil
}

// tellIfChanged says what an answer did to the verdict.
func (t *talk) tellIfChanged() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	before, now := t.verdict, outlookOf(r)
	t.verdict = &now
	switch {
	case before == nil || before.way != now.way:
		t.trials = nil // they were for another choice
		t.Prompter.Say("That changes the answer. Now: " + now.words)
	case before.words == now.words:
		t.Prompter.Say("That leaves the answer as it was.")
	case before.of100 != now.of100 && now.of100 > 0:
		t.Prompter.Say(fmt.Sprintf("Still %s, now best in %d of 100; it was %d.", names[now.way], now.of100, before.of100))
	default:
		t.Prompter.Say("Now: " + now.words)
	}
	return nil
}
