package season_test

import (
	"fmt"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/season"
)

func show(name string, want, got []season.Hour, from, to int) {
	fmt.Println(name)
	for i := from; i < to && i < len(got); i++ {
		for _, h := range []season.Hour{want[i], got[i]} {
			fmt.Printf("%3d cl%2d cab %6.2f food %8.4f gain %8.3f cool %8.3f te %7.3f cap %7.2f cop %6.3f sun %6.2f unit %7.3f shore %7.2f ch %8.2f ice %7.4f\n", h.Hour, h.Clock, h.CabinC, h.FoodC, h.GainW, h.CooledW, h.EvaporatorC, h.CapacityW, h.COP, h.SunW, h.UnitW, h.ShoreW, h.ChargeWh, h.IceKg)
		}
	}
}

func TestShow(t *testing.T) {
	base := scene{"maine-coast", [12]float64{6: 2}, 2, 100, 200, 0, 1, 1}
	ten := base
	ten.nights[6], ten.trip = 10, 10
	dull := ten
	dull.dull, dull.panelWp, dull.bankAh, dull.engineHours = 0.3, 50, 60, 0
	dull.shore = 0.3
	o, air := build(t, dull)
	o.setup.Box.OpensPerDay = 0
	r := season.Refrigerator{Cycle: energy.Unit{RatedW: 50, Eta: 0.33, CooledBy: energy.Fan, Plate: energy.Thin}.Cycle()}
	var tr season.Trace
	var tally season.Tally
	o.setup.Unit(air, r, &tally, &tr)
	show("shore", o.unit(r), tr.Hours, 24, 48)
	fmt.Printf("%+v\n", tally)
	o, air = build(t, base)
	o.setup.Box.OpensPerDay = 0
	r = season.Refrigerator{StoreKJ: 1800, Cycle: energy.Unit{RatedW: 50, Eta: 0.33, CooledBy: energy.Fan, Plate: energy.Eutectic}.Cycle()}
	tr = season.Trace{}
	o.setup.Unit(air, r, &tally, &tr)
	show("eut", o.unit(r), tr.Hours, 0, 48)
	ice := season.Icing{Surface: heat.Surface{FullKg: 20, FullWPerK: 8}, PortionKg: 4.5, CarryKg: 18, CarryLoss: 0.05, FoundShare: 0.5}
	for m := range 12 {
		ice.MeltKgADay[m], ice.FloorKg[m], ice.PullDownKg[m] = 6, 4, 5
	}
	home := ice
	home.FromHome, home.WaterKept, home.PortionKg = true, true, 10
	tr = season.Trace{}
	o.setup.Ice(air, ice, &tally, &tr)
	show("ice", o.ice(ice), tr.Hours, 0, 20)
	tr = season.Trace{}
	o.setup.Ice(air, home, &tally, &tr)
	show("home", o.ice(home), tr.Hours, 0, 20)
}
