package wizard

import (
	"fmt"
	"os"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// These tests reckon with the prices of the program, read here without the
// package that owns them, because a wizard must not lean on it.

// amount is a product of facts, where a condition on one fact holds.
type amount struct{ when, product string }

func (a amount) Number(facts economics.Facts) (float64, error) {
	if a.when != "" {
		name, word, compared := strings.Cut(a.when, " == ")
		if compared && facts[name] != strings.Trim(word, "'") || !compared && facts[name] != true {
			return 0, nil
		}
	}
	n := 1.0
	for _, name := range strings.Split(a.product, " * ") {
		if name == "1" {
			continue
		}
		v, ok := facts[name].(float64)
		if !ok {
			return 0, fmt.Errorf("fact %s: found %v, expected a number", name, facts[name])
		}
		n *= v
	}
	return n, nil
}

type condition func(economics.Facts) bool

func (c condition) Holds(f economics.Facts) (bool, error) { return c(f), nil }

var testBook = sync.OnceValue(func() economics.Book {
	data, err := os.ReadFile("../rules/packs/prices.yaml")
	if err != nil {
		panic(err)
	}
	type span struct{ Low, Typical, High float64 }
	var pack struct {
		Currency string
		Prices   []struct {
			span                                     `yaml:",inline"`
			ID, Label, Unit, Billing, Quantity, When string
			Work                                     string
			Life                                     span
			Options                                  []economics.OptionID
		}
	}
	if err := yaml.Unmarshal(data, &pack); err != nil {
		panic(err)
	}
	book := economics.Book{Currency: pack.Currency}
	for _, p := range pack.Prices {
		line := economics.PriceLine{ID: p.ID, Label: p.Label, Unit: p.Unit, Price: quantity.Range(p.span), Work: p.Work == "yes",
			Billing: economics.Billing(p.Billing), Life: quantity.Range(p.Life), Options: p.Options}
		if line.Options == nil {
			line.Options = economics.Options[:]
		}
		if p.Quantity != "" {
			line.Quantity = amount{p.When, p.Quantity}
		}
		book.Prices = append(book.Prices, line)
	}
	tooWarm := condition(func(f economics.Facts) bool {
		return f["cold_share"].(float64) < f["cold_days_wanted"].(float64)-1e-6
	})
	units := []economics.OptionID{economics.SmallUnit, economics.LargerUnit}
	book.Criteria = []economics.Criterion{
		{ID: "ice-too-warm", Options: []economics.OptionID{economics.IceOnly}, Fails: tooWarm},
		{ID: "ice-no-room", Options: []economics.OptionID{economics.IceOnly}, Fails: condition(func(f economics.Facts) bool {
			return f["room_for_food_l"].(float64) < f["food_to_keep_l"].(float64)-1e-6
		})},
		{ID: "dry-medicine", Options: []economics.OptionID{economics.DryStores}, Fails: condition(func(f economics.Facts) bool { return f["medicine"] == "yes" })},
		{ID: "unit-too-warm", Options: units, Fails: tooWarm},
		{ID: "unit-no-battery", Options: units, Fails: condition(func(f economics.Facts) bool { return f["battery_kwh"].(float64) <= 0 })},
	}
	return book
})
