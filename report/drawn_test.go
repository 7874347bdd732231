package report

import (
	"fmt"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// recorded draws a chart as wide as the page.
func recorded(t *testing.T, c layout.Picture) *sheet.Recording {
	t.Helper()
	s := must(sheet.NewRecording(sheet.A4))
	s.AddPage()
	frame := layout.Frame(s)
	frame.H = c.Height
	if c.Least != nil {
		frame.H = c.Least(frame.W)
	}
	if err := c.Draw(s, frame); err != nil {
		t.Fatal(err)
	}
	return s
}

// The spell is drawn whole, as its title names it, and the caption says how it
// was picked and in which state of the boat.
func TestSpellIsDrawnAsNamed(t *testing.T) {
	for _, boat := range []func() economics.Boat{weekender, islander, liveaboard} {
		in := inputOf(t, boat())
		a := must(in.author())
		for _, id := range economics.Options {
			f := in.Reckoning.Of(id).Fortnight
			c, ok := a.fortnight(id)
			if ok != (f.Days > 0) {
				t.Errorf("%s: drawn is %v, with %d days", id, ok, f.Days)
			}
			if !ok {
				continue
			}
			if len(c.Table.Rows) != f.Days {
				t.Errorf("%s: a spell of %d days has %d", id, f.Days, len(c.Table.Rows))
			}
			over := 0
			for _, h := range f.Hours {
				if h.FoodC > f.LimitC {
					over++
				}
			}
			picked := "The nearest call in 20 typical years"
			if over > 0 {
				picked = "The spell in which the food got warmest, in 20 typical years"
			}
			state := "as she is"
			if len(in.Reckoning.Of(id).Fit.Items) > 0 {
				state = "with the work done"
			}
			if !strings.HasPrefix(c.Caption, picked) || !strings.Contains(c.Caption, state) {
				t.Errorf("%s, %d hours over: %q", id, over, c.Caption)
			}
		}
	}
}

// Nothing that is zero throughout is drawn along the axis: words say it.
func TestNoSunIsSaid(t *testing.T) {
	in := inputOf(t, weekender())
	months := append([]economics.MonthFigures(nil), in.Reckoning.Months...)
	for _, sun := range []float64{0, 5000} {
		r := *in.Reckoning
		r.Months = append([]economics.MonthFigures(nil), months...)
		for i := range r.Months {
			r.Months[i].SolarWhPerDay = sun
		}
		in := in
		in.Reckoning = &r
		c := must(in.author()).demand()
		line := false
		for _, o := range recorded(t, c).Ops {
			line = line || o.Text == "sun to spare"
		}
		if line != (sun > 0) || strings.Contains(c.Caption, "no sun to spare") != (sun == 0) {
			t.Errorf("with %.0f Wh of sun a line is drawn: %v; caption %q", sun, line, c.Caption)
		}
	}
	b := weekender()
	b.Power.SolarWp, b.Power.MaxPanelWp = 0, 0
	in = inputOf(t, b)
	c, ok := must(in.author()).fortnight(economics.SmallUnit)
	if !ok {
		t.Fatal("there is no spell")
	}
	for _, o := range recorded(t, c).Ops {
		if strings.HasPrefix(o.Text, "Sun from") {
			t.Error("a strip of no sun is drawn")
		}
	}
	if !strings.Contains(c.Caption, "the panel gives nothing") {
		t.Errorf("no sun, but the caption says %q", c.Caption)
	}
}

// Payments on page four are not page one's figures: the caption says why, and why
// a line falls.
func TestPaymentsSayWhatTheyAre(t *testing.T) {
	for _, c := range []struct {
		sells    quantity.Tri
		discount quantity.Fraction
	}{{quantity.No, 0.03}, {quantity.Yes, 0.03}, {quantity.No, 0}} {
		b := weekender()
		b.Money.WillSell, b.Money.Discount = c.sells, c.discount
		caption := must(inputOf(t, b).author()).paid().Caption
		for part, want := range map[string]bool{
			"Paid in full": true, "the middle of all futures": true, "Page one goes by typical figures": true,
			"counts later payments for less": c.discount > 0, "where the unit is sold": c.sells == quantity.Yes,
		} {
			if strings.Contains(caption, part) != want {
				t.Errorf("sells %s, discount %v: %q said is %v: %q", c.sells, c.discount, part, !want, caption)
			}
		}
	}
}

// An option looks the same whichever is the answer.
func TestOptionsKeepTheirLines(t *testing.T) {
	in := inputOf(t, weekender())
	lines := func(answer, rival economics.OptionID) map[string]string {
		r := *in.Reckoning
		r.Answer.Ways = []economics.OptionID{answer, rival}
		in := in
		in.Reckoning = &r
		out := map[string]string{}
		for _, o := range recorded(t, must(in.author()).paid()).Ops {
			if n := len(o.Points); o.Kind == sheet.LineOp && n == int(r.Boat.Money.Years)+1 {
				out[fmt.Sprintf("%.2f", o.Points[n-1].Y)] = fmt.Sprint(o.Pen)
			}
		}
		return out
	}
	one, other := lines(economics.IceOnly, economics.SmallUnit), lines(economics.LargerUnit, economics.IceOnly)
	if len(one) != 4 {
		t.Errorf("%d lines; want 4", len(one))
	}
	for end, pen := range one {
		if other[end] != pen {
			t.Errorf("the line that ends at %s is drawn %s, and %s with another answer", end, pen, other[end])
		}
	}
}

// The swing chart names the two options that it sets against each other.
func TestSwingNamesItsTwo(t *testing.T) {
	in := inputOf(t, weekender())
	r := *in.Reckoning
	r.Futures.Preferred, r.Futures.Runner, r.Futures.Worth = economics.SmallUnit, economics.LargerUnit, 4
	in.Reckoning = &r
	text := ""
	for _, b := range must(in.author()).swing() {
		switch b := b.(type) {
		case layout.Para:
			text += b.Text + "\n"
		case layout.Picture:
			if !strings.HasPrefix(b.Finding, "The small unit against the larger unit: ") {
				t.Errorf("finding %q", b.Finding)
			}
		}
	}
	holds(t, text, "Set against each other are the small unit and the larger unit: averaged over all futures they lose least a year, a cold day counted as worth $4.")
}

// A few words that introduce a table or list stay with it, and the table of the
// units is not broken.
func TestIntroductionsStay(t *testing.T) {
	a := must(inputOf(t, weekender()).author())
	for _, part := range a.document().Parts {
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
	if kept, ok := a.units()[0].(layout.Kept); !ok || len(kept) != 3 {
		t.Error("the table of the units may break")
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
