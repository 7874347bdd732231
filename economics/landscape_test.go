package economics

import (
	"cmp"
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

var landscapeTo = flag.String("landscape", "", "write the landscape of answers as Markdown to this file, in some minutes")

// The landscape: seasons, grounds, boxes and shops over which answers are looked at.
var (
	landNights  = []int{5, 10, 20, 45, 120, 365}
	landGrounds = []string{"maine-coast", "chesapeake-bay", "scottish-west-coast", "aegean-cyclades", "florida-keys", "windward-islands"}
	landBoxes   = []string{"poor", "average", "good"}
	landShops   = []int{1, 3, 7}
	landWorths  = []quantity.Money{0, 3, 8} // 0: untold
)

// landFutures is how many futures a place of the landscape is judged in.
const landFutures = 100

// place is one place of the landscape.
type place struct {
	ground, box  string
	nights, shop int
}

func (p place) String() string {
	return fmt.Sprintf("%s, %d nights, %s box, shops every %d days", p.ground, p.nights, p.box, p.shop)
}

// boat gives the boat of a place: two aboard with a 100 L box and ordinary
// habits, weekends up to 20 nights, a week up to 75, then a fortnight and long stays.
// Figures are of a scenario of its own.
func (p place) boat() Boat {
	b := untold()
	b.Cruising.Ground, b.Cruising.ShopEveryDays = p.ground, float64(p.shop)
	b.Known["cruising.nights"] = quantity.Told
	b.Known["box.faces"] = quantity.Told
	b.Cruising.Nights = [12]float64{}
	months, trip := []int{6, 7, 5, 8}, 2.0
	switch {
	case p.nights > 200:
		months, trip = []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, 365
	case p.nights > 120:
		months, trip = []int{3, 4, 5, 6, 7, 8, 9}, 60
	case p.nights > 75:
		trip = 14
	case p.nights > 20:
		trip = 7
	}
	for n := range p.nights {
		b.Cruising.Nights[months[n%len(months)]]++
	}
	if len(months) == 12 { // the months' own lengths
		b.Cruising.Nights = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	}
	b.Cruising.TripNights = trip
	for side, f := range b.Box.Faces {
		switch p.box {
		case "poor":
			f.Foam, f.State = 0.025, heat.Wet
			if side == heat.Top {
				f.State = heat.Missing
			}
		case "good":
			f.Foam, f.Material, f.State = 0.075, heat.Polyurethane, heat.Dry
			if side == heat.Top {
				f.Foam = 0.05
			}
		}
		b.Box.Faces[side] = f
	}
	switch p.box {
	case "poor":
		b.Box.LidSeal = heat.NoSeal
	case "good":
		b.Box.LidSeal, b.Box.Drain = heat.GoodSeal, heat.TrappedDrain
	}
	b.Power.SolarWp, b.Power.Controller = 50, energy.Tracking
	return b
}

// view is what is seen at a place.
type view struct {
	place
	told, fitted [3]int // of 100 futures in which ice, small and larger unit work
	warmestC     float64
	answers      []Answer // by landWorths
	work         [3]FitOut
	byDay        *ByDayFigures // where the owner would
}

// look reckons a place: the search once, the answer at every worth.
func (p place) look(t testing.TB) view { return p.lookAt(t, p.boat()) }

// lookAt is the same for a boat that differs from the place's.
func (p place) lookAt(t testing.TB, b Boat) view {
	t.Helper()
	book := testBook()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	w := newWorld(&b, ground)
	r := &Reckoning{Boat: b, Ground: ground, Settings: Settings{Futures: landFutures, Seed: 1}}
	if r.Box, err = boxEvidence(&b, &w); err != nil {
		t.Fatal(err)
	}
	st := newStudy(&b, &book, &w, &r.Box, r.Settings)
	n := searchFutures
	if *landscapeTo == "" && *variantsTo == "" && os.Getenv("COLDRECKON_LONG") == "" {
		n = 40
	}
	st.search = newTrialGround(&b, &w, draw(st.inputs, mayBeBare(&b, &r.Box), n, searchSeed), searchSeed)
	told, fitted := make([]*proposal, 4), make([]*proposal, 4)
	v := view{place: p}
	for i, id := range Options {
		c, err := st.study(&b, id)
		if err != nil {
			t.Fatal(err)
		}
		told[i], fitted[i], r.Options[i] = c.told, c.fitted, c.figures
	}
	v.warmestC = r.Of(IceOnly).AsTold.year.warmestC
	rows, _, err := trials(fitted, st.futures, 1)
	if err != nil {
		t.Fatal(err)
	}
	asTold, _, err := trials(told, st.futures, 1)
	if err != nil {
		t.Fatal(err)
	}
	for i := range r.Options {
		r.Options[i].count(rows[i])
	}
	for i, id := range cold {
		at := slices.Index(Options[:], id)
		v.told[i], v.fitted[i], v.work[i] = worksOf100(asTold[at]), r.Options[at].WorksOf100, r.Options[at].Fit.Out
	}
	if b.mayRunByDay(&b.Small) {
		if err := r.weighByDay(st); err != nil {
			t.Fatal(err)
		}
		v.byDay = r.ByDay
	}
	for _, worth := range landWorths {
		r.Boat.Money.ColdDayWorth = worth
		delete(r.Boat.Known, "money.cold_day_worth")
		if worth > 0 {
			r.Boat.Known["money.cold_day_worth"] = quantity.Told
		}
		v.answers = append(v.answers, r.answer(rows))
	}
	return v
}

// shortNames are the ways as the map has them.
var shortNames = map[OptionID]string{IceOnly: "ice", SmallUnit: "small", LargerUnit: "larger"}

func said(v float64) string {
	if math.IsInf(v, 1) || v > dearPrice {
		return "∞"
	}
	return fmt.Sprintf("%g", v)
}

// untold words the answer without a worth: the way, NO and YES.
func (v *view) untold() string {
	a := &v.answers[0]
	var names []string
	for _, id := range a.Ways {
		names = append(names, shortNames[id])
	}
	way := strings.Join(names, "/")
	switch a.Case {
	case NoneReaches, NoRoomAtAll, CoolOnly:
		return "none (" + way + ")"
	case FewDays:
		return way + ", few days"
	}
	return fmt.Sprintf("%s %s–%s", way, said(a.NoWorth), said(a.YesWorth))
}

// told words the answer at a worth told.
func (v *view) atWorth(i int) string {
	a := &v.answers[i]
	if a.Case != WorthTold {
		return "–"
	}
	return fmt.Sprintf("%s %d", shortNames[a.Way()], a.YesOf100[0])
}

// markdown lays views out: a table for each ground, in a cell what stands in legend.
func markdown(views []view) string {
	const legend = `In each cell: the way and the worths of a cold day, in dollars, up to which the
answer is no and from which it is yes; then of 100 futures those in which ice,
small and larger unit work, as told → with the work found; then, at a worth of $3
and of $8 told, the way and in how many it is worth it.
`
	var out strings.Builder
	out.WriteString(legend)
	at := map[place]*view{}
	for i := range views {
		at[views[i].place] = &views[i]
	}
	for _, ground := range landGrounds {
		fmt.Fprintf(&out, "\n**%s**\n\n| nights | box |", ground)
		for _, shop := range landShops {
			fmt.Fprintf(&out, " shops every %d days |", shop)
		}
		fmt.Fprintf(&out, "\n|---|---|%s\n", strings.Repeat("---|", len(landShops)))
		for _, nights := range landNights {
			for _, box := range landBoxes {
				fmt.Fprintf(&out, "| %d | %s |", nights, box)
				for _, shop := range landShops {
					if v := at[place{ground, box, nights, shop}]; v != nil {
						fmt.Fprintf(&out, " %s; %d %d %d → %d %d %d; %s, %s |", v.untold(), v.told[0], v.told[1], v.told[2],
							v.fitted[0], v.fitted[1], v.fitted[2], v.atWorth(1), v.atWorth(2))
					} else {
						out.WriteString(" |")
					}
				}
				out.WriteString("\n")
			}
		}
	}
	return out.String()
}

// The landscape of answers, or a few places of it, against what is plain to
// those who cruise (common practice, no source): ice is at home on weekends and
// short seasons near shops in decent boxes, a small unit in long seasons and hot
// places, and a poor box defeats both until it is sealed and insulated.
func TestLandscape(t *testing.T) {
	var places []place
	if *landscapeTo == "" {
		places = []place{
			{"maine-coast", "good", 10, 3}, {"chesapeake-bay", "poor", 45, 3},
		}
		if os.Getenv("COLDRECKON_LONG") != "" {
			places = append(places, place{"windward-islands", "average", 120, 3})
		}
	} else {
		for _, shop := range landShops {
			for _, nights := range landNights {
				for _, ground := range landGrounds {
					for _, box := range landBoxes {
						places = append(places, place{ground, box, nights, shop})
					}
				}
			}
		}
	}
	var views []view
	for i, p := range places {
		views = append(views, p.look(t))
		if *landscapeTo != "" && (i%9 == 8 || i == len(places)-1) {
			if err := os.WriteFile(*landscapeTo, []byte(markdown(views)), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	slices.SortStableFunc(views, func(a, b view) int { return cmp.Compare(a.nights, b.nights) })
	for i := range views {
		v := &views[i]
		a := &v.answers[0]
		hot := v.ground == "windward-islands" || v.ground == "florida-keys"
		cool := v.ground == "maine-coast" || v.ground == "scottish-west-coast"
		switch {
		case v.box == "poor" && v.nights <= 200 && (v.told[0] > 25 || v.ground != "scottish-west-coast" && v.ground != "maine-coast" && v.told[1] > 25):
			t.Errorf("%s: a poor box as told keeps food cold on ice in %d, with the small unit in %d", v, v.told[0], v.told[1])
		case v.box == "good" && v.nights <= 10 && v.shop <= 3 && cool && a.Way() != IceOnly:
			t.Errorf("%s: %s; ice is at home here", v, v.untold())
		case v.nights >= 120 && hot && a.Way() != SmallUnit:
			t.Errorf("%s: %s; a small unit is at home here", v, v.untold())
		}
		for i, fitted := range v.fitted {
			if fitted < v.told[i]-5 {
				t.Errorf("%s: %s works in %d as told, with work in %d", v, cold[i], v.told[i], fitted)
			}
		}
		for i := 1; i+1 < len(v.answers); i++ {
			if a, b := &v.answers[i], &v.answers[i+1]; a.Case == WorthTold && b.Case == WorthTold && b.YesOf100[0] < a.YesOf100[0] {
				t.Errorf("%s: worth it in %d at a lower worth, in %d at a higher", v, a.YesOf100[0], b.YesOf100[0])
			}
		}
	}
}

// Common practice, no source: an iced box in hot weather sits at 45 to 50 °F,
// 7 to 10 °C. Inputs taken: an average box with a third of it for cubes that are
// bought every day, the Chesapeake in July.
func TestIcedBoxInHotWeather(t *testing.T) {
	b := place{"chesapeake-bay", "average", 5, 1}.boat()
	b.Cruising.Nights, b.Cruising.TripNights, b.Ice.FoundAtStops = [12]float64{6: 14}, 7, 1
	r, err := typically(b)
	if err != nil {
		t.Fatal(err)
	}
	var mean, hours float64
	w, book := newWorld(&b, r.Ground), testBook()
	p, err := newProposal(&b, &book, &w, 1, IceOnly, FitOut{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range p.foodC(4) {
		mean += c
		hours++
	}
	if mean /= hours; mean < 6 || mean > 10 {
		t.Errorf("food at %.1f °C on average; practice says 7 to 10", mean)
	}
	t.Logf("food at %.1f °C on average", mean)
}

// foodC gives the food's temperature in every hour that counts, on ice over
// some years at typical inputs.
func (p *proposal) foodC(years int) (food []float64) {
	var air weatherYears
	air.fill(p.boat, p.world, &Typical, stream{1, 0}, years)
	s := p.setup(&Typical)
	plan := s.IcePlan(p.icing(&Typical))
	for year := range air.years {
		var tally season.Tally
		var trace season.Trace
		s.Ice(&air.years[year], &plan, &tally, &trace)
		for _, h := range trace.Hours {
			if h.Counted {
				food = append(food, h.FoodC)
			}
		}
	}
	return food
}
