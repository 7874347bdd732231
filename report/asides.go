package report

import (
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// asides sets beside the four ways what joins one of them in another form or is
// left out: ice in a cooler, the drinks in one, what freezing takes, and ways that owners ask after.
// It is empty without nights aboard.
func (a author) asides() []layout.Block {
	if !a.aboard() {
		return nil
	}
	out := []layout.Block{layout.Heading{Level: 1, Text: "Also asked"}}
	if lines := a.v.Cooler(); len(lines) > 0 {
		out = append(out, layout.Heading{Level: 2, Text: "Ice in a thick-walled cooler"}, layout.Texts(layout.Dash, lines...))
	}
	if text := a.v.Chest(); text != "" {
		out = append(out, layout.Heading{Level: 2, Text: "A free-standing chest"}, layout.Texts(layout.Dash, text))
	}
	if lines := a.v.Drinks(); len(lines) > 0 {
		out = append(out, layout.Heading{Level: 2, Text: "Drinks in a cooler beside the box"}, layout.Texts(layout.Dash, lines...))
	}
	if lines := a.v.Freezing(); len(lines) > 0 {
		out = append(out, layout.Heading{Level: 2, Text: "What freezing takes"}, layout.Texts(layout.Dash, lines...))
	}
	if text := a.v.ByDay(); text != "" {
		out = append(out, layout.Heading{Level: 2, Text: "Off at night"}, layout.Texts(layout.Dash, text))
	}
	out = append(out, layout.Heading{Level: 2, Text: "Why not"})
	return append(out, whyNot(a.v))
}

func whyNot(v words.Voice) layout.List {
	var l layout.List
	for _, line := range v.WhyNot() {
		l.Items = append(l.Items, layout.Item{Lead: line.What + ".", Text: line.Text})
	}
	return l
}
