package economics

import (
	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// knowledge is what the spread of a figure depends on.
type knowledge struct {
	*Boat
	book  *Book
	world *world
	box   *BoxFigures
}

// uncertainRow is an uncertain figure with how its value and its spread are
// read off what is known of a boat.
type uncertainRow struct {
	Input
	figure func(*knowledge) (typical float64, factor quantity.Range)
	cost   func(*knowledge) quantity.Money // of finding out; nil when it costs an evening and no money
	where  func(*knowledge) bool           // nil when every boat has it
}

// uncertain has one row for each uncertain figure. What the owner told is
// narrower than what had to be assumed. Ranges without a source beside them are
// engineering judgement, from memory.
var uncertain = [...]uncertainRow{
	{
		Input: Input{
			Name: "leak", Label: "how fast the box leaks heat", Short: "leak of the box", Unit: "W/K",
			Beyond:      "the box leaks {more} {at}",
			FindOut:     "Test the box: shut the lid on weighed ice for a day and weigh what melts. It costs about {cost} of ice.",
			SharpenedBy: []string{"box.state", "evidence.ice_history", "box.lid_seal", "box.inside", "box.material", "box.drain"},
			at:          func(f *Future) *float64 { return &f.Leak },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			leak := quantity.Range{Low: float64(k.box.LeakLow), Typical: float64(k.box.Leak), High: float64(k.box.LeakHigh)}
			return leak.Typical, ratio(leak)
		},
		cost: func(k *knowledge) quantity.Money {
			return 2 * quantity.Money(float64(k.Ice.UnitSize)*float64(k.Ice.Price))
		},
	},
	{
		Input: Input{
			Name: "use", Label: "food brought aboard and lid openings", Short: "use of the box",
			Beyond:      "the heat of food and lid openings is {more} {at}",
			FindOut:     "Keep a tally for a week: what goes into the box, and how often the lid opens.",
			SharpenedBy: []string{"box.opens_per_day", "food.food_per_person_day"},
			at:          func(f *Future) *float64 { return &f.Use },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return k.Evidence.Use().Typical, ratio(k.Evidence.Use())
		},
	},
	{
		Input: Input{
			Name: "cabin", Label: "how much warmer the cabin is than the air outside", Short: "warmth of the cabin",
			Unit: "K", Difference: true,
			Beyond:      "the cabin is {more} {at} warmer than the air outside",
			FindOut:     "Hang one thermometer in the cabin and one in the shade outside for a few days.",
			SharpenedBy: []string{"box.cabin_offset"},
			at:          func(f *Future) *float64 { return &f.CabinK },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return float64(k.Box.CabinOffset), quantity.Range{Low: -1.5, High: 2}
		},
	},
	{
		Input: Input{
			Name: "nights", Label: "nights aboard a year", Short: "nights aboard", Unit: "nights",
			Beyond:      "you spend {fewer} {at} aboard a year",
			FindOut:     "Count the nights in your last three log books.",
			SharpenedBy: []string{"cruising.nights"},
			at:          func(f *Future) *float64 { return &f.Nights },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return k.nights(), k.spread("cruising.nights", factor(0.8, 1.15), factor(0.6, 1.4))
		},
	},
	{
		Input: Input{
			Name: "ice_price", Label: "the price of ice", Short: "price of ice", Unit: "money/kg",
			Beyond:      "ice costs {more} {at}",
			FindOut:     "Note what ice costs at your next three stops.",
			SharpenedBy: []string{"ice.kind", "ice.price"},
			at:          func(f *Future) *float64 { return &f.IcePrice },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			typical := float64(k.Ice.Price)
			return typical, k.spread("ice.price", factor(0.85, 1.25), k.ofLine("ice_"+string(k.Ice.Kind), factor(0.6, 2)))
		},
	},
	{
		Input: Input{
			Name: "ice_errand", Label: "what fetching ice costs", Short: "cost of fetching ice", Unit: "money",
			Beyond:      "fetching ice costs {more} {at} a time",
			FindOut:     "Add up fuel and fares of your last runs for ice.",
			SharpenedBy: []string{"ice.trip_cost", "ice.unit_size"},
			at:          func(f *Future) *float64 { return &f.Errand },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return float64(k.Ice.TripCost), k.spread("ice.trip_cost", factor(0.6, 1.6), factor(0.2, 3))
		},
	},
	{
		Input: Input{
			Name: "unit_price", Label: "what a unit costs", Short: "price of a unit", Unit: "money",
			Beyond:      "the small unit costs {more} {at}, and the larger in step",
			FindOut:     "Ask two dealers for a price with everything that is needed to fit it.",
			SharpenedBy: []string{"units_considered.{unit}.price"},
			at:          func(f *Future) *float64 { return &f.Unit },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			typical := float64(k.Small.Price)
			return typical, k.spread("units_considered.small.price", factor(0.95, 1.15), k.ofLine("small_unit", factor(0.6, 1.6)))
		},
	},
	{
		Input: Input{
			Name: "fitting", Label: "what fitting it costs", Short: "cost of fitting it", Unit: "money",
			Beyond:      "fitting the small unit costs {more} {at}, and the larger in step",
			FindOut:     "Ask a yard for a fixed price, or try a cardboard dummy of the unit in its place.",
			SharpenedBy: []string{"money.fitted_by", "units_considered.{unit}.fitting"},
			at:          func(f *Future) *float64 { return &f.Fitting },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			typical := float64(k.Small.Fitting)
			return typical, k.spread("units_considered.small.fitting", factor(0.8, 1.5), factor(0.5, 2.2))
		},
	},
	{
		Input: Input{
			Name: "unit_life", Label: "how long a unit lasts", Short: "life of a unit", Unit: "years",
			Beyond:      "a small unit lasts {more} {at}",
			FindOut:     "Ask how long the warranty runs and what owners of older boats have seen.",
			SharpenedBy: []string{"units_considered.{unit}.life_years"},
			at:          func(f *Future) *float64 { return &f.Life },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return float64(k.Small.Life), k.ofLine("small_life", factor(0.6, 1.6))
		},
	},
	{
		Input: Input{
			Name: "upkeep", Label: "a unit's upkeep", Short: "upkeep of a unit", Unit: "money/year",
			Beyond:      "upkeep of a small unit costs {more} {at} a year",
			FindOut:     "Ask owners what they spent on theirs in the last five years.",
			SharpenedBy: []string{"units_considered.{unit}.upkeep"},
			at:          func(f *Future) *float64 { return &f.Upkeep },
		},
		figure: func(k *knowledge) (float64, quantity.Range) { return float64(k.Small.Upkeep), factor(0.3, 2.5) },
	},
	{
		Input: Input{
			Name: "unit_efficiency", Label: "a unit's efficiency", Short: "efficiency of a unit",
			Beyond:  "a unit's efficiency is {more} {at}",
			FindOut: "Ask for watt-hours a day measured in a box like yours, not for an average current.",
			at:      func(f *Future) *float64 { return &f.Eta },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return energy.Eta().Typical, ratio(energy.Eta().Range)
		},
	},
	{
		Input: Input{
			Name: "unit_capacity", Label: "a unit's cooling power", Short: "cooling power", Unit: "W",
			Beyond:      "the small unit cools {more} {at}",
			FindOut:     "Read the cooling power at −10/45 °C in the maker's data sheet.",
			SharpenedBy: []string{"units_considered.{unit}.rated_cooling"},
			at:          func(f *Future) *float64 { return &f.Capacity },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			typical := float64(k.Small.RatedCooling)
			return typical, k.spread("units_considered.small.rated_cooling", factor(0.85, 1.1), factor(0.7, 1.4))
		},
	},
	{
		Input: Input{
			Name: "other_loads", Label: "what else draws on the battery", Short: "other loads aboard", Unit: "Ah/day",
			Beyond:      "everything else aboard takes {more} {at}",
			FindOut:     "Read the battery monitor, or clamp a meter on the main cable, for two days at anchor.",
			SharpenedBy: []string{"power.other_loads"},
			at:          func(f *Future) *float64 { return &f.House },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return float64(k.Power.OtherLoads), k.spread("power.other_loads", factor(0.75, 1.35), factor(0.6, 1.8))
		},
	},
	{
		Input: Input{
			Name: "sun", Label: "what shade and weather leave of the panel's yield", Short: "shade on the panel",
			Beyond:      "what shade and weather leave of the panel's yield is {more} {at}",
			FindOut:     "Note the charge controller's daily yield for a week at anchor.",
			SharpenedBy: []string{"power.mounting"},
			at:          func(f *Future) *float64 { return &f.Sun },
		},
		figure: func(k *knowledge) (float64, quantity.Range) { return 1, ratio(energy.Shade(k.Power.Mounting).Range) },
	},
	{
		Input: Input{
			Name: "battery", Label: "what age has left of the battery", Short: "battery left by age", Unit: "Ah",
			Beyond:      "the battery holds {more} {at}",
			FindOut:     "Run a known load from a full battery until its lowest voltage, and time it.",
			SharpenedBy: []string{"power.battery_age"},
			at:          func(f *Future) *float64 { return &f.Battery },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return float64(k.Power.Battery), k.spread("power.battery_age", factor(0.85, 1.08), factor(0.6, 1.15))
		},
	},
	{
		Input: Input{
			Name: "spoilage", Label: "what spoils on a warm day", Short: "food spoiled",
			Beyond:      "what spoils on a warm day is {more} {at}",
			FindOut:     "Note what you throw away on the next two trips.",
			SharpenedBy: []string{"food.must_be_cold_share"},
			at:          func(f *Future) *float64 { return &f.Spoilage },
		},
		figure: func(k *knowledge) (float64, quantity.Range) { return 1, k.ofLine("spoilage", factor(0.3, 2)) },
	},
	{
		Input: Input{
			Name: "materials", Label: "what work on box and boat costs", Short: "cost of the work",
			Beyond:      "work on box and boat costs {more} {at}",
			FindOut:     "Price foam, gasket and fittings at a chandler.",
			SharpenedBy: []string{"money.fitted_by", "box.reachable"},
			at:          func(f *Future) *float64 { return &f.Materials },
		},
		figure: func(k *knowledge) (float64, quantity.Range) { return 1, factor(0.6, 1.7) },
	},
	{
		Input: Input{
			Name: "drinks", Label: "how much is drunk cold", Short: "cold drinks", Unit: "cans a person and day",
			Beyond:      "each of you drinks {fewer} {at} cold",
			FindOut:     "Count the cans and bottles of one trip.",
			SharpenedBy: []string{"food.drinks_a_day"},
			at:          func(f *Future) *float64 { return &f.Drinks },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return k.Food.DrinksADay, k.spread("food.drinks_a_day", factor(0.7, 1.4), factor(1.0/3, 8.0/3))
		},
	},
	{
		Input: Input{
			Name: "ice_film", Label: "how well ice cools the food beside it", Short: "how well ice cools", Unit: "W/m²K",
			Beyond:  "ice cools the food beside it with {more} {at}",
			FindOut: "Lay a thermometer among the food for two trips with ice, and note how much ice is left when it gets too warm.",
			at:      func(f *Future) *float64 { return &f.Film },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return heat.IceFilm().Range.Typical, ratio(heat.IceFilm().Range)
		},
	},
	{
		Input: Input{
			Name: "stowed_heat", Label: "how much cold the box and what lives in it store", Short: "cold stored in the box",
			Beyond:  "the cold that the box and what lives in it store is {more} {at}",
			FindOut: "Weigh what always lives in the box.",
			at:      func(f *Future) *float64 { return &f.Stow },
		},
		figure: func(k *knowledge) (float64, quantity.Range) { return 1, factor(0.6, 1.7) },
	},
	{
		Input: Input{
			Name: "sky", Label: "how sunny your ground is", Short: "sun of the ground",
			Beyond:  "the sun of your ground is {more} {at}",
			FindOut: "Ask for the mean daily sun of a weather station near you, in kWh/m².",
			at:      func(f *Future) *float64 { return &f.Sky },
		},
		figure: func(k *knowledge) (float64, quantity.Range) {
			return 1, factor(1-climate.EstimatedSunRange, 1+climate.EstimatedSunRange)
		},
		where: func(k *knowledge) bool { return k.world.ground.SunEstimated() },
	},
	{ // the last: see draw
		Input: Input{
			Name: "unseen_stops", Label: "how often a unit stops unseen", Short: "unseen stops",
			Beyond:      "unseen stops of a unit are {more} {at}",
			FindOut:     "Ask owners of the same unit how often theirs stopped and food was lost.",
			SharpenedBy: []string{"box.alarm"},
			at:          func(f *Future) *float64 { return &f.Stops },
		},
		figure: func(k *knowledge) (float64, quantity.Range) { return 1, ratio(unseenStops) },
	},
}

// factor is a range round 1.
func factor(low, high float64) quantity.Range {
	return quantity.Range{Low: low, Typical: 1, High: high}
}

// ratio gives a range as a factor on its typical value.
func ratio(r quantity.Range) quantity.Range { return factor(r.Low/r.Typical, r.High/r.Typical) }

// spread is narrow for a figure that the owner told.
func (k *knowledge) spread(key string, narrow, wide quantity.Range) quantity.Range {
	if k.Told(key) {
		return narrow
	}
	return wide
}

// ofLine is the range of a price line, as a factor on its typical price.
func (k *knowledge) ofLine(id string, otherwise quantity.Range) quantity.Range {
	line, ok := k.book.Price(id)
	if !ok || line.Price.Typical == 0 {
		return otherwise
	}
	return ratio(line.Price)
}

// nights adds up the nights aboard a year.
func (k *knowledge) nights() (all float64) {
	for _, n := range k.Cruising.Nights {
		all += n
	}
	return all
}
