package economics_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// quick is enough futures for what must hold in any number of them.
var quick = economics.Settings{Futures: 40, Seed: 1}

// reckon works a boat out with the tests' own book.
func reckon(t testing.TB, b economics.Boat, set economics.Settings) *economics.Reckoning {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := economics.Reckon(b, economics.TestBook(), ground, set)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// near tells whether two figures agree to a share of the larger.
func near(a, b, share float64) bool {
	return math.Abs(a-b) <= share*math.Max(math.Abs(a), math.Abs(b))
}

// oneOf picks from a list.
func oneOf[T any](rng *rand.Rand, list ...T) T { return list[rng.IntN(len(list))] }

// uniform gives a number from low to high.
func uniform(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// plausible invents a boat: any ground, any box, any habits that a small old
// cruising boat may have. The same seed gives the same boat.
func plausible(seed uint64) economics.Boat {
	rng := rand.New(rand.NewPCG(seed, 17))
	b := economics.Dunlin()
	b.Name = "Nobody's"
	grounds := climate.Grounds()
	ground := oneOf(rng, grounds...)
	b.Cruising.Ground = ground.ID
	b.Cruising.Nights = [12]float64{}
	for range 1 + rng.IntN(3) {
		b.Cruising.Nights[rng.IntN(12)] = float64(2 + rng.IntN(16))
	}
	b.Cruising.TripNights = float64(1 + rng.IntN(12))
	b.Cruising.ShopEveryDays = float64(1 + rng.IntN(6))
	b.Cruising.ShorePowerShare = quantity.Fraction(oneOf(rng, 0, 0, 0.2, 0.5))
	b.Cruising.BeforeTrip = oneOf(rng, economics.Warm, economics.Precooled, economics.Running)
	b.Cruising.Crew = float64(1 + rng.IntN(4))

	b.Box.Volume = quantity.Litre(uniform(rng, 40, 200))
	b.Box.OpensPerDay = uniform(rng, 3, 20)
	b.Box.Lid = oneOf(rng, heat.TopLid, heat.TopLid, heat.FrontDoor)
	b.Box.LidSeal = oneOf(rng, heat.GoodSeal, heat.PoorSeal, heat.NoSeal)
	b.Box.Drain = oneOf(rng, heat.OpenDrain, heat.TrappedDrain, heat.NoDrain)
	b.Box.CabinOffset = quantity.Kelvin(uniform(rng, 0, 6))
	foam, state := quantity.Metre(uniform(rng, 0.015, 0.1)), oneOf(rng, heat.Dry, heat.Damp, heat.Wet)
	material := oneOf(rng, heat.OldPolyurethane, heat.Polyurethane, heat.XPS, heat.EPS, heat.Cork)
	for _, side := range heat.Sides {
		f := b.Box.Faces[side]
		f.Foam, f.State, f.Material = foam, state, material
		f.Reach = oneOf(rng, economics.FromInside, economics.NotReached)
		b.Box.Faces[side] = f
	}

	b.Food.Target = quantity.Celsius(uniform(rng, 3, 6))
	b.Food.KgPerPersonDay = quantity.Kilogram(uniform(rng, 1, 2.5))
	b.Food.MustBeColdShare = quantity.Fraction(uniform(rng, 0.1, 0.6))
	b.Food.DryPremium = quantity.Money(uniform(rng, 0.3, 5))
	b.Food.ColdDaysWanted = quantity.Fraction(oneOf(rng, 0.5, 0.8, 0.9, 0.95))

	b.Ice.Price = quantity.MoneyPerKg(uniform(rng, 0.2, 3))
	b.Ice.Kind = oneOf(rng, heat.Block, heat.Crushed, heat.Cubes)
	b.Ice.UnitSize = quantity.Kilogram(uniform(rng, 2, 6))
	b.Ice.FoundAtStops = quantity.Fraction(uniform(rng, 0.2, 1))
	b.Ice.FirstLoad = oneOf(rng, economics.FromHome, economics.Bought)
	b.Ice.ShareOfBox = quantity.Fraction(uniform(rng, 0.2, 0.6))

	b.Power.Battery = quantity.AmpHour(uniform(rng, 60, 400))
	b.Power.BatteryAge = quantity.Year(rng.IntN(7))
	b.Power.Chemistry = oneOf(rng, energy.Lead, energy.Lithium)
	b.Power.SolarWp = quantity.Watt(uniform(rng, 0, 300))
	b.Power.MaxPanelWp = b.Power.SolarWp + quantity.Watt(uniform(rng, 0, 300))
	b.Power.Mounting = oneOf(rng, energy.Arch, energy.Bimini, energy.OnDeck)
	b.Power.Controller = oneOf(rng, energy.Tracking, energy.Plain)
	b.Power.EngineHoursPerDay = uniform(rng, 0, 3)
	b.Power.OtherLoads = quantity.AmpHour(uniform(rng, 3, 40))

	b.Money.Years = quantity.Year(1 + rng.IntN(20))
	b.Money.Discount = quantity.Fraction(uniform(rng, 0, 0.08))
	b.Money.WillSell = oneOf(rng, quantity.Yes, quantity.No, quantity.Unknown)
	b.Money.FittedBy = oneOf(rng, economics.Self, economics.Yard)
	b.Small.RatedCooling = quantity.Watt(uniform(rng, 30, 80))
	b.Small.Life = quantity.Year(uniform(rng, 3, 15))
	b.Small.CooledBy = oneOf(rng, energy.Fins, energy.Fan)
	b.Larger.CooledBy = oneOf(rng, energy.Fins, energy.Fan, energy.Seawater)
	b.Larger.Plate = oneOf(rng, energy.Thin, energy.Eutectic)
	return b
}
