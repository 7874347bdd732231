package economics

import "coldreckon/economics/season"

// fortnightDays is the length of the spell that a report draws.
const fortnightDays = 14

// Fortnight is the warmest spell of an option's typical years, hour by hour
// from noon: two weeks, or a whole trip where trips are shorter.
type Fortnight struct {
	Option OptionID
	Days   int
	Month  int // 1 to 12, of its first day
	LimitC float64
	FullWh float64 // of the bank, above the cut-off
	Hours  []season.Hour
}

// worstFortnight finds the spell with most hours over the exam's limit, and
// among equals the warmest. It is empty without nights and for dry stores.
func (p *proposal) worstFortnight(a *air) Fortnight {
	s := p.setup(&Typical)
	out := Fortnight{Option: p.option, LimitC: s.LimitC, FullWh: float64(s.Power.Bank.FullWh)}
	if p.option == DryStores {
		return out
	}
	var trace season.Trace
	var tally season.Tally
	worst := -1.0
	for year := range a.years {
		trace.Hours = trace.Hours[:0]
		if p.option == IceOnly {
			s.Ice(&a.years[year], p.icing(&s), &tally, &trace)
		} else {
			s.Unit(&a.years[year], p.refrigerator(&Typical), &tally, &trace)
		}
		for first := 0; first < len(trace.Hours); first += 24 {
			last := first
			for last < len(trace.Hours) && last-first < 24*fortnightDays && trace.Hours[last].Trip == trace.Hours[first].Trip {
				last++
			}
			spell := trace.Hours[first:last]
			if last-first < 24*fortnightDays && spell[0].Hour != 0 {
				continue // the tail of a longer trip
			}
			if badness := spellBadness(spell, s.LimitC); badness > worst {
				worst = badness
				out.Hours = append(out.Hours[:0], spell...)
			}
		}
	}
	if len(out.Hours) > 0 {
		out.Days, out.Month = len(out.Hours)/24, out.Hours[0].Month+1
	}
	return out
}

// spellBadness ranks spells: hours over the limit count first, then the sum of
// degrees.
func spellBadness(hours []season.Hour, limitC float64) float64 {
	var over, sum float64
	for _, h := range hours {
		if h.FoodC > limitC {
			over++
		}
		sum += h.FoodC
	}
	return over + sum/1e6
}
