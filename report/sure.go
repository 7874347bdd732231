package report

import (
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// sure says where the answer turns, what to find out first and how sure it is.
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
	first = append(first, layout.Para{Text: a.v.EVPI()})

	var out []layout.Block
	if turn, ok := a.boundary(); ok {
		out = append(out, layout.Side{Shares: []float64{3, 2}, Columns: [][]layout.Block{{layout.Heading{Level: 1, Text: "Where the answer turns"}, turn}, first}})
	} else {
		out = append(out, first...)
	}
	texts := []string{a.v.EvidenceText()}
	if a.aboard() {
		texts = append(a.v.Sure()[2:], texts...)
	}
	return append(out, layout.Heading{Level: 1, Text: "How sure this is"}, list(layout.Dash, texts))
}
