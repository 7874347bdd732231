package compare

import (
	"fmt"
	"iter"
	"slices"
	"sync"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/rules"
)

// drawn is an invented boat: box, foam and panel differ, the rest is alike.
func drawn(name string, litres, foamMM, panelW float64, state heat.State, sys quantity.System, currency string) economics.Boat {
	faces := map[heat.Side]economics.Face{}
	for _, s := range heat.Sides {
		faces[s] = economics.Face{Foam: quantity.Metre(foamMM / 1000), Material: heat.OldPolyurethane, State: state, Neighbour: heat.Cabin, Reach: map[bool]economics.Reach{true: economics.FromInside, false: economics.NotReached}[s != heat.Outboard]}
	}
	out := faces[heat.Outboard]
	out.Neighbour = heat.Sea
	faces[heat.Outboard] = out
	return economics.Boat{
		Units: sys, Currency: currency, Name: name,
		Cruising: economics.Cruising{Ground: "maine-coast", Nights: [12]float64{6: 4, 7: 2}, TripNights: 2, ShopEveryDays: 3, BeforeTrip: economics.Warm, Crew: 2},
		Box: economics.Box{Volume: quantity.Litre(litres), OpensPerDay: 10, Lid: heat.TopLid, LidSeal: heat.PoorSeal, Drain: heat.OpenDrain, Faces: faces,
			FittedUnit: economics.NotFitted, CabinOffset: 2},
		Food: economics.Food{Target: 4, KgPerPersonDay: 1.5, MustBeColdShare: 0.3, ColdDaysWanted: 0.9, DryPremium: 1.6, Medicine: quantity.No, Vulnerable: quantity.No},
		Ice: economics.Ice{Price: 1.1, Kind: heat.Cubes, UnitSize: 2, FoundAtStops: 0.8, FirstLoad: economics.Bought, TripCost: 5, CarryLimit: 30,
			CarryLoss: 0.05, ShareOfBox: 0.4},
		Power: economics.Power{Volts: 12, Battery: 150, BatteryAge: 2, Chemistry: energy.Lead, SolarWp: quantity.Watt(panelW), Mounting: energy.Bimini,
			Controller: energy.Tracking, OtherLoads: 10, EngineHoursPerDay: 1, EngineAmps: 30, MaxPanelWp: 200},
		Money:  economics.Money{Years: 10, Discount: 0.03, FittedBy: economics.Self, WillSell: quantity.No},
		Small:  economics.Unit{Form: economics.BuiltIn, Price: 900, Fitting: 150, RatedCooling: 50, CooledBy: energy.Fins, Plate: energy.Thin, Life: 12, Upkeep: 18},
		Larger: economics.Unit{Form: economics.BuiltIn, Price: 2800, Fitting: 700, RatedCooling: 100, CooledBy: energy.Fan, Plate: energy.Thin, Life: 14, Upkeep: 56},
		Safety: economics.Safety{FuelVapourSpace: quantity.Unknown, COAlarm: quantity.No, Lithium: quantity.No, DrainTo: economics.ToBilge, Children: quantity.Yes,
			LatchOpensInside: quantity.No, DryIce: quantity.No, Fish: quantity.No, Eggs: economics.WashedEggs, WiringKnown: quantity.No, LeftUnattended: quantity.No},
		Known: map[string]quantity.How{"box.volume": quantity.Told, "box.foam": quantity.Told, "box.state": quantity.Assumed},
	}
}

// asSheIs leaves no work to look for, so that a boat is soon reckoned.
func asSheIs(b economics.Boat) economics.Boat {
	for side, f := range b.Box.Faces {
		f.Reach = economics.NotReached
		b.Box.Faces[side] = f
	}
	b.Power.MaxPanelWp = b.Power.SolarWp
	return b
}

var few = economics.Settings{Futures: 20, Seed: 1}

func rulePack(t *testing.T) rules.Pack {
	t.Helper()
	p, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// entries are three sound boats of different make and a bad one.
func entries() []Entry {
	bad := drawn("Nowhere", 90, 25, 50, heat.Damp, quantity.Metric, "$")
	bad.Cruising.Ground = "atlantis"
	return []Entry{
		{File: "osprey.yaml", Boat: drawn("Osprey", 80, 25, 30, heat.Damp, quantity.Metric, "$")},
		{File: "nowhere.yaml", Boat: bad},
		{File: "plover.yaml", Boat: drawn("Plover", 140, 50, 150, heat.Dry, quantity.Metric, "$")},
		{File: "avocet.yaml", Boat: drawn("Avocet", 60, 38, 0, heat.Wet, quantity.Metric, "$")},
	}
}

// compared is the table of entries, reckoned once for all tests.
var compared = sync.OnceValues(func() (Table, error) {
	p, err := rules.Load()
	if err != nil {
		return Table{}, err
	}
	return Compare(slices.Values(entries()), p, few, nil), nil
})

func table(t *testing.T) Table {
	t.Helper()
	made, err := compared()
	if err != nil {
		t.Fatal(err)
	}
	made.Rows = slices.Clone(made.Rows)
	return made
}

// many makes entries on demand.
func many(n int) iter.Seq[Entry] {
	return func(yield func(Entry) bool) {
		for i := range n {
			b := asSheIs(drawn(fmt.Sprintf("Boat %d", i), 60+float64(i%9)*10, 25, 50, heat.Damp, quantity.Metric, "$"))
			b.Cruising.Nights, b.Cruising.TripNights = [12]float64{6: 2}, 2
			if !yield(Entry{File: fmt.Sprintf("%d.yaml", i), Boat: b}) {
				return
			}
		}
	}
}
