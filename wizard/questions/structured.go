package questions

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"sort"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
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
			err = &quantity.Error{Found: shorten(value.Text), Expected: "nights of one month, 0 to 31"}
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
			return nil, &Fault{Line: in.Line, Column: in.Column, Found: shorten(part), Expected: expected}
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
			err = &quantity.Error{Found: shorten(value.Text), Expected: r.span(o)}
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

// maxRecords bounds the records of one list.
const maxRecords = 50

// readRecords reads a list of records, each a group of keys, or one text with
// records separated by "|".
func (r Row) readRecords(in Input, o owner) (any, []Fault) {
	var records [][]Pair
	var places []Input
	var faults []Fault
	_, required, _ := recordFields(r.Key, nil)
	expected := "keys such as " + required[0] + " and " + required[1]
	switch in.Shape {
	case Paired:
		records, places = append(records, in.Pairs), append(places, in)
	case Listed:
		for _, item := range in.List {
			if item.Shape != Paired {
				faults = append(faults, item.not("a group of "+expected))
				continue
			}
			records, places = append(records, item.Pairs), append(places, item)
		}
	case Scalar:
		for _, text := range strings.Split(in.Text, "|") {
			part := in
			part.Text = text
			pairs, f := paired(part, expected)
			if f != nil {
				return nil, []Fault{*f}
			}
			records, places = append(records, pairs), append(places, in)
		}
	}
	if len(records) > maxRecords {
		return nil, []Fault{{Line: in.Line, Column: in.Column, Found: fmt.Sprintf("%d records", len(records)), Expected: fmt.Sprintf("at most %d", maxRecords)}}
	}
	list := reflect.MakeSlice(reflect.TypeOf(r.zeroValue()), 0, len(records))
	for i, pairs := range records {
		record, wrong := readRecord(r.Key, pairs, places[i], o)
		faults = append(faults, wrong...)
		if len(wrong) == 0 {
			list = reflect.Append(list, reflect.ValueOf(record))
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return list.Interface(), nil
}

// readRecord reads one record of a list.
func readRecord(key string, pairs []Pair, place Input, o owner) (any, []Fault) {
	fields, required, record := recordFields(key, nil)
	var faults []Fault
	seen := map[string]bool{}
	for _, p := range pairs {
		name := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(p.Name.Text)), "-", "_")
		field, found := Row{}, false
		best, least := "", len(name)/3+2
		for _, f := range fields {
			if f.Key == name {
				field, found = f, true
			}
			if d := quantity.Distance(f.Key, name); d < least {
				best, least = f.Key, d
			}
		}
		switch {
		case !found:
			f := Fault{Line: p.Name.Line, Column: p.Name.Column, Found: "the unknown part " + shorten(p.Name.Text), Expected: parts(fields)}
			if best != "" {
				f.Hint = "did you mean " + best + "?"
			}
			faults = append(faults, f)
			continue
		case seen[name]:
			faults = append(faults, Fault{Line: p.Name.Line, Column: p.Name.Column, Found: name + " a second time", Expected: "each part once"})
			continue
		case p.Value.Shape != Scalar:
			faults = append(faults, p.Value.not("one "+string(field.Kind)))
			continue
		}
		seen[name] = true
		v, err := field.parse(p.Value.Text, o)
		if err != nil {
			f := faultOf(key, p.Value, err)
			f.Found = name + ": " + f.Found
			faults = append(faults, f)
			continue
		}
		field.Field(nil).Put(v)
	}
	for _, name := range required {
		if !seen[name] && len(faults) == 0 {
			faults = append(faults, Fault{Line: place.Line, Column: place.Column, Found: "no " + name, Expected: "a record with " + strings.Join(required, ", ")})
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return record(), sensible(record(), place)
}

// sensible refuses a record whose parts contradict each other.
func sensible(record any, place Input) []Fault {
	fault := func(found, expected string) []Fault {
		return []Fault{{Line: place.Line, Column: place.Column, Found: found, Expected: expected}}
	}
	switch t := record.(type) {
	case heat.IceTest:
		switch {
		case t.Out <= t.In:
			return fault("air outside no warmer than inside", "outside warmer than inside")
		case t.IceMass > 0 && t.Melted > t.IceMass:
			return fault("more ice melted than there was", "melted at most the ice at the start")
		case t.Water > t.Melted:
			return fault("more meltwater than melted ice", "water at most the ice melted")
		}
	case heat.JugTest:
		switch {
		case t.End <= t.Start:
			return fault("water that did not warm up", "end above start")
		case t.Out <= t.End:
			return fault("air outside no warmer than the water at the end", "outside above end")
		case t.BoxAirRead && t.BoxAir >= t.Out:
			return fault("box air no cooler than the air outside", "box_air below outside")
		}
	}
	return nil
}

func parts(fields []Row) string {
	var names []string
	for _, f := range fields {
		names = append(names, f.Key)
	}
	return "one of: " + strings.Join(names, ", ")
}

func formatRecords(v any) string {
	switch n := reflect.ValueOf(v).Len(); n {
	case 0:
		return "none"
	case 1:
		return "1 record"
	default:
		return fmt.Sprintf("%d records", n)
	}
}

// PrintRecords gives each record of a list as its named parts in order, for
// writing into an answers file; parts left at zero that are not required are
// left out.
func PrintRecords(b *economics.Boat, key string) [][]Pair {
	row, ok := Find(key)
	if !ok || row.Kind != Records {
		return nil
	}
	o := ownerOf(b)
	list := reflect.ValueOf(row.Field(b).Get())
	var printed [][]Pair
	for i := range list.Len() {
		record := list.Index(i).Interface()
		fields, required, _ := recordFields(key, record)
		var pairs []Pair
		for _, f := range fields {
			v := f.Field(nil).Get()
			needed := slices.Contains(required, f.Key) || f.Kind == YesNo
			if jug, ok := record.(heat.JugTest); ok && f.Key == "box_air" {
				needed = jug.BoxAirRead
			}
			if needed || !zero(v) {
				pairs = append(pairs, Pair{Word(f.Key), Word(f.print(v, o))})
			}
		}
		printed = append(printed, pairs)
	}
	return printed
}

// Expand turns the text of a list of records into the list itself, so that it
// can be written part by part; every other input is given back as it is.
func Expand(key string, in Input) Input {
	row, ok := Find(key)
	if !ok || row.Kind != Records || in.Shape != Scalar || unsure(in.Text) {
		return in
	}
	list := Input{Shape: Listed, Line: in.Line, Column: in.Column}
	for _, text := range strings.Split(in.Text, "|") {
		part := in
		part.Text = text
		pairs, f := paired(part, "")
		if f != nil {
			return in
		}
		list.List = append(list.List, Input{Shape: Paired, Pairs: pairs, Line: in.Line, Column: in.Column})
	}
	return list
}

// Given gives a boat's answer to a key in a shape that Accept takes back. ok
// is false when the boat has no answer of its own.
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
			for _, pairs := range PrintRecords(b, key) {
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
