package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// piece is a stretch of a text, or the place of a fact in it.
type piece struct{ text, fact string }

// splitPlaces cuts a text at its {fact} places. A brace without its fellow
// stays text.
func splitPlaces(text string) []piece {
	var pieces []piece
	for {
		before, rest, open := strings.Cut(text, "{")
		name, after, closed := strings.Cut(rest, "}")
		if !open || !closed {
			return append(pieces, piece{text: text})
		}
		pieces = append(pieces, piece{text: before}, piece{fact: name})
		text = after
	}
}

// usUnits is how metric units are shown to an owner who reads US units.
var usUnits = map[string]string{"L": "cu ft", "kg": "lb", "kg/day": "lb/day", "mm": "in", "m²": "sq ft", "°C": "°F"}

// Fill puts facts into the {fact} places of a text, such as the Reason of an
// economics.Criterion, in the owner's unit system and currency. Figures are
// rounded to two significant digits; where that would print two different
// figures of one unit alike, up to five are tried to tell them apart. It fails
// on a name that is no fact's and on a missing or impossible fact.
func Fill(text string, facts economics.Facts, system quantity.System, currency string) (string, error) {
	pieces := splitPlaces(text)
	for _, p := range pieces {
		if p.fact == "" {
			continue
		}
		fact, known := factNamed(p.fact)
		if !known {
			return "", fmt.Errorf("found the place {%s}; expected the name of a fact", p.fact)
		}
		if err := checkFact(&fact, facts); err != nil {
			return "", err
		}
	}
	const fewest, most = 2, 5
	for digits := fewest; digits <= most; digits++ {
		if filled, clear := fillWith(pieces, facts, system, currency, digits); clear {
			return filled, nil
		}
	}
	filled, _ := fillWith(pieces, facts, system, currency, fewest)
	return filled, nil
}

// fillWith fills with the given number of significant digits, and reports
// whether different figures of one unit look different.
func fillWith(pieces []piece, facts economics.Facts, system quantity.System, currency string, digits int) (string, bool) {
	type shown struct{ unit, text string }
	seen := map[shown]float64{}
	clear := true
	var b strings.Builder
	for _, p := range pieces {
		b.WriteString(p.text)
		if p.fact == "" {
			continue
		}
		fact, _ := factNamed(p.fact)
		switch value := facts[p.fact].(type) {
		case float64:
			text := showNumber(value, fact.Unit, system, currency, digits)
			key := shown{fact.Unit, text}
			if other, taken := seen[key]; taken && other != value {
				clear = false
			}
			seen[key] = value
			b.WriteString(text)
		case bool:
			b.WriteString(map[bool]string{true: "yes", false: "no"}[value])
		case string:
			b.WriteString(strings.ReplaceAll(value, "_", " "))
		}
	}
	return b.String(), clear
}

// showNumber writes a figure with its unit.
func showNumber(value float64, unit string, system quantity.System, currency string, digits int) string {
	if us := usUnits[unit]; us != "" && system == quantity.US {
		value, unit = quantity.In(value, strings.TrimSuffix(unit, "/day"), strings.TrimSuffix(us, "/day")), us
	}
	switch unit {
	case "0 to 1", "0 or more":
		return rounded(100*value, digits) + " %"
	case "money":
		if utf8.RuneCountInString(currency) == 1 {
			return currency + rounded(value, digits)
		}
		return strings.TrimSpace(currency + " " + rounded(value, digits))
	}
	text := rounded(value, digits)
	if one, plural := singular[unit]; plural && text == "1" {
		unit = one
	}
	return text + " " + unit
}

// singular is how a plural unit reads after the figure 1.
var singular = map[string]string{"nights": "night", "days": "day", "hours": "hour", "people": "person", "errands": "errand", "person-nights": "person-night"}

// rounded writes a number to some significant digits, thousands apart by
// commas, without an exponent.
func rounded(value float64, digits int) string {
	if value == 0 {
		return "0"
	}
	after := digits - 1 - int(math.Floor(math.Log10(math.Abs(value))))
	step := math.Pow(10, float64(after))
	text := strconv.FormatFloat(math.Round(value*step)/step, 'f', max(after, 0), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return quantity.Thousands(text)
}
