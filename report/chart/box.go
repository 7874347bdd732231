package chart

import (
	"cmp"
	"fmt"

	"coldreckon/report/sheet"
)

// BoxSections draws an ice box in two sections to one scale: cut across, seen
// from ahead of it looking aft, and from above with the lid off; with the foam
// there, the board to add inside, and the heat through each face.
type BoxSections struct {
	// The inside as she is, mm: athwartships, fore and aft, and in height.
	Across, Deep, High                        float64
	Lid, Bottom, Inboard, Outboard, Fore, Aft BoxFace
	// Seal and Drain let in heat beside the faces; one without a name is not
	// drawn.
	Seal, Drain BoxLeak
	// Opening is the lid's, mm, athwartships and fore and aft; 0 is not drawn.
	Opening [2]float64
	// Plate is drawn on the inboard side, or aft where the lid is inboard: Front.
	Plate, Front bool
	// Volume stands inside, bold, Was under it, quiet; either may be empty.
	Volume, Was string
	// The words of the drawing.
	Sections               [2]string // over each section
	Foam, Board, PlateName string
	// Unit is the unit of length, mm, in which the scale bar is round; 0 is the
	// millimetre.
	Unit float64
	// Highest is the most that a section's foam may be high on paper, mm; 0 is the
	// usual.
	Highest float64
	// SayLength prints a length given in mm, on the scale bar; nil prints
	// millimetres. SayHeat prints a heat; nil prints a Number.
	SayLength func(mm float64) string
	SayHeat   func(w float64) string
}

// BoxFace is one side of the box.
type BoxFace struct {
	BoxLeak
	Foam, Board float64 // thickness there and to add inside, mm, >= 0
}

// BoxLeak is one way in for heat: W as she is and with the work.
type BoxLeak struct {
	Name, Beyond string // Beyond is what lies outside: "sea 24 °C"; may be empty
	Now, With    float64
}

const (
	sectionsApart = 6.0
	sideMargin    = 20.0 // for the labels left and right of a section, mm
	endMargin     = 13.5 // for those over and under it
	shaftPerW     = 0.9  // width of an arrow a watt, mm
	arrowOut      = 6.0  // how far an arrow begins outside the foam
	arrowIn       = 4.0  // and ends inside the liner
	highestBox    = 78.0 // of a section's foam, mm
	highestOver   = 36.0 // of each where one stands over the other
)

// section is one of the two drawings.
type section struct {
	title                    string
	w, h                     float64 // inside, mm of the box
	left, right, top, bottom BoxFace
	labelled                 [4]bool // left, right, top, bottom
}

func (c BoxSections) sections() [2]section {
	return [2]section{
		{c.Sections[0], c.Across, c.High, c.Outboard, c.Inboard, c.Lid, c.Bottom, [4]bool{true, true, true, true}},
		{c.Sections[1], c.Across, c.Deep, c.Outboard, c.Inboard, c.Fore, c.Aft, [4]bool{false, false, true, true}},
	}
}

func (x section) outer() (w, h float64) {
	return x.w + x.left.Foam + x.right.Foam, x.h + x.top.Foam + x.bottom.Foam
}

// beside reports whether the sections stand side by side.
func (c BoxSections) beside(w float64) bool { return w >= 140 }

func (c BoxSections) column(w float64) float64 {
	if c.beside(w) {
		return (w - sectionsApart) / 2
	}
	return w
}

// scale gives the n of the largest scale, 1 to n, at which both sections fit.
func (c BoxSections) scale(w float64) float64 {
	room, most := c.column(w)-2*sideMargin, highestBox
	if c.Highest > 0 {
		most = c.Highest
	}
	if !c.beside(w) {
		most = highestOver
	}
	for _, n := range scales {
		fits := true
		for _, x := range c.sections() {
			ow, oh := x.outer()
			fits = fits && ow/n <= room && oh/n <= most
		}
		if fits {
			return n
		}
	}
	return scales[len(scales)-1]
}

func (x section) height(n float64) float64 {
	_, h := x.outer()
	return pitch(nameType) + 2*endMargin + h/n
}

// bar is the length of the scale bar, mm of the box.
func (c BoxSections) bar(n float64) float64 {
	unit := max(1, c.Unit)
	return Step(40*n/unit, 1) / 2 * unit
}

// Height implements Drawing.
func (c BoxSections) Height(w float64) float64 {
	n, x := c.scale(w), c.sections()
	h := x[0].height(n) + sectionsApart + x[1].height(n)
	if c.beside(w) {
		h = max(x[0].height(n), x[1].height(n))
	}
	return h + 2 + keyHeight(w-c.barWide(n), c.Foam, c.Board)
}

// Draw implements Drawing. Errors: an inside without extent, foam or heat that
// is no number or below 0, board that fills the box, too little room.
func (c BoxSections) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "the box in section"
	for _, x := range c.sections() {
		if err := sound(name, x.w, x.h); err != nil || !(x.w > 0 && x.h > 0) {
			return fmt.Errorf("picture %q: %v by %v mm inside; both are above 0", name, x.w, x.h)
		}
		for _, f := range []BoxFace{x.left, x.right, x.top, x.bottom} {
			if err := sound(f.Name, f.Foam, f.Board, f.Now, f.With); err != nil || f.Foam < 0 || f.Board < 0 {
				return fmt.Errorf("picture %q: %s has %v and %v mm of foam, %v and %v W", name, f.Name, f.Foam, f.Board, f.Now, f.With)
			}
		}
		if x.left.Board+x.right.Board >= x.w || x.top.Board+x.bottom.Board >= x.h {
			return fmt.Errorf("picture %q: the board to add fills the box", name)
		}
	}
	if err := enough(c, r, name); err != nil {
		return err
	}
	s.Picture(name)
	n, y, w := c.scale(r.W), r.Y, c.column(r.W)
	under := y
	for i, x := range c.sections() {
		at := sheet.Rect{X: r.X, Y: y, W: w, H: x.height(n)}
		inside := c.drawSection(s, x, at, n)
		if i == 0 {
			c.drawVolume(s, inside)
			c.drawLeaks(s, x, inside, at, n)
		} else {
			c.drawPlan(s, inside, n)
		}
		under = max(under, at.Bottom())
		if c.beside(r.W) {
			r.X += w + sectionsApart
		} else {
			y = at.Bottom() + sectionsApart
		}
	}
	if c.beside(r.W) {
		r.X -= 2 * (w + sectionsApart)
	}
	c.drawScaleBar(s, r.X, under+2, n)
	bar := c.barWide(n)
	key(s, sheet.Rect{X: r.X + bar, Y: under + 2, W: r.W - bar, H: 100},
		[]entry{swatch(s, c.Foam, sheet.Shade(sheet.Light)), swatch(s, c.Board, hatched)})
	return s.Err()
}

// drawSection draws foam, board and labelled faces, and gives the room left
// inside.
func (c BoxSections) drawSection(s sheet.Sheet, x section, at sheet.Rect, n float64) sheet.Rect {
	s.Text(at.X, at.Y+lead(nameType), sheet.Shorten(x.title, nameType, at.W), nameType)
	ow, oh := x.outer()
	out := sheet.Rect{X: at.X + (at.W-ow/n)/2, Y: at.Y + pitch(nameType) + endMargin, W: ow / n, H: oh / n}
	liner := out.Inset(x.left.Foam/n, x.top.Foam/n, x.right.Foam/n, x.bottom.Foam/n)
	in := liner.Inset(x.left.Board/n, x.top.Board/n, x.right.Board/n, x.bottom.Board/n)
	s.Rect(out, sheet.Shade(sheet.Light), edgePen)
	if in != liner {
		s.Rect(liner, hatched, edgePen)
	}
	s.Rect(in, open, edgePen)
	if x.labelled[0] {
		y, label := c.sideways(x.left, in, out)
		c.drawArrow(s, x.left.With, sheet.Point{X: out.X - arrowOut, Y: y}, sheet.Point{X: in.X + arrowIn, Y: y})
		c.drawLabel(s, label, at.X, y-c.shaft(x.left.With)/2-2.2, out.X-at.X-0.8, sheet.Left, true)
	}
	if x.labelled[1] {
		y, label := c.sideways(x.right, in, out)
		c.drawArrow(s, x.right.With, sheet.Point{X: out.Right() + arrowOut, Y: y}, sheet.Point{X: in.Right() - arrowIn, Y: y})
		c.drawLabel(s, label, at.Right(), y-c.shaft(x.right.With)/2-2.2, at.Right()-out.Right()-0.8, sheet.Right, true)
	}
	if x.labelled[2] {
		px := in.X + in.W*0.3
		c.drawArrow(s, x.top.With, sheet.Point{X: px, Y: out.Y - arrowOut}, sheet.Point{X: px, Y: in.Y + arrowIn})
		right := px - c.shaft(x.top.With)/2 - 1.8
		c.drawLabel(s, x.top.BoxLeak, right, out.Y-0.8, right-at.X, sheet.Right, true)
	}
	if x.labelled[3] {
		px := in.X + in.W*0.6
		c.drawArrow(s, x.bottom.With, sheet.Point{X: px, Y: out.Bottom() + arrowOut}, sheet.Point{X: px, Y: in.Bottom() - arrowIn})
		left := px + c.shaft(x.bottom.With)/2 + 1.8
		c.drawLabel(s, x.bottom.BoxLeak, left, out.Bottom()+0.8, at.Right()-left, sheet.Left, false)
	}
	return in
}

// sideways gives the height of a level arrow, and what its label says: low
// enough that the label over it stays beside the foam, and in a flat box without
// what lies beyond.
func (c BoxSections) sideways(f BoxFace, in, out sheet.Rect) (y float64, label BoxLeak) {
	label = f.BoxLeak
	if out.H < 32 {
		label.Beyond = ""
	}
	rows := 2.0
	if label.Beyond != "" {
		rows = 3
	}
	return max(in.Y+in.H*0.55, out.Y+rows*pitch(noteType)+2.2+c.shaft(f.With)/2), label
}

// shaft is the width of an arrow, mm.
func (c BoxSections) shaft(w float64) float64 { return min(max(shaftPerW*w, 0.4), 7) }

// drawArrow draws a shaft as wide as its heat from one point to another; a heat
// below nothing turns it round.
func (c BoxSections) drawArrow(s sheet.Sheet, w float64, from, to sheet.Point) {
	if w < 0 {
		from, to, w = to, from, -w
	}
	half, head := c.shaft(w)/2, 2.2
	dx, dy := float64(cmp.Compare(to.X, from.X)), float64(cmp.Compare(to.Y, from.Y))
	end := sheet.Point{X: to.X - dx*head, Y: to.Y - dy*head}
	a, b := sheet.Point{X: min(from.X, end.X), Y: min(from.Y, end.Y)}, sheet.Point{X: max(from.X, end.X), Y: max(from.Y, end.Y)}
	shaft := sheet.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y}
	if dx == 0 {
		shaft.X, shaft.W = shaft.X-half, 2*half
	} else {
		shaft.Y, shaft.H = shaft.Y-half, 2*half
	}
	s.Rect(shaft, solid, sheet.Pen{})
	arrowHead(s, to, dx*head, dy*head, half+1)
}

// drawLabel writes a way in: its name, what lies beyond, and its heat before and
// after, in lines that end at y, or begin there.
func (c BoxSections) drawLabel(s sheet.Sheet, l BoxLeak, x, y, room float64, a sheet.Align, above bool) {
	if l.Name == "" || room < 5 {
		return
	}
	heat := say(c.SayHeat, l.Now, 0.1)
	if after := say(c.SayHeat, l.With, 0.1); after != heat {
		heat += " → " + after
	}
	words := []string{sheet.Shorten(l.Name, noteType, room)}
	if l.Beyond != "" {
		words = append(words, sheet.Shorten(l.Beyond, noteType, room))
	}
	figures := sheet.Wrap(heat, nameType, room)
	if above {
		y -= float64(len(words)+len(figures)) * pitch(noteType)
	}
	y = lines(s, x, y, words, noteType.To(a))
	lines(s, x, y, figures, nameType.To(a))
}

func (c BoxSections) drawVolume(s sheet.Sheet, in sheet.Rect) {
	big := sheet.Type{Size: 13, Face: sheet.Bold, Align: sheet.Centre}
	y := in.Y + in.H*0.34
	if c.Volume != "" && sheet.Width(c.Volume, big) < in.W-2 {
		s.Text(in.X+in.W/2, middle(y, big), c.Volume, big)
	}
	if c.Was != "" && sheet.Width(c.Was, noteType) < in.W-2*arrowIn {
		s.Text(in.X+in.W/2, middle(y+pitch(big)*0.9, noteType), c.Was, noteType.To(sheet.Centre))
	}
}

// drawLeaks draws what comes in beside the faces of the section cut across.
func (c BoxSections) drawLeaks(s sheet.Sheet, x section, in, at sheet.Rect, n float64) {
	if c.Seal.Name != "" {
		px := in.Right() + 1
		top := in.Y - (x.top.Foam+x.top.Board)/n
		c.drawArrow(s, c.Seal.With, sheet.Point{X: px, Y: top - arrowOut}, sheet.Point{X: px, Y: top + 2.4})
		left := px + c.shaft(c.Seal.With)/2 + 1.8
		c.drawLabel(s, c.Seal, left, top-0.8, at.Right()-left, sheet.Left, true)
	}
	if c.Drain.Name != "" {
		px := in.X + in.W*0.16
		low := in.Bottom() + (x.bottom.Foam+x.bottom.Board)/n
		c.drawArrow(s, c.Drain.With, sheet.Point{X: px, Y: low + arrowOut}, sheet.Point{X: px, Y: in.Bottom() - 1})
		right := px - c.shaft(c.Drain.With)/2 - 1.8
		c.drawLabel(s, c.Drain, right, low+0.8, right-at.X, sheet.Right, false)
	}
}

// drawPlan draws what is seen from above.
func (c BoxSections) drawPlan(s sheet.Sheet, in sheet.Rect, n float64) {
	if w, h := c.Opening[0]/n, c.Opening[1]/n; w > 0 && h > 0 && w <= in.W && h <= in.H {
		s.Rect(sheet.Rect{X: in.X + (in.W-w)/2, Y: in.Y + (in.H-h)/2, W: w, H: h}, sheet.Fill{}, dashPen)
	}
	switch {
	case !c.Plate:
	case c.Front:
		y := in.Bottom() - 2.2
		s.Line(sheet.Point{X: in.X + in.W*0.3, Y: y}, sheet.Point{X: in.X + in.W*0.7, Y: y}, heavyPen)
		patched(s, in.X+in.W/2, y-3.4, c.PlateName, noteType.To(sheet.Centre))
	default:
		x := in.Right() - 2.2
		s.Line(sheet.Point{X: x, Y: in.Y + in.H*0.3}, sheet.Point{X: x, Y: in.Y + in.H*0.7}, heavyPen)
		if sheet.Width(c.PlateName, noteType) < in.W-6 {
			patched(s, x-1.6, in.Y+in.H/2, c.PlateName, noteType.To(sheet.Right))
		}
	}
}

// barWords say how long the scale bar is, and the scale.
func (c BoxSections) barWords(n float64) string {
	text := Number(c.bar(n), 1) + " mm"
	if c.SayLength != nil {
		text = c.SayLength(c.bar(n))
	}
	return text + ", 1 : " + Number(n, 1)
}

// barWide is what the scale bar takes beside the key.
func (c BoxSections) barWide(n float64) float64 {
	return c.bar(n)/n + 2 + sheet.Width(c.barWords(n), noteType) + 6
}

func (c BoxSections) drawScaleBar(s sheet.Sheet, x, y, n float64) {
	long := c.bar(n)
	mid := y + 4.6/2 // of the key beside it
	end := x + long/n
	for _, px := range []float64{x, (x + end) / 2, end} {
		s.Line(sheet.Point{X: px, Y: mid - 1}, sheet.Point{X: px, Y: mid + 1}, edgePen)
	}
	s.Line(sheet.Point{X: x, Y: mid}, sheet.Point{X: end, Y: mid}, edgePen)
	s.Text(end+2, middle(mid, noteType), c.barWords(n), noteType)
}
