package wizard

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"coldreckon/economics/quantity"

	"golang.org/x/text/unicode/norm"
)

// loosen brings words to a form in which case, accents, hyphens and
// apostrophes make no difference.
func loosen(text string) string {
	var s strings.Builder
	for _, r := range norm.NFD.String(strings.ToLower(text)) {
		switch {
		case unicode.Is(unicode.Mn, r), r == '\'', r == '’':
		case unicode.IsLetter(r), unicode.IsNumber(r):
			s.WriteRune(r)
		default:
			s.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(s.String()), " ")
}

func (c Choice) words() []string { return append([]string{c.Label}, c.Also...) }

// match gives the indices of the choices that a text may mean: those of the
// likeliest rank that has any.
func match(choices []Choice, text string) []int {
	for _, rank := range ranks(choices, text) {
		if len(rank) > 0 {
			return rank
		}
	}
	return nil
}

// matches gives the indices of all choices that have to do with a text, the
// likeliest first. Where no rank has any, a letter or two anywhere will do.
func matches(choices []Choice, text string) []int {
	var found []int
	for _, rank := range ranks(choices, text) {
		for _, i := range rank {
			if !slices.Contains(found, i) {
				found = append(found, i)
			}
		}
	}
	if word := loosen(text); len(found) == 0 && word != "" {
		return having(choices, func(w string) bool { return strings.Contains(w, word) })
	}
	return found
}

// ranks gives the indices of the choices that a text may mean, the likeliest
// rank first: the one it numbers, those it names in full, those that begin with
// it, that have it at the start of a word, that have it anywhere. A choice may
// stand in several.
func ranks(choices []Choice, text string) [][]int {
	var found [][]int
	if n, err := strconv.Atoi(strings.TrimSpace(text)); err == nil && n >= 1 && n <= len(choices) {
		found = append(found, []int{n - 1})
	}
	word := loosen(text)
	if word == "" {
		return found
	}
	for _, rule := range []func(string) bool{
		func(w string) bool { return w == word },
		func(w string) bool { return strings.HasPrefix(w, word) },
		func(w string) bool { return strings.Contains(" "+w, " "+word) },
		func(w string) bool { return len(word) > 2 && strings.Contains(w, word) },
	} {
		found = append(found, having(choices, rule))
	}
	return found
}

// having gives the indices of the choices with a word, loosened, that a rule
// accepts.
func having(choices []Choice, rule func(word string) bool) []int {
	var found []int
	for i, c := range choices {
		if slices.ContainsFunc(c.words(), func(w string) bool { return rule(loosen(w)) }) {
			found = append(found, i)
		}
	}
	return found
}

// nearest gives the index of the choice with a word that most resembles a
// misspelt text.
func nearest(choices []Choice, text string) (index int, ok bool) {
	word := loosen(text)
	least := len([]rune(word))/3 + 1
	for i, c := range choices {
		for _, w := range c.words() {
			for _, part := range append(strings.Fields(loosen(w)), loosen(w)) {
				if len(part) < 3 {
					continue
				}
				if d := quantity.Distance(part, word); d < least {
					index, least, ok = i, d, true
				}
			}
		}
	}
	return index, ok
}
