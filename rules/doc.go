// Package rules holds what the program knows as text rather than as code: the
// criteria that make an option unworkable, the cautions, and the price book.
//
// Three embedded packs (packs/criteria.yaml, packs/cautions.yaml,
// packs/prices.yaml) are read once by Load, which checks every line of them. A
// rule asks about named facts, one set for each option; economics.Vocabulary
// lists them with their units. An expression over facts is made of
// comparisons, && || ! + - * / and brackets, nothing else: a rule file can
// compute over the facts it is given and do nothing more.
//
// An owner's or a club's own prices are laid over the book with
// Pack.WithPrices.
//
// The package is a fence round two old libraries. Only expr.go imports
// govaluate; only node.go and the readers beside it import yaml.v3.
package rules
