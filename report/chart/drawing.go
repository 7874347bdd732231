package chart

import (
	"fmt"
	"math"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// Drawing is a picture that knows how high it must be at a width, mm, and draws
// itself in a rectangle that is at least so high. The words over it are not its
// own: layout.Picture sets them.
type Drawing interface {
	Height(w float64) float64
	Draw(s sheet.Sheet, r sheet.Rect) error
}

// Picture sets a drawing under its finding and caption. alt says in words what it
// shows; figures are those that are drawn.
func Picture(d Drawing, finding, caption, alt string, figures layout.Table) layout.Picture {
	return layout.Picture{Finding: finding, Caption: caption, Alt: alt, Height: d.Height, Draw: d.Draw, Table: figures}
}

// The type of drawings: nothing is smaller than 9 points.
var (
	noteType = sheet.Type{Size: 9}
	nameType = noteType.In(sheet.Bold)
	softType = sheet.Type{Size: 9, Grey: sheet.Dark}
)

// pitch is the distance from line to line, mm.
func pitch(t sheet.Type) float64 { return 1.3 * t.Size * sheet.MMPerPoint }

// lead is where the first line of a block stands below the block's top.
func lead(t sheet.Type) float64 { return (pitch(t)-t.Ascent()-t.Descent())/2 + t.Ascent() }

// middle is the baseline of a line of text centred on y.
func middle(y float64, t sheet.Type) float64 { return y + (t.Ascent()-t.Descent()*0.6)/2 }

// The fills mean the same in every drawing, and a copier keeps them apart: solid
// is the good or the recommended, hatched the second or what is added, dotted
// what is left over, white none.
var (
	solid   = sheet.Shade(sheet.Black)
	hatched = sheet.Fill{Texture: sheet.Rising, Grey: sheet.Black}
	dotted  = sheet.Fill{Texture: sheet.Dots, Grey: sheet.Black}
	open    = sheet.Shade(sheet.White)
)

var (
	edgePen  = sheet.Pen{Width: 0.2, Grey: sheet.Black}
	gridPen  = sheet.Pen{Width: 0.15, Grey: sheet.Light}
	dashPen  = sheet.Pen{Width: 0.2, Grey: sheet.Dark, Dash: []float64{1.2, 1}}
	heavyPen = sheet.Pen{Width: 0.9, Grey: sheet.Black}
)

// emboldened gives the type of a name, bold where it is the recommended one.
func emboldened(best bool) sheet.Type {
	if best {
		return nameType
	}
	return noteType
}

// lines writes lines below one another, the first one's top at y, and gives the
// y under the last.
func lines(s sheet.Sheet, x, y float64, texts []string, t sheet.Type) float64 {
	for _, text := range texts {
		s.Text(x, y+lead(t), text, t)
		y += pitch(t)
	}
	return y
}

// patched writes a line of text centred on y over a white patch, so that nothing
// strikes through it.
func patched(s sheet.Sheet, x, y float64, text string, t sheet.Type) {
	w := sheet.Width(text, t)
	left := x
	switch t.Align {
	case sheet.Centre:
		left -= w / 2
	case sheet.Right:
		left -= w
	}
	s.Rect(sheet.Rect{X: left - 0.6, Y: y - pitch(t)/2, W: w + 1.2, H: pitch(t)}, open, sheet.Pen{})
	s.Text(x, middle(y, t), text, t)
}

// swatch is a key's entry: an area in its fill and its name.
func swatch(s sheet.Sheet, name string, f sheet.Fill) entry {
	return entry{name, swatchW, func(at sheet.Rect) { s.Rect(at, f, edgePen) }}
}

// keyHeight is what key takes for names at a width.
func keyHeight(w float64, names ...string) float64 {
	r, err := sheet.NewRecording(sheet.A4)
	if err != nil { // A4 is known
		return 0
	}
	r.AddPage()
	var entries []entry
	for _, n := range names {
		entries = append(entries, swatch(r, n, open))
	}
	const far = 500
	return far - key(r, sheet.Rect{W: w, H: far}, entries).H
}

// enough refuses a rectangle that is too small for a drawing.
func enough(d Drawing, r sheet.Rect, name string) error {
	const narrowest = 70
	if r.W < narrowest {
		return fmt.Errorf("picture %q: %.0f mm wide; %d are the least", name, r.W, narrowest)
	}
	if h := d.Height(r.W); r.H < h-0.01 {
		return fmt.Errorf("picture %q: %.1f mm high; %.1f are needed", name, r.H, h)
	}
	return nil
}

// sound refuses values that cannot be drawn.
func sound(what string, values ...float64) error {
	const most = 1e15
	for i, v := range values {
		if math.IsNaN(v) || math.Abs(v) > most {
			return fmt.Errorf("value %d of %s is %v; a finite number below 1e15 is needed", i+1, what, v)
		}
	}
	return nil
}

// arrowHead draws a filled triangle with its tip at a point, pointing along
// (dx, dy), which is as long as the head.
func arrowHead(s sheet.Sheet, tip sheet.Point, dx, dy, half float64) {
	n := max(1e-9, dx*dx+dy*dy)
	px, py := -dy*half/math.Sqrt(n), dx*half/math.Sqrt(n)
	base := sheet.Point{X: tip.X - dx, Y: tip.Y - dy}
	s.Polygon([]sheet.Point{tip, {X: base.X + px, Y: base.Y + py}, {X: base.X - px, Y: base.Y - py}}, solid, sheet.Pen{})
}
