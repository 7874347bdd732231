package report

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/report/layout"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// work is page three: what to buy, cut and do, in order, and what to clear first.
func (a author) work(s setting) []layout.Block {
	if !a.decided() {
		return append([]layout.Block{layout.Heading{Level: 1, Text: "Do it"}, layout.Para{Text: "There is nothing to buy or to build until there is something to keep cold."}}, a.stopped(s)...)
	}
	out := a.buy(s)
	if !a.cutsAhead {
		out = append(out, a.cutList(s)...)
	}
	out = append(out, a.inOrder(s)...)
	out = append(out, a.stopped(s)...)
	out = append(out, a.limit()...)
	if a.simple() {
		out = append(out, a.besides(s)...)
	}
	return out
}

// simple reports whether page three has no board to cut, and room for all cautions.
func (a author) simple() bool { return a.decided() && len(a.cuts().pieces) == 0 }

// step is one thing to do, or a hold point: what must be right before the next
// hides it.
type step struct {
	text  string
	hold  bool
	cares []string // ids of cautions that may stand beside it
	care  string   // the text of the one that does
}

// steps lists the work in its order.
func (a author) steps() []step {
	f := a.o.Fit.Out
	var out []step
	do := func(text string, cares ...string) { out = append(out, step{text: text, cares: cares}) }
	hold := func(text string, cares ...string) { out = append(out, step{text: text, hold: true, cares: cares}) }
	foam := f.InsideFoam > 0 || f.OutsideFoam > 0 || f.LidFoam > 0
	if a.unit() && a.r.HasRepair && a.r.RepairWorth >= 1 {
		do(fmt.Sprintf("Look at the old unit first, half an hour with a meter: coldreckon ailing. Under %s, mend it instead.", a.v.Money(a.r.RepairWorth)), "refrigerant-old")
	}
	if !a.chest() && a.worked() {
		test := "Test the box with ice as she is (" + a.at("page 4, row 1", "row 1 of what to expect") + ")."
		if foam {
			test += "\nThen drill a small hole low inboard, not hullwards."
		}
		do(test, "foam-damp", "refrigerant-old")
	}
	if foam {
		hold("Foam is dry; wet foam is dried or cut out first.", "foam-damp")
		do("Dry-fit all boards, plate, drain and lid.")
		hold("Plate, drain and lid clear the boards by a finger.")
		do("Glue them by number, tape joints with foil, line, seal.", "dust-resin", "foam-fumes")
		hold("A bucket of water stands an hour: no joint weeps.")
	}
	if f.Seal || f.Drain {
		var parts []string
		if f.Seal {
			parts = append(parts, "stick the gasket round the rim")
		}
		if f.Drain {
			parts = append(parts, "trap or plug the drain")
		}
		do(words.Capital(words.Join(parts))+".", "drain-bilge", "drain-trace", "child-lid")
	}
	if f.Seal {
		hold("A strip of paper shut in the lid holds all round.")
	}
	if f.Poured {
		do("Drill round the void and look in.", "foam-damp")
		hold("It is dry and empty, and open to air.")
		do("Brace the lining, pour a little at a time, let it rise and cool between.", "foam-heat", "foam-fumes")
		hold("No bulge, and a knuckle on the lining sounds dull all round.")
	}
	if f.Spacer > 0 {
		do("Slide in the wrapped block, clear of drain and plate.")
	}
	if f.Cover {
		do("Cut the cover to lie over the food, up to the liner.")
	}
	if f.PanelWp > 0 {
		do("Mount the panel and its controller.", "solar-wiring")
	}
	if f.Battery > 0 {
		do("Add the battery to its bank.", "battery-vent")
	}
	if f.Vent {
		do("Lead duct and fan to the unit's place.", "locker-air")
	}
	if a.unit() && !a.v.UnitAboard() {
		do("Battery off. Fuse at the battery, then the cable.", "fuse", "wire-drop", "wire-unknown", "old-wiring", "battery-reserve", "shore-tested")
		place := "Set plate and unit in place, as the papers say."
		if a.chest() {
			place = "Lash the chest where air reaches its grilles, and connect it."
		}
		do(place, "refrigerant-sealed", "refrigerant-burns", "locker-air", "water-cooled", "insurer", "weight")
	}
	if f.Alarm {
		do("Lay the alarm's probe amid the food, and set it.")
		hold("It sounds when the probe lies in a warm hand.")
	}
	if f.ByDay {
		by := "Have a dusk switch, or a timer, run the unit from sunrise to sunset."
		if f.Bottles {
			by = "Stand the bottles against the plate, filled to nine tenths; a dusk switch, or a timer, runs the unit from sunrise to sunset."
		}
		do(by)
	}
	if f.IceShare > 0 {
		do(words.Capital(words.Piece(a.item(economics.MoreIcePiece), &a.r.Boat))+": stow it round the food, not under it alone.", "ice-melt", "weight")
	}
	if hold, ok := a.o.Fitted.Facts["ice_capacity_kg"].(float64); ok && a.o.ID == economics.IceOnly && hold > 0 && f.IceShare == 0 {
		do(fmt.Sprintf("Stow ice round the food, %s at most; %s a day melt in %s.", a.v.Mass(hold), a.v.Mass(a.expect.IceKgPerDay.Typical), words.Month(a.told.Month)), "ice-melt", "weight")
	}
	if a.o.ID == economics.IceOnly && a.r.Boat.Box.Drain == heat.NoDrain {
		do("Bail meltwater that has warmed before new ice goes in.")
	}
	if f.NoIceRuns {
		do("Buy ice where you buy food: no runs for ice alone.")
	}
	if f.ColdStart {
		start := "Put the first ice in the day before each trip."
		if a.unit() {
			start = "Leave the unit running on its own sun before each trip."
			if a.r.Boat.SeesShore() {
				start = "Cool the box on shore power the day before each trip."
			}
		}
		do(start, "unattended", "unseen-gap", "shore-tested")
	} else if a.r.Boat.Cruising.BeforeTrip == economics.Warm {
		do("Food waits in its iced bag for a cold box: 6 h at most.", "two-hour-rule")
	}
	do("Fill in "+a.at("page 4", "what to expect")+" before food depends on the box.", "battery-flat", "two-hour-rule", "plate-freezes")
	return out
}

// item is a piece of the work shown.
func (a author) item(p economics.Piece) economics.FitItem {
	i := slices.IndexFunc(a.o.Fit.Items, func(x economics.FitItem) bool { return x.Piece == p })
	if i < 0 {
		return economics.FitItem{Piece: p}
	}
	return a.o.Fit.Items[i]
}

// rows gives the steps with the hold points that follow them, and beside each the
// first of its cautions that fires; the other cautions of the way shown are the
// rest, which stands on page four.
func (a author) rows() (rows []step, rest []rules.Finding) {
	for _, st := range a.steps() {
		if n := len(rows); st.hold && n > 0 {
			rows[n-1].text += "\n■ " + st.text
			rows[n-1].cares = append(st.cares, rows[n-1].cares...)
			continue
		}
		rows = append(rows, st)
	}
	for _, f := range a.findings {
		if f.Grade == rules.Careful && concerns(f, a.o.ID) {
			rest = append(rest, f)
		}
	}
	for i := range rows {
		for _, id := range rows[i].cares {
			k := slices.IndexFunc(rest, func(f rules.Finding) bool { return f.ID == id })
			if k >= 0 && (!a.cutsAhead || len(rows[i].text)+len(brief(rest[k].Text, 0)) < lineOfSteps) {
				rows[i].care = rest[k].Text
				rest = slices.Delete(rest, k, k+1)
				break
			}
		}
	}
	return rows, rest
}

// lineOfSteps is how many letters one line holds; where page three is full,
// cautions that run over it stand on page four.
const lineOfSteps = 125

// inOrder lists the steps, the cautions beside them.
func (a author) inOrder(s setting) []layout.Block {
	head := layout.Heading{Level: 1, Text: "Do it in this order, and take care"}
	rows, _ := a.rows()
	if slices.ContainsFunc(rows, func(r step) bool { return strings.Contains(r.text, "■") }) {
		head.Text += " (■ hold point: what follows hides it)"
	}
	if s.tight >= tightest-1 { // one below the other takes less room than side by side
		l := layout.List{Mark: layout.Number, Fine: true}
		for _, r := range rows {
			l.Items = append(l.Items, layout.Item{Text: strings.TrimSpace(strings.ReplaceAll(r.text, "\n", " ") + " " + brief(r.care, 60))})
		}
		return []layout.Block{head, l}
	}
	t := layout.Table{Close: s.tight > 0, Columns: []layout.Column{{Share: 0.025}, {Share: [...]float64{0.42, 0.45, 0.48, 0.48}[min(s.tight, 3)]}, {}}}
	for i, r := range rows {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), r.text, brief(r.care, [...]int{170, 120, 80, 60}[min(s.tight, 3)])})
	}
	return []layout.Block{head, t}
}

// besides gives the cautions of the way shown that no step stands beside, in full
// where there is room.
func (a author) besides(s setting) []layout.Block {
	_, rest := a.rows()
	if len(rest) == 0 || !a.decided() {
		return nil
	}
	if s.tight < 3 && a.simple() {
		l := layout.List{Steps: true}
		for _, f := range rest {
			l.Items = append(l.Items, layout.Item{Text: brief(f.Text, [...]int{170, 170, 110}[s.tight])})
		}
		return []layout.Block{layout.Heading{Level: 2, Text: "Besides, take care"}, l}
	}
	var out []string
	for _, f := range rest {
		out = append(out, brief(f.Text, 0))
	}
	return []layout.Block{layout.Para{Lead: "Besides, take care.", Text: strings.Join(out, " "), Wide: true}}
}

// brief gives the first sentence of a text, and those after it that still keep it
// within so many characters.
func brief(text string, most int) string {
	out := ""
	for _, sentence := range strings.SplitAfter(strings.Join(strings.Fields(text), " "), ". ") {
		if out != "" && len(out)+len(sentence) > most {
			break
		}
		out += sentence
	}
	return strings.TrimSpace(out)
}

// stopped lists every stop once, with the ways it concerns, and what was not
// told; and says that nothing here approves anything.
func (a author) stopped(s setting) []layout.Block {
	ours, others := a.stops()
	stops := slices.Concat(ours, others)
	head := "Stops: none stands"
	switch own := len(ours); {
	case len(stops) == 0:
	case own == 0:
		head = "Stops of the other ways"
	case own < len(stops):
		head = fmt.Sprintf("Stops: clear the %s for %s first", counted(own), words.In(a.o.ID))
	case own == 1:
		head = "Stop: clear this first"
	default:
		head = fmt.Sprintf("Stops: clear these %s first", counted(own))
	}
	in := []layout.Block{layout.Heading{Level: 2, Text: head}}
	l := layout.List{Steps: s.tight < tightest, Fine: s.tight == tightest}
	if s.tight == tightest {
		l.Items = grouped(stops)
		stops = nil
	}
	for _, f := range stops {
		text := f.Text
		if !concerns(f, a.o.ID) && s.tight > 0 { // in full with --full
			text = brief(text, [...]int{150, 60}[min(s.tight, 2)-1])
		}
		l.Items = append(l.Items, layout.Item{Lead: words.Capital(forWhom(f)) + ":", Text: text})
	}
	if len(a.untold) > 0 {
		l.Items = append(l.Items, layout.Item{Lead: "Not told:", Text: strings.Join(a.untold, ", ") + ". " + answerThem(len(a.untold))})
	}
	if len(l.Items) > 0 {
		in = append(in, l)
	}
	guidance := a.Pack.Guidance
	if s.tight > 2 {
		guidance = brief(guidance, 130)
	}
	in = append(in, layout.Para{Style: layout.Small, Text: guidance, Wide: true})
	return []layout.Block{layout.Note(in)}
}

// answerThem asks for so many answers.
func answerThem(n int) string {
	if n == 1 {
		return "Answer this before you buy: it may be a stop."
	}
	return "Answer these before you buy: each may be a stop."
}

// grouped gives stops by the ways that they concern, the first sentence of
// each behind its number; --full has them in full.
func grouped(stops []rules.Finding) []layout.Item {
	var out []layout.Item
	n := 0
	for len(stops) > 0 {
		whom, text := forWhom(stops[0]), ""
		stops = slices.DeleteFunc(stops, func(f rules.Finding) bool {
			if forWhom(f) != whom {
				return false
			}
			n++
			text += fmt.Sprintf(" (%d) %s", n, brief(f.Text, 0))
			return true
		})
		out = append(out, layout.Item{Lead: words.Capital(whom) + ":", Text: strings.TrimSpace(text)})
	}
	return out
}

// limit says what the owner's limit does buy where it is not enough.
func (a author) limit() []layout.Block {
	text := a.v.Limit()
	if _, rest, more := strings.Cut(text, ". "); more { // the first sentence stands on page one
		text = rest
	}
	if text == "" {
		return nil
	}
	return []layout.Block{layout.Para{Lead: "Your limit.", Text: text, Wide: true}}
}
