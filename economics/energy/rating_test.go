package energy

import (
	"math"
	"testing"

	"coldreckon/economics/quantity"
)

// plateOf is a maker's claim in a maker's usual conditions.
func plateOf(amps quantity.Ampere, upTo quantity.Litre) RatingPlate {
	return RatingPlate{Amps: amps, Volts: 12, BoxUpTo: upTo, Box: MakerBox, Ambient: MakerAmbient().Range, CooledBy: Fan}
}

// Common practice, no source: makers quote averages near 0.4 A at 12 V for
// boxes near 100 L and 0.5 A near 200 L at 5 to 6 °C on the same compressor,
// reachable only with thick dry foam in a cool room. Inputs: one unit of 45 W
// with a ducted fan; inside cubes of new dry polyurethane, one gasketed lid,
// 60 to 100 mm thick; air of 20 to 22 °C; nothing put in, never opened.
//
// Guards MakersBoxLeak, COP and condenser: a shape factor without its edges,
// eta at 0.5 or Fins in place of Fan fail.
func TestMakersAverages(t *testing.T) {
	c := typicalUnit(45, Fan, Thin).Cycle()
	amps := func(volume quantity.Litre, foam quantity.Metre, air quantity.Celsius) float64 {
		g := Gain{Leak: MakersBoxLeak(volume, foam), Out: air}
		return float64(c.Duty(g, MakerBox, air).MeanAmps(12))
	}
	near(t, "100 L in 60 mm at 20 °C", amps(100, 0.06, 20), 0.40, 0.05)
	near(t, "200 L in 80 mm at 20 °C", amps(200, 0.08, 20), 0.50, 0.05)
	near(t, "200 L in 100 mm at 22 °C", amps(200, 0.10, 22), 0.50, 0.05)
	// Out of reach: an inch of foam, or the same boxes in a warm cabin.
	if a := amps(100, 0.025, 20); a < 0.65 {
		t.Errorf("100 L in 25 mm takes only %.2f A", a)
	}
	if a := amps(100, 0.06, 30); a < 0.7 {
		t.Errorf("100 L in 60 mm at 30 °C takes only %.2f A", a)
	}
}

// A box's leak by the shape factor of Langmuir (1913): 0.5 × 0.4 × 0.4 m in
// 0.1 m of foam has 14.13 m, its equal cube a little less; with 0.025 W/m·K
// and no films 0.353 W/K for the walls alone.
//
// Guards "12*0.54*side" in MakersBoxLeak.
func TestMakersBoxLeakAgainstShapeFactor(t *testing.T) {
	leak := float64(MakersBoxLeak(80, 0.1))
	seal := makerSeal * 4 * makerLidShare * math.Cbrt(0.08)
	films := 1 + makerFilms*makerFoamK/0.1
	near(t, "walls", (leak-seal)*films/makerFoamK, 14.13, 0.01)
	for v := quantity.Litre(10); v < 500; v += 10 {
		if MakersBoxLeak(v+10, 0.08) <= MakersBoxLeak(v, 0.08) || MakersBoxLeak(v, 0.09) >= MakersBoxLeak(v, 0.08) {
			t.Fatalf("leak at %v L does not rise with size and fall with foam", v)
		}
	}
}

// What is read off a plate must make the plate true again.
//
// Guards leakFor (dropping fan or standby fails) and impliedEta.
func TestImpliedLeakMakesTheCurrentTrue(t *testing.T) {
	for _, plate := range []RatingPlate{plateOf(0.4, 100), plateOf(0.5, 200), plateOf(0.4, 0), plateOf(1.2, 250)} {
		m := plate.Meaning()
		c := plate.cycle(Eta().Typical, m.Cooling.Typical)
		air := quantity.Celsius(plate.Ambient.Typical)
		g := Gain{Leak: quantity.WattPerKelvin(m.ImpliedLeak.Typical), Out: air}
		near(t, "current", float64(c.Duty(g, plate.Box, air).MeanAmps(12)), float64(plate.Amps), 1e-9)
		near(t, "volume", float64(MakersBoxLeak(quantity.Litre(m.ImpliedBox.Typical), quantity.Metre(MakerFoam().Typical))), m.ImpliedLeak.Typical, 1e-6)

		eta := plate.impliedEta(m.Cooling)
		if plate.BoxUpTo > 0 {
			c := plate.cycle(eta.Typical, m.Cooling.Typical)
			g := Gain{Leak: MakersBoxLeak(plate.BoxUpTo, quantity.Metre(MakerFoam().Typical)), Out: air}
			near(t, "current at the implied efficiency", float64(c.Duty(g, plate.Box, air).MeanAmps(12)), float64(plate.Amps), 1e-9)
		}
	}
}

// Guards cooling: the run share it is made from comes back.
func TestCoolingFromTheLargestBox(t *testing.T) {
	plate := plateOf(0, 150)
	hot := quantity.Celsius(MakerHot().Typical)
	g := Gain{Leak: MakersBoxLeak(150, quantity.Metre(MakerFoam().Typical)), Out: hot}
	// Take the usual size out of the combination by hand: in logarithms, by
	// inverse variance.
	inputs := []quantity.Range{MakerFoam().Range, MakerHot().Range, MakerRunShare().Range}
	fromBox := propagate(inputs, plate.coolingFor)
	near(t, "run share", plate.cycle(Eta().Typical, fromBox.Typical).Duty(g, plate.Box, hot).RunShare, MakerRunShare().Typical, 1e-9)

	m := plate.Meaning()
	if lo, hi := min(fromBox.Typical, UsualCooling().Typical), max(fromBox.Typical, UsualCooling().Typical); m.Cooling.Typical < lo || m.Cooling.Typical > hi {
		t.Errorf("combined %v lies outside %v and %v", m.Cooling.Typical, lo, hi)
	}
	if m.ImpliedLeak != (quantity.Range{}) || m.Eta != Eta().Range {
		t.Errorf("nothing was said of current: %+v", m)
	}
	if small, large := plateOf(0, 80).Meaning().Cooling, plateOf(0, 250).Meaning().Cooling; small.Typical >= large.Typical {
		t.Errorf("80 L takes %v, 250 L %v", small, large)
	}
	told := RatingPlate{Cooling: 70, BoxUpTo: 150, Box: 5}.Meaning()
	if told.Cooling.Typical != 70 || told.Cooling.Low >= 65 || told.Cooling.High <= 75 {
		t.Errorf("told 70 W: %v", told.Cooling)
	}
}

// A current that no efficiency explains says that the maker had another box
// in mind, and leaves eta as it was.
//
// Guards "m.Fits = 0.5 <= ratio".
func TestCurrentAndBoxThatDoNotFit(t *testing.T) {
	for _, plate := range []RatingPlate{plateOf(0.15, 250), plateOf(4, 40)} {
		if m := plate.Meaning(); m.Fits || m.Eta != Eta().Range {
			t.Errorf("%v A and %v L: %+v", plate.Amps, plate.BoxUpTo, m)
		}
	}
	m := plateOf(0.45, 150).Meaning()
	if !m.Fits || m.Eta.High/m.Eta.Low >= Eta().High/Eta().Low {
		t.Errorf("a current that fits should narrow eta: %+v", m)
	}
	if m := plateOf(0.005, 100).Meaning(); m.ImpliedLeak.Typical != 0 {
		t.Errorf("less than standby: %+v", m)
	}
}

// Guards propagate (a sum in place of the root of squares fails) and combine.
func TestRangesCombine(t *testing.T) {
	r := quantity.Range{Low: 1 / 1.5, Typical: 1, High: 1.5}
	product := propagate([]quantity.Range{r, r}, func(x []float64) float64 { return x[0] * x[1] })
	// Two independent factors: the logarithms' spread grows by √2.
	near(t, "high", product.High, math.Exp(math.Sqrt2*math.Log(1.5)), 1e-12)
	near(t, "low", product.Low, 1/product.High, 1e-12)
	both := combine(r, r)
	near(t, "two equal estimates", both.High, math.Exp(math.Log(1.5)/math.Sqrt2), 1e-12)
	near(t, "their middle", combine(r, r.Scale(4)).Typical, 2, 1e-12)
}

// MeanAmps gives the average current of a unit in a box, the figure to set
// beside a maker's.
func (d Duty) MeanAmps(at quantity.Volt) quantity.Ampere {
	return quantity.Ampere(d.Mean) / quantity.Ampere(at)
}
