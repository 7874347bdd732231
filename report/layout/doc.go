// Package layout flows text, tables and figures over the pages of a Sheet.
//
// A Document is a list of blocks: Heading, Text, List, Table, Figure and Rows,
// and those that hold others, Stack, Together, Columns and Note. Draw finds out
// first what stands on which page and draws afterwards, so that every page
// knows how many there are. The promises, which the tests hold it to:
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
