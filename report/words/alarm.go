package words

import (
	"fmt"
	"math"

	"coldreckon/economics"
)

// Alarm says what a thermometer with an alarm costs, and how soon it pays.
func (v Voice) Alarm(a economics.Alarm) string {
	stops := "the first time it saves that"
	if n := math.Ceil(a.Stops); n > 1 {
		stops = fmt.Sprintf("once it has saved that %.0f times", n)
	}
	return fmt.Sprintf("A stop that nobody sees spoils up to %s of food, worth some %s. A thermometer with an alarm costs about %s, and has paid for itself %s.",
		v.Mass(a.FoodKg), v.Money(a.FoodWorth.Typical), v.about(a.Price.Typical, a.Price.Low, a.Price.High), stops)
}
