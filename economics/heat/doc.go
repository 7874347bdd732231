// Package heat is the first ledger: the heat that enters a cold box, in watts.
//
// Every way of keeping food cold answers the same question, who pays for the
// heat that leaks in, so heat is reckoned here once and ice, watt-hours and
// money follow from it elsewhere.
//
// A box leaks in proportion to how much colder it is than what lies around it.
// The factor, its conductance UA in watts per kelvin, is the one figure that
// matters most, and it is found in two ways: from the walls as told, and from
// what the box has shown of itself, in a test or a log:
//
//	wall     heat = U · area · difference, with 1/U = 1/film + Σ thickness/conductivity + 1/film
//	foam     conductivity = dry · e^(f · water by volume)
//	lid      heat = dry air exchanged · (enthalpy outside - enthalpy inside)
//	ice      mass melted = heat / (333.6 kJ/kg + 4.19 · °C at which its water leaves)
//	test     UA = heat taken up / (hours · difference)
//
// Estimates that differ are weighed by how far each can be trusted (Combine);
// a test that contradicts the walls outweighs them.
//
//	walls.go, conductance.go   a box's walls, and the leak they lead to
//	air.go, exchange.go        moist air, and what a lid lets in
//	ice.go, surface.go         ice: what it takes up, how cold it holds food
//	capacity.go                the heat that a box and its contents hold
//	evidence.go, estimate.go   tests of a box, and the leak each shows
//	combine.go                 one leak from all of them
//	log.go, iceloads.go, learn.go a kept log: read, paired, learnt from
//	terms.go                   the owner's words
//	constants.go               every figure, with its range and source
//
// Left out: draughts behind the liner, sun on the box itself (a deck over it
// counts as warmer), heat stored deep in the foam, and heights above the sea.
//
// All of it is pure: same arguments, same answer. What an hourly loop calls
// (Conductance.GainW, the functions of air.go, Surface) allocates nothing.
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
