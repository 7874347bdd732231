package economics_test

import (
	"reflect"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// withCooler is the invented boat on the Chesapeake in July, with a place for a
// cooler.
func withCooler(volume quantity.Litre, wall quantity.Metre) economics.Boat {
	b := economics.Dunlin()
	b.Cruising.Ground, b.Cruising.Nights = "chesapeake-bay", [12]float64{6: 14}
	b.Cooler = economics.Cooler{Stands: economics.CoolerInCabin, Volume: volume, Wall: wall, Price: 180}
	return b
}

// Common practice, no source: a load of ice in a thick passive cooler lasts 3 to
// 7 days in use.
//
// Inputs taken: 55 to 75 L with walls of 50 to 65 mm, in the cabin on the
// Chesapeake in July; two people, ten openings a day; half of it cubes, or a
// third of it blocks.
func TestLoadLastsDaysInAThickCooler(t *testing.T) {
	for _, c := range []struct {
		volume quantity.Litre
		wall   quantity.Metre
		kind   heat.IceKind
		share  quantity.Fraction
	}{{55, 0.05, heat.Cubes, 1. / 2}, {75, 0.065, heat.Cubes, 1. / 2}, {75, 0.065, heat.Block, 1. / 3}} {
		b := withCooler(c.volume, c.wall)
		b.Ice.Kind, b.Ice.ShareOfBox, b.Food.KgPerPersonDay = c.kind, c.share, 1.2
		f := reckon(t, b, few).Cooler
		t.Logf("%v L, %.0f mm, %s: %.2f W/K, %.1f kg last %.1f days; the box %.1f kg, %.1f days", c.volume, 1000*c.wall, c.kind,
			float64(f.LeakW), f.LoadKg, f.LastsDays, f.BoxLoadKg, f.BoxLastsDays)
		if f.LastsDays < 2.5 || f.LastsDays > 7.5 {
			t.Errorf("%v L, %.0f mm of %s: a load lasts %.1f days; practice says 3 to 7", c.volume, 1000*c.wall, c.kind, f.LastsDays)
		}
	}
}

// A cooler stands beside the four ways: it changes none of their figures, nor
// the answer.
func TestCoolerIsNeverSwappedIn(t *testing.T) {
	with := economics.Comparable(reckon(t, withCooler(60, 0.05), few))
	b := withCooler(60, 0.05)
	b.Cooler.Stands = economics.CoolerUnasked
	without := economics.Comparable(reckon(t, b, few))
	if with.Cooler == nil || without.Cooler != nil {
		t.Fatalf("a cooler with a place gives %v, one without %v", with.Cooler, without.Cooler)
	}
	if !reflect.DeepEqual(with.Options, without.Options) || !reflect.DeepEqual(with.Answer, without.Answer) {
		t.Error("the four ways or the answer differ with a cooler beside them")
	}
	if got, want := with.Cooler.Ice.Fitted.First, 180.0; got < want {
		t.Errorf("the cooler's way costs %v at first, the cooler alone %v", got, want)
	}
}

// More foam leaks less and keeps a load longer; more ice lasts longer; the sun on
// deck shortens it.
func TestCoolerProperties(t *testing.T) {
	at := func(change func(*economics.Cooler)) *economics.CoolerFigures {
		b := withCooler(60, 0.04)
		change(&b.Cooler)
		return reckon(t, b, few).Cooler
	}
	base := at(func(*economics.Cooler) {})
	thick := at(func(c *economics.Cooler) { c.Wall = 0.07 })
	deck := at(func(c *economics.Cooler) { c.Stands = economics.CoolerOnDeck })
	if !(thick.LeakW < base.LeakW && thick.LastsDays > base.LastsDays) {
		t.Errorf("thicker walls leak %v and last %v, thinner %v and %v", thick.LeakW, thick.LastsDays, base.LeakW, base.LastsDays)
	}
	if !(deck.LastsDays < base.LastsDays) {
		t.Errorf("on deck a load lasts %v, in the cabin %v", deck.LastsDays, base.LastsDays)
	}
}

// A boat whose drinks have a cooler of their own is one that drinks nothing out
// of her box and opens it less: told so by hand, the ways come out the same.
func TestDrinksInACoolerLeaveTheBox(t *testing.T) {
	for _, drinks := range []float64{1, 4} {
		b := withCooler(45, 0.05)
		b.Food.DrinksADay, b.Box.OpensPerDay = drinks, 10
		together := economics.Comparable(reckon(t, b, few))
		if together.Drinks != nil || together.Cooler == nil {
			t.Fatal("the cooler is for the drinks, untold")
		}
		b.Cooler.For = economics.CoolerForDrinks
		apart := economics.Comparable(reckon(t, b, few))
		d := apart.Drinks
		if d == nil || apart.Cooler != nil {
			t.Fatal("the cooler for drinks is not worked out")
		}
		t.Logf("%v a day: %+v", drinks, *d)
		if want := min(2*drinks, 5); d.OpensFewer != want {
			t.Errorf("%v a day each: the box is opened %v times less, want %v", drinks, d.OpensFewer, want)
		}
		byHand := b
		byHand.Cooler = economics.Cooler{}
		byHand.Food.DrinksADay, byHand.Box.OpensPerDay = 0, 10-d.OpensFewer
		if want := economics.Comparable(reckon(t, byHand, few)); !reflect.DeepEqual(apart.Options, want.Options) {
			t.Error("the ways differ from those of a box without drinks that is opened less")
		}
		for i, id := range economics.Options {
			if d.Apart[i] < d.Together[i] {
				t.Errorf("%s works in %d of 100 without the drinks, in %d with them", id, d.Apart[i], d.Together[i])
			}
		}
		// By hand: walls of 0.49 W/K, 27 K over ice, melt 3.4 kg a day; a kilogram of
		// drink cooled by 20 K a quarter of one. Over 14 nights 50 to 58 kg.
		if d.IceKg.Typical < 40 || d.IceKg.Typical > 75 || d.CoolShare.Typical <= 0.5 || d.CoolShare.High > 1 {
			t.Errorf("%v a day: %+v", drinks, *d)
		}
		for name, r := range map[string]quantity.Range{"kg": d.IceKg, "cost": d.IceCost, "cool": d.CoolShare} {
			if r.Low > r.Typical || r.Typical > r.High || name != "cool" && r.Low >= r.High {
				t.Errorf("%v a day: %s %v is no range", drinks, name, r)
			}
		}
		// The price is as uncertain as the weight, and apart from it.
		if price := float64(b.Ice.Price); d.IceCost.High/d.IceCost.Low <= d.IceKg.High/d.IceKg.Low || d.IceCost.Low > price*d.IceKg.Typical || d.IceCost.High < price*d.IceKg.Typical {
			t.Errorf("%v a day: ice of %v kg costs %v at %v a kg", drinks, d.IceKg, d.IceCost, price)
		}
	}
}
