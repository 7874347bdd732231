package chart

import (
	"math"

	"coldreckon/report/sheet"
)

var axisPen = sheet.Pen{Width: 0.2, Grey: sheet.Dark}

// fills tell areas apart, in an order that sets unlike ones side by side.
// They repeat after eight.
func fills(i int) sheet.Fill {
	return [8]sheet.Fill{
		{Texture: sheet.Solid, Grey: sheet.Dark},
		{Texture: sheet.Solid, Grey: sheet.Light},
		{Texture: sheet.Rising, Grey: sheet.Dark},
		{Texture: sheet.Solid, Grey: sheet.White},
		{Texture: sheet.Crossed, Grey: sheet.Dark},
		{Texture: sheet.Solid, Grey: sheet.Mid},
		{Texture: sheet.Level, Grey: sheet.Dark},
		{Texture: sheet.Falling, Grey: sheet.Mid},
	}[i%8]
}

// outline is the pen around every filled area, so that white shows too.
var outline = sheet.Pen{Width: 0.15, Grey: sheet.Dark}

// strokes tell lines apart. They repeat after four.
func strokes(i int) sheet.Pen {
	return [4]sheet.Pen{
		{Width: 0.55, Grey: sheet.Black},
		{Width: 0.55, Grey: sheet.Dark, Dash: []float64{2.4, 1}},
		{Width: 0.5, Grey: sheet.Black, Dash: []float64{0.6, 0.9}},
		{Width: 0.45, Grey: sheet.Dark, Dash: []float64{3.2, 0.9, 0.6, 0.9}},
	}[i%4]
}

// marker draws the sign that goes with a stroke: disc, square, triangle,
// diamond, the second and fourth open.
func marker(s sheet.Sheet, i int, at sheet.Point) {
	shape := [4]struct {
		corners int
		turn    float64
		radius  float64
		fill    sheet.Grey
	}{{16, 0, 0.85, sheet.Black}, {4, math.Pi / 4, 1.15, sheet.White}, {3, math.Pi, 1.2, sheet.Black}, {4, 0, 1.25, sheet.White}}[i%4]
	pts := make([]sheet.Point, shape.corners)
	for k := range pts {
		sin, cos := math.Sincos(shape.turn + 2*math.Pi*float64(k)/float64(shape.corners))
		pts[k] = sheet.Point{X: at.X + shape.radius*sin, Y: at.Y + shape.radius*cos}
	}
	s.Polygon(pts, sheet.Shade(shape.fill), sheet.Pen{Width: 0.3, Grey: sheet.Black})
}

// entry is one item of a key: a swatch that draws itself and a name.
type entry struct {
	name   string
	width  float64 // of the swatch, mm
	swatch func(at sheet.Rect)
}

const swatchW, swatchH = 5.0, 2.8

// area is the key entry of a fill.
func area(s sheet.Sheet, name string, f sheet.Fill) entry {
	return entry{name, swatchW, func(at sheet.Rect) { s.Rect(at, f, outline) }}
}

// stroke is the key entry of a line with its marker.
func stroke(s sheet.Sheet, name string, i int) entry {
	return entry{name, swatchW, func(at sheet.Rect) {
		y := at.Y + at.H/2
		s.Line(sheet.Point{X: at.X, Y: y}, sheet.Point{X: at.Right(), Y: y}, strokes(i))
		marker(s, i, sheet.Point{X: at.X + at.W/2, Y: y})
	}}
}

// key sets entries in a row, more rows if need be, at the top of r and gives
// what is left.
func key(s sheet.Sheet, r sheet.Rect, entries []entry) sheet.Rect {
	return keyIn(s, r, entries, labelType)
}

// keyIn is key in another type.
func keyIn(s sheet.Sheet, r sheet.Rect, entries []entry, t sheet.Type) sheet.Rect {
	const between, row = 6.0, 4.6
	x, y := r.X, r.Y
	for _, e := range entries {
		room := r.W - e.width - 1.5
		lines := sheet.Wrap(e.name, t, room)
		w := 0.0
		for _, l := range lines {
			w = max(w, sheet.Width(l, t))
		}
		if x > r.X && x+e.width+1.5+w > r.Right() {
			x, y = r.X, y+row
		}
		e.swatch(sheet.Rect{X: x, Y: y + (row-swatchH)/2, W: e.width, H: swatchH})
		for k, l := range lines {
			s.Text(x+e.width+1.5, middle(y+row/2, t)+float64(k)*row, l, t)
		}
		y += row * float64(len(lines)-1)
		x += e.width + 1.5 + w + between
	}
	if len(entries) > 0 {
		y += row + 2
	}
	return r.Inset(0, y-r.Y, 0, 0)
}
