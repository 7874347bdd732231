// Package report makes the printed report of one boat from its reckoning: for
// print, for a screen, as plain text and as Markdown, all from one content.
//
// Four pages are for the reader: the answer, which stands alone; the box and the
// boat; what to buy and do; and how to prove it. With Full an appendix follows,
// for whoever wants to check.
//
// What is said is worded in package words, what is drawn in package chart; this
// package decides what goes where. Each page is set just tightly enough for both
// papers, which so hold the same sections on the same pages.
//
//	answer.go          page one
//	boat.go            page two
//	work.go            page three; buy.go, cut.go and stops.go are its parts
//	proof.go           page four
//	appendix.go, units.go, foods.go, method.go   the appendix
package report
