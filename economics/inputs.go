package economics

import (
	"math"

	"coldreckon/economics/chance"
	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Input is one uncertain figure of a boat: a factor on (or, for the cabin, a
// difference from) its typical value, with the 10th and 90th percentiles of it.
type Input struct {
	Name    string         // stable key
	Label   string         // in plain words
	Unit    string         // of Typical; "" when only the factor means something
	Typical float64        // value at factor 1, in Unit
	Factor  quantity.Range // low and high are 10th and 90th percentiles; K for the cabin
	Taste   bool           // the owner's to decide, never to be measured
	at      func(*Future) *float64
}

// Value gives the figure itself, in Unit, at a factor (for the cabin, at a
// difference in K).
func (in Input) Value(factor float64) float64 {
	if in.Name == "cabin" {
		return in.Typical + factor
	}
	return in.Typical * factor
}

// inputs lists a boat's uncertain figures in a fixed order. What the owner told
// is narrower than what had to be assumed. Ranges without a source beside them
// are engineering judgement, from memory.
func inputs(b *Boat, book *Book, w *world, box *BoxFigures) []Input {
	spread := func(told bool, narrow, wide quantity.Range) quantity.Range {
		if told {
			return narrow
		}
		return wide
	}
	ofLine := func(id string, otherwise quantity.Range) quantity.Range {
		line, ok := book.Price(id)
		if !ok || line.Price.Typical == 0 {
			return otherwise
		}
		return quantity.Range{Low: line.Price.Low / line.Price.Typical, Typical: 1, High: line.Price.High / line.Price.Typical}
	}
	r := func(low, high float64) quantity.Range { return quantity.Range{Low: low, Typical: 1, High: high} }
	ratio := func(f quantity.Range) quantity.Range { return r(f.Low/f.Typical, f.High/f.Typical) }
	var nights float64
	for _, n := range b.Cruising.Nights {
		nights += n
	}
	use := b.Evidence.Use()
	iceLine := "ice_" + string(b.Ice.Kind)
	ins := []Input{
		{Name: "leak", Label: "how fast the box leaks heat", Unit: "W/K", Typical: float64(box.Leak),
			Factor: ratio(quantity.Range{Low: float64(box.LeakLow), Typical: float64(box.Leak), High: float64(box.LeakHigh)}),
			at:     func(f *Future) *float64 { return &f.Leak }},
		{Name: "use", Label: "food brought aboard and lid openings", Typical: use.Typical, Factor: ratio(use),
			at: func(f *Future) *float64 { return &f.Use }},
		{Name: "cabin", Label: "how much warmer the cabin is than the air outside", Unit: "K", Typical: float64(b.Box.CabinOffset),
			Factor: quantity.Range{Low: -1.5, High: 2}, at: func(f *Future) *float64 { return &f.CabinK }},
		{Name: "nights", Label: "nights aboard a year", Unit: "nights", Typical: nights,
			Factor: spread(b.told("cruising.nights"), r(0.8, 1.15), r(0.6, 1.4)), at: func(f *Future) *float64 { return &f.Nights }},
		{Name: "ice_price", Label: "the price of ice", Unit: "money/kg", Typical: float64(b.Ice.Price),
			Factor: spread(b.told("ice.price"), r(0.85, 1.25), ofLine(iceLine, r(0.6, 2))), at: func(f *Future) *float64 { return &f.IcePrice }},
		{Name: "ice_errand", Label: "what fetching ice costs", Unit: "money", Typical: float64(b.Ice.TripCost),
			Factor: spread(b.told("ice.trip_cost"), r(0.6, 1.6), r(0.2, 3)), at: func(f *Future) *float64 { return &f.Errand }},
		{Name: "unit_price", Label: "what a unit costs", Unit: "money", Typical: float64(b.Small.Price),
			Factor: spread(b.told("units_considered.small.price"), r(0.95, 1.15), ofLine("small_unit", r(0.6, 1.6))), at: func(f *Future) *float64 { return &f.Unit }},
		{Name: "fitting", Label: "what fitting it costs", Unit: "money", Typical: float64(b.Small.Fitting),
			Factor: spread(b.told("units_considered.small.fitting"), r(0.8, 1.5), r(0.5, 2.2)), at: func(f *Future) *float64 { return &f.Fitting }},
		{Name: "unit_life", Label: "how long a unit lasts", Unit: "years", Typical: float64(b.Small.Life),
			Factor: ofLine("small_life", r(0.6, 1.6)), at: func(f *Future) *float64 { return &f.Life }},
		{Name: "upkeep", Label: "a unit's upkeep", Unit: "money/year", Typical: float64(b.Small.Upkeep), Factor: r(0.3, 2.5),
			at: func(f *Future) *float64 { return &f.Upkeep }},
		{Name: "unit_efficiency", Label: "a unit's efficiency", Unit: "", Typical: energy.Eta().Typical, Factor: ratio(energy.Eta().Range),
			at: func(f *Future) *float64 { return &f.Eta }},
		{Name: "unit_capacity", Label: "a unit's cooling power", Unit: "W", Typical: float64(b.Small.RatedCooling),
			Factor: spread(b.told("units_considered.small.rated_cooling"), r(0.85, 1.1), r(0.7, 1.4)), at: func(f *Future) *float64 { return &f.Capacity }},
		{Name: "other_loads", Label: "what else draws on the battery", Unit: "Ah/day", Typical: float64(b.Power.OtherLoads),
			Factor: spread(b.told("power.other_loads"), r(0.75, 1.35), r(0.6, 1.8)), at: func(f *Future) *float64 { return &f.House }},
		{Name: "sun", Label: "what shade and weather leave of the panel's yield", Unit: "", Typical: 1,
			Factor: ratio(energy.Shade(b.Power.Mounting).Range), at: func(f *Future) *float64 { return &f.Sun }},
		{Name: "battery", Label: "what age has left of the battery", Unit: "Ah", Typical: float64(b.Power.Battery),
			Factor: spread(b.told("power.battery_age"), r(0.85, 1.08), r(0.6, 1.15)), at: func(f *Future) *float64 { return &f.Battery }},
		{Name: "spoilage", Label: "what spoils on a warm day", Unit: "", Typical: 1,
			Factor: ofLine("spoilage", r(0.3, 2)), at: func(f *Future) *float64 { return &f.Spoilage }},
		{Name: "materials", Label: "what work on box and boat costs", Unit: "", Typical: 1, Factor: r(0.6, 1.7),
			at: func(f *Future) *float64 { return &f.Materials }},
		{Name: "drinks", Label: "how much is drunk cold", Unit: "cans a person and day", Typical: b.Food.DrinksADay,
			Factor: spread(b.told("food.drinks"), r(0.7, 1.4), r(1.0/3, 8.0/3)), at: func(f *Future) *float64 { return &f.Drinks }},
		{Name: "ice_film", Label: "how well ice cools the food beside it", Unit: "W/m²K", Typical: heat.IceFilm().Range.Typical,
			Factor: ratio(heat.IceFilm().Range), at: func(f *Future) *float64 { return &f.Film }},
		{Name: "stowed_heat", Label: "how much cold the box and what lives in it store", Typical: 1, Factor: r(0.6, 1.7),
			at: func(f *Future) *float64 { return &f.Stow }},
	}
	if w.ground.ID == climate.EstimatedID { // its sun is estimated from temperatures
		ins = append(ins, Input{Name: "sky", Label: "how sunny your ground is", Typical: 1, Factor: r(0.8, 1.2),
			at: func(f *Future) *float64 { return &f.Sky }})
	}
	return ins
}

// bareShare is the part of futures in which a box whose foam nobody has seen
// has none: in half of them under the bottom, in the others all round.
// Engineering judgement, from memory.
const bareShare = 0.12

// mayBeBare tells whether the box may turn out to have no foam: nobody has
// looked, and nothing that the box has shown says otherwise.
func mayBeBare(b *Boat, box *BoxFigures) bool {
	return b.Box.FoamThere == quantity.Unknown && !b.told("box.foam") && !b.told("box.faces") && len(box.Evidence.Used) <= 1
}

// foamCase reads a share of the futures, 0 to 1.
func foamCase(u float64) FoamCase {
	switch {
	case u < bareShare/2:
		return BareBottom
	case u < bareShare:
		return BareAllRound
	}
	return FoamAsTold
}

// draw spreads futures evenly over the inputs. The result depends on the seed,
// the count and the inputs alone.
// Where the box may be bare, some futures have no foam.
func draw(ins []Input, bare bool, count int, seed uint64) []Future {
	samples := chance.LatinHypercube(count, len(ins)+2, seed)
	spreads := make([]chance.SplitLogNormal, len(ins))
	for i, in := range ins {
		spreads[i] = chance.Fit(in.Factor)
	}
	futures := make([]Future, count)
	for k := range futures {
		futures[k] = Typical
		for i, in := range ins {
			*in.at(&futures[k]) = spreads[i].Quantile(samples.U(k, i))
		}
		if bare {
			futures[k].Foam = foamCase(samples.U(k, len(ins)+1))
		}
		futures[k].Sun *= futures[k].Sky * math.Max(0, 1+climate.YearSunSD*chance.NormalQuantile(samples.U(k, len(ins))))
	}
	return futures
}
