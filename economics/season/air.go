package season

import (
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Air is the world around the box through a year aboard, hour by hour: what
// all options share. It is made once and read by every run.
type Air struct {
	hours []hourAir
	trips []int     // index of each trip's first hour
	stops []float64 // see Weather.Stops
	// lowestC is the coldest that cabin or sea become, °C.
	lowestC float64
}

// NeverUnder tells whether cabin and sea stay above a temperature, °C, all
// season: an empty box then never keeps food under it, unless that is stowed
// colder.
func (a *Air) NeverUnder(c float64) bool { return a.lowestC > c }

// hourAir is the world in one hour.
type hourAir struct {
	cabinC   float64
	openKJ   float64 // enthalpy of cabin air, kJ per kg dry air, in opening hours
	wPerWp   float64 // yield of one watt of panel
	opening  bool    // whether it is an opening hour
	motoring bool    // for any part of the hour
}

// FillAir works out the air of every hour of the plan, from the weather w that
// Draw made for it. The cabin is warmer than outdoor air by the offset; the
// engine runs engineHours a day, 0 or more, from 9 h. The panel counts by its
// yield per watt, so that one air serves panels of any size. It allocates only
// when the air is too small.
func (p *Plan) FillAir(air *Air, w *Weather, months *[12]Month, offset quantity.Kelvin, panel energy.Chain, engineHours float64) {
	n := 24 * len(p.Nights)
	if cap(air.hours) < n {
		air.hours = make([]hourAir, n)
	}
	air.hours, air.trips = air.hours[:n], air.trips[:0]
	air.lowestC = math.Inf(1)
	air.stops = append(air.stops[:0], w.Stops...)
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
			air.lowestC = min(air.lowestC, hour.cabinC, m.SeaC)
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
	a.cabinC, a.openKJ, a.opening = cabinC, 0, h >= openFromH && h < openToH
	a.motoring = h >= engineFromH && float64(h) < engineFromH+engineHours
	if a.opening {
		cabin := quantity.Celsius(cabinC)
		a.openKJ = min(heat.EnthalpyKJ(cabin, m.Water), heat.SaturatedEnthalpyKJ(cabin))
	}
}
