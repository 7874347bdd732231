package report

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// round1 rounds to one decimal below ten and to a whole number above.
func round1(x float64) float64 {
	if math.Abs(x) < 9.95 {
		return math.Round(10*x) / 10
	}
	return math.Round(x)
}

// round0 rounds money to whole units: less is not known of what years will cost.
func round0(x float64) float64 { return math.Round(x) }

func (a author) percent() string { return quantity.FormatShare(a.r.Boat.Money.Discount) }

// money shows what is paid over the years.
func (a author) money() []layout.Block {
	return []layout.Block{layout.Heading{Level: 1, Text: "Money over the years"}, layout.Kept{a.paid()}}
}

// order gives the options with the answer and its rival first.
func (a author) order() []economics.OptionID {
	var out []economics.OptionID
	for _, id := range []economics.OptionID{a.r.Answer.Way(), a.v.Rival()} {
		if id != "" {
			out = append(out, id)
		}
	}
	for _, id := range economics.Options {
		if !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// index gives an option's place in economics.Options.
func index(id economics.OptionID) int { return slices.Index(economics.Options[:], id) }

// paid draws what has been paid by each year's end.
func (a author) paid() layout.Picture {
	paid := a.r.Futures.Paid
	c := chart.Years{Head: chart.Head{Name: "money over the years", Finding: a.v.Overtakes()}, Say: a.v.Money}
	years := int(a.r.Boat.Money.Years)
	marks := marksOf(years)
	t := layout.Table{Columns: []layout.Column{{Quiet: true}}}
	for _, y := range marks {
		head := fmt.Sprintf("By year %d", y)
		if y == 0 {
			head = "At first"
		}
		t.Columns = append(t.Columns, layout.Column{Head: head})
	}
	for _, id := range a.order() {
		line := chart.OverYears{Label: words.Name(id), Style: index(id) + 1}
		for _, r := range paid[index(id)] {
			line.Low, line.Mid, line.High = append(line.Low, r.Low), append(line.Mid, r.Typical), append(line.High, r.High)
		}
		if len(line.Mid) != years+1 {
			continue
		}
		c.Lines = append(c.Lines, line)
		row := []string{words.Name(id)}
		for _, y := range marks {
			r := paid[index(id)][y]
			row = append(row, a.v.Tight(round0(r.Typical), round0(r.Low), round0(r.High)))
		}
		t.Rows = append(t.Rows, row)
	}
	c.Caption = a.paidMeans(c.Lines)
	return layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Height: a.last(70), Draw: c.Draw, Table: t, Shown: a.bodyTight < tableMoves}
}

// paidMeans says what the lines of the payments are, why they are not page
// one's figures, and why one falls at the end.
func (a author) paidMeans(lines []chart.OverYears) string {
	text := "Paid in full by each year's end, with the work, prices of today: the middle of all futures, bands and bars 80 of 100. " +
		"Page one goes by typical figures"
	if a.r.Boat.Money.Discount > 0 {
		text += " and counts later payments for less"
	}
	for _, l := range lines {
		if last := len(l.Mid) - 1; last > 0 && l.Mid[last] < l.Mid[last-1] {
			text += ". A line falls in the last year where the unit is sold"
			break
		}
	}
	return text
}

// tableMoves is the setting from which the table of payments stands in the
// appendix.
const tableMoves = 3

// marksOf picks the years that the table shows: the first payment, the end
// and two between.
func marksOf(years int) []int {
	marks := []int{0}
	for _, y := range []int{int(math.Round(float64(years) / 4)), int(math.Round(float64(years) / 2)), years} {
		if y > marks[len(marks)-1] {
			marks = append(marks, y)
		}
	}
	return marks
}
