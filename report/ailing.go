package report

import (
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// ailingTitle heads the sheet on a unit that ails.
const ailingTitle = "The unit is dead, or runs all the time"

// Ailing is a sheet for half an hour with a meter: what to look at, what each
// finding points to, and whether mending is worth its price on this boat. foot
// stands at its foot.
func Ailing(in Input, foot string) layout.Document {
	v := words.Of(in.Reckoning, in.Pack.Book)
	doc := layout.Document{Title: ailingTitle, Subject: v.AilingWorth(), Foot: foot, Margins: margins}
	doc.Part(layout.Close(ailing(v, 0)))
	return doc
}

func ailing(v words.Voice, level int) []layout.Block {
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "You find", Share: 0.34}, {Head: "Likely", Share: 0.32}, {Head: "Mending costs", Share: 0.16}, {Head: "On this boat"}}}
	for _, row := range v.Ailing() {
		t.Rows = append(t.Rows, []string{row.Finds, row.Cause, row.Costs, row.Do})
	}
	return []layout.Block{
		layout.Heading{Level: level, Text: ailingTitle},
		layout.Para{Text: "Half an hour with a meter, before any money. Often it is a switch, a wire, a fan or a thermostat (common practice, no source). " + v.AilingWorth()},
		layout.Heading{Level: level + 1, Text: "Look, in this order"}, layout.Texts(layout.Number, v.AilingSteps()...),
		layout.Heading{Level: level + 1, Text: "What it points to"}, t,
		layout.Para{Style: layout.Small, Text: "Costs are low to high, parts and hands, from memory. Buying or selling: note what was found, and take the higher cost off the price."},
		layout.Heading{Level: level + 1, Text: "Cautions"}, layout.Texts(layout.Dash, v.AilingCautions()...),
	}
}
