// Package pencil draws what a reader fills in by hand: numbered lines with a
// box to write in, and empty tables for readings.
//
// Both are layout blocks of fixed height for a given width, drawn in greys so
// that a copy of a copy still serves. Lengths are millimetres.
package pencil
