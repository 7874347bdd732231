package economics

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// RunLesson is what the log of a running unit teaches.
type RunLesson struct {
	From, To time.Time
	Rows     int // with the box's temperature
	Days     float64
	// Leak and Eta are the box's leak, W/K, and the unit's share of the ideal
	// efficiency, each with its 10th and 90th percentile.
	Leak, Eta quantity.Range
	// Told says which of the two the log can tell by itself.
	Told RunTold
	// BoxC, CabinC are means over the log; RunShare is of the time, -1 where the
	// log does not show pauses.
	BoxC, CabinC, RunShare float64
	AhPerDay               float64
	// BaseA is what is drawn while the unit rests: the least tenth of the steps.
	BaseA float64
	// SpellsOff counts stretches in which the box warmed with the unit off.
	SpellsOff int
	// Gaps counts holes in the log that were left out.
	Gaps int
}

// RunTold is what the log of a running unit can tell.
type RunTold string

// The kinds.
const (
	TellsBoth  RunTold = "both"  // leak and efficiency apart
	TellsRatio RunTold = "ratio" // only one over the other: the usual efficiency tells the leak
)

// Bounds of a log of a running unit. Engineering judgement, from memory.
const (
	leastRunDays  = 1.0
	fineStep      = 20 * time.Minute // up to which a log shows a unit's pauses
	gapStep       = 6 * time.Hour    // past which a stretch is left out
	counterStep   = 30 * time.Hour   // the same, between two readings of a counter
	stuckRows     = 200              // alike in a row, for longer than stuckTime: a sensor that is stuck
	stuckTime     = 30 * time.Hour
	ratioModelSD  = 0.08 // of the plate and condenser that nobody measured, as log-sd
	contentsLogSD = 0.35 // of the heat capacity of a box in use, where nobody weighed water
)

// runStep is what passed between two rows.
type runStep struct {
	at                      time.Time // its end
	hours, box, cabin, rise float64   // h, °C, °C, K over the step
	watts                   float64   // mean electrical power
	ideal                   float64   // Carnot's efficiency meanwhile
}

// hasUnit tells whether a log holds anything of a running unit.
func hasUnit(rows []heat.LogRow) bool {
	return slices.ContainsFunc(rows, func(r heat.LogRow) bool { return r.AmpsRead || r.DrawnRead || r.RunRead })
}

// LearnRunning finds leak and efficiency from the log of a running unit: the
// small one where id is SmallUnit. The log's water is what stood in jugs
// in the box all the while. A log that cannot tell either is an
// error that says what is missing.
//
// Over every step the box's heat balances: C·dT/dt = leak·(cabin - box) -
// eta·ideal·power. Where steps are fine enough to show the unit's pauses
// the quiet nights give leak and eta for the heat capacity C. What C is not sure of is taken from the usual efficiency. Coarse
// steps tell only leak over eta, with food and openings as the answers say.
func LearnRunning(b Boat, ground climate.Ground, id OptionID, log Log) (RunLesson, error) {
	return learnRunning(b, ground, id, log, 0)
}

// learnRunning is LearnRunning with the log-sd of the unit's efficiency, 0 for
// that of a sound unit.
func learnRunning(b Boat, ground climate.Ground, id OptionID, log Log, etaSD float64) (RunLesson, error) {
	rows := log.Rows
	w := newWorld(&b, ground)
	p, err := newProposal(&b, nil, &w, 1, id, FitOut{})
	if err != nil {
		return RunLesson{}, err
	}
	l, steps, err := p.runSteps(rows)
	if err != nil {
		return l, err
	}
	setup := p.setup(&Typical)
	useW := 0.0
	shut := !slices.ContainsFunc(rows, func(r heat.LogRow) bool { return !r.Shut })
	if !shut {
		mean := setup.Mean(int(l.From.Month())-1, l.BoxC)
		useW = mean.OpeningsW + mean.GoodsW + mean.DrinksW
	}
	capacity, capacitySD := setup.Box.HeatKJPerK, contentsLogSD
	if log.WaterTold {
		liner := float64(heat.BareKJPerK(quantity.Litre(p.volumeL)))
		capacity = liner + float64(log.Water)*heat.WaterKJPerKgK
		capacitySD = linerSD * liner / capacity
	}
	usual := energy.EtaOf(p.freeStanding())
	if etaSD == 0 {
		etaSD = usual.LogSD()
	}
	fine := median(steps, func(s runStep) float64 { return s.hours }) <= fineStep.Hours()
	if fine && l.SpellsOff >= leastStretches {
		if leak, eta, sdLeak, sdEta, ok := balance(quiet(steps, shut), capacity); ok {
			// ln C moves both alike; the usual efficiency holds it.
			shift := math.Log(usual.Typical / eta)
			weight := capacitySD * capacitySD / (capacitySD*capacitySD + etaSD*etaSD)
			scale := math.Exp(weight * shift)
			sd := math.Sqrt(capacitySD * capacitySD * etaSD * etaSD / (capacitySD*capacitySD + etaSD*etaSD))
			l.Told, l.Leak, l.Eta = TellsBoth, quantity.Spread(leak*scale, math.Hypot(sd, sdLeak)), quantity.Spread(eta*scale, math.Hypot(sd, math.Hypot(sdEta, ratioModelSD)))
			return l, nil
		}
	}
	var moved, driven, hours float64
	for _, s := range steps {
		moved += s.watts * s.ideal * s.hours // times eta: heat taken out, Wh
		driven += (s.cabin - s.box) * s.hours
		hours += s.hours
	}
	if driven <= 0 || moved <= 0 {
		return l, errors.New("the box was no cooler than the cabin, or the unit took nothing. Bring a log of a unit that runs")
	}
	stored := capacity / 3.6 * (steps[len(steps)-1].box - steps[0].box)
	leakAt := func(eta float64) float64 { return (eta*moved + stored - useW*hours) / driven }
	leak := leakAt(usual.Typical)
	if leak <= 0 {
		return l, fmt.Errorf("food and openings alone would take more than the unit did (%.0f Wh a day). Log all that the unit draws", l.AhPerDay*float64(p.boat.Power.Volts))
	}
	useSD := useW * hours / driven * useLogSD() / leak
	sd := math.Hypot(math.Hypot(etaSD*usual.Typical*moved/driven/leak, useSD), ratioModelSD)
	l.Told, l.Leak, l.Eta = TellsRatio, quantity.Spread(leak, sd), usual.Range
	return l, nil
}

func median(steps []runStep, f func(runStep) float64) float64 {
	xs := make([]float64, len(steps))
	for i, s := range steps {
		xs[i] = f(s)
	}
	slices.Sort(xs)
	return xs[len(xs)/2]
}

// runSteps reads the rows as steps, and what the log is as a whole.
func (p *proposal) runSteps(rows []heat.LogRow) (RunLesson, []runStep, error) {
	var l RunLesson
	rows = slices.DeleteFunc(slices.Clone(rows), func(r heat.LogRow) bool { return !r.BoxRead })
	if len(rows) < 10 {
		return l, nil, fmt.Errorf("the log has %d rows with the box's temperature. It takes ten or more", len(rows))
	}
	if err := soundRows(rows); err != nil {
		return l, nil, err
	}
	cycle, setup := p.refrigerator(&Typical).Cycle, p.setup(&Typical)
	volts := float64(p.boat.Power.Bank().MeanVolts())
	l.From, l.To, l.Rows = rows[0].At, rows[len(rows)-1].At, len(rows)
	var steps []runStep
	var drawn []float64
	var hours, box, cabin, wh, running float64
	off := 0
	for i := 1; i < len(rows); i++ {
		a, b := &rows[i-1], &rows[i]
		s := runStep{at: b.At, hours: b.At.Sub(a.At).Hours(), box: float64(a.Box+b.Box) / 2, rise: float64(b.Box - a.Box)}
		if s.hours <= 0 {
			continue
		}
		counted := a.DrawnRead && b.DrawnRead // a counter bridges a day
		if s.hours > gapStep.Hours() && !(counted && s.hours <= counterStep.Hours()) {
			l.Gaps++
			continue
		}
		switch {
		case a.CabinRead && b.CabinRead:
			s.cabin = float64(a.Cabin+b.Cabin) / 2
		case b.CabinRead:
			s.cabin = float64(b.Cabin)
		default:
			s.cabin = setup.Mean(int(b.At.Month())-1, s.box).CabinC
		}
		work := cycle.Working(quantity.Celsius(s.box), quantity.Celsius(s.cabin))
		watts, told := 0.0, true
		switch {
		case a.DrawnRead && b.DrawnRead && b.Drawn >= a.Drawn:
			watts = float64(b.Drawn-a.Drawn) * volts / s.hours
		case b.AmpsRead:
			watts = float64(b.Amps) * volts
		case b.RunRead:
			watts = float64(b.Run) * float64(cycle.PowerW(work))
		default:
			told = false // also where a counter was set back
		}
		if !told {
			l.Gaps++
			continue
		}
		compressor := max(0, watts-float64(cycle.Standby))
		if compressor > 0.5 {
			share := compressor / float64(cycle.PowerW(work))
			compressor = max(0, compressor-min(1, share)*float64(cycle.Condenser))
			running += s.hours * min(1, share)
			off = 0
		} else if off++; off == 2 {
			l.SpellsOff++
		}
		s.watts, s.ideal = compressor, work.COP/cycle.Eta
		steps, drawn = append(steps, s), append(drawn, watts)
		hours, box, cabin, wh = hours+s.hours, box+s.box*s.hours, cabin+s.cabin*s.hours, wh+watts*s.hours
	}
	if hours < 24*leastRunDays {
		return l, nil, fmt.Errorf("the log holds %.0f hours with box and unit. It takes a day or more", hours)
	}
	l.Days, l.BoxC, l.CabinC = hours/24, box/hours, cabin/hours
	l.AhPerDay, l.RunShare = wh/volts/l.Days, running/hours
	slices.Sort(drawn)
	if median(steps, func(s runStep) float64 { return s.hours }) <= fineStep.Hours() {
		if base, full := drawn[len(drawn)/10], drawn[len(drawn)*9/10]; base < full/2 { // else it never rests
			l.BaseA = base / volts
		}
	}
	return l, steps, nil
}

// soundRows refuses a sensor that is stuck and columns that are swapped.
func soundRows(rows []heat.LogRow) error {
	if err := stuck(rows, "box", func(r heat.LogRow) (float64, bool) { return float64(r.Box), r.BoxRead }); err != nil {
		return err
	}
	if err := stuck(rows, "cabin", func(r heat.LogRow) (float64, bool) { return float64(r.Cabin), r.CabinRead }); err != nil {
		return err
	}
	warmer, seen := 0, 0
	for _, r := range rows {
		if r.CabinRead {
			seen++
			if r.Box > r.Cabin {
				warmer++
			}
		}
	}
	if seen > 0 && warmer > seen/2 {
		return fmt.Errorf("line %d, box: the box is warmer than the cabin in %d of %d rows. Are the two columns the wrong way round?", rows[0].Line, warmer, seen)
	}
	return nil
}

// stuck refuses a sensor that shows one figure for longer than anything aboard
// stays at one temperature.
func stuck(rows []heat.LogRow, name string, read func(heat.LogRow) (float64, bool)) error {
	first, alike := 0, 0
	for i, r := range rows {
		now, ok := read(r)
		before, had := read(rows[first])
		if !ok || !had || now != before {
			first, alike = i, 0
		}
		if alike++; alike > stuckRows && r.At.Sub(rows[first].At) > stuckTime {
			return fmt.Errorf("line %d, %s: the figure is the same in all %d rows from line %d on. Is the sensor stuck?", r.Line, name, alike, rows[first].Line)
		}
	}
	return nil
}

// sums are the normal equations of one stretch.
type sums struct{ xx, zz, xz, xy, zy float64 }

func (a sums) plus(b sums, sign float64) sums {
	return sums{a.xx + sign*b.xx, a.zz + sign*b.zz, a.xz + sign*b.xz, a.xy + sign*b.xy, a.zy + sign*b.zy}
}

func (a sums) solve() (leak, eta float64, ok bool) {
	det := a.xx*a.zz - a.xz*a.xz
	if det <= 1e-6*a.xx*a.zz {
		return 0, 0, false
	}
	leak, eta = (a.xy*a.zz-a.zy*a.xz)/det, (a.zy*a.xx-a.xy*a.xz)/det
	return leak, eta, leak > 0 && eta > 0
}

// balance fits leak and eta to stretches of quiet steps: C·(T - T0) = leak·(sum of
// difference x time) - eta·(sum of ideal x power x time), with a T0 of its own
// for each stretch, as the noise is in the readings and not in their changes. The
// standard errors are of the jackknife over stretches (Efron & Tibshirani 1993,
// ch. 11), so that what differs from night to night is in them.
func balance(stretches [][]runStep, capacityKJPerK float64) (leak, eta, sdLeak, sdEta float64, ok bool) {
	var parts []sums
	var all sums
	for _, stretch := range stretches {
		n := float64(len(stretch) + 1)
		x, z, y := make([]float64, len(stretch)+1), make([]float64, len(stretch)+1), make([]float64, len(stretch)+1)
		var mx, mz, my float64
		for i, s := range stretch {
			x[i+1], z[i+1], y[i+1] = x[i]+(s.cabin-s.box)*s.hours, z[i]-s.watts*s.ideal*s.hours, y[i]+capacityKJPerK/3.6*s.rise
			mx, mz, my = mx+x[i+1]/n, mz+z[i+1]/n, my+y[i+1]/n
		}
		var one sums
		for i := range x {
			a, b, c := x[i]-mx, z[i]-mz, y[i]-my
			one = one.plus(sums{a * a, b * b, a * b, a * c, b * c}, 1)
		}
		parts, all = append(parts, one), all.plus(one, 1)
	}
	if len(parts) < leastStretches {
		return 0, 0, 0, 0, false
	}
	if leak, eta, ok = all.solve(); !ok {
		return 0, 0, 0, 0, false
	}
	var leaks, etas []float64
	for _, part := range parts {
		l, e, fine := all.plus(part, -1).solve()
		if !fine {
			return 0, 0, 0, 0, false
		}
		leaks, etas = append(leaks, math.Log(l)), append(etas, math.Log(e))
	}
	return leak, eta, jackknife(leaks), jackknife(etas), true
}

// leastStretches is the fewest nights from which leak and efficiency are told
// apart. Engineering judgement, from memory.
const leastStretches = 4

func jackknife(xs []float64) float64 {
	n, mean, sum := float64(len(xs)), 0.0, 0.0
	for _, x := range xs {
		mean += x / n
	}
	for _, x := range xs {
		sum += (x - mean) * (x - mean)
	}
	return math.Sqrt((n - 1) / n * sum)
}

// quiet cuts the steps into stretches in which nothing is put in and the lid is
// shut: nights from 23 to 6 o'clock, or, where the log says that it stays shut,
// twelve hours each. A gap ends a stretch, and one of under four hours is left out.
func quiet(steps []runStep, shut bool) [][]runStep {
	var out [][]runStep
	var now []runStep
	hours := 0.0
	end := func() {
		if hours >= 4 && len(now) >= 8 {
			out = append(out, now)
		}
		now, hours = nil, 0
	}
	for i, s := range steps {
		h := s.at.Hour()
		if !shut && h >= 6 && h < 23 || i > 0 && s.at.Sub(steps[i-1].at).Hours() > 1.5*s.hours+0.01 || shut && hours >= 12 {
			end()
		}
		if shut || h < 6 || h >= 23 {
			now, hours = append(now, s), hours+s.hours
		}
	}
	end()
	return out
}
