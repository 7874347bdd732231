package layout

import (
	"cmp"
	"fmt"
	"html"
	"strings"
	"unicode"

	"coldreckon/report/sheet"
)

// HTML writes the document as one file for a screen of any width, light or dark,
// which also prints: real headings and tables, pictures as inline SVG, no script,
// nothing fetched. info gives language, author and date; its title and subject
// are replaced. Errors: a picture that cannot be drawn.
func (d Document) HTML(info sheet.Info) ([]byte, error) {
	d = d.worded()
	w := htmlWriter{}
	for _, part := range d.Parts {
		w.put("<section>\n")
		w.blocks(part)
		w.put("</section>\n")
	}
	if w.err != nil {
		return nil, w.err
	}
	var out strings.Builder
	fmt.Fprintf(&out, "<!DOCTYPE html>\n<html lang=\"%s\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"generator\" content=\"%s\">\n",
		safe(info.Lang), safe(info.Author))
	fmt.Fprintf(&out, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"description\" content=\"%s\">\n", safe(d.Subject))
	if !info.Date.IsZero() {
		fmt.Fprintf(&out, "<meta name=\"dcterms.created\" content=\"%s\">\n", info.Date.UTC().Format("2006-01-02"))
	}
	size := ""
	if d.Enlarged > 1 {
		size = fmt.Sprintf("html { font-size: %.0f%%; }\n", 100*d.Enlarged)
	}
	fmt.Fprintf(&out, "<title>%s</title>\n<style>\n%s%s</style>\n</head>\n<body>\n", safe(d.Title), styleSheet, size)
	if len(w.contents) >= leastContents {
		out.WriteString("<nav aria-label=\"Contents\"><details><summary>Contents</summary><ul>\n")
		for i, text := range w.contents {
			fmt.Fprintf(&out, "<li><a href=\"#h%d\">%s</a></li>\n", i+1, safe(text))
		}
		out.WriteString("</ul></details></nav>\n")
	}
	fmt.Fprintf(&out, "<main>\n%s</main>\n", w.out.String())
	if d.Foot != "" {
		fmt.Fprintf(&out, "<footer><p>%s</p></footer>\n", safe(d.Foot))
	}
	out.WriteString("</body>\n</html>\n")
	return []byte(out.String()), nil
}

// leastContents is how many headings make a table of contents worth its room.
const leastContents = 4

// htmlWriter writes blocks and keeps the first fault.
type htmlWriter struct {
	out      strings.Builder
	contents []string // headings of the two upper levels, numbered from 1
	level    int      // of the last heading, 0 before the first
	pictures int
	err      error
}

func (w *htmlWriter) put(format string, args ...any) { fmt.Fprintf(&w.out, format, args...) }

// safe escapes a text for HTML, inside an element or a quoted attribute. What
// cannot be seen is dropped, so that a name cannot turn the line's direction.
func safe(text string) string {
	text = strings.Map(func(r rune) rune {
		if r != '\n' && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
	return html.EscapeString(text)
}

// inline is a run of text: figures bound to their units, line breaks kept.
func inline(text string) string {
	return strings.ReplaceAll(safe(bound(strings.TrimSpace(text))), "\n", "<br>")
}

// ledInline sets a bold lead before a text.
func ledInline(lead, text string) string {
	if lead == "" {
		return inline(text)
	}
	return strings.TrimSpace("<strong>" + inline(lead) + "</strong> " + inline(text))
}

func (w *htmlWriter) blocks(blocks []Block) {
	for _, b := range blocks {
		w.block(b)
	}
}

func (w *htmlWriter) block(b Block) {
	switch b := b.(type) {
	case Heading:
		id := ""
		if b.Level <= 1 {
			w.contents = append(w.contents, b.Text)
			id = fmt.Sprintf(" id=\"h%d\"", len(w.contents))
		}
		// A form's own heads may stand under a title alone: no level is skipped.
		w.level = min(b.Level+1, w.level+1)
		w.put("<h%d%s>%s</h%d>\n", w.level, id, inline(b.Text), w.level)
	case Para:
		class := ""
		if b.Style != Body {
			class = fmt.Sprintf(" class=\"%s\"", b.Style)
		}
		w.put("<p%s>%s</p>\n", class, ledInline(b.Lead, b.Text))
	case List:
		w.list(b)
	case Table:
		w.table(b)
	case Picture:
		w.picture(b)
	case Note:
		w.wrapped("note heavy", b)
	case Side:
		var shares []string
		for i := range b.Columns {
			share := 1.0
			if b.Shares != nil {
				share = b.Shares[i]
			}
			shares = append(shares, fmt.Sprintf("minmax(min(15rem,28%%),%.3gfr)", share))
		}
		w.put("<div class=\"side\" style=\"--columns: %s\">\n", strings.Join(shares, " "))
		for _, c := range b.Columns {
			w.wrapped("", c)
		}
		w.put("</div>\n")
	case Kept:
		w.wrapped("kept", b)
	default:
		w.blocks(inside(b))
	}
}

func (w *htmlWriter) wrapped(class string, blocks []Block) {
	if class != "" {
		class = " class=\"" + class + "\""
	}
	w.put("<div%s>\n", class)
	w.blocks(blocks)
	w.put("</div>\n")
}

func (w *htmlWriter) list(l List) {
	tag, class := "ul", ""
	switch l.Mark {
	case Number:
		tag = "ol"
	case Tick:
		class = " class=\"ticks\""
	}
	w.put("<%s%s>\n", tag, class)
	for _, item := range l.Items {
		source := ""
		if item.Source != "" {
			source = " <em>(" + inline(item.Source) + ")</em>"
		}
		w.put("<li>%s%s</li>\n", ledInline(item.Lead, item.Text), source)
	}
	w.put("</%s>\n", tag)
}

// narrowest is the width of a picture, mm, at which its type can be read on a
// narrow telephone: 9 points come out 13 pixels high on 328.
const narrowest = 82.0

// picture draws as narrow as the drawing allows, and as high as that needs.
func (w *htmlWriter) picture(p Picture) {
	w.pictures++
	id := fmt.Sprintf("p%d", w.pictures)
	markup, width, err := p.svg(id)
	if err != nil {
		if w.err == nil {
			w.err = fmt.Errorf("picture %q: %w", p.Finding, err)
		}
		return
	}
	w.put("<figure>\n")
	if p.Finding+p.Caption != "" {
		w.put("<figcaption>%s", ledInline(p.Finding, ""))
		if p.Caption != "" {
			w.put(" <span class=\"small\">%s</span>", inline(p.Caption))
		}
		w.put("</figcaption>\n")
	}
	w.put("<div class=\"drawing\" style=\"max-width: %.0frem\">%s</div>\n", width*remPerMM, markup)
	switch {
	case len(p.Table.Rows) == 0:
	case p.Shown:
		w.table(p.Table)
	default:
		w.put("<details><summary>The same in figures</summary>\n")
		w.table(p.Table)
		w.put("</details>\n")
	}
	w.put("</figure>\n")
}

// remPerMM is how large a picture may grow on a wide screen: 9 points to the
// height of the text around it.
const remPerMM = 0.32

// svg draws the picture: the width and the height grow until it can be drawn. A
// small one keeps its width, so that its words are not shrunk with empty paper.
func (p Picture) svg(id string) (markup string, width float64, err error) {
	least := narrowest
	if p.Widest > 0 {
		least = min(least, p.Widest)
	}
	for _, width = range []float64{least, 110, 140, 166} {
		for grown := 1.0; grown < 2.2; grown += 0.2 {
			h := p.Height(width) * grown
			var s *sheet.SVG
			if s, err = sheet.NewSVG(width, h); err != nil {
				return "", 0, err
			}
			s.AddPage()
			if err = p.Draw(s, sheet.Rect{W: width, H: h}); err != nil {
				continue
			}
			text := cmp.Or(p.Alt, p.Caption)
			markup, err = s.Markup(id, cmp.Or(p.Finding, text), text)
			return markup, width, err
		}
	}
	return "", 0, err
}
