package heat

import (
	"errors"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/mat"

	"coldreckon/economics/quantity"
)

// Spell is a stretch of hours over which a known weight of ice melted.
type Spell struct {
	Hours      float64           // > 0
	Melted     quantity.Kilogram // >= 0
	Difference quantity.Kelvin   // mean air outside less mean food temperature
	Use        quantity.Watt     // mean heat of openings and goods that the model expects, >= 0; 0 with the lid closed
}

// Reading is one look at the thermometers of a box that holds no melting ice
// and whose unit is off.
type Reading struct {
	At         time.Time
	Box, Cabin quantity.Celsius
}

// Fit is what a log teaches by least squares.
type Fit struct {
	UA, UASE quantity.WattPerKelvin // leak, over 0, and its standard error
	// Use multiplies the heat of use that the model expects; it is 1 with
	// standard error 0 where the log holds no use to learn from.
	Use, UseSE float64
	// Residuals are what the fit leaves unexplained, one per row of the log:
	// kg of ice of a spell, K of box temperature of a reading.
	Residuals  []float64
	ResidualSD float64 // their standard deviation, in the same unit
	LogSD      float64 // of UA: its standard error and what no log can show
	UseLogSD   float64 // of Use likewise; 0 where nothing was learned of it
}

// LogKind is what a log was kept of.
type LogKind string

// The kinds of log.
const (
	OfIce          LogKind = "ice"
	OfTemperatures LogKind = "temperatures"
	OfRunning      LogKind = "running" // of a unit at work
)

// Learnt is what a log has taught, in the few figures worth keeping.
type Learnt struct {
	Of       LogKind
	From, To string // its first and last day, as 2025-07-14
	Rows     int    // loads of ice, or readings
	UA       quantity.WattPerKelvin
	LogSD    quantity.Fraction // of UA, > 0
	Use      float64           // multiplier of the heat of use that the model expects; counts only when UseLogSD is over 0
	UseLogSD quantity.Fraction
}

// Estimate gives it as one more view of the leak.
func (l Learnt) Estimate() Estimate { return Estimate{FromLog, l.UA, float64(l.LogSD)} }

// Overlaps reports whether two logs tell of the same thing in the same days,
// and so must not both count.
func (l Learnt) Overlaps(other Learnt) bool {
	return l.Of == other.Of && l.From <= other.To && other.From <= l.To
}

// What a log cannot show of itself, as log-sd of the leak. Engineering
// judgement, from memory.
const (
	logSDIceLog         = 0.15 // temperatures of spells come from the climate, ice left over is guessed
	logSDTemperatureLog = 0.20 // the heat capacity of box and contents is guessed
)

// What a log must hold to be believed. Engineering judgement, from memory.
const (
	leastSpells    = 4
	leastReadings  = 6
	leastWarmingK  = 2
	mostRelativeSE = 0.5
	mostCondition  = 30  // of the columns scaled to one length; spells all alike are beyond it
	mostStep       = 0.5 // between readings, of the time in which the box warms by two thirds
)

// LearnIce refines the leak, and the multiplier of the modelled use, from
// spells of ice whose water left at drain °C: the heat that the ice of a spell
// took up is UA·(difference·hours) + multiplier·(use·hours). Kilograms left
// over or guessed weigh the same in a short spell as in a long one.
//
// A log that cannot tell the answer is an error that says what is missing.
// Food is warmed by the same difference as the walls, so that only spells of
// other habits, or with the lid kept shut, tell the two apart; where there are
// none, LearnIceOfKnownUse still tells the leak.
func LearnIce(spells []Spell, drain quantity.Celsius) (Fit, error) {
	c, err := columnsOf(spells, drain)
	if err != nil {
		return Fit{}, err
	}
	columns := [][]float64{c.leak}
	if c.inUse {
		columns = append(columns, c.use)
	}
	l, err := leastSquares(columns, c.melted)
	if err != nil {
		low, high := differences(spells)
		return Fit{}, fmt.Errorf("leak and use cannot be told apart: in every spell the air was much the same over the food, %.3g to %.3g K. It takes spells in cooler and warmer weather, or some with the lid kept shut",
			low, high)
	}
	fit := l.fit(0)
	if c.inUse {
		fit.Use, fit.UseSE = l.value[1], l.se[1]
	}
	if err := fit.believable(); err != nil {
		return Fit{}, err
	}
	if fit.Use < 0 {
		return Fit{}, errors.New("by this log food and openings would bring no heat. Look at weights and dates again, or log spells that differ more in weather and use")
	}
	fit.LogSD = math.Hypot(float64(fit.UASE/fit.UA), logSDIceLog)
	// Of a multiplier that may as well be nothing the log has not taught.
	if c.inUse && fit.UseSE <= mostRelativeSE*fit.Use {
		fit.UseLogSD = math.Hypot(fit.UseSE/fit.Use, logSDIceLog)
	}
	return fit, nil
}

// LearnIceOfKnownUse refines the leak alone, from spells whose use is known but
// for its standard deviation, useSD as a share of it: what the modelled use
// melted is taken off, and its doubt is part of the leak's standard error.
//
// A log that cannot tell the answer is an error that says what is missing.
func LearnIceOfKnownUse(spells []Spell, drain quantity.Celsius, useSD quantity.Fraction) (Fit, error) {
	c, err := columnsOf(spells, drain)
	if err != nil {
		return Fit{}, err
	}
	rest := make([]float64, len(c.melted))
	var together, alone float64
	for i, kg := range c.melted {
		rest[i] = kg - c.use[i]
		together, alone = together+c.leak[i]*c.use[i], alone+c.leak[i]*c.leak[i]
	}
	l, err := leastSquares([][]float64{c.leak}, rest)
	if err != nil {
		return Fit{}, errors.New("in every spell the air was as cold as the food. It takes spells in warmer weather")
	}
	ofUse := float64(useSD) * together / alone
	l.se[0] = math.Hypot(l.se[0], ofUse)
	fit := l.fit(0)
	if fit.UA > 0 && ofUse > mostRelativeSE*float64(fit.UA) {
		return Fit{}, fmt.Errorf("food and openings melt so much of the ice that the leak is known only to %.0f %%. It takes %.0f %% or better: log some spells with the lid kept shut",
			100*ofUse/float64(fit.UA), 100*mostRelativeSE)
	}
	if err := fit.believable(); err != nil {
		return Fit{}, err
	}
	fit.LogSD = math.Hypot(float64(fit.UASE/fit.UA), logSDIceLog)
	return fit, nil
}

// iceColumns is what spells come to in kg of ice: by 1 W/K of leak, by the use
// that the model expects, and melted.
type iceColumns struct {
	leak, use, melted []float64
	inUse             bool
}

func columnsOf(spells []Spell, drain quantity.Celsius) (iceColumns, error) {
	perKgKJ := MeltKJPerKg(drain)
	n := len(spells)
	c := iceColumns{leak: make([]float64, n), use: make([]float64, n), melted: make([]float64, n)}
	for i, s := range spells {
		if err := allFinite("log of ice", s.Hours, float64(s.Melted), float64(s.Difference), float64(s.Use)); err != nil {
			return c, err
		}
		if !(s.Hours > 0) || s.Melted < 0 || s.Use < 0 {
			return c, fmt.Errorf("spell %d: %g kg of ice in %g h; want hours over 0 and no negative figure", i+1, float64(s.Melted), s.Hours)
		}
		c.leak[i] = float64(s.Difference) * s.Hours * 3.6 / perKgKJ
		c.use[i] = float64(s.Use) * s.Hours * 3.6 / perKgKJ
		c.melted[i] = float64(s.Melted)
		c.inUse = c.inUse || s.Use > 0
	}
	if n < leastSpells {
		spells := "spells"
		if n == 1 {
			spells = "spell"
		}
		return c, fmt.Errorf("the log has %d %s of ice with a beginning and an end. It takes at least %d: keep it for some more stops", n, spells, leastSpells)
	}
	return c, nil
}

func differences(spells []Spell) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, s := range spells {
		low, high = min(low, float64(s.Difference)), max(high, float64(s.Difference))
	}
	return low, high
}

// LearnTemperatures refines the leak from a box that warms or cools by itself
// with its lid closed: capacity·(change of box temperature) = UA·∫(cabin - box) dt.
// The start and the leak are fitted to all readings together, so that a
// thermometer's error counts once. capacity is that of contents, liner and
// inner foam.
//
// A log that cannot tell the answer is an error that says what is missing.
func LearnTemperatures(readings []Reading, capacity quantity.KilojoulePerKelvin) (Fit, error) {
	if !(capacity > 0) || math.IsInf(float64(capacity), 0) {
		return Fit{}, fmt.Errorf("a heat capacity of %g kJ/K; want over 0", float64(capacity))
	}
	if len(readings) < leastReadings {
		return Fit{}, fmt.Errorf("the log has %d readings of box and cabin. It takes at least %d", len(readings), leastReadings)
	}
	ones, driven, box := make([]float64, len(readings)), make([]float64, len(readings)), make([]float64, len(readings))
	low, high, gapH, most := math.Inf(1), math.Inf(-1), 0.0, 0.0
	for i, r := range readings {
		if err := allFinite("log of temperatures", float64(r.Box), float64(r.Cabin)); err != nil {
			return Fit{}, err
		}
		ones[i], box[i] = 1, float64(r.Box)
		low, high = min(low, float64(r.Box)), max(high, float64(r.Box))
		most = max(most, math.Abs(float64(r.Cabin-r.Box)))
		if i == 0 {
			continue
		}
		before := readings[i-1]
		hours := r.At.Sub(before.At).Hours()
		if !(hours > 0) {
			return Fit{}, fmt.Errorf("two readings are at %s, or out of order", r.At.Format(time.DateTime))
		}
		gapH = max(gapH, hours)
		meanK := float64(r.Cabin-r.Box+before.Cabin-before.Box) / 2
		driven[i] = driven[i-1] + meanK*hours*3.6/float64(capacity)
	}
	switch {
	case high-low < leastWarmingK:
		return Fit{}, fmt.Errorf("the box changed by %.2g K in the whole log. It takes at least %d K, with no ice left and the unit off", high-low, leastWarmingK)
	case most < leastDifferenceK:
		return Fit{}, fmt.Errorf("cabin and box were at most %.2g K apart. It takes at least %d K: start with a cold box in a warm cabin", most, leastDifferenceK)
	}
	l, err := leastSquares([][]float64{ones, driven}, box)
	if err != nil {
		return Fit{}, errors.New("the box's changes do not follow the cabin at all. Log a closed box without ice, from cold to warm")
	}
	fit := l.fit(1)
	if err := fit.believable(); err != nil {
		return Fit{}, err
	}
	if slowH := mostStep * float64(capacity) / (3.6 * float64(fit.UA)); gapH > slowH {
		return Fit{}, fmt.Errorf("some readings are %.3g h apart. For a box that warms this fast, take them every %.2g h or sooner", gapH, slowH)
	}
	fit.LogSD = math.Hypot(float64(fit.UASE/fit.UA), logSDTemperatureLog)
	return fit, nil
}

func (f Fit) believable() error {
	if !(f.UA > 0) {
		return errors.New("by this log the box would leak nothing or less. Look at dates, weights and temperatures again, and which column is the box")
	}
	if share := float64(f.UASE / f.UA); !(share <= mostRelativeSE) {
		return fmt.Errorf("the log scatters so much that the leak is known only to %.0f %%. It takes %.0f %% or better: log more rows, and write weights and times down at once",
			100*share, 100*mostRelativeSE)
	}
	return nil
}

// linear is an ordinary least-squares fit.
type linear struct {
	value, se, residuals []float64
	sd                   float64 // of the residuals, by degrees of freedom
}

// fit gives what was learned where the leak is one of the values.
func (l linear) fit(leak int) Fit {
	return Fit{UA: quantity.WattPerKelvin(l.value[leak]), UASE: quantity.WattPerKelvin(l.se[leak]), Use: 1, Residuals: l.residuals, ResidualSD: l.sd}
}

var errAlike = errors.New("columns cannot be told apart")

// leastSquares fits y to a sum of multiples of the columns by QR. Standard
// errors are widened by √((1+r)/(1-r)) where neighbouring residuals go together
// with correlation r > 0 (Bayley and Hammersley 1946). There must be more rows
// than columns; columns that are nearly multiples of each other are errAlike.
func leastSquares(columns [][]float64, y []float64) (linear, error) {
	n, m := len(y), len(columns)
	// Each column is scaled to length one, so that the condition speaks of
	// their angle and not of their units.
	length := make([]float64, m)
	x := mat.NewDense(n, m, nil)
	for j, column := range columns {
		length[j] = norm(column)
		if length[j] == 0 {
			return linear{}, errAlike
		}
		for i, v := range column {
			x.Set(i, j, v/length[j])
		}
	}
	var qr mat.QR
	qr.Factorize(x)
	if !(qr.Cond() < mostCondition) {
		return linear{}, errAlike
	}
	var b, fitted, inverse mat.Dense
	target := mat.NewDense(n, 1, append([]float64(nil), y...))
	if err := qr.SolveTo(&b, false, target); err != nil {
		return linear{}, errAlike
	}
	fitted.Mul(x, &b)
	out := linear{value: make([]float64, m), se: make([]float64, m), residuals: make([]float64, n)}
	for i := range y {
		out.residuals[i] = y[i] - fitted.At(i, 0)
	}
	out.sd = norm(out.residuals) / math.Sqrt(float64(n-m))
	var gram mat.Dense
	gram.Mul(x.T(), x)
	if err := inverse.Inverse(&gram); err != nil {
		return linear{}, errAlike
	}
	wider := 1.0
	if r := neighbourCorrelation(out.residuals); r > 0 {
		r = min(r, 0.98)
		wider = math.Sqrt((1 + r) / (1 - r))
	}
	for j := range columns {
		out.value[j] = b.At(j, 0) / length[j]
		out.se[j] = wider * out.sd * math.Sqrt(inverse.At(j, j)) / length[j]
	}
	return out, nil
}

func norm(v []float64) float64 {
	var sum float64
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// neighbourCorrelation gives the lag-one correlation of residuals about 0; of
// none it is not a number, which is not above 0.
func neighbourCorrelation(residuals []float64) float64 {
	var together, alone float64
	for i, r := range residuals {
		alone += r * r
		if i > 0 {
			together += r * residuals[i-1]
		}
	}
	return together / alone
}
