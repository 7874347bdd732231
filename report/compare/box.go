package compare

import (
	"cmp"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// How tells how a figure of a box is known, in a broker's words.
type How string

// The grades of knowledge.
const (
	Measured   How = "measured"   // by a test aboard, or from a log
	Remembered How = "remembered" // a leak that fits how long ice has lasted
	Reckoned   How = "reckoned"   // a leak worked out from the walls alone
	Told       How = "told"       // somebody's word
	Assumed    How = "assumed"    // nobody's: a usual value taken
)

// Datum is one figure of a box as printed, with its unit and how it is known.
type Datum struct {
	Value string `json:"value"`
	How   How    `json:"how"`
}

// Box is the ice box as it stands.
type Box struct {
	Volume, Foam, State, Seal, Drain Datum
	VolumeL                          float64 // inside, L
	// Leak, W/K, has its 10th and 90th percentiles.
	Leak     quantity.Range
	LeakHow  How    // Measured, Remembered or Reckoned
	LeakFrom string // what it rests on: "drawing", "ice test"
}

func boxOf(r *economics.Reckoning) Box {
	b := r.Boat
	how := howOf(b.Known)
	out := Box{
		Volume:  Datum{quantity.FormatVolume(r.Box.Volume, b.Units), strongest(how("box.volume"), how("box.inside"))},
		Foam:    Datum{foamText(b), how("box.foam", "foam")},
		State:   Datum{stateText(b), how("box.state", "state")},
		Seal:    Datum{cmp.Or(map[heat.Seal]string{heat.GoodSeal: "good", heat.PoorSeal: "worn"}[b.Box.LidSeal], "only rests"), how("box.lid_seal")},
		Drain:   Datum{string(b.Box.Drain), how("box.drain")},
		VolumeL: float64(r.Box.Volume),
		Leak:    quantity.Range{Low: float64(r.Box.LeakLow), Typical: float64(r.Box.Leak), High: float64(r.Box.LeakHigh)},
	}
	out.LeakHow = Reckoned
	var from []string
	for _, e := range r.Box.Evidence.Used {
		from = append(from, string(e.Source))
		switch e.Source {
		case heat.FromIceTest, heat.FromJugTest, heat.FromLog:
			out.LeakHow = Measured
		case heat.FromHistory:
			if out.LeakHow == Reckoned {
				out.LeakHow = Remembered
			}
		}
	}
	out.LeakFrom = strings.Join(from, ", ")
	return out
}

// howOf reads how an answer is known. With an item, the same item told of
// single faces counts as well.
func howOf(known map[string]quantity.How) func(key string, item ...string) How {
	one := func(how quantity.How) How {
		switch how {
		case quantity.Measured:
			return Measured
		case quantity.Told:
			return Told
		}
		return Assumed
	}
	return func(key string, item ...string) How {
		best := one(known[key])
		for _, name := range item {
			assumed := func(side heat.Side) bool { return one(known["box.faces."+string(side)+"."+name]) == Assumed }
			if !slices.ContainsFunc(heat.Sides[:], assumed) {
				best = strongest(best, Told)
			}
		}
		return best
	}
}

var rank = map[How]int{Assumed: 0, Told: 1, Measured: 2}

func strongest(a, b How) How {
	if rank[b] > rank[a] {
		return b
	}
	return a
}

// foamText gives the thinnest and the thickest foam of the six faces.
func foamText(b economics.Boat) string {
	var foam []quantity.Metre
	for _, side := range heat.Sides {
		if f := b.Box.Faces[side]; f.State != heat.Missing {
			foam = append(foam, f.Foam)
		} else {
			foam = append(foam, 0)
		}
	}
	return quantity.Span(quantity.FormatLength(slices.Min(foam), b.Units), quantity.FormatLength(slices.Max(foam), b.Units))
}

// stateText gives the states of the six faces, driest first.
func stateText(b economics.Boat) string {
	var found []string
	for _, s := range []heat.State{heat.Dry, heat.Damp, heat.Wet, heat.Soaked, heat.Missing} {
		if slices.ContainsFunc(heat.Sides[:], func(side heat.Side) bool { return b.Box.Faces[side].State == s }) {
			found = append(found, string(s))
		}
	}
	if len(found) > 2 {
		found = []string{found[0], found[len(found)-1]}
	}
	return strings.Join(found, " to ")
}
