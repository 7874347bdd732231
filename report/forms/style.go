package forms

import "coldreckon/report/sheet"

// What all forms have in common, mm.
const (
	boxHeight = 5.4 // enough for a pencilled figure
	unitInset = 1.2 // unit to the box's edge
	pitchOf   = 1.3 // line pitch over type size
	headPad   = 1.0 // under a head
)

// The pens and the type of forms, in greys so that a copy of a copy still
// serves. They are not to be written to.
var (
	boxPen   = sheet.Pen{Width: 0.15, Grey: sheet.Dark}
	tickPen  = sheet.Pen{Width: 0.2, Grey: sheet.Dark}
	heavyPen = sheet.Pen{Width: 0.5, Grey: sheet.Black}
	linePen  = sheet.Pen{Width: 0.1, Grey: sheet.Light}
	small    = sheet.Type{Size: 7.5, Grey: sheet.Dark} // notes, heads of columns, helps
)

// pitch is the distance from line to line.
func pitch(t sheet.Type) float64 { return pitchOf * t.Size * sheet.MMPerPoint }

// drop is where a line's baseline stands under its top.
func drop(t sheet.Type) float64 { return (pitch(t)-t.Ascent()-t.Descent())/2 + t.Ascent() }

// squareSide is the side of a square to tick beside a text.
func squareSide(t sheet.Type) float64 { return t.Ascent() * 0.95 }

// square draws a square to tick on a text's baseline.
func square(s sheet.Sheet, x, base float64, t sheet.Type, pen sheet.Pen) {
	side := squareSide(t)
	s.Rect(sheet.Rect{X: x, Y: base - side, W: side, H: side}, sheet.Fill{}, pen)
}

// inBlank writes the unit of a box at its right, halfway up.
func inBlank(s sheet.Sheet, box sheet.Rect, unit string, t sheet.Type) {
	if unit != "" {
		s.Text(box.Right()-unitInset, box.Y+box.H/2-pitch(t)/2+drop(t), unit, t.To(sheet.Right))
	}
}
