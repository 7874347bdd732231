// Package rules holds what the program knows as text rather than as code: the
// criteria that make an option unworkable, the cautions, the prices, and the
// foods that keep without cooling.
//
// Four files in packs are part of the program. Load reads criteria, cautions
// and prices into a Pack and checks every line of them; LoadFoods reads the
// foods. A Pack's Book goes into economics.Reckon; the facts that come out go
// into Pack.Judge, which gives the cautions that hold. An owner's or a club's
// own prices are laid over the book with Pack.WithPrices.
//
// A rule asks about named facts, one set for each option; economics.Vocabulary
// lists them with their units. An expression over facts is made of
// comparisons, && || ! + - * / and brackets, nothing else: a rule file can
// compute over the facts it is given and do nothing more. Beside every rule
// stand examples of facts and of what it makes of them, which RunExamples runs.
//
// A mistake in a file is a strict.Fault with its line; a reading gathers all of them.
//
//	files          pack.go, load.go, price.go, ownprices.go, foods.go
//	values         node.go
//	expressions    grammar.go, expr.go, vocabulary.go, example.go
//	what comes out judge.go, fill.go, listing.go
//
// The package is a fence round an old library: only grammar.go and expr.go
// import govaluate.
package rules
