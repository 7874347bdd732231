package handout

import (
	"fmt"
	"strings"

	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/rules"
)

// check is a caution as the sheet prints it: some of its sentences, under a
// topic where they need one.
type check struct {
	id       string // of the caution
	topic    string
	from, to int // its sentences, from the first, 0, up to but not including to
}

// checks are the cautions that hold for any boat or hang on what its owner
// knows, shortened to a line each.
var checks = []check{
	{"fuel-vapour", "", 0, 1},
	{"co-charging-blind", "Engine running", 1, 3},
	{"lithium", "", 0, 1},
	{"shore-untested", "Shore power", 1, 3},
	{"hull-hole", "Sea-water cooling", 0, 1},
	{"drain-overboard", "A drain through the hull", 1, 2},
	{"child-trap", "A lid that cannot be opened from inside", 1, 2},
	{"foam-fumes", "", 0, 1},
	{"dry-ice", "", 0, 1},
	{"fish-histamine", "", 0, 1},
	{"two-hour-rule", "", 0, 1},
	{"vulnerable-cold", "", 0, 1},
	{"medicine-ask", "", 0, 1},
}

// checklist gives the checks from a pack, the unit system's degrees first. It fails where the pack lacks a
// caution or a sentence of it.
func checklist(pack rules.Pack, sys quantity.System) ([]forms.Check, error) {
	text := map[string]string{}
	for _, c := range pack.Cautions {
		text[c.ID] = quantity.Local(c.Text, sys)
	}
	var out []forms.Check
	for _, c := range checks {
		all := sentences(text[c.id])
		if len(all) < c.to {
			return nil, fmt.Errorf("caution %q has %d sentences; the handout prints up to sentence %d", c.id, len(all), c.to)
		}
		out = append(out, forms.Check{Topic: c.topic, Text: strings.Join(all[c.from:c.to], " ")})
	}
	return out, nil
}

// sentences splits a text after each full stop that a space follows.
func sentences(text string) []string {
	var out []string
	for text != "" {
		i := strings.Index(text, ". ")
		if i < 0 {
			return append(out, text)
		}
		out, text = append(out, text[:i+1]), text[i+2:]
	}
	return out
}
