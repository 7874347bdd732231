package economics

import (
	"math"

	"coldreckon/economics/cost"
	"coldreckon/economics/quantity"
)

// unseenStops is how often a unit stops with food aboard and nobody looks, a year
// of nights aboard: a fuse, a contact, a thermostat, a plug pulled ashore. A
// battery that runs down is not among them, as the season sees it.
var unseenStops = quantity.Range{Low: 1.0 / 30, Typical: 1.0 / 8, High: 1.0 / 3}

const unseenStopsSource = "engineering judgement, from memory; at the low end as rarely as a household refrigerator without ice maker is repaired, 8 in 100 in three years (Consumer Reports, survey of 2006)"

// seenSpoils is the part of the food that spoils all the same when an alarm
// tells of a stop: it sounds at night, or with nobody aboard. Engineering
// judgement, from memory.
const seenSpoils = 0.25

// betweenStops is the time from one such stop to the next, years of nights aboard.
func betweenStops() quantity.Range {
	return quantity.Range{Low: 1 / unseenStops.High, Typical: 1 / unseenStops.Typical, High: 1 / unseenStops.Low}
}

// stopsPerYear gives the unseen stops of an average year, typical.
func (p *proposal) stopsPerYear() float64 {
	if p.unit == nil {
		return 0
	}
	return unseenStops.Typical * float64(len(p.world.plan.Nights)) / 365
}

// stopSpoils gives the part of the chilled food aboard that a stop spoils.
func (p *proposal) stopSpoils() float64 {
	if p.fit.Alarm || p.boat.Box.Alarm == quantity.Yes {
		return seenSpoils
	}
	return 1
}

// addAlarm adds a thermometer with an alarm to a fit where that lowers the mean
// present cost. It moves no heat and no electricity: chosen after all else, it is
// chosen as well as if the search had tried each fit-out with and without it.
func (s *searcher) addAlarm(fit *Fit) {
	b := s.boat
	if b.unit(s.option) == nil || b.Box.Alarm == quantity.Yes {
		return
	}
	without, err := newProposal(b, s.book, s.world, s.leakScale, s.option, fit.Out)
	if err != nil {
		s.failed = err
		return
	}
	with := *without
	with.fit.Alarm = true
	priced := s.pricer()
	more := priced(&with).minus(priced(without)).present
	if more >= 0 || s.failed != nil {
		return
	}
	works := int(math.Round(100 * fit.SearchWorks))
	fit.Out, fit.Items = with.fit, append(fit.Items, FitItem{Piece: AlarmPiece, Size: 1, WithoutWorksOf100: works, WithoutPresent: -more})
	fit.SearchPresent += more
	fit.LeastPresent += more
}

// Alarm is what stops that nobody sees cost a boat with a unit, and what a
// thermometer with an alarm does about it. Money is the owner's; the yearly
// figures are those of the typical future, Low and High with stops as rare and as
// frequent as in one of ten.
type Alarm struct {
	Aboard       bool           // an alarm is there: Lost is less for it, Saved nothing
	YearsBetween quantity.Range // from one such stop to the next, counting nights aboard only
	StopsPerYear quantity.Range // in the nights aboard
	FoodKg       float64        // chilled food aboard when it stops, the mean
	Lost, Saved  quantity.Range // a year, without an alarm that is not aboard, and by one
	Price        quantity.Range
	PricePerYear float64 // the typical price, renewals included, as an even sum at each year's end
}

// Alarm works it out; false where no food must be kept cold, and with a book
// that prices neither an alarm nor such stops.
func (r *Reckoning) Alarm(book Book) (Alarm, bool) {
	b := &r.Boat
	line, known := book.Price("alarm")
	food, valued := book.Price(lineStops)
	nights := 0
	for _, m := range r.Months {
		nights += m.Nights
	}
	a := Alarm{Aboard: b.Box.Alarm == quantity.Yes, FoodKg: b.perishablesKg(), Price: line.Price}
	if !known || !valued || a.FoodKg <= 0 || nights == 0 {
		return Alarm{}, false
	}
	a.YearsBetween = betweenStops()
	a.StopsPerYear = unseenStops.Scale(float64(nights) / 365)
	a.Lost = a.StopsPerYear.Scale(a.FoodKg * food.Price.Typical)
	if a.Aboard {
		a.Lost = a.Lost.Scale(seenSpoils)
	} else {
		a.Saved = a.Lost.Scale(1 - seenSpoils)
	}
	bought := cost.Line{First: quantity.Money(a.Price.Typical), Renewal: quantity.Money(a.Price.Typical), Life: quantity.Year(line.Life.Typical)}
	flows := cost.Schedule([]cost.Line{bought}, int(b.Money.Years), nil)
	a.PricePerYear = float64(flows.YearlyEquivalent(cost.Rate(b.Money.Discount)))
	return a, true
}
