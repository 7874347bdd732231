// Package sheet is the paper that everything printed is drawn on.
//
// Whoever draws is given a Sheet and knows no more of it: lines, areas, greys,
// hatches and text on a page measured in millimetres from its top left corner.
// There are three sheets. PDF becomes a file, and is the only code that knows the
// PDF library. SVG becomes a picture on a screen. Recording keeps what was drawn, so that a test can say "all text
// lies inside the margins and none over other text" without comparing pictures.
//
// Drawing calls return no error. A sheet keeps the first fault it meets, draws
// nothing after it, and tells it when asked at the end.
//
// Text is measured by Width, from the embedded faces themselves, so a layout
// is the same on both.
//
// The visual language is grey alone: no colour carries a meaning, so that a
// photocopy says what the original said. One typeface, the Go fonts by
// Bigelow & Holmes, which are free to embed.
package sheet
