package words

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// made is a reckoning made by hand: dry stores against a small unit.
func made() *economics.Reckoning {
	r := &economics.Reckoning{Months: []economics.MonthFigures{{Month: 7, Nights: 20, HeatGainW: 40, IceKgPerDay: 10, SolarWhPerDay: 300, HouseWhPerDay: 100, SmallWhPerDay: 250},
		{Month: 8, Nights: 10, HeatGainW: 30, IceKgPerDay: 8, SolarWhPerDay: 500, HouseWhPerDay: 100, SmallWhPerDay: 250}}}
	r.Boat.Name, r.Boat.Currency, r.Boat.Units, r.Boat.Money.Years = "Tern", "$", quantity.Metric, 10
	r.Boat.Known = map[string]quantity.How{"a": quantity.Told, "b": quantity.Told, "c": quantity.Measured}
	for i, id := range economics.Options {
		o := &r.Options[i]
		o.ID, o.WorkableOf100, o.AsToldWorksOf100 = id, 100, 100
		o.AsTold.Facts = economics.Facts{"option": string(id), "cold_share": 0.95}
		o.Fitted = o.AsTold
	}
	r.Verdict = economics.Verdict{Refrigerate: true, Option: economics.SmallUnit, Works: true, AsToldWorks: true, SureOfStep: true, SureOfWay: true,
		WayOf100: 95, StepOf100: 96, Runner: economics.DryStores, HasRunner: true}
	r.Of(economics.SmallUnit).BestOf100, r.Of(economics.DryStores).BestOf100, r.Of(economics.LargerUnit).BestOf100 = 95, 4, 1
	r.Futures.RefrigerateOf100, r.Futures.Preferred, r.Futures.Runner = 96, economics.SmallUnit, economics.DryStores
	return r
}

// The verb follows count and evidence. Source: the wording table of GRADE
// (high "is", moderate "probably", low "may"), from memory; bands of chances
// by IPCC, Fourth Assessment Report.
func TestVerbFollowsCountAndEvidence(t *testing.T) {
	for _, tt := range []struct {
		count, told int
		option      economics.OptionID
		want        string
	}{
		{95, 10, economics.SmallUnit, "Refrigerate: the small unit is the cheapest way"},
		{90, 10, economics.SmallUnit, "Refrigerate: the small unit is the cheapest way"},
		{89, 10, economics.SmallUnit, "Probably refrigerate: the small unit is probably the cheapest way"},
		{66, 10, economics.SmallUnit, "Probably refrigerate: the small unit is probably the cheapest way"},
		{65, 10, economics.SmallUnit, "Perhaps refrigerate: the small unit may be the cheapest way"},
		{95, 0, economics.SmallUnit, "Probably refrigerate: the small unit is probably the cheapest way"}, // weak evidence: one step down
		{70, 0, economics.SmallUnit, "Perhaps refrigerate: the small unit may be the cheapest way"},
		{95, 10, economics.DryStores, "Do not refrigerate: dry stores are the cheapest way"},
		{70, 10, economics.DryStores, "Probably not: dry stores are probably the cheapest way"},
	} {
		r := made()
		r.Verdict.WayOf100, r.Verdict.Option = tt.count, tt.option
		r.Verdict.Refrigerate = tt.option == economics.SmallUnit
		r.Boat.Known = map[string]quantity.How{}
		for i := range tt.told {
			r.Boat.Known[fmt.Sprint(i)] = quantity.Told
		}
		r.Boat.Assumptions = make([]economics.Assumption, 5)
		if got := Of(r, economics.Book{}).Answer(); !strings.Contains(got, tt.want) {
			t.Errorf("%d of 100, %d told: %q lacks %q", tt.count, tt.told, got, tt.want)
		}
	}
}

// Close races name no winner, and say whether the step or the way is open.
func TestAnswerNamesNoWinnerWhereThereIsNone(t *testing.T) {
	for _, tt := range []struct {
		name   string
		change func(*economics.Reckoning)
		want   string
	}{
		{"sure", func(*economics.Reckoning) {}, "Refrigerate: the small unit is the cheapest way that works for Tern, just as she is."},
		{"without", func(r *economics.Reckoning) { r.Verdict.Refrigerate, r.Verdict.Option = false, economics.IceOnly }, "Do not refrigerate: ice alone is the cheapest way"},
		{"step open", func(r *economics.Reckoning) { r.Verdict.SureOfStep, r.Verdict.WayOf100 = false, 50 }, "too close to call: the small unit is best in 50 of 100 futures, dry stores in 4."},
		{"way open", func(r *economics.Reckoning) { r.Verdict.SureOfWay = false }, "Refrigerate, but which way is too close to call"},
		{"nothing works", func(r *economics.Reckoning) { r.Verdict.Works = false }, "None of the four ways works"},
		{"no nights", func(r *economics.Reckoning) { r.Months = nil }, "With no nights aboard"},
		{"by worth", func(r *economics.Reckoning) { r.Verdict.ByWorth = true }, "the most worthwhile way"},
		{"with work", func(r *economics.Reckoning) {
			r.Of(economics.SmallUnit).Fit.Items = []economics.FitItem{{Piece: economics.LidPiece, Size: 50}}
			r.Verdict.AsToldWorks = false
		}, "after some work (50 mm more foam in the lid)."},
		{"long name", func(r *economics.Reckoning) { r.Boat.Name = strings.Repeat("Very ", 10) }, "works for this boat"},
	} {
		r := made()
		tt.change(r)
		if got := Of(r, economics.Book{}).Answer(); !strings.Contains(got, tt.want) {
			t.Errorf("%s: %q lacks %q", tt.name, got, tt.want)
		}
	}
}

// Ice tests and jug tests are measurements; ice that is remembered is told.
func TestEvidenceGrades(t *testing.T) {
	known := func(told, measured, remembered int) map[string]quantity.How {
		m := map[string]quantity.How{}
		for i := range told {
			m[fmt.Sprint("t", i)] = quantity.Told
		}
		for i := range measured {
			m[fmt.Sprint("m", i)] = quantity.Measured
		}
		for range remembered {
			m["evidence.ice_history"] = quantity.Measured
		}
		return m
	}
	for _, tt := range []struct {
		told, measured, remembered, assumed int
		want                                Evidence
	}{
		{19, 1, 0, 10, Evidence{1, 19, 10, Strong}},
		{19, 0, 1, 10, Evidence{0, 20, 10, Fair}},
		{12, 1, 0, 10, Evidence{1, 12, 10, Fair}},
		{9, 0, 0, 10, Evidence{0, 9, 10, Weak}},
		{0, 0, 0, 0, Evidence{0, 0, 0, Weak}},
	} {
		r := made()
		r.Boat.Known, r.Boat.Assumptions = known(tt.told, tt.measured, tt.remembered), make([]economics.Assumption, tt.assumed)
		if got := Of(r, economics.Book{}).Evidence(); got != tt.want {
			t.Errorf("%+v: %+v, want %+v", tt, got, tt.want)
		}
	}
}

// The scale has a word for every count of 100 and no count has two. Source:
// IPCC, Fourth Assessment Report, working group II, table of likelihood.
func TestScaleCoversEveryCountOnce(t *testing.T) {
	for n := range 101 {
		words := 0
		for _, b := range Scale {
			if n >= b.From && n <= b.To {
				words++
			}
		}
		if words != 1 {
			t.Errorf("%d of 100 has %d words", n, words)
		}
	}
	for n, want := range map[int]string{100: "virtually certain", 99: "very likely", 90: "very likely", 89: "likely", 66: "likely", 65: "about as likely as not",
		33: "about as likely as not", 32: "unlikely", 9: "very unlikely", 0: "exceptionally unlikely"} {
		if got := likely(n); got != fmt.Sprintf("%s (%d of 100)", want, n) {
			t.Errorf("%d of 100 is called %q", n, got)
		}
	}
}

func TestMoneyIsRoundedToWhatIsKnown(t *testing.T) {
	v := Of(made(), economics.Book{})
	for x, want := range map[float64]string{0: "$0", 0.234: "$0.23", 9.96: "$10", 1638: "$1,600", -1638: "-$1,600", 996: "$1,000", 12_345_678: "$12 million",
		1_450_000: "$1.5 million", 98_765_432: "$99 million", 2.4e9: "$2.4 billion", 1e9: "$1 billion", 0.001: "$0", math.Inf(1): "–"} {
		if got := v.Money(x); got != want {
			t.Errorf("%v prints as %q, want %q", x, got, want)
		}
	}
	for _, tt := range []struct {
		x, low, high float64
		want         string
	}{
		{1400, 1300, 1700, "$1,400 (1,300–1,700)"}, {0, 0, 0, "$0"}, {12e6, 11e6, 23e6, "$12 million (11–23 million)"},
		{9e5, 8e5, 2e6, "$900,000 (800,000–2 million)"}, {5, -3, 8, "$5 (-$3–8)"},
		{1.23, 0, 19, "$1 (0–19)"}, {764, 140, 2800, "$800 (140–2,800)"}, {0.14, 0, 2.2, "$0.10 (0–2.20)"}, // no finer than the range
	} {
		if got := v.Tight(tt.x, tt.low, tt.high); got != tt.want {
			t.Errorf("%v (%v to %v) prints as %q, want %q", tt.x, tt.low, tt.high, got, tt.want)
		}
	}
}

// A switching value is worded in the owner's units, on the right side, with
// its chance; the likeliest stands first.
func TestFlips(t *testing.T) {
	r := made()
	r.Boat.Units = quantity.US
	in := func(name, unit string, at float64, above bool, chance float64) economics.InputFigures {
		return economics.InputFigures{Input: economics.Input{Name: name, Label: "label of " + name, Unit: unit, Typical: 1}, SwitchAt: at, SwitchAbove: above, SwitchTo: economics.DryStores, ChanceBeyond: chance, SwitchKnown: true}
	}
	r.Futures.Inputs = []economics.InputFigures{
		in("ice_price", "money/kg", 1.1, false, 0.12), in("nights", "nights", 51.3, false, 0.35), in("leak", "W/K", 2, true, 0.05), in("sun", "", 0.8, false, 0.02),
	}
	var got []string
	for _, f := range Of(r, economics.Book{}).Flips() {
		got = append(got, f.Text)
	}
	want := []string{
		"If you spend fewer than 51 nights aboard a year, dry stores are better. 35 of 100 futures lie there.",
		"If ice costs less than $0.50/lb, dry stores are better. 12 of 100 futures lie there.",
		"If the box leaks more than 3.8 Btu/h·°F, dry stores are better. 5 of 100 futures lie there.", // 2 W/K x 1.8956, NIST SP 811
		"If label of sun is less than 80 % of what was reckoned, dry stores are better. 2 of 100 futures lie there.",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// What is worth knowing is sorted; taste and trifles are never in it.
func TestMeasureFirst(t *testing.T) {
	r := made()
	r.Of(economics.SmallUnit).Fitted.Present = 2000
	in := func(name string, worth float64, taste bool) economics.InputFigures {
		return economics.InputFigures{Input: economics.Input{Name: name, Label: name, Taste: taste}, EVPPI: worth}
	}
	r.Futures.Inputs = []economics.InputFigures{in("nights", 50, false), in("cold_day_worth", 900, true), in("upkeep", 9, false), in("leak", 140, false)}
	got := ""
	for _, m := range Of(r, economics.Book{}).MeasureFirst() {
		got += m.Key + " "
	}
	if got != "leak nights " {
		t.Errorf("measure first %q, want leak, then nights", got)
	}
}

func TestSunAgainstDemand(t *testing.T) {
	r := made() // July has 200 Wh to spare for 250, August 400
	if got, want := Of(r, economics.Book{}).SunAgainstDemand(), "The sun alone carries the small unit, but not in July."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	r.Months[0].SolarWhPerDay = 350
	if got, want := Of(r, economics.Book{}).SunAgainstDemand(), "In every month aboard the sun alone would carry the small unit."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// The order of the payments at each year's end makes the sentence.
func TestOvertakes(t *testing.T) {
	paid := func(xs ...float64) []quantity.Range {
		var out []quantity.Range
		for _, x := range xs {
			out = append(out, quantity.Exactly(x))
		}
		return out
	}
	for _, tt := range []struct {
		name       string
		small, dry []quantity.Range
		want       string
	}{
		{"dear at first", paid(10, 11, 12, 13), paid(0, 5, 10, 15), "The small unit costs more at first than dry stores, and less in all from year 3 on."},
		{"never dearer", paid(0, 1, 2, 3), paid(1, 2, 3, 4), "By every year's end the small unit has cost less than dry stores."},
		{"never cheaper", paid(9, 9, 9, 9), paid(1, 2, 3, 4), "By every year's end dry stores have cost less than the small unit at typical figures."},
		{"overtaken", paid(0, 5, 10, 15), paid(10, 11, 12, 13), "From year 3 on dry stores have cost less in all than the small unit at typical figures."},
	} {
		r := made()
		r.Futures.Paid[1], r.Futures.Paid[2] = tt.dry, tt.small
		if got := Of(r, economics.Book{}).Overtakes(); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// Where ice does not do, the report says how much fits, how long it is gone
// and whether the food leaves room for more.
func TestMoreIce(t *testing.T) {
	for _, tt := range []struct {
		name  string
		works int
		room  float64
		want  string
	}{
		{"it does", 90, 30, ""},
		{"room to spare", 20, 30, "Why not more ice? A full load is 10 kg, in the 33 % of the box that ice is given (assumed). It is gone for up to 34 hours at a stretch. " +
			"The food needs only 5 L of the 30 L left, so more ice would fit. Give it a larger share and reckon again to see what that does."},
		{"no room", 20, 6, "Why not more ice? A full load is 10 kg, in the 33 % of the box that ice is given (assumed). It is gone for up to 34 hours at a stretch. " +
			"The food needs 5 L of the 6 L left, so more ice would crowd it out."},
	} {
		r := made()
		r.Boat.Ice.ShareOfBox = 0.33
		o := r.Of(economics.IceOnly)
		o.WorkableOf100 = tt.works
		o.Fitted.Facts = economics.Facts{"option": "ice", "ice_capacity_kg": 10.0, "hours_off_longest": 34.0, "room_for_food_l": tt.room, "food_to_keep_l": 5.0}
		if got := Of(r, economics.Book{}).MoreIce(); got != tt.want {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
}

// What would only turn the mean to the answer that leads by counts is no flip.
func TestNoFlipToTheAnswer(t *testing.T) {
	r := made()
	r.Futures.Preferred = economics.IceOnly
	r.Futures.Inputs = []economics.InputFigures{{Input: economics.Input{Name: "nights", Unit: "nights"}, SwitchAt: 80, SwitchAbove: true, SwitchTo: economics.SmallUnit, ChanceBeyond: 0.2, SwitchKnown: true}}
	for _, f := range Of(r, economics.Book{}).Flips() {
		if f.Beyond >= 0 {
			t.Errorf("%q changes nothing", f.Text)
		}
	}
	// Where most futures lie beyond, its other side is what turns the answer away.
	r.Futures.Inputs[0].ChanceBeyond = 0.7
	flips := Of(r, economics.Book{}).Flips()
	at := slices.IndexFunc(flips, func(f Flip) bool { return f.Beyond >= 0 })
	if want := "If you spend fewer than 80 nights aboard a year, ice alone is better. 30 of 100 futures lie there."; at < 0 || flips[at].Text != want {
		t.Errorf("found %+v, expected %q among them", flips, want)
	}
}

// What a piece buys is told against the same futures with all pieces.
func TestWhatAPieceBuys(t *testing.T) {
	for _, tt := range []struct {
		without int
		with    float64
		saves   float64
		want    string
	}{
		{55, 0.975, 340, "Without it: works in 55 of 100. It saves $340 over 10 years on average."},
		{55, 0.975, -12, "Without it: works in 55 of 100. It adds $12 over 10 years on average."},
		{98, 0.975, 0, "Not needed to work."},
		{21, 0.205, 50, "Helps, but not enough."},
		{90, 0.85, 50, "Better left out: works in 90 of 100 without it, 85 with it."},
	} {
		r := made()
		o := r.Of(economics.SmallUnit)
		o.Fit.SearchWorks, o.Fit.Reached = tt.with, tt.with >= 0.9
		if got := Of(r, economics.Book{}).buys(o, economics.FitItem{WithoutWorksOf100: tt.without, WithoutPresent: tt.saves}); got != tt.want {
			t.Errorf("%d of 100 without, %v with: %q, want %q", tt.without, tt.with, got, tt.want)
		}
	}
}

// Ice at 1,000 against a unit at 1,500 that gives 50 cold days more, each worth
// 2: 1000 - 1500 + 100 x 8.5302 = 353. The factor is that of 10 years at 3 %,
// as in the tables of NIST Handbook 135.
func TestApartCountsToldWorth(t *testing.T) {
	r := made()
	r.Boat.Money.Discount, r.Boat.Money.ColdDayWorth = 0.03, 2
	ice, unit := &r.Of(economics.IceOnly).Fitted, &r.Of(economics.SmallUnit).Fitted
	ice.Present, unit.Present, unit.ColdDays = 1000, 1500, 50
	for byWorth, want := range map[bool]float64{false: -500, true: 353.02} {
		r.Verdict.ByWorth = byWorth
		if got := Of(r, economics.Book{}).Apart(economics.IceOnly, economics.SmallUnit); math.Abs(got-want) > 0.01 {
			t.Errorf("worth told %v: %v apart, want %v", byWorth, got, want)
		}
	}
}
