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
	expected string // completes "Give ...", with examples
	bare     string // unit of a bare figure; "" when a unit is needed

	difference bool // of two temperatures: a scale's zero is no matter
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
			return 0, &Error{Quoted(text) + " has a figure without a unit", w.expected, ""}
		}
		u, err := w.unit(name, text)
		if err != nil {
			return 0, err
		}
		if part > 0 && (u.first() != follow || u.offset != 0) {
			return 0, &Error{Quoted(text) + " has two units", w.expected, ""}
		}
		if part > 0 && v < 0 {
			return 0, Unclear(text, w.expected)
		}
		value := v * u.factor
		if !w.difference {
			value += u.offset
		}
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
				return 0, &Error{Quoted(text) + " has two figures", w.expected, ""}
			}
			return 0, Unclear(text, w.expected)
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
	if p.wrong == "no number" {
		return Unclear(text, w.expected)
	}
	return &Error{p.wrong, w.expected, p.hint}
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
			return unit{}, &Error{Quoted(text) + " has no unit", w.expected, ""}
		}
		name = w.bare
	}
	u, ok := unitNamed(name, w.dim)
	switch {
	case ok && u.dim == w.dim && u.factor != 0:
		return u, nil
	case ok && u.dim != w.dim:
		return unit{}, &Error{Quoted(text) + " is " + string(u.dim), w.expected, ""}
	}
	hint := ""
	if near := nearUnit(name, w.dim); near != "" {
		hint = "did you mean " + near + "?"
	}
	if !strings.ContainsFunc(name, unicode.IsLetter) {
		return unit{}, &Error{Unclear(text, "").Wrong, w.expected, hint}
	}
	return unit{}, &Error{Quoted(text) + " has the unknown unit " + Quoted(name), w.expected, hint}
}
