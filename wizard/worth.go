package wizard

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// narrowing gives, for each uncertain input of a reckoning, the questions that
// sharpen it, the most telling first. "UNIT" stands for the unit that the
// answer turns on. Inputs that no answer can sharpen are left out.
var narrowing = map[string][]string{
	"leak": {"evidence.ice_history", "box.inside", "box.material", "box.lid_seal", "box.drain", "box.lid", "box.lid_opening",
		"evidence.ice_tests", "evidence.jug_tests", "box.foam", "box.state"},
	"use":             {"box.opens_per_day", "food.kg_per_person_day", "cruising.shop_every_days", "cruising.before_trip"},
	"cabin":           {"box.cabin_offset"},
	"nights":          {"cruising.nights"},
	"ice_price":       {"ice.kind", "ice.unit_size", "ice.price"},
	"ice_errand":      {"ice.trip_cost", "ice.carry_limit", "ice.first_load"},
	"unit_price":      {"units_considered.UNIT.price", "box.fitted_unit"},
	"fitting":         {"money.fitted_by", "units_considered.UNIT.fitting"},
	"unit_life":       {"units_considered.UNIT.life_years"},
	"upkeep":          {"units_considered.UNIT.upkeep"},
	"unit_efficiency": {"units_considered.UNIT.cooled_by"},
	"unit_capacity":   {"units_considered.UNIT.rated_cooling"},
	"other_loads":     {"power.other_loads", "power.engine_hours_per_day"},
	"sun":             {"power.mounting", "power.max_panel", "cruising.shore_power_share"},
	"battery":         {"power.battery_age", "power.chemistry"},
	"dry_premium":     {"food.must_be_cold_share"},
	"spoilage":        {"food.must_be_cold_share", "food.cold_days_wanted"},
	"materials":       {"box.reachable", "money.fitted_by"},
}

// hardlyWorth is the worth of knowing a figure, as a share of what the chosen
// way costs over the years, below which it is unlikely to change the answer.
// Engineering judgement, from memory.
const hardlyWorth = 0.01

// weigh gives the first answer once the essentials are known, and then the
// question worth most, until nothing left is likely to change the answer or
// the person has had enough.
func (t *talk) weigh() (visit, error) {
	if t.verdict == nil {
		if err := t.tellFirst(); err != nil {
			return visit{}, err
		}
	}
	r, err := t.figures()
	if err != nil {
		return visit{}, err
	}
	boat := t.File.Told()
	if r.Verdict.TurnKnown && !answered(&boat, worthKey) {
		return visit{key: worthKey, why: "The answer also hangs on what cold food is worth to you."}, nil
	}
	if t.enough {
		return visit{}, nil
	}
	key, worth := worthMost(r, boat)
	if key == "" {
		t.enough = true
		return visit{}, nil
	}
	if !t.onward && worth < hardlyWorth*math.Abs(r.Of(r.Verdict.Option).Fitted.Present) {
		i, err := t.Prompter.Choose(t.ctx, Question{
			Text: "Nothing left to ask is likely to change this. Shall I ask on all the same?",
			Help: "Typical: no. More answers make the figures sharper, not the choice. Some questions of safety come next.",
		}, []Choice{{Label: "no", Also: []string{"n", "stop", enoughWord}}, {Label: "yes", Also: []string{"y"}}}, 0)
		if err != nil {
			return visit{}, err
		}
		t.onward, t.enough = i == 1, i == 0
		if t.enough {
			return visit{}, nil
		}
	}
	why := "This one sharpens the figures."
	if m := rounded(worth); m > 0 {
		why = fmt.Sprintf("This could move the answer: worth about %s to know.", quantity.FormatMoney(m, r.Boat.Currency))
	}
	if len(t.asked) > 0 && t.asked[len(t.asked)-1].why == "" || t.asked[len(t.asked)-1].key == worthKey {
		why += ` "` + enoughWord + `" ends these.`
	}
	return visit{key, why}, nil
}

// worthMost gives the open question whose input is worth most to know, and
// that worth.
func worthMost(r *economics.Reckoning, boat economics.Boat) (key string, worth float64) {
	inputs := slices.Clone(r.Futures.Inputs)
	slices.SortStableFunc(inputs, func(a, b economics.InputFigures) int {
		switch {
		case a.EVPPI > b.EVPPI:
			return -1
		case a.EVPPI < b.EVPPI:
			return 1
		}
		return 0
	})
	unit := "small"
	if r.Verdict.Option == economics.LargerUnit || r.Verdict.HasRunner && r.Verdict.Runner == economics.LargerUnit && r.Verdict.Option != economics.SmallUnit {
		unit = "larger"
	}
	for _, in := range inputs {
		for _, key := range narrowing[in.Name] {
			key = strings.Replace(key, "UNIT", unit, 1)
			if row, ok := questions.Find(key); ok && row.Asked(boat) && !answered(&boat, key) {
				return key, in.EVPPI
			}
		}
	}
	return "", 0
}

// rounded cuts a worth to one or two figures that mean something.
func rounded(worth float64) quantity.Money {
	if worth < 1 {
		return 0
	}
	scale := math.Pow(10, math.Max(0, math.Floor(math.Log10(worth))-1))
	return quantity.Money(math.Round(worth/scale) * scale)
}
