package quantity

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestPrintedForm(t *testing.T) {
	tests := []struct{ got, want string }{
		{FormatVolume(90, Metric), "90 L"},
		{FormatVolume(90.4, Metric), "90 L"},
		{FormatVolume(90, US), "3.2 cu ft"},
		{FormatVolume(4.44, Metric), "4.4 L"},
		{FormatLength(0.025, Metric), "25 mm"},
		{FormatLength(0.038, US), "1 1/2 in"},
		{FormatLength(0.0254, US), "1 in"},
		{FormatLength(0.012, US), "1/2 in"},
		{FormatLength(0, US), "0 in"},
		{FormatRun(4, Metric), "4 m"},
		{FormatRun(4, US), "13 ft"},
		{FormatDimensions(Dimensions{0.45, 0.4, 0.5}, Metric), "450 x 400 x 500 mm"},
		{FormatDimensions(Dimensions{0.4572, 0.5588, 0.4064}, US), "18 x 22 x 16 in"},
		{FormatDimensions(Dimensions{0.3048, 0.4572, 0}, US), "12 x 18 in"},
		{FormatArea(0.8, Metric), "0.8 m²"},
		{FormatArea(0.8, US), "8.6 sq ft"},
		{FormatMass(2.5, Metric), "2.5 kg"},
		{FormatMass(2.5, US), "5.5 lb"},
		{FormatMass(4.5359237, US), "10 lb"},
		{FormatTemperature(4, Metric), "4 °C"},
		{FormatTemperature(4.4, Metric), "4.5 °C"},
		{FormatTemperature(4, US), "39 °F"},
		{FormatTemperature(-0.1, Metric), "0 °C"},
		{FormatTemperatureDifference(2, Metric), "2 K"},
		{FormatTemperatureDifference(2, US), "3.6 °F"},
		{FormatConductance(0.94, Metric), "0.94 W/K"},
		{FormatConductance(1, US), "1.9 Btu/h·°F"}, // 1 W/K = 1.8956 Btu/h·°F, NIST SP 811
		{FormatCharge(100), "100 Ah"},
		{FormatCurrent(4.5), "4.5 A"},
		{FormatVoltage(12), "12 V"},
		{FormatPower(50), "50 W"},
		{FormatEnergy(620), "620 Wh"},
		{FormatEnergy(12000), "12 kWh"},
		{FormatWireSize(5.2612, US), "10 AWG"},
		{FormatWireSize(107.2, US), "4/0 AWG"},
		{FormatWireSize(6, Metric), "6 mm²"},
		{FormatYears(10), "10 years"},
		{FormatYears(1), "1 year"},
		{FormatShare(0.3), "30 %"},
		{FormatShare(1.0 / 3), "33 %"},
		{FormatShare(0.025), "2.5 %"},
		{FormatLatitude(-17.5), "17.5° S"},
		{FormatMoney(1200, "$"), "$1,200"},
		{FormatMoney(1200, "EUR"), "EUR 1,200"},
		{FormatMoney(1234567, "€"), "€1,234,567"},
		{FormatMoney(0.8, "$"), "$0.80"},
		{FormatMoney(9.999, "$"), "$10"},
		{FormatMoney(-1200, "$"), "-$1,200"},
		{FormatMoney(-0.2, "$"), "-$0.20"},
		{FormatMoney(Money(math.NaN()), "$"), "–"},
		{FormatPricePerMass(1.1, "$", Metric), "$1.10/kg"},
		{FormatPricePerMass(1.1, "$", US), "$0.50/lb"},
		{Span("80 L", "100 L"), "80 to 100 L"},
		{Span("90 L", "90 L"), "90 L"},
		{Span("3.2 cu ft", "4 cu ft"), "3.2 to 4 cu ft"},
		{Span("$80", "$100"), "$80 to $100"},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("printed %q, want %q", tt.got, tt.want)
		}
	}
}

// What is printed reads back as the same figure to within half of its last digit.
func TestRoundTrip(t *testing.T) {
	ways := []struct {
		name   string
		low    float64
		high   float64
		slack  float64 // relative
		least  float64 // absolute
		format func(float64, System) string
		parse  parser
	}{
		{"volume", 5, 500, 0.05, 0.03, func(v float64, s System) string { return FormatVolume(Litre(v), s) }, parsers["volume"]},
		{"length", 0.005, 0.2, 0, 0.0017, func(v float64, s System) string { return FormatLength(Metre(v), s) }, parsers["length"]},
		{"run", 0.5, 30, 0.06, 0, func(v float64, s System) string { return FormatRun(Metre(v), s) }, parsers["run"]},
		{"mass", 0.1, 200, 0.06, 0, func(v float64, s System) string { return FormatMass(Kilogram(v), s) }, parsers["mass"]},
		{"temperature", -30, 45, 0, 0.3, func(v float64, s System) string { return FormatTemperature(Celsius(v), s) }, parsers["temperature"]},
		{"difference", -3, 10, 0.06, 0.01, func(v float64, s System) string { return FormatTemperatureDifference(Kelvin(v), s) }, parsers["difference"]},
		{"conductance", 0.1, 20, 0.06, 0, func(v float64, s System) string { return FormatConductance(WattPerKelvin(v), s) }, parsers["conductance"]},
		{"charge", 10, 1000, 0.06, 0, func(v float64, _ System) string { return FormatCharge(AmpHour(v)) }, parsers["charge"]},
		{"power", 5, 1000, 0.06, 0, func(v float64, _ System) string { return FormatPower(Watt(v)) }, parsers["power"]},
		{"energy", 5, 50000, 0.06, 0, func(v float64, _ System) string { return FormatEnergy(WattHour(v)) }, parsers["energy"]},
		{"years", 1, 30, 0.06, 0, func(v float64, _ System) string { return FormatYears(Year(v)) }, parsers["years"]},
		{"share", 0, 1, 0.06, 0, func(v float64, _ System) string { return FormatShare(Fraction(v)) }, parsers["share"]},
		{"latitude", -89, 89, 0, 0.051, func(v float64, _ System) string { return FormatLatitude(v) }, parsers["latitude"]},
		{"wire", 0.5, 110, 0.13, 0.06, func(v float64, s System) string { return FormatWireSize(SquareMillimetre(v), s) }, parsers["wire"]},
		{"money", 0, 1e7, 0, 0.51, func(v float64, _ System) string { return FormatMoney(Money(v), "$") }, parsers["money"]},
		{"price", 0.05, 5, 0, 0.012, func(v float64, s System) string { return FormatPricePerMass(MoneyPerKg(v), "$", s) }, parsers["price"]},
	}
	rng := rand.New(rand.NewPCG(1, 2))
	for _, w := range ways {
		for range 300 {
			v := w.low + (w.high-w.low)*rng.Float64()
			for _, sys := range []System{Metric, US} {
				text := w.format(v, sys)
				got, err := w.parse(text, sys)
				if err != nil || math.Abs(got-v) > w.slack*math.Abs(v)+w.least {
					t.Fatalf("%s %v printed in %s as %q reads back as %v, %v", w.name, v, sys, text, got, err)
				}
				other := Metric
				if sys == Metric {
					other = US
				}
				if again, _ := w.parse(text, other); again != got {
					t.Fatalf("%s %q means %v to a %s owner but %v to a %s owner", w.name, text, got, sys, again, other)
				}
			}
		}
	}
}

func TestThousands(t *testing.T) {
	for figure, want := range map[string]string{"0": "0", "999": "999", "-999": "-999", "1000": "1,000", "-123456.78": "-123,456.78", "1234567": "1,234,567"} {
		if got := Thousands(figure); got != want {
			t.Errorf("%s becomes %s, want %s", figure, got, want)
		}
	}
}
