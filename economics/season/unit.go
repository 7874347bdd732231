package season

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// Start is the state of the box when a trip starts.
type Start int

// The states of a box at a trip's start. A box that is at its target or colder
// by itself starts as it is, whatever the state says.
const (
	StartWarm     Start = iota // at cabin temperature
	StartOnShore               // pulled down on shore power, which is billed (Tally.PullDownShoreWh)
	StartOnOwnSun              // left running between trips; see Unit
)

// Refrigerator is a unit in the season.
type Refrigerator struct {
	Cycle     energy.Cycle
	SeaCooled bool // the condenser breathes sea water, not cabin air
	Start     Start
	StoreKJ   float64 // heat that an eutectic plate can take up; 0 for a thin one
	// ByDay has the unit run only while the sun is up, by the middle day of the
	// month, beside bottles of water, if any, that it freezes with what power and
	// capacity are left over. Not with an eutectic plate.
	ByDay   bool
	Bottles Bottles
}

// aimC is where the unit holds the box: a thermostat that is set for a night
// without it stands dayColderK lower, but not under leastDayC.
func (r *Refrigerator) aimC(s *Setup) float64 {
	if r.ByDay {
		return min(s.AimC(), max(leastDayC, s.AimC()-dayColderK))
	}
	return s.AimC()
}

// Bottles are water in bottles that stand against a thin plate. The zero value is none.
type Bottles struct {
	StoreKJ float64 // heat that their ice takes up, 0 or more
	WPerK   float64 // exchange with the box, in which they melt at 0 °C
}

// How a unit that runs by day only is set for the night. Engineering judgement,
// from memory.
const dayColderK, leastDayC = 2, 1

// Unit runs the season with a compressor unit, whose food is as warm as the
// box, adds it to t, and writes its hours to trace unless that is nil.
//
// Each hour it needs what would bring the box back to its target, gets no
// more than its capacity nor than the electricity at hand allows, and the box
// moves by the difference. An eutectic plate stands between: the compressor
// freezes it whenever there is power, the box takes from it what it needs, at
// most the plate's conductance times the difference.
//
// The box starts warm, at the cabin's temperature, or cooled to its aim with all
// that lives in it and a day's drinks; the first perishables follow from their bag.
//
// A box left running on its own sun starts cold in months whose mean day of sun
// covers the closed box and the fan. In the others nobody leaves it running, and
// it starts warm: a habit that flattened the bank first would be dropped, and a
// search in which more of a piece can hurt finds nothing for sure.
func (s *Setup) Unit(air *Air, r Refrigerator, t *Tally, trace *Trace) {
	t.begin(s)
	run := unitRun{Refrigerator: r, ready: r.Cycle.Ready()}
	// Most hours find the box at its target. A trace wants more of the unit than
	// a table tells.
	run.tabled = trace == nil && r.StoreKJ == 0 && run.ready.Holding(quantity.Celsius(r.aimC(s)), &run.holding)
	run.hold = s.hold(&r)
	s.eachTrip(air, t, func(tr *tripRun) { s.unitTrip(tr, &run, t, trace) })
}

// unitRun is a unit ready for a season's hours.
type unitRun struct {
	Refrigerator
	ready   energy.Ready
	holding energy.Holding
	tabled  bool // whether holding may be read
	hold    hold
}

func (s *Setup) unitTrip(tr *tripRun, r *unitRun, t *Tally, trace *Trace) {
	boxC, frozenKJ, b := s.startUnit(s.Plan.Nights[tr.first].Month, &tr.hours[0], &r.Refrigerator, t)
	aimC, stowedC := r.aimC(s), s.Goods.StowedC
	heatKJPerK := s.Box.HeatKJPerK
	wattPerK := heatKJPerK / 3.6 // for an hour
	kelvinPerW := 3.6 / heatKJPerK
	fanW, standbyW := float64(r.Cycle.Condenser), float64(r.Cycle.Standby)
	walls := s.walls()
	for day := range tr.nights {
		d := tr.day(day, t)
		if day == 0 {
			d.setOut(boxC, s.LimitC)
		} else if day == 1 {
			s.drink(&walls)
		}
		var gainWh, cooledWh, unitWh, runHours float64
		startC, leak := boxC, walls.line(d.seaC)
		var sum heldHours
		for i := 0; i < len(d.hours); i++ {
			if r.holds(&b, &d, boxC) {
				if i = s.held(&d, i, &walls, &leak, r, &b, t, &sum); i == len(d.hours) {
					break
				}
			}
			a, h := &d.hours[i], clock(i)
			gainW := leak.leakW(a, boxC) + walls.openingW(a, boxC)
			if i >= d.from && i < d.to {
				gainW += d.wPerK * (stowedC - boxC)
			}
			var work energy.Work
			var capacityW, perCOP, perCapacity float64
			read := false
			if off := boxC - aimC; r.tabled && off < holdsK && off > -holdsK {
				perCOP, perCapacity, read = r.holding.At(r.CoolantC(a.cabinC, d.seaC))
				capacityW = 1 / perCapacity
			}
			if !read {
				work = r.work(&r.ready, boxC, a.cabinC, d.seaC)
				capacityW = float64(work.CapacityW)
				perCOP, perCapacity = 1/work.COP, 1/capacityW
			}
			needW := gainW + (boxC-aimC)*wattPerK
			if needW < 0 {
				needW = 0
			}
			sup := s.Power.supplyAt(a, h, d.shore)
			// Power rarely limits: only then is it worked out what there is.
			powerW := capacityW
			if b.off || b.wh+sup.surplusW-fanW < capacityW*perCOP {
				powerW = max(0, (b.availableW(sup)-fanW)/perCOP)
			}

			var cooledW, pumpedW, frozenW, frozenWh, frozenRun float64
			if r.ByDay {
				if s.Months[d.month].SunShare[h] == 0 {
					powerW = 0
				}
				cooledW = min(needW, capacityW, powerW)
				pumpedW = cooledW
				if cooledW < needW {
					melted := min(needW-cooledW, r.Bottles.WPerK*max(0, boxC), frozenKJ/3.6)
					cooledW += melted
					frozenKJ -= 3.6 * melted
				} else if leftW := b.availableW(sup) - fanW - pumpedW*perCOP; powerW > 0 && leftW > 0 && frozenKJ < r.Bottles.StoreKJ {
					w := r.ready.Storing(quantity.Celsius(r.CoolantC(a.cabinC, d.seaC)))
					frozenW = min((1-pumpedW/capacityW)*float64(w.CapacityW), leftW*w.COP, (r.Bottles.StoreKJ-frozenKJ)/3.6)
					frozenKJ += 3.6 * frozenW
					frozenWh, frozenRun = frozenW/w.COP, frozenW/float64(w.CapacityW)
				}
			} else if r.StoreKJ > 0 {
				pumpedW = min(capacityW, powerW, (r.StoreKJ-frozenKJ)/3.6+needW)
				carryW := max(0, float64(r.Cycle.Plate)*(boxC-float64(work.Te)))
				cooledW = min(needW, carryW, pumpedW+frozenKJ/3.6)
				frozenKJ = min(r.StoreKJ, frozenKJ+(pumpedW-cooledW)*3.6)
			} else {
				// Branches, not min: the processor then need not wait for capacity
				// and power, which rarely limit, before it goes on to the next hour.
				pumpedW = needW
				if capacityW < pumpedW {
					pumpedW = capacityW
				}
				if powerW < pumpedW {
					pumpedW = powerW
				}
				cooledW = pumpedW
			}
			unitW := 0.0
			if pumpedW+frozenW > 0 {
				run := pumpedW*perCapacity + frozenRun
				unitW = pumpedW*perCOP + frozenWh + fanW*run
				runHours += run
			}
			if !b.off || sup.shore != noShore {
				unitW += standbyW
			}
			boxC += (gainW - cooledW) * kelvinPerW

			shoreW := b.step(sup, unitW, t)
			gainWh += gainW
			unitWh += unitW
			cooledWh += cooledW
			counted := i >= d.free
			if d.waiting {
				d.wait(i, boxC, s.LimitC)
			}
			t.hour(boxC, cooledW > 0 || needW == 0, counted)
			if trace != nil {
				trace.add(Hour{Trip: tr.index, Hour: 24*day + i, Clock: h, Month: d.month, CabinC: a.cabinC, FoodC: boxC,
					GainW: gainW, CooledW: cooledW, EvaporatorC: float64(work.Te), CapacityW: capacityW, COP: work.COP,
					SunW: sup.sunW, UnitW: unitW, ShoreW: shoreW, ChargeWh: b.wh, Counted: counted})
			}
		}
		gainWh += sum.gainWh
		cooledWh += sum.gainWh
		unitWh += sum.unitWh
		runHours += sum.runHours
		t.GainWhBy[d.month] += gainWh
		t.UnitWhBy[d.month] += unitWh
		t.RunHoursBy[d.month] += runHours
		t.GainKJ += 3.6 * gainWh
		t.CooledKJ += 3.6 * cooledWh
		t.StoredKJ += heatKJPerK * (boxC - startC)
		b.closeDay(s.Power.HouseW, unitWh, t)
		t.endDay(d.month)
	}
	t.endTrip(tr)
}

// holdsK is how far a box may be from its target and still be held there. What
// a unit does changes by less than a millionth over it.
const holdsK = 1e-5

// work gives how the unit works in the hour: on the box itself, or on the
// solution of its plate, which stands at the freezing point whatever the box does.
func (r *Refrigerator) work(ready *energy.Ready, boxC, cabinC, seaC float64) energy.Work {
	coolantC := quantity.Celsius(r.CoolantC(cabinC, seaC))
	if r.StoreKJ > 0 {
		return ready.Storing(coolantC)
	}
	return ready.Working(quantity.Celsius(boxC), coolantC)
}

// CoolantC gives what the condenser breathes.
func (r *Refrigerator) CoolantC(cabinC, seaC float64) float64 {
	if r.SeaCooled {
		return seaC
	}
	return cabinC
}

// startUnit gives box temperature, cold in the plate and bank at a trip's start.
func (s *Setup) startUnit(month int, a *hourAir, r *Refrigerator, t *Tally) (boxC, frozenKJ float64, b bank) {
	aimC := r.aimC(s)
	b = s.Power.fullBank()
	boxC = a.cabinC
	if boxC <= aimC {
		return boxC, 0, b
	}
	switch r.Start {
	case StartOnShore:
		kJ := s.Box.HeatKJPerK*(boxC-aimC) + r.StoreKJ + r.Bottles.StoreKJ
		ready := r.Cycle.Ready()
		work := r.work(&ready, aimC, a.cabinC, s.Months[month].SeaC)
		t.PullDownShoreWh += kJ / 3.6 * (1/work.COP + float64(r.Cycle.Condenser)/float64(work.CapacityW))
		return aimC, r.StoreKJ + r.Bottles.StoreKJ, b
	case StartOnOwnSun:
		if s.closedBoxWh(month, r) <= s.SunWh(month) {
			return aimC, r.StoreKJ + r.Bottles.StoreKJ, b
		}
	}
	return boxC, 0, b
}

// closedBoxWh gives what a unit takes in a mean day of the month to hold the
// target with the lid shut.
func (s *Setup) closedBoxWh(month int, r *Refrigerator) float64 {
	mean, seaC, ready, walls := s.meanAir(month), s.Months[month].SeaC, r.Cycle.Ready(), s.walls()
	aimC := r.aimC(s)
	work := r.work(&ready, aimC, mean.cabinC, seaC)
	leakW := max(0, walls.leakW(&mean, seaC, aimC))
	return 24 * (leakW*(1/work.COP+float64(r.Cycle.Condenser)/float64(work.CapacityW)) + float64(r.Cycle.Standby))
}

// meanAir gives the cabin of a month's mean day, lid shut.
func (s *Setup) meanAir(month int) hourAir {
	var mean float64
	for _, c := range s.Months[month].OutdoorC {
		mean += c / 24
	}
	return hourAir{cabinC: mean + float64(s.CabinOffset)}
}

// SunWh gives the panel's yield, Wh, on a mean day of a month, 0 for January.
func (s *Setup) SunWh(month int) float64 {
	m := &s.Months[month]
	var wh float64
	for h, share := range m.SunShare {
		wh += float64(s.Power.Panel.PowerW(m.SunKWh*1000*share, quantity.Celsius(m.OutdoorC[h])))
	}
	return wh
}
