// Package report makes the printed report of one boat from its reckoning: for
// print, as plain text and as Markdown, all from one content.
//
// At most four pages are for the reader, and the first stands alone. The
// appendix holds what the reader may want to check. What is said is worded in
// package words, what is drawn in package chart; this package decides what
// goes where.
package report
