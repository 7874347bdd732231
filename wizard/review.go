package wizard

import (
	"errors"
	"fmt"

	"coldreckon/wizard/questions"
)

// review shows everything answered and assumed, to confirm or change.
func (t *conversation) review() error {
	for {
		r, err := t.Reckon(t.filled(), t.Futures)
		if err != nil {
			return fmt.Errorf("reckoning the answers: %w", err)
		}
		o := t.outlook(r)
		t.Prompter.Say("The answer: " + o.words)
		t.verdict = &o
		rows, choices := t.listing()
		i, err := t.Prompter.Choose(t.ctx, Question{
			Text: "Here is all I go by. Is it right, or which shall we change?",
			Help: "Typical: look at what is assumed; change what you know better. A number or a word picks a line.",
		}, choices, 0)
		switch {
		case err != nil || i == 0:
			return err
		case i == 1:
			t.onward, t.enough = true, false
			if err := t.questions(); err != nil {
				return err
			}
			continue
		}
		key := offersKey
		if i > 2 {
			key = rows[i-3].Key
		}
		if err := t.ask(visit{key: key}); err != nil && !errors.Is(err, ErrBack) {
			return err
		}
	}
}

// listing lists the rows with a line of the review each, after the choices to
// leave all as it is, to be asked more and to add an offer.
func (t *conversation) listing() ([]questions.Row, []Choice) {
	boat, filled := t.File.Told(), t.filled()
	assumed := map[string]bool{}
	for _, a := range filled.Assumptions {
		assumed[a.Key] = true
	}
	choices := []Choice{{Label: "all is right", Also: []string{"yes", "ok", "done", "right"}}, {Label: "ask me more questions", Also: []string{"more", "ask on"}},
		{Label: "I have been given a price for a unit: add an offer", Also: []string{"offer", "quotation", "price for a unit"}}}
	var rows []questions.Row
	for _, part := range []struct {
		heading string
		belongs func(questions.Row) bool
	}{
		{"You told me", func(r questions.Row) bool { return boat.Told(r.Key) }},
		{"I assumed", func(r questions.Row) bool { return assumed[r.Key] && !boat.Told(r.Key) && r.Key != worthKey }},
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
