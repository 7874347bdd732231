// Package forms is what a reader writes in by hand.
//
// A Form has numbered lines with boxes, a Grid room for readings, a Ready table
// figures to look up, Checks squares to tick, a Listing the lines of a file with
// blanks. A Questionnaire is a whole sheet of questions, each with its help and a
// box or squares; it knows no question itself: what is asked comes in as data.
//
// Each becomes a block of a document, drawn on paper in greys so that a copy of a
// copy still serves, and said in words elsewhere. Lengths are millimetres.
package forms
