package season

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Air is the world around the box through a year aboard, hour by hour: what
// all options share. It is made once and read by every run.
type Air struct {
	hours []hourAir
	trips []int // index of each trip's first hour
}

// hourAir is the world in one hour.
type hourAir struct {
	cabinC   float64
	openKJ   float64 // enthalpy of cabin air, kJ per kg dry air; 0 outside opening hours
	density  float64 // kg dry air per m³ of cabin air; 0 outside opening hours
	wPerWp   float64 // yield of one watt of panel
	motoring bool    // for any part of the hour
}

// Breathe works out the air of every hour of the plan, from the weather w that
// Draw made for it. The cabin is warmer than outdoor air by the offset; the
// engine runs engineHours a day, 0 or more, from 9 h. The panel counts by its
// yield per watt, so that one air serves panels of any size. It allocates only
// when the air is too small.
func (p *Plan) Breathe(air *Air, w *Weather, months *[12]Month, offset quantity.Kelvin, panel energy.Chain, engineHours float64) {
	n := 24 * len(p.Nights)
	if cap(air.hours) < n {
		air.hours = make([]hourAir, n)
	}
	air.hours, air.trips = air.hours[:n], air.trips[:0]
	panel.Wp = 1
	at := 0
	for i, trip := range p.Trips {
		air.trips = append(air.trips, at)
		for k := range 24 * trip.Nights {
			day := trip.First + i + (k+noon)/24
			m := &months[p.Nights[trip.First+k/24].Month]
			h, hour := (k+noon)%24, &air.hours[at]
			outdoorC := m.OutdoorC[h] + w.AirK[day]
			m.cabin(hour, h, outdoorC+float64(offset), engineHours)
			hour.wPerWp = 0
			if share := m.SunShare[h]; share > 0 {
				hour.wPerWp = float64(panel.PowerW(w.SunKWh[day]*1000*share, quantity.Celsius(outdoorC)))
			}
			at++
		}
	}
}

// cabin fills in the air of clock hour h in a cabin at cabinC. Only the lid
// asks for its moisture, so that it is worked out in opening hours alone.
func (m *Month) cabin(a *hourAir, h int, cabinC, engineHours float64) {
	a.cabinC, a.openKJ, a.density = cabinC, 0, 0
	a.motoring = h >= engineFromH && float64(h) < engineFromH+engineHours
	if h >= openFromH && h < openToH {
		cabin := quantity.Celsius(cabinC)
		water := m.Water
		a.openKJ = heat.EnthalpyKJ(cabin, water)
		if most := heat.SaturatedEnthalpyKJ(cabin); a.openKJ > most {
			a.openKJ, water = most, heat.SaturatedHumidityRatio(cabin)
		}
		a.density = 1 / heat.SpecificVolume(cabin, water)
	}
}
