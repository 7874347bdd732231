package economics_test

import (
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// reckonedSeeds name the boats that are reckoned whole, again and again: one or
// two, as a search takes its time.
var reckonedSeeds = []uint64{200}

var reckoned = sync.OnceValue(func() map[uint64]*economics.Reckoning {
	out := map[uint64]*economics.Reckoning{}
	for _, seed := range reckonedSeeds {
		b := plausible(seed)
		if ground, err := b.Ground(); err == nil {
			if r, err := economics.Reckon(b, economics.TestBook(), ground, few); err == nil {
				out[seed] = r
			}
		}
	}
	return out
})

// compare reckons these boats as they are and with one change.
func compare(t *testing.T, change func(*economics.Boat), check func(t *testing.T, before, after *economics.Reckoning)) {
	t.Helper()
	for _, seed := range reckonedSeeds {
		before := reckoned()[seed]
		if before == nil {
			t.Fatalf("boat %d cannot be reckoned", seed)
		}
		b := plausible(seed)
		change(&b)
		after := reckon(t, b, few)
		t.Run(fmt.Sprint("boat ", seed), func(t *testing.T) { check(t, before, after) })
	}
}

// A limit on what may be spent at first changes nothing of any way: not its
// work, its counts, nor what it costs. It is held against the leader afterwards;
// what it buys costs no more, and a higher one buys no less.
func TestALimitIsHeldAgainstTheResult(t *testing.T) {
	over, bought := 0, 0
	reach := map[string]int{}
	for _, limit := range []quantity.Money{1, 400, 1500} {
		compare(t, func(b *economics.Boat) {
			b.Money.Budget = limit
			b.Known["money.budget"] = quantity.Told
		}, func(t *testing.T, before, after *economics.Reckoning) {
			for i, o := range after.Options {
				was := before.Options[i]
				if o.Fit.Out != was.Fit.Out || o.WorksOf100 != was.WorksOf100 || o.AsToldWorksOf100 != was.AsToldWorksOf100 || o.Fitted.Present != was.Fitted.Present || o.BestOf100 != was.BestOf100 {
					t.Errorf("%s: with a limit of %v %+v works in %d for %.0f; without %+v in %d for %.0f", o.ID, limit, o.Fit.Out, o.WorksOf100, o.Fitted.Present, was.Fit.Out, was.WorksOf100, was.Fitted.Present)
				}
			}
			a := after.Answer
			if a.Case != before.Answer.Case || a.Way() != before.Answer.Way() {
				t.Errorf("a limit of %v turns %s by %s into %s by %s", limit, before.Answer.Case, before.Answer.Way(), a.Case, a.Way())
			}
			if len(after.Futures.Weighed) == 0 {
				return
			}
			first := after.Of(a.Way()).Fitted.First
			if math.Abs(a.OverLimit-math.Max(0, first-float64(limit))) > 1e-9 {
				t.Errorf("%v over the limit of %v, first cost %v", a.OverLimit, limit, first)
			}
			if a.OverLimit > 0 {
				over++
			}
			if a.Within != "" && after.Of(a.Within).Fitted.First > float64(limit) {
				t.Errorf("%s is within the limit of %v at %v", a.Within, limit, after.Of(a.Within).Fitted.First)
			}
			if l := a.LimitBuys; l != nil {
				bought++
				if l.First > float64(limit)+1e-6 || a.OverLimit == 0 {
					t.Errorf("the limit of %v buys what costs %v", limit, l.First)
				}
				if l.WorksOf100 < reach[t.Name()] {
					t.Errorf("a limit of %v buys a reach of %d, a lower one %d", limit, l.WorksOf100, reach[t.Name()])
				}
				reach[t.Name()] = l.WorksOf100
			}
		})
	}
	if over == 0 || bought == 0 {
		t.Errorf("%d over a limit, %d times something is bought with it", over, bought)
	}
}

// Medicine stands beside the answer and not in its place: dry stores never keep
// it, and a way is said to keep it in 99 of 100 futures or not at all.
func TestMedicineStandsBesideTheAnswer(t *testing.T) {
	compare(t, func(b *economics.Boat) { b.Food.Medicine = quantity.Yes }, func(t *testing.T, before, after *economics.Reckoning) {
		if after.Answer.Case != before.Answer.Case || after.Answer.Way() != before.Answer.Way() {
			t.Errorf("medicine turns %s by %s into %s by %s", before.Answer.Case, before.Answer.Way(), after.Answer.Case, after.Answer.Way())
		}
		for _, o := range after.Options {
			kept := slices.Contains(after.Answer.MedicineKept, o.ID)
			if kept != (o.MedicineOf100 >= 99 && o.ID != economics.DryStores) {
				t.Errorf("%s keeps 2 to 8 °C in %d of 100 and is said to keep it: %v", o.ID, o.MedicineOf100, kept)
			}
		}
	})
}

// In money of another name everything costs as much more, and nothing else
// changes.
func TestCurrencyDoesNotMatter(t *testing.T) {
	const rate = 7
	for _, seed := range reckonedSeeds {
		before := reckoned()[seed]
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
		if after.Answer.Way() != before.Answer.Way() {
			t.Errorf("boat %d: %s, before %s", seed, after.Answer.Way(), before.Answer.Way())
		}
	}
}
