package season

import "math"

// bank is the battery during a trip.
type bank struct {
	wh  float64 // above the unit's cut-off
	off bool    // the unit is cut off until wh reaches the restart level
}

// supply is what the boat's own sources give in one hour, before any unit.
type supply struct {
	surplusW float64 // sun and engine beyond house loads; negative when short
	shore    bool
}

// supplyAt gives the sources and house loads of clock hour h.
func (s *Setup) supplyAt(a *air, h int, shore bool) supply {
	return supply{surplusW: a.sunW + s.engineW(h) - s.Power.HouseW, shore: shore}
}

// engineW gives the engine's charge in clock hour h, the last hour in part.
func (s *Setup) engineW(h int) float64 {
	part := s.Power.EngineHours - float64(h-engineFromH)
	if h < engineFromH || part <= 0 {
		return 0
	}
	return s.Power.EngineW * min(1, part)
}

// availableW gives the electricity a unit could draw through this hour:
// without end on shore power, none when it is cut off.
func (b *bank) availableW(sup supply) float64 {
	switch {
	case sup.shore:
		return math.Inf(1)
	case b.off:
		return 0
	}
	return max(0, b.wh+sup.surplusW)
}

// step books one hour of sources, house loads and a unit's draw.
func (b *bank) step(s *Setup, sup supply, h int, sunW, unitW float64, t *Tally) {
	fullWh, yield := float64(s.Power.Bank.FullWh), float64(s.Power.Bank.ChargeEfficiency)
	engineW := s.engineW(h)
	t.SunWh += sunW
	t.HouseWh += s.Power.HouseW
	t.UnitWh += unitW
	before := b.wh
	net := sup.surplusW - unitW
	spill, unmet, shore := 0.0, 0.0, 0.0
	switch {
	case net >= 0:
		stored := min(net*yield, fullWh-b.wh)
		b.wh += stored
		spill = net - stored/yield
		t.LostWh += stored/yield - stored
	case sup.shore:
		shore = -net
	default:
		drawn := min(-net, b.wh)
		b.wh -= drawn
		unmet = -net - drawn
		t.DrawnWh += drawn
	}
	if sup.shore && h == shoreToH-1 && b.wh < fullWh {
		fill := fullWh - b.wh
		shore += fill / yield
		t.LostWh += fill/yield - fill
		b.wh = fullWh
	}
	// The engine runs anyway; what it gives beyond need is not counted.
	engineUsed := max(0, engineW-spill)
	t.EngineWh += engineUsed
	t.SpillWh += spill - (engineW - engineUsed)
	t.ShoreWh += shore
	t.HouseUnmetWh += unmet
	t.StoredWh += b.wh - before
	if b.wh <= 1e-9 {
		b.off = true
	} else if b.wh >= float64(s.Power.Bank.RestartWh) || sup.shore {
		b.off = false
	}
	t.LowestWh = min(t.LowestWh, b.wh)
}

// Stores runs the season without any cooling: house loads alone, the base
// against which a unit's shore power, engine charge and battery wear count.
func (s *Setup) Stores(w *Weather, t *Tally) {
	t.begin(s)
	s.eachTrip(w, func(tr *tripRun) {
		b := bank{wh: float64(s.Power.Bank.FullWh)}
		for i := range 24 * tr.nights {
			m, h, a := tr.at(i)
			sup := s.supplyAt(&a, h, tr.shore(i, h))
			b.step(s, sup, h, a.sunW, 0, t)
			t.hour(a.cabinC, s.LimitC, true, tr.settled(i))
			if i%24 == 23 {
				t.endDay(m)
			}
		}
		t.endTrip()
	})
}

// tripRun walks one trip's hours.
type tripRun struct {
	s      *Setup
	w      *Weather
	index  int // of the trip
	first  int // night
	nights int
	day0   int // index of its first day of weather
}

// eachTrip calls f for each trip in order.
func (s *Setup) eachTrip(w *Weather, f func(*tripRun)) {
	tr := tripRun{s: s, w: w}
	for i, trip := range s.Plan.Trips {
		tr.index, tr.first, tr.nights, tr.day0 = i, trip.First, trip.Nights, trip.First+i
		f(&tr)
	}
}

// at gives month, clock hour and the world in trip hour i.
func (tr *tripRun) at(i int) (month, h int, a air) {
	day := (i + noon) / 24
	h = (i + noon) % 24
	month = tr.s.Plan.Nights[tr.first+i/24].Month
	a = tr.s.airAt(&tr.s.Months[month], h, tr.w.SunKWh[tr.day0+day], tr.w.AirK[tr.day0+day])
	return month, h, a
}

// shore tells whether shore power is connected in trip hour i.
func (tr *tripRun) shore(i, h int) bool {
	return (h >= shoreFromH || h < shoreToH) && tr.s.Power.ShoreShare > 0 && tr.s.shoreNight(tr.first+i/24)
}

// settled tells whether trip hour i counts for the warmest food: all hours but
// a longer trip's first day, which belongs to the pull-down.
func (tr *tripRun) settled(i int) bool { return i >= 24 || tr.nights == 1 }
