package compare

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// described reports whether somebody told the size of the box, or tested it.
// Without that a boat is a usual one under a name of her own.
func described(b *economics.Boat) bool {
	for _, key := range []string{"box.volume", "box.inside"} {
		if how := b.Known[key]; how == quantity.Told || how == quantity.Measured {
			return true
		}
	}
	e := b.Evidence
	return len(e.IceTests)+len(e.JugTests)+len(e.IceHistory)+len(e.Logs) > 0
}

// whyNot says why a boat has no place among the others; empty where she has.
func whyNot(row *Row, r *economics.Reckoning, book economics.Book) string {
	switch {
	case row.NotTold:
		return "Nobody told the size of her box, so she has no place in the order." + askFor(row.File)
	case row.Case == economics.NoNights, row.Case == economics.NothingCold, !row.Works,
		row.Case == economics.Forbidden && r.Answer.Otherwise == "":
		return words.Of(r, book).Answer()
	}
	return ""
}

// askFor says how a boat is told of, where her answers are in a file.
func askFor(file string) string {
	if file == "" || file == "-" || strings.Contains(file, ":") {
		return ""
	}
	return fmt.Sprintf(" Ten minutes with 'coldreckon ask %s' would give her one.", file)
}

// standing heads a row that has no place in the order.
func (r *Row) standing() string {
	switch {
	case r.Error != "":
		return "Not reckoned"
	case r.NotTold:
		return "Not enough told"
	case r.Case == economics.NoNights, r.Case == economics.NothingCold:
		return "Nothing to decide"
	case r.Case == economics.Forbidden:
		return "Not where planned"
	}
	return "Nothing found"
}

// unasked names the facts that a boat's people may not know, as a list calls
// them.
var unasked = map[string]string{
	"fuel_vapour_space": "fuel vapour where a unit would stand", "co_alarm": "carbon monoxide alarm", "lithium": "lithium battery",
	"children": "children aboard", "latch_opens_inside": "lid that opens from inside", "dry_ice": "dry ice", "fish": "fresh fish",
	"wiring_known": "state of the wiring", "left_unattended": "left running alone", "medicine": "medicine aboard", "vulnerable": "crew at risk",
}

// unansweredBehind names the unanswered questions any one of which, answered the
// safe way, would silence a caution; none where it holds whatever they are. sets
// are the facts under which it fired.
func unansweredBehind(caution string, pack rules.Pack, sets []economics.Facts) ([]string, error) {
	one := rules.Pack{Cautions: slices.DeleteFunc(slices.Clone(pack.Cautions), func(c rules.Caution) bool { return c.ID != caution })}
	var out []string
	for _, fact := range slices.Sorted(maps.Keys(unasked)) {
		if sets[0][fact] != string(quantity.Unknown) {
			continue
		}
		for _, safe := range []quantity.Tri{quantity.Yes, quantity.No} {
			var told []economics.Facts
			for _, facts := range sets {
				facts = maps.Clone(facts)
				facts[fact] = string(safe)
				told = append(told, facts)
			}
			found, err := one.Judge(told...)
			if err != nil {
				return nil, err
			}
			if len(found) == 0 {
				out = append(out, unasked[fact])
				break
			}
		}
	}
	return out, nil
}
