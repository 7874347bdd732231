package wizard

import (
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

// match gives the indices of the choices that a text may mean: one by its
// number or its full words, else all that have the text at the start of a
// word, else all that have it anywhere.
func match(choices []Choice, text string) []int {
	if n, err := strconv.Atoi(strings.TrimSpace(text)); err == nil {
		if n >= 1 && n <= len(choices) {
			return []int{n - 1}
		}
		return nil
	}
	word := loosen(text)
	if word == "" {
		return nil
	}
	rules := []func(string) bool{
		func(w string) bool { return w == word },
		func(w string) bool { return strings.HasPrefix(w, word) },
		func(w string) bool { return strings.Contains(" "+w, " "+word) },
		func(w string) bool { return len(word) > 2 && strings.Contains(w, word) },
	}
	for _, rule := range rules {
		var found []int
		for i, c := range choices {
			for _, w := range c.words() {
				if rule(loosen(w)) {
					found = append(found, i)
					break
				}
			}
		}
		if len(found) > 0 {
			return found
		}
	}
	return nil
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
