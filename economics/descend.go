package economics

import (
	"cmp"
	"math"
	"slices"
)

// goal is what a fit-out must reach.
type goal struct {
	fails int     // futures of the search in which it may fail, at most
	cold  float64 // mean share of days kept, at least
	than  *look   // priced, the fit-out whose days kept cold is counted from; nil for none
}

// cheapest gives the cheapest of the allowed cells that reach the goal and cost
// less than a sum; -1 when there is none.
//
// For a unit more of a piece never hurts, future by future: a cell that fails
// rules out all below it, and uses no less than one above it. Those at the top,
// with either start, are priced to bound all others. The dearest cell that may
// be cheaper than the best known is tried, again and again: from the first that
// reaches it goes down, in a sample of the futures, with less and less to spare
// until the result stands in all of them. For ice nothing of the kind is taken
// for granted but where a cell fails by far.
func (s *searcher) cheapest(allowed func(*cell) bool, g goal, under float64) int {
	for i := range s.cells {
		s.cells[i].out = false
	}
	if s.option == IceOnly {
		return s.cheapestIce(allowed, g, under)
	}
	best := -1
	take := func(c int) {
		if best >= 0 && !s.mayBeat(c, best) {
			return
		}
		if l := s.priced(c); l.cold >= g.cold && l.cost < under {
			best, under = c, l.cost
		}
	}
	for _, coldStart := range []bool{false, true} {
		for _, top := range s.tops(func(c *cell) bool { return c.fit.ColdStart == coldStart && allowed(c) }) {
			s.priced(top)
		}
	}
	order := s.tops(allowed)
	for i := range s.cells {
		order = append(order, len(s.cells)-1-i) // the dearest first
	}
	done := map[int]bool{}
	for _, next := range order {
		c := &s.cells[next]
		if s.failed != nil || c.out || done[next] || c.work >= under || !allowed(c) || s.leastCost(next) >= (1-trifle)*under {
			continue
		}
		done[next] = true
		if best >= 0 && !s.mayBeat(next, best) {
			continue // and what bounds it bounds what is below it
		}
		if !s.reaches(next, g.fails, s.hard) {
			s.ruleOut(next)
			continue
		}
		take(next)
		if low := s.fall(next, allowed, g); !done[low] {
			done[low] = true
			take(low)
		}
	}
	return best
}

// front is how many of the hardest futures stand for all of them on the way
// down, in parts of those in which a fit-out may fail.
const front = 3.5

// fall descends from a cell that reaches. The first time it does so in the
// sample; where that ends, close to the goal, shows which futures are hard. From
// then on it descends in the hardest alone, as hardly any fails in another, and
// once more where the result does not stand in all.
func (s *searcher) fall(c int, allowed func(*cell) bool, g goal) int {
	if !s.hardened {
		s.hardened = true
		low := s.descend(c, allowed, s.sample, goal{g.fails * len(s.sample) / len(s.hard), g.cold, g.than})
		l := s.whole(low)
		if s.harden(l); l.fails <= g.fails {
			return low
		}
		s.ruleOut(low)
	}
	for s.failed == nil {
		hardest := s.hard[:min(len(s.hard), 1+int(front*float64(g.fails)))]
		low := s.descend(c, allowed, hardest, g)
		if low == c || s.reaches(low, g.fails, s.hard) {
			return low
		}
		s.ruleOut(low)
	}
	return c
}

// descend goes from a cell that reaches to one below it with cheaper work that
// still does in some futures, until none of the steps tried does.
func (s *searcher) descend(c int, allowed func(*cell) bool, futures []int, g goal) int {
	failed := make([]bool, len(s.cells))
	for moved := true; moved && s.failed == nil; {
		moved = false
		for i := range s.cells[:c] { // the cheapest first
			o := &s.cells[i]
			if o.out || failed[i] || !allowed(o) || !s.oneStep(&s.cells[c], o) || !s.above(&s.cells[c], o) {
				continue
			}
			if s.reaches(i, g.fails, futures) && (g.cold <= 0 || s.priced(i).cold >= g.cold) {
				c, moved = i, true
				break
			}
			for k := range s.below(i) {
				failed[k] = true
			}
		}
	}
	return c
}

// oneStep tells whether two cells differ in one kind of piece only.
func (s *searcher) oneStep(a, b *cell) bool {
	n := 0
	for _, differ := range []bool{a.box != b.box, a.fit.ColdStart != b.fit.ColdStart, a.fit.Vent != b.fit.Vent, a.fit.ByDay != b.fit.ByDay,
		a.fit.PanelWp != b.fit.PanelWp, a.fit.Battery != b.fit.Battery, a.fit.IceShare != b.fit.IceShare, a.fit.NoIceRuns != b.fit.NoIceRuns} {
		if differ {
			n++
		}
	}
	return n == 1
}

// cheapestIce glances at every cell and goes through those that may reach in the
// order of what they cost at a glance. Cells that have less of everything than one
// that fails by far are not looked at.
func (s *searcher) cheapestIce(allowed func(*cell) bool, g goal, under float64) int {
	type glanced struct {
		cell int
		cost float64
	}
	var open []glanced
	for i := len(s.cells) - 1; i >= 0; i-- { // the dearest first, which have the most below them
		if c := &s.cells[i]; c.out || !allowed(c) || c.work >= under || !s.mayReach(i, g, s.glance()) {
			continue
		}
		l, cost := s.look(i), 0.0
		for _, k := range s.sample[:s.glance()] {
			cost += l.trials[k].Present
		}
		open = append(open, glanced{i, cost})
	}
	slices.SortStableFunc(open, func(a, b glanced) int { return cmp.Compare(a.cost, b.cost) })
	best := -1
	for _, o := range open {
		if c := &s.cells[o.cell]; c.out || c.work >= under || !s.hopeful(o.cell, g, best) {
			continue
		}
		if l := s.priced(o.cell); s.failed == nil && l.cost < under && l.cold >= g.cold && s.reachesAlone(o.cell, g.fails) {
			best, under = o.cell, l.cost
		}
	}
	return best
}

// glance is how many futures of the sample are seen at first.
func (s *searcher) glance() int { return min(glance, len(s.sample)) }

// hopeful looks at more and more of the sample and tells whether a cell may reach
// the goal and cost less than the best known, -1 for none.
func (s *searcher) hopeful(c int, g goal, best int) bool {
	for n := s.glance(); ; n = min(2*n, len(s.sample)) {
		if !s.mayReach(c, g, n) || best >= 0 && s.dearer(c, best, n) {
			return false
		}
		if n == len(s.sample) {
			return true
		}
	}
}

// mayReach tells by the first n futures of the sample whether a cell may reach the
// goal: it fails and is warm by at most three standard errors beyond what is
// allowed. What fails by a tenth of the futures more, or keeps a tenth of the days
// less, rules out all below it.
func (s *searcher) mayReach(c int, g goal, n int) bool {
	l := s.look(c)
	s.see(l, s.sample[:n])
	if s.failed != nil {
		return false
	}
	share, seen := float64(g.fails)/float64(len(s.hard)), float64(l.count)
	beyond := (float64(l.fails) - share*seen - glanceErrors*math.Sqrt(seen*max(0.04, share*(1-share)))) / seen
	if g.than != nil {
		fewer, doubt := s.differ(n, func(k int) float64 { return g.than.trials[k].KeptShare - l.trials[k].KeptShare })
		beyond = max(beyond, fewer-(g.than.cold-g.cold)-glanceErrors*max(doubt, leastDoubt/math.Sqrt(float64(n))))
	}
	if beyond > 0.1 {
		s.ruleOut(c)
	}
	return beyond <= 0
}

// leastDoubt is by what share of the days two fit-outs differ otherwise from
// one future to the next, at least. Engineering judgement, from memory.
const leastDoubt = 0.05

// reachesAlone is reaches without help from other cells, which ice cannot have.
func (s *searcher) reachesAlone(c, allowed int) bool {
	if s.option != IceOnly {
		return s.reaches(c, allowed, s.hard)
	}
	l := s.look(c)
	for n := 0; n < len(s.hard) && allowed < len(s.hard) && l.fails <= allowed; n += batch {
		s.see(l, s.hard[n:min(n+batch, len(s.hard))])
	}
	return l.fails <= allowed
}

// harden puts the futures in order, those first in which a cell fails, then
// those in which it keeps fewest days.
func (s *searcher) harden(l *look) {
	slices.SortStableFunc(s.hard, func(a, b int) int {
		x, y := &l.trials[a], &l.trials[b]
		if x.Works != y.Works {
			if y.Works {
				return -1
			}
			return 1
		}
		return cmp.Compare(x.KeptShare, y.KeptShare)
	})
}

// drop leaves pieces out one at a time, the least loss first, while the rest
// still reaches and stays near the cheapest.
func (s *searcher) drop(c int, g goal) int {
	most := s.priced(c).cost
	most = max(most+slackMoney, most*(1+slackShare))
	for s.failed == nil {
		best := -1
		for _, item := range s.cells[c].fit.items() {
			i := s.find(s.cells[c].fit.without(item.Piece))
			if i < 0 || s.option == IceOnly && !s.hopeful(i, g, -1) || !s.reachesAlone(i, g.fails) {
				continue
			}
			if l := s.priced(i); l.cold >= g.cold && l.cost <= most && (best < 0 || l.cost < s.looks[best].cost) {
				best = i
			}
		}
		if best < 0 {
			return c
		}
		c = best
	}
	return c
}

// find gives the cell of a fit-out. Work on the box that was beaten has none
// yet: it is made, as a piece left out may lead there. It is -1 where it does
// not fit.
func (s *searcher) find(fit FitOut) int {
	for i := range s.cells {
		if s.cells[i].fit == fit {
			return i
		}
	}
	p, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, fit)
	if err != nil || !p.hasRoom() {
		return -1
	}
	s.cells = append(s.cells, cell{fit: fit, box: -1})
	return len(s.cells) - 1
}
