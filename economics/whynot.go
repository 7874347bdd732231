package economics

import (
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// WhyNot is what other ways to cool would take on this boat in the hottest month
// aboard, in the box with the small unit's work, or as told where that unit
// brings its own: what owners ask after and seldom keep.
type WhyNot struct {
	// A household fridge of the box's volume, through an inverter.
	HouseholdWhPerDay, InverterIdleWhPerDay float64 // from the battery; the second is part of the first
	HouseholdAhPerDay                       float64
	// A thermoelectric box runs without a pause.
	ThermoelectricA, ThermoelectricAhPerDay float64
	ThermoelectricBoxC                      float64 // the coldest it gets on a mean day
	ThermoelectricHolds                     bool    // whether that is the target or below
	// A small ice maker that makes the ice that the box melts, through an inverter.
	IceMakerKgPerDay, IceMakerWhPerDay, IceMakerAhPerDay float64
	// A compressor on the engine that freezes plates.
	EngineHoursPerDay, EngineHoursPerYear float64
	// Dry ice in place of ice.
	DryIceKgPerDay, DryIceGasM3PerDay float64
	// DryIceLimitKg fills a shut cabin of cabinM3 to the limit of a working day.
	DryIceLimitKg float64
	// SmallAhPerDay is what the small unit takes, to compare with.
	SmallAhPerDay float64
}

const (
	// A compact household refrigerator may take 7.84 kWh a year for each cubic
	// foot, and 219.1 besides, tested shut at 32.2 °C (90 °F) with 3.9 °C inside.
	// US 10 CFR 430.32(a), product class 11A, from memory.
	householdKWhPerCuFt, householdKWh = 7.84, 219.1
	householdRoomC, householdInsideC  = 32.2, 3.9
	litresPerCuFt                     = 28.3168
	householdLeastL, householdMostL   = 45, 200 // as such fridges are sold; from memory
	// An inverter of the size, its efficiency and what it draws all day. From memory.
	inverterShare, inverterIdleW = 0.88, 12
	// A thermoelectric box draws so many watts, and gets so much colder than the
	// air round it at best. From memory.
	thermoelectricW, thermoelectricK = 56, 22
	// A kilogram of ice takes the maker its heat over this efficiency. From memory.
	iceMakerCOP = 0.9
	// Cooling of a compressor on the engine's belt. From memory.
	beltCoolingW = 1200
	// Its plates take up heat no faster, so that it runs at least so long. From memory.
	leastEngineHours = 0.5
	// Carbon dioxide: heat of sublimation 571 kJ/kg at -78.5 °C, heat capacity of
	// the gas 0.82 kJ/kg·K, gas 1.84 kg/m³ at 20 °C and 1 atm. Handbook values,
	// from memory.
	dryIceKJPerKg, dryIceC, carbonDioxideKJPerKgK, carbonDioxideKgPerM3 = 571, -78.5, 0.82, 1.84
	// 5,000 ppm over a working day: US 29 CFR 1910.1000, table Z-1.
	carbonDioxideLimit = 0.005
	// A small cruiser's cabin. Engineering judgement, from memory.
	cabinM3 = 15
)

// WhyNot works the figures out; false without nights aboard.
func (r *Reckoning) WhyNot() (WhyNot, bool) {
	if len(r.Months) == 0 {
		return WhyNot{}, false
	}
	hot, nights := r.WithWork[0], 0
	for _, m := range r.WithWork {
		nights += m.Nights
		if m.HeatGainW > hot.HeatGainW {
			hot = m
		}
	}
	b := &r.Boat
	volts := float64(b.Power.Bank().MeanVolts())
	warmer := max(0, hot.CabinC-float64(b.Food.Target))
	var w WhyNot

	cuFt := min(householdMostL, max(householdLeastL, float64(r.Box.Volume))) / litresPerCuFt
	rated := (householdKWhPerCuFt*cuFt + householdKWh) / 365 * 1000
	w.InverterIdleWhPerDay = 24 * inverterIdleW
	w.HouseholdWhPerDay = rated*warmer/(householdRoomC-householdInsideC)/inverterShare + w.InverterIdleWhPerDay
	w.HouseholdAhPerDay = w.HouseholdWhPerDay / volts

	w.ThermoelectricA = thermoelectricW / volts
	w.ThermoelectricAhPerDay = 24 * w.ThermoelectricA
	w.ThermoelectricBoxC = hot.CabinC - thermoelectricK
	w.ThermoelectricHolds = w.ThermoelectricBoxC <= float64(b.Food.Target)

	w.IceMakerKgPerDay = hot.IceKgPerDay
	w.IceMakerWhPerDay = hot.IceKgPerDay * FreezeKJPerKg(quantity.Celsius(hot.CabinC)) / 3.6 / iceMakerCOP / inverterShare
	w.IceMakerAhPerDay = w.IceMakerWhPerDay / volts

	w.EngineHoursPerDay = max(leastEngineHours, 24*hot.HeatGainW/beltCoolingW)
	w.EngineHoursPerYear = w.EngineHoursPerDay * float64(nights)

	takes := dryIceKJPerKg + carbonDioxideKJPerKgK*(float64(heat.DrainCelsius)-dryIceC)
	w.DryIceKgPerDay = max(0, hot.HeatGainW) * 86.4 / takes
	w.DryIceGasM3PerDay = w.DryIceKgPerDay / carbonDioxideKgPerM3
	w.DryIceLimitKg = cabinM3 * carbonDioxideLimit * carbonDioxideKgPerM3

	w.SmallAhPerDay = hot.SmallWhPerDay / volts
	return w, true
}
