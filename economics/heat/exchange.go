package heat

import "coldreckon/economics/quantity"

// ExchangeKJPerM3 gives the heat that comes in where a cubic metre of a box's
// saturated air at box °C falls out and as much dry air with the enthalpy of
// the cabin's, cabinKJ per kg of dry air, takes its place: ColdAirDensity times
// the difference to SaturatedEnthalpyKJ, in one look at their tables, for
// hourly loops. It is negative where the cabin's air holds less heat.
func ExchangeKJPerM3(cabinKJ float64, box quantity.Celsius) float64 {
	step, part, ok := inTables(box)
	if !ok {
		return coldAirDensity(box) * (cabinKJ - saturatedEnthalpyKJ(box))
	}
	return coldAir.at(step, part) * (cabinKJ - saturated.at(step, part))
}
