package heat

import "coldreckon/economics/quantity"

// BareKJPerK gives the heat capacity of an empty box: liner and inner foam.
func BareKJPerK(box quantity.Litre) quantity.KilojoulePerKelvin {
	return quantity.KilojoulePerKelvin(BareKJPerKPerL * float64(box))
}

// StowedKJPerK gives the heat capacity of a box in use, without the food and
// the drinks that come and go: the box as it is, and what lives in it, which
// goes by the box as told and stays the same after any work on it. factor, over
// 0, is by how much that guess is off; about 0.6 to 1.7.
func StowedKJPerK(asIs, asTold quantity.Litre, factor float64) quantity.KilojoulePerKelvin {
	jars := quantity.KilojoulePerKelvin(min(JarsKJPerKPerL*float64(asTold), jarsMostKJPerK))
	return quantity.KilojoulePerKelvin(factor) * (BareKJPerK(asIs) + jars)
}

// InUseKJPerK gives the whole heat capacity of a box in use: stowed, the mean
// of the perishables aboard and the drinks of a day.
func InUseKJPerK(stowed quantity.KilojoulePerKelvin, perishables, drinks quantity.Kilogram) quantity.KilojoulePerKelvin {
	return stowed + quantity.KilojoulePerKelvin(PerishableKJPerKgK*float64(perishables)+WaterKJPerKgK*float64(drinks))
}
