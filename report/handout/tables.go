package handout

import (
	"fmt"

	"coldreckon/economics/climate"
	"coldreckon/economics/cost"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// rate is the real discount rate of the cost factors, a year: that of NIST
// Handbook 135 and 10 CFR 436 (the floor of 436.14).
const rate = 0.03

// What the tables take where a line of the worksheet does not ask.
const (
	foodC        quantity.Celsius = 4 // food temperature
	cabinOffsetK quantity.Kelvin  = 2 // a cabin lived in, over the air outside
)

// units are the steps of a table in a unit system, and what one of its units
// is in base units.
type units struct {
	volumes  []float64 // L or cu ft
	foams    []float64 // mm or in
	heats    []float64 // W or Btu/h
	litre    float64   // in a unit of volume
	metre    float64   // in a unit of foam
	watt     float64   // in a unit of heat flow
	kelvin   float64   // in a degree
	kilogram float64   // in a unit of mass
	foot     float64   // metres in a unit of rim length
}

func unitsOf(sys quantity.System) units {
	if sys == quantity.US {
		return units{
			volumes: []float64{1.5, 2, 2.5, 3, 3.5, 4.5, 5.5, 7}, foams: []float64{0, 0.2, 0.4, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5},
			heats: []float64{30, 50, 70, 100, 130, 160, 200, 250, 300, 350},
			litre: 28.316846592, metre: 0.0254, watt: 0.29307107, kelvin: 5.0 / 9, kilogram: float64(quantity.Pound), foot: 0.3048,
		}
	}
	return units{
		volumes: []float64{40, 50, 65, 80, 100, 120, 150, 200}, foams: []float64{0, 5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120},
		heats: []float64{10, 15, 20, 30, 40, 50, 60, 75, 90, 110},
		litre: 1, metre: 0.001, watt: 1, kelvin: 1, kilogram: 1, foot: 1,
	}
}

// leakUnit is W/K in a unit of leak.
func (u units) leakUnit() float64 { return u.watt / u.kelvin }

// Materials and states in the order of the foam table.
var (
	materials = []heat.Material{heat.OldPolyurethane, heat.Polyurethane, heat.XPS, heat.EPS, heat.Cork}
	states    = []heat.State{heat.Dry, heat.Damp, heat.Wet, heat.Soaked}
)

// conductance is that of a near-cubic box with all walls alike, the outboard
// one towards the sea, without lid rim and drain.
func conductance(volume quantity.Litre, foam quantity.Metre, m heat.Material, state heat.State) heat.Conductance {
	spec := heat.Spec{Inside: heat.CubeLike(volume), Lid: heat.TopLid, Seal: heat.GoodSeal, Drain: heat.NoDrain}
	for i, side := range heat.Sides {
		spec.Faces[i] = heat.FaceSpec{Side: side, Neighbour: heat.Cabin}
		if side == heat.Outboard {
			spec.Faces[i].Neighbour = heat.Sea
		}
		if foam > 0 {
			spec.Faces[i].Layers = []heat.Layer{{Material: m, State: state, Thickness: foam}}
		}
	}
	c, err := spec.Conductance()
	if err != nil {
		panic(err) // the handout's own boxes: this cannot depend on any input
	}
	return c
}

// leaks gives the leak of boxes with dry old foam, in the system's units: a
// row for each volume, a column for each thickness.
func leaks(u units) [][]float64 {
	var out [][]float64
	for _, v := range u.volumes {
		var row []float64
		for _, f := range u.foams {
			row = append(row, u.walls(v, f))
		}
		out = append(out, row)
	}
	return out
}

// walls is the leak of the walls in the system's units: a near-cubic box with so
// much dry old foam.
func (u units) walls(volume, foam float64) float64 {
	c := conductance(quantity.Litre(volume*u.litre), quantity.Metre(foam*u.metre), heat.OldPolyurethane, heat.Dry)
	return float64(c.Total()) / u.leakUnit()
}

// A middling box, at which foam of any kind and state is set against dry old
// foam. Engineering judgement, from memory.
const (
	middlingBox  quantity.Litre = 100
	middlingFoam quantity.Metre = 0.05
)

// counts gives what foam of a material and state counts as, as a share of dry
// old foam's thickness: a row for each material, a column for each state. It
// is the thickness at which the leak table gives the middling box's own leak.
func counts() [][]float64 {
	leak := func(foam quantity.Metre, m heat.Material, s heat.State) float64 {
		return float64(conductance(middlingBox, foam, m, s).Total())
	}
	var out [][]float64
	for _, m := range materials {
		var row []float64
		for _, s := range states {
			want := leak(middlingFoam, m, s)
			// The rim of thin foam is not counted, so the leak falls by a step;
			// bisection finds that step when nothing else fits.
			share, ok := cost.Crossing(func(share float64) float64 {
				return leak(middlingFoam*quantity.Metre(share), heat.OldPolyurethane, heat.Dry) - want
			}, 0.01, 3)
			if !ok {
				panic(fmt.Sprintf("%s %s foam counts as nothing in the leak table", s, m)) // as in conductance
			}
			row = append(row, share)
		}
		out = append(out, row)
	}
	return out
}

// monthRow is one month of the ground, temperatures in the system's degrees.
type monthRow struct {
	Air     float64 // mean of day and night
	Degrees float64 // what the box has to hold off, food at 4 °C
	SunKWh  float64 // on a level square metre in a day
	PanelWh float64 // from 100 W of panel on an arch, in a day
}

// year gives the twelve months of a ground.
func year(g climate.Ground, u units) (out [12]monthRow) {
	box := conductance(middlingBox, middlingFoam, heat.OldPolyurethane, heat.Damp)
	months := season.NewMonths(g, climate.NewSky(g))
	panel := energy.Panel{Wp: 100, Mounting: energy.Arch, Controller: energy.Tracking}.Chain()
	for m := range out {
		c := g.Months[m]
		outside := box.OutsideC(c.AirMean+quantity.Celsius(cabinOffsetK), c.Sea, false)
		air := float64(c.AirMean)
		if u.kelvin != 1 {
			air = air/u.kelvin + 32
		}
		out[m] = monthRow{
			Air: air, Degrees: float64(outside-foodC) / u.kelvin, SunKWh: float64(c.Sun),
			PanelWh: panelWh(panel, &months[m]),
		}
	}
	return out
}

func panelWh(panel energy.Chain, m *season.Month) float64 {
	var air [24]quantity.Celsius
	for h, t := range m.OutdoorC {
		air[h] = quantity.Celsius(t)
	}
	return float64(panel.DayWh(quantity.KWhPerM2Day(m.SunKWh), m.SunShare, air))
}

// hottest gives the ground's warmest month, 0 for January.
func hottest(g climate.Ground) int {
	most := 0
	for m := range g.Months {
		if g.Months[m].AirMean > g.Months[most].AirMean {
			most = m
		}
	}
	return most
}

// ratings are the units of the table, W of cooling at -10/45 °C.
var ratings = [3]float64{35, 50, 70}

// unitCell is what a unit takes in a day against a heat.
type unitCell struct {
	Wh     float64
	Beyond bool // it runs without a pause and the box still warms
}

// duty gives a unit's mean day in the ground's warmest month.
func duty(g climate.Ground, heatW, ratedW float64, by energy.Condenser) unitCell {
	c := g.Months[hottest(g)]
	cabin, coolant := c.AirMean+quantity.Celsius(cabinOffsetK), c.AirMean+quantity.Celsius(cabinOffsetK)
	if by == energy.Seawater {
		coolant = c.Sea
	}
	cycle := energy.Unit{RatedW: quantity.Watt(ratedW), Eta: energy.Eta().Typical, CooledBy: by, Plate: energy.Thin}.Cycle()
	gain := energy.Gain{Leak: quantity.WattPerKelvin(heatW / float64(cabin-foodC)), Out: cabin}
	d := cycle.Duty(gain, foodC, coolant)
	return unitCell{Wh: float64(d.DayWh()), Beyond: d.RunShare > 1}
}

// most gives the heat that a unit can hold at the food's temperature in the
// ground's warmest month, W.
func most(g climate.Ground, ratedW float64) float64 {
	cabin := g.Months[hottest(g)].AirMean + quantity.Celsius(cabinOffsetK)
	unit := energy.Unit{RatedW: quantity.Watt(ratedW), Eta: energy.Eta().Typical, CooledBy: energy.Fan, Plate: energy.Thin}
	return float64(unit.Working(foodC, cabin).CapacityW)
}

// day is the row of the daily table for a heat.
type day struct {
	Ice   float64 // kg or lb
	Units [3]unitCell
}

// days gives the daily table, a row for each heat.
func days(g climate.Ground, u units) []day {
	var out []day
	for _, h := range u.heats {
		row := day{Ice: float64(heat.MeltKgPerDay(quantity.Watt(h*u.watt), heat.DrainCelsius)) / u.kilogram}
		for i, rated := range ratings {
			row.Units[i] = duty(g, h*u.watt, rated, energy.Fan)
		}
		out = append(out, row)
	}
	return out
}

// condenserFactor is what a unit cooled otherwise takes, over one with a fan.
func condenserFactor(g climate.Ground, by energy.Condenser) float64 {
	const middlingHeatW, middlingRatedW = 30, 50
	return duty(g, middlingHeatW, middlingRatedW, by).Wh / duty(g, middlingHeatW, middlingRatedW, energy.Fan).Wh
}

// Lives and horizons of the cost factors, years. A life of 0 lasts for ever.
var (
	lives    = []float64{5, 6, 8, 10, 12, 15, 0}
	horizons = []int{5, 8, 10, 12, 15, 20}
)

// factors gives the yearly cost of 100 spent today on a thing that is renewed
// after each life, a row for each life, a column for each horizon.
func factors() [][]float64 {
	var out [][]float64
	for _, life := range lives {
		var row []float64
		for _, years := range horizons {
			line := cost.Line{First: 100, Life: quantity.Year(life), Renewal: 100}
			row = append(row, float64(cost.Schedule([]cost.Line{line}, years, nil).YearlyEquivalent(rate)))
		}
		out = append(out, row)
	}
	return out
}
