package figures

import (
	"math"

	"coldreckon/economics"
	"coldreckon/economics/energy"
)

// unitOf is what a unit does in its box as told, in the hottest month aboard.
func unitOf(u economics.UnitFigures) Object {
	var rating any // null when nothing was told of it
	if m := u.Rating; m != nil {
		// What the maker's plate means: the cooling and efficiency behind it, and
		// the box in which its average current comes true.
		rating = Object{
			{"cooling_w", spread(m.Cooling)},
			{"eta", spread(m.Eta)},
			{"implied_ua_w_per_k", spread(m.ImpliedLeak)},
			{"implied_box_l", spread(m.ImpliedBox)},
			{"fits", m.Fits}, // whether its current and its largest box go together
		}
	}
	return Object{
		{"option", u.ID},
		{"box_volume_l", u.VolumeL},
		{"ua_w_per_k", u.LeakWPerK},
		{"rated_cooling_w", u.RatedW},
		{"eta", u.Eta},
		{"capacity_w", u.CapacityW},
		{"cop", u.COP},
		{"plate_c", u.PlateC},
		{"condenser_c", u.CondenserC},
		{"running_a", u.RunningA},
		{"run_share", u.RunShare},
		{"held_c", u.HeldC},
		{"wh_per_day", u.WhPerDay},
		{"ah_per_day", u.AhPerDay},
		{"pull_down_h", when(u.PullDownReached, u.PullDownHours)}, // null when it never gets there
		{"pull_down_wh", when(u.PullDownReached, u.PullDownWh)},   // likewise
		{"hold_over_h", told(u.HoldOverHours)},                    // null for a thin plate
		{"set_points", list(u.SetPoints, setPointOf)},
		{"rating_plate", rating},
		{"cable", cableOf(u.Cable)},
	}
}

// setPointOf is what one box temperature costs.
func setPointOf(p energy.SetPoint) Object {
	return Object{
		{"box_c", p.Box},
		{"wh_per_day", p.Duty.DayWh()},
		{"run_share", p.Duty.RunShare},
		{"listeria_growth_against_5_c", p.Growth},
		{"perishables", p.Perishables},
	}
}

// cableOf is the run from battery to unit. Size, drop and least voltage are null
// when the size is not known, sizes and fuse when there is none to give.
func cableOf(c economics.CableFigures) Object {
	return Object{
		{"known", c.Known},
		{"run_m", c.RunM},
		{"size_mm2", when(c.Known, c.SizeMm2)},
		{"drop_share", when(c.Known, c.DropShare)},
		{"least_v", when(c.Known, c.LeastV)},
		{"cut_out_v", c.CutOutV},
		{"need_mm2", told(c.NeedMm2)},
		{"next_metric_mm2", told(c.MetricMm2)},
		{"next_awg", c.AWG},
		{"largest_fuse_a", told(c.FuseA)},
	}
}

// fortnightOf is the warmest spell of an option's typical years, hour by hour
// from noon, rounded to what a drawing shows.
func fortnightOf(o *economics.OptionFigures) any {
	f := o.Fortnight
	if len(f.Hours) == 0 {
		return nil
	}
	var food, battery, sun, ice []float64
	for _, h := range f.Hours {
		food, battery = append(food, drawn(h.FoodC)), append(battery, drawn(h.ChargeWh))
		sun, ice = append(sun, drawn(h.SunW)), append(ice, drawn(h.IceKg))
	}
	return Object{
		{"days", f.Days},
		{"month", f.Month},
		{"limit_c", f.LimitC},
		{"battery_full_wh", f.FullWh}, // above the cut-off
		{"food_c", food},
		{"battery_wh", battery},
		{"sun_w", sun},
		{"ice_kg", ice},
	}
}

// drawn rounds to a hundredth.
func drawn(x float64) float64 { return math.Round(100*x) / 100 }

// quotationOf is one offer in the boat's box with its work.
func quotationOf(q economics.QuotationFigures) Object {
	cold, _ := q.Figures.Fitted.Shares()
	var work []economics.Piece
	for _, item := range q.Figures.Fit.Items {
		work = append(work, item.Piece)
	}
	return Object{
		{"name", q.Quotation.Name},
		{"option", q.Option}, // the unit of the four ways that it would be
		{"stands_for_it", q.Stands},
		{"work", work},
		{"works_of_100_futures", q.Figures.WorksOf100},
		{"cheapest_that_works_of_100_futures", q.CheapestOf100},
		{"cold_share", cold},
		{"first_cost", q.Figures.Fitted.First},
		{"present_cost", q.Figures.Fitted.Present},
		{"price_of_a_cold_day", spread(q.Figures.PriceOfCold)},
		{"held_c", q.Unit.HeldC},
		{"run_share", q.Unit.RunShare},
		{"ah_per_day", q.Unit.AhPerDay},
		{"ah_per_day_box_as_told", q.AsShe.AhPerDay},
		{"ah_per_day_at_45_f", q.At45FAhPerDay},
		{"ah_per_day_at_50_f", q.At50FAhPerDay},
		{"ah_per_day_slowest", told(q.SlowAhPerDay)},                        // null where the speed cannot be set
		{"pull_down_h", when(q.Unit.PullDownReached, q.Unit.PullDownHours)}, // null when it never gets there
		{"cold_store_h", told(q.ColdStoreHours)},                            // null where the box would not warm
		{"has_room", q.HasRoom},
		{"goes_through_lid", q.GoesThrough}, // yes, no or unknown
		{"goes_on_wall", q.GoesOnWall},      // likewise
		{"left_out", q.Unsaid},
	}
}
