package questions

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// written tells how a kind is written: the unit of a figure in US and in metric
// units, which ends the name of one as data, and answers as owners may write
// them, the US way before the metric where there are two.
var written = map[Kind]struct {
	us, metric string
	data       string
	answers    []string
}{
	YesNo:                 {answers: []string{"yes", "no"}},
	YesNoUnknown:          {answers: []string{"yes", "no", "don't know"}},
	Volume:                {"cu ft", "L", "l", []string{"3.2 cu ft", "90 L"}},
	Length:                {"in", "mm", "mm", []string{"1 1/2 in", "38 mm"}},
	Run:                   {"ft", "m", "m", []string{"13 ft", "4 m"}},
	Dimensions:            {"in", "mm", "mm", []string{"18 x 22 x 16 in", "450 x 550 x 400 mm"}},
	Opening:               {"in", "mm", "mm", []string{"16 x 12 in", "400 x 300 mm"}},
	Mass:                  {"lb", "kg", "kg", []string{"10 lb", "4.5 kg"}},
	Temperature:           {"°F", "°C", "c", []string{"40 F", "4 C"}},
	TemperatureDifference: {"°F", "°C", "k", []string{"4 F", "2 C"}},
	MonthTemperatures:     {"°F", "°C", "c", []string{"january 41 F, july 66 F", "january 5 C, july 19 C"}},
	MonthOverrides:        {"°F", "°C", "c", []string{"july 79 F", "july 26 C"}},
	WireSize:              {"AWG", "mm²", "mm2", []string{"10 AWG", "6 mm²"}},
	PricePerMass:          {us: "/lb", metric: "/kg", data: "per_kg"},
	Charge:                {"Ah", "Ah", "ah", []string{"100 Ah"}},
	Current:               {"A", "A", "a", []string{"4.5 A"}},
	Voltage:               {"V", "V", "", []string{"12 V"}},
	Power:                 {"W", "W", "w", []string{"100 W"}},
	Hours:                 {"h", "h", "hours", []string{"1.5 h"}},
	Years:                 {"years", "years", "years", []string{"8 years"}},
	Leak:                  {data: "w_per_k"},
	Latitude:              {data: "deg", answers: []string{"44.1 N", "17 S"}},
	Share:                 {data: "share", answers: []string{"30 %", "0.3"}},
	Months:                {data: "by_month", answers: []string{"june 6, july 14", "weekends in summer", "live aboard"}},
	Number:                {answers: []string{"3", "2+1"}},
	Whole:                 {answers: []string{"3", "2+1"}},
}

// Spellings gives answers to the row as an owner may write them, the unit
// system's own way first; none for free text and for choices, whose words are
// the row's own. Set accepts each.
func (r Row) Spellings(sys quantity.System, currency string) []string {
	kind := written[r.Kind]
	such := slices.Clone(kind.answers)
	switch r.Kind {
	case Number, Whole:
		if len(r.Words) > 0 {
			such[0] += " " + r.Words[0]
		}
	case Money:
		such = []string{quantity.FormatMoney(120, currency), "120"}
	case MoneySpan:
		such = []string{quantity.FormatMoney(3, currency) + " to " + quantity.FormatMoney(6, currency), quantity.FormatMoney(4, currency)}
	case PricePerMass:
		such = []string{currency + "0.50/lb", currency + "1.10/kg", currency + "5 per 10 lb"}
	case Records:
		such = []string{recordSpelling[r.Key]}
	}
	if sys == quantity.Metric && kind.us != kind.metric {
		such[0], such[1] = such[1], such[0]
	}
	return such
}

// recordSpelling has one record of each list, with the parts it must have.
// Readings invented.
var recordSpelling = map[string]string{
	"evidence.ice_tests":   "melted: 4 kg; hours: 24; outside: 24 C; inside: 2 C",
	"evidence.jug_tests":   "water: 10 kg; hours: 12; start: 4 C; end: 9 C; outside: 24 C; box_air: 10 C",
	"evidence.ice_history": "ice: 10 kg; hours: 36; month: july",
	quotationsKey:          "name: yard A; price: 1450; rated_amps: 0.55 A; rated_box: 110 L",
	"evidence.logs":        "of: ice; from: 2025-06-03; to: 2025-08-30; leak: 1.9 W/K; leak_within: 20 %",
}

// Bounds says in words what the row accepts and what most boats have, in the
// given units and currency, such as "from 10 to 1200 L, mostly 25 to 350 L"; ""
// where there are no limits.
func (r Row) Bounds(sys quantity.System, currency string) string {
	if r.Limits == (Limits{}) {
		return ""
	}
	o := owner{sys: sys, currency: currency}
	s := r.span(o)
	if l := r.Limits; l.Low > l.Min || l.High < l.Max {
		s += ", mostly " + quantity.Span(r.lower(l.Low, o), r.upper(l.High, o))
	}
	return s
}

// Blank is one place to write an answer in by hand.
type Blank struct {
	Name string // what belongs there, when an answer has several parts; or ""
	Unit string // of the figure; "" for words, and for figures without one
}

// Blanks gives the places that an answer to the row takes on paper, none when
// ticking is enough. A figure in each, with its unit, is an answer.
func (r Row) Blanks(sys quantity.System, currency string) []Blank {
	unit := written[r.Kind].us
	if sys == quantity.Metric {
		unit = written[r.Kind].metric
	}
	names := []string{""}
	switch r.Kind {
	case Choice, YesNo, YesNoUnknown:
		return nil
	case Dimensions:
		names = []string{"length", "width", "height"}
	case Opening:
		names = []string{"length", "width"}
	case Months, MonthTemperatures, MonthOverrides:
		names = nil
		for m := range 12 {
			names = append(names, MonthName(m + 1)[:3])
		}
	case Number, Whole:
		if len(r.Words) > 0 {
			unit = r.Words[0]
		}
	case Money, MoneySpan, PricePerMass:
		unit = currency + unit
	}
	var blanks []Blank
	if r.Kind == Records {
		fields, required, _ := recordFields(r.Key, nil)
		for _, f := range fields {
			if !slices.Contains(required, f.Key) {
				continue
			}
			blank := Blank{Name: f.Label}
			if b := f.Blanks(sys, currency); len(b) == 1 {
				blank.Unit = b[0].Unit
			}
			blanks = append(blanks, blank)
		}
		return blanks
	}
	for _, name := range names {
		blanks = append(blanks, Blank{name, unit})
	}
	return blanks
}

// Parts gives the names of the parts of one record, those it must have first;
// none for rows that are no lists of records.
func (r Row) Parts() (required, others []string) {
	fields, required, _ := recordFields(r.Key, nil)
	return required, slices.DeleteFunc(keysOf(fields), func(key string) bool { return slices.Contains(required, key) })
}

// Unanswered gives by key what is taken for a boat of which nothing but the
// unit system is told, and why; the why is empty where Fill lists no
// assumption. Keys whose question does not matter for such a boat are missing.
func Unanswered(sys quantity.System, book economics.Book) map[string]economics.Assumption {
	var b economics.Boat
	b.Units = sys
	b.Known = map[string]quantity.How{"units": quantity.Told}
	Fill(&b, book)
	taken := map[string]economics.Assumption{}
	for _, row := range table() {
		if !row.Asked(b) {
			continue
		}
		taken[row.Key] = economics.Assumption{Key: row.Key, Label: row.Label, Value: row.Print(&b)}
	}
	for _, a := range b.Assumptions {
		taken[a.Key] = a
	}
	// What is taken for the units is the same whichever are asked for here.
	var bare economics.Boat
	row, _ := Find("units")
	value, why := row.Default(Context{Boat: bare})
	row.Field(&bare).Put(value)
	taken["units"] = economics.Assumption{Key: "units", Label: row.Label, Value: row.Print(&bare), Why: why}
	return taken
}

var degrees = regexp.MustCompile(`(?i)°|\d\s*[cf]\b`)

// Bare reports whether a text leaves the unit to the owner's system: a figure
// alone, of a kind that has units in both.
func (r Row) Bare(text string) bool {
	text = strings.TrimSpace(text)
	if r.Kind == PricePerMass {
		return !strings.Contains(text, "/") && !strings.ContainsFunc(text, unicode.IsLetter)
	}
	if r.Kind == MonthTemperatures || r.Kind == MonthOverrides {
		return !degrees.MatchString(text)
	}
	return len(ways[r.Kind].units) > 1 && !strings.ContainsFunc(text, func(c rune) bool { return unicode.IsLetter(c) && c != 'x' || c == '"' || c == '°' || c == '\'' })
}
