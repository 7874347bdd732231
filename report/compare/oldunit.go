package compare

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// OldUnit is a unit aboard that is dead, or that nobody has tried.
type OldUnit struct {
	Dead     bool    `json:"dead"`
	Worth    float64 `json:"repair_worth"`    // most that mending may cost to be no dearer than a new small unit, money
	Mendable int     `json:"causes_under_it"` // of so many Causes, those that cost no more than that at their dearest
	Causes   int     `json:"causes"`
	Wanted   bool    `json:"unit_leads"` // whether a unit is among the ways that lead
}

// oldUnitOf gives the old unit of a boat, nil where none is told of.
func oldUnitOf(r *economics.Reckoning, book economics.Book) *OldUnit {
	if !r.HasRepair {
		return nil
	}
	v := words.Of(r, book)
	u := &OldUnit{Dead: r.Boat.Box.FittedUnit == economics.UnitDead, Worth: r.RepairWorth, Wanted: v.WantsUnit()}
	u.Mendable, u.Causes = v.Mendable()
	return u
}

// oldUnit says in a line whether to mend, replace or take out.
func (t *Table) oldUnit(r *Row) string {
	u := r.Old
	text := "a unit aboard that nobody has tried."
	if u.Dead {
		text = "a dead unit aboard."
	}
	worth := "its price against a new one decides"
	if !t.foreign(r) {
		worth = "worth up to " + r.money(u.Worth)
	}
	switch {
	case u.Worth < 1:
		text += " Mending is worth nothing here, a new small unit costs no more:"
		if u.Wanted {
			return text + " replace it."
		}
		return text + " take it out."
	case u.Wanted:
		text += " Mend it, " + worth + "; over that, replace it."
	default:
		text += " Her figures ask for no unit: mend it, " + worth + ", or take it out and have its room back."
	}
	return text + fmt.Sprintf(" Of %d usual causes %d cost less even at their dearest; half an hour with a meter tells which it is.", u.Causes, u.Mendable)
}

// oldUnits is a line for each boat with an old unit; empty where there is none.
func (t *Table) oldUnits() []layout.Block {
	list := layout.List{Fine: true}
	for _, r := range t.inOrder() {
		if r.Old != nil && !r.NotTold {
			list.Items = append(list.Items, layout.Item{Lead: r.name() + ":", Text: t.oldUnit(r)})
		}
	}
	if len(list.Items) == 0 {
		return nil
	}
	return []layout.Block{layout.Heading{Level: 1, Text: "Dead or untried units"}, list}
}
