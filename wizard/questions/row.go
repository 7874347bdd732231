package questions

import (
	"cmp"
	"reflect"
	"slices"
	"strings"
	"sync"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Row is one question and one key of the answers file.
type Row struct {
	Key   string // dotted: "box.volume"
	Group Group
	Label string // names the figure in lists: "Ice box, inside volume"
	Data  string // its path as data, where that is not the key and the kind's unit
	Ask   string // the question, in the words of a friend
	Help  string // begins with a typical value; then where to find one's own

	Kind    Kind
	Options []Option // of a Choice; of a figure, words that stand for the figure in Value
	None    string   // the word for zero, such as "none"; "" when zero has none
	Words   []string // words that may follow a Number, such as "people", that for one the second
	// Said puts what people say in place of a figure as the kind reads it, and any
	// other text as it is; nil where they just give the figure.
	Said   func(text string, o owner) string
	Limits Limits // of a numeric kind

	// Field gives the place in the boat that the answer fills.
	Field func(*economics.Boat) Slot
	// Default gives the value taken when there is no answer, of the field's type
	// or one that converts to it, and why. An empty why keeps it out of the
	// assumptions: it follows from another answer or stands for "nothing".
	Default func(Context) (value any, why string)
	// When tells whether the question matters for a boat so far; nil is always.
	When func(economics.Boat) bool

	Essential bool // among the first questions, which lead to a first answer: the table itself sees to it
	Safety    bool // always asked before a verdict
	Detail    bool // asked only when everything is asked
}

// Group gathers the rows that belong together on a page.
type Group string

// The groups, in order.
const (
	OfBoat       Group = "The boat"
	OfCruising   Group = "Where and when"
	OfBox        Group = "The ice box"
	OfFaces      Group = "The box, face by face"
	OfEvidence   Group = "What the box has shown"
	OfFood       Group = "Food and drink"
	OfIce        Group = "Buying ice"
	OfPower      Group = "Electricity"
	OfMoney      Group = "Money"
	OfSmall      Group = "A small unit"
	OfLarger     Group = "A larger unit"
	OfQuotations Group = "Quotations"
	OfSafety     Group = "Safety"
)

// Context is what a default may look at.
type Context struct {
	Boat economics.Boat // answered, and filled as far as the rows before this one
	Book func() economics.Book
}

// Limits bound a figure in the unit of its Kind. Outside Min to Max it is
// refused; outside Low to High it is unusual and worth a second look. Zero
// Limits bound nothing.
type Limits struct{ Min, Low, High, Max float64 }

// Option is one answer of a Choice.
type Option struct {
	Value string // as the boat and the answers file hold it
	Label string // in plain words
	Also  string // other words for it, separated by |
}

// Asked reports whether the row's question matters for the boat so far.
func (r Row) Asked(b economics.Boat) bool { return r.When == nil || r.When(b) }

// Slot is the place of one answer in a Boat.
type Slot struct {
	Get func() any // the value, of the field's type
	Put func(any)  // takes a value of the field's type, or one that converts to it
}

// at makes a slot of a field.
func at[T any](field *T) Slot {
	return Slot{
		Get: func() any { return *field },
		Put: func(v any) { *field = reflect.ValueOf(v).Convert(reflect.TypeFor[T]()).Interface().(T) },
	}
}

// owner is what reading and printing need to know of the person.
type owner struct {
	sys      quantity.System
	currency string
	where    waters
	bag      quantity.Kilogram // one bag or block of ice
}

func ownerOf(b *economics.Boat) owner {
	o := owner{cmp.Or(b.Units, quantity.US), cmp.Or(b.Currency, defaultCurrency), watersOf(*b), b.Ice.UnitSize}
	if o.bag <= 0 {
		o.bag, _ = usualBag(o.sys)
	}
	return o
}

// All gives the table, in the order of asking. The caller must not change it.
func All() []Row { return table() }

var table = sync.OnceValue(func() []Row {
	var rows []Row
	for _, part := range [][]Row{generalRows(), cruisingRows(), boxRows(), faceRows(), evidenceRows(), foodRows(), iceRows(), coolerRows(),
		powerRows(), moneyRows(), unitRows("small"), unitRows("larger"), quotationRows(), safetyRows()} {
		rows = append(rows, part...)
	}
	first := essentials()
	for i := range rows {
		rows[i].Essential = slices.Contains(first, rows[i].Key)
	}
	return rows
})

var index = sync.OnceValue(func() map[string]int {
	m := map[string]int{}
	for i, r := range table() {
		m[r.Key] = i
	}
	return m
})

// Find gives the row of a key; ok is false when there is none.
func Find(key string) (row Row, ok bool) {
	i, ok := index()[key]
	if !ok {
		return Row{}, false
	}
	return table()[i], true
}

// longestKey bounds what is compared: the longest key has some 40 bytes.
const longestKey = 100

// DidYouMean asks whether the key that most resembles a misspelt one was meant;
// "" when none is near.
func DidYouMean(key string) string {
	if near := near(key); near != "" {
		return "did you mean " + near + "?"
	}
	return ""
}

// near gives the key, or the group that keys begin with, that most resembles a
// misspelt one; "" when none is near.
func near(key string) string {
	if len(key) > longestKey {
		return ""
	}
	key = strings.ToLower(key)
	for _, r := range table() { // a group by itself: its first key
		if strings.HasPrefix(r.Key, key+".") {
			return r.Key
		}
	}
	group, word, _ := strings.Cut(key, ".")
	best, least := "", len(key)/3+2
	try := func(known, typed string) {
		// A group that is right says nothing of the rest: boat.year is no boat.name.
		alike := least
		if strings.HasPrefix(known, group+".") {
			alike = min(least, len(word)/2+1)
		}
		if d := quantity.Distance(known, typed); d < alike {
			best, least = known, d
		}
	}
	for _, r := range table() {
		try(r.Key, key)
		if head, _, ok := strings.Cut(r.Key, "."); ok {
			try(head, key)
		}
		// The right last word in the wrong place: "volume" for "box.volume".
		if strings.HasSuffix(r.Key, "."+key) && least > 1 {
			best, least = r.Key, 1
		}
	}
	return best
}
