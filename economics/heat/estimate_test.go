package heat

import (
	"errors"
	"math"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// FAO's melt coefficient: Huss 1995, FAO Fisheries Technical Paper 348, fig.
// 7.2, after Boeri et al. 1985, at 28 °C (slopes from memory). Guards FromFAO
// and the ice test, which must read the same box the same way.
func TestFAOCoefficient(t *testing.T) {
	for _, row := range []struct {
		source     string
		kgPerHour  float64
		k, wPerK   float64
		kTol, uTol float64
	}{
		{"plastic box without a lid, M = 10.29 - 1.13 t", 1.13, 0.040, 3.74, 0.0005, 0.005},
		{"insulated box with a lid, M = 9.86 - 0.17 t", 0.17, 0.0061, 0.56, 0.00005, 0.005},
	} {
		k := row.kgPerHour / 28
		within(t, row.source+", K", k, row.k, row.kTol)
		within(t, row.source+", W/K", float64(FromFAO(k)), row.wPerK, row.uTol)
		e, err := IceTest{Melted: quantity.Kilogram(8 * row.kgPerHour), Hours: 8, IceMass: 9.8, Out: 28}.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		within(t, row.source+", as an ice test", float64(e.UA), float64(FromFAO(k)), 1e-9)
	}
	within(t, "W/K of K = 1", float64(FromFAO(1)), 92.7, 0.05)
}

func mustEstimate(t *testing.T, e Estimate, err error) Estimate {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// The size of each term of the balance against a plain melt of L alone. Guards
// the terms one by one: each row fails when its term is left out.
func TestIceTest(t *testing.T) {
	plain := IceTest{Melted: 4, Hours: 24, IceMass: 4, Out: 27, In: 2}
	base, err := plain.Estimate()
	base = mustEstimate(t, base, err)
	within(t, "4 kg in a day over 25 K, by hand: 4·333.6/(86.4·25)", float64(base.UA), 4*333.6/86.4/25, 1e-12)
	within(t, "its log-sd", base.LogSD, 0.10, 0)

	for _, row := range []struct {
		source     string
		change     func(*IceTest)
		ratio, tol float64
	}{
		{"NCERT Physics XI, exercise 11.19: 104 976 J in 6 h over 45 K is 0.108 W/K", func(x *IceTest) {
			*x = IceTest{Melted: 104.976 / FusionKJPerKg, Hours: 6, IceMass: 4, Out: 45}
		}, 0.108 / (4 * 333.6 / 86.4 / 25), 1e-6},
		{"ice at -18 °C holds about 11 % more (Earle, app. 7)", func(x *IceTest) { x.IceStart = -18 }, 1.11, 0.005},
		{"ice not weighed counts as what melted (FreezerBonusKJ of the same 4 kg)", func(x *IceTest) { x.IceMass, x.IceStart = 0, -18 }, 1.11, 0.005},
		{"meltwater let warm to 10 °C: 12.6 % more (calorimetry)", func(x *IceTest) { x.Water, x.WaterEnd = 4, 10 }, 1.126, 0.001},
		{"10 kg of food, c 3.5, 25 to 4 °C: 2.2 kg of the ice (calorimetry)", func(x *IceTest) { x.FoodKJ = 735 }, 1 - 2.2/4, 0.002},
		{"a liner not chilled first: 0.3 MJ, 0.9 kg of the ice (calorimetry)", func(x *IceTest) { x.LinerKJ = 300 }, 1 - 0.9/4, 0.001},
	} {
		x := plain
		row.change(&x)
		e, err := x.Estimate()
		e = mustEstimate(t, e, err)
		within(t, row.source, float64(e.UA/base.UA), row.ratio, row.tol)
	}
}

// A gram melted in a moment is a test, if a poor one; no heat at all is none.
// Guards "heatKJ > 0" in testEstimate.
func TestLeastHeatOfATest(t *testing.T) {
	e, err := IceTest{Melted: 0.001, Hours: 0.1, Out: 25}.Estimate()
	e = mustEstimate(t, e, err)
	within(t, "a gram in six minutes", float64(e.UA), 0.001*333.6/3.6/2.5, 1e-12)
	if _, err := (IceTest{Melted: 1, Hours: 1, Out: 25, FoodKJ: 333.6}).Estimate(); err == nil {
		t.Error("food alone melted the ice, and a leak was read")
	}
}

// A box of known leak warms its jugs by the exact exponential; the test must
// read that leak back. Guards the logarithmic mean and the film.
func TestJugTest(t *testing.T) {
	const (
		water, liner = 10.0, 20.0 // kg, kJ/K
		out, start   = 28.0, 4.0
		hours        = 18.0
	)
	warm := func(seriesWPerK, kJPerK float64) float64 {
		return out - (out-start)*math.Exp(-seriesWPerK*3.6*hours/kJPerK)
	}
	for _, ua := range []float64{0.3, 0.8, 1.5} {
		// Without a liner the leak and the film are in series.
		series := 1 / (1/ua + 1/1.8)
		test := JugTest{Water: water, Hours: hours, Start: start, End: quantity.Celsius(warm(series, water*4.19)), Out: out}
		e, err := test.Estimate(0)
		e = mustEstimate(t, e, err)
		within(t, "leak behind the film", float64(e.UA), ua, 1e-9)
		within(t, "log-sd with the air not read", e.LogSD, 0.30, 0)

		// With the air read, it is heat over degree-hours, by hand.
		test.BoxAirRead, test.BoxAir = true, 12
		e, err = test.Estimate(liner)
		e = mustEstimate(t, e, err)
		heat := (water*4.19 + liner) * float64(test.End-start)
		within(t, "leak by the air read", float64(e.UA), heat/3.6/(16*hours), 1e-9)
		within(t, "log-sd with the air read", e.LogSD, 0.12, 0)
	}
	// Water that starts at melting ice's 0 °C, by hand.
	e, err := JugTest{Water: water, Hours: 12, Start: 0, End: 5, Out: 27, BoxAir: 10, BoxAirRead: true}.Estimate(liner)
	e = mustEstimate(t, e, err)
	within(t, "water from 0 °C", float64(e.UA), (41.9+20)*5/3.6/(17*12), 1e-9)
}

// remembered gives how long 10 kg last beside a steady leak of 22 K and a use in
// watts, by hand: 95 % of 10 (333.6 + 4.19 · 2) kJ.
func remembered(useW float64) func(quantity.WattPerKelvin) float64 {
	return func(ua quantity.WattPerKelvin) float64 {
		return 0.95 * 10 * (333.6 + 4.19*2) / 3.6 / (22*float64(ua) + useW)
	}
}

// Guards the halving and the elasticity: d ln hours / d ln UA is the part of
// the heat that leaks in, 1 without use and about a half where use brings half.
func TestIceHistory(t *testing.T) {
	spell := IceHistory{Ice: 10, Hours: 36, Month: 7}
	e, err := spell.Estimate(remembered(0))
	e = mustEstimate(t, e, err)
	byHand := 0.95 * 10 * (333.6 + 4.19*2) / 3.6 / 36 / 22
	within(t, "lid closed, by hand", float64(e.UA), byHand, 1e-7)
	within(t, "log-sd", e.LogSD, 0.30, 1e-6)
	half := 22 * byHand / 2
	e, err = spell.Estimate(remembered(half))
	e = mustEstimate(t, e, err)
	within(t, "use brings half of the heat", float64(e.UA), byHand/2, 1e-7)
	// ln((e^0.1 + 1)/2) = 0.05125 for 0.1.
	within(t, "log-sd, use brings half of the heat", e.LogSD, 0.30/0.5125, 0.001)
	if e.Source != FromHistory {
		t.Errorf("source %q", e.Source)
	}
	// Where use brings nearly all of it the hours follow by a twentieth, no less.
	e, err = spell.Estimate(remembered(0.97 * 22 * byHand))
	e = mustEstimate(t, e, err)
	within(t, "log-sd, use brings 97 parts of 100", e.LogSD, 0.30/0.05, 1e-9)
}

// Each row guards one refusal.
func TestImpossibleTests(t *testing.T) {
	ice := IceTest{Melted: 4, Hours: 24, IceMass: 5, Out: 27, In: 2}
	for name, spoil := range map[string]func(*IceTest){
		"no hours":            func(x *IceTest) { x.Hours = 0 },
		"NaN hours":           func(x *IceTest) { x.Hours = math.NaN() },
		"nothing melted":      func(x *IceTest) { x.Melted = 0 },
		"more than there was": func(x *IceTest) { x.Melted = 6 },
		"ice above zero":      func(x *IceTest) { x.IceStart = 3 },
		"ice at -41":          func(x *IceTest) { x.IceStart = -41 },
		"too much water":      func(x *IceTest) { x.Water = 4.5 },
		"hot water":           func(x *IceTest) { x.Water, x.WaterEnd = 4, 35 },
		"box warmer":          func(x *IceTest) { x.In = 30 },
		"no difference":       func(x *IceTest) { x.Out = 6 },
		"negative food":       func(x *IceTest) { x.FoodKJ = -1 },
		"more food than ice":  func(x *IceTest) { x.FoodKJ = 5000 },
		"infinite air":        func(x *IceTest) { x.Out = quantity.Celsius(math.Inf(1)) },
		"infinitely cold box": func(x *IceTest) { x.In = quantity.Celsius(math.Inf(-1)) },
	} {
		x := ice
		spoil(&x)
		e, err := x.Estimate()
		refused(t, "ice test, "+name, e, err)
	}
	jug := JugTest{Water: 10, Hours: 12, Start: 4, End: 9, Out: 27, BoxAir: 10, BoxAirRead: true}
	for name, spoil := range map[string]func(*JugTest){
		"no hours":           func(x *JugTest) { x.Hours = 0 },
		"no water":           func(x *JugTest) { x.Water = 0 },
		"frozen":             func(x *JugTest) { x.Start = -1 },
		"cooled":             func(x *JugTest) { x.End = 3 },
		"warmer than cabin":  func(x *JugTest) { x.End = 28 },
		"box air like cabin": func(x *JugTest) { x.BoxAir = 26 },
		"faster than film":   func(x *JugTest) { x.BoxAirRead, x.Hours, x.End = false, 1.2, 12 },
		"NaN":                func(x *JugTest) { x.Out = quantity.Celsius(math.NaN()) },
	} {
		x := jug
		spoil(&x)
		e, err := x.Estimate(20)
		refused(t, "jug test, "+name, e, err)
	}
	e, err := jug.Estimate(-1)
	refused(t, "jug test, negative liner", e, err)

	for name, row := range map[string]struct {
		spell  IceHistory
		useW   float64
		noLeak bool
	}{
		"no hours":       {IceHistory{Ice: 10, Month: 7}, 5, false},
		"no ice":         {IceHistory{Hours: 36, Month: 7}, 5, false},
		"NaN":            {IceHistory{Ice: quantity.Kilogram(math.NaN()), Hours: 36, Month: 7}, 5, false},
		"use eats it up": {IceHistory{Ice: 10, Hours: 36, Month: 7}, 60, true},
		"over 4 weeks":   {IceHistory{Ice: 10, Hours: 4*7*24 + 1, Month: 7}, 0, true},
		"gone at once":   {IceHistory{Ice: 10, Hours: 1, Month: 7}, 5, true},
	} {
		e, err := row.spell.Estimate(remembered(row.useW))
		refused(t, "history, "+name, e, err)
		if errors.Is(err, ErrNoLeak) != row.noLeak {
			t.Errorf("history, %s: %v", name, err)
		}
	}
}

// refused fails when a test that cannot be gave an estimate, or gave no advice.
func refused(t *testing.T, name string, e Estimate, err error) {
	t.Helper()
	if err == nil {
		t.Errorf("%s: no error but %g W/K", name, float64(e.UA))
	} else if !strings.Contains(err.Error(), "want") && !strings.Contains(err.Error(), "check") {
		t.Errorf("%s: %q does not say what is wanted", name, err)
	}
}
