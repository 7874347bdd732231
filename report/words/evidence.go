package words

import (
	"fmt"

	"coldreckon/economics/quantity"
)

// EvidenceText says how well the figures are known, apart from how likely.
func (v Voice) EvidenceText() string {
	measured, told, assumed := v.r.Boat.EvidenceCounts()
	text := fmt.Sprintf("Of the figures about boat and use, %d came from tests, %d were told or remembered and %d had to be assumed: the evidence is %s.",
		measured, told, assumed, v.r.Boat.EvidenceGrade())
	if measured == 0 {
		text += " Nothing about the box was measured."
	}
	return text
}

// LeakText gives the leak of the box with its range and what it rests on.
func (v Voice) LeakText() string {
	b := v.r.Box
	return fmt.Sprintf("The box holds %s and leaks %s (%s in 80 of 100 cases): so much heat for each degree that the air round it is warmer than the food. %s", v.Volume(float64(b.Volume)),
		v.leak(float64(b.Leak)), quantity.Span(v.leak(float64(b.LeakLow)), v.leak(float64(b.LeakHigh))), b.Evidence.Why)
}

// QuickLook says of a reckoning over few futures what else it has less of; see
// economics.Settings.Quick.
const QuickLook = "This is a quick look: under 200 futures, fewer works and days are tried, too."
