// Package handout prints one sheet for a club's table. On its first side a chart
// to be followed with a pencil, from the size of an ice box to the yearly cost of
// ice, of a small unit and of going without, beside ten lines to fill in; on the
// second the tables for those who want digits, two tests of the box and cautions.
// All is made from the models for one cruising ground and one unit system.
//
// The tables hold figures, never a recommended size of anything. The page of
// package boxtest, with both tests of the box, goes with the two.
package handout
