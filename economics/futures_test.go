package economics

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/stat"

	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// A future's outcome depends on the future alone: not on which others are
// reckoned, nor in what order, nor on what was reckoned before in the same
// scratch space.
func TestFuturesAreIndependent(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	box, err := boxEvidence(&b, &w)
	if err != nil {
		t.Fatal(err)
	}
	const count, seed = 12, 5
	futures := draw(inputs(&b, &book, &w, &box), true, count, seed)
	var ps []*proposal
	for _, id := range Options {
		p, err := newProposal(&b, &book, &w, 1, id, FitOut{})
		if err != nil {
			t.Fatal(err)
		}
		ps = append(ps, p)
	}
	all, _, err := trials(ps, futures, seed)
	if err != nil {
		t.Fatal(err)
	}
	few, _, err := trials(ps, futures[:5], seed)
	if err != nil {
		t.Fatal(err)
	}
	for i := range ps {
		if !reflect.DeepEqual(few[i], all[i][:5]) {
			t.Errorf("%s: the first five futures depend on the later ones", ps[i].option)
		}
	}

	var air weatherYears
	var base baseLoads
	for k := count - 1; k >= 0; k-- {
		air.fillFuture(&b, &w, &futures[k], seed, k)
		base.reset()
		bare := ps[0].bareDays(&futures[k], &air)
		for i := len(ps) - 1; i >= 0; i-- {
			trial, err := ps[i].calculator().trial(&futures[k], &air, &base)
			if err != nil {
				t.Fatal(err)
			}
			trial.price(bare)
			if trial != all[i][k] {
				t.Errorf("%s in future %d, from the last to the first: %+v; before %+v", ps[i].option, k, trial, all[i][k])
			}
		}
	}
}

// A future with more nights aboard bills more of everything that comes by the
// night, and nothing else; one with dearer prices bills as much more.
func TestFuturesBillWhatTheyMove(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	var air weatherYears
	air.fill(&b, &w, &Typical, stream{1, 0}, 1)
	for _, row := range []struct {
		name   string
		change func(*Future)
		moves  map[string]bool // lines that grow by a quarter
		nights bool            // whether all that come by the night do
	}{
		{"nights", func(f *Future) { f.Nights = 1.25 }, nil, true},
		{"price of ice", func(f *Future) { f.IcePrice = 1.25 }, map[string]bool{lineIce: true}, false},
		{"errands", func(f *Future) { f.Errand = 1.25 }, map[string]bool{lineErrand: true}, false},
		{"units", func(f *Future) { f.Unit = 1.25 }, map[string]bool{lineUnit: true}, false},
		{"fitting", func(f *Future) { f.Fitting = 1.25 }, map[string]bool{lineFitting: true}, false},
		{"upkeep", func(f *Future) { f.Upkeep = 1.25 }, map[string]bool{lineUpkeep: true}, false},
		{"spoilage", func(f *Future) { f.Spoilage = 1.25 }, map[string]bool{"spoilage": true}, false},
		{"materials", func(f *Future) { f.Materials = 1.25 }, map[string]bool{"cable_fuse": true, "engine_kwh": true, "battery_wear": true}, false},
	} {
		f := Typical
		row.change(&f)
		moved := 0
		for _, id := range Options {
			p, err := newProposal(&b, &book, &w, 1, id, FitOut{})
			if err != nil {
				t.Fatal(err)
			}
			var base baseLoads
			y := p.live(&Typical, &air, &base, nil)
			was, err := p.calculator().outcome(&Typical, y)
			if err != nil {
				t.Fatal(err)
			}
			is, err := p.calculator().outcome(&f, y)
			if err != nil {
				t.Fatal(err)
			}
			for i, l := range was.Lines {
				factor := 1.0
				if row.moves[l.ID] || row.nights && l.Yearly != 0 && l.ID != lineUpkeep {
					factor = 1.25
					moved++
				}
				if got := is.Lines[i]; math.Abs(got.First-factor*l.First) > 1e-9 || math.Abs(got.Yearly-factor*l.Yearly) > 1e-9 {
					t.Errorf("%s, %s: %v at first and %v a year; before %v and %v, expected %v times", row.name, l.ID, got.First, got.Yearly, l.First, l.Yearly, factor)
				}
			}
			if row.nights && math.Abs(is.ColdDays-1.25*was.ColdDays) > 1e-9 {
				t.Errorf("%s: %v cold days in a year of a quarter more nights, %v before", id, is.ColdDays, was.ColdDays)
			}
		}
		if moved == 0 {
			t.Errorf("%s: moves no line", row.name)
		}
	}
}

// Futures spread every input over its range, and the same seed gives the same
// futures.
func TestDrawIsStratified(t *testing.T) {
	b, book := dunlin(), testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	box, err := boxEvidence(&b, &w)
	if err != nil {
		t.Fatal(err)
	}
	ins := inputs(&b, &book, &w, &box)
	futures := draw(ins, true, 1000, 3)
	if !reflect.DeepEqual(futures, draw(ins, true, 1000, 3)) {
		t.Error("the same seed gives other futures")
	}
	for _, in := range ins {
		if in.Factor.Low == in.Factor.High || in.Name == "sun" { // the year's own sun blurs it
			continue
		}
		below, above := 0, 0
		for k := range futures {
			switch v := *in.at(&futures[k]); {
			case v < in.Factor.Low:
				below++
			case v > in.Factor.High:
				above++
			}
		}
		// Latin hypercube: one future in each thousandth, so 100 lie beyond a
		// tenth percentile whatever the seed.
		if below < 99 || below > 101 || above < 99 || above > 101 {
			t.Errorf("%s: %d of 1000 below the 10th percentile, %d above the 90th; want 100 each", in.Name, below, above)
		}
	}
	// Independent inputs: of 1000 pairs the correlation scatters by 1/√1000.
	values := func(in Input) []float64 {
		out := make([]float64, len(futures))
		for k := range futures {
			out[k] = *in.at(&futures[k])
		}
		return out
	}
	for i, a := range ins {
		for _, b := range ins[:i] {
			if a.Factor.Low == a.Factor.High || b.Factor.Low == b.Factor.High {
				continue
			}
			if r := stat.Correlation(values(a), values(b), nil); math.Abs(r) > 5/math.Sqrt(1000) {
				t.Errorf("%s and %s go together: correlation %.2f", a.Name, b.Name, r)
			}
		}
	}
}

// Of several errors share gives the one of the lowest number, on any cores.
// Guards the comparison with lowest.
func TestShareGivesTheFirstError(t *testing.T) {
	for _, cores := range []int{1, 2, 3, 8} {
		before := runtime.GOMAXPROCS(cores)
		err := parallel(40, func(int) func(int) error {
			return func(k int) error {
				if k == 11 || k == 13 || k >= 20 {
					return fmt.Errorf("at %d", k)
				}
				return nil
			}
		})
		runtime.GOMAXPROCS(before)
		if err == nil || err.Error() != "at 11" {
			t.Errorf("on %d cores: %v", cores, err)
		}
	}
}

// A year aboard is lived in part. Over the futures the days kept cold, what it
// costs and how often it works are nearly those of the whole year; a unit that is
// short of power does a little better, as its bank runs down in fewer nights.
// Outside the long run each ground and each panel is tried once.
func TestPartOfAYear(t *testing.T) {
	book := testBook()
	for i, ground := range []string{"windward-islands", "maine-coast"} {
		b := liveAboard()
		b.Cruising.Ground = ground
		for k, panel := range []quantity.Watt{100, 300} {
			if i != k && os.Getenv("COLDRECKON_LONG") == "" {
				continue
			}
			b.Power.SolarWp = panel
			if b.Cruising.TripNights = 365; panel == 300 && ground == "maine-coast" {
				b.Cruising.TripNights = 5
			}
			place, err := b.Ground()
			if err != nil {
				t.Fatal(err)
			}
			w := newWorld(&b, place)
			box, err := boxEvidence(&b, &w)
			if err != nil {
				t.Fatal(err)
			}
			if len(w.lived[0].Nights) > len(w.plan.Nights)/2 {
				t.Fatalf("%d nights of %d are lived", len(w.lived[0].Nights), len(w.plan.Nights))
			}
			var ps []*proposal
			for _, id := range cold {
				p, err := newProposal(&b, &book, &w, box.leakScale(), id, FitOut{})
				if err != nil {
					t.Fatal(err)
				}
				ps = append(ps, p)
			}
			futures := draw(inputs(&b, &book, &w, &box), mayBeBare(&b, &box), 100, 9)
			mean := func() (kept, works, yearly [3]float64) {
				rows, _, err := trials(ps, futures, 5)
				if err != nil {
					t.Fatal(err)
				}
				for i, row := range rows {
					works[i] = float64(worksOf100(row))
					for _, trial := range row {
						kept[i] += trial.KeptShare / float64(len(row))
						yearly[i] += trial.Yearly / float64(len(row))
					}
				}
				return kept, works, yearly
			}
			kept, works, yearly := mean()
			w.lived = []*season.Plan{w.plan}
			keptWhole, worksWhole, yearlyWhole := mean()
			for i, id := range cold {
				if math.Abs(kept[i]-keptWhole[i]) > 0.02 || math.Abs(works[i]-worksWhole[i]) > 6 || math.Abs(yearly[i]/yearlyWhole[i]-1) > 0.03 {
					t.Errorf("%s, %.0f W, %s: cold on %.3f of the days, works in %.0f of 100, %.0f a year; a whole year %.3f, %.0f, %.0f",
						ground, panel, id, kept[i], works[i], yearly[i], keptWhole[i], worksWhole[i], yearlyWhole[i])
				}
			}
		}
	}
	b := liveAboard()
	b.Food.Medicine = quantity.Yes
	place, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	if w := newWorld(&b, place); w.lived[0] != w.plan {
		t.Error("medicine is not looked after on every night")
	}
}

// A quick look lives a fourth of a year of 60 nights or more, and enough years of a
// shorter one for 15 days; a reckoning lives all of them.
func TestQuickLookLivesLess(t *testing.T) {
	for _, row := range []struct {
		june, july  float64
		lived, over int // nights of a year that are lived, and years
	}{{0, 5, 5, 3}, {5, 5, 10, 2}, {25, 30, 55, 1}, {30, 30, 15, 1}} {
		b := dunlin()
		b.Cruising.Nights, b.Cruising.TripNights = [12]float64{5: row.june, 6: row.july}, 5
		ground, err := b.Ground()
		if err != nil {
			t.Fatal(err)
		}
		w := newWorld(&b, ground)
		if got := len(w.lived[0].Nights); float64(got) != row.june+row.july {
			t.Errorf("%v and %v nights: %d are lived in a reckoning", row.june, row.july, got)
		}
		w.live(&b, daysAGlance, longGlance)
		if got := len(w.lived[0].Nights); got != row.lived || w.yearsAFuture != row.over {
			t.Errorf("%v and %v nights: %d in %d years, want %d in %d", row.june, row.july, got, w.yearsAFuture, row.lived, row.over)
		}
	}
}

// A machine may give a program more cores while it runs.
func TestCrewTakesMoreCores(t *testing.T) {
	b := dunlin()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w, book := newWorld(&b, ground), testBook()
	p, err := newProposal(&b, &book, &w, 1, IceOnly, FitOut{})
	if err != nil {
		t.Fatal(err)
	}
	c := p.crew()
	if len(c.calculators) != runtime.GOMAXPROCS(0) {
		t.Fatalf("%d calculators for %d cores", len(c.calculators), runtime.GOMAXPROCS(0))
	}
	kept := c.of(0)
	if more := c.of(len(c.calculators)); more == nil || more == kept || c.of(0) != kept {
		t.Error("a core has no calculator of its own, or loses it")
	}
}
