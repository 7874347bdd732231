package quantity

import (
	"strings"
	"unicode"
)

// The parsers below share these manners: a decimal comma or point; spaces, thin
// spaces or separators between thousands; fractions ("1 1/2"); sums ("2*5+3");
// the unit after the figure. A second unit (but for the smaller one of a
// compound, as in "2 ft 3 in"), a unit of another dimension, NaN, infinities and
// text of more than 200 bytes are errors.

// want describes what one parser accepts.
type want struct {
	dim      dimension
	expected string // completes "expected ...", with examples
	bare     string // unit of a bare figure; "" when a unit is needed
}

// figure reads text as one quantity and gives it in the base unit of its
// dimension.
func (w want) figure(text string) (float64, error) {
	tidied, err := tidy(text, w.expected)
	if err != nil {
		return 0, err
	}
	r := &reader{rest: tidied}
	total, follow := 0.0, ""
	for part := 0; ; part++ {
		v, err := r.sum()
		if err != nil {
			return 0, w.fault(text, err)
		}
		name := r.unit()
		if name == "" && part > 0 {
			return 0, &Error{Quoted(text) + ", with a figure without a unit", w.expected, ""}
		}
		u, err := w.unit(name, text)
		if err != nil {
			return 0, err
		}
		if part > 0 && (u.first() != follow || u.offset != 0) {
			return 0, &Error{Quoted(text) + ", with two units", w.expected, ""}
		}
		if part > 0 && v < 0 {
			return 0, &Error{Quoted(text), w.expected, ""}
		}
		value := v*u.factor + u.offset
		if part > 0 && total < 0 {
			value = -value
		}
		total += value
		r.skip()
		if r.rest == "" {
			return total, nil
		}
		if u.smaller == "" {
			if c := r.peek(); c >= '0' && c <= '9' {
				return 0, &Error{Quoted(text) + ", with two figures", w.expected, ""}
			}
			return 0, &Error{Quoted(text), w.expected, ""}
		}
		follow = u.smaller
	}
}

// fault turns a problem inside a number into an error about text.
func (w want) fault(text string, err error) error {
	p, ok := err.(problem)
	if !ok {
		return err
	}
	found := p.found
	if found == "no number" {
		found = Quoted(text)
	}
	return &Error{found, w.expected, p.hint}
}

// unit reads a unit's name: everything up to the next figure, keeping the
// exponent of ft3 and mm2.
func (r *reader) unit() string {
	r.skip()
	n := 0
	for n < len(r.rest) {
		c := r.rest[n]
		if c >= '0' && c <= '9' {
			exponent := (c == '2' || c == '3') && n > 0 && (isLetter(r.rest[n-1]) || r.rest[n-1] == '^')
			if !exponent || n+1 < len(r.rest) && (isLetter(r.rest[n+1]) || digits(r.rest[n+1:]) > 0 || r.rest[n+1] == '.' || r.rest[n+1] == ',' || r.rest[n+1] == '/') {
				break
			}
		}
		n++
	}
	name := strings.TrimSpace(r.rest[:n])
	r.rest = r.rest[n:]
	return strings.TrimRight(name, " ,")
}

func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// unit finds the unit that name stands for, or says what is wrong with it.
func (w want) unit(name, text string) (unit, error) {
	if name == "" {
		if w.bare == "" {
			return unit{}, &Error{Quoted(text) + ", without a unit", w.expected, ""}
		}
		name = w.bare
	}
	u, ok := unitNamed(name, w.dim)
	switch {
	case ok && u.dim == w.dim && u.factor != 0:
		return u, nil
	case ok && u.dim != w.dim:
		return unit{}, &Error{Quoted(text) + ", which is " + string(u.dim), w.expected, ""}
	}
	hint := ""
	if near := nearUnit(name, w.dim); near != "" {
		hint = "did you mean " + near + "?"
	}
	if !strings.ContainsFunc(name, unicode.IsLetter) {
		return unit{}, &Error{Quoted(text), w.expected, hint}
	}
	return unit{}, &Error{Quoted(text) + ", with the unknown unit " + Quoted(name), w.expected, hint}
}

// bare picks a bare figure's unit by the owner's system.
func bare(sys System, metric, us string) string {
	if sys == US {
		return us
	}
	return metric
}

// example picks an example by the owner's system.
func example(sys System, what, metric, us string) string {
	return what + ", such as " + bare(sys, metric, us)
}

// ParseVolume reads a volume: "90 L", "3.2 cu ft", "20 gal". Bare: L or cu ft.
func ParseVolume(text string, sys System) (Litre, error) {
	v, err := want{volume, example(sys, "a volume", "90 L", "3.2 cu ft"), bare(sys, "l", "cu ft")}.figure(text)
	return Litre(v), err
}

// ParseLength reads a short length such as a wall's thickness: "25 mm",
// "1 1/2 in", "2 ft 3 in". Bare: mm or in.
func ParseLength(text string, sys System) (Metre, error) {
	v, err := want{length, example(sys, "a length", "25 mm", "1 1/2 in"), bare(sys, "mm", "in")}.figure(text)
	return Metre(v), err
}

// ParseRun reads a longer length such as a cable's run: "4 m", "15 ft". Bare: m or ft.
func ParseRun(text string, sys System) (Metre, error) {
	v, err := want{length, example(sys, "a length", "4 m", "15 ft"), bare(sys, "m", "ft")}.figure(text)
	return Metre(v), err
}

// ParseMass reads a mass: "2,5 kg", "10 lb", "5 lb 8 oz". Bare: kg or lb.
func ParseMass(text string, sys System) (Kilogram, error) {
	v, err := want{mass, example(sys, "a mass", "2.5 kg", "10 lb"), bare(sys, "kg", "lb")}.figure(text)
	return Kilogram(v), err
}

// ParseTemperature reads a temperature: "4 °C", "40 F", "277 K". Bare: °C or °F.
// Nothing below absolute zero is accepted.
func ParseTemperature(text string, sys System) (Celsius, error) {
	w := want{temperature, example(sys, "a temperature", "4 °C", "40 °F"), bare(sys, "c", "f")}
	v, err := w.figure(text)
	if err == nil && v < -273.15-1e-9 {
		return 0, &Error{Quoted(text) + ", below absolute zero", w.expected, ""}
	}
	return Celsius(v), err
}

// ParseTemperatureDifference reads a difference of temperatures: "2 K",
// "2 °C", "4 F". Bare: K or °F.
func ParseTemperatureDifference(text string, sys System) (Kelvin, error) {
	w := want{temperature, example(sys, "a temperature difference", "2 K", "4 °F"), bare(sys, "k", "f")}
	tidied, err := tidy(text, w.expected)
	if err != nil {
		return 0, err
	}
	r := &reader{rest: tidied}
	v, err := r.sum()
	if err != nil {
		return 0, w.fault(text, err)
	}
	u, err := w.unit(r.unit(), text)
	if err != nil {
		return 0, err
	}
	if r.rest != "" {
		return 0, &Error{Quoted(text), w.expected, ""}
	}
	return Kelvin(v * u.factor), nil // a difference has no offset
}

// ParseConductance reads what a box leaks: "1.2 W/K", "2.3 Btu/h·°F". Bare: W/K
// or Btu/h·°F.
func ParseConductance(text string, sys System) (WattPerKelvin, error) {
	v, err := want{conductance, example(sys, "a leak", "1.2 W/K", "2.3 Btu/h·°F"), bare(sys, "w/k", "btu/h·°f")}.figure(text)
	return WattPerKelvin(v), err
}

// ParseCharge reads a charge: "100 Ah". Bare: Ah.
func ParseCharge(text string) (AmpHour, error) {
	v, err := want{charge, "a charge, such as 100 Ah", "ah"}.figure(text)
	return AmpHour(v), err
}

// ParseCurrent reads a current: "4.5 A". Bare: A.
func ParseCurrent(text string) (Ampere, error) {
	v, err := want{current, "a current, such as 4.5 A", "a"}.figure(text)
	return Ampere(v), err
}

// ParseVoltage reads a voltage: "12 V". Bare: V.
func ParseVoltage(text string) (Volt, error) {
	v, err := want{voltage, "a voltage, such as 12 V", "v"}.figure(text)
	return Volt(v), err
}

// ParsePower reads a power: "50 W", "200 Btu/h". Bare: W.
func ParsePower(text string) (Watt, error) {
	v, err := want{power, "a power, such as 50 W", "w"}.figure(text)
	return Watt(v), err
}

// ParseHeat reads an amount of heat: "150 kJ", "140 Btu". Bare: kJ.
func ParseHeat(text string) (Kilojoule, error) {
	v, err := want{energy, "an amount of heat, such as 150 kJ", "kj"}.figure(text)
	return Kilojoule(v * 3.6), err
}

// ParseYears reads a span of years: "10 years", "18 months". Bare: years.
func ParseYears(text string) (Year, error) {
	v, err := want{span, "a span of years, such as 10", "y"}.figure(text)
	return Year(v / 8760), err
}

// ParseHours reads a span of hours: "36 h", "1 1/2 days", "1 day 6 h". Bare: hours.
func ParseHours(text string) (float64, error) {
	return want{span, "a span of hours, such as 36 h", "h"}.figure(text)
}
