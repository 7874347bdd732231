package season

import (
	"reflect"
	"slices"
	"testing"
)

// What is counted of nights that stand for others is counted as often; what is
// longest or least is not. A new figure that is
// forgotten in repeat fails.
func TestNightsThatStandForOthers(t *testing.T) {
	once := []string{"Years", "LongestOff", "WorstRun", "LowestWh"}
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

// A long year is lived in part: of short trips one in four, of one that takes half
// a year its start night by night and then one night of four, other trips whole.
// Each part stands for all its nights, and together they spend each.
func TestInParts(t *testing.T) {
	year := [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	for _, row := range []struct {
		nights [12]float64
		trip   float64
		lived  int
	}{
		{year, 365, 104},     // 17 + 348/4
		{year, 183, 57 + 56}, // 15 + 168/4, 14 + 168/4
		{year, 7, 13*7 + 1},  // 52 of 53 trips in fours; one of a night
		{year, 60, 365},
		{[12]float64{4: 31, 5: 30, 6: 31, 7: 31, 8: 30}, 7, 153},
	} {
		whole := NewPlan(row.nights, row.trip)
		total := 0.0
		for _, n := range row.nights {
			total += n
		}
		spent := map[Night]bool{}
		for at, part := range whole.InParts(180) {
			if len(part.Nights) != row.lived {
				t.Errorf("trips of %v: %d nights, want %d", row.trip, len(part.Nights), row.lived)
			}
			stand := 0.0
			for _, trip := range part.Trips {
				for i := range trip.Nights {
					night := part.Nights[trip.First+i]
					spent[night] = true
					if stand++; i >= trip.Alone {
						stand += partEach - 1
					}
					if i > 0 && night.Day <= part.Nights[trip.First+i-1].Day {
						t.Errorf("trips of %v, part %d: day %d after %d", row.trip, at, night.Day, part.Nights[trip.First+i-1].Day)
					}
				}
			}
			if stand != total {
				t.Errorf("trips of %v, part %d: the nights stand for %v of %v", row.trip, at, stand, total)
			}
		}
		if float64(len(spent)) != total {
			t.Errorf("trips of %v: %d nights of %v are ever spent", row.trip, len(spent), total)
		}
	}
}
