package season

import (
	"math"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Icing is how ice is bought and what it does in the box.
type Icing struct {
	FilmWPerM2K  float64 // of its surface with food up to 5 °C; see heat.IceFilm
	LumpKgPerM3  float64 // see heat.LumpDensity
	BulkKgPerL   float64 // ice stowed in a litre; see heat.BulkDensity
	RoomKg       float64 // what fits into the room given to ice
	PortionKg    float64 // one bag or block, over 0; purchases are whole ones
	CarryKg      float64 // most that can be fetched at one stop
	FirstCarryKg float64 // the same for a trip's first load; 0 for no limit but the room
	CarryLoss    float64 // share melted on the way, 0 or more and under 1
	FoundShare   float64 // chance that a stop after the first sells it, 0 to 1
	HomeKg       float64 // frozen at home for a trip's first load, at -18 °C and not billed; 0 where all is bought
	WaterKept    bool    // meltwater stays and warms with the food; else it leaves at 2 °C
	Runs         bool    // the owner also goes for ice on days that are no shop day
	Precooled    bool    // the box is cooled with ice the day before a trip; else it starts warm
}

// What an owner plans by. Engineering judgement, from memory.
const (
	planWarmerK    = 2.5  // his day over the month's mean: once the day's spread
	planBoxC       = 2    // the box while there is ice enough
	planSpareK     = 0.5  // under the limit at the warmest hour
	planWarmestH   = 15   // that hour
	planMargin     = 1.2  // over what is reckoned to melt
	planNoIce      = 0.1  // chance of having met no ice that he takes
	planMostStops  = 3    // to which he plans, or
	planMostDays   = 7    // so many days, whichever is further
	leastBagWanted = 0.25 // part of a bag that must be wanted
	planLoss       = 0.1  // on the way, which nobody weighs
)

// IcePlan is what an owner who knows his box plans by: what a day melts and the
// least ice worth having, of this box, its use and its ice, on a day of each
// month that is 2.5 K warmer than the mean one. He knows neither the weather to
// come nor which stops sell.
type IcePlan struct {
	Icing
	MeltKgADay [12]float64 // with the box at 2 °C, January first; 0 in months without nights
	FloorKg    [12]float64 // holds the deciding limit less 0.5 K at the warmest hour, no more than fits; likewise
	StartKg    [12]float64 // ice whose surface chills a warm box to there in the six hours that its food can wait
	ChillKg    [12]float64 // melted by a warm box at a trip's start; likewise
	// Stops is how many stops he plans for: to the one by which he has met ice
	// with a chance of 9 in 10, the third at most, or the last of a week.
	Stops   int
	surface heat.Surface
}

// IcePlan makes the plan of a season on ice.
func (s *Setup) IcePlan(ice Icing) IcePlan {
	p := IcePlan{Icing: ice, Stops: 1, surface: heat.NewSurface(ice.FilmWPerM2K, ice.LumpKgPerM3)}
	for none := 1 - ice.FoundShare; none > planNoIce+1e-9; p.Stops++ {
		if p.Stops >= planMostStops && (p.Stops+1)*s.Goods.ShopEveryDays > planMostDays {
			break
		}
		none *= 1 - ice.FoundShare
	}
	meltKJ, walls := p.meltKJPerKg(), s.walls()
	for m := range 12 {
		if s.Plan.NightsIn(m) == 0 {
			continue
		}
		day := s.meanDay(m, planBoxC, planWarmerK)
		p.MeltKgADay[m] = 86.4 * max(0, day.GainW()) / meltKJ
		p.ChillKg[m] = s.Box.HeatKJPerK * max(0, s.meanHour(m, noon, planWarmerK).cabinC-planBoxC) / meltKJ

		holdC, a := s.LimitC-planSpareK, s.meanHour(m, planWarmestH, planWarmerK)
		gainW := walls.leakW(&a, s.Months[m].SeaC, holdC) + walls.openingW(&a, holdC) + s.drinksWPerK()*(a.cabinC-holdC) +
			s.perishablesADay()*(s.Goods.StowedC-holdC)/(stowHours*3.6)
		p.FloorKg[m] = min(ice.RoomKg, float64(p.surface.FloorKg(quantity.Celsius(holdC), quantity.Watt(gainW))))
		if startC := s.meanHour(m, noon, planWarmerK).cabinC; startC > holdC {
			meanC := (startC - holdC) / math.Log(startC/holdC)
			gainW := walls.leakW(&a, s.Months[m].SeaC, meanC) + walls.openingW(&a, meanC)
			gainW += s.Box.HeatKJPerK * (startC - holdC) / (bagHours * 3.6)
			p.StartKg[m] = float64(p.surface.FloorKg(quantity.Celsius(meanC), quantity.Watt(gainW)))
		}
	}
	return p
}

// meltKJPerKg gives the heat that melts a kilogram at 0 °C until its water has
// left, or has joined the box.
func (ice *Icing) meltKJPerKg() float64 {
	if ice.WaterKept {
		return heat.FusionKJPerKg
	}
	return heat.MeltKJPerKg(heat.DrainCelsius)
}

// wantKg gives what the owner wants aboard for days to come.
func (p *IcePlan) wantKg(month, days int) float64 {
	return planMargin*float64(days)*p.MeltKgADay[month] + p.FloorKg[month]
}

// load is the ice aboard.
type load struct {
	kg      float64
	bought  float64 // share of it; the rest is from home
	frostKJ float64 // the cold of what is below freezing
	waterKg float64 // meltwater kept beside it
}

// add stows ice.
func (l *load) add(boughtKg, homeKg float64) {
	if kg := l.kg + boughtKg + homeKg; kg > 0 {
		l.bought = (l.bought*l.kg + boughtKg) / kg
		l.kg = kg
	}
	l.frostKJ += float64(heat.FreezerBonusKJ(quantity.Kilogram(homeKg), heat.FreezerCelsius))
}

// purchase is ice to be fetched: what is carried off, and what of it gets into
// the box.
type purchase struct{ homeKg, homeLoadedKg, boughtKg, loadedKg float64 }

// purchase gives what the owner wants at noon of a trip's day with so much ice
// left: for the days until the stop that he plans to, at the rate of the day's
// month. Ice from home comes first. The rest is whole bags, of which he counts
// on a tenth being lost on the way, the last only if a quarter of it is wanted
// and fits, but one where there is too little aboard to hold the food; no more
// than can be carried, rounded down but one at least. Of the last he loads what
// fits. (Were he to count with the loss as it is, a smaller
// one would now and then buy a bag less, and be worse.)
func (s *Setup) purchase(tr *tripRun, day, month int, leftKg float64, p *IcePlan) (b purchase) {
	shop := s.Goods.ShopEveryDays
	want := p.wantKg(month, min(p.Stops*shop-day%shop, tr.nights-day))
	room, keeps, carry, least := p.RoomKg-leftKg, 1-p.CarryLoss, p.CarryKg, 1.0
	if day == 0 && !p.Precooled {
		want = max(want, p.StartKg[month]) + p.ChillKg[month]
	}
	want -= leftKg
	if day == 0 {
		if carry = p.FirstCarryKg; carry == 0 {
			carry = math.Inf(1)
		}
		if want > 0 {
			b.homeKg = max(0, min(p.HomeKg, carry, room/keeps))
			b.homeLoadedKg = b.homeKg * keeps
		}
		if b.homeKg > 0 {
			want, room, carry, least = want-b.homeLoadedKg, room-b.homeLoadedKg, carry-b.homeKg, 0
		}
	}
	bags := math.Floor(min(want, room)/(p.PortionKg*(1-planLoss)) + 1 - leastBagWanted + 1e-9)
	if bags < 1 && want > 0 && leftKg+b.homeLoadedKg < p.FloorKg[month] {
		bags = 1
	}
	bags = min(bags, max(least, math.Floor(carry/p.PortionKg+1e-9)))
	if bags > 0 {
		b.boughtKg = bags * p.PortionKg
		b.loadedKg = min(b.boughtKg*keeps, room)
	}
	return b
}

// buy books what is bought at noon of a trip's day. The first stop of a trip is
// certain to sell; whether a later one does is drawn for each. Ice bought where
// food is costs no errand. On other days the owner goes for a run, if he ever
// does, when what is left does not do for the day to come; it costs its errand
// whether it finds ice or not. Meltwater in the way of the ice is bailed, and all of
// it where it is warmer than the food may be, for new ice would have to chill it.
func (s *Setup) buy(tr *tripRun, day, month int, foodC float64, ice *load, p *IcePlan, t *Tally) {
	sells := day == 0 || tr.air.stops[tr.first+day] < p.FoundShare
	shopDay := day%s.Goods.ShopEveryDays == 0
	if shopDay && !sells || !shopDay && !(p.Runs && ice.kg < p.wantKg(month, 1)) {
		return
	}
	b := s.purchase(tr, day, month, ice.kg, p)
	if b.homeKg+b.boughtKg == 0 {
		return
	}
	if !shopDay {
		t.Errands++
		t.Runs++
		if !sells {
			return
		}
	}
	ice.add(b.loadedKg, b.homeLoadedKg)
	if p.WaterKept {
		ice.waterKg = min(ice.waterKg, max(0, p.RoomKg-ice.kg)/p.BulkKgPerL)
	}
	if foodC > s.LimitC {
		ice.waterKg = 0
	}
	t.IceHomeKg += b.homeKg
	t.IceBoughtKg += b.boughtKg
	t.IceLostKg += b.homeKg - b.homeLoadedKg + b.boughtKg - b.loadedKg
	t.IceBoughtLostKg += b.boughtKg - b.loadedKg
}

// setOutOnIce gives the food's temperature and the load at a trip's start. A
// box that is pre-cooled is filled the day before: what pulling it down and
// that day's leak melt is bought then, in whole bags and by an errand, and the
// load made up at departure. It starts at the target, but no colder than the
// load to come can hold it, with the lid shut on the month's mean day.
func (s *Setup) setOutOnIce(tr *tripRun, p *IcePlan, t *Tally) (foodC float64, ice load) {
	month := s.Plan.Nights[tr.first].Month
	foodC = tr.hours[0].cabinC
	if p.Precooled && foodC > s.TargetC {
		to := s.purchase(tr, 0, month, 0, p)
		mean, walls, seaC := s.meanAir(month), s.walls(), s.Months[month].SeaC
		leakWPerK := float64(s.Box.Leak.Total())
		outsideC := walls.leakW(&mean, seaC, 0) / leakWPerK
		holdsC := p.surface.FoodCelsius(quantity.Kilogram(to.homeLoadedKg+to.loadedKg), s.Box.Leak.Total(), quantity.Celsius(outsideC), 0)
		if startC := max(s.TargetC, float64(holdsC)); startC < foodC {
			boxKJ, leakKJ := s.Box.HeatKJPerK*(foodC-startC), 86.4*leakWPerK*max(0, outsideC-startC)
			foodC = startC
			ice = p.chill(boxKJ, leakKJ, t)
		}
	}
	s.buy(tr, 0, month, foodC, &ice, p, t)
	return foodC, ice
}

// chill books the ice of the day before a trip, and gives what is left of it.
func (p *IcePlan) chill(boxKJ, leakKJ float64, t *Tally) (left load) {
	melted, keeps := (boxKJ+leakKJ)/p.meltKJPerKg(), 1-p.CarryLoss
	fetched := p.PortionKg * math.Ceil(melted/(p.PortionKg*keeps)-1e-9)
	left.add(min(p.RoomKg, fetched*keeps-melted), 0)
	t.GainKJ += leakKJ
	t.CooledKJ += boxKJ + leakKJ
	t.StoredKJ -= boxKJ
	t.ChilledKg += melted
	t.Errands++
	t.IceBoughtKg += fetched
	t.IceLostKg += fetched - melted - left.kg
	t.IceBoughtLostKg += fetched - melted - left.kg
	return left
}
