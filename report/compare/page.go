package compare

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/report/words"
)

// title heads the comparison and names its file.
const title = "Boats compared: cold food aboard"

// Document lays the comparison out: the boats on one board, on paper laid on its
// side, and behind it the details.
func (t *Table) Document() layout.Document {
	d := layout.Document{Title: title, Subject: Heading, Foot: "An aid to planning. Not a survey or a valuation", Margins: layout.Margins{Side: 14, Top: 20, Bottom: 18}}
	if t.Version != "" {
		d.Foot = "coldreckon " + t.Version + " · " + d.Foot
	}
	lead, terms := "The buyer:", t.Terms.Line
	if terms == "" {
		lead, terms = "No one buyer:", "each boat is reckoned with her own nights, crew and money, so costs are not like for like."
	}
	d.Part(layout.Heading{Level: 0, Text: t.finding()},
		layout.Para{Wide: true, Style: layout.Small, Lead: Heading, Text: "Nobody looked at a hull, an engine or a wire for it, and it puts no price on a boat. " + t.prepared()},
		layout.Para{Wide: true, Style: layout.Fine, Lead: lead, Text: terms})
	d.Add(t.boards()...)
	d.Add(layout.Kept{layout.Para{Style: layout.Small, Lead: "To read it.", Text: t.readingText()}})
	known := append([]layout.Block{layout.Heading{Level: 1, Text: "How each box is known"}, t.boxes(),
		layout.Para{Style: layout.Small, Text: "Measured: by a test aboard or a log. Remembered: from how long ice has lasted. Reckoned: from the walls, as told or assumed. " +
			"Told: somebody's word. Assumed: a usual value. A test with ice or jugs of water, a day's work, settles the leak before money is paid."}}, t.oldUnits()...)
	first := append([]layout.Block{layout.Heading{Level: 1, Text: "To be cleared first"}}, t.stops()...)
	made := fmt.Sprintf("%d futures a boat, seed %d, the same for all; price book %s. The program reckons; the decision and the survey are yours.", t.Futures, t.Seed, t.Prices)
	if (economics.Settings{Futures: t.Futures}).Quick() {
		made += " " + words.QuickLook
	}
	first = append(first, layout.Para{Style: layout.Small, Text: made})
	return t.laid(d, [][]layout.Block{{layout.Heading{Level: 1, Text: "The ways, and the work"}, t.ways()}, known, first})
}

// stands reports whether a boat stands over the heavy rule: she has a place, and
// her sums are in the table's currency.
func (t *Table) stands(r *Row) bool { return r.Placed() && !t.foreign(r) }

// inOrder gives the rows as they stand, those with a place first.
func (t *Table) inOrder() []*Row {
	var with, without []*Row
	for i := range t.Rows {
		if r := &t.Rows[i]; t.stands(r) {
			with = append(with, r)
		} else {
			without = append(without, r)
		}
	}
	return append(with, without...)
}

// least is the boat on which a cold day costs least, nil where none is priced.
func (t *Table) least() *Row {
	var best *Row
	for i := range t.Rows {
		if r := &t.Rows[i]; t.stands(r) && r.priced() && (best == nil || r.middlePrice() < best.middlePrice()) {
			best = r
		}
	}
	return best
}

// nameInTitle is how wide a name may be in the finding, mm.
const nameInTitle = 90

// finding is what the page says, in one sentence.
func (t *Table) finding() string {
	can := 0
	for i := range t.Rows {
		if t.Rows[i].Placed() {
			can++
		}
	}
	short := func(r *Row) string {
		return sheet.Shorten(r.name(), sheet.Type{Size: 20, Face: sheet.Bold}, nameInTitle)
	}
	if len(t.Rows) == 1 {
		r := &t.Rows[0]
		if can == 1 {
			return fmt.Sprintf("%s can keep food cold, by %s", short(r), words.In(r.Way))
		}
		return short(r) + ": " + strings.ToLower(r.standing())
	}
	text := fmt.Sprintf("%d of %d boats can keep food cold", can, len(t.Rows))
	if least := t.least(); least != nil && can > 1 {
		text += "; a cold day costs least on " + short(least)
	}
	return text
}

// prepared says for whom, by whom and when.
func (t *Table) prepared() string {
	var parts []string
	for _, p := range []struct{ lead, name string }{{"Prepared for ", t.For}, {"Prepared by ", t.By}, {"", t.Day}} {
		if p.name != "" {
			parts = append(parts, p.lead+p.name)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return strings.Join(parts, " · ") + "."
}

// readingText explains the board, and says what to know of order and money.
func (t *Table) readingText() string {
	parts := []string{"Works: in so many of 100 equally likely futures the food is cold on as many days as wanted, as she is and with the work (drawn: thin and full). " +
		"At first: unit and work, with the range of 80 of 100 futures. Price of a cold day: over living on food that keeps; bar 80 of 100 futures, white mark the middle. " +
		"Stops: to be cleared before her way is suitable; they stand at the end. Of the ways: works as she is → with the work, and what it costs a year, all in all."}
	for _, line := range []string{t.orderText(), t.currencyText()} {
		if line != "" {
			parts = append(parts, line)
		}
	}
	return strings.Join(parts, " ")
}

func (t *Table) orderText() string {
	var parts []string
	if t.Sorted != "" {
		parts = append(parts, "In the order of "+sortWords[t.Sorted]+"; what has no place stands last.")
	}
	if n := t.Failed(); n > 0 {
		parts = append(parts, fmt.Sprintf("%d of %d could not be reckoned; the reason stands in the row.", n, len(t.Rows)))
	}
	return strings.Join(parts, " ")
}

// currencyText says which boats' sums are left out or converted, and where the
// prices came from a book in another currency.
func (t *Table) currencyText() string {
	var left, rates, found []string
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Error != "" {
			continue
		}
		if t.foreign(r) {
			left = append(left, r.name()+" ("+named(r.Currency)+")")
		}
		if rate := fmt.Sprintf("%.4g for one %s", r.Rate, r.ToldIn); r.ToldIn != "" && !slices.Contains(rates, rate) {
			rates = append(rates, rate)
		}
		if own := cmp.Or(r.ToldIn, named(r.Currency)); !slices.Contains(found, own) { // that she was reckoned in
			found = append(found, own)
		}
	}
	var out []string
	if len(rates) > 0 {
		out = append(out, "Converted to "+named(t.common())+" at "+words.Join(rates)+".")
	}
	if len(left) > 0 {
		out = append(out, "Sums in another currency are left out: "+words.Join(left)+". A rate places them: --rate, as in --rate EUR=1.08.")
	}
	if book := t.BookCurrency; book != "" && slices.ContainsFunc(found, func(own string) bool { return own != book }) {
		out = append(out, fmt.Sprintf("The price book is in %s. Where no price was told, its figures are taken as the boat's own currency, one for one.", book))
	}
	return strings.Join(out, " ")
}

// whyNot says why a row stands under the heavy rule.
func (t *Table) whyNot(r *Row) string {
	switch {
	case r.Error != "":
		return r.Error
	case r.WhyNot == "":
		return "Her sums are in " + named(r.Currency) + " and are left out. A rate would give her a place in the order."
	}
	return r.WhyNot
}

// sortWords names each sort key in plain words.
var sortWords = map[string]string{
	"name": "name", "price": "the middle price of a cold day", "yearly": "the yearly cost of cold food", "first": "the first cost of cold food", "work": "the cost of the work needed",
	"cold": "how often food is cold as she stands", "leak": "leak", "volume": "volume of the box", "stops": "number of stops",
	"ice": "the yearly cost of ice", "small": "the yearly cost of a small unit", "larger": "the yearly cost of a larger unit",
}

func (r *Row) name() string { return cmp.Or(r.Name, "(no name)") }

// head names a row in a table: boat and file.
func (r *Row) head() string { return strings.TrimSuffix(r.name()+"\n"+r.File, "\n") }

// work lists the work of her way; "no work" where none is needed.
func (r *Row) work() string {
	o := r.Of(r.Way)
	if len(o.Work) == 0 {
		return "no work"
	}
	var pieces []string
	for _, piece := range o.Work {
		name, _, _ := strings.Cut(piece, ": ") // how it is done stands in her own report
		pieces = append(pieces, name)
	}
	return strings.Join(pieces, "; ")
}

// money prints a sum as the boat's report does.
func (r *Row) money(x float64) string { return words.Money(x, r.Currency) }

// band prints a sum with its range as the boat's report does.
func (r *Row) band(x quantity.Range) string { return words.Tight(x.Typical, x, r.Currency) }

// answers are the figures of the board.
func (t *Table) answers() layout.Table {
	out := layout.Table{Columns: []layout.Column{{Head: "Boat"}, {Head: "Cold food by"}, {Head: "Works, of 100"}, {Head: "Costs at first, then a year"},
		{Head: "A cold day"}, {Head: "Evidence, stops"}}}
	for _, r := range t.inOrder() {
		if r.Error != "" || r.NotTold {
			out.Rows = append(out.Rows, []string{r.head(), r.standing() + ": " + t.whyNot(r)})
			continue
		}
		o := r.Of(r.Way)
		works, known := words.Turn(fmt.Sprint(o.AsTold.Works), fmt.Sprint(o.Fitted.Works)), string(r.Grade)+", "+stopCount(len(r.StopsFor(r.Way)))
		if !t.stands(r) {
			head := r.standing() + ": "
			if r.Placed() {
				head = words.Name(r.Way) + ". "
			}
			out.Rows = append(out.Rows, []string{r.head(), head + t.whyNot(r), works, "", "", known})
			continue
		}
		price := r.unpriced()
		if r.priced() {
			price = fmt.Sprintf("%s (%s–%s)", r.price(), bare(r.money(economics.SayDown(o.Price.Low))), bare(r.money(economics.SayUp(o.Price.High))))
		}
		out.Rows = append(out.Rows, []string{r.head(), words.Name(r.Way) + ": " + r.work(), works, r.band(o.Fitted.First) + ", then " + r.money(o.Fitted.PerYear.Typical),
			price, known})
	}
	return out
}

func stopCount(n int) string {
	if n == 0 {
		return "no stop"
	}
	return words.Plural(float64(n), "stop")
}

// bare is an amount without the currency before it; what is endless is more.
func bare(amount string) string {
	if amount == "–" {
		return "more"
	}
	return words.Unsigned(amount)
}

// coldWays are those that can keep food cold.
var coldWays = [3]economics.OptionID{economics.IceOnly, economics.SmallUnit, economics.LargerUnit}

// ways sets the ways to cold food side by side, a line a boat. No work is named
// for a boat without a place.
func (t *Table) ways() layout.Table {
	out := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Boat", Share: 0.13}}}
	for _, id := range coldWays {
		out.Columns = append(out.Columns, layout.Column{Head: words.Name(id), Share: 0.11})
	}
	out.Columns = append(out.Columns, layout.Column{Head: "The work for her way, and its cost", Share: 0.54})
	for _, r := range t.inOrder() {
		if r.Error != "" || r.NotTold {
			continue
		}
		cells := []string{r.name()}
		for _, id := range coldWays {
			o := r.Of(id)
			parts := []string{words.Turn(fmt.Sprint(o.AsTold.Works), fmt.Sprint(o.Fitted.Works))}
			if !t.foreign(r) {
				parts = append(parts, r.money(o.Fitted.Yearly.Typical))
			}
			cells = append(cells, strings.Join(parts, " · "))
		}
		work := ""
		if r.Placed() {
			work = words.Capital(r.work())
			if o := r.Of(r.Way); o.WorkCost.High > 0 && !t.foreign(r) {
				work += ": " + r.band(o.WorkCost)
			}
		}
		out.Rows = append(out.Rows, append(cells, work))
	}
	return out
}

func (t *Table) boxes() layout.Table {
	out := layout.Table{Fine: true, Columns: []layout.Column{
		{Head: "Boat", Share: 0.18}, {Head: "Volume"}, {Head: "Foam"}, {Head: "Its state"}, {Head: "Lid seal"}, {Head: "Drain"}, {Head: "Leak", Share: 0.24},
	}}
	for _, r := range t.inOrder() {
		if r.Error != "" {
			continue
		}
		b := r.Box
		cell := func(f Datum) string { return f.Value + ", " + string(f.How) }
		leak := func(x float64) string { return quantity.FormatConductance(quantity.WattPerKelvin(x), r.System) }
		out.Rows = append(out.Rows, []string{r.name(), cell(b.Volume), cell(b.Foam), cell(b.State), cell(b.Seal), cell(b.Drain),
			fmt.Sprintf("%s (%s), %s", leak(b.Leak.Typical), quantity.Span(leak(b.Leak.Low), leak(b.Leak.High)), b.LeakHow)})
	}
	return out
}

// stops lists each stop once, with the ways and boats it concerns; those that
// come only from unanswered questions are a line a boat.
func (t *Table) stops() []layout.Block {
	type group struct {
		ways  string
		boats []string
	}
	type entry struct {
		stop   Stop
		groups []*group
	}
	var found []*entry
	for i := range t.Rows {
		for _, s := range t.Rows[i].Stops {
			if s.Unanswered {
				continue
			}
			k := slices.IndexFunc(found, func(e *entry) bool { return e.stop.ID == s.ID && e.stop.Text == s.Text })
			if k < 0 {
				found, k = append(found, &entry{stop: s}), len(found)
			}
			e, ways := found[k], waysOf(s.Options)
			g := slices.IndexFunc(e.groups, func(g *group) bool { return g.ways == ways })
			if g < 0 {
				e.groups, g = append(e.groups, &group{ways: ways}), len(e.groups)
			}
			e.groups[g].boats = append(e.groups[g].boats, t.Rows[i].Name)
		}
	}
	reckoned := len(t.Rows) - t.Failed()
	list := layout.List{Fine: true}
	for _, e := range found {
		var who []string
		for _, g := range e.groups {
			boats := strings.Join(g.boats, ", ")
			if len(g.boats) == reckoned && reckoned > 1 {
				boats = "every boat"
			}
			who = append(who, g.ways+": "+boats)
		}
		list.Items = append(list.Items, layout.Item{Lead: words.Capital(strings.Join(who, "; ")) + ".", Text: e.stop.Text})
	}
	var out []layout.Block
	if len(list.Items) > 0 {
		out = append(out, layout.Para{Keep: true, Wide: true, Text: "No way above is suitable before these are cleared. Each says which ways and boats it concerns."}, list)
	}
	if untold := t.untold(); len(untold.Items) > 0 {
		out = append(out, layout.Para{Keep: true, Wide: true, Text: "Not told, and to be answered before anything is bought:"}, untold)
	}
	if len(out) == 0 {
		out = append(out, layout.Para{Text: "No stop was found on any boat."})
	}
	return out
}

// untold lists what nobody told of each boat though a stop hangs on it, boats
// with the same list together.
func (t *Table) untold() layout.List {
	var lists []string
	boats := map[string][]string{}
	for _, r := range t.inOrder() {
		if len(r.Unasked) == 0 {
			continue
		}
		list := words.Join(r.Unasked) + "."
		if boats[list] == nil {
			lists = append(lists, list)
		}
		boats[list] = append(boats[list], r.name())
	}
	out := layout.List{Fine: true}
	for _, list := range lists {
		out.Items = append(out.Items, layout.Item{Lead: words.Join(boats[list]) + ":", Text: list})
	}
	return out
}

// waysOf names the options that a stop concerns.
func waysOf(options []economics.OptionID) string {
	if len(options) == 0 {
		return "any way"
	}
	var names []string
	for _, id := range options {
		names = append(names, words.Bare(id))
	}
	return strings.Join(names, ", ")
}
