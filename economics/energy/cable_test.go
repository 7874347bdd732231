package energy

import (
	"testing"

	"coldreckon/economics/quantity"
)

const foot = 0.3048

// Guards copperMetric and the "2 * float64(c.Run)" in Drop and SizeFor.
func TestMetricConductors(t *testing.T) {
	for _, row := range []struct {
		Source  string
		current quantity.Ampere
		loop    quantity.Metre
		share   quantity.Fraction
		least   float64
		sold    quantity.SquareMillimetre
	}{
		{"ISO 10133 annex, from memory: 3 %", 5, 6, 0.03, 1.37, 1.5},
		{"ISO 10133 annex, from memory: 10 %", 5, 6, 0.10, 0.41, 0.75},
		{"ISO 10133 annex, from memory: 3 %", 10, 10, 0.03, 4.56, 6},
		{"ISO 10133 annex, from memory: 10 %", 10, 10, 0.10, 1.37, 1.5},
		// The US rule converted, 0.0179, gives 2.49 for the same run.
		{"5 A, 5 m one way, 3 %", 5, 10, 0.03, 2.278, 2.5},
	} {
		least := SizeFor(row.current, row.loop/2, 12, row.share)
		near(t, row.Source, float64(least), row.least, 0.01)
		sold, ok := NextMetric(least)
		if !ok || sold.Size != row.sold {
			t.Errorf("%s: %.2f mm² is sold as %v (%v), want %v", row.Source, least, sold.Size, ok, row.sold)
		}
		// Back again: the least size loses just the share.
		near(t, "drop", float64(Cable{row.loop / 2, least}.DropShare(row.current, 12)), float64(row.share), 1e-12)
	}
	// Copper itself, 0.0172 Ω·mm²/m at 20 °C (from memory), within a tenth.
	near(t, "resistance", float64(Cable{0.5, 1}.Drop(1)), 0.0172, 0.1)
	if _, ok := NextMetric(36); ok {
		t.Error("a size beyond 35 mm²")
	}
}

// Guards copperMils, feetPerMetre and the areas of AWG 16, 12 and 10 (with
// 6,530 for AWG 12, its area outside boats, the first row fails).
func TestGauges(t *testing.T) {
	for _, row := range []struct {
		Source  string
		current quantity.Ampere
		loopM   quantity.Metre
		volts   quantity.Volt
		share   quantity.Fraction
		mils    float64
		awg     string
	}{
		{"chandler's wiring table: 10 A, 21 ft, 3 %", 10, 21 * foot, 12, 0.03, 6271, "10"},
		{"chandler's wiring table: 10 A, 21 ft, 10 %", 10, 21 * foot, 12, 0.10, 1881, "16"},
		{"chandler's worked example: the same at 32 V, 3 %", 10, 21 * foot, 32, 0.03, 2352, "14"},
		{"CM = K I L / E by hand: 5 A, 5 m one way, 3 %", 5, 10, 12, 0.03, 4898, "12"},
		{"CM = K I L / E by hand: the same, 10 %", 5, 10, 12, 0.10, 1470, "16"},
		{"CM = K I L / E by hand: 2.5 A at 24 V, 3 %", 2.5, 10, 24, 0.03, 1225, "16"},
	} {
		mils := CircularMilsFor(row.current, row.loopM/2, row.volts, row.share)
		near(t, row.Source, mils, row.mils, 0.001)
		gauge, ok := NextGauge(mils)
		if !ok || gauge.AWG != row.awg {
			t.Errorf("%s: %.0f mils is AWG %q (%v), want %s", row.Source, mils, gauge.AWG, ok, row.awg)
		}
	}
	if _, ok := NextGauge(1e5); ok {
		t.Error("a gauge beyond AWG 0")
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
		c := Conductor{AWG: row.awg}
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

// Guards "- c.Drop(current)" and the scaling to 24 V in LeastVolts and CutOut.
func TestVoltageAtTheUnit(t *testing.T) {
	b := Bank{100, 12, Lead, 0}
	// 11.8 V less 0.0164 · 5 · 12 / 1.5 = 0.656 V
	near(t, "least", float64(b.LeastVolts(Cable{6, 1.5}, 5)), 11.144, 1e-9)
	b.Volts = 24
	near(t, "least at 24 V", float64(b.LeastVolts(Cable{6, 1.5}, 2.5)), 23.6-0.328, 1e-9)
	near(t, "cut-out at 24 V", float64(CutOut(24)), 2*float64(CutOut(12)), 1e-12)
	// Thin wire of 1 mm² over 10 m brings a drained lead bank to the cut-out.
	b.Volts = 12
	if v := b.LeastVolts(Cable{10, 1}, 6); v > CutOut(12) {
		t.Errorf("%v V is above the cut-out of %v V", v, CutOut(12))
	}
}
