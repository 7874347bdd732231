package cost

import (
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// Guards each rule of Schedule: year < last in enter (the row of a life equal
// to the horizon), Floor in wornOut (the rows of fractional lives; with Ceil
// they are renewed a year early), the sign of the residual, the clearing of
// the buffer.
// Source: NIST Handbook 135 and ASTM E917, from memory, for the timing; rows
// laid out by hand.
func TestSchedule(t *testing.T) {
	for _, row := range []struct {
		name  string
		lines []Line
		years int
		want  Flows
	}{
		{"first and yearly", []Line{{First: 900, Yearly: 20}}, 3, Flows{900, 20, 20, 20}},
		{"two lines", []Line{{First: 900}, {First: 350, Yearly: 5}}, 2, Flows{1250, 5, 5}},
		{"renewed", []Line{{First: 10, Life: 2, Renewal: 8}}, 6, Flows{10, 0, 8, 0, 8, 0, 0}},
		{"life equal to the horizon", []Line{{First: 10, Life: 5, Renewal: 10}}, 5, Flows{10, 0, 0, 0, 0, 0}},
		{"life ends within the last year", []Line{{Life: 4.5, Renewal: 10}}, 5, Flows{0, 0, 0, 0, 0, 0}},
		{"fractional life", []Line{{Life: 2.5, Renewal: 10}}, 11, Flows{0, 0, 0, 10, 0, 10, 0, 0, 10, 0, 10, 0}},
		{"two lives a year", []Line{{Life: 0.5, Renewal: 3}}, 3, Flows{0, 6, 6, 0}},
		{"life not exact in binary", []Line{{Life: 0.1, Renewal: 1}}, 4, Flows{0, 10, 10, 10, 0}},
		{"a third of a year", []Line{{Life: 1.0 / 3, Renewal: 1}}, 3, Flows{0, 3, 3, 0}},
		{"lasts", []Line{{First: 5, Life: 0, Renewal: 5}}, 2, Flows{5, 0, 0}},
		{"outlives the horizon", []Line{{First: 5, Life: 30, Renewal: 5}}, 2, Flows{5, 0, 0}},
		{"seen at sale", []Line{{First: 900, Yearly: 20, SeenAtSale: 135}}, 2, Flows{900, 20, -115}},
		{"a yearly saving", []Line{{Yearly: -15}}, 2, Flows{0, -15, -15}},
		{"nothing", nil, 2, Flows{0, 0, 0}},
	} {
		stale := Flows{7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7}
		if got := Schedule(row.lines, row.years, stale); !slices.Equal(got, row.want) {
			t.Errorf("%s: %v, want %v", row.name, got, row.want)
		}
		if got := Schedule(row.lines, row.years, nil); !slices.Equal(got, row.want) {
			t.Errorf("%s, without a buffer: %v, want %v", row.name, got, row.want)
		}
	}
}

// A common horizon with like-for-like renewals costs, a year, what one life
// does (ASTM E917, from memory): 15 years hold three lives of 5, the last of
// which ends with the horizon.
func TestRenewalsMatchOneLife(t *testing.T) {
	pump := []Line{{First: 180, Life: 5, Renewal: 180, Yearly: 12}}
	one := Schedule(pump, 5, nil).YearlyEquivalent(0.04)
	three := Schedule(pump, 15, nil).YearlyEquivalent(0.04)
	near(t, "yearly equivalent", float64(three), float64(one), 1e-10)
}

func TestPresentCostGrowsWithEveryPrice(t *testing.T) {
	base := Line{First: 900, Yearly: 30, Life: 4, Renewal: 700, SeenAtSale: 100}
	at := func(l Line) quantity.Money { return Schedule([]Line{l}, 10, nil).PresentCost(0.03) }
	for name, dearer := range map[string]Line{
		"first":   {First: 901, Yearly: 30, Life: 4, Renewal: 700, SeenAtSale: 100},
		"yearly":  {First: 900, Yearly: 31, Life: 4, Renewal: 700, SeenAtSale: 100},
		"renewal": {First: 900, Yearly: 30, Life: 4, Renewal: 701, SeenAtSale: 100},
		"life":    {First: 900, Yearly: 30, Life: 3, Renewal: 700, SeenAtSale: 100},
		"sale":    {First: 900, Yearly: 30, Life: 4, Renewal: 700, SeenAtSale: 99},
	} {
		if !(at(dearer) > at(base)) {
			t.Errorf("%s: %v is not above %v", name, at(dearer), at(base))
		}
	}
}

// A thing that is there already wears out the sooner by what is over of its
// first life; later lives are whole: of 10 years with 3 gone, the first 7 from
// now, then every 10. Laid out by hand; at half a life, years gone and years
// left are the same, which tells nothing.
//
// Guards the sign of "+float64(l.Used)" in wornOut.
func TestScheduleOfAThingAlreadyUsed(t *testing.T) {
	for _, row := range []struct {
		life, used quantity.Year
		renewed    []int
	}{
		{10, 3, []int{7, 17}}, {10, 8, []int{2, 12, 22}}, {4, 2, []int{2, 6, 10, 14, 18, 22}},
		{7, 3.5, []int{4, 11, 18}}, {12, 0.5, []int{12, 24}}, {20, 19, []int{1, 21}},
	} {
		flows := Schedule([]Line{{Name: "unit", Life: row.life, Used: row.used, Renewal: 100}}, 25, nil)
		for year, paid := range flows {
			want := quantity.Money(0)
			if slices.Contains(row.renewed, year) {
				want = 100
			}
			if paid != want {
				t.Errorf("life %v, used %v, year %d: %v, want %v", row.life, row.used, year, paid, want)
			}
		}
	}
}
