package compare

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
)

// Heading stands over every form of the comparison.
const Heading = "This is not a survey or a valuation."

// Table is the comparison: a row for each boat, and what all rows share.
type Table struct {
	// Terms are the buyer's; TermsOf makes them. The zero Terms are each boat's
	// own.
	Terms Terms
	// For and By name whom it is prepared for, and who prepared it; Day is when.
	// Each may be empty.
	For, By, Day string
	Rows         []Row
	Sorted       string // the key it was sorted by; empty in the order given

	Seed    uint64 // of the futures, the same for all boats
	Futures int    // how many each boat was put to
	Prices  string // identity of the price book
	// BookCurrency is that of the price book, Currency that of the table, which
	// InCurrency sets; empty is the first boat's.
	BookCurrency, Currency string
	Version                string // of the program
}

// order gives a row's place under each key, lowest first.
var order = map[string]func(a, b *Row) int{
	"price":  by(func(r *Row) float64 { return r.middlePrice() }),
	"name":   func(a, b *Row) int { return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) },
	"yearly": by(func(r *Row) float64 { return r.Of(r.Way).Fitted.Yearly.Typical }),
	"first":  by(func(r *Row) float64 { return r.Of(r.Way).Fitted.First.Typical }),
	"work":   by(func(r *Row) float64 { return r.Of(r.Way).WorkCost.Typical }),
	"cold":   by(func(r *Row) float64 { return -r.mostCold() }),
	"leak":   by(func(r *Row) float64 { return r.Box.Leak.Typical }),
	"volume": by(func(r *Row) float64 { return -r.Box.VolumeL }),
	"stops":  by(func(r *Row) float64 { return float64(len(r.StopsFor(r.Way))) }),
	"ice":    by(func(r *Row) float64 { return r.Of(economics.IceOnly).Fitted.Yearly.Typical }),
	"small":  by(func(r *Row) float64 { return r.Of(economics.SmallUnit).Fitted.Yearly.Typical }),
	"larger": by(func(r *Row) float64 { return r.Of(economics.LargerUnit).Fitted.Yearly.Typical }),
}

func by(figure func(*Row) float64) func(a, b *Row) int {
	return func(a, b *Row) int { return cmp.Compare(figure(a), figure(b)) }
}

// byMoney are the keys that compare sums.
var byMoney = []string{"price", "yearly", "first", "work", "ice", "small", "larger"}

// middlePrice is the middle price of a cold day, infinite where she has no place.
func (r *Row) middlePrice() float64 {
	if !r.Placed() {
		return math.Inf(1)
	}
	return r.Of(r.Way).Price.Typical
}

// mostCold gives the futures of 100 in which the best way of keeping cold works
// as the boat stands.
func (r *Row) mostCold() float64 {
	most := 0
	for _, id := range coldWays {
		most = max(most, r.Of(id).AsTold.Works)
	}
	return float64(most)
}

// SortKeys lists the names that Sort takes, by the alphabet: name; price, the
// middle price of a cold day, least first, boats without a place last; yearly, first
// and work, the costs of the row's way to cold food with the work, least first;
// cold, works most often as she stands; leak, least first; volume, largest
// first; stops, those of the row's way, fewest first; ice, small and larger, the
// yearly cost of that way, least first.
func SortKeys() []string {
	return slices.Sorted(maps.Keys(order))
}

// Sort puts the rows in the order of a key, equal ones as they were, those with
// an error last; by a sum of money those in another currency before them, as
// they were. A key that is not known is an error.
func (t *Table) Sort(key string) error {
	less, ok := order[key]
	if !ok {
		return fmt.Errorf("sort key %q is not known; want %s", key, strings.Join(SortKeys(), ", "))
	}
	slices.SortStableFunc(t.Rows, func(a, b Row) int {
		if (a.Error != "") != (b.Error != "") {
			return cmp.Compare(count(a.Error != ""), count(b.Error != ""))
		}
		if a.Error != "" {
			return 0
		}
		if slices.Contains(byMoney, key) && (t.foreign(&a) || t.foreign(&b)) {
			return cmp.Compare(count(t.foreign(&a)), count(t.foreign(&b)))
		}
		return less(&a, &b)
	})
	t.Sorted = key
	return nil
}

func count(is bool) int {
	if is {
		return 1
	}
	return 0
}

// Failed counts the boats that could not be reckoned.
func (t *Table) Failed() int {
	n := 0
	for i := range t.Rows {
		if t.Rows[i].Error != "" {
			n++
		}
	}
	return n
}
