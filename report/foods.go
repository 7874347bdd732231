package report

import (
	"fmt"

	"coldreckon/economics/quantity"
	"coldreckon/report/page"
	"coldreckon/report/words"
)

// keepers lists the foods that keep without cooling in a locker as warm as the
// cabin of the hottest month aboard, and what dry stores cannot do.
func (a author) keepers() []page.Block {
	out := []page.Block{page.Heading{Level: 1, Text: "Foods that keep without cooling"}}
	if !a.aboard() {
		return append(out, page.Para{Text: "There are no nights aboard, so there is no locker temperature to go by."})
	}
	hottest := a.r.Months[0]
	for _, m := range a.r.Months {
		if m.CabinC > hottest.CabinC {
			hottest = m
		}
	}
	gap := a.r.Boat.Cruising.ShopEveryDays
	out = append(out, page.Para{Keep: true, Text: fmt.Sprintf("In a locker at %s, as the cabin is in %s, with %s between shops. The bands speak of quality, not of safety: look, smell and discard.",
		quantity.FormatTemperature(quantity.Celsius(hottest.CabinC), a.r.Boat.Units), words.Month(hottest.Month), words.Plural(gap, "day"))})
	t := page.Table{Columns: []page.Column{{Head: "Food", Share: 0.17}, {Head: "Keeps", Share: 0.15}, {Head: "What to do", Share: 0.4}, {Head: "Source"}}}
	for _, k := range a.foods.Keeping(hottest.CabinC, gap, a.r.Boat.Safety.Eggs) {
		band := string(k.Band)
		if k.Judged {
			band += " (judged)"
		}
		advice := k.Advice
		for _, more := range []string{k.Limits, k.Weight} {
			if more != "" {
				advice += " " + more
			}
		}
		t.Rows = append(t.Rows, []string{k.Name, band, advice, k.Source})
	}
	out = append(out, t)
	cannot := page.List{}
	for _, c := range a.foods.CannotDo() {
		cannot.Items = append(cannot.Items, page.Item{Text: "Dry stores cannot " + c.Text, Source: c.Source})
	}
	return append(out, page.Heading{Level: 2, Text: "What dry stores cannot do"}, cannot)
}
