package words

import (
	"fmt"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// Unit gives the unit that matters more: the answer if it is one, else the
// better of the two.
func (v Voice) Unit() economics.OptionID {
	if way := v.r.Answer.Way(); unit(way) {
		return way
	}
	if small, larger := v.r.Of(economics.SmallUnit), v.r.Of(economics.LargerUnit); larger.BestOf100 > small.BestOf100 ||
		larger.BestOf100 == small.BestOf100 && larger.WorksOf100 > small.WorksOf100 {
		return economics.LargerUnit
	}
	return economics.SmallUnit
}

// PlateMeans says what a unit's rating plate implies; empty when nothing was
// told of it.
func (v Voice) PlateMeans(u economics.UnitFigures) string {
	m := u.Rating
	if m == nil {
		return ""
	}
	text := fmt.Sprintf("Its cooling power, as makers rate it, is about %s (%s); these pages reckon with that.", power(m.Cooling.Typical), quantity.Span(power(m.Cooling.Low), power(m.Cooling.High)))
	if m.ImpliedLeak.Typical > 0 {
		text += fmt.Sprintf(" The average current it states comes true in a box that leaks %s. This box leaks %s.", v.leak(m.ImpliedLeak.Typical), v.leak(u.LeakWPerK))
		switch ratio := u.LeakWPerK / m.ImpliedLeak.Typical; {
		case ratio > 1.25:
			text += fmt.Sprintf(" So expect about %.1f times that current here.", ratio)
		case ratio < 0.8:
			text += " So expect less than that current here."
		}
	}
	if m.ImpliedLeak.Typical > 0 && !m.Fits {
		text += " No usual unit takes that current in the largest box it is sold for: the maker's box or room differs."
	}
	return text
}

// aboard says what becomes of a unit that is already in the box; empty when
// there is none.
func (v Voice) aboard() string {
	switch {
	case v.UnitAboard():
		return "The small unit here is the one aboard, kept as it is, with half its life behind it."
	case v.r.HasRepair && v.r.RepairWorth < 1:
		return "The old unit aboard is not worth repairing: a new small unit costs no more."
	case v.r.HasRepair:
		return fmt.Sprintf("An old unit is aboard. Repairing the old unit is worth up to about %s: above that a new small unit costs less in the end.", v.Money(v.r.RepairWorth))
	}
	return ""
}

// HoldOver says how long a plate that stores cold keeps the box cold with its
// unit off; empty when neither unit has one.
func (v Voice) HoldOver() string {
	for _, u := range v.r.Units {
		if u.HoldOverHours > 0 {
			return fmt.Sprintf("The plate of %s freezes a store of cold. With the unit off it keeps the box cold for about %s in the hottest month.",
				In(u.ID), Plural(Round(u.HoldOverHours), "hour"))
		}
	}
	return ""
}

// CableRule gives the rule behind the cables named among the work.
func (v Voice) CableRule() string {
	if v.sys == quantity.US {
		return fmt.Sprintf("A cable's least area in circular mils is %.1f x amps x feet out and back / volts lost, with 3 %% lost at most. 33 CFR 183.425 and 183.455 and ABYC E-11 rule on sizes and fuses.",
			energy.CopperOhmMilPerFt)
	}
	return fmt.Sprintf("A cable's least area in mm² is %.4f x amps x metres out and back / volts lost, with 3 %% lost at most. ISO 13297:2020 rules on sizes and fuses.", energy.CopperOhmMm2PerM)
}
