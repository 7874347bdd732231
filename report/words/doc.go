// Package words says what a reckoning found, in plain sentences.
//
// A reckoning (economics.Reckon) puts four options to many equally likely
// futures: ice alone, dry stores, a small unit, a larger unit. It counts in how
// many each works and is best, and what a cold day by each costs. A Voice turns that into
// what an owner reads, in the owner's units and currency; the pages, the
// figures and the comparison of boats all speak through it.
//
// Nothing here is a fixed verdict: every sentence is made from figures. Money
// is rounded to two significant digits, because no more is known; chances are
// counts of 100 futures; a word for a likelihood comes with its count. How
// likely and how well known are kept apart: Counts speaks of the first, Grade
// of the second. A sentence for which there is nothing to say is empty.
package words

import (
	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Voice speaks for one reckoning, made with one price book.
type Voice struct {
	r    *economics.Reckoning
	book economics.Book
	sys  quantity.System
}

// Of gives the voice of a reckoning and of the book it was made with.
func Of(r *economics.Reckoning, book economics.Book) Voice {
	return Voice{r: r, book: book, sys: r.Boat.Units}
}
