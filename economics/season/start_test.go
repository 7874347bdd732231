package season_test

import (
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

// TestStarts tells the three starts of a trip apart by their first hour.
//
// Guards startUnit: the target on shore, the warm start where the sun does not
// do, the cold of a plate in the pre-cooling; and closedBoxWh, its fan and its
// mean day.
func TestStarts(t *testing.T) {
	c := sloop()
	c.nights, c.tripNights, c.engineHours = [12]float64{7: 3}, 3, 0
	for _, row := range []struct {
		name    string
		start   season.Start
		panelWp float64
		cold    bool
	}{
		{"warm", season.StartWarm, 100, false},
		{"on shore", season.StartOnShore, 0, true},
		{"on its own sun", season.StartOnOwnSun, 400, true},
		{"on too little sun", season.StartOnOwnSun, 1, false},
	} {
		c.panelWp = row.panelWp
		b := c.aboard(t)
		x, rows := b.runUnit(unitOf(energy.Fan, energy.Thin, row.start))
		first, bank := rows[0], b.setup.Power.Bank
		if cold := first.FoodC == c.targetC; cold != row.cold {
			t.Errorf("%s: %g °C after an hour", row.name, first.FoodC)
		}
		// What the first hour left, and what it took, is what the bank began with.
		began := first.ChargeWh + first.UnitW + c.houseW - first.SunW
		// A bank that is full and given more than is taken stays full.
		if first.ChargeWh < float64(bank.FullWh) {
			near(t, row.name+": the bank", began, float64(bank.FullWh), 1e-9)
		}
		if billed := x.PullDownShoreWh > 0; billed != (row.start == season.StartOnShore) {
			t.Errorf("%s: %g Wh of pre-cooling", row.name, x.PullDownShoreWh)
		}
	}
	// The panel on whose size the start turns gives what the closed box takes.
	for _, unit := range []season.Refrigerator{
		unitOf(energy.Fan, energy.Thin, season.StartOnOwnSun),
		unitOf(energy.Seawater, energy.Thin, season.StartOnOwnSun),
		unitOf(energy.Fan, energy.Eutectic, season.StartOnOwnSun),
	} {
		low, high := 1.0, 1000.0
		for range 60 {
			c.panelWp = (low + high) / 2
			if _, rows := c.aboard(t).runUnit(unit); rows[0].FoodC == c.targetC {
				high = c.panelWp
			} else {
				low = c.panelWp
			}
		}
		b := c.aboard(t)
		near(t, "sun that does", b.meanSunWh(7), b.closedBoxWh(unit, 7), 1e-6*b.meanSunWh(7))
	}
	c.panelWp = 100
	// In a box that is just at its limit the food follows at once, and its six
	// hours do not count, however cold the unit makes it meanwhile.
	atLimit := c.aboard(t)
	_, hours := atLimit.runUnit(unitOf(energy.Fan, energy.Thin, season.StartWarm))
	atLimit.setup.LimitC = hours[0].CabinC
	_, hours = atLimit.runUnit(unitOf(energy.Fan, energy.Thin, season.StartWarm))
	for i, h := range hours[:24] {
		if h.Counted != (i >= 6) {
			t.Errorf("a box at its limit: hour %d counts %t", i, h.Counted)
		}
	}
	// Box and plate are pulled down: 60 kJ/K from cabin to target, and the
	// plate's solution, at a COP of 1 to 4.
	b := c.aboard(t)
	plate := unitOf(energy.Fan, energy.Eutectic, season.StartOnShore)
	half := plate
	half.StoreKJ /= 2
	whole, rows := b.runUnit(plate)
	part, _ := b.runUnit(half)
	boxKJ := 60 * (rows[0].CabinC - c.targetC)
	near(t, "box and plate to box and half a plate", whole.PullDownShoreWh/part.PullDownShoreWh, (boxKJ+plate.StoreKJ)/(boxKJ+half.StoreKJ), 1e-9)
	if cop := (boxKJ + plate.StoreKJ) / 3.6 / whole.PullDownShoreWh; cop < 1 || cop > 4 { // the fan counted
		t.Errorf("%g Wh for %g kJ: a COP of %.2f", whole.PullDownShoreWh, boxKJ+plate.StoreKJ, cop)
	}
}
