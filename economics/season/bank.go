package season

import "math"

// bank is the battery during a trip. The lower fields repeat the setup's, as
// floats at hand for the hours.
type bank struct {
	wh  float64 // above the unit's cut-off
	off bool    // the unit is cut off until wh reaches the restart level

	fullWh, restartWh float64
	yield, perYield   float64 // share of a charge that is stored, and its inverse
	storedWh          float64 // wh when closeDay was last called
}

// fullBank gives the battery full, as a trip starts.
func (p *Power) fullBank() bank {
	full, yield := float64(p.Bank.FullWh), float64(p.Bank.ChargeEfficiency)
	return bank{wh: full, storedWh: full, fullWh: full, restartWh: float64(p.Bank.RestartWh), yield: yield, perYield: 1 / yield}
}

// supply is what the boat's own sources give in one hour, before any unit. It
// has four fields, as the compiler keeps no larger struct in registers.
type supply struct {
	sunW, engineW float64
	surplusW      float64 // sun and engine beyond house loads; negative when short
	shore         shore
}

// shore is the hours for which shore power is still connected, this one
// included: 0 where it is not, 1 in the hour before it leaves with a full bank.
type shore uint8

const noShore shore = 0

// supplyAt gives the sources and house loads of clock hour h, on a night with
// or without shore power.
func (p *Power) supplyAt(a *hourAir, h int, shoreNight bool) supply {
	sup := supply{sunW: float64(p.Panel.Wp) * a.wPerWp}
	if a.motoring {
		sup.engineW = p.EngineW * min(1, p.EngineHours-float64(h-engineFromH))
	}
	sup.surplusW = sup.sunW + sup.engineW - p.HouseW
	if shoreNight && (h >= shoreFromH || h < shoreToH) {
		sup.shore = shore((shoreToH + 24 - h) % 24)
	}
	return sup
}

// availableW gives the electricity a unit could draw through this hour:
// without end on shore power, none when it is cut off.
func (b *bank) availableW(sup supply) float64 {
	switch {
	case sup.shore != noShore:
		return math.Inf(1)
	case b.off:
		return 0
	}
	return max(0, b.wh+sup.surplusW)
}

// step books one hour of sources, house loads and a unit's draw, and gives the
// shore power that took. What is the same every hour is booked by closeDay.
func (b *bank) step(sup supply, unitW float64, t *Tally) (shoreW float64) {
	net := sup.surplusW - unitW
	spill := 0.0
	switch {
	case net >= 0:
		put := (b.fullWh - b.wh) * b.perYield
		if net < put {
			put = net
			b.wh += net * b.yield
		} else {
			b.wh = b.fullWh
		}
		t.LostWh += put * (1 - b.yield)
		spill = net - put
	case sup.shore != noShore:
		shoreW = -net
	case -net <= b.wh:
		b.wh += net
		t.DrawnWh -= net
	default:
		t.DrawnWh += b.wh
		t.HouseUnmetWh += -net - b.wh
		b.wh = 0
	}
	if sup.shore != noShore && b.wh < b.fullWh {
		gained := (b.fullWh - b.wh) / float64(sup.shore)
		put := gained * b.perYield
		shoreW += put
		t.LostWh += put * (1 - b.yield)
		if b.wh += gained; sup.shore == 1 {
			b.wh = b.fullWh
		}
	}
	t.ShoreWh += shoreW
	t.SunWh += sup.sunW
	// The engine runs anyway; what it gives beyond need is not counted.
	if sup.engineW > 0 {
		used := max(0, sup.engineW-spill)
		t.EngineWh += used
		spill -= sup.engineW - used
	}
	t.SpillWh += spill
	if b.wh <= 1e-9 {
		b.off = true
	} else if b.wh >= b.restartWh || sup.shore != noShore || sup.engineW > 0 {
		b.off = false
	}
	if b.wh < t.LowestWh {
		t.LowestWh = b.wh
	}
	return shoreW
}

// closeDay books what a day's hours have in common.
func (b *bank) closeDay(houseW, unitWh float64, t *Tally) {
	t.HouseWh += 24 * houseW
	t.UnitWh += unitWh
	t.StoredWh += b.wh - b.storedWh
	b.storedWh = b.wh
}

// Stores runs the season without any cooling and adds it to t: house loads
// alone, the base against which a unit's shore power, engine charge and battery
// wear count. Food is not reckoned, so the tally gains no hours and no cold days.
func (s *Setup) Stores(air *Air, t *Tally) {
	t.begin(s)
	s.eachTrip(air, t, func(tr *tripRun) {
		b := s.Power.fullBank()
		for day := range tr.nights {
			d := tr.day(day, t)
			for i := range d.hours {
				sup := s.Power.supplyAt(&d.hours[i], clock(i), d.shore)
				b.step(sup, 0, t)
			}
			b.closeDay(s.Power.HouseW, 0, t)
			t.endNight(d.month)
		}
		t.endTrip(tr)
	})
}

// tripRun walks one trip's hours.
type tripRun struct {
	s      *Setup
	hours  []hourAir
	air    *Air
	index  int // of the trip
	first  int // index of its first night in the plan
	nights int
	alone  int    // see Trip
	before *Tally // before the nights that stand for others
}

// eachTrip calls f for each trip in order.
func (s *Setup) eachTrip(air *Air, t *Tally, f func(*tripRun)) {
	tr, trips := tripRun{s: s, air: air}, s.Plan.Trips
	for i, trip := range trips {
		tr.index, tr.first, tr.nights, tr.alone = i, trip.First, trip.Nights, trip.Alone
		tr.hours = air.hours[air.trips[i] : air.trips[i]+24*trip.Nights]
		if trip.Alone == 0 && (i == 0 || trips[i-1].Alone > 0) {
			tr.mark(t)
		}
		f(&tr)
		if trip.Alone == 0 && (i == len(trips)-1 || trips[i+1].Alone > 0) {
			t.repeat(tr.before, partEach)
		}
	}
}

// mark remembers what the season has come to before nights that stand for others.
func (tr *tripRun) mark(t *Tally) {
	if tr.before == nil {
		tr.before = new(Tally)
	}
	*tr.before = *t
}

// dayRun is one noon-to-noon day of a trip.
type dayRun struct {
	month int // 0 for January
	seaC  float64
	shore bool // whether the night is spent on shore power
	stowing
	hours []hourAir // 24
}

// day gives a day of the trip, before which the season has come to t.
func (tr *tripRun) day(day int, t *Tally) dayRun {
	s := tr.s
	if day == tr.alone && day > 0 {
		tr.mark(t)
	}
	month := s.Plan.Nights[tr.first+day].Month
	return dayRun{
		month: month, seaC: s.Months[month].SeaC,
		shore:   s.Power.ShoreShare > 0 && s.shoreNight(tr.first+day),
		stowing: s.stowing(day, tr.nights),
		hours:   tr.hours[24*day : 24*day+24],
	}
}

// clock gives the clock hour at which hour i of a boat's day starts.
func clock(i int) int {
	if i < 24-noon {
		return i + noon
	}
	return i + noon - 24
}
