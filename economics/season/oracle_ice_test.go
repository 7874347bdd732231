package season_test

import (
	"math"

	"coldreckon/economics/season"
)

// Ice in the oracle: 2.1 kJ/kg·K from -18 °C, 333.6 kJ/kg to melt, 4.19 kJ/kg·K
// for its water (Earle, Unit Operations in Food Processing, appendix 7, and from
// memory); drained at 2 °C.

// meltKJ is the heat of a kilogram until its water leaves or joins the box.
func meltKJ(ice season.Icing) float64 {
	if ice.WaterKept {
		return 333.6
	}
	return 333.6 + 4.19*2
}

// takesWPerK is the ice's film times the sides of a cube of its mass, the film
// grown with the fourth root of the difference above 5 °C.
func takesWPerK(ice season.Icing, kg, food float64) float64 {
	return ice.FilmWPerM2K * math.Pow(math.Max(1, food/5), 0.25) * 6 * math.Pow(kg/ice.LumpKgPerM3, 2.0/3)
}

// cargo is the ice aboard, bought and from home, and the water kept.
type cargo struct{ kg, bought, frostKJ, water float64 }

// ice works the season out on ice.
func (o *oracle) ice(ice season.Icing) ([]season.Hour, account) {
	var rows []season.Hour
	s := &o.setup
	sum := account{lowestWh: float64(s.Power.Bank.FullWh)}
	o.walk(func(number int, trip season.Trip, firstDay int) {
		food, load := o.dayBefore(ice, trip, firstDay, &sum)
		chilled := o.setOut(food)
		for hour := range 24 * trip.Nights {
			a := o.around(trip, firstDay, hour)
			if hour%24 == 0 {
				o.stop(ice, trip, hour/24, food, &load, &sum)
			}
			stowing := chilled.stowing(hour)
			c := s.Box.HeatKJPerK + 4.19*load.water
			// Openings and film are those of the last hour's food; all else is a
			// straight line in this hour's, at whose end gain, ice and store balance:
			// c (after - food) = 3.6 (gain(after) - surface · after).
			at0W := o.leakW(a, 0) + o.goodsW(a, stowing, 0) + o.opensW(a, food)
			perK := o.leakW(a, 0) - o.leakW(a, 1) + o.goodsW(a, stowing, 0) - o.goodsW(a, stowing, 1)
			after, iceKJ, melted := (c*food+3.6*at0W)/(c+3.6*perK), 0.0, 0.0
			if load.kg > 0 {
				surface := takesWPerK(ice, load.kg, food)
				if balance := (c*food + 3.6*at0W) / (c + 3.6*(perK+surface)); balance > 0 {
					after, iceKJ = balance, 3.6*surface*balance
				}
				if most := load.frostKJ + load.kg*meltKJ(ice); iceKJ > most {
					// The last ice goes; the rest of the heat warms the food.
					iceKJ = most
					after = (c*food + 3.6*at0W - iceKJ) / (c + 3.6*perK)
				}
				thaw := math.Min(load.frostKJ, iceKJ)
				load.frostKJ -= thaw
				melted = math.Min(load.kg, (iceKJ-thaw)/meltKJ(ice))
				sum.meltedKg += melted
				load.bought *= 1 - melted/load.kg
				if load.kg -= melted; load.kg < 1e-9 {
					load.kg, load.bought = 0, 0
				}
			}
			gainW := at0W - perK*after
			if food = after; ice.WaterKept {
				// Water of 0 °C and the rest come to one temperature.
				food = c * after / (c + 4.19*melted)
				load.water += melted
			}
			chilled.look(o, hour, food)
			sum.off = append(sum.off, load.kg == 0)
			rows = append(rows, season.Hour{Trip: number, Hour: hour, Clock: a.clock, Month: a.month,
				CabinC: a.cabinC, FoodC: food, GainW: gainW, CooledW: iceKJ / 3.6,
				IceKg: load.kg, WaterKg: load.water, MeltedKg: melted, Counted: hour >= chilled.free})
		}
		sum.lostKg += load.kg
		sum.boughtLostKg += load.bought
	})
	return rows, sum
}

// plannedDay is the month's mean day, 2.5 K warmer, for a box at boxC: the mean
// of its heat over 24 hours, and the heat at the warmest, 15 h.
func (o *oracle) plannedDay(month int, boxC float64) (meanW, warmestW float64) {
	s, m := &o.setup, o.ground.Months[month]
	longest := 0
	for _, trip := range s.Plan.Trips {
		longest = max(longest, trip.Nights)
	}
	gap := math.Min(float64(s.Goods.ShopEveryDays), float64(longest))
	foodKg := s.Goods.PerishableKgPerDay * math.Min(gap, 7) / gap
	for clock := range 24 {
		a := surroundings{clock: clock, month: month, cabinC: o.plannedC(month, clock), seaC: float64(m.Sea), drinksKg: s.Goods.DrinksKgPerDay / 24, foodKg: foodKg}
		a.motoring = clock >= 9 && float64(clock) < 9+s.Power.EngineHours
		if clock >= 7 && clock < 21 {
			a.cabinKJ = enthalpyKJ(a.cabinC, math.Min(m.HumidityRatio, mostWater(a.cabinC)))
			a.opensM3 = s.Box.OpensPerDay / 14 * s.Box.SwappedL / 1000
		}
		w := o.leakW(a, boxC) + o.goodsW(a, clock >= 12 && clock < 18, boxC)
		if a.opensM3 > 0 {
			w += o.opensW(a, boxC)
		}
		meanW += w / 24
		if clock == 15 {
			warmestW = w
		}
	}
	return meanW, warmestW
}

// plannedC is the cabin at half past an hour of the planned day.
func (o *oracle) plannedC(month, clock int) float64 {
	m := o.ground.Months[month]
	half := float64(clock) + 0.5
	return float64(m.AirMean) + float64(m.AirMax-m.AirMin)/2*math.Cos(2*math.Pi*(half-15)/24) + 2.5 + float64(o.setup.CabinOffset)
}

// wanted is what an owner wants aboard for so many days of a month.
func (o *oracle) wanted(ice season.Icing, month, days int) float64 {
	meanW, _ := o.plannedDay(month, 2)
	holdC := o.setup.LimitC - 0.5
	_, warmestW := o.plannedDay(month, holdC)
	// takesWPerK(floor) · hold = warmest
	perArea := ice.FilmWPerM2K * math.Pow(math.Max(1, holdC/5), 0.25) * holdC
	floor := ice.LumpKgPerM3 * math.Pow(math.Max(0, warmestW)/perArea/6, 1.5)
	return 1.2*float64(days)*math.Max(0, meanW)*86.4/meltKJ(ice) + math.Min(floor, ice.RoomKg)
}

// chills is the ice that takes up, at the logarithmic mean of a warm box's
// temperature and the one to hold, what brings it there in six hours and what
// leaks in and is let in meanwhile, at the warmest hour.
func (o *oracle) chills(ice season.Icing, month int) float64 {
	from, to := o.plannedC(month, 12), o.setup.LimitC-0.5
	if from <= to {
		return 0
	}
	mean := (from - to) / math.Log(from/to)
	m := o.ground.Months[month]
	a := surroundings{clock: 15, month: month, cabinC: o.plannedC(month, 15), seaC: float64(m.Sea), motoring: 9+o.setup.Power.EngineHours > 15}
	a.cabinKJ = enthalpyKJ(a.cabinC, math.Min(m.HumidityRatio, mostWater(a.cabinC)))
	a.opensM3 = o.setup.Box.OpensPerDay / 14 * o.setup.Box.SwappedL / 1000
	w := o.leakW(a, mean) + o.opensW(a, mean) + o.setup.Box.HeatKJPerK*(from-to)/(6*3.6)
	return ice.LumpKgPerM3 * math.Pow(math.Max(0, w)/(takesWPerK(ice, ice.LumpKgPerM3, mean)*mean), 1.5)
}

// basket is what is carried off a stop, and what of it ends in the box.
type basket struct{ home, homeIn, bought, boughtIn float64 }

// basketOf fills it for a day of a trip with so much left.
func (o *oracle) basketOf(ice season.Icing, trip season.Trip, day int, left float64) basket {
	s, month := &o.setup, o.setup.Plan.Nights[trip.First+day].Month
	// The stop to which he plans: the third at most, or the last within a week.
	stops := 1
	for (stops < 3 || stops < 7/s.Goods.ShopEveryDays) && math.Pow(1-ice.FoundShare, float64(stops)) > 0.1+1e-9 {
		stops++
	}
	until := day - day%s.Goods.ShopEveryDays + stops*s.Goods.ShopEveryDays
	want := o.wanted(ice, month, min(until, trip.Nights)-day)
	if day == 0 && !ice.Precooled {
		want = math.Max(want, o.chills(ice, month)) + math.Max(0, s.Box.HeatKJPerK*(o.plannedC(month, 12)-2))/meltKJ(ice)
	}
	want -= left
	carry := ice.CarryKg
	if day == 0 {
		if carry = ice.FirstCarryKg; carry == 0 {
			carry = math.Inf(1)
		}
	}
	room, part := ice.RoomKg-left, 1-ice.CarryLoss
	var b basket
	if day == 0 && want > 0 {
		b.home = math.Max(0, math.Min(math.Min(ice.HomeKg, carry), room/part))
		b.homeIn = b.home * part
	}
	// Bag by bag: wanted by a quarter, room for a quarter, and to be carried. He
	// counts on nine tenths of each.
	for {
		short, free := want-b.homeIn-b.bought*0.9, room-b.homeIn-b.bought*0.9
		quarter := 0.25*ice.PortionKg*0.9 - 1e-9
		carried := b.home+b.bought+ice.PortionKg <= carry+1e-6 || b.home == 0 && b.bought == 0
		needed := b.bought == 0 && short > 0 && left+b.homeIn < o.wanted(ice, month, 0)
		if (short < quarter || free < quarter) && !needed || !carried {
			break
		}
		b.bought += ice.PortionKg
	}
	b.boughtIn = math.Min(b.bought*part, math.Max(0, room-b.homeIn))
	return b
}

// stop is a trip's noon.
func (o *oracle) stop(ice season.Icing, trip season.Trip, day int, food float64, load *cargo, sum *account) {
	shops := day%o.setup.Goods.ShopEveryDays == 0
	has := day == 0 || o.weather.Stops[trip.First+day] < ice.FoundShare
	b := o.basketOf(ice, trip, day, load.kg)
	nothing := b.home == 0 && b.bought == 0
	if !shops {
		month := o.setup.Plan.Nights[trip.First+day].Month
		if !ice.Runs || nothing || load.kg >= o.wanted(ice, month, 1) {
			return
		}
		sum.errands++
		sum.runs++
	}
	if nothing || !has {
		return
	}
	load.kg += b.homeIn + b.boughtIn
	load.bought += b.boughtIn
	load.frostKJ += 2.1 * 18 * b.homeIn
	if ice.WaterKept { // he bails what is in the way
		load.water = math.Min(load.water, math.Max(0, ice.RoomKg-load.kg)/ice.BulkKgPerL)
	}
	if food > o.setup.LimitC { // and what the new ice would have to chill first
		load.water = 0
	}
	sum.homeKg += b.home
	sum.boughtKg += b.bought
	sum.boughtLostKg += b.bought - b.boughtIn
	sum.lostKg += b.home + b.bought - b.homeIn - b.boughtIn
}

// dayBefore gives food and ice before the load of a trip's start.
func (o *oracle) dayBefore(ice season.Icing, trip season.Trip, firstDay int, sum *account) (food float64, load cargo) {
	s, a := &o.setup, o.around(trip, firstDay, 0)
	if !ice.Precooled || a.cabinC <= s.TargetC {
		return a.cabinC, load
	}
	// With the lid shut, on the month's mean day, the load to come holds the
	// temperature at which it takes up what leaks in: found by halving.
	m := o.ground.Months[a.month]
	mean := surroundings{cabinC: float64(m.AirMean) + float64(s.CabinOffset), seaC: float64(m.Sea)}
	b := o.basketOf(ice, trip, 0, 0)
	low, high := -100.0, 100.0
	for range 200 {
		middle := (low + high) / 2
		if o.leakW(mean, middle) > takesWPerK(ice, b.homeIn+b.boughtIn, middle)*middle {
			low = middle
		} else {
			high = middle
		}
	}
	food = math.Max(s.TargetC, low)
	if food >= a.cabinC {
		return a.cabinC, load
	}
	chillKJ, leakKJ := s.Box.HeatKJPerK*(a.cabinC-food), 24*3.6*math.Max(0, o.leakW(mean, food))
	melted := (chillKJ + leakKJ) / meltKJ(ice)
	var bags float64
	for bags*ice.PortionKg*(1-ice.CarryLoss) < melted-1e-6 {
		bags++
	}
	load.kg = math.Min(ice.RoomKg, bags*ice.PortionKg*(1-ice.CarryLoss)-melted)
	load.bought = load.kg
	sum.errands++
	sum.boughtKg += bags * ice.PortionKg
	sum.lostKg += bags*ice.PortionKg - melted - load.kg
	sum.boughtLostKg += bags*ice.PortionKg - melted - load.kg
	sum.chilledKg += melted
	sum.chillKJ += chillKJ
	sum.dayBeforeKJ += leakKJ
	return food, load
}
