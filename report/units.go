package report

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// units shows what the two units do in the box as she is, what another
// temperature would cost, and what their makers' plates mean.
func (a author) units() []layout.Block {
	rows := []struct {
		label string
		cell  func(economics.UnitFigures) string
	}{
		{"Box it cools", func(u economics.UnitFigures) string { return a.v.Volume(u.VolumeL) }},
		{"Heat it can take out there", func(u economics.UnitFigures) string {
			return quantity.FormatPower(quantity.Watt(words.Round(u.CapacityW)))
		}},
		{"Share of the time it runs", func(u economics.UnitFigures) string {
			return quantity.FormatShare(quantity.Fraction(words.Round(u.RunShare)))
		}},
		{"Temperature it holds", func(u economics.UnitFigures) string { return a.v.Degrees(u.HeldC) }},
		{"Plate, and where its heat goes", func(u economics.UnitFigures) string { return a.v.Degrees(u.PlateC) + ", " + a.v.Degrees(u.CondenserC) }},
		{"Heat moved per electricity used", func(u economics.UnitFigures) string { return fmt.Sprintf("%.1f", u.COP) }},
		{"Electricity a day", func(u economics.UnitFigures) string {
			return words.WattHours(u.WhPerDay) + ", " + words.Charge(u.AhPerDay)
		}},
		{"Current while it runs", func(u economics.UnitFigures) string {
			return quantity.FormatCurrent(quantity.Ampere(words.Round(u.RunningA)))
		}},
		{"Cooling a warm box down", func(u economics.UnitFigures) string {
			if !u.PullDownReached {
				return "never gets there"
			}
			return quantity.FormatHours(words.Round(u.PullDownHours)) + ", " + words.WattHours(u.PullDownWh)
		}},
		{"Keeps cold with the unit off", func(u economics.UnitFigures) string {
			if u.HoldOverHours <= 0 {
				return "stores no cold"
			}
			return quantity.FormatHours(words.Round(u.HoldOverHours))
		}},
		{"Voltage lost in its cable", a.cableDrop},
	}
	t := layout.Table{Fine: true, Columns: []layout.Column{{Quiet: true, Share: 0.4}}}
	for _, u := range a.r.Units {
		t.Columns = append(t.Columns, layout.Column{Head: words.Name(u.ID)})
	}
	for _, r := range rows {
		row := []string{r.label}
		for _, u := range a.r.Units {
			row = append(row, r.cell(u))
		}
		t.Rows = append(t.Rows, row)
	}
	var notes []layout.Block
	for _, u := range a.r.Units {
		if text := a.v.PlateMeans(u); text != "" {
			notes = append(notes, layout.Para{Style: layout.Small, Lead: "What the " + words.Bare(u.ID) + "'s rating plate means.", Text: text})
		}
	}
	notes = append(notes, layout.Paras(layout.Small, a.v.HoldOver(), a.v.CableRule())...)
	out := []layout.Block{layout.Kept{
		layout.Heading{Level: 1, Text: "The units in this box"},
		layout.Para{Text: "In the hottest month aboard, box as she is. The box decides what a unit uses, far more than its name does."},
		t,
	}}
	return append(append(out, notes...), a.setPoints()...)
}

func (a author) cableDrop(u economics.UnitFigures) string {
	c := u.Cable
	if !c.Known {
		return "cable not known"
	}
	text := fmt.Sprintf("%.1f %%", 100*c.DropShare)
	if c.LeastV < c.CutOutV {
		text += fmt.Sprintf("; at a low battery %s reach it, and units cut out near %s", quantity.FormatVoltage(quantity.Volt(c.LeastV)), quantity.FormatVoltage(quantity.Volt(c.CutOutV)))
	}
	return text
}

// setPoints shows the trade between temperature, electricity and keeping.
func (a author) setPoints() []layout.Block {
	u := a.r.Units[0]
	if a.v.Unit() != u.ID {
		u = a.r.Units[1]
	}
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Box at", Share: 0.1}, {Head: "Electricity a day", Share: 0.22}, {Head: "Listeria grows, against 5 °C (41 °F)", Share: 0.26}, {Head: "Good for"}}}
	for _, p := range u.SetPoints {
		use := "all chilled food"
		if !p.Perishables {
			use = "only drinks, butter and vegetables; no meat, fish, milk or leftovers"
		}
		takes := words.WattHours(float64(p.Duty.DayWh()))
		if p.Duty.RunShare > 1 { // it runs without a pause, whatever is wanted
			takes += ", and gets to " + quantity.FormatTemperature(p.Duty.Held, a.r.Boat.Units) + " only"
		}
		t.Rows = append(t.Rows, []string{quantity.FormatTemperature(p.Box, a.r.Boat.Units), takes, fmt.Sprintf("%.1f times as fast", p.Growth), use})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []layout.Block{layout.Kept{
		layout.Heading{Level: 2, Text: "What another temperature would take, with " + words.In(u.ID)}, t,
		layout.Para{Style: layout.Small, Text: "Growth after FDA and USDA FSIS, 2003. It compares temperatures and says nothing of how many days food is safe. A warmer box saves little electricity and spoils food sooner: 5 °C (41 °F) is the warmest for food that may spoil."},
	}}
}
