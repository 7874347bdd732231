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
	HeatKJPerK  float64 // liner, inner foam and all that is aboard on average, kJ/K, over 0; see heat.InUseKJPerK
}

// Goods is the food and drink that goes into the cold space, of the whole crew.
type Goods struct {
	PerishableKgPerDay float64 // food that must be kept cold
	DrinksKgPerDay     float64 // wanted cold, stowed as they are drunk
	ShopEveryDays      int     // at least 1
	StowedC            float64 // of the perishables when they go in, °C: from a shop's cold shelf or a fridge at home
}

// mostStowedDays is for how many days perishables are stowed, however far the
// next shop is: what is kept at 5 °C is eaten or thrown away within seven days.
// US FDA Food Code 3-501.17.
const mostStowedDays = 7

// MeanPerishablesKg gives the mean weight of the perishables aboard, while any
// are, on trips of a length in nights, at least 1.
func (g Goods) MeanPerishablesKg(tripNights int) float64 {
	return g.PerishableKgPerDay * float64(min(g.ShopEveryDays, mostStowedDays, tripNights)) / 2
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
	CabinOffset quantity.Kelvin // cabin over outdoor air, as given to FillAir
	Goods       Goods
	TargetC     float64 // the owner's, °C; see AimC
	LimitC      float64 // of the exam that decides, °C: 5, or CoolLimitC; see Limits
	CoolLimitC  float64 // of the exam of a cool day, °C
	Power       Power
}

// The exams. A cold day is one on which food was over 5 °C for no more than two
// hours, a cool day the same with a limit that does for drinks, butter, hard
// cheese, whole fruit and vegetables.
const (
	coldLimitC     = 5    // US FDA Food Code 3-501.16, 41 °F
	coolLimitC     = 10   // engineering judgement, from memory
	examHours      = 2    // of a day that may be above the limit: common practice, no source
	examToleranceK = 0.01 // so that rounding decides no exam
	// Medicine is kept from 2 to 8 °C: WHO guide to good storage practices for
	// pharmaceuticals (TRS 908, annex 9), from memory.
	medicineFromC, medicineToC = 2, 8
)

// Limits gives the limits of the exam that decides and of that of a cool day,
// °C, for an owner's target: cold days decide by 5 °C, unless the owner wants
// only what cool days do for, or has a target above 5 °C. Then cool days decide,
// and at a target above 5 °C food may be 1 K over it, 10 °C at most.
func Limits(target quantity.Celsius, onlyCool bool) (limitC, coolC float64) {
	coolC = coolLimitC
	if target > coldLimitC {
		coolC, onlyCool = min(coolLimitC, float64(target)+1), true
	}
	if onlyCool {
		return coolC, coolC
	}
	return coldLimitC, coolC
}

// AimC gives the temperature at which a unit holds the box: the owner's target,
// and at least 1 K under the limit.
func (s *Setup) AimC() float64 { return min(s.TargetC, s.LimitC-1) }

// The hours of every boat's day. Engineering judgement, from memory.
const (
	noon        = 12 // a trip starts, and goods are stowed
	stowHours   = 6  // over which perishables give up their heat
	bagHours    = 6  // for which chilled food can stay in its bag
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

// walls is what lets heat into the box whenever the cabin is warmer, ready for
// the hours: the walls themselves, and drinks, which come from the cabin in
// every hour.
type walls struct {
	leak      heat.Conductance
	openLPerS float64 // air that openings exchange, in the hours that have any
}

func (s *Setup) walls() walls {
	return walls{s.Box.Leak, s.Box.OpensPerDay / (openToH - openFromH) * s.Box.SwappedL / 3600}
}

// drink adds the drinks to the leak. Those of a trip's first day are in the box
// when it starts.
func (s *Setup) drink(w *walls) { w.leak.Cabin += quantity.WattPerKelvin(s.drinksWPerK()) }

// leakW gives the heat through the walls, and of drinks, for a box at boxC.
func (w *walls) leakW(a *hourAir, seaC, boxC float64) float64 {
	return float64(w.leak.GainW(quantity.Celsius(boxC), quantity.Celsius(a.cabinC), quantity.Celsius(seaC), a.motoring))
}

// leakLine is leakW through a day, of one sea temperature, as a straight line in
// the temperatures of cabin and box.
type leakLine struct{ restW, perCabinK, perBoxK, motorW float64 }

func (w *walls) line(seaC float64) leakLine {
	rest := w.leak.GainW(0, 0, quantity.Celsius(seaC), false)
	motoring := w.leak.GainW(0, 0, quantity.Celsius(seaC), true)
	return leakLine{float64(rest), float64(w.leak.GainW(0, 1, 0, false) - w.leak.GainW(0, 0, 0, false)), float64(w.leak.Total()), float64(motoring - rest)}
}

// leakW is that of walls.
func (l *leakLine) leakW(a *hourAir, boxC float64) float64 {
	w := l.restW + l.perCabinK*a.cabinC - l.perBoxK*boxC
	if a.motoring {
		w += l.motorW
	}
	return w
}

// openingW gives the heat of lid openings in the hour, for a box at boxC.
func (w *walls) openingW(a *hourAir, boxC float64) float64 {
	if !a.opening {
		return 0
	}
	return w.openLPerS * heat.ExchangeKJPerM3(a.openKJ, quantity.Celsius(boxC))
}
