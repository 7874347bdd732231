package layout

import "reflect"

// worded gives the document with all its texts but sources in the reader's words.
func (d Document) worded() Document {
	if d.Words == nil {
		return d
	}
	words := d.Words
	d.Words = nil
	return turned(reflect.ValueOf(d), words).Interface().(Document)
}

// turned copies a value, every text in it turned over.
func turned(v reflect.Value, words func(string) string) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.String:
		if v.Type() == reflect.TypeFor[string]() {
			out.SetString(words(v.String()))
		}
	case reflect.Interface:
		if !v.IsNil() {
			out.Set(turned(v.Elem(), words))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		for i := range v.Len() {
			out.Index(i).Set(turned(v.Index(i), words))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && f.Name != "Source" {
				out.Field(i).Set(turned(v.Field(i), words))
			}
		}
	}
	return out
}
