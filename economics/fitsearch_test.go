package economics

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// narrow invents a boat for which only a few pieces of work make sense, so
// that every fit-out can be looked at. The same seed gives the same boat.
func narrow(seed uint64) Boat {
	rng := rand.New(rand.NewPCG(seed, 23))
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	b := dunlin()
	b.Cruising.Nights = [12]float64{5: float64(2 + rng.IntN(6)), 6: float64(4 + rng.IntN(8)), 7: float64(rng.IntN(4))}
	b.Cruising.Ground = []string{"maine-coast", "chesapeake-bay", "aegean-cyclades", "southern-baltic"}[rng.IntN(4)]
	b.Cruising.TripNights = float64(2 + rng.IntN(8))
	b.Cruising.BeforeTrip = []BeforeTrip{Warm, Precooled, Running}[rng.IntN(3)]
	b.Box.Volume = quantity.Litre(between(60, 150))
	b.Box.LidSeal = []heat.Seal{heat.GoodSeal, heat.PoorSeal, heat.NoSeal}[rng.IntN(3)]
	foam := quantity.Metre(between(0.02, 0.06))
	for i, side := range heat.Sides {
		f := b.Box.Faces[side]
		f.Foam, f.Reach = foam, map[bool]Reach{true: FromInside, false: NotReached}[i > 0 && rng.IntN(2) == 0]
		b.Box.Faces[side] = f
	}
	b.Power.Battery = quantity.AmpHour(between(60, 200))
	b.Power.SolarWp = quantity.Watt(between(0, 120))
	b.Power.MaxPanelWp = b.Power.SolarWp + 50*quantity.Watt(rng.IntN(3))
	b.Power.EngineHoursPerDay = between(0, 1)
	b.Small.RatedCooling = quantity.Watt(between(35, 60))
	b.Small.CooledBy = "fan"
	b.Food.ColdDaysWanted = 0.8
	return b
}

// reachesNine tells whether a fit-out works in nine of ten futures.
func reachesNine(g grade) bool { return g.possible && g.share > 0.8999 }

// cheapest looks at every fit-out there is and gives the least present cost of
// those that reach.
func (s *fitter) cheapest() (present float64, looked int, any bool) {
	present = math.Inf(1)
	sizes := make([]byte, len(s.steps))
	for {
		looked++
		if g := s.look(sizes); reachesNine(g) {
			present, any = min(present, g.present), true
		}
		i := 0
		for ; i < len(sizes); i++ {
			if int(sizes[i]) < s.steps[i].sizes {
				sizes[i]++
				break
			}
			sizes[i] = 0
		}
		if i == len(sizes) {
			return present, looked, any
		}
	}
}

// newFitter readies a search of a boat with the tests' own book.
func newFitter(t *testing.T, b *Boat, book *Book, option OptionID, futures int) *fitter {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(b, ground)
	box, err := boxEvidence(b, &w)
	if err != nil {
		t.Fatal(err)
	}
	return &fitter{boat: b, book: book, world: &w, leakScale: float64(box.Leak / box.Drawn.Total()), option: option, steps: steps(b, option),
		ground: newTrialGround(b, &w, draw(inputs(b, book, &box), futures, 2), 2), tried: map[string]*tried{}}
}

// The search against every fit-out there is, on boats with a few pieces of
// work in a few sizes each: it reaches whenever one of them does, within 1 % of
// the cheapest, and with no piece that hardly pays.
func TestSearchAgainstEveryFitOut(t *testing.T) {
	book := testBook()
	exact, reachable, most := 0, 0, 0
	for seed := uint64(60); seed < 80; seed++ {
		option := SmallUnit
		if seed%4 == 3 {
			option = IceOnly
		}
		b := narrow(seed)
		s := newFitter(t, &b, &book, option, 40)
		least, looked, any := s.cheapest()
		most = max(most, looked)

		fresh := newFitter(t, &b, &book, option, 40)
		sizes, reached := fresh.search()
		found := fresh.look(sizes)
		if s.failed != nil || fresh.failed != nil {
			t.Fatal(s.failed, fresh.failed)
		}
		if reached != any || reached && !reachesNine(found) {
			t.Errorf("boat %d, %s: the search reached: %v; one of %d fit-outs reaches: %v", seed, option, reached, looked, any)
			continue
		}
		if !any {
			continue
		}
		for i, size := range sizes { // no piece that hardly pays
			if size == 0 {
				continue
			}
			sizes[i] = 0
			if g := fresh.look(sizes); reachesNine(g) && g.present < found.present*1.004 {
				t.Errorf("boat %d, %s: without its %s, which is not needed, it costs %.0f, with it %.0f", seed, option, s.steps[i].piece, g.present, found.present)
			}
			sizes[i] = size
		}
		reachable++
		if found.present <= least+1e-6 {
			exact++
		}
		if found.present > 1.01*least {
			t.Errorf("boat %d, %s: the search found %.0f; the least of %d fit-outs is %.0f", seed, option, found.present, looked, least)
		}
	}
	t.Logf("exact on %d of %d boats that can be made to work, among up to %d fit-outs", exact, reachable, most)
	if reachable < 10 || most < 100 {
		t.Errorf("%d boats reach, at most %d fit-outs: too little to search", reachable, most)
	}
}
