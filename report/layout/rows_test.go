package layout

import (
	"testing"

	"coldreckon/report/sheet"
)

// Rows stand close, are never broken, and go on over the page.
func TestRowsGoOnOverThePage(t *testing.T) {
	const height, many = 31.0, 20
	var rows Rows
	for range many {
		rows = append(rows, OnPaper{Name: "row", Height: high(height), Draw: func(s sheet.Sheet, r sheet.Rect) error {
			s.Rect(r, sheet.Fill{}, sheet.Pen{Width: 0.15, Grey: sheet.Mid})
			return s.Err()
		}})
	}
	r, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		t.Fatal(err)
	}
	doc := Document{}
	doc.Add(rows)
	if err := doc.Draw(r); err != nil {
		t.Fatal(err)
	}
	frame := usual.within(r)
	drawn, pages := 0, map[int]float64{}
	for _, o := range r.Ops {
		if o.Kind != sheet.AreaOp {
			continue
		}
		drawn++
		top, known := pages[o.Page]
		if !known {
			top = frame.Y
		}
		if d := o.Box.Y - top; d > 0.01 || d < -0.01 {
			t.Errorf("row %d begins %.2f mm under the one before", drawn, d)
		}
		if o.Box.Bottom() > frame.Bottom()+0.01 {
			t.Errorf("row %d ends under the frame", drawn)
		}
		pages[o.Page] = o.Box.Bottom()
	}
	if each := int(frame.H / height); drawn != many || len(pages) != (many+each-1)/each {
		t.Errorf("%d rows on %d pages", drawn, len(pages))
	}
}
