package layout

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/report/sheet"
)

func record(t *testing.T, paper sheet.Paper, d *Document) *sheet.Recording {
	t.Helper()
	r, err := sheet.NewRecording(paper)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Draw(r); err != nil {
		t.Fatal(err)
	}
	return r
}

// texts gives what stands in the frame of a page, in the order drawn.
func texts(r *sheet.Recording, page int) []sheet.Op {
	var out []sheet.Op
	for _, o := range r.Ops {
		if o.Kind == sheet.TextOp && o.Page == page && o.Type.Size != Run.Size {
			out = append(out, o)
		}
	}
	return out
}

func lorem(rng *rand.Rand, n int) string {
	stock := strings.Fields("ice melts in the box while the small unit runs on sun and the crew of four eat 12–15 kg a week at ½ price in Åland " +
		"Überführungsgesellschaftsvertragsentwurf 1,234,567.89 north-eastern")
	var b strings.Builder
	for range n {
		b.WriteString(stock[rng.IntN(len(stock))])
		b.WriteByte(' ')
	}
	return strings.TrimSpace(b.String())
}

// para is a paragraph of body text.
func para(w words) paragraph { return paragraph{words: w, typ: bodyType} }

// plainRow is a row of plain texts.
func plainRow(texts ...string) gridRow {
	r := gridRow{}
	for _, s := range texts {
		r.cells = append(r.cells, plain(s))
	}
	return r
}

// invented makes a document of every kind of block.
func invented(rng *rand.Rand) *Document {
	d := &Document{Title: lorem(rng, rng.IntN(40)), Foot: lorem(rng, rng.IntN(40))}
	d.Add(Heading{0, lorem(rng, 1+rng.IntN(12))}, Para{Text: lorem(rng, 12), Style: Lede})
	level := 0
	say := func(n int) Para {
		return Para{Lead: lorem(rng, 1+rng.IntN(3)), Text: lorem(rng, 1+rng.IntN(n)), Wide: rng.IntN(2) == 0}
	}
	var block func(depth int) Block
	block = func(depth int) Block {
		switch k := rng.IntN(10); {
		case k == 0:
			return List{Mark: []Mark{Dash, Number, Tick}[rng.IntN(3)], Fine: rng.IntN(2) == 0,
				Items: []Item{{Text: lorem(rng, 30)}, {Lead: "Lead.", Text: lorem(rng, 8), Source: lorem(rng, 4)}, {Text: lorem(rng, 4)}}}
		case k == 1:
			tab := Table{Columns: []Column{{Head: "What " + lorem(rng, rng.IntN(4))}, {Head: "How much", Right: true}, {Head: lorem(rng, 3)}},
				Sum: rng.IntN(2) == 0, Framed: rng.IntN(3)}
			for range rng.IntN(40) {
				tab.Rows = append(tab.Rows, []string{lorem(rng, 6), "12,345,678", lorem(rng, 1+rng.IntN(60))})
			}
			return tab
		case k == 2:
			return Picture{Finding: lorem(rng, rng.IntN(20)), Caption: lorem(rng, rng.IntN(20)), Height: high(20 + 60*rng.Float64()), Draw: func(s sheet.Sheet, r sheet.Rect) error {
				s.Rect(r, sheet.Fill{}, sheet.Pen{Width: 0.15, Grey: sheet.Mid})
				s.Text(r.X+2, r.Y+6, "in the picture", smallType)
				return nil
			}}
		case k == 3 && depth < 2:
			return Note{block(depth + 1), block(depth + 1)}
		case k == 4 && depth < 2:
			return Side{nil, [][]Block{{block(depth + 1), say(20)}, {block(depth + 1)}}}
		case k == 5:
			return Kept{say(10), say(50)}
		case k == 6:
			return Table{Columns: []Column{{Quiet: true}, {}}, Rows: [][]string{{"Name", lorem(rng, 12)}, {"Length", "9.2 m"}}}
		default:
			return say(1 + rng.IntN(160))
		}
	}
	for range 4 + rng.IntN(20) {
		switch rng.IntN(8) {
		case 0, 1:
			level = 1 + rng.IntN(min(level+1, 2))
			d.Add(Heading{level, lorem(rng, 1+rng.IntN(12))})
		case 2:
			d.Part(say(3))
		}
		d.Add(block(0))
	}
	return d
}

// made is a block set already.
type made struct{ flow }

func (m made) set() flow { return m.flow }

func TestPromisesHoldForInventedDocuments(t *testing.T) {
	documents := uint64(8)
	if os.Getenv("COLDRECKON_LONG") != "" {
		documents = 25
	}
	for seed := range documents {
		rng := rand.New(rand.NewPCG(seed, 7))
		d := invented(rng)
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			r := record(t, paper, d)
			frame := usual.within(r)
			w, h := r.Paper()
			edges := sheet.Rect{W: w, H: h}.Inset(usual.Side, runTop-4, usual.Side, runBottom-4)
			for _, o := range r.Outside(edges) {
				t.Errorf("seed %d %s: outside the margins: %v", seed, paper, o)
			}
			for _, pair := range r.Collisions() {
				t.Errorf("seed %d %s: collision: %v\n%v", seed, paper, pair[0], pair[1])
			}
			last, all := r.Page(), r.String()
			for page := 1; page <= last; page++ {
				body := texts(r, page)
				if len(body) == 0 {
					t.Errorf("seed %d %s: page %d is empty", seed, paper, page)
					continue
				}
				lowest := body[0]
				for _, o := range body {
					if !frame.Contains(o.Box) {
						t.Errorf("seed %d %s: outside the frame: %v", seed, paper, o)
					}
					if o.Box.Bottom() > lowest.Box.Bottom() {
						lowest = o
					}
				}
				for _, head := range heads {
					if lowest.Type.Size == head.Size && lowest.Type.Face == sheet.Bold {
						t.Errorf("seed %d %s: page %d ends with a heading: %v", seed, paper, page, lowest)
					}
				}
				want := fmt.Sprintf("Page %d of %d", page, last)
				if !strings.Contains(all, want) {
					t.Errorf("seed %d: no %q", seed, want)
				}
			}
			if t.Failed() {
				return
			}
		}
	}
}

// No word is lost or said twice when a paragraph runs over pages.
func TestTextSurvivesPageBreaks(t *testing.T) {
	var want []string
	d := &Document{}
	for i := range 60 {
		s := ""
		for j := range 40 {
			w := fmt.Sprintf("w%d.%d", i, j)
			want = append(want, w)
			s += w + " "
		}
		d.Add(made{para(plain(s))})
	}
	r := record(t, sheet.A4, d)
	var got []string
	for p := 1; p <= r.Page(); p++ {
		for _, o := range texts(r, p) {
			got = append(got, strings.Fields(o.Text)...)
		}
	}
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Error("words lost, doubled or out of order")
	}
	if r.Page() < 3 {
		t.Errorf("only %d pages: the test tests nothing", r.Page())
	}
}

func TestNoSingleLinesAtBreaks(t *testing.T) {
	p := para(plain(lorem(rand.New(rand.NewPCG(1, 1)), 200)))
	n := len(p.lines(100))
	for room := 0.0; room < p.height(100); room += pitch(bodyType) / 3 {
		a, z := p.split(100, room, 300)
		if a == nil {
			continue
		}
		above, below := len(a.(paragraph).lines(100)), len(z.(paragraph).lines(100))
		if above < 2 || below < 2 || above+below != n {
			t.Errorf("room %.1f: %d lines split into %d and %d", room, n, above, below)
		}
		if a.height(100) > room+1e-9 {
			t.Errorf("room %.1f: the head is %.1f high", room, a.height(100))
		}
	}
}

func TestNoSingleRowsAtBreaks(t *testing.T) {
	tab := grid{columns: []Column{{Head: "Month"}}}
	for i := range 7 {
		tab.rows = append(tab.rows, plainRow(fmt.Sprintf("row %d", i)))
	}
	split := 0
	for room := 0.0; room < tab.height(100); room++ {
		a, z := tab.split(100, room, 300)
		if a == nil {
			continue
		}
		split++
		if above, below := len(a.(grid).rows), len(z.(grid).rows); above < 2 || below < 2 || above+below != 7 {
			t.Errorf("room %.0f: 7 rows split into %d and %d", room, above, below)
		}
		if a.height(100) > room {
			t.Errorf("room %.0f: the head is %.1f high", room, a.height(100))
		}
	}
	if split == 0 {
		t.Error("never split: the test tests nothing")
	}
}

func TestTableRepeatsItsHead(t *testing.T) {
	tab := grid{columns: []Column{{Head: "Month"}, {Head: "Ice", Right: true}}}
	for i := range 120 {
		tab.rows = append(tab.rows, plainRow(fmt.Sprintf("row %d", i), "12 kg"))
	}
	d := &Document{}
	d.Add(made{tab})
	r := record(t, sheet.Letter, d)
	if r.Page() < 3 {
		t.Fatalf("only %d pages", r.Page())
	}
	rows := 0
	x := map[float64]bool{}
	for p := 1; p <= r.Page(); p++ {
		body := texts(r, p)
		if body[0].Text != "Month" || body[1].Text != "Ice" {
			t.Errorf("page %d starts with %q", p, body[0].Text)
		}
		for _, o := range body {
			if strings.HasPrefix(o.Text, "row ") {
				rows++
			}
			if o.Text == "12 kg" {
				x[o.Box.X] = true
			}
		}
	}
	if rows != 120 {
		t.Errorf("%d rows of 120", rows)
	}
	if len(x) != 1 {
		t.Errorf("the column moves from page to page: %v", x)
	}
}

// A row is broken only if no page could hold it.
func TestRowsStayWhole(t *testing.T) {
	long := lorem(rand.New(rand.NewPCG(2, 2)), 150)
	tab := grid{columns: []Column{{Head: "a", Share: 0.2}, {Head: "b", Share: 0.5}, {Head: "c", Share: 0.3}}}
	for i := range 12 {
		tab.rows = append(tab.rows, plainRow(fmt.Sprintf("row %d", i), long, "x"))
	}
	d := &Document{}
	d.Add(made{tab})
	r := record(t, sheet.A4, d)
	for p := 1; p <= r.Page(); p++ {
		for i, o := range texts(r, p) {
			if i == 3 && !strings.HasPrefix(o.Text, "row ") {
				t.Errorf("page %d starts inside a row: %q", p, o.Text)
			}
		}
	}
	huge := grid{columns: tab.columns, rows: []gridRow{plainRow("huge", lorem(rand.New(rand.NewPCG(3, 3)), 3000), "x")}}
	d = &Document{}
	d.Add(Heading{0, "Top"}, made{huge})
	if r := record(t, sheet.A4, d); r.Page() < 3 {
		t.Errorf("a row taller than a page took %d pages", r.Page())
	}
}

func TestKeptIsKeptTogether(t *testing.T) {
	lines := func(n int, s string) Block {
		return made{para(plain(strings.TrimSuffix(strings.Repeat(s+"\n", n), "\n")))}
	}
	pageOf := func(r *sheet.Recording, text string) int {
		for _, o := range r.Ops {
			if o.Text == text {
				return o.Page
			}
		}
		return 0
	}
	d := &Document{}
	d.Add(lines(40, "before"), Kept{lines(10, "claim"), lines(10, "proof")})
	r := record(t, sheet.A4, d)
	if a, b := pageOf(r, "claim"), pageOf(r, "proof"); a != 2 || b != 2 {
		t.Errorf("on pages %d and %d, want both on 2", a, b)
	}
	d = &Document{}
	d.Add(Kept{lines(40, "claim"), lines(40, "proof")})
	if r := record(t, sheet.A4, d); r.Page() != 2 {
		t.Errorf("what fits no page takes %d pages, want 2", r.Page())
	}
}

func high(mm float64) func(float64) float64 { return func(float64) float64 { return mm } }

func TestFaultsAreTold(t *testing.T) {
	for name, c := range map[string]struct {
		block Block
		want  string
	}{
		"too tall":  {OnPaper{Name: "demand and sun", Height: high(900), Draw: func(sheet.Sheet, sheet.Rect) error { return nil }}, "demand and sun"},
		"own error": {OnPaper{Name: "the money", Height: high(50), Draw: func(sheet.Sheet, sheet.Rect) error { return errors.New("no data") }}, "the money"},
		"sheet's error": {OnPaper{Name: "the ice", Height: high(50), Draw: func(s sheet.Sheet, r sheet.Rect) error {
			s.Text(0, 0, "x", sheet.Type{})
			return nil
		}}, "the ice"},
		"skipped level": {Heading{2, "deep"}, "bookmark"},
	} {
		r, err := sheet.NewRecording(sheet.A4)
		if err != nil {
			t.Fatal(err)
		}
		d := &Document{}
		d.Add(c.block)
		if err := d.Draw(r); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v; want %q in it", name, err, c.want)
		}
	}
}

func TestTheFileIsValidAndTheSameEachTime(t *testing.T) {
	make := func() []byte {
		p, err := sheet.NewPDF(sheet.Info{Title: "Demo", Lang: "en-GB", Date: time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC), Paper: sheet.A4})
		if err != nil {
			t.Fatal(err)
		}
		if err := invented(rand.New(rand.NewPCG(5, 7))).Draw(p); err != nil {
			t.Fatal(err)
		}
		b, err := p.Bytes()
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	b := make()
	if !bytes.Equal(b, make()) {
		t.Error("two runs differ")
	}
	conf := model.NewDefaultConfiguration()
	conf.Offline = true
	if err := api.Validate(bytes.NewReader(b), conf); err != nil {
		t.Error(err)
	}
}
