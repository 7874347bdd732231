package questions

import (
	"fmt"
	"regexp"
	"sort"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// readNights reads the nights of a year: a phrase, keys named by month, or
// twelve numbers.
func (r Row) readNights(in Input, o owner) (any, []Fault) {
	var nights [12]float64
	one := func(months []int, value Input) *Fault {
		if value.Shape != Scalar {
			f := value.not("a number of nights")
			return &f
		}
		if loose(value.Text) == "all" {
			for _, m := range months {
				nights[m-1] = DaysIn[m-1]
			}
			return nil
		}
		n, err := quantity.ParseNumber(value.Text, "nights", "night")
		if err == nil && (n < 0 || n > 31) {
			err = &quantity.Error{Found: quantity.Quoted(value.Text), Expected: "nights of one month, 0 to 31"}
		}
		if err != nil {
			f := faultOf(r.Key, value, err)
			return &f
		}
		for _, m := range months {
			nights[m-1] = n
		}
		return nil
	}
	var faults []Fault
	switch in.Shape {
	case Scalar:
		nights, err := nightsOf(in.Text, o.south)
		if err != nil {
			return nil, []Fault{faultOf(r.Key, in, err)}
		}
		for m, n := range nights {
			if n > 31 {
				return nil, []Fault{faultOf(r.Key, in, &quantity.Error{Found: fmt.Sprintf("%s nights in %s", quantity.FormatNumber(n), MonthName(m+1)), Expected: "at most the days of the month"})}
			}
		}
		return nights, nil
	case Listed:
		if len(in.List) != 12 {
			return nil, []Fault{{Line: in.Line, Column: in.Column, Found: fmt.Sprintf("a list of %d", len(in.List)), Expected: "twelve numbers, January first, or keys such as june: 8"}}
		}
		for i, value := range in.List {
			if f := one([]int{i + 1}, value); f != nil {
				faults = append(faults, *f)
			}
		}
	case Paired:
		faults = byMonth(in.Pairs, one)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return nights, nil
}

// byMonth hands every pair to take, with the months its name stands for, and
// refuses a month named twice.
func byMonth(pairs []Pair, take func([]int, Input) *Fault) []Fault {
	var faults []Fault
	seen := map[int]bool{}
	for _, p := range pairs {
		months, err := monthsNamed(p.Name.Text)
		if err != nil {
			faults = append(faults, faultOf("", p.Name, err))
			continue
		}
		for _, m := range months {
			if seen[m] {
				faults = append(faults, Fault{Line: p.Name.Line, Column: p.Name.Column, Found: MonthName(m) + " a second time", Expected: "each month once"})
			}
			seen[m] = true
		}
		if f := take(months, p.Value); f != nil {
			faults = append(faults, *f)
		}
	}
	return faults
}

var (
	betweenParts = regexp.MustCompile(`\s*(?:;|,\s)\s*`)
	namedPart    = regexp.MustCompile(`^([A-Za-z][A-Za-z_]*(?:\s*(?:-|to)\s*[A-Za-z]+)?)\s*[:=\s]\s*(.+)$`)
)

// paired splits a text such as "ice: 10 kg; hours: 36" into pairs.
func paired(in Input, expected string) ([]Pair, *Fault) {
	var pairs []Pair
	for _, part := range betweenParts.Split(strings.TrimSpace(in.Text), -1) {
		m := namedPart.FindStringSubmatch(part)
		if m == nil {
			return nil, &Fault{Line: in.Line, Column: in.Column, Found: quantity.Quoted(part), Expected: expected}
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
	given := map[int]float64{}
	one := func(months []int, value Input) *Fault {
		if value.Shape != Scalar {
			f := value.not("a temperature")
			return &f
		}
		t, err := quantity.ParseTemperature(value.Text, o.sys)
		if err == nil && !r.Limits.holds(float64(t)) {
			err = &quantity.Error{Found: quantity.Quoted(value.Text), Expected: r.span(o)}
		}
		if err != nil {
			f := faultOf(r.Key, value, err)
			return &f
		}
		for _, m := range months {
			given[m] = float64(t)
		}
		return nil
	}
	const expected = "temperatures by month, such as january: 5 °C"
	var faults []Fault
	switch in.Shape {
	case Listed:
		if len(in.List) != 12 {
			return nil, []Fault{{Line: in.Line, Column: in.Column, Found: fmt.Sprintf("a list of %d", len(in.List)), Expected: "twelve temperatures, January first, or keys such as january: 5 °C"}}
		}
		for i, value := range in.List {
			if f := one([]int{i + 1}, value); f != nil {
				faults = append(faults, *f)
			}
		}
	case Scalar:
		pairs, f := paired(in, expected)
		if f != nil {
			return nil, []Fault{*f}
		}
		faults = byMonth(pairs, one)
	case Paired:
		faults = byMonth(in.Pairs, one)
	}
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
		return nil, []Fault{{Line: in.Line, Column: in.Column, Found: "one month", Expected: "at least the coldest and the warmest month"}}
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
		var months []int
		for m := range temperatures {
			months = append(months, m)
		}
		sort.Ints(months)
		for _, m := range months {
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
		for month := 1; month <= 12; month++ {
			if c, ok := t[month]; ok {
				pair(month, quantity.FormatTemperature(c, o.sys))
			}
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
