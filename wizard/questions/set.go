package questions

import (
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Set puts the text of one answer into the boat: read by the row's kind,
// checked against its limits, and known from then on as told. "don't know",
// "unknown" and "?" are answers: the row keeps its default, known as unsure.
// The error is a Fault.
//
// Answers are put into a boat that has not been filled; Fill comes last.
func Set(b *economics.Boat, key, text string) error {
	if faults := Accept(b, key, Word(text)); len(faults) > 0 {
		return faults[0]
	}
	return nil
}

// Accept is Set for an answer of any shape. It gives every fault it finds, and
// leaves the boat alone when there is one.
func Accept(b *economics.Boat, key string, in Input) []Fault {
	a, faults := Understand(b, key, in)
	if len(faults) == 0 {
		a.Put(b)
	}
	return faults
}

// Print gives the boat's value of a row as its owner would write it, in the
// owner's units and currency.
func (r Row) Print(b *economics.Boat) string {
	return r.print(r.Field(b).Get(), ownerOf(b))
}

// Shown is Print for the reader of a list: what nobody told is no sum of nothing.
func (r Row) Shown(b *economics.Boat) string {
	if r.Kind == MoneySpan && !b.Told(r.Key) {
		return "not told"
	}
	return r.Print(b)
}

func (r Row) print(v any, o owner) string {
	switch r.Kind {
	case Months:
		return formatNights(v.([12]float64))
	case MonthTemperatures, MonthOverrides:
		return formatMonthTemperatures(v, o)
	case Records:
		return formatRecords(v)
	}
	if r.None != "" && zero(v) {
		return r.None
	}
	return ways[r.Kind].format(r, v, o)
}

func zero(v any) bool { return reflect.ValueOf(v).IsZero() }

func stringOf(v any) string { return reflect.ValueOf(v).String() }

func floatOf(v any) float64 { return reflect.ValueOf(v).Convert(reflect.TypeFor[float64]()).Float() }

// read understands an input of any shape the row's kind allows, and reports
// whether it had to be guessed.
func (r Row) read(in Input, o owner) (value any, guessed bool, faults []Fault) {
	switch r.Kind {
	case Months:
		value, faults = r.readNights(in, o)
		return value, false, faults
	case MonthTemperatures, MonthOverrides:
		value, faults = r.readTemperatures(in, o)
		return value, false, faults
	case Records:
		value, faults = r.readRecords(in, o)
		return value, false, faults
	case Dimensions, Opening:
		if in.Shape == Listed {
			var sides []string
			for _, side := range in.List {
				if side.Shape != Scalar {
					return nil, false, []Fault{side.not("a length")}
				}
				sides = append(sides, side.Text)
			}
			in.Text, in.Shape = strings.Join(sides, " x "), Scalar
		}
	}
	if in.Shape != Scalar {
		return nil, false, []Fault{in.not("one " + string(r.Kind))}
	}
	value, guessed, err := r.scan(in.Text, o)
	if err != nil {
		return nil, false, []Fault{faultOf(r.Key, in, err)}
	}
	return value, guessed, nil
}

// parse reads a scalar and holds it against the row's limits.
func (r Row) parse(text string, o owner) (any, error) {
	v, _, err := r.scan(text, o)
	return v, err
}

// scan is parse, and reports whether the value had to be guessed: from a range,
// or from a bare figure that makes sense in one unit only.
func (r Row) scan(text string, o owner) (value any, guessed bool, err error) {
	if r.None != "" && (loose(text) == loose(r.None) || loose(text) == "none" || r.None == "none" && slices.Contains(nothing, loose(text))) {
		return r.zeroValue(), false, nil
	}
	v, err := ways[r.Kind].parse(r, r.worded(text, o), o)
	if err != nil {
		between, ok := r.between(text, o)
		if e, is := err.(*quantity.Error); !ok && is && r.Kind != Choice && len(r.Options) > 0 {
			var words []string
			for _, option := range r.Options {
				words = append(words, quantity.Local(option.Label, o.sys))
			}
			return nil, false, &quantity.Error{Wrong: e.Wrong, Want: strings.Join(words, ", ") + ", or a figure of your own", Hint: e.Hint}
		}
		if !ok {
			return nil, false, err
		}
		v, guessed = between, true
	}
	if r.None != "" && zero(v) {
		return v, guessed, nil
	}
	err = r.within(v, text, o)
	if err != nil && figurePart.FindString(strings.TrimSpace(text)) == strings.TrimSpace(text) {
		if meant := r.inUnits(strings.TrimSpace(text), o); len(meant) == 1 {
			v, err = ways[r.Kind].parse(r, meant[0], o)
			return v, true, err
		}
	}
	return v, guessed, err
}

// inUnits gives a bare figure in each of the units in which it would be usual.
func (r Row) inUnits(figure string, o owner) (texts []string) {
	for _, unit := range ways[r.Kind].units {
		text := figure + " " + unit
		if v, err := ways[r.Kind].parse(r, text, o); err == nil && r.Limits.usualAll(figures(v)) {
			texts = append(texts, text)
		}
	}
	return texts
}

var spanMark = regexp.MustCompile(`(?i)^(?:between |from |about |around )?\s*([^\s].*?)\s*(?:-|–|—|\bto\b|\band\b|\bor\b)\s*(\S.*)$`)

// between reads a range such as "2 to 30" or "80-100 L" as the figure halfway,
// as ratios go: for lack of a better one. It is rounded to two digits.
func (r Row) between(text string, o owner) (any, bool) {
	m := spanMark.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil || r.Kind == MoneySpan || r.Kind == Text || r.Kind == Choice || r.Kind == WireSize || r.Kind == Latitude || r.Kind == Temperature {
		return nil, false
	}
	read := func(text string) (float64, any, bool) {
		v, err := ways[r.Kind].parse(r, text, o)
		if err != nil || len(figures(v)) != 1 || r.within(v, text, o) != nil {
			return 0, nil, false
		}
		return figures(v)[0], v, true
	}
	high, kind, ok := read(m[2])
	low, _, fine := read(m[1] + unitOf.FindString(m[2]))
	if !fine {
		low, _, fine = read(m[1])
	}
	if !ok || !fine || low >= high {
		return nil, false
	}
	return reflect.ValueOf(quantity.TwoDigits(Middle(low, high))).Convert(reflect.TypeOf(kind)).Interface(), true
}

// unitOf finds the unit at the end of a measure.
var unitOf = regexp.MustCompile(`\s*[^\d\s.,/][^\d]*$`)

// Middle is the geometric mean where there is one, else the arithmetic.
func Middle(a, b float64) float64 {
	if a > 0 && b > 0 {
		return math.Sqrt(a * b)
	}
	return (a + b) / 2
}

// nothing is said of what is not there at all.
var nothing = []string{"no", "nothing", "zero"}

// worded gives the figure that words stand for where a figure has Options or is
// often Said.
func (r Row) worded(text string, o owner) string {
	if r.Said != nil {
		text = r.Said(text, o)
	}
	if r.Kind != Choice {
		for _, o := range r.Options {
			if o.is(text) {
				return o.Value
			}
		}
	}
	return text
}

func (r Row) zeroValue() any {
	var b economics.Boat
	return reflect.Zero(reflect.TypeOf(r.Field(&b).Get())).Interface()
}

// figures gives the numbers of a value that the limits apply to.
func figures(v any) []float64 {
	switch d := v.(type) {
	case quantity.Dimensions:
		if d.Height == 0 {
			return []float64{float64(d.Length), float64(d.Width)}
		}
		return []float64{float64(d.Length), float64(d.Width), float64(d.Height)}
	case [2]quantity.Money:
		if d[1] == 0 {
			return []float64{float64(d[0])}
		}
		return []float64{float64(d[0]), float64(d[1])}
	case int:
		return nil // a month
	}
	if reflect.ValueOf(v).CanFloat() {
		return []float64{floatOf(v)}
	}
	return nil
}

// slack forgives the last digit of a limit in converted units.
const slack = 1e-9

func (l Limits) holds(v float64) bool { return v >= l.Min-slack && v <= l.Max+slack }
func (l Limits) usual(v float64) bool { return v >= l.Low-slack && v <= l.High+slack }

func (l Limits) usualAll(vs []float64) bool {
	return len(vs) > 0 && !slices.ContainsFunc(vs, func(v float64) bool { return !l.usual(v) })
}

// within refuses what cannot be, and looks for what may have been meant.
func (r Row) within(v any, text string, o owner) error {
	if r.Limits == (Limits{}) {
		return nil
	}
	for _, f := range figures(v) {
		if r.Limits.holds(f) {
			continue
		}
		e := r.beyond(f, text, o)
		if meant := r.meant(v, text, o); meant != "" {
			e.Hint = "did you mean " + meant + "?"
		}
		return e
	}
	return nil
}

// beyond is the error of a text whose figure lies outside the limits.
func (r Row) beyond(figure float64, text string, o owner) *quantity.Error {
	much := [2]string{" is too little", " is too much"}
	switch r.Kind {
	case Temperature, MonthTemperatures, MonthOverrides:
		much = [2]string{" is too cold", " is too warm"}
	case Dimensions, Opening:
		much = [2]string{" has too short a side", " has too long a side"}
	}
	wrong := much[0]
	if figure > r.Limits.Max {
		wrong = much[1]
	}
	return &quantity.Error{Wrong: quantity.Quoted(text) + wrong, Want: strings.TrimPrefix(r.span(o), "from ")}
}

// span prints the limits: "from 10 to 1200 L".
func (r Row) span(o owner) string {
	low, high := r.lower(r.Limits.Min, o), r.upper(r.Limits.Max, o)
	s := "from " + quantity.Span(low, high)
	if r.Kind == Dimensions || r.Kind == Opening {
		s = "sides " + s
	}
	if r.None != "" {
		s += ", or " + r.None
	}
	return s
}

// bound prints one limit, or any figure in the row's base unit.
func (r Row) bound(v float64, o owner) string {
	switch r.Kind {
	case Dimensions, Opening:
		return quantity.FormatLength(quantity.Metre(v), o.sys)
	case MonthTemperatures, MonthOverrides:
		return quantity.FormatTemperature(quantity.Celsius(v), o.sys)
	case Months:
		return quantity.FormatNumber(v)
	case MoneySpan:
		return quantity.FormatMoney(quantity.Money(v), o.currency)
	}
	return ways[r.Kind].format(r, reflect.ValueOf(v).Convert(reflect.TypeOf(r.zeroValue())).Interface(), o)
}

var figurePart = regexp.MustCompile(`^[0-9.,/ +*()x×-]*[0-9)]`)

// meant looks for a usual figure behind an impossible one: another unit, or a
// slip of the decimal point.
func (r Row) meant(v any, text string, o owner) string {
	if in := r.inUnits(figurePart.FindString(strings.TrimSpace(text)), o); len(in) > 0 {
		return in[0]
	}
	if vs := figures(v); len(vs) == 1 && !zero(v) && r.Kind != Voltage { // 220 V is the shore's, not a slip for 22 V
		for _, factor := range []float64{0.1, 10, 0.01, 100, 0.001} {
			if w := vs[0] * factor; r.Limits.usual(w) {
				return r.bound(w, o)
			}
		}
	}
	return ""
}

// Doubt gives a sentence about a told figure that is possible but unusual, ""
// when there is nothing to say. It is meant to be shown beside the answer.
func (r Row) Doubt(b *economics.Boat) string {
	o, v := ownerOf(b), r.Field(b).Get()
	vs := figures(v)
	if r.Limits == (Limits{}) || len(vs) == 0 || r.None != "" && zero(v) || r.Limits.usualAll(vs) || !b.Told(r.Key) {
		return ""
	}
	usual := quantity.Span(r.lower(r.Limits.Low, o), r.upper(r.Limits.High, o))
	return r.print(v, o) + " is unusual; most boats have " + usual + "."
}
