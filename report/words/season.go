package words

import (
	"fmt"

	"coldreckon/economics"
)

// NoWork says why an option has no work listed.
func (v Voice) NoWork(o *economics.OptionFigures) string {
	switch {
	case v.Nights() == 0:
		return "Without nights aboard there is nothing that work could make better."
	case o.ID == economics.DryStores:
		return "Dry stores need no work, only lockers that stay dry."
	case o.WorksOf100 >= 90:
		return fmt.Sprintf("%s needs none: it works as she is in %s futures.", The(o.ID), of100(o.AsToldWorksOf100))
	}
	return fmt.Sprintf("No work was found that makes %s do: it works in %s futures.%s", In(o.ID), few100(o.WorksOf100), v.because(&o.Fitted))
}

// NotEnough says why the work found for an option does not do.
func (v Voice) NotEnough(o *economics.OptionFigures) string {
	return fmt.Sprintf("With all this %s work%s in %s futures.%s", In(o.ID), s(o.ID), few100(o.WorksOf100), v.because(&o.Fitted))
}

// WorstSpell says how the food fared in an option's worst spell; warm is how many
// of the hours that are drawn it was over the limit.
func (v Voice) WorstSpell(f economics.Fortnight, warm int) string {
	spell := fmt.Sprintf("trip of %s", Plural(float64(f.Days), "day"))
	if f.Days >= 14 {
		spell = "fortnight"
	}
	if warm == 0 {
		return fmt.Sprintf("With %s the food stays cold even in the worst %s.", In(f.Option), spell)
	}
	return fmt.Sprintf("In the worst %s with %s the food is too warm for %s.", spell, In(f.Option), Plural(float64(warm), "hour"))
}

// SunAgainstDemand says in which months aboard the sun carries the small unit in
// the box as she is, after the other loads.
func (v Voice) SunAgainstDemand() string {
	enough := 0
	var short []string
	for _, m := range v.r.Months {
		if m.SolarWhPerDay-m.HouseWhPerDay >= m.SmallWhPerDay {
			enough++
		} else {
			short = append(short, Month(m.Month))
		}
	}
	switch {
	case len(v.r.Months) == 0:
		return "There are no months aboard to show."
	case len(short) == 0:
		return "In every month aboard the sun alone would carry the small unit."
	case enough == 0:
		return "In no month aboard does the sun alone carry the small unit."
	case len(short) > 3:
		return fmt.Sprintf("The sun alone carries the small unit in %d of %d months aboard.", enough, enough+len(short))
	}
	return fmt.Sprintf("The sun alone carries the small unit, but not in %s.", Join(short))
}

// IceAtMost says what the hottest month melts.
func (v Voice) IceAtMost() string {
	m, ok := v.hottest()
	if !ok {
		return "There are no months aboard to show."
	}
	return fmt.Sprintf("In %s the box melts %s of ice a day.", Month(m.Month), v.Mass(m.IceKgPerDay))
}

// MostHeat says how much of a month's heat leaks in, and how much use brings.
func (v Voice) MostHeat(m economics.MonthFigures) string {
	if m.HeatGainW <= 0 {
		return "The box takes up no heat in its hottest month aboard."
	}
	return fmt.Sprintf("In %s %d parts in 100 of the heat leak in through walls, lid and drain; use brings the rest.", Month(m.Month), share100(m.LeakW/m.HeatGainW))
}
