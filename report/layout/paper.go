package layout

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Margins are the white edges of a page, mm.
type Margins struct{ Side, Top, Bottom float64 }

// usual are the margins where nothing else is told. The running head and foot
// stand in them.
var usual = Margins{Side: 22, Top: 24, Bottom: 22}

const (
	runTop    = 13.0 // baseline of the running head
	runBottom = 12.0 // baseline of the foot above the paper's edge
)

// shrunk is how much smaller margins are on paper less wide than 210 mm, as that
// of large print is before it is enlarged.
func shrunk(s sheet.Sheet) float64 {
	w, _ := s.Paper()
	return min(1, w/210)
}

// within is the part of a page inside the margins.
func (m Margins) within(s sheet.Sheet) sheet.Rect {
	if m == (Margins{}) {
		m = usual
	}
	w, h := s.Paper()
	k := shrunk(s)
	return sheet.Rect{W: w, H: h}.Inset(k*m.Side, k*m.Top, k*m.Side, k*m.Bottom)
}

// Draw sets the document on a sheet. Errors: a block that fits no page, a
// picture that cannot be drawn, or the sheet's first fault.
func (d Document) Draw(s sheet.Sheet) error {
	d, s = d.worded(), d.enlarge(s)
	frame := d.Margins.within(s)
	pages, err := d.pages(frame)
	if err != nil {
		return err
	}
	for i, p := range pages {
		s.AddPage()
		d.drawEdges(s, frame, i+1, len(pages))
		if err := p.draw(s, frame.X, frame.Y, frame.W); err != nil {
			return fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	return s.Err()
}

// Pages counts the pages that the document takes on a sheet, and draws nothing.
// Errors: a block that fits no page.
func (d Document) Pages(s sheet.Sheet) (int, error) {
	pages, err := d.worded().pages(d.Margins.within(d.enlarge(s)))
	return len(pages), err
}

// enlarge gives the sheet on which all is drawn as large as is asked for.
func (d Document) enlarge(s sheet.Sheet) sheet.Sheet {
	if d.Enlarged > 1 {
		return sheet.Enlarge(s, d.Enlarged)
	}
	return s
}

// PDF makes the file. Title and subject of info are replaced by the document's.
// Errors: what sheet.NewPDF and Draw give.
func (d Document) PDF(info sheet.Info) ([]byte, error) {
	info.Title, info.Subject = d.Title, d.Subject
	p, err := sheet.NewPDF(info)
	if err != nil {
		return nil, err
	}
	if err := d.Draw(p); err != nil {
		return nil, err
	}
	return p.Bytes()
}

func (d Document) pages(frame sheet.Rect) ([]flow, error) {
	w, h := frame.W, frame.H
	var pages []flow
	for _, part := range d.Parts {
		var rest flow = setAll(part)
		for rest.height(w) > h {
			head, tail := rest.split(w, h, h)
			if head == nil {
				head, tail = rest.split(w, h, 0)
			}
			if head == nil {
				return nil, fmt.Errorf("page %d: %s fits no page %.0f mm high", len(pages)+1, describe(rest), h)
			}
			pages, rest = append(pages, head), tail
		}
		if s, ok := rest.(stack); !ok || len(s) > 0 {
			pages = append(pages, rest)
		}
	}
	return pages, nil
}

// describe names the block that leads a part, for an error.
func describe(b flow) string {
	switch b := b.(type) {
	case stack:
		for _, inner := range b {
			if _, ok := inner.(title); !ok {
				return describe(inner)
			}
		}
	case together:
		return describe(b.stack)
	case drawing:
		return fmt.Sprintf("picture %q", b.name)
	}
	return fmt.Sprintf("a %T", b)
}

func (d Document) drawEdges(s sheet.Sheet, frame sheet.Rect, page, of int) {
	_, h := s.Paper()
	if page > 1 {
		s.Text(frame.X, shrunk(s)*runTop, sheet.Shorten(d.Title, Run, frame.W), Run)
	}
	number := fmt.Sprintf("Page %d of %d", page, of)
	s.Text(frame.Right(), h-shrunk(s)*runBottom, number, Run.To(sheet.Right))
	s.Text(frame.X, h-shrunk(s)*runBottom, sheet.Shorten(d.Foot, Run, frame.W-sheet.Width(number, Run)-8), Run)
}
