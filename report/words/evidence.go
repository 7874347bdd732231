package words

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// Grade is how well the figures behind the answer are known.
type Grade string

// The grades.
const (
	Strong Grade = "strong"
	Fair   Grade = "fair"
	Weak   Grade = "weak"
)

// Evidence counts how the owner's figures are known, and grades them.
type Evidence struct {
	Measured, Told, Assumed int // figures
	Grade                   Grade
}

// Evidence gives the strength of the evidence: strong when the box was
// measured and two thirds of the figures are the owner's, weak when fewer
// than half are, fair between. Engineering judgement, from memory.
func (v Voice) Evidence() Evidence {
	e := Evidence{Assumed: len(v.r.Boat.Assumptions)}
	for key, how := range v.r.Boat.Known {
		switch {
		case how == quantity.Measured && key != "evidence.ice_history":
			e.Measured++
		case how == quantity.Told, how == quantity.Measured: // what is remembered is told
			e.Told++
		}
	}
	all := float64(e.Measured + e.Told + e.Assumed)
	switch own := float64(e.Measured + e.Told); {
	case all == 0 || own < all/2:
		e.Grade = Weak
	case e.Measured > 0 && own >= all*2/3:
		e.Grade = Strong
	default:
		e.Grade = Fair
	}
	return e
}

// EvidenceCounts says how many figures are known how.
func (v Voice) EvidenceCounts() string {
	e := v.Evidence()
	return fmt.Sprintf("Of the figures about boat and use, %d came from tests, %d were told or remembered and %d had to be assumed: the evidence is %s.",
		e.Measured, e.Told, e.Assumed, e.Grade)
}

// EvidenceText says how well the figures are known, apart from how likely.
func (v Voice) EvidenceText() string {
	text := "How well this is known is another matter. " + v.EvidenceCounts()
	if v.Evidence().Measured == 0 {
		text += " Nothing about the box was measured."
	}
	return text
}

// LeakText gives the leak of the box with its range and what it rests on.
func (v Voice) LeakText() string {
	b := v.r.Box
	return fmt.Sprintf("The box holds %s and leaks %s (%s in 80 of 100 cases): so much heat for each degree that the air round it is warmer than the food. %s", v.volume(float64(b.Volume)),
		v.leak(float64(b.Leak)), quantity.Span(v.leak(float64(b.LeakLow)), v.leak(float64(b.LeakHigh))), b.Evidence.Why)
}
