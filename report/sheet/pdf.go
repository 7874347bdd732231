package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"time"

	"github.com/jung-kurt/gofpdf"
)

// Info describes a document to the programs that open it. Title, Author and
// Subject may be empty; they are cleaned as Clean says.
type Info struct {
	Title   string // what viewers show in place of the file's name
	Author  string
	Subject string // what the document is about, one sentence
	// Lang is the language of the text as a BCP 47 tag, such as en-GB.
	Lang string
	// Date is the day of making, required. It is written in UTC: the library
	// has no room for a zone.
	Date  time.Time
	Paper Paper // of every page
}

// PDF is a Sheet that becomes a PDF file: real text in embedded subsets of
// the faces, an outline, no structure tree. The same calls give the same bytes.
type PDF struct {
	guard
	doc  *gofpdf.Fpdf
	info Info
}

var languageTag = regexp.MustCompile(`^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$`)

// NewPDF starts an empty document. Errors: a paper that is not known, a
// language that is no tag, no date, a face that cannot be embedded.
func NewPDF(info Info) (p *PDF, err error) {
	w, h, ok := info.Paper.Size()
	if !ok {
		return nil, fmt.Errorf("paper %q is not known; it is %q or %q", info.Paper, A4, Letter)
	}
	if !languageTag.MatchString(info.Lang) {
		return nil, fmt.Errorf("language %q is no tag; a tag looks like en-GB", info.Lang)
	}
	if info.Date.IsZero() {
		return nil, errors.New("the document has no date; the caller gives it")
	}
	p = &PDF{guard: guard{level: -1}, info: info}
	p.do(func() {
		d := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: w, Ht: h}})
		p.doc = d
		d.SetAutoPageBreak(false, 0)
		d.SetMargins(0, 0, 0)
		d.SetCatalogSort(true) // map order would otherwise reach the file
		d.SetCreationDate(info.Date.UTC())
		d.SetModificationDate(info.Date.UTC())
		d.SetTitle(Clean(info.Title), true)
		d.SetAuthor(Clean(info.Author), true)
		d.SetSubject(Clean(info.Subject), true)
		d.SetCreator("coldreckon", true)
		d.SetProducer("coldreckon", true)
		for _, f := range Faces {
			// The library keeps and may reorder the bytes: give it its own.
			d.AddUTF8FontFromBytes(family, style(f), bytes.Clone(files()[f]))
			// A font that fails to load is only reported once it is used.
			d.SetFont(family, style(f), 10)
		}
		d.SetLineCapStyle("butt")
		d.SetLineJoinStyle("round")
	})
	return p, p.err
}

// family is the name of the faces inside the file.
const family = "go"

func style(f Face) string {
	switch f {
	case Bold:
		return "B"
	case Italic:
		return "I"
	}
	return ""
}

// do runs calls into the library: a panic and the library's own kept error
// both become ours.
func (p *PDF) do(calls func()) {
	defer func() {
		if r := recover(); r != nil {
			p.fail("the PDF library failed: %v", r)
		}
	}()
	if p.err != nil {
		return
	}
	calls()
	if err := p.doc.Error(); err != nil {
		p.fail("the PDF library failed: %w", err)
	}
}

// Paper implements Sheet.
func (p *PDF) Paper() (w, h float64) {
	w, h, _ = p.info.Paper.Size()
	return w, h
}

// AddPage implements Sheet.
func (p *PDF) AddPage() {
	p.do(func() {
		p.doc.AddPage()
		p.page++
	})
}

// Text implements Sheet.
func (p *PDF) Text(x, baseline float64, s string, t Type) {
	s = Clean(s)
	if !p.readyText(x, baseline, t) || s == "" {
		return
	}
	p.do(func() {
		p.doc.SetFont(family, style(t.Face), t.Size)
		p.doc.SetTextColor(int(t.Grey), int(t.Grey), int(t.Grey))
		p.doc.Text(leftEnd(x, s, t), baseline, s)
	})
}

// leftEnd is where a line of text starts.
func leftEnd(x float64, s string, t Type) float64 {
	switch t.Align {
	case Centre:
		return x - Width(s, t)/2
	case Right:
		return x - Width(s, t)
	}
	return x
}

// Line implements Sheet.
func (p *PDF) Line(from, to Point, pen Pen) { p.Polyline([]Point{from, to}, pen) }

// Polyline implements Sheet.
func (p *PDF) Polyline(pts []Point, pen Pen) {
	if !p.readyPoints(2, pts, pen) || pen.Width == 0 {
		return
	}
	p.do(func() {
		p.take(pen)
		p.doc.MoveTo(pts[0].X, pts[0].Y)
		for _, q := range pts[1:] {
			p.doc.LineTo(q.X, q.Y)
		}
		p.doc.DrawPath("D")
	})
}

// Rect implements Sheet.
func (p *PDF) Rect(r Rect, f Fill, pen Pen) { p.Polygon(corners(r), f, pen) }

// Polygon implements Sheet.
func (p *PDF) Polygon(pts []Point, f Fill, pen Pen) {
	if !p.readyPoints(3, pts, pen) {
		return
	}
	p.do(func() {
		if f.Texture != None {
			ground := f.Grey
			if f.Texture != Solid {
				ground = White
			}
			p.doc.SetFillColor(int(ground), int(ground), int(ground))
			p.trace(pts)
			p.doc.DrawPath("F")
		}
		if lines := hatchLines(pts, f.Texture); len(lines) > 0 {
			p.take(hatchPen(f))
			for _, l := range lines {
				p.doc.MoveTo(l[0].X, l[0].Y)
				p.doc.LineTo(l[1].X, l[1].Y)
			}
			p.doc.DrawPath("D")
		}
		if pen.Width > 0 {
			p.take(pen)
			p.trace(pts)
			p.doc.DrawPath("D")
		}
	})
}

func (p *PDF) trace(pts []Point) {
	p.doc.MoveTo(pts[0].X, pts[0].Y)
	for _, q := range pts[1:] {
		p.doc.LineTo(q.X, q.Y)
	}
	p.doc.ClosePath()
}

func (p *PDF) take(pen Pen) {
	p.doc.SetLineWidth(pen.Width)
	p.doc.SetDrawColor(int(pen.Grey), int(pen.Grey), int(pen.Grey))
	p.doc.SetDashPattern(pen.Dash, 0)
}

// Bookmark implements Sheet.
func (p *PDF) Bookmark(title string, level int, y float64) {
	if !p.readyBookmark(level, y) {
		return
	}
	p.do(func() { p.doc.Bookmark(Clean(title), level, y) })
}

// Bytes closes the document and gives the file. Call it once, last.
// Errors: the first fault of the drawing, or of the library.
func (p *PDF) Bytes() ([]byte, error) {
	if p.page == 0 {
		p.fail("the document has no page")
	}
	var out bytes.Buffer
	p.do(func() {
		if err := p.doc.Output(&out); err != nil {
			p.fail("the PDF library failed: %w", err)
		}
	})
	if p.err != nil {
		return nil, p.err
	}
	return describe(out.Bytes(), p.info.Lang)
}
