package sheet

import "strings"

// Sheet is paper to draw on. Lengths are millimetres, x to the right and y
// downwards from the top left corner of the page. The first fault is kept,
// later calls draw nothing, and Err tells it. Coordinates must be finite: a
// sheet refuses others, naming the figure.
type Sheet interface {
	// Paper gives the width and height of the page.
	Paper() (w, h float64)
	// AddPage starts a new page; nothing can be drawn before the first.
	AddPage()
	// Page is the number of the current page, 1 for the first, 0 before it.
	Page() int
	// Picture names what is drawn from here on, for error messages.
	Picture(name string)
	// Text draws one line of text with its baseline at y; x is its left end,
	// middle or right end as t.Align says. Runes that cannot be drawn are
	// replaced as Clean says.
	Text(x, baseline float64, s string, t Type)
	// Line draws a straight line.
	Line(from, to Point, p Pen)
	// Polyline draws an open line through two or more points.
	Polyline(pts []Point, p Pen)
	// Rect fills and outlines a rectangle.
	Rect(r Rect, f Fill, p Pen)
	// Polygon fills and outlines a closed shape of three or more points.
	Polygon(pts []Point, f Fill, p Pen)
	// Bookmark adds an entry to the outline that leads to height y of the
	// current page. Levels start at 0 and must not skip one on the way down.
	Bookmark(title string, level int, y float64)
	// Err is the first fault, nil if there was none.
	Err() error
}

// Point is a place on the page, mm.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle, mm; X, Y is its top left corner.
type Rect struct{ X, Y, W, H float64 }

// Right is the x of the right edge.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom is the y of the lower edge.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Inset moves the edges inwards, in the order left, top, right, bottom.
func (r Rect) Inset(left, top, right, bottom float64) Rect {
	return Rect{r.X + left, r.Y + top, r.W - left - right, r.H - top - bottom}
}

// Contains reports whether q lies in r, with a hundredth of a millimetre to spare.
func (r Rect) Contains(q Rect) bool {
	const slack = 0.01
	return q.X >= r.X-slack && q.Y >= r.Y-slack &&
		q.Right() <= r.Right()+slack && q.Bottom() <= r.Bottom()+slack
}

// Overlaps reports whether the two share more than a hundredth of a
// millimetre in both directions.
func (r Rect) Overlaps(q Rect) bool {
	const slack = 0.01
	return r.X+slack < q.Right() && q.X+slack < r.Right() &&
		r.Y+slack < q.Bottom() && q.Y+slack < r.Bottom()
}

// Grey is a shade, 0 black to 255 white.
type Grey uint8

// The shades in use, dark to light. Each step survives a poor photocopier.
const (
	Black Grey = 0
	Dark  Grey = 70  // secondary text and lines; over 7:1 contrast on white
	Mid   Grey = 130 // the middle of a fill
	Light Grey = 190 // hairlines, bands
	Pale  Grey = 228 // the lightest fill still seen on a copy
	White Grey = 255
)

// Pen is how a line is drawn. The zero Pen draws nothing.
type Pen struct {
	Width float64   // mm; 0 draws nothing
	Grey  Grey      // shade
	Dash  []float64 // mm on, mm off, ...; nil is solid
}

// Texture is how an area is filled.
type Texture string

// The textures. Hatches are drawn as lines of the fill's shade on white.
const (
	None   Texture = ""       // not filled
	Solid  Texture = "solid"  // even shade
	Rising Texture = "rising" // lines from lower left to upper right
	Dots   Texture = "dots"   // dots
)

// Fill is how an area is filled. The zero Fill leaves it open.
type Fill struct {
	Texture Texture
	Grey    Grey // of an even fill, or of the hatch lines
}

// Shade fills evenly with one grey.
func Shade(g Grey) Fill { return Fill{Solid, g} }

// Align says which point of a line of text its x gives.
type Align string

// The alignments.
const (
	Left   Align = "" // x is the left end
	Centre Align = "centre"
	Right  Align = "right"
)

// Face is one of the three embedded faces.
type Face string

// The faces. Digits have equal width in each.
const (
	Regular Face = ""
	Bold    Face = "bold"
	Italic  Face = "italic"
)

// Faces lists the embedded faces.
var Faces = [3]Face{Regular, Bold, Italic}

// Type is how text is set: by default regular, black, from its left end.
type Type struct {
	Face  Face
	Size  float64 // points, 1/72 inch; must be > 0
	Grey  Grey
	Align Align
}

// In gives the same type in another face.
func (t Type) In(f Face) Type { t.Face = f; return t }

// To gives the same type with another alignment.
func (t Type) To(a Align) Type { t.Align = a; return t }

// MMPerPoint converts type sizes to lengths: 1 pt = 1/72 inch, 1 inch = 25.4 mm.
const MMPerPoint = 25.4 / 72

// Ascent is how far text reaches above its baseline, mm. It covers capitals
// and digits of the Go faces (cap height 1480/2048 em).
func (t Type) Ascent() float64 { return 0.75 * t.Size * MMPerPoint }

// Descent is how far text reaches below its baseline, mm (432/2048 em).
func (t Type) Descent() float64 { return 0.21 * t.Size * MMPerPoint }

// Paper is a size of page.
type Paper string

// The papers.
const (
	A4     Paper = "a4"     // ISO 216: 210 x 297 mm
	Letter Paper = "letter" // ANSI/ASME Y14.1: 8.5 x 11 in
)

// across marks a paper laid on its side.
const across = " landscape"

// Landscape gives the paper laid on its side; one that lies there stays.
func (p Paper) Landscape() Paper {
	if strings.HasSuffix(string(p), across) {
		return p
	}
	return p + across
}

// twice marks a paper of twice the area.
const twice = " twice"

// Twice gives the paper of twice the area, such as A3, and how many times as
// large the same page comes out on it.
func (p Paper) Twice() (large Paper, times float64) {
	large = p + twice
	w, h, _ := p.Size()
	w2, h2, _ := large.Size()
	return large, min(w2/w, h2/h)
}

// Size gives the page's width and height in mm; ok is false for a paper that is
// not known.
func (p Paper) Size() (w, h float64, ok bool) {
	if upright, found := strings.CutSuffix(string(p), across); found {
		h, w, ok = Paper(upright).Size()
		return w, h, ok
	}
	if half, found := strings.CutSuffix(string(p), twice); found {
		if w, h, ok = Paper(half).Size(); w > h {
			return 2 * h, w, ok
		}
		return h, 2 * w, ok
	}
	switch p {
	case A4:
		return 210, 297, true
	case Letter:
		return 8.5 * 25.4, 11 * 25.4, true
	}
	return 0, 0, false
}
