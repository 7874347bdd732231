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
	// Over futures, the 10th, 50th and 90th percentile: ice bought for it in a
	// year, all of it, as the home freezer serves the box; what that costs; and the
	// share of days aboard, 0 to 1, on which it passes the exam at 10 °C.
	IceKg, IceCost, CoolShare quantity.Range
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

// drinksFutures is how many futures are enough for the range of a sum so small.
const drinksFutures = 200

// weighDrinks works the drinks' cooler out over some futures, ice bought where
// food is, and how often the ways would work with the drinks in the box.
func (r *Reckoning) weighDrinks(s *study, fitted []*proposal) error {
	out := &DrinksFigures{OpensFewer: r.Boat.opensForDrinks()}
	b := r.Boat.drinksTogether()
	b.Box = b.Cooler.box(b.Box)
	b.Box.OpensPerDay, b.Food.KgPerPersonDay, b.Food.CoolIsEnough = out.OpensFewer, 0, quantity.Yes
	b.Ice.FirstLoad, b.Ice.Runs = Bought, quantity.No
	if err := out.ofFutures(s, r.Box, &b); err != nil {
		return fmt.Errorf("cooler: %w", err)
	}
	together := r.Boat.drinksTogether()
	with := slices.Clone(fitted)
	var err error
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

// ofFutures puts the cooler, told as the boat's box, to futures in which its leak
// is as uncertain as that of sound walls.
func (d *DrinksFigures) ofFutures(s *study, box BoxFigures, b *Boat) error {
	walls, err := b.Box.spec().Conductance()
	if err != nil {
		return err
	}
	c := s.ofCooler(b, box, walls)
	p, err := newProposal(b, c.book, c.world, c.scale, IceOnly, FitOut{})
	if err != nil {
		return err
	}
	futures := c.futures[:min(drinksFutures, len(c.futures))]
	years := make([]drinksYear, len(futures))
	err = parallel(len(futures), func(int) func(int) error {
		var air weatherYears
		var base baseLoads
		return func(k int) error {
			f := &futures[k]
			air.fillFuture(b, c.world, f, c.seed, k)
			base.reset()
			y := p.live(f, &air, &base, nil)
			kg := y.iceBoughtKg * f.Nights
			years[k] = drinksYear{kg, kg * float64(b.Ice.Price) * f.IcePrice, y.coolShare}
			return nil
		}
	})
	d.LeakW = walls.Total()
	d.IceKg = percentiles(years, func(y *drinksYear) float64 { return y.iceKg })
	d.IceCost = percentiles(years, func(y *drinksYear) float64 { return y.cost })
	d.CoolShare = percentiles(years, func(y *drinksYear) float64 { return y.coolShare })
	return err
}

// drinksYear is what became of the drinks' cooler in a future.
type drinksYear struct{ iceKg, cost, coolShare float64 }
