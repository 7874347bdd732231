package heat

import "coldreckon/economics/quantity"

// ExchangeKJPerM3 gives the heat that comes in where a cubic metre of a box's
// saturated air at box °C falls out and as much dry air with the enthalpy of
// the cabin's, cabinKJ per kg of dry air, takes its place: ColdAirDensity times
// the difference to SaturatedEnthalpyKJ, in one look at their tables, for
// hourly loops. It is negative where the cabin's air holds less heat.
func ExchangeKJPerM3(cabinKJ float64, box quantity.Celsius) float64 {
	at := (float64(box) - saturatedFromC) * saturatedPerK
	if !(at >= 0 && at < saturatedSteps) {
		return coldAirDensity(box) * (cabinKJ - saturatedEnthalpyKJ(box))
	}
	i := int(at)
	part := at - float64(i)
	density := coldAir[i] + part*(coldAir[i+1]-coldAir[i])
	return density * (cabinKJ - (saturated[i] + part*(saturated[i+1]-saturated[i])))
}
