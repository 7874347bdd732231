package report

import (
	"fmt"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
)

// What moves the choice names the two options that it sets against each other.
func TestSwingNamesItsTwo(t *testing.T) {
	in := inputOf(t, weekender())
	r := *in.Reckoning
	r.Futures.Preferred, r.Futures.Runner, r.Futures.Worth = economics.SmallUnit, economics.LargerUnit, 4
	in.Reckoning = &r
	text := ""
	for _, b := range must(in.author()).swing() {
		if p, ok := b.(layout.Para); ok {
			text += p.Text + "\n"
		}
	}
	holds(t, text, "Set against each other are the small unit and the larger unit: averaged over all futures they lose least a year, a cold day counted as worth $4.",
		"What the small unit loses a year less what the larger unit does")
}

// A few words that introduce a table or list stay with it.
func TestIntroductionsStay(t *testing.T) {
	in := inputOf(t, weekender())
	in.Full = true
	for _, part := range must(in.author()).document().Parts {
		for i := 2; i < len(part); i++ {
			_, head := part[i-2].(layout.Heading)
			intro, para := part[i-1].(layout.Para)
			switch part[i].(type) {
			case layout.Table, layout.List:
				if head && para && !intro.Keep {
					t.Errorf("%q may stand on the page before its table", intro.Text)
				}
			}
		}
	}
}

func TestGrantedAsATable(t *testing.T) {
	for g, want := range map[economics.Grant][2]string{
		{Range: quantity.Range{Low: 0.1, Typical: 0.2, High: 0.35}, Unit: "W/m·K"}: {"0.2 W/m·K", "0.1 to 0.35 W/m·K"},
		{Range: quantity.Range{Low: 0.2, Typical: 0.3, High: 0.6}}:                 {"0.3", "0.2 to 0.6"},
		{Range: quantity.Exactly(1.2), Unit: "kJ/K a litre of box"}:                {"1.2 kJ/K a litre of box", ""},
		{Range: quantity.Exactly(0.5)}:                                             {"0.5", ""},
	} {
		if got := [2]string{g.Figure(), g.Span()}; got != want {
			t.Errorf("%+v: %q, want %q", g, got, want)
		}
	}
	table, sources := granted(weekender())
	if n := len(economics.Granted(weekender())); len(table.Rows) != n {
		t.Errorf("%d rows for %d figures", len(table.Rows), n)
	}
	last := 0
	for _, row := range table.Rows {
		n := 0
		fmt.Sscan(row[3], &n)
		if last = max(last, n); n < 1 {
			t.Errorf("%q has no source", row[0])
		}
	}
	holds(t, sources, fmt.Sprintf("(%d) ", last), "engineering judgement, from memory")
}

func TestNoFalseDigits(t *testing.T) {
	a := must(inputOf(t, weekender()).author())
	for _, c := range []struct{ got, want string }{
		{heatW(30.6), "31"}, {heatW(5.14), "5.1"}, {heatW(123.4), "120"}, {watts(278), "280"}, {watts(1232), "1,200"}, {watts(0), "0"},
		{a.v.Small(5.5), "$6"}, {a.v.Small(0.08), "under $1"}, {a.v.Small(1234), "$1,200"}, {a.v.Small(0), "$0"}, {a.v.Small(-1.7), "-$2"},
	} {
		if c.got != c.want {
			t.Errorf("%q; want %q", c.got, c.want)
		}
	}
	for _, row := range a.monthTable().Rows {
		for _, cell := range row[6:] {
			if digits := strings.Trim(strings.ReplaceAll(cell, ",", ""), "0"); len(digits) > 2 {
				t.Errorf("%s has more than two significant digits", cell)
			}
		}
	}
}

// A unit that runs without a pause takes the same at every temperature that it
// does not reach: the table of temperatures then says how far it gets.
func TestTemperaturesThatAUnitDoesNotReach(t *testing.T) {
	for _, c := range []struct {
		rated quantity.Watt
		short bool
	}{{60, false}, {15, true}} {
		b := weekender()
		b.Small.RatedCooling, b.Larger.RatedCooling = c.rated, c.rated
		in := inputOf(t, b)
		in.Full = true
		doc, err := Document(in)
		if err != nil {
			t.Fatal(err)
		}
		_, text, _ := strings.Cut(strings.Join(strings.Fields(doc.Text()), " "), "What another temperature would take")
		text, _, _ = strings.Cut(text, "Growth after")
		if got := strings.Contains(text, "Wh, and gets"); got != c.short || text == "" {
			t.Errorf("units of %v W: %q", float64(c.rated), text)
		}
	}
}
