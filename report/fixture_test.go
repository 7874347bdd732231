package report

import (
	"fmt"
	"sync"
	"testing"
	"time"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

// The boats of these tests are invented.

// weekender is a 90 L box with an inch of damp foam, sixty nights in Maine.
func weekender() economics.Boat {
	faces := map[heat.Side]economics.Face{}
	for _, side := range heat.Sides {
		faces[side] = economics.Face{Foam: 0.025, Material: heat.OldPolyurethane, State: heat.Damp, Neighbour: heat.Cabin,
			Reach: map[bool]economics.Reach{true: economics.FromInside, false: economics.NotReached}[side == heat.Inboard || side == heat.Top || side == heat.Fore]}
	}
	hull := faces[heat.Outboard]
	hull.Neighbour = heat.Sea
	faces[heat.Outboard] = hull
	return economics.Boat{
		Units: quantity.US, Currency: "$", Name: "Sandpiper",
		Cruising: economics.Cruising{Ground: "maine-coast", Nights: [12]float64{5: 8, 6: 22, 7: 22, 8: 8}, TripNights: 6, ShopEveryDays: 3,
			BeforeTrip: economics.Warm, Crew: 2},
		Box: economics.Box{Volume: 90, OpensPerDay: 10, Lid: heat.TopLid, LidSeal: heat.PoorSeal, Drain: heat.OpenDrain, Faces: faces,
			FittedUnit: economics.NotFitted, CabinOffset: 2},
		Food: economics.Food{Target: 4, KgPerPersonDay: 1.5, MustBeColdShare: 0.4, ColdDaysWanted: 0.9, Medicine: quantity.No, Vulnerable: quantity.No},
		Ice: economics.Ice{Price: 1.1, Kind: heat.Cubes, UnitSize: 4.5, FoundAtStops: 0.8, FirstLoad: economics.Bought, TripCost: 5, CarryLimit: 30,
			CarryLoss: 0.05, ShareOfBox: 0.4},
		Power: economics.Power{Volts: 12, Battery: 200, BatteryAge: 2, Chemistry: energy.Lead, SolarWp: 100, Mounting: energy.Bimini,
			Controller: energy.Tracking, OtherLoads: 12, EngineHoursPerDay: 1, EngineAmps: 30, MaxPanelWp: 200, CableRun: 4, CableSize: 4},
		Money:  economics.Money{Years: 10, Discount: 0.03, FittedBy: economics.Self, WillSell: quantity.No},
		Small:  economics.Unit{Form: economics.BuiltIn, Price: 900, Fitting: 350, RatedCooling: 50, CooledBy: energy.Fins, Plate: energy.Thin, Life: 12, Upkeep: 18},
		Larger: economics.Unit{Form: economics.BuiltIn, Price: 2800, Fitting: 1200, RatedCooling: 100, CooledBy: energy.Fan, Plate: energy.Thin, Life: 14, Upkeep: 56},
		Safety: economics.Safety{FuelVapourSpace: quantity.Unknown, COAlarm: quantity.Unknown, Lithium: quantity.Unknown, DrainTo: economics.ToUnknown,
			Children: quantity.Unknown, LatchOpensInside: quantity.Unknown, DryIce: quantity.Unknown, Fish: quantity.Unknown, Eggs: economics.UnknownEggs,
			WiringKnown: quantity.Unknown, LeftUnattended: quantity.Unknown},
		Known: map[string]quantity.How{"box.volume": quantity.Told, "cruising.nights": quantity.Told, "ice.price": quantity.Told},
		Assumptions: []economics.Assumption{{Key: "food.target", Label: "Food temperature", Value: "39 °F", Why: "usual"},
			{Key: "money.years", Label: "Years", Value: "10 years", Why: "engineering judgement, from memory"}},
	}
}

// islander is the same boat among the Cyclades, with the worth of a cold day told.
func islander() economics.Boat {
	b := weekender()
	b.Name, b.Units, b.Currency = "Halcyon of Naxos", quantity.Metric, "€"
	b.Cruising.Ground, b.Cruising.Nights, b.Cruising.TripNights = "aegean-cyclades", [12]float64{4: 15, 5: 25, 6: 30, 7: 30, 8: 20}, 30
	b.Money.ColdDayWorth, b.Money.Years = 3, 8
	b.Known["money.cold_day_worth"] = quantity.Told
	return b
}

// liveaboard spends the winter in the Windward Islands on shore power in part.
func liveaboard() economics.Boat {
	b := weekender()
	b.Name = "Far Enough"
	b.Cruising.Ground, b.Cruising.TripNights, b.Cruising.ShorePowerShare = "windward-islands", 90, 0.2
	b.Cruising.Nights = [12]float64{31, 28, 31}
	b.Power.Chemistry, b.Money.Years = energy.Lithium, 20
	return b
}

// wanderer has much told: a void to pour foam into, walls in reach from both
// sides, two grounds, an old unit, and answers that raise stops.
func wanderer() economics.Boat {
	b := weekender()
	b.Name = "Whimbrel"
	b.Cruising.Ground, b.Cruising.Elsewhere, b.Cruising.TripNights, b.Cruising.Crew = "chesapeake-bay", "windward-islands", 14, 4
	b.Cruising.Nights = [12]float64{0: 14, 5: 14, 6: 14, 7: 14}
	b.Cruising.NightsElsewhere = [12]float64{0: 14}
	b.Box.Inside, b.Box.LidOpening, b.Box.OpensPerDay = quantity.Dimensions{Length: 0.66, Width: 0.51, Height: 0.56}, quantity.Dimensions{Length: 0.3, Width: 0.36}, 16
	b.Box.LidSeal, b.Box.VoidVolume, b.Box.FittedUnit = heat.NoSeal, 60, economics.UnitDead
	for side, f := range b.Box.Faces {
		f.Reach = economics.FromInside
		if side == heat.Outboard {
			f.Reach = economics.FromOutside
		}
		b.Box.Faces[side] = f
	}
	b.Power.Battery, b.Power.SolarWp, b.Power.MaxPanelWp = 100, 50, 300
	b.Safety.COAlarm, b.Safety.Children, b.Safety.LatchOpensInside, b.Safety.DrainTo = quantity.No, quantity.Yes, quantity.No, economics.ToBilge
	b.Safety.WiringKnown, b.Safety.LeftUnattended = quantity.No, quantity.Yes
	return b
}

// hard are changes that make any page difficult to set.
var hard = map[string]func(*economics.Boat){
	"long name": func(b *economics.Boat) {
		b.Name = "The Most Honourable Company of Merchant Adventurers' Packet of the Western Approaches, Unabbreviated"
	},
	"dear":         func(b *economics.Boat) { b.Small.Price, b.Larger.Price, b.Ice.Price = 12_345_678, 98_765_432, 54_321 },
	"letters":      func(b *economics.Boat) { b.Currency = "EUR" },
	"no nights":    func(b *economics.Boat) { b.Cruising.Nights, b.Cruising.TripNights = [12]float64{}, 1 },
	"one night":    func(b *economics.Boat) { b.Cruising.Nights, b.Cruising.TripNights = [12]float64{6: 1}, 1 },
	"nothing does": func(b *economics.Boat) { b.Food.Medicine, b.Safety.FuelVapourSpace = quantity.Yes, quantity.Yes },
	"one year":     func(b *economics.Boat) { b.Money.Years, b.Money.Discount = 1, 0 },
}

// reckonings are of the boats that were reckoned already; each test gets a copy.
var reckonings = map[string]*economics.Reckoning{}

var loaded = sync.OnceValues(rules.Load)

// inputOf reckons a boat and makes the input of its report.
func inputOf(t testing.TB, b economics.Boat) Input {
	t.Helper()
	pack, err := loaded()
	if err != nil {
		t.Fatal(err)
	}
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	// What she is called and how she is printed changes no figure.
	alike := b
	alike.Name, alike.Units, alike.Currency = "", "", ""
	told := fmt.Sprintf("%+v", alike)
	if reckonings[told] == nil {
		if reckonings[told], err = economics.Reckon(b, pack.Book, ground, economics.Settings{Futures: 20, Seed: 1}); err != nil {
			t.Fatal(err)
		}
	}
	r := *reckonings[told]
	r.Boat.Name, r.Boat.Units, r.Boat.Currency = b.Name, b.Units, b.Currency
	return Input{
		Reckoning: &r, Pack: pack, Version: "0.0.0-test", Date: time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC), Paper: sheet.A4,
		Answers: []Answer{{"The boat", "Name", b.Name, quantity.Told}, {"The ice box", "Inside volume", "3.2 cu ft", quantity.Told},
			{"Food and drink", "Food temperature", "39 °F", quantity.Assumed}, {"Safety", "Dry ice", "not known", quantity.Unsure}},
	}
}

// always is a condition that holds.
type always struct{}

func (always) Holds(economics.Facts) (bool, error) { return true, nil }
