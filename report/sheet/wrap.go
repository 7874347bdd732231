package sheet

import (
	"strings"
	"unicode"
)

// Wrap breaks text into lines no wider than w mm. It breaks at spaces; a word
// longer than a line is broken inside, after a joining sign if there is one.
// A line break in s is kept. The result has at least one line.
func Wrap(s string, t Type, w float64) []string {
	var lines []string
	for part := range strings.SplitSeq(s, "\n") {
		lines = append(lines, wrapLine(Clean(part), t, w)...)
	}
	return lines
}

func wrapLine(s string, t Type, w float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }) {
		if line != "" && Width(line+" "+word, t) <= w {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for word != "" && Width(word, t) > w {
			head, tail := Break(word, t, w)
			lines = append(lines, head)
			word = tail
		}
		line = word
	}
	return append(lines, line)
}

// Break splits a word that is wider than w mm: head fits, or is one character
// where not even that fits, so that repeated breaking ends. It prefers to break
// after one of – - / . , _ @ in the second half of what fits, but not inside a
// number. A word that fits is all head.
func Break(word string, t Type, w float64) (head, tail string) {
	runes := []rune(Clean(word))
	n := min(1, len(runes))
	for n < len(runes) && Width(string(runes[:n+1]), t) <= w {
		n++
	}
	if n < len(runes) {
		for k := n; k > n/2 && k > 1; k-- {
			inside := strings.ContainsRune(".,", runes[k-1]) && unicode.IsDigit(runes[k])
			if strings.ContainsRune("–-/.,_@", runes[k-1]) && !inside {
				n = k
				break
			}
		}
	}
	return string(runes[:n]), string(runes[n:])
}

// Shorten cuts a line to at most w mm and marks the cut with an ellipsis.
// The ellipsis itself is never cut. For texts that stand in full elsewhere, such
// as running heads.
func Shorten(s string, t Type, w float64) string {
	s = Clean(s)
	if Width(s, t) <= w {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 && Width(strings.TrimRight(string(runes), " ")+"…", t) > w {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimRight(string(runes), " ") + "…"
}
