// Package figures is the reckoning as data: inputs beside outputs, every key
// with its unit in the name, stable from release to release.
//
// Of makes them for JSON; Plain gives the chief of them for a terminal. They are
// described by their keys: a key that ends in _c is in °C, _w in watts, _l in
// litres, _of_100 counts futures, _share runs from 0 to 1. Only what a key does not say is said beside it.
//
// Numbers are as reckoned, not rounded. What has no value is null; there is no
// NaN and no infinity. Money is in the owner's currency at today's prices.
package figures

import (
	"coldreckon/economics"
	"coldreckon/rules"
)

// Schema is the number of the key set. It goes up when a key is renamed or
// removed, or changes its meaning; new keys may come without.
const Schema = 2

// Input is what the figures are made of.
type Input struct {
	Reckoning *economics.Reckoning
	Book      economics.Book  // that the reckoning was made with
	Findings  []rules.Finding // cautions that fired, stops first
	Guidance  string          // what kind of advice this is
	Version   string          // of the program
}
