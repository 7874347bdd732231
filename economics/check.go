package economics

import (
	"math"
	"slices"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Check holds what a running unit did against what was to be expected of it in
// the box as told, at the temperatures logged.
type Check struct {
	Lesson RunLesson
	// PromisedAh is a day's charge with its 10th and 90th percentile, PromisedRun
	// the share of the time; PromisedLeak and PromisedEta are what stands behind it.
	PromisedAh, PromisedRun, PromisedLeak, PromisedEta quantity.Range
	TargetC                                            float64
	Causes                                             []Cause // the likeliest first; empty when it did as promised
}

// Cause is a likely cause of a gap between promise and log.
type Cause string

// The causes.
const (
	LidOrFoam  Cause = "lid_or_foam" // the box lets in more than was told
	Condenser  Cause = "condenser"   // its air or water, or the refrigerant's charge
	SetColder  Cause = "thermostat"  // set colder than told
	TooSmall   Cause = "too_small"   // it runs without a pause and the box stays warm
	OtherLoads Cause = "other_loads" // something else is on the meter
	MoreUse    Cause = "use"         // more is opened and stowed than was told
)

// Inside tells whether the charge measured lies within the promise.
func (c *Check) Inside() bool {
	return c.Lesson.AhPerDay >= c.PromisedAh.Low && c.Lesson.AhPerDay <= c.PromisedAh.High
}

// What counts as a gap beside the charge. Engineering judgement, from memory.
const (
	colderK    = 1.0  // the box colder than its target by so much
	noPause    = 0.95 // share of the time
	otherBaseA = 0.25 // drawn while the unit rests
	// An ailing unit may be far less efficient than a sound one: as log-sd. With
	// a sound unit's own range a poor unit would pass for a leaky box.
	ailingLogSD = 0.6
)

// CheckLog holds the log of a running unit against the boat as told. Errors are
// those of Weigh and LearnRunning.
func CheckLog(b Boat, ground climate.Ground, id OptionID, log Log) (Check, error) {
	var c Check
	box, err := Weigh(b, ground)
	if err != nil {
		return c, err
	}
	if c.Lesson, err = learnRunning(b, ground, id, log, ailingLogSD); err != nil {
		return c, err
	}
	w := newWorld(&b, ground)
	p, err := newProposal(&b, nil, &w, box.leakScale(), id, FitOut{})
	if err != nil {
		return c, err
	}
	leak := float64(p.leak().Total())
	c.PromisedLeak = quantity.Exactly(leak)
	if !p.freeStanding() {
		c.PromisedLeak = quantity.Range{Low: float64(box.LeakLow), Typical: float64(box.Leak), High: float64(box.LeakHigh)}
	}
	cycle, setup := p.refrigerator(&Typical).Cycle, p.setup(&Typical)
	usual := energy.EtaOf(p.freeStanding())
	c.PromisedEta = quantity.Range{Low: cycle.Eta * usual.Low / usual.Typical, Typical: cycle.Eta, High: cycle.Eta * usual.High / usual.Typical}
	mean := setup.Mean(int(c.Lesson.From.Month())-1, c.Lesson.BoxC)
	useW, use := mean.OpeningsW+mean.GoodsW+mean.DrinksW, b.Evidence.Use()
	if !slices.ContainsFunc(log.Rows, func(r heat.LogRow) bool { return !r.Shut }) {
		useW = 0
	}
	volts := float64(b.Power.Bank().MeanVolts())
	duty := func(leak, eta, use float64) energy.Duty {
		unit := cycle
		unit.Eta = eta
		gain := energy.Gain{Leak: quantity.WattPerKelvin(leak), Out: quantity.Celsius(c.Lesson.CabinC), Use: quantity.Watt(use * useW)}
		return unit.Duty(gain, quantity.Celsius(c.Lesson.BoxC), quantity.Celsius(c.Lesson.CabinC))
	}
	ah := func(d energy.Duty) float64 { return float64(d.DayWh()) / volts }
	run := func(d energy.Duty) float64 { return min(1, d.RunShare) }
	l, e, u := c.PromisedLeak, c.PromisedEta, quantity.Range{Low: use.Low / use.Typical, Typical: 1, High: use.High / use.Typical}
	spread := func(f func(energy.Duty) float64) quantity.Range {
		at := f(duty(l.Typical, e.Typical, 1))
		ends := func(marks ...float64) float64 {
			sum := 0.0
			for _, x := range marks {
				sum = math.Hypot(sum, math.Log(x/at))
			}
			return math.Exp(sum)
		}
		return quantity.Range{
			Low:     at / ends(f(duty(l.Low, e.Typical, 1)), f(duty(l.Typical, e.High, 1)), f(duty(l.Typical, e.Typical, u.Low))),
			Typical: at,
			High:    at * ends(f(duty(l.High, e.Typical, 1)), f(duty(l.Typical, e.Low, 1)), f(duty(l.Typical, e.Typical, u.High))),
		}
	}
	c.PromisedAh, c.PromisedRun, c.TargetC = spread(ah), spread(run), float64(b.Food.Target)
	c.PromisedRun.High = min(1, c.PromisedRun.High)
	c.causes()
	return c, nil
}

// causes looks for what a gap may come from.
func (c *Check) causes() {
	l := &c.Lesson
	add := func(is bool, cause Cause) {
		if is {
			c.Causes = append(c.Causes, cause)
		}
	}
	more := l.AhPerDay > c.PromisedAh.High
	warm := l.BoxC > c.TargetC+2*colderK
	add(l.BaseA > otherBaseA, OtherLoads)
	add(l.BoxC < c.TargetC-colderK && l.AhPerDay > c.PromisedAh.Typical, SetColder)
	add(warm && l.RunShare >= noPause, TooSmall)
	if !more && !(warm && l.RunShare >= noPause) {
		return
	}
	if l.Told == TellsBoth {
		leaky, poor := l.Leak.Low > c.PromisedLeak.Typical, l.Eta.High < c.PromisedEta.Typical
		add(leaky, LidOrFoam)
		add(poor, Condenser)
		if leaky || poor {
			return
		}
		if l.Eta.Typical/c.PromisedEta.Typical < c.PromisedLeak.Typical/l.Leak.Typical {
			c.Causes = append(c.Causes, Condenser, LidOrFoam, MoreUse)
			return
		}
	}
	c.Causes = append(c.Causes, LidOrFoam, Condenser, MoreUse)
}
