package season_test

import (
	"fmt"
	"math/rand/v2"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/season"
)

// Three weeks of July on the coast of Maine, in trips of a week, with a small
// unit on 200 W of solar panel: lay out the nights, draw their weather, work out
// the air of their hours, run them.
func ExampleSetup_Unit() {
	ground, err := climate.Find("maine-coast")
	if err != nil {
		fmt.Println(err)
		return
	}
	sky := climate.NewSky(ground)
	months := season.NewMonths(ground, sky)
	plan := season.NewPlan([12]float64{6: 21}, 7)
	panel := energy.Panel{Wp: 200, Mounting: energy.Bimini, Controller: energy.Tracking}.Chain()
	setup := season.Setup{
		Plan: plan, Months: &months, CabinOffset: 2, TargetC: 4, LimitC: 5, CoolLimitC: 10,
		Box:   season.Box{Leak: heat.Conductance{Cabin: 1.2}, OpensPerDay: 10, SwappedL: 20, HeatKJPerK: 65},
		Goods: season.Goods{PerishableKgPerDay: 0.8, DrinksKgPerDay: 2, ShopEveryDays: 3, StowedC: 8},
		Power: season.Power{Panel: panel, Bank: energy.Bank{Nominal: 200, Volts: 12, Chemistry: energy.Lead}.Store(), HouseW: 6, EngineW: 250, EngineHours: 1},
	}
	unit := season.Refrigerator{Cycle: energy.Unit{RatedW: 50, Eta: energy.Eta().Typical, CooledBy: energy.Fan, Plate: energy.Thin}.Cycle()}

	var weather season.Weather
	plan.Draw(&weather, sky, rand.New(rand.NewPCG(1, 2)), rand.New(rand.NewPCG(3, 4)), 1)
	var air season.Air
	plan.FillAir(&air, &weather, &months, setup.CabinOffset, panel, setup.Power.EngineHours)
	var tally season.Tally
	setup.Unit(&air, unit, &tally, nil)
	fmt.Printf("%d nights in %d trips, cold on %.0f %% of days, %.0f Wh a day\n", tally.Nights, len(plan.Trips), 100*tally.ColdShare(), tally.UnitWh/float64(tally.Nights))
	// Output: 21 nights in 3 trips, cold on 100 % of days, 276 Wh a day
}
