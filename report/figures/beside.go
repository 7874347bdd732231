package figures

import (
	"math"

	"coldreckon/economics"
)

// besideOf is what stands beside the four ways and joins none of their counts.
func besideOf(r *economics.Reckoning, book economics.Book) Object {
	var alarm any // null where no food must be kept cold
	if a, ok := r.Alarm(book); ok {
		// A thermometer with an alarm, against the food that a unit which stops
		// unseen spoils, money a year.
		alarm = Object{
			{"aboard", a.Aboard},
			{"food_aboard_kg", a.FoodKg},
			{"stops_per_year", spread(a.StopsPerYear)},
			{"lost", spread(a.Lost)},
			{"saved", spread(a.Saved)},
			{"price", spread(a.Price)},
			{"price_per_year", a.PricePerYear},
		}
	}
	var byDay any // null where no unit would be run by day only
	if d := r.ByDay; d != nil {
		// In how many of 100 futures the small unit works with its work.
		byDay = Object{
			{"always_works_of_100", d.Always},
			{"by_day_works_of_100", d.Alone},
			{"with_bottles_works_of_100", d.Bottles},
		}
	}
	return Object{
		{"cooler", coolerOf(r)},
		{"chest", chestOf(r)},
		{"drinks_cooler", drinksOf(r)},
		{"freezing", list(r.Freezing, freezingOf)},
		{"by_day", byDay},
		{"sun_wh_per_wp_day", when(len(r.Months) > 0, r.SunWhPerWp)}, // hottest month aboard; null without nights aboard
		{"why_not", whyNotOf(r)},
		{"alarm", alarm},
		{"grounds", groundsOf(r)},
	}
}

// groundsOf parts the year between two grounds, by way; null with one.
func groundsOf(r *economics.Reckoning) any {
	var out []Object
	for _, o := range r.Options {
		parts, decides := r.Grounds(o.ID)
		if parts == nil {
			continue
		}
		out = append(out, Object{
			{"option", o.ID},
			{"parts", list(parts, func(p economics.GroundShare) Object {
				return Object{{"ground", p.ID}, {"nights", p.Nights}, {"kept_share", p.KeptShare}}
			})},
			{"decides", when(decides >= 0, decides)}, // the number of a part, from 0; null where neither does alone
		})
	}
	return when(out != nil, out)
}

// coolerOf is ice in a passive cooler in place of the box; null where it has no
// place.
func coolerOf(r *economics.Reckoning) any {
	c := r.Cooler
	if c == nil {
		return nil
	}
	b, o := r.Boat.Cooler, &c.Ice
	days := func(x float64) any { return when(!math.IsInf(x, 0), x) } // null beyond three weeks
	kg, _ := o.Fitted.IceBoughtKg()
	return Object{
		{"stands", b.Stands},
		{"volume_l", b.Volume},
		{"wall_mm", 1000 * b.Wall},
		{"price", b.Price},
		{"ua_w_per_k", c.LeakW},
		{"load_kg", c.LoadKg},
		{"load_lasts_days", days(c.LastsDays)},
		{"box_load_kg", c.BoxLoadKg},
		{"box_load_lasts_days", days(c.BoxLastsDays)},
		{"works_of_100", o.WorksOf100},
		{"cold_share", fact(&o.Fitted, "cold_share")},
		{"cool_share", fact(&o.Fitted, "cool_share")},
		{"ice_bought_kg", kg}, // a year
		{"first_cost", o.Fitted.First},
		{"per_year", o.Fitted.PerYear},
		{"yearly_equivalent", o.Fitted.Yearly},
		{"price_of_cold", spread(o.PriceOfCold)},
		{"pieces", list(o.Fit.Items, func(i economics.FitItem) Object { return Object{{"id", i.Piece}, {"size", i.Size}} })},
	}
}

// chestOf is a free-standing chest in place of the built-in small unit, its berth
// not counted; null where it has no place.
func chestOf(r *economics.Reckoning) any {
	o := r.Chest
	if o == nil {
		return nil
	}
	return Object{
		{"volume_l", fact(&o.Fitted, "box_volume_l")},
		{"works_of_100", o.WorksOf100}, // over a part of the futures
		{"cold_share", fact(&o.Fitted, "cold_share")},
		{"cool_share", fact(&o.Fitted, "cool_share")},
		{"first_cost", o.Fitted.First},
		{"per_year", o.Fitted.PerYear},
		{"yearly_equivalent", o.Fitted.Yearly},
		{"price_of_cold", spread(o.PriceOfCold)},
	}
}

// drinksOf is a cooler for the drinks beside any way, counted in none of them;
// null where the drinks are in the box.
func drinksOf(r *economics.Reckoning) any {
	d := r.Drinks
	if d == nil {
		return nil
	}
	apart, together := map[string]int{}, map[string]int{}
	for i, id := range economics.Options {
		apart[string(id)], together[string(id)] = d.Apart[i], d.Together[i]
	}
	return Object{
		{"box_opens_fewer_per_day", d.OpensFewer},
		{"ua_w_per_k", d.LeakW},
		{"price", r.Boat.Cooler.Price},
		{"ice_bought_kg", spread(d.IceKg)}, // a year, over futures
		{"ice_per_year", spread(d.IceCost)},
		{"cool_share", spread(d.CoolShare)},
		{"works_of_100", apart}, // by way, over a part of the futures
		{"with_drinks_in_box_works_of_100", together},
	}
}

// freezingOf is what a wish for something frozen takes with a unit, steady, in
// the hottest month aboard.
func freezingOf(f economics.FreezingFigures) Object {
	return Object{
		{"option", f.Option},
		{"wish", f.Wish},
		{"ah_per_day", f.AhPerDay},
		{"more_ah_per_day", f.MoreAh},
		{"run_share", f.RunShare},
		{"plate_c", f.PlateC},
		{"corner_l", f.CornerL},
		{"panel_wp", told(f.PanelWp)},
	}
}

// whyNotOf is what ways that are not weighed would take, in the hottest month
// aboard; null without nights aboard.
func whyNotOf(r *economics.Reckoning) any {
	w, ok := r.WhyNot()
	if !ok {
		return nil
	}
	return Object{
		{"household_fridge_wh_per_day", w.HouseholdWhPerDay},
		{"inverter_idle_wh_per_day", w.InverterIdleWhPerDay},
		{"thermoelectric_a", w.ThermoelectricA},
		{"thermoelectric_ah_per_day", w.ThermoelectricAhPerDay},
		{"thermoelectric_box_c", w.ThermoelectricBoxC},
		{"ice_maker_kg_per_day", w.IceMakerKgPerDay},
		{"ice_maker_wh_per_day", w.IceMakerWhPerDay},
		{"engine_plates_hours_per_day", w.EngineHoursPerDay},
		{"engine_plates_hours_per_year", w.EngineHoursPerYear},
		{"dry_ice_kg_per_day", w.DryIceKgPerDay},
		{"dry_ice_gas_m3_per_day", w.DryIceGasM3PerDay},
	}
}
