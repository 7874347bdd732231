package season

import "coldreckon/economics/heat"

// stowing is when the perishables bought at a noon go into the box, in hours
// of that boat's day. Each gives up its heat evenly, as the box then is.
type stowing struct {
	wPerK    float64 // exchange with the box, W per kelvin of StowedC over box
	from, to int     // from the start of hour from to that of hour to
	free     int     // hours before this one do not count for the exams: the food is in its bag, or follows from it
	waiting  bool    // a warm box, and the food in its bag until that has reached the limit
}

// stowing gives what goes in on a trip's day: at noon of a shop day what is
// eaten until the next, the trip's end or the seventh day.
func (s *Setup) stowing(day, nights int) stowing {
	if day%s.Goods.ShopEveryDays != 0 {
		return stowing{}
	}
	kg := s.Goods.PerishableKgPerDay * float64(min(s.Goods.ShopEveryDays, mostStowedDays, nights-day))
	return stowing{wPerK: kg * heat.PerishableKJPerKgK / (stowHours * 3.6), to: stowHours}
}

// setOut readies the first day of a trip. In a box that is at the limit or
// under, the food follows from its bag in the first six hours, which do not
// count. A warmer box is waited for.
func (b *stowing) setOut(boxC, limitC float64) {
	b.free = bagHours
	if boxC > limitC+examToleranceK {
		b.waiting, b.from, b.to = true, bagHours, bagHours+stowHours
	}
}

// wait ends hour i of a first day, with the box at boxC: once that has reached
// the limit the food goes in, and the hours count.
func (b *stowing) wait(i int, boxC, limitC float64) {
	if i >= b.from {
		b.waiting = false
	} else if boxC <= limitC+examToleranceK {
		b.waiting, b.from, b.to, b.free = false, i+1, i+1+stowHours, i+1
	}
}

// drinksWPerK gives the exchange of the drinks that are stowed as others are
// taken out, W per kelvin of cabin over box.
func (s *Setup) drinksWPerK() float64 { return s.Goods.DrinksKgPerDay * heat.WaterKJPerKgK / 86.4 }

// stowedShare gives the part of the days aboard for which perishables are stowed.
func (s *Setup) stowedShare() float64 {
	return min(1, mostStowedDays/float64(min(s.Goods.ShopEveryDays, s.Plan.longest)))
}
