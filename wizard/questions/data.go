package questions

import (
	"reflect"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Datum gives the row's value as data: a dotted path whose last part ends in
// the unit ("box.volume_l"), and a float64, a string, a bool, a slice or a map of
// float64. The value is nil where there is none: not told, or not asked of such
// a boat. ok is false for rows that say nothing of the boat of themselves: those
// that head a page, and those that only fill the faces.
func (r Row) Datum(b *economics.Boat) (path string, value any, ok bool) {
	if _, faces := Find(strings.Replace(r.Key, "box.", "box.faces.top.", 1)); r.Group == OfBoat || faces && r.Group == OfBox {
		return "", nil, false
	}
	path = r.Data
	if path == "" {
		path = r.Key
		last := path[strings.LastIndex(path, ".")+1:]
		if unit := written[r.Kind].data; unit != "" && !strings.Contains("_"+last+"_", "_"+unit+"_") {
			path += "_" + unit
		}
	}
	v := r.Field(b).Get()
	absent := r.None != "" && r.None != "none" && r.None != "nothing" && zero(v)
	if absent || !r.Asked(*b) || r.Kind == MoneySpan && !b.Told(r.Key) {
		return path, nil, true
	}
	return path, r.data(v), true
}

// data turns a value into what JSON can hold, lengths of walls in mm.
func (r Row) data(v any) any {
	scale := 1.0
	if r.Kind == Length || r.Kind == Dimensions || r.Kind == Opening {
		scale = 1000
	}
	switch d := v.(type) {
	case quantity.Dimensions:
		if d.Zero() {
			return nil
		}
		sides := figures(d)
		for i := range sides {
			sides[i] *= scale
		}
		return sides
	case [2]quantity.Money:
		return []float64{float64(d[0]), float64(d[1])}
	case map[int]quantity.Celsius:
		months := map[string]float64{}
		for m, t := range d {
			months[monthNames[m-1]] = float64(t)
		}
		return months
	case bool:
		return d
	}
	switch rv := reflect.ValueOf(v); {
	case r.Kind == Records:
		return float64(rv.Len())
	case rv.Kind() == reflect.Array:
		var list []float64
		for i := range rv.Len() {
			list = append(list, rv.Index(i).Convert(reflect.TypeFor[float64]()).Float())
		}
		return list
	case rv.Kind() == reflect.String:
		return rv.String()
	default:
		return scale * floatOf(v)
	}
}
