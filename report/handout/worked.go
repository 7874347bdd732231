package handout

import (
	"fmt"
	"strconv"

	"coldreckon/economics/energy"
)

// worked are the lines that ask for most, each worked out with figures of an
// invented boat: what stands behind the line in italics.
type worked struct{ iceToBuy, iceYear, notCold, owning string }

// The invented boat, in the order in which its figures are asked for.
const (
	sampleTrips, sampleNights  = 10.0, 40.0
	sampleLater                = 8.0 // times that ice is bought later on a trip
	sampleErrand               = 5.0 // what fetching ice costs each time
	sampleTaken, sampleSpare   = 25.0, 15.0
	sampleBattery              = 200.0 // Ah
	samplePrice, sampleFitting = 900.0, 150.0
	sampleUpkeep               = 20.0
	sampleLife, sampleYears    = 8.0, 10
)

// worked works the example out, with the tables' and the lines' own figures.
func (h *Handout) worked() worked {
	daily, load, food, iceEach := 9.0, 14.0, 0.7, 1.1 // kg, kg, kg, a kg
	u := unitsOf(h.sys)
	if u.kilogram != 1 {
		daily, load, food, iceEach = 20, 30, 1.5, 0.5
	}
	say := func(x float64) string { return short(x, 3) }
	// printed is a figure of a table or a line, as it stands there.
	printed := func(text string) (string, float64) {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil { // the text was made from a number
			return text, 0
		}
		return text, x
	}

	bought := (sampleTrips + sampleLater) * load // the melt of the days between is more than a load
	spoils, spoil := printed(h.spoiled())
	errands := sampleErrand * (sampleTrips + sampleLater)
	usable := energy.UsableShare(energy.Lead).Typical
	lives, life := printed(h.factor(sampleLife, sampleYears))
	lasts, last := printed(h.factor(0, sampleYears))
	cables, cable := printed(price(h.money.cable))
	return worked{
		iceToBuy: fmt.Sprintf("Say %s × %s + %s × %s = %s, as 1.1 × %s × %s ÷ %s is over %s.",
			say(sampleTrips), say(load), say(sampleLater), say(load), say(bought), say(daily), say(sampleNights), say(sampleTrips+sampleLater), say(load)),
		iceYear: fmt.Sprintf("Say %s × %s + %s + %s × %s × %s = %s.", say(bought), say(iceEach), say(errands), say(sampleNights), say(food), spoils,
			say(bought*iceEach+errands+sampleNights*food*spoil)),
		notCold: fmt.Sprintf("Say (%s − %s) × %s = %s, under %s × %s: so one for each of %s trips, %s.", say(sampleTaken), say(sampleSpare), say(sampleNights/sampleTrips),
			say((sampleTaken-sampleSpare)*sampleNights/sampleTrips), short(usable, 2), say(sampleBattery), say(sampleTrips), say(sampleTrips)),
		owning: fmt.Sprintf("Say %s × %s + (%s + %s) × %s + %s = %s.", say(samplePrice), lives, say(sampleFitting), cables, lasts, say(sampleUpkeep),
			say(samplePrice*life+(sampleFitting+cable)*last+sampleUpkeep)),
	}
}

// spoiled is what a unit of chilled food costs when it spoils, as the lines
// print it, without the currency.
func (h *Handout) spoiled() string { return price(h.money.spoilage * unitsOf(h.sys).kilogram) }

// factor is the cell of table E for a life and a horizon, as printed; a life of
// 0 lasts.
func (h *Handout) factor(life float64, years int) string {
	for i := range lives {
		for k := range horizons {
			if lives[i] == life && horizons[k] == years {
				return fixed(h.factors[i][k]/100, 3)
			}
		}
	}
	return ""
}
