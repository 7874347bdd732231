package quantity

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// ParseNumber reads a plain number, and drops one of the given words, in lower
// case, after it: ParseNumber("2 people", "people") is 2. Any other word is an
// error.
func ParseNumber(text string, words ...string) (float64, error) {
	w := want{expected: "a number, such as 2"}
	v, rest, err := w.leading(text, measured)
	if err != nil {
		return 0, err
	}
	rest = strings.ToLower(strings.TrimLeft(rest, "/ "))
	if rest == "" || slices.Contains(words, rest) {
		return v, nil
	}
	return 0, Unclear(text, w.expected)
}

// leading reads the number at the start of text and gives the rest of it.
func (w want) leading(text string, s style) (v float64, rest string, err error) {
	tidied, err := tidy(text, w.expected)
	if err != nil {
		return 0, "", err
	}
	r := &reader{rest: tidied, style: s}
	if v, err = r.sum(); err != nil {
		return 0, "", w.fault(text, err)
	}
	return v, strings.TrimSpace(r.rest), nil
}

// sharesNamed are shares as people put them. What "most" and the like come to
// is engineering judgement, from memory.
var sharesNamed = map[string]Fraction{
	"all": 1, "always": 1, "every": 1, "every day": 1, "every night": 1, "everywhere": 1, "all of them": 1,
	"nearly all": 0.95, "almost all": 0.95, "nearly always": 0.95, "almost always": 0.95, "nearly everywhere": 0.95, "almost everywhere": 0.95,
	"most": 0.8, "most of them": 0.8, "mostly": 0.8, "usually": 0.8, "many": 0.6,
	"three quarters": 0.75, "two thirds": 2.0 / 3, "half": 0.5, "a half": 0.5, "half of them": 0.5, "every other": 0.5,
	"a third": 1.0 / 3, "one third": 1.0 / 3, "a quarter": 0.25, "one quarter": 0.25,
	"some": 0.3, "sometimes": 0.3, "a few": 0.15, "few": 0.15, "hardly any": 0.05, "hardly ever": 0.05, "rarely": 0.05, "seldom": 0.05,
	"none": 0, "never": 0, "nowhere": 0, "none of them": 0, "no": 0,
}

// ParseShare reads a share: "0.3", "30 %", "1/3", "half", "most", "none". The
// result lies from 0 to 1. A bare number from 2 to 100 is in hundredths; one
// between 1 and 2 could be either and is an error.
func ParseShare(text string) (Fraction, error) {
	const expected = "a share from 0 to 1, such as 0.3 or 30 %"
	if share, ok := sharesNamed[strings.ToLower(strings.TrimSpace(text))]; ok {
		return share, nil
	}
	v, rest, err := want{expected: expected}.leading(text, measured)
	if err != nil {
		return 0, err
	}
	hint := ""
	switch strings.ToLower(rest) {
	case "":
		switch {
		case v >= 2 && v <= 100:
			v /= 100
		case v > 1 && v < 2:
			hint = "did you mean " + strconv.FormatFloat(v, 'f', -1, 64) + " %?"
		}
	case "%", "percent", "per cent", "pct":
		v /= 100
	default:
		return 0, Unclear(text, expected)
	}
	if v < 0 || v > 1 {
		return 0, &Error{Quoted(text) + " is no such share", expected, hint}
	}
	return Fraction(v), nil
}

// currencyNames lists names for one currency that owners use for each other.
var currencyNames = [][]string{
	{"$", "usd", "us$", "dollar", "dollars", "bucks", "cad", "c$", "ca$", "aud", "a$", "nzd", "nz$"},
	{"€", "eur", "euro", "euros"},
	{"£", "gbp", "pound sterling", "pounds sterling"},
	{"kr"},
	{"fr"},
}

// IsCurrency reports whether a word is surely the sign, code or name of a
// currency: one of those in use, or three capital letters that name no unit.
func IsCurrency(word string) bool {
	if strings.ContainsFunc(word, func(r rune) bool { return unicode.Is(unicode.Sc, r) }) {
		return true
	}
	for _, names := range currencyNames {
		if slices.Contains(names, strings.ToLower(word)) {
			return true
		}
	}
	_, isUnit := Measures(word)
	return capitals.MatchString(word) && !isUnit
}

var capitals = regexp.MustCompile(`^[A-Z]{3}$`)

// sameCurrency reports whether found can stand for the owner's currency.
func sameCurrency(found, own string) bool {
	found, own = strings.ToLower(found), strings.ToLower(strings.TrimSpace(own))
	if found == own {
		return true
	}
	for _, names := range currencyNames {
		// Dollars are many: the sign stands for any of them, but the code of
		// one does not stand for another.
		if slices.Contains(names, own) && slices.Contains(names, found) {
			return names[0] == found || names[0] == own || names[0] != "$"
		}
	}
	return false
}

var currencyMark = regexp.MustCompile(`^(?:\p{Sc}|[A-Za-z]{1,3}\$|[A-Za-z]{2,8}\.?)`)

// unpriced takes the currency before or after an amount away. It refuses a
// currency that is not the owner's, and any other word.
func unpriced(tidied, own, text, expected string) (string, error) {
	m := currencyMark.FindString(tidied)
	word := strings.TrimSuffix(m, ".")
	what, isUnit := Measures(tidied)
	switch {
	case m == "":
		return tidied, nil
	case sameCurrency(word, own):
		return strings.TrimSpace(tidied[len(m):]), nil
	case IsCurrency(word):
		return "", &Error{Quoted(text) + " is in another currency", expected, "amounts are in " + own + "; set currency to change that"}
	case isUnit:
		return "", &Error{Quoted(text) + " is " + what, expected, ""}
	case !strings.ContainsAny(text, "0123456789"):
		return "", &Error{Quoted(text) + " is no amount", expected, ""}
	}
	return "", Unclear(text, expected)
}

// ParseMoney reads an amount of money: "$1,200", "1 200", "1200 EUR". currency is
// the owner's sign or code, such as "$" or "EUR"; another one is an error. A
// comma before three digits parts thousands.
func ParseMoney(text, currency string) (Money, error) {
	expected := "an amount of money, such as " + FormatMoney(1200, currency)
	tidied, err := tidy(text, expected)
	if err != nil {
		return 0, err
	}
	amount, err := unpriced(tidied, currency, text, expected)
	if err != nil {
		return 0, err
	}
	v, rest, err := want{expected: expected}.leading(amount, priced)
	if err != nil {
		return 0, err
	}
	if k, thousands := strings.CutPrefix(strings.ToLower(rest), "k"); thousands && (k == "" || k[0] == ' ') { // "1.5k"
		v, rest = 1000*v, rest[1:]
	}
	if rest = strings.TrimSpace(rest); rest != "" {
		left, err := unpriced(rest, currency, text, expected)
		if err != nil {
			return 0, err
		}
		if left != "" || amount != tidied {
			return 0, Unclear(text, expected)
		}
	}
	return Money(v), nil
}

var spanMark = regexp.MustCompile(`(?i)^(?:between\s+|from\s+)?(\S.*?)\s*(?:-|–|—|\bto\b|\band\b)\s*(\S.*)$`)

// ParseMoneySpan reads an amount, or two of them: "$3 to $6", "3-6 EUR",
// "between 3 and 6". high is 0 for one amount; else 0 <= low <= high.
func ParseMoneySpan(text, currency string) (low, high Money, err error) {
	if low, err = ParseMoney(text, currency); err == nil {
		return low, 0, nil
	}
	tidied, tidyErr := tidy(text, "")
	m := spanMark.FindStringSubmatch(tidied)
	if tidyErr != nil || m == nil {
		return 0, 0, err
	}
	if low, err = ParseMoney(m[1], currency); err != nil {
		return 0, 0, err
	}
	if high, err = ParseMoney(m[2], currency); err != nil {
		return 0, 0, err
	}
	if low > high {
		return 0, 0, &Error{Quoted(text) + " has the larger amount first", "the smaller one first", ""}
	}
	if low == high {
		high = 0
	}
	return low, high, nil
}

var perMass = regexp.MustCompile(`(?i)^(.*[^\s/])\s*(?:/|\bper\b|\ban?\b|\bfor\b)\s*([0-9.,]*)\s*([a-z#]+)\.?\s*(?:bags?|blocks?)?$`)

// perBag finds a price for one piece, its weight not told.
var perBag = regexp.MustCompile(`(?i)^(.*?\d(?: ?(?:dollars?|euros?|bucks))?)\s*(?:/|\bper\b|\bfor\b)?\s*(?:\b(?:an?|one|the)\b)?\s*(?:bags?|blocks?|piece|each)$`)

// PricePerBag gives the amount in a price for one bag or block whose weight is
// not told, such as "$4 a bag"; ok is false for any other text.
func PricePerBag(text, currency string) (amount Money, ok bool) {
	tidied, err := tidy(text, "")
	m := perBag.FindStringSubmatch(tidied)
	if err != nil || m == nil {
		return 0, false
	}
	amount, err = ParseMoney(m[1], currency)
	return amount, err == nil
}

// ParsePricePerMass reads a price per mass, its money as ParseMoney does:
// "1.10 /kg", "$0.50/lb", "$3.50 per 10 lb bag", and "$4 a bag" where bag, the
// mass of one, is above zero. Bare: per kg or per lb.
func ParsePricePerMass(text, currency string, sys System, bag Kilogram) (MoneyPerKg, error) {
	expected := example(sys, "a price per mass", "1.10 /kg", "0.50 /lb")
	tidied, err := tidy(text, expected)
	if err != nil {
		return 0, err
	}
	if amount, ok := PricePerBag(tidied, currency); ok && bag > 0 {
		return MoneyPerKg(float64(amount) / float64(bag)), nil
	}
	amount, per := tidied, pick(sys, "1 kg", "1 lb")
	if m := perMass.FindStringSubmatch(tidied); m != nil {
		amount, per = m[1], m[2]+" "+m[3]
		if m[2] == "" {
			per = "1 " + m[3]
		}
	}
	price, err := ParseMoney(amount, currency)
	if err != nil {
		e := *err.(*Error)
		e.Want = expected
		return 0, &e
	}
	kg, err := ParseMass(per, sys)
	if err != nil || kg <= 0 {
		return 0, Unclear(text, expected)
	}
	return MoneyPerKg(float64(price) / float64(kg)), nil
}

var times = regexp.MustCompile(`(?i)\s*(?:×|\bby\b|\*|\bx\b|x)\s*`)

// ParseDimensions reads inside measures, length × width × height, each above
// zero: "18 x 22 x 16 in", "450 × 400 × 500". One unit at the end serves all
// three. Bare: mm or in.
func ParseDimensions(text string, sys System) (Dimensions, error) {
	sides, err := sidesOf(text, sys, 3, example(sys, "length × width × height", "450 x 400 x 500 mm", "18 x 22 x 16 in"))
	if err != nil {
		return Dimensions{}, err
	}
	return Dimensions{sides[0], sides[1], sides[2]}, nil
}

// ParseOpening reads the length and width of an opening, each above zero:
// "12 x 18 in". Height is left zero. Bare: mm or in.
func ParseOpening(text string, sys System) (Dimensions, error) {
	sides, err := sidesOf(text, sys, 2, example(sys, "length × width", "300 x 450 mm", "12 x 18 in"))
	if err != nil {
		return Dimensions{}, err
	}
	return Dimensions{Length: sides[0], Width: sides[1]}, nil
}

func sidesOf(text string, sys System, n int, expected string) ([]Metre, error) {
	tidied, err := tidy(text, expected)
	if err != nil {
		return nil, err
	}
	parts := times.Split(tidied, -1)
	if len(parts) != n {
		return nil, Unclear(text, expected)
	}
	shared := endUnit(parts[n-1])
	sides := make([]Metre, n)
	for i, p := range parts {
		if endUnit(p) == "" {
			p += " " + shared
		}
		v, err := ParseLength(p, sys)
		if err != nil {
			e := *err.(*Error)
			e.Want = expected
			return nil, &e
		}
		if v <= 0 {
			return nil, &Error{Quoted(text) + " has a side of nothing", expected + ", all above zero", ""}
		}
		sides[i] = v
	}
	return sides, nil
}

// ParseLatitude reads a latitude: "44.1", "44.1 N", "33 S", "44° 30' N". South
// is negative. The result lies from -90 to 90.
func ParseLatitude(text string) (float64, error) {
	const expected = "a latitude in degrees, such as 44.1 N"
	w := want{expected: expected}
	tidied, err := tidy(text, expected)
	if err != nil {
		return 0, err
	}
	south := false
	upper := strings.ToUpper(tidied)
	for _, pole := range []string{"NORTH", "SOUTH", "N", "S"} {
		if body, ok := strings.CutSuffix(upper, pole); ok {
			upper, south = strings.TrimSpace(body), pole[0] == 'S'
			if strings.HasPrefix(upper, "-") {
				return 0, Unclear(text, expected)
			}
			break
		}
	}
	v, rest, err := w.leading(upper, measured)
	if err != nil {
		return 0, err
	}
	rest = strings.TrimSpace(strings.TrimPrefix(rest, "°"))
	if rest != "" {
		minutes, mark, err := w.leading(rest, measured)
		if err != nil || mark != "'" && mark != "" || minutes < 0 || minutes >= 60 {
			return 0, Unclear(text, expected)
		}
		v += math.Copysign(minutes/60, v)
	}
	if south {
		v = -v
	}
	if v < -90 || v > 90 {
		return 0, &Error{Quoted(text) + " lies beyond the pole", expected, ""}
	}
	return v, nil
}

var (
	gaugeAfter  = regexp.MustCompile(`(?i)^(?:#\s*)?(\d{1,2}|[1-4]/0|0{1,4})\s*(?:awg|ga|gauge)?$`)
	gaugeBefore = regexp.MustCompile(`(?i)^awg\s*(\d{1,2}|[1-4]/0|0{1,4})$`)
)

// ParseWireSize reads a conductor's section: "6 mm²", "10 AWG", "2/0 AWG".
// Bare: mm² or AWG.
func ParseWireSize(text string, sys System) (SquareMillimetre, error) {
	expected := example(sys, "a wire size", "6 mm²", "10 AWG")
	tidied, err := tidy(text, expected)
	if err != nil {
		return 0, err
	}
	m := gaugeBefore.FindStringSubmatch(tidied)
	if m == nil && (sys == US || !regexp.MustCompile(`^\d+$`).MatchString(tidied)) {
		m = gaugeAfter.FindStringSubmatch(tidied)
	}
	if m != nil {
		gauge := 0.0
		switch g := m[1]; {
		case strings.HasSuffix(g, "/0"):
			gauge = 1 - float64(g[0]-'0')
		case strings.Trim(g, "0") == "":
			gauge = 1 - float64(len(g))
		default:
			gauge, _ = strconv.ParseFloat(g, 64)
		}
		if gauge > 40 {
			return 0, &Error{Quoted(text) + " is no gauge of wire", expected, ""}
		}
		return GaugeSection(gauge), nil
	}
	v, err := want{dim: section, expected: expected, bare: "mm2"}.figure(tidied)
	return SquareMillimetre(v), err
}

// GaugeSection gives the section of an American Wire Gauge number; 1/0 is 0,
// 2/0 is -1. Source: ASTM B258, diameter 0.127 mm × 92^((36-n)/39).
func GaugeSection(gauge float64) SquareMillimetre {
	d := 0.127 * math.Pow(92, (36-gauge)/39)
	return SquareMillimetre(math.Pi / 4 * d * d)
}
