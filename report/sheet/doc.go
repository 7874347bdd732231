// Package sheet is the drawing seam of the printed report.
//
// Everything that draws is written against Sheet: points, lines, greys,
// hatches and text on paper measured in millimetres from the top left corner.
// Two implementations exist. PDF writes the file; it is the only code that
// knows the PDF library. Recording keeps what was drawn, so that a test can
// say "all text lies inside the margins and none over other text" without
// comparing pictures.
//
// Text is measured by Width, from the embedded faces themselves, so a layout
// is the same on both.
//
// The visual language is grey alone: no colour carries a meaning, so that a
// photocopy says what the original said. One typeface, the Go fonts by
// Bigelow & Holmes, which are free to embed.
package sheet
