package economics

import (
	"math"
	"slices"

	"coldreckon/economics/quantity"
)

// Fit is the work found for an option.
type Fit struct {
	Out     FitOut
	Reached bool      // whether the option works with it in nine of ten of the search's futures
	Items   []FitItem // the pieces of Out, in the order a yard would try them
	// SearchWorks is the share of the search's futures, 0 to 1, in which the
	// option works, SearchPresent its mean present cost over every fourth of
	// them; LeastPresent that of the cheapest fit-out, which may have more pieces.
	SearchFutures               int
	SearchWorks                 float64
	SearchPresent, LeastPresent float64
	LostShare                   float64 // of the told box that foam takes, 0 to 1
	// Tight is a much cheaper fit-out that takes more of the box, nil where
	// there is none.
	Tight *Fit
}

// Cools reports whether any of the work changes how cold the food gets: all but
// an alarm does.
func (f *Fit) Cools() bool { return len(f.Items) > 1 || len(f.Items) == 1 && !f.Out.Alarm }

// findFit searches the work for an option and prepares the option with it.
func findFit(s *searcher) (Fit, *proposal, error) {
	fit := Fit{SearchFutures: len(s.hard)}
	c := s.search(&fit)
	if s.failed != nil {
		return fit, nil, s.failed
	}
	s.describe(c, &fit)
	if s.failed != nil {
		return fit, nil, s.failed
	}
	p, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, fit.Out)
	if err == nil {
		p.fitted = true
	}
	return fit, p, err
}

// goalOf is the search's own goal for so many futures.
func (s *searcher) goalOf() goal {
	return goal{fails: int(math.Floor((1 - reachShare) * float64(len(s.hard)) * (1 + 1e-9)))}
}

// search gives the fit-out chosen: the cheapest that reaches without taking
// much of the box, else with it, else what comes nearest; less what it can do
// without. It is -1 where nothing has room.
func (s *searcher) search(fit *Fit) int {
	if len(s.cells) == 0 {
		return -1
	}
	roomy := func(c *cell) bool { return c.box >= 0 && s.boxes[c.box].lost <= roomyShare }
	tight := func(c *cell) bool { return c.box >= 0 && !roomy(c) }
	any := func(c *cell) bool { return c.box >= 0 }
	s.harden(s.whole(s.tops(any)[0]))
	g := s.goalOf()
	best := s.cheapest(roomy, g, math.Inf(1))
	if best < 0 {
		best = s.cheapest(tight, g, math.Inf(1))
	} else if c := s.cheapest(tight, g, (1-muchCheaper)*s.priced(best).cost); c >= 0 {
		fit.Tight = &Fit{SearchFutures: len(s.hard)}
		fit.Tight.LeastPresent = s.priced(c).cost
		s.describe(s.drop(c, g), fit.Tight)
	}
	if best < 0 {
		if best, g = s.nearest(roomy); best < 0 {
			best, g = s.nearest(any)
		}
	}
	if s.failed != nil || best < 0 {
		return best
	}
	fit.LeastPresent = s.priced(best).cost
	return s.drop(best, g)
}

// nearest gives the cheapest fit-out that comes nearly as near as any, and the
// goal that this is.
func (s *searcher) nearest(allowed func(*cell) bool) (int, goal) {
	n := len(s.hard)
	most, cold, top := -1, 0.0, -1
	glanced := -1
	for _, c := range s.tops(allowed) {
		l := s.priced(c)
		if works := l.sampleWorks(s.sample); works > glanced || works == glanced && l.cold > cold {
			glanced, cold, top = works, l.cold, c
		}
	}
	if top >= 0 {
		most = s.whole(top).works()
	}
	if top < 0 {
		return -1, goal{}
	}
	g := goal{fails: n - most + int(nearShare*float64(n)), cold: cold - nearCold, than: s.priced(top)}
	if c := s.cheapest(allowed, g, math.Inf(1)); c >= 0 {
		return c, g
	}
	return top, g
}

// describe fills in a fit from the cell chosen.
func (s *searcher) describe(c int, fit *Fit) {
	if c < 0 {
		return
	}
	s.priced(c)
	l, n := s.whole(c), float64(len(s.hard))
	fit.Out, fit.Reached = s.cells[c].fit, l.fails <= s.goalOf().fails
	fit.SearchWorks, fit.SearchPresent = float64(l.works())/n, l.cost
	fit.Items = fit.Out.items()
	if p, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, fit.Out); err == nil {
		fit.LostShare = max(0, 1-p.volumeL/p.toldL)
	}
	for i := range fit.Items {
		item := &fit.Items[i]
		without := s.find(fit.Out.without(item.Piece))
		if without < 0 { // it would not go in
			continue
		}
		w := s.priced(without)
		item.WithoutWorksOf100 = int(math.Round(100 * float64(w.sampleWorks(s.sample)) / float64(len(s.sample))))
		item.WithoutPresent = w.cost - l.cost
	}
	s.addAlarm(fit)
}

// limitBuys gives the fit-out within a first cost that works most often, the
// cheapest of equals; nil where the limit does not buy the option at all.
func (s *searcher) limitBuys(limit float64) *LimitBuys {
	within := func(c *cell) bool { return c.box >= 0 && c.first <= limit+1e-6 }
	best := -1
	for _, c := range s.tops(within) {
		s.priced(c)
		l := s.whole(c)
		if best < 0 || l.works() > s.looks[best].works() || l.works() == s.looks[best].works() && l.cost < s.looks[best].cost {
			best = c
		}
	}
	if best < 0 || s.failed != nil {
		return nil
	}
	l := s.looks[best]
	out := s.cells[best].fit
	return &LimitBuys{Out: out, Items: out.items(), First: s.cells[best].first, KeptShare: l.cold,
		WorksOf100: int(math.Round(100 * float64(l.works()) / float64(len(s.hard))))}
}

// PieceCost is what one piece of the work costs at first: money, and hours of
// own hands where they do it.
type PieceCost struct {
	Piece Piece
	Cost  quantity.Range
	Hours quantity.Range
}

// pieceCosts gives what each piece of a proposal's work costs at first: the
// lines of the price book that it adds, at their low, typical and high prices.
func (p *proposal) pieceCosts() ([]PieceCost, error) {
	items := p.fit.items()
	var out []PieceCost
	all, err := p.workLines(p.fit)
	if err != nil {
		return nil, err
	}
	for _, item := range items {
		rest, err := p.workLines(p.fit.without(item.Piece))
		if err != nil {
			return nil, err
		}
		out = append(out, PieceCost{Piece: item.Piece})
		piece := &out[len(out)-1]
		for _, line := range all {
			count := line.Count
			if i := slices.IndexFunc(rest, func(l CostLine) bool { return l.ID == line.ID }); i >= 0 {
				count -= rest[i].Count
			}
			book, ok := p.book.Price(line.ID)
			if !ok || math.Abs(count) < 1e-9 || book.Price.Typical == 0 {
				continue
			}
			share := count / line.Count
			piece.Hours = piece.Hours.Plus(line.Hours.Scale(share))
			piece.Cost = piece.Cost.Plus(book.Price.Scale(line.First * share / book.Price.Typical))
		}
	}
	return out, nil
}

// workLines gives the cost lines of the option with a fit-out, nothing used aboard.
func (p *proposal) workLines(fit FitOut) ([]CostLine, error) {
	q, err := newProposal(p.boat, p.book, p.world, p.leakScale, p.option, fit)
	if err != nil {
		return nil, err
	}
	o, err := q.calculator().outcome(&Typical, aYear{})
	return slices.Clone(o.Lines), err
}
