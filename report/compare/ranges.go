package compare

import (
	"fmt"
	"math"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// rangesAPage is how many boats one drawing holds.
const rangesAPage = 25

// charts draw what cold food costs a year on each boat, a line a boat. Boats
// with different currencies are not drawn.
func (t *Table) charts() []layout.Block {
	var rows []*Row
	for i := range t.Rows {
		if r := &t.Rows[i]; r.Error == "" {
			rows = append(rows, r)
			if r.Currency != rows[0].Currency {
				return nil
			}
		}
	}
	if len(rows) < 2 {
		return nil
	}
	least, most := rows[0], 0.0
	for _, r := range rows {
		y := r.Of(r.Way).Fitted.Yearly
		if y.Typical < least.Of(least.Way).Fitted.Yearly.Typical {
			least = r
		}
		most = max(most, y.High, y.Typical)
	}
	first := fmt.Sprintf("Cold food costs least on %s: %s a year.", least.Name, least.band(least.Of(least.Way).Fitted.Yearly))
	var out []layout.Block
	for start := 0; start < len(rows); start += rangesAPage {
		part, finding := rows[start:min(start+rangesAPage, len(rows))], first
		if start > 0 {
			finding = "The other boats, on the same axis."
		}
		table := layout.Table{Columns: []layout.Column{{Head: "Boat"}, {Head: "A year, all in all"}}}
		for _, r := range part {
			table.Rows = append(table.Rows, []string{r.Name, r.band(r.Of(r.Way).Fitted.Yearly)})
		}
		out = append(out, layout.Picture{
			Headed: true, Finding: finding, Caption: "Cost a year of the way to cold food, with the work: typical, and the range of eight in ten futures",
			Height: chartHead + rangeRow*float64(len(part)) + chartFoot, Table: table,
			Draw: func(s sheet.Sheet, r sheet.Rect) error { return drawRanges(s, r, finding, part, most) },
		})
	}
	return out
}

const (
	chartHead  = 13.0
	chartFoot  = 6.0
	rangeRow   = 5.2
	nameShare  = 0.28 // of the width
	valueShare = 0.24
)

var (
	findingType = sheet.Type{Size: 10, Face: sheet.Bold}
	nameType    = sheet.Type{Size: 8.5}
	axisType    = sheet.Type{Size: 7.5, Grey: sheet.Dark}
)

// drawRanges draws a line for each boat from low to high with a mark at the
// typical cost, on one axis from zero.
func drawRanges(s sheet.Sheet, r sheet.Rect, finding string, rows []*Row, most float64) error {
	lines := sheet.Wrap(finding, findingType, r.W)
	if len(lines) > 2 { // only a boat's name can be that long, and it stands in the tables
		lines = []string{lines[0], sheet.Shorten(lines[1]+" …", findingType, r.W)}
	}
	for i, line := range lines {
		s.Text(r.X, r.Y+4+4.6*float64(i), line, findingType)
	}
	left, right := r.X+nameShare*r.W, r.X+(1-valueShare)*r.W
	top := r.Y + chartHead
	bottom := top + rangeRow*float64(len(rows))
	step := niceStep(most / 5)
	if step == 0 {
		step = 1
	}
	end := step * math.Max(1, math.Ceil(most/step-1e-9))
	at := func(x float64) float64 { return left + (right-left)*min(max(x, 0), end)/end }
	for x := 0.0; x <= end*(1+1e-9); x += step {
		s.Line(sheet.Point{X: at(x), Y: top}, sheet.Point{X: at(x), Y: bottom}, sheet.Pen{Width: 0.1, Grey: sheet.Light})
		align := sheet.Centre
		if x == 0 {
			align = sheet.Left
		}
		s.Text(at(x), bottom+4, rows[0].money(x), axisType.To(align))
	}
	for i, row := range rows {
		y := top + rangeRow*(float64(i)+0.5)
		yearly := row.Of(row.Way).Fitted.Yearly
		base := y + nameType.Ascent()/2
		s.Text(r.X, base, sheet.Shorten(row.Name, nameType, nameShare*r.W-3), nameType)
		s.Line(sheet.Point{X: at(yearly.Low), Y: y}, sheet.Point{X: at(yearly.High), Y: y}, sheet.Pen{Width: 0.9, Grey: sheet.Light})
		s.Rect(sheet.Rect{X: at(yearly.Typical) - 0.6, Y: y - 1.3, W: 1.2, H: 2.6}, sheet.Shade(sheet.Black), sheet.Pen{})
		s.Text(right+3, base, sheet.Shorten(row.band(yearly), axisType, valueShare*r.W-3), axisType)
	}
	s.Line(sheet.Point{X: at(0), Y: top}, sheet.Point{X: at(0), Y: bottom}, sheet.Pen{Width: 0.2, Grey: sheet.Black})
	return s.Err()
}

// niceStep rounds up to 1, 2 or 5 times a power of ten; 0 stays 0.
func niceStep(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return 0
	}
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, f := range []float64{1, 2, 5} {
		if x <= f*power*(1+1e-9) {
			return f * power
		}
	}
	return 10 * power
}
