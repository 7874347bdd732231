package season

import (
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// hold is a unit that holds the box at its aim, ready for a season's hours: the
// box does not move then, and most of what an hour asks is known beforehand.
type hold struct {
	aimC            float64
	openKJ, perKJ   float64 // heat of a litre a second of openings, W, with cabin air of no enthalpy; and per kJ/kg of it
	fanW, standbyW  float64
	panelWp, houseW float64
}

func (s *Setup) hold(r *Refrigerator) hold {
	aim := quantity.Celsius(r.aimC(s))
	dry := heat.ExchangeKJPerM3(0, aim)
	return hold{float64(aim), dry, heat.ExchangeKJPerM3(1, aim) - dry,
		float64(r.Cycle.Condenser), float64(r.Cycle.Standby), float64(s.Power.Panel.Wp), s.Power.HouseW}
}

// heldHours is what hours of a held box come to.
type heldHours struct{ gainWh, unitWh, runHours float64 }

// holds tells whether the next hour may find the box held.
func (r *unitRun) holds(b *bank, d *dayRun, boxC float64) bool {
	off := boxC - r.hold.aimC
	return r.tabled && !r.ByDay && off < heldK && off > -heldK && !b.off && !d.waiting
}

// heldK is how far rounding may take a held box from its aim.
const heldK = 1e-9

// held runs a day's hours from one on for as long as the unit holds the box at its
// aim, and gives the hour after. It does what unitTrip does. It ends before an
// hour in which heat leaves the box, the unit is too small or power runs short.
func (s *Setup) held(d *dayRun, from int, w *walls, leak *leakLine, r *unitRun, b *bank, t *Tally, sum *heldHours) (hour int) {
	h := &r.hold
	openW, perKJ := w.openLPerS*h.openKJ, w.openLPerS*h.perKJ
	stowW := d.wPerK * (s.Goods.StowedC - h.aimC)
	var sunWh, lostWh, spillWh, drawnWh float64
	wh, lowestWh, counted := b.wh, t.LowestWh, 0
	for hour = from; hour < len(d.hours); hour++ {
		a := &d.hours[hour]
		gainW := leak.leakW(a, h.aimC)
		if a.opening {
			gainW += openW + perKJ*a.openKJ
		}
		if hour >= d.from && hour < d.to {
			gainW += stowW
		}
		perCOP, perCapacity, ok := r.holding.At(r.CoolantC(a.cabinC, d.seaC))
		run := gainW * perCapacity
		if !ok || gainW <= 0 || run > 1 {
			break
		}
		needW := gainW * perCOP
		unitW := needW + h.fanW*run + h.standbyW
		if a.motoring || d.shore {
			sup := s.Power.supplyAt(a, clock(hour), d.shore)
			if sup.shore == noShore && wh+sup.surplusW-h.fanW < needW {
				break
			}
			b.wh = wh
			b.step(sup, unitW, t)
			wh, lowestWh = b.wh, min(lowestWh, b.wh)
		} else {
			sunW := h.panelWp * a.wPerWp
			net := sunW - h.houseW - unitW
			if net >= 0 {
				put := (b.fullWh - wh) * b.perYield
				if net < put {
					put = net
					wh += net * b.yield
				} else {
					wh = b.fullWh
				}
				lostWh += put * (1 - b.yield)
				spillWh += net - put
			} else {
				if wh+net < h.fanW+1 { // near its end the bank is left to unitTrip
					break
				}
				wh += net
				drawnWh -= net
				if wh < lowestWh {
					lowestWh = wh
				}
			}
			sunWh += sunW
		}
		sum.gainWh += gainW
		sum.unitWh += unitW
		sum.runHours += run
		if hour >= d.free {
			counted++
		}
		if b.off {
			hour++
			break
		}
	}
	b.wh, t.LowestWh = wh, lowestWh
	t.SunWh += sunWh
	t.LostWh += lostWh
	t.SpillWh += spillWh
	t.DrawnWh += drawnWh
	t.held(h.aimC, hour-from, counted)
	return hour
}
