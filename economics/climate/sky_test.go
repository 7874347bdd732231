package climate

import (
	"fmt"
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

const duffie = "Duffie and Beckman, Solar Engineering of Thermal Processes, "

// Guards hourShare (either coefficient of a or b, changed by 2 %, fails a row)
// and ExtraterrestrialMJ. The book takes another formula for declination,
// up to 0.2° apart, hence 0.3 % on H0.
func TestDuffieAndBeckman(t *testing.T) {
	hour := func(latDeg float64, day int, from float64) float64 {
		return hourShare((from+0.5-12)*math.Pi/12, sunsetAngle(latDeg, day))
	}
	for _, row := range []struct {
		Source    string
		what      string
		got, want float64
		tolerance float64
	}{
		{duffie + "example 1.10.1, answer from memory", "H0, MJ/m²", ExtraterrestrialMJ(43, 105), 33.8, 0.1},
		{duffie + "example 2.13.1, Melbourne, answer from memory", "r_t 8 to 9 h", hour(-38, 17, 8), 0.076, 0.0005},
		{duffie + "example 2.13.2, Madison, answer from memory", "r_t 13 to 14 h", hour(43, 235, 13), 0.118, 0.0005},
		{duffie + "example 2.13.2, Madison, answer from memory", "I, MJ/m²", 31.4 * hour(43, 235, 13), 3.7, 0.05},
		{duffie + "example 2.13.3, Madison, worked from its formulas", "r_t 10 to 11 h", hour(43, 162, 10), 0.108, 0.0005},
		{duffie + "example 2.13.3, Madison, worked from its formulas", "r_t 13 to 14 h", hour(43, 162, 13), 0.108, 0.0005},
		{duffie + "example 2.13.3, Madison, worked from its formulas", "I, MJ/m²", 23 * hour(43, 162, 10), 2.49, 0.01},
	} {
		near(t, row.Source+", "+row.what, row.got, row.want, row.tolerance)
	}
	averageDays := [12]int{17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344}
	for i, want := range [12]float64{13.36, 18.80, 26.03, 33.77, 39.42, 41.78, 40.55, 35.92, 28.79, 20.90, 14.62, 11.91} {
		// Worked from eq. 1.6.1 and 1.10.3 on Klein's average days (Table 1.6.1).
		near(t, fmt.Sprintf(duffie+"H0 at 43° on day %d", averageDays[i]), ExtraterrestrialMJ(43, averageDays[i]), want, 0.006*want)
	}
}

// Guards the line of HourShape that divides by the sum, and the test for dark
// hours in hourShare.
func TestHourShape(t *testing.T) {
	for lat := -90.0; lat <= 90; lat += 7.5 {
		for day := 1; day <= 365; day += 13 {
			shape := HourShape(lat, day)
			var sum float64
			for hour, share := range shape {
				if share < 0 || math.IsNaN(share) {
					t.Fatalf("latitude %g, day %d, hour %d: share %g", lat, day, hour, share)
				}
				if mirror := shape[23-hour]; math.Abs(share-mirror) > 1e-12 {
					t.Errorf("latitude %g, day %d: hours %d and %d differ", lat, day, hour, 23-hour)
				}
				if dark := math.Abs(float64(hour)+0.5-12) > DaylightHours(lat, day)/2; dark && share != 0 {
					t.Errorf("latitude %g, day %d, hour %d: share %g in the dark", lat, day, hour, share)
				}
				sum += share
			}
			if DaylightHours(lat, day) > 1 {
				near(t, fmt.Sprintf("shares at %g on day %d", lat, day), sum, 1, 1e-12)
			}
			if sum == 0 && DaylightHours(lat, day) > 1 || shape[12] < shape[13] {
				t.Errorf("latitude %g, day %d: shape %v", lat, day, shape)
			}
		}
	}
}

// The published form is not quite normalised: over fine steps it sums to
// 0.995, 0.992 and 1.001 (worked from the formula).
func TestHourShareClosure(t *testing.T) {
	for _, row := range []struct{ sunsetDeg, want float64 }{{70, 0.995}, {90, 0.992}, {110, 1.001}} {
		const step = 0.01 // of an hour
		var sum float64
		for h := -12 + step/2; h < 12; h += step {
			sum += hourShare(h*math.Pi/12, radians(row.sunsetDeg)) * step
		}
		near(t, fmt.Sprintf("sum at sunset angle %g°", row.sunsetDeg), sum, row.want, 0.0006)
	}
}

// The Bendt distribution at eight monthly means: γ by its exact equation and
// by Herzog's approximation (1985), quantiles worked from the paper's inverse;
// Kmax by Hollands and Huget 1983. Then the percentiles and standard deviation
// of daily clearness measured at 30 coastal stations (typical meteorological
// years, mostly US), which the narrowed distribution must meet. Guards
// newBendt, clearest, each method of bendt, and in newScores the factor spread.
func TestDailyClearness(t *testing.T) {
	shares := [5]float64{0.10, 0.25, 0.50, 0.75, 0.90}
	for _, row := range []struct {
		mean, clearest float64
		gamma, herzog  float64
		bendt          [5]float64
		bendtSD        float64
		measured       [5]float64
		measuredSD     float64
		days           float64
	}{
		{0.30, 0.6914, -2.125, -2.100, [5]float64{.086, .147, .269, .434, .571}, .177, [5]float64{.151, .192, .283, .371, .490}, .136, 92},
		{0.40, 0.7354, 0.186, 0.182, [5]float64{.123, .230, .404, .572, .671}, .198, [5]float64{.209, .291, .392, .515, .631}, .147, 514},
		{0.45, 0.7507, 1.229, 1.263, [5]float64{.154, .289, .474, .624, .702}, .199, [5]float64{.195, .323, .466, .602, .668}, .170, 1463},
		{0.50, 0.7646, 2.272, 2.314, [5]float64{.200, .359, .539, .666, .728}, .194, [5]float64{.268, .393, .529, .631, .678}, .154, 2976},
		{0.55, 0.7781, 3.374, 3.381, [5]float64{.265, .435, .597, .701, .750}, .183, [5]float64{.353, .483, .582, .645, .682}, .127, 3161},
		{0.60, 0.7915, 4.621, 4.575, [5]float64{.349, .512, .648, .732, .769}, .167, [5]float64{.437, .555, .625, .670, .698}, .105, 1583},
		{0.65, 0.8048, 6.170, 6.124, [5]float64{.445, .585, .694, .759, .788}, .144, [5]float64{.536, .614, .660, .691, .718}, .076, 641},
		{0.70, 0.8182, 8.373, 8.517, [5]float64{.545, .653, .736, .784, .806}, .115, [5]float64{.618, .648, .684, .717, .743}, .061, 92},
	} {
		at := fmt.Sprintf("mean clearness %g: ", row.mean)
		b, s := newBendt(row.mean), newScores(row.mean, usLatDeg)
		near(t, at+"clearest", b.high, row.clearest, 0.00006)
		near(t, at+"γ", b.gamma(), row.gamma, 0.0006)
		near(t, at+"γ by Herzog's approximation", b.gamma(), row.herzog, 0.15)
		near(t, at+"Bendt mean", b.mean(), row.mean, 1e-9)
		near(t, at+"Bendt sd", b.sd(), row.bendtSD, 0.0006)
		// The tail adds up to 0.010; the measured figure is itself a mean of
		// months' own, which is less than that of all days together.
		near(t, at+"sd", sdOf(&s)*row.mean, row.measuredSD, 0.011)
		near(t, at+"mean", s.mean(), 1, 1e-12)
		for i := range scoreCount - 1 {
			near(t, at+"between two marks", s.at((scoreAt(i)+scoreAt(i+1))/2), (s[i]+s[i+1])/2, 1e-12)
		}
		for i, share := range shares {
			near(t, fmt.Sprintf("%sBendt P%.0f", at, 100*share), b.quantile(share), row.bendt[i], 0.0006)
			score := math.Sqrt2 * math.Erfinv(2*share-1)
			// 0.02, and two standard errors of a percentile of the few days in
			// the outer rows.
			tolerance := 0.02 + 2*math.Sqrt(share*(1-share)/row.days)*row.measuredSD*2.5
			near(t, fmt.Sprintf("%sP%.0f against the coasts", at, 100*share), s.at(score)*row.mean, row.measured[i], tolerance)
		}
	}
}

// sdOf is the standard deviation over scores.
func sdOf(s *scores) float64 {
	var variance float64
	for i, weight := range markWeights {
		variance += weight * (s[i] - 1) * (s[i] - 1)
	}
	return math.Sqrt(variance)
}

// Near an even distribution, of which the mean rises by a twelfth of the
// steepness (first term of its series), the exact form begins without a step.
func TestBendtMeanNearEven(t *testing.T) {
	series, exact := bendt{low: 0, high: 1, steep: 0.999e-4}, bendt{low: 0, high: 1, steep: 1.001e-4}
	near(t, "rise of the mean", exact.mean()-series.mean(), 0.002e-4/12, 1e-10)
}

func TestSpreadBeyondTheTable(t *testing.T) {
	near(t, "below", spread(0.1), 0.136/0.177, 1e-12)
	near(t, "above", spread(0.9), 0.061/0.115, 1e-12)
	near(t, "half way", spread(0.475), (0.170/0.199+0.154/0.194)/2, 1e-12)
}

// skies are those of all grounds and of estimates at the edges.
func skies(t *testing.T) map[string]Ground {
	t.Helper()
	grounds := make(map[string]Ground)
	for _, g := range Grounds() {
		grounds[g.ID] = g
	}
	for name, latDeg := range map[string]float64{"north": 66, "equator": 0, "south": -66} {
		var low, high [12]quantity.Celsius
		for i := range high {
			high[i] = quantity.Celsius(20 * (i % 2)) // as rough as a year can be
		}
		g, err := Estimated(name, latDeg, low, high)
		if err != nil {
			t.Fatal(err)
		}
		grounds[name] = g
	}
	return grounds
}

// The mean sun of a month's days is the ground's, and that of a day over all
// scores is the day's. Guards the scaling in NewSky and the division by whole
// in newScores.
func TestMeanSunIsKept(t *testing.T) {
	for id, g := range skies(t) {
		s := NewSky(g)
		for month := 1; month <= 12; month++ {
			first, days := FirstDay(month), DaysIn(month)
			var sum float64
			for day := first; day < first+days; day++ {
				sum += s.MeanKWh(day)
			}
			want := float64(g.Months[month-1].Sun)
			near(t, fmt.Sprintf("%s month %d", id, month), sum/float64(days), want, 1e-9*want)

			// Simpson's rule over scores, apart from the package's own weights.
			day, expected := MidMonthDay(month), 0.0
			const steps = 2000
			for i := range steps + 1 {
				z := -5 + 10*float64(i)/steps
				weight := 2.0 + 2*float64(i%2)
				if i == 0 || i == steps {
					weight = 1
				}
				expected += weight * (10.0 / steps / 3) * normalDensity(z) * s.SunKWh(day, z)
			}
			near(t, fmt.Sprintf("%s day %d over scores", id, day), expected, s.MeanKWh(day), 1e-5*want)
		}
	}
}

// Brighter scores and clearer months bring more sun, and no day is darker or
// clearer than days are.
func TestSunIsMonotonicAndPossible(t *testing.T) {
	for id, g := range skies(t) {
		s := NewSky(g)
		for day := 1; day <= 365; day += 3 {
			most := ExtraterrestrialMJ(g.LatDeg, day) / mjPerKWh
			last := 0.0
			for z := -5.0; z <= 5; z += 0.125 {
				sun := s.SunKWh(day, z)
				if sun < last {
					t.Fatalf("%s day %d: less sun at score %g than before", id, day, z)
				}
				last = sun
			}
			if id == "north" || id == "equator" || id == "south" {
				continue // rough years swing farther within a month
			}
			if low, high := s.SunKWh(day, -5)/most, s.SunKWh(day, 5)/most; low < 0.03 || high > 0.87 {
				t.Errorf("%s day %d: clearness from %.3f to %.3f", id, day, low, high)
			}
		}
	}
	for score := -4.0; score <= 4; score++ {
		last := 0.0
		for mean := 0.2; mean <= 0.75; mean += 0.01 {
			s := newScores(mean, usLatDeg)
			if sun := mean * s.at(score); score < 2 && score > -2 && sun < last {
				t.Errorf("score %g: less sun in a month of mean clearness %.2f", score, mean)
			} else {
				last = sun
			}
		}
	}
}

// Scores beyond the table count as its ends, even ones that are no number.
// Guards the first two branches of scores.at.
func TestOutlyingScores(t *testing.T) {
	s := NewSky(Grounds()[0])
	dullest, clearest := s.SunKWh(200, -4), s.SunKWh(200, 4)
	for score, want := range map[float64]float64{
		-9: dullest, math.Inf(-1): dullest, math.NaN(): dullest, 9: clearest, math.Inf(1): clearest,
	} {
		near(t, fmt.Sprintf("sun at score %g", score), s.SunKWh(200, score), want, 0)
	}
}

// The lowest point of a cycle through any twelve values from 0.20 to 0.75: by
// the weights of each month in the fit, low where they are positive and high
// where negative. Guards what newWave says of it.
func TestWaveStaysAboveNothing(t *testing.T) {
	lowest := math.Inf(1)
	for day := 1; day <= 365; day++ {
		var least float64
		for month := range 12 {
			var one [12]float64
			one[month] = 1
			weight := newWave(one).at(day)
			least += min(0.20*weight, 0.75*weight)
		}
		lowest = min(lowest, least)
	}
	near(t, "lowest point", lowest, 0.017, 0.0005)
}

// Steps where months meet stay small against the spread of single days.
func TestStepsBetweenMonths(t *testing.T) {
	var steps deviation
	var worst float64
	var where string
	for _, g := range Grounds() {
		s := NewSky(g)
		for month := 1; month <= 12; month++ {
			day := FirstDay(month)
			step := s.MeanKWh(day)/s.MeanKWh((day+363)%365+1) - 1
			steps.add(step)
			if math.Abs(step) > worst {
				worst, where = math.Abs(step), fmt.Sprintf("%s month %d", g.ID, month)
			}
		}
	}
	t.Logf("steps %v, worst %.3f at %s", steps, worst, where)
	if steps.rms() > 0.06 {
		t.Errorf("steps %v, want at most 0.06", steps)
	}
}

// A wave made of two harmonics comes back as it was. Guards newWave and at.
func TestWave(t *testing.T) {
	given := wave{mean: 0.5, cosine: [2]float64{0.1, -0.03}, sin: [2]float64{-0.07, 0.02}}
	var months [12]float64
	for i := range months {
		phase := 2 * math.Pi * (float64(i) + 0.5) / 12
		months[i] = 0.5 + 0.1*math.Cos(phase) - 0.03*math.Cos(2*phase) - 0.07*math.Sin(phase) + 0.02*math.Sin(2*phase)
	}
	got := newWave(months)
	near(t, "mean", got.mean, given.mean, 1e-12)
	for h := range 2 {
		near(t, "cosine", got.cosine[h], given.cosine[h], 1e-12)
		near(t, "sine", got.sin[h], given.sin[h], 1e-12)
	}
	for i, want := range months {
		near(t, fmt.Sprintf("middle of month %d", i+1), got.at(FirstDay(i+1)+DaysIn(i+1)/2), want, 0.006)
	}
}

func TestSkyDoesNotAllocate(t *testing.T) {
	s := NewSky(Grounds()[0])
	rng := newRNG(6)
	var days Days
	if n := testing.AllocsPerRun(100, func() {
		score, _ := days.Next(rng)
		_ = s.SunKWh(200, score) * s.Shape(200)[12] * s.MeanKWh(200)
	}); n != 0 {
		t.Errorf("got %g allocations a day, want none", n)
	}
}

func BenchmarkSunKWh(b *testing.B) {
	s := NewSky(Grounds()[0])
	var sum float64
	for i := 0; b.Loop(); i++ {
		sum += s.SunKWh(1+i%365, float64(i%64)/8-4)
	}
	_ = sum
}

func BenchmarkNextDay(b *testing.B) {
	rng := newRNG(7)
	var days Days
	for b.Loop() {
		days.Next(rng)
	}
}

func BenchmarkNewSky(b *testing.B) {
	g := Grounds()[0]
	for b.Loop() {
		NewSky(g)
	}
}
