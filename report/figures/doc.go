// Package figures is the reckoning as data: inputs beside outputs, every key
// with its unit in the name, stable from release to release.
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
const Schema = 1

// Input is what a sheet of figures is made of.
type Input struct {
	Reckoning *economics.Reckoning
	Book      economics.Book  // that the reckoning was made with
	Findings  []rules.Finding // cautions that fired
	Guidance  string          // what kind of advice this is
	Version   string          // of the program
}

// Number is a figure that prints as null when it is not finite.
type Number float64

// None is the figure that has no value.
var None = Number(math.NaN())

// MarshalJSON implements json.Marshaler.
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

// JSON gives the sheet as indented JSON with a line break at its end.
func (s Sheet) JSON() ([]byte, error) {
	out, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}
