package questions

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// readNights reads the nights of a year: a phrase, keys named by month, or
// twelve numbers.
func (r Row) readNights(in Input, o owner) (any, []Fault) {
	if in.Shape == Scalar {
		nights, err := nightsOf(in.Text, o.where)
		for m, n := range nights {
			if err == nil && n > 31 {
				err = &quantity.Error{Wrong: MonthName(m+1) + " has no " + quantity.FormatNumber(n) + " nights", Want: "at most " + quantity.FormatNumber(DaysIn[m])}
			}
		}
		if err != nil {
			return nil, []Fault{faultOf(r.Key, in, err)}
		}
		return nights, nil
	}
	var nights [12]float64
	faults := r.byMonth(in, "a number of nights", "numbers, January first, or keys such as june: 8", func(months []int, text string) error {
		all := loose(text) == "all"
		n := 0.0
		if !all {
			var err error
			if n, err = quantity.ParseNumber(text, "nights", "night"); err != nil {
				return err
			}
			if n < 0 || n > 31 {
				return &quantity.Error{Wrong: "no month has " + quantity.Quoted(text) + " nights", Want: "0 to 31"}
			}
		}
		for _, m := range months {
			if nights[m-1] = n; all {
				nights[m-1] = DaysIn[m-1]
			}
		}
		return nil
	})
	if len(faults) > 0 {
		return nil, faults
	}
	return nights, nil
}

// byMonth hands each text of a list of twelve, or of pairs, to read, with the
// months it stands for. It refuses a month named twice, and whatever is no text,
// of which one says what it should be; list says the same of twelve.
func (r Row) byMonth(in Input, one, list string, read func([]int, string) error) (faults []Fault) {
	take := func(months []int, value Input) {
		if value.Shape != Scalar {
			faults = append(faults, value.not(one))
		} else if err := read(months, value.Text); err != nil {
			faults = append(faults, faultOf(r.Key, value, err))
		}
	}
	if in.Shape == Listed {
		if len(in.List) != 12 {
			return []Fault{in.fault(fmt.Sprintf("the list has %d entries", len(in.List)), "Give twelve "+list)}
		}
		for i, value := range in.List {
			take([]int{i + 1}, value)
		}
		return faults
	}
	seen := map[int]bool{}
	for _, p := range in.Pairs {
		months, err := monthsNamed(p.Name.Text)
		if err != nil {
			faults = append(faults, faultOf("", p.Name, err))
			continue
		}
		for _, m := range months {
			if seen[m] {
				faults = append(faults, p.Name.fault(MonthName(m)+" stands there twice", "Give each month once"))
			}
			seen[m] = true
		}
		take(months, p.Value)
	}
	return faults
}

var (
	betweenParts = regexp.MustCompile(`\s*(?:;|,\s)\s*`)
	namedPart    = regexp.MustCompile(`^([A-Za-z][A-Za-z_]*(?:\s*(?:-|to)\s*[A-Za-z]+)?)\s*[:=\s]\s*(.+)$`)
)

// paired splits a text such as "ice: 10 kg; hours: 36" into pairs.
func paired(in Input, want string) ([]Pair, *Fault) {
	var pairs []Pair
	for _, part := range betweenParts.Split(strings.TrimSpace(in.Text), -1) {
		m := namedPart.FindStringSubmatch(part)
		if m == nil {
			f := faultOf("", in, quantity.Unclear(part, want))
			return nil, &f
		}
		name, value := in, in
		name.Text, value.Text = m[1], m[2]
		pairs = append(pairs, Pair{name, value})
	}
	return pairs, nil
}

// readTemperatures reads temperatures by month: keys named by month, twelve
// figures, or a text such as "january 5 °C, july 19 °C".
func (r Row) readTemperatures(in Input, o owner) (any, []Fault) {
	if in.Shape == Scalar {
		pairs, f := paired(in, "temperatures by month, such as january: 5 °C")
		if f != nil {
			return nil, []Fault{*f}
		}
		in.Pairs, in.Shape = pairs, Paired
	}
	given := map[int]float64{}
	faults := r.byMonth(in, "a temperature", "temperatures, January first, or keys such as january: 5 °C", func(months []int, text string) error {
		t, err := quantity.ParseTemperature(text, o.sys)
		if err == nil && !r.Limits.holds(float64(t)) {
			err = r.beyond(float64(t), text, o)
		}
		for _, m := range months {
			given[m] = float64(t)
		}
		return err
	})
	if len(faults) > 0 {
		return nil, faults
	}
	if r.Kind == MonthOverrides {
		overrides := map[int]quantity.Celsius{}
		for m, t := range given {
			overrides[m] = quantity.Celsius(t)
		}
		return overrides, nil
	}
	if len(given) < 2 {
		return nil, []Fault{in.fault("one month is too few", "Give at least the coldest and the warmest")}
	}
	var year [12]quantity.Celsius
	for i, t := range eased(given) {
		year[i] = quantity.Celsius(t)
	}
	return year, nil
}

func formatMonthTemperatures(v any, o owner) string {
	var parts []string
	one := func(month int, t quantity.Celsius) {
		parts = append(parts, MonthName(month)[:3]+" "+quantity.FormatTemperature(t, o.sys))
	}
	switch temperatures := v.(type) {
	case [12]quantity.Celsius:
		for i, t := range temperatures {
			one(i+1, t)
		}
	case map[int]quantity.Celsius:
		for _, m := range slices.Sorted(maps.Keys(temperatures)) {
			one(m, temperatures[m])
		}
	}
	if len(parts) == 0 {
		return "none"
	}
	return strings.Join(parts, ", ")
}

// Given gives a boat's answer to a key in a shape that Accept takes back. ok
// is false when there is no such key, or the owner has not answered it; "don't
// know" is an answer.
func Given(b *economics.Boat, key string) (in Input, ok bool) {
	row, found := Find(key)
	if !found {
		return in, false
	}
	switch b.Known[key] {
	case quantity.Unsure:
		return Word("don't know"), true
	case quantity.Told, quantity.Measured:
	default:
		return in, false
	}
	v := row.Field(b).Get()
	pair := func(month int, text string) {
		in.Pairs = append(in.Pairs, Pair{Word(strings.ToLower(MonthName(month))), Word(text)})
	}
	o := ownerOf(b)
	switch t := v.(type) {
	case [12]float64:
		if t == DaysIn {
			return Word("live aboard"), true
		}
		for i, n := range t {
			if n > 0 {
				pair(i+1, quantity.FormatNumber(n))
			}
		}
		if len(in.Pairs) == 0 {
			pair(6, "0")
		}
	case [12]quantity.Celsius:
		for i, c := range t {
			pair(i+1, quantity.FormatTemperature(c, o.sys))
		}
	case map[int]quantity.Celsius:
		for _, month := range slices.Sorted(maps.Keys(t)) {
			pair(month, quantity.FormatTemperature(t[month], o.sys))
		}
	default:
		if row.Kind == Records {
			in.Shape = Listed
			for _, pairs := range row.pairsOf(b) {
				in.List = append(in.List, Input{Shape: Paired, Pairs: pairs})
			}
			return in, true
		}
		if row.Kind == Choice || row.Kind == YesNoUnknown {
			return Word(stringOf(v)), true
		}
		return Word(row.Print(b)), true
	}
	in.Shape = Paired
	return in, true
}
