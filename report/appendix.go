package report

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/figures"
	"coldreckon/report/page"
	"coldreckon/report/words"
)

// appendix holds what a reader may want to check.
func (a author) appendix() []page.Block {
	out := []page.Block{page.Heading{Level: 0, Text: "Appendix"}}
	if a.bodyTight >= spellMoves {
		if strips, ok := a.fortnight(a.chosen()); ok {
			out = append(out, page.Heading{Level: 1, Text: "The worst spell"}, strips)
		}
	}
	out = append(out, a.heat()...)
	out = append(out, a.units()...)
	out = append(out, a.otherWork()...)
	out = append(out, a.swing()...)
	out = append(out, a.bills()...)
	out = append(out, a.checklist()...)
	out = append(out, a.keepers()...)
	out = append(out, a.asTold()...)
	return append(out, a.method()...)
}

// heat parts the heat of the hottest month by its sources.
func (a author) heat() []page.Block {
	out := []page.Block{page.Heading{Level: 1, Text: "Where the heat comes from"}}
	month, sources, ok := figures.HeatBySource(a.r)
	if !ok {
		return append(out, page.Para{Text: "There are no nights aboard, so there is no month to show."})
	}
	c := chart.Stacked{Head: chart.Head{Name: "heat by source", Finding: a.v.MostHeat(month),
		Caption: fmt.Sprintf("W, mean of %s, box as she is at its target", words.Month(month.Month))}}
	grouped := group(sources)
	row := chart.StackedRow{Label: "heat", Total: fmt.Sprintf("%.0f W", month.HeatGainW)}
	for _, s := range grouped {
		c.Parts, row.Values = append(c.Parts, s.Name), append(row.Values, s.HeatW)
	}
	c.Rows = []chart.StackedRow{row}
	t := page.Table{Columns: []page.Column{{Head: "Way in"}, {Head: "Leak", Right: true}, {Head: "Heat, W", Right: true}}, Sum: true}
	for _, s := range sources {
		leak := ""
		if s.Leak > 0 {
			leak = quantity.FormatConductance(quantity.WattPerKelvin(s.Leak), a.r.Boat.Units)
		}
		t.Rows = append(t.Rows, []string{words.Capital(s.Name), leak, fmt.Sprintf("%.1f", s.HeatW)})
	}
	t.Rows = append(t.Rows, []string{"All", quantity.FormatConductance(a.r.Box.Leak, a.r.Boat.Units), fmt.Sprintf("%.1f", month.HeatGainW)})
	out = append(out, page.Chart{Finding: c.Finding, Caption: c.Caption, Height: 42, Draw: c.Draw, Table: t, Shown: true})
	if a.bodyTight >= leakMoves {
		out = append(out, page.Para{Text: a.v.LeakText()})
	}
	for _, doubt := range a.r.Box.Drawn.Notes {
		out = append(out, page.Para{Style: page.Small, Text: doubt})
	}
	return append(out, a.monthTable())
}

// group joins the smaller sources so that patterns tell them apart.
func group(sources []figures.Source) []figures.Source {
	joins := map[string]string{
		"fore wall": "other walls", "aft wall": "other walls", "edges and corners": "other walls",
		"opening the lid": "use", "food brought aboard": "use", "lid seal": "seal and drain", "drain": "seal and drain",
	}
	var out []figures.Source
	at := map[string]int{}
	for _, s := range sources {
		if name := joins[s.Name]; name != "" {
			s.Name = name
		}
		i, seen := at[s.Name]
		if !seen {
			i = len(out)
			at[s.Name] = i
			out = append(out, figures.Source{Name: s.Name})
		}
		out[i].HeatW += s.HeatW
	}
	return out
}

// monthTable is the table of mean days behind the charts.
func (a author) monthTable() page.Table {
	sys := a.r.Boat.Units
	t := page.Table{Columns: []page.Column{{Head: "Mean day of"}, {Head: "Nights", Right: true}, {Head: "Cabin", Right: true}, {Head: "Sea", Right: true},
		{Head: "Heat, W", Right: true}, {Head: "Ice, " + a.v.MassUnit(), Right: true}, {Head: "Panel, Wh", Right: true}, {Head: "Other loads, Wh", Right: true},
		{Head: "Small unit, Wh", Right: true}, {Head: "Larger unit, Wh", Right: true}}}
	for _, m := range a.r.Months {
		t.Rows = append(t.Rows, []string{words.Month(m.Month), fmt.Sprint(m.Nights),
			quantity.FormatTemperature(quantity.Celsius(m.CabinC), sys), quantity.FormatTemperature(quantity.Celsius(m.SeaC), sys),
			watts(m.HeatGainW), quantity.FormatNumber(round1(a.v.InMass(m.IceKgPerDay))), watts(m.SolarWhPerDay), watts(m.HouseWhPerDay),
			watts(m.SmallWhPerDay), watts(m.LargerWhPerDay)})
	}
	return t
}

// otherWork lists the work for the options that the reader's pages left out.
func (a author) otherWork() []page.Block {
	out := []page.Block{page.Heading{Level: 1, Text: "Work for the other ways"}}
	for _, id := range economics.Options {
		if id != a.chosen() {
			out = append(out, a.workFor(id, 2)...)
		}
	}
	return append(out, page.Para{Style: page.Small, Text: fmt.Sprintf("The work was searched in the order a yard would try it, on %d futures, and then put to all %d. The boat as she is was put to %d.",
		a.r.Of(a.chosen()).Fit.SearchFutures, a.r.Futures.Count, a.r.Of(a.chosen()).AsToldFutures)})
}

// swing shows what moves the difference of the best two.
func (a author) swing() []page.Block {
	out := []page.Block{page.Heading{Level: 1, Text: "What moves the choice"}}
	lead, next, ok := a.v.BestTwo()
	if !ok || !a.aboard() {
		return append(out, page.Para{Text: "Only one way works, so there is no choice to move."})
	}
	c := chart.Swing{
		Head: chart.Head{Name: "what moves the choice", Finding: a.v.MovesMost(),
			Caption: fmt.Sprintf("Present cost of %s less that of %s: mean of all futures, and of the fifths with each figure lowest and highest", words.In(lead), words.In(next))},
		Base: a.r.Of(lead).ExpectedRegret - a.r.Of(next).ExpectedRegret, Left: words.In(lead) + " better", Right: words.In(next) + " better", Say: a.v.Money,
	}
	t := page.Table{Columns: []page.Column{{Head: "Figure", Share: 0.31}, {Head: "80 of 100 times", Share: 0.27}, {Head: "At its low end", Right: true}, {Head: "At its high end", Right: true}, {Head: "Worth to know", Right: true}}}
	for i, in := range a.v.BySwing() {
		low, high := a.v.Value(in.Input, in.Low), a.v.Value(in.Input, in.High)
		if i < 8 {
			c.Rows = append(c.Rows, chart.SwingRow{Label: words.Figure(in.Input), AtLow: in.SwingLow, AtHigh: in.SwingHigh, Low: low, High: high})
		}
		worth := "–"
		switch {
		case in.Taste:
			worth = "yours to say"
		case in.EVPPI > 0:
			worth = a.v.Money(in.EVPPI)
		}
		t.Rows = append(t.Rows, []string{words.Capital(in.Label), a.v.Span(in), a.v.Money(in.SwingLow), a.v.Money(in.SwingHigh), worth})
	}
	out = append(out, page.Chart{Finding: c.Finding, Caption: c.Caption, Height: 100, Draw: c.Draw, Table: t, Shown: true})
	var regret []string
	for i := range a.r.Options {
		regret = append(regret, fmt.Sprintf("%s %s", words.In(a.r.Options[i].ID), a.v.Money(a.r.Options[i].ExpectedRegret)))
	}
	return append(out, page.Para{Style: page.Small, Text: "What each choice would cost on average over the best one of each future, known too late: " + strings.Join(regret, ", ") + "."})
}

// bills shows what each option is charged with, and its cash flows.
func (a author) bills() []page.Block {
	t := page.Table{Columns: []page.Column{{Head: "Way", Quiet: true, Share: 0.13}, {Head: "Line", Share: 0.35}, {Head: "How many"}, {Head: "At first", Right: true}, {Head: "Each year", Right: true}, {Head: "Lasts", Right: true}}}
	var shown economics.OptionID
	for i := range a.r.Options {
		o := &a.r.Options[i]
		for _, l := range o.Fitted.Lines {
			if l.First == 0 && l.Yearly == 0 {
				continue
			}
			name := ""
			if shown != o.ID {
				name, shown = words.Name(o.ID), o.ID
			}
			first, yearly, lasts := "", "", ""
			if l.First != 0 {
				first = a.v.Money(l.First)
			}
			if l.Yearly != 0 {
				yearly = a.v.Money(l.Yearly)
			}
			if l.Life > 0 {
				lasts = quantity.FormatYears(quantity.Year(math.Round(l.Life)))
			}
			t.Rows = append(t.Rows, []string{name, l.Label, a.count(l), first, yearly, lasts})
		}
	}
	flows := page.Table{Columns: []page.Column{{Head: "Paid in year"}}, Sum: true}
	for _, id := range economics.Options {
		flows.Columns = append(flows.Columns, page.Column{Head: words.Name(id), Right: true})
	}
	present := []string{"Present cost"}
	for year := 0; year <= int(a.r.Boat.Money.Years); year++ {
		row := []string{fmt.Sprint(year)}
		for i := range a.r.Options {
			row = append(row, a.exact(float64(a.r.Options[i].Fitted.Flows[year])))
		}
		flows.Rows = append(flows.Rows, row)
	}
	for i := range a.r.Options {
		present = append(present, a.exact(a.r.Options[i].Fitted.Present))
	}
	flows.Rows = append(flows.Rows, present)
	var paid []page.Block
	if a.bodyTight >= tableMoves { // its chart stands on the reader's pages without it
		paid = []page.Block{page.Para{Keep: true, Text: "Paid by each year's end, with the range that holds 80 of 100 futures:"}, a.paid().Table}
	}
	return append([]page.Block{
		page.Heading{Level: 1, Text: "What is paid for"},
		page.Para{Keep: true, Text: "At typical figures, with the work done. Food that everybody eats anyway is left out."}, t,
		page.Heading{Level: 1, Text: "Cash flows"},
		page.Para{Keep: true, Text: fmt.Sprintf("Each payment falls at its year's end and counts %s less for every year it lies ahead. Unrounded, so that they can be checked.", a.percent())}, flows,
	}, paid...)
}

// count says how many of a cost line's units are bought or used.
func (a author) count(l economics.CostLine) string {
	switch l.Unit {
	case "each", "year":
		return ""
	case "kg":
		return a.v.Mass(l.Count) + " a year"
	case "kg on a warm day":
		return a.v.Mass(l.Count) + " for a day"
	case "m²":
		return quantity.FormatArea(quantity.SquareMetre(l.Count), a.r.Boat.Units)
	case "kWh", "W":
		return chart.Number(round1(l.Count), 0.1) + " " + l.Unit
	}
	return words.Plural(l.Count, l.Unit)
}

// exact prints money to the unit.
func (a author) exact(x float64) string {
	return quantity.FormatMoney(quantity.Money(math.Round(x)), a.r.Boat.Currency)
}

// checklist is every caution, to be ticked off.
func (a author) checklist() []page.Block {
	l := page.List{Mark: page.Tick}
	for _, f := range a.findings {
		l.Items = append(l.Items, page.Item{Lead: lead(f), Text: f.Text, Source: f.Source})
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []page.Block{page.Heading{Level: 1, Text: "All cautions, to tick off"},
		page.Para{Keep: true, Text: "A stop is to be cleared before a way can be called suitable. " + a.Pack.Guidance}, l}
}

// asTold lists the boat with how each figure is known, and why what was not
// told was taken.
func (a author) asTold() []page.Block {
	out := []page.Block{page.Heading{Level: 1, Text: "The boat as told"}, page.Para{Text: a.v.EvidenceCounts()}}
	why := map[string]string{}
	for _, s := range a.r.Boat.Assumptions {
		why[s.Label+s.Value] = s.Why
	}
	var group string
	var t page.Table
	flush := func() {
		if len(t.Rows) > 0 {
			out = append(out, page.Heading{Level: 2, Text: group}, t)
		}
		t = page.Table{Columns: []page.Column{{Quiet: true, Share: 0.32}, {Share: 0.3}, {}}}
	}
	for _, x := range a.Answers {
		if x.Group != group {
			flush()
			group = x.Group
		}
		how, reason := known[x.How], why[x.Label+x.Value]
		if x.How != quantity.Told && x.How != quantity.Measured && reason == "" {
			continue // it follows from another answer, or stands for nothing
		}
		if reason != "" {
			how += ": " + reason
		}
		t.Rows = append(t.Rows, []string{x.Label, x.Value, how})
	}
	flush()
	return out
}

// known words how a figure is known.
var known = map[quantity.How]string{
	quantity.Measured: "measured", quantity.Told: "told", quantity.Unsure: "not known, assumed", quantity.Assumed: "assumed", "": "assumed",
}
