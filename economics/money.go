package economics

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/economics/cost"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// CostLine is one line of an option's cost table. Money is the owner's, in
// today's prices; a line without a kind of payment has 0 there.
type CostLine struct {
	ID     string  // of the price-book line, or of the model's own
	Label  string  // as printed
	First  float64 // paid today
	Yearly float64 // paid at each year's end
	Life   float64 // years between renewals; 0 when it lasts
	Used   float64 // years of the first life that are over
	Renew  float64 // paid at each renewal
	// Resale is the share of First, and of Renew, that is seen again at the end
	// when the owner sells, 0 to 1.
	Resale float64
	Unit   string  // of Count, as the price book has it
	Count  float64 // units bought, or used a year
	// Hours of own hands' work; 0 where a yard does it or it takes none to speak of.
	Hours quantity.Range
}

// Lines that the models bill themselves, from the owner's answers.
const (
	lineUnit    = "unit"
	lineFitting = "fitting"
	lineUpkeep  = "upkeep"
	lineIce     = "ice"
	lineErrand  = "ice_errands"
	lineStops   = "unseen_stops" // a line of the price book, as often as a future has it
	lineDry     = "dry_premium"  // a line of the price book, at the owner's price
	lineLead    = "battery_lead" // lines of the price book for batteries that are added
	lineLithium = "battery_lithium"
)

// keptUsed is the part of its life that a unit already aboard has behind it.
// Engineering judgement, from memory.
const keptUsed = 0.5

// keepsFitted tells whether the small unit is the one that is fitted and works:
// nothing is bought until it wears out. A free-standing chest is another thing.
func (p *proposal) keepsFitted() bool {
	return p.option == SmallUnit && p.boat.Box.FittedUnit == UnitWorks && !p.freeStanding() && p.quoted == nil
}

// factor gives the part of a future that moves a price-book line.
func (f *Future) factor(id string) float64 {
	switch id {
	case lineDry:
		return 1 // the owner's own taste, which no future changes
	case "spoilage":
		return f.Spoilage
	case lineStops:
		return f.Stops
	}
	return f.Materials
}

// costLines bills a proposal for an average year of a future, after the lines
// there are.
//
// Prices are real and in the owner's currency. A worn-out unit is replaced at
// its price; its wiring, fuse and vent stay. What everybody eats is common to
// all options, so only differences are billed.
//
// counts holds what the book's lines count that no year changes, NaN where that
// has not been worked out.
func (p *proposal) costLines(lines []CostLine, f *Future, y *aYear, facts Facts, counts []float64) ([]CostLine, error) {
	b := p.boat
	seen := 0.0
	if b.Money.WillSell == quantity.Yes {
		seen = p.book.typical("seen_at_sale", 0)
	}
	if p.unit != nil {
		price := float64(p.unit.Price) * f.Unit
		fitting := float64(p.unit.Fitting) * f.Fitting
		renew, used := price, 0.0
		if p.quoted != nil {
			price, fitting, renew = p.quotedPrices(f, fitting)
			used = max(0, min(float64(p.quoted.Age), float64(p.unit.Life)*f.Life-leastLeft))
		}
		if p.freeStanding() || p.keepsFitted() {
			fitting = 0 // there is none, or it was paid long ago
		}
		life := float64(p.unit.Life) * f.Life
		if p.keepsFitted() {
			lines = append(lines, CostLine{ID: lineUnit, Label: "The unit fitted now, and its successor", Unit: "each", Count: 1,
				Life: life, Used: keptUsed * life, Renew: price, Resale: seen})
		} else {
			lines = append(lines, CostLine{ID: lineUnit, Label: "The unit", First: price, Unit: "each", Count: 1,
				Life: life, Used: used, Renew: renew, Resale: seen})
			if !p.freeStanding() {
				lines = append(lines, CostLine{ID: lineFitting, Label: "Fitting it", First: fitting, Resale: seen, Unit: "each", Count: 1, Hours: p.fittingHours()})
			}
		}
		lines = append(lines, CostLine{ID: lineUpkeep, Label: "Upkeep", Yearly: float64(p.unit.Upkeep) * f.Upkeep, Unit: "year", Count: 1})
	}
	if p.option == IceOnly {
		kg := y.iceBoughtKg * f.Nights
		lines = append(lines,
			CostLine{ID: lineIce, Label: "Ice", Yearly: kg * float64(b.Ice.Price) * f.IcePrice, Unit: "kg", Count: kg},
			CostLine{ID: lineErrand, Label: "Fetching ice", Yearly: y.errands * f.Nights * float64(b.Ice.TripCost) * f.Errand, Unit: "errand", Count: y.errands * f.Nights})
	}
	for i := range p.book.Prices {
		line := &p.book.Prices[i]
		if line.Quantity == nil || line.Billing == Rate || !slices.Contains(line.Options, p.option) {
			continue
		}
		count := counts[i]
		if math.IsNaN(count) {
			var err error
			if count, err = line.Quantity.Number(facts); err != nil {
				return nil, fmt.Errorf("price line %s: %w", line.ID, err)
			}
			if line.Standing {
				counts[i] = count
			}
		}
		if count == 0 {
			continue
		}
		lines = append(lines, p.bookLine(line, count, f, y))
	}
	return lines, nil
}

// quotedPrices gives what a quoted unit costs, its fitting, and the unit that
// follows it: a second-hand one is followed by a new one of the usual price. A
// quoted sum stands in every future.
func (p *proposal) quotedPrices(f *Future, usualFitting float64) (price, fitting, renew float64) {
	price, fitting = float64(p.quoted.Price), usualFitting
	if p.quoted.FittingQuoted {
		fitting = float64(p.unit.Fitting)
	}
	renew = price
	if p.quoted.Age > 0 {
		renew = float64(p.quoted.UsualPrice) * f.Unit
	}
	return price, fitting, renew
}

// bookLine bills so many units of a price-book line.
func (p *proposal) bookLine(line *PriceLine, count float64, f *Future, y *aYear) CostLine {
	factor := f.factor(line.ID)
	if line.Work && p.boat.Money.FittedBy == Yard {
		factor *= p.book.typical("yard_factor", 2)
	}
	if line.Billing == Yearly {
		count *= f.Nights
	}
	price := line.Price.Typical
	if line.ID == lineDry {
		price = float64(p.boat.Food.DryPremium)
	}
	sum := count * price * factor
	out := CostLine{ID: line.ID, Label: line.Label, Unit: line.Unit, Count: count}
	if p.boat.Money.FittedBy == Self {
		out.Hours = line.Hours.Scale(count)
	}
	switch line.Billing {
	case Once:
		out.First = sum
	case Renewed:
		out.First, out.Renew, out.Life = sum, sum, p.lifeOf(line, y)
	case Yearly:
		out.Yearly = sum
	}
	return out
}

// fittingHours gives the hours that fitting the unit takes own hands.
func (p *proposal) fittingHours() quantity.Range {
	line, ok := p.book.Price(string(p.option) + "_fitting_self")
	if !ok || p.boat.Money.FittedBy != Self {
		return quantity.Range{}
	}
	return line.Hours
}

// lifeOf gives the years between a line's renewals. A battery that is added
// lasts for its calendar life or its cycles, whichever end first.
func (p *proposal) lifeOf(line *PriceLine, y *aYear) float64 {
	life := line.Life.Typical
	if line.ID != lineLead && line.ID != lineLithium || y.addedWearKWh <= 0 {
		return life
	}
	pw := p.boat.Power
	usableKWh := float64(energy.Bank{Nominal: p.fit.Battery, Volts: pw.Volts, Chemistry: pw.Chemistry}.Store().FullWh) / 1000
	return min(life, cycleLife(pw.Chemistry)*usableKWh/y.addedWearKWh)
}

// cycleLife gives the cycles of its usable share that a bank lasts: the price
// book's wear lines are worked out with the same. From memory.
func cycleLife(c energy.Chemistry) float64 {
	if c == energy.Lithium {
		return 3500
	}
	return 600
}

// Ledger enters cost lines after those there are.
func Ledger(lines []CostLine, into []cost.Line) []cost.Line {
	for i := range lines {
		l := &lines[i]
		into = append(into, cost.Line{
			Name: l.Label, First: quantity.Money(l.First), Yearly: quantity.Money(l.Yearly),
			Life: quantity.Year(l.Life), Used: quantity.Year(l.Used), Renewal: quantity.Money(l.Renew), Resale: quantity.Fraction(l.Resale),
		})
	}
	return into
}

// firstCost adds up what is paid today.
func firstCost(lines []CostLine) float64 {
	var sum float64
	for _, l := range lines {
		sum += l.First
	}
	return sum
}

// perYear adds up what each year costs, renewals left out.
func perYear(lines []CostLine) float64 {
	var sum float64
	for _, l := range lines {
		sum += l.Yearly
	}
	return sum
}
