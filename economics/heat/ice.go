package heat

import "coldreckon/economics/quantity"

// MeltKgPerDay gives the ice at 0 °C that a steady heat gain melts in a day, its
// water leaving at drain °C. A box that loses heat melts none.
func MeltKgPerDay(gain quantity.Watt, drain quantity.Celsius) quantity.Kilogram {
	return quantity.Kilogram(max(0, float64(gain)*86.4/MeltKJPerKg(drain)))
}

// MeltKJPerKg gives the heat that a kilogram of ice at 0 °C takes up until its
// water leaves at drain °C, kJ/kg.
func MeltKJPerKg(drain quantity.Celsius) float64 {
	return FusionKJPerKg + WaterKJPerKgK*float64(drain)
}

// FreezerBonusKJ gives the heat that ice colder than 0 °C takes up until it
// starts to melt; none at 0 °C or above.
func FreezerBonusKJ(ice quantity.Kilogram, start quantity.Celsius) quantity.Kilojoule {
	return quantity.Kilojoule(float64(ice) * IceKJPerKgK * max(0, -float64(start)))
}

// CapacityKg gives the ice that stows in the share of a box given to it, 0 to 1,
// at the kind's typical BulkDensity. An unknown kind is an error.
func CapacityKg(box quantity.Litre, share quantity.Fraction, kind IceKind) (quantity.Kilogram, error) {
	density, err := BulkDensity(kind)
	if err != nil {
		return 0, err
	}
	return quantity.Kilogram(float64(box) * float64(share) * density.Range.Typical), nil
}
