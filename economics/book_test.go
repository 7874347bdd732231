package economics

import (
	"fmt"
	"math"

	"coldreckon/economics/quantity"
)

// testBook is a small book of the tests' own: round prices that can be worked
// by hand, and the criteria that decide.
func testBook() Book {
	units := []OptionID{SmallUnit, LargerUnit}
	boxed := []OptionID{IceOnly, SmallUnit, LargerUnit}
	line := func(id, unit string, price float64, billing Billing, options []OptionID, q Amount) PriceLine {
		return PriceLine{ID: id, Label: id, Unit: unit, Billing: billing, Options: options, Quantity: q,
			Price: quantity.Range{Low: price / 2, Typical: price, High: price * 2}}
	}
	rate := func(id string, price float64) PriceLine { return line(id, "each", price, Rate, nil, nil) }
	book := Book{Currency: "$", Identity: "of the tests", Prices: []PriceLine{
		rate("yard_factor", 2),
		rate("seen_at_sale", 0.15),
		line("seal", "each", 25, Once, boxed, times{when: "seal_renewed"}),
		line("drain_trap", "each", 20, Once, boxed, times{when: "drain_trapped"}),
		line("lid_foam", "each", 40, Once, boxed, times{when: "lid_insulated"}),
		line("foam", "m²", 150, Once, boxed, times{by: []string{"foam_added_m2"}}),
		line("cover", "each", 25, Once, boxed, times{when: "cover_added"}),
		line("vent", "each", 60, Once, units, times{when: "vent_added"}),
		line("panel", "W", 3.5, Once, units, times{by: []string{"panel_added_wp"}}),
		line("battery", "kWh", 220, Renewed, units, times{by: []string{"battery_added_kwh"}}),
		line("cable_fuse", "each", 70, Once, units, times{when: "unit_added"}),
		line("shore_kwh", "kWh", 0.40, Yearly, units, times{by: []string{"shore_kwh_per_year"}}),
		line("engine_kwh", "kWh", 1.50, Yearly, units, times{by: []string{"engine_kwh_per_year"}}),
		line("battery_wear", "kWh", 0.70, Yearly, units, times{by: []string{"battery_wear_kwh_per_year"}}),
		line("haul_out", "each", 500, Once, units, times{when: "holes_below_waterline"}),
		line("dry_premium", "person-night", 1.60, Yearly, []OptionID{DryStores}, times{by: []string{"person_nights_per_year"}}),
		line("spoilage", "kg on a warm day", 0.80, Yearly, boxed, times{by: []string{"perishables_aboard_kg", "warm_days_per_year"}}),
	}, Criteria: []Criterion{
		{ID: "too-warm", Kind: Warmth, Options: Options[:], Fails: below{"kept_share", "cold_days_wanted"}},
		{ID: "no-room", Kind: Room, Options: boxed, Fails: below{"room_for_food_l", "food_to_keep_l"}},
		{ID: "no-battery", Kind: Need, Options: units, Fails: none{"battery_kwh"}},
		{ID: "fuel-vapour", Kind: Hazard, Options: units, Fails: says{"fuel_vapour_space", "yes"}},
	}}
	for i := range book.Prices {
		if book.Prices[i].ID == "battery" {
			book.Prices[i].Life = quantity.Range{Low: 4, Typical: 6, High: 9}
		}
		switch book.Prices[i].ID {
		case "seal", "drain_trap", "lid_foam", "foam", "cover", "vent":
			book.Prices[i].Work = true
		}
	}
	return book
}

// times counts the product of some facts, where a truth holds; 1 without facts.
type times struct {
	when string
	by   []string
}

func (a times) Number(f Facts) (float64, error) {
	if a.when != "" {
		if holds, ok := f[a.when].(bool); !ok {
			return 0, fmt.Errorf("no truth %q", a.when)
		} else if !holds {
			return 0, nil
		}
	}
	product := 1.0
	for _, name := range a.by {
		n, err := number(f, name)
		if err != nil {
			return 0, err
		}
		product *= n
	}
	return product, nil
}

// below holds where one fact is less than another.
type below struct{ less, more string }

func (c below) Holds(f Facts) (bool, error) {
	less, err := number(f, c.less)
	if err != nil {
		return false, err
	}
	more, err := number(f, c.more)
	return less < more-1e-6, err
}

// none holds where there is nothing of a fact.
type none struct{ fact string }

func (c none) Holds(f Facts) (bool, error) {
	n, err := number(f, c.fact)
	return n <= 0, err
}

// says holds where a fact is a word.
type says struct{ fact, word string }

func (c says) Holds(f Facts) (bool, error) { return f[c.fact] == c.word, nil }

func number(f Facts, name string) (float64, error) {
	n, ok := f[name].(float64)
	if !ok || math.IsNaN(n) || math.IsInf(n, 0) {
		return 0, fmt.Errorf("fact %q is %v; want a finite number", name, f[name])
	}
	return n, nil
}
