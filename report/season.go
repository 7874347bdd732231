package report

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// season shows what each way keeps cold and cool, month by month.
func (a author) season(s setting) layout.Picture {
	c := chart.Season{Nights: "nights aboard", Cold: "cold: " + a.v.Degrees(5) + " or under", Cool: "cool: " + a.v.Degrees(10) + " or under", Warm: "warm", AsSheIs: "thin: as she is"}
	t := layout.Table{Columns: []layout.Column{{Head: "Cold days of 100, with the work"}}}
	for _, m := range a.r.Months {
		c.Months = append(c.Months, chart.SeasonMonth{Name: words.Month(m.Month)[:3], Nights: float64(m.Nights)})
		t.Columns = append(t.Columns, layout.Column{Head: words.Month(m.Month)[:3], Right: true})
	}
	var parts []string
	always, worked := 0, false
	for _, id := range a.order() {
		o := a.r.Of(id)
		if id == a.o.ID {
			o = a.o
		}
		if id == economics.DryStores && s.tight > 1 { // they keep nothing cold, on any day
			continue
		}
		shares := func(months [12]economics.MonthKept) []chart.DayShares {
			var out []chart.DayShares
			for _, m := range a.r.Months {
				k := months[m.Month-1]
				out = append(out, chart.DayShares{Cold: min(1, k.Cold), Cool: max(0, min(1, k.Cool)-k.Cold)})
			}
			return out
		}
		row := chart.SeasonRow{Name: words.Name(id), Best: id == a.o.ID, With: shares(o.FittedMonths)}
		if o.Fit.Cools() {
			row.Now, worked = shares(o.AsToldMonths), true
		}
		c.Rows = append(c.Rows, row)
		cells := []string{row.Name}
		for _, d := range row.With {
			cells = append(cells, fmt.Sprintf("%.0f", 100*d.Cold))
		}
		t.Rows = append(t.Rows, cells)
		if id != economics.DryStores {
			cold, _ := o.Fitted.Shares()
			parts = append(parts, fmt.Sprintf("%s %.0f", words.Bare(id), 100*cold))
			if cold >= 0.995 {
				always++
			}
		}
	}
	finding := fmt.Sprintf("Cold days of 100: %s", words.Join(parts))
	if always == len(parts) {
		finding = "Ice and both units keep the food cold on every day"
		if worked {
			finding = "With the work ice and both units keep the food cold on every day"
		}
	}
	return chart.Picture(c, finding, "", finding+".", t)
}

// order gives the ways, the one shown first and dry stores last.
func (a author) order() []economics.OptionID {
	out := []economics.OptionID{}
	if a.o.ID != economics.DryStores {
		out = append(out, a.o.ID)
	}
	for _, id := range []economics.OptionID{economics.SmallUnit, economics.LargerUnit, economics.IceOnly} {
		if id != a.o.ID {
			out = append(out, id)
		}
	}
	return append(out, economics.DryStores)
}

// upkeep shows by month what the way shown lives on: power or ice.
func (a author) upkeep(s setting) []layout.Block {
	if a.unit() {
		return headed(a.power(s))
	}
	hold, _ := a.o.Fitted.Facts["ice_capacity_kg"].(float64)
	t := layout.Table{Columns: []layout.Column{{Head: "Month"}, {Head: "Nights", Right: true}, {Head: "Cabin", Right: true}, {Head: "Ice a day, " + a.v.MassUnit(), Right: true}, {Head: "A full load lasts", Right: true}}}
	ratio := 1.0
	if a.told.HeatW > 0 {
		ratio = a.fitted.HeatW / a.told.HeatW
	}
	for _, m := range a.r.Months {
		kg := m.IceKgPerDay * ratio
		lasts := "–"
		if kg > 0 && hold > 0 {
			lasts = words.Plural(words.Round(hold/kg), "day")
		}
		t.Rows = append(t.Rows, []string{words.Month(m.Month), fmt.Sprint(m.Nights), a.v.Degrees(m.CabinC), quantity.FormatNumber(round1(a.v.InMass(kg))), lasts})
	}
	head := fmt.Sprintf("Ice by month: a full load is %s, in %s of the box", a.v.Mass(hold), a.v.Volume(a.fitted.Room.Cooling))
	return []layout.Block{layout.Kept{layout.Heading{Level: 2, Text: head}, t}}
}

// round1 rounds to one decimal below ten and to a whole number above.
func round1(x float64) float64 {
	if math.Abs(x) < 9.95 {
		return math.Round(10*x) / 10
	}
	return math.Round(x)
}

// power sets what the unit needs against what the sun leaves.
func (a author) power(s setting) layout.Picture {
	c := chart.Power{Plot: a.lower([...]float64{0, 0, 27, 22, 18, 15}[s.tight]), With: "need with the work", AsSheIs: "as she is", Sun: "sun left after the other loads"}
	if !a.worked() {
		c.With, c.AsSheIs = "need", ""
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Month"}, {Head: "Need, Wh", Right: true}, {Head: "As she is, Wh", Right: true}, {Head: "Sun left, Wh", Right: true}}}
	var short []string
	most := 0.0
	for i, m := range a.fitted.Power {
		now := a.told.Power[i].NeedWh
		c.Months = append(c.Months, chart.PowerMonth{SeasonMonth: chart.SeasonMonth{Name: words.Month(m.Month)[:3], Nights: float64(m.Nights)},
			Need: words.Round(m.NeedWh), Now: now, Sun: m.SunWh})
		t.Rows = append(t.Rows, []string{words.Month(m.Month), watts(m.NeedWh), watts(now), watts(m.SunWh)})
		if m.SunWh < m.NeedWh {
			short = append(short, words.Month(m.Month))
			most = max(most, m.NeedWh-m.SunWh)
		}
	}
	if !a.worked() {
		t = t.Without(2)
	}
	name, finding := words.In(a.o.ID), ""
	switch {
	case len(short) == 0:
		finding = fmt.Sprintf("The sun carries %s in every month aboard", name)
	case len(short) == len(c.Months):
		finding = fmt.Sprintf("In no month does the sun alone carry %s: up to %s Wh a day are short", name, watts(most))
	case len(short) > 3:
		finding = fmt.Sprintf("The sun carries %s in %d of %d months; else up to %s Wh a day are short", name, len(c.Months)-len(short), len(c.Months), watts(most))
	default:
		finding = fmt.Sprintf("The sun carries %s but for %s, when up to %s Wh a day are short", name, words.Join(short), watts(most))
	}
	caption := "Wh a day; a month as wide as its nights. " + a.makesUp(most)
	p := chart.Picture(c, finding, strings.TrimSpace(caption), finding+".", t)
	height := p.Height
	p.Height = func(w float64) float64 { return height(w) + s.spare/2 }
	return p
}

// makesUp says where the rest of the power comes from.
func (a author) makesUp(shortWh float64) string {
	pw := a.r.Boat.Power
	var from []string
	bank := pw.Bank()
	wh := pw.EngineHoursPerDay * float64(bank.EngineW(pw.EngineAmps))
	if wh > 0 {
		from = append(from, fmt.Sprintf("the engine (about %s Wh a day)", watts(wh)))
	}
	if share := a.r.Boat.Cruising.ShorePowerShare; share > 0 {
		from = append(from, fmt.Sprintf("shore power (%s of nights)", quantity.FormatShare(share)))
	}
	if len(from) > 0 && wh < shortWh {
		from = append(from, "a battery full at first")
	}
	switch {
	case shortWh <= 0:
		return ""
	case len(from) == 0:
		return "Nothing else charges the battery."
	}
	return "What is short comes from " + words.Join(from) + "."
}
