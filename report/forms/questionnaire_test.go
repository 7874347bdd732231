package forms

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/report/sheet"
)

var papers = []sheet.Paper{sheet.A4, sheet.Letter}

// invented is a sheet of questions of every shape, some of them as long as
// they come.
func invented() Questionnaire {
	long := strings.TrimSpace(strings.Repeat("how thick the walls are where nobody has looked ", 6))
	year := make([]Blank, 12)
	for i := range year {
		year[i].Name = fmt.Sprintf("m%d", i+1)
	}
	var shapes []Question
	for i, q := range []Question{
		{Ask: "One figure?", Blanks: []Blank{{"", "cu ft"}}},
		{Ask: "One figure or none?", Blanks: []Blank{{"", "Btu/h·°F"}}, Ticks: []string{"none"}},
		{Ask: "One figure or a long word?", Blanks: []Blank{{}}, Ticks: []string{"nothing at all that I know of"}},
		{Ask: "Words?", Blanks: []Blank{{}}, Wide: true, Ticks: []string{"not known"}},
		{Ask: "Three?", Blanks: []Blank{{"the length of it, inside", "mm"}, {"b", "mm"}, {"c", "mm"}}, Ticks: []string{"not measured"}},
		{Ask: "A year?", Blanks: year},
		{Ask: "Yes?", Ticks: []string{"yes", "no", "don't know"}},
		{Ask: "Which?", Ticks: []string{"a", "b", "one that is longer", long, "c"}},
		{Topic: long, Ask: long + " at 4 °C?", Help: long, Blanks: []Blank{{}}},
	} {
		for _, help := range []string{q.Help, "Typical: none.", "Typical: ten; " + long} {
			q.Help, q.Key = help, fmt.Sprintf("group.an_item_%d_%d", i, len(help))
			shapes = append(shapes, q)
		}
	}
	return Questionnaire{
		Title: "What is asked", Intro: long, Caution: long,
		Sections: []Section{
			{Title: "First", Questions: shapes},
			{Title: "Then", Note: long, Sections: []Section{{Title: "Under it", Questions: shapes}, {Title: "And it", Questions: shapes[:1]}}},
		},
	}
}

func record(t *testing.T, p sheet.Paper, c Questionnaire) *sheet.Recording {
	t.Helper()
	r, err := sheet.NewRecording(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Document("coldreckon, version 0.0").Draw(r); err != nil {
		t.Fatal(err)
	}
	return r
}

func TestNothingLiesOverAnything(t *testing.T) {
	for _, p := range papers {
		r := record(t, p, invented())
		w, h := r.Paper()
		for _, o := range r.Outside(sheet.Rect{W: w, H: h}.Inset(21.9, 10, 21.9, 11)) {
			t.Errorf("%s, outside the margins: %v", p, o)
		}
		for _, pair := range r.Collisions() {
			t.Errorf("%s, collision: %v\n%v", p, pair[0], pair[1])
		}
		units := map[string]bool{"cu ft": true, "Btu/h·°F": true, "mm": true}
		for i, box := range r.Ops {
			for k, o := range r.Ops {
				if box.Kind != sheet.AreaOp || k == i || o.Page != box.Page {
					continue
				}
				if o.Kind == sheet.TextOp && !units[o.Text] && o.Box.Overlaps(box.Box) || o.Kind == sheet.AreaOp && o.Box.Overlaps(box.Box) {
					t.Errorf("%s: %v stands in the box %v", p, o, box)
				}
			}
		}
	}
}

// Every question stands there once, numbered through, with a box for each
// blank and a square for each tick.
func TestAllIsThere(t *testing.T) {
	c := invented()
	r := record(t, sheet.A4, c)
	asked := append(append(append([]Question{}, c.Sections[0].Questions...), c.Sections[1].Sections[0].Questions...), c.Sections[1].Sections[1].Questions...)
	areas, texts := 0, map[string]int{}
	for _, o := range r.Ops {
		switch o.Kind {
		case sheet.AreaOp:
			areas++
		case sheet.TextOp:
			texts[o.Text]++
		}
	}
	want, keys := 0, map[string]int{}
	for i, q := range asked {
		want += len(q.Blanks) + len(q.Ticks)
		keys[q.Key]++
		if texts[fmt.Sprint(i+1)] != 1 {
			t.Errorf("the number %d stands %d times", i+1, texts[fmt.Sprint(i+1)])
		}
	}
	if areas != want {
		t.Errorf("%d boxes and squares, want %d", areas, want)
	}
	for key, n := range keys {
		if texts[key] != n {
			t.Errorf("%s stands %d times, want %d", key, texts[key], n)
		}
	}
}

// The key stands in the row of its question, and the boxes too.
func TestRowsAreApart(t *testing.T) {
	r := record(t, sheet.Letter, invented())
	var rule float64
	key := ""
	for _, o := range r.Ops {
		switch {
		case o.Kind == sheet.PageOp:
			rule = 0
		case o.Kind == sheet.LineOp && o.Picture != "":
			if key != o.Picture {
				rule, key = o.Points[0].Y, o.Picture
			}
		case o.Picture != "" && o.Box.Y < rule:
			t.Errorf("%v stands above its row, which begins at %.1f", o, rule)
		}
	}
	if key == "" {
		t.Fatal("no row was drawn")
	}
}

func TestFileIsValidAndAlwaysTheSame(t *testing.T) {
	for _, p := range papers {
		build := func() []byte {
			b, err := invented().Document("coldreckon").PDF(sheet.Info{Author: "coldreckon", Lang: "en-GB", Date: time.Unix(1767225600, 0), Paper: p})
			if err != nil {
				t.Fatal(err)
			}
			return b
		}
		first := build()
		if !bytes.Equal(first, build()) {
			t.Error("two files of the same sheets differ")
		}
		if err := api.Validate(bytes.NewReader(first), model.NewDefaultConfiguration()); err != nil {
			t.Error(err)
		}
	}
}

func TestUnknownPaperIsRefused(t *testing.T) {
	if _, err := (Questionnaire{Title: "x"}).Document("").PDF(sheet.Info{Paper: "a5"}); err == nil {
		t.Error("a paper that is not known is taken")
	}
}
