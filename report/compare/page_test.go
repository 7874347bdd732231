package compare

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
)

// stretched repeats the rows of a table up to n, with long names and sums.
func stretched(t *testing.T, n int, sys quantity.System, scale float64, name string) Table {
	made := table(t)
	rows := made.Rows
	made.Rows = nil
	for i := range n {
		r := rows[i%len(rows)]
		r.System = sys
		r.Name = fmt.Sprintf("%s %d", name, i+1)
		for k := range r.Options {
			o := &r.Options[k]
			for _, x := range []*quantity.Range{&o.WorkCost, &o.AsTold.First, &o.AsTold.Yearly, &o.Fitted.First, &o.Fitted.Yearly} {
				*x = x.Scale(scale)
			}
		}
		made.Rows = append(made.Rows, r)
	}
	made.Pattern = "For a buyer who spends 40 nights a year aboard with 2 people."
	return made
}

func drawnOn(t *testing.T, made Table, paper sheet.Paper) *sheet.Recording {
	t.Helper()
	r, err := sheet.NewRecording(paper)
	if err != nil {
		t.Fatal(err)
	}
	if err := made.Document().Draw(r); err != nil {
		t.Fatal(err)
	}
	return r
}

func TestNothingClipsOrOverlaps(t *testing.T) {
	for _, c := range []struct {
		n     int
		sys   quantity.System
		scale float64
		name  string
	}{
		{1, quantity.Metric, 1, "Osprey"}, {2, quantity.US, 1, "Osprey"}, {20, quantity.Metric, 1, "Osprey"}, {70, quantity.US, 1, "Sandpiper"},
		{20, quantity.US, 40000, "The Right Honourable Überführungsgesellschaft of Åland and the Outer Skerries"}, {8, quantity.Metric, 0, "Supercalifragilisticexpialidociousness"},
	} {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			r := drawnOn(t, stretched(t, c.n, c.sys, c.scale, c.name), paper)
			w, h := r.Paper()
			for _, o := range r.Outside(sheet.Rect{W: w, H: h}.Inset(21.9, 9, 21.9, 9)) {
				t.Errorf("%d boats, %s: outside the margins: %v", c.n, paper, o)
			}
			for _, pair := range r.Collisions() {
				t.Errorf("%d boats, %s: collision: %v\n%v", c.n, paper, pair[0], pair[1])
			}
		}
	}
}

// On every page that a table reaches, its head stands again.
func TestHeadsAreRepeated(t *testing.T) {
	r := drawnOn(t, stretched(t, 40, quantity.Metric, 1, "Osprey"), sheet.A4)
	pages := map[int]bool{}
	heads := map[int]bool{}
	for _, o := range r.Ops {
		if o.Kind == sheet.TextOp && o.Text == "Work needed, and its cost" {
			heads[o.Page] = true
		}
		if o.Kind == sheet.TextOp && o.Text == "not reckoned" {
			pages[o.Page] = true
		}
	}
	if len(pages) < 2 {
		t.Fatalf("the table stands on %d pages; the test needs two", len(pages))
	}
	for p := range pages {
		if !heads[p] {
			t.Errorf("page %d has rows without a head", p)
		}
	}
}

func TestEveryFormSaysWhatItIsNot(t *testing.T) {
	made := table(t)
	doc := made.Document()
	for name, text := range map[string]string{"text": doc.Text(), "Markdown": doc.Markdown()} {
		head := text[:min(len(text), 600)]
		if !strings.Contains(strings.Join(strings.Fields(strings.ReplaceAll(head, "!", " ")), " "), "not a survey or a valuation") {
			t.Errorf("%s does not open with what it is not:\n%s", name, head)
		}
		for _, want := range []string{"Osprey", "Plover", "atlantis", "reckoned", "assumed"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s lacks %q", name, want)
			}
		}
	}
	r := drawnOn(t, made, sheet.A4)
	found := false
	for _, o := range r.Ops {
		found = found || o.Page == 1 && o.Box.Y < 80 && strings.Contains(o.Text, "survey or a valuation")
	}
	if !found {
		t.Error("the first page does not say at its top what it is not")
	}
}

func TestFileIsValidAndAlwaysTheSame(t *testing.T) {
	made := stretched(t, 20, quantity.Metric, 1, "Osprey")
	build := func() []byte {
		b, err := made.Document().PDF(sheet.Info{Author: "coldreckon", Lang: "en-GB", Date: time.Unix(1767225600, 0), Paper: sheet.A4})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	first := build()
	if !bytes.Equal(first, build()) {
		t.Error("two files of one comparison differ")
	}
	if err := api.Validate(bytes.NewReader(first), model.NewDefaultConfiguration()); err != nil {
		t.Error(err)
	}
	if len(first) > 1_000_000 {
		t.Errorf("%d bytes, want under 1 MB", len(first))
	}
}

// The first drawing says where cold food costs least; only later ones do not.
func TestTheDrawingSaysWhatItShows(t *testing.T) {
	r := drawnOn(t, stretched(t, 60, quantity.Metric, 1, "Osprey"), sheet.A4)
	least, others := 0, 0
	for _, o := range r.Ops {
		if o.Kind == sheet.TextOp && strings.HasPrefix(o.Text, "Cold food costs least on Osprey") {
			least++
		}
		if o.Kind == sheet.TextOp && strings.HasPrefix(o.Text, "The other boats") {
			others++
		}
	}
	if least != 1 || others != 1 {
		t.Errorf("%d drawings name the least and %d the others, want 1 and 1 for 45 boats", least, others)
	}
}

// A bar of the drawing runs from the low to the high mark on an axis from zero.
func TestBarsAreToScale(t *testing.T) {
	made := table(t)
	var rows []*Row
	for i := range made.Rows {
		if made.Rows[i].Error == "" {
			rows = append(rows, &made.Rows[i])
		}
	}
	r, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		t.Fatal(err)
	}
	r.AddPage()
	if err := drawRanges(r, sheet.Rect{X: 20, Y: 20, W: 160, H: 60}, "A finding.", rows, 1000); err != nil {
		t.Fatal(err)
	}
	zero, full := 20+nameShare*160, 20+(1-valueShare)*160
	var bars []sheet.Op
	for _, o := range r.Ops {
		if o.Kind == sheet.LineOp && o.Pen.Width == 0.9 {
			bars = append(bars, o)
		}
	}
	if len(bars) != len(rows) {
		t.Fatalf("%d bars for %d boats", len(bars), len(rows))
	}
	for i, bar := range bars {
		y := rows[i].Of(rows[i].Way).Fitted.Yearly
		if got, want := bar.Points[1].X, zero+(full-zero)*min(y.High, 1000)/1000; got-want > 0.1 || want-got > 0.1 {
			t.Errorf("%s: the bar ends at %.1f mm, want %.1f", rows[i].Name, got, want)
		}
	}
}

// Sums in several currencies are not like for like, and the page says so.
func TestCurrenciesThatDiffer(t *testing.T) {
	made := table(t)
	const note, book = "Nothing is converted", "The price book is in $."
	if text := made.Document().Text(); strings.Contains(text, note) || strings.Contains(text, book) {
		t.Error("one currency, and the page speaks of several")
	}
	made.Rows[2].Currency = "EUR"
	if text := strings.Join(strings.Fields(made.Document().Text()), " "); !strings.Contains(text, note) || !strings.Contains(text, ": $ and EUR.") || !strings.Contains(text, book) {
		t.Errorf("two currencies, and the page does not say which:\n%s", text)
	}
}

// A long file name breaks after a mark; a short one, and a single part, do not.
func TestFileNamesBreakBetweenTheirParts(t *testing.T) {
	for name, want := range map[string]string{
		"boat.yaml": "boat.yaml", "sample:saltmeadow": "sample:\nsaltmeadow", "club/2026/osprey-and-plover.yaml": "club/2026/\nosprey-and-\nplover.yaml",
		"supercalifragilistic": "supercalifragilistic", `C:\boats\osprey.yaml`: "C:\\boats\\\nosprey.yaml", "": "",
	} {
		if got := inLines(name); got != want {
			t.Errorf("%q breaks as %q, want %q", name, got, want)
		}
	}
}
