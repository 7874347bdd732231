package quantity

import (
	"strconv"
	"strings"
	"unicode"
)

// Clip is the beginning of a text, on one line, for an error sentence: at most
// so many characters, and a mark where more followed.
func Clip(text string, most int) string {
	r := []rune(text)
	if len(r) > most {
		r = append(r[:most], '…')
	}
	return strings.Map(func(c rune) rune {
		if unicode.IsControl(c) {
			return ' '
		}
		return c
	}, string(r))
}

// Quoted quotes what was found for an error sentence, shortened; an empty text
// is nothing.
func Quoted(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return "nothing"
	}
	return strconv.Quote(Clip(text, 40))
}

// Nearest gives the known word that a misspelt one most resembles, "" where a
// third of its letters would have to change, or all.
func Nearest(word string, known []string) string {
	best, least := "", min(len(word), min(len(word), 30)/3+2)
	for _, k := range known {
		if d := Distance(k, Clip(word, 100)); d < least && k != word {
			best, least = k, d
		}
	}
	return best
}

// Distance counts the letters to insert, delete, replace or swap with their
// neighbour to turn a into b (optimal string alignment).
func Distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last := []int(nil), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row := make([]int, len(y)+1)
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(y)]
}
