package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// proof is page four: check the work, keep a log, eat when it fails.
func (a author) proof(s setting) []layout.Block {
	if !a.aboard() {
		return append([]layout.Block{layout.Heading{Level: 1, Text: "Prove it"}, layout.Para{Text: "There is nothing to measure without nights aboard."}}, a.reckoned())
	}
	out := []layout.Block{layout.Heading{Level: 1, Text: a.expected()},
		layout.Para{Style: layout.Small, Keep: true, Text: "In brackets: where 80 of 100 boats like yours would lie. Outside them go by the last column; earlier rows explain later ones."},
		a.measures(s)}
	out = append(out, layout.Kept{layout.Heading{Level: 1, Text: "The first two weeks"},
		layout.Para{Style: layout.Small, Keep: true, Text: "Cabin: the day's highest. Box: in a glass of water amid the food. Eight lines in mid-season tell most; coldreckon learn reads them."},
		a.log(s)})
	out = append(out, a.foodPlan(s)...)
	if alarm, ok := a.r.Alarm(a.Pack.Book); ok && a.unit() {
		out = append(out, layout.Para{Text: a.v.Alarm(alarm, a.o.Fit.Out), Wide: true})
	}
	return append(out, a.reckoned())
}

// range80 prints a range: middle, and 80 of 100 in brackets.
func range80(r quantity.Range, say func(float64) string) string {
	low, mid, high := say(r.Low), say(r.Typical), say(r.High)
	if low == high {
		return mid
	}
	return mid + " (" + low + "–" + high + ")"
}

func (a author) mass(kg float64) string { return quantity.FormatNumber(round1(a.v.InMass(kg))) }

// expected is the finding over the table.
func (a author) expected() string {
	month := words.Month(a.told.Month)
	if !a.unit() {
		return fmt.Sprintf("Expect some %s %s of ice a day in %s: measure it before you trust it", a.mass(a.expect.IceKgPerDay.Typical), a.v.MassUnit(), month)
	}
	return fmt.Sprintf("Expect some %s Ah a day in %s: measure it before you trust it", watts(a.expect.AhPerDay.Typical), month)
}

// measures lists what to measure, what to expect, and what it means if not.
func (a author) measures(s setting) layout.Table {
	sys, unit, e := a.r.Boat.Units, a.v.MassUnit(), a.expect
	t := layout.Table{Close: s.tight > 0, Columns: []layout.Column{{}, {Head: "Measure", Share: 0.35}, {Head: "Expect", Share: 0.2}, {Head: "Yours"}, {Head: "If not"}}}
	add := func(what, expect, ifNot string) {
		t.Rows = append(t.Rows, []string{fmt.Sprint(len(t.Rows) + 1), what, expect, "__________", ifNot})
	}
	month := words.Month(a.told.Month)
	if !a.chest() {
		before := ""
		if a.worked() && a.mass(e.BeforeKg) != a.mass(e.IceTestKg.Typical) {
			before = fmt.Sprintf(" Before: %s %s.", a.mass(e.BeforeKg), unit)
		}
		add(fmt.Sprintf("Ice melted in a day: lid shut, box chilled, %s warmer outside", quantity.FormatTemperatureDifference(20, sys)),
			range80(e.IceTestKg, a.mass)+" "+unit, "More: foam, lid, drain."+before)
		add("A strip of paper shut in the lid, all round", "holds everywhere", "Slips: a new gasket there.")
	}
	if a.unit() {
		if !math.IsInf(e.CoolHours.Typical, 1) {
			hours := range80(e.CoolHours, func(h float64) string {
				if math.IsInf(h, 1) {
					return "never"
				}
				return quantity.FormatNumber(round1(h))
			})
			add(fmt.Sprintf("Hours from %s to %s, box empty", a.v.Degrees(25), a.v.Degrees(float64(a.r.Boat.Food.Target))), hours, "Longer: iced plate, no air, or row 1.")
		}
		u := a.unitFigures()
		if c := u.Cable; c.Known && c.LeastV > 0 {
			add("Volts at the unit running, battery low", fmt.Sprintf("%.1f V; over %.1f V", c.LeastV, c.CutOutV), "Less: cable, joints or battery.")
		} else {
			add("Volts at the unit while it runs", fmt.Sprintf("over %.1f V", u.Cable.CutOutV), "Less: cable, joints or battery.")
		}
		add("Amps while it runs", range80(e.RunningA, func(x float64) string { return quantity.FormatNumber(round1(x)) })+" A", "More: hot air. Less: ask the maker.")
		add(fmt.Sprintf("Hours it runs of 24, at %s, box empty", a.v.Degrees(25)), range80(e.RunShare, func(x float64) string { return quantity.FormatNumber(round1(24 * x)) }), "More: row 1, then its air.")
		add("Glass of water amid the food, mornings", fmt.Sprintf("%s; at most %s", a.v.Degrees(float64(a.r.Boat.Food.Target)), a.v.Degrees(a.limitC())), "Warmer: set it colder.")
		add(fmt.Sprintf("Ah a day in %s, box in use", month), range80(e.AhPerDay, watts)+" Ah", "More: the rows above.")
		low, _ := a.o.Fitted.Facts["battery_lowest_share"].(float64)
		add("Battery at dawn, of its usable charge", fmt.Sprintf("never under %.0f of 100", 100*low), "Less: more charging, fewer loads.")
	} else {
		add(fmt.Sprintf("Ice a day in %s, box in use", month), range80(e.IceKgPerDay, a.mass)+" "+unit, "More: row 1; fewer openings; drinks cooled first.")
		if a.o.ID == economics.IceOnly {
			hold, _ := a.o.Fitted.Facts["ice_capacity_kg"].(float64)
			per := a.expect.IceKgPerDay
			if per.Low > 0 {
				add(fmt.Sprintf("Days that a full load of %s lasts in %s", a.v.Mass(hold), month),
					range80(quantity.Range{Low: hold / per.High, Typical: hold / per.Typical, High: hold / per.Low}, func(x float64) string { return quantity.FormatNumber(round1(x)) }), "Fewer: the rows above.")
			}
			add("Glass of water amid the food, at its warmest", "at most "+a.v.Degrees(a.limitC()), "Warmer: more ice, round the food; a cover over it.")
		}
	}
	return t
}

// limitC is the warmest that food may be.
func (a author) limitC() float64 {
	if a.r.Boat.CoolDecides() {
		return min(10, float64(a.r.Boat.Food.Target)+1)
	}
	return 5
}

// log is a grid for the first weeks.
func (a author) log(s setting) layout.Block {
	unit := map[bool]string{true: "°F", false: "°C"}[a.r.Boat.Units == quantity.US]
	g := forms.Grid{Heads: []string{"Day", "Cabin, " + unit, "Box, morning", "Box, evening"}}
	if a.unit() {
		g.Heads = append(g.Heads, "Ah that day", "Hours run", "Shop, engine")
	} else {
		g.Heads = append(g.Heads, "Ice in, "+a.v.MassUnit(), "Ice left", "Shop, guests")
	}
	g.Rows = make([]string, [...]int{9, 8, 6, 4}[min(s.tight, 3)]+int(s.spare/6))
	return g.Block()
}

// meals are what a day's food is put together from: what fills, what feeds, what
// is fresh or sour.
var meals = [][]string{{"dry-staples", "potatoes", "bread"}, {"tins-plain", "pouches", "hard-cheese", "dry-sausage", "country-ham"}, {"onions", "cabbage", "squash", "apples", "citrus", "tins-sour", "carrots"}}

// foodPlan says what to eat from one shop to the next where nothing is cold:
// what dry stores live on, and what is left when ice or unit fails.
func (a author) foodPlan(s setting) []layout.Block {
	gap := int(min([...]float64{6, 6, 5, 4}[min(s.tight, 3)], max(1, math.Round(a.r.Boat.Cruising.ShopEveryDays))))
	hottest := a.warmestCabin()
	keeps := a.foods.Keeping(hottest.CabinC, a.r.Boat.Safety.Eggs)
	named := func(ids []string, bands ...rules.Band) []string {
		var out []string
		for _, k := range keeps {
			if slices.Contains(bands, k.Band) && (ids == nil && k.ID != "eggs-unknown" || slices.Contains(ids, k.ID)) {
				name, _, _ := strings.Cut(k.Name, ",")
				out = append(out, strings.ToLower(name[:1])+name[1:])
			}
		}
		return out
	}
	early := named(nil, rules.UnderAWeek)
	head := fmt.Sprintf("Food without cold in %s, at %s: %s to the next shop", words.Month(hottest.Month), a.v.Degrees(math.Round(hottest.CabinC)), words.Plural(float64(gap), "day"))
	if a.taken() != economics.DryStores {
		head = "If the cold fails: " + strings.ToLower(head[:1]) + head[1:]
	}
	t := layout.Table{}
	row := []string{}
	for d := range gap {
		t.Columns = append(t.Columns, layout.Column{Head: fmt.Sprintf("Day %d", d+1), Share: 1 / float64(gap)})
		text := ""
		switch {
		case d == 0:
			text = "Cook and eat what spoils first; nothing is kept for tomorrow."
			if a.taken() != economics.DryStores {
				text = "Lid shut. Cook meat and fish now and eat them hot. What was over " + a.v.Degrees(5) + " for two hours is waste."
			}
		case d == 1 && len(early) > 0:
			text = words.Capital(strings.Join(early[:min(4, len(early))], ", ")) + "."
		default:
			var pick []string
			for _, ids := range meals {
				if from := named(ids, rules.Weeks, rules.Months); len(from) > 0 {
					pick = append(pick, from[(d-1)%len(from)])
				}
			}
			text = words.Capital(strings.Join(pick, ", ")) + "."
		}
		row = append(row, text)
	}
	t.Rows = [][]string{row}
	out := layout.Kept{layout.Heading{Level: 1, Text: head}, t}
	if !a.simple() {
		out = append(out, a.besides(s)...)
	}
	return []layout.Block{out}
}

// reckoned says in a paragraph how the figures came about.
func (a author) reckoned() layout.Block {
	f := a.r.Futures
	_, _, assumed := a.r.Boat.EvidenceCounts()
	text := fmt.Sprintf("One heat balance for your box, hour by hour through the season aboard, in %d equally likely futures, the same for every way. %s assumed, the rest yours. Prices of today, counting %s less for each year ahead: book %s. Program coldreckon %s, seed %d.",
		f.Count, words.Capital(fmt.Sprintf("%s figures", counted(assumed))), a.percent(), a.Pack.Book.Identity, a.Version, f.Seed)
	if a.r.Settings.Quick() {
		text += " " + words.QuickLook
	}
	if a.r.Boat.Box.Lid == heat.TopLid {
		text += " Food is reckoned at the mean of the box: under the lid it is warmer, so meat and milk lie low."
	}
	if other := a.v.OtherCurrency(); other != "" {
		text += " " + other
	}
	if !a.Full {
		text += " All figures, cautions, sources and the method: coldreckon report --full."
	}
	return layout.Para{Lead: "How this was reckoned.", Text: text, Wide: true}
}
