package heat

import (
	"time"

	"coldreckon/economics/quantity"
)

// Readings gives the rows that hold both box and cabin temperature.
func Readings(rows []LogRow) []Reading {
	var out []Reading
	for _, r := range rows {
		if r.BoxRead && r.CabinRead {
			out = append(out, Reading{r.At, r.Box, r.Cabin})
		}
	}
	return out
}

// IceStay is a load of ice and how long it served.
type IceStay struct {
	Line     int       // of the log, at its start
	From, To time.Time // To is the next purchase or the next look at what is left
	Ice      quantity.Kilogram
	Left     quantity.Kilogram // at To; 0 where the log does not say
}

// Melted gives the ice that melted, below 0 where more was left than there was.
func (s IceStay) Melted() quantity.Kilogram { return s.Ice - s.Left }

// IceStays pairs each load with the next row that tells of ice. What was left
// then is what that row says; a purchase without that word counts as made into
// an empty box. Purchases at the same moment count as one; the last has no end
// and is left out.
func IceStays(rows []LogRow) []IceStay {
	var out []IceStay
	var open *IceStay
	for _, r := range rows {
		switch {
		case r.Ice == 0 && !r.LeftRead:
			continue
		case open != nil && r.At.Equal(open.From):
			open.Ice += r.Ice
			continue
		case open != nil:
			open.To, open.Left = r.At, r.Left
			out = append(out, *open)
			open = nil
		}
		if in := r.Ice + r.Left; in > 0 {
			open = &IceStay{Line: r.Line, From: r.At, Ice: in}
		}
	}
	return out
}
