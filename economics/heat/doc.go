// Package heat is the first ledger: the heat that enters a cold box, in watts.
//
// Every way of keeping food cold answers the same question, who pays for the
// heat that leaks in, so heat is reckoned here once and ice, watt-hours and
// money follow from it elsewhere.
//
// The package holds five subjects: the walls (walls.go, conductance.go), the
// air round and in the box (air.go), ice (ice.go), what the box has shown of
// itself (evidence.go, estimate.go, combine.go), and what a kept log teaches
// (log.go, learn.go). All of it is pure: same arguments, same answer. What an
// hourly loop calls (Conductance.GainW, the functions of air.go, Surface)
// allocates nothing.
//
// Units, where the type does not say them:
//
//	conductivity             W/m·K
//	surface film             W/m²·K
//	linear transmittance     W/m·K (of a seal, per metre of its length)
//	heat capacity            kJ/kg·K, kJ/K
//	enthalpy                 kJ per kg of dry air, zero for dry air at 0 °C
//	humidity ratio           kg of water per kg of dry air
//	specific volume          m³ per kg of dry air
//	log-sd                   standard deviation of the natural logarithm
//
// Sources, cited short in the code:
//
//	ASHRAE: Handbook Fundamentals, 2017, ch. 1 (moist air) and ch. 26 (films)
//	EN ISO 10456: hygrothermal properties and their moisture conversion
//	Langmuir, Adams and Meikle, Trans. Am. Electrochem. Soc. 24 (1913): shape factors
//	Holman, Heat Transfer, ch. 3; Incropera et al., Fundamentals of Heat and
//	Mass Transfer, table 4.1: the same shape factors
//	FAO Fisheries Technical Papers 331 (1992), 348 (Huss 1995), 436 (2003): ice
//	Earle, Unit Operations in Food Processing, appendix 7: ice, water, foods
package heat
