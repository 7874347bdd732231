package economics_test

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"regexp"
	"runtime"
	"slices"
	"sync"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// agreeing are the reckonings in which figures are held against each other.
var agreeing = sync.OnceValues(func() (map[string]*economics.Reckoning, error) {
	valued := economics.Dunlin()
	valued.Food.DryPremium, valued.Money.ColdDayWorth = 1, 4 // about what a cold day costs
	for _, key := range []string{"money.cold_day_worth", "food.dry_premium", "cruising.nights", "units_considered.small.price", "units_considered.small.fitting"} {
		valued.Known[key] = quantity.Told
	}
	boats := map[string]economics.Boat{"dunlin": economics.Dunlin(), "dunlin, cold days valued": valued}
	for _, seed := range []uint64{102, 108} { // soon reckoned
		boats[fmt.Sprint("boat ", seed)] = plausible(seed)
	}
	out := map[string]*economics.Reckoning{}
	for name, b := range boats {
		ground, err := b.Ground()
		if err != nil {
			return nil, err
		}
		if out[name], err = economics.Reckon(b, economics.TestBook(), ground, economics.Settings{Futures: 20, Seed: 1}); err != nil {
			return nil, err
		}
	}
	return out, nil
})

func agreeingBoats(t *testing.T) map[string]*economics.Reckoning {
	t.Helper()
	boats, err := agreeing()
	if err != nil {
		t.Fatal(err)
	}
	return boats
}

// The flows of every option bring back its present cost, year by year, and the
// yearly equivalent is that times the capital recovery factor (NIST Handbook
// 135, appendix D; ASTM E917): worked here with powers, as on paper.
func TestFlowsGivePresentAndYearlyCost(t *testing.T) {
	for name, r := range agreeingBoats(t) {
		d, years := float64(r.Boat.Money.Discount), int(r.Boat.Money.Years)
		for _, o := range r.Options {
			for _, out := range []economics.Outcome{o.AsTold, o.Fitted} {
				if len(out.Flows) != years+1 {
					t.Fatalf("%s, %s: %d flows over %d years", name, o.ID, len(out.Flows), years)
				}
				var present float64
				for year, flow := range out.Flows {
					present += float64(flow) / math.Pow(1+d, float64(year))
				}
				if !near(present, out.Present, 1e-9) {
					t.Errorf("%s, %s: the flows are worth %v today, the present cost is %v", name, o.ID, present, out.Present)
				}
				factor := 1 / float64(years)
				if d > 0 {
					factor = d * math.Pow(1+d, float64(years)) / (math.Pow(1+d, float64(years)) - 1)
				}
				if !near(out.Present*factor, out.Yearly, 1e-9) {
					t.Errorf("%s, %s: %v a year, by hand %v", name, o.ID, out.Yearly, out.Present*factor)
				}
				if first := float64(out.Flows[0]); !near(first, out.First, 1e-12) {
					t.Errorf("%s, %s: first cost %v, the flow of year 0 is %v", name, o.ID, out.First, first)
				}
			}
		}
	}
}

// The counts of futures agree with each other, and the answer with them.
func TestCountsAgree(t *testing.T) {
	weighed := 0
	for name, r := range agreeingBoats(t) {
		best := 0
		for _, o := range r.Options {
			best += o.BestOf100
			for what, band := range map[string]quantity.Range{"present": o.FittedBands.Present, "yearly": o.FittedBands.Yearly, "price": o.PriceOfCold,
				"extra days": o.ExtraDays, "kept days": o.KeptDays} {
				if band.Low > band.Typical || band.Typical > band.High {
					t.Errorf("%s, %s: %s %v", name, o.ID, what, band)
				}
			}
			if o.ExtraDays.Typical > o.KeptDays.Typical+1e-9 || o.MedicineOf100 > 100 || o.ExpectedRegret < 0 {
				t.Errorf("%s, %s: %v days kept, %v of them extra, medicine in %d, regret %v", name, o.ID, o.KeptDays, o.ExtraDays, o.MedicineOf100, o.ExpectedRegret)
			}
			if o.ID == economics.DryStores && (o.WorksOf100 != 0 || o.BestOf100 != 0 || o.KeptDays.High != 0) {
				t.Errorf("%s: dry stores work in %d, best in %d, %v days kept", name, o.WorksOf100, o.BestOf100, o.KeptDays)
			}
		}
		a := &r.Answer
		if len(r.Futures.Weighed) == 0 {
			if best != 0 || a.Case != economics.NoneReaches && a.Case != economics.CoolOnly && a.Case != economics.NoRoomAtAll {
				t.Errorf("%s: none is weighed, %d best, case %s", name, best, a.Case)
			}
			continue
		}
		weighed++
		if best != 100 || a.WayOf100 != r.Of(a.Way()).BestOf100 || a.ReachOf100 != r.Of(a.Way()).WorksOf100 {
			t.Errorf("%s: best counts make %d; %s is best in %d and reaches in %d, says the answer %d and %d", name, best, a.Way(),
				r.Of(a.Way()).BestOf100, r.Of(a.Way()).WorksOf100, a.WayOf100, a.ReachOf100)
		}
		if a.NoWorth > a.EvenWorth || a.EvenWorth > a.YesWorth {
			t.Errorf("%s: no %v, even %v, yes %v", name, a.NoWorth, a.EvenWorth, a.YesWorth)
		}
		for i, c := range a.Counts {
			if i > 0 && (c.Worth <= a.Counts[i-1].Worth || c.Of100 < a.Counts[i-1].Of100) || math.IsInf(c.Worth, 1) {
				t.Errorf("%s: counts %v", name, a.Counts)
			}
			// Half of a hundredth is lost in rounding, and a quarter of a step in saying.
			if c.Worth == a.NoWorth && c.Of100 > 26 || c.Worth == a.EvenWorth && c.Of100 < 60 || c.Worth == a.YesWorth && c.Of100 < 75 {
				t.Errorf("%s: no at %v, even %v, yes %v, of %v", name, a.NoWorth, a.EvenWorth, a.YesWorth, a.Counts)
			}
		}
	}
	if weighed < 3 {
		t.Errorf("only %d boats with a way that reaches", weighed)
	}
}

// Told and untold agree: the worth at which an answer counts so many futures
// counts as many when the owner tells it, as long as the same way leads.
func TestToldAndUntoldAgree(t *testing.T) {
	boats := agreeingBoats(t)
	compared := 0
	for _, name := range slices.Sorted(maps.Keys(boats)) { // the soonest first
		r := boats[name]
		if _, told := r.Boat.Known["money.cold_day_worth"]; told || len(r.Futures.Weighed) == 0 {
			continue
		}
		for _, c := range r.Answer.Counts {
			b := r.Boat
			b.Known = map[string]quantity.How{"money.cold_day_worth": quantity.Told}
			for key, how := range r.Boat.Known {
				b.Known[key] = how
			}
			b.Money.ColdDayWorth = quantity.Money(c.Worth)
			told := reckon(t, b, r.Settings)
			if told.Answer.Way() != r.Answer.Way() {
				continue // another way is the better one at that worth
			}
			compared++
			if got := told.Answer.YesOf100; got != [2]int{c.Of100, c.Of100} {
				t.Errorf("%s: at %v told %v of 100, untold %d", name, c.Worth, got, c.Of100)
			}
			if told.Answer.NoWorth != r.Answer.NoWorth || told.Answer.YesWorth != r.Answer.YesWorth {
				t.Errorf("%s: no and yes at %v and %v; untold %v and %v", name, told.Answer.NoWorth, told.Answer.YesWorth, r.Answer.NoWorth, r.Answer.YesWorth)
			}
			if ask := told.Answer.Case; ask != economics.WorthTold && ask != r.Answer.Case {
				t.Errorf("%s: case %s with the worth told, %s without", name, ask, r.Answer.Case)
			}
		}
		if compared > 3 {
			break
		}
	}
	if compared < 3 {
		t.Errorf("compared at %d worths only", compared)
	}
}

// Knowing one thing is never worth more than knowing all, and the value of
// knowing all is the least regret there is.
func TestWorthOfKnowing(t *testing.T) {
	for name, r := range agreeingBoats(t) {
		f := &r.Futures
		for _, in := range f.Inputs {
			if in.EVPPI < 0 || in.EVPPI > f.EVPI+1e-9 {
				t.Errorf("%s: knowing %s is worth %v, knowing everything %v", name, in.Name, in.EVPPI, f.EVPI)
			}
			if in.Low > in.High || in.ChanceBeyond < 0 || in.ChanceBeyond > 1 || in.SwitchKnown && in.ChanceBeyond < 0.05 {
				t.Errorf("%s: %s from %v to %v, beyond %v", name, in.Name, in.Low, in.High, in.ChanceBeyond)
			}
			if in.SwitchKnown && in.SwitchAbove != (in.SwingHigh > in.SwingLow) {
				t.Errorf("%s: %s switches above %v, the swing goes from %v to %v", name, in.Name, in.SwitchAbove, in.SwingLow, in.SwingHigh)
			}
		}
		if len(f.Weighed) == 0 {
			if f.EVPI != 0 {
				t.Errorf("%s: nothing is weighed, EVPI %v", name, f.EVPI)
			}
			continue
		}
		least := math.Inf(1)
		for _, id := range f.Weighed {
			least = min(least, r.Of(id).ExpectedRegret)
		}
		if !near(least, f.EVPI, 1e-9) {
			t.Errorf("%s: the least regret is %v, EVPI %v", name, least, f.EVPI)
		}
	}
}

// The same boat gives the same reckoning on one core or eight, and again.
func TestSameResultOnAnyCores(t *testing.T) {
	for _, b := range []economics.Boat{plausible(108)} {
		var first *economics.Reckoning
		for _, cores := range []int{1, 8} {
			before := runtime.GOMAXPROCS(cores)
			r := economics.Comparable(reckon(t, b, few))
			runtime.GOMAXPROCS(before)
			if first == nil {
				first = r
			} else if !reflect.DeepEqual(first, r) {
				t.Errorf("%s on %d cores differs", b.Name, cores)
			}
		}
		other := economics.Comparable(reckon(t, b, economics.Settings{Futures: few.Futures, Seed: 2}))
		if reflect.DeepEqual(first.Futures, other.Futures) {
			t.Errorf("%s: another seed changes nothing", b.Name)
		}
	}
}

// Reckoning leaves the boat as it was.
func TestReckoningLeavesTheBoatAlone(t *testing.T) {
	b := economics.Dunlin()
	reckon(t, b, few)
	if !reflect.DeepEqual(b, economics.Dunlin()) {
		t.Error("the boat has changed")
	}
}

// endless are the figures that may be without end: a price where no day is won,
// and the worths up to it.
var endless = regexp.MustCompile(`\.(PriceOfCold\.(Low|Typical|High)|(No|Yes|Even)Worth|Price(Low|High))$`)

// No figure of a reckoning is no number, nor infinite, whatever the boat, but for
// the prices that are endless.
func TestEveryFigureIsFinite(t *testing.T) {
	for name, r := range agreeingBoats(t) {
		finite(t, name, reflect.ValueOf(r), map[uintptr]bool{})
	}
}

func finite(t *testing.T, at string, v reflect.Value, seen map[uintptr]bool) {
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.IsInf(v.Float(), -1) || math.IsInf(v.Float(), 1) && !endless.MatchString(at) {
			t.Errorf("%s is %v", at, v.Float())
		}
	case reflect.Pointer:
		if v.IsNil() || seen[v.Pointer()] {
			return
		}
		seen[v.Pointer()] = true
		finite(t, at, v.Elem(), seen)
	case reflect.Interface:
		finite(t, at, v.Elem(), seen)
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, at+"."+v.Type().Field(i).Name, v.Field(i), seen)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			finite(t, fmt.Sprintf("%s[%d]", at, i), v.Index(i), seen)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			finite(t, fmt.Sprintf("%s[%v]", at, key), v.MapIndex(key), seen)
		}
	}
}
