package economics

import (
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strconv"
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
	foam, lid, reach := quantity.Metre(between(0.02, 0.06)), rng.IntN(3) == 0, []Reach{FromInside, FromOutside}[rng.IntN(2)]
	for i, side := range heat.Sides {
		f := b.Box.Faces[side]
		f.Foam, f.Reach = foam, NotReached
		if (i > 0 || lid) && rng.IntN(2) == 0 {
			f.Reach = reach
		}
		b.Box.Faces[side] = f
	}
	b.Power.Battery = quantity.AmpHour(between(60, 200))
	b.Power.SolarWp = quantity.Watt(between(0, 120))
	b.Power.MaxPanelWp = b.Power.SolarWp + 50*quantity.Watt(rng.IntN(2))
	if rng.IntN(2) == 0 {
		b.Box.LidSeal, b.Box.Drain = heat.GoodSeal, heat.TrappedDrain
	}
	if rng.IntN(2) == 0 {
		b.Box.Cover = quantity.Yes
	}
	b.Power.EngineHoursPerDay = between(0, 1)
	b.Small.RatedCooling = quantity.Watt(between(35, 60))
	b.Small.CooledBy = "fan"
	b.Food.ColdDaysWanted = 0.8
	return b
}

// newSearch readies a search of a boat with the tests' own book, in fewer
// futures than a report's so that every fit-out can be looked at.
func newSearch(t *testing.T, b *Boat, book *Book, option OptionID, futures int) *searcher {
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
	drawn := draw(inputs(b, book, &w, &box), mayBeBare(b, &box), futures, 2)
	return newSearcher(b, book, &w, float64(box.Leak/box.Drawn.Total()), option, newTrialGround(b, &w, drawn, 2))
}

// everyFitOut looks at every fit-out there is, work on the box that others beat
// included, and gives the least mean present cost of those that reach, by how
// much of the box they leave; where none does, in how many futures one that
// leaves much of the box works at most. It takes nothing for granted but that what has failed too often has failed.
func everyFitOut(t *testing.T, b *Boat, book *Book, option OptionID, futures int) (roomy, any float64, most, looked int) {
	t.Helper()
	s := newSearch(t, b, book, option, futures)
	var unit *Unit
	if option == SmallUnit {
		unit = &b.Small
	}
	var all []int
	for _, box := range boxWorks(b, unit) {
		for _, other := range otherWorks(b, option, unit) {
			if c := s.find(box.with(other)); c >= 0 {
				all = append(all, c)
			}
		}
	}
	roomy, any = math.Inf(1), math.Inf(1)
	g := s.goalOf()
	for _, c := range all {
		l := s.look(c)
		for from := 0; from < futures && l.fails <= g.fails; from += 4 {
			s.see(l, s.hard[from:min(futures, from+4)])
		}
		if l.fails > g.fails {
			continue
		}
		p, err := newProposal(b, book, s.world, s.leakScale, option, s.cells[c].fit)
		if err != nil {
			t.Fatal(err)
		}
		any = min(any, s.priced(c).cost)
		if 1-p.volumeL/p.toldL <= roomyShare {
			roomy = min(roomy, s.priced(c).cost)
		}
	}
	if math.IsInf(any, 1) {
		for _, c := range all {
			p, err := newProposal(b, book, s.world, s.leakScale, option, s.cells[c].fit)
			if err != nil {
				t.Fatal(err)
			}
			if 1-p.volumeL/p.toldL <= roomyShare {
				most = max(most, s.whole(c).works())
			}
		}
	}
	if s.failed != nil {
		t.Fatal(s.failed)
	}
	return roomy, any, most, len(all)
}

// searchTried is on how many boats the search is tried, and in how many futures:
// few, or more where COLDRECKON_LONG is set, which may give the number of boats.
func searchTried() (boats, futures int) {
	long := os.Getenv("COLDRECKON_LONG")
	if long == "" {
		return 5, 40
	}
	if n, err := strconv.Atoi(long); err == nil && n > 1 {
		return n, 80
	}
	return 40, 80
}

// The search against every fit-out there is, on boats with a few pieces of
// work in a few sizes each: it reaches whenever one of them does, within 1 % of
// the cheapest. A limit on what may be spent changes nothing.
func TestSearchAgainstEveryFitOut(t *testing.T) {
	boats, futures := searchTried()
	book := testBook()
	var reachable, exact, evaluated, most int
	for seed := range uint64(boats) {
		option := SmallUnit
		if seed%3 == 2 {
			option = IceOnly
		}
		b := narrow(60 + seed)
		roomy, any, works, looked := everyFitOut(t, &b, &book, option, futures)
		most = max(most, looked)
		s := newSearch(t, &b, &book, option, futures)
		fit, _, err := findFit(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range s.looks {
			if l.count == futures {
				evaluated++
			}
		}
		limited := b
		limited.Money.Budget, limited.Known = quantity.Money(500+100*(seed%20)), map[string]quantity.How{"money.budget": quantity.Told}
		within, _, err := findFit(newSearch(t, &limited, &book, option, futures))
		if err != nil {
			t.Fatal(err)
		}
		if within.Out != fit.Out || within.LeastPresent != fit.LeastPresent || within.Reached != fit.Reached {
			t.Errorf("boat %d, %s: with a limit %+v at %.2f, without %+v at %.2f", 60+seed, option, within.Out, within.LeastPresent, fit.Out, fit.LeastPresent)
		}
		if fit.Reached != !math.IsInf(any, 1) {
			t.Errorf("boat %d, %s: reached %v; the cheapest of %d fit-outs that reach costs %.0f", 60+seed, option, fit.Reached, looked, any)
			continue
		}
		least := roomy
		if math.IsInf(roomy, 1) {
			least = any
		}
		if !fit.Reached {
			// Which comes nearest is judged in a quarter of the futures, here ten.
			if got := int(math.Round(fit.SearchWorks * float64(futures))); float64(got) < float64(works)-(nearShare+0.1)*float64(futures)-1e-9 {
				t.Errorf("boat %d, %s: the nearest works in %d of %d, another in %d", 60+seed, option, got, futures, works)
			}
			continue
		}
		reachable++
		if fit.LeastPresent <= least*(1+1e-9) {
			exact++
		}
		if fit.LeastPresent > 1.01*least {
			t.Errorf("boat %d, %s: the search found %.0f (%+v); the least of %d fit-outs is %.0f", 60+seed, option, fit.LeastPresent, fit.Out, looked, least)
		}
		if fit.SearchPresent > max(fit.LeastPresent+slackMoney, (1+slackShare)*fit.LeastPresent)+1e-6 {
			t.Errorf("boat %d, %s: with less work it costs %.0f, the cheapest %.0f", 60+seed, option, fit.SearchPresent, fit.LeastPresent)
		}
	}
	t.Logf("exact on %d of %d boats that can be made to work, among up to %d fit-outs; %.1f looked at through all futures", exact, reachable, most, float64(evaluated)/float64(boats))
	if reachable < boats/4 || most < 100 {
		t.Errorf("%d boats reach, at most %d fit-outs: too little to search", reachable, most)
	}
}

// Neither the seed nor the number of futures changes the work that is proposed.
func TestSettingsChangeNoWork(t *testing.T) {
	settings := []Settings{{Futures: 40, Seed: 1}, {Futures: 60, Seed: 2}}
	tried, _ := searchTried()
	boats := max(1, tried/40)
	if tried >= 40 {
		settings = nil // a quick look meets other futures
		for seed := uint64(1); seed <= 5; seed++ {
			settings = append(settings, Settings{Futures: []int{200, 1000, 2000, 3000, 5000}[seed-1], Seed: seed})
		}
	}
	for seed := range uint64(boats) {
		b := narrow(20 + seed)
		ground, err := b.Ground()
		if err != nil {
			t.Fatal(err)
		}
		var first *Reckoning
		for _, set := range settings {
			r, err := Reckon(b, testBook(), ground, set)
			if err != nil {
				t.Fatal(err)
			}
			if first == nil {
				first = r
			}
			for i := range r.Options {
				if got, want := &r.Options[i].Fit, &first.Options[i].Fit; !reflect.DeepEqual(got, want) {
					t.Errorf("boat %d, %s, %+v: %+v; with %+v %+v", 20+seed, r.Options[i].ID, set, *got, settings[0], *want)
				}
			}
		}
	}
}

// Of the many works that a boat of many ways in may have, few are looked at; each
// of the others has one among them that costs no more, leaves as much room and
// lets in hardly more heat.
func TestManyWorksLeaveFew(t *testing.T) {
	b := dunlin()
	b.Box.VoidVolume, b.Box.SpacerFits = 60, quantity.Yes
	for i, side := range heat.Sides {
		f := b.Box.Faces[side]
		f.Reach = []Reach{FromInside, FromOutside}[i%2]
		b.Box.Faces[side] = f
	}
	book := testBook()
	s := newSearch(t, &b, &book, IceOnly, 8)
	works := boxWorks(&b, nil)
	t.Logf("%d of %d works", len(s.boxes), len(works))
	if len(works) < 500 || len(s.boxes) > 128 {
		t.Fatalf("%d of %d works are looked at", len(s.boxes), len(works))
	}
	priced := s.pricer()
	asTold, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, FitOut{})
	if err != nil {
		t.Fatal(err)
	}
	base := priced(asTold)
	for _, fit := range works {
		p, err := newProposal(s.boat, s.book, s.world, s.leakScale, s.option, fit)
		if err != nil {
			continue
		}
		setup, cost := p.setup(&Typical), priced(p).minus(base).present
		gainW := setup.Mean(s.world.aboard, setup.TargetC).GainW()
		if !slices.ContainsFunc(s.boxes, func(x boxWork) bool {
			return x.work.present <= cost+1e-9 && x.litres >= p.volumeL-1e-6 && x.gainW <= (1+1e-6+alikeHeat)*gainW
		}) {
			t.Errorf("%+v, %.1f W for %.0f, is left out for nothing", fit, gainW, cost)
		}
	}
}
