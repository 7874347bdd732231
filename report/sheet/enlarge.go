package sheet

// Enlarge gives a sheet on which everything drawn comes out so many times as
// large on s, as for large print. Its paper is as many times smaller.
func Enlarge(s Sheet, times float64) Sheet { return enlarged{s, times} }

type enlarged struct {
	Sheet
	times float64
}

func (e enlarged) Paper() (w, h float64) {
	w, h = e.Sheet.Paper()
	return w / e.times, h / e.times
}

func (e enlarged) Text(x, baseline float64, s string, t Type) {
	t.Size *= e.times
	e.Sheet.Text(x*e.times, baseline*e.times, s, t)
}

func (e enlarged) Line(from, to Point, p Pen) { e.Polyline([]Point{from, to}, p) }

func (e enlarged) Polyline(pts []Point, p Pen) { e.Sheet.Polyline(e.points(pts), e.pen(p)) }

func (e enlarged) Rect(r Rect, f Fill, p Pen) { e.Polygon(corners(r), f, p) }

func (e enlarged) Polygon(pts []Point, f Fill, p Pen) { e.Sheet.Polygon(e.points(pts), f, e.pen(p)) }

func (e enlarged) Bookmark(title string, level int, y float64) {
	e.Sheet.Bookmark(title, level, y*e.times)
}

func (e enlarged) points(pts []Point) []Point {
	out := make([]Point, len(pts))
	for i, p := range pts {
		out[i] = Point{p.X * e.times, p.Y * e.times}
	}
	return out
}

func (e enlarged) pen(p Pen) Pen {
	out := Pen{Width: p.Width * e.times, Grey: p.Grey}
	for _, d := range p.Dash {
		out.Dash = append(out.Dash, d*e.times)
	}
	return out
}
