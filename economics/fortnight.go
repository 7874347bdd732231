package economics

import (
	"slices"

	"coldreckon/economics/season"
)

// fortnightDays is the length of the spell that a report draws.
const fortnightDays = 14

// Fortnight is the warmest spell of an option's typical years, hour by hour
// from noon: two weeks, or a whole trip where trips are shorter.
//
// It is empty, with Days and Month 0, for dry stores and without nights aboard.
type Fortnight struct {
	Days   int     // 14 at most
	Month  int     // 1 to 12, of its first day
	LimitC float64 // of the cold-day exam
	FullWh float64 // usable charge of the full battery, above the cut-off
	Hours  []season.Hour
}

// recorder sees a proposal's years hour by hour and keeps the worst spell:
// that with most hours over the exam's limit, and among equals the warmest. A
// nil recorder sees nothing.
type recorder struct {
	year  season.Trace
	worst spell
	hours []season.Hour // of the worst spell
}

// spell is how bad some hours were.
type spell struct {
	over   int     // hours over the limit
	degree float64 // sum of the food's temperatures
}

func (s *spell) add(o spell) { s.over, s.degree = s.over+o.over, s.degree+o.degree }

func (s spell) worseThan(o spell) bool {
	return s.over > o.over || s.over == o.over && s.degree > o.degree
}

// trace gives what the next year, of so many hours, is to be written on.
func (w *recorder) trace(hours int) *season.Trace {
	if w == nil {
		return nil
	}
	w.year.Hours = slices.Grow(w.year.Hours[:0], hours)
	return &w.year
}

// review looks the year through that has been written.
func (w *recorder) review(limitC float64) {
	if w == nil {
		return
	}
	hours := w.year.Hours
	days := make([]spell, len(hours)/24)
	for i, h := range hours {
		d := &days[i/24]
		d.degree += h.FoodC
		if h.FoodC > limitC {
			d.over++
		}
	}
	for first := range days {
		var s spell
		last := first
		for ; last < len(days) && last-first < fortnightDays && hours[24*last].Trip == hours[24*first].Trip; last++ {
			s.add(days[last])
		}
		if last-first < fortnightDays && hours[24*first].Hour != 0 {
			continue // the tail of a longer trip
		}
		if len(w.hours) == 0 || s.worseThan(w.worst) {
			w.worst, w.hours = s, append(w.hours[:0], hours[24*first:24*last]...)
		}
	}
}

// fortnight gives the worst spell seen of a proposal's years.
func (w *recorder) fortnight(p *proposal) Fortnight {
	s := p.setup(&Typical)
	out := Fortnight{LimitC: s.LimitC, FullWh: float64(s.Power.Bank.FullWh), Days: len(w.hours) / 24, Hours: w.hours}
	if len(w.hours) > 0 {
		out.Month = w.hours[0].Month + 1
	}
	return out
}
