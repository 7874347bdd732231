package cost

import (
	"math"

	"coldreckon/economics/quantity"
)

// Line is one thing an option costs.
type Line struct {
	Name    string            // as printed in a cost table
	First   quantity.Money    // paid today
	Yearly  quantity.Money    // paid at the end of each year; negative when it saves
	Life    quantity.Year     // from buying to wearing out, fractions allowed; 0 when it lasts
	Used    quantity.Year     // of the first life, when the thing is there already; less than Life
	Renewal quantity.Money    // paid at the end of each life
	Resale  quantity.Fraction // of its price, got back at the end of the horizon; 0 unless the owner will sell
}

// Schedule lays the lines out over a horizon of 1 year or more and returns
// years+1 flows, built in the storage of into when that is large enough.
//
//   - first costs fall in year 0, yearly costs at the ends of years 1 to years
//   - a renewal falls at the end of the year in which its life runs out: a life
//     of 2.5 years is renewed in years 3, 5, 8, 10
//   - nothing is renewed in the last year, for its owner has no more use of it
//   - what is left in the last year: of a thing bought first, Resale of its
//     price; of a renewal, its unused years as a straight line, or Resale of it,
//     whichever is more, so that one year more never costs a whole renewal;
//     of what is worn out by then, nothing
//
// NIST Handbook 135 and ASTM E917, from memory; they credit unused years of
// first costs, too, which a boat's buyer hardly pays for.
func Schedule(lines []Line, years int, into Flows) Flows {
	flows := blank(years, into)
	for i := range lines {
		lines[i].enter(flows, flows)
	}
	return flows
}

// blank gives flows of nothing, in the storage of into when it suffices.
func blank(years int, into Flows) Flows {
	if cap(into) < years+1 {
		return make(Flows, years+1)
	}
	into = into[:years+1]
	clear(into)
	return into
}

// enter adds the line to two flows of equal length: what is paid to have the
// thing and what is paid to run it. Both may be the same flow.
func (l *Line) enter(owning, running Flows) {
	last := len(owning) - 1
	owning[0] += l.First
	for year := 1; year <= last; year++ {
		running[year] += l.Yearly
		if l.Life > 0 && year < last {
			owning[year] += l.Renewal * quantity.Money(l.wornOut(year)-l.wornOut(year-1))
		}
	}
	owning[last] -= l.residual(last)
}

// residual is what the line leaves at the end of the horizon.
func (l *Line) residual(years int) quantity.Money {
	renewals := 0.0
	if l.Life > 0 && years > 0 {
		renewals = l.wornOut(years - 1)
	}
	if l.Life > 0 && l.wornOut(years) > renewals {
		return 0
	}
	if renewals == 0 {
		return quantity.Money(l.Resale) * l.First
	}
	// All lives bought so far end at this age.
	end := (renewals+1)*float64(l.Life) - float64(l.Used)
	unused := min(1, max(0, (end-float64(years))/float64(l.Life)))
	return l.Renewal * quantity.Money(max(unused, float64(l.Resale)))
}

// wornOut counts the lives that have run out by the end of a year. The small
// addition keeps a life such as 0.1 year, which binary cannot hold exactly,
// from running out a year late.
func (l *Line) wornOut(year int) float64 {
	return math.Floor((float64(year)+float64(l.Used))/float64(l.Life) + 1e-9)
}
