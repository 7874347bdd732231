package questions

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coldreckon/economics/quantity"
)

// Kind tells how an answer is read and printed. Its text names it in messages
// and on the reference page.
type Kind string

// The kinds, and the unit or the type in which the boat holds the answer. A
// row's Limits are in that unit.
const (
	Text                  Kind = "text"                       // one line, up to 60 characters
	Choice                Kind = "choice"                     // the Value of one of the row's Options
	YesNoUnknown          Kind = "yes, no or don't know"      // quantity.Tri
	YesNo                 Kind = "yes or no"                  // bool
	Volume                Kind = "volume"                     // L
	Length                Kind = "length"                     // m; told in mm or in
	Run                   Kind = "cable length"               // m; told in m or ft
	Dimensions            Kind = "length x width x height"    // quantity.Dimensions, m
	Opening               Kind = "length x width"             // quantity.Dimensions without height, m
	Mass                  Kind = "mass"                       // kg
	Temperature           Kind = "temperature"                // °C
	TemperatureDifference Kind = "temperature difference"     // K
	Charge                Kind = "charge"                     // Ah
	Current               Kind = "current"                    // A
	Voltage               Kind = "voltage"                    // V
	Power                 Kind = "power"                      // W
	Heat                  Kind = "heat"                       // kJ
	Leak                  Kind = "leak"                       // W/K
	WireSize              Kind = "wire size"                  // mm²
	Latitude              Kind = "latitude"                   // degrees, north positive
	Money                 Kind = "money"                      // the owner's currency
	MoneySpan             Kind = "money, or a range of it"    // [2]quantity.Money, the second 0 for a sum
	PricePerMass          Kind = "price per mass"             // money per kg
	Share                 Kind = "share"                      // 0 to 1; told so or in %
	Number                Kind = "number"                     // a plain figure, the row's Words after it
	Whole                 Kind = "whole number"               // the same without decimals
	Hours                 Kind = "hours"                      // h
	Years                 Kind = "years"                      // years
	Month                 Kind = "month"                      // int, 1 to 12
	Months                Kind = "nights by month"            // [12]float64, January first
	MonthTemperatures     Kind = "temperature of every month" // [12]quantity.Celsius, January first
	MonthOverrides        Kind = "temperature of some months" // map[int]quantity.Celsius, by month from 1
	Records               Kind = "list of records"            // a slice of what package heat reads
)

// way is how a scalar kind is read and printed.
type way struct {
	parse  func(r Row, text string, o owner) (any, error)
	format func(r Row, v any, o owner) string
	// units lists the units that a figure may have been meant in, for "did
	// you mean".
	units []string
}

// sized makes the way of a kind whose parser takes the unit system.
func sized[T ~float64](parse func(string, quantity.System) (T, error), format func(T, quantity.System) string, units ...string) way {
	return way{
		func(_ Row, text string, o owner) (any, error) { return parse(text, o.sys) },
		func(_ Row, v any, o owner) string { return format(v.(T), o.sys) },
		units,
	}
}

// fixed makes the way of a kind with one unit for everybody.
func fixed[T ~float64](parse func(string) (T, error), format func(T) string, units ...string) way {
	return way{
		func(_ Row, text string, _ owner) (any, error) { return parse(text) },
		func(_ Row, v any, _ owner) string { return format(v.(T)) },
		units,
	}
}

var ways = map[Kind]way{
	Text:                  {parse: parseText, format: func(_ Row, v any, _ owner) string { return v.(string) }},
	Choice:                {parse: parseChoice, format: formatChoice},
	YesNoUnknown:          {parse: parseTri, format: formatTri},
	YesNo:                 {parse: parseYesNo, format: formatYesNo},
	Volume:                sized(quantity.ParseVolume, quantity.FormatVolume, "L", "cu ft", "gal", "mL"),
	Length:                sized(quantity.ParseLength, quantity.FormatLength, "mm", "in", "cm"),
	Run:                   sized(quantity.ParseRun, quantity.FormatRun, "m", "ft", "cm", "in"),
	Mass:                  sized(quantity.ParseMass, quantity.FormatMass, "kg", "lb", "g"),
	Temperature:           sized(quantity.ParseTemperature, quantity.FormatTemperature, "°C", "°F"),
	TemperatureDifference: sized(quantity.ParseTemperatureDifference, quantity.FormatTemperatureDifference, "K", "°F"),
	Charge:                fixed(quantity.ParseCharge, quantity.FormatCharge),
	Current:               fixed(quantity.ParseCurrent, quantity.FormatCurrent, "A", "mA"),
	Voltage:               fixed(quantity.ParseVoltage, quantity.FormatVoltage),
	Power:                 fixed(quantity.ParsePower, quantity.FormatPower, "W", "Btu/h"),
	Leak:                  sized(quantity.ParseConductance, quantity.FormatConductance, "W/K", "Btu/h·°F"),
	Heat:                  fixed(quantity.ParseHeat, quantity.FormatHeat),
	WireSize:              sized(quantity.ParseWireSize, quantity.FormatWireSize, "mm²", "AWG"),
	Latitude:              fixed(quantity.ParseLatitude, quantity.FormatLatitude),
	Hours:                 fixed(quantity.ParseHours, quantity.FormatHours),
	Years:                 fixed(quantity.ParseYears, quantity.FormatYears),
	Share:                 fixed(quantity.ParseShare, quantity.FormatShare),
	Number:                {parse: parseNumber, format: formatNumber},
	Whole:                 {parse: parseWhole, format: formatNumber},
	Month:                 {parse: func(_ Row, text string, _ owner) (any, error) { return parseMonth(text) }, format: func(_ Row, v any, _ owner) string { return MonthName(v.(int)) }},
	Money: {
		parse:  func(_ Row, text string, o owner) (any, error) { return quantity.ParseMoney(text, o.currency) },
		format: func(_ Row, v any, o owner) string { return quantity.FormatMoney(v.(quantity.Money), o.currency) },
	},
	MoneySpan: {
		parse: func(_ Row, text string, o owner) (any, error) {
			low, high, err := quantity.ParseMoneySpan(text, o.currency)
			return [2]quantity.Money{low, high}, err
		},
		format: func(_ Row, v any, o owner) string {
			span := v.([2]quantity.Money)
			return quantity.FormatMoneySpan(span[0], span[1], o.currency)
		},
	},
	PricePerMass: {
		parse: pricePerMass,
		format: func(_ Row, v any, o owner) string {
			return quantity.FormatPricePerMass(v.(quantity.MoneyPerKg), o.currency, o.sys)
		},
		units: []string{"/kg", "/lb"},
	},
	Dimensions: {
		parse:  func(_ Row, text string, o owner) (any, error) { return quantity.ParseDimensions(text, o.sys) },
		format: formatDimensions,
		units:  []string{"mm", "cm", "in"},
	},
	Opening: {
		parse:  func(_ Row, text string, o owner) (any, error) { return quantity.ParseOpening(text, o.sys) },
		format: formatDimensions,
		units:  []string{"mm", "cm", "in"},
	},
}

// pricePerMass reads a price per mass. A bare amount far above the usual is more
// likely to be that of a bag: it is refused until the text says which.
func pricePerMass(r Row, text string, o owner) (any, error) {
	v, err := quantity.ParsePricePerMass(text, o.currency, o.sys, o.bag)
	if err != nil {
		return nil, err
	}
	if _, bare := quantity.ParseMoney(text, o.currency); bare == nil && r.Limits.High > 0 && float64(v) > r.Limits.High {
		amount := strings.TrimSpace(text)
		per := cmp.Or(map[quantity.System]string{quantity.US: "/lb"}[o.sys], "/kg")
		return nil, &quantity.Error{Wrong: quantity.Quoted(text) + " is far more than ice costs by weight", Want: amount + " a bag, or " + amount + per,
			Hint: "did you mean " + amount + " a bag?"}
	}
	return v, nil
}

func formatDimensions(_ Row, v any, o owner) string {
	return quantity.FormatDimensions(v.(quantity.Dimensions), o.sys)
}

// maxName bounds free text such as the boat's name, in characters.
const maxName = 60

// Steers tells of characters that are not seen but change what is seen: those
// that control a terminal, end a line or turn the order of letters.
func Steers(r rune) bool {
	return unicode.In(r, unicode.Cc, unicode.Zl, unicode.Zp) || unicode.Is(unicode.Bidi_Control, r)
}

func parseText(r Row, text string, _ owner) (any, error) {
	text = strings.Join(strings.Fields(text), " ")
	switch n := utf8.RuneCountInString(text); {
	case text == "":
		return nil, &quantity.Error{Wrong: "nothing is written here", Want: "a short text"}
	case !utf8.ValidString(text) || strings.ContainsFunc(text, Steers):
		return nil, &quantity.Error{Wrong: "the text has characters that are not seen", Want: "plain text"}
	case n > maxName:
		return nil, &quantity.Error{Wrong: quantity.FormatNumber(float64(n)) + " characters are too many", Want: "at most " + quantity.FormatNumber(maxName)}
	case r.Key == "currency" && (n > 8 || strings.ContainsAny(text, "0123456789.,/+-*()% ")):
		return nil, &quantity.Error{Wrong: quantity.Quoted(text) + " is no currency", Want: "a currency's sign or code, such as $ or EUR"}
	}
	return text, nil
}

var looseMarks = strings.NewReplacer("_", " ", "-", " ", "’", "", "'", "", ",", " ")

// loose brings words to a form in which case, hyphens, underscores and
// apostrophes make no difference.
func loose(text string) string {
	text = looseMarks.Replace(strings.ToLower(text))
	return strings.TrimRight(strings.Join(strings.Fields(text), " "), ".!")
}

// parseChoice takes the words of an option, or the beginning of some of its words
// that no other has. "None" must be meant as such: from a locker "which takes none"
// is not what an owner of no way in means.
func parseChoice(r Row, text string, _ owner) (any, error) {
	word := loose(text)
	var partial []string
	for _, o := range r.Options {
		if o.is(text) {
			return o.Value, nil
		}
		if len(word) > 3 && word != "none" && strings.Contains(" "+loose(o.Value+" "+o.Label), " "+word) {
			partial = append(partial, o.Value)
		}
	}
	if len(partial) == 1 {
		return partial[0], nil
	}
	e := &quantity.Error{Wrong: quantity.Quoted(text) + " is not one of the choices", Want: r.choices()}
	if len(partial) > 1 && len(partial) < 5 {
		e.Hint = "did you mean " + strings.Join(partial, " or ") + "?"
		return nil, e
	}
	var known []string
	for _, o := range r.Options {
		known = append(known, loose(o.Value))
	}
	if best := slices.Index(known, quantity.Nearest(word, known)); best >= 0 {
		e.Hint = "did you mean " + r.Options[best].Value + "?"
	}
	return nil, e
}

// is reports whether a text names the option.
func (o Option) is(text string) bool {
	word := loose(text)
	return word == loose(o.Value) || word == loose(o.Label) || word == loose(quantity.Local(o.Label, quantity.US)) ||
		slices.ContainsFunc(strings.Split(o.Also, "|"), func(also string) bool { return also != "" && word == loose(also) })
}

// choices lists the values of a choice for an error sentence.
func (r Row) choices() string {
	if len(r.Options) > 12 {
		return "one of " + quantity.FormatNumber(float64(len(r.Options))) + " names, such as " + r.Options[0].Value
	}
	var values []string
	for _, o := range r.Options {
		values = append(values, o.Value)
	}
	return "one of: " + strings.Join(values, ", ")
}

func formatChoice(r Row, v any, _ owner) string {
	value := stringOf(v)
	for _, o := range r.Options {
		if o.Value == value {
			return o.Label
		}
	}
	return value
}

// yesNo are the two answers of a question that has no others.
var yesNo = []Option{{string(quantity.Yes), "yes", "y|true|yep|yeah"}, {string(quantity.No), "no", "n|false|nope"}}

func parseTri(_ Row, text string, _ owner) (any, error) {
	for _, o := range yesNo {
		if o.is(text) {
			return o.Value, nil
		}
	}
	return nil, &quantity.Error{Wrong: quantity.Quoted(text) + " is neither yes nor no", Want: "yes, no or unknown"}
}

func parseYesNo(r Row, text string, o owner) (any, error) {
	answer, err := parseTri(r, text, o)
	if err != nil {
		return nil, &quantity.Error{Wrong: quantity.Quoted(text) + " is neither", Want: "yes or no"}
	}
	return answer == string(quantity.Yes), nil
}

func formatTri(_ Row, v any, _ owner) string {
	switch stringOf(v) {
	case "yes", "no":
		return stringOf(v)
	}
	return "not known"
}

func formatYesNo(_ Row, v any, _ owner) string {
	if v.(bool) {
		return "yes"
	}
	return "no"
}

func parseNumber(r Row, text string, _ owner) (any, error) {
	return quantity.ParseNumber(text, r.Words...)
}

func parseWhole(r Row, text string, _ owner) (any, error) {
	v, err := quantity.ParseNumber(text, r.Words...)
	if err == nil && v != math.Trunc(v) {
		return nil, &quantity.Error{Wrong: quantity.Quoted(text) + " is not whole", Want: "a whole number"}
	}
	return v, err
}

func formatNumber(r Row, v any, _ owner) string {
	s := quantity.FormatNumber(floatOf(v))
	switch {
	case s == "1" && len(r.Words) > 1:
		s += " " + r.Words[1]
	case len(r.Words) > 0:
		s += " " + r.Words[0]
	}
	return s
}

// Unsure reports whether a text says that the answer is not known.
func Unsure(text string) bool {
	switch loose(text) {
	case "?", "dont know", "do not know", "i dont know", "i do not know", "dk", "unknown", "not known", "not sure", "unsure", "no idea":
		return true
	}
	return false
}
