package words

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// EvidenceCounts says how many figures are known how.
func (v Voice) EvidenceCounts() string {
	measured, told, assumed := v.r.Boat.EvidenceCounts()
	return fmt.Sprintf("Of the figures about boat and use, %d came from tests, %d were told or remembered and %d had to be assumed: the evidence is %s.",
		measured, told, assumed, v.r.Boat.EvidenceGrade())
}

// EvidenceText says how well the figures are known, apart from how likely.
func (v Voice) EvidenceText() string {
	text := "How well this is known is another matter. " + v.EvidenceCounts()
	if measured, _, _ := v.r.Boat.EvidenceCounts(); measured == 0 {
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
