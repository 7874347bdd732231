package words

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/climate"
)

// Grounds names the boat's ground, or both.
func (v Voice) Grounds() string {
	for m := range 12 {
		if other, err := climate.Find(v.r.Boat.Cruising.Elsewhere); err == nil && v.r.Boat.Cruising.IsElsewhere(m) {
			return v.r.Ground.Name + " and " + other.Name
		}
	}
	return v.r.Ground.Name
}

// Elsewhere says which of two grounds decides, by the days that a way keeps on
// each with its work; empty where there is one ground, or no way.
func (v Voice) Elsewhere(id economics.OptionID) string {
	parts, decides := v.r.Grounds(id)
	if parts == nil {
		return ""
	}
	text := fmt.Sprintf("With the work, %s keeps %.0f of 100 days at %s, and %.0f at %s", In(id), 100*parts[0].KeptShare, parts[0].Name, 100*parts[1].KeptShare, parts[1].Name)
	if decides < 0 {
		return text + ": neither decides alone."
	}
	return text + ": " + parts[decides].Name + " decides."
}
