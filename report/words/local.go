package words

import (
	"regexp"

	"coldreckon/economics/quantity"
)

// bothDegrees matches a temperature in both units, as the rules write it:
// "4.4 °C (40 °F)", "2 to 8 °C (36 to 46 °F)".
var bothDegrees = regexp.MustCompile(`([\d.]+(?: to [\d.]+)? °C) \(([\d.]+(?: to [\d.]+)? °F)\)`)

// Local puts the owner's unit first where a text of the rules gives a
// temperature in both.
func Local(text string, sys quantity.System) string {
	if sys != quantity.US {
		return text
	}
	return bothDegrees.ReplaceAllString(text, "$2 ($1)")
}
