package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// ByDayFigures is in how many of 100 futures the small unit with its work does
// when it runs as it likes, by day only, and by day beside bottles that it freezes.
type ByDayFigures struct{ Always, Alone, Bottles int }

// mayRunByDay tells whether a unit may be run by day only: an owner would, and it
// has a thin plate in the box.
func (b *Boat) mayRunByDay(u *Unit) bool {
	return b.Power.ByDay == quantity.Yes && u.Form != FreeStanding && u.Plate == energy.Thin
}

// weighByDay counts them over a part of the futures.
func (r *Reckoning) weighByDay(s *study) error {
	habits := [3]FitOut{{}, {ByDay: true}, {ByDay: true, Bottles: true}}
	ways := make([]*proposal, len(habits))
	for i, habit := range habits {
		fit := r.Of(SmallUnit).Fit.Out
		fit.ByDay, fit.Bottles = habit.ByDay, habit.Bottles
		var err error
		if ways[i], err = newProposal(&r.Boat, s.book, s.world, s.scale, SmallUnit, fit); err != nil {
			return err
		}
	}
	rows, _, err := trials(ways, s.part(), s.seed)
	if err == nil {
		r.ByDay = &ByDayFigures{worksOf100(rows[0]), worksOf100(rows[1]), worksOf100(rows[2])}
	}
	return err
}
