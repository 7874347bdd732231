package climate

import (
	"cmp"
	"slices"
	"strings"

	"coldreckon/economics/quantity"
)

// alike gives up to three ids, nearest first, that a mistyped id may have
// meant: those that contain it, else those few edits away.
func alike(grounds []Ground, id string) []string {
	id = strings.Join(strings.FieldsFunc(strings.ToLower(id), func(r rune) bool {
		return r == ' ' || r == '_' || r == '-'
	}), "-")
	if id == "" {
		return nil
	}
	var holding []string
	for _, g := range grounds {
		if strings.Contains(g.ID, id) {
			holding = append(holding, g.ID)
		}
	}
	if len(holding) > 0 {
		return holding[:min(3, len(holding))]
	}
	// A third of the letters wrong is still a slip; more is another word.
	edits := make(map[string]int)
	var near []string
	for _, g := range grounds {
		if n := quantity.Distance(id, g.ID); n <= max(1, len(id)/3) {
			edits[g.ID] = n
			near = append(near, g.ID)
		}
	}
	slices.SortStableFunc(near, func(a, b string) int { return cmp.Compare(edits[a], edits[b]) })
	return near[:min(3, len(near))]
}
