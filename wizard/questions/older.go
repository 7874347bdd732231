package questions

import (
	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// older lists keys of earlier answers files that now mean something else, each
// with the key that took its place.
var older = map[string]string{"food.kg_per_person_day": "food.food_per_person_day"}

// Older reports whether a key stood in earlier answers files only.
func Older(key string) bool { return older[key] != "" }

// Translate turns an answer to an Older key into one of today, for a boat of
// which the other answers are told, and says in a sentence what was done. The
// fault is of an answer that cannot be read.
func Translate(b *economics.Boat, key string, in Input) (now string, text Input, note string, faults []Fault) {
	now = older[key]
	if in.Shape == Scalar && Unsure(in.Text) {
		return now, in, key + " is called " + now + " now.", nil
	}
	row, _ := Find(now)
	o := ownerOf(b)
	v, _, faults := row.read(in, o)
	if len(faults) > 0 {
		for i := range faults {
			faults[i].Key = key
		}
		return now, in, "", faults
	}
	drinks := 3.0
	if b.Told("food.drinks_a_day") {
		drinks = b.Food.DrinksADay
	}
	// A can holds 0.35 kg. Nobody lives on drinks alone: two fifths are food.
	held := v.(quantity.Kilogram)
	food := max(held-quantity.Kilogram(0.35*drinks), 0.4*held)
	text = in
	text.Text = quantity.FormatMass(food, o.sys)
	note = key + " held drinks too: of its " + quantity.FormatMass(held, o.sys) + ", " + text.Text + " are taken as food (" + now + "), the rest as drinks."
	return now, text, note, nil
}
