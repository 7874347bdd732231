package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Boundary shows where an answer turns: lines in a plane of two quantities,
// names in the regions between them, and where this boat stands.
type Boundary struct {
	Head
	Across, Up Axis
	Lines      []Edge  // at most four
	Regions    []Place // their names, each at a point inside
	Boat       Place
}

// Axis is one of the plane's two quantities.
type Axis struct {
	Label     string               // with the unit
	Low, High float64              // the ends; Low < High
	Say       func(float64) string // prints a value; nil prints a Number
}

// Edge is a line on which the answer turns, by its points in the plane. Parts
// outside the axes are not drawn.
type Edge struct {
	Label  string
	Points []Place
}

// Place is a point of the plane with a name, which may be empty.
type Place struct {
	Label      string
	Across, Up float64
}

func (c Boundary) check() error {
	for _, a := range []Axis{c.Across, c.Up} {
		if err := sound("the axis "+a.Label, a.Low, a.High); err != nil {
			return err
		}
		if a.Low >= a.High {
			return fmt.Errorf("the axis %q runs from %v to %v; the first must be less", a.Label, a.Low, a.High)
		}
	}
	if len(c.Lines) > 4 {
		return fmt.Errorf("%d lines; 4 are the most that can be told apart", len(c.Lines))
	}
	for _, l := range c.Lines {
		for _, p := range l.Points {
			if err := sound(l.Label, p.Across, p.Up); err != nil {
				return err
			}
		}
	}
	for _, p := range append([]Place{c.Boat}, c.Regions...) {
		if err := sound(p.Label, p.Across, p.Up); err != nil {
			return err
		}
		if p.Across < c.Across.Low || p.Across > c.Across.High || p.Up < c.Up.Low || p.Up > c.Up.High {
			return fmt.Errorf("%q at %v, %v lies outside the axes", p.Label, p.Across, p.Up)
		}
	}
	return nil
}

// Draw draws the chart in r. Errors: an axis without extent, the boat or a
// region's name off the plane, more than four lines.
func (c Boundary) Draw(s sheet.Sheet, r sheet.Rect) error { return c.end(s, c.draw(s, r)) }

func (c Boundary) draw(s sheet.Sheet, r sheet.Rect) error {
	if err := c.check(); err != nil {
		return err
	}
	r, err := c.begin(s, r)
	if err != nil {
		return err
	}
	var entries []entry
	for i, l := range c.Lines {
		entries = append(entries, entry{l.Label, swatchW, func(at sheet.Rect) {
			y := at.Y + at.H/2
			s.Line(sheet.Point{X: at.X, Y: y}, sheet.Point{X: at.Right(), Y: y}, strokes(i))
		}})
	}
	r = key(s, r, entries)
	head := pitch(quietType)
	s.Text(r.X, r.Y+lead(quietType), sheet.Shorten(c.Up.Label, quietType, r.W), quietType)
	foot := 2*pitch(tickType) + 1.5
	inner := r.Inset(0, head+1, 0, foot)
	if err := roomy(inner); err != nil {
		return err
	}
	plot, along, up := c.plane(s, inner)

	taken := &space{within: plot.Inset(1, 1, 1, 1)}
	for i, l := range c.Lines {
		pts := make([]sheet.Point, len(l.Points))
		for k, p := range l.Points {
			pts[k] = sheet.Point{X: along.of(p.Across), Y: up.of(p.Up)}
		}
		for _, run := range clip(pts, plot) {
			s.Polyline(run, strokes(i))
			taken.lines = append(taken.lines, run)
		}
	}
	boat := sheet.Point{X: along.of(c.Boat.Across), Y: up.of(c.Boat.Up)}
	taken.rects = append(taken.rects, sheet.Rect{X: boat.X - 1, Y: boat.Y - 1, W: 2, H: 2})
	drawBoat(s, boat)
	taken.put(s, c.Boat.Label, labelType.In(sheet.Bold), boat, plot.W*0.35)
	for _, p := range c.Regions {
		at := sheet.Point{X: along.of(p.Across), Y: up.of(p.Up)}
		taken.put(s, p.Label, regionType, at, plot.W*0.3)
	}
	return nil
}

// plane draws both axes: a frame of two lines with ticks outside, no grid, so
// that the edges are the only lines inside.
func (c Boundary) plane(s sheet.Sheet, r sheet.Rect) (plot sheet.Rect, along, up scale) {
	_, _, upBy := fit(c.Up.Low, c.Up.High, max(2, int(r.H/10)))
	upMarks := ticks(c.Up.Low, c.Up.High, upBy)
	gutter := 0.0
	for _, v := range upMarks {
		gutter = max(gutter, sheet.Width(say(c.Up.Say, v, upBy), tickType))
	}
	_, _, alongBy := fit(c.Across.Low, c.Across.High, max(2, int(r.W/18)))
	alongTicks := ticks(c.Across.Low, c.Across.High, alongBy)
	over := sheet.Width(say(c.Across.Say, c.Across.High, alongBy), tickType) / 2 // the last tick's name
	plot = r.Inset(gutter+3, 1, over, 0)
	along = scale{c.Across.Low, c.Across.High, plot.X, plot.W}
	up = scale{c.Up.Low, c.Up.High, plot.Bottom(), -plot.H}
	s.Polyline([]sheet.Point{{X: plot.X, Y: plot.Y}, {X: plot.X, Y: plot.Bottom()}, {X: plot.Right(), Y: plot.Bottom()}}, axisPen)
	for _, v := range upMarks {
		y := up.of(v)
		s.Line(sheet.Point{X: plot.X - 1, Y: y}, sheet.Point{X: plot.X, Y: y}, axisPen)
	}
	upTicks(s, plot.X-2, upMarks, upBy, up, c.Up.Say)
	row := tickRow{from: r.X, to: r.Right(), baseline: plot.Bottom() + 1 + lead(tickType)}
	for _, v := range alongTicks {
		x := along.of(v)
		s.Line(sheet.Point{X: x, Y: plot.Bottom()}, sheet.Point{X: x, Y: plot.Bottom() + 1}, axisPen)
		row.put(s, x, say(c.Across.Say, v, alongBy))
	}
	across := sheet.Shorten(c.Across.Label, quietType, r.W)
	s.Text(plot.X+plot.W/2, plot.Bottom()+1.5+pitch(tickType)+lead(tickType), across, quietType.To(sheet.Centre))
	return plot, along, up
}

// drawBoat draws the boat's own point: a ring around a dot.
func drawBoat(s sheet.Sheet, at sheet.Point) {
	marker(s, 0, at)
	ring := make([]sheet.Point, 24)
	for i := range ring {
		ring[i] = onCircle(at, 1.9, float64(i)/24)
	}
	s.Polygon(ring, sheet.Fill{}, sheet.Pen{Width: 0.35, Grey: sheet.Black})
}
