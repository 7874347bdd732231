package economics

import (
	"cmp"
	"math"
	"slices"

	"coldreckon/economics/heat"
)

const (
	// reachShare is the part of the search's futures in which a fitted option must work.
	reachShare = 0.9
	// A search always meets so many futures, drawn from a seed of its own:
	// neither the number of futures asked for nor their seed changes the work
	// that is proposed.
	searchFutures = 200
	searchSeed    = 0x5ea
	// nearShare is how much less often the nearest fit-out may work than the
	// one that works most often, where nothing reaches; and nearCold how much
	// less of the days it may keep cold. Engineering judgement, from memory.
	nearShare, nearCold = 0.05, 0.05
	// A fit-out that saves less than this share on the cheapest known is not looked
	// for. Engineering judgement, from memory.
	trifle = 0.005
	// Work is dropped while what is left stays within this share, or this sum,
	// of the cheapest. Engineering judgement, from memory.
	slackShare, slackMoney = 0.05, 10
	// Foam on the inside takes no more of the box than this, unless nothing
	// else reaches or it is much cheaper. Engineering judgement, from memory.
	roomyShare, muchCheaper = 0.4, 0.1
	// Works on the box that let in the same heat in all, within so much, are taken
	// for alike, whether it comes from cabin, sea or engine: the search is to come
	// within 1 % of the least cost. A quick look needs the way, not the last piece of
	// its work. Engineering judgement, from memory.
	alikeHeat, alikeAtAGlance = 0.002, 0.1
)

// boxWork is one piece of work on the box, ready to be compared.
type boxWork struct {
	told   *proposal // the option with it, all else as told
	fit    FitOut
	leak   heat.Conductance
	swap   float64 // L of air that an opening exchanges, at no ice
	gainW  float64 // on a mean day of the hottest month aboard
	litres float64
	lost   float64 // share of the told box
	work   price
}

// price is what work costs.
type price struct {
	present float64 // mean present cost
	first   float64 // paid at first, at typical prices
}

func (p price) plus(o price) price  { return price{p.present + o.present, p.first + o.first} }
func (p price) minus(o price) price { return price{p.present - o.present, p.first - o.first} }

// atLeast tells whether a box keeps cold no worse than another in any way, and
// has no less room.
func (a *boxWork) atLeast(b *boxWork) bool {
	const tiny = 1e-9
	return a.leak.Cabin <= b.leak.Cabin+tiny && a.leak.Sea <= b.leak.Sea+tiny && a.leak.Engine <= b.leak.Engine+tiny &&
		a.leak.Deck <= b.leak.Deck+tiny && a.swap <= b.swap+tiny
}

// cell is one fit-out that a search may choose.
type cell struct {
	fit   FitOut
	box   int     // its work on the box, among searcher.boxes; -1 where that is none of them
	other int     // the rest of its work, among searcher.others
	work  float64 // mean present cost of all its work, nearly
	first float64 // paid at first for the option and its work, at typical prices
	out   bool    // shown not to reach
	uses  float64 // mean present cost of what it uses, at least, as far as is known
}

// look is a cell with the trials it went through.
type look struct {
	cell   int
	crew   *crew   // nil before the first trial
	trials []Trial // by future; counts where seen
	seen   []bool
	count  int // of those seen
	fails  int
	// sampled tells that the sample was seen; cost and cold are then the mean
	// present cost and the mean share of days kept over it.
	sampled    bool
	cost, cold float64
}

func (l *look) works() int { return l.count - l.fails }

// sampleWorks counts the futures of the sample in which it works.
func (l *look) sampleWorks(sample []int) (n int) {
	for _, k := range sample {
		if l.trials[k].Works {
			n++
		}
	}
	return n
}

// searcher looks for the cheapest fit-out of one option that reaches.
type searcher struct {
	boat      *Boat
	book      *Book
	world     *world
	leakScale float64
	option    OptionID
	ground    *trialGround

	boxes    []boxWork
	others   []FitOut
	better   order   // of boxes
	more     order   // of others
	cells    []cell  // cheapest work first
	at       [][]int // the cell of a box and an other; -1 where they do not go together
	hard     []int   // futures, hardest first
	sample   []int   // every fourth future, by which costs are compared
	looks    map[int]*look
	hardened bool // hard is in the order that a cell close to the goal shows
	failed   error
}

func newSearcher(b *Boat, book *Book, w *world, scale float64, id OptionID, ground *trialGround) *searcher {
	s := &searcher{boat: b, book: book, world: w, leakScale: scale, option: id, ground: ground, looks: map[int]*look{}}
	for k := range ground.futures {
		s.hard = append(s.hard, k)
		if k%4 == 0 {
			s.sample = append(s.sample, k)
		}
	}
	asTold, err := newProposal(b, book, w, scale, id, FitOut{})
	if err != nil {
		s.failed = err
		return s
	}
	priced := s.pricer()
	base := priced(asTold)
	s.others = otherWorks(b, id, b.unit(id))
	prices := make([]price, len(s.others))
	for i, o := range s.others {
		prices[i] = priced(asTold.with(o)).minus(base)
	}
	s.more = orderOf(len(s.others), func(a, b int) bool { return s.others[a].helpsAsMuch(&s.others[b]) })
	s.collectBoxes(boxWorks(b, b.unit(id)), priced, base)
	for i := range s.boxes {
		s.at = append(s.at, make([]int, len(s.others)))
		for j, o := range s.others {
			s.at[i][j] = -1
			fit := s.boxes[i].fit.with(o)
			if s.fits(fit, s.boxes[i].litres) {
				work := s.boxes[i].work.plus(prices[j])
				s.cells = append(s.cells, cell{fit: fit, box: i, other: j, work: work.present, first: base.first + work.first})
			}
		}
	}
	slices.SortStableFunc(s.cells, func(a, b cell) int { return cmp.Compare(a.work, b.work) })
	for i := range s.cells {
		s.at[s.cells[i].box][s.cells[i].other] = i
	}
	return s
}

// collectBoxes keeps the works on the box that no other beats in price, leak,
// air and room together.
func (s *searcher) collectBoxes(works []FitOut, priced func(*proposal) price, base price) {
	var all []boxWork
	for _, fit := range works {
		p, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, fit)
		if err != nil {
			continue // no box is left
		}
		setup := p.setup(&Typical)
		all = append(all, boxWork{told: p, gainW: setup.Mean(s.world.aboard, setup.TargetC).GainW(), fit: fit, leak: *p.leak(), swap: p.swap * p.volumeL, litres: p.volumeL,
			lost: 1 - p.volumeL/p.toldL, work: priced(p).minus(base)})
	}
	slices.SortStableFunc(all, func(a, b boxWork) int { return cmp.Compare(a.work.present, b.work.present) })
	for i := range all {
		b := &all[i]
		if !slices.ContainsFunc(s.boxes, func(a boxWork) bool {
			return (a.atLeast(b) || a.gainW <= (1+s.ground.alike)*b.gainW) && a.litres >= b.litres-1e-9
		}) {
			s.boxes = append(s.boxes, *b)
		}
	}
	s.better = orderOf(len(s.boxes), func(a, b int) bool { return s.boxes[a].atLeast(&s.boxes[b]) })
}

// fits tells whether all that has to go into the cold space goes in.
func (s *searcher) fits(fit FitOut, litres float64) bool {
	p := proposal{boat: s.boat, option: s.option, fit: fit, unit: s.boat.unit(s.option), volumeL: litres, toldL: float64(s.boat.Box.shape().Volume())}
	return p.hasRoom()
}

// pricer gives what an option with a fit-out costs with nothing used aboard:
// from one fit-out to the next, what the work costs.
func (s *searcher) pricer() func(*proposal) price {
	mean := Typical
	mean.Materials, mean.Stops = 0, 0
	for _, k := range s.sample {
		f := &s.ground.futures[k]
		mean.Materials += f.Materials / float64(len(s.sample))
		mean.Stops += f.Stops * f.Nights / float64(len(s.sample)) // billed by the night
	}
	var calculator *calculator
	return func(p *proposal) price {
		if calculator == nil {
			calculator = p.calculator()
		} else {
			calculator.take(p)
		}
		o, err := calculator.outcome(&mean, aYear{})
		if err != nil {
			s.failed = err
			return price{math.Inf(1), math.Inf(1)}
		}
		present := o.Present
		if s.boat.Money.Budget > 0 { // else nobody asks what is paid at first
			if o, err = calculator.outcome(&Typical, aYear{}); err != nil {
				s.failed = err
			}
		}
		return price{present, o.First}
	}
}

// proposal gives the option with a cell's work.
func (s *searcher) proposal(c *cell) (*proposal, error) {
	if c.box < 0 {
		return newProposal(s.boat, s.book, s.world, s.leakScale, s.option, c.fit)
	}
	return s.boxes[c.box].told.with(s.others[c.other]), nil
}

func (s *searcher) share(f *FitOut) float64 {
	if f.IceShare > 0 {
		return float64(f.IceShare)
	}
	return float64(s.boat.Ice.ShareOfBox)
}

// look gives the trials of a cell, none of them seen the first time.
func (s *searcher) look(c int) *look {
	l, known := s.looks[c]
	if !known {
		n := len(s.ground.futures)
		l = &look{cell: c, trials: make([]Trial, n), seen: make([]bool, n)}
		s.looks[c] = l
	}
	return l
}

// see puts a cell to some futures; those already seen are passed over.
func (s *searcher) see(l *look, futures []int) {
	var fresh []int
	for _, k := range futures {
		if !l.seen[k] {
			fresh = append(fresh, k)
		}
	}
	if len(fresh) == 0 || s.failed != nil {
		return
	}
	if l.crew == nil {
		p, err := s.proposal(&s.cells[l.cell])
		if err != nil {
			s.failed = err
			return
		}
		l.crew = p.crew()
	}
	if s.failed = s.ground.run(l.crew, fresh, l.trials); s.failed != nil {
		return
	}
	for _, k := range fresh {
		l.seen[k] = true
		l.count++
		if !l.trials[k].Works {
			l.fails++
		}
	}
}

// priced gives a cell with its cost over the sample, in which all cells are
// compared: what the work costs is nearly all of it, and the rest varies little.
func (s *searcher) priced(c int) *look {
	l := s.look(c)
	if l.sampled {
		return l
	}
	s.see(l, s.sample)
	l.sampled = s.failed == nil
	for _, k := range s.sample {
		l.cost += l.trials[k].Present / float64(len(s.sample))
		l.cold += l.trials[k].KeptShare / float64(len(s.sample))
	}
	s.bound(c, l.cost)
	return l
}

// glance is how many futures of the sample are first asked whether a cell may be
// cheaper than another, then twice as many; glanceErrors by how many standard
// errors it must be shown not to be.
const glance, glanceErrors = 8, 3

// mayBeat tells whether a cell may cost less than one that is priced. A few
// futures, the same for both, mostly show that it does not: from one cell to the
// next the cost of use differs by nearly as much in each.
func (s *searcher) mayBeat(c, best int) bool {
	l, b := s.look(c), s.priced(best)
	if l.sampled || len(s.sample) <= glance {
		return s.priced(c).cost < b.cost
	}
	for n := glance; n < len(s.sample); n *= 2 {
		s.see(l, s.sample[:n])
		if s.dearer(c, best, n) {
			return false
		}
	}
	return true
}

// dearer tells whether a cell is shown by the first n futures of the sample, which
// it has seen, to cost more than one that is priced.
func (s *searcher) dearer(c, best, n int) bool {
	l, b := s.look(c), s.priced(best)
	more, doubt := s.differ(n, func(k int) float64 { return l.trials[k].Present - b.trials[k].Present })
	if more+trifle*b.cost < glanceErrors*doubt || n == len(s.sample) && more <= 0 {
		return false
	}
	s.bound(c, b.cost+more)
	return true
}

// differ gives the mean of a difference over the first n futures of the sample,
// and its standard error.
func (s *searcher) differ(n int, difference func(k int) float64) (mean, doubt float64) {
	var sum, squares float64
	for _, k := range s.sample[:n] {
		d := difference(k)
		sum, squares = sum+d, squares+d*d
	}
	mean = sum / float64(n)
	return mean, math.Sqrt(max(0, squares/float64(n)-mean*mean) / float64(n))
}

// whole puts a cell to every future.
func (s *searcher) whole(c int) *look {
	l := s.look(c)
	s.see(l, s.hard)
	return l
}

// batch is how many futures are looked at before it is asked whether the rest matters.
const batch = 16

// reaches tells whether a unit's cell fails in no more of some futures than
// allowed. What a cell above it failed in, it fails in; what one below it works
// in, it works in.
func (s *searcher) reaches(c, allowed int, futures []int) bool {
	l := s.look(c)
	failing, working := make([]bool, len(s.hard)), make([]bool, len(s.hard))
	for _, other := range s.looks {
		if other.count == 0 || other == l {
			continue
		}
		if other.fails > 0 && s.above(&s.cells[other.cell], &s.cells[c]) {
			for k, seen := range other.seen {
				failing[k] = failing[k] || seen && !other.trials[k].Works
			}
		}
		if other.works() > 0 && s.above(&s.cells[c], &s.cells[other.cell]) {
			for k, seen := range other.seen {
				working[k] = working[k] || seen && other.trials[k].Works
			}
		}
	}
	fails := 0
	var open []int
	for _, k := range futures {
		switch {
		case l.seen[k] && !l.trials[k].Works, !l.seen[k] && failing[k]:
			fails++
		case !l.seen[k] && !working[k]:
			open = append(open, k)
		}
	}
	for fails <= allowed && len(open) > 0 && s.failed == nil {
		n := min(batch, len(open))
		s.see(l, open[:n])
		for _, k := range open[:n] {
			if !l.trials[k].Works {
				fails++
			}
		}
		open = open[n:]
	}
	return fails <= allowed
}

// leastCost gives what a unit's cell costs at least: its work, and what a cell
// above it with the same habits uses, which cannot be more.
func (s *searcher) leastCost(c int) float64 { return s.cells[c].work + s.cells[c].uses }

// bound notes what a unit's cell costs, for all below it.
func (s *searcher) bound(c int, cost float64) {
	if s.option == IceOnly { // whole bags blur the order, and nothing asks
		return
	}
	o := &s.cells[c]
	for i := range s.below(c) {
		b := &s.cells[i]
		if uses := cost - o.work; uses > b.uses && o.fit.ColdStart == b.fit.ColdStart {
			b.uses = uses
		}
	}
}

// ruleOut rules out every cell below one that does not reach.
func (s *searcher) ruleOut(c int) {
	for i := range s.below(c) {
		s.cells[i].out = true
	}
}

// tops gives the allowed cells above which no other allowed cell is.
func (s *searcher) tops(allowed func(*cell) bool) []int {
	var tops []int
	for i := len(s.cells) - 1; i >= 0; i-- { // the dearest first
		c := &s.cells[i]
		if !allowed(c) || slices.ContainsFunc(tops, func(t int) bool { return s.above(&s.cells[t], c) }) {
			continue
		}
		tops = slices.DeleteFunc(tops, func(t int) bool { return s.above(c, &s.cells[t]) })
		tops = append(tops, i)
	}
	return tops
}
