// Package economics decides how a boat should keep its food.
//
// Four options answer one question: who pays for the heat that leaks into the
// box? Ice pays by melting, a small or a larger unit pays in electricity, and
// dry stores do not take the heat up at all. So heat is reckoned once, and ice,
// watt-hours and money follow from it.
//
// Three ledgers do the reckoning and never see each other: heat (watts), energy
// (watt-hours) and cost (money). Package season runs a year aboard hour by hour
// through the first two; this package hands its tally to the third.
//
// In goes a Boat, which holds every answer of her owner, a Book of prices and
// criteria, and the climate of her ground. Out comes a Reckoning: the four
// options side by side and a verdict. Reckon leads from one to the other; it is
// a pure function, reads no clock and no file, and gives the same result on any
// number of cores.
//
// A proposal is one option on one boat with one fit-out: the boat as told, or
// with the work found for it. Each proposal is put to the same futures, which
// are draws of all that is not known exactly, from the leak of the box to the
// price of ice. A criterion of the book says when an option does not work.
// Counting in how many futures each option works, and in how many it is best,
// gives the verdict and what would be worth finding out.
//
//	in          boat.go, world.go, book.go, granted.go
//	the box     box.go, evidence.go; what a log teaches of it: learn.go, iceload.go, runlog.go, check.go
//	proposals   proposal.go, fitout.go, pieces.go, cooling.go, steady.go, unitfigures.go;
//	            the cheapest work that suffices: fit.go, search.go;
//	            offers of units: quotation.go, quotations.go
//	one future  future.go, outcome.go, money.go, fortnight.go; for rules: facts.go, factrows.go
//	all futures inputs.go, inputrows.go, futures.go, study.go, losses.go, answer.go, breakeven.go
//	out         reckoning.go
//
// Units are in the types or the names; where neither tells:
//
//	what               unit
//	temperature        °C; a difference K
//	heat flow, power   W
//	leak               W/K
//	energy             Wh; heat kJ
//	money              the owner's currency, in today's prices
package economics
