package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"coldreckon/economics"
)

// Measure is a figure that is worth finding out before money is spent.
type Measure struct {
	What  string  // in plain words
	Short string  // the same, shorter
	Worth float64 // what knowing it alone would save on average, present cost in the owner's currency
	How   string  // the cheapest way to find out
	Key   string  // the input's stable name
}

// leastWorth is the saving below which finding out is not worth an evening: a
// two-hundredth of what the answer costs over the years, or its rival if that
// is more. Engineering judgement, from memory.
func (v Voice) leastWorth() float64 {
	d := v.r.Verdict
	most := math.Abs(v.r.Of(d.Option).Fitted.Present)
	if d.HasRunner {
		most = max(most, math.Abs(v.r.Of(d.Runner).Fitted.Present))
	}
	return 0.005 * most
}

// MeasureFirst lists what is worth finding out first, the worthiest first.
// Matters of taste are never among them.
func (v Voice) MeasureFirst() []Measure {
	var out []Measure
	if v.Nights() == 0 || !v.r.Verdict.Works {
		return out
	}
	for _, in := range v.r.Futures.Inputs {
		if v.WorthKnowing(in) {
			out = append(out, Measure{What: in.Label, Short: Figure(in.Input), Worth: in.EVPPI, How: v.how(in.Name), Key: in.Name})
		}
	}
	slices.SortStableFunc(out, func(a, b Measure) int { return cmp.Compare(b.Worth, a.Worth) })
	return out
}

// WorthKnowing tells whether finding an input out pays: a matter of taste never.
func (v Voice) WorthKnowing(in economics.InputFigures) bool {
	return !in.Taste && in.EVPPI > v.leastWorth()
}

// MeasureText says what finding out is worth, and how it is done.
func (v Voice) MeasureText(m Measure) string {
	return fmt.Sprintf("worth about %s to know. %s", v.Small(m.Worth), m.How)
}

// EVPI says what knowing everything would be worth.
func (v Voice) EVPI() string {
	f := v.r.Futures
	if !v.r.Verdict.Works {
		return "First clear what stands in the way: until then there is nothing to choose between."
	}
	if v.Nights() == 0 || f.EVPI <= v.leastWorth() {
		return "Nothing that could be found out would change the choice enough to pay for itself."
	}
	return fmt.Sprintf("To know everything beforehand would save about %s (give or take %s). Finding out is worth no more than that.",
		v.Money(f.EVPI), v.Money(2*f.EVPIError))
}

// how names the cheapest way to find a figure out.
func (v Voice) how(name string) string {
	switch name {
	case "leak":
		ice := v.r.Boat.Ice
		return fmt.Sprintf("Test the box: shut the lid on weighed ice for a day and weigh what melts. It costs about %s of ice.", v.Money(2*float64(ice.UnitSize)*float64(ice.Price)))
	case "use":
		return "Keep a tally for a week: what goes into the box, and how often the lid opens."
	case "cabin":
		return "Hang one thermometer in the cabin and one in the shade outside for a few days."
	case "nights":
		return "Count the nights in your last three log books."
	case "ice_price":
		return "Note what ice costs at your next three stops."
	case "ice_errand":
		return "Add up fuel and fares of your last runs for ice."
	case "unit_price":
		return "Ask two dealers for a price with everything that is needed to fit it."
	case "fitting":
		return "Ask a yard for a fixed price, or try a cardboard dummy of the unit in its place."
	case "unit_life":
		return "Ask how long the warranty runs and what owners of older boats have seen."
	case "upkeep":
		return "Ask owners what they spent on theirs in the last five years."
	case "unit_efficiency":
		return "Ask for watt-hours a day measured in a box like yours, not for an average current."
	case "unit_capacity":
		return "Read the cooling power at −10/45 °C in the maker's data sheet."
	case "other_loads":
		return "Read the battery monitor, or clamp a meter on the main cable, for two days at anchor."
	case "sun":
		return "Note the charge controller's daily yield for a week at anchor."
	case "battery":
		return "Run a known load from a full battery until its lowest voltage, and time it."
	case "dry_premium":
		return "Cook from the dry list for a week at home, and keep the receipts."
	case "spoilage":
		return "Note what you throw away on the next two trips."
	case "materials":
		return "Price foam, gasket and fittings at a chandler."
	}
	return "Ask somebody who has one."
}
