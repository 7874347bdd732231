package layout

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"coldreckon/report/sheet"
)

func sample() Document {
	var d Document
	d.Part(Heading{0, "Title"}, Para{Lead: "Bold.", Text: "Plain text with 4 °C in it."},
		List{Mark: Number, Items: []Item{{Text: "first"}, {Lead: "Lead.", Text: "second", Source: "a book"}}},
		Table{Columns: []Column{{Head: "What"}, {Head: "Much", Right: true}}, Rows: [][]string{{"a | b", "1"}, {"sum", "12"}}, Sum: true},
		Picture{Finding: "It rises.", Caption: "in W", Height: high(20), Draw: func(sheet.Sheet, sheet.Rect) error { return nil },
			Table: Table{Columns: []Column{{Head: "Year"}}, Rows: [][]string{{"1"}}}},
		Note{Para{Text: "mind this"}},
		Side{Columns: [][]Block{{Para{Text: "left"}}, {Para{Text: "right"}}}},
		Kept{List{Mark: Tick, Items: []Item{{Text: "tick me"}}}})
	return d
}

func TestText(t *testing.T) {
	want := `Title
=====

Bold. Plain text with 4 °C in it.

1. first
2. Lead. second [a book]

What   Much
-----------
a | b     1
-----------
sum      12

It rises.
(in W)
Year
----
1

! mind this

left

right

[ ] tick me
`
	if got := sample().Text(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestMarkdown(t *testing.T) {
	want := "# Title\n\n**Bold.** Plain text with 4 °C in it.\n\n1. first\n2. **Lead.** second *(a book)*\n\n" +
		"| What | Much |\n| --- | ---: |\n| a \\| b | 1 |\n| sum | 12 |\n\n**It rises.**\n\n*in W*\n\n| Year |\n| --- |\n| 1 |\n\n> mind this\n\nleft\n\nright\n\n- [ ] tick me\n"
	if got := sample().Markdown(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// A chart's table may go on over the page; Kept holds it with its chart.
func TestChartsTableGoesOn(t *testing.T) {
	chart := Picture{Finding: "It rises.", Height: high(150), Shown: true, Table: Table{Columns: []Column{{}}},
		Draw: func(s sheet.Sheet, r sheet.Rect) error {
			s.Rect(r, sheet.Fill{}, sheet.Pen{Width: 0.15, Grey: sheet.Mid})
			return s.Err()
		}}
	for range 14 {
		chart.Table.Rows = append(chart.Table.Rows, []string{"row"})
	}
	for _, c := range []struct {
		block          Block
		drawing, first int // their pages
	}{{chart, 1, 1}, {Kept{chart}, 2, 2}} {
		var d Document
		d.Part(Para{Text: "before"}, c.block)
		s, err := sheet.NewRecording(sheet.A4)
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Draw(s); err != nil {
			t.Fatal(err)
		}
		drawing, first := 0, 0
		for _, o := range s.Ops {
			switch {
			case o.Kind == sheet.AreaOp:
				drawing = o.Page
			case o.Text == "row" && first == 0:
				first = o.Page
			}
		}
		if drawing != c.drawing || first != c.first || s.Page() != 2 {
			t.Errorf("%T: the drawing is on page %d, its table from page %d, of %d; want %d, %d, of 2", c.block, drawing, first, s.Page(), c.drawing, c.first)
		}
	}
}

// A figure stays with its unit, in print by a space that does not break.
func TestBound(t *testing.T) {
	if got := fmt.Sprint(setTitle(Heading{Text: "from 38 to 15 W"}).words); !strings.Contains(got, "15\u00a0W") {
		t.Errorf("a heading breaks between figure and unit: %q", got)
	}
	for text, want := range map[string]string{
		"at 4 °C, or":          "at 4\u00a0°C, or",
		"90 % of 12 kWh.":      "90\u00a0% of 12\u00a0kWh.",
		"3 in more foam":       "3\u00a0in more foam",
		"in 59 of 100 futures": "in 59\u00a0of 100 futures",
		"4 walls":              "4 walls",
		"8 inches":             "8 inches",
	} {
		if got := bound(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

// No line of plain text passes 80 columns, whatever stands in it.
func FuzzTextWidth(f *testing.F) {
	f.Add("a word", strings.Repeat("x", 200), "é 12 °C")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		if !utf8.ValidString(a + b + c) {
			t.Skip()
		}
		var d Document
		d.Add(Heading{1, a}, Para{Lead: b, Text: c}, List{Mark: Dash, Items: []Item{{a, b, c}}},
			Table{Columns: []Column{{Head: a}, {Head: b, Right: true}, {}, {}, {}}, Rows: [][]string{{c, a, b, c, a}, {b}}}, Note{Para{Text: b}})
		for _, line := range strings.Split(d.Text(), "\n") {
			if utf8.RuneCountInString(line) > textWidth {
				t.Fatalf("%d columns: %q", utf8.RuneCountInString(line), line)
			}
		}
	})
}
