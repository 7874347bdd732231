package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// CutList shows how pieces of board are cut from sheets, to one scale, numbered
// in the order in which they are set.
type CutList struct {
	Sheets   []CutSheet
	LeftOver string // what the key calls the rest of a sheet
	// Highest is the most that all rows of sheets may be high, mm; 0 is the usual.
	Highest float64
	// Say prints a length given in mm; nil prints millimetres.
	Say func(mm float64) string
}

// CutSheet is one sheet with what is cut from it, mm.
type CutSheet struct {
	W, H   float64
	Pieces []CutPiece
}

// CutPiece is one piece, its corner and size in mm from the sheet's upper left.
type CutPiece struct {
	Number     int
	Name       string
	X, Y, W, H float64
}

const (
	cutGap     = 4.0  // between sheets, mm
	cutHighest = 58.0 // of all rows of sheets
)

// scales are those that sheets and boxes are drawn to, the largest first.
var scales = []float64{5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100}

// places sets the sheets in rows at 1 to n; ok is false where one is wider than
// the drawing.
func (c CutList) places(w, n float64) (at []sheet.Rect, height float64, ok bool) {
	x, y, row := 0.0, 0.0, 0.0
	for _, sh := range c.Sheets {
		sw, shh := sh.W/n, sh.H/n
		if sw > w {
			return nil, 0, false
		}
		if x > 0 && x+sw > w {
			x, y, row = 0, y+row+cutGap, 0
		}
		at = append(at, sheet.Rect{X: x, Y: y, W: sw, H: shh})
		x, row = x+sw+cutGap, max(row, shh)
	}
	return at, y + row, true
}

// fit gives the largest scale at which all sheets fit.
func (c CutList) fit(w float64) (n float64, at []sheet.Rect, height float64) {
	most := cutHighest
	if c.Highest > 0 {
		most = c.Highest
	}
	for _, n = range scales {
		var ok bool
		if at, height, ok = c.places(w, n); ok && height <= most {
			return n, at, height
		}
	}
	return n, at, height
}

func (c CutList) words(n float64) []string {
	return []string{c.LeftOver, "1 : " + Number(n, 1)}
}

// Height implements Drawing.
func (c CutList) Height(w float64) float64 {
	n, _, h := c.fit(w)
	return h + 1.5 + keyHeight(w, c.words(n)...)
}

// Draw implements Drawing. Errors: no sheet, a piece off its sheet or over
// another, too little room.
func (c CutList) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "the cut list"
	if len(c.Sheets) == 0 {
		return fmt.Errorf("picture %q: no sheets", name)
	}
	for _, sh := range c.Sheets {
		if err := sh.check(); err != nil {
			return fmt.Errorf("picture %q: %w", name, err)
		}
	}
	if err := enough(c, r, name); err != nil {
		return err
	}
	s.Picture(name)
	n, at, h := c.fit(r.W)
	for i, sh := range c.Sheets {
		box := at[i]
		box.X, box.Y = box.X+r.X, box.Y+r.Y
		s.Rect(box, dotted, sheet.Pen{Width: 0.35, Grey: sheet.Black})
		for _, p := range sh.Pieces {
			c.piece(s, p, sheet.Rect{X: box.X + p.X/n, Y: box.Y + p.Y/n, W: p.W / n, H: p.H / n})
		}
	}
	key(s, sheet.Rect{X: r.X, Y: r.Y + h + 1.5, W: r.W, H: 100}, []entry{swatch(s, c.LeftOver, dotted), {c.words(n)[1], 0, func(sheet.Rect) {}}})
	return s.Err()
}

// Tells reports whether every piece has its size written in it at a width, mm.
func (c CutList) Tells(w float64) bool {
	n, _, _ := c.fit(w)
	for _, sh := range c.Sheets {
		for _, p := range sh.Pieces {
			if !c.tells(p, sheet.Rect{W: p.W / n, H: p.H / n}) {
				return false
			}
		}
	}
	return true
}

// tells reports whether a piece holds its name and its size.
func (c CutList) tells(p CutPiece, r sheet.Rect) bool {
	return sheet.Width(fmt.Sprint(p.Number)+" "+p.Name, nameType) <= r.W-1 && sheet.Width(c.size(p), noteType) <= r.W-1 && r.H >= 2*pitch(noteType)+1
}

func (c CutList) size(p CutPiece) string {
	length := func(mm float64) string {
		if c.Say != nil {
			return c.Say(mm)
		}
		return Number(mm, 1)
	}
	return length(p.W) + " × " + length(p.H)
}

func (sh CutSheet) check() error {
	const slack = 0.5 // mm: what rounding leaves
	if err := sound("a sheet", sh.W, sh.H); err != nil || !(sh.W > 0 && sh.H > 0) {
		return fmt.Errorf("a sheet of %v by %v mm", sh.W, sh.H)
	}
	whole := sheet.Rect{W: sh.W, H: sh.H}.Inset(-slack, -slack, -slack, -slack)
	for i, p := range sh.Pieces {
		at := sheet.Rect{X: p.X, Y: p.Y, W: p.W, H: p.H}
		if err := sound(p.Name, p.X, p.Y, p.W, p.H); err != nil || !(p.W > 0 && p.H > 0) || !whole.Contains(at) {
			return fmt.Errorf("piece %d, %v by %v mm at %v, %v, leaves its sheet of %v by %v", p.Number, p.W, p.H, p.X, p.Y, sh.W, sh.H)
		}
		for _, q := range sh.Pieces[:i] {
			if at.Inset(slack, slack, slack, slack).Overlaps(sheet.Rect{X: q.X, Y: q.Y, W: q.W, H: q.H}) {
				return fmt.Errorf("piece %d lies over piece %d", p.Number, q.Number)
			}
		}
	}
	return nil
}

// piece draws one piece with as much of its words as it holds.
func (c CutList) piece(s sheet.Sheet, p CutPiece, r sheet.Rect) {
	s.Rect(r, open, sheet.Pen{Width: 0.35, Grey: sheet.Black})
	number := fmt.Sprint(p.Number)
	size := c.size(p)
	fits := func(text string, t sheet.Type) bool { return sheet.Width(text, t) <= r.W-1 }
	mid := r.X + r.W/2
	switch full := number + " " + p.Name; {
	case c.tells(p, r):
		s.Text(mid, middle(r.Y+r.H/2-pitch(noteType)/2, nameType), full, nameType.To(sheet.Centre))
		s.Text(mid, middle(r.Y+r.H/2+pitch(noteType)/2, noteType), size, noteType.To(sheet.Centre))
	case fits(number, nameType) && r.H >= pitch(noteType):
		s.Text(mid, middle(r.Y+r.H/2, nameType), number, nameType.To(sheet.Centre))
	}
}
