package questions

import (
	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

func moneyRows() []Row {
	return []Row{
		{
			Key: "money.budget", Group: OfMoney, Label: "Most to spend at first", Kind: Money, None: "no limit",
			Ask:     "About what would you spend, all in?",
			Help:    "Typical: $500 to $3,000, for unit, work and what belongs to it. Answer no limit to see what it takes. The limit hides nothing: the report says what lies over it.",
			Limits:  Limits{1, 50, 20000, 1e6},
			Field:   func(b *economics.Boat) Slot { return at(&b.Money.Budget) },
			Default: always(quantity.Money(0), "no limit was told"),
		},
		{
			Key: "money.years", Group: OfMoney, Label: "Years to reckon over", Kind: Whole, Words: []string{"years", "year", "y"},
			Ask:     "Over how many years shall we reckon?",
			Help:    "Typical: 10, or as long as you mean to keep the boat.",
			Limits:  Limits{1, 2, 25, 40},
			Field:   func(b *economics.Boat) Slot { return at(&b.Money.Years) },
			Default: always(quantity.Year(10), judgement),
		},
		{
			Key: "money.will_sell", Group: OfMoney, Label: "Selling within those years", Kind: YesNoUnknown,
			Ask:     "Will you sell the boat within those years?",
			Help:    "Typical: don't know. A buyer pays back only a small part of what a unit cost.",
			Field:   func(b *economics.Boat) Slot { return at(&b.Money.WillSell) },
			Default: always(quantity.Unknown, "not answered, so nothing is expected back"),
		},
		{
			Key: "money.discount", Data: "money.discount", Group: OfMoney, Label: "Yearly interest, above inflation", Kind: Share, Detail: true,
			Ask:     "What could your money earn elsewhere, above inflation?",
			Help:    "Typical: 3 %. A boat loan costs 4 to 7 %.",
			Limits:  Limits{0, 0, 0.1, 0.3},
			Field:   func(b *economics.Boat) Slot { return at(&b.Money.Discount) },
			Default: always(quantity.Fraction(0.03), "the real rate of the US federal life-cycle cost rules at its floor, 10 CFR 436.14"),
		},
		{
			Key: "money.cold_day_worth", Group: OfMoney, Label: "Worth of a day with cold food", Kind: MoneySpan,
			Ask:     "What would you pay for a day with cold food, against one on food that keeps?",
			Help:    "Typical: $2 to $10 a day, for all of you; a range will do. Count the dearer food it spares you. Leave it out to see the price from which it pays.",
			Limits:  Limits{0, 0, 50, 1000},
			Field:   func(b *economics.Boat) Slot { return worthSlot(&b.Money) },
			Default: always([2]quantity.Money{}, "the answer names the worth from which it pays"),
		},
		{
			Key: "money.fitted_by", Group: OfMoney, Label: "Who does the work", Kind: Choice,
			Ask:     "Who would do the work?",
			Help:    "Typical: self on small boats. A yard about doubles the cost of fitting.",
			Options: []Option{{"self", "you yourself", "me|myself|owner|i do|diy"}, {"yard", "a yard", "boatyard|professional"}},
			Field:   func(b *economics.Boat) Slot { return at(&b.Money.FittedBy) },
			Default: always(economics.Self, "usual on small boats"),
		},
	}
}

// worthSlot is the place of a sum or a range; the upper end of a sum is 0.
func worthSlot(m *economics.Money) Slot {
	return Slot{
		Get: func() any { return [2]quantity.Money{m.ColdDayWorth, m.ColdDayWorthTo} },
		Put: func(v any) {
			span := v.([2]quantity.Money)
			m.ColdDayWorth, m.ColdDayWorthTo = span[0], span[1]
		},
	}
}

// What a unit is, in the rows of units considered and in quotations.
var (
	forms = []Option{{"built_in", "built into the ice box", "built in|fixed|installed"},
		{"free_standing", "a free-standing 12 V chest", "free standing|portable|chest"}}
	coolings = []Option{{"fins", "fins alone, without a fan", "still air|fin|fins in a locker"},
		{"locker_fan", "a fan in its locker", "locker fan|air"}, {"fan", "a ducted fan", "ducted fan|duct"},
		{"seawater", "sea water, pumped or through a keel cooler", "sea water|water|keel|keel cooler"}}
	plates = []Option{{"thin", "a thin plate", "evaporator|aluminium"}, {"eutectic", "a plate that stores cold", "holding|holding plate|cold plate|storing"}}
)

// unitRows are the questions about one of the two units considered.
func unitRows(name string) []Row {
	larger := name == "larger"
	pick := func(small, large float64) float64 {
		if larger {
			return large
		}
		return small
	}
	group, noun := OfSmall, "the small unit"
	unit := func(b *economics.Boat) *economics.Unit { return &b.Small }
	if larger {
		group, noun = OfLarger, "the larger unit"
		unit = func(b *economics.Boat) *economics.Unit { return &b.Larger }
	}
	key := func(item string) string { return "units_considered." + name + "." + item }
	chest := func(b economics.Boat) bool { return unit(&b).Form == economics.FreeStanding }
	plate, plateWhy := energy.Thin, "usual with small units"
	cooled, cooledWhy := energy.LockerFan, "usual with units fitted into a locker"
	if larger {
		plateWhy = "the plainer of the two"
	}
	return []Row{
		{
			Key: key("form"), Group: group, Label: "Form of " + noun, Kind: Choice, Detail: true,
			Ask:     "Would " + noun + " be built into the box, or stand free as a 12 V chest?",
			Help:    "Typical: built in. A free-standing chest needs no fitting but a place on deck or berth, and brings its own walls.",
			Options: forms,
			Field:   func(b *economics.Boat) Slot { return at(&unit(b).Form) },
			Default: always(economics.BuiltIn, "the ice box is there already"),
		},
		{
			Key: key("price"), Group: group, Label: "Price of " + noun, Kind: Money, Detail: true,
			Ask:    "What does " + noun + " cost, without fitting?",
			Help:   "Typical: " + map[bool]string{false: "$1,300", true: "$2,800"}[larger] + "; ask for one real offer, it sharpens the answer.",
			Limits: Limits{20, 200, 12000, 100000},
			Field:  func(b *economics.Boat) Slot { return at(&unit(b).Price) },
			Default: func(c Context) (any, string) {
				id, otherwise := name+"_unit", pick(1300, 2800)
				if chest(c.Boat) {
					id, otherwise = "small_unit_free_standing", 700
				}
				return priced(c, id, otherwise)
			},
		},
		{
			Key: key("fitting"), Group: group, Label: "Fitting of " + noun, Kind: Money, Detail: true,
			Ask:    "What does fitting " + noun + " cost, parts and labour?",
			Help:   "Typical: " + map[bool]string{false: "$120 by your own hands, $600 by a yard", true: "$500 by your own hands, $1,500 by a yard"}[larger] + ".",
			Limits: Limits{0, 0, 8000, 100000},
			Field:  func(b *economics.Boat) Slot { return at(&unit(b).Fitting) },
			Default: func(c Context) (any, string) {
				if chest(c.Boat) {
					return quantity.Money(0), "a free-standing chest needs none"
				}
				hands, otherwise := "self", pick(120, 500)
				if c.Boat.Money.FittedBy == economics.Yard {
					hands, otherwise = "yard", pick(600, 1500)
				}
				return priced(c, name+"_fitting_"+hands, otherwise)
			},
		},
		{
			Key: key("rated_cooling"), Group: group, Label: "Cooling of " + noun + ", rated", Kind: Power, Detail: true,
			Ask:     "What cooling does the maker of " + noun + " state, at -10 °C plate and 45 °C condenser?",
			Help:    "Typical: " + map[bool]string{false: "60 W", true: "100 W"}[larger] + ". Copy it from the compressor's data sheet, or skip it. Btu/h may be given too. If only amps and boxes are told, answer those instead.",
			Limits:  Limits{5, 20, 400, 2000},
			Field:   func(b *economics.Boat) Slot { return at(&unit(b).RatedCooling) },
			Default: always(quantity.Watt(pick(60, 100)), "a usual compressor of that size; "+judgement),
		},
		{
			// Twice the box has 1.6 times the walls: engineering judgement, from memory.
			Key: key("rated_amps"), Data: key("rated_a"), Group: group, Label: "Mean current of " + noun + ", as its maker states", Kind: Current, Detail: true, None: "not told",
			Ask:     "What average current does the maker of " + noun + " state?",
			Help:    "Typical: " + map[bool]string{false: "0.55 A at 12 V for a box of 110 L (3.9 cu ft)", true: "0.9 A at 12 V for a box of 230 L (8 cu ft)"}[larger] + ", reached only with thick dry walls in a cool room.",
			Limits:  Limits{0.05, 0.2, 6, 60},
			Field:   func(b *economics.Boat) Slot { return at(&unit(b).RatedAmps) },
			Default: always(quantity.Ampere(0), ""),
		},
		{
			Key: key("rated_box"), Group: group, Label: "Box that " + noun + " is rated for", Kind: Volume, Detail: true, None: "not told",
			Ask:     "Up to what box does the maker of " + noun + " say it will do?",
			Help:    "Typical: " + map[bool]string{false: "110 L (3.9 cu ft)", true: "230 L (8 cu ft)"}[larger] + ", in the brochure beside the average current.",
			Limits:  Limits{10, 30, 500, 2000},
			Field:   func(b *economics.Boat) Slot { return at(&unit(b).RatedBox) },
			Default: always(quantity.Litre(0), ""),
		},
		{
			Key: key("cooled_by"), Group: group, Label: "How " + noun + " sheds its heat", Kind: Choice, Detail: true,
			Ask:     "How would " + noun + " shed its heat?",
			Help:    "Typical: a fan in its locker. Fins without one are poorer. Sea water is best in the tropics but needs a fitting through the hull.",
			Options: coolings,
			Field:   func(b *economics.Boat) Slot { return at(&unit(b).CooledBy) },
			Default: always(cooled, cooledWhy),
		},
		{
			Key: key("plate"), Group: group, Label: "Plate of " + noun, Kind: Choice, Detail: true,
			Ask:     "Has " + noun + " a thin plate, or one that stores cold?",
			Help:    "Typical: thin. A plate that stores cold is a thick sealed tank, for charging while the engine runs.",
			Options: plates,
			Field:   func(b *economics.Boat) Slot { return at(&unit(b).Plate) },
			Default: always(plate, plateWhy),
		},
		{
			Key: key("life_years"), Group: group, Label: "Life of " + noun, Kind: Years, Detail: true,
			Ask:    "How many years would " + noun + " last?",
			Help:   "Typical: 14 years built in, 8 years for a free-standing chest.",
			Limits: Limits{1, 4, 25, 50},
			Field:  func(b *economics.Boat) Slot { return at(&unit(b).Life) },
			Default: func(c Context) (any, string) {
				id, otherwise := name+"_life", 14.0
				if chest(c.Boat) {
					id, otherwise = "chest_life", 8
				}
				v, why := rate(c, id, otherwise)
				return quantity.Year(v), why
			},
		},
		{
			Key: key("upkeep"), Data: key("upkeep_per_year"), Group: group, Label: "Upkeep of " + noun + " a year", Kind: Money, Detail: true,
			Ask:    "What does the upkeep of " + noun + " cost in a year?",
			Help:   "Typical: 2 in 100 of its price; more with sea-water cooling.",
			Limits: Limits{0, 0, 500, 10000},
			Field:  func(b *economics.Boat) Slot { return at(&unit(b).Upkeep) },
			Default: func(c Context) (any, string) {
				share, why := rate(c, name+"_upkeep", pick(0.02, 0.025))
				return quantity.Money(share * float64(unit(&c.Boat).Price)), why
			},
		},
		{
			Key: key("chest_volume"), Group: group, Label: "Volume of the free-standing chest", Kind: Volume, Detail: true, When: chest,
			Ask:    "How much does the chest hold?",
			Help:   "Typical: " + map[bool]string{false: "40 L (1.4 cu ft)", true: "60 L (2.1 cu ft)"}[larger] + "; in its name or on its label.",
			Limits: Limits{5, 15, 120, 400},
			Field:  func(b *economics.Boat) Slot { return at(&unit(b).ChestVolume) },
			Default: func(c Context) (any, string) {
				if !chest(c.Boat) {
					return quantity.Litre(0), ""
				}
				return quantity.Litre(pick(40, 60)), "a usual size; " + judgement
			},
		},
	}
}
