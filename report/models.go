package report

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics/measured"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// models shows what others have measured against what these models make of the
// same case, so that whoever knows the trade can judge them. Errors: a point that
// cannot be read or drawn.
func models() ([]layout.Block, error) {
	points, err := measured.Points()
	if err != nil {
		return nil, err
	}
	families := layout.Table{Fine: true, Columns: []layout.Column{{Head: "Kind"}, {Head: "Points", Right: true}, {Head: "Sources", Right: true}, {Head: "Predicted over measured, mean", Right: true}, {Head: "Inside its range", Right: true}}}
	inside := 0
	for _, f := range measured.Families(points) {
		inside += f.Inside
		families.Rows = append(families.Rows, []string{words.Capital(f.Name), fmt.Sprint(f.Points), fmt.Sprint(f.Sources), fmt.Sprintf("%.2f", f.Ratio), fmt.Sprintf("%d of %d", f.Inside, f.Points)})
	}
	out := []layout.Block{layout.Heading{Level: 1, Text: "How well these models have done"},
		layout.Para{Text: fmt.Sprintf("Others have measured boxes, ice and units and published it. Of %d such points %d lie inside the range that these models give for the same case, which should hold 80 of 100. What the source leaves out was assumed with a range.", len(points), inside)},
		layout.Kept{families}}
	const fewest = 6 // points that make a plot
	of := map[string][]measured.Point{}
	var units []string
	for _, p := range points {
		if of[p.Unit] = append(of[p.Unit], p); len(of[p.Unit]) == fewest {
			units = append(units, p.Unit)
		}
	}
	var sources origins
	for _, unit := range units {
		out = append(out, against(of[unit], unit, &sources))
	}
	rest := pointTable()
	for _, p := range points {
		if len(of[p.Unit]) < fewest {
			rest.Rows = append(rest.Rows, pointRow(p, &sources))
		}
	}
	return append(out, layout.Heading{Level: 2, Text: "The other points"}, rest, layout.Para{Style: layout.Small, Text: "From: " + sources.String() + "."}), nil
}

// against plots the points of a unit over the table of them.
func against(points []measured.Point, unit string, sources *origins) layout.Picture {
	c := chart.Against{Predicted: "predicted, " + unit, Measured: "measured, " + unit}
	t := pointTable()
	for _, p := range points {
		c.Points = append(c.Points, chart.AgainstPoint{Low: p.Predicted.Low, Mid: p.Predicted.Typical, High: p.Predicted.High, Measured: p.Measured})
		t.Rows = append(t.Rows, pointRow(p, sources))
	}
	finding := fmt.Sprintf("%d points in %s", len(points), unit)
	p := chart.Picture(c, finding, "A bar holds 80 of 100 predictions, a square is the middle one. On the dashed line predicted is measured", finding+", measured against predicted.", t)
	p.Shown = true
	return p
}

func pointTable() layout.Table {
	return layout.Table{Fine: true, Columns: []layout.Column{{Head: "What was measured", Share: 0.5}, {Head: "Measured", Right: true, Share: 0.18}, {Head: "Predicted, 80 of 100", Right: true}, {Head: "From", Right: true, Share: 0.07}}}
}

// pointRow tells a point, and where it is from in the number of its source.
func pointRow(p measured.Point, sources *origins) []string {
	return []string{words.Capital(p.Label), figure(p.Measured, 3) + " " + p.Unit,
		fmt.Sprintf("%s (%s–%s)", figure(p.Predicted.Typical, 2), figure(p.Predicted.Low, 2), figure(p.Predicted.High, 2)), sources.number(p.Source)}
}

// figure prints a figure above nothing to so many digits.
func figure(x float64, digits int) string {
	step := math.Pow10(int(math.Floor(math.Log10(x))) + 1 - digits)
	text := chart.Number(math.Round(x/step)*step, min(1, step))
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}
