package economics

import (
	"slices"
	"strconv"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Grant is a figure of the ledgers that no answer replaces.
type Grant struct {
	Key   string // its name among the assumptions: "model." and the ledgers' own
	Label string
	Range quantity.Range // Low and High are the 10th and 90th percentile; equal where it has none
	Unit  string         // SI; "" for a share
	Why   string         // its source
}

// Figure prints the typical value with its unit, to three significant digits.
func (g Grant) Figure() string { return withUnit(short(g.Range.Typical), g.Unit) }

// Span prints the range with its unit; "" where there is none.
func (g Grant) Span() string {
	if g.Range.Low == g.Range.High {
		return ""
	}
	return withUnit(g.ends(), g.Unit)
}

func (g Grant) ends() string { return short(g.Range.Low) + " to " + short(g.Range.High) }

// Assumption tells the figure as an assumption among others.
func (g Grant) Assumption() Assumption {
	value := short(g.Range.Typical)
	if g.Range.Low != g.Range.High {
		value += " (" + g.ends() + ")"
	}
	return Assumption{Key: g.Key, Label: g.Label, Value: withUnit(value, g.Unit), Why: g.Why}
}

func withUnit(figure, unit string) string {
	if unit == "" {
		return figure
	}
	return figure + " " + unit
}

// Granted lists what the models take for granted on a boat, as far as it
// concerns her, each figure once.
func Granted(b Boat) []Grant {
	var out []Grant
	add := func(key, label, unit string, r quantity.Range, why string) {
		if unit == "share" {
			unit = ""
		}
		g := Grant{"model." + key, label, r, unit, why}
		if !slices.ContainsFunc(out, func(other Grant) bool { return other.Key == g.Key }) {
			out = append(out, g)
		}
	}
	electric := func(f energy.Figure) { add(f.Key, f.Label, f.Unit, f.Range, f.Source) }
	thermal := func(key string) func(heat.Figure, error) {
		return func(f heat.Figure, err error) {
			if err == nil { // the answers are checked before any reckoning
				add(key, f.Name, f.Unit, f.Range, f.Source)
			}
		}
	}
	for _, side := range heat.Sides {
		m := b.Box.Faces[side].Material
		thermal("conductivity_" + string(m))(heat.Conductivity(m))
	}
	thermal("seal_" + string(b.Box.LidSeal))(heat.SealLoss(b.Box.LidSeal))
	if b.Box.VoidVolume > 0 {
		add("poured_fills", "part of a void that poured foam fills", "share", quantity.Exactly(pouredFills), "engineering judgement, from memory")
	}
	if b.drinksApart() {
		add("drinks_openings", "most of the openings of a box that are for drinks, one for each taken", "share", quantity.Exactly(mostForDrinks), "engineering judgement, from memory")
	}
	if b.Power.ByDay == quantity.Yes {
		add("bottles_kg", "water in bottles beside the plate of a unit that runs while the sun is up", "kg", quantity.Exactly(bottlesKg), "engineering judgement, from memory")
		add("bottles_m2", "surface of those bottles", "m²", quantity.Exactly(bottlesM2), "engineering judgement, from memory")
	}
	add("unseen_stops", "time aboard from one stop of a unit that nobody sees to the next", "years", betweenStops(), unseenStopsSource)
	add("seen_spoils", "part of the food that spoils all the same where an alarm tells of a stop", "share", quantity.Exactly(seenSpoils), "engineering judgement, from memory")
	thermal("drain_" + string(b.Box.Drain))(heat.DrainLoss(b.Box.Drain))
	thermal("swap_" + string(b.Box.Lid))(heat.SwapShare(b.Box.Lid))
	electric(energy.Eta())
	for _, u := range []Unit{b.Small, b.Larger} {
		electric(energy.PlateConductance(u.Plate))
		electric(energy.CondenserRise(u.CooledBy))
		electric(energy.CondenserPower(u.CooledBy))
	}
	electric(energy.Standby())
	electric(energy.CapacityGrowth())
	electric(energy.CapacityFall())
	electric(energy.Shade(b.Power.Mounting))
	electric(energy.ControllerShare(b.Power.Controller))
	electric(energy.SoilAndWire())
	electric(energy.CellLoss())
	electric(energy.CellTemperature(b.Power.Mounting))
	electric(energy.BankVolts(b.Power.Chemistry))
	electric(energy.UsableShare(b.Power.Chemistry))
	electric(energy.AgeLoss(b.Power.Chemistry))
	electric(energy.ChargeEfficiency(b.Power.Chemistry))
	electric(energy.EngineCharge())
	const judged = "engineering judgement, from memory"
	add("air_share", "part of the room beside ice or plate that is air", "", quantity.Exactly(airShare), judged)
	add("cover_swap", "part of the air still lost at an opening under a cover", "", quantity.Exactly(coverSwap), judged)
	add("stowage", "room a kilogram of food needs", "L", quantity.Exactly(stowageLPerKg), judged)
	add("box_heat", "heat that liner and inner foam hold", "kJ/K a litre of box", quantity.Exactly(heat.BareKJPerKPerL), judged)
	add("jars_heat", "heat that what lives in the box holds", "kJ/K a litre of box", quantity.Exactly(heat.JarsKJPerKPerL), judged)
	thermal("ice_film")(heat.IceFilm(), nil)
	add("kept_used", "part of its life that a unit already fitted has behind it", "", quantity.Exactly(keptUsed), judged)
	add("air_spread", "how far a day's air strays from its month's", "K", quantity.Exactly(climate.AirSDK), judged)
	add("sun_year", "how far a year's sun strays from the mean year's", "share", quantity.Exactly(climate.YearSunSD), judged)
	return out
}

// short prints a figure to three significant digits.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }
