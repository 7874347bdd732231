package heat

import (
	"errors"
	"fmt"
	"math"

	"coldreckon/economics/quantity"
)

// Source names where an estimate of a box's leak comes from.
type Source string

// The sources.
const (
	FromDrawing Source = "drawing" // walls as told or assumed
	FromIceTest Source = "ice test"
	FromJugTest Source = "jug test"
	FromHistory Source = "ice history"
	FromLog     Source = "log"
)

// Estimate is one view of what a box leaks. The leak is log-normal about UA.
type Estimate struct {
	Source Source
	UA     quantity.WattPerKelvin // median, > 0
	LogSD  float64                // standard deviation of ln UA, > 0
}

// Range gives the estimate, W/K: its median, 10th and 90th percentiles.
func (e Estimate) Range() quantity.Range { return quantity.Spread(float64(e.UA), e.LogSD) }

// How far the sources can be trusted, as log-sd. Engineering judgement, from memory.
const (
	logSDDrawingKnown   = 0.25 // foam and its state were told
	logSDDrawingUnknown = 0.50
	logSDIceTest        = 0.10
	logSDJugAirRead     = 0.12
	logSDJugAirUnread   = 0.30
	logSDHistory        = 0.30
)

// Drawing gives the estimate that the walls lead to; c must leak. known tells
// whether foam and its state are the owner's word rather than an assumption,
// and halves the log-sd.
func Drawing(c Conductance, known bool) Estimate {
	sd := logSDDrawingUnknown
	if known {
		sd = logSDDrawingKnown
	}
	return Estimate{FromDrawing, c.Total(), sd}
}

// leastDifferenceK is the difference between outside and inside under which a
// thermometer's error drowns the answer. Engineering judgement, from memory.
const leastDifferenceK = 5

// Estimate gives the leak that a weighed melt test shows: the heat that the
// ice and its water took up, less what food and liner gave, over hours and
// temperature difference. Standard calorimetry; FAO Fisheries Technical Paper
// 436 (2003), ch. 7, for the method. Figures that cannot be are errors that
// say what to look at again.
func (t IceTest) Estimate() (Estimate, error) {
	if err := allFinite("ice test", float64(t.Melted), t.Hours, float64(t.IceMass), float64(t.IceStart), float64(t.WaterEnd),
		float64(t.Water), float64(t.Out), float64(t.In), float64(t.FoodKJ), float64(t.LinerKJ)); err != nil {
		return Estimate{}, err
	}
	if t.IceMass == 0 {
		t.IceMass = t.Melted
	}
	switch {
	case !(t.Hours > 0):
		return Estimate{}, fmt.Errorf("the ice test ran %g h; want more than 0", t.Hours)
	case !(t.Melted > 0):
		return Estimate{}, fmt.Errorf("%g kg melted in the ice test; want more than 0: weigh the ice, not the water, before and after", float64(t.Melted))
	case t.Melted > t.IceMass*(1+1e-9):
		return Estimate{}, fmt.Errorf("%g kg melted of %g kg of ice; want no more than was there: check both weights", float64(t.Melted), float64(t.IceMass))
	case t.IceStart > 0 || t.IceStart < -40:
		return Estimate{}, fmt.Errorf("ice at %g °C at the start; want -40 to 0: ice that drips is at 0", float64(t.IceStart))
	case t.Water < 0 || t.Water > t.Melted*(1+1e-9):
		return Estimate{}, fmt.Errorf("%g kg of meltwater from %g kg melted; want 0 up to what melted", float64(t.Water), float64(t.Melted))
	case t.WaterEnd < 0 || t.WaterEnd > max(t.Out, t.In):
		return Estimate{}, fmt.Errorf("meltwater at %g °C; want 0 up to the air outside, %g °C", float64(t.WaterEnd), float64(t.Out))
	case t.Out-t.In < leastDifferenceK:
		return Estimate{}, fmt.Errorf("air of %g °C outside and %g °C inside in the ice test; want outside at least %d K warmer: check the thermometers, or test on a warmer day",
			float64(t.Out), float64(t.In), leastDifferenceK)
	case t.FoodKJ < 0 || t.LinerKJ < 0:
		return Estimate{}, fmt.Errorf("heat of %g kJ from food and %g kJ from the liner; want 0 or more", float64(t.FoodKJ), float64(t.LinerKJ))
	}
	takenKJ := float64(t.Melted)*FusionKJPerKg +
		float64(FreezerBonusKJ(t.IceMass, t.IceStart)) +
		float64(t.Water)*WaterKJPerKgK*float64(t.WaterEnd)
	return testEstimate(FromIceTest, takenKJ-float64(t.FoodKJ)-float64(t.LinerKJ), float64(t.Out-t.In)*t.Hours, logSDIceTest,
		"food and liner gave up more heat than the ice took: check the warm food's weight and temperature, or leave it out and test again")
}

// Estimate gives the leak that warming jugs show. liner is the heat capacity
// of the box's liner and inner foam, which warms with the water (BareKJPerK).
//
// Where the box's air was read, the heat of water and liner passed from outside
// to that air. Where it was not, the air is taken warmer than the water by what
// the water's own heat needs to pass the film round the jugs, and the estimate
// is wider. Outside air is taken as steady, so that the water nears it
// exponentially and their mean difference is the logarithmic one. Figures that
// cannot be are errors that say what to look at again.
func (t JugTest) Estimate(liner quantity.KilojoulePerKelvin) (Estimate, error) {
	if err := allFinite("jug test", float64(t.Water), t.Hours, float64(t.Start), float64(t.End), float64(t.Out), float64(t.BoxAir), float64(liner)); err != nil {
		return Estimate{}, err
	}
	switch {
	case !(t.Hours > 0):
		return Estimate{}, fmt.Errorf("the jug test ran %g h; want more than 0", t.Hours)
	case !(t.Water > 0):
		return Estimate{}, fmt.Errorf("%g kg of water in the jugs; want more than 0", float64(t.Water))
	case liner < 0:
		return Estimate{}, fmt.Errorf("a liner of %g kJ/K; want 0 or more", float64(liner))
	case t.Start < 0:
		return Estimate{}, fmt.Errorf("water at %g °C at the start; want 0 or more, without ice in it", float64(t.Start))
	case t.End-t.Start < 1:
		return Estimate{}, fmt.Errorf("the water went from %g to %g °C; want it to warm by at least 1 K: let the test run longer", float64(t.Start), float64(t.End))
	case t.Out-t.End < leastDifferenceK:
		return Estimate{}, fmt.Errorf("water of %g °C at the end in air of %g °C; want it at least %d K under the air outside: check the thermometers, or end the test sooner",
			float64(t.End), float64(t.Out), leastDifferenceK)
	}
	waterKJPerK := float64(t.Water) * WaterKJPerKgK
	warmedK := float64(t.End - t.Start)
	heatKJ := (waterKJPerK + float64(liner)) * warmedK
	if t.BoxAirRead {
		if t.Out-t.BoxAir < leastDifferenceK {
			return Estimate{}, fmt.Errorf("air of %g °C outside and %g °C in the box; want outside at least %d K warmer: check the thermometers",
				float64(t.Out), float64(t.BoxAir), leastDifferenceK)
		}
		return testEstimate(FromJugTest, heatKJ, float64(t.Out-t.BoxAir)*t.Hours, logSDJugAirRead, "")
	}
	start, end := float64(t.Out-t.Start), float64(t.Out-t.End)
	overWaterK := (start - end) / math.Log(start/end)
	filmK := waterKJPerK * warmedK / (3.6 * t.Hours) / (jugFilmWPerKPerKg * float64(t.Water))
	if overWaterK-filmK < 0.2*overWaterK {
		return Estimate{}, fmt.Errorf("the water warmed by %.3g K in %g h, faster than still air can warm it; want the lid kept closed and the box's air read", warmedK, t.Hours)
	}
	return testEstimate(FromJugTest, heatKJ, (overWaterK-filmK)*t.Hours, logSDJugAirUnread, "")
}

// Between these leaks, W/K, a memory of ice is looked for: a thermos flask of a
// box, and one without foam. Engineering judgement, from memory.
const leastRememberedUA, mostRememberedUA = 0.02, 20

// mostRememberedHours is the longest memory that is read within its month.
const mostRememberedHours = 28 * 24

// GoneShare is the part of the ice that is left when an owner says that it is
// gone. Engineering judgement, from memory.
const GoneShare = 0.05

// ErrNoLeak is in the error of a memory of ice that no leak can give: it tells
// nothing of the box, and may be set aside.
var ErrNoLeak = errors.New("no box can have done that")

// Estimate gives the leak that a remembered spell shows: the one with which the
// ice lasts as long. lasts gives for a leak the hours until less than GoneShare
// is left, the fewer the greater the leak, without end where that is over h.Hours.
//
// The log-sd is that of the hours as remembered, by how far they go with the
// leak: where half of the ice goes into warm food the leak is known half as
// well, so that only large loads tell. Figures that cannot be are errors; one
// that no leak can give is an ErrNoLeak. Both say what to look at again.
func (h IceHistory) Estimate(lasts func(quantity.WattPerKelvin) (hours float64)) (Estimate, error) {
	if err := allFinite("ice history", float64(h.Ice), h.Hours); err != nil {
		return Estimate{}, err
	}
	switch {
	case !(h.Hours > 0):
		return Estimate{}, fmt.Errorf("ice that lasted %g h; want more than 0", h.Hours)
	case !(h.Ice > 0):
		return Estimate{}, fmt.Errorf("%g kg of ice; want more than 0", float64(h.Ice))
	case h.Hours > mostRememberedHours:
		return Estimate{}, fmt.Errorf("%w: it is more than four weeks; check the hours", ErrNoLeak)
	case lasts(leastRememberedUA) < h.Hours:
		return Estimate{}, fmt.Errorf("%w: food, drink and lid alone melt the ice sooner; check its weight, the hours, the food put in and how often the lid is opened", ErrNoLeak)
	case !(lasts(mostRememberedUA) <= h.Hours):
		return Estimate{}, fmt.Errorf("%w: without any foam the ice would have lasted longer; check its weight, the hours and the month", ErrNoLeak)
	}
	low, high := math.Log(leastRememberedUA), math.Log(mostRememberedUA)
	at := func(lnUA float64) float64 { return lasts(quantity.WattPerKelvin(math.Exp(lnUA))) }
	for range 30 {
		if middle := (low + high) / 2; at(middle) > h.Hours {
			low = middle
		} else {
			high = middle
		}
	}
	ln := (low + high) / 2
	elasticity := math.Log(h.Hours/at(ln+elasticityStep)) / elasticityStep
	return Estimate{FromHistory, quantity.WattPerKelvin(math.Exp(ln)), logSDHistory / min(1, max(leastElasticity, elasticity))}, nil
}

// By how much ln UA is moved to see how far the hours follow, and the least
// that they do: a memory that tells next to nothing is still one.
const elasticityStep, leastElasticity = 0.1, 0.05

// testEstimate turns heat and degree-hours into a conductance; heat of zero or
// less is an error with the given advice.
func testEstimate(s Source, heatKJ, degreeHours, logSD float64, advice string) (Estimate, error) {
	if !(heatKJ > 0) {
		return Estimate{}, errors.New(advice)
	}
	return Estimate{s, quantity.WattPerKelvin(heatKJ / 3.6 / degreeHours), logSD}, nil
}

func allFinite(test string, figures ...float64) error {
	for _, f := range figures {
		if math.IsNaN(f) || math.IsInf(f, 0) {
			return fmt.Errorf("%s: a figure is %g; want a number", test, f)
		}
	}
	return nil
}

// FromFAO gives the conductance of FAO's melt coefficient K, the ice in kg/h
// that melts per °C of the surroundings: UA = K·L/3.6, or 92.7 K. FAO Fisheries
// Technical Papers 348 (Huss 1995) and 436 (2003), ch. 7.
func FromFAO(kgPerHourC float64) quantity.WattPerKelvin {
	return quantity.WattPerKelvin(kgPerHourC * FusionKJPerKg / 3.6)
}
