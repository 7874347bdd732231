package report

import (
	"fmt"
	"strings"

	"coldreckon/economics"
	"coldreckon/report/chart"
	"coldreckon/report/page"
	"coldreckon/report/words"
)

// front is page one, which stands alone.
func (a author) front() []page.Block {
	out := []page.Block{
		page.Heading{Level: 0, Text: a.r.Boat.Name},
		page.Para{Style: page.Small, Text: a.scene()},
		page.Para{Style: page.Lede, Text: a.v.Answer()},
	}
	if text := a.v.Condition(); text != "" {
		out = append(out, page.Para{Text: text})
	}
	if a.aboard() {
		out = append(out, a.hundred())
	}
	reasons := []page.Block{page.Heading{Level: 1, Text: "Three reasons"}, list(page.Number, a.v.Reasons())}
	if flips := a.flips(3); len(flips) > 0 {
		turns := []page.Block{page.Heading{Level: 1, Text: "What would change this"}, list(page.Dash, flips)}
		out = append(out, page.Side{Columns: [][]page.Block{reasons, turns}})
	} else {
		out = append(out, reasons...)
	}
	return append(out, page.Heading{Level: 1, Text: "The four ways side by side"}, beside(a.v.Rows()),
		page.Para{Style: page.Small, Text: a.rangesText()})
}

// scene says in one line what this is about.
func (a author) scene() string {
	parts := []string{a.r.Ground.Name, fmt.Sprintf("%.0f nights aboard a year", a.nights())}
	if !a.Date.IsZero() {
		parts = append(parts, day(a.Date))
	}
	return strings.Join(parts, "  ·  ")
}

func (a author) nights() float64 {
	var n float64
	for _, m := range a.r.Months {
		n += float64(m.Nights)
	}
	return n
}

func (a author) flips(most int) []string {
	var out []string
	for _, f := range a.v.Flips() {
		if len(out) < most && f.Text != "" && !strings.Contains(a.v.Condition(), f.Text) {
			out = append(out, f.Text)
		}
	}
	return out
}

func (a author) rangesText() string {
	return fmt.Sprintf("Figures are with the work needed. Ranges in brackets hold 8 of 10 futures. Prices of today, no inflation; money later counts %s less a year. "+
		"A future is one way that prices, weather, box and unit may turn out; all are equally likely.", a.percent())
}

// hundred draws in how many of 100 futures each option is best.
func (a author) hundred() page.Chart {
	c := chart.Hundred{Head: chart.Head{Name: "best of 100", Finding: strings.Join(a.v.Sure()[:1], " "), Caption: a.secondCount()}}
	row := chart.HundredRow{}
	t := page.Table{Columns: []page.Column{{Head: "Best way"}, {Head: "Futures of 100", Right: true}}}
	put := func(name string, n int) {
		c.Groups, row.Counts = append(c.Groups, name), append(row.Counts, n)
		t.Rows = append(t.Rows, []string{name, fmt.Sprint(n)})
	}
	for _, id := range economics.Options {
		put(words.Name(id), a.r.Of(id).BestOf100)
	}
	put("None works", a.r.Futures.NoneWorksOf100)
	c.Rows = []chart.HundredRow{row}
	return page.Chart{Finding: c.Finding, Caption: c.Caption, Height: 23, Draw: c.Draw, Table: t}
}

func (a author) secondCount() string { return strings.Join(a.v.Sure()[1:2], " ") }
