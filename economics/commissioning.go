package economics

import (
	"math"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// The state in which a new box is first measured: lid shut, nothing in it, the
// air round it at 25 °C.
const (
	testC = 25
	// The box of an ice test while it is read, °C, as the ice holds it.
	// Engineering judgement, from memory.
	testBoxC = 5
	// Futures that a range of commissioning figures is read from.
	commissioned = 400
)

// Commissioning is what to expect of the first measurements of an option as
// fitted: the middle future, and the 10th and 90th percentile of them.
type Commissioning struct {
	// IceTestKg melts in a day in the chilled, shut box, the air round it 25 °C
	// and that in the box 5 °C; BeforeKg is the typical figure before the work.
	IceTestKg   quantity.Range
	BeforeKg    float64
	IceKgPerDay quantity.Range // in use, hottest month aboard
	// The rest counts for a unit: hours from 25 °C to the target, box empty,
	// infinite where it does not get there; the share of a day run at 25 °C, box
	// empty; in the hottest month aboard amperes while running, and Ah a day.
	CoolHours, RunShare, RunningA, AhPerDay quantity.Range
}

// Commission gives what to expect of an option's first measurements; the option
// is as for Case.
func (r *Reckoning) Commission(o *OptionFigures) (Commissioning, error) {
	told, err := r.proposal(o, false)
	if err != nil {
		return Commissioning{}, err
	}
	p, err := r.proposal(o, true)
	if err != nil {
		return Commissioning{}, err
	}
	var ins []Input
	for _, in := range r.Futures.Inputs {
		ins = append(ins, in.Input)
	}
	futures := draw(ins, mayBeBare(&r.Boat, &r.Box), commissioned, searchSeed)
	first := make([]measured, len(futures))
	for k := range futures {
		first[k] = p.measured(&futures[k])
	}
	out := Commissioning{BeforeKg: told.iceTestKg(&Typical)}
	of := func(x func(*measured) float64) quantity.Range { return percentiles(first, x) }
	out.IceTestKg = of(func(m *measured) float64 { return m.testKg })
	out.IceKgPerDay = of(func(m *measured) float64 { return m.iceKg })
	out.CoolHours = of(func(m *measured) float64 { return m.hours })
	out.RunShare = of(func(m *measured) float64 { return m.share })
	out.RunningA = of(func(m *measured) float64 { return m.amps })
	out.AhPerDay = of(func(m *measured) float64 { return m.ah })
	return out, nil
}

// measured is what the first measurements give in one future.
type measured struct {
	testKg, iceKg, share, amps, ah float64
	hours                          float64 // infinite where the unit does not get there
}

func (p *proposal) iceTestKg(f *Future) float64 {
	leakW := float64(p.walls[f.Foam].Total()) * f.Leak * (testC - testBoxC)
	return float64(heat.MeltKgPerDay(quantity.Watt(leakW), heat.DrainCelsius))
}

func (p *proposal) measured(f *Future) measured {
	s := p.setup(f)
	month, target := p.world.aboard, quantity.Celsius(s.TargetC)
	m := measured{testKg: p.iceTestKg(f),
		iceKg: float64(heat.MeltKgPerDay(quantity.Watt(s.Mean(month, s.TargetC).GainW()), heat.DrainCelsius))}
	if p.unit == nil {
		return m
	}
	unit := p.refrigerator(f)
	volts := float64(p.boat.Power.Bank().MeanVolts())
	use := s.Duty(month, unit, s.TargetC)
	m.amps, m.ah = float64(unit.Cycle.PowerW(use.Working))/volts, float64(use.DayWh())/volts
	empty := energy.Gain{Leak: s.Box.Leak.Total(), Out: testC}
	m.share = min(1, unit.Cycle.Duty(empty, target, testC).RunShare)
	bare := heat.BareKJPerK(quantity.Litre(p.volumeL)) * quantity.KilojoulePerKelvin(f.Stow)
	down := unit.Cycle.PullDown(bare, testC, target, empty.At, testC)
	if m.hours = down.Hours; !down.Reached {
		m.hours = math.Inf(1)
	}
	return m
}
