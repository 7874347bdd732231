package rules

import (
	"cmp"
	"fmt"
	"slices"

	"coldreckon/economics"
)

// kindFoods is the kind of a file of foods that keep without cooling.
const kindFoods = "foods"

// Band says in words how long a food keeps. It is a matter of quality and
// planning, never a promise that food is safe.
type Band string

// The bands, shortest first.
const (
	notAtAll   Band = "not at all"
	UnderAWeek Band = "under a week"
	Weeks      Band = "one to three weeks"
	Months     Band = "a month or more"
)

// The first day of the longer bands.
const (
	weeksFrom  = 7
	monthsFrom = 28
)

// bandOf gives the band of a cautious number of days.
func bandOf(days float64) Band {
	switch {
	case days <= 0:
		return notAtAll
	case days < weeksFrom:
		return UnderAWeek
	case days < monthsFrom:
		return Weeks
	}
	return Months
}

// bands lists the bands in printing order.
var bands = []Band{notAtAll, UnderAWeek, Weeks, Months}

// warmth is a range of locker temperatures, the coolest first.
type warmth int

// warmths names the ranges as foods.yaml does; each but the last has its upper
// end in warmthEndsC.
var (
	warmths     = [...]string{"to_15", "to_20", "to_25", "over_25"}
	warmthEndsC = [...]float64{15, 20, 25}
)

// warmthOf gives the range of a temperature in °C. One that is no number
// counts as the warmest.
func warmthOf(storeC float64) warmth {
	for i, end := range warmthEndsC {
		if storeC <= end {
			return warmth(i)
		}
	}
	return warmth(len(warmthEndsC))
}

// food is one row of the file.
type food struct {
	Keeping                // but for what hangs on the warmth
	eggs    economics.Eggs // of an egg rule; "" for everything else
	days    [len(warmths)]float64
	judged  [len(warmths)]bool
}

// CannotDo is one thing that stores without cooling cannot do, told as what
// follows "Dry stores cannot".
type CannotDo struct{ ID, Text, Source string }

// Foods is what is known of eating well without cooling; LoadFoods fills it.
type Foods struct {
	foods  []food
	cannot []CannotDo
}

// Keeping is how one food does in a locker of some temperature.
type Keeping struct {
	ID, Name string // Name as printed
	Band     Band
	// Judged tells that the band at this temperature is judgement, not the source's.
	Judged bool
	Advice string // what to do
	Limits string // "" when there are none
	Weight string // a note on its weight; "" when there is none
	Source string
}

// Keeping lists the foods in a locker of storeC °C: by band, the shortest
// first, then by name. Of the egg rules it gives the one for how eggs are sold,
// and none for a boat without eggs.
func (f Foods) Keeping(storeC float64, eggs economics.Eggs) []Keeping {
	at := warmthOf(storeC)
	var out []Keeping
	for _, row := range f.foods {
		if row.eggs != "" && row.eggs != eggs {
			continue
		}
		k := row.Keeping
		k.Band, k.Judged = bandOf(row.days[at]), row.judged[at]
		out = append(out, k)
	}
	slices.SortFunc(out, func(a, b Keeping) int {
		return cmp.Or(slices.Index(bands, a.Band)-slices.Index(bands, b.Band), cmp.Compare(a.Name, b.Name))
	})
	return out
}

// CannotDo lists what stores without cooling cannot do, the gravest first.
func (f Foods) CannotDo() []CannotDo { return slices.Clone(f.cannot) }

// LoadFoods reads the embedded file. An error is a strict.Faults; in a tested build
// there is none.
func LoadFoods() (Foods, error) {
	const name = "foods.yaml"
	data, err := embedded.ReadFile("packs/" + name)
	if err != nil {
		return Foods{}, err
	}
	return readFoods(name, data)
}

func readFoods(file string, data []byte) (Foods, error) {
	var f Foods
	r, kind := open(file, data, kindFoods)
	if kind == kindFoods {
		f.read(r)
	}
	if err := r.Faults().OrNil(); err != nil {
		return Foods{}, err
	}
	return f, nil
}

// read takes the rows of a document; faults stay with the reader.
func (f *Foods) read(r *reader) {
	top, _ := r.mapping(r.Root, "", "kind", "foods", "cannot")
	seen := map[string]bool{}
	r.entries(top, "foods", []string{"id", "name", "eggs", "days", "judged", "advice", "limits", "weight", "grade", "source"}, func(rec record) {
		row := food{
			Keeping: Keeping{
				ID: r.id(rec, seen), Name: r.text(rec, "name"), Advice: r.text(rec, "advice"), Source: r.text(rec, "source"),
				Limits: r.textIfAny(rec, "limits"), Weight: r.textIfAny(rec, "weight"),
			},
			days: r.keepingDays(rec), judged: r.judged(rec),
		}
		r.provenance(rec)
		if rec.fields["eggs"] != nil {
			row.eggs = economics.Eggs(r.oneOf(rec, "eggs", string(economics.WashedEggs), string(economics.UnwashedEggs), string(economics.UnknownEggs)))
		}
		f.foods = append(f.foods, row)
	})
	r.everyEgg(top, f.foods)
	r.entries(top, "cannot", []string{"id", "text", "grade", "source"}, func(rec record) {
		r.provenance(rec)
		f.cannot = append(f.cannot, CannotDo{r.id(rec, seen), r.text(rec, "text"), r.text(rec, "source")})
	})
}

// textIfAny reads a text that may be left out.
func (r *reader) textIfAny(rec record, key string) string {
	if rec.fields[key] == nil {
		return ""
	}
	return r.text(rec, key)
}

// keepingDays reads the days for every range of temperature, none of them
// more than in a cooler one.
func (r *reader) keepingDays(rec record) (days [len(warmths)]float64) {
	n, ok := r.field(rec, "days")
	if !ok {
		return days
	}
	cells, ok := r.mapping(n, rec.rule, warmths[:]...)
	if !ok {
		return days
	}
	const tenYears = 3650
	before := r.Count()
	for i, name := range warmths {
		days[i] = r.number(cells, name, 0, tenYears)
		if i > 0 && r.Count() == before && days[i] > days[i-1] {
			r.fault(cells.fields[name], rec.rule, name, plainNumber(days[i])+" days", fmt.Sprintf("at most the %s of %s: warmth never keeps longer", plainNumber(days[i-1]), warmths[i-1]))
		}
	}
	return days
}

// judged reads the list of temperatures whose figure is judgement.
func (r *reader) judged(rec record) (judged [len(warmths)]bool) {
	for _, word := range r.someOf(rec, "judged", warmths[:]...) {
		judged[slices.Index(warmths[:], word)] = true
	}
	return judged
}

// everyEgg checks that each way of selling eggs has one rule.
func (r *reader) everyEgg(top record, foods []food) {
	n := top.fields["foods"]
	if n == nil {
		return
	}
	for _, sold := range []economics.Eggs{economics.WashedEggs, economics.UnwashedEggs, economics.UnknownEggs} {
		rules := 0
		for _, row := range foods {
			if row.eggs == sold {
				rules++
			}
		}
		if rules != 1 {
			r.fault(n, "", "eggs", fmt.Sprintf("%d rows for %s eggs", rules, sold), "one row for each way eggs are sold")
		}
	}
}
