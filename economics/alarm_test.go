package economics

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// By hand: two aboard eat 1.2 kg each a day of which 0.3 must be cold, shops
// every two days: 2 × 1.2 × 0.3 × 2 = 1.44 kg. At 8 a kilogram that is 11.52,
// and an alarm of 30 pays after 2.6 stops. Invented figures.
func TestAlarmByHand(t *testing.T) {
	b := untold()
	book := Book{Prices: []PriceLine{{ID: "alarm", Price: quantity.Range{Low: 15, Typical: 30, High: 80}}, {ID: "food_value", Price: quantity.Range{Low: 4, Typical: 8, High: 15}}}}
	r := &Reckoning{Boat: b, Months: []MonthFigures{{Month: 7}}}
	a, ok := r.Alarm(book)
	if !ok || math.Abs(a.FoodKg-1.44) > 1e-9 || math.Abs(a.FoodWorth.Typical-11.52) > 1e-9 || math.Abs(a.FoodWorth.High-21.6) > 1e-9 || math.Abs(a.Stops-2.604) > 0.001 {
		t.Errorf("%+v, %v", a, ok)
	}
	if _, ok := r.Alarm(Book{}); ok {
		t.Error("a book without prices has an alarm")
	}
	r.Boat.Food.MustBeColdShare = 0
	if _, ok := r.Alarm(book); ok {
		t.Error("nothing cold to lose, and still an alarm")
	}
}
