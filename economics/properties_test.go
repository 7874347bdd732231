package economics

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// inventedSeeds name the boats on which the properties are tried.
var inventedSeeds = []uint64{200, 201, 202, 203, 204, 205, 206, 207}

var invented = sync.OnceValue(func() map[uint64]*Reckoning {
	out := map[uint64]*Reckoning{}
	for _, seed := range inventedSeeds {
		if r, err := typically(plausible(seed)); err == nil {
			out[seed] = r
		}
	}
	return out
})

// muchWork is work on every part of box and boat, whatever it is good for.
var muchWork = FitOut{Seal: true, Drain: true, LidFoam: 0.025, InsideFoam: 0.025, OutsideFoam: 0.05, Cover: true, PanelWp: 50, Battery: 50}

// typically reckons a boat at typical inputs only, without search and futures:
// as told and, in the place of the fitted case, with much work.
func typically(b Boat) (*Reckoning, error) {
	ground, err := b.Ground()
	if err != nil {
		return nil, err
	}
	w, book := newWorld(&b, ground), testBook()
	r := &Reckoning{Boat: b, Ground: ground}
	if r.Box, err = boxEvidence(&b, &w); err != nil {
		return nil, err
	}
	var air weatherYears
	var base baseLoads
	air.fill(&b, &w, &Typical, stream{1, 0}, typicalYears)
	told := make([]*proposal, 4)
	for i, id := range Options {
		o := &r.Options[i]
		o.ID = id
		o.Fit.Out = muchWork
		if id == IceOnly || id == DryStores {
			o.Fit.Out.PanelWp, o.Fit.Out.Battery = 0, 0
		}
		if told[i], err = newProposal(&b, &book, &w, 1, id, FitOut{}); err != nil {
			return nil, err
		}
		worked, err := newProposal(&b, &book, &w, 1, id, o.Fit.Out)
		if err != nil {
			return nil, err
		}
		if err := o.live(told[i], worked, &air, &base); err != nil {
			return nil, err
		}
	}
	r.Months = monthFigures(told[0], told[2], told[3])
	r.WithWork = r.Months
	r.Units = [2]UnitFigures{told[2].unitFigures(), told[3].unitFigures()}
	for i, id := range refrigerated {
		r.BreakEven[i] = breakEven(id, &r.Of(id).AsTold, &r.Of(IceOnly).AsTold)
	}
	return r, nil
}

// compare reckons every invented boat as it is and with one change.
func compare(t *testing.T, change func(*Boat), check func(t *testing.T, before, after *Reckoning)) {
	t.Helper()
	for _, seed := range inventedSeeds {
		before := invented()[seed]
		if before == nil {
			t.Fatalf("boat %d cannot be reckoned", seed)
		}
		b := plausible(seed)
		change(&b)
		after, err := typically(b)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(fmt.Sprint("boat ", seed), func(t *testing.T) { check(t, before, after) })
	}
}

func line(o *Outcome, id string) CostLine {
	for _, l := range o.Lines {
		if l.ID == id {
			return l
		}
	}
	return CostLine{}
}

func near(a, b, share float64) bool {
	return math.Abs(a-b) <= share*math.Max(math.Abs(a), math.Abs(b))
}

// refrigerated are the options that hold a unit.
var refrigerated = []OptionID{SmallUnit, LargerUnit}

func TestMoreFoamNeverMeltsMoreIce(t *testing.T) {
	for _, extra := range []quantity.Metre{0.005, 0.04} {
		compare(t, func(b *Boat) {
			for _, side := range heat.Sides {
				f := b.Box.Faces[side]
				f.Foam += extra
				b.Box.Faces[side] = f
			}
		}, func(t *testing.T, before, after *Reckoning) {
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
		compare(t, func(b *Boat) { b.Box.CabinOffset += hotter }, func(t *testing.T, before, after *Reckoning) {
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
			// Ice is bought for the warmth expected: with more of it a day may turn out colder.
			for _, id := range refrigerated {
				if is, was := after.Of(id).AsTold.ColdDays, before.Of(id).AsTold.ColdDays; is > was+1e-9 {
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
	compare(t, func(b *Boat) { b.Cruising.Nights = [12]float64{} }, func(t *testing.T, _, r *Reckoning) {
		if len(r.Months) != 0 {
			t.Errorf("%d months without nights", len(r.Months))
		}
		upkeep := map[OptionID]float64{SmallUnit: float64(r.Boat.Small.Upkeep), LargerUnit: float64(r.Boat.Larger.Upkeep)}
		for _, o := range r.Options {
			for _, out := range []Outcome{o.AsTold, o.Fitted} {
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
	compare(t, func(b *Boat) { b.Ice.Price *= 1.5 }, func(t *testing.T, before, after *Reckoning) {
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

// A yard doubles work on the box, and nothing else.
func TestYardDoublesWork(t *testing.T) {
	compare(t, func(b *Boat) {
		b.Money.FittedBy = Yard
		b.Money.WillSell = quantity.No
	}, func(t *testing.T, before, after *Reckoning) {
		for i := range before.Options {
			if before.Boat.Money.FittedBy == Yard || before.Boat.Money.WillSell == quantity.Yes {
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
		change func(*Boat)
		sign   float64 // of the change in present cost
		only   []OptionID
	}{
		{"sold", func(b *Boat) { b.Money.WillSell = quantity.Yes }, -1, Options[:]},
		{"five years more", func(b *Boat) { b.Money.Years += 5; b.Money.WillSell = quantity.No }, 1, Options[:]},
		{"higher rate", func(b *Boat) { b.Money.Discount += 0.02; b.Money.WillSell = quantity.No }, -1, Options[:]},
		{"shorter life", func(b *Boat) { b.Small.Life /= 2 }, 1, []OptionID{SmallUnit}},
		{"dearer unit", func(b *Boat) { b.Small.Price += 300 }, 1, []OptionID{SmallUnit}},
		{"dearer errand", func(b *Boat) { b.Ice.TripCost += 5 }, 1, []OptionID{IceOnly}},
		{"one more aboard", func(b *Boat) { b.Cruising.Crew++ }, 1, []OptionID{DryStores}},
	} {
		t.Run(row.name, func(t *testing.T) {
			compare(t, row.change, func(t *testing.T, before, after *Reckoning) {
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

// More panel or more battery does not warm the food, but for the odd day on
// which an earlier start leaves less for the evening.
func TestMorePowerKeepsMoreDaysCold(t *testing.T) {
	for name, change := range map[string]func(*Boat){
		"panel":   func(b *Boat) { b.Power.SolarWp += 100; b.Power.MaxPanelWp += 100 },
		"battery": func(b *Boat) { b.Power.Battery += 100 },
	} {
		t.Run(name, func(t *testing.T) {
			compare(t, change, func(t *testing.T, before, after *Reckoning) {
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
