package questions

import (
	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// coolerRows ask for a passive cooler that could carry the ice. Its size is
// asked only where it has a place.
func coolerRows() []Row {
	placed := func(b economics.Boat) bool {
		return b.Cooler.Stands == economics.CoolerInCabin || b.Cooler.Stands == economics.CoolerOnDeck
	}
	// Where it has no place its size is no assumption of the reckoning.
	why := func(c Context, text string) string {
		if placed(c.Boat) {
			return text
		}
		return ""
	}
	return []Row{
		{
			Key: "cooler.stands", Group: OfIce, Label: "A thick-walled cooler would stand", Kind: Choice, Detail: true,
			Ask:  "Where could a thick-walled cooler stand, to carry ice in place of the box, or drinks beside it?",
			Help: "Typical: in the cockpit, strapped down. In the cabin it stays cooler, if nobody has to climb over it.",
			Options: []Option{{"none", "nowhere", "no|no room"}, {"cabin", "in the cabin or a locker", "below|locker|inside"},
				{"deck", "in the cockpit or on deck", "cockpit|on deck|outside"}, {"unknown", "not looked yet", ""}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cooler.Stands) },
			Default: always(economics.CoolerUnasked, ""),
		},
		{
			Key: "cooler.for", Group: OfIce, Label: "That cooler is for", Kind: Choice, Detail: true,
			When:    func(b economics.Boat) bool { return placed(b) && b.Food.DrinksADay > 0 },
			Ask:     "What would that cooler be for: ice and food in place of the box, or the drinks beside it?",
			Help:    "Typical: the drinks. They and the openings for them then leave the box, whatever cools it.",
			Options: []Option{{"ice", "ice and food, in place of the box", "food|box"}, {"drinks", "the drinks, beside the box", "drink|beside"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cooler.For) },
			Default: always(economics.CoolerForIce, ""),
		},
		{
			Key: "cooler.volume", Group: OfIce, Label: "Cooler, inside volume", Kind: Volume, Detail: true, When: placed,
			Ask:     "How much would that cooler hold?",
			Help:    "Typical: 45 to 75 L (1.6 to 2.6 cu ft). Ice takes a third to a half of it; full, it is heavy for one person.",
			Limits:  Limits{8, 20, 150, 400},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cooler.Volume) },
			Default: func(c Context) (any, string) { return quantity.Litre(58), why(c, judgement) },
		},
		{
			Key: "cooler.wall", Group: OfIce, Label: "Cooler, foam in the walls", Kind: Length, Detail: true, When: placed,
			Ask:     "How thick is the foam in that cooler's walls and lid?",
			Help:    "Typical: 2 in (50 mm) in a thick-walled one, under 1 in (25 mm) in a picnic cooler. Outside less inside, halved.",
			Limits:  Limits{0.005, 0.015, 0.09, 0.2},
			Field:   func(b *economics.Boat) Slot { return at(&b.Cooler.Wall) },
			Default: func(c Context) (any, string) { return quantity.Metre(0.0508), why(c, judgement) },
		},
		{
			Key: "cooler.price", Group: OfIce, Label: "Cooler, price", Kind: Money, Detail: true, When: placed,
			Ask:    "What would that cooler cost?",
			Help:   "Typical: $220; nothing for one you have.",
			Limits: Limits{0, 0, 600, 5000},
			None:   "nothing",
			Field:  func(b *economics.Boat) Slot { return at(&b.Cooler.Price) },
			Default: func(c Context) (any, string) {
				v, from := priced(c, "cooler", 220)
				return quantity.Money(v), why(c, from)
			},
		},
	}
}
