package main

import (
	"fmt"
	"maps"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/rules"
	"coldreckon/wizard/answers"
)

// asked tells for every fact that a rule or a price reads which answers change
// it: key and text, one after the other.
var asked = map[string][]string{
	"nights_per_year":        {"cruising.nights", "9 nights in june"},
	"trip_nights":            {"cruising.trip_nights", "3"},
	"shop_every_days":        {"cruising.shop_every_days", "1"},
	"shore_power_share":      {"cruising.shore_power_share", "0.5"},
	"before_trip":            {"cruising.before_trip", "precooled"},
	"crew":                   {"cruising.crew", "4"},
	"person_nights_per_year": {"cruising.crew", "4"},
	"shore_nights_per_year":  {"cruising.shore_power_share", "0.5"},

	"box_volume_l":        {"box.volume", "150 L"},
	"foam_poured_l":       {"box.void", "60 L"},
	"spacer_l":            {"box.spacer_fits", "yes"},
	"box_leak_w_per_k":    {"box.foam", "90 mm"},
	"foam_thinnest_mm":    {"box.foam", "90 mm"},
	"worst_state":         {"box.state", "soaked"},
	"lid":                 {"box.lid", "front"},
	"drain":               {"box.drain", "none"},
	"fitted_unit":         {"box.fitted_unit", "dead"},
	"cabin_hottest_c":     {"cruising.ground", "virgin-islands"},
	"heat_gain_hottest_w": {"box.foam", "90 mm"},

	"food_target_c":      {"food.target", "6 °C"},
	"cold_days_wanted":   {"food.cold_days_wanted", "0.6"},
	"must_be_cold_share": {"food.must_be_cold_share", "0.6"},
	"medicine":           {"food.medicine", "yes"},
	"vulnerable":         {"food.vulnerable", "yes"},

	"cold_share":              {"box.foam", "90 mm"},
	"kept_share":              {"box.foam", "90 mm"},
	"cool_share":              {"cruising.ground", "virgin-islands"},
	"warm_days_per_year":      {"box.foam", "90 mm"},
	"warmest_food_c":          {"cruising.ground", "virgin-islands"},
	"hours_over_5c":           {"cruising.ground", "virgin-islands"},
	"hours_off_longest":       {"cruising.ground", "virgin-islands"},
	"room_for_food_l":         {"ice.share_of_box", "0.7"},
	"food_to_keep_l":          {"cruising.crew", "4"},
	"ice_per_day_hottest_kg":  {"box.foam", "90 mm"},
	"ice_capacity_kg":         {"ice.share_of_box", "0.7"},
	"ice_gap_days":            {"ice.found_at_stops", "0.2"},
	"ice_found_at_stops":      {"ice.found_at_stops", "0"},
	"ice_bought_kg_per_year":  {"ice.first_load", "home"},
	"ice_errands_per_year":    {"ice.first_load", "home"},
	"run_share_hottest":       {"cruising.ground", "virgin-islands"},
	"unit_wh_per_day_hottest": {"cruising.ground", "virgin-islands"},
	"unit_form":               {"units_considered.small.form", "free_standing"},
	"cooled_by":               {"units_considered.larger.cooled_by", "seawater"},
	"plate":                   {"units_considered.larger.plate", "eutectic"},
	"plate_c":                 {"units_considered.larger.plate", "eutectic"},
	"cable_drop_share":        {"power.cable_run", "9 m", "power.cable_size", "2.5 mm²"},
	"cable_known":             {"power.cable_run", "9 m", "power.cable_size", "2.5 mm²"},

	"volts":                {"power.volts", "24 V"},
	"battery_ah":           {"power.battery", "400 Ah"},
	"battery_kwh":          {"power.battery", "none"},
	"chemistry":            {"power.chemistry", "lithium"},
	"solar_wp":             {"power.solar", "180 W"},
	"engine_hours_per_day": {"power.engine_hours_per_day", "3 h"},
	"battery_lowest_share": {"power.solar", "180 W"},

	"seal_renewed":    {"box.lid_seal", "good", "box.drain", "none"},
	"drain_trapped":   {"box.lid_seal", "good", "box.drain", "none"},
	"lid_insulated":   {"box.reachable", "no"},
	"foam_added_m2":   {"box.reachable", "no"},
	"foam_added_mm":   {"box.reachable", "no"},
	"foam_outside_m2": {"box.reachable", "outside"},
	"cover_added":     {"cruising.ground", "virgin-islands", "box.lid", "front", "box.opens_per_day", "60", "box.reachable", "no"},
	"vent_added": {"cruising.ground", "chesapeake-bay", "cruising.before_trip", "precooled", "box.reachable", "no",
		"units_considered.small.cooled_by", "fins", "units_considered.small.rated_cooling", "60 W"},
	"panel_added_wp":        {"cruising.ground", "virgin-islands", "power.engine_hours_per_day", "0 h"},
	"battery_added_ah":      {"cruising.ground", "virgin-islands", "power.max_panel", "none", "power.solar", "none"},
	"battery_added_kwh":     {"cruising.ground", "virgin-islands", "power.max_panel", "none", "power.solar", "none"},
	"holes_below_waterline": {"units_considered.larger.cooled_by", "seawater"},
	"alarm_added":           {"cruising.nights", "may 31, june 30, july 31, august 31, september 30, october 31", "cruising.crew", "6", "cruising.shop_every_days", "7", "food.must_be_cold_share", "0.6"},
	"unseen_stops_per_year": {"cruising.nights", "9 nights in june"},
	"stop_spoils_share":     {"box.alarm", "yes"},

	"shore_kwh_per_year":        {"cruising.shore_power_share", "0.5"},
	"engine_kwh_per_year":       {"power.engine_hours_per_day", "3 h"},
	"battery_wear_kwh_per_year": {"power.solar", "180 W"},
	"perishables_aboard_kg":     {"food.must_be_cold_share", "0.6"},

	"first_cost":   {"units_considered.small.price", "1500"},
	"budget":       {"money.budget", "1234"},
	"budget_given": {"money.budget", "1234"},
	"fitted_by":    {"money.fitted_by", "yard"},
	"will_sell":    {"money.will_sell", "yes"},

	"fuel_vapour_space":  {"safety.fuel_vapour_space", "yes"},
	"co_alarm":           {"safety.co_alarm", "yes"},
	"lithium":            {"safety.lithium", "yes"},
	"drain_to":           {"safety.drain_to", "sump"},
	"children":           {"safety.children", "yes"},
	"latch_opens_inside": {"safety.latch_opens_inside", "yes"},
	"dry_ice":            {"safety.dry_ice", "yes"},
	"fish":               {"safety.fish", "yes"},
	"eggs":               {"safety.eggs", "unwashed"},
	"wiring_known":       {"safety.wiring_known", "yes"},
	"left_unattended":    {"safety.left_unattended", "yes"},
}

// untouched are keys that only rules read: one reckoning with the answers to all
// of them serves for each.
var untouched = []string{"food.medicine", "food.vulnerable", "money.budget", "money.fitted_by", "money.will_sell"}

// together gives with one answer that only rules read all the others, each key once.
func together(given []string) []string {
	alone := func(key string) bool { return !slices.Contains(untouched, key) && !strings.HasPrefix(key, "safety.") }
	if alone(given[0]) {
		return given
	}
	all := map[string]string{}
	for _, other := range asked {
		if !alone(other[0]) {
			all[other[0]] = other[1]
		}
	}
	var out []string
	for _, key := range slices.Sorted(maps.Keys(all)) {
		out = append(out, key, all[key])
	}
	return out
}

// notAsked are the facts that say which case is looked at: no answer changes
// them, every option and both its cases have their own.
var notAsked = []string{"option", "fitted", "unit_added"}

// plainAnswers is a boat with a short season, so that reckoning it is quick.
const plainAnswers = `
units: metric
cruising: {ground: maine-coast, nights: {july: 6}, trip_nights: 6, shop_every_days: 3, crew: 2}
box: {volume: 90 L, foam: 25 mm, state: damp, lid: top, lid_seal: worn, drain: open, reachable: yes}
power: {battery: 200 Ah, solar: 60 W, max_panel: 200 W, engine_hours_per_day: 0.5 h}
ice: {first_load: bought, found_at_stops: 0.8}
`

// reached reckons the plain boat with some answers given, key and text one
// after the other, and gives the facts of every option, as told and fitted.
func reached(t *testing.T, pack rules.Pack, given []string) []economics.Facts {
	t.Helper()
	file, faults := answers.Read("plain.yaml", strings.NewReader(plainAnswers))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for i := 0; i < len(given); i += 2 {
		if err := file.Set(given[i], given[i+1]); err != nil {
			t.Fatalf("%s: %v", given[i], err)
		}
	}
	boat, faults := file.Boat(pack.Book)
	if len(faults) > 0 {
		t.Fatalf("%v: %v", given, faults)
	}
	r := reckonSoon(t, boat, pack)
	var sets []economics.Facts
	for i := range r.Options {
		sets = append(sets, r.Options[i].AsTold.Facts, r.Options[i].Fitted.Facts)
	}
	return sets
}

// reckonSoon works a boat out over as few futures as show all the work there is.
func reckonSoon(t *testing.T, boat economics.Boat, pack rules.Pack) *economics.Reckoning {
	t.Helper()
	ground, err := boat.Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := economics.Reckon(boat, pack.Book, ground, economics.Settings{Futures: 200, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// readByRules gives the facts that criteria, cautions, reasons and price
// quantities read.
func readByRules(pack rules.Pack) []string {
	var text strings.Builder
	for _, c := range pack.Book.Criteria {
		fmt.Fprintln(&text, c.Fails, c.Reason)
	}
	for _, c := range pack.Cautions {
		fmt.Fprintln(&text, c.When)
	}
	for _, l := range pack.Book.Prices {
		if l.Quantity != nil {
			fmt.Fprintln(&text, l.Quantity)
		}
	}
	words := map[string]bool{}
	for _, w := range regexp.MustCompile(`[a-z][a-z0-9_]*`).FindAllString(text.String(), -1) {
		words[w] = true
	}
	var names []string
	for _, fact := range economics.Vocabulary() {
		if words[fact.Name] {
			names = append(names, fact.Name)
		}
	}
	return names
}

// Every fact that a rule or a price reads can be changed by an answer, for
// some option; so no rule is out of every owner's reach. Outside the long run a
// fifth of what is known to change them is tried.
func TestEveryFactOfARuleCanBeReached(t *testing.T) {
	pack, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	read := readByRules(pack)
	if len(read) < 40 {
		t.Fatalf("the rules read %d facts; expected more", len(read))
	}
	before := reached(t, pack, nil)
	done := map[string][]economics.Facts{}
	for i, name := range read {
		if slices.Contains(notAsked, name) {
			continue
		}
		given, known := asked[name]
		if !known {
			t.Errorf("%s: no answer is known to change it", name)
			continue
		}
		if !longRun() && i%5 > 0 {
			continue
		}
		given = together(given)
		key := strings.Join(given, "=")
		if done[key] == nil {
			done[key] = reached(t, pack, given)
		}
		changed := false
		for j := range before {
			changed = changed || !reflect.DeepEqual(before[j][name], done[key][j][name])
		}
		if !changed {
			t.Errorf("%s is the same for every option after %v: %v", name, given, before[4][name])
		}
	}
}

// The facts that only name the case differ between options or cases.
func TestCasesDiffer(t *testing.T) {
	pack, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	sets := reached(t, pack, nil)
	for _, name := range notAsked {
		values := map[any]bool{}
		for _, facts := range sets {
			values[facts[name]] = true
		}
		if len(values) < 2 {
			t.Errorf("%s is %v in every case", name, slices.Collect(maps.Keys(values)))
		}
	}
}
