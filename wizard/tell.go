package wizard

// tellFirst gives the provisional answer.
func (t *conversation) tellFirst() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	o := t.outlook(r)
	t.Prompter.Say("First look: " + o.words)
	t.verdict = &o
	return nil
}

// tellIfChanged says what an answer did to the answer.
func (t *conversation) tellIfChanged() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	before, now := t.verdict, t.outlook(r)
	t.verdict = &now
	switch {
	case before == nil || !before.same(now):
		t.trials = nil // they were for another choice
		t.Prompter.Say("That changes the answer. Now: " + now.words)
	case before.words == now.words:
		t.Prompter.Say("That leaves the answer as it was.")
	default:
		t.Prompter.Say("The answer stands, with other figures: " + now.words)
	}
	return nil
}
