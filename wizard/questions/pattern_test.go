package questions

import (
	"slices"
	"testing"

	"coldreckon/economics"
)

func TestPattern(t *testing.T) {
	for _, tt := range []struct {
		text string
		want []Telling
	}{
		{"weekends in summer and all of August; we shop every third day",
			[]Telling{{NightsKey, "weekends in summer and all of August"}, {ShopKey, "3"}}},
		{"june 6, july 14, august 10", []Telling{{NightsKey, "june 6, july 14, august 10"}}},
		{"live aboard, shopping twice a week, half the nights in marinas",
			[]Telling{{NightsKey, "live aboard"}, {ShopKey, "3.5"}, {ShoreKey, "half"}}},
		{"60 nights in summer. Trips of 2 to 30 nights. Shop daily. Never plugged in.",
			[]Telling{{NightsKey, "60 nights in summer"}, {TripKey, "2 to 30"}, {ShopKey, "1"}, {ShoreKey, "none"}}},
		{"november to april, a week at a time, we buy food every 5 days", []Telling{{NightsKey, "november to april"}, {TripKey, "7"}, {ShopKey, "5"}}},
		{"weekends plus July and we shop once a week", []Telling{{NightsKey, "weekends plus July"}, {ShopKey, "7"}}},
		{"45 nights, 30 % on shore power", []Telling{{NightsKey, "45 nights"}, {ShoreKey, "30 %"}}},
		{"we shop every other day", []Telling{{ShopKey, "2"}}},
	} {
		got := Pattern(tt.text)
		if !slices.Equal(got, tt.want) {
			t.Errorf("%q: %q, want %q", tt.text, got, tt.want)
		}
		for _, told := range got {
			if err := Set(&economics.Boat{}, told.Key, told.Text); err != nil {
				t.Errorf("%q: %v", tt.text, err)
			}
		}
	}
}

func FuzzPattern(f *testing.F) {
	f.Add("weekends in summer and all of August; we shop every third day")
	f.Fuzz(func(t *testing.T, text string) {
		for _, told := range Pattern(text) {
			if _, ok := Find(told.Key); !ok {
				t.Errorf("%q tells %q", text, told.Key)
			}
		}
	})
}
