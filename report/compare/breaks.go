package compare

import (
	"slices"

	"coldreckon/report/layout"
	"coldreckon/report/sheet"
)

// laid sets the sections behind the board: new pages begin where all then take
// the fewest, none of them nearly empty, on either paper.
func (t *Table) laid(d layout.Document, sections [][]layout.Block) layout.Document {
	set := func(begins int, close bool) layout.Document { // a bit for each section that begins a page
		out := d
		out.Parts = [][]layout.Block{slices.Clone(d.Parts[0])}
		for i, blocks := range sections {
			if close {
				blocks = []layout.Block{layout.Close(blocks)}
			}
			if begins>>i&1 == 1 {
				out.Part(blocks...)
			} else {
				out.Add(blocks...)
			}
		}
		return out
	}
	if len(t.Rows) > manyBoats {
		return set(1, false)
	}
	best := set(0, true)
	least, ok := scored(best) // in the fewest pages
	if !ok {
		return best
	}
	goal := least.pages
	for _, close := range []bool{false, true} {
		for begins := 1<<len(sections) - 1; begins >= 0; begins-- {
			try := set(begins, close)
			s, ok := scored(try)
			if ok && s.better(least) {
				best, least = try, s
			}
			if ok && s.pages == goal && s.filled >= nearlyEmpty && (!s.differ || len(t.Rows) > fewBoats) {
				return try
			}
		}
	}
	return best
}

// manyBoats fill so many pages that one with room to spare is none too many.
const manyBoats = 40

// score tells how a document lies on its pages, the worse of both papers.
type score struct {
	differ bool    // the papers hold other headings on their pages
	pages  int     // how many it takes
	filled float64 // height that ink takes on the emptiest page, mm
}

// nearlyEmpty is a page with less on it, mm.
const nearlyEmpty = 60

func (s score) better(than score) bool {
	sparse := s.filled < nearlyEmpty
	switch {
	case s.pages != than.pages:
		return s.pages < than.pages
	case sparse != (than.filled < nearlyEmpty):
		return !sparse
	case s.differ != than.differ:
		return than.differ
	}
	return sparse && s.filled > than.filled
}

// scored draws a document on both papers; false where one cannot hold it.
func scored(d layout.Document) (score, bool) {
	out := score{filled: 1e9}
	var places [2][]sheet.Op
	for i, paper := range []sheet.Paper{sheet.Letter.Landscape(), sheet.A4.Landscape()} {
		s, err := sheet.NewRecording(paper)
		if err != nil || d.Draw(s) != nil {
			return out, false
		}
		out.pages = max(out.pages, s.Page())
		_, high := s.Paper()
		filled := make([]float64, s.Page())
		for _, op := range s.Ops {
			if op.Kind == sheet.BookmarkOp {
				places[i] = append(places[i], sheet.Op{Page: op.Page, Text: op.Text})
			}
			if foot := high - d.Margins.Bottom; op.Box.Bottom() <= foot && op.Page > 0 {
				filled[op.Page-1] = max(filled[op.Page-1], op.Box.Bottom()-d.Margins.Top)
			}
		}
		out.filled = min(out.filled, slices.Min(filled))
	}
	out.differ = !slices.EqualFunc(places[0], places[1], func(x, y sheet.Op) bool { return x.Page == y.Page && x.Text == y.Text })
	return out, true
}
