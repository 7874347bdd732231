package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// appendix holds what a reader may want to check.
func (a author) appendix() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 0, Text: "Appendix"}}
	for _, part := range [][]layout.Block{a.known(), a.heat(), a.units(), a.works(), a.swing(), a.bills(), a.checklist(), a.keepers(), a.asTold(), a.method()} {
		out = append(out, part...)
	}
	return out
}

// known says what to find out first and how well the figures are known.
func (a author) known() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "What to find out first"}}
	l := layout.List{Mark: layout.Number}
	for _, m := range a.v.MeasureFirst() {
		if len(l.Items) < 3 && a.aboard() {
			l.Items = append(l.Items, layout.Item{Lead: words.Capital(m.Short) + ":", Text: a.v.MeasureText(m)})
		}
	}
	if len(l.Items) > 0 {
		out = append(out, l)
	}
	out = append(out, layout.Paras(layout.Body, a.v.EVPI())...)
	return append(out, layout.Heading{Level: 1, Text: "How well this is known"}, layout.Para{Text: a.v.EvidenceText()})
}

// heat gives the leak by its ways in and how it is known, and the mean days of
// the months.
func (a author) heat() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "The leak of the box"}, layout.Para{Text: a.v.LeakText()}}
	t := layout.Table{Fine: true, Sum: true, Columns: []layout.Column{{Head: "Way in"}, {Head: "Leak as she is", Right: true}}}
	box := a.r.Box.Drawn
	scale := quantity.WattPerKelvin(1)
	if total := box.Total(); total > 0 {
		scale = a.r.Box.Leak / total
	}
	for _, part := range box.Parts {
		name := part.Name
		if part.Side != "" {
			name = string(part.Side)
		}
		leak := scale * part.UA
		if leak < a.r.Box.Leak/500 { // the digits of the others end before it
			leak = 0
		}
		t.Rows = append(t.Rows, []string{words.Capital(name), quantity.FormatConductance(leak, a.r.Boat.Units)})
	}
	t.Rows = append(t.Rows, []string{"All", quantity.FormatConductance(a.r.Box.Leak, a.r.Boat.Units)})
	seen := append([]layout.Block{layout.Heading{Level: 2, Text: "How the leak is known"}, a.estimates()}, layout.Paras(layout.Small, box.Notes...)...)
	out = append(out, layout.Side{Shares: []float64{2, 3}, Columns: [][]layout.Block{{t}, seen}})
	if !a.aboard() {
		return out
	}
	return append(out, layout.Kept{layout.Heading{Level: 2, Text: "Mean days, box as she is at its target"}, a.monthTable()})
}

// estimates sets the estimates of the leak beside one another.
func (a author) estimates() layout.Table {
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

// monthTable is the table of mean days.
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

// works lists the work of each way, with what a piece does and costs.
func (a author) works() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "The work for each way"}}
	for _, id := range economics.Options {
		out = append(out, a.workFor(id)...)
	}
	var searched int
	for i := range a.r.Options {
		searched = max(searched, a.r.Options[i].Fit.SearchFutures)
	}
	return append(out, layout.Para{Style: layout.Small, Text: fmt.Sprintf("The work was searched for on %d futures and then put to all %d. The boat as she is was put to %d. A piece that is not needed is left out where the whole stays within a twentieth of the cheapest.",
		searched, a.r.Futures.Count, a.r.Of(a.o.ID).AsToldFutures)})
}

// workFor lists the work of an option as a table.
func (a author) workFor(id economics.OptionID) []layout.Block {
	o := a.r.Of(id)
	work := a.v.Work(id)
	head := layout.Heading{Level: 2, Text: words.Name(id)}
	if len(work) == 0 {
		return []layout.Block{head, layout.Para{Text: a.v.NoWork(o)}}
	}
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "What", Share: 0.39}, {Head: "What it buys"}, {Head: "Cost at first", Share: 0.16}}}
	for _, w := range work {
		t.Rows = append(t.Rows, []string{w.What, w.Buys, w.Cost})
	}
	out := []layout.Block{layout.Kept{head, t}}
	texts := []string{a.v.Litres(id), a.v.Tighter(id)}
	if o.WorksOf100 < 87 && !o.Fitted.Works() {
		texts = append(texts, a.v.NotEnough(o))
	}
	if id == economics.IceOnly {
		texts = append(texts, a.v.MoreIce())
	}
	return append(out, layout.Paras(layout.Body, texts...)...)
}

// swing shows what moves the difference of the best two.
func (a author) swing() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "What moves the choice"}}
	lead, next, ok := a.v.BestTwo()
	if !ok || !a.aboard() {
		return append(out, layout.Para{Text: "There are no two ways to choose between, so there is no choice to move."})
	}
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Figure", Share: 0.36}, {Head: "80 of 100 times", Share: 0.25}, {Head: "At low end", Right: true}, {Head: "At high end", Right: true}, {Head: "Worth knowing", Right: true}}}
	var little []string
	most := 0.0
	for _, in := range a.v.BySwing() {
		wide := math.Abs(in.SwingHigh - in.SwingLow)
		most = max(most, wide)
		if len(t.Rows) >= 8 && wide < most/20 && !a.v.WorthKnowing(in) {
			little = append(little, in.Label)
			continue
		}
		low, high := a.v.Ends(in)
		worth := "–"
		switch {
		case a.v.WorthKnowing(in):
			worth = a.v.Small(in.EVPPI)
		case in.EVPPI > 0:
			worth = "little"
		}
		t.Rows = append(t.Rows, []string{words.Capital(in.Label), quantity.Span(low, high), a.v.Money(in.SwingLow), a.v.Money(in.SwingHigh), worth})
	}
	out = append(out, layout.Para{Text: a.v.MovesMost() + " " + a.whyThese(lead, next)},
		layout.Para{Keep: true, Style: layout.Small, Text: fmt.Sprintf("What %s loses a year less what %s does, widest first: at typical figures %s, and with one figure alone at the fifth of futures where it is lowest, then highest. Below nothing %s does better.",
			words.In(lead), words.In(next), a.v.Money(a.v.Apart(lead, next)), words.In(lead))}, t)
	if len(little) > 0 {
		out = append(out, layout.Para{Style: layout.Small, Text: "These hardly matter: " + words.Join(little) + "."})
	}
	var regret []string
	for _, id := range a.r.Futures.Weighed {
		regret = append(regret, fmt.Sprintf("%s %s", words.In(id), a.v.Small(a.r.Of(id).ExpectedRegret)))
	}
	return append(out, layout.Para{Style: layout.Small, Text: "What choosing wrongly would cost a year on average: " + strings.Join(regret, ", ") + ". Percentages above are of the figure reckoned with."})
}

// whyThese says which two options the table sets against each other, and
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
	return append([]layout.Block{
		layout.Heading{Level: 1, Text: "What is paid for"},
		layout.Para{Keep: true, Text: "At typical figures, with the work done. Food that everybody eats anyway is left out."}, t,
		layout.Kept{layout.Heading{Level: 1, Text: "Cash flows"},
			layout.Para{Text: fmt.Sprintf("Each payment falls at its year's end and counts %s less for every year it lies ahead. Unrounded, so that they can be checked.", a.percent())}, flows},
	}, a.paid()...)
}

// paid gives what has been paid by each year's end.
func (a author) paid() []layout.Block {
	years := int(a.r.Boat.Money.Years)
	t := layout.Table{Fine: true, Columns: []layout.Column{{Quiet: true}}}
	marks := marksOf(years)
	for _, y := range marks {
		head := fmt.Sprintf("By year %d", y)
		if y == 0 {
			head = "At first"
		}
		t.Columns = append(t.Columns, layout.Column{Head: head})
	}
	for i, id := range economics.Options {
		row := []string{words.Name(id)}
		for _, y := range marks {
			if y < len(a.r.Futures.Paid[i]) {
				r := a.r.Futures.Paid[i][y]
				row = append(row, a.v.Tight(math.Round(r.Typical), quantity.Range{Low: math.Round(r.Low), High: math.Round(r.High)}))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	text := a.v.Overtakes() + " Paid in full, with the work, prices of today: the middle of all futures, in brackets 80 of 100. The table of the four ways goes by typical figures"
	if a.r.Boat.Money.Discount > 0 {
		text += " and counts later payments for less"
	}
	return []layout.Block{layout.Kept{layout.Heading{Level: 2, Text: "Paid by each year's end"}, layout.Para{Text: text + "."}, t}}
}

// marksOf picks the years that the table shows: the first payment, the end
// and two between.
func marksOf(years int) []int {
	marks := []int{0}
	for _, y := range []int{int(math.Round(float64(years) / 4)), int(math.Round(float64(years) / 2)), years} {
		if y > marks[len(marks)-1] {
			marks = append(marks, y)
		}
	}
	return marks
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
		if l.Count < 0.05 { // on average a year: nobody weighs that
			return ""
		}
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
		layout.Para{Keep: true, Text: "A star marks what was assumed; what has no mark was told."}}
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
			t.Rows = append(t.Rows, []string{group, x.Label, x.Value + marks[x.How]})
		case len(t.Rows[last]) == 3:
			t.Rows[last] = append(t.Rows[last], x.Label, x.Value+marks[x.How])
		default:
			t.Rows = append(t.Rows, []string{"", x.Label, x.Value + marks[x.How]})
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

// marks say how a figure is known.
var marks = map[quantity.How]string{
	quantity.Measured: " (seen)", quantity.Told: "", quantity.Unsure: "\u00a0*", quantity.Assumed: "\u00a0*", "": "\u00a0*",
}
