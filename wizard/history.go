package wizard

import (
	"errors"
	"strings"

	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// historyKey is the answer that is put together from what is remembered of a
// load of ice.
const historyKey = "evidence.ice_history"

// history asks how long a load of ice has lasted, in three steps, and gives
// the text of the record.
func (t *talk) history(row questions.Row, why string) (string, error) {
	boat := t.File.Told()
	standing := answered(&boat, row.Key)
	// Until its turn comes, a part is taken to be as is usual.
	parts := []struct{ name, usual, ask, answer string }{
		{name: "ice", usual: "10 kg", ask: row.Ask + " If so, how much ice was it?"},
		{name: "hours", usual: "36", ask: "How long did it last?"},
		{name: "month", usual: "july", ask: "In which month?"},
	}
	record := func() string {
		var fields []string
		for _, p := range parts {
			value := p.usual
			if p.answer != "" {
				value = p.answer
			}
			fields = append(fields, p.name+": "+value)
		}
		return strings.Join(fields, "; ") + "; in_use: yes"
	}
	for i := 0; i < len(parts); {
		part := &parts[i]
		q := Question{Text: part.ask, Help: row.Help, Enter: "if you don't remember"}
		if i == 0 {
			q.Why = why
			if standing {
				q.Enter = "keeps " + t.standing(row)
			}
		}
		q.Check = func(text string) error {
			if why != "" && strings.EqualFold(text, enoughWord) {
				return nil
			}
			part.answer = inHours(part.name, text)
			err := t.refuse(row.Key, record())
			part.answer = ""
			return err
		}
		text, err := t.Prompter.Line(t.ctx, q)
		switch {
		case errors.Is(err, ErrBack) && i > 0:
			i--
		case err != nil:
			return "", err
		case why != "" && strings.EqualFold(text, enoughWord):
			return "", errEnough
		case text == "" && standing:
			return "", nil
		case text == "":
			return unsureText(row), nil
		default:
			part.answer = inHours(part.name, text)
			if part.name == "ice" {
				part.answer = withUnit(part.answer, boat.Units)
			}
			i++
		}
	}
	return record(), nil
}

// inHours turns a span told in days into hours.
func inHours(name, text string) string {
	figure, ok := strings.CutSuffix(strings.TrimSuffix(strings.ToLower(text), "s"), "day")
	if name != "hours" || !ok {
		return text
	}
	days, err := quantity.ParseNumber(strings.TrimSpace(figure))
	if err != nil {
		return text
	}
	return quantity.FormatHours(24 * days)
}

// withUnit gives a bare mass the unit of the owner's system.
func withUnit(text string, system quantity.System) string {
	if _, err := quantity.ParseNumber(text); err != nil {
		return text
	}
	if system == quantity.US {
		return text + " lb"
	}
	return text + " kg"
}
