package questions

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// maxRecords bounds the records of one list.
const maxRecords = 50

// readRecords reads a list of records, each a group of keys, or one text with
// records separated by "|".
func (r Row) readRecords(in Input, o owner) (any, []Fault) {
	var records []Input
	var faults []Fault
	_, required, _ := recordFields(r.Key, nil)
	want := "keys such as " + required[0] + " and " + required[1]
	if in.Shape == Scalar {
		var f *Fault
		if in, f = recordsOf(in, want); f != nil {
			return nil, []Fault{*f}
		}
	} else if in.Shape == Paired {
		in = Input{Shape: Listed, List: []Input{in}, Line: in.Line, Column: in.Column}
	}
	for _, item := range in.List {
		if item.Shape != Paired {
			faults = append(faults, item.not("a group of "+want))
			continue
		}
		records = append(records, item)
	}
	most := maxRecords
	if r.Key == quotationsKey {
		most = economics.MostQuotations
	}
	if len(records) > most {
		return nil, []Fault{in.fault(fmt.Sprintf("%d records are too many", len(records)), fmt.Sprintf("Give at most %d", most))}
	}
	list := reflect.MakeSlice(reflect.TypeOf(r.zeroValue()), 0, len(records))
	for _, item := range records {
		record, wrong := readRecord(r.Key, item, o)
		faults = append(faults, wrong...)
		if len(wrong) == 0 {
			list = reflect.Append(list, reflect.ValueOf(record))
		}
	}
	if offers, ok := list.Interface().([]economics.Quotation); ok && len(faults) == 0 {
		faults = namedTwice(offers, records)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return list.Interface(), nil
}

// readRecord reads one record of a list.
func readRecord(key string, place Input, o owner) (any, []Fault) {
	fields, required, record := recordFields(key, nil)
	var faults []Fault
	seen := map[string]bool{}
	for _, p := range place.Pairs {
		name := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(p.Name.Text)), "-", "_")
		at := slices.IndexFunc(fields, func(f Row) bool { return f.Key == name })
		switch {
		case at < 0:
			known := keysOf(fields)
			f := p.Name.fault(quantity.Quoted(p.Name.Text)+" is no part of it", "Give one of: "+strings.Join(known, ", "))
			if best := quantity.Nearest(name, known); best != "" {
				f.Hint = "did you mean " + best + "?"
			}
			faults = append(faults, f)
			continue
		case seen[name]:
			faults = append(faults, p.Name.fault(name+" stands there twice", "Give each part once"))
			continue
		case p.Value.Shape != Scalar:
			faults = append(faults, p.Value.not("one "+string(fields[at].Kind)))
			continue
		}
		seen[name] = true
		v, err := fields[at].parse(p.Value.Text, o)
		if err != nil {
			f := faultOf(key, p.Value, err)
			f.Wrong = name + ": " + f.Wrong
			faults = append(faults, f)
			continue
		}
		fields[at].Field(nil).Put(v)
	}
	for _, name := range required {
		if !seen[name] && len(faults) == 0 {
			faults = append(faults, place.fault(name+" is missing", "Give "+strings.Join(required, ", ")))
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return record(), sensible(record(), place)
}

// sensible refuses a record whose parts contradict each other.
func sensible(record any, place Input) []Fault {
	fault := func(wrong, instead string) []Fault { return []Fault{place.fault(wrong, instead)} }
	switch t := record.(type) {
	case heat.IceTest:
		switch {
		case t.Out <= t.In:
			return fault("the air outside is no warmer than inside, so no heat came in", "Give outside above inside")
		case t.IceMass > 0 && t.Melted > t.IceMass:
			return fault("more ice melted than there was", "Give melted as at most the ice at the start")
		case t.Water > t.Melted:
			return fault("there is more meltwater than melted ice", "Give water as at most what melted")
		}
	case heat.JugTest:
		switch {
		case t.End <= t.Start:
			return fault("the water did not warm up", "Give end above start")
		case t.Out <= t.End:
			return fault("the air outside is no warmer than the water at the end", "Give outside above end")
		case t.BoxAirRead && t.BoxAir >= t.Out:
			return fault("the air in the box is no cooler than outside", "Give box_air below outside")
		}
	case economics.Quotation:
		if wrong, instead := quotationFaults(t); wrong != "" {
			return fault("quotation "+quantity.Quoted(t.Name)+": "+wrong, instead)
		}
	case heat.Learnt:
		_, wrongFrom := time.Parse(time.DateOnly, t.From)
		_, wrongTo := time.Parse(time.DateOnly, t.To)
		switch {
		case wrongFrom != nil || wrongTo != nil || t.From > t.To:
			return fault(quantity.Quoted(t.From)+" to "+quantity.Quoted(t.To)+" are not two days in order", "Give two, such as 2025-06-03 and 2025-08-30")
		case (t.Use > 0) != (t.UseLogSD > 0):
			return fault("a use stands without its standard error, or the error alone", "Give use and use_within together")
		}
	}
	return nil
}

func keysOf(rows []Row) (keys []string) {
	for _, r := range rows {
		keys = append(keys, r.Key)
	}
	return keys
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

// pairsOf gives each record of the row's list as its named parts in order; parts
// left at zero that are not required are left out.
func (r Row) pairsOf(b *economics.Boat) [][]Pair {
	o := ownerOf(b)
	list := reflect.ValueOf(r.Field(b).Get())
	var printed [][]Pair
	for i := range list.Len() {
		record := list.Index(i).Interface()
		fields, required, _ := recordFields(r.Key, record)
		var pairs []Pair
		for _, f := range fields {
			v := f.Field(nil).Get()
			needed := slices.Contains(required, f.Key) || f.Kind == YesNo
			if jug, ok := record.(heat.JugTest); ok && f.Key == "box_air" {
				needed = jug.BoxAirRead
			}
			if offer, ok := record.(economics.Quotation); ok && f.Key == "fitting" {
				needed = offer.FittingQuoted
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
// can be written part by part. Every other input, and a text that cannot be
// read, is given back as it is.
func Expand(key string, in Input) Input {
	row, ok := Find(key)
	if !ok || row.Kind != Records || in.Shape != Scalar || Unsure(in.Text) {
		return in
	}
	if list, f := recordsOf(in, ""); f == nil {
		return list
	}
	return in
}

// recordsOf splits a text with records separated by "|" into a list of them.
func recordsOf(in Input, want string) (Input, *Fault) {
	list := Input{Shape: Listed, Line: in.Line, Column: in.Column}
	for _, text := range strings.Split(in.Text, "|") {
		part := in
		part.Text = text
		pairs, f := paired(part, want)
		if f != nil {
			return in, f
		}
		list.List = append(list.List, Input{Shape: Paired, Pairs: pairs, Line: in.Line, Column: in.Column})
	}
	return list, nil
}
