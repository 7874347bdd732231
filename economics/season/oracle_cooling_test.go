package season_test

import (
	"math"

	"coldreckon/economics/climate"
	"coldreckon/economics/season"
)

// compressor is what the cycle takes out between two temperatures. Growth
// 0.045 and fall 0.008 per kelvin about -10/45 °C, condenser at least 30 °C,
// lift at least 25 K: engineering judgement, from memory. A share eta of
// Carnot's efficiency, in kelvin.
func compressor(r season.Refrigerator, teC, coolantC float64) (capacityW, cop float64) {
	tcC := math.Max(30, coolantC+float64(r.Cycle.Rise))
	capacityW = float64(r.Cycle.Rated) * math.Exp(0.045*(teC+10)) * (1 - 0.008*(tcC-45))
	return capacityW, r.Cycle.Eta * (teC + 273.15) / math.Max(25, tcC-teC)
}

// plateC halves an interval until the plate takes up just what the compressor
// takes out; never over 5 °C (engineering judgement, from memory).
func plateC(r season.Refrigerator, boxC, coolantC float64) float64 {
	low, high := boxC-300, boxC
	for range 200 {
		middle := (low + high) / 2
		if capacityW, _ := compressor(r, middle, coolantC); float64(r.Cycle.Plate)*(boxC-middle) > capacityW {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Min(5, low)
}

// unit works the season out with a compressor unit.
func (o *oracle) unit(r season.Refrigerator) ([]season.Hour, account) {
	var rows []season.Hour
	s := &o.setup
	sum := account{lowestWh: float64(s.Power.Bank.FullWh), stores: r.StoreKJ > 0}
	fanW := float64(r.Cycle.Condenser)
	o.walk(func(number int, trip season.Trip, firstDay int) {
		food, frozenKJ, b := o.start(r, trip, firstDay, &sum)
		for hour := range 24 * trip.Nights {
			a := o.around(trip, firstDay, hour)
			coolantC := a.cabinC
			if r.SeaCooled {
				coolantC = a.seaC
			}
			gainW := o.gainW(a, food)
			needW := math.Max(0, gainW+s.Box.HeatKJPerK*(food-s.TargetC)/3.6)
			teC := plateC(r, food, coolantC)
			if r.StoreKJ > 0 {
				teC = -10 // the plate stands at its freezing point
			}
			capacityW, cop := compressor(r, teC, coolantC)
			pumpedW := math.Min(capacityW, cop*math.Max(0, o.atHandW(b, a)-fanW))
			var cooledW float64
			if r.StoreKJ > 0 {
				takesW := math.Max(0, math.Min(needW, float64(r.Cycle.Plate)*(food-teC)))
				pumpedW = math.Min(pumpedW, (r.StoreKJ-frozenKJ)/3.6+needW)
				cooledW = math.Min(takesW, frozenKJ/3.6+pumpedW)
				frozenKJ = math.Min(r.StoreKJ, frozenKJ+3.6*(pumpedW-cooledW))
			} else {
				pumpedW = math.Min(pumpedW, needW)
				cooledW = pumpedW
			}
			unitW := pumpedW/cop + fanW*pumpedW/capacityW
			sum.runHours += pumpedW / capacityW
			if !b.off || a.onShore {
				unitW += float64(r.Cycle.Standby)
			}
			food += 3.6 * (gainW - cooledW) / s.Box.HeatKJPerK
			var shoreW float64
			b, shoreW = o.carry(b, a, unitW, &sum)
			sum.off = append(sum.off, needW > 0 && cooledW == 0)
			rows = append(rows, season.Hour{Trip: number, Hour: hour, Clock: a.clock, Month: a.month,
				CabinC: a.cabinC, FoodC: food, GainW: gainW, CooledW: cooledW,
				EvaporatorC: teC, CapacityW: capacityW, COP: cop,
				SunW: a.sunW, UnitW: unitW, ShoreW: shoreW, ChargeWh: b.wh})
		}
	})
	return rows, sum
}

// start gives box, plate and bank at a trip's start.
func (o *oracle) start(r season.Refrigerator, trip season.Trip, firstDay int, sum *account) (food, frozenKJ float64, b bank) {
	s := &o.setup
	a := o.around(trip, firstDay, 0)
	full := bank{wh: float64(s.Power.Bank.FullWh)}
	if a.cabinC <= s.TargetC {
		return a.cabinC, 0, full
	}
	switch r.Start {
	case season.StartOnShore:
		sum.preCooledWh += (s.Box.HeatKJPerK*(a.cabinC-s.TargetC) + r.StoreKJ) / 3.6 * perW(r, s.TargetC, a)
		return s.TargetC, r.StoreKJ, full
	case season.StartOnOwnSun:
		if o.meanSunWh(a.month) >= o.closedBoxWh(r, a.month) {
			return s.TargetC, r.StoreKJ, full
		}
		return a.cabinC, 0, bank{wh: float64(s.Power.Bank.RestartWh)}
	}
	return a.cabinC, 0, full
}

// meanSunWh is the panel's yield on a mean day of the month.
func (o *oracle) meanSunWh(month int) float64 {
	m := o.ground.Months[month]
	var wh float64
	for clock, share := range o.sky.Shape(climate.MidMonthDay(month + 1)) {
		outdoorC := float64(m.AirMean) + float64(m.AirMax-m.AirMin)/2*math.Cos(2*math.Pi*(float64(clock)+0.5-15)/24)
		wh += o.panelW(1000*float64(m.Sun)*share, outdoorC)
	}
	return wh
}

// closedBoxWh is what a unit takes on a mean day to hold the target, lid shut.
func (o *oracle) closedBoxWh(r season.Refrigerator, month int) float64 {
	m := o.ground.Months[month]
	a := surroundings{cabinC: float64(m.AirMean) + float64(o.setup.CabinOffset), seaC: float64(m.Sea)}
	return 24 * (math.Max(0, o.leakW(a, o.setup.TargetC))*perW(r, o.setup.TargetC, a) + float64(r.Cycle.Standby))
}

// perW is the electricity, fan included, for a watt of heat.
func perW(r season.Refrigerator, boxC float64, a surroundings) float64 {
	coolantC := a.cabinC
	if r.SeaCooled {
		coolantC = a.seaC
	}
	teC := -10.0
	if r.StoreKJ == 0 {
		teC = plateC(r, boxC, coolantC)
	}
	capacityW, cop := compressor(r, teC, coolantC)
	return 1/cop + float64(r.Cycle.Condenser)/capacityW
}

// ice works the season out on ice: 2.1 kJ/kg·K from -18 °C, 333.6 kJ/kg to
// melt, 4.19 kJ/kg·K for its water (Earle, Unit Operations in Food Processing,
// appendix 7, and from memory); drained at 2 °C.
func (o *oracle) ice(ice season.Icing) ([]season.Hour, account) {
	var rows []season.Hour
	s := &o.setup
	sum := account{lowestWh: float64(s.Power.Bank.FullWh)}
	c := s.Box.HeatKJPerK
	o.walk(func(number int, trip season.Trip, firstDay int) {
		b := bank{wh: float64(s.Power.Bank.FullWh)}
		food := o.around(trip, firstDay, 0).cabinC
		stops := o.laterStops(number)
		var kg, frostKJ float64
		for hour := range 24 * trip.Nights {
			a := o.around(trip, firstDay, hour)
			if hour%24 == 0 && o.sells(ice, stops, hour/24) {
				fetched := o.fetched(ice, stops, trip, hour/24, kg)
				aboard := fetched * (1 - ice.CarryLoss)
				kg += aboard
				sum.lostKg += fetched - aboard
				switch {
				case hour == 0 && ice.FromHome:
					frostKJ = 2.1 * 18 * aboard
					sum.homeKg += fetched
				case fetched > 0:
					sum.boughtKg += fetched
					sum.errands++
				}
			}
			// Openings are those of the last hour's food; all else is a straight
			// line in this hour's, at whose end gain, ice and store balance:
			// c (after - food) = 3.6 (gain(after) - surface · after).
			at0W := o.leakW(a, 0) + o.goodsW(a, 0) + o.opensW(a, food)
			perK := o.leakW(a, 0) - o.leakW(a, 1) + o.goodsW(a, 0) - o.goodsW(a, 1)
			after, iceKJ := (c*food+3.6*at0W)/(c+3.6*perK), 0.0
			if kg > 0 {
				surface := float64(ice.Surface.FullWPerK) * math.Pow(math.Min(1, kg/float64(ice.Surface.FullKg)), 2.0/3)
				balance := (c*food + 3.6*at0W) / (c + 3.6*(perK+surface))
				meltKJ := 333.6 + 4.19*2
				if ice.WaterKept {
					meltKJ = 333.6 + 4.19*math.Max(0, balance)
				}
				if balance > 0 {
					after, iceKJ = balance, 3.6*surface*balance
				}
				if most := frostKJ + kg*meltKJ; iceKJ > most {
					// The last ice goes; the rest of the heat warms the food.
					iceKJ = most
					after = (c*food + 3.6*at0W - iceKJ) / (c + 3.6*perK)
				}
				thaw := math.Min(frostKJ, iceKJ)
				frostKJ -= thaw
				melted := math.Min(kg, (iceKJ-thaw)/meltKJ)
				sum.meltedKg += melted
				if kg -= melted; kg < 1e-9 {
					kg = 0
				}
			}
			food = after
			var shoreW float64
			b, shoreW = o.carry(b, a, 0, &sum)
			sum.off = append(sum.off, kg == 0)
			rows = append(rows, season.Hour{Trip: number, Hour: hour, Clock: a.clock, Month: a.month,
				CabinC: a.cabinC, FoodC: food, GainW: at0W - perK*food, CooledW: iceKJ / 3.6,
				SunW: a.sunW, ShoreW: shoreW, ChargeWh: b.wh, IceKg: kg})
		}
		sum.lostKg += kg
	})
	return rows, sum
}

// laterStops counts the stops of the trips before one, their first left out.
func (o *oracle) laterStops(number int) (stops int) {
	for _, trip := range o.setup.Plan.Trips[:number] {
		for day := 1; day < trip.Nights; day++ {
			if day%o.setup.Goods.ShopEveryDays == 0 {
				stops++
			}
		}
	}
	return stops
}

// sells tells whether a trip's stop has ice: the first has, of the later ones
// of the year the share. stops are those before the trip.
func (o *oracle) sells(ice season.Icing, stops, day int) bool {
	every := o.setup.Goods.ShopEveryDays
	if day%every != 0 {
		return false
	}
	later := float64(stops + day/every)
	return day == 0 || math.Round(later*ice.FoundShare) > math.Round((later-1)*ice.FoundShare)
}

// fetched is what the owner takes along: as many portions as it needs to have
// enough aboard after the loss, as far as they can be carried and stowed.
func (o *oracle) fetched(ice season.Icing, stops int, trip season.Trip, day int, left float64) float64 {
	month := o.setup.Plan.Nights[trip.First+day].Month
	gap := 1
	for day+gap < trip.Nights && !o.sells(ice, stops, day+gap) {
		gap++
	}
	want := 1.2*float64(gap)*ice.MeltKgADay[month] + ice.FloorKg[month] - left
	if day == 0 {
		want += ice.PullDownKg[month]
	}
	keeps := ice.PortionKg * (1 - ice.CarryLoss)
	portions := 0.0
	for keeps*portions < want-1e-9 && // not enough yet, and one more
		ice.PortionKg*(portions+1) <= ice.CarryKg+1e-9 && // can be carried
		left+keeps*(portions+1) <= float64(ice.Surface.FullKg)+1e-9 { // and stowed
		portions++
	}
	return portions * ice.PortionKg
}
