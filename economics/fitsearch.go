package economics

import (
	"bytes"
	"cmp"
	"math"
	"slices"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

const (
	// fitShare is the part of futures in which a fitted option must work.
	fitShare = 0.9
	// A search looks at so many futures, fewer where a year aboard is long or
	// where few futures are asked for in all; how many is printed.
	searchFutures, leastSearchFutures = 200, 50
	searchPart                        = 8 // at most one search future for so many in all
	searchHours                       = 300_000
	// A piece that an option can do without is worth its trouble when it saves
	// this share of the present cost. Engineering judgement, from memory.
	pieceShare = 0.005
)

// Piece names one kind of work a yard would try.
type Piece string

// The pieces, in the order a yard would try them.
const (
	HabitPiece   Piece = "cold_start"
	SealPiece    Piece = "seal_and_drain"
	LidPiece     Piece = "lid_foam"
	FacesPiece   Piece = "face_foam"
	CoverPiece   Piece = "cover"
	VentPiece    Piece = "condenser_air"
	PanelPiece   Piece = "panel"
	BatteryPiece Piece = "battery"
)

// step is one piece with its sizes, size 0 being none of it.
type step struct {
	piece Piece
	sizes int // largest size
	set   func(*FitOut, int)
}

// Sizes of the pieces as they are sold or easily cut.
const (
	foamStep    quantity.Metre   = 0.025
	foamSizes                    = 3
	panelStep   quantity.Watt    = 50
	batteryStep quantity.AmpHour = 50
	// Batteries are added up to this. Engineering judgement, from memory.
	batterySizes = 6
)

// onlyHelps tells that more of the piece keeps no less cold, but for the odd
// day, and costs no less.
func (s *step) onlyHelps() bool { return s.piece == PanelPiece || s.piece == BatteryPiece }

// steps lists the pieces that make sense for the option on this boat.
func steps(b *Boat, option OptionID) []step {
	var out []step
	add := func(p Piece, sizes int, set func(*FitOut, int)) {
		if sizes > 0 {
			out = append(out, step{p, sizes, set})
		}
	}
	var unit *Unit
	switch option {
	case SmallUnit:
		unit = &b.Small
	case LargerUnit:
		unit = &b.Larger
	case DryStores:
		return nil
	}
	if b.Cruising.BeforeTrip == Warm {
		add(HabitPiece, 1, func(f *FitOut, n int) { f.Habit = n > 0 })
	}
	if unit == nil || unit.Form != FreeStanding {
		if b.Box.LidSeal != heat.GoodSeal || b.Box.Drain == heat.OpenDrain {
			add(SealPiece, 1, func(f *FitOut, n int) {
				f.Seal = n > 0 && b.Box.LidSeal != heat.GoodSeal
				f.Drain = n > 0 && b.Box.Drain == heat.OpenDrain
			})
		}
		if b.Box.Faces[b.Box.lidSide()].Reach != NotReached {
			add(LidPiece, 2, func(f *FitOut, n int) { f.LidFoam = foamStep * quantity.Metre(n) })
		}
		if len(b.Box.reachable()) > 0 {
			add(FacesPiece, foamSizes, func(f *FitOut, n int) { f.FaceFoam = foamStep * quantity.Metre(n) })
		}
	}
	add(CoverPiece, 1, func(f *FitOut, n int) { f.Cover = n > 0 })
	if unit == nil {
		return out
	}
	if unit.CooledBy == energy.Fins && unit.Form != FreeStanding {
		add(VentPiece, 1, func(f *FitOut, n int) { f.Vent = n > 0 })
	}
	room := max(0, b.Power.MaxPanelWp-b.Power.SolarWp)
	add(PanelPiece, int(room/panelStep), func(f *FitOut, n int) { f.PanelWp = panelStep * quantity.Watt(n) })
	add(BatteryPiece, batterySizes, func(f *FitOut, n int) { f.Battery = batteryStep * quantity.AmpHour(n) })
	return out
}

// fitter searches one option's cheapest work that reaches the wanted cold days.
type fitter struct {
	boat      *Boat
	book      *Book
	world     *world
	leakScale float64
	option    OptionID
	steps     []step
	ground    *trialGround
	tried     map[string]*tried // by sizes
	failed    error
}

// tried is a fit-out with its trials in the first futures of the ground.
type tried struct {
	proposal *proposal // nil when foam leaves no room
	trials   []Trial
}

// grade is how a fit-out did over some futures.
type grade struct {
	count     int     // futures looked at
	share     float64 // of futures in which it works
	shortfall float64 // mean of what cold days lack, 0 when none lacks any
	present   float64 // mean present cost
	burden    float64 // the same, with pieceShare of it for each piece of work
	possible  bool    // false when foam leaves no room
}

func (g grade) reaches() bool { return g.possible && g.share >= fitShare-1e-9 }

// comesNearerThan tells which of two fit-outs fails by less.
func (g grade) comesNearerThan(o grade) bool {
	return g.share > o.share || g.share == o.share && g.shortfall < o.shortfall-1e-9
}

// helpsMoreThan tells which of two possible fit-outs lacks fewer cold days.
func (g grade) helpsMoreThan(o grade) bool {
	return g.possible && (g.shortfall < o.shortfall-1e-9 || g.shortfall < o.shortfall+1e-9 && g.share > o.share)
}

// hopeful tells whether a glance leaves a chance that a look will reach: its
// share may lie 2.5 standard errors under the one wanted.
func (g grade) hopeful() bool {
	margin := 2.5 * math.Sqrt(fitShare*(1-fitShare)/float64(g.count))
	return g.possible && g.share >= fitShare-margin
}

// look grades the fit-out of the given sizes over all the search's futures.
func (s *fitter) look(sizes []byte) grade { return s.grade(sizes, len(s.ground.futures)) }

// glance grades it over a quarter of them.
func (s *fitter) glance(sizes []byte) grade { return s.grade(sizes, s.quarter()) }

func (s *fitter) quarter() int { return (len(s.ground.futures) + 3) / 4 }

// reaches is look(sizes).reaches(), and stops at the quarter that settles it.
func (s *fitter) reaches(sizes []byte) bool {
	all := len(s.ground.futures)
	for count := s.quarter(); count < all; count += s.quarter() {
		g := s.grade(sizes, count)
		if best := g.share*float64(count) + float64(all-count); !g.possible || best < (fitShare-1e-9)*float64(all) {
			return false
		}
	}
	return s.look(sizes).reaches()
}

// try prepares the fit-out of the given sizes, once.
func (s *fitter) try(sizes []byte) *tried {
	t, known := s.tried[string(sizes)]
	if !known {
		t = &tried{}
		if p, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, s.fitOut(sizes)); err == nil {
			t.proposal = p
		}
		s.tried[string(sizes)] = t
	}
	return t
}

// grade puts the fit-out to the first futures that it has not met yet.
func (s *fitter) grade(sizes []byte, count int) grade {
	t := s.try(sizes)
	g := grade{count: count, possible: t.proposal != nil}
	if !g.possible || s.failed != nil {
		return g
	}
	if met := len(t.trials); met < count {
		more, err := s.ground.run(t.proposal, met, count)
		if err != nil {
			s.failed = err
			return g
		}
		t.trials = append(t.trials, more...)
	}
	wanted, n := float64(s.boat.Food.ColdDaysWanted), float64(count)
	works := 0
	for _, trial := range t.trials[:count] {
		if trial.Works {
			works++
		}
		g.shortfall += max(0, wanted-trial.ColdShare) / n
		g.present += trial.Present / n
	}
	g.share = float64(works) / n
	pieces := len(sizes) - bytes.Count(sizes, []byte{0})
	g.burden = g.present * (1 + pieceShare*float64(pieces))
	return g
}

func (s *fitter) fitOut(sizes []byte) FitOut {
	var f FitOut
	for i, st := range s.steps {
		st.set(&f, int(sizes[i]))
	}
	return f
}

// search goes the way a yard would: pieces are added in order, each in the size
// that helps most, until the option works in nine of ten futures. Then the work
// is trimmed. Pieces may only help together, and one dear piece may stand for
// two cheap ones, so the same is done from the other end, with every piece at
// its largest; the cheaper result is kept. A quarter of the futures sorts out
// what is clearly behind; all of them decide.
func (s *fitter) search() (sizes []byte, reached bool) {
	sizes = make([]byte, len(s.steps))
	reached = s.reaches(sizes)
	for i := 0; i < len(s.steps) && !reached; i++ {
		reached = s.help(sizes, i)
	}
	if reached {
		s.trim(sizes)
	}
	all := s.everything()
	if !s.reaches(all) {
		if none := make([]byte, len(s.steps)); !reached && !s.glance(sizes).comesNearerThan(s.glance(none)) {
			return none, false // work that does not help is not done
		}
		return sizes, reached
	}
	s.trim(all)
	if !reached || s.look(all).burden < s.look(sizes).burden {
		return all, true
	}
	return sizes, true
}

// trim gives each piece in turn the size, none included, at which the option
// still works and the burden is least, until no change lowers it: first as far
// as glances lead, if looks bear them out, then by looks.
func (s *fitter) trim(sizes []byte) {
	glanced := slices.Clone(sizes)
	s.trimBy(glanced, gauge{s.glance, func(sizes []byte) bool { return s.glance(sizes).reaches() }})
	if s.reaches(glanced) && s.look(glanced).burden < s.look(sizes).burden {
		copy(sizes, glanced)
	}
	s.trimBy(sizes, gauge{s.look, s.reaches})
}

// gauge is a way to grade fit-outs and to tell whether they reach.
type gauge struct {
	grade   func(sizes []byte) grade
	reaches func(sizes []byte) bool
}

func (s *fitter) trimBy(sizes []byte, by gauge) {
	for improved := true; improved; {
		improved = false
		for i := len(s.steps) - 1; i >= 0; i-- {
			improved = s.save(sizes, i, by) || improved
		}
	}
}

// everything gives each piece its largest size that leaves room in the box.
func (s *fitter) everything() []byte {
	all := make([]byte, len(s.steps))
	for i := range all {
		for all[i] = byte(s.steps[i].sizes); all[i] > 0 && s.try(all).proposal == nil; all[i]-- {
		}
	}
	return all
}

// help gives piece i the least size with which the option works, or else the
// size with which it lacks fewest cold days.
func (s *fitter) help(sizes []byte, i int) (reached bool) {
	now, best, most := s.glance(sizes), sizes[i], byte(s.steps[i].sizes)
	if s.steps[i].onlyHelps() {
		if sizes[i] = most; !s.glance(sizes).helpsMoreThan(now) {
			sizes[i] = best
			return false
		}
	}
	for n := byte(1); n <= most; n++ {
		sizes[i] = n
		next := s.glance(sizes)
		if next.hopeful() && s.reaches(sizes) {
			return true
		}
		if next.helpsMoreThan(now) {
			now, best = next, n
		}
	}
	sizes[i] = best
	return false
}

// save gives piece i the size of least burden among those with which the option
// works: the least at a glance that the gauge confirms.
func (s *fitter) save(sizes []byte, i int, by gauge) (saved bool) {
	was, before := sizes[i], by.grade(sizes).burden
	confirmed := func(n byte) bool {
		sizes[i] = n
		if s.glance(sizes).hopeful() && by.reaches(sizes) && by.grade(sizes).burden < before-1e-6 {
			return true
		}
		sizes[i] = was
		return false
	}
	if s.steps[i].onlyHelps() { // the smallest that works is the cheapest
		for n := range was {
			if confirmed(n) {
				return true
			}
		}
		return false
	}
	now := s.glance(sizes).burden
	burden := make([]float64, s.steps[i].sizes+1)
	var cheaper []byte
	for n := range burden {
		sizes[i] = byte(n)
		if g := s.glance(sizes); g.hopeful() && g.burden < now {
			burden[n], cheaper = g.burden, append(cheaper, byte(n))
		}
	}
	sizes[i] = was
	slices.SortStableFunc(cheaper, func(a, b byte) int { return cmp.Compare(burden[a], burden[b]) })
	return slices.ContainsFunc(cheaper, confirmed)
}

// searchCount gives the number of futures that a search looks at.
func searchCount(w *world, set Settings) int {
	count := searchFutures
	if hours := 24 * len(w.plan.Nights); hours > 0 {
		count = max(leastSearchFutures, min(count, searchHours/hours))
	}
	return min(set.Futures, max(leastSearchFutures, min(count, set.Futures/searchPart)))
}

// findFit searches the work for an option and prepares the option with it.
func findFit(b *Boat, book *Book, w *world, scale float64, id OptionID, ground *trialGround) (Fit, *proposal, error) {
	s := fitter{boat: b, book: book, world: w, leakScale: scale, option: id, steps: steps(b, id), ground: ground,
		tried: map[string]*tried{}}
	sizes, reached := s.search()
	count := len(ground.futures)
	if !reached {
		count = s.quarter() // what no work cures is not looked at for longer
	}
	found := s.grade(sizes, count)
	fit := Fit{Out: s.fitOut(sizes), Reached: reached, SearchFutures: count, SearchWorks: found.share}
	for i, st := range s.steps {
		if sizes[i] == 0 {
			continue
		}
		size := sizes[i]
		sizes[i] = 0
		without := s.grade(sizes, count)
		sizes[i] = size
		fit.Items = append(fit.Items, FitItem{
			Piece: st.piece, Size: pieceSize(st.piece, int(size)),
			WithoutWorksOf100: int(math.Round(100 * without.share)), WithoutPresent: without.present - found.present,
		})
	}
	if s.failed != nil {
		return fit, nil, s.failed
	}
	p, err := newProposal(b, book, w, scale, id, fit.Out)
	if err == nil {
		p.fitted = true
	}
	return fit, p, err
}

// pieceSize gives a size in the piece's own unit: mm, W or Ah; 1 for the rest.
func pieceSize(p Piece, n int) float64 {
	switch p {
	case LidPiece, FacesPiece:
		return 1000 * float64(foamStep) * float64(n)
	case PanelPiece:
		return float64(panelStep) * float64(n)
	case BatteryPiece:
		return float64(batteryStep) * float64(n)
	}
	return 1
}
