package economics_test

import (
	"math"
	"testing"

	"coldreckon/economics"
)

// few is the fewest futures a reckoning takes, enough for what must hold in any
// number of them, and for what is the same in each.
var few = economics.Settings{Futures: 20, Seed: 1}

// refrigerated are the options that hold a unit.
var refrigerated = []economics.OptionID{economics.SmallUnit, economics.LargerUnit}

// reckon works a boat out with the tests' own book.
func reckon(t testing.TB, b economics.Boat, set economics.Settings) *economics.Reckoning {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := economics.Reckon(b, economics.TestBook(), ground, set)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func line(o *economics.Outcome, id string) economics.CostLine {
	for _, l := range o.Lines {
		if l.ID == id {
			return l
		}
	}
	return economics.CostLine{}
}

// near tells whether two figures agree to a share of the larger.
func near(a, b, share float64) bool {
	return math.Abs(a-b) <= share*math.Max(math.Abs(a), math.Abs(b))
}

// told works a boat out at typical inputs, without search and futures: its
// options as told, and with much work in the place of the fitted case.
func told(t testing.TB, b economics.Boat) *economics.Reckoning {
	t.Helper()
	r, err := economics.Typically(b)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// plausible invents a boat.
var plausible = economics.Plausible
