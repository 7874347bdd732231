package report

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// method says how the figures were made, what they leave out and where they
// come from.
func (a author) method() []layout.Block {
	f, m := a.r.Futures, a.r.Boat.Money
	granted, sources := granted(a.r.Boat)
	return []layout.Block{
		layout.Heading{Level: 1, Text: "How this was worked out"},
		fine(leads(
			"Heat. Six walls, each with its foam, its water and what lies behind it, with edges, corners, lid seal and drain. Then the air that the lid lets in, and warm food.",
			"One exam for all. A day is cold when the food was too warm for no more than two hours, whether ice or a unit cools it.",
			"Season. Hour by hour it is run: weather, sun, battery, engine, ice or unit. Days differ from day to day as weather does. Meltwater without a drain is bailed once warm. Of 180 nights a year or more a future may spend one in four, by turns, as long as no medicine is aboard.",
			"Unit. Efficiency is a share of what is possible between the plate's and the condenser's temperatures. The plate's temperature follows the load. Cut off by a flat battery, it comes back with shore power, with the engine or at a tenth of the bank.",
			fmt.Sprintf("Money. All payments over %.0f years in prices of today, brought back to today at %s a year above inflation.", float64(m.Years), a.percent()),
			fmt.Sprintf("Futures. %d futures, evenly spread over the uncertain figures, were put to every way alike. Ranges hold 80 of 100 of them.", f.Count),
			"Answer. First which way gives cold days best, of those that do what you want in 87 of 100 futures; under 60 of 100 no winner is named. Then in how many futures a cold day costs no more than it is worth.",
		)),
		layout.Para{Style: layout.Fine, Text: words.ScaleText() + " How well the figures are known is graded apart: strong, fair or weak."},
		layout.Para{Style: layout.Fine, Lead: "Not counted.", Text: "Effort and time, noise, the pleasure of cold drinks and fresh food, safety, and what making ice or a unit does to the climate have no price here. Weigh them yourself: what matters to you is not for this report to say."},
		layout.Para{Style: layout.Fine, Lead: "What this cannot know.", Text: "The models take the box as six flat walls and one air, the crew as steady, and the years as alike but for weather. They are an aid to thinking, not facts. " +
			"Averages hide bad years: look at the ranges. " + a.again()},
		layout.Heading{Level: 1, Text: "Taken for granted"},
		layout.Para{Keep: true, Style: layout.Small, Text: "Figures of the models that no answer replaces. K is a degree Celsius of difference; a figure without a unit is a share of 1."},
		granted,
		layout.Para{Style: layout.Small, Text: "From: " + sources + "."},
		// Kept whole, or the last lines would have a page to themselves.
		layout.Kept{layout.Heading{Level: 1, Text: "Sources"},
			fine(layout.Texts(layout.Dash, a.sources()...)),
			layout.Para{Style: layout.Small, Text: fmt.Sprintf("Program coldreckon %s. Rules and prices %s. %d futures, seed %d. Nobody paid for this report and nothing is sold by it. "+
				"The same answers, program and date give the same pages.", a.Version, a.Pack.Book.Identity, f.Count, f.Seed)}},
	}
}

// granted lists the figures of the models that no answer replaces, with where
// they are from, in the numbers of the table's last column.
func granted(b economics.Boat) (t layout.Table, sources string) {
	t = layout.Table{Fine: true, Columns: []layout.Column{{Head: "Figure", Share: 0.46}, {Head: "Value"}, {Head: "80 of 100 boats"}, {Head: "From", Right: true, Share: 0.07}}}
	var from origins
	for _, g := range economics.Granted(b) {
		t.Rows = append(t.Rows, []string{words.Capital(g.Label), g.Figure(), g.Span(), from.number(g.Why)})
	}
	return t, from.String()
}

// again says when to make the report anew.
func (a author) again() string {
	when := "after a year"
	if !a.Date.IsZero() {
		when = "by " + day(a.Date.AddDate(1, 0, 0))
	}
	return "Prices move: make the report anew " + when + ", or when anything in it has changed."
}

// fine sets a list smaller.
func fine(l layout.List) layout.List {
	l.Fine = true
	return l
}

// leads makes a list whose items open with their subject in bold, up to the
// first full stop.
func leads(texts ...string) layout.List {
	l := layout.List{Mark: layout.Dash}
	for _, t := range texts {
		lead, rest, _ := strings.Cut(t, ". ")
		l.Items = append(l.Items, layout.Item{Lead: lead + ".", Text: rest})
	}
	return l
}

// sources names the published methods and the climate's origins.
func (a author) sources() []string {
	out := []string{
		"Walls and films: ASHRAE Handbook, Fundamentals. Edges and corners: Langmuir, Adams and Meikle, 1913. Wet foam: EN ISO 10456.",
		"Ice: FAO Fisheries Technical Papers 331, 348 and 436. Moist air: ASHRAE Handbook, Fundamentals, chapter 1.",
		"Sun: FAO Irrigation and Drainage Paper 56; Collares-Pereira and Rabl, 1979; Graham, Hollands and Brunger, 1988.",
		"Money: NIST Handbook 135; ASTM E917, E1057, E1074 and E1121. Worth of knowing: Strong, Oakley and Brennan, 2014.",
		"Growth of listeria: FDA and USDA FSIS, 2003.",
	}
	if text := groundSources(a.r.Ground); text != "" {
		out = append(out, "Climate of "+a.r.Ground.Name+": "+text+".")
	}
	return append(out, a.priceSources())
}

// groundSources lists the distinct origins of a ground's figures.
func groundSources(g climate.Ground) string {
	var out []string
	put := func(what, provenance string) {
		if text := what + " " + climate.Explain(provenance); provenance != "" && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	for _, m := range g.Months {
		put("air", m.Provenance.Air)
		put("sea", m.Provenance.Sea)
		put("sun", m.Provenance.Sun)
	}
	return strings.Join(out, "; ")
}

// priceSources counts how the prices that were used are known.
func (a author) priceSources() string {
	used := map[string]bool{}
	for i := range a.r.Options {
		for _, l := range a.r.Options[i].Fitted.Lines {
			used[l.ID] = true
		}
	}
	grades := map[string]int{}
	for _, p := range a.Pack.Book.Prices {
		if used[p.ID] {
			grades[p.Grade]++
		}
	}
	return fmt.Sprintf("Prices: of the %d lines of the price book that were used, %d were read in an official source, %d read elsewhere, %d are from memory. Your own prices come first.",
		grades["a"]+grades["b"]+grades["c"], grades["a"], grades["b"], grades["c"])
}
