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
// reachable only with thick dry foam in a cool room. Inputs: one unit of 60 W
// with a ducted fan; inside cubes of new dry polyurethane, one gasketed lid,
// 60 to 100 mm thick; air of 20 to 22 °C; nothing put in, never opened.
//
// Guards makersBoxLeak, COP and condenser: a shape factor without its edges,
// eta at 0.5 or Fins in place of Fan fail.
func TestMakersAverages(t *testing.T) {
	c := typicalUnit(60, Fan, Thin).Cycle()
	amps := func(volume quantity.Litre, foam quantity.Metre, air quantity.Celsius) float64 {
		g := Gain{Leak: makersBoxLeak(volume, foam), Out: air}
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
	// Read as plates: the usual compressor, and the better half of its range.
	for _, plate := range []RatingPlate{plateOf(0.4, 100), plateOf(0.5, 200)} {
		m := plate.Meaning()
		if m.Cooling != UsualCooling(Small).Range || !m.Fits || m.Eta.Typical <= Eta().Typical || m.Eta.Typical > 0.42 {
			t.Errorf("%v A and %v L: %+v", plate.Amps, plate.BoxUpTo, m)
		}
	}
}

// A box's leak by the shape factor of Langmuir (1913): 0.5 × 0.4 × 0.4 m in
// 0.1 m of foam has 14.13 m, its equal cube a little less; with 0.025 W/m·K
// and no films 0.353 W/K for the walls alone.
//
// Guards "12*0.54*side" in makersBoxLeak.
func TestMakersBoxLeakAgainstShapeFactor(t *testing.T) {
	leak := float64(makersBoxLeak(80, 0.1))
	seal := makerSeal * 4 * makerLidShare * math.Cbrt(0.08)
	films := 1 + makerFilms*makerFoamK/0.1
	near(t, "walls", (leak-seal)*films/makerFoamK, 14.13, 0.01)
	// 100 L in 50 mm by hand: side 0.46416 m; 0.05/(0.05/0.024 + 2/8.3) = 0.021511 W/m·K over
	// 6·0.21544/0.05 + 12·0.54·0.46416 + 8·0.15·0.05 = 28.921 m, and 0.08 W/m·K along 4·0.8 sides of seal.
	near(t, "100 L in 50 mm", float64(makersBoxLeak(100, 0.05)), 0.021511*28.921+0.08*3.2*0.46416, 1e-4)
	for v := quantity.Litre(10); v < 500; v += 10 {
		if makersBoxLeak(v+10, 0.08) <= makersBoxLeak(v, 0.08) || makersBoxLeak(v, 0.09) >= makersBoxLeak(v, 0.08) {
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
		c := plate.cycle(m.Eta.Typical, m.Cooling.Typical)
		air := quantity.Celsius(plate.Ambient.Typical)
		g := Gain{Leak: quantity.WattPerKelvin(m.ImpliedLeak.Typical), Out: air}
		near(t, "current", float64(c.Duty(g, plate.Box, air).MeanAmps(12)), float64(plate.Amps), 1e-9)
		near(t, "volume", float64(makersBoxLeak(quantity.Litre(m.ImpliedBox.Typical), quantity.Metre(makerFoam().Typical))), m.ImpliedLeak.Typical, 1e-6)

		if plate.BoxUpTo > 0 {
			eta := plate.impliedEta(quantity.Watt(m.Cooling.Typical))
			c := plate.cycle(eta.Typical, m.Cooling.Typical)
			g := Gain{Leak: makersBoxLeak(plate.BoxUpTo, quantity.Metre(makerFoam().Typical)), Out: air}
			near(t, "current at the implied efficiency", float64(c.Duty(g, plate.Box, air).MeanAmps(12)), float64(plate.Amps), 1e-9)
		}
	}
}

// The cooling power is the compressor's: 60 W of a small unit, 45 to 90, 100 W
// of a larger one, 75 to 150 (common practice, no source). Only a box that the
// compressor could not hold raises it.
//
// Guards cooling and coolingFor.
func TestCoolingIsTheCompressors(t *testing.T) {
	for _, row := range []struct {
		upTo quantity.Litre
		size Size
		want quantity.Range
	}{
		{0, Small, quantity.Range{Low: 45, Typical: 60, High: 90}}, {100, Small, quantity.Range{Low: 45, Typical: 60, High: 90}},
		{300, Small, quantity.Range{Low: 45, Typical: 60, High: 90}}, {200, Larger, quantity.Range{Low: 75, Typical: 100, High: 150}},
	} {
		plate := plateOf(0, row.upTo)
		plate.Size = row.size
		if m := plate.Meaning(); m.Cooling != row.want || m.Eta != Eta().Range || m.ImpliedLeak != (quantity.Range{}) || !m.Fits {
			t.Errorf("%v L, %s: %+v", row.upTo, row.size, m)
		}
	}
	plate := plateOf(0, 500)
	plate.Ambient.Typical = 21
	need := plate.coolingFor()
	hot := quantity.Celsius(makerHot().Typical)
	heat := float64(makersBoxLeak(500, quantity.Metre(makerFoam().Typical))) * float64(hot-MakerBox)
	near(t, "a unit that just holds 500 L", float64(plate.cycle(0.33, need).Working(MakerBox, hot).CapacityW), heat, 1e-9)
	plate.Box = -12 // a freezer of that size
	m := plate.Meaning()
	if need = plate.coolingFor(); need <= 60 || m.Cooling.Typical != need || m.Cooling.Low != need || m.Cooling.High != max(90, need) {
		t.Errorf("a box that needs %.0f W: %v", need, m.Cooling)
	}
	told := RatingPlate{Cooling: 70, BoxUpTo: 150, Box: 5}.Meaning()
	if told.Cooling.Typical != 70 || told.Cooling.Low >= 65 || told.Cooling.High <= 75 {
		t.Errorf("told 70 W: %v", told.Cooling)
	}
}

// A current that no efficiency explains says that the maker had another box or
// room, and leaves eta at that end of its range.
//
// Guards m.Fits and the ends to which m.Eta is held.
func TestCurrentAndBoxThatDoNotFit(t *testing.T) {
	for _, row := range []struct {
		plate RatingPlate
		eta   float64
	}{{plateOf(0.15, 250), 0.42}, {plateOf(4, 40), 0.26}, {plateOf(0.005, 100), 0.42}} {
		if m := row.plate.Meaning(); m.Fits || m.Eta.Typical != row.eta {
			t.Errorf("%v A and %v L: %+v", row.plate.Amps, row.plate.BoxUpTo, m)
		}
	}
	m := plateOf(0.55, 115).Meaning()
	if !m.Fits || m.Eta.High/m.Eta.Low >= Eta().High/Eta().Low {
		t.Errorf("a current that fits should narrow eta: %+v", m)
	}
	if m := plateOf(0.005, 100).Meaning(); m.ImpliedLeak.Typical != 0 {
		t.Errorf("less than standby: %+v", m)
	}
}

// A worse plate never means a better unit: more current for the same box, or a
// smaller box for the same current, never takes less in any boat's box.
//
// Guards that impliedEta weighs the same for every plate, and that m.Eta is
// never set back to the usual.
func TestWorsePlateIsNeverABetterUnit(t *testing.T) {
	boxes := []Gain{{Leak: 0.5, Out: 20}, {Leak: 1.2, Out: 28, Use: 4}, {Leak: 3, Out: 33, Use: 8}}
	takes := func(p RatingPlate, g Gain) quantity.WattHour {
		m := p.Meaning()
		u := Unit{RatedW: quantity.Watt(m.Cooling.Typical), Eta: m.Eta.Typical, CooledBy: p.CooledBy, Plate: p.Plate}
		return u.Cycle().Duty(g, 4, g.Out).DayWh()
	}
	for _, size := range []Size{Small, Larger} {
		for _, by := range []Condenser{Fins, LockerFan, Fan, Seawater} {
			for _, plate := range []Plate{Thin, Eutectic} {
				unit := func(amps quantity.Ampere, litres quantity.Litre) RatingPlate {
					p := plateOf(amps, litres)
					p.Size, p.CooledBy, p.Plate = size, by, plate
					return p
				}
				for _, g := range boxes {
					met := map[RatingPlate]quantity.WattHour{} // each stands here, as the worse and as the better
					takes := func(p RatingPlate) quantity.WattHour {
						if _, ok := met[p]; !ok {
							met[p] = takes(p, g)
						}
						return met[p]
					}
					for litres := quantity.Litre(20); litres <= 500; litres += 80 {
						for amps := quantity.Ampere(0.02); amps < 6; amps *= 1.5 {
							here := takes(unit(amps, litres))
							if worse := takes(unit(amps*1.5, litres)); worse < here*(1-1e-9) {
								t.Fatalf("%s, %s, %s: %.2f A for %v L takes %.1f Wh, %.2f A %.1f", size, by, plate, amps, litres, here, amps*1.5, worse)
							}
							if better := takes(unit(amps, litres+80)); better > here*(1+1e-9) {
								t.Fatalf("%s, %s, %s: %.2f A for %v L takes %.1f Wh, for %v L %.1f", size, by, plate, amps, litres, here, litres+80, better)
							}
						}
					}
				}
			}
		}
	}
}

// Two units on the same kind of compressor use nearly the same in the same box:
// the box decides. Guards "size := max(1," in Unit.Cycle: without it 100 W use
// a tenth more than 60.
func TestLargerUnitTakesNoMore(t *testing.T) {
	for _, plate := range []Plate{Thin, Eutectic} {
		for _, leak := range []quantity.WattPerKelvin{0.6, 1.2, 2} {
			g := Gain{Leak: leak, Out: 30, Use: 5}
			small := typicalUnit(60, LockerFan, plate).Cycle().Duty(g, 4, 30)
			larger := typicalUnit(100, LockerFan, plate).Cycle().Duty(g, 4, 30)
			if ratio := larger.DayWh() / small.DayWh(); ratio > 1 || ratio < 0.93 {
				t.Errorf("%s, %v W/K: 100 W take %.3f of what 60 W take", plate, leak, ratio)
			}
		}
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
