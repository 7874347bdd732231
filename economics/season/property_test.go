package season_test

import (
	"math/rand/v2"
	"testing"

	"coldreckon/economics/climate"
	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

// summerBoat draws a boat with a short summer north of the tropics or in them:
// its cabin is always warmer than its box.
func summerBoat(r *rand.Rand, grounds []climate.Ground) (scene, climate.Ground) {
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	g := grounds[r.IntN(len(grounds))]
	return scene{nights: [12]float64{5: 8, 6: 12, 7: 12}, tripNights: between(1, 12), leakShare: between(0.3, 3), offsetK: between(0, 6),
		opens: between(0, 20), kgPerDay: between(0, 4), shopEvery: 1 + r.IntN(5), targetC: between(2, 8), panelWp: between(20, 200),
		batteryAh: between(20, 200), houseW: between(0, 12), engineHours: between(0, 1), sunFactor: between(0.5, 1.1), seed: r.Uint64()}, g
}

func summerGrounds() (out []climate.Ground) {
	for _, g := range climate.Grounds() {
		if g.LatDeg > 0 && min(g.Months[5].AirMin, g.Months[6].AirMin, g.Months[7].AirMin) > 12 {
			out = append(out, g)
		}
	}
	return out
}

func anyUnit(r *rand.Rand) season.Refrigerator {
	return unitOf([]energy.Condenser{energy.Fins, energy.Fan, energy.Seawater}[r.IntN(3)],
		[]energy.Plate{energy.Thin, energy.Eutectic}[r.IntN(2)], season.Start(r.IntN(2)))
}

// TestMoreFoamNeverCostsMore: a box that leaks less never melts more ice, nor
// takes more electricity where there is enough. (Where there is not it may: a
// unit that is cut off less often runs longer.)
//
// Guards the sign of the leak and of what the contents store.
func TestMoreFoamNeverCostsMore(t *testing.T) {
	r, grounds := rand.New(rand.NewPCG(5, 1)), summerGrounds()
	for range 100 {
		c, g := summerBoat(r, grounds)
		foamed := c
		foamed.leakShare *= 0.3 + 0.69*r.Float64()
		for _, ice := range []season.Icing{cubes(), block()} {
			ice.FoundShare = 1
			bare, _ := c.at(g).runIce(ice)
			better, _ := foamed.at(g).runIce(ice)
			if total(better.MeltKgBy) > total(bare.MeltKgBy)+1e-9 {
				t.Errorf("%s %+v: leak %.2f melts %.3f kg, %.2f %.3f kg", g.ID, c, c.leakShare, total(bare.MeltKgBy), foamed.leakShare, total(better.MeltKgBy))
			}
		}
		unit := anyUnit(r)
		ample(&c)
		ample(&foamed)
		bare, _ := c.at(g).runUnit(unit)
		better, _ := foamed.at(g).runUnit(unit)
		if better.UnitWh > bare.UnitWh+1e-6 {
			t.Errorf("%s %+v: leak %.2f takes %.3f Wh, %.2f %.3f Wh", g.ID, c, c.leakShare, bare.UnitWh, foamed.leakShare, better.UnitWh)
		}
		if bare.UnitWh == 0 || bare.Nights == 0 {
			t.Errorf("%s: nothing ran", g.ID)
		}
	}
}

func ample(c *scene) { c.batteryAh, c.shore = 5000, 1 }

// TestHotterNeverCostsLess: with enough electricity a warmer cabin takes more
// of it, and melts more ice.
//
// Guards the sign of the condenser's rise and of cabin over box.
func TestHotterNeverCostsLess(t *testing.T) {
	r, grounds := rand.New(rand.NewPCG(5, 2)), summerGrounds()
	for range 100 {
		c, g := summerBoat(r, grounds)
		ample(&c)
		hot := c
		hot.offsetK += 0.2 + 4*r.Float64()
		unit, ice := anyUnit(r), cubes()
		ice.FoundShare = 1
		mild, _ := c.at(g).runUnit(unit)
		warm, _ := hot.at(g).runUnit(unit)
		if warm.UnitWh < mild.UnitWh-1e-6 {
			t.Errorf("%s %+v: %.3f Wh, %.2f K hotter %.3f Wh", g.ID, c, mild.UnitWh, hot.offsetK-c.offsetK, warm.UnitWh)
		}
		mild, _ = c.at(g).runIce(ice)
		warm, _ = hot.at(g).runIce(ice)
		if total(warm.MeltKgBy) < total(mild.MeltKgBy)-1e-9 {
			t.Errorf("%s %+v: %.3f kg, hotter %.3f kg", g.ID, c, total(mild.MeltKgBy), total(warm.MeltKgBy))
		}
	}
}

// TestMorePowerNeverLowersColdDays: neither a bigger panel nor a bigger battery
// costs a cold day. (One of 3,000 boats lost one by each: a cut-off waits a tenth of
// the battery for the sun, and falls into other hours.)
//
// Guards the sign of the sun in the bank and of the restart level.
func TestMorePowerNeverLowersColdDays(t *testing.T) {
	r, grounds := rand.New(rand.NewPCG(5, 3)), summerGrounds()
	gainedByPanel, gainedByBank := 0, 0
	for range 200 {
		c, g := summerBoat(r, grounds)
		unit := anyUnit(r)
		panel, bank := c, c
		panel.panelWp *= 1 + r.Float64()
		bank.batteryAh *= 1 + r.Float64()
		as, _ := c.at(g).runUnit(unit)
		withPanel, _ := panel.at(g).runUnit(unit)
		withBank, _ := bank.at(g).runUnit(unit)
		if withPanel.ColdDays < as.ColdDays {
			t.Errorf("%s %+v: %d cold days, with %.0f W %d", g.ID, c, as.ColdDays, panel.panelWp, withPanel.ColdDays)
		}
		if withBank.ColdDays < as.ColdDays {
			t.Errorf("%s %+v: %d cold days, with %.0f Ah %d", g.ID, c, as.ColdDays, bank.batteryAh, withBank.ColdDays)
		}
		gainedByPanel += withPanel.ColdDays - as.ColdDays
		gainedByBank += withBank.ColdDays - as.ColdDays
	}
	if gainedByPanel <= 0 || gainedByBank <= 0 {
		t.Errorf("panels bring %d cold days, batteries %d: the boats are not short of power", gainedByPanel, gainedByBank)
	}
}

// TestColdDaysAreNights: cold days are some of the nights, in every month, and
// a year without nights leaves the tally empty.
func TestColdDaysAreNights(t *testing.T) {
	r, grounds := rand.New(rand.NewPCG(5, 4)), climate.Grounds()
	for range 50 {
		b, unit, ice := anyScene(r, grounds)
		byUnit, _ := b.runUnit(unit)
		byIce, _ := b.runIce(ice)
		for _, x := range []*season.Tally{byUnit, byIce} {
			sum, nights := 0, 0
			for m := range 12 {
				if x.ColdDaysBy[m] > x.NightsBy[m] || x.NightsBy[m] != b.setup.Plan.NightsIn(m) {
					t.Errorf("month %d: %d cold days, %d nights, planned %d", m, x.ColdDaysBy[m], x.NightsBy[m], b.setup.Plan.NightsIn(m))
				}
				sum += x.ColdDaysBy[m]
				nights += x.NightsBy[m]
			}
			if sum != x.ColdDays || nights != x.Nights || x.Hours != 24*nights || x.HoursOff > x.Hours || x.LongestOff > x.HoursOff || x.WorstRun > x.Nights-x.ColdDays {
				t.Errorf("%d and %d cold days, %d and %d nights, %+v", sum, x.ColdDays, nights, x.Nights, x)
			}
			if share := x.ColdShare(); share < 0 || share > 1 {
				t.Errorf("share of cold days %g", share)
			}
		}
	}
	c := sloop()
	c.nights = [12]float64{}
	b := c.aboard(t)
	byUnit, unitRows := b.runUnit(anyUnit(r))
	byIce, iceRows := b.runIce(block())
	byStores := b.runStores()
	for name, x := range map[string]*season.Tally{"unit": byUnit, "ice": byIce, "stores": byStores} {
		if x.Years != 1 || x.LowestWh != float64(b.setup.Power.Bank.FullWh) || x.Nights+x.Hours+x.ColdDays+x.CoolDays+x.Errands != 0 ||
			x.GainKJ != 0 || x.UnitWh != 0 || x.IceBoughtKg+x.IceHomeKg != 0 || x.ColdShare() != 0 || x.CoolShare() != 0 {
			t.Errorf("%s: no nights leave %+v", name, *x)
		}
		if _, ok := x.WarmestC(0.02); ok {
			t.Errorf("%s: no nights have a warmest hour", name)
		}
	}
	if len(unitRows)+len(iceRows) != 0 || byUnit.ColdShare() != 0 {
		t.Errorf("no nights leave %d rows", len(unitRows)+len(iceRows))
	}
}

// TestYearsAddUp: two years in one tally are the sum of each in its own, and
// the worst of either.
func TestYearsAddUp(t *testing.T) {
	c := sloop()
	c.nights, c.panelWp, c.batteryAh = [12]float64{6: 12}, 80, 200
	first := c.aboard(t)
	c.seed++
	second := c.aboard(t)
	unit := unitOf(energy.Fins, energy.Thin, season.StartWarm)
	a, _ := first.runUnit(unit)
	b, _ := second.runUnit(unit)
	if a.LowestWh > b.LowestWh {
		first, second, a, b = second, first, b, a
	}
	if a.LowestWh == b.LowestWh {
		t.Errorf("both years are down to %g Wh", a.LowestWh)
	}
	var both season.Tally
	first.setup.Unit(&first.air, unit, &both, nil)
	second.setup.Unit(&second.air, unit, &both, nil)
	near(t, "unit", both.UnitWh, a.UnitWh+b.UnitWh, 1e-6)
	near(t, "sun", both.SunWh, a.SunWh+b.SunWh, 1e-6)
	near(t, "lowest", both.LowestWh, a.LowestWh, 1e-6) // one was traced, the other read from a table
	if both.Years != 2 || both.Nights != 24 || both.ColdDays != a.ColdDays+b.ColdDays || both.WorstRun != max(a.WorstRun, b.WorstRun) || both.LongestOff != max(a.LongestOff, b.LongestOff) {
		t.Errorf("%+v\n%+v\n%+v", both, *a, *b)
	}
}

// TestBetterNeverHurtsAUnit: less leak and a better efficiency never cost a unit
// cold or cool days. (A larger compressor or a cooler condenser may, short of
// power: its colder plate makes less of every watt-hour.)
//
// Guards the sign of the efficiency in what the bank allows, and of the leak.
func TestBetterNeverHurtsAUnit(t *testing.T) {
	r, grounds := rand.New(rand.NewPCG(5, 12)), summerGrounds()
	gained := map[string]int{}
	better := map[string]func(c *scene, u *season.Refrigerator, k float64){
		"less leak":         func(c *scene, _ *season.Refrigerator, k float64) { c.leakShare *= k },
		"better efficiency": func(_ *scene, u *season.Refrigerator, k float64) { u.Cycle.Eta /= k },
	}
	for range 120 {
		c, g := summerBoat(r, grounds)
		c.drinksKg = 4 * r.Float64()
		unit := anyUnit(r)
		k := 0.6 + 0.38*r.Float64()
		as, _ := c.at(g).runUnit(unit)
		for name, change := range better {
			c2, u2 := c, unit
			change(&c2, &u2, k)
			got, _ := c2.at(g).runUnit(u2)
			if lost := max(as.ColdDays-got.ColdDays, as.CoolDays-got.CoolDays); lost > 0 {
				t.Errorf("%s, %s by %.2f: %d and %d cold and cool days, then %d and %d; %+v", g.ID, name, k, as.ColdDays, as.CoolDays, got.ColdDays, got.CoolDays, c)
			}
			gained[name] += got.ColdDays - as.ColdDays
		}
	}
	for name := range better {
		if gained[name] <= 0 {
			t.Errorf("%s gains %d days", name, gained[name])
		}
	}
}
