package layout

import (
	"fmt"

	"coldreckon/report/sheet"
)

// The margins of every page, mm. The running head and foot stand in them.
const (
	marginSide   = 22.0
	marginTop    = 24.0
	marginBottom = 22.0
	runTop       = 13.0 // baseline of the running head
	runBottom    = 12.0 // baseline of the foot above the paper's edge
)

// Document is a text to be printed. The zero Document is empty and ready to
// be added to.
type Document struct {
	// Running is the head of every page but the first; it is shortened if
	// it is too long.
	Running string
	// Foot stands at the left of every foot, shortened if it is too long.
	// At the right stands the page's number.
	Foot string

	parts []Stack // each starts on a new page
}

// Add appends blocks below those already there.
func (d *Document) Add(blocks ...Block) {
	if len(d.parts) == 0 {
		d.parts = []Stack{nil}
	}
	last := &d.parts[len(d.parts)-1]
	*last = append(*last, blocks...)
}

// Break starts a new page with what is added next. It does nothing where no
// block was added since the last one.
func (d *Document) Break() {
	if n := len(d.parts); n > 0 && len(d.parts[n-1]) > 0 {
		d.parts = append(d.parts, nil)
	}
}

// Frame is the part of a page that blocks are set in, mm: the paper within its
// margins.
func Frame(s sheet.Sheet) sheet.Rect {
	w, h := s.Paper()
	return sheet.Rect{W: w, H: h}.Inset(marginSide, marginTop, marginSide, marginBottom)
}

// Draw lays the document out and draws it. Errors: a block that fits no
// page, a figure that cannot be drawn, or the sheet's first fault.
func (d *Document) Draw(s sheet.Sheet) error {
	frame := Frame(s)
	pages, err := d.pages(frame.W, frame.H)
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

func (d *Document) pages(w, h float64) ([]Block, error) {
	var pages []Block
	for _, part := range d.parts {
		var rest Block = part
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
		if s, ok := rest.(Stack); !ok || len(s) > 0 {
			pages = append(pages, rest)
		}
	}
	return pages, nil
}

// describe names the block that leads a part, for an error.
func describe(b Block) string {
	switch b := b.(type) {
	case Stack:
		for _, inner := range b {
			if _, ok := inner.(Heading); !ok {
				return describe(inner)
			}
		}
	case together:
		return describe(b.Stack)
	case Figure:
		return fmt.Sprintf("figure %q", b.Name)
	}
	return fmt.Sprintf("a %T", b)
}

func (d *Document) drawEdges(s sheet.Sheet, frame sheet.Rect, page, of int) {
	_, h := s.Paper()
	if page > 1 {
		s.Text(frame.X, runTop, sheet.Shorten(d.Running, Run, frame.W), Run)
	}
	number := fmt.Sprintf("Page %d of %d", page, of)
	s.Text(frame.Right(), h-runBottom, number, Run.To(sheet.Right))
	s.Text(frame.X, h-runBottom, sheet.Shorten(d.Foot, Run, frame.W-sheet.Width(number, Run)-8), Run)
}
