package economics

import (
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// dunlin is an invented boat for tests: a 90 L box with an inch of damp foam,
// sixty nights on the Maine coast.
func dunlin() Boat {
	faces := map[heat.Side]Face{}
	for _, s := range heat.Sides {
		faces[s] = Face{Foam: 0.025, Material: heat.OldPolyurethane, State: heat.Damp, Neighbour: heat.Cabin, Reach: map[bool]Reach{true: FromInside, false: NotReached}[s == heat.Inboard || s == heat.Top || s == heat.Fore]}
	}
	out := faces[heat.Outboard]
	out.Neighbour = heat.Sea
	faces[heat.Outboard] = out
	return Boat{
		Units: quantity.US, Currency: "$", Name: "Dunlin",
		Cruising: Cruising{Ground: "maine-coast", Nights: [12]float64{5: 8, 6: 22, 7: 22, 8: 8}, TripNights: 6, ShopEveryDays: 3,
			ShorePowerShare: 0, BeforeTrip: Warm, Crew: 2},
		Box: Box{Volume: 90, OpensPerDay: 10, Lid: heat.TopLid, LidSeal: heat.PoorSeal, Drain: heat.OpenDrain, Faces: faces,
			FittedUnit: NotFitted, CabinOffset: 2},
		Food: Food{Target: 4, KgPerPersonDay: 1.5, MustBeColdShare: 0.4, ColdDaysWanted: 0.9, DryPremium: 1.6, Medicine: quantity.No, Vulnerable: quantity.No},
		Ice: Ice{Price: 1.1, Kind: heat.Cubes, UnitSize: 4.5, FoundAtStops: 0.8, FirstLoad: Bought, TripCost: 5, CarryLimit: 30,
			CarryLoss: 0.05, ShareOfBox: 0.4},
		Power: Power{Volts: 12, Battery: 200, BatteryAge: 2, Chemistry: energy.Lead, SolarWp: 100, Mounting: energy.Bimini,
			Controller: energy.Tracking, OtherLoads: 12, EngineHoursPerDay: 1, EngineAmps: 30, MaxPanelWp: 200},
		Money:  Money{Years: 10, Discount: 0.03, FittedBy: Self, WillSell: quantity.No},
		Small:  Unit{Form: BuiltIn, Price: 900, Fitting: 350, RatedCooling: 50, CooledBy: energy.Fins, Plate: energy.Thin, Life: 12, Upkeep: 18},
		Larger: Unit{Form: BuiltIn, Price: 2800, Fitting: 1200, RatedCooling: 100, CooledBy: energy.Fan, Plate: energy.Thin, Life: 14, Upkeep: 56},
		Safety: Safety{FuelVapourSpace: quantity.No, COAlarm: quantity.Yes, Lithium: quantity.No, DrainTo: ToBilge, Children: quantity.No,
			LatchOpensInside: quantity.Unknown, DryIce: quantity.No, Fish: quantity.No, Eggs: WashedEggs, WiringKnown: quantity.Unknown, LeftUnattended: quantity.No},
		Known: map[string]quantity.How{},
	}
}
