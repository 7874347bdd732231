package layout

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"coldreckon/report/sheet"
)

var htmlInfo = sheet.Info{Author: "coldreckon 0.0", Lang: "en-GB", Date: time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC)}

func htmlOf(t *testing.T, d Document) string {
	t.Helper()
	b, err := d.HTML(htmlInfo)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// element is one opened in a page, with its attributes and the text right in it.
type element struct {
	name string
	at   map[string]string
	text string
}

// elements reads a page as XML that closes the elements which HTML leaves open,
// and fails where others are not closed.
func elements(t *testing.T, page string) []*element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var all, open []*element
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, at: map[string]string{}}
			for _, a := range token.Attr {
				e.at[a.Name.Local] = a.Value
			}
			all, open = append(all, e), append(open, e)
		case xml.EndElement:
			if last := open[len(open)-1]; last.name != token.Name.Local {
				t.Fatalf("<%s> is closed by </%s>", last.name, token.Name.Local)
			}
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				open[len(open)-1].text += string(token)
			}
		}
	}
	if len(open) > 0 {
		t.Fatalf("<%s> is never closed", open[len(open)-1].name)
	}
	return all
}

// drawn is a picture with a hatch, a white area and a text.
func pictured(finding, alt string) Picture {
	return Picture{Finding: finding, Caption: "in W", Alt: alt, Height: high(20),
		Table: Table{Columns: []Column{{Head: "Year"}, {Head: "W", Right: true}}, Rows: [][]string{{"1", "2"}}},
		Draw: func(s sheet.Sheet, r sheet.Rect) error {
			s.Rect(r, sheet.Fill{Texture: sheet.Rising}, sheet.Pen{Width: 0.15, Grey: sheet.Mid})
			s.Rect(r.Inset(3, 3, 3, 3), sheet.Shade(sheet.White), sheet.Pen{})
			s.Text(r.X+4, r.Y+10, finding, smallType)
			return s.Err()
		}}
}

// What the page promises: a language, one title, headings in order, tables with
// heads, a name for every picture, ids used once, nothing fetched and no script.
// Source: WCAG 2.2, success criteria 1.1.1, 1.3.1, 2.4.2, 3.1.1; HTML Living
// Standard, section 3.2.3.1 (ids are unique).
func TestHTMLKeepsItsPromises(t *testing.T) {
	d := sample()
	d.Title, d.Subject, d.Foot = "Title", "About it", "The foot"
	d.Add(Heading{1, "One"}, pictured("It rises.", "From 1 W to 2 W."), pictured("It falls.", ""), Heading{2, "Under it"}, Heading{1, "Two"},
		OnPaper{Name: "form", Instead: []Block{Para{Text: "Write here: ____"}}}, Rows{Para{Text: "a row"}})
	page := htmlOf(t, d)
	all := elements(t, page)
	if all[0].name != "html" || all[0].at["lang"] != "en-GB" {
		t.Errorf("the page opens with <%s lang=%q>", all[0].name, all[0].at["lang"])
	}
	count, ids := map[string]int{}, map[string]bool{}
	level := 0
	for _, e := range all {
		count[e.name]++
		if id := e.at["id"]; id != "" {
			if ids[id] {
				t.Errorf("the id %q stands twice", id)
			}
			ids[id] = true
		}
		for _, name := range []string{"src", "srcset", "xlink:href", "action", "data", "onload", "onclick"} {
			if e.at[name] != "" {
				t.Errorf("<%s> has %s=%q", e.name, name, e.at[name])
			}
		}
		if href := e.at["href"]; href != "" && !strings.HasPrefix(href, "#") {
			t.Errorf("a link leads away, to %q", href)
		}
		if len(e.name) == 2 && e.name[0] == 'h' && e.name[1] >= '1' && e.name[1] <= '6' {
			now := int(e.name[1] - '0')
			if now > level+1 {
				t.Errorf("heading %q skips a level", e.text)
			}
			level = now
		}
	}
	for _, e := range all {
		for _, id := range strings.Fields(e.at["aria-labelledby"]) {
			if !ids[id] {
				t.Errorf("<%s> is named by %q, which is not there", e.name, id)
			}
		}
		if href := strings.TrimPrefix(e.at["href"], "#"); href != "" && !ids[href] {
			t.Errorf("a link leads to %q, which is not there", href)
		}
		if e.name == "svg" && (e.at["role"] != "img" || e.at["aria-labelledby"] == "") {
			t.Errorf("a picture has the role %q and the name %q", e.at["role"], e.at["aria-labelledby"])
		}
	}
	for name, want := range map[string]int{"script": 0, "img": 0, "link": 0, "svg": 3, "main": 1, "h1": 1, "footer": 1, "desc": 3, "thead": 4, "ol": 1} {
		if count[name] != want {
			t.Errorf("%d of <%s>, want %d", count[name], name, want)
		}
	}
	for _, want := range []string{"<!DOCTYPE html>\n", `<meta name="generator" content="coldreckon 0.0">`, `content="2026-01-02"`, "From 1 W to 2 W.</desc>",
		"4\u00a0°C", `<th scope="col">What</th>`, "Write here: ____", "@media print", "prefers-color-scheme: dark"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if strings.Contains(page, "http") {
		t.Error("the page names an address")
	}
}

// Whatever an owner writes stays text, in every place it can come to stand.
func TestHTMLKeepsNamesText(t *testing.T) {
	for _, name := range []string{`"><script>alert(1)</script>`, `</style><img src=x onerror=alert(1)>`, `&lt;b&gt; & 'x'`, "a\u202eb\x00c", `' onload='x`, "]]> <!-- -->"} {
		page := htmlOf(t, everywhere(name))
		want := strings.NewReplacer("\u202e", "", "\x00", "").Replace(name)
		told := 0
		for _, e := range elements(t, page) {
			switch e.name {
			case "script", "img", "b":
				t.Errorf("%q becomes an element <%s>", name, e.name)
			}
			for at := range e.at {
				if strings.HasPrefix(at, "on") {
					t.Errorf("%q becomes an attribute %s", name, at)
				}
			}
			if strings.TrimSpace(strings.ReplaceAll(e.text, "\u00a0", " ")) == want {
				told++
			}
		}
		if told < 8 {
			t.Errorf("%q stands %d times as it was written", name, told)
		}
	}
}

// everywhere puts a text in all places.
func everywhere(name string) Document {
	d := Document{Title: name, Subject: name, Foot: name}
	d.Part(Heading{0, name}, Para{Text: name}, Para{Lead: name, Text: name}, List{Items: []Item{{name, name, name}}},
		Table{Columns: []Column{{Head: name}, {Head: name}, {Head: name}}, Rows: [][]string{{name, name, name}}, ByColumn: true}, pictured(name, name))
	return d
}

func FuzzHTMLNames(f *testing.F) {
	f.Add(`"><script>`)
	f.Fuzz(func(t *testing.T, name string) {
		if !utf8.ValidString(name) || strings.TrimSpace(name) == "" {
			t.Skip()
		}
		for _, e := range elements(t, htmlOf(t, everywhere(name))) {
			if e.name == "script" || e.name == "img" || e.at["onload"] != "" {
				t.Errorf("%q becomes <%s>", name, e.name)
			}
		}
	})
}

// A table too wide for a telephone stands there a second time, as pairs.
func TestHTMLWideTablesBecomePairs(t *testing.T) {
	ways := Table{ByColumn: true, Framed: 2, Columns: []Column{{}, {Head: "Ice alone"}, {Head: "Dry stores"}, {Head: "Small unit"}},
		Rows: [][]string{{"Over the years", "$4,900 (3,800 to 6,400)", "$1,600 (290 to 6,000)", "$1,700 (1,500 to 2,700)"}}}
	small := Table{Columns: []Column{{Head: "Month"}, {Head: "kg", Right: true}}, Rows: [][]string{{"July", "130"}}}
	for _, c := range []struct {
		table Table
		lists int
	}{{ways, 3}, {small, 0}} {
		var d Document
		d.Add(c.table)
		lists := 0
		for _, e := range elements(t, htmlOf(t, d)) {
			if e.name == "dl" {
				lists++
			}
		}
		if lists != c.lists {
			t.Errorf("%d lists of pairs, want %d", lists, c.lists)
		}
	}
}

// No sum breaks in two because a long text stands beside it, and no endless word
// makes a page scroll sideways.
func TestHTMLBreaksNoWordThatFits(t *testing.T) {
	order := func(ask string) Table {
		return Table{Columns: []Column{{Head: "What"}, {Head: "Ask for"}, {Head: "Typical", Right: true}}, Rows: [][]string{{"Fitting", ask, "€1,100"}}}
	}
	for ask, want := range map[string]bool{strings.Repeat("hole cutters, grommets, ", 12): true, strings.Repeat("x", 200): false} {
		var d Document
		d.Add(order(ask))
		whole := false
		for _, e := range elements(t, htmlOf(t, d)) {
			whole = whole || e.name == "table" && strings.Contains(e.at["class"], "whole")
		}
		if whole != want {
			t.Errorf("%.30s…: words whole %v, want %v", ask, whole, want)
		}
	}
}

func TestHTMLTellsWhatCannotBeDrawn(t *testing.T) {
	var d Document
	d.Add(Picture{Finding: "It rises.", Height: high(20), Draw: func(sheet.Sheet, sheet.Rect) error { return errors.New("no data") }})
	if _, err := d.HTML(htmlInfo); err == nil || !strings.Contains(err.Error(), "It rises.") || !strings.Contains(err.Error(), "no data") {
		t.Errorf("error %v", err)
	}
}
