package climate

import "math"

// Sky is the sun of a ground, day by day. It is read-only after NewSky and may
// be shared; no method allocates.
type Sky struct {
	meanKWh [366]float64 // by day of the year, from 1
	month   [366]uint8   // 0 to 11, by day of the year, from 1
	scores  [12]scores
	shapes  [12][24]float64
}

// NewSky works out the sky of a ground as Find, Grounds or Estimated give it.
//
// The year's clearness is a wave of two harmonics through the twelve months,
// so that the sun changes within a month as well as between months; each month
// is then scaled so that the mean of its days is exactly the ground's. That
// leaves steps where months meet: 5 % (root mean square), a fifth of the spread
// of single days, but up to 40 % around the north's December.
func NewSky(g Ground) *Sky {
	var clearness [12]float64
	for i := range clearness {
		clearness[i] = g.Clearness(i + 1)
	}
	s := new(Sky)
	smooth := newWave(clearness)
	for month := 1; month <= 12; month++ {
		first, days := FirstDay(month), DaysIn(month)
		var sum float64
		for day := first; day < first+days; day++ {
			s.month[day] = uint8(month - 1)
			s.meanKWh[day] = smooth.at(day) * ExtraterrestrialMJ(g.LatDeg, day) / mjPerKWh
			sum += s.meanKWh[day]
		}
		scale := float64(g.Months[month-1].Sun) * float64(days) / sum
		for day := first; day < first+days; day++ {
			s.meanKWh[day] *= scale
		}
		s.scores[month-1] = newScores(clearness[month-1], g.LatDeg)
		s.shapes[month-1] = HourShape(g.LatDeg, MidMonthDay(month))
	}
	return s
}

// With gives the sky with another's in some months, 0 for January.
func (s *Sky) With(other *Sky, in func(month int) bool) *Sky {
	both := *s
	for month := range 12 {
		if in(month) {
			both.scores[month], both.shapes[month] = other.scores[month], other.shapes[month]
		}
	}
	for day, month := range s.month {
		if in(int(month)) {
			both.meanKWh[day] = other.meanKWh[day]
		}
	}
	return &both
}

// SunKWh is the sun, kWh/m², of a day of the year, 1 to 365, that is dull or
// clear by its normal score: -1 duller than five days in six, +1 clearer.
// Scores beyond ±4 count as ±4. Over standard-normal scores the mean
// is that of the day, and over a month's days that of the ground.
func (s *Sky) SunKWh(day int, score float64) float64 {
	return s.meanKWh[day] * s.scores[s.month[day]].at(score)
}

// Shape gives the share of the sun of a day of the year, 1 to 365, in each of
// the 24 hours of solar time, the first beginning at midnight: that of the 15th
// of the day's month, as it changes little within one. The caller must not
// change it.
func (s *Sky) Shape(day int) *[24]float64 { return &s.shapes[s.month[day]] }

// wave is a yearly cycle of two harmonics.
type wave struct {
	mean        float64
	cosine, sin [2]float64 // of one and of two cycles a year
}

// newWave fits a cycle to twelve monthly values by least squares. The middles
// of the months are taken as a twelfth of a year apart, less than two days off
// the calendar: the harmonics are then orthogonal and the fit is a plain sum.
// Through values from 0.20 to 0.75, as clearness keeps to, no cycle dips below
// nothing: its lowest possible point is 0.017.
func newWave(months [12]float64) wave {
	var w wave
	for i, v := range months {
		phase := 2 * math.Pi * (float64(i) + 0.5) / 12
		w.mean += v / 12
		for h := range w.cosine {
			cycles := float64(h + 1)
			w.cosine[h] += v * math.Cos(cycles*phase) / 6
			w.sin[h] += v * math.Sin(cycles*phase) / 6
		}
	}
	return w
}

// at is the cycle's value at the noon of a day of the year.
func (w wave) at(day int) float64 {
	phase := 2 * math.Pi * (float64(day) - 0.5) / 365
	v := w.mean
	for h := range w.cosine {
		cycles := float64(h + 1)
		v += w.cosine[h]*math.Cos(cycles*phase) + w.sin[h]*math.Sin(cycles*phase)
	}
	return v
}
