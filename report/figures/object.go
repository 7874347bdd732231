package figures

import (
	"encoding/json"
	"math"
	"reflect"

	"coldreckon/economics/quantity"
)

// Object is data with its keys in the order of print. Figures that are not
// finite print as null, an empty list as [].
type Object []Field

// Field is a key with its value: anything that encoding/json takes.
type Field struct {
	Key   string
	Value any
}

// MarshalJSON implements json.Marshaler. It fails only if encoding/json does.
func (o Object) MarshalJSON() ([]byte, error) {
	out := []byte{'{'}
	for i, f := range o {
		if i > 0 {
			out = append(out, ',')
		}
		key, err := json.Marshal(f.Key)
		if err != nil {
			return nil, err
		}
		value, err := encoded(reflect.ValueOf(f.Value))
		if err != nil {
			return nil, err
		}
		out = append(append(append(out, key...), ':'), value...)
	}
	return append(out, '}'), nil
}

func encoded(v reflect.Value) ([]byte, error) {
	switch {
	case !v.IsValid(), v.Kind() == reflect.Float64 && (math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0)):
		return []byte("null"), nil
	case v.Kind() != reflect.Slice, v.Type() == reflect.TypeFor[Object]():
		return json.Marshal(v.Interface())
	}
	out := []byte{'['}
	for i := range v.Len() {
		if i > 0 {
			out = append(out, ',')
		}
		element, err := encoded(v.Index(i))
		if err != nil {
			return nil, err
		}
		out = append(out, element...)
	}
	return append(out, ']'), nil
}

// Text gives the object as indented JSON with a line break at its end. It fails
// only if encoding/json does.
func (o Object) Text() ([]byte, error) {
	out, err := json.MarshalIndent(o, "", "  ")
	return append(out, '\n'), err
}

// when gives a value if it is known, else null.
func when(known bool, value any) any {
	if !known {
		return nil
	}
	return value
}

// told gives a figure that counts only when it is above zero.
func told[T ~float64](x T) any { return when(x > 0, x) }

// list makes an object of each of a list.
func list[T any](from []T, one func(T) Object) []Object {
	out := make([]Object, len(from))
	for i, x := range from {
		out[i] = one(x)
	}
	return out
}

// spread is a range: typical is the median, low and high the 10th and 90th
// percentile.
func spread(r quantity.Range) Object {
	return Object{{"low", r.Low}, {"typical", r.Typical}, {"high", r.High}}
}
