package report

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// everything is the wanderer with all told that adds a line or a stop to a page.
func everything() economics.Boat {
	b := wanderer()
	b.Cruising.ShopEveryDays, b.Cruising.ShorePowerShare = 6, 0
	b.Box.SpacerFits, b.Box.ChestFits, b.Box.OpensPerDay = quantity.Yes, quantity.Yes, 16
	aft := b.Box.Faces[heat.Aft]
	aft.Neighbour = heat.Engine
	b.Box.Faces[heat.Aft] = aft
	b.Food.DrinksADay, b.Food.MustBeColdShare, b.Food.Medicine, b.Food.Vulnerable, b.Food.Freeze = 3, 0.5, quantity.Yes, quantity.Yes, economics.FreezesCubes
	b.Cooler = economics.Cooler{Stands: economics.CoolerOnDeck, For: economics.CoolerForDrinks, Volume: 45, Wall: 0.045, Price: 160}
	b.Money.Budget = 900
	b.Safety = economics.Safety{FuelVapourSpace: quantity.Yes, COAlarm: quantity.No, Lithium: quantity.Yes, DrainTo: economics.ToBilge, Children: quantity.Yes,
		LatchOpensInside: quantity.No, DryIce: quantity.Yes, Fish: quantity.Yes, Eggs: economics.UnknownEggs, WiringKnown: quantity.No, LeftUnattended: quantity.Yes}
	return b
}

// toldInFull are boats of which everything is told, that lead to each way and
// to each kind of headline.
var toldInFull = map[string]func(*economics.Boat){
	"all stops":         func(*economics.Boat) {},
	"no fuel vapour":    func(b *economics.Boat) { b.Safety.FuelVapourSpace = quantity.No },
	"nothing answered":  func(b *economics.Boat) { b.Safety = weekender().Safety },
	"a yard does it":    func(b *economics.Boat) { b.Money.FittedBy, b.Safety.FuelVapourSpace = economics.Yard, quantity.Unknown },
	"a unit that works": func(b *economics.Boat) { b.Box.FittedUnit, b.Safety.FuelVapourSpace = economics.UnitWorks, quantity.No },
	"worth told": func(b *economics.Boat) {
		b.Money.ColdDayWorth, b.Money.ColdDayWorthTo, b.Food.Medicine, b.Safety.FuelVapourSpace = 2, 6, quantity.No, quantity.No
		b.Known = maps.Clone(b.Known)
		b.Known["money.cold_day_worth"] = quantity.Told
	},
	"a chest": func(b *economics.Boat) {
		b.Small.Form, b.Small.ChestVolume, b.Safety.FuelVapourSpace = economics.FreeStanding, 45, quantity.No
	},
	"ice leads": func(b *economics.Boat) {
		b.Cruising.Ground, b.Cruising.Elsewhere, b.Cruising.Nights, b.Cruising.NightsElsewhere = "maine-coast", "", [12]float64{5: 6, 6: 12, 7: 12}, [12]float64{}
		b.Ice.Price, b.Ice.FoundAtStops, b.Cruising.ShopEveryDays, b.Cruising.TripNights, b.Food.Medicine = 0.2, 1, 2, 2, quantity.No
	},
	"ice, and nobody at risk": func(b *economics.Boat) {
		b.Cruising.Ground, b.Cruising.Elsewhere, b.Cruising.Nights, b.Cruising.NightsElsewhere = "maine-coast", "", [12]float64{5: 6, 6: 12, 7: 12}, [12]float64{}
		b.Ice.Price, b.Ice.FoundAtStops, b.Cruising.ShopEveryDays, b.Cruising.TripNights, b.Food.Medicine, b.Food.Vulnerable = 0.2, 1, 2, 2, quantity.No, quantity.No
		b.Food.Freeze, b.Cooler.For, b.Ice.Runs = economics.FreezesMeals, economics.CoolerForIce, quantity.Yes
	},
	"a year aboard": func(b *economics.Boat) {
		b.Cruising.Nights, b.Cruising.TripNights, b.Power.EngineHoursPerDay = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}, 365, 0
	},
	"two hands cruise": func(b *economics.Boat) {
		b.Cruising.Crew, b.Food.DrinksADay, b.Box.VoidVolume, b.Money.Budget, b.Power.Chemistry = 2, 1, 0, 4000, energy.Lithium
	},
	"prices of thousands": func(b *economics.Boat) {
		b.Currency, b.Small.Price, b.Larger.Price, b.Ice.Price, b.Safety.FuelVapourSpace = "EUR", 13_400, 27_600, 44, quantity.No
	},
	"prices of thousands, much of the year": func(b *economics.Boat) {
		b.Currency, b.Small.Price, b.Larger.Price, b.Ice.Price, b.Safety.FuelVapourSpace = "EUR", 13_400, 27_600, 44, quantity.No
		b.Cruising.Nights = [12]float64{31, 28, 20, 0, 0, 20, 24, 20, 10, 0, 0, 20}
		b.Cruising.NightsElsewhere = [12]float64{31, 28, 20, 0, 0, 0, 0, 0, 0, 0, 0, 20}
	},
	"long prices where it may not stand": func(b *economics.Boat) {
		b.Currency, b.Small.Price, b.Larger.Price, b.Ice.Price, b.Cruising.Crew = "EUR", 1600, 3790, 2.3, 5
	},
	"by the day's worth, much of the year": func(b *economics.Boat) {
		b.Currency, b.Small.Price, b.Larger.Price, b.Ice.Price, b.Cruising.Crew, b.Safety.FuelVapourSpace = "€", 9670, 22_970, 13.2, 3, quantity.No
		b.Cruising.Nights = [12]float64{31, 28, 20, 0, 0, 20, 24, 20, 10, 0, 0, 20}
		b.Cruising.NightsElsewhere = [12]float64{31, 28, 20, 0, 0, 0, 0, 0, 0, 0, 0, 20}
	},
	"a winter at prices of thousands": func(b *economics.Boat) {
		b.Currency, b.Small.Price, b.Larger.Price, b.Ice.Price, b.Safety.FuelVapourSpace = "EUR", 13_400, 27_600, 44, quantity.No
		b.Cruising.Nights = [12]float64{0: 20, 1: 18, 11: 18}
		b.Cruising.NightsElsewhere = b.Cruising.Nights
	},
}

// However much is told, the report takes four pages, and both papers hold the same
// sections on the same pages, each stop once; large print takes what it needs.
func TestFourPagesHoldEveryBoat(t *testing.T) {
	names := slices.Sorted(maps.Keys(toldInFull))
	if !longRun() {
		names = []string{"all stops"}
	}
	for i, name := range names {
		b := everything()
		toldInFull[name](&b)
		in := inputOf(t, b)
		in.For, in.By = "the members of a sailing club", "a surveyor who was asked to"
		inUnits(t, name, i, in, func(t *testing.T, in Input) {
			for _, s := range onBothPapers(t, in) {
				text := ""
				for _, op := range s.Ops {
					text += op.Text + " "
				}
				own, others := must(in.author()).stops()
				for _, f := range append(own, others...) {
					if words := strings.Join(strings.Fields(brief(f.Text, 0))[:4], " "); strings.Count(text, words) != 1 {
						t.Errorf("the stop %q stands %d times", words, strings.Count(text, words))
					}
				}
			}
			in.Enlarged = 1.3
			if s := draw(t, in); s.Page() <= 4 {
				t.Errorf("large print takes %d pages", s.Page())
			}
		})
	}
}
