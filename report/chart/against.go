package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Against sets what was measured against what was predicted: on the slanting line
// they agree.
type Against struct {
	Predicted, Measured string // names of the axes, with the unit
	Points              []AgainstPoint
}

// AgainstPoint is one case: a prediction with its range, and the measurement.
type AgainstPoint struct {
	Low, Mid, High float64
	Measured       float64
}

const againstSide = 45.0 // of the plot, at most

// Height implements Drawing.
func (c Against) Height(w float64) float64 {
	return pitch(noteType) + min(againstSide, w-20) + 2*pitch(noteType) + 2
}

// Draw implements Drawing. Errors: no point, a figure that is none, a range that
// does not rise, too little room.
func (c Against) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "measured against predicted"
	if len(c.Points) == 0 {
		return fmt.Errorf("picture %q: no points", name)
	}
	low, high := 0.0, 0.0
	for _, p := range c.Points {
		if err := sound("a point", p.Low, p.Mid, p.High, p.Measured); err != nil {
			return fmt.Errorf("picture %q: %w", name, err)
		}
		if p.Low > p.Mid || p.Mid > p.High {
			return fmt.Errorf("picture %q: a point is %v, %v, %v; low, middle and high rise", name, p.Low, p.Mid, p.High)
		}
		a, b := outer(p.Low, p.High, p.Measured)
		low, high = min(low, a), max(high, b)
	}
	if err := enough(c, r, name); err != nil {
		return err
	}
	s.Picture(name)
	y := lines(s, r.X, r.Y, []string{c.Measured}, softType)
	foot := 2*pitch(noteType) + 2
	area := sheet.Rect{X: r.X, Y: y, W: min(r.W, r.H-pitch(noteType)-foot+18), H: r.H - pitch(noteType) - foot}
	plot, up := upAxis(s, area, low, high)
	across := scale{up.low, up.high, plot.X, plot.W}
	row := tickRow{from: r.X, to: r.Right(), baseline: plot.Bottom() + 1.2 + lead(noteType)}
	by := Step(up.high-up.low, 4)
	for _, v := range ticks(up.low, up.high, by) {
		s.Line(sheet.Point{X: across.of(v), Y: plot.Y}, sheet.Point{X: across.of(v), Y: plot.Bottom()}, gridPen)
		row.put(s, across.of(v), Number(v, by))
	}
	s.Text(plot.X, row.baseline+pitch(noteType), sheet.Shorten(c.Predicted, softType, r.Right()-plot.X), softType)
	s.Line(sheet.Point{X: across.of(up.low), Y: up.of(up.low)}, sheet.Point{X: across.of(up.high), Y: up.of(up.high)}, dashPen)
	for _, p := range c.Points {
		y := up.of(p.Measured)
		s.Line(sheet.Point{X: across.of(p.Low), Y: y}, sheet.Point{X: across.of(p.High), Y: y}, sheet.Pen{Width: 0.6, Grey: sheet.Mid})
		s.Rect(sheet.Rect{X: across.of(p.Mid) - 0.8, Y: y - 0.8, W: 1.6, H: 1.6}, solid, sheet.Pen{})
	}
	return s.Err()
}
