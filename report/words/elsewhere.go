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
	b, o := &v.r.Boat, v.r.Of(id)
	other, err := climate.Find(b.Cruising.Elsewhere)
	if err != nil || o == nil || id == economics.DryStores {
		return ""
	}
	var nights, kept [2]float64 // here, there
	for _, m := range v.r.Months {
		at := 0
		if b.Cruising.IsElsewhere(m.Month - 1) {
			at = 1
		}
		share := o.FittedMonths[m.Month-1].Cold
		if b.CoolDecides() {
			share = o.FittedMonths[m.Month-1].Cool
		}
		nights[at] += float64(m.Nights)
		kept[at] += share * float64(m.Nights)
	}
	if nights[0] == 0 || nights[1] == 0 {
		return ""
	}
	here, there := 100*kept[0]/nights[0], 100*kept[1]/nights[1]
	names := [2]string{v.r.Ground.Name, other.Name}
	text := fmt.Sprintf("With the work, %s keeps %.0f of 100 days at %s, and %.0f at %s", In(id), here, names[0], there, names[1])
	switch {
	case here < there-2:
		return text + ": " + names[0] + " decides."
	case there < here-2:
		return text + ": " + names[1] + " decides."
	}
	return text + ": neither decides alone."
}
