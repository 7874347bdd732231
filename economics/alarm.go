package economics

import "coldreckon/economics/quantity"

// Alarm is what a thermometer with an alarm in the box costs, against the cold
// food that is lost when a unit stops, or the ice is gone, unseen. Money is the
// owner's.
type Alarm struct {
	Price     quantity.Range
	FoodKg    float64        // chilled food aboard after a shop, at most
	FoodWorth quantity.Range // of that food
	// Stops is how many unseen stops, each of which spoils a full load, pay for
	// it at typical prices, over 0.
	Stops float64
}

// Alarm works it out; false where no food must be kept cold, and with a book
// that prices neither an alarm nor food.
func (r *Reckoning) Alarm(book Book) (Alarm, bool) {
	price, known := book.Price("alarm")
	food, valued := book.Price("food_value")
	kg := r.Boat.perishableKgPerDay() * r.Boat.gapDays()
	if !known || !valued || kg <= 0 || len(r.Months) == 0 {
		return Alarm{}, false
	}
	a := Alarm{Price: price.Price, FoodKg: kg, FoodWorth: food.Price.Scale(kg)}
	a.Stops = a.Price.Typical / a.FoodWorth.Typical
	return a, true
}
