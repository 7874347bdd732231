package quantity

import (
	"math"
	"strings"
)

// dimension names a kind of quantity, as an error sentence names it.
type dimension string

const (
	volume      dimension = "a volume"
	length      dimension = "a length"
	area        dimension = "an area"
	mass        dimension = "a mass"
	temperature dimension = "a temperature"
	charge      dimension = "a charge"
	current     dimension = "a current"
	voltage     dimension = "a voltage"
	power       dimension = "a power"
	energy      dimension = "an energy"
	section     dimension = "a wire size"
	span        dimension = "a span of time"
	conductance dimension = "a leak"
)

// unit is one way of writing a dimension: value in base units =
// figure × factor + offset.
type unit struct {
	dim     dimension
	factor  float64 // 0 for a unit that is not linear
	offset  float64
	names   string // separated by |, lower case, without points
	smaller string // the name of the unit that may follow in a compound, such as inches after feet
}

// The factors below are exact by definition (NIST SP 811, 2008, appendix B;
// the international foot, pound and the US and imperial gallons). Base units:
// litre, metre, square metre, kilogram, °C, ampere-hour, ampere, volt, watt, watt-hour, hour, watt per kelvin.
var units = []unit{
	{volume, 1, 0, "l|litre|litres|liter|liters|ltr|ltrs|lt|dm3", ""},
	{volume, 0.001, 0, "ml|millilitre|millilitres|milliliter|milliliters|cc|cm3", ""},
	{volume, 1000, 0, "m3|cu m|cubic metre|cubic metres|cubic meter|cubic meters", ""},
	{volume, 28.316846592, 0, "cu ft|cuft|cft|ft3|cubic foot|cubic feet|cu feet|cu foot", ""},
	{volume, 0.016387064, 0, "cu in|cuin|in3|cubic inch|cubic inches", ""},
	{volume, 3.785411784, 0, "gal|gals|gallon|gallons|us gal|us gallon|us gallons", ""},
	{volume, 4.54609, 0, "imp gal|imperial gal|imperial gallon|imperial gallons|uk gal|uk gallon|uk gallons", ""},
	{volume, 0.946352946, 0, "qt|qts|quart|quarts|us qt", ""},

	{length, 0.001, 0, "mm|millimetre|millimetres|millimeter|millimeters", ""},
	{length, 0.01, 0, "cm|centimetre|centimetres|centimeter|centimeters", "mm"},
	{length, 1, 0, "m|metre|metres|meter|meters", "cm"},
	{length, 0.0254, 0, `in|inch|inches|"`, ""},
	{length, 0.3048, 0, "ft|foot|feet|'", "in"},

	{area, 1, 0, "m2|sq m|square metre|square metres|square meter|square meters", ""},
	{area, 0.09290304, 0, "ft2|sq ft|square foot|square feet", ""},

	{mass, 1, 0, "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes", "g"},
	{mass, 0.001, 0, "g|gram|grams|gramme|grammes", ""},
	{mass, float64(Pound), 0, "lb|lbs|pound|pounds|#", "oz"},
	{mass, 0.028349523125, 0, "oz|ounce|ounces", ""},

	{temperature, 1, 0, "°c|c|deg c|degc|degree c|degrees c|celsius|degrees celsius|°celsius|centigrade|c°|℃", ""},
	{temperature, 5.0 / 9, -160.0 / 9, "°f|f|deg f|degf|degree f|degrees f|fahrenheit|degrees fahrenheit|°fahrenheit|f°|℉", ""},
	{temperature, 1, -273.15, "k|kelvin|kelvins", ""},

	{charge, 1, 0, "ah|a h|amp hour|amp hours|amp-hour|amp-hours|amphour|amphours|ampere hour|ampere hours|ampere-hour|ampere-hours", ""},
	{charge, 0.001, 0, "mah", ""},
	{current, 1, 0, "a|amp|amps|ampere|amperes", ""},
	{current, 0.001, 0, "ma|milliamp|milliamps", ""},
	{voltage, 1, 0, "v|volt|volts|vdc|v dc", ""},

	{power, 1, 0, "w|watt|watts|wp|watt peak|watts peak", ""},
	{power, 1000, 0, "kw|kilowatt|kilowatts", ""},
	{power, 1055.05585262 / 3600, 0, "btu/h|btu/hr|btuh|btu per hour|btu an hour", ""},
	{energy, 1, 0, "wh|w h|watt hour|watt hours|watt-hour|watt-hours", ""},
	{energy, 1000, 0, "kwh|kilowatt hour|kilowatt hours|kilowatt-hour|kilowatt-hours", ""},
	{energy, 1 / 3.6, 0, "kj|kilojoule|kilojoules", ""},
	{energy, 1000 / 3.6, 0, "mj|megajoule|megajoules", ""},
	{energy, 1055.05585262 / 3600, 0, "btu|btus", ""},

	{section, 1, 0, "mm2|sq mm|sqmm|square millimetre|square millimetres|square millimeter|square millimeters", ""},
	{section, 0, 0, "awg|ga|gauge", ""}, // not linear: see ParseWireSize

	{conductance, 1, 0, "w/k|w/°c|w/c|watt per kelvin|watts per kelvin", ""},
	{conductance, 1055.05585262 / 3600 * 1.8, 0, "btu/h·°f|btu/h*°f|btu/h °f|btu/h*f|btu/h f|btu/h/°f|btu/h/f|btu/hr*°f|btu/hr °f", ""},

	{span, 1, 0, "h|hr|hrs|hour|hours", ""},
	{span, 1.0 / 60, 0, "min|mins|minute|minutes", ""},
	{span, 24, 0, "d|day|days", "h"},
	{span, 168, 0, "week|weeks|wk|wks", "d"},
	{span, 730, 0, "month|months|mo", ""}, // a twelfth of 8760 h
	{span, 8760, 0, "y|yr|yrs|year|years", "month"},
}

// named holds every unit by each of its names.
var named = func() map[string][]unit {
	names := map[string][]unit{}
	for _, u := range units {
		for _, n := range strings.Split(u.names, "|") {
			names[n] = append(names[n], u)
		}
	}
	return names
}()

// unitNamed finds a unit by a name as owners write it, first among the
// wanted dimension. ok is false when no dimension has such a unit.
func unitNamed(name string, want dimension) (u unit, ok bool) {
	for _, u = range named[unitName(name)] {
		if ok = true; u.dim == want {
			break
		}
	}
	return u, ok
}

// In gives a figure of one unit in another, each by any of its names; NaN where
// they do not measure the same.
func In(v float64, from, to string) float64 {
	a, _ := unitNamed(from, "")
	b, _ := unitNamed(to, a.dim)
	if a.dim != b.dim || b.factor == 0 {
		return math.NaN()
	}
	return (v*a.factor + a.offset - b.offset) / b.factor
}

// Measures gives what a unit of the given name measures, as an error sentence
// has it, such as "a mass" for "oz"; ok is false when there is no such unit.
func Measures(name string) (what string, ok bool) {
	u, ok := unitNamed(name, "")
	return string(u.dim), ok
}

var unitMarks = strings.NewReplacer(".", " ", "^", "", "-hour", " hour", "²", "2", "³", "3")

// unitName brings a unit's name to the form the table holds: lower case, no
// points, single spaces, exponents as plain digits.
func unitName(name string) string {
	name = unitMarks.Replace(strings.ToLower(name))
	name = strings.Join(strings.Fields(name), " ")
	if rest, ok := strings.CutPrefix(name, "° "); ok {
		name = "°" + rest
	}
	return name
}

// first gives the shortest usual name of a unit.
func (u unit) first() string {
	name, _, _ := strings.Cut(u.names, "|")
	return name
}

// nearUnit finds the first unit of the wanted dimension whose name differs
// from name by one slip of the keyboard.
func nearUnit(name string, want dimension) string {
	name = unitName(name)
	for _, u := range units {
		if u.dim != want {
			continue
		}
		for _, n := range strings.Split(u.names, "|") {
			if len(n) > 3 && len(name) > 3 && Distance(n, name) <= 1 {
				return n
			}
		}
	}
	return ""
}
