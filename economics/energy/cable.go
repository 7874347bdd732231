package energy

import "coldreckon/economics/quantity"

// Conductors on small craft. Stranded copper only.
const (
	copperMetric = 0.0164 // Ω·mm²/m, ISO 10133 annex, from memory; ISO 13297:2020 has taken its place
	copperMils   = 10.75  // Ω·circular mil/ft, US marine practice, from memory
	feetPerMetre = 1 / 0.3048

	// CompressorDrop is the share of the system's voltage that a unit's cable
	// may lose. ISO 10133 clause 4 allows 10 % to ordinary circuits and 3 % to
	// vital ones; a compressor is given 3 % because its motor starts at twice
	// its running current and its electronics switch off on a sag.
	CompressorDrop quantity.Fraction = 0.03

	maxFuseShare = 1.5 // of ampacity, below 50 V: 33 CFR 183.455
)

// Cable runs from the battery to the unit and back.
type Cable struct {
	Run  quantity.Metre            // one way, along the cable
	Size quantity.SquareMillimetre // of each conductor, above 0
}

// Drop gives the voltage lost out and back at a current: 0.0164 · I · L / S, L
// both ways (ISO 10133).
func (c Cable) Drop(current quantity.Ampere) quantity.Volt {
	return quantity.Volt(copperMetric * float64(current) * 2 * float64(c.Run) / float64(c.Size))
}

// DropShare is Drop as a share of the system's nominal voltage.
func (c Cable) DropShare(current quantity.Ampere, system quantity.Volt) quantity.Fraction {
	return quantity.Fraction(c.Drop(current) / system)
}

// LeastVolts gives the lowest voltage at a unit that draws a current through c:
// the bank under load at the bottom of its usable share, less the drop. Compare
// with CutOut.
func (b Bank) LeastVolts(c Cable, current quantity.Ampere) quantity.Volt {
	return b.Volts/nominalVolts*quantity.Volt(LowVolts(b.Chemistry).Typical) - c.Drop(current)
}

// CutOut is the voltage at which a unit on a system of this voltage usually
// switches itself off.
func CutOut(system quantity.Volt) quantity.Volt {
	return system / nominalVolts * quantity.Volt(CutOutVolts().Typical)
}

// SizeFor gives the smallest conductor that loses no more than a share, over 0,
// of the system's voltage, over a run told one way. It is a figure for a
// drawing, not yet a size that is sold: see NextMetric.
func SizeFor(current quantity.Ampere, run quantity.Metre, system quantity.Volt, share quantity.Fraction) quantity.SquareMillimetre {
	return quantity.SquareMillimetre(copperMetric * float64(current) * 2 * float64(run) / (float64(system) * float64(share)))
}

// CircularMilsFor is SizeFor by the US rule, CM = 10.75 · I · L / E, with L both
// ways in feet and E the volts lost. The result is in circular mils, for
// NextGauge.
func CircularMilsFor(current quantity.Ampere, run quantity.Metre, system quantity.Volt, share quantity.Fraction) float64 {
	return copperMils * float64(current) * 2 * float64(run) * feetPerMetre / (float64(system) * float64(share))
}

// Conductor is a size that is sold, in one of the two ways of naming it.
type Conductor struct {
	Size quantity.SquareMillimetre // 0 for a gauge
	AWG  string                    // as printed, "" for a metric size
}

// metricSizes are those of ISO 10133 table A.1, from memory. The standard's
// least single conductor is 1 mm²; 0.75 mm² only runs inside a multicore.
var metricSizes = [...]quantity.SquareMillimetre{0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35}

// gauges are marine conductors to SAE J378 and J1127, whose areas are smaller
// than those of the same AWG number elsewhere: 16 to 10 as printed in a
// chandler's table, the rest from memory. Ampacities in free air at 30 °C with
// insulation for 105 °C: 33 CFR 183.425 table 5.
var gauges = [...]struct {
	awg      string
	mils     float64
	ampacity quantity.Ampere
}{
	{"16", 2336, 25}, // the least conductor installed by itself, 33 CFR 183.425(e)
	{"14", 3702, 35},
	{"12", 5833, 45},
	{"10", 9343, 60},
	{"8", 14810, 80},
	{"6", 24538, 120},
	{"4", 37360, 160},
	{"2", 62450, 210},
	{"1", 77790, 245},
	{"0", 98980, 285},
}

// NextMetric gives the next size sold that is no smaller; false beyond 35 mm².
func NextMetric(least quantity.SquareMillimetre) (Conductor, bool) {
	for _, size := range metricSizes {
		if size >= least {
			return Conductor{Size: size}, true
		}
	}
	return Conductor{}, false
}

// NextGauge gives the next marine gauge that is no smaller than an area in
// circular mils, never finer than AWG 16; false beyond AWG 0.
func NextGauge(leastMils float64) (Conductor, bool) {
	for _, gauge := range gauges {
		if gauge.mils >= leastMils {
			return Conductor{AWG: gauge.awg}, true
		}
	}
	return Conductor{}, false
}

// squareMillimetrePerMil is the area of a circle of a thousandth of an inch.
const squareMillimetrePerMil = 5.067075e-4

// Ampacity gives what a conductor may carry in free air outside an engine
// space, by 33 CFR 183.425 table 5. A metric size counts as the largest gauge
// that it covers; it is false for one that covers none (1 mm² and less).
// In an engine space it may carry only 0.85 of that (the same section,
// insulation for 105 °C). A figure for planning: a boat's own standard decides.
func (c Conductor) Ampacity() (quantity.Ampere, bool) {
	var most quantity.Ampere
	for _, gauge := range gauges {
		if c.AWG == gauge.awg || float64(c.Size) >= gauge.mils*squareMillimetrePerMil {
			most = gauge.ampacity
		}
	}
	return most, most > 0
}

// LargestFuse gives the highest rating that may protect a conductor: 150 % of
// its ampacity (33 CFR 183.455); false where Ampacity is. The fuse chosen is the
// smaller of this and the figure of the unit's maker, and sits at the battery
// end.
func (c Conductor) LargestFuse() (quantity.Ampere, bool) {
	ampacity, ok := c.Ampacity()
	return maxFuseShare * ampacity, ok
}
