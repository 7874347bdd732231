package rules

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
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
	if near := quantity.Nearest(found, known); near != "" {
		return fmt.Sprintf(" (did you mean %q?)", near)
	}
	return ""
}
