package economics_test

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// few is the fewest futures a reckoning takes: these tests look at what is the
// same in every future, or at typical inputs.
var few = economics.Settings{Futures: 20, Seed: 1}

// inventedSeeds name the boats on which the properties are tried.
var inventedSeeds = []uint64{200, 201, 202, 203, 204, 205, 206, 207}

var invented = sync.OnceValue(func() map[uint64]*economics.Reckoning {
	out := map[uint64]*economics.Reckoning{}
	for _, seed := range inventedSeeds {
		b := plausible(seed)
		if ground, err := b.Ground(); err == nil {
			if r, err := economics.Reckon(b, economics.TestBook(), ground, few); err == nil {
				out[seed] = r
			}
		}
	}
	return out
})

// compare reckons every invented boat as it is and with one change.
func compare(t *testing.T, change func(*economics.Boat), check func(t *testing.T, before, after *economics.Reckoning)) {
	t.Helper()
	for _, seed := range inventedSeeds {
		before := invented()[seed]
		if before == nil {
			t.Fatalf("boat %d cannot be reckoned", seed)
		}
		b := plausible(seed)
		change(&b)
		after := reckon(t, b, few)
		t.Run(fmt.Sprint("boat ", seed), func(t *testing.T) { check(t, before, after) })
	}
}

func line(o *economics.Outcome, id string) economics.CostLine {
	for _, l := range o.Lines {
		if l.ID == id {
			return l
		}
	}
	return economics.CostLine{}
}

// refrigerated are the options that hold a unit.
var refrigerated = []economics.OptionID{economics.SmallUnit, economics.LargerUnit}

func TestMoreFoamNeverMeltsMoreIce(t *testing.T) {
	for _, extra := range []quantity.Metre{0.005, 0.04} {
		compare(t, func(b *economics.Boat) {
			for _, side := range heat.Sides {
				f := b.Box.Faces[side]
				f.Foam += extra
				b.Box.Faces[side] = f
			}
		}, func(t *testing.T, before, after *economics.Reckoning) {
			for i, m := range after.Months {
				was := before.Months[i]
				if m.IceKgPerDay > was.IceKgPerDay || m.HeatGainW > was.HeatGainW {
					t.Errorf("month %d: %v kg a day with more foam, %v before", m.Month, m.IceKgPerDay, was.IceKgPerDay)
				}
				if m.SmallWhPerDay > was.SmallWhPerDay+1e-9 {
					t.Errorf("month %d: %v Wh a day with more foam, %v before", m.Month, m.SmallWhPerDay, was.SmallWhPerDay)
				}
			}
		})
	}
}

func TestHotterNeverCostsLessEnergy(t *testing.T) {
	for _, hotter := range []quantity.Kelvin{0.5, 5} {
		compare(t, func(b *economics.Boat) { b.Box.CabinOffset += hotter }, func(t *testing.T, before, after *economics.Reckoning) {
			for i, m := range after.Months {
				was := before.Months[i]
				if m.HeatGainW < was.HeatGainW || m.IceKgPerDay < was.IceKgPerDay || m.SmallWhPerDay < was.SmallWhPerDay || m.LargerWhPerDay < was.LargerWhPerDay {
					t.Errorf("month %d, hotter: %.2f W, %.3f kg, %.1f and %.1f Wh; before %.2f W, %.3f kg, %.1f and %.1f Wh", m.Month,
						m.HeatGainW, m.IceKgPerDay, m.SmallWhPerDay, m.LargerWhPerDay, was.HeatGainW, was.IceKgPerDay, was.SmallWhPerDay, was.LargerWhPerDay)
				}
				if m.SmallHeldC < was.SmallHeldC-1e-9 {
					t.Errorf("month %d: the box is held at %v °C in a hotter cabin, %v before", m.Month, m.SmallHeldC, was.SmallHeldC)
				}
			}
			// Not asked of ice: its surface is sized so that a full load holds
			// 4 °C in the box's own hottest month.
			for _, id := range refrigerated {
				if is, was := after.Of(id).AsTold.ColdDays, before.Of(id).AsTold.ColdDays; is > was {
					t.Errorf("%s: %v cold days in a hotter cabin, %v before", id, is, was)
				}
			}
		})
	}
}

// Without nights aboard nothing is run: no ice, no errand, no premium, no
// electricity, no spoilage. What is left is a unit's upkeep, which a unit that
// is owned needs whether it is used or not.
func TestNoNightsNoRunningCost(t *testing.T) {
	compare(t, func(b *economics.Boat) { b.Cruising.Nights = [12]float64{} }, func(t *testing.T, _, r *economics.Reckoning) {
		if len(r.Months) != 0 {
			t.Errorf("%d months without nights", len(r.Months))
		}
		upkeep := map[economics.OptionID]float64{economics.SmallUnit: float64(r.Boat.Small.Upkeep), economics.LargerUnit: float64(r.Boat.Larger.Upkeep)}
		for _, o := range r.Options {
			for _, out := range []economics.Outcome{o.AsTold, o.Fitted} {
				if out.PerYear != upkeep[o.ID] {
					t.Errorf("%s costs %v a year without a night aboard; want its upkeep of %v", o.ID, out.PerYear, upkeep[o.ID])
				}
				if out.ColdDays != 0 || out.Facts["nights_per_year"] != 0.0 {
					t.Errorf("%s: %v cold days in %v nights", o.ID, out.ColdDays, out.Facts["nights_per_year"])
				}
			}
		}
	})
}

func TestDearerIceNeverMakesIceCheaper(t *testing.T) {
	compare(t, func(b *economics.Boat) { b.Ice.Price *= 1.5 }, func(t *testing.T, before, after *economics.Reckoning) {
		for i := range before.Options {
			was, is := before.Options[i].AsTold, after.Options[i].AsTold
			ice := line(&was, "ice")
			if rise := is.PerYear - was.PerYear; math.Abs(rise-ice.Yearly/2) > 1e-9 {
				t.Errorf("%s: %v a year more when ice is half as dear again; it buys ice for %v", before.Options[i].ID, rise, ice.Yearly)
			}
			if is.Present < was.Present {
				t.Errorf("%s: present cost %v, before %v", before.Options[i].ID, is.Present, was.Present)
			}
		}
	})
}

// Nobody told a budget of nothing: 0 stands for no limit. A told one rules out
// what costs more, and no fitted option that works goes over it.
func TestBudget(t *testing.T) {
	compare(t, func(b *economics.Boat) { b.Money.Budget = 0 }, func(t *testing.T, before, after *economics.Reckoning) {
		for i, o := range after.Options {
			if o.AsTold.Works() != before.Options[i].AsTold.Works() {
				t.Errorf("%s works: %v without a budget", o.ID, o.AsTold.Works())
			}
		}
	})
	for _, budget := range []quantity.Money{1, 1500} {
		compare(t, func(b *economics.Boat) {
			b.Money.Budget = budget
			b.Known["money.budget"] = quantity.Told
		}, func(t *testing.T, before, after *economics.Reckoning) {
			for i, o := range after.Options {
				if o.AsTold.Works() && (o.AsTold.First > float64(budget) || !before.Options[i].AsTold.Works()) {
					t.Errorf("%s works as told for %v at first, the budget is %v", o.ID, o.AsTold.First, budget)
				}
				if o.Fitted.Works() && o.Fitted.First > float64(budget) {
					t.Errorf("%s is fitted out for %v, the budget is %v", o.ID, o.Fitted.First, budget)
				}
				if o.AsToldWorksOf100 > before.Options[i].AsToldWorksOf100 {
					t.Errorf("%s works in %d of 100 with a budget, %d without", o.ID, o.AsToldWorksOf100, before.Options[i].AsToldWorksOf100)
				}
			}
			if budget == 1 && (after.Options[2].WorkableOf100 != 0 || after.Options[3].WorkableOf100 != 0) {
				t.Error("a unit is had for 1")
			}
		})
	}
}

func TestMedicineRulesOutDryStores(t *testing.T) {
	compare(t, func(b *economics.Boat) { b.Food.Medicine = quantity.Yes }, func(t *testing.T, before, after *economics.Reckoning) {
		dry := after.Of(economics.DryStores)
		if dry.WorkableOf100 != 0 || dry.BestOf100 != 0 || dry.AsTold.Works() {
			t.Errorf("dry stores work in %d futures with medicine aboard", dry.WorkableOf100)
		}
		if after.Verdict.Works && after.Verdict.Option == economics.DryStores {
			t.Error("the verdict is dry stores with medicine aboard")
		}
		if was := before.Of(economics.DryStores); was.WorkableOf100 != 100 {
			t.Errorf("dry stores work in %d futures without", was.WorkableOf100)
		}
	})
}

// A yard doubles work on the box, and nothing else.
func TestYardDoublesWork(t *testing.T) {
	compare(t, func(b *economics.Boat) {
		b.Money.FittedBy = economics.Yard
		b.Money.WillSell = quantity.No
	}, func(t *testing.T, before, after *economics.Reckoning) {
		for i := range before.Options {
			if before.Boat.Money.FittedBy == economics.Yard || before.Boat.Money.WillSell == quantity.Yes {
				continue
			}
			was, is := before.Options[i].Fitted, after.Options[i].Fitted
			if before.Options[i].Fit.Out != after.Options[i].Fit.Out {
				continue // dearer work may make for another fit-out
			}
			for _, l := range was.Lines {
				want := l.First
				switch l.ID {
				case "seal", "drain_trap", "lid_foam", "foam", "cover", "vent":
					want = 2 * l.First
				}
				if got := line(&is, l.ID).First; !near(got, want, 1e-12) {
					t.Errorf("%s, %s: %v by a yard, %v by own hands", before.Options[i].ID, l.ID, got, l.First)
				}
			}
		}
	})
}

// What a boat's buyer pays lowers a cost, a longer horizon or a shorter life
// raises it, and a higher rate makes later payments weigh less.
func TestPresentCostMovesTheRightWay(t *testing.T) {
	for _, row := range []struct {
		name   string
		change func(*economics.Boat)
		sign   float64 // of the change in present cost
		only   []economics.OptionID
	}{
		{"sold", func(b *economics.Boat) { b.Money.WillSell = quantity.Yes }, -1, economics.Options[:]},
		{"five years more", func(b *economics.Boat) { b.Money.Years += 5; b.Money.WillSell = quantity.No }, 1, economics.Options[:]},
		{"higher rate", func(b *economics.Boat) { b.Money.Discount += 0.02; b.Money.WillSell = quantity.No }, -1, economics.Options[:]},
		{"shorter life", func(b *economics.Boat) { b.Small.Life /= 2 }, 1, []economics.OptionID{economics.SmallUnit}},
		{"dearer unit", func(b *economics.Boat) { b.Small.Price += 300 }, 1, []economics.OptionID{economics.SmallUnit}},
		{"dearer errand", func(b *economics.Boat) { b.Ice.TripCost += 5 }, 1, []economics.OptionID{economics.IceOnly}},
		{"one more aboard", func(b *economics.Boat) { b.Cruising.Crew++ }, 1, []economics.OptionID{economics.DryStores}},
	} {
		t.Run(row.name, func(t *testing.T) {
			compare(t, row.change, func(t *testing.T, before, after *economics.Reckoning) {
				if before.Boat.Money.WillSell == quantity.Yes && after.Boat.Money.WillSell == quantity.No {
					return // two changes at once
				}
				for _, id := range row.only {
					was, is := before.Of(id).AsTold.Present, after.Of(id).AsTold.Present
					if row.sign*(is-was) < -1e-9 {
						t.Errorf("%s: present cost %v, before %v", id, is, was)
					}
				}
			})
		})
	}
}

// In money of another name everything costs as much more, and nothing else
// changes.
func TestCurrencyDoesNotMatter(t *testing.T) {
	const rate = 7
	for _, seed := range inventedSeeds[:3] {
		before := invented()[seed]
		b, book := plausible(seed), economics.TestBook()
		b.Ice.Price *= rate
		b.Ice.TripCost *= rate
		b.Food.DryPremium *= rate
		for _, u := range []*economics.Unit{&b.Small, &b.Larger} {
			u.Price, u.Fitting, u.Upkeep = u.Price*rate, u.Fitting*rate, u.Upkeep*rate
		}
		for i := range book.Prices {
			if book.Prices[i].Billing != economics.Rate {
				book.Prices[i].Price = book.Prices[i].Price.Scale(rate)
			}
		}
		ground, err := b.Ground()
		if err != nil {
			t.Fatal(err)
		}
		after, err := economics.Reckon(b, book, ground, few)
		if err != nil {
			t.Fatal(err)
		}
		for i, o := range after.Options {
			was := before.Options[i]
			if !near(o.Fitted.Present, rate*was.Fitted.Present, 1e-9) || o.BestOf100 != was.BestOf100 || o.Fit.Out != was.Fit.Out {
				t.Errorf("boat %d, %s: %v, best in %d; before %v, best in %d", seed, o.ID, o.Fitted.Present, o.BestOf100, was.Fitted.Present, was.BestOf100)
			}
		}
		if after.Verdict.Option != before.Verdict.Option {
			t.Errorf("boat %d: %s, before %s", seed, after.Verdict.Option, before.Verdict.Option)
		}
	}
}

// More panel or more battery does not warm the food, but for the odd day on
// which an earlier start leaves less for the evening.
func TestMorePowerKeepsMoreDaysCold(t *testing.T) {
	for name, change := range map[string]func(*economics.Boat){
		"panel":   func(b *economics.Boat) { b.Power.SolarWp += 100; b.Power.MaxPanelWp += 100 },
		"battery": func(b *economics.Boat) { b.Power.Battery += 100 },
	} {
		t.Run(name, func(t *testing.T) {
			compare(t, change, func(t *testing.T, before, after *economics.Reckoning) {
				for _, id := range refrigerated {
					was, is := before.Of(id).AsTold.ColdDays, after.Of(id).AsTold.ColdDays
					if is < was-0.25 {
						t.Errorf("%s: %v cold days, %v before", id, is, was)
					}
				}
			})
		})
	}
}
