package handout

import (
	"fmt"
	"strconv"
	"strings"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// words are the units and the figures of a unit system as printed.
type words struct {
	volume, foam, leak, rim, degree, heat, mass string
	volumeFrom                                  string // how a volume is found
	target                                      string // the food temperature of the tables
	offset                                      string // of the cabin over the air outside
}

func wordsOf(sys quantity.System) words {
	if sys == quantity.US {
		return words{volume: "cu ft", volumeFrom: "inches, ÷ 1,728", foam: "in", leak: "Btu/h·°F", rim: "feet", degree: "°F", heat: "Btu/h", mass: "lb", target: "39 °F", offset: "4 °F"}
	}
	return words{volume: "L", volumeFrom: "cm, ÷ 1,000", foam: "mm", leak: "W/K", rim: "metres", degree: "°C", heat: "W", mass: "kg", target: "4 °C", offset: "2 °C"}
}

// Use of the box as a leak: people's food and drink and the openings of the lid,
// W/K. Three cans of 0.35 kg a person and day, in at cabin temperature, are
// 0.051 W/K; 0.36 kg of chilled food, in at 8 °C, adds a tenth of that. A dozen
// openings of a middling box let in 0.1 W at 20 K.
const (
	usePerPerson = 0.055
	useOfLid     = 0.01
)

// short prints a figure with so many significant digits and no idle zeros.
func short(x float64, digits int) string {
	return strconv.FormatFloat(quantity.Significant(x, digits), 'f', -1, 64)
}

// price prints a sum: in cents if it is small, else to two significant digits.
func price(x float64) string {
	if x >= 0.1 && x < 10 {
		return fixed(x, 2)
	}
	return short(x, 2)
}

// warmKg is the chilled food of a person that is aboard on a mean night and
// spoils where it is not cold: 1.2 kg a day, three tenths of it chilled, bought
// for three days.
const warmKg = 0.55

// spoiledANight is what spoils for a person on a night that is not cold.
func (h *Handout) spoiledANight() float64 { return h.money.spoilage * warmKg }

// entry is one line to fill in.
type entry struct{ text, example, unit string }

// steps are the ten lines.
func (c *chained) steps() []entry {
	h, w, u, m := c.h, c.h.words, c.u, c.h.money
	e := exampleOf(h.sys)
	f := c.follow(e)
	leak := func(wPerK float64) string { return short(wPerK/u.leakUnit(), 2) }
	rim := func(s heat.Seal) string {
		loss, _ := heat.SealLoss(s) // the ledger's own seals and drain
		return short(loss.Range.Typical*u.foot/u.leakUnit(), 2)
	}
	drain, _ := heat.DrainLoss(heat.OpenDrain)
	cur := func(x float64) string { return m.currency + price(x) }
	of := h.counts[0]
	kept := func(years int) string { return short(aYear(years)/aYear(unitYears), 2) }
	lithium := 1 / (float64(energy.Bank{Volts: 12, Chemistry: energy.Lithium}.Energy(1)) / float64(energy.Bank{Volts: 12, Chemistry: energy.Lead}.Energy(1)))
	return []entry{
		{"Inside volume: length × width × height in " + w.volumeFrom, short(e.volume, 3), w.volume},
		{fmt.Sprintf("Foam that counts: its thickness × %s dry, %s damp, %s wet, %s soaked; new: overleaf", short(of[0], 2), short(of[1], 2), short(of[2], 2), short(of[3], 1)),
			fmt.Sprintf("%s × %s = %s", short(e.thick, 2), short(of[1], 2), short(f.foam, 2)), w.foam},
		{"A  Leak of the walls. Less foam in the lid: (5 × the walls' + the lid's) ÷ 6", short(f.walls, 2), ""},
		{fmt.Sprintf("Add %s of lid rim × %s soft, %s hard, %s resting; open drain %s", w.rim, rim(heat.GoodSeal), rim(heat.PoorSeal), rim(heat.NoSeal), leak(drain.Range.Typical)), short(e.more, 2), ""},
		{"Leak: line 3 + line 4. If you tested the box, the test's leak instead", short(f.leak, 2), w.leak},
		{fmt.Sprintf("B  Ice a day, warmest month: go on from line 5 + %s × people + %s", leak(usePerPerson), leak(useOfLid)), short(f.ice, 2), w.mass},
		{fmt.Sprintf("B  Ah a day with a fan; fins × %s, sea water × %s; lithium × %s", short(condenserFactor(h.ground, energy.Fins), 3), short(condenserFactor(h.ground, energy.Seawater), 3), short(lithium, 2)),
			short(f.ah, 2), "Ah"},
		{"Ice bought: trips × what fits in whole bags + later stops with ice × what you carry",
			fmt.Sprintf("%s×%s + %s×%s = %s", short(e.trips, 2), short(e.fits, 2), short(e.later, 2), short(e.carried, 2), short(f.bought, 3)), w.mass},
		{fmt.Sprintf("D  Its cost + errands + %s × people × nights not cold (food that spoils): mark 1", cur(h.spoiledANight())), m.currency + short(f.mark, 3), m.currency},
		{fmt.Sprintf("Unit fitted + cable %s (sea water + %s); × %s if kept 5 years, × %s if 15: mark 2", cur(m.cable), cur(m.hull), kept(5), kept(15)),
			m.currency + short(f.unit, 3), m.currency},
	}
}

const (
	stepsHead = 5.6
	stepHigh  = 5.4
	blankWide = 16.0
	unitWide  = 15.5
)

// drawSteps draws the lines with the example's figures and blanks.
func (c *chained) drawSteps(s sheet.Sheet, r sheet.Rect) error {
	steps := c.steps()
	blank := r.Right() - unitWide - blankWide
	across := func(y float64, p sheet.Pen) {
		s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.Right(), Y: y}, p)
	}
	across(r.Y, framePen)
	s.Text(r.X, r.Y+4, "Ten lines. Of the three marks the one furthest left costs least.", chartBold)
	s.Text(blank-2, r.Y+4, "example", chartBold.To(sheet.Right))
	s.Text(blank+blankWide/2, r.Y+4, "yours", chartBold.To(sheet.Centre))
	for i, line := range steps {
		y := r.Y + stepsHead + stepHigh*float64(i)
		across(y, gridPen)
		s.Text(r.X, y+4, strconv.Itoa(i+1), chartBold)
		s.Text(r.X+5.5, y+4, line.text, chartType)
		s.Text(blank-2, y+4, line.example, chartType.To(sheet.Right))
		s.Rect(sheet.Rect{X: blank, Y: y + 0.5, W: blankWide, H: stepHigh - 1}, sheet.Fill{}, tickPen)
		s.Text(blank+blankWide+1, y+4, line.unit, chartType)
	}
	across(r.Y+stepsHead+stepHigh*float64(len(steps)), framePen)
	return s.Err()
}

// chart is the chained chart, for a pencil; on a screen its lines stand alone.
func (h *Handout) chart() layout.Block {
	return layout.OnPaper{Name: "chart", Height: chainedHeight, Draw: func(s sheet.Sheet, r sheet.Rect) error {
		return h.newChained(r.X, r.Y, r.W).draw(s)
	}, Instead: []layout.Block{layout.Para{Text: "The chart of the paper edition is for a pencil: print the PDF. The tables below give the same figures."}}}
}

// lines are the ten lines to fill in.
func (h *Handout) lines() layout.Block {
	const anyWidth = 190
	steps := h.newChained(0, 0, anyWidth).steps()
	table := layout.Table{Columns: []layout.Column{{Head: "Line"}, {Head: "What to write"}, {Head: "Example"}, {Head: "Yours"}}}
	for i, line := range steps {
		table.Rows = append(table.Rows, []string{strconv.Itoa(i + 1), line.text, line.example, strings.TrimSpace("____ " + line.unit)})
	}
	return layout.OnPaper{Name: "lines", Height: func(float64) float64 { return stepsHead + stepHigh*float64(len(steps)) },
		Draw:    func(s sheet.Sheet, r sheet.Rect) error { return h.newChained(r.X, r.Y, r.W).drawSteps(s, r) },
		Instead: []layout.Block{table}}
}

// worksheet is the first side.
func (h *Handout) worksheet() []layout.Block {
	w := h.words
	return []layout.Block{
		layout.Heading{Level: 0, Text: "Ice, dry stores or a fridge?"},
		layout.Para{Style: layout.Fine, Lead: h.ground.Name + ".", Text: "Follow A B C D with a pencil, as the dashed line does; between two lines go between. " +
			"Degrees: outside less inside, food at " + w.target + ", cabin " + w.offset + " over the air. A warmer cabin has more."},
		h.chart(),
		h.lines(),
		layout.Para{Style: layout.Fine, Lead: "Ice keeps most boxes cool, not cold.", Text: "A unit in the black bar never pauses: add the food that spoils. A way's cost over its cold nights " +
			"is the price of one. A way that is never cold does not count. Tests and cautions are overleaf."},
	}
}
