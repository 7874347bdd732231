package report

import (
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// alsoAsked sets beside the four ways what joins one of them in another form or is
// left out: ice in a cooler, the drinks in one, what freezing takes, and ways that owners ask after.
// It is empty without nights aboard.
func (a author) alsoAsked() []layout.Block {
	if !a.aboard() {
		return nil
	}
	out := []layout.Block{layout.Heading{Level: 1, Text: "Also asked"}}
	add := func(head string, lines ...string) {
		if len(lines) > 0 && lines[0] != "" {
			out = append(out, layout.Heading{Level: 2, Text: head}, layout.Texts(layout.Dash, lines...))
		}
	}
	add("Ice in a thick-walled cooler", a.v.Cooler()...)
	add("A free-standing chest", a.v.Chest())
	add("Drinks in a cooler beside the box", a.v.Drinks()...)
	add("What freezing takes", a.v.Freezing()...)
	add("Off at night", a.v.ByDay())
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
