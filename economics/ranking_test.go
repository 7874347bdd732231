package economics

import (
	"cmp"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

var (
	rankingTo    = flag.String("ranking", "", "write which answers and figures decide, over many invented boats, as Markdown to this file")
	rankingBoats = flag.Int("ranking-boats", 300, "how many boats it looks at")
)

// anew is which part of the boats is asked every question anew: one in so many.
const anew = 30

// rankedKeys are the answers that plausible draws.
func rankedKeys() []string {
	keys := map[string]bool{}
	for seed := range uint64(40) {
		for key := range plausible(seed).Known {
			keys[key] = true
		}
	}
	return slices.Sorted(maps.Keys(keys))
}

// decided is what an owner does with an answer: the way, if a cold day is worth
// so much to them, else "" for going without.
func decided(r *Reckoning, worth float64) OptionID {
	a := &r.Answer
	if a.Case == NoneReaches || a.Case == NoRoomAtAll || a.Case == CoolOnly || a.Way() == "" || !(a.NoWorth+a.YesWorth < 2*worth) {
		return ""
	}
	return a.Way()
}

func quickly(t *testing.T, b Boat) *Reckoning {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := Reckon(b, testBook(), ground, Settings{Futures: 60, Seed: 1})
	if err != nil {
		return nil // foam that leaves no box
	}
	return r
}

// The ranking behind the first round of questions: how often one answer, drawn
// anew, changes what the owner of an invented boat does, at two worths of a cold
// day; and what knowing each uncertain figure would save. Without -ranking one
// boat shows that the season moves the price of a cold day, as anyone would say,
// and the rate of interest hardly.
func TestRanking(t *testing.T) {
	boats := *rankingBoats
	if *rankingTo == "" {
		for seed := range uint64(1) {
			price := func(again string) float64 {
				r := quickly(t, plausibleBut(5000+seed, again))
				return r.Of(SmallUnit).PriceOfCold.Typical
			}
			before := price("")
			season, rate := math.Abs(price("cruising.nights")-before), math.Abs(price("money.discount")-before)
			if season <= rate {
				t.Errorf("boat %d: other nights move the price of cold by %.2f, another rate by %.2f", 5000+seed, season, rate)
			}
		}
		return
	}
	changed, tried := map[string]int{}, 0
	worth, first := map[string]float64{}, map[string]int{}
	keys := rankedKeys()
	for seed := range uint64(boats) {
		before := quickly(t, plausible(5000+seed))
		if before == nil {
			continue
		}
		all, best, name := 0.0, 0.0, ""
		for _, in := range before.Futures.Inputs {
			if all += in.EVPPI; in.EVPPI > best {
				best, name = in.EVPPI, in.Name
			}
		}
		for _, in := range before.Futures.Inputs {
			if all > 0 {
				worth[in.Name] += in.EVPPI / all
			}
		}
		if name != "" {
			first[name]++
		}
		if seed%anew != 0 {
			continue
		}
		tried++
		for _, key := range keys {
			after := quickly(t, plausibleBut(5000+seed, key))
			if after == nil || decided(after, 3) != decided(before, 3) || decided(after, 8) != decided(before, 8) {
				changed[key]++
			}
		}
	}
	slices.SortStableFunc(keys, func(a, b string) int { return cmp.Compare(changed[b], changed[a]) })
	names := slices.SortedFunc(maps.Keys(worth), func(a, b string) int { return cmp.Compare(worth[b], worth[a]) })
	var out strings.Builder
	fmt.Fprintf(&out, "| answer | drawn anew, it changes what is done on so many of 100 boats |\n|---|---|\n")
	for _, key := range keys {
		fmt.Fprintf(&out, "| `%s` | %.0f |\n", key, math.Round(100*float64(changed[key])/float64(tried)))
	}
	fmt.Fprintf(&out, "\n| uncertain figure | share of the worth of knowing | first on so many boats |\n|---|---|---|\n")
	for _, name := range names {
		fmt.Fprintf(&out, "| %s | %s | %d |\n", name, quantity.FormatShare(quantity.Fraction(worth[name]/float64(boats))), first[name])
	}
	if err := os.WriteFile(*rankingTo, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
