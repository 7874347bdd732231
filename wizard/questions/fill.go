package questions

import (
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
)

// Fill gives every row without an answer its default, in the order of the
// table, and lists in b.Assumptions those an owner would want to know of. A row
// answered with "don't know" keeps that mark. Filling twice changes nothing.
func Fill(b *economics.Boat, book economics.Book) {
	FillTo(b, "", func() economics.Book { return book })
}

// FillTo is Fill up to the row of a key, whose default so stands in the boat. The
// book is asked for when a row wants it.
func FillTo(b *economics.Boat, key string, book func() economics.Book) {
	if b.Known == nil {
		b.Known = map[string]quantity.How{}
	}
	b.Assumptions = nil
	for _, row := range table() {
		fillRow(b, row, book)
		if row.Key == key {
			return
		}
	}
	if measured(b) {
		b.Box.Volume = b.Box.Inside.Volume()
		b.Known["box.volume"] = b.Known["box.inside"]
	}
}

func fillRow(b *economics.Boat, row Row, book func() economics.Book) {
	switch how := b.Known[row.Key]; how {
	case quantity.Told, quantity.Measured:
		return
	case quantity.Unsure:
	default:
		if row.Group != OfFaces {
			b.Known[row.Key] = quantity.Assumed
		}
	}
	value, why := row.Default(Context{*b, book})
	row.Field(b).Put(value)
	if why == "" {
		return
	}
	if b.Known[row.Key] == quantity.Unsure {
		if rest, ok := strings.CutPrefix(why, "not answered"); ok {
			why = "you do not know" + rest
		} else {
			why = "you do not know; taken: " + why
		}
	}
	b.Assumptions = append(b.Assumptions, economics.Assumption{Key: row.Key, Label: row.Label, Value: row.Shown(b), Why: why})
}

// measured reports whether the owner gave the box's inside measures.
func measured(b *economics.Boat) bool { return b.Told("box.inside") && !b.Box.Inside.Zero() }

// Check looks at the told answers together, before Fill: what contradicts
// itself, and what is missing. It gives nil when they fit.
func Check(b economics.Boat) []Fault {
	var faults []Fault
	fault := func(key, wrong, instead string) {
		faults = append(faults, Fault{Key: key, Wrong: wrong, Instead: instead})
	}
	o := ownerOf(&b)
	is := func(key string) bool { return b.Told(key) }
	inside := measured(&b)

	for i, n := range b.Cruising.Nights {
		if n > DaysIn[i] && !(i == 1 && n <= 29) {
			fault("cruising.nights", MonthName(i+1)+" has no "+quantity.FormatNumber(n)+" nights", "Give at most "+quantity.FormatNumber(DaysIn[i]))
		}
	}
	for i, n := range b.Cruising.NightsElsewhere {
		if n > b.Cruising.Nights[i]+slack {
			fault("cruising.nights_elsewhere", "of "+quantity.FormatNumber(b.Cruising.Nights[i])+" nights aboard in "+MonthName(i+1)+", "+quantity.FormatNumber(n)+" cannot be elsewhere",
				"These nights are part of cruising.nights: give at most as many")
		}
	}
	if total := totalNights(b); is("cruising.trip_nights") && is("cruising.nights") && total > 0 && b.Cruising.TripNights > total+slack {
		fault("cruising.trip_nights", "a trip of "+quantity.FormatNumber(b.Cruising.TripNights)+" nights does not fit into "+quantity.FormatNumber(total)+" nights aboard in the year", "Give a shorter trip, or more nights")
	}
	if is("box.volume") && inside && disagree(b.Box.Volume, b.Box.Inside.Volume()) {
		fault("box.volume", "it says "+quantity.FormatVolume(b.Box.Volume, o.sys)+", but box.inside encloses "+quantity.FormatVolume(b.Box.Inside.Volume(), o.sys), "Keep only box.inside, the better of the two")
	}
	if inside {
		if v := float64(b.Box.Inside.Volume()); v < 10 || v > 1200 {
			size := map[bool]string{true: "smaller", false: "larger"}[v < 10]
			fault("box.inside", "a box of "+quantity.FormatVolume(quantity.Litre(v), o.sys)+" is "+size+" than any boat's, 10 to 1200 L", "Give its inside, such as 18 x 22 x 16 in, the unit at the end for all three")
		}
	}
	if inside && is("box.lid_opening") {
		in, lid := b.Box.Inside, b.Box.LidOpening
		long, longest := math.Max(float64(lid.Length), float64(lid.Width)), math.Max(float64(in.Length), math.Max(float64(in.Width), float64(in.Height)))
		if long > 1.2*longest {
			fault("box.lid_opening", "an opening of "+quantity.FormatDimensions(lid, o.sys)+" is longer than the box", "Give its length and width, such as 12 x 18 in")
		}
	}
	if ownGround(b) {
		for _, key := range []string{"cruising.latitude", "cruising.air_min", "cruising.air_max"} {
			if !is(key) {
				fault(key, "it is missing, and cruising.ground is own", "Give it, or name a ground from the list")
			}
		}
		if is("cruising.air_min") && is("cruising.air_max") {
			for m := range b.Cruising.AirMin {
				if b.Cruising.AirMin[m] > b.Cruising.AirMax[m] {
					fault("cruising.air_min", "the nights are warmer than the days in "+MonthName(m+1), "Give air_min of at most air_max")
					break
				}
			}
		}
	} else if is("cruising.ground") {
		if _, err := climate.Find(b.Cruising.Ground); err != nil {
			fault("cruising.ground", quantity.Quoted(b.Cruising.Ground)+" is no known cruising ground", "Give one of the list, or own")
		}
	}
	if is("ice.carry_limit") && is("ice.unit_size") && b.Ice.CarryLimit < b.Ice.UnitSize-slack {
		fault("ice.carry_limit", quantity.FormatMass(b.Ice.CarryLimit, o.sys)+" is less than one bag or block of "+quantity.FormatMass(b.Ice.UnitSize, o.sys), "Give at least one bag or block")
	}
	if is("power.max_panel") && is("power.solar") && b.Power.MaxPanelWp < b.Power.SolarWp-slack {
		fault("power.max_panel", quantity.FormatPower(b.Power.MaxPanelWp)+" is less than the "+quantity.FormatPower(b.Power.SolarWp)+" fitted", "Give at least what is fitted")
	}
	for _, unit := range []struct {
		key string
		u   economics.Unit
	}{{"units_considered.small.", b.Small}, {"units_considered.larger.", b.Larger}} {
		if is(unit.key+"chest_volume") && unit.u.ChestVolume > 0 && is(unit.key+"form") && unit.u.Form != economics.FreeStanding {
			fault(unit.key+"chest_volume", "a unit that is built in has no chest of "+quantity.FormatVolume(unit.u.ChestVolume, o.sys), "Leave it out, or give form: free_standing")
		}
		if is(unit.key+"rated_box") && unit.u.RatedBox > 0 && !is(unit.key+"rated_amps") && !is(unit.key+"rated_cooling") {
			fault(unit.key+"rated_box", "a rated box alone says little", "Give rated_amps beside it, which the brochure names for that box, or rated_cooling")
		}
	}
	return faults
}
