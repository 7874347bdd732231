package rules

import (
	"fmt"

	"coldreckon/economics"
)

// factNamed looks a fact up in the vocabulary.
func factNamed(name string) (economics.Fact, bool) {
	for _, fact := range economics.Vocabulary() {
		if fact.Name == name {
			return fact, true
		}
	}
	return economics.Fact{}, false
}

// factNames lists every fact's name.
func factNames() []string {
	var names []string
	for _, fact := range economics.Vocabulary() {
		names = append(names, fact.Name)
	}
	return names
}

// didYouMean gives ` (did you mean "x"?)` for the known word nearest to the
// found one, or nothing when none is near.
func didYouMean(found string, known []string) string {
	nearest, least := "", 1+min(len(found), 9)/3
	for _, word := range known {
		if d := editDistance(found, word); d <= least && (nearest == "" || d < least) {
			nearest, least = word, d
		}
	}
	if nearest == "" || found == nearest {
		return ""
	}
	return fmt.Sprintf(" (did you mean %q?)", nearest)
}

// editDistance counts the letters to insert, drop or change between two words
// (Levenshtein 1966). Words too long to be a slip count as far apart.
func editDistance(a, b string) int {
	const longest = 64
	if len(a) > longest || len(b) > longest {
		return longest
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
