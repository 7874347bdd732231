// Package compare sets boats side by side for one buyer: a row a boat, as she
// stands and with the work she needs, for print, as plain text, Markdown, CSV
// and JSON. It is neither a survey nor a valuation, and says so.
//
// ForBuyer gives each boat the buyer's cruising, crew and money, so that costs
// are like for like; Compare makes the Table, which can be sorted and printed.
//
// Boats come one at a time, and as many are worked out at once as there are
// cores. Of each only its Row is kept, so that memory does not grow with what a
// reckoning holds. A boat that cannot be reckoned is a row with its error and
// does not stop the others.
package compare
