package report

import (
	"maps"
	"math"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// The settings from which the words on the leak, and the worst spell, stand in
// the appendix.
const leakMoves, spellMoves = 4, 5

// seasons shows the worst spell, and heat, ice and power by month.
func (a author) seasons() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "The season: heat, ice and power"}}
	if !a.aboard() {
		return append(out, layout.Para{Text: "There are no nights aboard, so there is no month to show."})
	}
	if a.bodyTight < leakMoves {
		out = append(out, layout.Para{Text: a.v.LeakText()})
	}
	if strips, ok := a.fortnight(a.chosen()); ok && a.bodyTight < spellMoves {
		out = append(out, strips)
	}
	demand, ice := a.demand(), a.iceByMonth()
	return append(out, layout.Side{Shares: []float64{3, 2}, Columns: [][]layout.Block{{demand}, {ice}}})
}

func monthly(label string, months []economics.MonthFigures, of func(economics.MonthFigures) float64) chart.ByMonth {
	m := chart.ByMonth{Label: label, Values: map[int]float64{}}
	for _, f := range months {
		m.Values[f.Month] = of(f)
	}
	return m
}

// demand sets what the units take beside what the sun leaves for them.
func (a author) demand() layout.Picture {
	ms := a.r.Months
	spare := monthly("sun to spare", ms, func(m economics.MonthFigures) float64 { return max(0, m.SolarWhPerDay-m.HouseWhPerDay) })
	c := chart.Months{
		Head: chart.Head{Name: "demand and sun", Finding: a.v.SunAgainstDemand(), Caption: "Wh a day, box as she is; sun after the other loads aboard"},
		Bars: []chart.ByMonth{
			monthly("small unit", ms, func(m economics.MonthFigures) float64 { return m.SmallWhPerDay }),
			monthly("larger unit", ms, func(m economics.MonthFigures) float64 { return m.LargerWhPerDay }),
		},
		Lines: []chart.ByMonth{spare},
	}
	if slices.Max(slices.Collect(maps.Values(spare.Values))) == 0 { // a line on the axis would be taken for part of it
		c.Lines, c.Caption = nil, "Wh a day, box as she is; no sun to spare after the other loads aboard"
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Month"}, {Head: "Small unit, Wh", Right: true}, {Head: "Larger unit, Wh", Right: true}, {Head: "Sun, Wh", Right: true}, {Head: "Other loads, Wh", Right: true}}}
	for _, m := range ms {
		t.Rows = append(t.Rows, []string{words.Month(m.Month), watts(m.SmallWhPerDay), watts(m.LargerWhPerDay), watts(m.SolarWhPerDay), watts(m.HouseWhPerDay)})
	}
	return layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: a.tall(62), Draw: c.Draw, Table: t}
}

// iceByMonth shows the ice a day's heat melts.
func (a author) iceByMonth() layout.Picture {
	c := chart.Months{
		Head: chart.Head{Name: "ice by month", Finding: a.v.IceAtMost(), Caption: "Ice melted a day, " + a.v.MassUnit() + ", box as she is"},
		Bars: []chart.ByMonth{monthly("ice", a.r.Months, func(m economics.MonthFigures) float64 { return a.v.InMass(m.IceKgPerDay) })},
		Say:  func(x float64) string { return quantity.FormatNumber(round1(x)) },
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Month"}, {Head: "Heat, W", Right: true}, {Head: "Ice a day, " + a.v.MassUnit(), Right: true}}}
	for _, m := range a.r.Months {
		t.Rows = append(t.Rows, []string{words.Month(m.Month), watts(m.HeatGainW), quantity.FormatNumber(round1(a.v.InMass(m.IceKgPerDay)))})
	}
	return layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: a.tall(62), Draw: c.Draw, Table: t}
}

// watts prints a power or energy without its unit, for tables, to the two digits
// that a leak known to a quarter bears.
func watts(x float64) string { return chart.Number(math.Round(words.Round(x)), 1) }
