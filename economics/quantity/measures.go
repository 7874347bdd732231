package quantity

import "strings"

// measure is how owners tell one kind of quantity: what it is called, and an
// example in each system, whose unit a bare figure has and a printed one gets.
type measure struct {
	dim        dimension
	what       string
	metric, us string
	difference bool // of two temperatures
}

var (
	volumes     = measure{volume, "a volume", "90 L", "3.2 cu ft", false}
	thicknesses = measure{length, "a length", "25 mm", "1 1/2 in", false}
	runs        = measure{length, "a length", "4 m", "15 ft", false}
	areas       = measure{area, "an area", "0.8 m²", "8.6 sq ft", false}
	masses      = measure{mass, "a mass", "2.5 kg", "10 lb", false}
	degrees     = measure{temperature, "a temperature", "4 °C", "40 °F", false}
	differences = measure{temperature, "a temperature difference", "2 K", "4 °F", true}
	leaks       = measure{conductance, "a leak", "1.2 W/K", "2.3 Btu/h·°F", false}
	charges     = everywhere(charge, "a charge", "100 Ah")
	currents    = everywhere(current, "a current", "4.5 A")
	voltages    = everywhere(voltage, "a voltage", "12 V")
	powers      = everywhere(power, "a power", "50 W")
	heats       = everywhere(energy, "an amount of heat", "150 kJ")
	hours       = everywhere(span, "a span of hours", "36 h")
)

// everywhere is a measure told alike in both systems.
func everywhere(dim dimension, what, such string) measure {
	return measure{dim, what, such, such, false}
}

// pick gives what is told in the owner's system.
func pick(sys System, metric, us string) string {
	if sys == US {
		return us
	}
	return metric
}

// example puts an example of the owner's system after what is wanted.
func example(sys System, what, metric, us string) string {
	return what + ", such as " + pick(sys, metric, us)
}

// unit gives the unit of the owner's system and its name.
func (m measure) unit(sys System) (unit, string) {
	name := endUnit(pick(sys, m.metric, m.us))
	u, _ := unitNamed(name, m.dim)
	if m.difference {
		u.offset = 0
	}
	return u, name
}

func (m measure) want(sys System) want {
	return want{m.dim, example(sys, m.what, m.metric, m.us), endUnit(pick(sys, m.metric, m.us)), m.difference}
}

// parse reads a figure into base units.
func parse[T ~float64](m measure, text string, sys System) (T, error) {
	v, err := m.want(sys).figure(text)
	return T(v), err
}

// format prints a figure in base units.
func format[T ~float64](m measure, v T, sys System) string {
	u, name := m.unit(sys)
	return small((float64(v)-u.offset)/u.factor) + " " + name
}

// endUnit gives the unit that ends a measure, or "".
func endUnit(measure string) string {
	return strings.TrimLeft(strings.TrimSpace(measure), "0123456789.,/+-() ")
}

// VolumeUnit is the unit that FormatVolume prints: L or cu ft.
func VolumeUnit(sys System) string { return endUnit(pick(sys, volumes.metric, volumes.us)) }

// MassUnit is the unit that FormatMass prints: kg or lb.
func MassUnit(sys System) string { return endUnit(pick(sys, masses.metric, masses.us)) }

// ParseVolume reads a volume: "90 L", "3.2 cu ft", "20 gal". Bare: L or cu ft.
func ParseVolume(text string, sys System) (Litre, error) { return parse[Litre](volumes, text, sys) }

// FormatVolume prints "90 L" or "3.2 cu ft".
func FormatVolume(v Litre, sys System) string { return format(volumes, v, sys) }

// ParseLength reads a short length such as a wall's thickness: "25 mm",
// "1 1/2 in", "2 ft 3 in". Bare: mm or in.
func ParseLength(text string, sys System) (Metre, error) { return parse[Metre](thicknesses, text, sys) }

// ParseRun reads a longer length such as a cable's run: "4 m", "15 ft". Bare: m or ft.
func ParseRun(text string, sys System) (Metre, error) { return parse[Metre](runs, text, sys) }

// FormatRun prints a longer length, "4 m" or "13 ft".
func FormatRun(v Metre, sys System) string { return format(runs, v, sys) }

// FormatArea prints "0.8 m²" or "8.6 sq ft".
func FormatArea(v SquareMetre, sys System) string { return format(areas, v, sys) }

// ParseMass reads a mass: "2,5 kg", "10 lb", "5 lb 8 oz". Bare: kg or lb.
func ParseMass(text string, sys System) (Kilogram, error) { return parse[Kilogram](masses, text, sys) }

// FormatMass prints "2.5 kg" or "5.5 lb".
func FormatMass(v Kilogram, sys System) string { return format(masses, v, sys) }

// ParseTemperature reads a temperature: "4 °C", "40 F", "277 K". Bare: °C or °F.
// Nothing below absolute zero is accepted.
func ParseTemperature(text string, sys System) (Celsius, error) {
	v, err := parse[Celsius](degrees, text, sys)
	if err == nil && v < -273.15-1e-9 {
		return 0, &Error{Quoted(text) + " is below absolute zero", degrees.want(sys).expected, ""}
	}
	return v, err
}

// ParseTemperatureDifference reads a difference of temperatures: "2 K",
// "2 °C", "4 F". Bare: K or °F.
func ParseTemperatureDifference(text string, sys System) (Kelvin, error) {
	return parse[Kelvin](differences, text, sys)
}

// FormatTemperatureDifference prints "2 K" or "3.6 °F".
func FormatTemperatureDifference(v Kelvin, sys System) string { return format(differences, v, sys) }

// ParseConductance reads what a box leaks: "1.2 W/K", "2.3 Btu/h·°F". Bare: W/K
// or Btu/h·°F.
func ParseConductance(text string, sys System) (WattPerKelvin, error) {
	return parse[WattPerKelvin](leaks, text, sys)
}

// FormatConductance prints "0.9 W/K" or "1.7 Btu/h·°F".
func FormatConductance(v WattPerKelvin, sys System) string { return format(leaks, v, sys) }

// ParseCharge reads a charge: "100 Ah". Bare: Ah.
func ParseCharge(text string) (AmpHour, error) { return parse[AmpHour](charges, text, Metric) }

// FormatCharge prints "100 Ah".
func FormatCharge(v AmpHour) string { return format(charges, v, Metric) }

// ParseCurrent reads a current: "4.5 A". Bare: A.
func ParseCurrent(text string) (Ampere, error) { return parse[Ampere](currents, text, Metric) }

// FormatCurrent prints "4.5 A".
func FormatCurrent(v Ampere) string { return format(currents, v, Metric) }

// ParseVoltage reads a voltage: "12 V". Bare: V.
func ParseVoltage(text string) (Volt, error) { return parse[Volt](voltages, text, Metric) }

// ParsePower reads a power: "50 W", "200 Btu/h". Bare: W.
func ParsePower(text string) (Watt, error) { return parse[Watt](powers, text, Metric) }

// FormatPower prints "50 W".
func FormatPower(v Watt) string { return format(powers, v, Metric) }

// ParseHeat reads an amount of heat: "150 kJ", "140 Btu". Bare: kJ.
func ParseHeat(text string) (Kilojoule, error) {
	wh, err := parse[WattHour](heats, text, Metric)
	return Kilojoule(wh * 3.6), err
}

// FormatHeat prints "150 kJ".
func FormatHeat(v Kilojoule) string { return format(heats, v/3.6, Metric) }

// ParseYears reads a span of years: "10 years", "18 months". Bare: years.
func ParseYears(text string) (Year, error) {
	v, err := want{dim: span, expected: "a span of years, such as 10", bare: "y"}.figure(text)
	return Year(v / 8760), err
}

// ParseHours reads a span of hours: "36 h", "1 1/2 days", "1 day 6 h". Bare: hours.
func ParseHours(text string) (float64, error) { return parse[float64](hours, text, Metric) }

// FormatHours prints "36 h".
func FormatHours(v float64) string { return format(hours, v, Metric) }
