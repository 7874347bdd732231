package report

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// buy is the order list with what it costs, in words that a shop understands.
func (a author) buy(s setting) []layout.Block {
	by := "by your own hands"
	if a.r.Boat.Money.FittedBy == economics.Yard {
		by = "by a yard"
	}
	t := layout.Table{Sum: true, Close: s.tight > 0, Fine: s.tight == tightest, Columns: []layout.Column{{Head: "What"}, {Head: "Ask for"}, {Head: "Hours", Right: true}, {Head: "Low", Right: true}, {Head: "Typical", Right: true}, {Head: "High", Right: true}}}
	say := a.v.Money
	if letters := a.letters(); letters != "" { // stand once
		say = func(x float64) string { return words.Unsigned(a.v.Money(x)) }
		t.Columns[3].Head += ", " + letters
	}
	var hours quantity.Range
	for _, l := range a.o.Fitted.Lines {
		if l.First == 0 {
			continue
		}
		what, ask := a.ask(l)
		low, high := a.priceRange(l)
		t.Rows = append(t.Rows, []string{what, ask, words.Hours(l.Hours), say(low), say(l.First), say(high)})
		hours = hours.Plus(l.Hours)
	}
	enough := a.enough()
	if len(t.Rows) == 0 {
		text := fmt.Sprintf("Nothing has to be bought for %s.", a.v.Named(a.o.ID))
		if enough != "" {
			text += " " + enough
		}
		return []layout.Block{layout.Heading{Level: 1, Text: "Buy nothing"}, layout.Para{Text: text}}
	}
	if enough != "" && s.tight < tightest {
		t.Rows = append(t.Rows, []string{"Nothing", enough, "", "0", "0", "0"})
	}
	first := a.o.FittedBands.First
	t.Rows = append(t.Rows, []string{"All", "Range: 80 of 100 futures, not the sum of lows or highs.", words.Hours(hours), say(first.Low), say(a.o.Fitted.First), say(first.High)})
	if hours.High == 0 { // a yard does it
		t.Columns = slices.Delete(t.Columns, 2, 3)
		for i := range t.Rows {
			t.Rows[i] = slices.Delete(t.Rows[i], 2, 3)
		}
	}
	head := fmt.Sprintf("Buy this: about %s, %s", a.v.Money(a.o.Fitted.First), by)
	if a.taken() != a.o.ID {
		head = fmt.Sprintf("If you do want %s, buy this: about %s, %s", a.v.Named(a.o.ID), a.v.Money(a.o.Fitted.First), by)
	}
	out := []layout.Block{layout.Heading{Level: 1, Text: head}, t}
	if tighter := a.v.Tighter(a.o.ID); tighter != "" {
		if s.tight == tightest { // what it takes stands in the appendix
			tighter = brief(tighter, 0)
		}
		out = append(out, layout.Para{Text: tighter, Wide: true})
	}
	return out
}

// letters is a currency without a sign of its own, "" for one that has it.
func (a author) letters() string {
	if c := a.r.Boat.Currency; len([]rune(c)) > 2 {
		return c
	}
	return ""
}

// priceRange gives the low and high price of a line: the price book's, that of
// what the owner told of the unit, or the one sum of a quotation.
func (a author) priceRange(l economics.CostLine) (low, high float64) {
	if book, ok := a.Pack.Book.Price(l.ID); ok && book.Price.Typical > 0 {
		return l.First * book.Price.Low / book.Price.Typical, l.First * book.Price.High / book.Price.Typical
	}
	if q, ok := a.r.Boat.Offered[a.o.ID]; ok && (l.ID == "unit" || l.ID == "fitting" && q.FittingQuoted) {
		return l.First, l.First // a quoted sum is firm
	}
	name := map[string]string{"unit": "unit_price", "fitting": "fitting"}[l.ID]
	for _, in := range a.r.Futures.Inputs {
		if in.Name == name && in.Typical > 0 {
			return l.First * in.Low / in.Typical, l.First * in.High / in.Typical
		}
	}
	return l.First, l.First
}

// ask names a line of the order list, and what to say in the shop.
func (a author) ask(l economics.CostLine) (what, ask string) {
	b, sys := a.r.Boat, a.r.Boat.Units
	switch l.ID {
	case "unit":
		if q, ok := a.r.Boat.Offered[a.o.ID]; ok {
			return "Unit", "As quoted, " + q.Name + ": " + a.askUnit()
		}
		return "Unit", a.askUnit()
	case "fitting":
		if b.Money.FittedBy == economics.Yard {
			return "Fitting", "A yard's fixed price, with making good and a test run."
		}
		return "Fitting", "Hole cutters, grommets, screws, brackets, sealant: see the unit's papers."
	case "cable_fuse":
		return "Cable", a.askCable()
	case "foam":
		return "Board", a.askBoard()
	case "seal":
		return "Gasket", fmt.Sprintf("Soft closed-cell strip, self-adhesive, some %s (the rim takes %s).",
			quantity.FormatRun(quantity.Metre(1.25*a.rim()), sys), quantity.FormatRun(quantity.Metre(a.rim()), sys))
	case "drain_trap":
		return "Drain", "A trap for the drain hose, or a bung to plug it."
	case "lid_foam":
		return "Lid", "Liner sheet and longer hinge screws for the thicker lid."
	case "poured_foam":
		return "Pour", fmt.Sprintf("Two-part closed-cell foam for %s of space, of low pressure; mask, gloves, suit.", quantity.FormatVolume(quantity.Litre(l.Count), sys))
	case "spacer":
		return "Block", fmt.Sprintf("Extruded polystyrene board, dry, to stack and wrap: %s.", quantity.FormatVolume(quantity.Litre(l.Count), sys))
	case "cover":
		return "Cover", fmt.Sprintf("Closed-cell camping mat or quilted cover, cut to %s.", a.opening(a.fitted.Box.Inside.Length, a.fitted.Box.Inside.Width))
	case "vent_duct":
		return "Air", "Duct, two grilles and a small fan: cool air in low, warm air out high, as large as the maker asks."
	case "alarm":
		return "Alarm", fmt.Sprintf("Thermometer with a probe and a battery of its own, that sounds above %s.", a.v.Degrees(a.limitC()))
	case "panel":
		return "Panel", fmt.Sprintf("%s W of panel, with controller, cable and mounts (%s W in all).", watts(l.Count), watts(float64(b.Power.SolarWp)+l.Count))
	case "battery_lead", "battery_lithium":
		kind := map[string]string{"battery_lead": "sealed lead", "battery_lithium": "lithium iron phosphate"}[l.ID]
		return "Battery", fmt.Sprintf("%.0f V, %s, %s: the same age and kind as its bank.", float64(b.Power.Volts), quantity.FormatCharge(a.o.Fit.Out.Battery), kind)
	}
	return "Also", l.Label + "."
}

// askCable gives the conductor and the most that its fuse may be.
func (a author) askCable() string {
	c, sys := a.unitFigures().Cable, a.r.Boat.Units
	size := quantity.FormatWireSize(quantity.SquareMillimetre(c.MetricMm2), quantity.Metric)
	if sys == quantity.US {
		size = "AWG " + c.AWG
	}
	fuse := " Fuse at the battery as the maker says"
	if sold, ok := energy.FuseSold(quantity.Ampere(c.FuseA)); ok { // none may be larger, so the next below
		fuse += fmt.Sprintf(", %s at most", quantity.FormatCurrent(sold))
	}
	run := quantity.FormatRun(quantity.Metre(c.RunM), sys)
	switch {
	case c.RunM <= 0:
		return "Measure the run from battery to unit first: the cable's size follows from it." + fuse + "; a switch."
	case c.Known && c.DropShare <= 0.03:
		return fmt.Sprintf("Your %s is enough for %s (%.1f V lost).", quantity.FormatWireSize(quantity.SquareMillimetre(c.SizeMm2), sys), run, c.DropShare*float64(a.r.Boat.Power.Volts)) + fuse + "; a switch."
	case c.MetricMm2 == 0 || sys == quantity.US && c.AWG == "":
		return fmt.Sprintf("No usual cable carries it over %s with 3 %% lost: move the battery or the unit.", run)
	}
	return fmt.Sprintf("Copper, %s or more, for %s each way.", size, run) + fuse + "; a switch."
}

// askUnit describes the unit: never a make.
func (a author) askUnit() string {
	b, u, f := a.r.Boat, a.r.Boat.Small, a.unitFigures()
	if a.o.ID == economics.LargerUnit {
		u = b.Larger
	}
	volts := fmt.Sprintf("%.0f V", float64(b.Power.Volts))
	amps := quantity.FormatCurrent(quantity.Ampere(round1(a.expect.RunningA.Typical)))
	if a.chest() {
		return fmt.Sprintf("Free-standing %s compressor chest of %s; about %s while it runs. Not a thermoelectric box.", volts, a.v.Volume(a.fitted.VolumeL), amps)
	}
	plate := map[energy.Plate]string{energy.Thin: "thin plate", energy.Eutectic: "cold-storing plate"}[u.Plate]
	out := fmt.Sprintf("%s compressor unit, %s, for a box of %s: about %s W at −10/45 °C, %s running, cooled by %s.",
		volts, plate, a.v.Volume(a.fitted.VolumeL), watts(f.RatedW), amps, coolers[a.condenser(u)])
	if o := b.Box.LidOpening; o.Length > 0 {
		out += fmt.Sprintf(" Plate to pass %s.", a.opening(o.Length, o.Width))
	}
	return out
}

func (a author) condenser(u economics.Unit) energy.Condenser {
	if a.o.Fit.Out.Vent {
		return energy.Fan
	}
	return u.CooledBy
}

var coolers = map[energy.Condenser]string{energy.Fins: "fins in still air", energy.LockerFan: "a fan in its locker", energy.Fan: "a fan through a duct", energy.Seawater: "sea water"}

// opening prints two sides.
func (a author) opening(x, y quantity.Metre) string {
	return strings.NewReplacer(" x ", "\u00a0×\u00a0", " ", "\u00a0").Replace(quantity.FormatDimensions(quantity.Dimensions{Length: x, Width: y}, a.r.Boat.Units))
}

// rim is the length of the lid's seal, m.
func (a author) rim() float64 { return float64(a.told.Box.LidPerimeter) }

// askBoard gives the sheets to buy, and what joins them.
func (a author) askBoard() string {
	c := a.cuts()
	var sheets []string
	for _, g := range c.byThickness() {
		sheets = append(sheets, fmt.Sprintf("%s of %s, %s thick", words.Plural(float64(g.sheets), "sheet"), a.opening(sheetOf(a.r.Boat.Units)), a.v.Length(g.mm)))
	}
	if len(sheets) == 0 {
		return "Extruded polystyrene board, dry."
	}
	liner := "Liner"
	if a.cutsAhead {
		liner = "Cut as on page 2. Liner"
	}
	return fmt.Sprintf("Extruded polystyrene, dry: %s. %s sheet, epoxy, sealant, and %s of foil tape for the joints.",
		words.Join(sheets), liner, quantity.FormatRun(quantity.Metre(c.joints), a.r.Boat.Units))
}

// enough names what serves as it is.
func (a author) enough() string {
	b, f := a.r.Boat, a.o.Fit.Out
	var out []string
	if a.unit() && f.Battery == 0 && b.Power.Battery > 0 {
		out = append(out, "battery "+quantity.FormatCharge(b.Power.Battery))
	}
	if a.unit() && f.PanelWp == 0 && b.Power.SolarWp > 0 {
		out = append(out, "panel "+quantity.FormatPower(b.Power.SolarWp))
	}
	if a.unit() && !f.Vent && !a.chest() {
		out = append(out, "the condenser's air")
	}
	if !f.Seal && !a.chest() {
		out = append(out, "the lid's seal")
	}
	if !f.Drain && !a.chest() && a.r.Boat.Box.Drain != heat.NoDrain {
		out = append(out, "the drain")
	}
	if len(out) == 0 {
		return ""
	}
	verb := "serve as they are."
	if len(out) == 1 {
		verb = "serves as it is."
	}
	return words.Capital(words.Join(out)) + " " + verb
}
