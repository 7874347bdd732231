package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// parser reads text in a system and gives the figure in base units.
type parser func(text string, sys System) (float64, error)

func as[T ~float64](f func(string, System) (T, error)) parser {
	return func(text string, sys System) (float64, error) { v, err := f(text, sys); return float64(v), err }
}

func bareless[T ~float64](f func(string) (T, error)) parser {
	return func(text string, _ System) (float64, error) { v, err := f(text); return float64(v), err }
}

// parseEnergy reads what FormatEnergy prints; nothing is asked in watt-hours.
func parseEnergy(text string) (WattHour, error) {
	v, err := want{dim: energy, expected: "an energy, such as 600 Wh", bare: "wh"}.figure(text)
	return WattHour(v), err
}

var parsers = map[string]parser{
	"volume":      as(ParseVolume),
	"length":      as(ParseLength),
	"run":         as(ParseRun),
	"mass":        as(ParseMass),
	"temperature": as(ParseTemperature),
	"difference":  as(ParseTemperatureDifference),
	"charge":      bareless(ParseCharge),
	"current":     bareless(ParseCurrent),
	"voltage":     bareless(ParseVoltage),
	"power":       bareless(ParsePower),
	"energy":      bareless(parseEnergy),
	"heat":        bareless(ParseHeat),
	"conductance": as(ParseConductance),
	"years":       bareless(ParseYears),
	"hours":       bareless(ParseHours),
	"share":       bareless(ParseShare),
	"latitude":    bareless(ParseLatitude),
	"wire":        as(ParseWireSize),
	"number":      func(t string, _ System) (float64, error) { return ParseNumber(t, "people", "a day") },
	"money":       func(t string, _ System) (float64, error) { v, err := ParseMoney(t, "$"); return float64(v), err },
	"price": func(t string, s System) (float64, error) {
		v, err := ParsePricePerMass(t, "$", s, 10*Pound)
		return float64(v), err
	},
}

const sp811 = "NIST SP 811 (2008), appendix B.8"

func TestUnitFactorsAsPublished(t *testing.T) {
	// Value is as printed in the source, to its seven digits.
	tests := []struct {
		parser, text string
		value        float64
		source       string
	}{
		{"volume", "1 cu ft", 2.831685e-02 * 1000, sp811},
		{"volume", "1 cu in", 1.638706e-05 * 1000, sp811},
		{"volume", "1 gal", 3.785412e-03 * 1000, sp811},
		{"volume", "1 imp gal", 4.54609e-03 * 1000, sp811},
		{"volume", "1 qt", 9.463529e-04 * 1000, sp811},
		{"length", "1 ft", 3.048e-01, sp811},
		{"length", "1 in", 2.54e-02, sp811},
		{"mass", "1 lb", 4.535924e-01, sp811},
		{"mass", "1 oz", 2.834952e-02, sp811},
		{"temperature", "40 F", (40 - 32) / 1.8, sp811},
		{"temperature", "277 K", 277 - 273.15, sp811},
		{"difference", "1 F", 5.555556e-01, sp811},
		{"power", "1 Btu/h", 2.930711e-01, sp811},
		{"energy", "1 Btu", 1.055056e+03 / 3600, sp811},
		{"energy", "1 MJ", 1e6 / 3.6e3, sp811},
		{"heat", "1 kWh", 3.6e+06 / 1000, sp811},
		{"conductance", "1 Btu/h·°F", 5.275279e-01, sp811}, // 1.899101e+03 J/K in an hour
		{"conductance", "1 W/°C", 1, sp811},
		{"years", "365 days", 1, sp811}, // year (365 days) = 3.1536e7 s
		{"wire", "10 AWG", 5.261, "ASTM B258 table, from memory"},
		{"wire", "18 AWG", 0.823, "ASTM B258 table, from memory"},
		{"wire", "4/0 AWG", 107.2, "ASTM B258 table, from memory"},
	}
	for _, tt := range tests {
		got, err := parsers[tt.parser](tt.text, Metric)
		tolerance := 3e-7
		if tt.parser == "wire" {
			tolerance = 5e-4 // four printed digits
		}
		if err != nil || math.Abs(got-tt.value) > tolerance*math.Abs(tt.value)+1e-12 {
			t.Errorf("%s %q = %v, %v; %s gives %v", tt.parser, tt.text, got, err, tt.source, tt.value)
		}
	}
}

func TestAsOwnersWrite(t *testing.T) {
	const cuft, in, lb = 28.316846592, 0.0254, 0.45359237
	tests := []struct {
		parser, text string
		sys          System
		value        float64
	}{
		{"volume", "90 L", US, 90},
		{"volume", "90l", US, 90},
		{"volume", "3.2 cu ft", Metric, 3.2 * cuft},
		{"volume", "3.2 cu. ft.", Metric, 3.2 * cuft},
		{"volume", "3,2 ft³", Metric, 3.2 * cuft},
		{"volume", "3.2ft3", Metric, 3.2 * cuft},
		{"volume", "3.2 ft^3", Metric, 3.2 * cuft},
		{"volume", "3.2", US, 3.2 * cuft},
		{"volume", "90", Metric, 90},
		{"volume", "90 Litres", US, 90},
		{"volume", "2*5+3 L", US, 13},
		{"volume", "2*5+3", Metric, 13},
		{"volume", "1 200 ml", Metric, 1.2},
		{"length", "25 mm", US, 0.025},
		{"length", "2.5 cm", US, 0.025},
		{"length", "1 1/2 in", Metric, 1.5 * in},
		{"length", "1-1/2 in", Metric, 1.5 * in},
		{"length", "1½\"", Metric, 1.5 * in},
		{"length", "½ in", Metric, .5 * in},
		{"length", `1/2"`, Metric, .5 * in},
		{"length", "1/2”", Metric, .5 * in},
		{"length", "2 ft 3 in", Metric, 27 * in},
		{"length", `2' 3"`, Metric, 27 * in},
		{"length", `2'3 1/2"`, Metric, 27.5 * in},
		{"length", "2 feet, 3 inches", Metric, 27 * in},
		{"length", "1 m 20 cm", US, 1.2},
		{"length", "2", US, 2 * in},
		{"length", "50", Metric, 0.05},
		{"run", "4", Metric, 4},
		{"run", "15", US, 15 * 12 * in},
		{"mass", "2,5 kg", US, 2.5},
		{"mass", "2,5\u00a0kg", US, 2.5},
		{"mass", "2,5\u202fkg", US, 2.5},
		{"mass", "10 lb", Metric, 10 * lb},
		{"mass", "10 lbs.", Metric, 10 * lb},
		{"mass", "5 lb 8 oz", Metric, 5.5 * lb},
		{"mass", "10", US, 10 * lb},
		{"mass", "0,125 kg", US, 0.125},
		{"mass", "500 g", US, 0.5},
		{"temperature", "4 °C", US, 4},
		{"temperature", "4C", US, 4},
		{"temperature", "30F", Metric, -2 / 1.8},
		{"temperature", "40 F", Metric, 8 / 1.8},
		{"temperature", "40", US, 8 / 1.8},
		{"temperature", "-18 °C", US, -18},
		{"temperature", "−18 º C", US, -18},
		{"temperature", "0 degrees F", US, -32 / 1.8},
		{"difference", "2 K", US, 2},
		{"difference", "2 °C", US, 2},
		{"difference", "3.6 F", Metric, 2},
		{"difference", "3.6", US, 2},
		{"difference", "2", Metric, 2},
		{"charge", "100 Ah", US, 100},
		{"charge", "2*100 amp hours", US, 200},
		{"charge", "100 A.h", US, 100},
		{"charge", "100 amp-hours", US, 100},
		{"current", "4,5 A", US, 4.5},
		{"current", "450 mA", US, 0.45},
		{"voltage", "12 V", US, 12},
		{"voltage", "12 volts", US, 12},
		{"power", "50 W", US, 50},
		{"power", "2×50 W", US, 100},
		{"power", "0.1 kW", US, 100},
		{"energy", "1.2 kWh", US, 1200},
		{"years", "10", US, 10},
		{"years", "18 months", US, 1.5},
		{"years", "1 year 6 months", US, 1.5},
		{"hours", "36 h", US, 36},
		{"hours", "1 1/2 days", US, 36},
		{"hours", "36", US, 36},
		{"share", "0.3", US, 0.3},
		{"share", "30 %", US, 0.3},
		{"share", "30%", US, 0.3},
		{"share", "1/3", US, 1.0 / 3},
		{"share", "half", US, 0.5},
		{"share", "0", US, 0},
		{"number", "2", US, 2},
		{"number", "2 people", US, 2},
		{"number", "12 a day", US, 12},
		{"number", "7/2", US, 3.5},
		{"number", "10 - 4", US, 6},
		{"money", "$1,200", US, 1200},
		{"money", "1 200", US, 1200},
		{"money", "1200", US, 1200},
		{"money", "1,200.50", US, 1200.5},
		{"money", "1.200,50", US, 1200.5},
		{"money", "1,200,000", US, 1.2e6},
		{"money", "2,5", US, 2.5},
		{"money", "1200 USD", US, 1200},
		{"money", "USD 1200", US, 1200},
		{"money", "US$ 1200", US, 1200},
		{"price", "1.10 /kg", US, 1.10},
		{"price", "$1.10/kg", US, 1.10},
		{"price", "0.50 /lb", Metric, 0.5 / lb},
		{"price", "0.50 per lb", Metric, 0.5 / lb},
		{"price", "50*2/100 $ a pound", Metric, 1 / lb},
		{"price", "0.50", US, 0.5 / lb},
		{"price", "1.10", Metric, 1.10},
		{"price", "$3.50 per 10 lb bag", Metric, 0.35 / lb},
		{"price", "3.50 / 10 lb", Metric, 0.35 / lb},
		{"latitude", "44.1", US, 44.1},
		{"latitude", "44.1 N", US, 44.1},
		{"latitude", "33.9 S", US, -33.9},
		{"latitude", "44° 30' N", US, 44.5},
		{"latitude", "-17.5", US, -17.5},
		{"wire", "6 mm²", US, 6},
		{"wire", "6", Metric, 6},
		{"wire", "10", US, 5.2612},
		{"wire", "AWG 10", Metric, 5.2612},
	}
	for _, tt := range tests {
		got, err := parsers[tt.parser](tt.text, tt.sys)
		if err != nil || math.Abs(got-tt.value) > 1e-4*math.Abs(tt.value)+1e-9 {
			t.Errorf("%s %q (%s) = %v, %v; want %v", tt.parser, tt.text, tt.sys, got, err, tt.value)
		}
	}
}

func TestRefusals(t *testing.T) {
	tests := []struct {
		parser, text string
		says         []string // parts of the error's sentence
	}{
		{"volume", "90 kg", []string{"90 kg", "a mass", "Give a volume", "90 L"}},
		{"volume", "", []string{"nothing", "Give a volume"}},
		{"volume", "lots", []string{`"lots"`}},
		{"volume", "90 litrs", []string{"unknown unit", "did you mean litre?"}},
		{"volume", "90 L 3 cu ft", []string{"two figures"}},
		{"volume", "90 L/day", []string{"unknown unit"}},
		{"volume", "80-100 L", []string{"a range", "one figure"}},
		{"volume", "80–100 L", []string{"a range"}},
		{"volume", "2024-01-01", []string{"a date"}},
		{"volume", "31/12/2024", []string{"a date"}},
		{"volume", "31.12.2024 L", []string{"a date"}},
		{"volume", "1,200 L", []string{"1200 or as 1.200"}},
		{"volume", "NaN", []string{"NaN"}},
		{"volume", "Inf L", []string{"Inf"}},
		{"volume", "1e999 L", []string{"power of ten"}},
		{"volume", "(20 + 2 x", []string{"not closed"}},
		{"volume", "20 x", []string{"20 x"}},
		{"volume", strings.Repeat("9", 201), []string{"201 characters"}},
		{"volume", strings.Repeat("(", 150), []string{"brackets"}},
		{"volume", strings.Repeat("-", 150) + "1", []string{"brackets or signs"}},
		{"volume", "(1", []string{"not closed"}},
		{"volume", "1/0 L", []string{"divides by zero"}},
		{"volume", "9\x00 L", []string{"control character"}},
		{"volume", "9\xff L", []string{"UTF-8"}},
		{"volume", "1.2.3 L", []string{"1.2.3"}},
		{"volume", "1,2,3 L", []string{"1,2,3"}},
		{"length", "2 ft 3", []string{"without a unit"}},
		{"length", "3 in 2 ft", []string{"two"}},
		{"length", "2 m 3 in", []string{"two units"}},
		{"length", "25 °C", []string{"a temperature", "Give a length"}},
		{"mass", "2 kg 3 lb", []string{"two units"}},
		{"temperature", "-300 °C", []string{"absolute zero"}},
		{"temperature", "4 kg", []string{"a mass"}},
		{"difference", "2 L", []string{"a volume"}},
		{"charge", "100 A", []string{"a current"}},
		{"charge", "1.2 kWh", []string{"an energy"}},
		{"charge", "12,000 Ah", []string{"12000 or as 12.000"}},
		{"power", "50 Wh", []string{"an energy"}},
		{"share", "1.3", []string{"from 0 to 1", "did you mean 1.3 %?"}},
		{"share", "130 %", []string{"from 0 to 1"}},
		{"share", "-0.1", []string{"from 0 to 1"}},
		{"money", "€1200", []string{"another currency", "amounts are in $"}},
		{"money", "1.200", []string{"1200 or as 1.200"}},
		{"money", "1200 per kg", []string{"1200 per kg"}},
		{"money", "kr 5", []string{"another currency"}},
		{"money", "5 CHF", []string{"another currency"}},
		{"money", "lots", []string{`"lots" is no amount. Give an amount of money`}},
		{"money", "5 kg", []string{`"5 kg" is a mass. Give an amount of money`}},
		{"money", "5 LBS", []string{"is a mass"}},
		{"money", "3 cu ft", []string{"is a volume"}},
		{"money", "5 bags", []string{`"5 bags" is not understood. Give an amount of money`}},
		{"money", "above 5", []string{`"above 5" is not understood. Give an amount of money`}},
		{"price", "1.10 per", []string{"price per mass"}},
		{"price", "1.10 /L", []string{"price per mass"}},
		{"price", "1.10 /0 kg", []string{"price per mass"}},
		{"price", "€1.10 /kg", []string{"another currency"}},
		{"price", "lots", []string{`"lots" is no amount. Give a price per mass`}},
		{"price", "5 kg", []string{`"5 kg" is a mass. Give a price per mass`}},
		{"latitude", "95 N", []string{"latitude"}},
		{"latitude", "-5 S", []string{"latitude"}},
		{"number", "2 dogs", []string{"a number"}},
		{"wire", "6 kg", []string{"a mass", "wire size"}},
	}
	for _, tt := range tests {
		v, err := parsers[tt.parser](tt.text, Metric)
		if err == nil {
			t.Errorf("%s %q = %v, want an error", tt.parser, tt.text, v)
			continue
		}
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s %q: error of type %T, want *Error", tt.parser, tt.text, err)
		}
		for _, part := range tt.says {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s %q: %q does not say %q", tt.parser, tt.text, err, part)
			}
		}
	}
}

func TestDimensions(t *testing.T) {
	const in = 0.0254
	tests := []struct {
		text string
		sys  System
		want Dimensions
	}{
		{"18 x 22 x 16 in", Metric, Dimensions{18 * in, 22 * in, 16 * in}},
		{"18x22x16", US, Dimensions{18 * in, 22 * in, 16 * in}},
		{"18 × 22 × 16\"", Metric, Dimensions{18 * in, 22 * in, 16 * in}},
		{"18 by 22 by 16 inches", Metric, Dimensions{18 * in, 22 * in, 16 * in}},
		{"450 x 400 x 500", Metric, Dimensions{0.45, 0.4, 0.5}},
		{"45 x 40 x 50 cm", US, Dimensions{0.45, 0.4, 0.5}},
		{"1 1/2 ft x 22 in x 16 1/2 in", US, Dimensions{18 * in, 22 * in, 16.5 * in}},
	}
	for _, tt := range tests {
		got, err := ParseDimensions(tt.text, tt.sys)
		if err != nil || math.Abs(float64(got.Length-tt.want.Length))+math.Abs(float64(got.Width-tt.want.Width))+math.Abs(float64(got.Height-tt.want.Height)) > 1e-9 {
			t.Errorf("ParseDimensions(%q) = %v, %v; want %v", tt.text, got, err, tt.want)
		}
	}
	for _, text := range []string{"18 x 22 in", "18 x 22 x 16 x 3", "18 x 22 x 16 kg", "0 x 2 x 3", "", "a x b x c", "-1 x 2 x 3"} {
		if got, err := ParseDimensions(text, US); err == nil {
			t.Errorf("ParseDimensions(%q) = %v, want an error", text, got)
		}
	}
	opening, err := ParseOpening("12 x 18 in", Metric)
	if err != nil || math.Abs(float64(opening.Length)-12*in) > 1e-12 || opening.Height != 0 {
		t.Errorf("ParseOpening = %v, %v", opening, err)
	}
}

func TestDistance(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"a", "", 1}, {"ground", "groudn", 1}, {"kitten", "sitting", 3}, {"é", "e", 1},
	}
	for _, tt := range tests {
		if got := Distance(tt.a, tt.b); got != tt.want {
			t.Errorf("Distance(%q, %q) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}
