package season_test

import (
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

// TestMeanDay holds a month's mean day to the hours of a week without weather,
// its box held at the target by a unit with all the power it wants: the same
// gain and the same sun, and nearly the electricity of the unit's steady duty,
// which knows the day's mean temperatures only.
//
// Guards the hours of the goods and the sums in Mean (without "/ 24" each
// fails), meanAir and SunWh, and that Duty takes the sea's temperature for a
// sea-cooled unit.
func TestMeanDay(t *testing.T) {
	for _, id := range []string{"maine-coast", "canary-islands"} {
		for _, cooledBy := range []energy.Condenser{energy.Fan, energy.Seawater} {
			c := sloop()
			c.ground, c.nights, c.tripNights, c.shopEvery = id, [12]float64{6: 8}, 8, 1
			if cooledBy == energy.Seawater {
				c.offsetK = 12 // far from the sea
			}
			ample(&c)
			b := c.aboard(t)
			for day := range b.weather.SunKWh {
				b.weather.SunKWh[day], b.weather.AirK[day] = b.setup.Months[6].SunKWh, 0
			}
			b.fillAir()
			unit := unitOf(cooledBy, energy.Thin, season.StartWarm)
			_, rows := b.runUnit(unit)
			var days, gainWh, sunWh, unitWh, cabin float64
			for _, h := range rows[48:] {
				days += 1.0 / 24
				gainWh += h.GainW
				sunWh += h.SunW
				unitWh += h.UnitW
				cabin += h.CabinC / 24
			}
			mean := b.setup.Mean(6, c.targetC)
			name := id + ", " + string(cooledBy)
			near(t, name+": cabin", mean.CabinC, cabin/days, 1e-6)
			near(t, name+": gain", mean.GainW(), gainWh/days/24, 1e-6)
			near(t, name+": sun", b.setup.SunWh(6), sunWh/days, 1e-6)
			near(t, name+": sea", mean.SeaC, float64(b.ground.Months[6].Sea), 0)
			near(t, name+": by its parts", mean.GainW(), mean.LeakW+mean.OpeningsW+mean.GoodsW+mean.DrinksW, 1e-12)
			duty := b.setup.Duty(6, unit, c.targetC)
			near(t, name+": share of the duty", float64(duty.DayWh())/(unitWh/days), 1, 0.05)
			near(t, name+": held", float64(duty.Held), c.targetC, 1e-9)
			// The straight line of the gain, at the box temperature it was laid at and 3 K off.
			line := b.setup.Gain(6, c.targetC)
			near(t, name+": line", float64(line.At(4)), mean.GainW(), 1e-9)
			near(t, name+": line, 3 K warmer", float64(line.At(7)), mean.GainW()-3*float64(b.setup.Box.Leak.Total()), 1e-9)
		}
	}
}

// TestGoodsInTheMean: 1.2 kg of 3.5 kJ/kg·K a day from 8 °C to 4, and 2 kg of
// 4.19 kJ/kg·K from the cabin. 86,400 s a day. Where shops are ten days apart,
// seven days' food is stowed.
func TestGoodsInTheMean(t *testing.T) {
	c := sloop()
	c.nights, c.tripNights = [12]float64{6: 20}, 20
	b := c.aboard(t)
	mean, g := b.setup.Mean(6, 4), b.ground.Months[6]
	near(t, "perishables", mean.GoodsW, 1.2*3.5*4/86.4, 1e-12)
	near(t, "drinks", mean.DrinksW, 2*4.19*(float64(g.AirMean)+2-4)/86.4, 1e-9)
	b.setup.Goods.ShopEveryDays = 10
	near(t, "perishables of seven days in ten", b.setup.Mean(6, 4).GoodsW, 0.7*1.2*3.5*4/86.4, 1e-12)
}
