package layout

import (
	"strings"
	"unicode/utf8"
)

// How many characters a line of a table may hold before it becomes lists of
// pairs: on a telephone, and on a screen that two columns of text fit.
const (
	charactersNarrow = 40
	charactersWide   = 84
)

// fits reports whether a table can be read within so many characters: its
// longest words fit, and no cell is folded into a tower of them.
func (t Table) fits(characters float64) bool {
	wish, _ := t.wishes()
	free := characters - gap*float64(len(t.Columns)-1)
	return t.longestWords() <= characters && (sum(wish) <= 1.6*free || len(t.Columns) <= 2)
}

// table writes a table, and beside it, for screens too narrow for it, the same
// as lists of pairs.
func (w *htmlWriter) table(t Table) {
	class, pairs, characters := "wider", "less-wide", charactersWide
	switch {
	case len(t.Columns) <= 1 || t.fits(charactersNarrow) || !t.paired():
		class, pairs, characters = "", "", charactersNarrow
	case t.fits(charactersWide):
		class, pairs = "wide", "narrow"
	}
	if t.longestWords() <= 0.8*float64(characters) {
		class += " whole"
	}
	w.grid(t, class)
	if pairs != "" {
		w.pairs(t, pairs)
	}
}

// longestWords is how many characters a line needs that breaks no word.
func (t Table) longestWords() float64 {
	_, least := t.wishes()
	return sum(least) + gap*float64(len(t.Columns)-1)
}

// paired reports whether every column has a name to stand before its cells.
func (t Table) paired() bool {
	for _, c := range t.Columns[min(1, len(t.Columns)):] {
		if c.Head == "" {
			return false
		}
	}
	return true
}

func (w *htmlWriter) grid(t Table, class string) {
	if t.Fine {
		class += " fine"
	}
	w.put("<table class=\"%s\">\n", strings.TrimSpace(class))
	cell := func(tag string, i int, scope, text string) {
		class := ""
		switch {
		case t.Framed > 0 && i == t.Framed:
			class = " class=\"framed\""
		case t.Columns[i].Right:
			class = " class=\"right\""
		}
		w.put("<%s%s%s>%s</%s>", tag, scope, class, inline(text), tag)
	}
	if headed(t.Columns) {
		w.put("<thead><tr>")
		for i, c := range t.Columns {
			if c.Head == "" {
				cell("td", i, "", "")
				continue
			}
			cell("th", i, " scope=\"col\"", c.Head)
		}
		w.put("</tr></thead>\n")
	}
	w.put("<tbody>\n")
	for k, row := range t.Rows {
		if t.Sum && k == len(t.Rows)-1 {
			w.put("<tr class=\"sum\">")
		} else {
			w.put("<tr>")
		}
		for i := range t.Columns {
			if i == 0 && len(t.Columns) > 1 && at(row, 0) != "" {
				cell("th", i, " scope=\"row\"", row[0])
				continue
			}
			cell("td", i, "", at(row, i))
		}
		w.put("</tr>\n")
	}
	w.put("</tbody></table>\n")
}

// pairs writes a table as lists of names and values.
func (w *htmlWriter) pairs(t Table, class string) {
	w.put("<div class=\"%s\">\n", class)
	one := func(name string, framed bool, of func(i int) (string, string), n int) {
		if framed {
			w.put("<div class=\"way framed\">")
		} else {
			w.put("<div class=\"way\">")
		}
		if name != "" {
			w.put("<p><strong>%s</strong></p>", inline(name))
		}
		w.put("<dl>\n")
		for i := range n {
			term, text := of(i)
			if term == "" || text == "" {
				continue
			}
			long := ""
			if utf8.RuneCountInString(term)+utf8.RuneCountInString(text) > charactersNarrow {
				long = " class=\"long\""
			}
			w.put("<div%s><dt>%s</dt><dd>%s</dd></div>\n", long, inline(term), inline(text))
		}
		w.put("</dl></div>\n")
	}
	if t.ByColumn {
		for c := 1; c < len(t.Columns); c++ {
			one(t.Columns[c].Head, c == t.Framed, func(i int) (string, string) { return at(t.Rows[i], 0), at(t.Rows[i], c) }, len(t.Rows))
		}
	} else {
		for _, row := range t.Rows {
			one(at(row, 0), false, func(i int) (string, string) { return t.Columns[i+1].Head, at(row, i+1) }, len(t.Columns)-1)
		}
	}
	w.put("</div>\n")
}
