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
	rankingTo    = flag.String("ranking", "", "write which figures decide, over many invented boats, as Markdown to this file")
	rankingBoats = flag.Int("ranking-boats", 300, "how many boats it looks at")
)

func quickly(t *testing.T, b Boat) *Reckoning {
	t.Helper()
	ground, err := b.Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := Reckon(b, testBook(), ground, Settings{Futures: 20, Seed: 1})
	if err != nil {
		return nil // foam that leaves no box
	}
	return r
}

// What knowing each uncertain figure would save. Without -ranking one boat shows
// that the season moves the price of a cold day, as anyone would say, and the
// rate of interest hardly.
func TestRanking(t *testing.T) {
	boats := *rankingBoats
	if *rankingTo == "" {
		price := func(again string) float64 {
			return quickly(t, plausibleBut(5004, again)).Of(SmallUnit).PriceOfCold.Typical
		}
		before := price("")
		season, rate := math.Abs(price("cruising.nights")-before), math.Abs(price("money.discount")-before)
		if season <= rate {
			t.Errorf("other nights move the price of cold by %.2f, another rate by %.2f", season, rate)
		}
		return
	}
	worth, first := map[string]float64{}, map[string]int{}
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
	}
	names := slices.SortedFunc(maps.Keys(worth), func(a, b string) int { return cmp.Compare(worth[b], worth[a]) })
	var out strings.Builder
	fmt.Fprintf(&out, "| uncertain figure | share of the worth of knowing | first on so many boats |\n|---|---|---|\n")
	for _, name := range names {
		fmt.Fprintf(&out, "| %s | %s | %d |\n", name, quantity.FormatShare(quantity.Fraction(worth[name]/float64(boats))), first[name])
	}
	if err := os.WriteFile(*rankingTo, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
