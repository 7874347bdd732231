package chart

import "coldreckon/report/sheet"

var axisPen = sheet.Pen{Width: 0.2, Grey: sheet.Dark}

// entry is one item of a key: a swatch that draws itself and a name.
type entry struct {
	name   string
	width  float64 // of the swatch, mm
	swatch func(at sheet.Rect)
}

const swatchW, swatchH = 5.0, 2.8

// key sets entries in a row, more rows if need be, at the top of r and gives
// what is left.
func key(s sheet.Sheet, r sheet.Rect, entries []entry) sheet.Rect {
	const between, row = 6.0, 4.6
	x, y := r.X, r.Y
	for _, e := range entries {
		if e.name == "" { // it does not occur
			continue
		}
		room := r.W - e.width - 1.5
		lines := sheet.Wrap(e.name, noteType, room)
		w := 0.0
		for _, l := range lines {
			w = max(w, sheet.Width(l, noteType))
		}
		if x > r.X && x+e.width+1.5+w > r.Right() {
			x, y = r.X, y+row
		}
		e.swatch(sheet.Rect{X: x, Y: y + (row-swatchH)/2, W: e.width, H: swatchH})
		for k, l := range lines {
			s.Text(x+e.width+1.5, middle(y+row/2, noteType)+float64(k)*row, l, noteType)
		}
		y += row * float64(len(lines)-1)
		x += e.width + 1.5 + w + between
	}
	if len(entries) > 0 {
		y += row + 2
	}
	return r.Inset(0, y-r.Y, 0, 0)
}
