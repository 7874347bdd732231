package economics

import (
	"math"
	"slices"
	"testing"

	"coldreckon/economics/chance"
	"coldreckon/economics/quantity"
)

// turning is a decision that one figure turns, for hand work: a hundred futures of
// 50 days by either way, at $6 told, so a loss is the yearly cost less $300.
//
//	futures   small unit   ice   dry stores
//	1 to 70      -100      -40       0
//	71 to 80       40      -20       0
//	81 to 100      40       30       0
//	mean          -58      -24       0      best of each: (70·-100 + 10·-20)/100 = -72
func turning() (r *Reckoning, rows [][]Trial, futures []Future) {
	r = &Reckoning{Boat: dunlin()}
	r.Boat.Money.ColdDayWorth = 6
	r.Boat.Known = map[string]quantity.How{"money.cold_day_worth": quantity.Told}
	rows = make([][]Trial, len(Options))
	futures = make([]Future, 100)
	for k := range futures {
		futures[k] = Typical
		futures[k].Nights = 0.5 + (float64(k)+0.5)/100
		futures[k].Upkeep = 1.5 - (float64(k)+0.5)/100
		loss := map[OptionID]float64{SmallUnit: -100, IceOnly: -40, LargerUnit: 900}
		switch {
		case k >= 80:
			loss[SmallUnit], loss[IceOnly] = 40, 30
		case k >= 70:
			loss[SmallUnit], loss[IceOnly] = 40, -20
		}
		for i, id := range Options {
			trial := Trial{Works: id == SmallUnit || id == IceOnly, Yearly: loss[id] + 300, KeptDays: 50}
			trial.price(0)
			rows[i] = append(rows[i], trial)
		}
	}
	for i, id := range Options {
		r.Options[i].ID = id
		r.Options[i].AsTold.year.nights = 60
		r.Options[i].count(rows[i])
	}
	return r, rows, futures
}

// The losses of these futures by hand, each input of them read alone. Knowing all
// saves -58 + 72 = 14, and the turning figure tells as much. Nights turn the
// choice at 0.5 + 0.7 = 1.2 times 60; beyond it dry stores are best in 20 of 30
// futures, though ice comes next on average. In the lowest fifth the unit is 60
// better than ice and costs 200/50, in the highest 10 worse and 340/50. The regrets are
// -58, -24 and 0 less -72.
func TestLossesByHand(t *testing.T) {
	r, rows, futures := turning()
	nights := Input{Typical: 60, Factor: quantity.Range{Low: 0.8, Typical: 1, High: 1.25}, at: func(f *Future) *float64 { return &f.Nights }}
	upkeep := Input{Typical: 2, Difference: true, at: func(f *Future) *float64 { return &f.Upkeep }}
	idle := Input{Typical: 1, at: func(f *Future) *float64 { return &f.Unit }}
	a := answerer{r, rows, len(futures)}
	f := a.losses([]Input{nights, upkeep, idle}, futures, SmallUnit)
	if f.Count != 100 || f.Worth != 6 || !slices.Equal(f.Weighed, []OptionID{IceOnly, SmallUnit, DryStores}) || f.Preferred != SmallUnit || f.Runner != IceOnly {
		t.Errorf("%d futures at %v: %s before %s of %v", f.Count, f.Worth, f.Preferred, f.Runner, f.Weighed)
	}
	// The regrets of the unit: 0 in 70 futures, 60 in 10, 40 in 20; their standard
	// deviation over the root of a hundred.
	sd := math.Sqrt((70*14.0*14 + 10*46.0*46 + 20*26.0*26) / 99)
	if math.Abs(f.EVPI-14) > 1e-9 || math.Abs(f.EVPIError-sd/10) > 0.02 {
		t.Errorf("EVPI %v ± %v; by hand 14 ± %v", f.EVPI, f.EVPIError, sd/10)
	}
	for id, want := range map[OptionID]float64{SmallUnit: 14, IceOnly: 48, DryStores: 72} {
		if got := r.Of(id).ExpectedRegret; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: regret %v; by hand %v", id, got, want)
		}
	}
	n, u := f.Inputs[0], f.Inputs[1]
	if math.Abs(n.Low-48) > 1e-9 || math.Abs(n.High-75) > 1e-9 {
		t.Errorf("nights from %v to %v; by hand 48 to 75", n.Low, n.High)
	}
	if n.PriceLow != 4 || n.PriceHigh != 6.8 || math.Abs(n.SwingLow+60) > 1e-9 || math.Abs(n.SwingHigh-10) > 1e-9 {
		t.Errorf("nights: prices %v and %v, swing %v to %v; by hand 4, 6.8, -60, 10", n.PriceLow, n.PriceHigh, n.SwingLow, n.SwingHigh)
	}
	if u.PriceLow != 6.8 || u.PriceHigh != 4 || math.Abs(u.SwingLow-10) > 1e-9 || math.Abs(u.SwingHigh+60) > 1e-9 {
		t.Errorf("the other way round: prices %v and %v, swing %v to %v", u.PriceLow, u.PriceHigh, u.SwingLow, u.SwingHigh)
	}
	for _, row := range []struct {
		in    InputFigures
		at    float64
		above bool
	}{{n, 60 * 1.2, true}, {u, 2 + 0.8, false}} {
		in := row.in
		if !in.SwitchKnown || in.SwitchAbove != row.above || in.SwitchTo != DryStores || math.Abs(in.SwitchAt/row.at-1) > 0.02 || math.Abs(in.ChanceBeyond-0.3) > 0.02 {
			t.Errorf("switches at %v (above %t) to %s in %v; by hand %v, %t, dry, 0.3", in.SwitchAt, in.SwitchAbove, in.SwitchTo, in.ChanceBeyond, row.at, row.above)
		}
		if in.EVPPI > f.EVPI || in.EVPPI < 0.9*f.EVPI {
			t.Errorf("knowing the figure is worth %v; by hand all of %v", in.EVPPI, f.EVPI)
		}
	}
	if i := f.Inputs[2]; i.SwitchKnown || i.EVPPI != 0 {
		t.Errorf("a figure that never varies: worth %v, %+v", i.EVPPI, i)
	}
	// Below the turn none but the unit is ever best: the runner stays.
	values := make([]float64, len(futures))
	for k := range values {
		values[k] = futures[k].Nights
	}
	if got := a.mostBeyond(&f, values, chance.Switch{At: 1.2}); got != IceOnly {
		t.Errorf("below the turn %s; by hand the runner, ice", got)
	}
	if got := a.medianPrice(SmallUnit)([]int{75, 0, 76, 1}); got != 6.8 { // of 4, 4, 6.8, 6.8 the upper one
		t.Errorf("median price %v; by hand 6.8", got)
	}
	r.Futures = f
	r.Of(SmallUnit).Fitted.Yearly, r.Of(DryStores).Fitted.Yearly = 210, 50
	if got := r.TypicalLoss(SmallUnit); got != 210-6*50 {
		t.Errorf("typical loss %v; by hand -90", got)
	}
	if got := r.TypicalLoss(DryStores); got != 0 {
		t.Errorf("dry stores lose %v", got)
	}
}

// Untold, dry stores are not weighed: beyond the turn it is ice. A way alone has
// nothing to turn to; where none leads, a cold day has no price.
func TestLossesOfOneWay(t *testing.T) {
	r, rows, futures := turning()
	r.Boat.Known = nil
	in := Input{Typical: 60, at: func(f *Future) *float64 { return &f.Nights }}
	a := answerer{r, rows, len(futures)}
	if f := a.losses([]Input{in}, futures, SmallUnit); len(f.Weighed) != 2 || !f.Inputs[0].SwitchKnown || f.Inputs[0].SwitchTo != IceOnly {
		t.Errorf("of two ways: %+v", f)
	}
	r.Of(IceOnly).WorksOf100 = 0
	f := a.losses([]Input{in}, futures, "")
	if !slices.Equal(f.Weighed, []OptionID{SmallUnit}) || f.Preferred != SmallUnit || f.Runner != SmallUnit || f.EVPI != 0 || f.Worth != 4 {
		t.Errorf("%+v", f)
	}
	if i := f.Inputs[0]; i.PriceLow != 0 || i.PriceHigh != 0 || i.EVPPI != 0 || i.SwitchKnown {
		t.Errorf("%+v", i)
	}
	r.Boat.Known = map[string]quantity.How{"money.cold_day_worth": quantity.Told}
	if f := a.losses(nil, futures, ""); !slices.Equal(f.Weighed, []OptionID{SmallUnit, DryStores}) {
		t.Errorf("one way at a worth told: %v are weighed", f.Weighed)
	}
	r.Of(SmallUnit).WorksOf100 = 0
	if f := a.losses(nil, futures, ""); len(f.Weighed) != 0 || f.Worth != 0 || f.Preferred != "" {
		t.Errorf("nothing is weighed: %+v", f)
	}
}

// Futures that are all alike turn nowhere.
func TestLossesThatNeverTurn(t *testing.T) {
	r, rows, futures := turning()
	for i := range rows {
		for k := range rows[i] {
			rows[i][k] = rows[i][0]
		}
	}
	in := Input{Typical: 60, at: func(f *Future) *float64 { return &f.Nights }}
	a := answerer{r, rows, len(futures)}
	if f := a.losses([]Input{in}, futures, SmallUnit); f.Inputs[0].SwitchKnown || f.EVPI != 0 {
		t.Errorf("EVPI %v, %+v", f.EVPI, f.Inputs[0])
	}
}

// Percentiles of a hundred and one values are the values themselves, and each
// band has its own figure.
func TestBandsByHand(t *testing.T) {
	trials := make([]Trial, 101)
	paid := make([]float64, 2*101)
	for k := range trials {
		at := float64((k * 37) % 101) // each once, in no order
		trials[k] = Trial{First: at, PerYear: 1000 + at, Present: 2000 + at, Yearly: 3000 + at}
		paid[2*k], paid[2*k+1] = at, 5000+at
	}
	from := func(v float64) quantity.Range { return quantity.Range{Low: v + 10, Typical: v + 50, High: v + 90} }
	if got, want := bands(trials), (Bands{First: from(0), PerYear: from(1000), Present: from(2000), Yearly: from(3000)}); got != want {
		t.Errorf("%+v; by hand %+v", got, want)
	}
	for _, got := range paidBands([][]float64{paid, paid, paid, paid}, 2) {
		if !slices.Equal(got, []quantity.Range{from(0), from(5000)}) {
			t.Errorf("paid by the ends of two years: %+v", got)
		}
	}
	// A fifth of three is still one, of ten it is two.
	named := func(at []int) float64 { return float64(10*len(at) + at[0]) }
	if low, high := fifths(ascending([]float64{3, 1, 2}), named); low != 11 || high != 10 {
		t.Errorf("fifths of three: %v and %v; by hand the second and the first", low, high)
	}
	if low, high := fifths(ascending([]float64{9, 8, 7, 6, 5, 4, 3, 2, 1, 0}), named); low != 29 || high != 21 {
		t.Errorf("fifths of ten: %v and %v; by hand two from the last, two from the second", low, high)
	}
}
