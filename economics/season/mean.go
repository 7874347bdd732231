package season

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// MonthMean is a mean day of a month, for a box held at a temperature.
type MonthMean struct {
	CabinC, SeaC             float64 // means of the day, °C
	LeakW, OpeningsW, GoodsW float64 // heat into the box, means of the day
}

// GainW gives the whole heat gain, W; negative where the box loses heat.
func (m MonthMean) GainW() float64 { return m.LeakW + m.OpeningsW + m.GoodsW }

// Mean gives a month's mean day, 0 for January, with the box at boxC: every
// hour's air without the weather's offset, and a day's goods each day.
func (s *Setup) Mean(month int, boxC float64) MonthMean {
	m := &s.Months[month]
	out, walls := MonthMean{SeaC: m.SeaC}, s.walls()
	var a hourAir
	for h := range 24 {
		m.cabin(&a, h, m.OutdoorC[h]+float64(s.CabinOffset), s.Power.EngineHours)
		out.CabinC += a.cabinC / 24
		out.LeakW += walls.leakW(&a, m.SeaC, boxC) / 24
		out.OpeningsW += walls.openingW(&a, boxC) / 24
		if h >= noon && h < noon+stowHours {
			out.GoodsW += s.Goods.KgPerDay * heat.GoodsKJPerKgK * (a.cabinC - boxC) / 86.4 / stowHours
		}
	}
	return out
}

// Gain gives the mean heat gain of a month, 0 for January, as a straight line
// in the temperature of the box, with openings and goods as they are at boxC.
// The box must leak: Leak.Total over 0.
func (s *Setup) Gain(month int, boxC float64) energy.Gain {
	mean, leak := s.Mean(month, boxC), s.Box.Leak.Total()
	return energy.Gain{
		Leak: leak,
		Out:  quantity.Celsius(boxC + mean.LeakW/float64(leak)),
		Use:  quantity.Watt(mean.OpeningsW + mean.GoodsW),
	}
}

// Duty gives a unit's mean day of a month, 0 for January, with the box at boxC,
// or as near to it as its capacity allows. Power is taken as always at hand.
func (s *Setup) Duty(month int, r Refrigerator, boxC float64) energy.Duty {
	mean := s.Mean(month, boxC)
	coolantC := mean.CabinC
	if r.SeaCooled {
		coolantC = mean.SeaC
	}
	return r.Cycle.Duty(s.Gain(month, boxC), quantity.Celsius(boxC), quantity.Celsius(coolantC))
}
