package economics

import (
	"fmt"
	"slices"

	"coldreckon/economics/quantity"
)

// DrinksFigures is a cooler that keeps the drinks beside any way. Nothing of it is
// in the figures of a way: it costs the same beside each.
type DrinksFigures struct {
	OpensFewer float64 // a day, that the box is opened less
	LeakW      quantity.WattPerKelvin
	IceKg      float64 // bought for it in a year, all of it: the home freezer serves the box
	IceCost    float64 // of that
	CoolShare  float64 // of days aboard on which it passes the exam at 10 °C, 0 to 1
	// Apart and Together are, in the order of Options, in how many of 100 futures
	// a way works with its work, the drinks in the cooler and in the box.
	Apart, Together [4]int
}

// A lid is opened once for each drink taken, but no more than half of all times.
// Engineering judgement, from memory.
const mostForDrinks = 0.5

// drinksApart tells whether the drinks have a cooler of their own.
func (b *Boat) drinksApart() bool { return b.Cooler.fits() && b.Cooler.For == CoolerForDrinks }

// opensForDrinks gives the openings a day that drinks take.
func (b *Boat) opensForDrinks() float64 {
	return min(b.Cruising.Crew*b.Food.DrinksADay, mostForDrinks*b.Box.OpensPerDay)
}

// opensPerDay gives the openings of the box.
func (b *Boat) opensPerDay() float64 {
	if b.drinksApart() {
		return b.Box.OpensPerDay - b.opensForDrinks()
	}
	return b.Box.OpensPerDay
}

// drinksTogether gives the boat with her drinks in the box.
func (b Boat) drinksTogether() Boat {
	b.Cooler.For = CoolerForIce
	return b
}

// weighDrinks works the drinks' cooler out over the typical years, ice bought
// where food is, and how often the ways would work with the drinks in the box.
func (r *Reckoning) weighDrinks(s *study, fitted []*proposal) error {
	out := &DrinksFigures{OpensFewer: r.Boat.opensForDrinks()}
	b := r.Boat.drinksTogether()
	b.Box = b.Cooler.box(b.Box)
	b.Box.OpensPerDay, b.Food.KgPerPersonDay, b.Food.CoolIsEnough = out.OpensFewer, 0, quantity.Yes
	b.Ice.FirstLoad, b.Ice.Runs = Bought, quantity.No
	p, err := newProposal(&b, s.book, s.world, 1, IceOnly, FitOut{})
	if err != nil {
		return fmt.Errorf("cooler: %w", err)
	}
	year := p.live(&Typical, &s.air, &s.base, nil)
	out.LeakW, out.IceKg, out.CoolShare = p.leak().Total(), year.iceBoughtKg, year.coolShare
	out.IceCost = out.IceKg * float64(b.Ice.Price)
	together := r.Boat.drinksTogether()
	with := slices.Clone(fitted)
	for i, p := range with {
		if with[i], err = newProposal(&together, s.book, s.world, s.scale, p.option, p.fit); err != nil {
			return err
		}
	}
	rows, _, err := trials(slices.Concat(fitted, with), s.part(), s.seed)
	if err != nil {
		return err
	}
	for i := range fitted {
		out.Apart[i], out.Together[i] = worksOf100(rows[i]), worksOf100(rows[len(fitted)+i])
	}
	r.Drinks = out
	return nil
}
