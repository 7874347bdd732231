package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// standing names what is known of a proposal before it lives through a year.
func (p *proposal) standing() Facts {
	b, steady := p.boat, p.steady()
	c := b.Cruising
	f := Facts{
		"option": string(p.option),
		"fitted": p.fitted,

		"trip_nights":       c.TripNights,
		"shop_every_days":   c.ShopEveryDays,
		"shore_power_share": float64(c.ShorePowerShare),
		"before_trip":       string(c.BeforeTrip),
		"crew":              c.Crew,

		"box_volume_l":        p.volumeL,
		"box_leak_w_per_k":    float64(p.leak().Total()),
		"foam_thinnest_mm":    1000 * float64(b.Box.thinnestFoam()),
		"worst_state":         string(b.Box.worstState()),
		"lid":                 string(b.Box.Lid),
		"drain":               string(b.Box.Drain),
		"fitted_unit":         string(b.Box.FittedUnit),
		"cabin_hottest_c":     steady.hottest.CabinC,
		"heat_gain_hottest_w": steady.hottest.GainW(),

		"food_target_c":      float64(b.Food.Target),
		"cold_days_wanted":   float64(b.Food.ColdDaysWanted),
		"must_be_cold_share": float64(b.Food.MustBeColdShare),
		"cool_is_enough":     b.CoolDecides(),
		"medicine":           string(b.Food.Medicine),
		"vulnerable":         string(b.Food.Vulnerable),

		"room_for_food_l":         max(0, p.volumeL-p.takenL()),
		"food_to_keep_l":          p.goesInL(),
		"ice_per_day_hottest_kg":  steady.iceKgPerDay,
		"ice_capacity_kg":         steady.iceCapacityKg,
		"ice_gap_days":            p.iceGapDays(),
		"ice_found_at_stops":      float64(b.Ice.FoundAtStops),
		"run_share_hottest":       steady.runShare,
		"unit_wh_per_day_hottest": steady.unitWhPerDay,
		"unit_form":               "none",
		"cooled_by":               "none",
		"plate":                   "none",
		"plate_c":                 0.0,
		"cable_drop_share":        0.0,
		"cable_known":             b.told("power.cable_run") && b.told("power.cable_size"),

		"volts":                float64(b.Power.Volts),
		"battery_ah":           float64(b.Power.Battery + p.fit.Battery),
		"battery_kwh":          float64((b.Power.Battery+p.fit.Battery)*quantity.AmpHour(b.Power.Volts)) / 1000,
		"chemistry":            string(b.Power.Chemistry),
		"solar_wp":             float64(b.Power.SolarWp + p.fit.PanelWp),
		"engine_hours_per_day": b.Power.EngineHoursPerDay,

		"seal_renewed":          p.fit.Seal,
		"drain_trapped":         p.fit.Drain,
		"lid_insulated":         p.fit.LidFoam > 0,
		"foam_added_m2":         p.foamM2,
		"foam_outside_m2":       p.foamOutsideM2(),
		"foam_added_mm":         1000 * float64(max(p.fit.LidFoam, p.fit.InsideFoam, p.fit.OutsideFoam)),
		"cover_added":           p.fit.Cover,
		"vent_added":            p.fit.Vent,
		"panel_added_wp":        float64(p.fit.PanelWp),
		"battery_added_ah":      float64(p.fit.Battery),
		"battery_added_kwh":     float64(p.fit.Battery*quantity.AmpHour(b.Power.Volts)) / 1000,
		"unit_added":            p.unit != nil && !p.keepsFitted(),
		"holes_below_waterline": false,

		"perishables_aboard_kg": b.perishablesKg(),

		"budget":       float64(b.Money.Budget),
		"budget_given": b.told("money.budget") && b.Money.Budget > 0,
		"fitted_by":    string(b.Money.FittedBy),
		"will_sell":    string(b.Money.WillSell),

		"fuel_vapour_space":  string(b.Safety.FuelVapourSpace),
		"co_alarm":           string(b.Safety.COAlarm),
		"lithium":            string(b.Safety.Lithium),
		"drain_to":           string(b.Safety.DrainTo),
		"children":           string(b.Safety.Children),
		"latch_opens_inside": string(b.Safety.LatchOpensInside),
		"dry_ice":            string(b.Safety.DryIce),
		"fish":               string(b.Safety.Fish),
		"eggs":               string(b.Safety.Eggs),
		"wiring_known":       string(b.Safety.WiringKnown),
		"left_unattended":    string(b.Safety.LeftUnattended),
	}
	if p.unit != nil {
		f["unit_form"] = string(p.unit.Form)
		f["cooled_by"] = string(p.condenser())
		f["plate"] = string(p.unit.Plate)
		f["plate_c"] = steady.plateC
		f["holes_below_waterline"] = p.unit.CooledBy == energy.Seawater
		if run, size := b.Power.CableRun, b.Power.CableSize; b.told("power.cable_run") && size > 0 {
			f["cable_drop_share"] = steady.cableDropShare(run, size, b.Power.Volts)
		}
	}
	return f
}

// lived adds to a proposal's standing facts what an average year came to; the
// first cost alone is then missing.
func (p *proposal) lived(f Facts, y *aYear) {
	f["nights_per_year"] = y.nights
	f["person_nights_per_year"] = p.boat.Cruising.Crew * y.nights
	f["cold_share"] = y.coldShare
	f["cool_share"] = y.coolShare
	f["kept_share"] = y.keptShare
	f["warm_days_per_year"] = y.warmDays
	f["warmest_food_c"] = y.warmestC
	f["hours_over_5c"] = y.hoursOver5
	f["hours_off_longest"] = y.longestOff
	f["ice_bought_kg_per_year"] = y.iceBoughtKg
	f["ice_errands_per_year"] = y.errands
	f["battery_lowest_share"] = y.lowestShare
	f["shore_kwh_per_year"] = y.shoreKWh
	f["shore_nights_per_year"] = y.nights * float64(p.boat.Cruising.ShorePowerShare)
	f["engine_kwh_per_year"] = y.engineKWh
	f["battery_wear_kwh_per_year"] = y.wearKWh
}

// iceGapDays gives the days between stops that sell ice, the whole trip when none does.
func (p *proposal) iceGapDays() float64 {
	c := p.boat.Cruising
	if p.boat.Ice.FoundAtStops <= 0 {
		return c.TripNights
	}
	return min(c.TripNights, c.ShopEveryDays/float64(p.boat.Ice.FoundAtStops))
}

// foamOutsideM2 gives the area of foam that is put in from outside.
func (p *proposal) foamOutsideM2() (m2 float64) {
	if p.freeStanding() {
		return 0
	}
	box := p.boat.Box
	area := func(sides []heat.Side) {
		for _, side := range sides {
			m2 += float64(heat.FaceArea(box.shape(), side))
		}
	}
	if p.fit.OutsideFoam > 0 {
		area(box.reached(FromOutside))
	}
	if lid := box.lidSide(); p.fit.LidFoam > 0 && box.Faces[lid].Reach == FromOutside {
		area([]heat.Side{lid})
	}
	return m2
}

// iceCapacityKg gives the ice that the box holds.
func (p *proposal) iceCapacityKg() float64 {
	kg, err := heat.CapacityKg(quantity.Litre(p.volumeL), p.iceShare(), p.boat.Ice.Kind)
	if err != nil {
		return 0
	}
	return float64(kg)
}
