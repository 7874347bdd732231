package layout

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"
)

// Markdown writes the document as CommonMark with pipe tables.
func (d Document) Markdown() string {
	d = d.worded()
	var w writer
	for _, part := range d.Parts {
		w.markdown(part, "")
	}
	return strings.TrimLeft(w.String(), "\n")
}

func (w *writer) markdown(blocks []Block, quote string) {
	put := func(s string) { w.line(quote + s) }
	for _, b := range blocks {
		switch b := b.(type) {
		case Heading:
			put("")
			put(strings.Repeat("#", b.Level+1) + " " + escape(b.Text))
		case Para:
			put("")
			put(bold(b.Lead, b.Text))
		case List:
			put("")
			for i, item := range b.Items {
				mark := cmp.Or(map[Mark]string{Number: fmt.Sprintf("%d. ", i+1), Tick: "- [ ] "}[b.Mark], "- ")
				text := bold(item.Lead, item.Text)
				if item.Source != "" {
					text += " *(" + escape(item.Source) + ")*"
				}
				put(mark + text)
			}
		case Table:
			put("")
			w.pipes(b, quote)
		case Picture:
			put("")
			put(bold(b.Finding, ""))
			if b.Caption != "" {
				put("")
				put("*" + escape(b.Caption) + "*")
			}
			if len(b.Table.Rows) > 0 {
				put("")
				w.pipes(b.Table, quote)
			}
		case Note:
			var inner writer
			inner.markdown(b, "")
			put("")
			for _, l := range strings.Split(strings.Trim(inner.String(), "\n"), "\n") {
				put("> " + l)
			}
		default:
			w.markdown(inside(b), quote)
		}
	}
}

// bold gives what stands at the head of a paragraph or of a list's item.
func bold(lead, text string) string {
	if lead == "" {
		return opening.ReplaceAllString(escape(strings.TrimSpace(text)), `$1\$2$3`)
	}
	return strings.TrimSpace("**" + escape(lead) + "** " + escape(text))
}

// opening finds what would open a list or rule a line at the head of a
// paragraph; the other signs that open a block are escaped everywhere.
var opening = regexp.MustCompile(`^(\d*)([-+.)])(\s|-|$)`)

// escape keeps signs that mean something to Markdown as they are, and a bare
// address no link: names and rules come from files that others may have written.
var escape = strings.NewReplacer("\\", `\\`, "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "!", `\!`, "&", `\&`, "|", `\|`,
	"<", "&lt;", ">", `\>`, "#", `\#`, "~", `\~`, "`", "\\`", "://", `\://`, "www.", `www\.`, "\n", " ", "\r", " ").Replace

func (w *writer) pipes(t Table, quote string) {
	row := func(cells []string) {
		var out []string
		for i := range t.Columns {
			out = append(out, escape(at(cells, i)))
		}
		w.line(quote + "| " + strings.Join(out, " | ") + " |")
	}
	heads, rules := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i], rules[i] = c.Head, "---"
		if c.Right {
			rules[i] = "---:"
		}
	}
	row(heads)
	w.line(quote + "| " + strings.Join(rules, " | ") + " |")
	for _, r := range t.Rows {
		row(r)
	}
}
