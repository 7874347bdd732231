package report

import (
	"fmt"
	"math"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// plane is the part of nights and ice prices that the boundary is drawn in.
type plane struct {
	nights, price float64 // upper ends; the lower are 0
	at            func(nights, price float64) (economics.OptionID, bool)
}

const planeSteps = 60

// boundary draws where the cheapest way turns over nights and ice price; false
// when there is nothing to compare.
func (a author) boundary() (layout.Picture, bool) {
	price := float64(a.r.Boat.Ice.Price)
	if !a.aboard() || price <= 0 {
		return layout.Picture{}, false
	}
	p := plane{nights: math.Min(365, math.Max(60, 2*a.v.Nights())), price: 3 * price, at: a.r.WinnerAt}
	winner, ok := p.at(a.v.Nights(), price)
	if !ok {
		return layout.Picture{}, false
	}
	byMoneyAlone := ""
	if a.r.Verdict.ByWorth { // which the plane leaves out
		byMoneyAlone = " by money alone"
	}
	each := 1.0
	per := "kg"
	if a.r.Boat.Units == quantity.US {
		each, per = float64(quantity.Pound), "lb"
	}
	c := chart.Boundary{
		Head:   chart.Head{Name: "where the answer turns", Caption: "Cheapest way that works" + byMoneyAlone + ", with the work, at typical figures"},
		Across: chart.Axis{Label: "Nights aboard a year", High: p.nights},
		Up: chart.Axis{Label: "Price of ice, " + a.r.Boat.Currency + " a " + per, High: p.price * each,
			Say: func(v float64) string { return quantity.FormatMoney(quantity.Money(v), a.r.Boat.Currency) }},
		Boat: chart.Place{Label: a.r.Boat.Name, Across: a.v.Nights(), Up: price * each},
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Nights a year"}, {Head: "Ice price where it turns"}, {Head: "Below it"}, {Head: "Above it"}}}
	for _, line := range p.lines() {
		edge := chart.Edge{Label: fmt.Sprintf("%s and %s cost the same", words.Name(line.below), words.In(line.above))}
		for _, pt := range line.points {
			edge.Points = append(edge.Points, chart.Place{Across: pt[0], Up: pt[1] * each})
		}
		c.Lines = append(c.Lines, edge)
	}
	for _, r := range p.regions() {
		c.Regions = append(c.Regions, chart.Place{Label: words.Name(r.winner), Across: r.nights, Up: r.price * each})
	}
	// Half the nights, as told, and twice as many, as far as the plane goes.
	for _, n := range []float64{a.v.Nights() / 2, a.v.Nights(), min(p.nights, 2*a.v.Nights())} {
		if len(t.Rows) == 2 && n == a.v.Nights() {
			continue
		}
		low, _ := p.at(n, 0)
		high, _ := p.at(n, p.price)
		turns := "nowhere up to " + quantity.FormatPricePerMass(quantity.MoneyPerKg(p.price), a.r.Boat.Currency, a.r.Boat.Units)
		if x, found := p.turnAt(n); found {
			turns = quantity.FormatPricePerMass(quantity.MoneyPerKg(x), a.r.Boat.Currency, a.r.Boat.Units)
		}
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%.0f", n), turns, words.Name(low), words.Name(high)})
	}
	c.Caption += a.otherNights(price)
	c.Finding = a.v.TurnsWhere(winner, len(c.Lines) > 0)
	return layout.Picture{Headed: true, Finding: c.Finding, Caption: c.Caption, Least: func(w float64) float64 { return leastAt(w, c.Draw, a.last(70)) }, Draw: c.Draw, Table: t}, true
}

// otherNights says which way is cheapest at half the nights, and at twice.
func (a author) otherNights(price float64) string {
	text := ""
	for _, n := range []float64{a.v.Nights() / 2, 2 * a.v.Nights()} {
		if id, ok := a.r.WinnerAt(n, price); ok && n >= 1 && n <= 365 {
			text += fmt.Sprintf("; at %.0f nights %s", n, words.In(id))
		}
	}
	return text
}

// edgeLine is a run of points, nights and price, with one pair of options on
// its sides: above a curve or to the right of an upright line, and below.
type edgeLine struct {
	below, above economics.OptionID
	points       [][2]float64
}

// turnAt finds the ice price at which the winner of a column changes. Only
// the cost of ice depends on it, so a column has one change at most.
func (p plane) turnAt(nights float64) (price float64, ok bool) {
	low, okLow := p.at(nights, 0)
	high, okHigh := p.at(nights, p.price)
	if !okLow || !okHigh || low == high {
		return 0, false
	}
	from, to := 0.0, p.price
	for range 40 {
		mid := (from + to) / 2
		if id, _ := p.at(nights, mid); id == low {
			from = mid
		} else {
			to = mid
		}
	}
	return from, true
}

// lines gives the edges between the winners: curves where ice gives way to
// another, and uprights where two ways without bought ice change places.
func (p plane) lines() []edgeLine {
	var out []edgeLine
	var before economics.OptionID
	open := -1 // the curve being drawn
	for i := 0; i <= planeSteps; i++ {
		n := p.nights * float64(i) / planeSteps
		low, _ := p.at(n, 0)
		high, _ := p.at(n, p.price)
		if i > 0 && high != before && before != economics.IceOnly && high != economics.IceOnly {
			x := p.changeBetween(n-p.nights/planeSteps, n)
			foot, _ := p.turnAt(x)
			out = append(out, edgeLine{before, high, [][2]float64{{x, foot}, {x, p.price}}})
			open = -1
		}
		before = high
		price, ok := p.turnAt(n)
		if !ok {
			open = -1
			continue
		}
		if open < 0 || out[open].above != high {
			out = append(out, edgeLine{low, high, nil})
			open = len(out) - 1
		}
		out[open].points = append(out[open].points, [2]float64{n, price})
	}
	kept := out[:0]
	for _, l := range out {
		if len(l.points) > 1 && len(kept) < 4 {
			kept = append(kept, l)
		}
	}
	return kept
}

// changeBetween finds the nights at which the winner at the dearest ice changes.
func (p plane) changeBetween(from, to float64) float64 {
	first, _ := p.at(from, p.price)
	for range 40 {
		mid := (from + to) / 2
		if id, _ := p.at(mid, p.price); id == first {
			from = mid
		} else {
			to = mid
		}
	}
	return from
}

// region is the part of the plane that one option wins, by its middle.
type region struct {
	winner        economics.OptionID
	nights, price float64
}

// regions gives the parts that cover more than a hundredth of the plane.
func (p plane) regions() []region {
	var count [4]float64
	var sum [4]region
	for i := 1; i < planeSteps; i++ {
		for k := 1; k < planeSteps; k++ {
			n, price := p.nights*float64(i)/planeSteps, p.price*float64(k)/planeSteps
			if id, ok := p.at(n, price); ok {
				o := index(id)
				count[o]++
				sum[o].nights += n
				sum[o].price += price
			}
		}
	}
	var out []region
	for o, n := range count {
		if n > planeSteps*planeSteps/100 {
			out = append(out, region{economics.Options[o], sum[o].nights / n, sum[o].price / n})
		}
	}
	return out
}
