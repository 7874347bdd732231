// Package figures is the reckoning as data: inputs beside outputs, every key
// with its unit in the name, stable from release to release.
//
// Of makes the Sheet that JSON writes; Plain gives the chief figures of it for a
// terminal. Fields of the sheet are described by their keys: a key that ends in
// _c is in °C, _w in watts, _l in litres, _of_100 counts futures, _share runs
// from 0 to 1. Only what a key does not say is said beside the field.
//
// Numbers are as reckoned, not rounded. What has no value is null; there is no
// NaN and no infinity. Money is in the owner's currency at today's prices.
package figures

import (
	"encoding/json"
	"math"

	"coldreckon/economics"
	"coldreckon/rules"
)

// Schema is the number of the key set. It goes up when a key is renamed or
// removed, or changes its meaning; new keys may come without.
const Schema = 2

// Input is what a sheet of figures is made of.
type Input struct {
	Reckoning *economics.Reckoning
	Book      economics.Book  // that the reckoning was made with
	Findings  []rules.Finding // cautions that fired, stops first
	Guidance  string          // what kind of advice this is
	Version   string          // of the program
}

// Number is a figure that prints as null when it is not finite.
type Number float64

// None is the figure that has no value.
var None = Number(math.NaN())

// MarshalJSON implements json.Marshaler: null when the figure is not finite.
func (n Number) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(n)) || math.IsInf(float64(n), 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

// when gives a figure if it is known.
func when(known bool, x float64) Number {
	if !known {
		return None
	}
	return Number(x)
}

// JSON gives the sheet as indented JSON with a line break at its end. It fails
// only if encoding/json does.
func (s Sheet) JSON() ([]byte, error) {
	out, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}
