package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// steady is what month means say of a proposal, at typical inputs: the figures
// that can be checked by hand.
type steady struct {
	hottest       season.MonthMean // the hottest month aboard, box at its target
	iceKgPerDay   float64          // in that month
	iceCapacityKg float64
	runShare      float64 // of a unit, in that month
	unitWhPerDay  float64
	plateC        float64
	runningA      float64 // current while the unit runs
}

func (p *proposal) steady() *steady {
	s := p.setup(&Typical)
	month := p.world.aboard
	out := &steady{hottest: s.Mean(month, s.TargetC)}
	out.iceKgPerDay = float64(heat.MeltKgPerDay(quantity.Watt(out.hottest.GainW()), heat.DrainCelsius))
	out.iceCapacityKg = p.iceCapacityKg()
	if p.unit == nil {
		return out
	}
	r := p.refrigerator(&Typical)
	duty := s.Duty(month, r, s.TargetC)
	out.runShare = duty.RunShare
	out.unitWhPerDay = float64(duty.DayWh())
	out.plateC = float64(duty.Working.Te)
	out.runningA = float64(r.Cycle.PowerW(duty.Working)) / float64(p.boat.Power.Bank().MeanVolts())
	return out
}

// cableDropShare gives the part of the system's voltage that the unit's cable
// loses while it runs.
func (s *steady) cableDropShare(run quantity.Metre, size quantity.SquareMillimetre, volts quantity.Volt) float64 {
	return float64(energy.Cable{Run: run, Size: size}.DropShare(quantity.Ampere(s.runningA), volts))
}
