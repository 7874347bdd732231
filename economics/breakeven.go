package economics

import "coldreckon/economics/cost"

// BreakEven is the nights a year at which a unit's yearly equivalent equals
// that of ice, both with the work found for them. It scales everything billed by
// the night and keeps the season's pattern.
type BreakEven struct {
	Option OptionID // the unit: SmallUnit or LargerUnit
	Nights float64  // 0 to 365
	Known  bool     // false when the two never meet within a year, or there are no nights to scale
	// UnitCheaper tells, when not Known, which way it never turns.
	UnitCheaper bool
}

// breakEven finds where the unit's and the ice's yearly costs cross: each is a
// part that does not depend on nights and a part that grows with them.
func breakEven(id OptionID, unit, ice *Outcome) BreakEven {
	out := BreakEven{Option: id}
	nights := unit.year.nights
	unitFixed, unitNightly := split(unit)
	iceFixed, iceNightly := split(ice)
	out.UnitCheaper = unitFixed+unitNightly < iceFixed+iceNightly
	if nights < 0.5 {
		return out
	}
	difference := func(n float64) float64 {
		return unitFixed - iceFixed + (unitNightly-iceNightly)*n/nights
	}
	out.Nights, out.Known = cost.Crossing(difference, 0, 365)
	return out
}

// split parts a yearly equivalent into what comes whatever the nights and what
// comes with them.
func split(o *Outcome) (fixed, nightly float64) {
	for _, l := range o.Lines {
		if l.Yearly != 0 && l.ID != lineUpkeep {
			nightly += l.Yearly
		}
	}
	return o.Yearly - nightly, nightly
}
