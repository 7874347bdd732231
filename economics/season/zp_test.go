package season_test

import (
	"fmt"
	"testing"

	"coldreckon/economics/season"
)

func TestPlanShow(t *testing.T) {
	for _, c := range []struct {
		n [12]float64
		t float64
	}{
		{[12]float64{6: 2}, 2}, {[12]float64{5: 3.5, 6: 4.4, 7: 2.6}, 2.5}, {[12]float64{4: 3, 8: 4}, 5},
		{[12]float64{0: 3, 1: 2, 10: 2, 11: 3}, 4}, {[12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}, 400},
		{[12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}, 0.2}, {[12]float64{5: 40}, 7}, {[12]float64{}, 7}, {[12]float64{5: -3, 6: 0.4}, 7},
		{[12]float64{0: 2, 5: 1, 10: 2, 11: 3}, 4},
	} {
		p := season.NewPlan(c.n, c.t)
		fmt.Println(c.n, c.t, len(p.Nights), p.Trips)
		if len(p.Nights) < 20 {
			fmt.Println(p.Nights)
		} else {
			fmt.Println(p.Nights[:3], p.Nights[len(p.Nights)-3:])
		}
	}
}
