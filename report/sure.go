package report

import (
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// sure says what to find out first and how well the figures are known.
func (a author) sure() []layout.Block {
	first := []layout.Block{layout.Heading{Level: 1, Text: "What to find out first"}}
	l := layout.List{Mark: layout.Number}
	for _, m := range a.v.MeasureFirst() {
		if len(l.Items) < 3 && a.aboard() {
			l.Items = append(l.Items, layout.Item{Lead: words.Capital(m.Short) + ":", Text: a.v.MeasureText(m)})
		}
	}
	if len(l.Items) > 0 {
		first = append(first, l)
	}
	if text := a.v.EVPI(); text != "" {
		first = append(first, layout.Para{Text: text})
	}

	return append(first, layout.Heading{Level: 1, Text: "How well this is known"}, layout.Para{Text: a.v.EvidenceText()})
}
