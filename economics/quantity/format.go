package quantity

import (
	"math"
	"strconv"
	"strings"
)

// The Format functions print a quantity in the owner's system with no more
// digits than an owner can use: two significant ones below one, one decimal
// below ten, none above, unless their comment says otherwise.

// round2 prints v with one decimal below ten and none above; trailing ".0" is
// dropped. What is not finite prints as "–".
func round2(v float64) string {
	if math.Abs(v) < 9.95 {
		return decimals(v, 1)
	}
	return decimals(v, 0)
}

// TwoDigits rounds to two significant digits; what is not finite stays.
func TwoDigits(v float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
	return math.Round(v/step) * step
}

// Significant rounds to so many significant digits, the same on every processor;
// what is not finite stays.
func Significant(v float64, digits int) float64 {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', digits-1, 64), 64) // a number's own text
	return rounded
}

// decimals prints v with at most n decimals.
func decimals(v float64, n int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	s := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// small prints a figure that may be far below one with two significant digits.
func small(v float64) string {
	if a := math.Abs(v); a > 0 && a < 0.95 {
		return decimals(v, 1-int(math.Floor(math.Log10(a))))
	}
	return round2(v)
}

// Span joins two printed figures to a range: "80 L" and "100 L" are
// "80 to 100 L"; equal figures are printed once.
func Span(low, high string) string {
	if low == high {
		return low
	}
	figure, unit, ok := strings.Cut(low, " ")
	if ok && strings.HasSuffix(high, " "+unit) {
		return figure + " to " + high
	}
	return low + " to " + high
}

// Listed lists things with a word before the last: "a", "a and b", "a, b and c".
func Listed(things []string, word string) string {
	if len(things) < 2 {
		return strings.Join(things, "")
	}
	last := len(things) - 1
	return strings.Join(things[:last], ", ") + " " + word + " " + things[last]
}

// FormatLength prints a short length, "25 mm" or "1 1/2 in"; inches to the
// nearest eighth.
func FormatLength(v Metre, sys System) string {
	if sys != US {
		return round2(1000*float64(v)) + " mm"
	}
	return inches(float64(v)/0.0254) + " in"
}

// inches prints a figure to the nearest eighth as a mixed fraction.
func inches(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v) > 1e6 {
		return round2(v)
	}
	sign := ""
	if v < 0 {
		sign, v = "-", -v
	}
	eighths := int(math.Round(v * 8))
	if eighths == 0 && v > 0 {
		return sign + small(v)
	}
	whole, part, under := eighths/8, eighths%8, 8
	for part > 0 && part%2 == 0 {
		part, under = part/2, under/2
	}
	switch {
	case part == 0:
		return sign + strconv.Itoa(whole)
	case whole == 0:
		return sign + strconv.Itoa(part) + "/" + strconv.Itoa(under)
	}
	return sign + strconv.Itoa(whole) + " " + strconv.Itoa(part) + "/" + strconv.Itoa(under)
}

// FormatDimensions prints "450 x 400 x 500 mm" or "18 x 16 x 20 in"; an
// opening, which has no height, prints its two sides.
func FormatDimensions(d Dimensions, sys System) string {
	sides := []Metre{d.Length, d.Width, d.Height}
	if d.Height == 0 {
		sides = sides[:2]
	}
	unit := " mm"
	if sys == US {
		unit = " in"
	}
	var printed []string
	for _, s := range sides {
		printed = append(printed, strings.TrimSuffix(FormatLength(s, sys), unit))
	}
	return strings.Join(printed, " x ") + unit
}

// FormatTemperature prints "4.5 °C", to the half degree, or "40 °F", to the degree.
func FormatTemperature(v Celsius, sys System) string {
	if sys == US {
		return decimals(float64(v)*1.8+32, 0) + " °F"
	}
	return decimals(math.Round(float64(v)*2)/2, 1) + " °C"
}

// FormatVoltage prints "12 V" or "12.3 V".
func FormatVoltage(v Volt) string { return decimals(float64(v), 1) + " V" }

// FormatEnergy prints "620 Wh", or from 10 kWh on "12 kWh".
func FormatEnergy(v WattHour) string {
	if math.Abs(float64(v)) >= 9950 {
		return round2(float64(v)/1000) + " kWh"
	}
	return small(float64(v)) + " Wh"
}

// FormatWireSize prints "6 mm²", or "10 AWG", the nearest even gauge or aught.
func FormatWireSize(v SquareMillimetre, sys System) string {
	if sys != US || v <= 0 || v > 120 {
		return small(float64(v)) + " mm²"
	}
	gauge := int(math.Round(36 - 39*math.Log(math.Sqrt(float64(v)*4/math.Pi)/0.127)/math.Log(92)))
	if gauge <= 0 {
		return strconv.Itoa(1-gauge) + "/0 AWG"
	}
	return strconv.Itoa(gauge) + " AWG"
}

// FormatYears prints "10 years".
func FormatYears(v Year) string {
	if s := decimals(float64(v), 1); s != "1" {
		return s + " years"
	}
	return "1 year"
}

// FormatShare prints "30 %".
func FormatShare(v Fraction) string { return small(float64(v)*100) + " %" }

// FormatNumber prints a plain number with at most two decimals.
func FormatNumber(v float64) string { return decimals(v, 2) }

// FormatLatitude prints "44.1° N".
func FormatLatitude(deg float64) string {
	if deg < 0 {
		return decimals(-deg, 1) + "° S"
	}
	return decimals(deg, 1) + "° N"
}

// FormatMoney prints "$1,200", "EUR 1,200", "$0.80"; cents only below ten.
func FormatMoney(v Money, currency string) string {
	n := 0
	if math.Abs(float64(v)) < 9.995 && math.Round(float64(v)) != float64(v) {
		n = 2
	}
	return amount(float64(v), n, currency)
}

// FormatMoneySpan prints an amount, or two where high is above zero: "$3 to $6".
func FormatMoneySpan(low, high Money, currency string) string {
	if high <= 0 {
		return FormatMoney(low, currency)
	}
	return FormatMoney(low, currency) + " to " + FormatMoney(high, currency)
}

// FormatPricePerMass prints "$1.10/kg" or "$0.50/lb".
func FormatPricePerMass(v MoneyPerKg, currency string, sys System) string {
	if sys == US {
		return amount(float64(v)*float64(Pound), 2, currency) + "/lb"
	}
	return amount(float64(v), 2, currency) + "/kg"
}

// Thousands sets commas between the thousands of a plain figure, such as -1234.5.
func Thousands(figure string) string {
	whole, _, _ := strings.Cut(figure, ".")
	for i := len(whole) - 3; i > 0 && whole[i-1] != '-'; i -= 3 {
		figure = figure[:i] + "," + figure[i:]
	}
	return figure
}

func amount(v float64, n int, currency string) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	s := strconv.FormatFloat(math.Abs(v), 'f', n, 64)
	whole := Thousands(s)
	if currency != "" && currency[len(currency)-1] < 0x80 && isLetter(currency[len(currency)-1]) {
		currency += " "
	}
	if v < 0 && strings.Trim(s, "0.") != "" {
		return "-" + currency + whole
	}
	return currency + whole
}
