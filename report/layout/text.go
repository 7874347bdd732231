package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// textWidth is the width of plain text, columns.
const textWidth = 80

// Text writes the document as plain text, 80 columns wide.
func (d Document) Text() string {
	d = d.worded()
	w := writer{}
	for _, part := range d.Parts {
		w.blocks(part, textWidth, "")
	}
	return strings.TrimLeft(w.String(), "\n")
}

type writer struct{ strings.Builder }

// line writes a line without trailing blanks.
func (w *writer) line(s string) {
	w.WriteString(strings.TrimRight(strings.ReplaceAll(s, "\u00a0", " "), " ") + "\n")
}

func (w *writer) blocks(blocks []Block, width int, indent string) {
	for _, b := range blocks {
		w.block(b, width, indent)
	}
}

func (w *writer) block(b Block, width int, indent string) {
	put := func(text string) {
		for _, l := range fold(text, width-len(indent)) {
			w.line(indent + l)
		}
	}
	switch b := b.(type) {
	case Heading:
		w.line("")
		put(b.Text)
		switch b.Level {
		case 0:
			w.line(indent + strings.Repeat("=", min(width-len(indent), utf8.RuneCountInString(b.Text))))
		case 1:
			w.line(indent + strings.Repeat("-", min(width-len(indent), utf8.RuneCountInString(b.Text))))
		}
	case Para:
		w.line("")
		put(spaced(b.Lead, b.Text))
	case List:
		w.line("")
		for i, item := range b.Items {
			mark := cmp.Or(map[Mark]string{Number: fmt.Sprintf("%d. ", i+1), Tick: "[ ] "}[b.Mark], "- ")
			text := spaced(item.Lead, item.Text)
			if item.Source != "" {
				text += " [" + item.Source + "]"
			}
			for k, l := range fold(text, width-len(indent)-len(mark)) {
				if k > 0 {
					mark = strings.Repeat(" ", len(mark))
				}
				w.line(indent + mark + l)
			}
		}
	case Table:
		w.line("")
		w.table(b, width-len(indent), indent)
	case Picture:
		w.line("")
		put(b.Finding)
		if b.Caption != "" {
			put("(" + b.Caption + ")")
		}
		if len(b.Table.Rows) > 0 {
			w.table(b.Table, width-len(indent), indent)
		}
	case Note:
		w.blocks(b, width, indent+"! ")
	default:
		w.blocks(inside(b), width, indent)
	}
}

func spaced(lead, text string) string { return strings.TrimSpace(lead + " " + text) }

// fold breaks text into lines of at most width runes; a longer word is cut.
func fold(text string, width int) []string {
	width = max(width, 4)
	var out []string
	for _, para := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.FieldsFunc(bound(para), func(r rune) bool { return r == ' ' }) {
			for utf8.RuneCountInString(word) > width {
				runes := []rune(word)
				if line != "" {
					out, line = append(out, line), ""
				}
				out, word = append(out, string(runes[:width])), string(runes[width:])
			}
			switch {
			case line == "":
				line = word
			case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
				line += " " + word
			default:
				out, line = append(out, line), word
			}
		}
		out = append(out, line)
	}
	return out
}

// table writes a table with its cells folded into columns.
func (w *writer) table(t Table, width int, indent string) {
	widths := t.widths(width)
	var heads []string
	for _, c := range t.Columns {
		heads = append(heads, c.Head)
	}
	rule := indent + strings.Repeat("-", min(width, total(widths)))
	if headed(t.Columns) {
		w.row(t, heads, widths, indent)
		w.line(rule)
	}
	tall := slices.ContainsFunc(t.Rows, func(r []string) bool { return height(r, widths) > 2 })
	for i, r := range t.Rows {
		if t.Sum && i == len(t.Rows)-1 || tall && i > 0 {
			w.line(rule)
		}
		w.row(t, r, widths, indent)
	}
}

const gap = 2

func total(widths []int) int {
	sum := gap * (len(widths) - 1)
	for _, n := range widths {
		sum += n
	}
	return sum
}

func height(cells []string, widths []int) int {
	most := 1
	for i, c := range cells {
		most = max(most, len(fold(c, widths[i])))
	}
	return most
}

func (w *writer) row(t Table, cells []string, widths []int, indent string) {
	folded := make([][]string, len(t.Columns))
	for i := range t.Columns {
		folded[i] = fold(at(cells, i), widths[i])
	}
	for k := range height(cells, widths) {
		line := indent
		for i, c := range t.Columns {
			text := at(folded[i], k)
			pad := strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(text)))
			if c.Right {
				line += pad + text
			} else {
				line += text + pad
			}
			line += strings.Repeat(" ", gap)
		}
		w.line(line)
	}
}

// wishes gives, for each column, how long its longest line and its longest word
// are.
func (t Table) wishes() (wish, least []float64) {
	n := len(t.Columns)
	wish, least = make([]float64, n), make([]float64, n)
	note := func(i int, text string) {
		for line := range strings.SplitSeq(text, "\n") {
			wish[i] = max(wish[i], float64(utf8.RuneCountInString(line)))
			for word := range strings.SplitSeq(bound(line), " ") {
				least[i] = max(least[i], float64(utf8.RuneCountInString(word)))
			}
		}
	}
	for i, c := range t.Columns {
		note(i, c.Head)
		for _, r := range t.Rows {
			note(i, at(r, i))
		}
	}
	return wish, least
}

// widths shares the width out among the columns.
func (t Table) widths(width int) []int {
	wish, least := t.wishes()
	free := float64(width - gap*(len(t.Columns)-1))
	out := make([]int, len(t.Columns))
	for i, x := range shareWidths(free, wish, least) {
		out[i] = int(x)
		if sum(least) >= free {
			out[i] = max(4, out[i])
		}
	}
	for total(out) > width { // the narrowest were given more than their part
		widest := slices.Index(out, slices.Max(out))
		if out[widest] <= 4 {
			break
		}
		out[widest]--
	}
	return out
}
