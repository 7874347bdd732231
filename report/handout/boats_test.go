package handout

import (
	"math"
	"math/rand/v2"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// pick draws one of a list, each as likely as it stands in it.
func pick[T any](r *rand.Rand, of ...T) T { return of[r.IntN(len(of))] }

// between draws a figure, all as likely.
func between(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

// step rounds to a multiple, as owners give figures.
func step(x, by float64) float64 { return math.Round(x/by) * by }

// plausibleBoat draws an older cruiser with an ice box, sailed on a ground:
// any shape and foam that such boxes have, any use that fits in a season.
func plausibleBoat(r *rand.Rand, ground string, sys quantity.System, season []int) economics.Boat {
	b := economics.Boat{Units: sys, Currency: "$", Name: "Drawn", Known: map[string]quantity.How{}}

	volume, long, deep := between(r, 45, 190)/1000, between(r, 0.8, 1.6), between(r, 0.75, 1.25)
	side := math.Cbrt(volume / (long * deep))
	b.Box.Inside = quantity.Dimensions{Length: quantity.Metre(step(side*long, 0.01)), Width: quantity.Metre(step(side, 0.01)), Height: quantity.Metre(step(side*deep, 0.01))}
	b.Box.Volume = b.Box.Inside.Volume()
	foam := quantity.Metre(pick(r, 0.02, 0.025, 0.025, 0.038, 0.038, 0.038, 0.05, 0.05, 0.06, 0.075, 0.1))
	material := pick(r, heat.OldPolyurethane, heat.OldPolyurethane, heat.OldPolyurethane, heat.Polyurethane, heat.XPS, heat.EPS, heat.Cork)
	state := pick(r, heat.Dry, heat.Dry, heat.Dry, heat.Damp, heat.Damp, heat.Damp, heat.Damp, heat.Wet, heat.Wet, heat.Soaked)
	top := foam
	if r.IntN(2) == 0 {
		top *= quantity.Metre(between(r, 0.3, 0.9))
	}
	b.Box.Faces = map[heat.Side]economics.Face{}
	for _, s := range heat.Sides {
		f := economics.Face{Foam: foam, Material: material, State: state, Neighbour: heat.Cabin, Reach: economics.NotReached} // no work is looked for
		switch {
		case s == heat.Top:
			f.Foam = top
			f.Neighbour = pick(r, heat.Cabin, heat.Cabin, heat.Cabin, heat.Deck)
		case s == heat.Outboard:
			f.Neighbour = pick(r, heat.Sea, heat.Sea, heat.Sea, heat.Cabin)
		case s == heat.Aft:
			f.Neighbour = pick(r, heat.Cabin, heat.Cabin, heat.Cabin, heat.Cabin, heat.Engine)
		}
		if s == heat.Bottom && r.IntN(6) == 0 && (state == heat.Dry || state == heat.Damp) {
			f.State = heat.Wet // meltwater of many years, which no line asks about
		}
		b.Box.Faces[s] = f
	}
	b.Box.OpensPerDay = math.Round(between(r, 6, 24))
	b.Box.Lid = pick(r, heat.TopLid, heat.TopLid, heat.TopLid, heat.TopLid, heat.TopLid, heat.FrontDoor)
	b.Box.LidSeal = pick(r, heat.GoodSeal, heat.PoorSeal, heat.PoorSeal, heat.NoSeal)
	b.Box.LidOpening = quantity.Dimensions{Length: quantity.Metre(step(between(r, 0.3, 0.45), 0.01)), Width: quantity.Metre(step(between(r, 0.25, 0.4), 0.01))}
	b.Box.Drain = pick(r, heat.OpenDrain, heat.OpenDrain, heat.TrappedDrain, heat.NoDrain)
	b.Box.FittedUnit = economics.NotFitted
	b.Box.CabinOffset = quantity.Kelvin(pick(r, 0.0, 1, 2, 2, 2, 3, 4))

	// Three to five months of the season, weekends to whole months.
	most := pick(r, 8.0, 8, 12, 20, 30)
	for _, m := range season {
		if r.IntN(4) > 0 {
			b.Cruising.Nights[m-1] = math.Round(between(r, 0.4, 1) * most)
		}
	}
	hottest := season[len(season)/2]
	b.Cruising.Nights[hottest-1] = max(4, b.Cruising.Nights[hottest-1])
	b.Cruising.Ground = ground
	b.Cruising.TripNights = pick(r, 2.0, 2, 3, 4, 7, 10, 14)
	b.Cruising.ShopEveryDays = min(b.Cruising.TripNights, pick(r, 2.0, 3, 3, 4))
	b.Cruising.BeforeTrip = economics.Warm
	b.Cruising.ShorePowerShare = quantity.Fraction(pick(r, 0.0, 0, 0, 0.2))
	b.Cruising.Crew = pick(r, 1.0, 2, 2, 2, 3, 4, 5)
	b.Food = economics.Food{DrinksADay: pick(r, 2.0, 3, 3, 4), Target: quantity.Celsius(pick(r, 4.0, 4, 4, 3, 5)), KgPerPersonDay: quantity.Kilogram(between(r, 1.2, 2)),
		MustBeColdShare: quantity.Fraction(pick(r, 0.2, 0.3, 0.3, 0.4)), ColdDaysWanted: 0.9, DryPremium: 1.6, Medicine: quantity.No, Vulnerable: quantity.No}

	b.Ice = economics.Ice{Price: quantity.MoneyPerKg(step(between(r, 0.4, 2.2), 0.05)), Kind: pick(r, heat.Cubes, heat.Cubes, heat.Cubes, heat.Block, heat.Crushed),
		UnitSize: pick(r, quantity.Kilogram(2), 2, 4.536), FoundAtStops: quantity.Fraction(pick(r, 1.0, 1, 0.8, 0.5)), HomeFreezer: 0, FirstLoad: pick(r, economics.Bought, economics.Bought, economics.Bought, economics.FromHome),
		TripCost: quantity.Money(pick(r, 0.0, 2, 5, 5)), CarryLimit: quantity.Kilogram(pick(r, 18.0, 20, 30)), CarryLoss: quantity.Fraction(pick(r, 0.05, 0.08, 0.12)),
		ShareOfBox: quantity.Fraction(pick(r, 0.25, 0.33, 0.33, 0.4))}

	b.Power = economics.Power{Volts: pick(r, quantity.Volt(12), 12, 12, 24), Battery: quantity.AmpHour(step(between(r, 90, 300), 10)), BatteryAge: quantity.Year(pick(r, 0.0, 1, 2, 4)),
		Chemistry: pick(r, energy.Lead, energy.Lead, energy.Lithium), SolarWp: quantity.Watt(step(between(r, 0, 320), 10)), Mounting: pick(r, energy.Arch, energy.Bimini, energy.OnDeck),
		Controller: pick(r, energy.Tracking, energy.Plain), OtherLoads: quantity.AmpHour(step(between(r, 6, 25), 1)), EngineHoursPerDay: pick(r, 0.0, 0.5, 1, 1.5),
		EngineAmps: quantity.Ampere(pick(r, 20.0, 30, 40)), MaxPanelWp: 400}
	b.Money = economics.Money{Years: quantity.Year(pick(r, 5.0, 8, 10, 10, 12, 15)), Discount: rate, FittedBy: economics.Self, WillSell: quantity.No}
	price := step(between(r, 500, 1700), 50)
	b.Small = economics.Unit{Form: economics.BuiltIn, Price: quantity.Money(price), Fitting: quantity.Money(step(between(r, 50, 800), 10)),
		RatedCooling: quantity.Watt(step(between(r, 35, 70), 5)), CooledBy: pick(r, energy.Fins, energy.Fins, energy.Fan, energy.Fan, energy.Seawater), Plate: energy.Thin,
		Life: quantity.Year(pick(r, 7.0, 10, 12, 12, 15)), Upkeep: quantity.Money(step(0.02*price, 1))}
	b.Larger = economics.Unit{Form: economics.BuiltIn, Price: 2800, Fitting: 500, RatedCooling: 100, CooledBy: energy.Fan, Plate: energy.Thin, Life: 14, Upkeep: 70}
	b.Safety = economics.Safety{FuelVapourSpace: quantity.No, COAlarm: quantity.Yes, Lithium: quantity.No, DrainTo: economics.ToBilge, Children: quantity.No,
		LatchOpensInside: quantity.Yes, DryIce: quantity.No, Fish: quantity.No, Eggs: economics.NoEggs, WiringKnown: quantity.Yes, LeftUnattended: quantity.No}
	return b
}
