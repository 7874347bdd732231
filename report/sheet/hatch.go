package sheet

import (
	"math"
	"slices"
)

// hatchGap is the distance between hatch lines, mm: wide enough for a
// photocopier to keep them apart. Engineering judgement.
const hatchGap = 1.1

// hatchLines gives the line segments of a texture inside a closed shape.
// Lines are laid on one grid for the whole page, so that neighbouring shapes
// of one texture match. Solid and None have none.
func hatchLines(pts []Point, t Texture) [][2]Point {
	switch t {
	case Rising:
		return scan(pts, math.Pi/4)
	case Dots:
		return dots(pts)
	}
	return nil
}

// hatchPen is the pen of a texture's lines.
func hatchPen(f Fill) Pen {
	if f.Texture == Dots {
		return Pen{Width: dotSide, Grey: f.Grey}
	}
	return Pen{Width: 0.2, Grey: f.Grey}
}

// dotSide is the side of a dot, mm: one that a copier keeps. Engineering
// judgement.
const dotSide = 0.35

// dots cuts level lines into strokes as long as the pen is wide, each line set
// off against the one before.
func dots(pts []Point) [][2]Point {
	var out [][2]Point
	for _, l := range scan(pts, 0) {
		y := l[0].Y
		off := 0.0
		if int(math.Round(y/hatchGap))%2 != 0 {
			off = hatchGap / 2
		}
		low, high := min(l[0].X, l[1].X), max(l[0].X, l[1].X)
		for k := math.Ceil((low - off) / hatchGap); k*hatchGap+off+dotSide <= high; k++ {
			x := k*hatchGap + off
			out = append(out, [2]Point{{x, y}, {x + dotSide, y}})
		}
	}
	return out
}

// scan cuts a shape with parallel lines at an angle to the horizontal,
// positive rising to the right, by the even-odd rule.
func scan(pts []Point, angle float64) [][2]Point {
	sin, cos := math.Sincos(angle)
	// Turn the page so that the hatch runs along u; v counts the lines.
	turned := make([]Point, len(pts))
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range pts {
		turned[i] = Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
		low, high = min(low, turned[i].Y), max(high, turned[i].Y)
	}
	var out [][2]Point
	for k := math.Ceil(low / hatchGap); k*hatchGap <= high; k++ {
		v := k * hatchGap
		var cuts []float64
		for i, a := range turned {
			b := turned[(i+1)%len(turned)]
			if (a.Y <= v) != (b.Y <= v) {
				cuts = append(cuts, a.X+(v-a.Y)/(b.Y-a.Y)*(b.X-a.X))
			}
		}
		slices.Sort(cuts)
		for i := 0; i+1 < len(cuts); i += 2 {
			back := func(u float64) Point { return Point{u*cos + v*sin, v*cos - u*sin} }
			out = append(out, [2]Point{back(cuts[i]), back(cuts[i+1])})
		}
	}
	return out
}
