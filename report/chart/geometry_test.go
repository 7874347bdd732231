package chart

import (
	"fmt"
	"testing"

	"coldreckon/report/sheet"
)

// drawn records a chart in a rectangle of its own page.
func drawn(t *testing.T, c Drawing, r sheet.Rect) (*sheet.Recording, error) {
	t.Helper()
	rec, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		t.Fatal(err)
	}
	rec.AddPage()
	return rec, c.Draw(rec, r)
}

func mustDraw(t *testing.T, c Drawing, r sheet.Rect) *sheet.Recording {
	t.Helper()
	rec, err := drawn(t, c, r)
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// faults tells what is wrong with a drawing: anything outside its rectangle,
// text over text.
func faults(rec *sheet.Recording, r sheet.Rect) []string {
	var out []string
	// Pens and markers are wider than their paths; a millimetre is theirs.
	loose := r.Inset(-1.3, -1.3, -1.3, -1.3)
	for _, o := range rec.Outside(loose) {
		out = append(out, fmt.Sprintf("outside %v: %v", r, o))
	}
	for _, o := range rec.Outside(r) {
		if o.Kind == sheet.TextOp {
			out = append(out, fmt.Sprintf("text outside %v: %v", r, o))
		}
	}
	for _, p := range rec.Collisions() {
		out = append(out, fmt.Sprintf("text over text: %v\n\t%v", p[0], p[1]))
	}
	return out
}
