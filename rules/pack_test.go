package rules

import (
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

func load(t testing.TB) Pack {
	t.Helper()
	pack, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	return pack
}

func TestEmbeddedExamples(t *testing.T) {
	pack := load(t)
	for _, failure := range pack.RunExamples() {
		t.Error(failure)
	}
	if pack.Examples() < 150 {
		t.Errorf("%d examples; expected the whole pack to bring some", pack.Examples())
	}
}

// Every rule shows at least one case in which it fires and one in which it
// stays silent. A caution that is "true" for its options is silent for the
// others; the two-hour rule alone is never silent.
func TestEveryRuleFiresAndStaysSilentSomewhere(t *testing.T) {
	pack := load(t)
	fires, silent := map[string]bool{}, map[string]bool{}
	for _, e := range pack.examples {
		if e.condition == nil {
			continue
		}
		fires[e.rule] = fires[e.rule] || e.fires
		silent[e.rule] = silent[e.rule] || !e.fires
	}
	check := func(id string, when economics.Condition, options []economics.OptionID) {
		always := when.(*expression).text == "true" && id != "two-hour-rule"
		if always && len(options) > 0 && len(options) < len(economics.Options) {
			silent[id] = true
		}
		if !fires[id] || !silent[id] && id != "two-hour-rule" {
			t.Errorf("%s: fires in an example %v, stays silent in one %v", id, fires[id], silent[id])
		}
	}
	for _, c := range pack.Cautions {
		check(c.ID, c.When, c.Options)
	}
	for _, c := range pack.Book.Criteria {
		check(c.ID, c.Fails, c.Options)
	}
	for _, line := range pack.Book.Prices {
		if line.Quantity == nil {
			continue
		}
		if !slices.ContainsFunc(pack.examples, func(e example) bool { return e.rule == line.ID && e.gives > 0 }) {
			t.Errorf("price %s has no example that counts something", line.ID)
		}
	}
}

// "Don't know" on a safety question brings a caution that the reassuring
// answer does not.
func TestNotKnowingFires(t *testing.T) {
	pack := load(t)
	asked := 0
	for _, fact := range economics.Vocabulary() {
		// Whether the owner will sell is a question of money.
		if fact.Kind != economics.Word || !oneWordOf(fact.Unit, "unknown") || fact.Name == "will_sell" {
			continue
		}
		asked++
		var before, after int
		for _, option := range economics.Options {
			facts := calm(option)
			sure, err := pack.Judge(facts)
			if err != nil {
				t.Fatal(err)
			}
			unsure, err := pack.Judge(with(facts, economics.Facts{fact.Name: "unknown"}))
			if err != nil {
				t.Fatal(err)
			}
			before, after = before+len(sure), after+len(unsure)
		}
		if after <= before {
			t.Errorf("%s: unknown brings %d findings, the safe answer %d", fact.Name, after, before)
		}
	}
	if asked < 10 {
		t.Errorf("%d questions can be answered with unknown; expected ten or more", asked)
	}
}

// Where the limits come from. Each row stands just on the safe side of a
// published or stated limit and then just past it.
func TestPublishedLimits(t *testing.T) {
	pack := load(t)
	for _, row := range []struct {
		caution      string
		option       economics.OptionID
		fact         string
		safe, unsafe float64
		also         economics.Facts
		Source       string
	}{
		{"food-over-5c", economics.IceOnly, "warmest_food_c", 5, 5.1, nil, "FDA Food Code 3-501.16(A)(2): 41 °F (5 °C) or less"},
		{"food-over-8c", economics.IceOnly, "warmest_food_c", 8, 8.1, nil, "England, Wales, Northern Ireland: legal maximum 8 °C for food"},
		{"food-over-10c", economics.SmallUnit, "warmest_food_c", 10, 10.1, nil, "FDA Fish Hazards Guide, appendix 4: limits on time above 50 °F (10 °C)"},
		{"vulnerable-warm", economics.SmallUnit, "warmest_food_c", 4, 4.4, economics.Facts{"vulnerable": "yes"}, "FDA consumer guidance: 40 °F (4.4 °C) or below; 4 °C taken"},
		{"cold-gap-unit", economics.SmallUnit, "hours_off_longest", 4, 4.5, nil, "FDA and FSIS: a closed refrigerator keeps about 4 hours"},
		{"cold-gap-ice", economics.IceOnly, "hours_off_longest", 0, 1, nil, "FoodSafety.gov: out of the cold the two-hour clock runs"},
		{"fish-histamine", economics.SmallUnit, "warmest_food_c", 4, 4.5, economics.Facts{"fish": "yes"}, "FDA Fish Hazards Guide: 40 °F (4.4 °C) or below for scombroid fish; 4 °C taken"},
		{"medicine-warm", economics.SmallUnit, "warmest_food_c", 8, 8.5, economics.Facts{"medicine": "yes"}, "FDA, insulin: 36 to 46 °F (2 to 8 °C)"},
		{"medicine-frozen", economics.SmallUnit, "plate_c", 0, -1, economics.Facts{"medicine": "yes"}, "FDA, insulin: do not use once frozen"},
		{"child-trap", economics.LargerUnit, "box_volume_l", 56, 57, economics.Facts{"children": "yes", "latch_opens_inside": "no"}, "16 CFR 1750: spaces of 2 cu ft (56.6 L) and more"},
		{"wire-drop", economics.SmallUnit, "cable_drop_share", 0.03, 0.031, nil, "ISO 10133: 3 % where the maker wants a low drop"},
		{"runs-hard", economics.SmallUnit, "run_share_hottest", 0.8, 0.85, nil, "engineering judgement, from memory"},
		{"plate-freezes", economics.SmallUnit, "plate_c", 0, -10, nil, "water freezes at 0 °C"},
	} {
		for value, want := range map[float64]bool{row.safe: false, row.unsafe: true} {
			facts := with(with(calm(row.option), row.also), economics.Facts{row.fact: value})
			findings, err := pack.Judge(facts)
			if err != nil {
				t.Fatal(err)
			}
			got := slices.ContainsFunc(findings, func(f Finding) bool { return f.ID == row.caution })
			if got != want {
				t.Errorf("%s with %s %g: fires %v; %s", row.caution, row.fact, value, got, row.Source)
			}
		}
	}
}

// Prices that could be read somewhere lie inside the book's range.
func TestPricesSpanWhatWasRead(t *testing.T) {
	book := load(t).Book
	for _, row := range []struct {
		id     string
		price  float64
		Source string
	}{
		{"ice_crushed", 1.13, "US retail list of 2024: 5 lb at 2.56 dollars"},
		{"shore_kwh", 0.30, "Dutch sea marina, euro"},
		{"shore_kwh", 0.50, "Dutch town harbour, coin meter, euro"},
		{"shore_kwh", 0.11, "British Columbia marina, Canadian dollars"},
		{"battery_lead", 158, "solar blog: 190 dollars for 100 Ah at 12 V"},
		{"battery_lithium", 273, "solar blog: 350 dollars for 100 Ah at 12.8 V"},
		{"engine_kwh", 1.20 / 2.5, "Ocean Navigator, 2012: 2.5 kWh a litre at best; diesel 1.20 a litre"},
		{"engine_kwh", 1.20 / 0.4, "idle charging at 0.4 kWh a litre, from memory"},
		{"small_unit", 1000, "common practice, no source: a basic small unit costs about a thousand US dollars"},
		{"yard_factor", 2, "common practice, no source: a yard doubles it"},
	} {
		line, ok := book.Price(row.id)
		if !ok || row.price < line.Price.Low-1e-9 || row.price > line.Price.High+1e-9 {
			t.Errorf("%s: %g lies outside %v; %s", row.id, row.price, line.Price, row.Source)
		}
	}
	// Battery wear is price over what the battery can give in its life.
	for _, row := range []struct {
		id             string
		perKWh         float64
		usable, cycles float64
	}{
		{"battery_wear_lead", 220, 0.5, 600},
		{"battery_wear_lithium", 350, 0.8, 3500},
	} {
		line, _ := book.Price(row.id)
		if want := row.perKWh / (row.usable * row.cycles); line.Price.Typical < 0.98*want || line.Price.Typical > 1.02*want {
			t.Errorf("%s: typical %g; %g over %g cycles of %g is %g", row.id, line.Price.Typical, row.perKWh, row.cycles, row.usable, want)
		}
	}
}

// The models look these lines up by id.
func TestPriceLinesThatModelsNeed(t *testing.T) {
	book := load(t).Book
	for billing, ids := range map[economics.Billing]string{
		economics.Rate: "ice_block ice_cubes ice_crushed ice_errand small_unit small_unit_free_standing larger_unit " +
			"small_fitting_self small_fitting_yard larger_fitting_self larger_fitting_yard small_life larger_life chest_life " +
			"small_upkeep larger_upkeep cooler cooler_life yard_factor seen_at_sale",
		economics.Once:    "seal drain_trap lid_foam foam cover vent_duct cable_fuse haul_out seacock",
		economics.Renewed: "panel battery_lead battery_lithium alarm",
		economics.Yearly:  "shore_kwh engine_kwh battery_wear_lead battery_wear_lithium dry_premium spoilage unseen_stops",
	} {
		for _, id := range strings.Fields(ids) {
			line, ok := book.Price(id)
			if !ok || line.Billing != billing {
				t.Errorf("%s: found %v, billing %q; expected billing %q", id, ok, line.Billing, billing)
			}
			if work := slices.Contains(strings.Fields("seal drain_trap lid_foam foam vent_duct cable_fuse"), id); line.Work != work {
				t.Errorf("%s: work %v; expected %v", id, line.Work, work)
			}
			if (line.Quantity == nil) != (billing == economics.Rate) {
				t.Errorf("%s: quantity %v with billing %q", id, line.Quantity, billing)
			}
		}
	}
}

// A boat on which nothing is added, wasted or bought costs nothing beyond its
// ice and its unit.
func TestNothingAddedCostsNothing(t *testing.T) {
	facts := with(calm(economics.SmallUnit), economics.Facts{
		"unit_added": false, "shore_kwh_per_year": 0.0, "engine_kwh_per_year": 0.0, "battery_wear_kwh_per_year": 0.0,
		"perishables_aboard_kg": 0.0, "person_nights_per_year": 0.0,
	})
	for _, line := range load(t).Book.Prices {
		if line.Quantity == nil {
			continue
		}
		if n, err := line.Quantity.Number(facts); err != nil || n != 0 {
			t.Errorf("%s: %g, %v; expected 0", line.ID, n, err)
		}
	}
}

// Words are short and plain: no text over 44 words, no sentence over 24.
func TestTextsAreShort(t *testing.T) {
	pack := load(t)
	texts := map[string]string{"guidance": pack.Guidance}
	for _, c := range pack.Cautions {
		texts[c.ID] = c.Text
	}
	for _, c := range pack.Book.Criteria {
		texts[c.ID] = c.Reason
	}
	for id, text := range texts {
		if n := len(strings.Fields(text)); n > 44 || n < 5 {
			t.Errorf("%s: %d words", id, n)
		}
		if !strings.HasSuffix(text, ".") {
			t.Errorf("%s does not end with a full stop", id)
		}
		for _, sentence := range strings.Split(strings.NewReplacer(". ", ".\n", "? ", "?\n").Replace(text), "\n") {
			if n := len(strings.Fields(sentence)); n > 24 {
				t.Errorf("%s: %d words in %q", id, n, sentence)
			}
		}
	}
}

func TestReasonsRead(t *testing.T) {
	facts := with(calm(economics.IceOnly), economics.Facts{
		"cold_share": 0.896, "cold_days_wanted": 0.9, "trip_nights": 14.0, "shop_every_days": 1.0,
		"room_for_food_l": 20.0, "food_to_keep_l": 34.0, "run_share_hottest": 1.3, "first_cost": 1948.0, "budget": 1200.0,
	})
	for _, row := range []struct {
		id       string
		system   quantity.System
		currency string
		want     string
	}{
		{"ice-too-warm", quantity.Metric, "$", "Ice keeps the food cold on 89.6 % of the days aboard. You want 90 %."},
		{"ice-not-sold", quantity.Metric, "$", "No stop sells ice, and a trip of 14 nights is longer than the 1 day between stops."},
		{"ice-no-room", quantity.Metric, "$", "The ice leaves 20 L for food. The food between two stops needs 34 L."},
		{"ice-no-room", quantity.US, "$", "The ice leaves 0.71 cu ft for food. The food between two stops needs 1.2 cu ft."},
		{"unit-too-weak", quantity.US, "$", "In the hottest month the unit would have to run 130 % of the time. It cannot hold the temperature."},
		{"over-budget", quantity.US, "$", "The first outlay is about $1,900. You would spend up to $1,200."},
		{"over-budget", quantity.Metric, "EUR", "The first outlay is about EUR 1,900. You would spend up to EUR 1,200."},
	} {
		for _, c := range load(t).Book.Criteria {
			if c.ID != row.id {
				continue
			}
			if got, err := Fill(c.Reason, facts, row.system, row.currency); err != nil || got != row.want {
				t.Errorf("%s: got %q, %v\nwant %q", row.id, got, err, row.want)
			}
		}
	}
}

func TestFill(t *testing.T) {
	facts := with(calm(economics.IceOnly), economics.Facts{
		"warmest_food_c": 7.26, "food_target_c": -4.0, "first_cost": 12345678.0, "budget": 12345679.0, "fitted": true,
		"unit_form": "free_standing", "ice_per_day_hottest_kg": 6.04, "battery_kwh": 0.0, "crew": 1.0, "cable_drop_share": 0.031, "nights_per_year": 2.0, "plate_c": 7.31,
	})
	for _, row := range []struct {
		text   string
		system quantity.System
		want   string
	}{
		{"{warmest_food_c}", quantity.Metric, "7.3 °C"},
		{"{warmest_food_c}, {plate_c}", quantity.Metric, "7.26 °C, 7.31 °C"}, // alike with two digits
		{"{warmest_food_c}", quantity.US, "45 °F"},
		{"{food_target_c}", quantity.US, "25 °F"}, // -4 °C is 24.8 °F
		{"{ice_per_day_hottest_kg}", quantity.US, "13 lb/day"},
		{"{first_cost}, {budget}", quantity.Metric, "€12,000,000, €12,000,000"}, // only eight digits tell these apart
		{"{first_cost}", quantity.Metric, "€12,000,000"},
		{"{fitted}, {unit_form}", quantity.Metric, "yes, free standing"},
		{"{battery_kwh}", quantity.Metric, "0 kWh"},
		{"{crew}", quantity.Metric, "1 person"},
		{"{nights_per_year}", quantity.Metric, "2 nights"},
		{"{cable_drop_share}", quantity.Metric, "3.1 %"},
		{"no place { here", quantity.Metric, "no place { here"},
	} {
		got, err := Fill(row.text, facts, row.system, "€")
		if err != nil || got != row.want {
			t.Errorf("%q: got %q, %v; want %q", row.text, got, err, row.want)
		}
	}
	if _, err := Fill("{nothing}", facts, quantity.US, "$"); err == nil {
		t.Error("an unknown place is accepted")
	}
	if _, err := Fill("{crew}", economics.Facts{}, quantity.US, "$"); err == nil {
		t.Error("a missing fact is accepted")
	}
}

func TestListingNamesEverything(t *testing.T) {
	pack := load(t)
	listing := pack.Listing()
	for _, c := range pack.Cautions {
		if !strings.Contains(listing, c.ID) || !strings.Contains(listing, c.Text) {
			t.Errorf("caution %s is not listed", c.ID)
		}
	}
	for _, want := range []string{"too-warm", "kept_share < cold_days_wanted - 0.000001", "how many: 1, if seal_renewed", pack.Book.Identity, "in $"} {
		if !strings.Contains(listing, want) {
			t.Errorf("the listing lacks %q", want)
		}
	}
}

func TestIdentity(t *testing.T) {
	first, second := load(t), load(t)
	if first.Book.Identity != second.Book.Identity || len(first.Book.Identity) != 12 {
		t.Errorf("identities %q, %q", first.Book.Identity, second.Book.Identity)
	}
}
