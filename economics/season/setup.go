package season

import (
	"math"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Month is a month's climate as the hours use it.
type Month struct {
	OutdoorC [24]float64 // at half past each hour, °C, before the day's offset
	SunShare [24]float64 // of the day's irradiation in each hour; sums to 1
	SeaC     float64     // °C
	Water    float64     // kg of water per kg of dry outdoor air
	SunKWh   float64     // mean irradiation of a day, kWh/m²
}

// NewMonths prepares a ground's year, January first. sky must be that of the
// ground. The day is warmest at 15 h.
func NewMonths(g climate.Ground, sky *climate.Sky) [12]Month {
	var out [12]Month
	for m := range out {
		c := g.Months[m]
		half := float64(c.AirMax-c.AirMin) / 2
		for h := range 24 {
			out[m].OutdoorC[h] = float64(c.AirMean) + half*math.Cos(2*math.Pi*(float64(h)+0.5-15)/24)
		}
		out[m].SunShare = *sky.Shape(climate.MidMonthDay(m + 1))
		out[m].SeaC = float64(c.Sea)
		out[m].Water = c.HumidityRatio
		out[m].SunKWh = float64(c.Sun)
	}
	return out
}

// Box is the cold space as the hours use it.
type Box struct {
	Leak        heat.Conductance
	OpensPerDay float64 // of the lid or door, 0 or more
	SwappedL    float64 // air exchanged at one opening, L
	HeatKJPerK  float64 // liner, inner foam and the mean of the goods aboard, kJ/K, over 0; see HeatCapacityKJPerK
}

// Goods is the food that goes into the cold space.
type Goods struct {
	KgPerDay      float64 // of the whole crew, the part that needs cooling
	ShopEveryDays int     // at least 1
}

// Power is the boat's electricity as the hours use it.
type Power struct {
	Panel       energy.Chain
	Bank        energy.Store
	HouseW      float64 // of all loads but the unit, day and night
	EngineW     float64 // into the bank while the engine runs
	EngineHours float64 // a day, from 9 h
	ShoreShare  float64 // of nights, 0 to 1
}

// Setup is everything a season needs besides its air and its way of cooling. A
// run only reads it, so that one setup may run in several goroutines at once.
type Setup struct {
	Plan        *Plan
	Months      *[12]Month
	Box         Box
	CabinOffset quantity.Kelvin // cabin over outdoor air, as given to Breathe
	Goods       Goods
	TargetC     float64 // at which a unit holds the box, °C
	LimitC      float64 // of the cold-day exam, °C; see ExamLimitC
	Power       Power
}

// ExamLimitC gives the food temperature, °C, that a cold day may pass for no
// more than two hours: the higher of 5 °C and the target + 1 K.
func ExamLimitC(target quantity.Celsius) float64 { return max(safetyLimitC, float64(target)+1) }

// The cold-day exam.
const (
	safetyLimitC   = 5    // whatever the target: US FDA Food Code 3-501.16, 41 °F
	examHours      = 2    // of a day that may be above the limit: common practice, no source
	examToleranceK = 0.01 // so that rounding decides no exam
)

// The hours of every boat's day. Engineering judgement, from memory.
const (
	noon        = 12 // a trip starts, and goods are stowed
	stowHours   = 6  // over which goods give up their heat
	openFromH   = 7  // the lid is opened from here
	openToH     = 21 // to here
	engineFromH = 9
	shoreFromH  = 18
	shoreToH    = 6
)

// shoreNight spreads nights on shore power evenly over the year.
func (s *Setup) shoreNight(night int) bool {
	share := s.Power.ShoreShare
	return math.Floor(float64(night+1)*share+0.5) > math.Floor(float64(night)*share+0.5)
}

// stowedWPerK gives the goods' exchange with the box, W per kelvin of cabin
// over box, while they give up their heat: what is stowed at noon of a shop
// day, for the days until the next or the trip's end.
func (s *Setup) stowedWPerK(day, nights int) float64 {
	if day%s.Goods.ShopEveryDays != 0 {
		return 0
	}
	days := min(s.Goods.ShopEveryDays, nights-day)
	return float64(days) * s.Goods.KgPerDay * heat.GoodsKJPerKgK / (stowHours * 3.6)
}

// walls is what lets heat into the box, ready for the hours.
type walls struct {
	leak      heat.Conductance
	openLPerS float64 // air that openings exchange, in the hours that have any
}

func (s *Setup) walls() walls {
	return walls{s.Box.Leak, s.Box.OpensPerDay / (openToH - openFromH) * s.Box.SwappedL / 3600}
}

// leakW gives the heat through the walls for a box at boxC.
func (w *walls) leakW(a *hourAir, seaC, boxC float64) float64 {
	return float64(w.leak.GainW(quantity.Celsius(boxC), quantity.Celsius(a.cabinC), quantity.Celsius(seaC), a.motoring))
}

// openingW gives the heat of lid openings in the hour, for a box at boxC.
func (w *walls) openingW(a *hourAir, boxC float64) float64 {
	if a.density == 0 {
		return 0
	}
	return w.openLPerS * a.density * (a.openKJ - heat.SaturatedEnthalpyKJ(quantity.Celsius(boxC)))
}
