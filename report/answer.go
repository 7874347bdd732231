package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// answer is page one, which stands alone: what to do, how sure, at what price.
func (a author) answer(s setting) []layout.Block {
	out := []layout.Block{
		layout.Para{Style: layout.Small, Text: a.scene()},
		layout.Heading{Level: 0, Text: a.v.Answer()},
	}
	if text := a.v.Medicine(); text != "" {
		out = append(out, layout.Para{Text: text, Wide: s.tight > 0})
	}
	if text := a.evidence(); text != "" {
		out = append(out, layout.Para{Lead: dots[a.r.Answer.Grade], Text: text, Wide: true})
	}
	out = append(out, a.pictured(s)...)
	if also := a.also(s); also != "" {
		out = append(out, layout.Para{Text: also, Wide: true})
	}
	out = append(out, a.reasons(s)...)
	ways := []layout.Block{layout.Heading{Level: 1, Text: "The four ways"}, a.ways(s), layout.Para{Style: layout.Small, Text: a.rangesText(s)}}
	if a.Enlarged <= 1 { // in large print it may go on over the page
		ways = []layout.Block{layout.Kept(ways)}
	}
	return append(append(out, ways...), a.before()...)
}

// scene says in one line what this is about.
func (a author) scene() string {
	parts := []string{a.r.Boat.Name, a.v.Grounds(), fmt.Sprintf("%.0f nights a year, %s aboard", a.v.Nights(), quantity.FormatNumber(a.r.Boat.Cruising.Crew))}
	if !a.Date.IsZero() {
		parts = append(parts, day(a.Date))
	}
	if who := a.prepared(); who != "" {
		parts = append(parts, who)
	}
	return strings.Join(parts, "  ·  ")
}

// dots show the grade of the evidence.
var dots = map[economics.EvidenceGrade]string{economics.Strong: "●●●●", economics.Fair: "●●○○", economics.Weak: "●○○○"}

func (a author) evidence() string {
	text := a.v.Grade()
	if text == "" {
		return ""
	}
	measured, told, assumed := a.r.Boat.EvidenceCounts()
	counts := fmt.Sprintf("%d figures told, %d measured, %d assumed.", told, measured, assumed)
	if a.r.Answer.Grade == economics.Weak {
		return text + " " + counts
	}
	return fmt.Sprintf("The evidence is %s: %s", a.r.Answer.Grade, counts)
}

// also says what the headline leaves out; the limit's other half stands on page
// three.
func (a author) also(s setting) string {
	var out []string
	for _, text := range a.v.Also() {
		if text == a.v.Limit() {
			text, _, _ = strings.Cut(text, ". ")
			text = strings.TrimSuffix(text, ".") + ": see " + a.at("page 3.", "the end of what to do.")
		}
		out = append(out, text)
	}
	if !a.counted() && s.tight < tightest { // the bars of the price show it
		out = append(out, a.v.Counts())
	}
	return strings.TrimSpace(strings.Join(out, " "))
}

// worths are the worths of a day at which futures are counted, at most three.
func (a author) worths() []economics.WorthCount {
	var out []economics.WorthCount
	for _, c := range a.r.Answer.Counts {
		if c.Worth <= words.Dearest && len(out) < 3 {
			out = append(out, c)
		}
	}
	return out
}

// counted reports whether squares show the counts at the worths.
func (a author) counted() bool {
	switch a.r.Answer.Case {
	case economics.PaysForItself:
		return !a.r.Answer.PremiumTold && len(a.worths()) > 0
	case economics.NextToNothing, economics.RatherNot, economics.ByWorth, economics.TooDear:
		return len(a.worths()) > 0
	}
	return false
}

// leastField is the side of a field of futures that stands alone where the page
// is full, mm: as wide as one of several.
const leastField = 29.0

// pictured shows the answer: futures counted, and what a day costs each way.
func (a author) pictured(s setting) []layout.Block {
	if !a.decided() {
		return nil
	}
	price := a.prices(s)
	way := words.Bare(a.o.ID)
	if len(a.r.Answer.Ways) > 1 {
		way = "the ways that lead"
	}
	field := chart.TenByTen{Groups: [3]string{way, "", words.Bare(economics.DryStores)}}
	t := layout.Table{Columns: []layout.Column{{Head: "Of 100 futures"}, {Head: words.Capital(way), Right: true}, {Head: words.Capital(field.Groups[2]), Right: true}}}
	add := func(over, under, row string, n int) {
		field.Fields = append(field.Fields, chart.HundredFutures{Over: over, Under: under, Counts: [3]int{n, 0, 100 - n}})
		t.Rows = append(t.Rows, []string{row, fmt.Sprint(n), fmt.Sprint(100 - n)})
	}
	finding := ""
	if a.counted() {
		finding = fmt.Sprintf("The more a %s day is worth, the surer", a.v.ColdOrCool())
		for _, c := range a.worths() {
			add(a.v.Say(c.Worth), fmt.Sprintf("%d of 100", c.Of100), "Worth "+a.v.Say(c.Worth), c.Of100)
		}
		if c := a.worths(); len(c) == 1 {
			finding = fmt.Sprintf("In %d of 100 futures it costs no more than %s a day", c[0].Of100, a.v.Say(c[0].Worth))
			if s.tight == tightest {
				field.Largest = leastField + s.spare
			}
			if s.full() { // the finding says it too
				field.Fields[0].Over, field.Fields[0].Under = "", ""
			}
		}
		caption := fmt.Sprintf("Of 100 futures, those in which it costs no more than that; in the others food that keeps is the better way. To find your own figure: what would you pay for a day with %s food, its dearer food spared?", a.v.ColdOrCool())
		if s.tight > 0 {
			caption = "Of 100 futures, those in which it costs no more"
		}
		squares := chart.Picture(field, finding, caption, finding+".", t)
		if s.tight > 0 {
			return []layout.Block{layout.Side{Shares: []float64{70, 106}, Columns: [][]layout.Block{{squares}, {price}}}}
		}
		return []layout.Block{squares, price}
	}
	switch n := a.o.WorksOf100; {
	case a.r.Answer.Case == economics.WorthTold && a.r.Answer.YesOf100[0] != a.r.Answer.YesOf100[1]:
		yes, w := a.r.Answer.YesOf100, a.r.Answer.Worth
		finding = fmt.Sprintf("In %d of 100 futures it is worth %s a day, in %d %s", yes[0], a.v.Say(w.Low), yes[1], a.v.Say(w.High))
		add("", "", "Worth "+a.v.Say(w.Low), yes[0])
		add("", "", "Worth "+a.v.Say(w.High), yes[1])
		field.Fields = []chart.HundredFutures{{Counts: [3]int{yes[0], yes[1] - yes[0], 100 - yes[1]}}}
		field.Groups[1] = "at " + a.v.Say(w.High) + " only"
	case a.r.Answer.Case == economics.WorthTold:
		n = a.r.Answer.YesOf100[0]
		finding = fmt.Sprintf("In %d of 100 futures it is worth %s to you", n, a.v.Worth())
		add("", "", "Worth it", n)
	case a.r.Answer.Case == economics.PaysForItself:
		n = a.r.Answer.PremiumOf100
		finding = fmt.Sprintf("In %d of 100 futures it costs less than the food it spares", n)
		field.Groups = [3]string{"less", "", "more"}
		t.Columns[1].Head, t.Columns[2].Head = "It costs less", "It costs more"
		add("", "", words.Capital(way), n)
	default:
		finding = fmt.Sprintf("In %d of 100 futures it does what you want", n)
		field.Groups = [3]string{"does", "", "does not"}
		t.Columns[1].Head, t.Columns[2].Head = "It does", "It does not"
		add("", "", words.Capital(way), n)
	}
	shares := []float64{38, 128}
	switch {
	case s.full(): // lower under a finding of fewer lines
		field.Largest = 24
	case s.tight > 3:
		shares = []float64{29, 137}
	}
	squares := chart.Picture(field, finding, "", finding+".", t)
	squares.Widest = chart.LargeField
	return []layout.Block{layout.Side{Shares: shares, Columns: [][]layout.Block{{squares}, {price}}}}
}

// prices shows what a day costs by each cold way, the cheapest first.
func (a author) prices(s setting) layout.Picture {
	ways := []*economics.OptionFigures{a.r.Of(economics.IceOnly), a.r.Of(economics.SmallUnit), a.r.Of(economics.LargerUnit)}
	slices.SortStableFunc(ways, func(x, y *economics.OptionFigures) int {
		if b, c := a.unpriced(x) != "", a.unpriced(y) != ""; b != c {
			return map[bool]int{true: 1, false: -1}[b]
		}
		return cmp.Compare(x.PriceOfCold.Typical, y.PriceOfCold.Typical)
	})
	c := chart.PriceOfCold{Top: 10, Marks: []float64{2, 5, 10}, Saves: "saves", Say: func(v float64) string {
		if v > words.Dearest {
			return "over " + a.v.Say(words.Dearest)
		}
		return a.v.Say(math.Round(v))
	}}
	t := layout.Table{Columns: []layout.Column{{Head: "Way"}, {Head: "Low", Right: true}, {Head: "Middle", Right: true}, {Head: "High", Right: true}}}
	said := func(x float64) string {
		if x <= 0 {
			return a.v.Say(0)
		}
		return strings.TrimPrefix(a.v.Price(x), "about ")
	}
	most := a.r.Answer.Worth.High
	var findings []string
	for _, o := range ways {
		row := chart.PriceRow{Name: words.Name(o.ID), Best: o.ID == a.o.ID, Words: a.unpriced(o)}
		cells := []string{words.Name(o.ID), row.Words, "", ""}
		if row.Words == "" {
			p := o.PriceOfCold
			row.Low, row.Mid, row.High = p.Low, min(p.Typical, words.Dearest), min(p.High, 1e6)
			most = max(most, row.Mid*1.15)
			cells = []string{words.Name(o.ID), said(p.Low), said(p.Typical), said(p.High)}
			price := a.v.Price(p.Typical)
			if len(findings) > 0 {
				price = strings.TrimPrefix(price, "about ")
			}
			findings = append(findings, price+" with "+words.In(o.ID))
		}
		c.Rows, t.Rows = append(c.Rows, row), append(t.Rows, cells)
	}
	if a.counted() && !math.IsInf(a.r.Answer.YesWorth, 1) {
		most = max(most, min(words.Dearest, a.r.Answer.YesWorth))
	}
	for _, marks := range [][]float64{{2, 5, 10, 20}, {5, 10, 20, 30}, {5, 10, 20, 50}} {
		if most > c.Top {
			c.Top, c.Marks = marks[3], marks
		}
	}
	if s.full() {
		c.Row = 10
	}
	caption := "Bar: 80 of 100 futures; mark: middle"
	if s.tight < tightest {
		caption = "Cost over going without, by day won. " + caption
	}
	switch yes, no := a.r.Answer.YesWorth, a.r.Answer.NoWorth; {
	case a.r.Answer.Case == economics.WorthTold:
		c.Worth, c.Flag = min(a.r.Answer.Worth.Typical, c.Top), fmt.Sprintf("a %s day is worth %s to you", a.v.ColdOrCool(), a.v.Worth())
	case a.counted() && no < yes && yes < c.Top:
		c.Zones = []chart.PriceZone{{From: 0, To: no, Label: "no"}, {From: yes, To: c.Top, Label: "worth it"}}
		if no > 0 {
			c.Zones = append(c.Zones, chart.PriceZone{From: no, To: yes, Label: "close"})
		}
	}
	finding := fmt.Sprintf("What a %s day costs, each way", a.v.ColdOrCool())
	if len(findings) > 0 {
		finding = fmt.Sprintf("A %s day costs %s", a.v.ColdOrCool(), words.Join(findings))
	}
	p := chart.Picture(c, finding, caption, finding+".", t)
	if s.spare > 0 {
		height := p.Height
		p.Height = func(w float64) float64 { return height(w) + s.spare/2 }
	}
	return p
}

// unpriced says why a way has no price of a day; empty where it has one.
func (a author) unpriced(o *economics.OptionFigures) string {
	switch {
	case o.WorksOf100 < 75:
		return fmt.Sprintf("does what you want in %d of 100 futures", o.WorksOf100)
	case a.v.Priced(o):
		return ""
	case o.PriceOfCold.Typical > words.Dearest:
		return "over " + a.v.Say(words.Dearest) + " a day"
	}
	return "gives too few days for a price a day"
}

// reasons gives the reasons and what would change the answer, side by side.
func (a author) reasons(s setting) []layout.Block {
	why := []layout.Block{layout.Heading{Level: 1, Text: "Three reasons"}, a.texts(s, layout.Number, a.v.Reasons())}
	var flips []string
	for _, f := range a.v.Flips() {
		if len(flips) < max(1, 3-s.tight) && f.Text != "" {
			flips = append(flips, f.Text)
		}
	}
	if len(flips) == 0 {
		return why
	}
	shares := []float64{106, 60}
	if s.full() {
		shares = []float64{118, 48}
	}
	return []layout.Block{layout.Side{Shares: shares, Columns: [][]layout.Block{why, {layout.Heading{Level: 1, Text: "What would change this"}, a.texts(s, layout.Dash, flips)}}}}
}

// texts lists sentences, closer where the page is full.
func (a author) texts(s setting, mark layout.Mark, texts []string) layout.List {
	l := layout.Texts(mark, texts...)
	l.Steps = s.tight > 0
	return l
}

// coolRow is the row of the days that are cool, not cold.
const coolRow = 2

// ways sets the four side by side, the one to take in a frame.
func (a author) ways(s setting) layout.Table {
	t := layout.Table{ByColumn: true, Close: s.tight > 0, Columns: []layout.Column{{Quiet: true, Share: 0.176}}}
	for i, id := range economics.Options {
		t.Columns = append(t.Columns, layout.Column{Head: words.Name(id), Share: 0.206})
		if id == a.taken() {
			t.Framed = i + 1
		}
	}
	for i, r := range a.v.Rows() {
		if i == coolRow && s.tight == tightest { // the calendar of page two shows it
			continue
		}
		if letters := a.letters(); letters != "" && strings.Contains(strings.Join(r.Cells[:], " "), letters) { // stand once
			for i, cell := range r.Cells {
				r.Cells[i] = strings.ReplaceAll(cell, letters+" ", "")
			}
			t.Columns[0].Head = "Sums in " + letters
		}
		t.Rows = append(t.Rows, append([]string{r.Label}, r.Cells[:]...))
	}
	return t
}

// taken is the way that the headline tells to take, "" where there is none.
func (a author) taken() economics.OptionID {
	switch c := a.r.Answer.Case; {
	case !a.decided(), c == economics.Forbidden:
		return ""
	case c == economics.RatherNot, c == economics.TooDear:
		return economics.DryStores
	case c == economics.WorthTold:
		switch a.r.Answer.Confidence() {
		case economics.LeaningNot, economics.NotWorthIt:
			return economics.DryStores
		}
	}
	return a.o.ID
}

func (a author) rangesText(s setting) string {
	means := a.v.ColdMeans() + " "
	if s.tight == tightest { // page two says it
		means = ""
	}
	return strings.TrimSpace("As she is → with the work " + a.at("of page 3", "further on") + ". Brackets: 80 of 100 futures. " + means + a.v.DrinksCost())
}

func (a author) percent() string { return quantity.FormatShare(a.r.Boat.Money.Discount) }

// before says in a line which stops stand and what was not told.
func (a author) before() []layout.Block {
	text := ""
	own, _ := a.stops()
	switch n := len(own); {
	case !a.decided():
		return nil
	case n == 1:
		text = "One stop stands " + a.at("on page 3", "after the work") + ": clear it first."
	case n > 1:
		text = fmt.Sprintf("%s stops stand %s: clear them first.", words.Capital(counted(n)), a.at("on page 3", "after the work"))
	}
	if len(a.untold) > 0 {
		text += " Some safety questions are unanswered: see there."
	}
	if text == "" {
		return nil
	}
	return []layout.Block{layout.Para{Lead: "Before you buy.", Text: strings.TrimSpace(text), Wide: true}}
}

// counted writes small numbers out.
func counted(n int) string {
	names := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}
	if n < len(names) {
		return names[n]
	}
	return fmt.Sprint(n)
}
