package wizard

import (
	"errors"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// review shows everything answered and assumed, to confirm or change.
func (t *talk) review() error {
	for {
		r, err := t.figures()
		if err != nil {
			return err
		}
		t.Prompter.Say("The answer: " + wording(r.Verdict))
		t.verdict = &r.Verdict
		rows, choices := t.listing()
		i, err := t.Prompter.Choose(t.ctx, Question{
			Text: "Here is all I go by. Is it right, or which shall we change?",
			Help: "Typical: look at what is assumed; change what you know better. A number or a word picks a line.",
		}, choices, 0)
		if err != nil || i == 0 {
			return err
		}
		if err := t.ask(visit{key: rows[i-1].Key}); err != nil && !errors.Is(err, ErrBack) {
			return err
		}
	}
}

// listing lists the rows with a line of the review each; the first choice is
// to leave all as it is.
func (t *talk) listing() ([]questions.Row, []Choice) {
	boat, filled := t.File.Told(), t.filled()
	assumed := map[string]bool{}
	for _, a := range filled.Assumptions {
		assumed[a.Key] = true
	}
	choices := []Choice{{Label: "all is right", Also: []string{"yes", "ok", "done", "right"}}}
	var rows []questions.Row
	for _, part := range []struct {
		heading string
		belongs func(questions.Row) bool
	}{
		{"You told me", func(r questions.Row) bool { return known(&boat, r.Key) }},
		{"I assumed", func(r questions.Row) bool { return assumed[r.Key] && !known(&boat, r.Key) }},
	} {
		for _, row := range questions.All() {
			if part.belongs(row) && row.Asked(boat) {
				rows = append(rows, row)
				choices = append(choices, Choice{Label: row.Label + ": " + row.Print(&filled), Also: []string{row.Key}, Heading: part.heading})
			}
		}
	}
	return rows, choices
}

// known reports whether a key's value is the owner's own.
func known(boat *economics.Boat, key string) bool {
	how := boat.Known[key]
	return how == quantity.Told || how == quantity.Measured
}
