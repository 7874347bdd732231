// Package handout prints two sheets for a club's table: on the first a
// worksheet that takes an owner from the size of the ice box to the yearly cost
// of ice and of a small unit in at most twenty pencil steps, on the second the
// tables those steps look up, made from the models for one cruising ground and
// one unit system.
//
// The tables hold figures, never a recommended size of anything. The page of
// package boxtest, with both tests of the box, goes with the two.
package handout
