package season_test

import (
	"math"

	"coldreckon/economics/climate"
	"coldreckon/economics/season"
)

// The oracle is a second season, written from the package's description alone.
// It is slow and plain: it works everything out again in every hour, and shares
// no formula with the first one, only the weather (the ground's months, each
// day's sun and air, how a day's sun falls in its hours). Its constants are
// typed in anew, with their source beside them.
type oracle struct {
	ground  climate.Ground
	sky     *climate.Sky
	setup   season.Setup
	weather *season.Weather
}

// surroundings are what an hour brings whatever stands in the box.
type surroundings struct {
	clock, month           int
	outdoorC, cabinC, seaC float64
	sunW, engineW          float64
	motoring, onShore      bool
	opensM3, cabinKJ       float64 // air swapped in this hour, and the enthalpy of the cabin's
	hoursOnShore           int     // left of this night's
	drinksKg               float64 // this hour's part of the day's drinks
	foodKg                 float64 // perishables bought at this day's noon
}

// around gives what surrounds the box in an hour of a trip whose weather
// begins at firstDay.
func (o *oracle) around(trip season.Trip, firstDay, hour int) surroundings {
	s, p := &o.setup, &o.setup.Power
	tripDay := hour / 24 // from noon to noon
	night := trip.First + tripDay
	day := firstDay + (12+hour)/24 // the weather changes at midnight
	a := surroundings{clock: (12 + hour) % 24, month: s.Plan.Nights[night].Month}
	m := o.ground.Months[a.month]
	half := float64(a.clock) + 0.5

	a.outdoorC = float64(m.AirMean) + float64(m.AirMax-m.AirMin)/2*math.Cos(2*math.Pi*(half-15)/24) + o.weather.AirK[day]
	a.cabinC = a.outdoorC + float64(s.CabinOffset)
	a.seaC = float64(m.Sea)
	a.sunW = o.panelW(1000*o.weather.SunKWh[day]*o.sky.Shape(climate.MidMonthDay(a.month + 1))[a.clock], a.outdoorC)
	// The engine runs from 9 h. Its last hour may be a part of one: of the
	// electricity it then brings that part, but the engine space is warm.
	if running := 9 + p.EngineHours - float64(a.clock); a.clock >= 9 && running > 0 {
		a.motoring, a.engineW = true, p.EngineW*math.Min(1, running)
	}
	if a.onShore = o.shoreNight(night) && (a.clock >= 18 || a.clock < 6); a.onShore {
		a.hoursOnShore = (6 - a.clock + 24) % 24
	}

	if a.clock >= 7 && a.clock < 21 {
		a.cabinKJ = enthalpyKJ(a.cabinC, math.Min(m.HumidityRatio, mostWater(a.cabinC)))
		a.opensM3 = s.Box.OpensPerDay / 14 * s.Box.SwappedL / 1000
	}
	if tripDay > 0 {
		a.drinksKg = s.Goods.DrinksKgPerDay / 24
	}
	if tripDay%s.Goods.ShopEveryDays == 0 {
		// Until the next shop, the trip's end, or the seventh day (FDA Food Code 3-501.17).
		days := math.Min(7, math.Min(float64(s.Goods.ShopEveryDays), float64(trip.Nights-tripDay)))
		a.foodKg = s.Goods.PerishableKgPerDay * days
	}
	return a
}

// panelW: cells at air + (NOCT - 20) G/800 (IEC 61215), power in proportion to
// irradiance less the cells' loss over 25 °C (Dobos 2014, NREL/TP-6A20-62641).
func (o *oracle) panelW(irradiance, airC float64) float64 {
	c := o.setup.Power.Panel
	cellC := airC + (float64(c.NOCT)-20)*irradiance/800
	return float64(c.Wp) * irradiance / 1000 * float64(c.Passed) * (1 - c.CellLoss*(cellC-25))
}

// shoreNight: so far the nights on shore are the share, rounded, of all nights.
func (o *oracle) shoreNight(night int) bool {
	share := o.setup.Power.ShoreShare
	return math.Round(float64(night+1)*share) > math.Round(float64(night)*share)
}

// Moist air: ASHRAE Fundamentals 2017, ch. 1, equations 5, 6 and those for a
// mixture of perfect gases at sea level; from memory.

func vapourKPa(c float64) float64 {
	k := c + 273.15
	if c < 0 {
		return math.Exp(-5674.5359/k+6.3925247-0.009677843*k+6.2215701e-7*k*k+2.0747825e-9*k*k*k-9.484024e-13*k*k*k*k+4.1635019*math.Log(k)) / 1000
	}
	return math.Exp(-5800.2206/k+1.3914993-0.048640239*k+4.1764768e-5*k*k-1.4452093e-8*k*k*k+6.5459673*math.Log(k)) / 1000
}

func mostWater(c float64) float64 { return 0.621945 * vapourKPa(c) / (101.325 - vapourKPa(c)) }

func enthalpyKJ(c, water float64) float64 { return 1.006*c + water*(2501+1.86*c) }

func m3PerKg(c, water float64) float64 {
	return 0.287042 * (c + 273.15) * (1 + 1.607858*water) / 101.325
}

// leakW is the heat through the walls. The engine space is 8 K over the cabin
// while motoring, the deck 3 K always (engineering judgement, from memory).
func (o *oracle) leakW(a surroundings, boxC float64) float64 {
	engineC := a.cabinC
	if a.motoring {
		engineC += 8
	}
	l := o.setup.Box.Leak
	return float64(l.Cabin)*(a.cabinC-boxC) + float64(l.Sea)*(a.seaC-boxC) +
		float64(l.Engine)*(engineC-boxC) + float64(l.Deck)*(a.cabinC+3-boxC)
}

// opensW is the heat of cabin air that takes the place of the box's own,
// saturated, air, as much dry air as fell out.
func (o *oracle) opensW(a surroundings, boxC float64) float64 {
	kg := a.opensM3 / m3PerKg(boxC, mostWater(boxC))
	return kg * (a.cabinKJ - enthalpyKJ(boxC, mostWater(boxC))) / 3.6
}

// goodsW is the heat of drinks, 4.19 kJ/kg·K from the cabin, and in a stowing
// hour of a sixth of the perishables, 3.5 kJ/kg·K (both from memory); 1 kJ an
// hour is 1/3.6 W.
func (o *oracle) goodsW(a surroundings, stowing bool, boxC float64) float64 {
	kJ := a.drinksKg * 4.19 * (a.cabinC - boxC)
	if stowing {
		kJ += a.foodKg / 6 * 3.5 * (o.setup.Goods.StowedC - boxC)
	}
	return kJ / 3.6
}

// bag is the chilled food of a trip's first noon. reached is the hour of the
// trip at whose start the box was at its limit, 6 at the latest.
type bag struct{ reached, free int }

// setOut: in a box at the limit the food goes in at once and six hours are free
// of the exams; else it waits, and the hours of waiting are.
func (o *oracle) setOut(boxC float64) bag {
	if boxC <= o.setup.LimitC+0.01 {
		return bag{0, 6}
	}
	return bag{6, 6}
}

// look is taken at the end of an hour of the trip.
func (b *bag) look(o *oracle, hour int, boxC float64) {
	if hour < b.reached && boxC <= o.setup.LimitC+0.01 {
		*b = bag{hour + 1, hour + 1}
	}
}

// stowing tells whether perishables go in during an hour of the trip.
func (b *bag) stowing(hour int) bool {
	if hour < 24 {
		return hour >= b.reached && hour < b.reached+6
	}
	return hour%24 < 6
}

// bank is the battery between two hours.
type bank struct {
	wh  float64
	off bool // the unit was cut off and waits for the restart level
}

// account sums what the rows do not tell.
type account struct {
	sunWh, engineWh, houseWh, unitWh   float64
	shoreWh, drawnWh, unmetWh, spillWh float64
	lowestWh                           float64
	boughtKg, homeKg, lostKg, meltedKg float64
	preCooledWh, runHours              float64
	boughtLostKg, chilledKg            float64
	errands, runs                      int
	chillKJ                            float64 // out of box and contents, the day before trips
	dayBeforeKJ                        float64 // leaked in on those days
	off                                []bool  // by hour: nothing cooled
	stores                             bool    // a plate stood between
}

// carry takes the bank through an hour and gives the shore power it took.
func (o *oracle) carry(b bank, a surroundings, unitW float64, sum *account) (bank, float64) {
	p := o.setup.Power
	full, keeps := float64(p.Bank.FullWh), float64(p.Bank.ChargeEfficiency)
	in, out := a.sunW+a.engineW, p.HouseW+unitW
	var shoreW, spillW float64
	switch {
	case in >= out:
		kept := math.Min((in-out)*keeps, full-b.wh)
		spillW = in - out - kept/keeps
		b.wh += kept
	case a.onShore:
		shoreW = out - in
	default:
		drawn := math.Min(out-in, b.wh)
		b.wh -= drawn
		sum.drawnWh += drawn
		sum.unmetWh += out - in - drawn
	}
	if a.onShore { // full at 6 h, as much in each hour as in the others left
		gained := (full - b.wh) / float64(a.hoursOnShore)
		shoreW += gained / keeps
		b.wh += gained
	}
	if b.wh <= 1e-9 {
		b.off = true
	} else if a.onShore || a.engineW > 0 || b.wh >= float64(p.Bank.RestartWh) {
		b.off = false
	}
	// The engine runs for other reasons: what it could not place is no loss.
	sum.engineWh += math.Max(0, a.engineW-spillW)
	sum.spillWh += math.Max(0, spillW-a.engineW)
	sum.sunWh += a.sunW
	sum.houseWh += p.HouseW
	sum.unitWh += unitW
	sum.shoreWh += shoreW
	sum.lowestWh = math.Min(sum.lowestWh, b.wh)
	return b, shoreW
}

// atHandW is what the hour has for a unit.
func (o *oracle) atHandW(b bank, a surroundings) float64 {
	switch {
	case a.onShore:
		return math.Inf(1)
	case b.off:
		return 0
	}
	return math.Max(0, b.wh+a.sunW+a.engineW-o.setup.Power.HouseW)
}

// walk calls f for each trip with the index of its first day of weather.
func (o *oracle) walk(f func(number int, trip season.Trip, firstDay int)) {
	firstDay := 0
	for number, trip := range o.setup.Plan.Trips {
		f(number, trip, firstDay)
		firstDay += trip.Nights + 1
	}
}

// stores works the season out without cooling.
func (o *oracle) stores() account {
	sum := account{lowestWh: float64(o.setup.Power.Bank.FullWh)}
	o.walk(func(_ int, trip season.Trip, firstDay int) {
		b := bank{wh: float64(o.setup.Power.Bank.FullWh)}
		for hour := range 24 * trip.Nights {
			b, _ = o.carry(b, o.around(trip, firstDay, hour), 0, &sum)
		}
	})
	return sum
}
