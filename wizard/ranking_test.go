package wizard

import (
	"cmp"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

var rankingTo = flag.String("ranking", "", "reckon invented boats and write what each answer moves to this file, which is ranking.csv")

// ranked reports whether an answer is drawn and ranked: those that one figure
// or one choice gives, whatever the other answers are.
func ranked(row questions.Row) bool {
	switch row.Kind {
	case questions.Text, questions.Records, questions.Dimensions, questions.Opening, questions.MonthTemperatures, questions.MonthOverrides:
		return false
	case questions.Months:
		return row.Key == questions.NightsKey
	}
	switch key := row.Key[strings.LastIndex(row.Key, ".")+1:]; key {
	case "volts", "elsewhere", "rated_amps", "rated_box", "spacer_fits", "void", "by_day", "stands": // of few, or what another answer gives
		return false
	}
	return row.When == nil && !row.Safety && row.Group != questions.OfBoat && row.Group != questions.OfFaces
}

// invented gives a boat whose owner has answered every ranked question, each
// apart from all others: a choice is the usual one for seven owners of ten, any
// ground is as likely as the next, and figures lie round the usual one, up to
// halfway to the ends of what is usual, which hangs on answers before it: more
// nights, longer trips. The answer to one key, "" for none, is
// another.
func invented(seed uint64, anew string) economics.Boat {
	rng, other := rand.New(rand.NewPCG(seed, 15)), rand.New(rand.NewPCG(seed, 16))
	b := economics.Boat{Units: quantity.US, Currency: "$", Known: map[string]quantity.How{}}
	for _, row := range questions.All() {
		if row.Group == questions.OfBoat {
			continue
		}
		usual, _ := row.Default(questions.Context{Boat: b, Book: testBook})
		row.Field(&b).Put(usual)
		if !ranked(row) {
			continue
		}
		usual = row.Field(&b).Get()
		answer := drawn(rng, row, usual)
		if row.Key == anew {
			for before := answer; reflect.DeepEqual(answer, before); {
				answer = drawn(other, row, usual)
			}
		}
		row.Field(&b).Put(answer)
		b.Known[row.Key] = quantity.Told
	}
	total := 0.0
	for _, n := range b.Cruising.Nights {
		total += n
	}
	b.Cruising.TripNights = min(b.Cruising.TripNights, total)
	b.Ice.CarryLimit = max(b.Ice.CarryLimit, b.Ice.UnitSize)
	b.Power.MaxPanelWp = max(b.Power.MaxPanelWp, b.Power.SolarWp)
	questions.Fill(&b, testBook())
	return b
}

// drawn draws an answer to a row round the usual one.
func drawn(rng *rand.Rand, row questions.Row, usual any) any {
	between := func(low, high float64) float64 { return low * math.Pow(high/low, rng.Float64()) }
	switch {
	case row.Kind == questions.Months:
		b := economics.Boat{Known: map[string]quantity.How{}}
		if err := questions.Set(&b, row.Key, fmt.Sprintf("%.0f nights", between(8, 200))); err != nil {
			panic(err)
		}
		return b.Cruising.Nights
	case row.Kind == questions.MoneySpan:
		return [2]quantity.Money{quantity.Money(between(2, 12))}
	case row.Key == "cruising.ground":
		return row.Options[rng.IntN(len(row.Options)-1)].Value // the last is one's own
	}
	if v := reflect.ValueOf(usual); v.CanFloat() {
		low, high, from := row.Limits.Low, row.Limits.High, v.Float()
		if from < low || from > high { // such as 0 for no limit
			if rng.IntN(2) == 0 {
				return usual
			}
			from = questions.Middle(low, high)
		}
		end, near := high, rng.Float64()/2
		if rng.IntN(2) == 0 {
			end = low
		}
		figure := from + (end-from)*near
		if from > 0 && end > 0 {
			figure = from * math.Pow(end/from, near)
		}
		if row.Kind == questions.Whole {
			figure = math.Round(figure)
		}
		return figure
	}
	replies := choicesOf(row)
	if rng.Float64() > unlike || len(replies) == 0 {
		return usual
	}
	var b economics.Boat
	row.Field(&b).Put(choiceOf(row, replies[rng.IntN(len(replies))]))
	return row.Field(&b).Get()
}

// Invented boats have answers that fit each other, and another answer is another.
func TestInventedBoatsMakeSense(t *testing.T) {
	for seed := range uint64(10) {
		b := invented(seed, "")
		if faults := questions.Check(b); len(faults) > 0 {
			t.Errorf("boat %d: %v", seed, faults)
		}
		for _, row := range questions.All() {
			if other := invented(seed, row.Key); ranked(row) && reflect.DeepEqual(row.Field(&b).Get(), row.Field(&other).Get()) &&
				row.Key != "power.max_panel" && row.Key != "ice.carry_limit" && row.Key != questions.TripKey { // held to what others allow
				t.Errorf("boat %d: %s is %s both times", seed, row.Key, row.Print(&b))
			}
		}
	}
}

// The boats that the ranking looks at, and how often: all answers on six
// boats each, the better ones again on more.
var (
	rankingBoats  = uint64(180)
	rankingRounds = []struct{ answers, boats int }{{math.MaxInt, 6}, {20, 5}, {10, 8}}
)

// The ranking that chooses the first round of questions: by how much the price
// of a cold day moves when one answer is another; one out of a few counts for the
// part of the boats that it is likely to fit.
func TestRanking(t *testing.T) {
	if *rankingTo == "" {
		t.Skip("reckons some 700 boats: -ranking ranking.csv")
	}
	priceOf := func(seed uint64, anew string) float64 {
		r, err := reckon(invented(seed, anew), futures)
		if err != nil {
			t.Fatal(err)
		}
		return math.Log(min(max(dayPrice(r), 0.25), dearestPrice))
	}
	usual := map[uint64]float64{}
	var keys []string
	for _, row := range questions.All() {
		// What a unit is like nobody knows before the first look, and the worth
		// of a day is asked when its price is known.
		if ranked(row) && row.Group != questions.OfSmall && row.Group != questions.OfLarger && row.Key != worthKey {
			keys = append(keys, row.Key)
		}
	}
	moved, tried, boat := map[string]float64{}, map[string]int{}, uint64(0)
	mean := func(key string) float64 { return moved[key] / float64(tried[key]) }
	byMean := func(a, b string) int { return cmp.Compare(mean(b), mean(a)) }
	all := slices.Clone(keys)
	for _, round := range rankingRounds {
		slices.SortStableFunc(keys, byMean)
		keys = keys[:min(len(keys), round.answers)]
		for range round.boats {
			for _, key := range keys {
				for next := true; next; next = usual[boat] >= math.Log(dearestPrice) { // beyond, it is all one
					boat = boat%rankingBoats + 1
					if _, ok := usual[boat]; !ok {
						usual[boat] = priceOf(boat, "")
					}
				}
				weight := 1.0
				if row, _ := questions.Find(key); choicesOf(row) != nil && key != "cruising.ground" {
					weight = unlike
				}
				moved[key] += weight * math.Abs(priceOf(boat, key)-usual[boat])
				tried[key]++
			}
		}
	}
	slices.SortStableFunc(all, byMean)
	var out strings.Builder
	fmt.Fprintf(&out, "answer,moves_percent,boats\n")
	for _, key := range all {
		fmt.Fprintf(&out, "%s,%.0f,%d\n", key, 100*math.Expm1(mean(key)), tried[key])
	}
	if err := os.WriteFile(*rankingTo, []byte(out.String()), 0o666); err != nil {
		t.Fatal(err)
	}
}
