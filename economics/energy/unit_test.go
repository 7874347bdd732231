package energy

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

func typicalUnit(rated quantity.Watt, cooledBy Condenser, plate Plate) Unit {
	return Unit{RatedW: rated, Eta: Eta().Typical, CooledBy: cooledBy, Plate: plate}
}

// near fails unless got is within a share of want.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s: got %.5g, want %.5g within %g", what, got, want, share)
	}
}

// eachSituation calls f over the range that Working is documented for.
func eachSituation(f func(u Unit, box, coolant quantity.Celsius)) {
	for _, rated := range []quantity.Watt{10, 25, 40, 80, 200, 500} {
		for _, cooledBy := range []Condenser{Fins, Fan, Seawater} {
			for _, plate := range []Plate{Thin, Eutectic} {
				for box := quantity.Celsius(-30); box <= 60; box += 3 {
					for coolant := quantity.Celsius(-10); coolant <= 60; coolant += 7 {
						f(typicalUnit(rated, cooledBy, plate), box, coolant)
					}
				}
			}
		}
	}
}

// Ideal and real vapour-compression cycles with R134a from textbooks. Between
// the same saturation temperatures a small unit must do worse than a cycle
// without motor and electronics, and that must do no better than Carnot.
//
// Guards: "return (float64(te) + kelvinAt0C) / float64(tc-te)" in Carnot
// (te in place of te + 273.15, and tc in place of te in the numerator, both
// fail) and "c.Eta * Carnot" in working (dropping Eta fails).
func TestCyclesBoundTheUnit(t *testing.T) {
	for _, row := range []struct {
		Source        string
		te, tc        quantity.Celsius // saturation, at the example's pressures
		h1, h2, h3    float64          // kJ/kg: into and out of the compressor, before the valve
		cycle, carnot float64          // as published
	}{
		{"Çengel & Boles example 11-1: 0.14/0.8 MPa", -18.80, 31.31, 239.16, 275.39, 95.47, 3.97, 0},
		{"Çengel & Boles example 11-2: actual cycle", -18.80, 31.31, 246.36, 286.69, 87.83, 3.93, 0},
		{"Moran & Shapiro example 10.1: 0/26 °C", 0, 26, 247.23, 264.7, 85.75, 9.24, 10.5},
		{"Moran & Shapiro example 10.2: -10 °C/9 bar", -10, 35.5, 241.35, 272.39, 99.56, 4.57, 0},
		{"Moran & Shapiro example 10.3: the same, 80 % compressor", -10, 35.5, 241.35, 280.15, 91.49, 3.86, 0},
		{"Michigan State University ME 201 homework 22: -20 °C/1.2 MPa", -20, 46.29, 238.41, 284.48, 117.77, 2.62, 3.82},
		{"Hundy et al. example 2.1: -5/35 °C", -5, 35, 395.6, 422.5, 249.7, 5.4, 6.7},
		{"Potter & Somerton example 6.9: -24 °C/1.0 MPa", -24, 39.39, 232.8, 0, 105.3, 2.8, 0},
	} {
		if row.h2 > 0 {
			near(t, row.Source+": its own states", (row.h1-row.h3)/(row.h2-row.h1), row.cycle, 0.005)
		}
		carnot := Carnot(row.te, row.tc)
		if row.carnot > 0 {
			near(t, row.Source+": Carnot", carnot, row.carnot, 0.006)
		}
		if row.cycle >= carnot {
			t.Errorf("%s: cycle %.3g above Carnot %.3g", row.Source, row.cycle, carnot)
		}
		for _, eta := range []float64{Eta().Low, Eta().Typical, Eta().High} {
			c := Cycle{Rated: 50, Eta: eta}
			got := c.work(float64(row.te), float64(row.tc)).COP
			near(t, row.Source+": share of Carnot", got/carnot, eta, 1e-12)
			if got >= 0.75*row.cycle {
				t.Errorf("%s: a small unit at eta %.2f reaches %.3g of the bare cycle's %.3g", row.Source, eta, got, row.cycle)
			}
		}
	}
}

// Guards the marks of Eta: 0.26 and 0.42 moved to 0.36 and 0.55 fail.
func TestEtaAgainstHouseholdCabinets(t *testing.T) {
	eta := Eta()
	for _, row := range []struct {
		Source string
		cop    float64 // at -23.3/54.4 °C
		eta    float64
	}{
		{"US EPA-430-R-93-010: best hermetic of 1980, EER 4.0", 1.17, 0.36},
		{"US EPA-430-R-93-010: best hermetic of 1993, EER 5.5", 1.61, 0.50},
	} {
		near(t, row.Source, row.cop/Carnot(-23.3, 54.4), row.eta, 0.02)
		// The cabinets' motors run on the mains and are larger; the small
		// direct-current motor with its electronics does worse than either.
		if eta.Typical >= row.eta {
			t.Errorf("%s: typical %.2f is not below %.2f", row.Source, eta.Typical, row.eta)
		}
	}
	best := Cycle{Rated: 50, Eta: eta.High}
	high := best.work(-23.3, 54.4).COP
	if high < 1.17 || high > 1.61 {
		t.Errorf("the best small unit at -23.3/54.4 °C comes to %.2f, want between the best cabinets of 1980 and 1993", high)
	}
	// Ramalingam, examples 2 and 4: actual = 0.3 of Carnot.
	if eta.Low > 0.3 || eta.High < 0.3 {
		t.Errorf("range %v leaves out the handbook's 0.3", eta.Range)
	}
}

// Ramalingam, examples 2 and 4: 20 t of fish are frozen from 298 to 263 K by
// 75 kW at 0.3 of Carnot's efficiency. Published: 48.31 tons of refrigeration
// (210 kJ/min each) and 10.67 h.
//
// Guards "c.Eta * Carnot" in working and kelvinAt0C.
func TestFreezingPlantExample(t *testing.T) {
	c := Cycle{Rated: 50, Eta: 0.3}
	coolingKW := 75 * c.work(263-273.15, 298-273.15).COP
	near(t, "tons", coolingKW/3.5, 48.31, 2e-4)
	heatKJ := 20000 * (2.95*(298-268) + 230 + 1.25*(268-263))
	near(t, "hours", heatKJ/coolingKW/3600, 10.67, 5e-4)
}

// Capacity against the refrigerating effect per volume of R134a, sucked in as
// saturated vapour, fed as saturated liquid: Mechanical Engineers' Handbook
// vol. 4, table 14.
//
// Guards capacityGrowth (0.045 to 0.055 fails) and the sign of capacityFall.
func TestCapacityAgainstRefrigerant(t *testing.T) {
	type vapour struct{ tC, volumeM3, hKJ float64 }
	at := func(v vapour, liquidKJ float64) float64 { return (v.hKJ - liquidKJ) / v.volumeM3 }
	const liquid12bar, liquid10bar, liquid8bar = 117.5, 106.9, 95.0 // 46.36, 39.41, 31.35 °C
	vapours := []vapour{{-31.12, 0.2375, 231.2}, {-17.26, 0.1314, 240.0}, {-10.18, 0.1001, 243.6}, {0.59, 0.0679, 250.1}}
	c := Cycle{Rated: 100}
	for i := 1; i < len(vapours); i++ {
		a, b := vapours[i-1], vapours[i]
		fluid := math.Log(at(b, liquid12bar)/at(a, liquid12bar)) / (b.tC - a.tC)
		model := math.Log(c.capacity(b.tC, 46.36)/c.capacity(a.tC, 46.36)) / (b.tC - a.tC)
		near(t, "growth per kelvin", model, fluid, 0.15)
		if low, high := CapacityGrowth().Low, CapacityGrowth().High; fluid < low || fluid > high {
			t.Errorf("growth %.4f of the refrigerant outside %.3f to %.3f", fluid, low, high)
		}
	}
	for _, pair := range [][4]float64{{39.41, liquid10bar, 46.36, liquid12bar}, {31.35, liquid8bar, 39.41, liquid10bar}} {
		reference := at(vapours[2], liquid12bar)
		fluid := (at(vapours[2], pair[1]) - at(vapours[2], pair[3])) / reference / (pair[2] - pair[0])
		if fluid < CapacityFall().Low || fluid > CapacityFall().High {
			t.Errorf("fall %.4f of the refrigerant outside %v", fluid, CapacityFall().Range)
		}
	}
	if cool, hot := c.capacity(-10, 40), c.capacity(-10, 50); hot >= cool {
		t.Errorf("capacity %.1f at 50 °C is not below %.1f at 40 °C", hot, cool)
	}
	// By definition of the rating point.
	near(t, "capacity at -10/45 °C", c.capacity(-10, 45), 100, 1e-12)
}

// Offsets between air, plate and condenser as commonly stated for small units
// (common practice, no source): plate 10 to 15 K below a refrigerator's air,
// condenser 15 to 20 K above still air, 8 to 15 K with a fan, 4 to 8 K in water.
//
// Guards PlateConductance and CondenserRise (5 to 9 W/K and 20 to 25 K fail).
func TestOffsetsAreUsual(t *testing.T) {
	for _, row := range []struct {
		cooledBy  Condenser
		low, high quantity.Celsius
	}{{Fins, 15, 20}, {LockerFan, 10, 20}, {Fan, 8, 15}, {Seawater, 4, 8}} {
		w := typicalUnit(45, row.cooledBy, Thin).Working(4, 25)
		if rise := w.Tc - 25; rise < row.low || rise > row.high {
			t.Errorf("%s: condenser %.1f K above the coolant, want %v to %v", row.cooledBy, rise, row.low, row.high)
		}
		if below := 4 - w.Te; below < 8 || below > 15 {
			t.Errorf("%s: plate %.1f K below the box, want 8 to 15", row.cooledBy, below)
		}
	}
}

// Guards where solveOmega stops and the use of omega in Ready.Working: breaking
// off at a step of 0.1, or dropping "lnFall(tc)", fails. The reference solves
// the same balance by halving, and knows nothing of Lambert's function.
func TestPlateBalances(t *testing.T) {
	eachSituation(func(u Unit, box, coolant quantity.Celsius) {
		c := u.Cycle()
		w := c.Working(box, coolant)
		low, high := -300.0, float64(box)
		for range 200 {
			middle := (low + high) / 2
			if float64(box)-middle > c.capacity(middle, float64(w.Tc))/float64(c.Plate) {
				low = middle
			} else {
				high = middle
			}
		}
		want := min(5, low)
		if math.Abs(float64(w.Te)-want) > 1e-8*float64(box-quantity.Celsius(low)) {
			t.Fatalf("%+v box %v coolant %v: plate %.12f, want %.12f", u, box, coolant, w.Te, want)
		}
		near(t, "capacity", float64(w.CapacityW), c.capacity(want, float64(w.Tc)), 1e-8)
	})
	// The omega constant, W(1) = 0.5671432904 (Corless et al. 1996): with
	// growth · rated / conductance = 1 and the box at -10 °C, w is W(1).
	c := Cycle{Rated: 100, Eta: 0.33, Plate: 100 * capacityGrowth, Rise: 20}
	near(t, "omega", capacityGrowth*float64(-10-c.Working(-10, 25).Te), 0.5671432904097838, 2e-9)
}

// The Wright omega function: omega(0) is the omega constant, 0.5671432904
// (Corless et al. 1996); omega(1) = 1 and omega(2 + ln 2) = 2 follow from its
// definition. Guards the table of omega and both slopes in hermite: half of
// "w / (1 + w) / omegaPerUnit", or a hermite without nextSlope, fails.
func TestOmega(t *testing.T) {
	near(t, "omega(0)", omega(0), 0.5671432904097838, 2e-9)
	near(t, "omega(1)", omega(1), 1, 2e-9)
	near(t, "omega(2 + ln 2)", omega(2+math.Ln2), 2, 2e-9)
	for y := -12.0; y < 14; y += 0.00731 {
		w := omega(y)
		if off := math.Abs(w + math.Log(w) - y); off > 1e-7*math.Max(1, 1/w) || w <= 0 {
			t.Fatalf("omega(%v) = %v: w + ln w is off by %v", y, w, off)
		}
		if exact := solveOmega(y); math.Abs(w-exact) > 2e-9*math.Max(1, exact) {
			t.Fatalf("omega(%v) = %v, solved %v", y, w, exact)
		}
	}
	for tc := 20.0; tc < 110; tc += 0.37 {
		near(t, "ln of capacity left", math.Exp(lnFall(tc)), 1-capacityFall*(tc-ratingCondenserC), 1e-9)
	}
}

// Guards "if te > plateCeilingC" in Ready.Working, "max(condenserFloorC" in
// condensing, and that the two leave 25 K between them (a ceiling of 7 °C fails).
func TestLimits(t *testing.T) {
	eachSituation(func(u Unit, box, coolant quantity.Celsius) {
		w := u.Working(box, coolant)
		if w.Te > 5 || w.Tc < 30 || w.Tc-w.Te < 25 || w.CapacityW <= 0 || w.COP <= 0 {
			t.Fatalf("%+v box %v coolant %v: %+v", u, box, coolant, w)
		}
	})
}

// Guards the sign of each temperature in Working: swapping box and coolant
// fails, as does a capacityFall below 0.
func TestWarmerCoolantAndBox(t *testing.T) {
	eachSituation(func(u Unit, box, coolant quantity.Celsius) {
		w := u.Working(box, coolant)
		if warmer := u.Working(box, coolant+1); warmer.COP > w.COP || warmer.CapacityW > w.CapacityW {
			// A weaker unit has a warmer plate, which must not make up for it.
			t.Fatalf("%+v box %v: coolant %v to %v raises %+v to %+v", u, box, coolant, coolant+1, w, warmer)
		}
		warmer := u.Working(box+1, coolant)
		if warmer.CapacityW < w.CapacityW || (w.Te < 5 && warmer.CapacityW == w.CapacityW) {
			t.Fatalf("%+v coolant %v: box %v to %v lowers capacity %v to %v", u, coolant, box, box+1, w.CapacityW, warmer.CapacityW)
		}
		if warmer.COP < w.COP {
			t.Fatalf("%+v coolant %v: box %v to %v lowers COP %v to %v", u, coolant, box, box+1, w.COP, warmer.COP)
		}
	})
}

// A plate that stores cold runs near -10 °C: common practice, no source;
// potassium chloride's eutectic is at -10.7 °C.
//
// Guards "r.working(eutecticC" in Storing.
func TestStoringPlate(t *testing.T) {
	c := typicalUnit(50, Fan, Eutectic).Cycle()
	w := c.Storing(33)
	near(t, "plate", float64(w.Te), -10, 0.1)
	near(t, "capacity at the rating point", float64(w.CapacityW), 50, 1e-12)
	if on := c.Working(4, 33); w.COP >= on.COP {
		t.Errorf("freezing a plate, COP %.2f, should cost more than cooling the box, %.2f", w.COP, on.COP)
	}
}

func TestHourlyUseAllocatesNothing(t *testing.T) {
	c := typicalUnit(40, Fan, Thin).Cycle()
	p := Panel{Wp: 100, Mounting: Arch, Controller: Tracking}.Chain()
	w := c.Working(4, 25)
	ready := c.Ready()
	var sum quantity.Watt
	if n := testing.AllocsPerRun(100, func() {
		w = ready.Working(5, 27)
		sum += c.PowerW(w) + p.PowerW(600, 27)
	}); n != 0 {
		t.Errorf("%v allocations an hour", n)
	}
}

func BenchmarkReady(b *testing.B) {
	c := typicalUnit(40, Fan, Thin).Cycle()
	ready := c.Ready()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		ready.Working(4, 24+quantity.Celsius(i&7)/2)
	}
}

func BenchmarkWorking(b *testing.B) {
	c := typicalUnit(40, Fan, Thin).Cycle()
	for i := 0; b.Loop(); i++ {
		c.Working(4, 24+quantity.Celsius(i&7)/2)
	}
}
