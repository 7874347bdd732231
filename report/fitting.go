package report

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// fitting shows the options as told and fitted, and the work.
func (a author) fitting() []layout.Block {
	rows := a.v.ToldAndFitted()
	all := a.v.Rows()
	rows = append(rows, all[len(all)-rowsThatMove[a.frontTight]:]...)
	out := []layout.Block{
		layout.Heading{Level: 1, Text: "As she is, and with the work"},
		layout.Kept{beside(rows), layout.Para{Style: layout.Small,
			Text: "Before the arrow as she is, after it with the cheapest work found that reaches the cold days you want in 90 of 100 futures. What it costs with the work stands on page one. " + a.v.SeldomMeans()}},
	}
	if text := a.v.Aboard(); text != "" {
		out = append(out, layout.Para{Text: text})
	}
	return append(out, a.workFor(a.chosen(), 1)...)
}

// chosen is the option whose work is shown first: the answer, or ice where there is
// nothing to decide.
func (a author) chosen() economics.OptionID {
	if way := a.r.Answer.Way(); way != "" {
		return way
	}
	return economics.IceOnly
}

// workFor lists the work of an option as a table.
func (a author) workFor(id economics.OptionID, level int) []layout.Block {
	o := a.r.Of(id)
	work := a.v.Work(id)
	head := layout.Heading{Level: level, Text: fmt.Sprintf("The work for %s", words.In(id))}
	if len(work) == 0 {
		return []layout.Block{head, layout.Para{Text: a.v.NoWork(o)}}
	}
	t := layout.Table{Fine: level > 1, Columns: []layout.Column{{Head: "What", Share: 0.39}, {Head: "What it buys"}, {Head: "Cost at first", Share: 0.16}}}
	for _, w := range work {
		t.Rows = append(t.Rows, []string{w.What, w.Buys, w.Cost})
	}
	out := []layout.Block{head, t}
	for _, text := range []string{a.v.Litres(id), a.v.Tighter(id)} {
		if text != "" {
			out = append(out, layout.Para{Text: text})
		}
	}
	if o.WorksOf100 < 87 && !o.Fitted.Works() {
		out = append(out, layout.Para{Text: a.v.NotEnough(o)})
	}
	if text := a.v.MoreIce(); text != "" && id == economics.IceOnly {
		out = append(out, layout.Para{Text: text})
	}
	if text, ok := a.v.Cable(id); ok {
		out = append(out, layout.Para{Style: layout.Small, Text: text})
	}
	return out
}

// fortnight draws the worst spell of an option's typical years.
func (a author) fortnight(id economics.OptionID) (layout.Picture, bool) {
	f := a.r.Of(id).Fortnight
	hours := f.Hours // from noon to noon, as the days of a trip are
	if len(hours) == 0 {
		return layout.Picture{}, false
	}
	trace := func(of func(season.Hour) float64) []float64 {
		out := make([]float64, len(hours))
		for i, h := range hours {
			out[i] = of(h)
		}
		return out
	}
	degree := func(c float64) float64 {
		if a.r.Boat.Units == quantity.US {
			return c*1.8 + 32
		}
		return c
	}
	unit := map[quantity.System]string{quantity.US: "°F", quantity.Metric: "°C"}[a.r.Boat.Units]
	warm, sunny := 0, false
	for _, h := range hours {
		if h.FoodC > f.LimitC {
			warm++
		}
		sunny = sunny || h.SunW > 0
	}
	strips := []chart.Strip{
		{Label: "Food, " + unit, Traces: []chart.Trace{{Label: "food", Values: trace(func(h season.Hour) float64 { return degree(h.FoodC) })}},
			Limit: &chart.Limit{Value: degree(f.LimitC), Label: "limit"}},
	}
	if id == economics.IceOnly {
		strips = append(strips,
			chart.Strip{Label: "Ice left, " + a.v.MassUnit(), Filled: true, Traces: []chart.Trace{{Values: trace(func(h season.Hour) float64 { return a.v.InMass(h.IceKg) })}}},
			chart.Strip{Label: "Cabin, " + unit, Traces: []chart.Trace{{Values: trace(func(h season.Hour) float64 { return degree(h.CabinC) })}}})
	} else {
		strips = append(strips,
			chart.Strip{Label: "Battery above its cut-off, Wh", Zero: true, Traces: []chart.Trace{{Values: trace(func(h season.Hour) float64 { return h.ChargeWh })}}})
		if sunny {
			strips = append(strips, chart.Strip{Label: "Sun from the panel, W", Filled: true, Traces: []chart.Trace{{Values: trace(func(h season.Hour) float64 { return h.SunW })}}})
		}
	}
	caption := a.spellMeans(f, warm)
	if id != economics.IceOnly && !sunny {
		caption += "; the panel gives nothing"
	}
	c := chart.Strips{Head: chart.Head{Name: "worst spell", Finding: a.v.WorstSpell(f, warm), Caption: caption}, Strips: strips}
	return layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: max(72, a.tall(78)), Draw: c.Draw, Table: a.fortnightTable(id, hours)}, true
}

// spellMeans says how the spell was picked, when it is, and in which state of the
// boat; warm is for how many hours the food was over the limit.
func (a author) spellMeans(f economics.Fortnight, warm int) string {
	picked := "The spell in which the food got warmest, in 20 typical years"
	if warm == 0 {
		picked = "The nearest call in 20 typical years"
	}
	state := "as she is"
	if len(a.r.Of(f.Option).Fit.Items) > 0 {
		state = "with the work done"
	}
	return fmt.Sprintf("%s: from noon to noon, in %s, %s", picked, words.Month(f.Month), state)
}

// fortnightTable gives the same spell day by day.
func (a author) fortnightTable(id economics.OptionID, hours []season.Hour) layout.Table {
	third, fourth := "Battery at least, Wh", "Sun, Wh"
	if id == economics.IceOnly {
		third, fourth = "Ice at least, "+a.v.MassUnit(), "Cabin at most"
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Day"}, {Head: "Food at most", Right: true}, {Head: third, Right: true}, {Head: fourth, Right: true}}}
	for first := 0; first < len(hours); first += 24 {
		day := hours[first:min(first+24, len(hours))]
		food, cabin, charge, ice, sun := day[0].FoodC, day[0].CabinC, day[0].ChargeWh, day[0].IceKg, 0.0
		for _, h := range day {
			food, cabin = max(food, h.FoodC), max(cabin, h.CabinC)
			charge, ice, sun = min(charge, h.ChargeWh), min(ice, h.IceKg), sun+h.SunW
		}
		row := []string{fmt.Sprint(first/24 + 1), quantity.FormatTemperature(quantity.Celsius(food), a.r.Boat.Units), watts(charge), watts(sun)}
		if id == economics.IceOnly {
			row[2], row[3] = quantity.FormatNumber(round1(a.v.InMass(ice))), quantity.FormatTemperature(quantity.Celsius(cabin), a.r.Boat.Units)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
