package compare

import (
	"cmp"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// his are the answers, by their keys, that a buyer brings to every boat. A name
// that ends in a point stands for all keys below it.
var his = []string{
	"units", "currency", "cruising.", "food.", "money.",
	"ice.kind", "ice.price", "ice.unit_size", "ice.found_at_stops", "ice.first_load", "ice.trip_cost", "ice.carry_limit", "ice.carry_loss",
	"safety.children", "safety.dry_ice", "safety.fish", "safety.eggs", "safety.left_unattended",
}

// buyers reports whether an answers key is the buyer's.
func buyers(key string) bool {
	return slices.ContainsFunc(his, func(b string) bool {
		return key == b || strings.HasSuffix(b, ".") && strings.HasPrefix(key, b)
	})
}

// hers are the told sums of money that stay the boat's.
var hers = []string{
	"units_considered.small.price", "units_considered.small.fitting", "units_considered.small.upkeep",
	"units_considered.larger.price", "units_considered.larger.fitting", "units_considered.larger.upkeep",
}

// ForBuyer puts the buyer's answers in place of the boat's: where and how he
// cruises and with whom, what he eats, his money, how ice is bought where he
// cruises, the crew's habits that cautions ask about, and units and currency.
// Both are as told, before defaults are filled in: defaults that hang on the
// buyer's answers then follow. Prices of the boat told in another currency are
// converted at its rate. Without one she stays in her own, in which his sums are
// then read too: her box and how often it is cold can be compared, her costs
// cannot.
func ForBuyer(boat, buyer economics.Boat, rates Rates) economics.Boat {
	currency := buyer.Currency
	for _, key := range hers {
		if how := boat.Known[key]; (how == quantity.Told || how == quantity.Measured) && boat.Currency != buyer.Currency {
			currency = boat.Currency
		}
	}
	if rate, ok := rates.of(currency); ok && currency != buyer.Currency {
		boat, currency = converted(boat, rate), buyer.Currency
	}
	out := boat
	out.Units, out.Currency = buyer.Units, currency
	out.Cruising, out.Food, out.Money = buyer.Cruising, buyer.Food, buyer.Money
	share := boat.Ice.ShareOfBox
	out.Ice = buyer.Ice
	out.Ice.ShareOfBox = share
	s, from := &out.Safety, buyer.Safety
	s.Children, s.DryIce, s.Fish, s.Eggs, s.LeftUnattended = from.Children, from.DryIce, from.Fish, from.Eggs, from.LeftUnattended

	out.Known = map[string]quantity.How{}
	out.Assumptions = nil
	for _, from := range []struct {
		boat  economics.Boat
		buyer bool
	}{{boat, false}, {buyer, true}} {
		for key, how := range from.boat.Known {
			if buyers(key) == from.buyer {
				out.Known[key] = how
			}
		}
		for _, a := range from.boat.Assumptions {
			if buyers(a.Key) == from.buyer {
				out.Assumptions = append(out.Assumptions, a)
			}
		}
	}
	return out
}

func named(currency string) string { return cmp.Or(currency, "no named currency") }
