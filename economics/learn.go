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

// z90 is the 90th percentile of the standard normal distribution.
const z90 = 1.2815515655446004

// Use gives by what the heat of food and openings is to be multiplied, as far
// as the box's logs have shown it, with its 10th and 90th percentiles: a mean
// of logarithms, weighted by the inverse of the variance, of the logs and of
// what would be thought without them.
func (e Evidence) Use() quantity.Range {
	logSD := math.Log(mostUse/leastUse) / 2 / z90
	weights, sum := 1/(logSD*logSD), 0.0
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
	typical, wide := math.Exp(sum/weights), math.Exp(z90/math.Sqrt(weights))
	return quantity.Range{Low: typical / wide, Typical: typical, High: typical * wide}
}

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
	Record heat.Learnt // the part worth keeping
	Items  []LessonItem
	// LeftOut counts stays of ice that no trip is long enough for: the ice
	// went home, or overboard.
	LeftOut int
	// Read counts stays with cabin or box read; others go by the climate.
	Read int
}

// LessonItem is one row of the fit: a stay of ice, or a reading.
type LessonItem struct {
	From, To time.Time
	Line     int     // of the log, at its start; 0 for a reading
	Told     float64 // kg melted, or °C of the box
	Residual float64 // told less fitted, in the same unit
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
	return p.learnTemperatures(log)
}

// tripSlackH is how much longer than a trip a stay of ice may be: bought on
// the way there, looked at on the way home. Engineering judgement, from memory.
const tripSlackH = 12

func (p *proposal) learnIce(rows []heat.LogRow) (Lesson, error) {
	reader := p.spellReader(rows)
	var l Lesson
	var spells []heat.Spell
	var last time.Time // end of the stay before
	for _, s := range heat.IceStays(rows) {
		if s.To.Sub(s.From).Hours() > 24*p.boat.Cruising.TripNights+tripSlackH {
			l.LeftOut++
			continue
		}
		if s.Melted() < 0 {
			return Lesson{}, fmt.Errorf("line %d: %.3g kg of ice were left of %.3g kg; want no more left than there was", s.Line, float64(s.Left), float64(s.Ice))
		}
		spell, read := reader.spell(s, !s.From.Equal(last))
		last = s.To
		if read {
			l.Read++
		}
		spells = append(spells, spell)
		l.Items = append(l.Items, LessonItem{From: s.From, To: s.To, Line: s.Line, Told: float64(s.Melted())})
	}
	if len(spells) == 0 && l.LeftOut > 0 {
		return Lesson{}, fmt.Errorf("the log's %d stays of ice are all longer than a trip of %g nights; want a column 'left' with the ice found at the end of a trip",
			l.LeftOut, p.boat.Cruising.TripNights)
	}
	var err error
	if l.Fit, err = heat.LearnIce(spells, p.drainCelsius()); err != nil {
		return Lesson{}, err
	}
	l.keep(heat.OfIce)
	return l, nil
}

func (p *proposal) drainCelsius() quantity.Celsius {
	if p.boat.Box.Drain == heat.NoDrain {
		return p.boat.Food.Target
	}
	return heat.DrainCelsius
}

// spellReader tells what a stay of ice went through.
type spellReader struct {
	p     *proposal
	rows  []heat.LogRow
	use   [12]float64 // W of openings and goods, by month
	sea   [12]float64
	cabin [12][24]float64
	bareK quantity.KilojoulePerKelvin
}

func (p *proposal) spellReader(rows []heat.LogRow) *spellReader {
	r := &spellReader{p: p, rows: rows, bareK: heat.BareKJPerK(quantity.Litre(p.volumeL))}
	s := p.setup(&Typical)
	for m := range 12 {
		mean := s.Mean(m, s.TargetC)
		r.use[m], r.sea[m] = mean.OpeningsW+mean.GoodsW, mean.SeaC
		for h := range 24 {
			r.cabin[m][h] = s.Months[m].OutdoorC[h] + float64(s.CabinOffset)
		}
	}
	return r
}

func (r *spellReader) cabinAt(t time.Time) float64 { return r.cabin[t.Month()-1][t.Hour()] }

// spell gives a stay's hours, and whether cabin or box were read in it. The
// climate says how warm the cabin was, corrected by what was read of it; the
// food counts at the target where the box was not read. The first stay of a
// trip pays for a warm box, and starts from the freezer when the ice does.
func (r *spellReader) spell(s heat.IceStay, first bool) (heat.Spell, bool) {
	b := r.p.boat
	warmer, food, cabins, boxes := 0.0, 0.0, 0, 0
	for _, row := range r.rows {
		if row.At.Before(s.From) || row.At.After(s.To) {
			continue
		}
		if row.CabinRead {
			warmer += float64(row.Cabin) - r.cabinAt(row.At)
			cabins++
		}
		if row.BoxRead {
			food += float64(row.Box)
			boxes++
		}
	}
	if cabins > 0 {
		warmer /= float64(cabins)
	}
	if boxes == 0 {
		food, boxes = float64(b.Food.Target), 1
	} else {
		cabins++ // something was read
	}
	food /= float64(boxes)

	spell := heat.Spell{Hours: s.To.Sub(s.From).Hours()}
	steps := max(1, int(math.Round(spell.Hours)))
	for i := range steps {
		t := s.From.Add(time.Duration((float64(i) + 0.5) / float64(steps) * float64(s.To.Sub(s.From))))
		m := int(t.Month()) - 1
		out := r.p.walls.OutsideC(quantity.Celsius(r.cabinAt(t)+warmer), quantity.Celsius(r.sea[m]), false)
		spell.Difference += quantity.Kelvin((float64(out) - food) / float64(steps))
		spell.Use += quantity.Watt(r.use[m] / float64(steps))
	}
	extraKJ := 0.0
	if first && b.Ice.FirstLoad == FromHome {
		extraKJ += float64(heat.FreezerBonusKJ(s.Ice, heat.FreezerCelsius))
	}
	if first && b.Cruising.BeforeTrip == Warm {
		extraKJ -= float64(r.bareK) * max(0, r.cabinAt(s.From)+warmer-food)
	}
	spell.Melted = max(0, s.Melted()+quantity.Kilogram(extraKJ/heat.MeltKJPerKg(r.p.drainCelsius())))
	spell.Use = max(0, spell.Use)
	return spell, cabins > 0
}

// linerSD is how far the heat capacity of liner and inner foam may be from the
// guess, as a share of it. Engineering judgement, from memory.
const linerSD = 0.4

func (p *proposal) learnTemperatures(log Log) (Lesson, error) {
	readings := heat.Readings(log.Rows)
	if len(readings) == 0 {
		return Lesson{}, errors.New("the log has no row with both box and cabin, and no ice; want both temperatures in each row, or ice and its dates")
	}
	if !log.WaterTold {
		return Lesson{}, errors.New("the log tells how fast the box warmed, not how much had to warm; want the weight of the water that stood in it, 0 kg for an empty box")
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
		l.Items = append(l.Items, LessonItem{From: r.At, To: r.At, Told: float64(r.Box)})
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
