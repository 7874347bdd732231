package economics

import (
	"math"
	"math/rand/v2"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// untold is the boat of an owner who answered nothing: a middling box, crew and
// season. Figures are common practice or judgement, no source.
func untold() Boat {
	faces := map[heat.Side]Face{}
	for _, s := range heat.Sides {
		faces[s] = Face{Foam: 0.038, Material: heat.OldPolyurethane, State: heat.Damp, Neighbour: heat.Cabin, Reach: FromInside}
	}
	top, hull := faces[heat.Top], faces[heat.Outboard]
	top.Foam, hull.Neighbour = 0.019, heat.Sea
	faces[heat.Top], faces[heat.Outboard] = top, hull
	return Boat{
		Units: quantity.US, Currency: "$", Name: "Nobody's",
		Cruising: Cruising{Ground: "chesapeake-bay", Nights: [12]float64{5: 8, 6: 8, 7: 8, 8: 8}, TripNights: 2, ShopEveryDays: 2, BeforeTrip: Warm, Crew: 2},
		Box: Box{Volume: 100, OpensPerDay: 12, Lid: heat.TopLid, LidSeal: heat.PoorSeal, LidOpening: quantity.Dimensions{Length: 0.4, Width: 0.3},
			Drain: heat.OpenDrain, Faces: faces, FittedUnit: NotFitted, CabinOffset: 2, FoamThere: quantity.Unknown, Cover: quantity.No, ChestFits: quantity.Unknown},
		Food: Food{Target: 4, KgPerPersonDay: 1.2, MustBeColdShare: 0.3, DrinksADay: 3, CoolIsEnough: quantity.No, ColdDaysWanted: 0.9, DryPremium: 1.6,
			Medicine: quantity.Unknown, Vulnerable: quantity.Unknown},
		Ice: Ice{Price: 1, Kind: heat.Cubes, UnitSize: 10 * quantity.Pound, FoundAtStops: 0.7, FirstLoad: Bought, HomeFreezer: 10, Runs: quantity.No,
			TripCost: 5, CarryLimit: 40 * quantity.Pound, CarryLoss: 0.08, ShareOfBox: 1.0 / 3},
		Power: Power{Volts: 12, Battery: 100, BatteryAge: 3, Chemistry: energy.Lead, Mounting: energy.Bimini, Controller: energy.Plain,
			OtherLoads: 15, EngineHoursPerDay: 0.5, EngineAmps: 30, MaxPanelWp: 200, CableRun: 5},
		Money:  Money{Years: 10, Discount: 0.03, WillSell: quantity.Unknown, FittedBy: Self},
		Small:  Unit{Form: BuiltIn, Price: 1300, Fitting: 120, RatedCooling: 60, CooledBy: energy.LockerFan, Plate: energy.Thin, Life: 14, Upkeep: 26},
		Larger: Unit{Form: BuiltIn, Price: 2800, Fitting: 500, RatedCooling: 100, CooledBy: energy.Fan, Plate: energy.Thin, Life: 14, Upkeep: 70},
		Safety: Safety{FuelVapourSpace: quantity.Unknown, COAlarm: quantity.Unknown, Lithium: quantity.Unknown, DrainTo: ToUnknown, Children: quantity.Unknown,
			LatchOpensInside: quantity.Unknown, DryIce: quantity.Unknown, Fish: quantity.Unknown, Eggs: UnknownEggs, WiringKnown: quantity.Unknown, LeftUnattended: quantity.Unknown},
		Known: map[string]quantity.How{},
	}
}

func oneOf[T any](rng *rand.Rand, list ...T) T { return list[rng.IntN(len(list))] }

func uniform(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// plausible invents a boat: any ground, any box, any habits that a small old
// cruising boat may have, with answers missing at random, which are then those
// of untold. The same seed gives the same boat.
func plausible(seed uint64) Boat { return plausibleBut(seed, "") }

// plausibleBut is plausible with one answer given, and drawn anew; "" is none.
func plausibleBut(seed uint64, again string) Boat {
	source := rand.NewPCG(seed, 17)
	rng := rand.New(source)
	b := untold()
	answered := uniform(rng, 0.3, 1)
	tell := func(key string, answer func()) {
		kept := b
		answer()
		if key == again {
			state := *source
			source.Seed(seed, 99)
			answer()
			*source = state
			kept = b
		}
		if rng.Float64() > answered { // drawn all the same, so that one answer moves no other
			b = kept
			return
		}
		b.Known[key] = quantity.Told
	}
	within := func(field *float64, low, high float64) func() {
		return func() { *field = uniform(rng, low, high) }
	}
	c := &b.Cruising
	tell("cruising.ground", func() { c.Ground = oneOf(rng, climate.Grounds()...).ID })
	tell("cruising.nights", func() {
		c.Nights = [12]float64{}
		for range 1 + rng.IntN(3) {
			c.Nights[rng.IntN(12)] = float64(2 + rng.IntN(16))
		}
	})
	tell("cruising.trip_nights", func() { c.TripNights = float64(1 + rng.IntN(12)) })
	tell("cruising.shop_every_days", func() { c.ShopEveryDays = float64(1 + rng.IntN(6)) })
	tell("cruising.shore_power_share", func() { c.ShorePowerShare = oneOf[quantity.Fraction](rng, 0, 0, 0.2, 0.5) })
	tell("cruising.before_trip", func() { c.BeforeTrip = oneOf(rng, Warm, Precooled, Running) })
	tell("cruising.crew", func() { c.Crew = float64(1 + rng.IntN(4)) })

	box := &b.Box
	tell("box.volume", func() { box.Volume = quantity.Litre(uniform(rng, 40, 200)) })
	tell("box.opens_per_day", within(&box.OpensPerDay, 3, 20))
	tell("box.lid", func() { box.Lid = oneOf(rng, heat.TopLid, heat.TopLid, heat.FrontDoor) })
	tell("box.lid_seal", func() { box.LidSeal = oneOf(rng, heat.GoodSeal, heat.PoorSeal, heat.NoSeal) })
	tell("box.drain", func() { box.Drain = oneOf(rng, heat.OpenDrain, heat.TrappedDrain, heat.NoDrain) })
	tell("box.cabin_offset", func() { box.CabinOffset = quantity.Kelvin(uniform(rng, 0, 6)) })
	tell("box.cover", func() { box.Cover = oneOf(rng, quantity.No, quantity.No, quantity.Yes) })
	tell("box.foam", func() {
		faces := map[heat.Side]Face{}
		foam, state := quantity.Metre(uniform(rng, 0.015, 0.1)), oneOf(rng, heat.Dry, heat.Damp, heat.Wet)
		material := oneOf(rng, heat.OldPolyurethane, heat.Polyurethane, heat.XPS, heat.EPS, heat.Cork)
		for _, side := range heat.Sides {
			f := box.Faces[side]
			f.Foam, f.State, f.Material, f.Reach = foam, state, material, oneOf(rng, FromInside, FromInside, FromOutside, NotReached)
			faces[side] = f
		}
		box.Faces = faces
	})

	food := &b.Food
	tell("food.target", func() { food.Target = quantity.Celsius(oneOf(rng, 3, 4, 4, 5, 7)) })
	tell("food.food_per_person_day", func() { food.KgPerPersonDay = quantity.Kilogram(uniform(rng, 0.8, 2)) })
	tell("food.must_be_cold_share", func() { food.MustBeColdShare = oneOf[quantity.Fraction](rng, 0.1, 0.2, 0.3) })
	tell("food.drinks_a_day", func() { food.DrinksADay = float64(rng.IntN(6)) })
	tell("food.cool_is_enough", func() { food.CoolIsEnough = oneOf(rng, quantity.No, quantity.No, quantity.No, quantity.Yes) })
	tell("food.dry_premium", func() { food.DryPremium = quantity.Money(uniform(rng, 0.3, 5)) })
	tell("food.cold_days_wanted", func() { food.ColdDaysWanted = oneOf[quantity.Fraction](rng, 0.5, 0.8, 0.9, 0.95) })

	ice := &b.Ice
	tell("ice.price", func() { ice.Price = quantity.MoneyPerKg(uniform(rng, 0.2, 3)) })
	tell("ice.kind", func() { ice.Kind = oneOf(rng, heat.Block, heat.Crushed, heat.Cubes) })
	tell("ice.unit_size", func() { ice.UnitSize = quantity.Kilogram(uniform(rng, 2, 6)) })
	tell("ice.found_at_stops", func() { ice.FoundAtStops = quantity.Fraction(uniform(rng, 0.2, 1)) })
	tell("ice.first_load", func() { ice.FirstLoad = oneOf(rng, FromHome, Bought) })
	tell("ice.runs", func() { ice.Runs = oneOf(rng, quantity.No, quantity.Yes, quantity.Unknown) })
	tell("ice.trip_cost", func() { ice.TripCost = quantity.Money(uniform(rng, 0, 12)) })
	tell("ice.first_carry", func() { ice.FirstCarry = quantity.Kilogram(uniform(rng, 10, 40)) })
	tell("ice.carry_limit", func() { ice.CarryLimit = quantity.Kilogram(uniform(rng, 8, 40)) })
	tell("ice.carry_loss", func() { ice.CarryLoss = quantity.Fraction(uniform(rng, 0, 0.2)) })
	tell("ice.share_of_box", func() { ice.ShareOfBox = quantity.Fraction(uniform(rng, 0.2, 0.6)) })

	power := &b.Power
	tell("power.battery", func() { power.Battery = quantity.AmpHour(uniform(rng, 60, 400)) })
	tell("power.battery_age", func() { power.BatteryAge = quantity.Year(rng.IntN(7)) })
	tell("power.chemistry", func() { power.Chemistry = oneOf(rng, energy.Lead, energy.Lithium) })
	tell("power.solar", func() { power.SolarWp = quantity.Watt(uniform(rng, 0, 300)) })
	tell("power.mounting", func() { power.Mounting = oneOf(rng, energy.Arch, energy.Bimini, energy.OnDeck) })
	tell("power.controller", func() { power.Controller = oneOf(rng, energy.Tracking, energy.Plain) })
	tell("power.engine_hours_per_day", within(&power.EngineHoursPerDay, 0, 3))
	tell("power.other_loads", func() { power.OtherLoads = quantity.AmpHour(uniform(rng, 3, 40)) })
	power.MaxPanelWp = max(200, power.SolarWp)
	tell("power.max_panel", func() { power.MaxPanelWp = power.SolarWp + quantity.Watt(uniform(rng, 0, 300)) })

	tell("money.years", func() { b.Money.Years = quantity.Year(1 + rng.IntN(20)) })
	tell("money.discount", func() { b.Money.Discount = quantity.Fraction(uniform(rng, 0, 0.08)) })
	tell("money.will_sell", func() { b.Money.WillSell = oneOf(rng, quantity.Yes, quantity.No, quantity.Unknown) })
	tell("money.fitted_by", func() { b.Money.FittedBy = oneOf(rng, Self, Yard) })
	tell("units_considered.small.rated_cooling", func() { b.Small.RatedCooling = quantity.Watt(uniform(rng, 30, 80)) })
	tell("units_considered.small.life_years", func() { b.Small.Life = quantity.Year(uniform(rng, 3, 15)) })
	tell("units_considered.small.cooled_by", func() { b.Small.CooledBy = oneOf(rng, energy.Fins, energy.LockerFan, energy.Fan) })
	tell("units_considered.larger.cooled_by", func() { b.Larger.CooledBy = oneOf(rng, energy.Fins, energy.Fan, energy.Seawater) })
	tell("units_considered.larger.plate", func() { b.Larger.Plate = oneOf(rng, energy.Thin, energy.Eutectic) })

	total := 0.0
	for _, n := range c.Nights {
		total += n
	}
	c.TripNights = math.Min(c.TripNights, total)
	return b
}
