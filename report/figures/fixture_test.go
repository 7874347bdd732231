package figures

import (
	"fmt"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/rules"
)

// dunlin is an invented boat: a 90 L box with an inch of damp foam, sixty
// nights on the Maine coast.
func dunlin() economics.Boat {
	faces := map[heat.Side]economics.Face{}
	for _, side := range heat.Sides {
		faces[side] = economics.Face{Foam: 0.025, Material: heat.OldPolyurethane, State: heat.Damp, Neighbour: heat.Cabin,
			Reach: map[bool]economics.Reach{true: economics.FromInside, false: economics.NotReached}[side == heat.Inboard || side == heat.Top || side == heat.Fore]}
	}
	out := faces[heat.Outboard]
	out.Neighbour = heat.Sea
	faces[heat.Outboard] = out
	return economics.Boat{
		Units: quantity.US, Currency: "$", Name: "Dunlin",
		Cruising: economics.Cruising{Ground: "maine-coast", Nights: [12]float64{5: 8, 6: 22, 7: 22, 8: 8}, TripNights: 6, ShopEveryDays: 3,
			BeforeTrip: economics.Warm, Crew: 2},
		Box: economics.Box{Volume: 90, OpensPerDay: 10, Lid: heat.TopLid, LidSeal: heat.PoorSeal, Drain: heat.OpenDrain, Faces: faces,
			FittedUnit: economics.NotFitted, CabinOffset: 2},
		Food: economics.Food{Target: 4, KgPerPersonDay: 1.5, MustBeColdShare: 0.4, ColdDaysWanted: 0.9, Medicine: quantity.No, Vulnerable: quantity.No},
		Ice: economics.Ice{Price: 1.1, Kind: heat.Cubes, UnitSize: 4.5, FoundAtStops: 0.8, FirstLoad: economics.Bought, TripCost: 5, CarryLimit: 30,
			CarryLoss: 0.05, ShareOfBox: 0.4},
		Power: economics.Power{Volts: 12, Battery: 200, BatteryAge: 2, Chemistry: energy.Lead, SolarWp: 100, Mounting: energy.Bimini,
			Controller: energy.Tracking, OtherLoads: 12, EngineHoursPerDay: 1, EngineAmps: 30, MaxPanelWp: 200, CableRun: 4, CableSize: 4},
		Money: economics.Money{Years: 10, Discount: 0.03, FittedBy: economics.Self, WillSell: quantity.No},
		Small: economics.Unit{Form: economics.BuiltIn, Price: 900, Fitting: 350, RatedCooling: 50, CooledBy: energy.Fins, Plate: energy.Thin, Life: 7, Upkeep: 18,
			RatedAmps: 0.5, RatedBox: 120},
		Larger: economics.Unit{Form: economics.BuiltIn, Price: 2800, Fitting: 1200, RatedCooling: 100, CooledBy: energy.Fan, Plate: energy.Thin, Life: 14, Upkeep: 56},
		Safety: economics.Safety{FuelVapourSpace: quantity.No, COAlarm: quantity.Yes, Lithium: quantity.No, DrainTo: economics.ToBilge,
			Children: quantity.No, LatchOpensInside: quantity.Yes, DryIce: quantity.No, Fish: quantity.No, Eggs: economics.WashedEggs,
			WiringKnown: quantity.Unknown, LeftUnattended: quantity.Unknown},
		Known: map[string]quantity.How{"box.volume": quantity.Told, "cruising.nights": quantity.Told, "ice.price": quantity.Told,
			"power.cable_run": quantity.Told, "power.cable_size": quantity.Told, "safety.wiring_known": quantity.Unsure},
		Assumptions: []economics.Assumption{{Key: "food.target", Label: "Food temperature", Value: "39 °F", Why: "usual"}},
	}
}

// outfitted is Dunlin with a cooler for something, half her nights on a second
// ground, a dead unit in the box, a place for a chest, a quotation and a unit by
// day.
func outfitted(use economics.CoolerUse) economics.Boat {
	b := dunlin()
	b.Cooler = economics.Cooler{Stands: economics.CoolerInCabin, For: use, Volume: 40, Wall: 0.05, Price: 150}
	b.Cruising.Elsewhere, b.Cruising.NightsElsewhere = "chesapeake-bay", [12]float64{8: 8}
	b.Box.FittedUnit, b.Box.ChestFits = economics.UnitDead, quantity.Yes
	b.Power.ByDay, b.Food.Freeze = quantity.Yes, economics.FreezesCubes
	b.Quotations = []economics.Quotation{{Name: "a shop's", Price: 950, Class: energy.Small, Cooling: 55}}
	for _, key := range []string{"box.fitted_unit", "box.chest_fits", "cooler.stands", "power.by_day", "quotations"} {
		b.Known[key] = quantity.Told
	}
	return b
}

// reckonings are of the boats that were reckoned already.
var reckonings = map[string]*economics.Reckoning{}

// textOf reckons a boat and prints its figures.
func textOf(t *testing.T, b economics.Boat) ([]byte, Input) {
	t.Helper()
	pack, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	told := fmt.Sprintf("%+v", b)
	r := reckonings[told]
	if r == nil {
		ground, err := b.Ground()
		if err != nil {
			t.Fatal(err)
		}
		if r, err = economics.Reckon(b, pack.Book, ground, economics.Settings{Futures: 20, Seed: 1}); err != nil {
			t.Fatal(err)
		}
		reckonings[told] = r
	}
	var facts []economics.Facts
	for i := range r.Options {
		facts = append(facts, r.Options[i].Fitted.Facts)
	}
	found, err := pack.Judge(facts...)
	if err != nil {
		t.Fatal(err)
	}
	in := Input{Reckoning: r, Book: pack.Book, Findings: found, Guidance: pack.Guidance, Version: "test"}
	return inJSON(t, in), in
}

func inJSON(t *testing.T, in Input) []byte {
	t.Helper()
	s, err := Of(in)
	if err != nil {
		t.Fatal(err)
	}
	text, err := s.Text()
	if err != nil {
		t.Fatal(err)
	}
	return text
}
