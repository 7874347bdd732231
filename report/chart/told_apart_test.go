package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"coldreckon/report/sheet"
)

// A line's style is its own, whatever its place; without one, its place's.
func TestStylesOfYears(t *testing.T) {
	drawn := func(styles ...int) []sheet.Pen {
		c := Years{Head: Head{Name: "y", Finding: "f"}}
		for _, s := range styles {
			l := named(ramp(10, 5, .1), fmt.Sprint("line ", s))
			l.Low, l.High, l.Style = nil, nil, s
			c.Lines = append(c.Lines, l)
		}
		var pens []sheet.Pen
		for _, o := range mustDraw(t, c, sheet.Rect{W: 160, H: 70}).Ops {
			if o.Kind == sheet.LineOp && len(o.Points) == 11 {
				pens = append([]sheet.Pen{o.Pen}, pens...) // the first line is drawn last
			}
		}
		return pens
	}
	for _, c := range []struct{ styles, want []int }{{[]int{3, 1, 2}, []int{2, 0, 1}}, {[]int{0, 0}, []int{0, 1}}} {
		got := drawn(c.styles...)
		if len(got) != len(c.want) {
			t.Fatalf("%d lines; want %d", len(got), len(c.want))
		}
		for i, w := range c.want {
			if got[i].Width != strokes(w).Width || !slices.Equal(got[i].Dash, strokes(w).Dash) {
				t.Errorf("styles %v: line %d is drawn %v; want %v", c.styles, i, got[i], strokes(w))
			}
		}
	}
}

// A bar runs from the low end to the high end even where the base lies beyond
// both, and the base line strikes through no name.
func TestSwingBarsRunFromEndToEnd(t *testing.T) {
	c := Swing{Head: Head{Name: "s", Finding: "f"}, Base: 100,
		Rows: []SwingRow{{"across the base", 0, 400, "a", "b"}, {"below the base", 40, 80, "7 years", "20 years"}}}
	rec := mustDraw(t, c, sheet.Rect{W: 160, H: 50})
	width := map[float64]float64{} // of the bars of a row, by its place
	atLine := 0
	for k, o := range rec.Ops {
		switch {
		case o.Kind == sheet.AreaOp && o.Pen.Width > 0 && o.Box.X > 20 && o.Box.Y > 15:
			width[math.Round(o.Box.Y)] += o.Box.W
		case o.Kind == sheet.LineOp && o.Pen.Width == 0.3:
			atLine = k
		}
	}
	var widths []float64
	for _, w := range width {
		widths = append(widths, w)
	}
	slices.Sort(widths)
	if len(widths) != 2 || math.Abs(widths[1]/widths[0]-10) > 1e-6 {
		t.Errorf("spans of 40 and 400 are %v wide", widths)
	}
	for _, o := range rec.Ops[:atLine] {
		if strings.HasSuffix(o.Text, "years") {
			t.Errorf("%q is drawn before the line, which may strike it through", o.Text)
		}
	}
}
