package economics_test

import (
	"testing"

	"coldreckon/economics"
)

// A dearer cause is never mended where a cheaper one is not, nor one less where
// mending is worth more.
func TestMendingFollowsItsWorth(t *testing.T) {
	rank := map[economics.Mending]int{economics.Mend: 0, economics.MendUnder: 1, economics.Replace: 2}
	for worth := 0.0; worth <= 1000; worth += 50 {
		for low := 0.0; low <= 1000; low += 50 {
			for high := low; high <= 1200; high += 100 {
				at := rank[economics.Mendings(low, high, worth)]
				if rank[economics.Mendings(low+50, high+50, worth)] < at {
					t.Errorf("worth %v: %v to %v is further from mending than 50 more", worth, low, high)
				}
				if rank[economics.Mendings(low, high, worth+50)] > at {
					t.Errorf("%v to %v: further from mending when it is worth 50 more than %v", low, high, worth)
				}
			}
		}
	}
	for _, tt := range []struct {
		low, high, worth float64
		want             economics.Mending
	}{{10, 60, 300, economics.Mend}, {200, 900, 300, economics.MendUnder}, {400, 1300, 300, economics.Replace}, {0, 60, 0, economics.MendUnder}} {
		if got := economics.Mendings(tt.low, tt.high, tt.worth); got != tt.want {
			t.Errorf("%v to %v, worth %v: %s, want %s", tt.low, tt.high, tt.worth, got, tt.want)
		}
	}
	var r economics.Reckoning
	if got := r.Mend(10, 60); got != economics.MendCheap {
		t.Errorf("without an old unit: %s", got)
	}
}
