package words

import (
	"fmt"
	"math"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Round rounds to two significant digits.
func Round(x float64) float64 { return quantity.TwoDigits(x) }

// Money prints an amount to two significant digits: "$1,600", "$12 million".
// What is not finite prints as a dash.
func Money(x float64, currency string) string {
	x = Round(x)
	if math.Abs(x) < 0.005 {
		x = 0
	}
	unit := ""
	switch {
	case math.IsInf(x, 0):
	case math.Abs(x) >= 1e9:
		x, unit = x/1e9, " billion"
	case math.Abs(x) >= 1e6:
		x, unit = x/1e6, " million"
	}
	if unit == "" || x == math.Round(x) {
		return quantity.FormatMoney(quantity.Money(x), currency) + unit
	}
	return strings.TrimSuffix(quantity.FormatMoney(quantity.Money(x), currency), "0") + unit
}

// Money prints an amount as the function Money does, in the owner's currency.
func (v Voice) Money(x float64) string { return Money(x, v.r.Boat.Currency) }

// Small prints an amount that is known to no more than whole units.
func (v Voice) Small(x float64) string {
	if x > 0 && x < 0.5 {
		return "under " + v.Money(1)
	}
	if math.Abs(x) < 10 {
		x = math.Round(x)
	}
	return v.Money(x)
}

// span prints the range of an amount that holds 80 of 100 futures: "$900 to
// $4,000".
func (v Voice) span(r quantity.Range) string { return quantity.Span(v.Money(r.Low), v.Money(r.High)) }

// within rounds an amount to two significant digits, and no finer than its
// range lets one tell: to a tenth of the range's own leading place. It rounds
// once, by the coarser step, as 1446 rounded to 1450 would end as 1500.
func within(x float64, r quantity.Range) float64 {
	wide := math.Abs(r.High - r.Low)
	if wide == 0 || math.IsInf(wide, 0) || math.IsNaN(wide) {
		return x
	}
	step := math.Pow(10, math.Floor(math.Log10(wide))-1)
	if rounded := math.Round(x/step) * step; math.Abs(rounded) < 100*step { // has no third digit
		return rounded
	}
	return Round(x)
}

// about prints an amount with its range in brackets.
func (v Voice) about(r quantity.Range) string {
	x := within(r.Typical, r)
	if r.Low == 0 && r.High == 0 {
		return v.Money(x)
	}
	return v.Money(x) + " (" + v.span(r) + ")"
}

// Tight prints an amount with the ends of a range for the narrow cell of a table:
// "$1,400 (1,300–1,700)".
func Tight(x float64, r quantity.Range, currency string) string {
	x = within(x, r)
	a, b := Unsigned(Money(r.Low, currency)), Unsigned(Money(r.High, currency))
	if a == b {
		return Money(x, currency)
	}
	if figure, unit, ok := strings.Cut(a, " "); ok && strings.HasSuffix(b, " "+unit) {
		a = figure
	}
	return Money(x, currency) + " (" + a + "–" + b + ")"
}

// Tight prints an amount as the function Tight does, in the owner's currency.
func (v Voice) Tight(x float64, r quantity.Range) string { return Tight(x, r, v.r.Boat.Currency) }

// years prints the horizon.
func (v Voice) years() string { return quantity.FormatYears(v.r.Boat.Money.Years) }

// number reads a number fact; an option without it has 0.
func number(f economics.Facts, name string) float64 {
	x, _ := f[name].(float64)
	return x
}

// OtherCurrency says that the price book is in a currency that is not the
// owner's; empty where it is the same.
func (v Voice) OtherCurrency() string {
	own := v.r.Boat.Currency
	if v.book.Currency == "" || v.book.Currency == own {
		return ""
	}
	return fmt.Sprintf("The price book is in %s. Where you told no price, its figures are taken as %s, one for one.", v.book.Currency, own)
}

// MassUnit is the unit of InMass.
func (v Voice) MassUnit() string { return quantity.MassUnit(v.sys) }

// InMass gives kilograms in the owner's unit, that of MassUnit.
func (v Voice) InMass(kg float64) float64 {
	if v.sys == quantity.US {
		return kg / float64(quantity.Pound)
	}
	return kg
}

// Mass prints kilograms in the owner's unit, to two significant digits.
func (v Voice) Mass(kg float64) string {
	own := v.InMass(kg)
	if own == 0 {
		return quantity.FormatMass(0, v.sys)
	}
	return quantity.FormatMass(quantity.Kilogram(kg*Round(own)/own), v.sys)
}

// Volume prints litres in the owner's units.
func (v Voice) Volume(l float64) string { return quantity.FormatVolume(quantity.Litre(l), v.sys) }

// Degrees prints °C in the owner's units.
func (v Voice) Degrees(c float64) string {
	return quantity.FormatTemperature(quantity.Celsius(c), v.sys)
}

func (v Voice) leak(wPerK float64) string {
	return quantity.FormatConductance(quantity.WattPerKelvin(wPerK), v.sys)
}

// Length prints millimetres in the owner's units.
func (v Voice) Length(mm float64) string {
	return quantity.FormatLength(quantity.Metre(mm/1000), v.sys)
}
func (v Voice) area(m2 float64) string { return quantity.FormatArea(quantity.SquareMetre(m2), v.sys) }

// WattHours prints an electrical energy to two significant digits.
func WattHours(wh float64) string { return quantity.FormatEnergy(quantity.WattHour(Round(wh))) }
func power(w float64) string      { return quantity.FormatPower(quantity.Watt(Round(w))) }
func of100(n int) string          { return fmt.Sprintf("%d of 100", n) }

// few100 prints a count that disappoints: "only 12 of 100".
func few100(n int) string {
	if n == 0 {
		return "none of 100"
	}
	return fmt.Sprintf("only %d of 100", n)
}

func share100(share float64) int { return int(math.Round(100 * share)) }

// whole prints a count to two significant digits, or a smaller one exactly.
func whole(x float64) string { return quantity.FormatNumber(math.Round(Round(x))) }

// Plural prints a count to two significant digits with what is counted: "1
// night", "2 nights".
func Plural(n float64, one string) string {
	text := whole(n)
	if text == "1" {
		return text + " " + one
	}
	return text + " " + one + "s"
}

// Capital sets the first letter in upper case.
func Capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// Join lists things: "a", "a and b", "a, b and c".
func Join(things []string) string { return quantity.Listed(things, "and") }

// Either lists things of which one is meant: "a", "a or b", "a, b or c".
func Either(things []string) string { return quantity.Listed(things, "or") }

// Month names a month, 1 for January to 12; other numbers are the caller's
// fault.
func Month(m int) string { return time.Month(m).String() }

// hottest gives the month aboard with the greatest heat gain; false when
// there are no nights aboard.
func (v Voice) hottest() (economics.MonthFigures, bool) {
	var most economics.MonthFigures
	for _, m := range v.r.Months {
		if m.HeatGainW >= most.HeatGainW {
			most = m
		}
	}
	return most, len(v.r.Months) > 0
}

// Nights gives the nights aboard in a year, 0 to 365.
func (v Voice) Nights() float64 {
	var n float64
	for _, m := range v.r.Months {
		n += float64(m.Nights)
	}
	return n
}
