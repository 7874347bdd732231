package report

import (
	"fmt"
	"strings"

	"coldreckon/report/layout"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// front is page one, which stands alone.
func (a author) front() []layout.Block {
	out := []layout.Block{
		layout.Heading{Level: 0, Text: a.r.Boat.Name},
		layout.Para{Style: layout.Small, Text: a.scene()},
	}
	if text := a.v.Medicine(); text != "" {
		out = append(out, layout.Para{Text: text})
	}
	out = append(out, layout.Para{Style: layout.Lede, Text: a.v.Answer()})
	for _, text := range []string{strings.TrimSpace(a.v.Grade() + " " + a.v.Counts()), strings.TrimSpace(strings.Join(a.v.Also(), " ") + " " + a.stops())} {
		if text != "" {
			out = append(out, layout.Para{Text: text})
		}
	}
	out = append(out, a.reasons()...)
	return append(out, layout.Heading{Level: 1, Text: "The four ways side by side"}, beside(a.sideBySide()),
		layout.Para{Style: layout.Small, Text: a.rangesText()})
}

// stops counts the stops that stand before the answer; empty when there are none.
func (a author) stops() string {
	n := 0
	for _, f := range a.findings {
		if f.Grade == rules.Stop && concerns(f, a.r.Answer.Way()) {
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
		if len(out) < most && f.Text != "" {
			out = append(out, f.Text)
		}
	}
	return out
}

func (a author) rangesText() string {
	return a.v.ColdMeans() + fmt.Sprintf(" All with the work needed; brackets hold 80 of 100 futures. Prices of today, counting %s less for each year ahead. ", a.percent()) + a.v.OtherCurrency()
}
