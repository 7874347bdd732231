package season_test

import (
	"math"

	"coldreckon/economics/climate"
	"coldreckon/economics/season"
)

// This file is a second season, written from the package's description and the
// sources beside the constants alone. It is slow, keeps no state between hours
// that it can work out again, and shares no function with the first one but the
// weather: sun, air and sea of the ground, and how a day's sun falls in its
// hours. Its constants are typed in anew.

// Moist air, ASHRAE Fundamentals 2017, ch. 1, from memory.

func vapourKPa(c float64) float64 {
	k := c + 273.15
	if c < 0 {
		return math.Exp(-5674.5359/k+6.3925247-0.009677843*k+6.2215701e-7*k*k+2.0747825e-9*k*k*k-9.484024e-13*k*k*k*k+4.1635019*math.Log(k)) / 1000
	}
	return math.Exp(-5800.2206/k+1.3914993-0.048640239*k+4.1764768e-5*k*k-1.4452093e-8*k*k*k+6.5459673*math.Log(k)) / 1000
}

func mostWater(c float64) float64 { return 0.621945 * vapourKPa(c) / (101.325 - vapourKPa(c)) }

func enthalpy(c, water float64) float64 { return 1.006*c + water*(2501+1.86*c) }

func m3PerKg(c, water float64) float64 {
	return 0.287042 * (c + 273.15) * (1 + 1.607858*water) / 101.325
}

// oracle is a season to be worked out the slow way.
type oracle struct {
	ground  climate.Ground
	sky     *climate.Sky
	setup   season.Setup
	weather *season.Weather
}

// sky of one hour: what no option changes.
type surroundings struct {
	clock, month               int
	outdoorC, cabinC, seaC     float64
	sunW, engineShare, opensKg float64 // opensKg: dry air swapped in this hour
	cabinKJ                    float64 // enthalpy of cabin air
	goodsKg                    float64 // of the goods being chilled, this hour's sixth
	onShore                    bool
}

// around gives what surrounds the box in an hour of a trip. firstDay is the
// index of the trip's first day in the weather.
func (o *oracle) around(trip season.Trip, firstDay, hour int) surroundings {
	s, p := &o.setup, &o.setup.Power
	var a surroundings
	a.clock = (12 + hour) % 24
	day := firstDay + (12+hour)/24 // weather changes at midnight
	tripDay := hour / 24           // from noon to noon
	night := trip.First + tripDay
	a.month = s.Plan.Nights[night].Month
	m := o.ground.Months[a.month]

	// 1. Weather.
	swing := float64(m.AirMax-m.AirMin) / 2
	a.outdoorC = float64(m.AirMean) + swing*math.Cos(2*math.Pi*(float64(a.clock)+0.5-15)/24) + o.weather.AirK[day]
	a.cabinC = a.outdoorC + float64(s.CabinOffset)
	a.seaC = float64(m.Sea)
	share := o.sky.Shape(climate.MidMonthDay(a.month + 1))[a.clock]
	irradiance := 1000 * o.weather.SunKWh[day] * share
	// Cell temperature from NOCT: IEC 61215; yield: Dobos 2014, NREL/TP-6A20-62641.
	cellC := a.outdoorC + (float64(p.Panel.NOCT)-20)*irradiance/800
	a.sunW = float64(p.Panel.Wp) * irradiance / 1000 * float64(p.Panel.Passed) * (1 - p.Panel.CellLoss*(cellC-25))
	a.engineShare = math.Max(0, math.Min(1, 9+p.EngineHours-float64(a.clock)))
	if a.clock < 9 {
		a.engineShare = 0
	}

	// 2. What the gain is made of.
	water := math.Min(m.HumidityRatio, mostWater(a.cabinC))
	a.cabinKJ = enthalpy(a.cabinC, water)
	if a.clock >= 7 && a.clock < 21 {
		a.opensKg = s.Box.OpensPerDay / 14 * s.Box.SwappedL / 1000 / m3PerKg(a.cabinC, water)
	}
	if tripDay%s.Goods.ShopEveryDays == 0 && hour%24 < 6 {
		days := min(s.Goods.ShopEveryDays, trip.Nights-tripDay)
		a.goodsKg = s.Goods.KgPerDay * float64(days) / 6
	}
	a.onShore = o.shoreNight(night) && (a.clock >= 18 || a.clock < 6)
	return a
}

// shoreNight spreads the nights on shore power evenly.
func (o *oracle) shoreNight(night int) bool {
	share := o.setup.Power.ShoreShare
	return math.Floor(float64(night+1)*share) > math.Floor(float64(night)*share)
}

// leakW is the heat through the walls with the box at a temperature. The
// engine space is 8 K over the cabin while motoring, the deck 3 K always.
func (o *oracle) leakW(a surroundings, boxC float64) float64 {
	l := o.setup.Box.Leak
	return float64(l.Cabin)*(a.cabinC-boxC) + float64(l.Sea)*(a.seaC-boxC) +
		float64(l.Engine)*(a.cabinC+8*a.engineShare-boxC) + float64(l.Deck)*(a.cabinC+3-boxC)
}

func (o *oracle) opensW(a surroundings, boxC float64) float64 {
	return a.opensKg * (a.cabinKJ - enthalpy(boxC, mostWater(boxC))) / 3.6
}

func (o *oracle) goodsW(a surroundings, boxC float64) float64 {
	return a.goodsKg * 3.6 * (a.cabinC - boxC) / 3.6
}

// bank is the battery between two hours.
type bank struct {
	chargeWh float64
	off      bool // the unit was cut off and waits for the restart level
}

// carry takes the bank through an hour.
func (o *oracle) carry(b bank, a surroundings, unitW float64) (after bank, shoreW float64) {
	p := o.setup.Power
	full, eff := float64(p.Bank.FullWh), float64(p.Bank.ChargeEfficiency)
	in := a.sunW + p.EngineW*a.engineShare
	out := p.HouseW + unitW
	if a.onShore {
		// All loads on shore; the bank fills evenly until 6 h.
		left := float64((6 - a.clock + 24) % 24)
		charging := (full - b.chargeWh) / left / eff
		shoreW = math.Max(0, out+charging-in)
		b.chargeWh = math.Min(full, b.chargeWh+math.Max(charging, in-out)*eff)
	} else if in > out {
		b.chargeWh = math.Min(full, b.chargeWh+(in-out)*eff)
	} else {
		b.chargeWh = math.Max(0, b.chargeWh-(out-in))
	}
	return b, shoreW
}

// atHand is the electricity an hour has for the unit, fan apart.
func (o *oracle) atHand(b bank, a surroundings) float64 {
	p := o.setup.Power
	if a.onShore {
		return math.Inf(1)
	}
	return b.chargeWh + a.sunW + p.EngineW*a.engineShare - p.HouseW
}

// compressor is what the cycle does at a plate temperature. Growth 0.045 and
// fall 0.008 per kelvin about -10/45 °C, engineering judgement, from memory.
func (o *oracle) compressor(r season.Refrigerator, teC, coolantC float64) (capacityW, cop float64) {
	tcC := math.Max(30, coolantC+float64(r.Cycle.Rise))
	capacityW = float64(r.Cycle.Rated) * math.Exp(0.045*(teC+10)) * (1 - 0.008*(tcC-45))
	return capacityW, r.Cycle.Eta * (teC + 273.15) / math.Max(25, tcC-teC)
}

// plateC halves an interval until the plate takes up what the compressor
// takes out; it is never over 5 °C.
func (o *oracle) plateC(r season.Refrigerator, boxC, coolantC float64) float64 {
	low, high := boxC-200, boxC
	for range 200 {
		middle := (low + high) / 2
		if capacityW, _ := o.compressor(r, middle, coolantC); float64(r.Cycle.Plate)*(boxC-middle) > capacityW {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Min(5, low)
}

// unit works the season out with a thin-plate or an eutectic unit.
func (o *oracle) unit(r season.Refrigerator) []season.Hour {
	var rows []season.Hour
	s := &o.setup
	firstDay := 0
	for number, trip := range s.Plan.Trips {
		b := bank{chargeWh: float64(s.Power.Bank.FullWh)}
		food, frozenKJ := o.startC(r, trip, firstDay, &b), 0.0
		if r.Start != season.StartWarm && food == s.TargetC {
			frozenKJ = r.StoreKJ
		}
		for hour := range 24 * trip.Nights {
			a := o.around(trip, firstDay, hour)
			coolantC := a.cabinC
			if r.SeaCooled {
				coolantC = a.seaC
			}
			gainW := o.leakW(a, food) + o.opensW(a, food) + o.goodsW(a, food)
			need := math.Max(0, gainW+s.Box.HeatKJPerK*(food-s.TargetC)/3.6)
			if b.off && b.chargeWh >= float64(s.Power.Bank.RestartWh) {
				b.off = false
			}
			hand := o.atHand(b, a)
			if b.off && !a.onShore {
				hand = 0
			}
			teC := o.plateC(r, food, coolantC)
			capacityW, cop := o.compressor(r, teC, coolantC)
			var cooledW, pumpedW float64
			if r.StoreKJ == 0 {
				pumpedW = math.Min(math.Min(need, capacityW), cop*math.Max(0, hand-float64(r.Cycle.Condenser)))
				cooledW = pumpedW
			} else {
				// The plate stands at its freezing point, -10 °C.
				teC = -10
				capacityW, cop = o.compressor(r, teC, coolantC)
				take := math.Max(0, math.Min(need, float64(r.Cycle.Plate)*(food+10)))
				room := (r.StoreKJ-frozenKJ)/3.6 + take
				pumpedW = math.Min(math.Min(room, capacityW), cop*math.Max(0, hand-float64(r.Cycle.Condenser)))
				cooledW = math.Min(take, frozenKJ/3.6+pumpedW)
				frozenKJ += 3.6 * (pumpedW - cooledW)
			}
			unitW := pumpedW/cop + float64(r.Cycle.Condenser)*pumpedW/capacityW + float64(r.Cycle.Standby)
			if b.off && !a.onShore {
				unitW = 0
			}
			food += 3.6 * (gainW - cooledW) / s.Box.HeatKJPerK
			var shoreW float64
			b, shoreW = o.carry(b, a, unitW)
			if b.chargeWh <= 1e-9 {
				b.off = true
			}
			rows = append(rows, season.Hour{Trip: number, Hour: hour, Clock: a.clock, Month: a.month,
				CabinC: a.cabinC, FoodC: food, GainW: gainW, CooledW: cooledW,
				EvaporatorC: teC, CapacityW: capacityW, COP: cop,
				SunW: a.sunW, UnitW: unitW, ShoreW: shoreW, ChargeWh: b.chargeWh})
		}
		firstDay += trip.Nights + 1
	}
	return rows
}

// ice works the season out on ice. Water 4.19 kJ/kg·K, ice 2.1 kJ/kg·K and
// 333.6 kJ/kg to melt: Earle, Unit Operations in Food Processing, appendix 7,
// and from memory.
func (o *oracle) ice(ice season.Icing) []season.Hour {
	var rows []season.Hour
	s := &o.setup
	firstDay := 0
	full := float64(ice.Surface.FullKg)
	for number, trip := range s.Plan.Trips {
		food := o.around(trip, firstDay, 0).cabinC
		var kg, frostKJ float64
		for hour := range 24 * trip.Nights {
			a := o.around(trip, firstDay, hour)
			day := hour / 24
			if hour%24 == 0 && day%s.Goods.ShopEveryDays == 0 && o.sells(ice, day) {
				bought := o.purchase(ice, trip, day, kg)
				if day == 0 && ice.FromHome {
					frostKJ = 2.1 * 18 * bought
				} else {
					bought *= 1 - ice.CarryLoss
				}
				kg += bought
			}
			before := food
			var gainW, cooledW float64
			if kg > 0 {
				// leak·(out - T) + goods·(cabin - T) + opens = surface·T
				surface := float64(ice.Surface.FullWPerK) * math.Pow(math.Min(1, kg/full), 2.0/3)
				at0 := o.leakW(a, 0) + o.goodsW(a, 0) + o.opensW(a, before)
				perK := o.leakW(a, 0) - o.leakW(a, 1) + o.goodsW(a, 0) - o.goodsW(a, 1)
				food = at0 / (perK + surface)
				gainW = at0 - perK*food
				heatKJ := math.Max(0, 3.6*gainW+s.Box.HeatKJPerK*(before-food))
				cooledW = heatKJ / 3.6
				thaw := math.Min(heatKJ, frostKJ)
				frostKJ -= thaw
				drainC := 2.0
				if ice.WaterKept {
					drainC = food
				}
				kg -= math.Min(kg, (heatKJ-thaw)/(333.6+4.19*drainC))
			} else {
				gainW = o.leakW(a, before) + o.goodsW(a, before) + o.opensW(a, before)
				food += 3.6 * gainW / s.Box.HeatKJPerK
			}
			rows = append(rows, season.Hour{Trip: number, Hour: hour, Clock: a.clock, Month: a.month,
				CabinC: a.cabinC, FoodC: food, GainW: gainW, CooledW: cooledW, SunW: a.sunW, IceKg: kg})
		}
		firstDay += trip.Nights + 1
	}
	return rows
}

// sells tells whether the stop on a day of a trip has ice.
func (o *oracle) sells(ice season.Icing, day int) bool {
	stop := day / o.setup.Goods.ShopEveryDays
	return stop == 0 || math.Floor(float64(stop+1)*ice.FoundShare) > math.Floor(float64(stop)*ice.FoundShare)
}

// purchase is what the owner takes on.
func (o *oracle) purchase(ice season.Icing, trip season.Trip, day int, left float64) float64 {
	var melt float64
	month := o.setup.Plan.Nights[trip.First+day].Month
	for next := day; next < trip.Nights; next++ {
		if next > day && next%o.setup.Goods.ShopEveryDays == 0 && o.sells(ice, next) {
			break
		}
		melt += ice.MeltKgADay[o.setup.Plan.Nights[trip.First+next].Month]
	}
	want := 1.2*melt + ice.FloorKg[month] - left
	if day == 0 {
		want += ice.PullDownKg[month]
	}
	portions := math.Ceil(want / ice.PortionKg)
	portions = math.Min(portions, math.Floor((float64(ice.Surface.FullKg)-left)/ice.PortionKg))
	if !(day == 0 && ice.FromHome) {
		portions = math.Min(portions, math.Floor(ice.CarryKg/ice.PortionKg))
	}
	return math.Max(0, portions) * ice.PortionKg
}

// startC gives the box's temperature at a trip's start, and sets the bank.
func (o *oracle) startC(r season.Refrigerator, trip season.Trip, firstDay int, b *bank) float64 {
	switch r.Start {
	case season.StartOnShore:
		return o.setup.TargetC
	case season.StartOnOwnSun:
		month := o.setup.Plan.Nights[trip.First].Month
		if o.ownSunSuffices(r, month) {
			return o.setup.TargetC
		}
		b.chargeWh = float64(o.setup.Power.Bank.RestartWh)
	}
	return o.around(trip, firstDay, 0).cabinC
}

// ownSunSuffices compares a mean day's sun with what the closed box takes.
func (o *oracle) ownSunSuffices(r season.Refrigerator, month int) bool {
	p := o.setup.Power
	m := o.ground.Months[month]
	var solarWh float64
	for clock, share := range o.sky.Shape(climate.MidMonthDay(month + 1)) {
		outdoorC := float64(m.AirMean) + float64(m.AirMax-m.AirMin)/2*math.Cos(2*math.Pi*(float64(clock)+0.5-15)/24)
		irradiance := 1000 * float64(m.Sun) * share
		cellC := outdoorC + (float64(p.Panel.NOCT)-20)*irradiance/800
		solarWh += float64(p.Panel.Wp) * irradiance / 1000 * float64(p.Panel.Passed) * (1 - p.Panel.CellLoss*(cellC-25))
	}
	a := surroundings{cabinC: float64(m.AirMean) + float64(o.setup.CabinOffset), seaC: float64(m.Sea)}
	coolantC := a.cabinC
	if r.SeaCooled {
		coolantC = a.seaC
	}
	leak := o.leakW(a, o.setup.TargetC)
	capacityW, cop := o.compressor(r, o.plateC(r, o.setup.TargetC, coolantC), coolantC)
	needWh := 24 * (leak/cop + float64(r.Cycle.Condenser)*leak/capacityW + float64(r.Cycle.Standby))
	return solarWh >= needWh
}
