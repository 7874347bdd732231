// Package words says what a reckoning found, in plain sentences.
//
// Nothing here is a fixed verdict: every sentence is made from figures of the
// reckoning, in the owner's units and currency. Money is rounded to two
// significant digits, because no more is known; chances are counts of 100
// equally likely futures; a word for a likelihood comes with its count.
//
// How likely and how well known are kept apart: Sure speaks of the first,
// Evidence of the second.
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
