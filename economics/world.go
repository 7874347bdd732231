package economics

import (
	"fmt"

	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// world is the place and the calendar of a reckoning.
type world struct {
	ground  climate.Ground
	sky     *climate.Sky
	months  [12]season.Month
	plan    *season.Plan
	hottest int // the ground's hottest month, 0 for January
	aboard  int // the hottest month with nights aboard; hottest when there are none
	// yearsAFuture is how many years of weather a future holds.
	yearsAFuture int
	lived        []*season.Plan // the nights of a year that are spent, by turns from future to future
}

// A future's weather must not be one lucky weekend: it holds as many years as give
// so many days aboard; and a year of longYear nights or more tells as much when it
// is lived in part. Engineering judgement, from memory.
const daysAFuture, longYear, mostYearsAFuture = 40, 180, 20

// A quick look makes do with fewer days, of more boats in part.
const daysAGlance, longGlance = 15, 60

func newWorld(b *Boat, ground climate.Ground) world {
	w := world{ground: ground, sky: climate.NewSky(ground)}
	if other, err := b.elsewhere(); err == nil && other.ID != "" { // Ground has named what is wrong
		if home, err := b.home(); err == nil {
			w.sky = climate.NewSky(home).With(climate.NewSky(other), b.Cruising.IsElsewhere)
		}
	}
	w.months = season.NewMonths(ground, w.sky)
	w.plan = season.NewPlan(b.Cruising.Nights, b.Cruising.TripNights)
	w.live(b, daysAFuture, longYear)
	w.aboard = -1
	for m := range 12 {
		if ground.Months[m].AirMean > ground.Months[w.hottest].AirMean {
			w.hottest = m
		}
		if w.plan.NightsIn(m) > 0 && (w.aboard < 0 || ground.Months[m].AirMean > ground.Months[w.aboard].AirMean) {
			w.aboard = m
		}
	}
	if w.aboard < 0 {
		w.aboard = w.hottest
	}
	return w
}

// live settles how much of the year a future lives.
func (w *world) live(b *Boat, days, long int) {
	nights := max(1, len(w.plan.Nights))
	w.yearsAFuture = min(mostYearsAFuture, (days+nights-1)/nights)
	w.lived = []*season.Plan{w.plan}
	if b.Food.Medicine != quantity.Yes { // which must be kept in every hour
		w.lived = w.plan.InParts(long)
	}
}

// OwnGround is the Cruising.Ground of an owner who describes a ground of their
// own by latitude and air temperatures.
const OwnGround = "own"

// Ground finds or builds the boat's cruising ground, in some months the second
// one where she has two, with the owner's own
// temperatures where told. It fails when no ground has the id, or when latitude
// and temperatures that the owner gives are out of range (climate.Estimated).
func (b Boat) Ground() (climate.Ground, error) {
	g, err := b.home()
	if err != nil {
		return g, err
	}
	other, err := b.elsewhere()
	if err != nil {
		return g, fmt.Errorf("cruising.elsewhere: %w", err)
	}
	for m := range 12 {
		if b.Cruising.IsElsewhere(m) {
			g.Months[m] = other.Months[m]
		}
	}
	return g, nil
}

// home finds or builds the first ground, for all months.
func (b *Boat) home() (climate.Ground, error) {
	var g climate.Ground
	var err error
	if b.Cruising.Ground == OwnGround {
		g, err = climate.Estimated("as described by the owner", b.Cruising.LatitudeDeg, b.Cruising.AirMin, b.Cruising.AirMax)
	} else {
		g, err = climate.Find(b.Cruising.Ground)
	}
	if err != nil {
		return g, fmt.Errorf("cruising.ground: %w", err)
	}
	for m := 1; m <= 12; m++ {
		if t, told := b.Cruising.AirOverrides[m]; told {
			g = g.WithAirMean(m, t)
		}
	}
	return g, nil
}

// elsewhere finds the boat's second ground; the zero one where there is none.
func (b *Boat) elsewhere() (climate.Ground, error) {
	for m := range 12 {
		if b.Cruising.IsElsewhere(m) {
			return climate.Find(b.Cruising.Elsewhere)
		}
	}
	return climate.Ground{}, nil
}
