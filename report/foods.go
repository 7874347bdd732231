package report

import (
	"fmt"

	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// keepers lists the foods that keep without cooling in a locker as warm as the
// cabin of the hottest month aboard, and what dry stores cannot do.
func (a author) keepers() []layout.Block {
	out := []layout.Block{layout.Heading{Level: 1, Text: "Foods that keep without cooling"}}
	if !a.aboard() {
		return append(out, layout.Para{Text: "There are no nights aboard, so there is no locker temperature to go by."})
	}
	hottest := a.warmestCabin()
	gap := a.r.Boat.Cruising.ShopEveryDays
	out = append(out, layout.Para{Keep: true, Text: fmt.Sprintf("In a locker at %s, as the cabin is in %s, with %s between shops. The bands speak of quality, not of safety: look, smell and discard.",
		a.v.Degrees(hottest.CabinC), words.Month(hottest.Month), words.Plural(gap, "day"))})
	t := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Food", Share: 0.19}, {Head: "Keeps", Share: 0.14}, {Head: "What to do"}, {Head: "Source", Right: true, Share: 0.07}}}
	var sources origins
	for _, k := range a.foods.Keeping(hottest.CabinC, a.r.Boat.Safety.Eggs) {
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
		t.Rows = append(t.Rows, []string{k.Name, band, advice, sources.number(k.Source)})
	}
	cannot := layout.List{Mark: layout.Dash, Fine: true}
	for _, c := range a.foods.CannotDo() {
		cannot.Items = append(cannot.Items, layout.Item{Text: words.Capital(c.Text), Source: c.Source})
	}
	out = append(out, t, layout.Para{Style: layout.Small, Text: "Judged: the band at this warmth is judgement, not the source's. Sources: " + sources.String() + "."})
	return append(out, layout.Heading{Level: 2, Text: "What dry stores cannot do"}, cannot)
}
