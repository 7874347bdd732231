package season

import (
	"reflect"
	"slices"
	"testing"
)

// What is counted of nights that stand for others is counted as often; what is
// longest or least, or belongs to a trip's start, is not. A new figure that is
// forgotten in repeat fails.
func TestNightsThatStandForOthers(t *testing.T) {
	once := []string{"Years", "LongestOff", "WorstRun", "LowestWh", "PullDownShoreWh", "ChilledKg"}
	since, now := Tally{}, Tally{}
	fill := func(tally *Tally, n int) {
		v := reflect.ValueOf(tally).Elem()
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() {
				continue
			}
			switch f := v.Field(i); f.Kind() {
			case reflect.Int:
				f.SetInt(int64(n))
			case reflect.Float64:
				f.SetFloat(float64(n))
			case reflect.Array:
				for k := range f.Len() {
					f.Index(k).Set(reflect.ValueOf(n).Convert(f.Type().Elem()))
				}
			}
		}
		tally.food[7] = uint32(n)
	}
	fill(&since, 10)
	fill(&now, 14)
	now.repeat(&since, 3)
	v := reflect.ValueOf(now)
	for i := range v.NumField() {
		name, want := v.Type().Field(i).Name, 22.0 // 10 + 3 × 4
		if slices.Contains(once, name) {
			want = 14
		}
		f := v.Field(i)
		if f.Kind() == reflect.Array {
			f = f.Index(7)
		}
		if !v.Type().Field(i).IsExported() && name != "food" {
			continue
		}
		got := 0.0
		switch f.Kind() {
		case reflect.Int:
			got = float64(f.Int())
		case reflect.Uint32:
			got = float64(f.Uint())
		case reflect.Float64:
			got = f.Float()
		}
		if got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
}

// A long trip is lived in part: its start night by night, then one night of three,
// month by month; other trips whole.
func TestInPart(t *testing.T) {
	year := [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	for _, row := range []struct{ trip, lived int }{
		{365, 131},     // 14 + 351/3
		{183, 71 + 70}, // 15 + 168/3, 14 + 168/3
		{179, 365}, {7, 365},
	} {
		whole := NewPlan(year, float64(row.trip))
		part := whole.InPart()
		if len(part.Nights) != row.lived || len(part.Trips) != len(whole.Trips) {
			t.Errorf("trips of %d: %d nights in %d trips, want %d in %d", row.trip, len(part.Nights), len(part.Trips), row.lived, len(whole.Trips))
		}
		var stands [12]int
		for _, trip := range part.Trips {
			for i := range trip.Nights {
				night := part.Nights[trip.First+i]
				if stands[night.Month]++; i >= trip.Alone {
					stands[night.Month] += partEach - 1
				}
				if i > 0 && night.Day <= part.Nights[trip.First+i-1].Day {
					t.Errorf("trips of %d: day %d after %d", row.trip, night.Day, part.Nights[trip.First+i-1].Day)
				}
			}
		}
		sum := 0
		for m, n := range stands {
			if sum += n; n < int(year[m])-2 || n > int(year[m])+2 || part.NightsIn(m) != int(year[m]) {
				t.Errorf("trips of %d: month %d stands for %d nights of %v", row.trip, m+1, n, year[m])
			}
		}
		if sum != 365 {
			t.Errorf("trips of %d: the nights stand for %d", row.trip, sum)
		}
	}
}
