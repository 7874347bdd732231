package wizard

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// The widest line of prose, and the narrowest terminal catered for, in
// columns. Longer lines are hard to read; common practice, no source.
const (
	widestProse = 90
	narrowest   = 20
)

// columns gives the columns a text takes on a terminal: letters of East Asian
// scripts take two, accents none (Unicode Standard Annex 11).
func columns(text string) int {
	n := 0
	for _, r := range text {
		if unicode.Is(unicode.Mn, r) || !unicode.IsPrint(r) {
			continue
		}
		n++
		if k := width.LookupRune(r).Kind(); k == width.EastAsianWide || k == width.EastAsianFullwidth {
			n++
		}
	}
	return n
}

// wrap breaks a text into lines of at most wide columns, between words where
// it can. Lines after the first of a paragraph are indented like the first.
func wrap(text string, wide int) string {
	wide = max(narrowest, min(wide, widestProse))
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		indent := paragraph[:len(paragraph)-len(strings.TrimLeft(paragraph, " "))]
		line := ""
		for _, word := range strings.Fields(paragraph) {
			for _, piece := range cut(word, wide-len(indent)) {
				switch {
				case line == "":
					line = indent + piece
				case columns(line)+1+columns(piece) <= wide:
					line += " " + piece
				default:
					lines = append(lines, line)
					line = indent + piece
				}
			}
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

// cut breaks a word that is longer than a line.
func cut(word string, wide int) []string {
	var pieces []string
	start, taken := 0, 0
	for i, r := range word {
		n := columns(string(r))
		if taken+n > wide {
			pieces = append(pieces, word[start:i])
			start, taken = i, 0
		}
		taken += n
	}
	return append(pieces, word[start:])
}

// shorten cuts a text to at most wide columns.
func shorten(text string, wide int) string {
	if columns(text) <= wide {
		return text
	}
	return strings.TrimRight(cut(text, max(1, wide-1))[0], " ,;:") + "…"
}
