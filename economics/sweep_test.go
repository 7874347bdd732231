package economics_test

import (
	"math"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// wellBuilt is a small dry box for weekends in the cool, filled with one large
// block of ice.
func wellBuilt() economics.Boat {
	b := economics.Dunlin()
	b.Cruising.Ground, b.Cruising.TripNights, b.Cruising.ShopEveryDays = "scottish-west-coast", 2, 2
	b.Cruising.Nights = [12]float64{3: 4, 4: 8, 5: 6, 8: 6, 9: 4}
	b.Box.Volume, b.Box.LidSeal, b.Box.Drain, b.Box.OpensPerDay = 45, heat.GoodSeal, heat.TrappedDrain, 8
	for side := range b.Box.Faces {
		b.Box.Faces[side] = economics.Face{Foam: 0.08, Material: heat.XPS, State: heat.Dry, Neighbour: heat.Cabin}
	}
	b.Food.Target, b.Food.KgPerPersonDay, b.Food.MustBeColdShare, b.Food.ColdDaysWanted = 5, 1.2, 0.25, 0.75
	b.Ice.Kind, b.Ice.UnitSize, b.Ice.ShareOfBox, b.Ice.CarryLimit = heat.Block, 10, 0.25, 12
	return b
}

// bigBox is a large box in the tropics with medicine aboard, too much for the
// small unit.
func bigBox() economics.Boat {
	b := economics.Dunlin()
	b.Cruising.Ground, b.Food.Medicine = "virgin-islands", quantity.Yes
	b.Box.Volume = 250
	b.Small.RatedCooling = 35
	b.Power.SolarWp, b.Power.MaxPanelWp, b.Power.Battery = 400, 600, 400
	return b
}

// Across nights aboard and the price of ice, on three boats, at least three
// options are the cheapest that works somewhere.
func TestAtLeastThreeOptionsWinSomewhere(t *testing.T) {
	won := map[economics.OptionID]int{}
	for name, b := range map[string]economics.Boat{"dunlin": economics.Dunlin(), "well built": wellBuilt(), "big box": bigBox()} {
		r := reckon(t, b, quick)
		here := map[economics.OptionID]int{}
		for nights := 5.0; nights <= 365; nights *= 1.5 {
			for price := 0.1; price <= 6; price *= 1.5 {
				if id, ok := r.WinnerAt(nights, price); ok {
					here[id]++
					won[id]++
				}
			}
		}
		t.Logf("%s: %v", name, here)
	}
	if len(won) < 3 {
		t.Errorf("only %v win anywhere", won)
	}
}

// The winner at the boat's own nights and price is the cheapest that works;
// dearer ice never brings ice in, and more nights never take a unit out for ice.
func TestWinnerAtIsOrderly(t *testing.T) {
	for name, b := range map[string]economics.Boat{"dunlin": economics.Dunlin(), "well built": wellBuilt(), "big box": bigBox(), "invented": plausible(32)} {
		r := reckon(t, b, quick)
		nights, price := 0.0, float64(b.Ice.Price)
		for _, n := range b.Cruising.Nights {
			nights += n
		}
		var cheapest *economics.OptionFigures
		for i := range r.Options {
			if o := &r.Options[i]; o.Fitted.Works() && (cheapest == nil || o.Fitted.Yearly < cheapest.Fitted.Yearly) {
				cheapest = o
			}
		}
		id, ok := r.WinnerAt(nights, price)
		if ok != (cheapest != nil) || ok && id != cheapest.ID {
			t.Errorf("%s: %s wins at the boat's own nights and price, %v", name, id, ok)
		}
		for n := 5.0; n <= 365; n *= 1.4 {
			wasIce := true
			for p := 0.1; p <= 6; p *= 1.4 {
				id, ok := r.WinnerAt(n, p)
				ice := ok && id == economics.IceOnly
				if ice && !wasIce {
					t.Errorf("%s: ice comes in at %.2f a kilogram and %.0f nights, dearer than where it was out", name, p, n)
				}
				wasIce = ice
			}
		}
		for p := 0.1; p <= 6; p *= 1.4 {
			wasUnit := false
			for n := 5.0; n <= 365; n *= 1.4 {
				id, ok := r.WinnerAt(n, p)
				if wasUnit && ok && id == economics.IceOnly {
					t.Errorf("%s: ice takes over from a unit at %.0f nights", name, n)
				}
				wasUnit = ok && (id == economics.SmallUnit || id == economics.LargerUnit)
			}
		}
	}
}

// The plane's winners by hand: a yearly cost is what comes whatever the nights,
// upkeep among it, plus the rest scaled to the nights, the ice of it also to
// its price.
func TestWinnerAtByHand(t *testing.T) {
	b := wellBuilt() // 28 nights
	r := reckon(t, b, quick)
	won := map[economics.OptionID]bool{}
	for nights := 5.0; nights <= 365; nights *= 1.3 {
		for price := 0.1; price <= 6; price *= 1.3 {
			want, least := economics.OptionID(""), math.Inf(1)
			for _, o := range r.Options {
				if !o.Fitted.Works() {
					continue
				}
				nightly, ice := 0.0, 0.0
				for _, l := range o.Fitted.Lines {
					switch l.ID {
					case "upkeep":
					case "ice":
						ice = l.Yearly
					default:
						nightly += l.Yearly
					}
				}
				fixed := o.Fitted.Yearly - nightly - ice
				if cost := fixed + (nightly+ice*price/float64(b.Ice.Price))*nights/28; cost < least {
					want, least = o.ID, cost
				}
			}
			if got, _ := r.WinnerAt(nights, price); got != want {
				t.Fatalf("%.1f nights, ice at %.2f: %s wins; by hand %s", nights, price, got, want)
			}
			won[want] = true
		}
	}
	if !won[economics.IceOnly] || len(won) < 2 {
		t.Errorf("only %v win: the price of ice is not tried", won)
	}
}

// Where the same work is found, reckoning anew at another price of ice gives
// the winner that the plane gives.
func TestWinnerAtAnotherPriceReckonedAnew(t *testing.T) {
	agreed := 0
	for _, boat := range []economics.Boat{economics.Dunlin(), wellBuilt()} {
		r := reckon(t, boat, quick)
		nights := r.Of(economics.IceOnly).Fitted.Facts["nights_per_year"].(float64)
		for _, price := range []quantity.MoneyPerKg{0.2, 3} {
			boat.Ice.Price = price
			anew := reckon(t, boat, quick)
			same := true
			for i := range r.Options {
				same = same && r.Options[i].Fit.Out == anew.Options[i].Fit.Out
			}
			if !same {
				continue
			}
			got, _ := r.WinnerAt(nights, float64(price))
			want, _ := anew.WinnerAt(nights, float64(price))
			if got != want {
				t.Errorf("%s at %v a kilogram: %s wins, reckoned anew %s", boat.Cruising.Ground, price, got, want)
			}
			agreed++
		}
	}
	if agreed < 2 {
		t.Errorf("the same work in %d of 4 cases: too few to compare", agreed)
	}
}
