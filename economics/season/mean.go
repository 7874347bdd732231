package season

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// MonthMean is a mean day of a month, for a box held at a temperature.
type MonthMean struct {
	CabinC, SeaC                      float64 // means of the day, °C
	LeakW, OpeningsW, GoodsW, DrinksW float64 // heat into the box, means of the day
}

// GainW gives the whole heat gain, W; negative where the box loses heat.
func (m MonthMean) GainW() float64 { return m.LeakW + m.OpeningsW + m.GoodsW + m.DrinksW }

// Mean gives a month's mean day, 0 for January, with the box at boxC: every
// hour's air without the weather's offset, and a day's goods each day.
func (s *Setup) Mean(month int, boxC float64) MonthMean { return s.meanDay(month, boxC, 0) }

// meanDay gives a day of a month that is warmer than its mean day.
func (s *Setup) meanDay(month int, boxC, warmerK float64) MonthMean {
	out, walls := MonthMean{SeaC: s.Months[month].SeaC}, s.walls()
	for h := range 24 {
		a := s.meanHour(month, h, warmerK)
		out.CabinC += a.cabinC / 24
		out.LeakW += walls.leakW(&a, out.SeaC, boxC) / 24
		out.OpeningsW += walls.openingW(&a, boxC) / 24
	}
	out.GoodsW = s.perishablesADay() * (s.Goods.StowedC - boxC) / 86.4
	out.DrinksW = s.drinksWPerK() * (out.CabinC - boxC)
	return out
}

// meanHour gives the air of clock hour h on a day warmer than a month's mean.
func (s *Setup) meanHour(month, h int, warmerK float64) (a hourAir) {
	m := &s.Months[month]
	m.cabin(&a, h, m.OutdoorC[h]+warmerK+float64(s.CabinOffset), s.Power.EngineHours)
	return a
}

// perishablesADay gives the heat capacity, kJ/K, of the perishables stowed on
// an average day.
func (s *Setup) perishablesADay() float64 {
	return s.Goods.PerishableKgPerDay * s.stowedShare() * heat.PerishableKJPerKgK
}

// Gain gives the mean heat gain of a month, 0 for January, as a straight line
// in the temperature of the box, with openings and goods as they are at boxC.
// The box must leak: Leak.Total over 0.
func (s *Setup) Gain(month int, boxC float64) energy.Gain {
	mean, leak := s.Mean(month, boxC), s.Box.Leak.Total()
	return energy.Gain{
		Leak: leak,
		Out:  quantity.Celsius(boxC + mean.LeakW/float64(leak)),
		Use:  quantity.Watt(mean.OpeningsW + mean.GoodsW + mean.DrinksW),
	}
}

// Duty gives a unit's mean day of a month, 0 for January, with the box at boxC,
// or as near to it as its capacity allows. Power is taken as always at hand.
func (s *Setup) Duty(month int, r Refrigerator, boxC float64) energy.Duty {
	mean := s.Mean(month, boxC)
	coolant := quantity.Celsius(r.CoolantC(mean.CabinC, mean.SeaC))
	return r.Cycle.Duty(s.Gain(month, boxC), quantity.Celsius(boxC), coolant)
}
