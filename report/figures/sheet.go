package figures

import (
	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// Of gives the whole of the figures. It fails when a criterion's reason names a
// fact that the reckoning lacks.
func Of(in Input) (Object, error) {
	r := in.Reckoning
	b := &r.Boat
	options, err := optionsOf(in)
	if err != nil {
		return nil, err
	}
	assumed := b.Assumptions
	for _, g := range economics.Granted(*b) {
		assumed = append(assumed[:len(assumed):len(assumed)], g.Assumption())
	}
	return Object{
		{"schema", Schema},
		{"version", in.Version},
		{"rules_and_prices", in.Book.Identity}, // of the rule and price files
		{"boat", b.Name},
		{"units", b.Units},
		{"guidance", in.Guidance},
		{"inputs", inputsOf(b)},
		{"ground", Object{
			{"id", r.Ground.ID},
			{"name", r.Ground.Name},
			{"latitude_deg", r.Ground.LatDeg},
			{"months", groundMonths(r.Ground)},
		}},
		{"box", boxOf(r)},
		{"months", list(r.Months, monthOf)}, // with nights aboard
		{"unit_figures", list(r.Units[:], unitOf)},
		{"quotations", list(r.Quotations, quotationOf)}, // in the order told
		{"options", options},
		{"money", Object{{"discount", b.Money.Discount}, {"years", int(b.Money.Years)}, {"currency", b.Currency}}},
		{"break_even", list(r.BreakEven[:], func(e economics.BreakEven) Object {
			return Object{
				{"option", e.Option},
				{"nights_per_year", when(e.Known, e.Nights)}, // at which it costs what ice costs, both as told; null when they never meet within a year
				{"unit_cheaper_now", e.UnitCheaper},
			}
		})},
		{"repair", Object{
			{"worth_up_to", when(r.HasRepair, r.RepairWorth)}, // of an old unit; null when there is none to repair
			{"causes", when(r.HasRepair, list(words.Of(r, in.Book).Ailing(), func(a words.Ail) Object {
				return Object{
					{"finds", a.Finds},
					{"cause", a.Cause},
					{"mending", spread(a.Price)},
					{"do", r.Mend(a.Price.Low, a.Price.High)},
				}
			}))},
		}},
		{"beside", besideOf(r, in.Book)},
		{"futures", futuresOf(r)},
		{"answer", answerOf(in)},
		{"verdict", verdictOf(in)},
		{"cautions", list(in.Findings, func(f rules.Finding) Object {
			first := economics.OptionID("")
			if len(f.Options) > 0 {
				first = f.Options[0]
			}
			return Object{
				{"id", f.ID},
				{"grade", f.Grade},
				{"option", first}, // the first it concerns, in printing order
				{"options", f.Options},
				{"text", f.Text},
				{"source", f.Source},
			}
		})},
		{"assumptions", assumed},
	}, nil
}

func groundMonths(g climate.Ground) []Object {
	var out []Object
	for i, m := range g.Months {
		out = append(out, Object{
			{"month", i + 1},
			{"air_mean_c", m.AirMean},
			{"air_min_c", m.AirMin},
			{"air_max_c", m.AirMax},
			{"sea_c", m.Sea},
			{"sun_kwh_m2_day", m.Sun},
			{"humidity_ratio_kg_per_kg", m.HumidityRatio},
			{"provenance", Object{{"air", m.Provenance.Air}, {"air_range", m.Provenance.AirRange}, {"sea", m.Provenance.Sea}, {"sun", m.Provenance.Sun}}},
		})
	}
	return out
}

// boxOf is the box as it stands.
func boxOf(r *economics.Reckoning) Object {
	b := r.Box
	view := func(used bool) func(heat.Estimate) Object {
		return func(e heat.Estimate) Object {
			return Object{
				{"source", e.Source},
				{"ua_w_per_k", e.UA},
				{"ua_low_w_per_k", e.Range().Low},
				{"ua_high_w_per_k", e.Range().High},
				{"used", used}, // false when it was left out
			}
		}
	}
	var parts []Object
	month, gain := 0, any(nil) // without nights aboard
	if c, err := r.Case(r.Of(economics.IceOnly), false); err == nil && len(r.Months) > 0 {
		month, gain = c.Month, c.HeatW
		for _, s := range c.Heat {
			parts = append(parts, Object{{"source", s.Name()}, {"ua_w_per_k", told(s.Leak)}, {"heat_w", s.HeatW}}) // null for openings and goods
		}
	}
	return Object{
		{"volume_l", b.Volume},
		{"ua_w_per_k", b.Leak},
		{"ua_low_w_per_k", b.LeakLow},         // 10th percentile
		{"ua_high_w_per_k", b.LeakHigh},       // 90th percentile
		{"ua_drawn_w_per_k", b.Drawn.Total()}, // from the walls alone
		{"ua_log_sd", b.Evidence.LogSD},       // of its natural logarithm
		{"ice_capacity_kg", b.IceKg},
		{"evidence", append(list(b.Evidence.Used, view(true)), list(b.Evidence.Dropped, view(false))...)},
		{"evidence_disagrees", b.Evidence.Disagree}, // views of the leak that cannot all be right
		{"evidence_in_words", b.Evidence.Why},
		{"heat_by_source", parts},
		{"heat_by_source_month", month},
		{"doubts", b.Drawn.Notes},
		{"heat_gain_w", gain}, // of that month
	}
}

// monthOf is a mean day of a month.
func monthOf(m economics.MonthFigures) Object {
	return Object{
		{"month", m.Month},
		{"nights", m.Nights},
		{"cabin_c", m.CabinC},
		{"sea_c", m.SeaC},
		{"leak_w", m.LeakW},
		{"openings_w", m.OpeningsW},
		{"goods_w", m.GoodsW},
		{"heat_gain_w", m.HeatGainW},
		{"ice_kg_per_day", m.IceKgPerDay},
		{"sun_kwh_m2_day", m.SunKWhM2Day},
		{"solar_wh_per_day", m.SolarWhPerDay},
		{"house_wh_per_day", m.HouseWhPerDay},
		{"small_wh_per_day", m.SmallWhPerDay},
		{"larger_wh_per_day", m.LargerWhPerDay},
		{"small_run_share", m.SmallRunShare},
		{"larger_run_share", m.LargerRunShare},
		{"small_held_c", m.SmallHeldC},
		{"larger_held_c", m.LargerHeldC},
	}
}

func futuresOf(r *economics.Reckoning) Object {
	f := r.Futures
	var paid []Object
	for i, id := range economics.Options {
		var low, typical, high []float64
		for _, p := range f.Paid[i] {
			low, typical, high = append(low, p.Low), append(typical, p.Typical), append(high, p.High)
		}
		paid = append(paid, Object{{"option", id}, {"low", low}, {"typical", typical}, {"high", high}})
	}
	return Object{
		{"count", f.Count},
		{"seed", f.Seed},
		{"preferred", f.Preferred},        // of lowest mean loss; the answer goes by counts
		{"preferred_runner_up", f.Runner}, // of next lowest, on which the swings are measured
		{"evpi", f.EVPI},                  // this and the next: a year
		{"evpi_standard_error", f.EVPIError},
		{"inputs", list(f.Inputs, uncertainOf)},
		{"paid_by_year", paid}, // what a fitted option has cost by each year's end
	}
}

func uncertainOf(in economics.InputFigures) Object {
	side := ""
	if in.SwitchKnown {
		side = map[bool]string{true: "above", false: "below"}[in.SwitchAbove]
	}
	return Object{
		{"name", in.Name},
		{"label", in.Label},
		{"unit", in.Unit},
		{"low", in.Low}, // 10th percentile
		{"typical", in.Typical},
		{"high", in.High},   // 90th percentile
		{"evppi", in.EVPPI}, // a year
		{"switch_at", when(in.SwitchKnown, in.SwitchAt)},                      // null when the choice never turns on it
		{"switch_side", side},                                                 // "above" or "below", "" when there is none
		{"switch_to", when(in.SwitchKnown && in.SwitchTo != "", in.SwitchTo)}, // the option that is most often best beyond it
		{"chance_beyond", when(in.SwitchKnown, in.ChanceBeyond)},
		{"swing_low", in.SwingLow}, // this and the next: a year
		{"swing_high", in.SwingHigh},
	}
}

// answerOf is what to do. Money is a day.
func answerOf(in Input) Object {
	a, b := &in.Reckoning.Answer, &in.Reckoning.Boat
	led := a.Way() != ""
	worth := led && b.Told("money.cold_day_worth")
	return Object{
		{"case", a.Case},
		{"headline", words.Of(in.Reckoning, in.Book).Answer()},
		{"way", when(led, a.Way())}, // that leads, or comes nearest; null where there is nothing to decide
		{"way_of_100", a.WayOf100},
		{"no_worth", when(led, a.NoWorth)},         // of a cold day, up to which the answer is no
		{"yes_worth", when(led, a.YesWorth)},       // from which it is yes
		{"worth_told", when(worth, a.Worth.Low)},   // the lower end, where a range was told; null where none was
		{"yes_of_100", when(worth, a.YesOf100[0])}, // futures in which the way is worth that; null where none was told
		{"counts", list(a.Counts, func(c economics.WorthCount) Object { return Object{{"worth", c.Worth}, {"of_100", c.Of100}} })}, // of futures in which a cold day costs no more
		{"evidence_grade", b.EvidenceGrade()},
	}
}

// verdictOf is what is said beside the answer.
func verdictOf(in Input) Object {
	v := words.Of(in.Reckoning, in.Book)
	var flips, sure []string
	for _, f := range v.Flips() {
		flips = append(flips, f.Text)
	}
	for _, text := range append([]string{v.Medicine(), v.Grade(), v.Counts()}, v.Also()...) {
		if text != "" {
			sure = append(sure, text)
		}
	}
	measured, told, assumed := in.Reckoning.Boat.EvidenceCounts() // how the owner's figures are known
	return Object{
		{"reasons", v.Reasons()},
		{"flips", flips},
		{"how_sure", sure},
		{"evidence", Object{{"measured", measured}, {"told", told}, {"assumed", assumed}, {"grade", in.Reckoning.Boat.EvidenceGrade()}}},
	}
}
