// Package pencil draws what a reader works through by hand: a Form of numbered
// lines with boxes to write in, a Grid for readings, a Ready table to look
// figures up in, Checks to tick, and a Listing of lines for a file with blanks.
//
// Each becomes a layout block of fixed height for a given width, drawn in greys
// so that a copy of a copy still serves. Lengths are millimetres.
package pencil
