package words

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Cooler sets ice in a thick-walled cooler beside ice in the box, a sentence or
// two each; none where the boat has no place for one or nobody said.
func (v Voice) Cooler() []string {
	c := v.r.Cooler
	if c == nil {
		return nil
	}
	b, ice := &v.r.Boat, v.r.Of(economics.IceOnly)
	place := "in the cabin"
	if b.Cooler.Stands == economics.CoolerOnDeck {
		place = "on deck or in the cockpit"
	}
	out := []string{fmt.Sprintf("Ice in a cooler of %s with walls of %s, %s, instead of in the box: it is bought for %s and needs no fitting. It leaks %s; the box leaks %s.",
		v.Volume(float64(b.Cooler.Volume)), v.Length(1000*float64(b.Cooler.Wall)), place, v.Money(float64(b.Cooler.Price)), v.leak(float64(c.LeakW)), v.leak(float64(v.r.Box.Leak)))}
	out = append(out, fmt.Sprintf("Filled, it holds %s of ice, which lasts %s in the hottest month aboard. The box as she is holds %s, which lasts %s.",
		v.Mass(c.LoadKg), lasts(c.LastsDays), v.Mass(c.BoxLoadKg), lasts(c.BoxLastsDays)))
	text := fmt.Sprintf("Ice in the cooler keeps the food %s as often as you want in %s futures", v.ColdOrCool(), of100(c.Ice.WorksOf100))
	if c.Ice.Fitted.Fails(economics.Room) {
		text = "All the food does not go into the cooler, so it is a second box for drinks"
	}
	text += fmt.Sprintf("; ice in the box, with its work, in %s.", of100(ice.WorksOf100))
	if habits := Join(v.pieces(c.Ice.Fit.Items)); habits != "" {
		text += " That is with " + habits + "."
	}
	out = append(out, text)
	return append(out, fmt.Sprintf("Spread evenly over %s, ice costs about %s a year with the cooler and about %s with the box.",
		v.years(), v.Money(c.Ice.Fitted.Yearly), v.Money(ice.Fitted.Yearly)))
}

// Drinks says what a cooler for the drinks takes out of the box, and what it costs
// beside whatever way; none where they are in the box.
func (v Voice) Drinks() []string {
	d := v.r.Drinks
	if d == nil {
		return nil
	}
	c := &v.r.Boat.Cooler
	out := []string{
		fmt.Sprintf("The drinks are in a cooler of %s beside the box, whichever way you choose: the box holds none, and is opened about %s times a day less.",
			v.Volume(float64(c.Volume)), quantity.FormatNumber(Round(d.OpensFewer))),
		fmt.Sprintf("The cooler costs %s. It takes %s (%s) of ice a year, bought where food is, for %s. Neither is in the figures of the ways. It keeps the drinks cool on %s of days.",
			v.Money(float64(c.Price)), v.Mass(d.IceKg.Typical), quantity.Span(v.Mass(d.IceKg.Low), v.Mass(d.IceKg.High)), v.about(d.IceCost), coolDays(d.CoolShare)),
	}
	if d.CoolShare.Typical < 0.5 {
		out[1] += " On the others they are warm, and the money for the ice is spent all the same."
	}
	for i, id := range economics.Options {
		if id != economics.DryStores {
			out = append(out, fmt.Sprintf("%s works so in %s futures; with the drinks in the box and the same work, in %d.", the(id), of100(d.Apart[i]), d.Together[i]))
		}
	}
	return out
}

// coolDays says a share of days: "93 % (84 to 97)", or "93 %" where all are alike.
func coolDays(share quantity.Range) string {
	low, high := share100(share.Low), share100(share.High)
	if low == high {
		return fmt.Sprintf("%d %%", low)
	}
	return fmt.Sprintf("%d %% (%d to %d)", share100(share.Typical), low, high)
}

// DrinksCost says in a line what the drinks' cooler costs on top of any way;
// empty where there is none.
func (v Voice) DrinksCost() string {
	if v.r.Drinks == nil {
		return ""
	}
	text := fmt.Sprintf("On top of any way comes the drinks' own cooler: %s, and about %s a year for its ice", v.Money(float64(v.r.Boat.Cooler.Price)), v.about(v.r.Drinks.IceCost))
	if cool := v.r.Drinks.CoolShare; cool.Typical < 0.5 {
		text += fmt.Sprintf(", which keeps them cool on only %s of days", coolDays(cool))
	}
	return text + "."
}

// Chest sets a free-standing chest beside the built-in small unit; empty where the
// boat has no place for one or nobody said.
func (v Voice) Chest() string {
	c := v.r.Chest
	if c == nil {
		return ""
	}
	litres, _ := c.Fitted.Facts["box_volume_l"].(float64)
	if c.Fitted.Fails(economics.Room) {
		return fmt.Sprintf("A free-standing chest of %s instead of the built-in unit has no room for all the food.", v.Volume(litres))
	}
	unit := v.r.Of(economics.SmallUnit)
	return fmt.Sprintf("A free-standing chest of %s instead of the built-in unit costs %s at first and works in %s futures, at %s a %s day, its place not counted; the built-in one in %d, at %s.",
		v.Volume(litres), v.Money(c.Fitted.First), of100(c.WorksOf100), v.Price(c.PriceOfCold.Typical), v.ColdOrCool(), unit.WorksOf100, v.Price(unit.PriceOfCold.Typical))
}

// lasts prints how long a load lasts.
func lasts(days float64) string {
	switch {
	case math.IsInf(days, 1):
		return "three weeks or more"
	case days < 1.5:
		return quantity.FormatHours(math.Round(24 * days))
	}
	return strings.TrimSuffix(fmt.Sprintf("%.1f", days), ".0") + " days"
}
