// Package boxtest prints the two tests by which an owner finds out how much
// heat a box lets in: a weighed melt of ice, and the warming of jugs of water.
//
// It is one page with blanks for the readings, a formula a pencil can work,
// and the lines that carry the result into the answers file. The figures of
// the formulas come from the heat ledger's own constants, rounded to three
// digits, so that pencil and program give the same leak to better than 1 %.
//
// Method: calorimetry with melting ice, FAO Fisheries Technical Paper 436
// (2003), chapter 7; the water test is the same balance with water's heat
// capacity.
package boxtest
