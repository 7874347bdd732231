package main

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/rules"
	"coldreckon/wizard/questions"
)

// printed runs the command and gives what it puts on standard output.
func printed(t *testing.T, args ...string) []byte {
	t.Helper()
	var said, faults bytes.Buffer
	env := func(name string) string { return map[string]string{"SOURCE_DATE_EPOCH": "1750000000"}[name] }
	if code := Main(append([]string{"questions"}, args...), env, strings.NewReader(""), &said, &faults); code != exitDone {
		t.Fatalf("%v: exit code %d, %s", args, code, faults.Bytes())
	}
	return said.Bytes()
}

// bookOf gives the built-in price book.
func bookOf(t *testing.T) economics.Book {
	t.Helper()
	pack, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	return pack.Book
}

// inWords brings a text to one space between words, whatever its lines.
func inWords(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(text, "\u00a0", " ")), " ")
}

// Every row stands on the reference with all that the table says of it; faces
// of the box that differ by nothing share an entry. Asked for alone each has its own.
func TestEveryQuestionIsInTheReference(t *testing.T) {
	for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
		text := inWords(string(printed(t, "--units", string(sys))))
		book := bookOf(t)
		taken := questions.Unanswered(sys, book)
		for _, row := range questions.All() {
			if !regexp.MustCompile(`(^|[ ,])` + regexp.QuoteMeta(row.Key) + `([:,.]|$)`).MatchString(text) {
				t.Errorf("%s, %s: not there", row.Key, sys)
			}
			if row.Group != questions.OfFaces && !strings.Contains(text, row.Key+": "+quantity.Local(row.Label, sys)) {
				t.Errorf("%s, %s: not with its label", row.Key, sys)
			}
			alone, err := questionsNamed([]string{row.Key})
			if err != nil || len(alone) != 1 {
				t.Fatalf("%s names %d questions, %v", row.Key, len(alone), err)
			}
			page := reference(alone, sys, "$", book)
			page.Words = func(text string) string { return quantity.Local(text, sys) }
			own := inWords(page.Text())
			parts := []string{row.Key, row.Label, row.Ask, row.Help, row.Bounds(sys, "$"), taken[row.Key].Value}
			if len(row.Options) == 0 { // a list of answers shows how they are written
				parts = append(parts, row.Spellings(sys, "$")...)
			}
			if len(row.Options) <= mostNames {
				for _, o := range row.Options {
					parts = append(parts, o.Value, o.Label)
					if quantity.Local(o.Value, sys) != o.Value {
						t.Errorf("%s: %q is written, and must read the same everywhere", row.Key, o.Value)
					}
				}
			}
			for _, mark := range []struct {
				is   bool
				word string
			}{{row.Essential, ", essential"}, {row.Safety, ", safety"}} {
				if mark.is {
					parts = append(parts, row.Label+mark.word)
				}
			}
			for _, part := range parts {
				part = quantity.Local(part, sys)
				if !strings.Contains(own, inWords(part)) {
					t.Errorf("%s, %s: %q is not in its entry:\n%s", row.Key, sys, part, own)
				}
				if row.Group != questions.OfFaces && !strings.Contains(text, inWords(part)) {
					t.Errorf("%s, %s: %q is not on the page", row.Key, sys, part)
				}
			}
		}
	}
}

// Every row that the worksheet asks stands on it once: essentials first,
// safety last, a box or squares beside each.
func TestEveryQuestionIsOnTheWorksheet(t *testing.T) {
	for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
		var on []forms.Question
		var all func([]forms.Section)
		all = func(sections []forms.Section) {
			for _, s := range sections {
				on = append(on, s.Questions...)
				all(s.Sections)
			}
		}
		all(blankSheet(sys, "$").Sections)
		rank := func(row questions.Row) int {
			switch {
			case row.Essential:
				return 0
			case row.Safety:
				return 2
			}
			return 1
		}
		seen, before := map[string]bool{}, 0
		for _, q := range on {
			row, ok := questions.Find(q.Key)
			if !ok || seen[q.Key] || row.Detail {
				t.Errorf("%s stands there as %+v, seen %v", q.Key, q, seen[q.Key])
			}
			seen[q.Key] = true
			if q.Ask != quantity.Local(row.Ask, sys) || q.Help != quantity.Local(helpOnPaper(row), sys) || len(q.Blanks)+len(q.Ticks) == 0 {
				t.Errorf("%s stands there as %+v", q.Key, q)
			}
			if rank(row) < before {
				t.Errorf("%s stands after what comes later", q.Key)
			}
			before = rank(row)
		}
		for _, row := range questions.All() {
			if (row.Essential || row.Safety || !row.Detail) && !seen[row.Key] {
				t.Errorf("%s is missing", row.Key)
			}
		}
	}
}

// drawnOnEachPaper draws a document in each system of units on its own paper; in
// the long run on the other one too.
func drawnOnEachPaper(t *testing.T, of func(quantity.System) layout.Document, look func(*testing.T, *sheet.Recording, quantity.System, sheet.Paper)) {
	for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			if own := (sys == quantity.US) == (paper == sheet.Letter); !own && !longRun() {
				continue
			}
			t.Run(string(paper)+" "+string(sys), func(t *testing.T) {
				r, err := sheet.NewRecording(paper)
				if err != nil {
					t.Fatal(err)
				}
				if err := of(sys).Draw(r); err != nil {
					t.Fatal(err)
				}
				look(t, r, sys, paper)
			})
		}
	}
}

func TestWorksheetPages(t *testing.T) {
	blank := func(sys quantity.System) layout.Document {
		return worksheet(sys, "$", bookOf(t), "coldreckon, version 0.0")
	}
	drawnOnEachPaper(t, blank, func(t *testing.T, r *sheet.Recording, sys quantity.System, paper sheet.Paper) {
		checkSheets(t, r, 5)
		for _, o := range r.Ops { // the questions on four, the unit that ails on the last
			if o.Kind == sheet.BookmarkOp && o.Level < 2 && strings.Contains(o.Text, "dead") != (o.Page == 5) {
				t.Errorf("%q stands on page %d", o.Text, o.Page)
			}
		}
		var keys []string
		for _, o := range r.Ops {
			if o.Kind == sheet.TextOp {
				keys = append(keys, o.Text)
			}
			for _, box := range r.Ops {
				unit := o.Kind == sheet.TextOp && o.Box.Right() > box.Box.Right()-1.5 && o.Box.W < box.Box.W/2
				if box.Kind == sheet.AreaOp && o.Kind == sheet.TextOp && o.Page == box.Page && !unit && o.Box.Overlaps(box.Box) {
					t.Errorf("%v stands in the box %v", o, box)
				}
			}
		}
		for _, row := range questions.All() {
			if !row.Detail && !slices.Contains(keys, row.Key) {
				t.Errorf("%s is not drawn", row.Key)
			}
		}
		checkFile(t, "--blank", "--units", string(sys), "--paper", string(paper))
	})
}

func TestReferencePages(t *testing.T) {
	all := func(sys quantity.System) layout.Document { return reference(questions.All(), sys, "$", bookOf(t)) }
	drawnOnEachPaper(t, all, func(t *testing.T, r *sheet.Recording, sys quantity.System, paper sheet.Paper) {
		checkSheets(t, r, 13)
		checkFile(t, "--format", "pdf", "--units", string(sys), "--paper", string(paper))
	})
}

// checkSheets holds what was drawn to the margins and apart.
func checkSheets(t *testing.T, r *sheet.Recording, most int) {
	t.Helper()
	if r.Page() > most {
		t.Errorf("%d pages, want at most %d", r.Page(), most)
	}
	w, h := r.Paper()
	for _, o := range r.Outside(sheet.Rect{W: w, H: h}.Inset(21.9, 10, 21.9, 11)) {
		t.Errorf("outside the margins: %v", o)
	}
	for _, pair := range r.Collisions() {
		t.Errorf("collision: %v\n%v", pair[0], pair[1])
	}
}

// checkFile holds the PDF that the command prints to the standard, and to the
// same bytes each time.
func checkFile(t *testing.T, args ...string) {
	t.Helper()
	first := printed(t, args...)
	if !bytes.Equal(first, printed(t, args...)) {
		t.Error("two files of the same differ")
	}
	if err := api.Validate(bytes.NewReader(first), model.NewDefaultConfiguration()); err != nil {
		t.Error(err)
	}
}

// What the worksheet says beside a box is in the box's own unit.
func TestHelpFitsTheBoxes(t *testing.T) {
	find := func(key string, sys quantity.System) forms.Question {
		row, ok := questions.Find(key)
		if !ok {
			t.Fatalf("no question %s", key)
		}
		return onPaper(row, sys, "$")
	}
	for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
		for _, row := range questions.All() {
			q := onPaper(row, sys, "$")
			if row.Kind == questions.Share && (q.Blanks[0].Unit != "%" || regexp.MustCompile(`\b0\.\d`).MatchString(q.Help)) {
				t.Errorf("%s asks for %q beside %q", row.Key, q.Blanks[0].Unit, q.Help)
			}
			if sys == quantity.US && row.Kind == questions.MonthTemperatures && (strings.Contains(q.Help, "°C") && !strings.Contains(q.Help, "°F") || !strings.Contains(q.Topic, "°F")) {
				t.Errorf("%s is headed %q and helped with %q", row.Key, q.Topic, q.Help)
			}
			if own := strings.Contains(q.Topic, "only if not listed"); own != slices.Contains([]string{"cruising.latitude", "cruising.air_min", "cruising.air_max"}, row.Key) {
				t.Errorf("%s is headed %q", row.Key, q.Topic)
			}
		}
	}
	if q := find("ice.found_at_stops", quantity.US); !strings.Contains(q.Help, "90 %") || strings.Contains(q.Help, "% %") {
		t.Errorf("stops that sell ice: %q", q.Help)
	}
	if q := find("boat.name", quantity.US); strings.Contains(q.Help, "Typical") {
		t.Errorf("a boat's name: %q", q.Help)
	}
}
