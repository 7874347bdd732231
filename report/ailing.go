package report

import (
	"coldreckon/economics"
	"coldreckon/economics/quantity"
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

// AilingByHand is the same half hour for a worksheet, before anything is told of
// a boat: what was found is marked, and what to do is left to the figures.
func AilingByHand(units quantity.System, currency string, book economics.Book) []layout.Block {
	v := words.Of(&economics.Reckoning{Boat: economics.Boat{Units: units, Currency: currency}}, book)
	out := []layout.Block{
		layout.Heading{Level: 1, Text: "Only if a unit is aboard that is dead, or runs all the time"},
		layout.Para{Wide: true, Text: ailingIntro + " Mark what you find. Whether to mend it, replace it or take it out follows from the boat: coldreckon ailing FILE."},
	}
	return []layout.Block{layout.Close(append(out, ailingRest(v, 2, "Found", func(words.Ail) string { return "__________" })...))}
}

const ailingIntro = "Half an hour with a meter, before any money. Often it is a switch, a wire, a fan or a thermostat (common practice, no source)."

func ailing(v words.Voice, level int) []layout.Block {
	return append([]layout.Block{layout.Heading{Level: level, Text: ailingTitle}, layout.Para{Wide: true, Text: ailingIntro + " " + v.AilingWorth()}},
		ailingRest(v, level+1, "On this boat", func(row words.Ail) string { return row.Do })...)
}

// ailingRest is the sheet under its opening; the last column has a head and a
// cell for each finding.
func ailingRest(v words.Voice, level int, head string, cell func(words.Ail) string) []layout.Block {
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "You find", Share: 0.34}, {Head: "Likely", Share: 0.32}, {Head: "Mending costs", Share: 0.16}, {Head: head}}}
	for _, row := range v.Ailing() {
		t.Rows = append(t.Rows, []string{row.Finds, row.Cause, row.Costs, cell(row)})
	}
	return []layout.Block{
		layout.Heading{Level: level, Text: "Look, in this order"}, listed(layout.Number, v.AilingSteps()),
		layout.Heading{Level: level, Text: "What it points to"}, t,
		layout.Para{Style: layout.Small, Text: "Costs are low to high, parts and hands, from memory. Buying or selling: note what was found, and take the higher cost off the price."},
		layout.Heading{Level: level, Text: "Cautions"}, listed(layout.Dash, v.AilingCautions()),
	}
}

// listed are texts to go by with a meter in hand.
func listed(mark layout.Mark, texts []string) layout.List {
	l := layout.Texts(mark, texts...)
	l.Steps = true
	return l
}
