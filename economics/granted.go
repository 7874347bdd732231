package economics

import (
	"strconv"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Granted lists what the models take for granted on a boat: the figures of the
// ledgers that no answer replaces, with their ranges, as far as they concern
// her. Values are in SI units; their keys are the ledgers' own.
func Granted(b Boat) []Assumption {
	var out []Assumption
	add := func(key, label, unit string, r quantity.Range, why string) {
		value := short(r.Typical)
		if r.Low != r.High {
			value += " (" + short(r.Low) + " to " + short(r.High) + ")"
		}
		if unit != "" && unit != "share" {
			value += " " + unit
		}
		for _, a := range out {
			if a.Key == "model."+key {
				return
			}
		}
		out = append(out, Assumption{Key: "model." + key, Label: label, Value: value, Why: why})
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
	add("stowed_heat", "heat that liner and standing stores hold", "kJ/K a litre of box", quantity.Exactly(heat.StowedKJPerKPerL), judged)
	add("kept_used", "part of its life that a unit already fitted has behind it", "", quantity.Exactly(keptUsed), judged)
	add("air_spread", "how far a day's air strays from its month's", "K", quantity.Exactly(climate.AirSDK), judged)
	add("sun_year", "how far a year's sun strays from the mean year's", "share", quantity.Exactly(climate.YearSunSD), judged)
	return out
}

// short prints a figure to three significant digits.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }
