package season_test

import (
	"math/rand/v2"
	"testing"

	"coldreckon/economics/season"
)

// years runs a boat on ice through some years of weather, and gives its cold
// and cool days.
func (c scene) yearsOnIce(b *aboard, ice season.Icing, years uint64) (cold, cool int) {
	for seed := range years {
		c.seed = seed
		x, _ := c.at(b.ground).runIce(ice)
		cold, cool = cold+x.ColdDays, cool+x.CoolDays
	}
	return cold, cool
}

// TestMoreNeverWarmsIce: a better box, more room, a larger carry, a smaller
// loss on the way, surer stops, daily shops and runs never cost cold or cool
// days on ice.
//
// Of ice by the kilogram that holds in every boat, but for two things that the
// owner plans by: with surer stops he plans to fewer of them, and daily stops
// come one by one, so that a run of bad luck can now and then cost what a larger
// purchase would have saved. Whole bags round what he wants up or down, so that
// a little less of it may be a bag less. Each is bounded: few boats, a twentieth
// of their days at most, and never on average.
//
// Guards the ice's own surface (with the surface sized to the leak fails), the
// plan by the future's own box, the floor that is no more than fits, and each
// limit of purchase.
func TestMoreNeverWarmsIce(t *testing.T) {
	const boats, years = 40, 4
	r, grounds := rand.New(rand.NewPCG(5, 10)), summerGrounds()
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	better := map[string]func(c *scene, ice *season.Icing, k float64){
		"less leak":   func(c *scene, _ *season.Icing, k float64) { c.leakShare *= k },
		"more room":   func(_ *scene, ice *season.Icing, k float64) { ice.RoomKg /= k },
		"more carry":  func(_ *scene, ice *season.Icing, k float64) { ice.CarryKg /= k },
		"less loss":   func(_ *scene, ice *season.Icing, k float64) { ice.CarryLoss *= k },
		"surer stops": func(_ *scene, ice *season.Icing, k float64) { ice.FoundShare = 1 - k*(1-ice.FoundShare) },
		"daily shops": func(c *scene, _ *season.Icing, _ float64) { c.shopEvery = 1 },
		"runs":        func(_ *scene, ice *season.Icing, _ float64) { ice.Runs = true },
	}
	mayCost := map[string]bool{"surer stops": true, "daily shops": true, "runs": true}
	type count struct{ worse, gained, days int }
	byBag, byKg := map[string]*count{}, map[string]*count{}
	for name := range better {
		byBag[name], byKg[name] = &count{}, &count{}
	}
	for range boats {
		c, g := summerBoat(r, grounds)
		c.targetC = 4
		ice := cubes()
		if r.IntN(2) == 0 {
			ice = block()
			ice.WaterKept = r.IntN(2) == 0
		}
		ice.RoomKg, ice.CarryKg, ice.CarryLoss, ice.FoundShare = between(5, 60), between(5, 40), between(0, 0.2), r.Float64()
		ice.Precooled = r.IntN(2) == 0
		k := between(0.5, 0.95)
		b := &aboard{oracle: oracle{ground: g}}
		for _, counts := range []map[string]*count{byBag, byKg} {
			cold, cool := c.yearsOnIce(b, ice, years)
			for name, change := range better {
				c2, ice2 := c, ice
				change(&c2, &ice2, k)
				cold2, cool2 := c2.yearsOnIce(b, ice2, years)
				n := counts[name]
				n.gained += cold2 - cold + cool2 - cool
				n.days += 32 * years
				if lost := max(cold-cold2, cool-cool2); lost > 0 {
					n.worse++
					if lost > 32*years/20 {
						t.Errorf("%s, %s: %d and %d cold and cool days, then %d and %d\n%+v\n%+v, %.2f", g.ID, name, cold, cool, cold2, cool2, c, ice, k)
					}
				}
			}
			ice.PortionKg = 0.01
		}
	}
	for name := range better {
		bag, kg := byBag[name], byKg[name]
		t.Logf("%-12s by the bag %d of %d boats worse, %+.2f days of 100; by the kilogram %d, %+.2f", name,
			bag.worse, boats, 50*float64(bag.gained)/float64(bag.days), kg.worse, 50*float64(kg.gained)/float64(kg.days))
		if bag.gained < 0 || kg.gained < 0 || bag.worse > boats/20 || kg.worse > boats/20 || kg.worse > 0 && !mayCost[name] {
			t.Errorf("%s: worse for %d and %d of %d boats, gains %d and %d days", name, bag.worse, kg.worse, boats, bag.gained, kg.gained)
		}
	}
}
