package figures

import (
	"fmt"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// Plain gives the chief figures for a terminal: plain text of at most 80
// columns, in the owner's units and currency.
func Plain(in Input) string {
	r := in.Reckoning
	v := words.Of(r, in.Book)
	doc := layout.Document{}
	doc.Add(
		layout.Heading{Level: 0, Text: fmt.Sprintf("%s, %s", r.Boat.Name, r.Ground.Name)},
	)
	doc.Add(layout.Paras(layout.Body, append([]string{v.Medicine(), v.Answer(), strings.TrimSpace(v.Grade() + " " + v.Counts())}, v.Also()...)...)...)
	doc.Add(layout.Texts(layout.Number, v.Reasons()...),
		layout.Heading{Level: 1, Text: "Side by side, as told → with the work needed"}, beside(v.ToldAndFitted()))
	for _, id := range economics.Options {
		if work := v.Work(id); len(work) > 0 {
			var pieces []string
			for _, w := range work {
				pieces = append(pieces, strings.TrimSpace(w.What+" "+w.Cost))
			}
			doc.Add(layout.Para{Text: words.Name(id) + " needs:"}, layout.Texts(layout.Dash, pieces...))
		}
	}
	if len(r.Months) > 0 {
		doc.Add(layout.Heading{Level: 1, Text: "Mean day of each month aboard, box as told"}, months(r))
	}
	doc.Add(layout.Heading{Level: 1, Text: "The box"}, layout.Para{Text: v.LeakText()})
	if flips := v.Flips(); len(flips) > 0 {
		var texts []string
		for _, f := range flips {
			texts = append(texts, f.Text)
		}
		doc.Add(layout.Heading{Level: 1, Text: "What would change the answer"}, layout.Texts(layout.Dash, texts...))
	}
	var stops []layout.Item
	for _, f := range in.Findings {
		if f.Grade == rules.Stop {
			stops = append(stops, layout.Item{Lead: "STOP", Text: f.Text})
		}
	}
	if all := len(in.Findings); all > 0 {
		doc.Add(layout.Heading{Level: 1, Text: fmt.Sprintf("Cautions: %d to clear first, %d more in the report", len(stops), all-len(stops))})
		if len(stops) > 0 {
			doc.Add(layout.List{Items: stops})
		}
	}
	doc.Add(layout.Paras(layout.Body, v.OtherCurrency())...)
	doc.Add(layout.Para{Text: fmt.Sprintf("%d futures, seed %d; %s over %s at %s a year, prices of today. %d figures assumed; --json lists them.",
		r.Futures.Count, r.Futures.Seed, r.Boat.Currency, quantity.FormatYears(r.Boat.Money.Years), quantity.FormatShare(r.Boat.Money.Discount), len(r.Boat.Assumptions))})
	return doc.Text()
}

// beside sets rows of the four options as a table.
func beside(rows []words.Row) layout.Table {
	t := layout.Table{Columns: []layout.Column{{Quiet: true}}}
	for _, id := range economics.Options {
		t.Columns = append(t.Columns, layout.Column{Head: words.Name(id)})
	}
	for _, r := range rows {
		t.Rows = append(t.Rows, append([]string{r.Label}, r.Cells[:]...))
	}
	return t
}

// months is the table of mean days.
func months(r *economics.Reckoning) layout.Table {
	sys := r.Boat.Units
	mass, degree := "kg", "°C"
	if sys == quantity.US {
		mass, degree = "lb", "°F"
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Month"}, {Head: "Nights", Right: true}, {Head: "Cabin " + degree, Right: true}, {Head: "Sea " + degree, Right: true},
		{Head: "Heat W", Right: true}, {Head: "Ice " + mass, Right: true}, {Head: "Sun Wh", Right: true}, {Head: "House Wh", Right: true},
		{Head: "Small Wh", Right: true}, {Head: "Larger Wh", Right: true}}}
	bare := func(text string) string { text, _, _ = strings.Cut(text, " "); return text }
	for _, m := range r.Months {
		t.Rows = append(t.Rows, []string{
			words.Month(m.Month)[:3], fmt.Sprint(m.Nights), bare(quantity.FormatTemperature(quantity.Celsius(m.CabinC), sys)),
			bare(quantity.FormatTemperature(quantity.Celsius(m.SeaC), sys)), fmt.Sprintf("%.0f", m.HeatGainW), bare(quantity.FormatMass(quantity.Kilogram(m.IceKgPerDay), sys)),
			fmt.Sprintf("%.0f", m.SolarWhPerDay), fmt.Sprintf("%.0f", m.HouseWhPerDay), fmt.Sprintf("%.0f", m.SmallWhPerDay), fmt.Sprintf("%.0f", m.LargerWhPerDay),
		})
	}
	return t
}
