package economics_test

import (
	"fmt"
	"math"
	"reflect"
	"runtime"
	"sync"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// agreeing are the reckonings in which figures are held against each other.
var agreeing = sync.OnceValues(func() (map[string]*economics.Reckoning, error) {
	valued := economics.Dunlin()
	valued.Food.DryPremium, valued.Money.ColdDayWorth = 1, 2 // where dry stores and the small unit change places
	for _, key := range []string{"money.cold_day_worth", "food.dry_premium", "cruising.nights", "units_considered.small.price", "units_considered.small.fitting"} {
		valued.Known[key] = quantity.Told
	}
	boats := map[string]economics.Boat{"dunlin": economics.Dunlin(), "dunlin, cold days valued": valued}
	for seed := uint64(100); seed < 106; seed++ {
		boats[fmt.Sprint("boat ", seed)] = plausible(seed)
	}
	out := map[string]*economics.Reckoning{}
	for name, b := range boats {
		ground, err := b.Ground()
		if err != nil {
			return nil, err
		}
		if out[name], err = economics.Reckon(b, economics.TestBook(), ground, economics.Settings{Futures: 100, Seed: 1}); err != nil {
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

// The counts of futures agree with each other.
func TestCountsAgree(t *testing.T) {
	for name, r := range agreeingBoats(t) {
		best, cheapest, units := r.Futures.NoneWorksOf100, r.Futures.NoneWorksOf100, 0
		for _, o := range r.Options {
			best += o.BestOf100
			cheapest += o.CheapestOf100
			if o.WorkableOf100 < o.BestOf100 || o.WorkableOf100 < o.CheapestOf100 || o.WorkableOf100 > 100-r.Futures.NoneWorksOf100 {
				t.Errorf("%s, %s: works in %d, best in %d, cheapest in %d, none works in %d", name, o.ID, o.WorkableOf100, o.BestOf100, o.CheapestOf100, r.Futures.NoneWorksOf100)
			}
			if o.ID == economics.SmallUnit || o.ID == economics.LargerUnit {
				units += o.BestOf100
			}
			if o.FittedBands.Present.Low > o.FittedBands.Present.High || o.FittedBands.Yearly.Low > o.FittedBands.Yearly.High || o.ExpectedRegret < 0 {
				t.Errorf("%s, %s: present %v to %v, yearly %v to %v, regret %v", name, o.ID, o.FittedBands.Present.Low, o.FittedBands.Present.High, o.FittedBands.Yearly.Low, o.FittedBands.Yearly.High, o.ExpectedRegret)
			}
		}
		if best != 100 || cheapest != 100 {
			t.Errorf("%s: best counts make %d, cheapest %d, none included", name, best, cheapest)
		}
		if units != r.Futures.RefrigerateOf100 {
			t.Errorf("%s: a unit is best in %d, refrigerating in %d", name, units, r.Futures.RefrigerateOf100)
		}
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
			if in.Taste && in.EVPPI != 0 {
				t.Errorf("%s: %s is a taste and worth measuring", name, in.Name)
			}
			if in.Low > in.High || in.ChanceBeyond < 0 || in.ChanceBeyond > 1 {
				t.Errorf("%s: %s from %v to %v, beyond %v", name, in.Name, in.Low, in.High, in.ChanceBeyond)
			}
		}
		least := math.Inf(1)
		for _, o := range r.Options {
			if o.WorkableOf100 > 0 {
				least = min(least, o.ExpectedRegret)
			}
		}
		if !near(least, f.EVPI, 1e-9) {
			t.Errorf("%s: the least regret is %v, EVPI %v", name, least, f.EVPI)
		}
	}
}

// The same boat gives the same reckoning on one core or eight, and again.
func TestSameResultOnAnyCores(t *testing.T) {
	for _, b := range []economics.Boat{economics.Dunlin(), plausible(101)} {
		var first *economics.Reckoning
		for _, cores := range []int{1, 2, 8, 2} {
			before := runtime.GOMAXPROCS(cores)
			r := economics.Comparable(reckon(t, b, quick))
			runtime.GOMAXPROCS(before)
			if first == nil {
				first = r
			} else if !reflect.DeepEqual(first, r) {
				t.Errorf("%s on %d cores differs", b.Name, cores)
			}
		}
		other := economics.Comparable(reckon(t, b, economics.Settings{Futures: quick.Futures, Seed: 2}))
		if reflect.DeepEqual(first.Futures, other.Futures) {
			t.Errorf("%s: another seed changes nothing", b.Name)
		}
	}
}

// Reckoning leaves the boat as it was.
func TestReckoningLeavesTheBoatAlone(t *testing.T) {
	b := economics.Dunlin()
	reckon(t, b, quick)
	if !reflect.DeepEqual(b, economics.Dunlin()) {
		t.Error("the boat has changed")
	}
}

// No figure of a reckoning is infinite or no number, whatever the boat.
func TestEveryFigureIsFinite(t *testing.T) {
	for name, r := range agreeingBoats(t) {
		finite(t, name, reflect.ValueOf(r), map[uintptr]bool{})
	}
}

func finite(t *testing.T, at string, v reflect.Value, seen map[uintptr]bool) {
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
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
