package economics

import (
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Kind is the type of a fact's value.
type Kind string

// The kinds, and the Go type each stands for in Facts.
const (
	Number Kind = "number" // float64, always finite
	Truth  Kind = "truth"  // bool
	Word   Kind = "word"   // string, one of a fixed set
)

// Fact documents one name that rules and price-book quantities may use.
type Fact struct {
	Name string
	Kind Kind
	Unit string // of a Number; the fixed set of a Word
	Doc  string

	standing func(*subject) any                 // nil unless it is known before any year
	ofYear   func(s *subject, y *aYear) float64 // nil unless it comes of an average year
}

// Standing tells whether the fact is known before any year, and changes in none.
func (f Fact) Standing() bool { return f.standing != nil }

// Vocabulary lists every fact, in the order of the reference page. One set of
// facts describes one option, as told or fitted. The list must not be changed.
func Vocabulary() []Fact { return vocabulary[:] }

// numberFact is a row of a figure that stands before any year is lived through.
func numberFact(name, unit, doc string, of func(*subject) float64) Fact {
	return Fact{Name: name, Kind: Number, Unit: unit, Doc: doc, standing: func(s *subject) any { return of(s) }}
}

// wordFact is such a row of a word out of a set, written with spaces between.
func wordFact(name, set, doc string, of func(*subject) string) Fact {
	return Fact{Name: name, Kind: Word, Unit: set, Doc: doc, standing: func(s *subject) any { return of(s) }}
}

// truthFact is such a row of a yes or no.
func truthFact(name, doc string, of func(*subject) bool) Fact {
	return Fact{Name: name, Kind: Truth, Doc: doc, standing: func(s *subject) any { return of(s) }}
}

// ofYear is a row of a figure of an average year.
func ofYear(name, unit, doc string, of func(*subject, *aYear) float64) Fact {
	return Fact{Name: name, Kind: Number, Unit: unit, Doc: doc, ofYear: of}
}

// ofBill is the row of firstCostFact, which is known once the bill is made up.
func ofBill(name, unit, doc string) Fact {
	return Fact{Name: name, Kind: Number, Unit: unit, Doc: doc}
}

// firstCostFact is missing while price lines are counted: none may ask for it.
const firstCostFact = "first_cost"

// subject is what facts are stated of: a proposal and what holds in the hottest
// month aboard.
type subject struct {
	*proposal
	steady *steady
}

// stand sets the facts that are known before any year is lived through.
func (s *subject) stand(facts Facts) {
	for i := range vocabulary {
		if of := vocabulary[i].standing; of != nil {
			facts[vocabulary[i].Name] = of(s)
		}
	}
}

// lived sets the facts of an average year.
func (s *subject) lived(facts Facts, y *aYear) {
	for i := range vocabulary {
		if of := vocabulary[i].ofYear; of != nil {
			facts[vocabulary[i].Name] = of(s, y)
		}
	}
}

// ofUnit reads a word off the unit, "none" where there is none.
func (s *subject) ofUnit(read func(*Unit) string) string {
	if s.unit == nil {
		return "none"
	}
	return read(s.unit)
}

// kWh gives the energy of a battery at the system's voltage.
func (s *subject) kWh(battery quantity.AmpHour) float64 {
	return float64(battery*quantity.AmpHour(s.boat.Power.Volts)) / 1000
}

// cableDropShare gives the part of the system's voltage lost on the way to the
// unit; 0 without a unit or with a cable that is not known.
func (s *subject) cableDropShare() float64 {
	run, size := s.boat.Power.CableRun, s.boat.Power.CableSize
	if s.unit == nil || !s.boat.Told("power.cable_run") || size <= 0 {
		return 0
	}
	return s.steady.cableDropShare(run, size, s.boat.Power.Volts)
}

// iceGapDays gives the days between stops that sell ice, the whole trip when none does.
func (p *proposal) iceGapDays() float64 {
	c := p.boat.Cruising
	if p.boat.Ice.FoundAtStops <= 0 {
		return c.TripNights
	}
	return min(c.TripNights, c.ShopEveryDays/float64(p.boat.Ice.FoundAtStops))
}

// foamOutsideM2 gives the area of foam that is put in from outside.
func (p *proposal) foamOutsideM2() (m2 float64) {
	if p.freeStanding() {
		return 0
	}
	box := p.boat.Box
	if p.fit.OutsideFoam > 0 {
		m2 = box.AreaM2(box.Reached(FromOutside))
	}
	if lid := box.LidSide(); p.fit.LidFoam > 0 && box.Faces[lid].Reach == FromOutside {
		m2 += box.AreaM2([]heat.Side{lid})
	}
	return m2
}

// iceCapacityKg gives the ice that the box holds.
func (p *proposal) iceCapacityKg() float64 {
	kg, err := heat.CapacityKg(quantity.Litre(p.volumeL), p.iceShare(), p.boat.Ice.Kind)
	if err != nil {
		return 0
	}
	return float64(kg)
}
