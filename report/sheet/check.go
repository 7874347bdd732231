package sheet

import (
	"fmt"
	"math"
)

// guard is the part of a sheet that keeps faults: what both implementations
// refuse, they refuse alike.
type guard struct {
	picture string
	level   int // of the last bookmark, -1 before the first
	page    int
	err     error
}

// Picture implements Sheet.
func (g *guard) Picture(name string) { g.picture = name }

// Page implements Sheet.
func (g *guard) Page() int { return g.page }

// Err implements Sheet.
func (g *guard) Err() error { return g.err }

// fail keeps the first fault.
func (g *guard) fail(format string, args ...any) {
	if g.err == nil {
		g.err = fmt.Errorf("picture %q: %w", g.picture, fmt.Errorf(format, args...))
	}
}

// ready reports whether drawing may go on with these numbers.
func (g *guard) ready(numbers ...float64) bool {
	if g.err == nil && g.page == 0 {
		g.fail("drawn before the first page")
	}
	for _, v := range numbers {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			g.fail("a coordinate is %v; coordinates must be finite numbers", v)
		}
	}
	return g.err == nil
}

func (g *guard) readyPoints(least int, pts []Point, p Pen) bool {
	if len(pts) < least {
		g.fail("a line of %d points; at least %d are needed", len(pts), least)
	}
	for _, q := range pts {
		if !g.ready(q.X, q.Y) {
			return false
		}
	}
	return g.readyPen(p)
}

func (g *guard) readyPen(p Pen) bool {
	if p.Width < 0 {
		g.fail("a pen %v mm wide; widths are 0 or more", p.Width)
	}
	for _, d := range p.Dash {
		if !(d > 0) {
			g.fail("a dash %v mm long; dashes are longer than 0", d)
		}
	}
	return g.ready(append([]float64{p.Width}, p.Dash...)...)
}

func (g *guard) readyText(x, y float64, t Type) bool {
	if !(t.Size > 0) {
		g.fail("type of %v points; sizes are above 0", t.Size)
	}
	return g.ready(x, y, t.Size)
}

// readyBookmark refuses a level that skips one: readers of the outline would
// lose the entries below the gap.
func (g *guard) readyBookmark(level int, y float64) bool {
	if level < 0 || level > g.level+1 {
		g.fail("bookmark level %d after %d; levels go down one at a time", level, g.level)
	}
	if !g.ready(y) {
		return false
	}
	g.level = level
	return true
}

func corners(r Rect) []Point {
	return []Point{{r.X, r.Y}, {r.Right(), r.Y}, {r.Right(), r.Bottom()}, {r.X, r.Bottom()}}
}
