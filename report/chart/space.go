package chart

import (
	"math"
	"strings"

	"coldreckon/report/sheet"
)

// space keeps account of what stands in a plot, to find room for names.
type space struct {
	within sheet.Rect
	rects  []sheet.Rect
	lines  [][]sheet.Point
}

// put sets a name near a point, at the nearest of many places where it lies
// inside the plot, over no other name, across no line and on the point's own side
// of every line; on as many lines of text as that takes. It reports whether it
// found a place. A name for which there is no room is left out rather than set
// over anything; what it names must then be said in the finding or the text.
func (p *space) put(s sheet.Sheet, text string, t sheet.Type, at sheet.Point, most float64) bool {
	if text == "" {
		return true
	}
	word := 0.0
	for _, w := range strings.Fields(text) {
		word = max(word, sheet.Width(w, t))
	}
	const slack = 1e-6 // so that a word fits a width measured from itself
	for _, wide := range []float64{most, (most + word) / 2, word + slack} {
		var c column
		c.add(text, t, min(wide, most))
		if box, ok := p.find(at, c.width+1, c.height); ok {
			p.rects = append(p.rects, box)
			c.draw(s, 0, box.X+box.W/2, box.Y+box.H/2, sheet.Centre)
			return true
		}
	}
	return false
}

// find gives the nearest free place for a box by a point.
func (p *space) find(at sheet.Point, w, h float64) (sheet.Rect, bool) {
	for ring := range 28 {
		for k := range 24 {
			radius := 1.5 * float64(ring)
			mid := onCircle(at, radius, float64(k)/24)
			// Rings are flat, as names are: aim the near end at the point.
			mid.X += (mid.X - at.X) / max(1, radius) * w / 2
			box := sheet.Rect{X: mid.X - w/2, Y: mid.Y - h/2, W: w, H: h}
			if p.within.Contains(box) && !p.covered(box) && !p.parted(at, mid) && !p.crossed(box) {
				return box, true
			}
		}
	}
	return sheet.Rect{}, false
}

func (p *space) covered(r sheet.Rect) bool {
	near := r.Inset(-1.5, -1.5, -1.5, -1.5)
	for _, q := range p.rects {
		if q.Overlaps(near) {
			return true
		}
	}
	return false
}

// parted reports whether a line runs between two points: a name beyond it
// would stand in the wrong region.
func (p *space) parted(a, b sheet.Point) bool {
	side := func(p, q, r sheet.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	for _, l := range p.lines {
		for i := 1; i < len(l); i++ {
			c, d := l[i-1], l[i]
			if side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0 {
				return true
			}
		}
	}
	return false
}

func (p *space) crossed(r sheet.Rect) bool {
	near := r.Inset(-0.8, -0.5, -0.8, -0.5)
	for _, l := range p.lines {
		if len(clip(l, near)) > 0 {
			return true
		}
	}
	return false
}

// onCircle is a point on a circle, turn from 0 to 1 clockwise from the right.
func onCircle(mid sheet.Point, radius, turn float64) sheet.Point {
	sin, cos := math.Sincos(2 * math.Pi * turn)
	return sheet.Point{X: mid.X + radius*cos, Y: mid.Y + radius*sin}
}

// clip gives the runs of a line that lie inside a rectangle (Liang and
// Barsky's method, segment by segment).
func clip(line []sheet.Point, r sheet.Rect) [][]sheet.Point {
	var out [][]sheet.Point
	var run []sheet.Point
	flush := func() {
		if len(run) > 1 {
			out = append(out, run)
		}
		run = nil
	}
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		from, to := 0.0, 1.0
		inside := true
		for _, side := range [4][2]float64{
			{a.X - b.X, a.X - r.X}, {b.X - a.X, r.Right() - a.X},
			{a.Y - b.Y, a.Y - r.Y}, {b.Y - a.Y, r.Bottom() - a.Y},
		} {
			d, q := side[0], side[1] // inside while t*d <= q
			switch {
			case d == 0 && q < 0:
				inside = false
			case d > 0:
				to = min(to, q/d)
			case d < 0:
				from = max(from, q/d)
			}
		}
		if !inside || from > to {
			flush()
			continue
		}
		at := func(t float64) sheet.Point { return sheet.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)} }
		if from > 0 || len(run) == 0 {
			flush()
			run = []sheet.Point{at(from)}
		}
		run = append(run, at(to))
		if to < 1 {
			flush()
		}
	}
	flush()
	return out
}
