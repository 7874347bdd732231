package compare

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// Title heads the comparison and names its file.
const Title = "Boats compared: cold food aboard"

// PatternOf says in a sentence for whom boats are compared.
func PatternOf(buyer economics.Boat, ground climate.Ground) string {
	nights := 0.0
	for _, n := range buyer.Cruising.Nights {
		nights += n
	}
	people := "1 person"
	if buyer.Cruising.Crew != 1 {
		people = quantity.FormatNumber(buyer.Cruising.Crew) + " people"
	}
	return fmt.Sprintf("For a buyer who spends %s nights a year aboard with %s, in %s, on trips of %s nights, shopping every %s days, over %s.",
		quantity.FormatNumber(nights), people, ground.Name, quantity.FormatNumber(buyer.Cruising.TripNights),
		quantity.FormatNumber(buyer.Cruising.ShopEveryDays), quantity.FormatYears(buyer.Money.Years))
}

// Document lays the comparison out for print, plain text and Markdown.
func (t *Table) Document() layout.Document {
	d := layout.Document{Title: Title, Subject: Heading, Foot: "Not a survey or a valuation"}
	if t.Version != "" {
		d.Foot = "coldreckon " + t.Version + " · " + d.Foot
	}
	d.Part(layout.Heading{Level: 0, Text: Title})
	d.Add(layout.Note{Heavy: true, Blocks: []layout.Block{layout.Para{Lead: Heading, Text: "It reckons what cold food would take on each boat from what was told of her. " +
		"Nobody looked at a hull, an engine or a wire for it, and it puts no price on a boat."}}})
	pattern := t.Pattern
	if pattern == "" {
		pattern = "Each boat is reckoned with her own cruising pattern, so costs are not like for like."
	}
	d.Add(layout.Para{Text: pattern})
	for _, line := range []string{t.orderText(), t.currencyText()} {
		if line != "" {
			d.Add(layout.Para{Text: line, Style: layout.Small})
		}
	}
	d.Add(layout.Heading{Level: 1, Text: "Cold food on each boat"}, t.answers(),
		layout.Para{Style: layout.Small, Text: "Cold enough: in so many of 100 equally likely futures the food is cold on as many days as wanted, as she stands → with the work. " +
			"A year: all costs spread over the years. In brackets the range that holds eight of ten futures; for the work, all its prices low or high. Stops: those of this way."})
	for _, chart := range t.charts() {
		d.Add(chart)
	}
	d.Add(layout.Heading{Level: 1, Text: "The four ways"}, t.ways())
	d.Add(layout.Heading{Level: 1, Text: "How each box is known"}, t.boxes(),
		layout.Para{Style: layout.Small, Text: "Measured: by a test aboard, or from a log. Remembered: from how long ice has lasted. Reckoned: worked out from the walls, as told or assumed. " +
			"Told: somebody's word. Assumed: nobody said, a usual value is taken. A test with ice or jugs of water, a day's work, settles the leak before money is paid."})
	d.Add(layout.Heading{Level: 1, Text: "To be cleared first"})
	d.Add(t.stops()...)
	d.Add(layout.Para{Style: layout.Small, Text: fmt.Sprintf("%d futures a boat, seed %d, the same for all; price book %s. The program reckons; the decision and the survey are yours.", t.Futures, t.Seed, t.Prices)})
	return d
}

func (t *Table) orderText() string {
	var parts []string
	if t.Sorted != "" {
		parts = append(parts, "Sorted by "+sortWords[t.Sorted]+".")
	}
	if n := t.Failed(); n > 0 {
		parts = append(parts, fmt.Sprintf("%d of %d could not be reckoned; the reason stands in the row.", n, len(t.Rows)))
	}
	return strings.Join(parts, " ")
}

// currencyText says that sums differ in more than their amount, or that prices
// were taken from a book in another currency; empty where all share one.
func (t *Table) currencyText() string {
	var found []string
	for i := range t.Rows {
		if r := &t.Rows[i]; r.Error == "" && !slices.Contains(found, named(r.Currency)) {
			found = append(found, named(r.Currency))
		}
	}
	var out []string
	if len(found) > 1 {
		out = append(out, "Each boat's sums stand in her own currency: "+words.Join(found)+". Nothing is converted: compare and sort within one currency only.")
	}
	if book := t.BookCurrency; book != "" && slices.ContainsFunc(found, func(own string) bool { return own != book }) {
		out = append(out, fmt.Sprintf("The price book is in %s. Where no price was told, its figures are taken as the boat's own currency, one for one.", book))
	}
	return strings.Join(out, " ")
}

// sortWords names each sort key in plain words.
var sortWords = map[string]string{
	"name": "name", "yearly": "the yearly cost of cold food", "first": "the first cost of cold food", "work": "the cost of the work needed",
	"cold": "how often food is cold as she stands", "leak": "leak", "volume": "volume of the box", "stops": "number of stops",
	"ice": "the yearly cost of ice", "small": "the yearly cost of a small unit", "larger": "the yearly cost of a larger unit",
}

// head names a row: boat and file.
func (r *Row) head() string {
	name := r.Name
	if name == "" {
		name = "(no name)"
	}
	if r.File == "" {
		return name
	}
	return name + "\n" + inLines(r.File)
}

// fileLine is how many characters of a file's name fit beside one another.
const fileLine = 16

// inLines breaks a long file name after the marks between its parts.
func inLines(name string) string {
	var lines []string
	line := ""
	for name != "" {
		part := name
		if i := strings.IndexAny(name, `/\:_-`); i >= 0 {
			part = name[:i+1]
		}
		name = name[len(part):]
		if line != "" && utf8.RuneCountInString(line+part) > fileLine {
			lines, line = append(lines, line), ""
		}
		line += part
	}
	return strings.Join(append(lines, line), "\n")
}

// money prints a sum as the boat's report does.
func (r *Row) money(x float64) string { return words.Money(x, r.Currency) }

// band prints a sum with its range as the boat's report does.
func (r *Row) band(x quantity.Range) string { return words.Tight(x.Typical, x.Low, x.High, r.Currency) }

// turn prints a figure before and after the work, once when it is the same.
func turn(told, fitted string) string {
	if told == fitted {
		return told
	}
	return told + " → " + fitted
}

func (t *Table) answers() layout.Table {
	out := layout.Table{Columns: []layout.Column{
		{Head: "Boat", Share: 0.17}, {Head: "Cold food by", Share: 0.19}, {Head: "Cold enough", Share: 0.13}, {Head: "Work needed, and its cost", Share: 0.3},
		{Head: "A year", Share: 0.14}, {Head: "Stops", Right: true, Share: 0.07},
	}}
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Error != "" {
			out.Rows = append(out.Rows, []string{r.head(), "not reckoned", "", r.Error})
			continue
		}
		o := r.Of(r.Way)
		work := "none"
		if len(o.Work) > 0 {
			cost := "costs nothing"
			if o.WorkCost.High > 0 {
				cost = r.band(o.WorkCost)
			}
			work = words.Capital(strings.Join(o.Work, "; ")) + "\n" + cost
		}
		out.Rows = append(out.Rows, []string{r.head(), r.way(), turn(fmt.Sprint(o.AsTold.Works), fmt.Sprint(o.Fitted.Works)), work, r.band(o.Fitted.Yearly),
			fmt.Sprint(len(r.StopsFor(r.Way)))})
	}
	return out
}

// way names the way to cold food.
func (r *Row) way() string {
	name := words.Name(r.Way)
	close := ""
	if !r.Sure {
		close = ", too close to call"
	}
	switch {
	case !r.Works:
		return name + " comes nearest; nothing does"
	case r.Answer == "":
		return name + "; nothing to decide"
	}
	return fmt.Sprintf("%s; best in %d of 100%s", name, r.Best, close)
}

func (t *Table) ways() layout.Table {
	out := layout.Table{Columns: []layout.Column{{Head: "Boat", Share: 0.16}}}
	for _, id := range economics.Options {
		out.Columns = append(out.Columns, layout.Column{Head: words.Name(id), Share: 0.21})
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Error != "" {
			continue
		}
		cells := []string{r.Name}
		for k := range r.Options {
			o := &r.Options[k]
			works := "works " + turn(fmt.Sprint(o.AsTold.Works), fmt.Sprint(o.Fitted.Works))
			if o.ID == economics.DryStores {
				works = "nothing is cold"
			}
			cells = append(cells, fmt.Sprintf("%s\nfirst %s\nyearly %s", works, r.band(o.Fitted.First), r.band(o.Fitted.Yearly)))
		}
		out.Rows = append(out.Rows, cells)
	}
	return out
}

func (t *Table) boxes() layout.Table {
	out := layout.Table{Columns: []layout.Column{
		{Head: "Boat", Share: 0.18}, {Head: "Volume"}, {Head: "Foam"}, {Head: "Its state"}, {Head: "Lid seal"}, {Head: "Drain"}, {Head: "Leak", Share: 0.18},
	}}
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Error != "" {
			continue
		}
		b := r.Box
		cell := func(f Datum) string { return f.Value + ", " + string(f.How) }
		leak := func(x float64) string { return quantity.FormatConductance(quantity.WattPerKelvin(x), r.System) }
		out.Rows = append(out.Rows, []string{r.Name, cell(b.Volume), cell(b.Foam), cell(b.State), cell(b.Seal), cell(b.Drain),
			fmt.Sprintf("%s (%s), %s", leak(b.Leak.Typical), quantity.Span(leak(b.Leak.Low), leak(b.Leak.High)), b.LeakHow)})
	}
	return out
}

// stops lists each stop once, with the ways and boats it concerns.
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
	if len(found) == 0 {
		return []layout.Block{layout.Para{Text: "No stop was found on any boat."}}
	}
	reckoned := len(t.Rows) - t.Failed()
	var list layout.List
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
	return []layout.Block{layout.Para{Keep: true, Text: "No way above is suitable before these are cleared. Each says which ways and boats it concerns."}, list}
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
