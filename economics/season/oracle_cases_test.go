package season_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

func ground(t testing.TB, id string) climate.Ground {
	g, err := climate.Find(id)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

type scene struct {
	ground      string
	nights      [12]float64
	trip        float64
	panelWp     float64
	bankAh      float64
	shore       float64
	dull        float64
	engineHours float64
}

func build(t testing.TB, c scene) (*oracle, *season.Air) {
	g := ground(t, c.ground)
	sky := climate.NewSky(g)
	months := season.NewMonths(g, sky)
	plan := season.NewPlan(c.nights, c.trip)
	bank := energy.Bank{Nominal: quantity.AmpHour(c.bankAh), Volts: 12, Chemistry: energy.Lead}
	o := &oracle{ground: g, sky: sky, weather: new(season.Weather)}
	o.setup = season.Setup{Plan: plan, Months: &months,
		Box:         season.Box{Leak: heat.Conductance{Cabin: 0.7, Sea: 0.2, Engine: 0.15, Deck: 0.1}, OpensPerDay: 10, SwappedL: 20, HeatKJPerK: 120},
		CabinOffset: 2, Goods: season.Goods{KgPerDay: 1.2, ShopEveryDays: 3}, TargetC: 4, LimitC: 5,
		Power: season.Power{
			Panel: energy.Panel{Wp: quantity.Watt(c.panelWp), Mounting: energy.Bimini, Controller: energy.Tracking}.Chain(),
			Bank:  bank.Store(), HouseW: 6, EngineW: 250, EngineHours: c.engineHours, ShoreShare: c.shore}}
	plan.Draw(o.weather, sky, rand.New(rand.NewPCG(7, 7)), c.dull)
	var air season.Air
	one := o.setup.Power.Panel
	one.Wp = 1
	plan.Breathe(&air, o.weather, &months, o.setup.CabinOffset, one, c.engineHours)
	return o, &air
}

func diff(t *testing.T, name string, want, got []season.Hour) {
	if len(want) != len(got) {
		t.Errorf("%s: %d rows, want %d", name, len(got), len(want))
		return
	}
	first := map[string]bool{}
	for i := range want {
		w, g := reflect.ValueOf(want[i]), reflect.ValueOf(got[i])
		for f := range w.NumField() {
			n := w.Type().Field(f).Name
			var a, b float64
			if w.Field(f).CanFloat() {
				a, b = w.Field(f).Float(), g.Field(f).Float()
			} else {
				a, b = float64(w.Field(f).Int()), float64(g.Field(f).Int())
			}
			if !(math.Abs(a-b) <= 2e-6*(1+math.Abs(a))) && !first[n] {
				first[n] = true
				t.Errorf("%s: hour %d clock %d: %s oracle %.9g, season %.9g", name, i, want[i].Clock, n, a, b)
			}
		}
	}
}

func TestProbe(t *testing.T) {
	base := scene{"maine-coast", [12]float64{6: 2}, 2, 100, 200, 0, 1, 1}
	ten := base
	ten.nights[6], ten.trip = 10, 10
	dull := ten
	dull.dull, dull.panelWp, dull.bankAh, dull.engineHours = 0.3, 50, 60, 0
	shore := dull
	shore.shore = 0.3
	short := shore
	short.trip = 4
	two := short
	two.nights[7] = 7
	unit := func(c energy.Condenser, p energy.Plate, start season.Start) season.Refrigerator {
		r := season.Refrigerator{Cycle: energy.Unit{RatedW: 50, Eta: 0.33, CooledBy: c, Plate: p}.Cycle(), SeaCooled: c == energy.Seawater, Start: start}
		if p == energy.Eutectic {
			r.StoreKJ = 1800
		}
		return r
	}
	for _, row := range []struct {
		name string
		s    scene
		r    season.Refrigerator
	}{
		{"thin warm", base, unit(energy.Fins, energy.Thin, season.StartWarm)},
		{"thin warm 10", ten, unit(energy.Fins, energy.Thin, season.StartWarm)},
		{"thin fan dull", dull, unit(energy.Fan, energy.Thin, season.StartWarm)},
		{"thin shore", shore, unit(energy.Fan, energy.Thin, season.StartWarm)},
		{"thin shore start on shore", short, unit(energy.Fan, energy.Thin, season.StartOnShore)},
		{"thin shore start on sun", two, unit(energy.Fan, energy.Thin, season.StartOnOwnSun)},
		{"sea", two, unit(energy.Seawater, energy.Thin, season.StartOnOwnSun)},
		{"eutectic", base, unit(energy.Fan, energy.Eutectic, season.StartWarm)},
		{"eutectic 10", dull, unit(energy.Fan, energy.Eutectic, season.StartWarm)},
	} {
		o, air := build(t, row.s)
		o.setup.Box.OpensPerDay = 0
		var tr season.Trace
		var tally season.Tally
		o.setup.Unit(air, row.r, &tally, &tr)
		diff(t, row.name, o.unit(row.r), tr.Hours)
	}
	ice := season.Icing{Surface: heat.Surface{FullKg: 20, FullWPerK: 8}, PortionKg: 4.5, CarryKg: 18, CarryLoss: 0.05, FoundShare: 0.5}
	for m := range 12 {
		ice.MeltKgADay[m], ice.FloorKg[m], ice.PullDownKg[m] = 6, 4, 5
	}
	home := ice
	home.FromHome, home.WaterKept, home.PortionKg = true, true, 10
	for _, row := range []struct {
		name string
		s    scene
		i    season.Icing
	}{
		{"ice cubes", base, ice}, {"ice cubes 10", ten, ice}, {"ice two", two, ice},
		{"ice home", base, home}, {"ice home 10", ten, home}, {"ice home two", two, home},
	} {
		o, air := build(t, row.s)
		o.setup.Box.OpensPerDay = 0
		var tr season.Trace
		var tally season.Tally
		o.setup.Ice(air, row.i, &tally, &tr)
		diff(t, row.name, o.ice(row.i), tr.Hours)
	}
}
