package heat

import (
	"slices"
	"time"

	"coldreckon/economics/quantity"
)

// Readings gives the rows that hold both box and cabin temperature, in order.
func Readings(rows []LogRow) []Reading {
	var out []Reading
	for _, r := range rows {
		if r.BoxRead && r.CabinRead {
			out = append(out, Reading{r.At, r.Box, r.Cabin})
		}
	}
	return out
}

// IceLoad is a load of ice and how long it served.
type IceLoad struct {
	Line     int       // of the log, at its start
	From, To time.Time // To is the next purchase or the next look at what is left
	Ice      quantity.Kilogram
	Left     quantity.Kilogram // at To; 0 where the log does not say
	Shut     bool              // the lid was kept shut
	Gone     bool              // the log says that none was left: the last went at some time before To
}

// Melted gives the ice that melted, below 0 where more was left than there was.
func (s IceLoad) Melted() quantity.Kilogram { return s.Ice - s.Left }

// IceLoads pairs each load with the next row that tells of ice. What was left
// then is what that row says. In a log that never says what is left, each load
// counts as melted by the next purchase; in one that does, a load whose end
// does not say it is left out. Purchases at the same moment count as one; the
// last has no end and is left out.
func IceLoads(rows []LogRow) []IceLoad {
	looks := slices.ContainsFunc(rows, func(r LogRow) bool { return r.LeftRead })
	var out []IceLoad
	var open *IceLoad
	for _, r := range rows {
		switch {
		case r.Ice == 0 && !r.LeftRead:
			continue
		case open != nil && r.At.Equal(open.From):
			open.Ice += r.Ice
			continue
		case open != nil && r.LeftRead == looks:
			open.To, open.Left, open.Gone = r.At, r.Left, r.LeftRead && r.Left == 0
			out = append(out, *open)
		}
		open = nil
		if in := r.Ice + r.Left; in > 0 {
			open = &IceLoad{Line: r.Line, From: r.At, Ice: in, Shut: r.Shut}
		}
	}
	return out
}
