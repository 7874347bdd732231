package compare

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
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
			for _, x := range []*quantity.Range{&o.WorkCost, &o.AsTold.First, &o.AsTold.Yearly, &o.Fitted.First, &o.Fitted.PerYear, &o.Fitted.Yearly} {
				*x = x.Scale(scale)
			}
		}
		made.Rows = append(made.Rows, r)
	}
	made.Terms = Terms{Line: "Maine Coast, 40 nights a year in trips of 3, 2 aboard", Worth: 5}
	return made
}

func drawnOn(t *testing.T, doc layout.Document, paper sheet.Paper) *sheet.Recording {
	t.Helper()
	r, err := sheet.NewRecording(paper.Landscape())
	if err != nil {
		t.Fatal(err)
	}
	if err := doc.Draw(r); err != nil {
		t.Fatal(err)
	}
	return r
}

// onBothPapers draws a table on A4 and on Letter.
func onBothPapers(t *testing.T, made Table) [2]*sheet.Recording {
	t.Helper()
	doc := made.Document()
	return [2]*sheet.Recording{drawnOn(t, doc, sheet.A4), drawnOn(t, doc, sheet.Letter)}
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
		for _, r := range onBothPapers(t, stretched(t, c.n, c.sys, c.scale, c.name)) {
			w, h := r.Paper()
			for _, o := range r.Outside(sheet.Rect{W: w, H: h}.Inset(13.9, 9, 13.9, 9)) {
				t.Errorf("%d boats, %.0f mm wide: outside the margins: %v", c.n, w, o)
			}
			for _, pair := range r.Collisions() {
				t.Errorf("%d boats, %.0f mm wide: collision: %v\n%v", c.n, w, pair[0], pair[1])
			}
		}
	}
}

// On every page that a table reaches, its head stands again.
func TestHeadsAreRepeated(t *testing.T) {
	made := stretched(t, 80, quantity.Metric, 1, "Osprey")
	r := drawnOn(t, made.Document(), sheet.A4)
	pages := map[int]bool{}
	heads := map[int]bool{}
	for _, o := range r.Ops {
		if o.Kind == sheet.TextOp && o.Text == "Works, of 100" {
			heads[o.Page] = true
		}
		if o.Kind == sheet.TextOp && o.Text == "Not reckoned" {
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
	r := drawnOn(t, doc, sheet.A4)
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

// The bars of the board run from the low to the high price on one scale, and
// the mark stands at the middle one.
func TestBarsAreToScale(t *testing.T) {
	made := table(t)
	rows := made.inOrder()
	b := board{&made, rows, scaleFor(rows, 0), closeRow}
	r, err := sheet.NewRecording(sheet.A4.Landscape())
	if err != nil {
		t.Fatal(err)
	}
	r.AddPage()
	const left, wide = 14.0, boardParts // a part of the width is a millimetre
	if err := b.draw(r, sheet.Rect{X: left, Y: 20, W: wide, H: b.height(wide)}); err != nil {
		t.Fatal(err)
	}
	place := func(price float64) float64 {
		return left + barsAt + (priceAt-barsAt)*min(max(price, 0), b.scale.top)/b.scale.top
	}
	checked := 0
	for i, row := range rows {
		if !row.priced() {
			continue
		}
		checked++
		mid := 20 + boardHead + closeRow*(float64(i)+0.5)
		p := row.Of(row.Way).Price
		bar, mark := false, false
		for _, o := range r.Ops {
			if o.Kind != sheet.AreaOp || math.Abs(o.Box.Y+o.Box.H/2-mid) > 0.01 {
				continue
			}
			bar = bar || math.Abs(o.Box.X-place(p.Low)) < 0.01 && math.Abs(o.Box.Right()-max(place(p.High), place(p.Low)+0.3)) < 0.01
			mark = mark || math.Abs(o.Box.X+o.Box.W/2-place(p.Typical)) < 0.01
		}
		if !bar || !mark {
			t.Errorf("%s: bar %v and mark %v for %v on a scale to %g", row.Name, bar, mark, p, b.scale.top)
		}
	}
	if checked == 0 {
		t.Fatal("no boat of the fixture has a price")
	}
}

// No page is nearly empty, however few or many boats there are; thirty, with all
// that stands behind them, take six sheets of either paper. Outside the long run
// every other number of boats is drawn.
func TestNoPageIsNearlyEmpty(t *testing.T) {
	for i, n := range []int{1, 2, 3, 4, 5, 6, 7, 9, 12, 20, 30} {
		if i%2 > 0 && os.Getenv("COLDRECKON_LONG") == "" {
			continue
		}
		for _, r := range onBothPapers(t, stretched(t, n, quantity.US, 1, "Osprey")) {
			wide, high := r.Paper()
			if n <= 30 && r.Page() > 6 {
				t.Errorf("%d boats, %.0f mm wide: %d pages, want 6 at most", n, wide, r.Page())
			}
			lowest := map[int]float64{}
			for _, op := range r.Ops {
				if op.Box.Bottom() < high-18 { // above the foot
					lowest[op.Page] = max(lowest[op.Page], op.Box.Bottom())
				}
			}
			for page, y := range lowest {
				if y < high/3 {
					t.Errorf("%d boats, %.0f mm wide: page %d of %d ends %.0f mm down", n, wide, page, r.Page(), y)
				}
			}
		}
	}
}

// Both papers hold the same headings on the same pages, as long as one page holds
// all boats.
func TestPapersAgree(t *testing.T) {
	for _, n := range []int{2, 6} {
		var pages [2]string
		for i, r := range onBothPapers(t, stretched(t, n, quantity.Metric, 1, "Osprey")) {
			for _, o := range r.Ops {
				if o.Kind == sheet.BookmarkOp {
					pages[i] += fmt.Sprintf("%d %s\n", o.Page, o.Text)
				}
			}
		}
		if pages[0] != pages[1] {
			t.Errorf("%d boats: A4 has\n%sLetter has\n%s", n, pages[0], pages[1])
		}
	}
}

// Sums in another currency are left out, or converted at the rate told.
func TestCurrenciesThatDiffer(t *testing.T) {
	const left, book = "are left out", "The price book is in $"
	said := func(made Table) string { return strings.Join(strings.Fields(made.Document().Text()), " ") }
	made := table(t)
	if text := said(made); strings.Contains(text, left) || strings.Contains(text, book) {
		t.Error("one currency, and the page speaks of several")
	}
	other := &made.Rows[2]
	other.Currency = "EUR"
	before := other.Of(other.Way).Fitted.First.Typical
	if text := said(made); !strings.Contains(text, left) || !strings.Contains(text, other.Name+" (EUR)") || !strings.Contains(text, book) || strings.Contains(text, "EUR1") {
		t.Errorf("two currencies, and the page does not say which, or prints a sum of the other:\n%s", text)
	}
	if err := made.Sort("yearly"); err != nil {
		t.Fatal(err)
	}
	if made.Rows[2].Currency != "EUR" || made.Rows[3].Error == "" {
		t.Error("a boat in another currency stands among the sums of this one")
	}
	currency, rate, err := ParseRate("€=1.08")
	if err != nil {
		t.Fatal(err)
	}
	rates := Rates{currency: rate}
	made.InCurrency(made.ForSums(rates), rates)
	other = &made.Rows[2]
	if got := other.Of(other.Way).Fitted.First.Typical; math.Abs(got-1.08*before) > 1e-9*before || other.Currency != "$" || other.ToldIn != "EUR" {
		t.Errorf("€%g is %s%g at 1.08", before, other.Currency, got)
	}
	if text := said(made); strings.Contains(text, left) || !strings.Contains(text, "Converted to $ at 1.08 for one EUR") {
		t.Errorf("converted, and the page does not say so:\n%s", text)
	}
	for _, bad := range []string{"", "EUR", "EUR=", "=1.1", "EUR=0", "EUR=-1", "EUR=x", "EUR=NaN", "EUR=Inf"} {
		if _, _, err := ParseRate(bad); err == nil {
			t.Errorf("%q is a rate", bad)
		}
	}
}

// Under the heavy rule stands what has no place: a boat nobody described and one
// that no way keeps cold, without work or price; and for whom it was prepared.
func TestWhatHasNoPlace(t *testing.T) {
	made := table(t)
	r := &made.Rows[2]
	r.NotTold, r.WhyNot = true, "Nobody told the size of her box."
	nothing := &made.Rows[3]
	nothing.Works, nothing.WhyNot = false, "No way keeps food cold as often as you want."
	made.For, made.By, made.Day = "A. Buyer", "B. Broker", "30 November 2026"
	doc := made.Document()
	rec := drawnOn(t, doc, sheet.Letter)
	seen := map[string]float64{}
	for _, o := range rec.Ops {
		if o.Kind == sheet.TextOp && o.Page == 1 && seen[o.Text] == 0 {
			seen[o.Text] = o.Box.Y
		}
	}
	if !(seen["Osprey"] > 0 && seen["Osprey"] < seen["Plover"] && seen["Osprey"] < seen["Avocet"]) {
		t.Errorf("places on the page: %v", seen)
	}
	if seen["Not enough told"] == 0 || seen["Nothing found"] == 0 {
		t.Error("the page does not say why two boats have no place")
	}
	text := doc.Markdown()
	for _, want := range []string{"Prepared for A. Buyer · Prepared by B. Broker · 30 November 2026", "1 of 4 boats", "Not enough told: Nobody told"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page lacks %q:\n%s", want, text)
		}
	}
	if !made.Rows[0].Placed() || made.least() != &made.Rows[0] {
		t.Error("the one boat with a place is not the least dear")
	}
}
