package words

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// Unweighed is a way that owners ask after and that these pages do not weigh, with
// what it would take on this boat.
type Unweighed struct {
	What string // "A household fridge through an inverter"
	Text string // one or two sentences with a figure
}

// WhyNot gives a line for each way that is left out; none without nights aboard.
func (v Voice) WhyNot() []Unweighed {
	w, ok := v.r.WhyNot()
	if !ok {
		return nil
	}
	fridge := fmt.Sprintf("%s a day from the battery, %s, of which the inverter takes %s by being on. The small unit with its work takes %s. It does well on a boat that is always plugged in.",
		WattHours(w.HouseholdWhPerDay), Charge(w.HouseholdAhPerDay), WattHours(w.InverterIdleWhPerDay), Charge(w.SmallAhPerDay))
	peltier := fmt.Sprintf("By common practice %s without a pause, %s a day. At best it gets down to about %s in your hottest month",
		quantity.FormatCurrent(quantity.Ampere(Round(w.ThermoelectricA))), Charge(w.ThermoelectricAhPerDay), v.wholeDegrees(w.ThermoelectricBoxC))
	if w.ThermoelectricHolds {
		peltier += ", with nothing warm put in. It suits the drive to the boat."
	} else {
		peltier += ", too warm for your food. It suits the drive to the boat."
	}
	return []Unweighed{
		{"A household fridge through an inverter", fridge},
		{"A thermoelectric box", peltier},
		{"An ice maker", fmt.Sprintf("To make the %s of ice that the box with its work melts in a hot day it takes %s, %s. The small unit cools that box for %s. It pays where shore power is there and ice is not.",
			v.Mass(w.IceMakerKgPerDay), WattHours(w.IceMakerWhPerDay), Charge(w.IceMakerAhPerDay), Charge(w.SmallAhPerDay))},
		{"Plates driven by the engine", fmt.Sprintf("About %s of engine a day in your hottest month, %s a year, at anchor too. It costs no battery and no panel, but fuel, noise and a pump in the way.",
			hours(w.EngineHoursPerDay), hours(w.EngineHoursPerYear))},
		{"Dry ice", fmt.Sprintf("%s a day would do. It turns into %s of a gas that smothers; %s of it are enough to make the air of a small shut cabin unfit to work in. Carry it only in a box that is not sealed and vents outdoors, never where anyone sleeps, and touch it with gloves.",
			v.Mass(w.DryIceKgPerDay), v.Volume(1000*Round(w.DryIceGasM3PerDay)), v.Mass(w.DryIceLimitKg))},
	}
}

// hours prints a duration: under two hours in minutes to the ten.
func hours(h float64) string {
	if h < 2 {
		return fmt.Sprintf("%.0f minutes", 10*Round(6*h))
	}
	return Plural(h, "hour")
}

// wholeDegrees prints a temperature without decimals.
func (v Voice) wholeDegrees(c float64) string {
	if v.sys == quantity.US {
		return fmt.Sprintf("%.0f °F", 1.8*c+32)
	}
	return fmt.Sprintf("%.0f °C", c)
}
