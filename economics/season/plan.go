package season

import (
	"math"
	"math/rand/v2"

	"coldreckon/economics/climate"
)

// Night is one day aboard, from noon to noon.
type Night struct {
	Month int // 0 for January
	Day   int // of the year, 1 to 365, of the noon it starts at
}

// Trip is a run of nights between leaving home and coming back.
type Trip struct {
	First  int // index of its first night in Plan.Nights
	Nights int // at least 1
	Alone  int // of them, from the first; each of the others stands for partEach, and so does the trip where none is alone
}

// Plan is the calendar of a year aboard. Only NewPlan makes one; from then on
// it is only read, and may be shared.
type Plan struct {
	Nights  []Night // in the order they are spent
	Trips   []Trip  // every night belongs to one
	byMon   [12]int
	longest int // nights of the longest trip
}

// NewPlan lays out the nights aboard of each month, January first, in trips of
// tripNights; see Calendar in the package comment. Fractions of a night are
// rounded. A month holds no fewer than 0 nights and no more than its days; a
// trip has at least one.
func NewPlan(nights [12]float64, tripNights float64) *Plan {
	p := &Plan{}
	first := 0
	for m := range 12 {
		if nights[m] >= 0.5 && nights[(m+11)%12] < 0.5 {
			first = m
			break
		}
	}
	for i := range 12 {
		m := (first + i) % 12
		n := max(0, min(int(math.Round(nights[m])), climate.DaysIn(m+1)))
		p.byMon[m] = n
		start := climate.FirstDay(m+1) + (climate.DaysIn(m+1)-n)/2
		for d := range n {
			p.Nights = append(p.Nights, Night{Month: m, Day: start + d})
		}
	}
	length := max(1, int(math.Round(tripNights)))
	for i, night := range p.Nights {
		last := len(p.Trips) - 1
		if i == 0 || p.Trips[last].Nights == length || night.Month-p.Nights[i-1].Month > 1 {
			p.Trips = append(p.Trips, Trip{First: i, Nights: 1})
		} else {
			p.Trips[last].Nights++
		}
	}
	for i := range p.Trips {
		p.Trips[i].Alone = p.Trips[i].Nights
		p.longest = max(p.longest, p.Trips[i].Nights)
	}
	return p
}

// A long year is lived in part: of trips no longer than startNights one in
// partEach; of a trip that is long itself, after its first startNights, by which
// the ice from home is gone and a box that was warm is cold, one night in partEach.
// Engineering judgement, from memory; TestPartOfAYear holds what comes of it to a
// whole year.
const startNights, partEach = 14, 4

// InParts gives the parts in which a long year, of so many nights or more, may be
// lived, each for the whole: together they spend every night. A shorter year is
// given as it is. A night or a trip that is spent stands for those beside it that
// are not. A trip's state goes on from one night to the next that is spent as if
// they followed each other.
func (p *Plan) InParts(long int) []*Plan {
	if len(p.Nights) < long {
		return []*Plan{p}
	}
	parts := make([]*Plan, partEach)
	for i := range parts {
		parts[i] = p.part(i, long)
	}
	return parts
}

// part spends the night and the trip at a place, 0 to partEach - 1, among those for
// which they stand.
func (p *Plan) part(at, long int) *Plan {
	q := *p
	q.Nights, q.Trips = nil, nil
	for i := 0; i < len(p.Trips); i++ {
		trip, alone, step := p.Trips[i], p.Trips[i].Nights, 1
		switch beside := p.Trips[i:min(i+partEach, len(p.Trips))]; {
		case trip.Nights >= long:
			alone, step = startNights+(trip.Nights-startNights)%partEach, partEach
		case trip.Nights <= startNights && len(beside) == partEach && beside[partEach-1].Nights == trip.Nights:
			trip, alone = beside[at], 0
			i += partEach - 1
		}
		first := len(q.Nights)
		q.Nights = append(q.Nights, p.Nights[trip.First:trip.First+alone]...)
		for n := alone; n < trip.Nights; n += step {
			q.Nights = append(q.Nights, p.Nights[trip.First+n+at%step])
		}
		q.Trips = append(q.Trips, Trip{First: first, Nights: len(q.Nights) - first, Alone: alone})
	}
	return &q
}

// NightsIn gives the whole nights of a month, 0 for January.
func (p *Plan) NightsIn(month int) int { return p.byMon[month] }

// Weather holds the days of one simulated year, each trip's nights + 1 days
// after one another. The zero value is ready for Draw.
type Weather struct {
	SunKWh []float64 // irradiation on the flat, kWh/m² a day
	AirK   []float64 // offset of the day's air from its month, K
	// Stops holds a number from 0 to 1 for each night: ice is sold at the noon
	// it starts at where the share of stops that sell it is over that number.
	Stops []float64
}

// Draw fills w with a year of weather: one autocorrelated run per trip, all
// sun scaled by sunFactor (the year-to-year factor). Which stops sell ice comes
// from a stream of its own, so that it moves no weather. It allocates only when
// w is too small for the plan.
func (p *Plan) Draw(w *Weather, sky *climate.Sky, rng, stops *rand.Rand, sunFactor float64) {
	n := len(p.Nights) + len(p.Trips)
	if cap(w.SunKWh) < n {
		w.SunKWh, w.AirK = make([]float64, n), make([]float64, n)
	}
	w.SunKWh, w.AirK = w.SunKWh[:n], w.AirK[:n]
	w.Stops = w.Stops[:0]
	for range p.Nights {
		w.Stops = append(w.Stops, stops.Float64())
	}
	i := 0
	for _, trip := range p.Trips {
		var days climate.Days
		for k := 0; k <= trip.Nights; k++ {
			score, air := days.Next(rng)
			w.SunKWh[i] = sky.SunKWh(p.dayOf(trip, k), score) * sunFactor
			w.AirK[i] = air
			i++
		}
	}
}

// dayOf gives the day of the year of a trip's k-th day of weather.
func (p *Plan) dayOf(trip Trip, k int) int {
	if k < trip.Nights {
		return p.Nights[trip.First+k].Day
	}
	return p.Nights[trip.First+k-1].Day%365 + 1
}
