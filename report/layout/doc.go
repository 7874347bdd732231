// Package layout says what a printed thing says, and writes it four ways.
//
// A Document is a list of blocks in reading order: headings, paragraphs, lists,
// tables, pictures, notes, columns, and forms for a pencil. The writers stand
// side by side: Draw sets it on a sheet (PDF makes the file), Text and Markdown
// write it for e-mail, HTML for a screen. Every picture carries a finding and a
// table of the same figures, so that nothing is said by a drawing alone.
//
// On paper it is found out first what stands on which page and drawn afterwards,
// so that every page knows how many there are. The promises, which the tests
// hold it to:
//
//   - nothing leaves the margins, nothing lies over anything else;
//   - a heading is never the last thing on a page;
//   - a paragraph leaves no single line behind or ahead;
//   - a table repeats its head on each page and breaks between rows, with two
//     at least on either side, and inside a row only if that row is taller
//     than a page;
//   - a word longer than its line is broken, never clipped.
//
// Lengths are millimetres, type sizes points.
package layout
