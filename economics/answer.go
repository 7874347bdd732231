package economics

import (
	"math"
	"slices"

	"coldreckon/economics/chance"
	"coldreckon/economics/quantity"
)

// Case is the kind of sentence that the answer is. The first that fits, in the
// order of the constants, is taken.
type Case string

// The cases.
const (
	NoNights      Case = "no_nights"       // no nights aboard: there is nothing to decide
	NothingCold   Case = "nothing_cold"    // nothing is wanted cold: likewise
	Forbidden     Case = "forbidden"       // a hazard forbids the way where it is planned
	NoRoomAtAll   Case = "no_room"         // no way leaves room for what has to go in
	CoolOnly      Case = "cool_only"       // none keeps food cold enough, but one keeps it cool
	NoneReaches   Case = "none_reaches"    // none keeps it cold on enough days
	FewDays       Case = "few_days"        // too few days are won for a price a day
	WorthTold     Case = "worth_told"      // judged by the worth that the owner told
	PaysForItself Case = "pays_for_itself" // the dearer food it spares is worth more than it costs
	NextToNothing Case = "next_to_nothing" // a cold day costs next to nothing
	TooDear       Case = "too_dear"        // a cold day costs more than anyone says
	RatherNot     Case = "rather_not"      // worth it only to those who value a cold day highly
	ByWorth       Case = "by_worth"        // turns on the worth of a cold day
)

// Confidence is how sure a yes or no is, by its count of 100 futures.
type Confidence string

// The words, from the surest yes. Engineering judgement, from memory.
const (
	Sure                    Confidence = "sure"            // 90 or more
	Likely                  Confidence = "likely"          // 75
	Leaning                 Confidence = "leaning"         // 60
	CloseCall               Confidence = "close"           // 41
	LeaningNot              Confidence = "leaning_against" // 26
	NotWorthIt              Confidence = "no"              // fewer
	closeOf100                         = 41                // of 100 futures, from which a call is close
	namedOf100                         = 60                // of 100 futures that name a way, alone
	togetherOf                         = 75                // of 100 that two ways must have between them
	reachOf100, nearlyOf100            = 87, 75            // of 100 futures in which a way must work to be weighed
	yesOf100, noOf100                  = 75, 25
	fewDaysAYear                       = 5
	nothingPrice                       = 0.50 // of a cold day
	dearPrice, highPrice               = 50, 10
	// A way that works a little less often is weighed where its price is under
	// this part of the others': nobody pays twice as much for five futures in a
	// hundred.
	muchLess = 2.0 / 3
)

func confidence(of100 int) Confidence {
	switch {
	case of100 >= 90:
		return Sure
	case of100 >= 75:
		return Likely
	case of100 >= 60:
		return Leaning
	case of100 >= closeOf100:
		return CloseCall
	case of100 >= 26:
		return LeaningNot
	}
	return NotWorthIt
}

// WorthCount is in how many of 100 futures the leading way costs no more for a
// cold day than a worth, money a day.
type WorthCount struct {
	Worth float64
	Of100 int
}

// Answer is what to do. Two questions are kept apart: which cold way, by cost at
// equal service among those that do what is wanted; and whether, by what a cold
// day is worth to the owner. Dry stores meet none of the service: they are what
// one does when cold is not worth its price. The report words it; here it is
// figures. Money is the owner's, a day or a year, in today's prices.
type Answer struct {
	Case Case
	// Ways are the cold ways that lead: one that is best in 60 of 100 futures,
	// else the two or three best. Where none reaches, the one that comes nearest.
	// It is empty where there is nothing to decide.
	Ways []OptionID
	// WayOf100 is in how many of 100 futures the first of Ways is best among
	// those weighed, and ReachOf100 in how many it works at all.
	WayOf100, ReachOf100 int
	// Otherwise is the best way that no hazard forbids, where one forbids the
	// leader; "" where there is none.
	Otherwise OptionID
	// NoWorth and YesWorth are the worths of a cold day up to which the answer
	// is no and from which it is yes: 25 and 75 of 100 futures, in steps that a
	// person would say; EvenWorth is that at 60. They are infinite where so many
	// futures never come together.
	NoWorth, YesWorth, EvenWorth float64
	// Worth is what the owner told, at its low and high end; it counts only in
	// the case WorthTold, as do YesOf100 and WrongCost.
	Worth    quantity.Range
	YesOf100 [2]int // of 100 futures, those in which the way is worth the low and the high end
	// WrongCost is what the wrong choice costs a year, on average of the
	// futures in which it is wrong.
	WrongCost float64
	// PremiumOf100 is in how many of 100 futures the way costs less than the
	// dearer food it spares, as told; it counts only where that was told.
	PremiumOf100 int
	PremiumTold  bool
	// Counts are at the worths that the sentences name, ascending.
	Counts []WorthCount
	// AsShe tells that the first of Ways works without any work.
	AsShe bool
	// OverLimit is how much the first of Ways costs at first beyond the owner's
	// limit, 0 where it does not or no limit was told. Within is then another
	// weighed way within it; "" where there is none.
	OverLimit float64
	Within    OptionID
	// LimitBuys is the most that the limit does buy of the first of Ways, nil
	// where it is not over the limit or the limit buys nothing that runs.
	LimitBuys *LimitBuys
	// MedicineKept lists the ways that keep 2 to 8 °C in every hour of every day
	// in 99 of 100 futures; it counts only where medicine is aboard.
	MedicineKept []OptionID
	Grade        EvidenceGrade
}

// LimitBuys is a fit-out within the owner's limit.
type LimitBuys struct {
	Out        FitOut
	Items      []FitItem
	First      float64 // paid at first, typical prices
	WorksOf100 int     // of 100 futures of the search
	KeptShare  float64 // mean share of days kept
}

// Way gives the way that leads, "" where there is nothing to decide.
func (a *Answer) Way() OptionID {
	if len(a.Ways) == 0 {
		return ""
	}
	return a.Ways[0]
}

// Turns tells whether the answer turns within the worth told: no at its low end
// and yes at its high one.
func (a *Answer) Turns() bool {
	return a.YesOf100[0] < closeOf100 && a.YesOf100[1] >= namedOf100
}

// Confidence words YesOf100 at its lower end; a close call where the answer
// turns within the worth told. Where little of the boat is told it is never more
// than likely.
func (a *Answer) Confidence() Confidence {
	if a.Turns() {
		return CloseCall
	}
	c := confidence(a.YesOf100[0])
	if c == Sure && a.Grade == Weak {
		return Likely
	}
	return c
}

// cold lists the ways that can keep food cold.
var cold = [3]OptionID{IceOnly, SmallUnit, LargerUnit}

// answerer answers from the fitted options' trials.
type answerer struct {
	r      *Reckoning
	trials [][]Trial // by option, in the order of Options
	n      int
}

func (r *Reckoning) answer(trials [][]Trial) Answer {
	a := answerer{r, trials, len(trials[0])}
	out := a.choose()
	out.Grade = r.Boat.EvidenceGrade()
	for _, id := range cold {
		if r.Of(id).MedicineOf100 >= 99 {
			out.MedicineKept = append(out.MedicineKept, id)
		}
	}
	return out
}

func (a *answerer) choose() Answer {
	b := &a.r.Boat
	switch {
	case a.r.Of(IceOnly).AsTold.year.nights == 0:
		return Answer{Case: NoNights}
	case b.perishableKgPerDay() == 0 && b.drinksKgPerDay() == 0:
		return Answer{Case: NothingCold}
	}
	weighed := a.weighed()
	if len(weighed) == 0 {
		return a.nearest()
	}
	var out Answer
	worth := a.referenceWorth(weighed)
	a.lead(&out, weighed, worth)
	way := out.Way()
	if a.r.Of(way).Fitted.Fails(Hazard) {
		out.Case = Forbidden
		safe := slices.DeleteFunc(slices.Clone(weighed), func(id OptionID) bool { return a.r.Of(id).Fitted.Fails(Hazard) })
		if len(safe) > 0 {
			var other Answer
			a.lead(&other, safe, worth)
			out.Otherwise = other.Way()
		}
	}
	a.price(&out, way)
	a.limit(&out, weighed)
	if out.Case == "" {
		out.Case = a.caseOf(&out)
	}
	return out
}

// weighed lists the cold ways that do what is wanted in enough futures, and one
// that nearly does at under two thirds of their least price.
func (a *answerer) weighed() []OptionID {
	reach := func(of100 int) (ids []OptionID) {
		for _, id := range cold {
			if a.r.Of(id).WorksOf100 >= of100 {
				ids = append(ids, id)
			}
		}
		return ids
	}
	ways := reach(reachOf100)
	if len(ways) == 0 {
		return reach(nearlyOf100)
	}
	least := a.leastMedian(ways)
	for _, id := range reach(nearlyOf100) {
		if !slices.Contains(ways, id) && a.r.Of(id).PriceOfCold.Typical < muchLess*least {
			ways = append(ways, id)
		}
	}
	return ways
}

func (a *answerer) leastMedian(ways []OptionID) float64 {
	least := math.Inf(1)
	for _, id := range ways {
		least = min(least, a.r.Of(id).PriceOfCold.Typical)
	}
	return least
}

// referenceWorth is the worth at which ways are compared: the one told, else
// one at which the cheapest of them would just be had.
func (a *answerer) referenceWorth(ways []OptionID) float64 {
	if low, high, told := a.r.Boat.coldDayWorth(); told {
		return (low + high) / 2
	}
	if least := a.leastMedian(ways); !math.IsInf(least, 1) {
		return least
	}
	return 0
}

// coldDayWorth gives the ends of what the owner told a cold day to be worth.
func (b *Boat) coldDayWorth() (low, high float64, told bool) {
	low = float64(b.Money.ColdDayWorth)
	return low, max(low, float64(b.Money.ColdDayWorthTo)), b.Told("money.cold_day_worth")
}

func (a *answerer) of(id OptionID) []Trial { return a.trials[slices.Index(Options[:], id)] }

// lead finds the way that is best in most futures, alone or with others.
func (a *answerer) lead(out *Answer, ways []OptionID, worth float64) {
	wins := make(map[OptionID]int)
	for k := range a.n {
		best, most := OptionID(""), math.Inf(-1)
		for _, id := range ways {
			t := &a.of(id)[k]
			if gain := worth*t.KeptDays - t.Yearly; gain > most {
				best, most = id, gain
			}
		}
		wins[best]++
	}
	ranked := slices.Clone(ways)
	slices.SortStableFunc(ranked, func(x, y OptionID) int { return wins[y] - wins[x] })
	counts := make([]int, len(ranked))
	for i, id := range ranked {
		counts[i] = wins[id]
	}
	of100 := chance.ShareOut(counts, a.n)
	for i, id := range ranked {
		a.r.Of(id).BestOf100 = of100[i]
	}
	out.Ways, out.WayOf100 = ranked[:1], of100[0]
	if out.WayOf100 < namedOf100 && len(ranked) > 1 {
		out.Ways = ranked[:2]
		if of100[0]+of100[1] < togetherOf && len(ranked) > 2 {
			out.Ways = ranked[:3]
		}
	}
	out.ReachOf100 = a.r.Of(ranked[0]).WorksOf100
}

// price sets all that follows from the leader's price of a cold day.
func (a *answerer) price(out *Answer, way OptionID) {
	prices := make([]float64, a.n)
	for k, t := range a.of(way) {
		prices[k] = t.Price
	}
	slices.Sort(prices)
	at := func(of100 int) float64 { return prices[min(a.n-1, max(0, (of100*a.n+99)/100-1))] }
	of100 := func(worth float64) int {
		n, _ := slices.BinarySearchFunc(prices, worth, func(p, w float64) int {
			if p <= w {
				return -1
			}
			return 1
		})
		return int(math.Round(100 * float64(n) / float64(a.n)))
	}
	out.NoWorth, out.YesWorth, out.EvenWorth = SayDown(at(noOf100)), SayUp(at(yesOf100)), SayUp(at(namedOf100))
	worths := []float64{out.NoWorth, out.EvenWorth, out.YesWorth}
	if low, high, told := a.r.Boat.coldDayWorth(); told {
		out.Worth = quantity.Range{Low: low, Typical: (low + high) / 2, High: high}
		out.YesOf100 = [2]int{of100(low), of100(high)}
		out.WrongCost = a.wrongCost(way, out.Worth.Typical)
		worths = append(worths, low, high)
	}
	if b := &a.r.Boat; b.Told("food.dry_premium") {
		out.PremiumTold = true
		out.PremiumOf100 = of100(b.Cruising.Crew * float64(b.Food.DryPremium))
	}
	slices.Sort(worths)
	for _, w := range slices.Compact(worths) {
		if !math.IsInf(w, 1) {
			out.Counts = append(out.Counts, WorthCount{w, of100(w)})
		}
	}
}

// wrongCost is what the wrong one of way and dry stores costs a year, on
// average of the futures in which the choice made for most is wrong.
func (a *answerer) wrongCost(way OptionID, worth float64) float64 {
	var sum [2]float64
	var count [2]int
	for _, t := range a.of(way) {
		side, gain := 0, worth*t.ExtraDays-t.Yearly
		if gain < 0 {
			side, gain = 1, -gain
		}
		sum[side] += gain
		count[side]++
	}
	wrong := 1
	if count[1] > count[0] {
		wrong = 0
	}
	if count[wrong] == 0 {
		return 0
	}
	return sum[wrong] / float64(count[wrong])
}

// UsualPremium is what food that keeps costs a person and night more than
// fresh, where an owner does not say: usual tins. Engineering judgement, from
// memory; the price book's line dry_premium has its range.
const UsualPremium = 1.60

func (a *answerer) caseOf(out *Answer) Case {
	b := &a.r.Boat
	_, _, told := b.coldDayWorth()
	crew := max(1, b.Cruising.Crew)
	switch {
	case a.r.Of(out.Way()).ExtraDays.Typical < fewDaysAYear:
		return FewDays
	case told:
		return WorthTold
	case out.PremiumTold && out.PremiumOf100 >= yesOf100, !out.PremiumTold && out.YesWorth/crew <= UsualPremium:
		return PaysForItself
	case a.r.Of(out.Way()).PriceOfCold.Typical < nothingPrice:
		return NextToNothing
	case out.YesWorth > dearPrice:
		return TooDear
	case out.NoWorth >= highPrice:
		return RatherNot
	}
	return ByWorth
}
