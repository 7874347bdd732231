package words

import (
	"math"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// made is a reckoning made by hand: the small unit leads, ice and the larger
// unit do as well.
func made() *economics.Reckoning {
	r := &economics.Reckoning{Months: []economics.MonthFigures{{Month: 7, Nights: 20, HeatGainW: 40, IceKgPerDay: 10, SolarWhPerDay: 300, HouseWhPerDay: 100, SmallWhPerDay: 250},
		{Month: 8, Nights: 10, HeatGainW: 30, IceKgPerDay: 8, SolarWhPerDay: 500, HouseWhPerDay: 100, SmallWhPerDay: 250}}}
	r.WithWork = r.Months
	r.Boat.Name, r.Boat.Currency, r.Boat.Units, r.Boat.Money.Years = "Tern", "$", quantity.Metric, 10
	r.Boat.Cruising.Crew, r.Boat.Food.Target = 2, 4
	r.Boat.Known = map[string]quantity.How{"a": quantity.Told, "b": quantity.Told, "c": quantity.Measured}
	for i, id := range economics.Options {
		o := &r.Options[i]
		o.ID, o.WorksOf100, o.AsToldWorksOf100 = id, 100, 100
		o.AsTold.Facts = economics.Facts{"option": string(id), "kept_share": 0.95, "cold_share": 0.95, "cool_share": 1.0}
		o.Fitted = o.AsTold
		o.PriceOfCold = quantity.Range{Low: 3, Typical: 4.4, High: 9}
		o.ExtraDays, o.KeptDays = quantity.Exactly(28), quantity.Exactly(28)
	}
	dry := r.Of(economics.DryStores)
	dry.PriceOfCold, dry.WorksOf100 = quantity.Exactly(math.Inf(1)), 0
	r.Of(economics.IceOnly).PriceOfCold.Typical = 7.2
	r.Of(economics.SmallUnit).BestOf100, r.Of(economics.IceOnly).BestOf100, r.Of(economics.LargerUnit).BestOf100 = 80, 15, 5
	r.Answer = economics.Answer{Case: economics.ByWorth, Ways: []economics.OptionID{economics.SmallUnit}, WayOf100: 80, ReachOf100: 93,
		NoWorth: 3, EvenWorth: 5, YesWorth: 5.5, Grade: economics.Fair,
		Counts: []economics.WorthCount{{Worth: 3, Of100: 25}, {Worth: 5, Of100: 61}, {Worth: 5.5, Of100: 75}}}
	r.Futures.Weighed = []economics.OptionID{economics.IceOnly, economics.SmallUnit, economics.LargerUnit}
	r.Futures.Preferred, r.Futures.Runner, r.Futures.Worth = economics.SmallUnit, economics.IceOnly, 4.4
	return r
}

// tell makes the worth of a cold day one that the owner told.
func tell(r *economics.Reckoning, low, high float64, yesLow, yesHigh int) {
	r.Boat.Known["money.cold_day_worth"] = quantity.Told
	r.Answer.Case, r.Answer.Worth, r.Answer.YesOf100 = economics.WorthTold, quantity.Range{Low: low, Typical: (low + high) / 2, High: high}, [2]int{yesLow, yesHigh}
}

// Every case has its headline: at most thirty words, and never more sure than
// the count and the evidence are.
func TestHeadlines(t *testing.T) {
	ways := func(ids ...economics.OptionID) []economics.OptionID { return ids }
	hazard := economics.Criterion{ID: "fuel-vapour", Kind: economics.Hazard, Short: "fuel vapour can reach it"}
	for _, tt := range []struct {
		name   string
		change func(*economics.Reckoning)
		want   string
	}{
		{"no nights", func(r *economics.Reckoning) { r.Months, r.Answer = nil, economics.Answer{Case: economics.NoNights} },
			"There is nothing to decide: no nights aboard were told, so no food aboard has to be kept cold."},
		{"nothing cold", func(r *economics.Reckoning) { r.Answer = economics.Answer{Case: economics.NothingCold} },
			"There is nothing to decide: by your account nothing aboard has to be cold."},
		{"by worth", func(*economics.Reckoning) {},
			"Fit the small unit if a cold day is worth $5.50 or more to you. Under $3, live on food that keeps. Between, it is close."},
		{"by worth, from nothing", func(r *economics.Reckoning) { r.Answer.NoWorth = 0 },
			"Fit the small unit if a cold day is worth $5.50 or more to you. For less it is close."},
		{"only one figure fits", func(r *economics.Reckoning) { r.Answer.NoWorth = 5.5 },
			"Fit the small unit if a cold day is worth $5.50 or more to you. Under that, live on food that keeps."},
		{"cool decides", func(r *economics.Reckoning) { r.Boat.Food.CoolIsEnough = quantity.Yes },
			"Fit the small unit if a cool day is worth $5.50 or more to you. Under $3, live on food that keeps. Between, it is close."},
		{"ice", func(r *economics.Reckoning) { r.Answer.Ways = ways(economics.IceOnly) },
			"Use ice if a cold day is worth $5.50 or more to you. Under $3, live on food that keeps. Between, it is close."},
		{"two lead", func(r *economics.Reckoning) { r.Answer.Ways = ways(economics.SmallUnit, economics.IceOnly) },
			"Use ice or fit the small unit if a cold day is worth $5.50 or more to you. Under $3, live on food that keeps. Between, it is close."},
		{"three lead", func(r *economics.Reckoning) {
			r.Answer.Ways = ways(economics.SmallUnit, economics.IceOnly, economics.LargerUnit)
		}, "Use ice or fit either unit if a cold day is worth $5.50 or more to you. Under $3, live on food that keeps. Between, it is close."},
		{"unit aboard", func(r *economics.Reckoning) { r.Boat.Box.FittedUnit = economics.UnitWorks },
			"Keep the unit aboard if a cold day is worth $5.50 or more to you. Under $3, live on food that keeps. Between, it is close."},
		{"sure", func(r *economics.Reckoning) { tell(r, 10, 10, 94, 94) },
			"Fit the small unit: it is worth it (94 of 100). A cold day costs about $4.50 and you said $10."},
		{"sure of a typical boat", func(r *economics.Reckoning) { tell(r, 10, 10, 94, 94); r.Answer.Grade = economics.Weak },
			"Fit the small unit: likely worth it (94 of 100). A cold day costs about $4.50 and you said $10."},
		{"likely", func(r *economics.Reckoning) { tell(r, 6, 6, 81, 81) },
			"Fit the small unit: likely worth it (81 of 100). A cold day costs about $4.50 and you said $6."},
		{"leaning, over a range", func(r *economics.Reckoning) { tell(r, 5, 8, 61, 88) },
			"Fit the small unit: more likely than not worth it (61 to 88 of 100). A cold day costs about $4.50 and you said $5 to $8."},
		{"not, over a range", func(r *economics.Reckoning) { tell(r, 2, 4, 0, 20) },
			"Live on food that keeps: to fit the small unit is worth it in none of 100 futures at $2, in 20 at $4. A cold day costs about $4.50."},
		{"turns within a range", func(r *economics.Reckoning) { tell(r, 2, 8, 0, 90) },
			"At $2 a day live on food that keeps; at $8 fit the small unit (0 and 90 of 100). A cold day costs about $4.50."},
		{"turns within a range, three lead", func(r *economics.Reckoning) {
			tell(r, 2, 8, 12, 60)
			r.Answer.Ways = ways(economics.SmallUnit, economics.IceOnly, economics.LargerUnit)
		}, "At $2 a day live on food that keeps; at $8 use ice or fit either unit (12 and 60 of 100). A cold day costs about $4.50."},
		{"close, over a range", func(r *economics.Reckoning) { tell(r, 4, 8, 41, 90) },
			"It is a close call whether to fit the small unit: worth it in 41 of 100 futures at $4, in 90 at $8. A cold day costs about $4.50."},
		{"close", func(r *economics.Reckoning) { tell(r, 4.5, 4.5, 50, 50) },
			"It is a close call whether to fit the small unit: worth it in 50 of 100 futures. A cold day costs about $4.50 and you said $4.50."},
		{"leaning against", func(r *economics.Reckoning) { tell(r, 3.5, 3.5, 31, 31) },
			"Rather live on food that keeps: to fit the small unit is worth it in 31 of 100 futures. A cold day costs about $4.50 and you said $3.50."},
		{"no", func(r *economics.Reckoning) { tell(r, 2, 2, 4, 4) },
			"Live on food that keeps: to fit the small unit is worth it in only 4 of 100 futures. A cold day costs about $4.50 and you said $2."},
		{"rather not", func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.Ways, r.Answer.NoWorth, r.Answer.YesWorth = economics.RatherNot, ways(economics.IceOnly), 18, 30
		}, "Live on food that keeps, unless a cold day is worth $30 or more to you: then use ice. From $18 it is close."},
		{"pays for itself", func(r *economics.Reckoning) { r.Answer.Case, r.Answer.YesWorth = economics.PaysForItself, 2.5 },
			"Fit the small unit: it pays for itself if food that keeps costs each of you $1.25 a night more than fresh. The usual guess is $1.60."},
		{"spares dearer food", func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.PremiumTold, r.Answer.PremiumOf100 = economics.PaysForItself, true, 89
		}, "Fit the small unit: it costs less than the dearer food it spares you, in 89 of 100 futures."},
		{"next to nothing", func(r *economics.Reckoning) {
			r.Answer.Case, r.Of(economics.SmallUnit).PriceOfCold.Typical = economics.NextToNothing, 0.1
		}, "Fit the small unit: a cold day costs next to nothing, under $0.25."},
		{"too dear", func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.NoWorth, r.Answer.YesWorth = economics.TooDear, 38, 85
		},
			"Live on food that keeps: no way is likely to give a cold day for less than $38."},
		{"far too dear", func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.NoWorth, r.Answer.YesWorth = economics.TooDear, 120, math.Inf(1)
		}, "Live on food that keeps: no way gives a cold day for $50 or less."},
		{"forbidden", func(r *economics.Reckoning) {
			tell(r, 6, 6, 80, 80)
			r.Answer.Case = economics.Forbidden
			r.Of(economics.SmallUnit).Fitted.Failing = []economics.Criterion{hazard}
		}, "Do not fit the small unit where it is planned: fuel vapour can reach it. Elsewhere it would be worth it (80 of 100)."},
		{"forbidden, untold", func(r *economics.Reckoning) {
			r.Answer.Case = economics.Forbidden
			r.Of(economics.SmallUnit).Fitted.Failing = []economics.Criterion{hazard}
		}, "Do not fit the small unit where it is planned: fuel vapour can reach it. Elsewhere it would be worth it if a cold day is worth $5.50 to you."},
		{"no room", func(r *economics.Reckoning) {
			r.Answer.Case = economics.NoRoomAtAll
			r.Of(economics.SmallUnit).Fitted.Facts = economics.Facts{"food_to_keep_l": 52.0, "room_for_food_l": 40.0}
		}, "No way leaves room enough: beside ice or a plate this box is 12 L short of what has to go in between two shops."},
		{"cool only", func(r *economics.Reckoning) {
			cool := *r.Of(economics.IceOnly)
			r.Cool, r.Answer.Case, r.Answer.Ways = &cool, economics.CoolOnly, ways(economics.IceOnly)
		}, "No way keeps food cold as often as you want. Ice alone keeps drinks, butter and the like cool, for about $7 a cool day."},
		{"nearest, too warm", func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.ReachOf100, r.Boat.Food.ColdDaysWanted = economics.NoneReaches, 20, 0.9
			o := r.Of(economics.SmallUnit)
			o.Fitted.Facts, o.Fitted.Failing = economics.Facts{"kept_share": 0.78}, []economics.Criterion{{ID: "too-warm", Kind: economics.Warmth}}
		}, "No way keeps food cold as often as you want. The small unit comes nearest: cold on 78 days of 100; you want 90."},
		{"nearest, by futures", func(r *economics.Reckoning) { r.Answer.Case, r.Answer.ReachOf100 = economics.NoneReaches, 70 },
			"No way keeps food cold as often as you want. The small unit comes nearest: it does so in only 70 of 100 futures."},
		{"few days", func(r *economics.Reckoning) {
			r.Answer.Case = economics.FewDays
			o := r.Of(economics.SmallUnit)
			o.ExtraDays, o.KeptDays, o.Fitted.Yearly = quantity.Exactly(3.2), quantity.Exactly(4), 212
		}, "There are too few days for a price a day: the small unit costs about $210 a year for 3 cold days."},
		{"cold anyway", func(r *economics.Reckoning) {
			r.Answer.Case = economics.FewDays
			o := r.Of(economics.SmallUnit)
			o.ExtraDays, o.KeptDays, o.Fitted.Yearly = quantity.Exactly(3.2), quantity.Exactly(28), 212
		}, "The box needs nothing: empty it is cold on 25 days of the year already, and the small unit adds 3 more for about $210 a year."},
	} {
		r := made()
		tt.change(r)
		got := Of(r, economics.Book{}).Answer()
		if got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, got, tt.want)
		}
		if n := len(strings.Fields(got)); n > 30 {
			t.Errorf("%s: %d words: %s", tt.name, n, got)
		}
	}
}

// The second line counts the futures in which a day costs no more than the
// worths of the headline.
func TestCounts(t *testing.T) {
	r := made()
	if got, want := Of(r, economics.Book{}).Counts(), "In 25 of 100 futures a cold day costs $3 or less; in 61, $5 or less; in 75, $5.50 or less."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	r.Answer.Case = economics.FewDays
	if got := Of(r, economics.Book{}).Counts(); got != "" {
		t.Errorf("nothing turns on a worth, but %q", got)
	}
}

// What joins the headline: ways that share the lead, no work, an old unit, a
// limit, medicine.
func TestAlso(t *testing.T) {
	limit := func(r *economics.Reckoning) {
		r.Boat.Money.Budget, r.Answer.OverLimit = 1000, 400
	}
	for _, tt := range []struct {
		name   string
		change func(*economics.Reckoning)
		want   string
	}{
		{"reach", func(*economics.Reckoning) {}, "The small unit keeps the food cold as often as you want in 93 of 100 futures."},
		{"reaches less", func(r *economics.Reckoning) { r.Answer.ReachOf100 = 78 }, "in 78 of 100 futures, fewer than the 90 aimed at."},
		{"as she is", func(r *economics.Reckoning) { r.Answer.AsShe = true }, "It needs no other work on box or boat."},
		{"two lead", func(r *economics.Reckoning) {
			r.Answer.Ways = []economics.OptionID{economics.SmallUnit, economics.IceOnly}
			r.Of(economics.SmallUnit).BestOf100, r.Of(economics.IceOnly).BestOf100 = 48, 40
		}, "Cost hardly tells them apart. Best is the small unit in 48 of 100 futures and ice alone in 40; a cold day costs about $4.50 to $7. Other things do. The small unit: hums"},
		{"dead unit", func(r *economics.Reckoning) { r.HasRepair, r.RepairWorth = true, 452 }, "Repairing the old unit is worth up to about $450"},
		{"nothing frozen", func(r *economics.Reckoning) {
			r.Answer.Ways, r.Boat.Food.Freeze = []economics.OptionID{economics.IceOnly}, economics.FreezesCubes
		}, "It makes no ice cubes: you buy those."},
		{"limit, another within", func(r *economics.Reckoning) { limit(r); r.Answer.Within = economics.IceOnly },
			"With its work the small unit costs $400 over your limit of $1,000 at first. Within it ice alone does as well, at about $7 a cold day."},
		{"limit buys part", func(r *economics.Reckoning) {
			limit(r)
			r.Answer.LimitBuys = &economics.LimitBuys{Items: []economics.FitItem{{Piece: economics.LidPiece, Size: 50}}, First: 940, WorksOf100: 40, KeptShare: 0.71}
		}, "The limit does buy it with 50 mm more foam in the lid, for $940: cold on 71 days of 100. Nothing of that is lost if the rest follows later."},
		{"limit buys nothing", limit, "For $1,000 nothing of it can be had that would run."},
		{"close", func(r *economics.Reckoning) { tell(r, 4.5, 4.5, 50, 50); r.Answer.WrongCost = 61 }, "The wrong choice costs about $61 a year, where it is wrong."},
		{"no other", func(r *economics.Reckoning) { r.Answer.Case = economics.Forbidden }, "No other way does what you want."},
		{"another", func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.Otherwise = economics.Forbidden, economics.IceOnly
		},
			"Without moving anything, ice alone is the best way, at about $7 a cold day."},
	} {
		r := made()
		tt.change(r)
		if got := strings.Join(Of(r, economics.Book{}).Also(), " "); !strings.Contains(got, tt.want) {
			t.Errorf("%s: %q lacks %q", tt.name, got, tt.want)
		}
	}
}

func TestMedicine(t *testing.T) {
	r := made()
	if got := Of(r, economics.Book{}).Medicine(); got != "" {
		t.Errorf("no medicine, but %q", got)
	}
	r.Boat.Food.Medicine = quantity.Yes
	if got, want := Of(r, economics.Book{}).Medicine(), "Medicine aboard: no way found here keeps it at 2 °C to 8 °C in every hour. Ask a pharmacist how to carry it."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	r.Answer.MedicineKept = []economics.OptionID{economics.LargerUnit}
	if got, want := Of(r, economics.Book{}).Medicine(), "Medicine aboard rules out going without. It is kept at 2 °C to 8 °C by the larger unit, not by the small unit. Keep a thermometer beside it, and a second way to cool it."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// The words of the answer cover every count once.
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
}

// A price is said to the step that a person would use.
func TestPriceOfADay(t *testing.T) {
	v := Of(made(), economics.Book{})
	for x, want := range map[float64]string{0: "under $0.25", 0.1: "under $0.25", 0.3: "about $0.25", 1.9: "about $2", 4.4: "about $4.50", 8.6: "about $9", 23: "about $24", 49: "about $50",
		51: "over $50", math.Inf(1): "more than $50"} {
		if got := v.Price(x); got != want {
			t.Errorf("%v: %q, want %q", x, got, want)
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
		if got := v.Tight(tt.x, quantity.Range{Low: tt.low, High: tt.high}); got != tt.want {
			t.Errorf("%v (%v to %v) prints as %q, want %q", tt.x, tt.low, tt.high, got, tt.want)
		}
	}
}

// A switching value is worded in the owner's units, on the right side, with
// its chance; the likeliest stands first.
func TestFlips(t *testing.T) {
	r := made()
	r.Boat.Units = quantity.US
	in := func(beyond, unit string, at float64, above bool, chance float64) economics.InputFigures {
		return economics.InputFigures{Input: economics.Input{Beyond: beyond, Unit: unit, Typical: 1}, SwitchAt: at, SwitchAbove: above, SwitchTo: economics.DryStores, ChanceBeyond: chance, SwitchKnown: true}
	}
	r.Futures.Inputs = []economics.InputFigures{
		in("ice costs {more} {at}", "money/kg", 1.1, false, 0.12), in("you spend {fewer} {at} aboard a year", "nights", 51.3, false, 0.35),
		in("the box leaks {more} {at}", "W/K", 2, true, 0.06), in("the sun is {more} {at}", "", 0.8, false, 0.05), in("the battery holds {more} {at}", "Ah", 80, false, 0.02),
	}
	var got []string
	for _, f := range Of(r, economics.Book{}).Flips() {
		got = append(got, f.Text)
	}
	want := []string{
		"If you spend fewer than 51 nights aboard a year, dry stores are better. 35 of 100 futures lie there.",
		"If ice costs less than $0.50/lb, dry stores are better. 12 of 100 futures lie there.",
		"If the box leaks more than 3.8 Btu/h·°F, dry stores are better. 6 of 100 futures lie there.", // 2 W/K x 1.8956, NIST SP 811
		"If the sun is less than 80 % of what was reckoned, dry stores are better. 5 of 100 futures lie there.",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// What is worth knowing is sorted: what the choice turns on, then what moves the
// price of a day; trifles are never in it.
func TestMeasureFirst(t *testing.T) {
	r := made()
	r.Of(economics.SmallUnit).Fitted.Yearly = 200
	in := func(name string, worth, low, high float64) economics.InputFigures {
		return economics.InputFigures{Input: economics.Input{Name: name, FindOut: "Count {cost}.", FindOutCost: 12}, EVPPI: worth, PriceLow: low, PriceHigh: high}
	}
	r.Futures.Inputs = []economics.InputFigures{in("nights", 50, 6, 3), in("upkeep", 2, 4, 4.5), in("leak", 140, 4, 5), in("ice_price", 0, 2, 7)}
	v := Of(r, economics.Book{})
	got := ""
	for _, m := range v.MeasureFirst() {
		got += m.Key + " "
	}
	if got != "leak nights ice_price " {
		t.Errorf("measure first %q, want leak, then nights, then the price of ice", got)
	}
	if got, want := v.MeasureText(v.MeasureFirst()[1]), "worth about $50 a year to know; moves a cold day from about $6 to $3. Count $12."; got != want {
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
		small, ice []quantity.Range
		want       string
	}{
		{"dear at first", paid(10, 11, 12, 13), paid(0, 5, 10, 15), "The small unit costs more at first than ice alone, and less in all from year 3 on."},
		{"never dearer", paid(0, 1, 2, 3), paid(1, 2, 3, 4), "By every year's end the small unit has cost less than ice alone."},
		{"never cheaper", paid(9, 9, 9, 9), paid(1, 2, 3, 4), "By every year's end ice alone has cost less than the small unit at typical figures."},
		{"overtaken", paid(0, 5, 10, 15), paid(10, 11, 12, 13), "From year 3 on ice alone has cost less in all than the small unit at typical figures."},
	} {
		r := made()
		r.Futures.Paid[0], r.Futures.Paid[2] = tt.ice, tt.small
		if got := Of(r, economics.Book{}).Overtakes(); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// Where ice does not do, the report says how much fits and how long it is gone.
func TestMoreIce(t *testing.T) {
	for _, tt := range []struct {
		name  string
		works int
		room  float64
		want  string
	}{
		{"it does", 90, 30, ""},
		{"room to spare", 20, 30, "Why not more ice? A full load is 10 kg, in a third of the box that ice is given (assumed). It is gone for up to 34 hours at a stretch. " +
			"The food needs 5 L of the 30 L left. Larger shares of the box, up to two thirds, were tried too."},
	} {
		r := made()
		r.Boat.Ice.ShareOfBox = 1.0 / 3
		o := r.Of(economics.IceOnly)
		o.WorksOf100 = tt.works
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
	r.Futures.Inputs = []economics.InputFigures{{Input: economics.Input{Name: "nights", Unit: "nights", Beyond: "you spend {fewer} {at} aboard a year"}, SwitchAt: 80, SwitchAbove: true, SwitchTo: economics.SmallUnit, ChanceBeyond: 0.2, SwitchKnown: true}}
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

// Ice at 100 a year for 20 days against a unit at 150 for 50, each day worth 2:
// (100 - 40) - (150 - 100) = 10. Dry stores lose nothing.
func TestApartCountsTheWorth(t *testing.T) {
	r := made()
	r.Futures.Worth = 2
	ice, unit := r.Of(economics.IceOnly), r.Of(economics.SmallUnit)
	ice.Fitted.Yearly, ice.ExtraDays, unit.Fitted.Yearly, unit.ExtraDays = 100, quantity.Exactly(20), 150, quantity.Exactly(50)
	v := Of(r, economics.Book{})
	if got := v.Apart(economics.IceOnly, economics.SmallUnit); got != 10 {
		t.Errorf("ice and the unit are %v apart, want 10", got)
	}
	if got := v.Apart(economics.SmallUnit, economics.DryStores); got != 50 {
		t.Errorf("the unit and dry stores are %v apart, want 50", got)
	}
}
