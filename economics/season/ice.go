package season

import (
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Ice runs the season on ice as planned, adds it to t, and writes its hours to
// trace unless that is nil.
//
// Ice cools by its surface's conductance times the food's temperature, so food
// warms as the ice shrinks. Gain, ice and what the contents store balance in
// every hour at the food temperature of the hour's end; the chilling of a warm
// box is thus paid in ice and takes its hours. Ice below freezing first warms
// to 0 °C. Meltwater that is kept joins the box at 0 °C at the hour's end.
// Without ice the box drifts. Ice takes no electricity: what the boat's own
// loads do to its battery is what Stores tells.
func (s *Setup) Ice(air *Air, plan *IcePlan, t *Tally, trace *Trace) {
	t.begin(s)
	s.eachTrip(air, t, func(tr *tripRun) { s.iceTrip(tr, plan, t, trace) })
}

func (s *Setup) iceTrip(tr *tripRun, plan *IcePlan, t *Tally, trace *Trace) {
	walls := s.walls()
	foodC, ice := s.setOutOnIce(tr, plan, t)
	stowedC, meltKJ := s.Goods.StowedC, plan.meltKJPerKg()
	perMeltKJ := 1 / meltKJ
	for day := range tr.nights {
		d := tr.day(day, t)
		if day == 0 {
			d.setOut(foodC, s.LimitC)
		} else {
			if day == 1 {
				s.drink(&walls)
			}
			s.buy(tr, day, d.month, foodC, &ice, plan, t)
		}
		leak := walls.line(d.seaC)
		var gainWh, cooledKJ, storedKJ, meltKg float64
		kg, frostKJ, waterKg := ice.kg, ice.frostKJ, ice.waterKg // at hand for the hours
		for i := range d.hours {
			a := &d.hours[i]
			// Openings and the ice's film are reckoned at the last hour's food; the
			// rest at this one's.
			slope := leak.perBoxK
			fixedW := leak.leakW(a, 0) + walls.openingW(a, foodC)
			if i >= d.from && i < d.to {
				slope += d.wPerK
				fixedW += d.wPerK * stowedC
			}
			heatKJPerK := s.Box.HeatKJPerK + heat.WaterKJPerKgK*waterKg
			wasC := foodC

			takenKJ, meltedKg, balanced := 0.0, 0.0, false
			if kg > 0 {
				surface := float64(plan.surface.WPerK(quantity.Kilogram(kg), quantity.Celsius(foodC)))
				foodC = (heatKJPerK*wasC + 3.6*fixedW) / (heatKJPerK + 3.6*(slope+surface))
				if foodC > 0 {
					takenKJ, balanced = 3.6*surface*foodC, true
				}
				melt := takenKJ
				if frostKJ > 0 {
					melt = max(0, takenKJ-frostKJ)
					frostKJ -= takenKJ - melt
				}
				meltedKg = melt * perMeltKJ
				if meltedKg > kg-1e-9 {
					// The last of the ice: the box takes the rest of the hour's heat.
					takenKJ -= (meltedKg - kg) * meltKJ
					meltedKg, balanced = kg, false
				}
				kg -= meltedKg
			}
			if !balanced { // no ice took up heat, or not to the hour's end
				foodC = (heatKJPerK*wasC + 3.6*fixedW - takenKJ) / (heatKJPerK + 3.6*slope)
			}
			gainW := fixedW - slope*foodC
			gainWh += gainW
			cooledKJ += takenKJ
			storedKJ += heatKJPerK * (foodC - wasC)
			meltKg += meltedKg
			if plan.WaterKept && meltedKg > 0 {
				foodC *= heatKJPerK / (heatKJPerK + heat.WaterKJPerKgK*meltedKg)
				waterKg += meltedKg
			}

			counted := i >= d.free
			if d.waiting {
				d.wait(i, foodC, s.LimitC)
			}
			t.hour(foodC, kg > 0, counted)
			if trace != nil {
				trace.add(Hour{Trip: tr.index, Hour: 24*day + i, Clock: clock(i), Month: d.month, CabinC: a.cabinC, FoodC: foodC,
					GainW: gainW, CooledW: takenKJ / 3.6,
					IceKg: kg, WaterKg: waterKg, MeltedKg: meltedKg, Counted: counted})
			}
		}
		ice.kg, ice.frostKJ, ice.waterKg = kg, frostKJ, waterKg
		t.GainWhBy[d.month] += gainWh
		t.MeltKgBy[d.month] += meltKg
		t.GainKJ += 3.6 * gainWh
		t.CooledKJ += cooledKJ
		t.StoredKJ += storedKJ
		t.endDay(d.month)
	}
	t.endTrip(tr)
	t.IceLostKg += ice.kg
	t.IceBoughtLostKg += ice.kg * ice.bought
}
