// Package report makes the printed report of one boat from its reckoning: for
// print, as plain text and as Markdown, all from one content.
//
// At most four pages are for the reader, and the first stands alone: the answer,
// how sure it is, the reasons, the four ways side by side. The next say what
// work the box needs, what to look out for, how the season goes, what is paid,
// and what would change the answer. The appendix holds what the reader may want
// to check.
//
// What is said is worded in package words, what is drawn in package chart; this
// package decides what goes where. A document is set loosely first, and again
// more tightly until it keeps to its pages.
package report
