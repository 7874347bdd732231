package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Kind says what an Op drew.
type Kind string

// The kinds.
const (
	PageOp     Kind = "page"
	TextOp     Kind = "text"
	LineOp     Kind = "line"
	AreaOp     Kind = "area"
	BookmarkOp Kind = "bookmark"
)

// Op is one thing drawn. What its kind has no use for is zero.
type Op struct {
	Kind    Kind
	Page    int     // 1 for the first
	Picture string  // the name in force
	Box     Rect    // what it covers, mm; text from its ascent to its descent, a bookmark its Y only
	Points  []Point // of a line or an area, mm
	Text    string  // as drawn, cleaned; the title of a bookmark
	Type    Type    // of text
	Pen     Pen     // of a line, and of an area's outline
	Fill    Fill    // of an area
	Level   int     // of a bookmark
}

// Recording is a Sheet that keeps what is drawn on it. It refuses what PDF
// refuses.
type Recording struct {
	guard
	paper Paper
	Ops   []Op // in the order drawn
}

// NewRecording starts an empty recording. Errors: a paper that is not known.
func NewRecording(p Paper) (*Recording, error) {
	if _, _, ok := p.Size(); !ok {
		return nil, fmt.Errorf("paper %q is not known; it is %q or %q", p, A4, Letter)
	}
	return &Recording{guard: guard{level: -1}, paper: p}, nil
}

func (r *Recording) add(o Op) {
	o.Page, o.Picture = r.page, r.picture
	r.Ops = append(r.Ops, o)
}

// Paper implements Sheet.
func (r *Recording) Paper() (w, h float64) {
	w, h, _ = r.paper.Size()
	return w, h
}

// AddPage implements Sheet.
func (r *Recording) AddPage() {
	if r.err != nil {
		return
	}
	r.page++
	r.add(Op{Kind: PageOp})
}

// Text implements Sheet.
func (r *Recording) Text(x, baseline float64, s string, t Type) {
	s = Clean(s)
	if !r.readyText(x, baseline, t) || s == "" {
		return
	}
	r.add(Op{Kind: TextOp, Text: s, Type: t, Box: Rect{
		leftEnd(x, s, t), baseline - t.Ascent(), Width(s, t), t.Ascent() + t.Descent(),
	}})
}

// Line implements Sheet.
func (r *Recording) Line(from, to Point, p Pen) { r.Polyline([]Point{from, to}, p) }

// Polyline implements Sheet.
func (r *Recording) Polyline(pts []Point, p Pen) {
	if !r.readyPoints(2, pts, p) || p.Width == 0 {
		return
	}
	r.add(Op{Kind: LineOp, Points: slices.Clone(pts), Box: around(pts), Pen: p})
}

// Rect implements Sheet.
func (r *Recording) Rect(q Rect, f Fill, p Pen) { r.Polygon(corners(q), f, p) }

// Polygon implements Sheet.
func (r *Recording) Polygon(pts []Point, f Fill, p Pen) {
	if !r.readyPoints(3, pts, p) {
		return
	}
	r.add(Op{Kind: AreaOp, Points: slices.Clone(pts), Box: around(pts), Pen: p, Fill: f})
}

// Bookmark implements Sheet.
func (r *Recording) Bookmark(title string, level int, y float64) {
	if r.readyBookmark(level, y) {
		r.add(Op{Kind: BookmarkOp, Text: Clean(title), Level: level, Box: Rect{Y: y}})
	}
}

func around(pts []Point) Rect {
	lo, hi := pts[0], pts[0]
	for _, p := range pts {
		lo = Point{min(lo.X, p.X), min(lo.Y, p.Y)}
		hi = Point{max(hi.X, p.X), max(hi.Y, p.Y)}
	}
	return Rect{lo.X, lo.Y, hi.X - lo.X, hi.Y - lo.Y}
}

// Outside gives what reaches beyond a rectangle, on any page, in the order
// drawn.
func (r *Recording) Outside(within Rect) []Op {
	var out []Op
	for _, o := range r.Ops {
		if o.Kind != PageOp && o.Kind != BookmarkOp && !within.Contains(o.Box) {
			out = append(out, o)
		}
	}
	return out
}

// Collisions gives the pairs of texts on one page that lie over one another.
func (r *Recording) Collisions() [][2]Op {
	var out [][2]Op
	for i, a := range r.Ops {
		if a.Kind != TextOp {
			continue
		}
		for _, b := range r.Ops[i+1:] {
			if b.Kind == TextOp && b.Page == a.Page && a.Box.Overlaps(b.Box) {
				out = append(out, [2]Op{a, b})
			}
		}
	}
	return out
}

// String gives the operation as one line of a golden file, to a tenth of a
// millimetre so that it is the same on every processor.
func (o Op) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d %s", o.Page, o.Kind)
	switch o.Kind {
	case TextOp:
		fmt.Fprintf(&b, " %.1f,%.1f w%.1f %.3gpt %s grey %d %q", o.Box.X, o.Box.Bottom()-o.Type.Descent(), o.Box.W,
			o.Type.Size, cmp.Or(string(o.Type.Face), "regular"), o.Type.Grey, o.Text)
	case LineOp, AreaOp:
		for _, p := range o.Points {
			fmt.Fprintf(&b, " %.1f,%.1f", p.X, p.Y)
		}
		if o.Fill.Texture != None {
			fmt.Fprintf(&b, " fill %s %d", o.Fill.Texture, o.Fill.Grey)
		}
		if o.Pen.Width > 0 {
			fmt.Fprintf(&b, " pen %.2f grey %d", o.Pen.Width, o.Pen.Grey)
		}
		if len(o.Pen.Dash) > 0 {
			fmt.Fprintf(&b, " dash %v", o.Pen.Dash)
		}
	case BookmarkOp:
		fmt.Fprintf(&b, " %d at %.1f %q", o.Level, o.Box.Y, o.Text)
	}
	return b.String()
}

// String gives the whole recording, an operation a line.
func (r *Recording) String() string {
	var b strings.Builder
	for _, o := range r.Ops {
		b.WriteString(o.String())
		b.WriteByte('\n')
	}
	return b.String()
}
