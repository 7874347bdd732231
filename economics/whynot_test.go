package economics_test

import (
	"math"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
)

// The household fridge by hand: US 10 CFR 430.32(a), class 11A, from memory: 7.84
// kWh a year for each cubic foot and 219.1; 90 L are 3.178 cu ft, so 244.0 kWh a
// year or 668 Wh a day at 90 °F, which falls with the difference from the room.
func TestHouseholdFridgeByHand(t *testing.T) {
	r := told(t, economics.Dunlin())
	r.Box.Volume = 90
	w, ok := r.WhyNot()
	if !ok {
		t.Fatal("no figures with nights aboard")
	}
	cabin := 0.0
	for _, m := range r.Months {
		if m.HeatGainW == hottest(r).HeatGainW {
			cabin = m.CabinC
		}
	}
	want := 668.4*(cabin-4)/28.3/0.88 + 288
	if math.Abs(w.HouseholdWhPerDay-want) > 0.01*want {
		t.Errorf("the household fridge takes %.0f Wh a day, by hand %.0f", w.HouseholdWhPerDay, want)
	}
	if w.HouseholdAhPerDay < w.SmallAhPerDay*0.8 {
		t.Errorf("it takes %.0f Ah a day, the small unit %.0f", w.HouseholdAhPerDay, w.SmallAhPerDay)
	}
}

func hottest(r *economics.Reckoning) (m economics.MonthFigures) {
	for _, x := range r.Months {
		if x.HeatGainW > m.HeatGainW {
			m = x
		}
	}
	return m
}

// The other ways are held against the small unit in the box that its work makes,
// not in one as told that nobody would fit it to; told nothing of such work, a box
// of half an inch of damp foam takes several times as much.
func TestWhyNotStandsOnTheWork(t *testing.T) {
	b := economics.Dunlin()
	for side, f := range b.Box.Faces {
		f.Foam, f.State = 0.0127, heat.Damp
		b.Box.Faces[side] = f
	}
	r := reckon(t, b, few)
	w, _ := r.WhyNot()
	if told := r.Units[0].AhPerDay; len(r.Of(economics.SmallUnit).Fit.Items) == 0 || !(w.SmallAhPerDay < 0.7*told) {
		t.Errorf("the small unit takes %.1f Ah a day beside the other ways, %.1f as told", w.SmallAhPerDay, told)
	}
	if w.IceMakerKgPerDay >= 0.7*hottest(r).IceKgPerDay {
		t.Errorf("the ice maker makes %.1f kg a day, the box as told melts %.1f", w.IceMakerKgPerDay, hottest(r).IceKgPerDay)
	}
}

// Common practice, no source: a thermoelectric box draws about 4.5 A without a
// pause and gets 40 °F (22.2 K) under the cabin at best; plates driven by the
// engine want about an hour a day.
func TestOtherWaysAgainstPractice(t *testing.T) {
	for _, ground := range []string{"maine-coast", "chesapeake-bay", "virgin-islands"} {
		b := economics.Dunlin()
		b.Cruising.Ground = ground
		r := told(t, b)
		w, _ := r.WhyNot()
		t.Logf("%s: %+v", ground, w)
		if math.Abs(w.ThermoelectricA-4.5) > 0.4 {
			t.Errorf("%s: a thermoelectric box draws %.2f A", ground, w.ThermoelectricA)
		}
		if under := hottest(r).CabinC - w.ThermoelectricBoxC; math.Abs(under-22.2) > 1 {
			t.Errorf("%s: it gets %.1f K under the cabin", ground, under)
		}
		if w.EngineHoursPerDay < 0.5 || w.EngineHoursPerDay > 2.1 {
			t.Errorf("%s: the engine runs %.1f hours a day", ground, w.EngineHoursPerDay)
		}
	}
}

// Dry ice against ice by its enthalpy: 571 kJ/kg to sublime and 66 to warm the
// gas to 2 °C, ice 333.6 and 8.4 (handbook values, from memory): 0.537 of the
// weight. A kilogram of the gas is 0.54 m³ at 20 °C by the ideal gas law: 8.314 ×
// 293.15 / 101325 / 0.04401.
func TestDryIceByEnthalpy(t *testing.T) {
	r := told(t, economics.Dunlin())
	w, _ := r.WhyNot()
	if ratio := w.DryIceKgPerDay / hottest(r).IceKgPerDay; math.Abs(ratio-0.537) > 0.01 {
		t.Errorf("dry ice weighs %.3f of the ice, want 0.537", ratio)
	}
	perKg := 8.314 * 293.15 / 101325 / 0.04401
	if got := w.DryIceGasM3PerDay / w.DryIceKgPerDay; math.Abs(got-perKg) > 0.01*perKg {
		t.Errorf("a kilogram gives %.3f m³ of gas, want %.3f", got, perKg)
	}
}

// Without nights aboard there is nothing to say.
func TestNoOtherWaysWithoutNights(t *testing.T) {
	b := economics.Dunlin()
	b.Cruising.Nights = [12]float64{}
	if _, ok := told(t, b).WhyNot(); ok {
		t.Error("figures without a night aboard")
	}
}
