package report

import (
	"fmt"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

// draw records a report as it would be printed.
func draw(t *testing.T, in Input) *sheet.Recording {
	t.Helper()
	doc, err := in.printed()
	if err != nil {
		t.Fatal(err)
	}
	s, err := sheet.NewRecording(in.Paper)
	if err != nil {
		t.Fatal(err)
	}
	if err := doc.Draw(s); err != nil {
		t.Fatal(err)
	}
	return s
}

// pageOf is the page of a bookmark, 0 if there is none.
func pageOf(s *sheet.Recording, title string) int {
	for _, op := range s.Ops {
		if op.Kind == sheet.BookmarkOp && op.Text == title {
			return op.Page
		}
	}
	return 0
}

// checkSet holds a drawn report to the promises of the page.
func checkSet(t *testing.T, s *sheet.Recording) {
	t.Helper()
	w, h := s.Paper()
	for _, op := range s.Outside(sheet.Rect{W: w, H: h}.Inset(20, 9, 20, 9)) {
		t.Errorf("page %d: outside the margins: %s", op.Page, op)
	}
	for _, op := range s.Ops {
		if strings.ContainsRune(op.Text, sheet.Fallback) {
			t.Errorf("page %d: %q holds a sign that the faces lack", op.Page, op.Text)
		}
	}
	for _, pair := range s.Collisions() {
		t.Errorf("page %d: %q over %q", pair[0].Page, pair[0].Text, pair[1].Text)
	}
	if p := pageOf(s, "As she is, and with the work"); p != 2 {
		t.Errorf("page one ends on page %d", p-1)
	}
	if p := pageOf(s, "Appendix"); p < 3 || p > readerPages+1 {
		t.Errorf("the appendix starts on page %d; at most %d pages are for the reader", p, readerPages)
	}
}

func TestEveryPageIsWellSet(t *testing.T) {
	for _, boat := range []func() economics.Boat{weekender, islander, liveaboard} {
		in := inputOf(t, boat())
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			for _, units := range []quantity.System{quantity.US, quantity.Metric} {
				t.Run(fmt.Sprintf("%s %s %s", in.Reckoning.Boat.Name, paper, units), func(t *testing.T) {
					in := in
					r := *in.Reckoning
					r.Boat.Units = units
					in.Reckoning, in.Paper = &r, paper
					checkSet(t, draw(t, in))
				})
			}
		}
	}
}

func TestHardCasesAreWellSet(t *testing.T) {
	for name, change := range hard {
		t.Run(name, func(t *testing.T) {
			b := weekender()
			change(&b)
			in := inputOf(t, b)
			for _, in.Paper = range []sheet.Paper{sheet.A4, sheet.Letter} {
				checkSet(t, draw(t, in))
			}
		})
	}
}

// Forty cautions, ten of them stops: seven stand up front, all in the list.
func TestFortyCautions(t *testing.T) {
	in := inputOf(t, weekender())
	in.Pack.Cautions = nil
	for i := range 40 {
		grade := []rules.Grade{rules.Stop, rules.Careful, rules.Careful, rules.WorthANote}[i%4]
		in.Pack.Cautions = append(in.Pack.Cautions, rules.Caution{
			ID: fmt.Sprintf("made-up-%d", i), Grade: grade, When: always{}, Source: "made up for a test",
			Text: fmt.Sprintf("Caution number %d is as long as cautions are. It says what can go wrong, whom it can hurt, and what to do instead. Whoever holds a licence for it has the last word.", i),
		})
	}
	in.Paper = sheet.Letter
	checkSet(t, draw(t, in))
	a, err := in.author()
	if err != nil {
		t.Fatal(err)
	}
	front := upFront(a.findings, in.Reckoning.Answer.Way())
	if len(a.findings) != 40 || len(front) != mostUpFront {
		t.Fatalf("%d cautions fired and %d stand up front; want 40 and %d", len(a.findings), len(front), mostUpFront)
	}
	for _, f := range front {
		if f.Grade != rules.Stop {
			t.Errorf("%s stands up front while a stop does not", f.ID)
		}
	}
}

// Stops come first, the answer's own before the others', then its cautions.
func TestUpFrontOrder(t *testing.T) {
	findings := []rules.Finding{
		{ID: "ice-stop", Grade: rules.Stop, Options: []economics.OptionID{economics.IceOnly}},
		{ID: "small-stop", Grade: rules.Stop, Options: []economics.OptionID{economics.SmallUnit}},
		{ID: "ice-caution", Grade: rules.Careful, Options: []economics.OptionID{economics.IceOnly}},
		{ID: "all-caution", Grade: rules.Careful},
		{ID: "small-note", Grade: rules.WorthANote, Options: []economics.OptionID{economics.SmallUnit}},
	}
	got := ""
	for _, f := range upFront(findings, economics.SmallUnit) {
		got += f.ID + " "
	}
	if want := "small-stop ice-stop all-caution small-note "; got != want {
		t.Errorf("up front stand %s; want %s", got, want)
	}
}
