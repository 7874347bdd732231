package questions

import (
	"regexp"
	"strings"

	"coldreckon/economics/quantity"
)

// crews are what a crew calls itself.
var crews = map[string]string{"me": "1", "just me": "1", "only me": "1", "myself": "1", "alone": "1", "solo": "1", "single handed": "1",
	"couple": "2", "a couple": "2", "two of us": "2", "the two of us": "2", "both of us": "2"}

var adults = regexp.MustCompile(`^(\S+) adults?(?: (?:and |\+ |& |with )?(\S+) (?:kids?|child|children))?$`)

// crewSaid counts a crew, a child as half.
func crewSaid(text string, _ owner) string {
	words := loose(text)
	if n := crews[words]; n != "" {
		return n
	}
	m := adults.FindStringSubmatch(words)
	if m == nil {
		return text
	}
	n, ok := Count(m[1])
	if m[2] != "" {
		kids, counted := Count(m[2])
		n, ok = n+kids/2, ok && counted
	}
	if !ok {
		return text
	}
	return quantity.FormatNumber(n)
}

var bags = regexp.MustCompile(`^(\S+) (?:bags?|blocks?)(?: of ice)?$`)

// bagsSaid weighs bags or blocks of ice.
func bagsSaid(text string, o owner) string {
	if m := bags.FindStringSubmatch(loose(text)); m != nil {
		if n, ok := Count(m[1]); ok {
			return quantity.FormatNumber(n*float64(o.bag)) + " kg"
		}
	}
	return text
}

var panels = regexp.MustCompile(`(?i)^(?:([a-z]+) )?(\d.*?)(?: (?:solar )?panels?)?$`)

// panelSaid leaves the panels out of "two 50 W panels".
func panelSaid(text string, _ owner) string {
	m := panels.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return text
	}
	if n, ok := Count(m[1]); ok {
		return quantity.FormatNumber(n) + " x " + m[2]
	}
	return m[1] + " " + m[2]
}
