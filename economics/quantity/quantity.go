// Package quantity holds the units that cross package borders.
//
// Every figure that leaves one package for another carries its unit in its
// type, so that litres cannot be handed over as kilograms nor a temperature
// as a temperature difference. Inside a formula the value is converted once
// to float64 and the unit moves into the name (areaM2, leakWPerK).
//
// The package also reads and prints quantities as owners write them, in
// either unit system. Every Parse function takes a figure with or without a
// unit, a bare one in the unit that its comment names after "Bare", and gives a
// finite figure, of any sign unless its comment bounds it; its error is an
// *Error. What a Format function prints, rounded, the Parse function of its
// name reads again, where there is one.
//
//	quantity.go      the units, ranges and grades of knowledge that others share
//	units.go         the table of units, by every name that owners use
//	spelling.go      misspelt and overlong words in error sentences
//	number.go        numbers and sums: 1 1/2, 2,5, 2*50+30
//	parse.go         a figure with its unit
//	measures.go      volumes, lengths and their kin, read and printed
//	parse_plain.go   shares, money, prices, measures, latitudes, wire sizes
//	format.go        figures as printed
//
// Left out: arithmetic with units (multiplying two of these types gives one of
// them, which is why formulas work in float64), and currencies' rates.
package quantity

import "math"

// Celsius is a temperature on the Celsius scale, °C.
type Celsius float64

// Kelvin is a temperature difference; 1 K = 1 °C of difference = 1.8 °F.
type Kelvin float64

// Watt is a power, W: heat flow or electrical.
type Watt float64

// WattPerKelvin is a conductance, W/K: the heat that leaks per kelvin of difference.
type WattPerKelvin float64

// Kilojoule is an amount of heat, kJ; 1 Wh is 3.6 kJ.
type Kilojoule float64

// KilojoulePerKelvin is a heat capacity, kJ/K.
type KilojoulePerKelvin float64

// WattHour is an amount of electrical energy, Wh.
type WattHour float64

// AmpHour is a charge, Ah; times a voltage it is an energy.
type AmpHour float64

// Volt is an electrical potential, V.
type Volt float64

// Ampere is a current, A.
type Ampere float64

// Litre is a volume, L.
type Litre float64

// Kilogram is a mass, kg.
type Kilogram float64

// Pound is one pound (international yard and pound agreement, 1959, exact).
const Pound Kilogram = 0.45359237

// Metre is a length, m, wall thicknesses included.
type Metre float64

// SquareMetre is an area, m².
type SquareMetre float64

// SquareMillimetre is the section of a conductor, mm².
type SquareMillimetre float64

// Year is a span of years, fractions allowed; a year has 365 days.
type Year float64

// Fraction is a share from 0 to 1.
type Fraction float64

// Money is an amount in the owner's own currency, in constant prices.
type Money float64

// MoneyPerKg is a price per kilogram in the owner's own currency.
type MoneyPerKg float64

// KWhPerM2Day is a daily irradiation on a horizontal surface, kWh/m².
type KWhPerM2Day float64

// Dimensions are the inside length, width and height of a box.
type Dimensions struct{ Length, Width, Height Metre }

// Volume gives the volume enclosed, in litres; 0 for an opening.
func (d Dimensions) Volume() Litre { return Litre(1000 * d.Length * d.Width * d.Height) }

// Zero reports whether no dimension is given.
func (d Dimensions) Zero() bool { return d == Dimensions{} }

// Range is an uncertain figure: Low and High are its 10th and 90th
// percentiles, Typical its median. Low <= Typical <= High.
type Range struct {
	Low     float64 `yaml:"low" json:"low"`
	Typical float64 `yaml:"typical" json:"typical"`
	High    float64 `yaml:"high" json:"high"`
}

// Exactly is the range of a figure known without doubt.
func Exactly(v float64) Range { return Range{v, v, v} }

// NormalP90 is the 90th percentile of the standard normal distribution (any
// statistical table; 16 digits from an exact tool).
const NormalP90 = 1.2815515655446004

// Spread is the range of a log-normal figure, of its median above zero and the
// standard deviation of its logarithm.
func Spread(median, logSD float64) Range {
	f := math.Exp(NormalP90 * logSD)
	return Range{median / f, median, median * f}
}

// LogSD is the standard deviation of the logarithm of a figure that is spread
// log-normally between the range's outer marks.
func (r Range) LogSD() float64 { return math.Log(r.High/r.Low) / 2 / NormalP90 }

// Scale multiplies all three marks by a factor of zero or more.
func (r Range) Scale(f float64) Range { return Range{r.Low * f, r.Typical * f, r.High * f} }

// Plus adds two ranges mark by mark, which holds for what goes high or low together.
func (r Range) Plus(o Range) Range {
	return Range{r.Low + o.Low, r.Typical + o.Typical, r.High + o.High}
}

// System is the unit system an owner reads and writes.
type System string

// The two systems.
const (
	Metric System = "metric" // L, kg, mm, °C
	US     System = "us"     // cu ft, lb, in, °F
)

// Language is that of its owners' documents, by BCP 47.
func (s System) Language() string {
	if s == US {
		return "en-US"
	}
	return "en-GB"
}

// Tri is the answer to a yes-or-no question that may also be "don't know".
type Tri string

// The three answers. An unanswered question counts as Unknown.
const (
	Yes     Tri = "yes"
	No      Tri = "no"
	Unknown Tri = "unknown"
)

// How tells how a figure came to be known, from weakest to strongest.
type How string

// The grades of knowledge.
const (
	Assumed  How = "assumed"  // not answered: a default
	Unsure   How = "unsure"   // "don't know": a default with a wider range
	Told     How = "told"     // the owner's answer
	Measured How = "measured" // from a test or a log
)
