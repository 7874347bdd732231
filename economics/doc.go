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
// A proposal is one option on one boat with one fit-out: the boat as told, or
// with the cheapest work that makes the option keep food cold on the days the
// owner wants (fitsearch.go). Each proposal is put to the same futures
// (futures.go): draws of everything that is not known exactly, from the leak of
// the box to the price of ice (inputs.go). Counting in how many futures each
// option works, and in how many it is best, gives the verdict (verdict.go) and
// what would be worth finding out (judge.go).
//
// Reckon is one pure function of the boat, the rule book, the ground and its
// settings. It reads no clock and no file, and gives the same result on any
// number of cores.
//
//	Unit of            is
//	temperature        °C; a difference K
//	heat flow, power   W
//	leak               W/K
//	energy             Wh; heat kJ
//	money              the owner's currency, in constant prices
package economics
