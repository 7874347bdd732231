package cost

import (
	"math"
	"slices"
	"testing"

	"coldreckon/economics/quantity"
)

// Guards each rule of Schedule: year < last in enter (the row of a life equal
// to the horizon), Floor in wornOut (the rows of fractional lives; with Ceil
// they are renewed a year early), the sign of the residual, the clearing of
// the buffer; in residual the choice between first cost and renewal, the
// straight line, and the greater of it and Resale.
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
		{"fractional life", []Line{{Life: 2.5, Renewal: 10}}, 11, Flows{0, 0, 0, 10, 0, 10, 0, 0, 10, 0, 10, -6}}, // the fifth ends at 12.5
		{"two lives a year", []Line{{Life: 0.5, Renewal: 3}}, 3, Flows{0, 6, 6, 0}},
		{"life not exact in binary", []Line{{Life: 0.1, Renewal: 1}}, 4, Flows{0, 10, 10, 10, 0}},
		{"a third of a year", []Line{{Life: 1.0 / 3, Renewal: 1}}, 3, Flows{0, 3, 3, 0}},
		{"lasts", []Line{{First: 5, Life: 0, Renewal: 5}}, 2, Flows{5, 0, 0}},
		{"outlives the horizon", []Line{{First: 5, Life: 30, Renewal: 5}}, 2, Flows{5, 0, 0}},
		{"seen at sale", []Line{{First: 900, Yearly: 20, Resale: 0.25}}, 2, Flows{900, 20, -205}},
		{"first life half over, no sale", []Line{{First: 80, Life: 8, Renewal: 80}}, 4, Flows{80, 0, 0, 0, 0}},
		{"a renewal's unused half", []Line{{First: 90, Life: 8, Renewal: 80}}, 12, Flows{90, 0, 0, 0, 0, 0, 0, 0, 80, 0, 0, 0, -40}},
		{"unused half above resale", []Line{{First: 90, Life: 8, Renewal: 80, Resale: 0.25}}, 12, Flows{90, 0, 0, 0, 0, 0, 0, 0, 80, 0, 0, 0, -40}},
		{"resale above unused half", []Line{{First: 90, Life: 8, Renewal: 80, Resale: 0.75}}, 12, Flows{90, 0, 0, 0, 0, 0, 0, 0, 80, 0, 0, 0, -60}},
		{"worn out in the last year, sold", []Line{{First: 80, Life: 4, Renewal: 80, Resale: 0.25}}, 4, Flows{80, 0, 0, 0, 0}},
		{"renewal worn out in the last year, sold", []Line{{First: 80, Life: 2, Renewal: 80, Resale: 0.25}}, 4, Flows{80, 0, 80, 0, 0}},
		{"there already, sold before it wears out", []Line{{Life: 8, Used: 4, Renewal: 80, Resale: 0.25}}, 3, Flows{0, 0, 0, 0}},
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
	// Of the second renewal half is unused: a sale counts from there on.
	base := Line{First: 900, Yearly: 30, Life: 4, Renewal: 700, Resale: 0.75}
	at := func(l Line) quantity.Money { return Schedule([]Line{l}, 10, nil).PresentCost(0.03) }
	for name, dearer := range map[string]Line{
		"first":   {First: 901, Yearly: 30, Life: 4, Renewal: 700, Resale: 0.75},
		"yearly":  {First: 900, Yearly: 31, Life: 4, Renewal: 700, Resale: 0.75},
		"renewal": {First: 900, Yearly: 30, Life: 4, Renewal: 701, Resale: 0.75},
		"life":    {First: 900, Yearly: 30, Life: 3, Renewal: 700, Resale: 0.75},
		"sale":    {First: 900, Yearly: 30, Life: 4, Renewal: 700, Resale: 0.74},
	} {
		if !(at(dearer) > at(base)) {
			t.Errorf("%s: %v is not above %v", name, at(dearer), at(base))
		}
	}
}

// One year more never costs a whole renewal: what is renewed shortly before the
// end leaves its unused years. Of a thing for 700 that lasts 12 years, the
// yearly equivalent at 3 % rises by no more than a tenth when the horizon grows
// by a year, and a renewal that is paid and credited whole at the same year's
// end would be no cost at all.
//
// Guards "unused" in residual: without it the thirteenth year raises the yearly
// equivalent by half.
func TestAYearMoreNeverCostsARenewal(t *testing.T) {
	for _, l := range []Line{{First: 700, Life: 12, Renewal: 700}, {First: 1200, Life: 7.3, Renewal: 900, Yearly: 20, Resale: 0.15}, {Life: 10, Used: 5, Renewal: 900, Yearly: 90}} {
		for years := 2; years < 40; years++ {
			is, was := Schedule([]Line{l}, years+1, nil).YearlyEquivalent(0.03), Schedule([]Line{l}, years, nil).YearlyEquivalent(0.03)
			if l.First > 0 && is > 1.1*was {
				t.Errorf("%+v: %.2f a year over %d years, %.2f over %d", l, is, years+1, was, years)
			}
			// A renewal of a life L weighs a year's part of it, and the interest.
			if rise := Schedule([]Line{l}, years+1, nil).PresentCost(0.03) - Schedule([]Line{l}, years, nil).PresentCost(0.03); float64(rise) >
				float64(l.Yearly)+float64(l.Renewal)*(1/float64(l.Life)+0.03)+float64(l.Resale)*float64(l.First) {
				t.Errorf("%+v: the year %d costs %.2f", l, years+1, rise)
			}
		}
	}
}

// A thing that is there already wears out the sooner by what is over of its
// first life; later lives are whole: of 10 years with 3 gone, the first 7 from
// now, then every 10, and the last of them ends two years after the 25th. Laid
// out by hand; at half a life, years gone and years left are the same, which
// tells nothing.
//
// Guards the sign of "+float64(l.Used)" in wornOut and in residual.
func TestScheduleOfAThingAlreadyUsed(t *testing.T) {
	for _, row := range []struct {
		life, used quantity.Year
		renewed    []int
		left       quantity.Money // at the end, of a renewal of 100
	}{
		{10, 3, []int{7, 17}, 20}, {10, 8, []int{2, 12, 22}, 70}, {4, 2, []int{2, 6, 10, 14, 18, 22}, 25},
		{7, 3.5, []int{4, 11, 18}, 0}, {12, 0.5, []int{12, 24}, 87.5}, {20, 19, []int{1, 21}, 80},
	} {
		flows := Schedule([]Line{{Name: "unit", Life: row.life, Used: row.used, Renewal: 100}}, 25, nil)
		for year, paid := range flows {
			want := quantity.Money(0)
			if slices.Contains(row.renewed, year) {
				want = 100
			}
			if year == 25 {
				want = -row.left
			}
			if math.Abs(float64(paid-want)) > 1e-9 {
				t.Errorf("life %v, used %v, year %d: %v, want %v", row.life, row.used, year, paid, want)
			}
		}
	}
}
