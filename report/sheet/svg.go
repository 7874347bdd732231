package sheet

import (
	"errors"
	"fmt"
	"html"
	"strconv"
	"strings"
)

// SVG is a Sheet of one page that becomes a picture inside an HTML page (SVG 1.1,
// second edition). Black is the colour of the text around it, white that of the
// page, through the classes paper and paper-line, so that it follows a dark
// screen.
type SVG struct {
	guard
	width, height float64
	body          strings.Builder
}

// NewSVG starts an empty picture, w by h mm. Errors: a side that is not above 0.
func NewSVG(w, h float64) (*SVG, error) {
	if !(w > 0 && h > 0) {
		return nil, fmt.Errorf("a picture of %v by %v mm; both are above 0", w, h)
	}
	return &SVG{guard: guard{level: -1}, width: w, height: h}, nil
}

// Paper implements Sheet.
func (v *SVG) Paper() (w, h float64) { return v.width, v.height }

// AddPage implements Sheet.
func (v *SVG) AddPage() {
	if v.page > 0 {
		v.fail("a picture has one page")
		return
	}
	v.page = 1
}

// millimetres writes lengths to a hundredth.
func millimetres(numbers ...float64) string {
	var out []string
	for _, x := range numbers {
		text := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(x, 'f', 2, 64), "0"), ".")
		if text == "-0" {
			text = "0"
		}
		out = append(out, text)
	}
	return strings.Join(out, " ")
}

// paint gives the attributes of a shade for fill or stroke.
func paint(what string, g Grey) string {
	switch {
	case g == White && what == "fill":
		return ` class="paper"`
	case g == White:
		return ` class="paper-line"`
	case g == Black:
		return ` ` + what + `="currentColor"`
	}
	return fmt.Sprintf(` %s="currentColor" %s-opacity="%.2f"`, what, what, 1-float64(g)/255)
}

// Text implements Sheet.
func (v *SVG) Text(x, baseline float64, s string, t Type) {
	s = Clean(s)
	if !v.readyText(x, baseline, t) || s == "" {
		return
	}
	style := ""
	switch t.Face {
	case Bold:
		style = ` font-weight="bold"`
	case Italic:
		style = ` font-style="italic"`
	}
	switch t.Align {
	case Centre:
		style += ` text-anchor="middle"`
	case Right:
		style += ` text-anchor="end"`
	}
	fmt.Fprintf(&v.body, `<text x="%s" y="%s" font-size="%s"%s%s>%s</text>`, millimetres(x), millimetres(baseline),
		millimetres(t.Size*MMPerPoint), style, paint("fill", t.Grey), html.EscapeString(s))
}

func (v *SVG) stroke(p Pen) string {
	out := paint("stroke", p.Grey) + ` stroke-width="` + millimetres(p.Width) + `"`
	if len(p.Dash) > 0 {
		out += ` stroke-dasharray="` + millimetres(p.Dash...) + `"`
	}
	return out
}

func path(pts []Point) string {
	var out strings.Builder
	for i, p := range pts {
		out.WriteByte("ML"[min(i, 1)])
		out.WriteString(millimetres(p.X, p.Y))
	}
	return out.String()
}

// Line implements Sheet.
func (v *SVG) Line(from, to Point, p Pen) { v.Polyline([]Point{from, to}, p) }

// Polyline implements Sheet.
func (v *SVG) Polyline(pts []Point, p Pen) {
	if !v.readyPoints(2, pts, p) || p.Width == 0 {
		return
	}
	fmt.Fprintf(&v.body, `<path d="%s" fill="none" stroke-linejoin="round"%s/>`, path(pts), v.stroke(p))
}

// Rect implements Sheet.
func (v *SVG) Rect(r Rect, f Fill, p Pen) { v.Polygon(corners(r), f, p) }

// Polygon implements Sheet.
func (v *SVG) Polygon(pts []Point, f Fill, p Pen) {
	if !v.readyPoints(3, pts, p) {
		return
	}
	if f.Texture != None {
		ground := f.Grey
		if f.Texture != Solid {
			ground = White
		}
		fmt.Fprintf(&v.body, `<path d="%sZ"%s/>`, path(pts), paint("fill", ground))
	}
	if lines := hatchLines(pts, f.Texture); len(lines) > 0 {
		var d strings.Builder
		for _, l := range lines {
			d.WriteString(path(l[:]))
		}
		fmt.Fprintf(&v.body, `<path d="%s" fill="none"%s/>`, d.String(), v.stroke(hatchPen(f)))
	}
	if p.Width > 0 {
		fmt.Fprintf(&v.body, `<path d="%sZ" fill="none" stroke-linejoin="round"%s/>`, path(pts), v.stroke(p))
	}
}

// Bookmark implements Sheet; a picture has no outline.
func (v *SVG) Bookmark(string, int, float64) {}

// Markup closes the picture and gives its element. id must be the page's own;
// title says what it is and text what it shows, to those who cannot see it.
// Errors: the first fault of the drawing, or no title.
func (v *SVG) Markup(id, title, text string) (string, error) {
	if v.err == nil && strings.TrimSpace(title) == "" {
		return "", errors.New("a picture needs a title for those who cannot see it")
	}
	if v.err != nil {
		return "", v.err
	}
	id, labels, desc := html.EscapeString(id), html.EscapeString(id)+"t", ""
	if text != "" {
		labels += " " + id + "d"
		desc = `<desc id="` + id + `d">` + html.EscapeString(Clean(text)) + `</desc>`
	}
	return fmt.Sprintf(`<svg viewBox="0 0 %s" role="img" aria-labelledby="%s"><title id="%st">%s</title>%s%s</svg>`,
		millimetres(v.width, v.height), labels, id, html.EscapeString(Clean(title)), desc, v.body.String()), nil
}
