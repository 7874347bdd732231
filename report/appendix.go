package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/figures"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// appendix holds what a reader may want to check.
func (a author) appendix() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 0, Text: "Appendix"}}
	if a.bodyTight >= spellMoves {
		if strips, ok := a.fortnight(a.chosen()); ok {
			out = append(out, layout.Heading{Level: 1, Text: "The worst spell"}, strips)
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
func (a author) heat() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "Where the heat comes from"}}
	month, sources, ok := figures.HeatBySource(a.r)
	if !ok {
		return append(out, layout.Para{Text: "There are no nights aboard, so there is no month to show."})
	}
	c := chart.Stacked{Head: chart.Head{Name: "heat by source", Finding: a.v.MostHeat(month),
		Caption: fmt.Sprintf("W, mean of %s, box as she is at its target", words.Month(month.Month))}}
	grouped := group(sources)
	row := chart.StackedRow{Label: "heat", Total: heatW(month.HeatGainW) + " W"}
	for _, s := range grouped {
		c.Parts, row.Values = append(c.Parts, s.Name), append(row.Values, s.HeatW)
	}
	c.Rows = []chart.StackedRow{row}
	t := layout.Table{Columns: []layout.Column{{Head: "Way in"}, {Head: "Leak", Right: true}, {Head: "Heat, W", Right: true}}, Sum: true}
	for _, s := range sources {
		leak := ""
		if s.Leak > 0 {
			leak = quantity.FormatConductance(quantity.WattPerKelvin(s.Leak), a.r.Boat.Units)
		}
		t.Rows = append(t.Rows, []string{words.Capital(s.Name), leak, heatW(s.HeatW)})
	}
	t.Rows = append(t.Rows, []string{"All", quantity.FormatConductance(a.r.Box.Leak, a.r.Boat.Units), heatW(month.HeatGainW)})
	t.Fine = true
	parts := layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: 52, Draw: c.Draw, Table: t, Shown: true}
	seen := []layout.Block{layout.Heading{Level: 2, Text: "How the leak is known"}}
	if a.bodyTight >= leakMoves {
		seen = append(seen, layout.Para{Text: a.v.LeakText()})
	}
	seen = append(seen, a.evidence())
	for _, doubt := range a.r.Box.Drawn.Notes {
		seen = append(seen, layout.Para{Style: layout.Small, Text: doubt})
	}
	return append(out, layout.Side{Shares: []float64{3, 2}, Columns: [][]layout.Block{{parts}, seen}},
		layout.Heading{Level: 2, Text: "Mean days, box as she is at its target"}, a.monthTable())
}

// heatW prints a heat without its unit, no finer than a leak known to a quarter
// lets one tell.
func heatW(w float64) string {
	if math.Abs(w) < 9.95 {
		return fmt.Sprintf("%.1f", w)
	}
	return watts(w)
}

// evidence sets the estimates of the leak beside one another.
func (a author) evidence() layout.Table {
	_, unit, _ := strings.Cut(quantity.FormatConductance(1, a.r.Boat.Units), " ")
	leak := func(x float64) string {
		return strings.TrimSuffix(quantity.FormatConductance(quantity.WattPerKelvin(x), a.r.Boat.Units), " "+unit)
	}
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Seen from"}, {Head: "Leak, " + unit, Right: true}, {Head: "80 of 100 cases"}}}
	put := func(e heat.Estimate, note string) {
		r := e.Range()
		t.Rows = append(t.Rows, []string{seenFrom[e.Source] + note, leak(r.Typical), quantity.Span(leak(r.Low), leak(r.High))})
	}
	b := a.r.Box
	for _, e := range b.Evidence.Used {
		put(e, "")
	}
	for _, e := range b.Evidence.Dropped {
		put(e, ", left out")
	}
	t.Rows = append(t.Rows, []string{"All together", leak(float64(b.Leak)), quantity.Span(leak(float64(b.LeakLow)), leak(float64(b.LeakHigh)))})
	t.Sum = true
	return t
}

var seenFrom = map[heat.Source]string{
	heat.FromDrawing: "the walls", heat.FromIceTest: "an ice test", heat.FromJugTest: "a jug test",
	heat.FromHistory: "how long ice lasted", heat.FromLog: "a log",
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
func (a author) monthTable() layout.Table {
	sys := a.r.Boat.Units
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Month"}, {Head: "Nights", Right: true}, {Head: "Cabin", Right: true}, {Head: "Sea", Right: true},
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
func (a author) otherWork() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "Work for the other ways"}}
	for _, id := range economics.Options {
		if id != a.chosen() {
			out = append(out, a.workFor(id, 2)...)
		}
	}
	var searched int
	for i := range a.r.Options {
		searched = max(searched, a.r.Options[i].Fit.SearchFutures)
	}
	return append(out, layout.Para{Style: layout.Small, Text: fmt.Sprintf("The work was searched for on %d futures and then put to all %d. The boat as she is was put to %d. A piece that is not needed is left out where the whole stays within a twentieth of the cheapest.",
		searched, a.r.Futures.Count, a.r.Of(a.chosen()).AsToldFutures)})
}

// drawn is how many figures the swing chart shows.
const drawn = 8

// swing shows what moves the difference of the best two.
func (a author) swing() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "What moves the choice"}}
	lead, next, ok := a.v.BestTwo()
	if !ok || !a.aboard() {
		return append(out, layout.Para{Text: "There are no two ways to choose between, so there is no choice to move."})
	}
	moves := a.v.MovesMost()
	c := chart.Swing{
		Head: chart.Head{Name: "what moves the choice",
			Finding: fmt.Sprintf("%s against %s: %s", words.The(lead), words.In(next), strings.ToLower(moves[:1])+moves[1:]),
			Caption: fmt.Sprintf("What %s loses a year less what %s does. The upright line stands at typical figures. Each bar runs from the fifth of futures where the figure is lowest to the fifth where it is highest",
				words.In(lead), words.In(next))},
		Base: a.v.Apart(lead, next), Left: words.In(lead) + " better", Right: words.In(next) + " better", Say: a.v.Money,
	}
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Figure", Share: 0.36}, {Head: "80 of 100 times", Share: 0.25}, {Head: "At low end", Right: true}, {Head: "At high end", Right: true}, {Head: "Worth knowing", Right: true}}}
	var little []string
	most := 0.0
	for i, in := range a.v.BySwing() {
		wide := math.Abs(in.SwingHigh - in.SwingLow)
		most = max(most, wide)
		if i >= drawn && wide < most/20 && !a.v.WorthKnowing(in) {
			little = append(little, in.Label)
			continue
		}
		low, high := a.v.Ends(in)
		if i < drawn {
			c.Rows = append(c.Rows, chart.SwingRow{Label: in.Short, AtLow: in.SwingLow, AtHigh: in.SwingHigh, Low: low, High: high})
		}
		worth := "–"
		switch {
		case in.Taste:
			worth = "yours to say"
		case a.v.WorthKnowing(in):
			worth = a.v.Small(in.EVPPI)
		case in.EVPPI > 0:
			worth = "little"
		}
		t.Rows = append(t.Rows, []string{words.Capital(in.Label), quantity.Span(low, high), a.v.Money(in.SwingLow), a.v.Money(in.SwingHigh), worth})
	}
	rest := t
	t.Rows, rest.Rows = t.Rows[:min(drawn, len(t.Rows))], t.Rows[min(drawn, len(t.Rows)):]
	out = append(out, layout.Para{Keep: true, Text: a.whyThese(lead, next)},
		layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: a.least(c.Draw, 72), Draw: c.Draw, Table: t, Shown: true})
	if len(rest.Rows) > 0 {
		out = append(out, layout.Para{Keep: true, Style: layout.Small, Text: "What moves it less:"}, rest)
	}
	if len(little) > 0 {
		out = append(out, layout.Para{Style: layout.Small, Text: "These hardly matter: " + words.Join(little) + "."})
	}
	var regret []string
	for _, id := range a.r.Futures.Weighed {
		regret = append(regret, fmt.Sprintf("%s %s", words.In(id), a.v.Small(a.r.Of(id).ExpectedRegret)))
	}
	return append(out, layout.Para{Style: layout.Small, Text: "What choosing wrongly would cost a year on average: " + strings.Join(regret, ", ") + ". Percentages above are of the figure reckoned with."})
}

// whyThese says which two options the swing chart sets against each other, and
// why those: the answer goes by counts, and these by the mean.
func (a author) whyThese(lead, next economics.OptionID) string {
	return fmt.Sprintf("Set against each other are %s and %s: averaged over all futures they lose least a year, a %s day counted as worth %s.",
		words.In(lead), words.In(next), a.v.ColdOrCool(), a.v.Money(a.r.Futures.Worth))
}

// bills shows what each option is charged with, and its cash flows.
func (a author) bills() []layout.Block {
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Line", Share: 0.32}}}
	flows := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Paid in year"}}, Sum: true}
	at := map[string]int{} // the row of a line, by its label
	for i, id := range economics.Options {
		t.Columns = append(t.Columns, layout.Column{Head: words.Name(id)})
		flows.Columns = append(flows.Columns, layout.Column{Head: words.Name(id), Right: true})
		for _, l := range a.r.Options[i].Fitted.Lines {
			if l.First == 0 && l.Yearly == 0 {
				continue
			}
			row, seen := at[l.Label]
			if !seen {
				row = len(t.Rows)
				at[l.Label] = row
				t.Rows = append(t.Rows, []string{l.Label, "", "", "", ""})
			}
			t.Rows[row][i+1] = a.charge(l)
		}
	}
	row := func(year int) []string {
		var out []string
		for i := range a.r.Options {
			out = append(out, a.exact(float64(a.r.Options[i].Fitted.Flows[year])))
		}
		return out
	}
	years := int(a.r.Boat.Money.Years)
	for first := 0; first <= years; {
		last := first // of the years that are alike
		for last < years && first > 0 && slices.Equal(row(last+1), row(first)) {
			last++
		}
		name := fmt.Sprint(first)
		if last > first {
			name = fmt.Sprintf("%d to %d, each", first, last)
		}
		flows.Rows = append(flows.Rows, append([]string{name}, row(first)...))
		first = last + 1
	}
	present := []string{"Present cost"}
	for i := range a.r.Options {
		present = append(present, a.exact(a.r.Options[i].Fitted.Present))
	}
	flows.Rows = append(flows.Rows, present)
	var paid []layout.Block
	if a.bodyTight >= tableMoves { // its chart stands on the reader's pages without it
		paid = []layout.Block{layout.Kept{layout.Para{Text: "Paid by each year's end, with the range that holds 80 of 100 futures:"}, a.paid().Table}}
	}
	return append([]layout.Block{
		layout.Heading{Level: 1, Text: "What is paid for"},
		layout.Para{Keep: true, Text: "At typical figures, with the work done. Food that everybody eats anyway is left out."}, t,
		layout.Kept{layout.Heading{Level: 1, Text: "Cash flows"},
			layout.Para{Text: fmt.Sprintf("Each payment falls at its year's end and counts %s less for every year it lies ahead. Unrounded, so that they can be checked.", a.percent())}, flows},
	}, paid...)
}

// charge says what a cost line takes: at first or each year, for how much, and
// how long it lasts.
func (a author) charge(l economics.CostLine) string {
	var parts []string
	if l.First != 0 {
		parts = append(parts, a.v.Small(l.First))
	}
	if l.Yearly != 0 {
		parts = append(parts, a.v.Small(l.Yearly)+" a year")
	}
	if count := a.count(l); count != "" {
		parts = append(parts, count)
	}
	if l.Life > 0 {
		parts = append(parts, "lasts "+quantity.FormatYears(quantity.Year(math.Round(l.Life))))
	}
	return strings.Join(parts, ", ")
}

// count says how many of a cost line's units are bought or used.
func (a author) count(l economics.CostLine) string {
	switch l.Unit {
	case "each", "year":
		return ""
	case "kg":
		return a.v.Mass(l.Count)
	case "kg on a warm day":
		return a.v.Mass(l.Count) + " for a day"
	case "m²":
		return quantity.FormatArea(quantity.SquareMetre(l.Count), a.r.Boat.Units)
	case "kWh", "W":
		return quantity.FormatNumber(words.Round(l.Count)) + " " + l.Unit
	}
	return words.Plural(l.Count, l.Unit)
}

// exact prints money to the unit.
func (a author) exact(x float64) string {
	return quantity.FormatMoney(quantity.Money(math.Round(x)), a.r.Boat.Currency)
}

// checklist is every caution, to be ticked off.
func (a author) checklist() []layout.Block {
	l := layout.List{Mark: layout.Tick, Fine: true}
	for _, f := range a.findings {
		l.Items = append(l.Items, layout.Item{Lead: lead(f), Text: f.Text, Source: f.Source})
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []layout.Block{layout.Heading{Level: 1, Text: "All cautions, to tick off"},
		layout.Para{Keep: true, Text: "A stop is to be cleared before a way can be called suitable. " + a.Pack.Guidance}, l}
}

// asTold lists the boat two answers a line, marks what was not told, and says
// why what was assumed was.
func (a author) asTold() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "The boat as told"},
		layout.Para{Keep: true, Text: a.v.EvidenceCounts() + " A star marks what was assumed; what has no mark was told."}}
	why := map[string]string{}
	for _, s := range a.r.Boat.Assumptions {
		why[s.Label+s.Value] = s.Why
	}
	reasons := layout.List{Mark: layout.Dash, Fine: true}
	var priced []string // what the price book stands in for
	t := layout.Table{Fine: true, Columns: []layout.Column{{Share: 0.11}, {Quiet: true, Share: 0.25}, {Share: 0.19}, {Quiet: true, Share: 0.25}, {}}}
	var group string
	for _, x := range a.Answers {
		reason := why[x.Label+x.Value]
		if x.How != quantity.Told && x.How != quantity.Measured && reason == "" {
			continue // it follows from another answer, or stands for nothing
		}
		switch {
		case reason == "":
		case strings.HasPrefix(reason, "price book:"):
			priced = append(priced, strings.ToLower(x.Label[:1])+x.Label[1:])
		default:
			reasons.Items = append(reasons.Items, layout.Item{Lead: x.Label + ", " + x.Value + ":", Text: reason})
		}
		last := len(t.Rows) - 1
		switch {
		case x.Group != group:
			group = x.Group
			t.Rows = append(t.Rows, []string{group, x.Label, x.Value + known[x.How]})
		case len(t.Rows[last]) == 3:
			t.Rows[last] = append(t.Rows[last], x.Label, x.Value+known[x.How])
		default:
			t.Rows = append(t.Rows, []string{"", x.Label, x.Value + known[x.How]})
		}
	}
	out = append(out, t)
	if len(priced) > 0 {
		reasons.Items = append(reasons.Items, layout.Item{Lead: "From the price book, typical:", Text: words.Join(priced) + "."})
	}
	if len(reasons.Items) == 0 {
		return out
	}
	return append(out, layout.Heading{Level: 2, Text: "Why these figures were assumed"}, reasons)
}

// known marks how a figure is known.
var known = map[quantity.How]string{
	quantity.Measured: " (seen)", quantity.Told: "", quantity.Unsure: "\u00a0*", quantity.Assumed: "\u00a0*", "": "\u00a0*",
}
