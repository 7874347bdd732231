package quantity

import (
	"regexp"
	"strings"
)

// Spellings are the words that British and American owners write differently,
// British first. Texts are kept in the British; Local turns them over.
var Spellings = [][2]string{
	{"petrol", "gasoline"}, {"vapour", "vapor"}, {"vapours", "vapors"}, {"mould", "mold"}, {"mouldy", "moldy"}, {"litre", "liter"},
	{"litres", "liters"}, {"metre", "meter"}, {"metres", "meters"}, {"colour", "color"}, {"coloured", "colored"},
	{"neighbour", "neighbor"}, {"neighbours", "neighbors"}, {"grey", "gray"}, {"licence", "license"}, {"labour", "labor"},
	{"tin", "can"}, {"tins", "cans"}, {"tinned", "canned"}, {"spoilt", "spoiled"}, {"spanner", "wrench"},
	{"aluminium", "aluminum"}, {"fibreglass", "fiberglass"}, {"odour", "odor"},
}

var american = func() map[string]string {
	words := map[string]string{}
	for _, s := range Spellings {
		words[s[0]] = s[1]
		words[strings.ToUpper(s[0][:1])+s[0][1:]] = strings.ToUpper(s[1][:1]) + s[1][1:]
	}
	return words
}()

// word matches a word or a whole key, such as safety.fuel_vapour_space, which stays.
var word = regexp.MustCompile(`[A-Za-z_]+(?:\.[a-z_]+)*`)

// inBoth matches a figure told in the units of both systems, either first:
// "4.4 °C (40 °F)", "18 x 22 x 16 in (450 x 550 x 400 mm)".
var inBoth = func() *regexp.Regexp {
	const figure = `([\d.,/]+(?: (?:to|and|or|x) [\d.,/]+)* `
	const metric, us = figure + `(?:°C|K|L|kg|mm|m))`, figure + `(?:°F|cu ft|lb|in|ft))`
	return regexp.MustCompile(metric + ` \(` + us + `\)|` + us + ` \(` + metric + `\)`)
}()

// Local puts a public text into the owner's words: their unit first where it
// tells a figure in both, and in US units American words. A text for an owner of
// neither system stays as it is.
func Local(text string, sys System) string {
	if sys == US {
		text = word.ReplaceAllStringFunc(text, func(w string) string {
			if a := american[w]; a != "" {
				return a
			}
			return w
		})
	}
	if !strings.Contains(text, " (") {
		return text // no figure stands behind another
	}
	return inBoth.ReplaceAllStringFunc(text, func(both string) string {
		m := inBoth.FindStringSubmatch(both)
		metric, us := m[1]+m[4], m[2]+m[3]
		switch sys {
		case US:
			return us + " (" + metric + ")"
		case Metric:
			return metric + " (" + us + ")"
		}
		return both
	})
}
