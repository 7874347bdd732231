package report

import (
	"fmt"
	"strings"

	"coldreckon/economics"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// front is page one, which stands alone.
func (a author) front() []layout.Block {
	out := []layout.Block{
		layout.Heading{Level: 0, Text: a.r.Boat.Name},
		layout.Para{Style: layout.Small, Text: a.scene()},
		layout.Para{Style: layout.Lede, Text: a.v.Answer()},
	}
	if text := strings.TrimSpace(a.v.Condition() + " " + a.stops()); text != "" {
		out = append(out, layout.Para{Text: text})
	}
	if a.aboard() {
		out = append(out, a.hundred())
	}
	out = append(out, a.reasons()...)
	return append(out, layout.Heading{Level: 1, Text: "The four ways side by side"}, beside(a.sideBySide()),
		layout.Para{Style: layout.Small, Text: a.rangesText()})
}

// stops counts the stops that stand before the answer; empty when there are none.
func (a author) stops() string {
	n := 0
	for _, f := range a.findings {
		if f.Grade == rules.Stop && concerns(f, a.r.Verdict.Option) {
			n++
		}
	}
	switch {
	case n == 0 || !a.aboard():
		return ""
	case n == 1:
		return "First read the stop on the next pages."
	}
	return fmt.Sprintf("First read the %d stops on the next pages.", n)
}

// reasons gives the reasons and what would change the answer: side by side,
// or one below the other where the page is short.
func (a author) reasons() []layout.Block {
	why := []layout.Block{layout.Heading{Level: 1, Text: "Three reasons"}, list(layout.Number, a.v.Reasons())}
	const head = "What would change this"
	flips := a.flips([tightest + 1]int{3, 2, 1, 1, 1, 1, 1}[a.frontTight])
	switch {
	case len(flips) == 0:
		return why
	case a.frontTight == 0:
		return []layout.Block{layout.Side{Columns: [][]layout.Block{why, {layout.Heading{Level: 1, Text: head}, list(layout.Dash, flips)}}}}
	}
	return append(why, layout.Para{Lead: head + ".", Text: strings.Join(flips, " ")})
}

// rowsThatMove is how many of the last rows of the side-by-side table stand on
// page two, by the setting of page one.
var rowsThatMove = [tightest + 1]int{3: 1, 4: 2, 5: 3, 6: 4}

// sideBySide gives the rows of page one; the longest go to the next page when
// page one is full.
func (a author) sideBySide() []words.Row {
	rows := a.v.Rows()
	return rows[:len(rows)-rowsThatMove[a.frontTight]]
}

// scene says in one line what this is about.
func (a author) scene() string {
	parts := []string{a.r.Ground.Name, fmt.Sprintf("%.0f nights aboard a year", a.v.Nights())}
	if !a.Date.IsZero() {
		parts = append(parts, day(a.Date))
	}
	return strings.Join(parts, "  ·  ")
}

// flips gives what would change the answer, beyond what was said above.
func (a author) flips(most int) []string {
	var out []string
	for _, f := range a.v.Flips() {
		if len(out) < most && f.Text != "" && !strings.Contains(a.v.Condition(), f.Text) {
			out = append(out, f.Text)
		}
	}
	if len(out) == 0 && a.aboard() && a.r.Verdict.Works {
		out = append(out, "Only what a cold day is worth to you, as said above.")
	}
	return out
}

func (a author) rangesText() string {
	return a.v.ColdMeans() + fmt.Sprintf(" All with the work needed; brackets hold 80 of 100 futures. Prices of today, counting %s less for each year ahead. ", a.percent()) + a.v.OtherCurrency()
}

// hundred draws in how many of 100 futures each option is best.
func (a author) hundred() layout.Picture {
	c := chart.Hundred{Head: chart.Head{Name: "best of 100", Finding: strings.Join(a.v.Sure()[:1], " "), Caption: a.secondCount()}}
	row := chart.HundredRow{}
	t := layout.Table{Columns: []layout.Column{{Head: "Best way"}, {Head: "Futures of 100", Right: true}}}
	put := func(name string, n int) {
		c.Groups, row.Counts = append(c.Groups, name), append(row.Counts, n)
		t.Rows = append(t.Rows, []string{name, fmt.Sprint(n)})
	}
	for _, id := range economics.Options {
		put(words.Name(id), a.r.Of(id).BestOf100)
	}
	put("None works", a.r.Futures.NoneWorksOf100)
	c.Rows = []chart.HundredRow{row}
	return layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: a.least(c.Draw, 22), Draw: c.Draw, Table: t}
}

func (a author) secondCount() string {
	return a.v.Sure()[1] + " A future is one way that prices, weather, box and unit may turn out."
}
