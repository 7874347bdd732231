package questions

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Answer is one answer, understood. It can be put into any boat whose owner
// writes alike, without being read again.
type Answer struct {
	Key     string
	In      Input // as given
	Guessed bool  // from a range, or from a figure that makes sense in one unit only
	value   any   // nil for don't know
	how     quantity.How
	by      owner // as far as the reading hangs on it
}

// longestAnswer bounds the bytes of one text; all twelve months, or five
// records in one line, have some 300.
const longestAnswer = 1000

// Understand reads an answer of any shape as the owner of a boat means it, and
// gives every fault it finds. The boat stays as it is.
func Understand(b *economics.Boat, key string, in Input) (Answer, []Fault) {
	if Older(key) {
		now, text, _, faults := Translate(b, key, in)
		if len(faults) > 0 {
			return Answer{}, faults
		}
		key, in = now, text
	}
	row, ok := Find(key)
	if !ok {
		return Answer{}, []Fault{NoSuchKey(key, in.Line, in.Column)}
	}
	if n := len(in.Text); n > longestAnswer {
		return Answer{}, []Fault{{Line: in.Line, Column: in.Column, Key: key, Wrong: fmt.Sprintf("a text of %d bytes is too long", n), Instead: fmt.Sprintf("Write at most %d", longestAnswer)}}
	}
	o := ownerOf(b)
	a := Answer{Key: key, In: in, how: quantity.Told, by: row.matters(o)}
	if in.Shape == Scalar && Unsure(in.Text) && (row.Kind != Text || strings.TrimSpace(in.Text) == "?") {
		a.how = quantity.Unsure
		return a, nil
	}
	value, guessed, faults := row.read(in, o)
	if len(faults) > 0 {
		for i := range faults {
			faults[i].Key = key
		}
		return Answer{}, faults
	}
	a.value, a.Guessed = value, guessed
	if row.Kind == Records {
		a.how = quantity.Measured
	}
	return a, nil
}

// Put puts the answer into a boat.
func (a Answer) Put(b *economics.Boat) {
	if b.Known == nil {
		b.Known = map[string]quantity.How{}
	}
	row, _ := Find(a.Key)
	b.Known[a.Key] = a.how
	switch slot := row.Field(b); {
	case a.value != nil:
		slot.Put(a.value)
	case row.Group != OfFaces:
		slot.Put(reflect.Zero(reflect.TypeOf(slot.Get())).Interface())
	}
}

// Is reports whether the answer is what an input means to the owner of a boat.
func (a Answer) Is(b *economics.Boat, in Input) bool {
	row, _ := Find(a.Key)
	return a.In.Same(in) && a.by == row.matters(ownerOf(b))
}

// matters gives what the reading of a row hangs on, of its owner.
func (r Row) matters(o owner) owner {
	switch r.Kind {
	case Money, MoneySpan:
		return owner{currency: o.currency}
	case Months:
		return owner{where: o.where}
	case PricePerMass:
		return owner{sys: o.sys, currency: o.currency, bag: o.bag}
	}
	if len(ways[r.Kind].units) > 0 || r.Kind == Records || r.Kind == MonthTemperatures || r.Kind == MonthOverrides {
		return owner{sys: o.sys}
	}
	return owner{}
}

// Same reports whether two inputs say the same, wherever they stand.
func (in Input) Same(other Input) bool {
	return in.Shape == other.Shape && in.Text == other.Text && slices.EqualFunc(in.List, other.List, Input.Same) &&
		slices.EqualFunc(in.Pairs, other.Pairs, func(a, b Pair) bool { return a.Name.Same(b.Name) && a.Value.Same(b.Value) })
}
