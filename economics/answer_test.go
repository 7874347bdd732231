package economics

import (
	"math"
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// One future of the fixture's small unit as told, by hand: 60 nights, of which 54
// are cold and 2 would be in the empty box.
//
//	unit 900 + fitting 350 + cable 70 = 1,320 × 0.117231 = 154.74 a year (NIST Handbook
//	                                    135, appendix D, from memory)
//	upkeep                                                  18.00
//	13 kWh of the engine × 1.50 + 12 of wear × 0.70       = 27.90
//	6 warm days × 1.8 kg × 0.80                           =  8.64
//	                                                       209.28
//	over 54 - 2 = 52 days: 4.025 a cold day
//	worth 6 a day: 209.28 - 6 × 52 = -102.72, a gain
//
// With a quarter more nights all but unit and upkeep grows by as much: 154.74 +
// 18 + 1.25 × 36.54 = 218.42, over 65 days 3.360.
//
// A way that fails by warmth keeps the days it has: of 30 cold ones 28 are won,
// and 30 warm days spoil 43.20, so 243.84 / 28 = 8.709. One that fails for room
// or for want of a battery has none, and its price is endless; a hazard takes
// nothing off, the way works elsewhere.
func TestOneFutureByHand(t *testing.T) {
	ground, err := dunlin().Ground()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name                string
		change              func(*Boat)
		cold, nights        float64 // share; factor
		works               bool
		yearly, extra, loss float64
	}{
		{"works", func(*Boat) {}, 0.9, 1, true, 209.28, 52, -102.72},
		{"more nights", func(*Boat) {}, 0.9, 1.25, true, 218.42, 65, 218.42 - 6*65},
		{"fails by warmth", func(*Boat) {}, 0.5, 1, false, 243.84, 28, 243.84 - 6*28},
		{"fails for room", func(b *Boat) { b.Box.Volume, b.Food.DrinksADay = 30, 12 }, 0.9, 1, false, 209.28, 0, 209.28},
		{"fails for want of a battery", func(b *Boat) { b.Power.Battery = 0 }, 0.9, 1, false, 209.28, 0, 209.28},
		{"a hazard forbids it", func(b *Boat) { b.Safety.FuelVapourSpace = quantity.Yes }, 0.9, 1, true, 209.28, 52, -102.72},
	} {
		b, book := dunlin(), testBook()
		row.change(&b)
		w := newWorld(&b, ground)
		p, err := newProposal(&b, &book, &w, 1, SmallUnit, FitOut{})
		if err != nil {
			t.Fatal(err)
		}
		f := Typical
		f.Nights = row.nights
		y := aYear{nights: 60, coldDays: 60 * row.cold, coldShare: row.cold, keptShare: row.cold, warmDays: 60 * (1 - row.cold), engineKWh: 13, wearKWh: 12}
		o, err := p.calculator().outcome(&f, y)
		if err != nil {
			t.Fatal(err)
		}
		trial := Trial{Works: o.Works(), Yearly: o.Yearly, KeptDays: o.KeptDays}
		trial.price(2 * row.nights)
		if o.Works() != row.works || math.Abs(o.Yearly-row.yearly) > 0.02 || math.Abs(trial.ExtraDays-row.extra) > 1e-9 {
			t.Errorf("%s: works %v, %.2f a year, %v days won; by hand %v, %.2f, %v", row.name, o.Works(), o.Yearly, trial.ExtraDays, row.works, row.yearly, row.extra)
		}
		price := math.Inf(1)
		if row.extra > 0 {
			price = row.yearly / row.extra
		}
		if trial.Price != price && !near(trial.Price, price, 2e-4) {
			t.Errorf("%s: %v a cold day; by hand %v", row.name, trial.Price, price)
		}
		if got := loss(SmallUnit, &trial, 6); math.Abs(got-row.loss) > 0.02 {
			t.Errorf("%s: a loss of %.2f at a worth of 6; by hand %.2f", row.name, got, row.loss)
		}
		if got := loss(DryStores, &trial, 6); got != 0 {
			t.Errorf("dry stores lose %v; the worth counts their food", got)
		}
	}
}

// fiveFutures are two ways in five futures, for hand work: the small unit keeps
// 50 days, ice 20.
func fiveFutures() (r *Reckoning, rows [][]Trial) {
	b := dunlin()
	r = &Reckoning{Boat: b}
	rows = make([][]Trial, 4)
	yearly := map[OptionID][]float64{IceOnly: {40, 60, 80, 110, 130}, DryStores: {0, 0, 0, 0, 0},
		SmallUnit: {100, 150, 199, 250, 400}, LargerUnit: {900, 900, 900, 900, 900}}
	days := map[OptionID]float64{IceOnly: 20, SmallUnit: 50}
	for i, id := range Options {
		r.Options[i].ID = id
		r.Options[i].AsTold.year.nights = 60
		for _, y := range yearly[id] {
			trial := Trial{Works: days[id] > 0, Yearly: y, KeptDays: days[id]}
			trial.price(0)
			rows[i] = append(rows[i], trial)
		}
		r.Options[i].count(rows[i])
	}
	r.Of(SmallUnit).Fit.Items = []FitItem{{Piece: SealPiece, Size: 1}}
	return r, rows
}

// The answer on five futures, by hand. Prices of a cold day: small unit 2, 3,
// 3.98, 5, 8; ice 2, 3, 4, 5.5, 6.5. Untold they are compared at the lesser median,
// 3.98: the unit gains 99, 49, 0, -51, -201, ice 39.6, 19.6, -0.4, -30.4, -50.4, so
// the unit is best in three of five. A quarter of its prices is at most 3, three
// quarters at most 5, 60 of 100 at most 3.98, said 4.
//
// At 6 told it gains 200, 150, 101, 50, -100 and ice 80, 60, 40, 10, -10: best in four.
// Its price is at most 6 in four; the one wrong future costs 100. On average the
// unit loses -80.2, the best of each future, dry stores in the last, -100.2: EVPI 20.
func TestAnswerByHand(t *testing.T) {
	r, rows := fiveFutures()
	a := r.answer(rows)
	if a.Case != ByWorth || !slices.Equal(a.Ways, []OptionID{SmallUnit}) || a.WayOf100 != 60 || a.ReachOf100 != 100 || a.AsShe {
		t.Errorf("untold: %+v", a)
	}
	if a.NoWorth != 3 || a.EvenWorth != 4 || a.YesWorth != 5 {
		t.Errorf("no to %v, even %v, yes from %v; by hand 3, 4, 5", a.NoWorth, a.EvenWorth, a.YesWorth)
	}
	if want := []WorthCount{{3, 40}, {4, 60}, {5, 80}}; !slices.Equal(a.Counts, want) {
		t.Errorf("counts %v; by hand %v", a.Counts, want)
	}

	r, rows = fiveFutures()
	r.Boat.Money.ColdDayWorth = 6
	r.Boat.Known = map[string]quantity.How{"money.cold_day_worth": quantity.Told}
	a = r.answer(rows)
	if a.Case != WorthTold || !slices.Equal(a.Ways, []OptionID{SmallUnit}) || a.WayOf100 != 80 || a.YesOf100 != [2]int{80, 80} || math.Abs(a.WrongCost-100) > 1e-9 {
		t.Errorf("told: %+v", a)
	}
	if a.Confidence() != Likely {
		t.Errorf("80 of 100 are %s", a.Confidence())
	}
	// Told as $2 to $6: by the prices above it is worth the first in 20 of 100 and
	// the last in 80, and the answer turns between them.
	two, of := fiveFutures()
	two.Boat.Money.ColdDayWorth, two.Boat.Money.ColdDayWorthTo = 2, 6
	two.Boat.Known = map[string]quantity.How{"money.cold_day_worth": quantity.Told}
	if ranged := two.answer(of); ranged.YesOf100 != [2]int{20, 80} || !ranged.Turns() || ranged.Confidence() != CloseCall || a.Turns() {
		t.Errorf("told $2 to $6: %v, turns %t, %s; told $6 turns %t", ranged.YesOf100, ranged.Turns(), ranged.Confidence(), a.Turns())
	}
	asked := answerer{r, rows, 5}
	if f := asked.losses(nil, make([]Future, 5), SmallUnit); math.Abs(f.EVPI-20) > 1e-9 || f.Preferred != SmallUnit || f.Runner != IceOnly || !slices.Equal(f.Weighed, []OptionID{IceOnly, SmallUnit, DryStores}) {
		t.Errorf("EVPI %v, %s before %s of %v; by hand 20", f.EVPI, f.Preferred, f.Runner, f.Weighed)
	}

	// The dearer food it spares, told: $2 a night for each of two, at most 4 in three
	// of five, is too little; at $2.50 it is 5, in four.
	for premium, want := range map[quantity.Money]Case{2: ByWorth, 2.5: PaysForItself} {
		r, rows = fiveFutures()
		r.Boat.Food.DryPremium = premium
		r.Boat.Known = map[string]quantity.How{"food.dry_premium": quantity.Told}
		if a := r.answer(rows); a.Case != want || !a.PremiumTold {
			t.Errorf("premium of %v: %s, spared in %d of 100; by hand %s", premium, a.Case, a.PremiumOf100, want)
		}
	}
}

// Ways are weighed at equal service. A way that works in 80 of 100 is left out
// beside one that works in 90, unless its price is under two thirds; alone it is weighed
// as one that nearly does. What works in 70 comes nearest at best.
func TestWeighedByHand(t *testing.T) {
	for _, row := range []struct {
		ice, small int     // of 100 futures in which they work
		icePrice   float64 // median; the small unit's is 4
		want       []OptionID
	}{
		{87, 90, 3, []OptionID{IceOnly, SmallUnit}},
		{86, 90, 3, []OptionID{SmallUnit}},
		{80, 90, 2.6, []OptionID{SmallUnit, IceOnly}},
		{80, 90, 2.7, []OptionID{SmallUnit}},
		{74, 90, 1, []OptionID{SmallUnit}},
		{80, 60, 3, []OptionID{IceOnly}},
		{74, 60, 3, nil},
	} {
		r, rows := fiveFutures()
		r.Of(IceOnly).WorksOf100, r.Of(SmallUnit).WorksOf100 = row.ice, row.small
		r.Of(IceOnly).PriceOfCold.Typical, r.Of(SmallUnit).PriceOfCold.Typical = row.icePrice, 4
		a := answerer{r, rows, 5}
		if got := a.weighed(); !slices.Equal(got, row.want) {
			t.Errorf("%+v: %v", row, got)
		}
		if got := r.answer(rows); row.want == nil && (got.Case != NoneReaches || got.Way() != IceOnly) {
			t.Errorf("%+v: %s, nearest %s", row, got.Case, got.Way())
		}
	}
}

// Steps a person would say: quarters to 2, halves to 6, ones to 16, twos to 40,
// then fives.
func TestSayings(t *testing.T) {
	for _, row := range []struct{ sum, down, up float64 }{
		{0, 0, 0}, {0.1, 0, 0.25}, {1.3, 1.25, 1.5}, {2, 2, 2}, {2.1, 2, 2.5}, {5.6, 5.5, 6}, {6.2, 6, 7}, {15.5, 15, 16}, {17, 16, 18}, {39, 38, 40}, {41, 40, 45}, {63, 60, 65},
	} {
		if down, up := SayDown(row.sum), SayUp(row.sum); down != row.down || up != row.up {
			t.Errorf("%v is said %v to %v; want %v to %v", row.sum, down, up, row.down, row.up)
		}
	}
	if !math.IsInf(SayUp(math.Inf(1)), 1) {
		t.Error("endless is said to end")
	}
}

// Counts in words, and how little of a boat told holds them back: 90 sure, 75
// likely, 60 leaning, 41 to 59 a close call, from 26 leaning against.
func TestCountsInWords(t *testing.T) {
	for _, row := range []struct {
		of100      int
		fair, weak Confidence
	}{
		{100, Sure, Likely}, {90, Sure, Likely}, {89, Likely, Likely}, {75, Likely, Likely}, {74, Leaning, Leaning}, {60, Leaning, Leaning},
		{59, CloseCall, CloseCall}, {41, CloseCall, CloseCall}, {40, LeaningNot, LeaningNot}, {26, LeaningNot, LeaningNot}, {25, NotWorthIt, NotWorthIt},
	} {
		for grade, want := range map[EvidenceGrade]Confidence{Fair: row.fair, Strong: row.fair, Weak: row.weak} {
			a := Answer{YesOf100: [2]int{row.of100, row.of100}, Grade: grade}
			if got := a.Confidence(); got != want {
				t.Errorf("%d of 100, evidence %s: %s, want %s", row.of100, grade, got, want)
			}
		}
	}
}

// dearerBy gives the five futures with everything that many times as dear.
func dearerBy(factor float64) (*Reckoning, [][]Trial) {
	r, rows := fiveFutures()
	for i := range rows {
		for k := range rows[i] {
			rows[i][k].Yearly *= factor
			rows[i][k].price(0)
		}
		r.Options[i].count(rows[i])
	}
	return r, rows
}

// The same five futures with everything dearer: no to $3 becomes no to $9.90, said
// 9, and the answer goes by the worth; or no to $10.20, said 10, and it is rather
// not. Cheaper: yes from $3 is $1.50 for each of two, under the usual $1.60 that
// tins cost more, so it pays for itself; from $3.20, said 3.50, it is $1.75.
func TestPriceDecidesTheCase(t *testing.T) {
	for factor, want := range map[float64]Case{3.3: ByWorth, 3.4: RatherNot, 0.6: PaysForItself, 0.64: ByWorth} {
		r, rows := dearerBy(factor)
		if a := r.answer(rows); a.Case != want {
			t.Errorf("%v times the cost: %s, no to %v; by hand %s", factor, a.Case, a.NoWorth, want)
		}
	}
}

// Three ways of the same days, each the cheapest in some of fifty futures. Two that
// have 78 of 100 between them lead; with 74 all three do.
func TestWaysThatLeadTogether(t *testing.T) {
	for _, row := range []struct {
		wins [3]int
		lead int
	}{{[3]int{20, 19, 11}, 2}, {[3]int{20, 17, 13}, 3}} {
		r, rows := fiveFutures()
		winner := 0
		for i, id := range Options {
			rows[i] = nil
			for k := range 50 {
				trial := Trial{Works: id != DryStores, Yearly: 200, KeptDays: 50}
				if id == DryStores {
					trial.Yearly, trial.KeptDays = 0, 0
				} else if from := sum(row.wins[:winner]); from <= k && k < from+row.wins[winner] {
					trial.Yearly = 190
				}
				trial.price(0)
				rows[i] = append(rows[i], trial)
			}
			if id != DryStores {
				winner++
			}
			r.Options[i].count(rows[i])
		}
		if a := r.answer(rows); len(a.Ways) != row.lead {
			t.Errorf("best in %v of 50: %v lead, want %d", row.wins, a.Ways, row.lead)
		}
	}
}

func sum(of []int) (n int) {
	for _, x := range of {
		n += x
	}
	return n
}

// At most $0.50 a cold day is next to nothing: a median of 3.98 an eighth as dear, not
// one of 0.52. Food that keeps is told as hardly dearer, so nothing pays for itself.
func TestNextToNothing(t *testing.T) {
	for factor, want := range map[float64]Case{0.125: NextToNothing, 0.13: ByWorth} {
		r, rows := dearerBy(factor)
		r.Boat.Food.DryPremium = 0.05
		r.Boat.Known = map[string]quantity.How{"food.dry_premium": quantity.Told}
		if a := r.answer(rows); a.Case != want {
			t.Errorf("%v times the cost: %s; by hand %s", factor, a.Case, want)
		}
	}
}
