package season_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

// TestPlan lays nights out on the civil calendar of 365 days (first days of the
// months: 1, 32, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335).
//
// Guards in NewPlan: the rounding of nights and of trips (Floor in place of
// Round fails), the middle of the month (without "/ 2" fails), the first month
// (January always fails the southern season), the most nights of a month
// (without "min(" fails), the cut into trips, and their end where a month
// without nights follows (without "> 1" fails).
func TestPlan(t *testing.T) {
	full := [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	for _, row := range []struct {
		name   string
		nights [12]float64
		trip   float64
		days   []string // month and days of the year, first to last
		trips  []int    // their nights
	}{
		{"a weekend", [12]float64{6: 2}, 2, []string{"7: 196-197"}, []int{2}},
		{"an odd number", [12]float64{6: 3}, 3, []string{"7: 196-198"}, []int{3}},
		{"across months", [12]float64{5: 4, 6: 5, 7: 3}, 5, []string{"6: 165-168", "7: 195-199", "8: 227-229"}, []int{5, 5, 2}},
		{"a southern season", [12]float64{0: 3, 1: 2, 10: 2, 11: 3}, 4, []string{"11: 319-320", "12: 349-351", "1: 15-17", "2: 45-46"}, []int{4, 4, 2}},
		{"a whole month", [12]float64{1: 28}, 30, []string{"2: 32-59"}, []int{28}},
		{"more than the month has", [12]float64{1: 40}, 30, []string{"2: 32-59"}, []int{28}},
		{"fractions", [12]float64{5: 3.5, 6: 4.4, 7: 0.4}, 2.5, []string{"6: 165-168", "7: 195-198"}, []int{3, 3, 2}},
		{"a little over two nights", [12]float64{6: 4}, 2.4, []string{"7: 195-198"}, []int{2, 2}},
		{"trips of less than a night", [12]float64{6: 2}, 0.2, []string{"7: 196-197"}, []int{1, 1}},
		{"two seasons", [12]float64{4: 3, 8: 4}, 5, []string{"5: 135-137", "9: 257-260"}, []int{3, 4}},
		{"less than no nights", [12]float64{5: -3, 6: 2}, 7, []string{"7: 196-197"}, []int{2}},
		{"no nights", [12]float64{}, 7, nil, nil},
		{"living aboard", full, 500, []string{"1: 1-31", "2: 32-59", "3: 60-90", "4: 91-120", "5: 121-151", "6: 152-181", "7: 182-212",
			"8: 213-243", "9: 244-273", "10: 274-304", "11: 305-334", "12: 335-365"}, []int{365}},
	} {
		p := season.NewPlan(row.nights, row.trip)
		var days []string
		for i := 0; i < len(p.Nights); {
			j := i
			for j+1 < len(p.Nights) && p.Nights[j+1].Month == p.Nights[i].Month && p.Nights[j+1].Day == p.Nights[j].Day+1 {
				j++
			}
			days = append(days, fmt.Sprintf("%d: %d-%d", p.Nights[i].Month+1, p.Nights[i].Day, p.Nights[j].Day))
			i = j + 1
		}
		var trips []int
		next := 0
		for _, trip := range p.Trips {
			if trip.First != next {
				t.Errorf("%s: a trip starts at night %d, want %d", row.name, trip.First, next)
			}
			next += trip.Nights
			trips = append(trips, trip.Nights)
		}
		if !slices.Equal(days, row.days) || !slices.Equal(trips, row.trips) || next != len(p.Nights) {
			t.Errorf("%s: days %v in trips %v, want %v in %v", row.name, days, trips, row.days, row.trips)
		}
		for _, night := range p.Nights {
			if first := climate.FirstDay(night.Month + 1); night.Day < first || night.Day >= first+climate.DaysIn(night.Month+1) {
				t.Errorf("%s: day %d is not in month %d", row.name, night.Day, night.Month+1)
			}
		}
		for month := range 12 {
			n := 0
			for _, night := range p.Nights {
				if night.Month == month {
					n++
				}
			}
			if p.NightsIn(month) != n {
				t.Errorf("%s: %d nights in month %d, want %d", row.name, p.NightsIn(month), month+1, n)
			}
		}
	}
}

// meanSun is the mean sun of a day over its scores, by the midpoint rule.
func meanSun(sky *climate.Sky, day int) float64 {
	const step = 0.01
	var sum, weights float64
	for z := -6 + step/2; z < 6; z += step {
		weight := math.Exp(-z * z / 2)
		sum += weight * sky.SunKWh(day, z)
		weights += weight
	}
	return sum / weights
}

// TestDraw: a trip of n nights has n + 1 days of weather, alike from one day to
// the next within a trip (0.29 the sun, Graham, Hollands and Brunger 1988; 0.6
// and 2.5 K the air, engineering judgement, from memory) and not from one trip
// to the next.
//
// Guards in Draw: one run of days per trip (one for the year fails), "* sunFactor",
// and in dayOf the day after the last night (of the last day of December, January's first).
func TestDraw(t *testing.T) {
	g, err := climate.Find("maine-coast")
	if err != nil {
		t.Fatal(err)
	}
	sky := climate.NewSky(g)
	p := season.NewPlan([12]float64{6: 31, 11: 31}, 1)
	var one, again, half season.Weather
	p.Draw(&one, sky, rand.New(rand.NewPCG(3, 4)), rand.New(rand.NewPCG(5, 6)), 1)
	p.Draw(&again, sky, rand.New(rand.NewPCG(3, 4)), rand.New(rand.NewPCG(5, 6)), 1)
	p.Draw(&half, sky, rand.New(rand.NewPCG(3, 4)), rand.New(rand.NewPCG(5, 6)), 0.5)
	if !reflect.DeepEqual(one, again) {
		t.Error("the same seed draws other weather")
	}
	byDay := rand.New(rand.NewPCG(3, 4))
	for i, night := range p.Nights {
		after := night.Day + 1
		if after == 366 {
			after = 1
		}
		var days climate.Days
		for k, day := range []int{night.Day, after} {
			score, air := days.Next(byDay)
			if sun := sky.SunKWh(day, score); one.SunKWh[2*i+k] != sun || one.AirK[2*i+k] != air {
				t.Errorf("night %d day %d: sun %g, air %g K, want %g and %g K", i, k, one.SunKWh[2*i+k], one.AirK[2*i+k], sun, air)
			}
		}
	}
	if n := 2 * len(p.Nights); len(one.SunKWh) != n || len(one.AirK) != n {
		t.Errorf("%d days of weather, want %d", len(one.SunKWh), n)
	}
	for i := range one.SunKWh {
		if half.SunKWh[i] != one.SunKWh[i]*0.5 || half.AirK[i] != one.AirK[i] {
			t.Fatalf("day %d: sun %g at half of %g", i, half.SunKWh[i], one.SunKWh[i])
		}
	}

	rng := rand.New(rand.NewPCG(8, 8))
	var within, between, airWithin, airBetween pairs
	var mean []float64
	for _, night := range p.Nights {
		mean = append(mean, meanSun(sky, night.Day), meanSun(sky, night.Day%365+1))
	}
	sums, years := make([]float64, len(mean)), 400
	for range years {
		p.Draw(&one, sky, rng, rng, 1)
		for i := range sums {
			sums[i] += one.SunKWh[i]
			if i == 0 {
				continue
			}
			sun, air := &between, &airBetween
			if i%2 == 1 {
				sun, air = &within, &airWithin
			}
			sun.add(one.SunKWh[i-1]/mean[i-1], one.SunKWh[i]/mean[i])
			air.add(one.AirK[i-1], one.AirK[i])
		}
	}
	var drawn, usual float64
	for i := range sums {
		drawn += sums[i] / float64(years)
		usual += mean[i]
	}
	near(t, "mean sun", drawn/usual, 1, 0.01)
	near(t, "sun within a trip", within.correlation(), 0.28, 0.03) // 0.29 of the normal scores
	near(t, "sun between trips", between.correlation(), 0, 0.03)
	near(t, "air within a trip", airWithin.correlation(), 0.6, 0.03)
	near(t, "air between trips", airBetween.correlation(), 0, 0.03)
	near(t, "spread of the air", math.Sqrt(airWithin.xx/airWithin.n), 2.5, 0.05)
}

// pairs sums what a correlation needs.
type pairs struct{ n, x, y, xx, yy, xy float64 }

func (p *pairs) add(x, y float64) {
	p.n, p.x, p.y, p.xx, p.yy, p.xy = p.n+1, p.x+x, p.y+y, p.xx+x*x, p.yy+y*y, p.xy+x*y
}

func (p *pairs) correlation() float64 {
	return (p.n*p.xy - p.x*p.y) / math.Sqrt((p.n*p.xx-p.x*p.x)*(p.n*p.yy-p.y*p.y))
}

// TestShoreNights tells the nights on shore power by the bank, full at 6 h
// though nothing else charges it: as many as the share says, evenly.
//
// Guards shoreNight (Floor without the half fails), shoreFromH, shoreToH and
// the even charging in step.
func TestShoreNights(t *testing.T) {
	for _, row := range []struct {
		share  float64
		nights string // of ten, 1 on shore
	}{
		{0, "0000000000"}, {0.1, "0000100000"}, {0.3, "0100100010"}, {0.5, "1010101010"}, {0.8, "1101111011"}, {1, "1111111111"},
	} {
		for _, tripNights := range []float64{10, 3} {
			c := sloop()
			c.nights, c.tripNights, c.panelWp, c.engineHours, c.shore = [12]float64{6: 10}, tripNights, 0, 0, row.share
			b := c.aboard(t)
			x, rows := b.runUnit(unitOf(energy.Fan, energy.Thin, season.StartWarm))
			got := ""
			for i, h := range rows {
				if h.Clock != 5 {
					continue
				}
				full := float64(b.setup.Power.Bank.FullWh)
				if h.ChargeWh == full {
					got += "1"
					if evening := rows[i-12]; evening.Clock != 17 || !(evening.ChargeWh < full) {
						t.Errorf("share %g: the bank is at %g Wh before %d h", row.share, evening.ChargeWh, evening.Clock+1)
					}
					// It fills evenly from 18 to 6 h.
					evening := rows[i-12].ChargeWh
					for hour, night := range rows[i-11 : i+1] {
						near(t, "the bank on shore", night.ChargeWh, evening+(full-evening)*float64(hour+1)/12, 1e-9*full)
					}
				} else {
					got += "0"
				}
			}
			if got != row.nights {
				t.Errorf("share %g, trips of %g: nights %s, want %s", row.share, tripNights, got, row.nights)
			}
			if on := row.share > 0; on != (x.ShoreWh > 0) {
				t.Errorf("share %g: %g Wh from shore", row.share, x.ShoreWh)
			}
		}
	}
}

// TestMonths holds a month's hours to the ground's figures: the mean, the
// daily highest and lowest, the sun of the middle day.
//
// Guards NewMonths: "/ 2" of the range, the peak at 15 h, the shape's day.
func TestMonths(t *testing.T) {
	for _, g := range climate.Grounds() {
		sky := climate.NewSky(g)
		for month, m := range season.NewMonths(g, sky) {
			want := g.Months[month]
			var mean, share, moment float64
			for hour := range 24 {
				mean += m.OutdoorC[hour] / 24
				share += m.SunShare[hour]
				moment += m.SunShare[hour] * (float64(hour) + 0.5)
			}
			near(t, g.ID+": mean", mean, float64(want.AirMean), 1e-9)
			// Half an hour off the peak: cos 7.5° = 0.9914 of the swing.
			near(t, g.ID+": range", slices.Max(m.OutdoorC[:])-slices.Min(m.OutdoorC[:]), 0.9914*float64(want.AirMax-want.AirMin), 1e-3)
			near(t, g.ID+": peak", m.OutdoorC[14], m.OutdoorC[15], 1e-9)
			near(t, g.ID+": peak", m.OutdoorC[14], slices.Max(m.OutdoorC[:]), 1e-9)
			near(t, g.ID+": shares", share, 1, 1e-9)
			near(t, g.ID+": noon", moment, 12, 1e-9)
			near(t, g.ID+": sun", m.SunKWh, float64(want.Sun), 0)
			near(t, g.ID+": sea", m.SeaC, float64(want.Sea), 0)
			near(t, g.ID+": water", m.Water, want.HumidityRatio, 0)
			if m.SunShare != climate.HourShape(g.LatDeg, climate.MidMonthDay(month+1)) {
				t.Errorf("%s: month %d has the sun of another day", g.ID, month+1)
			}
		}
	}
}
