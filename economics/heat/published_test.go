package heat

import "coldreckon/economics/quantity"

// What published examples give and the ledger does not need. Each is built on
// what the ledger does use, so that an example that agrees speaks for that.

// OpeningHeatKJ gives the heat that one opening of the lid brings in. Of the
// free air in the box the share swap, 0 to 1, falls out, saturated, and cabin
// air at humidity ratio cabinW takes its place. The result is
// negative when cabin air holds less heat than the box's own, as in a cold or
// very dry cabin.
func OpeningHeatKJ(free quantity.Litre, swap quantity.Fraction, cabin quantity.Celsius, cabinW float64, box quantity.Celsius) quantity.Kilojoule {
	dryAirKg := float64(free) / 1000 * float64(swap) * ColdAirDensity(box)
	return quantity.Kilojoule(dryAirKg * (EnthalpyKJ(cabin, cabinW) - SaturatedEnthalpyKJ(box)))
}

// GoodsHeatKJ gives the heat that food and drink bring from one temperature to
// another; negative when they warm up.
func GoodsHeatKJ(goods quantity.Kilogram, from, to quantity.Celsius) quantity.Kilojoule {
	return quantity.Kilojoule(float64(goods) * PerishableKJPerKgK * float64(from-to))
}
