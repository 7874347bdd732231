package handout

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
)

// tables is the second sheet.
func (h *Handout) tables() []layout.Block {
	return []layout.Block{
		layout.Side{Columns: [][]layout.Block{{h.foamTable(), small("The ice test, which beats A and B:", h.iceTest())}, {h.moneyTable()}}},
		h.leakTable(),
		layout.Side{Shares: []float64{0.36, 0.64}, Columns: [][]layout.Block{{h.monthTable()}, {h.dailyTable()}}},
		forms.Checks{Title: "Clear these first", Items: h.checks}.Block(),
		small("The water-jug test:", h.jugTest()),
		small("What this is.", h.pack.Guidance),
	}
}

var materialNames = map[heat.Material]string{heat.OldPolyurethane: "Old foam, or not known", heat.Polyurethane: "New polyurethane",
	heat.XPS: "Extruded board", heat.EPS: "Bead board", heat.Cork: "Cork"}

// month names a month, 0 for January, in three letters.
func month(m int) string { return time.Month(m + 1).String()[:3] }

func fixed(x float64, digits int) string {
	text := strconv.FormatFloat(x, 'f', digits, 64)
	if strings.Trim(text, "-0.") == "" { // no minus before nothing
		text = strings.TrimPrefix(text, "-")
	}
	return strings.Replace(text, "-", "−", 1)
}

func (h *Handout) foamTable() layout.Block {
	t := forms.Ready{First: 34, Mark: "A", Title: "What foam counts as", Entry: "Tables", Heads: []string{"Share of its thickness"}}
	for _, s := range states {
		t.Heads = append(t.Heads, string(s))
	}
	for i, m := range materials {
		row := []string{materialNames[m]}
		for _, x := range h.counts[i] {
			row = append(row, fixed(x, 2))
		}
		t.Rows = append(t.Rows, row)
	}
	return t.Block()
}

func (h *Handout) moneyTable() layout.Block {
	t := forms.Ready{First: 14, Mark: "E", Title: "Of each 1.00 spent, a year",
		Note:  fmt.Sprintf("Across: years you keep it up. Down: its life. Real rate %s %% a year.", short(100*rate, 2)),
		Heads: []string{"years"}}
	for _, years := range horizons {
		t.Heads = append(t.Heads, strconv.Itoa(years))
	}
	for i, life := range lives {
		row := []string{"lasts"}
		if life > 0 {
			row = []string{short(life, 3)}
		}
		for _, x := range h.factors[i] {
			row = append(row, fixed(x/100, 3))
		}
		t.Rows = append(t.Rows, row)
	}
	return t.Block()
}

func (h *Handout) leakTable() layout.Block {
	u, w := unitsOf(h.sys), h.words
	t := forms.Ready{First: 16, Mark: "B", Title: "Leak of the walls, " + w.leak,
		Note:  fmt.Sprintf("Across: foam that counts, %s. Down: inside volume, %s. A box near a cube in shape, its outboard side against the hull.", w.foam, w.volume),
		Heads: []string{w.volume}}
	for _, f := range u.foams {
		t.Heads = append(t.Heads, short(f, 3))
	}
	for i, v := range u.volumes {
		row := []string{short(v, 3)}
		for _, x := range h.leaks[i] {
			row = append(row, fixed(x, 2))
		}
		t.Rows = append(t.Rows, row)
	}
	return t.Block()
}

func (h *Handout) monthTable() layout.Block {
	w := h.words
	t := forms.Ready{First: 11, Mark: "C", Title: "The months",
		Note:  fmt.Sprintf("Degrees: outside less food at %s. Sun: kWh/m² a day.", w.target),
		Heads: []string{"", "Air " + w.degree, "Degrees " + w.degree, "Sun", "Ah from 100 W"}}
	for m, row := range h.year {
		t.Rows = append(t.Rows, []string{month(m), fixed(row.Air, 0), fixed(row.Degrees, 1), fixed(row.SunKWh, 1), fixed(row.PanelWh/leadWhPerAh, 0)})
	}
	return t.Block()
}

// leadWhPerAh turns watt-hours into Ah of a 12 V lead bank.
var leadWhPerAh = float64(energy.Bank{Volts: 12, Chemistry: energy.Lead}.Energy(1))

func (h *Handout) dailyTable() layout.Block {
	u, w := unitsOf(h.sys), h.words
	t := forms.Ready{First: 17, Mark: "D", Title: "A day in the warmest month",
		Note:  fmt.Sprintf("Fan, by rated watts (−10/45 °C). * never pauses, and the food warms. Last: most heat held, %s.", w.heat),
		Heads: []string{"Heat " + w.heat, "Ice " + w.mass}}
	for _, rated := range ratings {
		t.Heads = append(t.Heads, fmt.Sprintf("%.0f W: Wh", rated), "Ah")
	}
	for i, d := range h.days {
		row := []string{short(u.heats[i], 3), short(d.Ice, 2)}
		for _, cell := range d.Units {
			star := ""
			if cell.Beyond {
				star = "*"
			}
			row = append(row, short(cell.Wh, 2)+star, short(cell.Wh/leadWhPerAh, 2)+star)
		}
		t.Rows = append(t.Rows, row)
	}
	last := []string{"most", ""}
	for _, rated := range ratings {
		last = append(last, short(most(h.ground, rated)/u.watt, 2), "")
	}
	t.Rows = append(t.Rows, last)
	return t.Block()
}

// small is what stands under the tables.
func small(lead, text string) layout.Block {
	return layout.Para{Style: layout.Tiny, Lead: lead, Text: text}
}

// wattHoursPerKg is what melts a kilogram of ice.
var wattHoursPerKg = heat.MeltKJPerKg(0) / 3.6

func (h *Handout) iceTest() string {
	u := unitsOf(h.sys)
	return fmt.Sprintf("chill the box a night, weigh the ice, shut the lid a day, weigh again; read both airs. Leak = %s melted × %s ÷ (hours × degrees apart).",
		h.words.mass, short(wattHoursPerKg*u.kilogram/u.watt, 3))
}

func (h *Handout) jugTest() string {
	const waterWhPerKgK = 4.19 / 3.6
	w, u := h.words, unitsOf(h.sys)
	liner := float64(heat.BareKJPerK(quantity.Litre(u.litre))) / 3.6 / u.leakUnit()
	return fmt.Sprintf("chilled jugs, no ice, lid shut; read water and both airs until it has warmed by half. "+
		"Leak = (%s of water × %s + %s of box × %s) × degrees warmed ÷ (hours × degrees apart).",
		w.mass, short(waterWhPerKgK*u.kilogram/u.leakUnit(), 3), w.volume, short(liner, 2))
}
