package season

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Start is the state of the box when a trip starts.
type Start int

// The states.
const (
	StartWarm     Start = iota // at cabin temperature
	StartOnShore               // pulled down on shore power, which is billed
	StartOnOwnSun              // left running; see Unit
)

// Refrigerator is a unit in the season.
type Refrigerator struct {
	Cycle     energy.Cycle
	SeaCooled bool // the condenser breathes sea water, not cabin air
	Start     Start
	StoreKJ   float64 // of an eutectic plate; 0 for a thin one
}

// Unit runs the season with a compressor unit, whose food is as warm as the box.
//
// Each hour it needs what would bring the box back to its target, gets no
// more than its capacity nor than the electricity at hand allows, and the box
// moves by the difference. An eutectic plate stands between: the compressor
// freezes it whenever there is power, the box takes from it what it needs, at
// most the plate's conductance times the difference.
//
// A box left running on its own sun starts cold, with a full bank, in months
// whose mean day of sun covers the closed box and the fan; in the others it
// starts warm with the bank at its restart level.
func (s *Setup) Unit(air *Air, r Refrigerator, t *Tally, trace *Trace) {
	t.begin(s)
	s.eachTrip(air, func(tr *tripRun) { s.unitTrip(tr, r, t, trace) })
}

func (s *Setup) unitTrip(tr *tripRun, r Refrigerator, t *Tally, trace *Trace) {
	boxC, b := s.startUnit(tr.month(0), &tr.hours[0], &r, t)
	heatKJPerK := s.Box.HeatKJPerK
	frozenKJ := 0.0
	if boxC <= s.TargetC {
		frozenKJ = r.StoreKJ
	}
	fanW, standbyW := float64(r.Cycle.Condenser), float64(r.Cycle.Standby)
	guess := quantity.Celsius(boxC)
	for i := range tr.hours {
		a, month, h := &tr.hours[i], tr.month(i), (i+noon)%24
		seaC := s.Months[month].SeaC
		gainW := s.leakW(a, seaC, boxC) + s.openingW(a, boxC) + s.stowedWPerK(i, tr.nights)*(a.cabinC-boxC)
		work := r.work(guess, boxC, a.cabinC, seaC, frozenKJ)
		guess = work.Te
		capacityW := float64(work.CapacityW)
		needW := max(0, gainW+heatKJPerK*(boxC-s.TargetC)/3.6)
		sup := tr.supplyAt(a, i, h)
		powerW := max(0, work.COP*(b.availableW(&sup)-fanW))

		var cooledW, pumpedW float64
		if r.StoreKJ > 0 {
			pumpedW = min(capacityW, powerW, (r.StoreKJ-frozenKJ)/3.6+needW)
			carryW := max(0, float64(r.Cycle.Plate)*(boxC-float64(work.Te)))
			cooledW = min(needW, carryW, pumpedW+frozenKJ/3.6)
			frozenKJ = min(r.StoreKJ, frozenKJ+(pumpedW-cooledW)*3.6)
		} else {
			pumpedW = min(needW, capacityW, powerW)
			cooledW = pumpedW
		}
		unitW := 0.0
		if pumpedW > 0 {
			run := pumpedW / capacityW
			unitW = pumpedW/work.COP + fanW*run
			t.RunHoursBy[month] += run
		}
		if !b.off {
			unitW += standbyW
		}
		storedKJ := 3.6 * (gainW - cooledW)
		boxC += storedKJ / heatKJPerK

		b.step(&s.Power, &sup, unitW, t)
		t.GainWhBy[month] += gainW
		t.UnitWhBy[month] += unitW
		t.GainKJ += 3.6 * gainW
		t.CooledKJ += 3.6 * cooledW
		t.StoredKJ += storedKJ
		t.hour(boxC, s.LimitC, cooledW > 0 || needW == 0, tr.settled(i))
		if trace != nil {
			trace.add(Hour{Trip: tr.index, Hour: i, Clock: h, Month: month, CabinC: a.cabinC, FoodC: boxC,
				GainW: gainW, CooledW: cooledW, EvaporatorC: float64(work.Te), CapacityW: capacityW, COP: work.COP,
				SunW: sup.sunW, UnitW: unitW, ChargeWh: b.wh})
		}
		if i%24 == 23 {
			t.endDay(month)
		}
	}
	t.endTrip()
}

// work gives how the unit works in the hour: freezing its plate while that is
// not all frozen, else on the box itself.
func (r *Refrigerator) work(guess quantity.Celsius, boxC, coolantC, seaC, frozenKJ float64) energy.Work {
	if r.SeaCooled {
		coolantC = seaC
	}
	if r.StoreKJ > 0 && frozenKJ < r.StoreKJ {
		return r.Cycle.Storing(quantity.Celsius(coolantC))
	}
	return r.Cycle.WorkingFrom(guess, quantity.Celsius(boxC), quantity.Celsius(coolantC))
}

// startUnit gives box temperature and bank at a trip's start.
func (s *Setup) startUnit(month int, a *hourAir, r *Refrigerator, t *Tally) (boxC float64, b bank) {
	b = bank{wh: float64(s.Power.Bank.FullWh)}
	boxC = a.cabinC
	if boxC <= s.TargetC {
		return boxC, b
	}
	work := r.work(quantity.Celsius(s.TargetC), s.TargetC, a.cabinC, s.Months[month].SeaC, r.StoreKJ)
	switch r.Start {
	case StartOnShore:
		kJ := s.Box.HeatKJPerK*(boxC-s.TargetC) + r.StoreKJ
		t.PullDownShoreWh += kJ / 3.6 / work.COP
		return s.TargetC, b
	case StartOnOwnSun:
		if s.closedBoxWh(month, r, work.COP) <= s.sunWh(month) {
			return s.TargetC, b
		}
		b.wh = float64(s.Power.Bank.RestartWh)
	}
	return boxC, b
}

// closedBoxWh gives what a unit takes in a mean day of the month to hold the
// target with the lid shut.
func (s *Setup) closedBoxWh(month int, r *Refrigerator, cop float64) float64 {
	mean := s.meanAir(month)
	return 24 * (max(0, s.leakW(&mean, s.Months[month].SeaC, s.TargetC))/cop + float64(r.Cycle.Standby))
}

// meanAir gives the cabin of a month's mean day, lid shut.
func (s *Setup) meanAir(month int) hourAir {
	var mean float64
	for _, c := range s.Months[month].OutdoorC {
		mean += c / 24
	}
	return hourAir{cabinC: mean + float64(s.CabinOffset)}
}

// sunWh gives the panel's yield on a mean day of the month.
func (s *Setup) sunWh(month int) float64 {
	m := &s.Months[month]
	var wh float64
	for h, share := range m.SunShare {
		wh += float64(s.Power.Panel.PowerW(m.SunKWh*1000*share, quantity.Celsius(m.OutdoorC[h])))
	}
	return wh
}

// HeatCapacityKJPerK gives the heat capacity of a box's liner and inner foam
// and of the goods aboard.
func HeatCapacityKJPerK(volume quantity.Litre, goods quantity.Kilogram) float64 {
	return float64(heat.LinerKJPerK(volume)) + heat.GoodsKJPerKgK*float64(goods)
}
