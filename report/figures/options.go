package figures

import (
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/cost"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// optionsOf are the four ways.
func optionsOf(in Input) ([]Object, error) {
	var out []Object
	ice := in.Reckoning.Of(economics.IceOnly)
	for i := range in.Reckoning.Options {
		o := &in.Reckoning.Options[i]
		told, err := caseOf(in, &o.AsTold, &ice.AsTold, o.AsToldWorksOf100)
		if err != nil {
			return nil, err
		}
		fitted, err := caseOf(in, &o.Fitted, &ice.Fitted, o.WorksOf100)
		if err != nil {
			return nil, err
		}
		out = append(out, slices.Concat(Object{
			{"id", o.ID},
			{"name", words.Name(o.ID)},
			{"as_told", append(told, bandsOf(o.AsToldBands)...)}, // over as_told_futures
			{"fitted", append(fitted, fitOf(in, o)...)},
			{"as_told_works_of_100", o.AsToldWorksOf100},
			{"as_told_futures", o.AsToldFutures},
			{"workable_of_100", o.WorksOf100},
			{"best_of_100", o.BestOf100},             // of the ways that were weighed; 0 for the others
			{"price_of_cold", spread(o.PriceOfCold)}, // with the fitted case; null where no day is gained
		}, bandsOf(o.FittedBands), Object{
			{"expected_regret", o.ExpectedRegret}, // a year, of the ways that were weighed
			{"worst_fortnight", fortnightOf(o)},   // of the fitted case; null for dry stores and without nights
		}))
	}
	return out, nil
}

// bandsOf are the 10th and 90th percentiles of an option's costs over the futures.
func bandsOf(b economics.Bands) Object {
	return Object{
		{"first_cost_low", b.First.Low}, {"first_cost_high", b.First.High},
		{"per_year_low", b.PerYear.Low}, {"per_year_high", b.PerYear.High},
		{"present_cost_low", b.Present.Low}, {"present_cost_high", b.Present.High},
		{"yearly_equivalent_low", b.Yearly.Low}, {"yearly_equivalent_high", b.Yearly.High},
	}
}

// pieceUnits are the units of sizes; "" for the rest.
var pieceUnits = map[economics.Piece]string{
	economics.LidPiece: "mm", economics.InsidePiece: "mm", economics.OutsidePiece: "mm", economics.MoreIcePiece: "share of the box",
	economics.SpacerPiece: "share of the length", economics.PanelPiece: "W", economics.BatteryPiece: "Ah",
}

// fitOf is the work found for an option: each piece with what the option would
// be without it, and again with what it costs at first.
func fitOf(in Input, o *economics.OptionFigures) Object {
	var items, pieces []Object
	work := words.Of(in.Reckoning, in.Book).Work(o.ID)
	for i, item := range o.Fit.Items {
		items = append(items, Object{
			{"piece", item.Piece},
			{"what", work[i].What},
			{"size", item.Size},
			{"unit", pieceUnits[item.Piece]},
			{"without_works_of_100", item.WithoutWorksOf100},
			{"without_present_cost_more", item.WithoutPresent},
		})
		var c economics.PieceCost
		if at := slices.IndexFunc(o.PieceCosts, func(c economics.PieceCost) bool { return c.Piece == item.Piece }); at >= 0 {
			c = o.PieceCosts[at]
		}
		pieces = append(pieces, Object{
			{"id", item.Piece},
			{"size", item.Size},
			{"cost_low", c.Cost.Low},
			{"cost_typical", c.Cost.Typical},
			{"cost_high", c.Cost.High},
			{"hours_low", c.Hours.Low}, // of own hands' work, 0 where a yard does it
			{"hours_high", c.Hours.High},
		})
	}
	return Object{
		{"fit_out", items},
		{"pieces", pieces},
		{"reached", o.Fit.Reached}, // whether it works in nine of ten futures
		{"search_futures", o.Fit.SearchFutures},
		{"search_works_share", o.Fit.SearchWorks},
	}
}

// caseOf is an option at typical inputs.
func caseOf(in Input, o, ice *economics.Outcome, works int) (Object, error) {
	b := &in.Reckoning.Boat
	var reasons []string
	for _, c := range o.Failing {
		text, err := rules.Fill(c.Reason, o.Facts, b.Units, b.Currency)
		if err != nil {
			return nil, err
		}
		reasons = append(reasons, text)
	}
	isIce := o.Facts["option"] == string(economics.IceOnly)
	kg, lost := o.IceBoughtKg()
	limited := b.Told("money.budget") && b.Money.Budget > 0
	return Object{
		{"workable", o.Works()},
		{"works_of_100", works}, // futures
		{"reasons", reasons},
		{"cold_share", fact(o, "cold_share")}, // of days aboard
		{"cool_share", fact(o, "cool_share")},
		{"ice_bought_kg", when(isIce, kg)},                                     // a year; null but for ice
		{"ice_lost_share", when(isIce && kg > 0, lost)},                        // of it; null where none is bought
		{"litres", fact(o, "room_for_food_l")},                                 // room left for food
		{"over_limit", when(limited, max(0, o.First-float64(b.Money.Budget)))}, // by which the first cost exceeds the owner's limit; null where none was told
		{"cold_days_per_year", o.ColdDays},
		{"first_cost", o.First},
		{"per_year", o.PerYear},
		{"present_cost", o.Present},
		{"yearly_equivalent", o.Yearly},
		{"cash_flows", o.Flows}, // year 0 first, costs positive
		{"cost_lines", list(o.Lines, costLineOf)},
		{"season", seasonOf(o)},
		{"against_ice", against(ice, o, b.Money)},
	}, nil
}

func costLineOf(l economics.CostLine) Object {
	return Object{
		{"id", l.ID},
		{"label", l.Label},
		{"count", l.Count},
		{"unit", l.Unit},
		{"first", l.First},
		{"yearly", l.Yearly},
		{"life_years", told(l.Life)}, // null when it lasts
		{"renewal", l.Renew},
		{"resale_share", l.Resale}, // of the price, seen again at the end
	}
}

// against sets an option as told beside ice as told, or as fitted beside ice as
// fitted (ASTM E1074, E1057 and E1121). Null stands for ice itself, and where a
// measure has no value, such as a ratio of savings to no investment.
func against(ice, o *economics.Outcome, m economics.Money) any {
	if o.Facts["option"] == string(economics.IceOnly) {
		return nil
	}
	c := cost.Compare(economics.Ledger(ice.Lines, nil), economics.Ledger(o.Lines, nil), int(m.Years), cost.Rate(m.Discount))
	ratio, invested := c.SavingsToInvestment()
	back, returned := c.AdjustedReturn()
	years, paid := c.DiscountedPayback()
	return Object{
		{"net_savings", c.NetSavings()},
		{"savings_to_investment", when(invested, ratio)},
		{"adjusted_return", when(returned, back)},
		{"discounted_payback_years", when(paid, years)},
	}
}

// fact reads a number fact, null when the option has none.
func fact(o *economics.Outcome, name string) any {
	x, ok := o.Facts[name].(float64)
	return when(ok, x)
}

// seasonOf is what a mean year aboard takes and gives.
func seasonOf(o *economics.Outcome) Object {
	option := o.Facts["option"]
	ice := option == string(economics.IceOnly)
	unit := option == string(economics.SmallUnit) || option == string(economics.LargerUnit)
	box := ice || unit // not dry stores
	known, _ := o.Facts["cable_known"].(bool)
	return Object{
		{"warmest_food_c", when(box, fact(o, "warmest_food_c"))},
		{"hours_over_5c_per_year", when(box, fact(o, "hours_over_5c"))},
		{"longest_off_h", when(box, fact(o, "hours_off_longest"))},
		{"room_for_food_l", fact(o, "room_for_food_l")},
		{"food_to_keep_l", fact(o, "food_to_keep_l")},
		{"box_volume_l", fact(o, "box_volume_l")},
		{"ua_w_per_k", fact(o, "box_leak_w_per_k")},
		{"ice_hottest_kg_per_day", when(ice, fact(o, "ice_per_day_hottest_kg"))},
		{"ice_bought_kg_per_year", when(ice, fact(o, "ice_bought_kg_per_year"))},
		{"ice_errands_per_year", when(ice, fact(o, "ice_errands_per_year"))},
		{"unit_hottest_wh_per_day", when(unit, fact(o, "unit_wh_per_day_hottest"))},
		{"unit_hottest_run_share", when(unit, fact(o, "run_share_hottest"))},
		{"plate_c", when(unit, fact(o, "plate_c"))},
		{"battery_lowest_share", fact(o, "battery_lowest_share")},
		{"shore_kwh_per_year", fact(o, "shore_kwh_per_year")},
		{"engine_kwh_per_year", fact(o, "engine_kwh_per_year")},
		{"battery_wear_kwh_per_year", fact(o, "battery_wear_kwh_per_year")},
		{"cable_drop_share", when(unit && known, fact(o, "cable_drop_share"))}, // null when the cable is not known
	}
}
