package energy

import (
	"strconv"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

const foot = 0.3048

// Guards CopperOhmMm2PerM and the "2 * float64(c.Run)" in Drop and SizeFor.
func TestMetricConductors(t *testing.T) {
	// IEC 60028, annealed copper: 0.017241 Ω·mm²/m at 20 °C; 0.00393 per kelvin.
	near(t, "copper at 30 °C", CopperOhmMm2PerM, 0.017241*1.0393, 1e-4)
	for _, row := range []struct {
		Source  string
		current quantity.Ampere
		loop    quantity.Metre
		share   quantity.Fraction
		iso     float64 // mm² by ISO 10133's 0.0164, which is less than copper has
		sold    quantity.SquareMillimetre
	}{
		{"ISO 10133 annex, from memory: 3 %", 5, 6, 0.03, 1.37, 1.5},
		{"ISO 10133 annex, from memory: 10 %", 5, 6, 0.10, 0.41, 0.75},
		{"ISO 10133 annex, from memory: 3 %", 10, 10, 0.03, 4.56, 6},
		{"ISO 10133 annex, from memory: 10 %", 10, 10, 0.10, 1.37, 1.5},
		{"5 A, 5 m one way, 3 %", 5, 10, 0.03, 2.278, 2.5},
	} {
		least := SizeFor(row.current, row.loop/2, 12, row.share)
		near(t, row.Source, float64(least), row.iso*CopperOhmMm2PerM/0.0164, 0.01)
		sold, ok := NextMetric(least)
		if !ok || sold.Size != row.sold {
			t.Errorf("%s: %.2f mm² is sold as %v (%v), want %v", row.Source, least, sold.Size, ok, row.sold)
		}
		// Back again: the least size loses just the share.
		near(t, "drop", float64(Cable{row.loop / 2, least}.DropShare(row.current, 12)), float64(row.share), 1e-12)
	}
	if _, ok := NextMetric(36); ok {
		t.Error("a size beyond 35 mm²")
	}
}

// Guards CopperOhmMilPerFt and the areas: with those of SAE J378, a tenth
// smaller, the first row is AWG 10.
func TestGauges(t *testing.T) {
	// US marine practice, CM = 10.75 · I · L / E with L both ways in feet, from memory.
	near(t, "10.75 Ω·circular mil/ft", CopperOhmMilPerFt, 10.75, 0.005)
	for _, row := range []struct {
		Source  string
		current quantity.Ampere
		loopM   quantity.Metre
		volts   quantity.Volt
		share   quantity.Fraction
		mils    float64 // by the rule
		awg     string
	}{
		{"chandler's wiring table: 10 A, 21 ft, 3 %", 10, 21 * foot, 12, 0.03, 6271, "12"},
		{"chandler's wiring table: 10 A, 21 ft, 10 %", 10, 21 * foot, 12, 0.10, 1881, "16"},
		{"chandler's worked example: the same at 32 V, 3 %", 10, 21 * foot, 32, 0.03, 2352, "16"},
		{"CM = K I L / E by hand: 5 A, 5 m one way, 3 %", 5, 10, 12, 0.03, 4898, "12"},
		{"CM = K I L / E by hand: the same, 10 %", 5, 10, 12, 0.10, 1470, "16"},
		{"CM = K I L / E by hand: 2.5 A at 24 V, 3 %", 2.5, 10, 24, 0.03, 1225, "16"},
	} {
		least := SizeFor(row.current, row.loopM/2, row.volts, row.share)
		near(t, row.Source, float64(least)/mm2PerMil, row.mils, 0.005)
		gauge, ok := NextGauge(least)
		if !ok || gauge.AWG != row.awg {
			t.Errorf("%s: %.2f mm² is AWG %q (%v), want %s", row.Source, float64(least), gauge.AWG, ok, row.awg)
		}
	}
	// ASTM B258, circular mils, from memory.
	for awg, mils := range map[string]float64{"16": 2583, "12": 6530, "10": 10380, "6": 26240, "0": 105600} {
		for _, g := range gauges {
			if strconv.Itoa(g.awg) == awg {
				near(t, "AWG "+awg, float64(quantity.GaugeSection(float64(g.awg)))/mm2PerMil, mils, 1e-3)
			}
		}
	}
	if _, ok := NextGauge(54); ok {
		t.Error("a gauge beyond AWG 0")
	}
}

// A wire that is told and the wire that is asked for go by one rule: the told
// one is asked for when, and only when, it loses no more than the share.
//
// Guards that Drop, SizeFor and NextGauge use one resistance and one table.
func TestToldAndWantedCablesAgree(t *testing.T) {
	const allowed = CompressorDrop
	for _, text := range []string{"16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "1.5 mm²", "2.5 mm²", "4 mm²", "6 mm²"} {
		size, err := quantity.ParseWireSize(text, quantity.US)
		if err != nil {
			t.Fatal(err)
		}
		for run := quantity.Metre(0.5); run < 12; run += 0.05 {
			for current := quantity.Ampere(1); current < 12; current += 0.5 {
				loses := Cable{run, size}.DropShare(current, 12)
				least := SizeFor(current, run, 12, allowed)
				next, ok := NextMetric(least)
				if strings.HasSuffix(text, "AWG") {
					next, ok = NextGauge(least)
				}
				if wanted := !ok || next.Size > size*(1+1e-9); wanted != (loses > allowed*(1+1e-9)) {
					t.Fatalf("%s over %.2f m at %v A loses %.4f, and %v %v is asked for", text, float64(run), current, float64(loses), next, ok)
				}
			}
		}
	}
}

// Guards gauges' ampacities and maxFuseShare.
func TestAmpacityAndFuse(t *testing.T) {
	for _, row := range []struct {
		awg            string
		ampacity, fuse quantity.Ampere
	}{ // 33 CFR 183.425 table 5, 105 °C; 183.455: 150 %
		{"16", 25, 37.5}, {"14", 35, 52.5}, {"12", 45, 67.5}, {"10", 60, 90}, {"8", 80, 120},
		{"6", 120, 180}, {"4", 160, 240}, {"2", 210, 315}, {"1", 245, 367.5}, {"0", 285, 427.5},
	} {
		c := Conductor{Size: sizeOf(t, row.awg)}
		ampacity, ok := c.Ampacity()
		fuse, _ := c.LargestFuse()
		if !ok || ampacity != row.ampacity || fuse != row.fuse {
			t.Errorf("AWG %s: %v A (%v), fuse %v A, want %v and %v", row.awg, ampacity, ok, fuse, row.ampacity, row.fuse)
		}
	}
	// A metric size never carries more than the gauge above it: 2.5 mm² lies
	// between AWG 14 (1.88 mm²) and AWG 12 (2.96 mm²).
	for size, want := range map[quantity.SquareMillimetre]quantity.Ampere{1: 0, 1.5: 25, 2.5: 35, 4: 45, 6: 60, 10: 80, 16: 120, 25: 160, 35: 210} {
		if got, ok := (Conductor{Size: size}).Ampacity(); got != want || ok != (want > 0) {
			t.Errorf("%v mm²: %v A (%v), want %v", size, got, ok, want)
		}
	}
}

// Sizes common practice, no source: of AWG 16's 37.5 A the 35 A blade fuse is left.
func TestFuseSold(t *testing.T) {
	for most, want := range map[quantity.Ampere]quantity.Ampere{37.5: 35, 52.5: 50, 67.5: 60, 90: 80, 120: 100, 10: 10, 7.4: 5, 4.9: 0} {
		if got, ok := FuseSold(most); got != want || ok != (want > 0) {
			t.Errorf("%v A: %v A (%v), want %v", most, got, ok, want)
		}
	}
}

// Guards "- c.Drop(current)" and the scaling to 24 V in LeastVolts and CutOut.
func TestVoltageAtTheUnit(t *testing.T) {
	b := Bank{100, 12, Lead, 0}
	// 11.8 V less 0.017919 · 5 · 12 / 1.5 = 0.71676 V
	near(t, "least", float64(b.LeastVolts(Cable{6, 1.5}, 5)), 11.08324, 1e-6)
	b.Volts = 24
	near(t, "least at 24 V", float64(b.LeastVolts(Cable{6, 1.5}, 2.5)), 23.6-0.35838, 1e-6)
	near(t, "cut-out at 12 V", float64(CutOut(12)), 10.4, 1e-12)
	near(t, "cut-out at 24 V", float64(CutOut(24)), 2*float64(CutOut(12)), 1e-12)
	// Thin wire of 1 mm² over 10 m brings a drained lead bank to the cut-out.
	b.Volts = 12
	if v := b.LeastVolts(Cable{10, 1}, 6); v > CutOut(12) {
		t.Errorf("%v V is above the cut-out of %v V", v, CutOut(12))
	}
}

func sizeOf(t *testing.T, awg string) quantity.SquareMillimetre {
	t.Helper()
	size, err := quantity.ParseWireSize(awg+" AWG", quantity.US)
	if err != nil {
		t.Fatal(err)
	}
	return size
}
