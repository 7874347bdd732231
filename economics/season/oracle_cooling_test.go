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
	sum := account{lowestWh: float64(s.Power.Bank.FullWh), stores: r.StoreKJ > 0 || r.ByDay}
	fanW := float64(r.Cycle.Condenser)
	o.walk(func(number int, trip season.Trip, firstDay int) {
		food, frozenKJ, b := o.start(r, trip, firstDay, &sum)
		chilled := o.setOut(food)
		for hour := range 24 * trip.Nights {
			a := o.around(trip, firstDay, hour)
			coolantC := a.cabinC
			if r.SeaCooled {
				coolantC = a.seaC
			}
			gainW := o.leakW(a, food) + o.opensW(a, food) + o.goodsW(a, chilled.stowing(hour), food)
			needW := math.Max(0, gainW+s.Box.HeatKJPerK*(food-o.aim(r))/3.6)
			teC := plateC(r, food, coolantC)
			if r.StoreKJ > 0 {
				teC = -10 // the plate stands at its freezing point
			}
			capacityW, cop := compressor(r, teC, coolantC)
			pumpedW := math.Min(capacityW, cop*math.Max(0, o.atHandW(b, a)-fanW))
			var cooledW, frozenWh, frozenHours float64
			if r.ByDay {
				day := o.sky.Shape(climate.MidMonthDay(a.month + 1))[a.clock] > 0
				if !day {
					pumpedW = 0
				}
				pumpedW = math.Min(pumpedW, needW)
				cooledW = pumpedW
				coldW, coldCOP := compressor(r, -10, coolantC)
				left := o.atHandW(b, a) - fanW - pumpedW/cop
				if open := (r.Bottles.StoreKJ - frozenKJ) / 3.6; day && left > 0 && open > 0 && cooledW == needW {
					freezesW := math.Min(open, math.Min(coldW*(1-pumpedW/capacityW), left*coldCOP))
					frozenKJ += 3.6 * freezesW
					frozenWh, frozenHours = freezesW/coldCOP+fanW*freezesW/coldW, freezesW/coldW
				}
				if needW > cooledW {
					fromIceW := math.Min(r.Bottles.WPerK*math.Max(food, 0), math.Min(needW-cooledW, frozenKJ/3.6))
					frozenKJ -= 3.6 * fromIceW
					cooledW += fromIceW
				}
			} else if r.StoreKJ > 0 {
				takesW := math.Max(0, math.Min(needW, float64(r.Cycle.Plate)*(food-teC)))
				pumpedW = math.Min(pumpedW, (r.StoreKJ-frozenKJ)/3.6+needW)
				cooledW = math.Min(takesW, frozenKJ/3.6+pumpedW)
				frozenKJ = math.Min(r.StoreKJ, frozenKJ+3.6*(pumpedW-cooledW))
			} else {
				pumpedW = math.Min(pumpedW, needW)
				cooledW = pumpedW
			}
			unitW := pumpedW/cop + fanW*pumpedW/capacityW + frozenWh
			sum.runHours += pumpedW/capacityW + frozenHours
			if !b.off || a.onShore {
				unitW += float64(r.Cycle.Standby)
			}
			food += 3.6 * (gainW - cooledW) / s.Box.HeatKJPerK
			var shoreW float64
			b, shoreW = o.carry(b, a, unitW, &sum)
			chilled.look(o, hour, food)
			sum.off = append(sum.off, needW > 0 && cooledW == 0)
			rows = append(rows, season.Hour{Trip: number, Hour: hour, Clock: a.clock, Month: a.month,
				CabinC: a.cabinC, FoodC: food, GainW: gainW, CooledW: cooledW,
				EvaporatorC: teC, CapacityW: capacityW, COP: cop,
				SunW: a.sunW, UnitW: unitW, ShoreW: shoreW, ChargeWh: b.wh, Counted: hour >= chilled.free})
		}
	})
	return rows, sum
}

// aimC is the owner's target, and at least 1 K under the limit.
func (o *oracle) aimC() float64 { return math.Min(o.setup.TargetC, o.setup.LimitC-1) }

// aim is the same of a unit, 2 K colder but no colder than 1 °C for it where it
// runs by day only.
func (o *oracle) aim(r season.Refrigerator) float64 {
	if r.ByDay {
		return math.Min(o.aimC(), math.Max(1, o.aimC()-2))
	}
	return o.aimC()
}

// start gives box, plate and bank at a trip's start.
func (o *oracle) start(r season.Refrigerator, trip season.Trip, firstDay int, sum *account) (food, frozenKJ float64, b bank) {
	s := &o.setup
	a := o.around(trip, firstDay, 0)
	full := bank{wh: float64(s.Power.Bank.FullWh)}
	if a.cabinC <= o.aim(r) {
		return a.cabinC, 0, full
	}
	switch r.Start {
	case season.StartOnShore:
		sum.preCooledWh += (s.Box.HeatKJPerK*(a.cabinC-o.aim(r)) + r.StoreKJ + r.Bottles.StoreKJ) / 3.6 * perW(r, o.aim(r), a)
		return o.aim(r), r.StoreKJ + r.Bottles.StoreKJ, full
	case season.StartOnOwnSun:
		if o.meanSunWh(a.month) >= o.closedBoxWh(r, a.month) {
			return o.aim(r), r.StoreKJ + r.Bottles.StoreKJ, full
		}
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
	return 24 * (math.Max(0, o.leakW(a, o.aim(r)))*perW(r, o.aim(r), a) + float64(r.Cycle.Standby))
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
