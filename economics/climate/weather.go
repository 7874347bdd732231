package climate

import (
	"math"
	"math/rand/v2"
)

// How one day resembles the day before, and how far years differ.
const (
	// sunPersistence is the day-to-day correlation of the sun's normal scores
	// (Graham, Hollands and Brunger 1988, Solar Energy 40:83-92, the same at
	// every station; 0.26 to 0.30 in 30 coastal stations' years).
	sunPersistence = 0.29
	// airPersistence is the day-to-day correlation of the air's distance from
	// its monthly mean. Engineering judgement, from memory.
	airPersistence = 0.6
	// AirSDK is the standard deviation of that distance, K. Engineering
	// judgement, from memory.
	AirSDK = 2.5
	// YearSunSD is the standard deviation of a whole year's sun relative to
	// the mean of all years; callers draw it once for a year. Engineering
	// judgement, from memory.
	YearSunSD = 0.04
)

// Days draws the weather of one day after another. The zero value is ready;
// its first day is drawn as any day of a long series.
type Days struct {
	sun, air float64 // normal scores of the last day
	begun    bool
}

// Next draws the next day: the normal score of its sun, for Sky.SunKWh, and
// how far its air lies from the monthly mean, K. Sun and air are drawn apart.
func (d *Days) Next(rng *rand.Rand) (sunScore, airOffsetK float64) {
	if !d.begun {
		d.begun = true
		d.sun, d.air = rng.NormFloat64(), rng.NormFloat64()
	} else {
		d.sun = follow(d.sun, sunPersistence, rng)
		d.air = follow(d.air, airPersistence, rng)
	}
	return d.sun, AirSDK * d.air
}

// follow draws the normal score after last; the fresh part is such that the
// variance stays 1.
func follow(last, persistence float64, rng *rand.Rand) float64 {
	return persistence*last + math.Sqrt(1-persistence*persistence)*rng.NormFloat64()
}
