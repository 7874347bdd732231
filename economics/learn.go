package economics

import (
	"errors"
	"fmt"
	"math"
	"time"

	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// How far food brought aboard and lid openings may be from what the answers
// say: the 10th and 90th percentiles. Engineering judgement, from memory.
const leastUse, mostUse = 0.7, 1.4

// Use gives by what the heat of food and openings is to be multiplied, as far
// as the box's logs have shown it, with its 10th and 90th percentiles: a mean
// of logarithms, weighted by the inverse of the variance, of the logs and of
// what would be thought without them.
func (e Evidence) Use() quantity.Range {
	weights, sum := 1/(useLogSD()*useLogSD()), 0.0
	learned := false
	for _, l := range e.Logs {
		if l.UseLogSD <= 0 {
			continue
		}
		w := 1 / float64(l.UseLogSD*l.UseLogSD)
		weights, sum, learned = weights+w, sum+w*math.Log(l.Use), true
	}
	if !learned {
		return quantity.Range{Low: leastUse, Typical: 1, High: mostUse}
	}
	return quantity.Spread(math.Exp(sum/weights), 1/math.Sqrt(weights))
}

// useLogSD is the standard deviation of the logarithm that leastUse and mostUse
// stand for.
func useLogSD() float64 { return quantity.Range{Low: leastUse, High: mostUse}.LogSD() }

// Log is a log kept aboard, and what it cannot say itself.
type Log struct {
	Rows []heat.LogRow
	// Water is what stood in the box in jugs while its temperatures were read,
	// 0 for an empty box; it counts only when WaterTold.
	Water     quantity.Kilogram
	WaterTold bool
}

// Lesson is what a log teaches of a box.
type Lesson struct {
	Fit    heat.Fit
	Record heat.Learnt  // the part worth keeping
	Items  []LessonItem // in the order of the log
	// TooLong counts loads of ice left out because no trip is that long: the
	// ice went home, or overboard. Blurred counts those left out for surer
	// ones: the first ice of a trip, which cools a warm box as well, and ice
	// that was gone when it was looked for.
	TooLong, Blurred int
	// Read counts loads with cabin or box read; others go by the climate.
	Read int
	// Running is what the log of a running unit taught; nil for another log.
	Running *RunLesson
}

// LessonItem is one row of the fit: a load of ice, or a reading.
type LessonItem struct {
	From, To time.Time
	Residual float64 // told less fitted, kg melted or °C of the box
}

// Learn refines leak and use of a complete boat by a log. Where it tells of
// ice, that is what is read, with the temperatures to say how warm cabin and
// box were; else the box must have warmed or cooled by itself, with lid
// closed, no ice and the unit off.
//
// A log that cannot tell the answer is an error that says what is missing.
func Learn(b Boat, ground climate.Ground, log Log) (Lesson, error) {
	b.Evidence.Logs = nil // what was learned before is no part of what the answers expect
	w := newWorld(&b, ground)
	p, err := asDrawn(&b, &w)
	if err != nil {
		return Lesson{}, fmt.Errorf("box: %w", err)
	}
	for _, row := range log.Rows {
		if row.Ice > 0 || row.LeftRead {
			return p.learnIce(log.Rows)
		}
	}
	if hasUnit(log.Rows) {
		return learnUnit(b, ground, log)
	}
	return p.learnTemperatures(log)
}

// learnUnit keeps what the log of the small unit teaches of the box.
func learnUnit(b Boat, ground climate.Ground, log Log) (Lesson, error) {
	l, err := LearnRunning(b, ground, SmallUnit, log)
	if err != nil {
		return Lesson{}, err
	}
	sd := l.Leak.LogSD()
	return Lesson{Running: &l, Read: l.Rows, Record: heat.Learnt{
		Of: heat.OfRunning, Rows: l.Rows, UA: quantity.WattPerKelvin(l.Leak.Typical), LogSD: quantity.Fraction(sd),
		From: l.From.Format(time.DateOnly), To: l.To.Format(time.DateOnly),
	}}, nil
}

// tripSlackH is how much longer than a trip a load of ice may serve: bought on
// the way there, looked at on the way home. Engineering judgement, from memory.
const tripSlackH = 12

// pullDownSD is how far the heat of a warm box and what stands in it may be
// from the guess, as a share of it. Engineering judgement, from memory.
const pullDownSD = 0.5

func (p *proposal) learnIce(rows []heat.LogRow) (Lesson, error) {
	reader := p.loadReader(rows)
	var tooLong int
	var sure, all []iceLoad
	var last time.Time // end of the load before
	for _, s := range heat.IceLoads(rows) {
		first := !s.From.Equal(last)
		last = s.To
		if s.To.Sub(s.From).Hours() > 24*p.boat.Cruising.TripNights+tripSlackH {
			tooLong++
			continue
		}
		if s.Melted() < 0 {
			return Lesson{}, fmt.Errorf("the stay from line %d on: %.0f %% of its ice was left at the end, more than there was", s.Line, 100*float64(s.Left/s.Ice))
		}
		all = append(all, reader.read(s, first))
		if !first && !s.Gone {
			sure = append(sure, all[len(all)-1])
		}
	}
	if len(all) == 0 && tooLong > 0 {
		return Lesson{}, fmt.Errorf("the log's %d stays of ice are all longer than a trip of %g nights. Add a column 'left' with the ice found at the end of a trip",
			tooLong, p.boat.Cruising.TripNights)
	}
	l, err := p.fitIce(sure)
	if err != nil {
		if l, err = p.fitIce(all); err != nil {
			return Lesson{}, err
		}
	}
	l.Blurred = len(all) - len(l.Items)
	l.TooLong = tooLong
	return l, nil
}

func (p *proposal) fitIce(loads []iceLoad) (Lesson, error) {
	var l Lesson
	var spells []heat.Spell
	var guessed, all float64
	for _, s := range loads {
		spells = append(spells, s.spell)
		guessed, all = guessed+s.pullDownKJ, all+float64(s.spell.Melted)*heat.MeltKJPerKg(p.drainCelsius())
		if s.read {
			l.Read++
		}
		l.Items = append(l.Items, LessonItem{From: s.From, To: s.To})
	}
	var err error
	if l.Fit, err = fitSpells(spells, p.drainCelsius()); err != nil {
		return Lesson{}, err
	}
	l.Fit.LogSD = math.Hypot(l.Fit.LogSD, pullDownSD*guessed/all)
	l.keep(heat.OfIce)
	return l, nil
}

// fitSpells takes the surer of two ways to read spells: leak and use apart, or
// the leak alone with the use as the answers say. Where neither tells, the
// second says what is missing.
func fitSpells(spells []heat.Spell, drain quantity.Celsius) (heat.Fit, error) {
	apart, errApart := heat.LearnIce(spells, drain)
	alone, err := heat.LearnIceOfKnownUse(spells, drain, quantity.Fraction(useLogSD()))
	if errApart == nil && (err != nil || apart.UASE/apart.UA < alone.UASE/alone.UA) {
		return apart, nil
	}
	return alone, err
}

// linerSD is how far the heat capacity of liner and inner foam may be from the
// guess, as a share of it. Engineering judgement, from memory.
const linerSD = 0.4

func (p *proposal) learnTemperatures(log Log) (Lesson, error) {
	readings := heat.Readings(log.Rows)
	if len(readings) == 0 {
		return Lesson{}, errors.New("the log has no row with both box and cabin, and no ice. Write both temperatures into each row, or ice and its dates")
	}
	if !log.WaterTold {
		return Lesson{}, errors.New("the log tells how fast the box warmed, not how much had to warm. Give the weight of the water that stood in it, 0 kg for an empty box")
	}
	liner := float64(heat.BareKJPerK(quantity.Litre(p.volumeL)))
	capacity := liner + float64(log.Water)*heat.WaterKJPerKgK
	fit, err := heat.LearnTemperatures(readings, quantity.KilojoulePerKelvin(capacity))
	if err != nil {
		return Lesson{}, err
	}
	fit.LogSD = math.Hypot(fit.LogSD, linerSD*liner/capacity)
	l := Lesson{Fit: fit, Read: len(readings)}
	for _, r := range readings {
		l.Items = append(l.Items, LessonItem{From: r.At, To: r.At})
	}
	l.keep(heat.OfTemperatures)
	return l, nil
}

// keep files residuals and the part worth keeping.
func (l *Lesson) keep(of heat.LogKind) {
	for i := range l.Items {
		l.Items[i].Residual = l.Fit.Residuals[i]
	}
	l.Record = heat.Learnt{
		Of: of, Rows: len(l.Items), UA: l.Fit.UA, LogSD: quantity.Fraction(l.Fit.LogSD),
		From: l.Items[0].From.Format(time.DateOnly), To: l.Items[len(l.Items)-1].To.Format(time.DateOnly),
	}
	if l.Fit.UseLogSD > 0 {
		l.Record.Use, l.Record.UseLogSD = l.Fit.Use, quantity.Fraction(l.Fit.UseLogSD)
	}
}

// WithLog gives the evidence with a log's lesson added. One of the same kind
// from some of the same days makes way: the same days must not count twice.
func (e Evidence) WithLog(l heat.Learnt) Evidence {
	var kept []heat.Learnt
	for _, old := range e.Logs {
		if !old.Overlaps(l) {
			kept = append(kept, old)
		}
	}
	e.Logs = append(kept, l)
	return e
}
