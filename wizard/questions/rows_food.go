package questions

import (
	"cmp"
	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func foodRows() []Row {
	return []Row{
		{
			Key: "food.target", Group: OfFood, Label: "Food temperature aimed for", Kind: Temperature,
			Ask:     "How cold do you want the food?",
			Help:    "Typical: 4 °C (40 °F), which food safety agencies advise. 7 to 10 °C suits drinks, butter and vegetables only.",
			Limits:  Limits{0, 2, 8, 15},
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.Target) },
			Default: always(quantity.Celsius(4), "at or below 4.4 °C (40 °F), advice of FDA and USDA FSIS"),
		},
		{
			Key: "food.food_per_person_day", Data: "food.kg_per_person_day", Group: OfFood, Label: "Food a person and day, drinks apart", Kind: Mass, Detail: true,
			Ask:     "How much food does a person eat in a day, drinks apart?",
			Help:    "Typical: 1.2 kg (2.6 lb). Weigh the shopping of one trip once.",
			Limits:  Limits{0.1, 0.4, 3, 10},
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.KgPerPersonDay) },
			Default: always(quantity.Kilogram(1.2), judgement),
		},
		{
			Key: "food.must_be_cold_share", Group: OfFood, Label: "Part of the food that must be cold", Kind: Share,
			Ask:  "Do you carry fresh meat, fish or milk: none, the first days, or every day?",
			Help: "Typical: every day, which is 30 % of all food; the first days of a trip are 20 %, none 10 %. A share of your own does, too.",
			Options: []Option{{"0.1", "none", "no|never|no fresh meat"}, {"0.2", "the first days", "first days|at first|first|the first day|first day"},
				{"0.3", "every day", "yes|always|daily|all the time"}},
			Limits:  Limits{0, 0, 1, 1},
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.MustBeColdShare) },
			Default: always(quantity.Fraction(0.3), judgement),
		},
		{
			Key: "food.drinks_a_day", Data: "food.drinks_per_person_day", Group: OfFood, Label: "Cold drinks a person and day", Kind: Number, None: "none",
			Words:   []string{"cans", "can", "a day", "per day", "cans a day", "drinks", "drinks a day", "each"},
			Ask:     "How many cold drinks a day does each of you want?",
			Help:    "Typical: 3 cans of 12 oz (0.35 L). A bottle of water from the box counts as two.",
			Limits:  Limits{0, 0.5, 8, 40},
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.DrinksADay) },
			Default: always(3.0, "1 to 8 cans of 0.35 L; "+judgement),
		},
		{
			Key: "food.cool_is_enough", Group: OfFood, Label: "Cool is enough", Kind: YesNoUnknown,
			Ask:     "Is 50 °F (10 °C) enough: only drinks, butter, hard cheese, whole fruit and vegetables?",
			Help:    "Typical: no. Meat, fish, milk, eggs, cut fruit, cooked rice and leftovers need 40 °F (4 °C).",
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.CoolIsEnough) },
			Default: always(quantity.No, "cold food is the usual wish, and the safer one"),
		},
		{
			Key: "food.cold_days_wanted", Group: OfFood, Label: "Days that must be cold", Kind: Share,
			Ask:     "On what share of your days aboard must the food be cold for you to call it working?",
			Help:    "Typical: 90 %. Take 50 % if a warm day is an excuse to eat ashore, 100 % if none may be missed.",
			Limits:  Limits{0, 0.3, 1, 1},
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.ColdDaysWanted) },
			Default: always(quantity.Fraction(0.9), judgement),
		},
		{
			Key: "food.medicine", Group: OfFood, Label: "Medicine to be kept cold", Kind: YesNoUnknown, Safety: true,
			Ask:     "Is there medicine aboard that must stay between 2 and 8 °C (36 and 46 °F)?",
			Help:    "Typical: no. Insulin, some eye drops and injections: the leaflet in the packet says so.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.Medicine) },
			Default: always(quantity.Unknown, "not answered, so the caution is kept"),
		},
		{
			Key: "food.vulnerable", Group: OfFood, Label: "Crew at higher risk from spoiled food", Kind: YesNoUnknown, Safety: true,
			Ask:     "Is anyone aboard an infant, pregnant, over 65 or weak in immunity?",
			Help:    "Typical: no, but count guests. For them warm food is a greater danger.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.Vulnerable) },
			Default: always(quantity.Unknown, "not answered, so the caution is kept"),
		},
		{
			Key: "food.freeze", Group: OfFood, Label: "Wanted frozen", Kind: Choice, Detail: true,
			Ask:     "How much do you want to freeze a day: nothing, a tray of cubes, a few meals kept frozen?",
			Help:    "Typical: nothing. Only a unit can, and a frozen corner may take half as much current again as the rest.",
			Options: []Option{{"nothing", "nothing", "none|no"}, {"cubes", "a tray of cubes", "ice cubes|a tray|cube"}, {"meals", "a few meals kept frozen", "meal|frozen meals|food|freezer"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.Freeze) },
			Default: always(economics.FreezesNothing, ""),
		},
		{
			Key: "food.dry_premium", Data: "food.dry_premium_per_person_night", Group: OfFood, Label: "Extra cost of food that keeps", Kind: Money,
			Ask:  "How would you eat without cold: staples, usual tins, or pouch meals?",
			Help: "Typical: usual tins, $1.60 a person and night more than fresh food; staples $0.30, pouch meals $6. A sum of your own does, too.",
			Options: []Option{{"0.3", "staples", "plain staples|rice and beans|beans"}, {"1.6", "usual tins", "usual cans|tins|cans|the usual tins|canned food|tinned food"},
				{"6", "pouch meals", "pouches|pouch|freeze-dried|freeze dried"}},
			Limits:  Limits{0, 0, 15, 200},
			None:    "nothing",
			Field:   func(b *economics.Boat) Slot { return at(&b.Food.DryPremium) },
			Default: listed("dry_premium", 1.60),
		},
	}
}

func iceRows() []Row {
	return []Row{
		{
			Key: "ice.kind", Group: OfIce, Label: "Kind of ice", Kind: Choice,
			Ask:     "Which ice do you buy?",
			Help:    "Typical: cubes in bags. Blocks last longer and pack tighter where they are sold.",
			Options: []Option{{"block", "blocks", "blocks|block ice"}, {"cubes", "cubes in bags", "cube|bags|bagged"}, {"crushed", "crushed or flake ice", "flake|flakes"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.Kind) },
			Default: always(heat.Cubes, "what most places sell"),
		},
		{
			Key: "ice.unit_size", Group: OfIce, Label: "One bag or block", Kind: Mass,
			Ask:    "How heavy is one bag or block?",
			Help:   "Typical: 10 lb in North America, 2 kg in Europe.",
			Limits: Limits{0.3, 0.9, 25, 100},
			Field:  func(b *economics.Boat) Slot { return at(&b.Ice.UnitSize) },
			Default: func(c Context) (any, string) {
				return usualBag(c.Boat.Units)
			},
		},
		{
			Key: "ice.price", Group: OfIce, Label: "Price of ice", Kind: PricePerMass,
			Ask:    "What do you pay for ice?",
			Help:   "Typical: $0.50/lb ($1.10/kg) at a marina, half of that in a shop ashore. A bag's price also does: $5 a bag.",
			Limits: Limits{0.01, 0.05, 6, 50},
			Field:  func(b *economics.Boat) Slot { return at(&b.Ice.Price) },
			Default: func(c Context) (any, string) {
				return priced(c, "ice_"+string(cmp.Or(c.Boat.Ice.Kind, heat.Cubes)), 1.10)
			},
		},
		{
			Key: "ice.found_at_stops", Group: OfIce, Label: "Stops that sell ice", Kind: Share,
			Ask:     "At what share of the places where you shop can ice be bought?",
			Help:    "Typical: 90 % along a settled coast, 30 % among quiet islands.",
			Limits:  Limits{0, 0, 1, 1},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.FoundAtStops) },
			Default: always(quantity.Fraction(0.7), judgement),
		},
		{
			Key: "ice.first_load", Group: OfIce, Label: "First ice of a trip", Kind: Choice,
			Ask:     "Where does a trip's first ice come from?",
			Help:    "Typical: bought on the way. Bottles and blocks from a home freezer cost nothing and are colder.",
			Options: []Option{{"bought", "bought", "buy|shop"}, {"home", "frozen at home", "freezer|home freezer"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.FirstLoad) },
			Default: always(economics.Bought, "the dearer of the two"),
		},
		{
			Key: "ice.home_freezer", Group: OfIce, Label: "Ice that the freezer at home gives a trip", Kind: Mass,
			Ask:    "How much ice can your freezer at home make for a trip?",
			Help:   "Typical: 10 kg (22 lb). Bottles of water freeze flat; a chest freezer holds far more.",
			Limits: Limits{0.5, 3, 25, 200},
			Field:  func(b *economics.Boat) Slot { return at(&b.Ice.HomeFreezer) },
			Default: func(c Context) (any, string) {
				if c.Boat.Ice.FirstLoad != economics.FromHome {
					return quantity.Kilogram(10), ""
				}
				return quantity.Kilogram(10), "3 to 25 kg; " + judgement
			},
			When: func(b economics.Boat) bool { return b.Ice.FirstLoad == economics.FromHome },
		},
		{
			Key: "ice.runs", Data: "ice.ice_runs", Group: OfIce, Label: "Trips for ice alone", Kind: YesNoUnknown,
			Ask:     "Would you fetch ice on days when you do not shop for food?",
			Help:    "Typical: no at anchor, yes where ice is a short walk away.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.Runs) },
			Default: always(quantity.No, "not answered: ice is bought where food is bought"),
		},
		{
			Key: "ice.trip_cost", Group: OfIce, Label: "Cost of an extra errand for ice", Kind: Money, Detail: true,
			Ask:     "What does an extra errand for ice cost you, in fuel, fares or your time?",
			Help:    "Typical: $5; nothing if you pass the shop anyway, $25 for a taxi.",
			Limits:  Limits{0, 0, 60, 500},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.TripCost) },
			Default: listed("ice_errand", 5),
		},
		{
			Key: "ice.first_carry", Group: OfIce, Label: "Ice brought at the start of a trip", Kind: Mass, None: "what fits", Said: bagsSaid,
			Ask:     "How much ice can you bring aboard when a trip starts?",
			Help:    "Typical: what fits in the box, with a car beside the boat; 20 kg (40 lb) by dinghy.",
			Limits:  Limits{1, 4, 150, 500},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.FirstCarry) },
			Default: always(quantity.Kilogram(0), "no limit was told but the box"),
		},
		{
			Key: "ice.carry_limit", Group: OfIce, Label: "Ice carried at a later stop", Kind: Mass, Detail: true, Said: bagsSaid,
			Ask:    "At a later stop, how much ice can you carry to the boat at once?",
			Help:   "Typical: 20 kg (40 lb) for two people and a dinghy.",
			Limits: Limits{1, 4, 80, 400},
			Field:  func(b *economics.Boat) Slot { return at(&b.Ice.CarryLimit) },
			Default: func(c Context) (any, string) {
				limit := quantity.Kilogram(20)
				if c.Boat.Units != quantity.Metric {
					limit = 40 * quantity.Pound
				}
				return max(limit, c.Boat.Ice.UnitSize), judgement
			},
		},
		{
			Key: "ice.carry_loss", Group: OfIce, Label: "Ice melted on the way", Kind: Share, Detail: true,
			Ask:     "How much of the ice melts on the way to the boat?",
			Help:    "Typical: 8 %; 3 % in an insulated bag, 20 % after a hot walk.",
			Limits:  Limits{0, 0, 0.3, 0.9},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.CarryLoss) },
			Default: always(quantity.Fraction(0.08), "3 to 20 in 100; from memory"),
		},
		{
			Key: "ice.share_of_box", Group: OfIce, Label: "Share of the box given to ice", Kind: Share, Detail: true,
			Ask:     "How much of the box do you give to ice?",
			Help:    "Typical: a third. More ice keeps longer and leaves less room for food.",
			Limits:  Limits{0.02, 0.1, 0.7, 0.95},
			Field:   func(b *economics.Boat) Slot { return at(&b.Ice.ShareOfBox) },
			Default: always(quantity.Fraction(1.0/3), judgement),
		},
	}
}

// usualBag gives the mass of a bag of ice, and where it is from.
func usualBag(sys quantity.System) (quantity.Kilogram, string) {
	if sys == quantity.Metric {
		return 2, "the usual bag in Europe; from memory"
	}
	return 10 * quantity.Pound, "the usual bag in North America; from memory"
}

// priced gives a price from the price book, or a stated figure when the book
// has no such line; and where it comes from.
func priced(c Context, id string, otherwise float64) (price float64, why string) {
	price, why = rate(c, id, otherwise)
	currency := cmp.Or(c.Book().Currency, "US dollars")
	if c.Boat.Currency != "" && c.Boat.Currency != currency && (currency != "US dollars" || c.Boat.Currency != defaultCurrency) {
		why += "; a figure in " + currency + ", taken as it stands"
	}
	return price, why
}

// listed makes the default that priced gives.
func listed(id string, otherwise float64) func(Context) (any, string) {
	return func(c Context) (any, string) { return priced(c, id, otherwise) }
}

// rate is priced for what is no money: a life, a share.
func rate(c Context, id string, otherwise float64) (value float64, why string) {
	if line, ok := c.Book().Price(id); ok {
		return line.Price.Typical, "price book: " + line.Label
	}
	return otherwise, "from memory; the price book has no such line"
}
