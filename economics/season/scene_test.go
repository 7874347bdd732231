package season_test

import (
	"math/rand/v2"
	"testing"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// scene is a boat of our own, in the figures the tests turn.
type scene struct {
	ground      string
	nights      [12]float64
	tripNights  float64
	leakShare   float64 // of the box below
	offsetK     float64
	opens       float64
	kgPerDay    float64 // of perishables
	drinksKg    float64 // a day
	shopEvery   int
	targetC     float64
	onlyCool    bool
	panelWp     float64
	batteryAh   float64
	chemistry   energy.Chemistry
	houseW      float64
	engineHours float64
	shore       float64
	sunFactor   float64
	seed        uint64
}

// sloop is a small boat on the Maine coast.
func sloop() scene {
	return scene{ground: "maine-coast", nights: [12]float64{6: 2}, tripNights: 2, leakShare: 1, offsetK: 2, opens: 10, kgPerDay: 1.2, drinksKg: 2,
		shopEvery: 3, targetC: 4, panelWp: 100, batteryAh: 100, houseW: 6, engineHours: 1, sunFactor: 1, seed: 1}
}

// aboard is a scene ready to run: the season's own setup and air, and the
// oracle of the same boat under the same weather.
type aboard struct {
	oracle
	air season.Air
}

func (c scene) aboard(t testing.TB) *aboard {
	t.Helper()
	g, err := climate.Find(c.ground)
	if err != nil {
		t.Fatal(err)
	}
	return c.at(g)
}

// skies are made once for each ground: nothing changes them.
var skies = map[climate.Ground]*climate.Sky{}

func (c scene) at(g climate.Ground) *aboard {
	if skies[g] == nil {
		skies[g] = climate.NewSky(g)
	}
	b := &aboard{oracle: oracle{ground: g, sky: skies[g], weather: new(season.Weather)}}
	months := season.NewMonths(g, b.sky)
	plan := season.NewPlan(c.nights, c.tripNights)
	k := quantity.WattPerKelvin(c.leakShare)
	b.setup = season.Setup{
		Plan: plan, Months: &months, CabinOffset: quantity.Kelvin(c.offsetK),
		Box: season.Box{Leak: heat.Conductance{Cabin: 0.70 * k, Sea: 0.20 * k, Engine: 0.15 * k, Deck: 0.10 * k},
			OpensPerDay: c.opens, SwappedL: 20, HeatKJPerK: 60},
		Goods:   season.Goods{PerishableKgPerDay: c.kgPerDay, DrinksKgPerDay: c.drinksKg, ShopEveryDays: c.shopEvery, StowedC: 8},
		TargetC: c.targetC,
		Power: season.Power{
			Panel:  energy.Panel{Wp: quantity.Watt(c.panelWp), Mounting: energy.Bimini, Controller: energy.Tracking}.Chain(),
			Bank:   energy.Bank{Nominal: quantity.AmpHour(c.batteryAh), Volts: 12, Chemistry: c.chemistry}.Store(),
			HouseW: c.houseW, EngineW: 250, EngineHours: c.engineHours, ShoreShare: c.shore,
		},
	}
	b.setup.LimitC, b.setup.CoolLimitC = season.Limits(quantity.Celsius(c.targetC), c.onlyCool)
	plan.Draw(b.weather, b.sky, rand.New(rand.NewPCG(c.seed, 0)), rand.New(rand.NewPCG(c.seed, 1)), c.sunFactor)
	b.fillAir()
	return b
}

// fillAir fills the air anew, after the weather or the setup was changed.
func (b *aboard) fillAir() {
	s := &b.setup
	s.Plan.FillAir(&b.air, b.weather, s.Months, s.CabinOffset, s.Power.Panel, s.Power.EngineHours)
}

func (b *aboard) runUnit(r season.Refrigerator) (*season.Tally, []season.Hour) {
	var t season.Tally
	var trace season.Trace
	b.setup.Unit(&b.air, r, &t, &trace)
	return &t, trace.Hours
}

func (b *aboard) runIce(ice season.Icing) (*season.Tally, []season.Hour) {
	var t season.Tally
	var trace season.Trace
	plan := b.setup.IcePlan(ice)
	b.setup.Ice(&b.air, &plan, &t, &trace)
	return &t, trace.Hours
}

func (b *aboard) runStores() *season.Tally {
	var t season.Tally
	b.setup.Stores(&b.air, &t)
	return &t
}

// unitOf is a unit of 50 W at its typical figures.
func unitOf(cooledBy energy.Condenser, plate energy.Plate, start season.Start) season.Refrigerator {
	r := season.Refrigerator{
		Cycle:     energy.Unit{RatedW: 50, Eta: 0.33, CooledBy: cooledBy, Plate: plate}.Cycle(),
		SeaCooled: cooledBy == energy.Seawater, Start: start,
	}
	if plate == energy.Eutectic {
		r.StoreKJ = 1822 // 8 kg of 268 kJ/kg, 0.85 of it used
	}
	return r
}

// cubes are bought by the bag and drained; block is frozen at home and its
// water kept.
func cubes() season.Icing {
	return season.Icing{FilmWPerM2K: 9, LumpKgPerM3: 560, BulkKgPerL: 0.56, RoomKg: 20, PortionKg: 4.5, CarryKg: 18, CarryLoss: 0.05, FoundShare: 0.8}
}

func block() season.Icing {
	ice := cubes()
	ice.LumpKgPerM3, ice.BulkKgPerL, ice.RoomKg = 920, 0.92, 33
	ice.HomeKg, ice.WaterKept, ice.PortionKg, ice.CarryLoss = 10, true, 9, 0.02
	return ice
}
