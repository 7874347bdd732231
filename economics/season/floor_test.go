package season_test

import "testing"

// The least load worth having must hold what the box really takes in: more
// leak, more openings, more drinks and more food to be chilled each ask for
// more of it, and for no less melted a day.
//
// Guards the sign of every part of the gain in IcePlan.
func TestFloorGrowsWithEveryGain(t *testing.T) {
	base := sloop()
	base.leakShare = 0.5 // so that the floor stays well under what fits
	floor := func(c scene) (floorKg, meltKg float64) {
		b := c.aboard(t)
		p := b.setup.IcePlan(cubes())
		return p.FloorKg[6], p.MeltKgADay[6]
	}
	want, melts := floor(base)
	if want <= 0 || want >= cubes().RoomKg*0.9 {
		t.Fatalf("a floor of %g kg of %g that fit; the check needs one between", want, cubes().RoomKg)
	}
	for name, change := range map[string]func(*scene){
		"leak":     func(c *scene) { c.leakShare *= 1.1 },
		"openings": func(c *scene) { c.opens += 5 },
		"drinks":   func(c *scene) { c.drinksKg += 1 },
		"food":     func(c *scene) { c.kgPerDay += 0.5 },
		"cabin":    func(c *scene) { c.offsetK += 1 },
	} {
		c := base
		change(&c)
		if got, melt := floor(c); got <= want || melt < melts {
			t.Errorf("more %s: a floor of %.4f kg after %.4f, melting %.4f kg a day after %.4f", name, got, want, melt, melts)
		}
	}
}
