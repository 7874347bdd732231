package figures

import (
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// inputsOf echoes the boat that was reckoned, defaults filled in: every row of the
// table of questions under its own name, its unit at the end (box.volume_l),
// groups within groups; null where there is no value. Under "known" it maps a
// key of the answers file to how its value is known: unsure, told or measured.
// A key that is absent there was assumed.
func inputsOf(b *economics.Boat) map[string]any {
	known := b.Known
	if known == nil {
		known = map[string]quantity.How{}
	}
	out := map[string]any{}
	for _, row := range questions.All() {
		path, value, ok := row.Datum(b)
		if !ok {
			continue
		}
		if row.Kind == questions.MoneySpan { // a sum has no upper end
			var low, high any
			if span, told := value.([]float64); told {
				if low = span[0]; span[1] > 0 {
					high = span[1]
				}
			}
			put(out, path+"_to", high)
			value = low
		}
		put(out, path, value)
	}
	out["known"] = known
	return out
}

// put sets a dotted path within nested groups.
func put(group map[string]any, path string, value any) {
	head, rest, nested := strings.Cut(path, ".")
	if !nested {
		group[head] = value
		return
	}
	inner, ok := group[head].(map[string]any)
	if !ok {
		inner = map[string]any{}
		group[head] = inner
	}
	put(inner, rest, value)
}
