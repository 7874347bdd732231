package energy

import (
	"strconv"

	"coldreckon/economics/quantity"
)

// Stranded copper conductors, warm: one figure by which a cable told is judged
// and one wanted is sized. US marine practice, 10.75 Ω·circular mil/ft, is within
// 0.3 % of it; the 0.0164 Ω·mm²/m of ISO 10133 is less than copper has at 20 °C.
const (
	// CopperOhmMm2PerM is the resistance of a metre of 1 mm² at 30 °C, the air of
	// the ampacities below, Ω. IEC 60028, annealed copper: 1/58 at 20 °C and
	// 0.00393 more per kelvin.
	CopperOhmMm2PerM = (1 + 0.00393*(30-20)) / 58.0
	// CopperOhmMilPerFt is the same of a foot of one circular mil.
	CopperOhmMilPerFt = CopperOhmMm2PerM / mm2PerMil * metresPerFoot

	mm2PerMil     = 5.067075e-4 // a circle of a thousandth of an inch
	metresPerFoot = 0.3048

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

// Drop gives the voltage lost out and back at a current: R · I · L / S, R
// CopperOhmMm2PerM and L both ways.
func (c Cable) Drop(current quantity.Ampere) quantity.Volt {
	return quantity.Volt(CopperOhmMm2PerM * float64(current) * 2 * float64(c.Run) / float64(c.Size))
}

// DropShare is Drop as a share of the system's nominal voltage.
func (c Cable) DropShare(current quantity.Ampere, system quantity.Volt) quantity.Fraction {
	return quantity.Fraction(c.Drop(current) / system)
}

// LeastVolts gives the lowest voltage at a unit that draws a current through c:
// the bank under load at the bottom of its usable share, less the drop. Compare
// with CutOut.
func (b Bank) LeastVolts(c Cable, current quantity.Ampere) quantity.Volt {
	return b.Volts/nominalVolts*quantity.Volt(lowVolts(b.Chemistry).Typical) - c.Drop(current)
}

// CutOut is the voltage at which a unit on a system of this voltage usually
// switches itself off.
func CutOut(system quantity.Volt) quantity.Volt {
	return system / nominalVolts * quantity.Volt(cutOutVolts().Typical)
}

// SizeFor gives the smallest conductor that loses no more than a share, over 0,
// of the system's voltage, over a run told one way. It is a figure for a
// drawing, not yet a size that is sold: see NextMetric and NextGauge.
func SizeFor(current quantity.Ampere, run quantity.Metre, system quantity.Volt, share quantity.Fraction) quantity.SquareMillimetre {
	return quantity.SquareMillimetre(CopperOhmMm2PerM * float64(current) * 2 * float64(run) / (float64(system) * float64(share)))
}

// Conductor is a size that is sold, in one of the two ways of naming it.
type Conductor struct {
	Size quantity.SquareMillimetre // its copper
	AWG  string                    // as printed, "" for a metric size
}

// metricSizes are those of ISO 10133 table A.1, from memory. The standard's
// least single conductor is 1 mm²; 0.75 mm² only runs inside a multicore.
var metricSizes = [...]quantity.SquareMillimetre{0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35}

// gauges are the sizes of boat cable, with the areas of ASTM B258 that
// quantity.GaugeSection gives to a gauge that is told. Ampacities in free air at
// 30 °C with insulation for 105 °C: 33 CFR 183.425 table 5. AWG 16 is the least
// conductor installed by itself, 33 CFR 183.425(e).
var gauges = [...]struct {
	awg      int
	ampacity quantity.Ampere
}{{16, 25}, {14, 35}, {12, 45}, {10, 60}, {8, 80}, {6, 120}, {4, 160}, {2, 210}, {1, 245}, {0, 285}}

// NextMetric gives the next size sold that is no smaller; false beyond 35 mm².
func NextMetric(least quantity.SquareMillimetre) (Conductor, bool) {
	for _, size := range metricSizes {
		if size >= least {
			return Conductor{Size: size}, true
		}
	}
	return Conductor{}, false
}

// NextGauge gives the next gauge sold that is no smaller, never finer than AWG
// 16; false beyond AWG 0.
func NextGauge(least quantity.SquareMillimetre) (Conductor, bool) {
	for _, gauge := range gauges {
		if size := quantity.GaugeSection(float64(gauge.awg)); size >= least {
			return Conductor{Size: size, AWG: strconv.Itoa(gauge.awg)}, true
		}
	}
	return Conductor{}, false
}

// Ampacity gives what a conductor may carry in free air outside an engine
// space, by 33 CFR 183.425 table 5. A metric size counts as the largest gauge
// that it covers; it is false for one that covers none (1 mm² and less).
// In an engine space it may carry only 0.85 of that (the same section,
// insulation for 105 °C). A figure for planning: a boat's own standard decides.
func (c Conductor) Ampacity() (quantity.Ampere, bool) {
	var most quantity.Ampere
	for _, gauge := range gauges {
		if c.Size >= quantity.GaugeSection(float64(gauge.awg)) {
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

// fusesSold are the ratings of common blade and bolted fuses, A, up to those of
// any unit's cable. From memory.
var fusesSold = [...]quantity.Ampere{5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 80, 100}

// FuseSold gives the largest fuse sold, up to 100 A, that is no larger than a
// rating; false where none is.
func FuseSold(most quantity.Ampere) (sold quantity.Ampere, ok bool) {
	for _, size := range fusesSold {
		if size <= most {
			sold, ok = size, true
		}
	}
	return sold, ok
}
