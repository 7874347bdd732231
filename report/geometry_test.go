package report

import (
	"fmt"
	"os"
	"slices"
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
	doc, err := Printed(in)
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

// printedPDF gives the report as a file.
func printedPDF(in Input) ([]byte, error) {
	doc, err := Printed(in)
	if err != nil {
		return nil, err
	}
	return doc.PDF(sheet.Info{Author: "coldreckon " + in.Version, Lang: in.Reckoning.Boat.Units.Language(), Date: in.Date, Paper: in.Paper})
}

// checkSet holds a drawn report to the promises of the page.
func checkSet(t *testing.T, s *sheet.Recording) {
	t.Helper()
	w, h := s.Paper()
	for _, op := range s.Outside(sheet.Rect{W: w, H: h}.Inset(16, 9, 16, 9)) {
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
}

// sections are the headings of each page.
func sections(s *sheet.Recording) []string {
	var out []string
	for _, op := range s.Ops {
		if op.Kind == sheet.BookmarkOp {
			out = append(out, fmt.Sprintf("%d %s", op.Page, op.Text))
		}
	}
	return out
}

// answered gives a boat whose safety questions are answered.
func answered(b economics.Boat) economics.Boat {
	b.Safety = economics.Safety{FuelVapourSpace: quantity.No, COAlarm: quantity.Yes, Lithium: quantity.No, DrainTo: economics.ToSump, Children: quantity.Yes,
		LatchOpensInside: quantity.No, DryIce: quantity.No, Fish: quantity.No, Eggs: economics.WashedEggs, WiringKnown: quantity.Yes, LeftUnattended: quantity.No}
	return b
}

// onBothPapers draws a report on A4 and on Letter: four well-set pages that hold
// the same sections.
func onBothPapers(t *testing.T, in Input) [2]*sheet.Recording {
	t.Helper()
	var drawn [2]*sheet.Recording
	for i, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
		in.Paper = paper
		drawn[i] = draw(t, in)
		checkSet(t, drawn[i])
		if n := drawn[i].Page(); n != 4 {
			t.Errorf("%s: %d pages; 4 are promised", paper, n)
		}
	}
	if a4, letter := sections(drawn[0]), sections(drawn[1]); !slices.Equal(a4, letter) {
		t.Errorf("sections on A4 are %q, on Letter %q", a4, letter)
	}
	return drawn
}

// longRun reports whether what takes minutes is wanted too.
func longRun() bool { return os.Getenv("COLDRECKON_LONG") != "" }

// inUnits looks at a report in either system of units; outside the long run in
// that whose turn it is.
func inUnits(t *testing.T, name string, turn int, in Input, look func(*testing.T, Input)) {
	for i, units := range []quantity.System{quantity.US, quantity.Metric} {
		if i != turn%2 && !longRun() {
			continue
		}
		t.Run(fmt.Sprintf("%s %s", name, units), func(t *testing.T) {
			r := *in.Reckoning
			r.Boat.Units = units
			in := in
			in.Reckoning = &r
			look(t, in)
		})
	}
}

func TestEveryPageIsWellSet(t *testing.T) {
	for i, boat := range []economics.Boat{weekender(), answered(islander()), liveaboard(), wanderer()} {
		inUnits(t, boat.Name, i, inputOf(t, boat), func(t *testing.T, in Input) {
			onBothPapers(t, in)
			in.Full = true
			checkSet(t, draw(t, in))
		})
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

// Forty cautions, ten of them stops: every stop stands in print, once.
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
	s := draw(t, in)
	checkSet(t, s)
	text := ""
	for _, op := range s.Ops {
		text += op.Text + " "
	}
	for i := 0; i < 40; i += 4 {
		if n := strings.Count(text, fmt.Sprintf("Caution number %d is", i)); n != 1 {
			t.Errorf("stop %d stands %d times", i, n)
		}
	}
}

// A stop that only an unanswered question raises is told as what is not told; one
// that stands whatever is answered is told as a stop.
func TestUnansweredIsNoFact(t *testing.T) {
	b := weekender()
	b.Safety.DryIce, b.Safety.COAlarm, b.Safety.Children, b.Safety.LatchOpensInside = quantity.Unknown, quantity.No, quantity.Yes, quantity.Unknown
	a := must(inputOf(t, b).author())
	own, others := a.stops()
	stops := append(own, others...)
	for _, f := range stops {
		if f.ID == "dry-ice" || f.ID == "child-trap" {
			t.Errorf("%s is told as a fact", f.ID)
		}
	}
	if !slices.ContainsFunc(stops, func(f rules.Finding) bool { return f.ID == "co-charging-blind" }) {
		t.Error("the stop for want of an alarm, which was told, is missing")
	}
	for _, want := range []string{"whether you carry dry ice", "a lid that opens from inside"} {
		if !slices.Contains(a.untold, want) {
			t.Errorf("not told are %q; %q is missing", a.untold, want)
		}
	}
}

// Every caution of the way shown stands in print: at its step, or on page four.
func TestCautionsStandSomewhere(t *testing.T) {
	for _, boat := range []func() economics.Boat{weekender, islander, liveaboard} {
		in := inputOf(t, boat())
		a := must(in.author())
		text := strings.ReplaceAll(must(Document(in)).Markdown(), "\\", "")
		for _, f := range a.findings {
			if f.Grade == rules.Careful && concerns(f, a.o.ID) && !strings.Contains(text, brief(f.Text, 0)) {
				t.Errorf("%s lacks %q", in.Reckoning.Boat.Name, brief(f.Text, 0))
			}
		}
	}
}
