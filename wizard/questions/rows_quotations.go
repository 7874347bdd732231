package questions

import (
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// quotationsKey is where an answers file keeps the owner's offers.
const quotationsKey = "quotations"

func quotationRows() []Row {
	return []Row{{
		Key: quotationsKey, Group: OfQuotations, Label: "Quotations", Kind: Records, Detail: true,
		Ask:     "Which offers of units lie on your table?",
		Help:    "Typical: none yet. One as name: yard A; price: $1,450; fitting: $300; rated_amps: 0.55 A; rated_box: 110 L. 'coldreckon units' sets them side by side.",
		Field:   func(b *economics.Boat) Slot { return at(&b.Quotations) },
		Default: always([]economics.Quotation(nil), ""),
		When:    func(b economics.Boat) bool { return len(b.Quotations) > 0 },
	}}
}

// quotationFields gives the parts of one quotation.
func quotationFields(q *economics.Quotation) []Row {
	choice := func(name, label string, s Slot, options ...Option) Row {
		r := part(name, label, Choice, Limits{}, s)
		r.Options = options
		return r
	}
	noise := part("noise", "noise, as printed", Number, Limits{10, 25, 60, 90}, at(&q.NoiseDB))
	noise.Words = []string{"decibels", "decibel", "db", "dba", "db(a)"}
	self, yard := Option{"self", "by your own hands", "me|myself|own hands|diy"}, Option{"yard", "by a yard", "a yard|boatyard"}
	return []Row{
		part("name", "your own name for it", Text, Limits{}, at(&q.Name)),
		part("price", "price without fitting", Money, Limits{20, 200, 12000, 100000}, at(&q.Price)),
		part("fitting", "fitting as quoted, parts and labour", Money, Limits{0, 0, 8000, 100000}, Slot{
			Get: func() any { return q.Fitting },
			Put: func(v any) { at(&q.Fitting).Put(v); q.FittingQuoted = true },
		}),
		choice("fitted_by", "who fits it", at(&q.FittedBy), self, yard),
		choice("class", "small or larger unit", at(&q.Class), Option{"small", "a small unit", ""}, Option{"larger", "a larger unit", "large"}),
		choice("form", "form", at(&q.Form), forms...),
		part("rated_cooling", "cooling at -10 °C plate and 45 °C condenser, as printed", Power, Limits{5, 20, 400, 2000}, at(&q.Cooling)),
		part("rated_amps", "average current, as printed", Current, Limits{0.05, 0.2, 6, 60}, at(&q.MeanAmps)),
		part("rated_box", "largest box, as printed", Volume, Limits{10, 30, 500, 2000}, at(&q.BoxUpTo)),
		part("running_amps", "current while it runs, as printed", Current, Limits{0.5, 1.5, 12, 60}, at(&q.RunningAmps)),
		choice("cooled_by", "how it sheds its heat", at(&q.CooledBy), coolings...),
		choice("plate", "plate", at(&q.Plate), plates...),
		part("plate_size", "width and height of the plate", Opening, Limits{0.05, 0.1, 1.5, 3}, at(&q.PlateSize)),
		part("chest_volume", "volume of a free-standing chest", Volume, Limits{5, 15, 120, 400}, at(&q.ChestVolume)),
		choice("control", "how it is kept from running all day", at(&q.Control), Option{"thermostat", "a thermostat, one speed", "on off"},
			Option{"speed", "a compressor whose speed can be set", "variable|variable speed|speed control"}),
		part("refrigerant", "refrigerant, as printed", Text, Limits{}, at(&q.Refrigerant)),
		part("warranty", "warranty", Years, Limits{0.1, 0.5, 10, 30}, at(&q.Warranty)),
		noise,
		part("age", "age, of a second-hand one", Years, Limits{0.1, 1, 20, 50}, at(&q.Age)),
	}
}

// quotationFaults tells what of a quotation contradicts itself.
func quotationFaults(q economics.Quotation) (wrong, instead string) {
	chest := q.Form == economics.FreeStanding
	switch {
	case chest && q.FittingQuoted && q.Fitting > 0:
		return "a free-standing chest needs no fitting", "Leave fitting out, or write form: built_in"
	case chest && !q.PlateSize.Zero():
		return "a free-standing chest has its plate inside", "Leave plate_size out, or write form: built_in"
	case !chest && q.ChestVolume > 0:
		return "a unit built into the box has no chest", "Write form: free_standing, or rated_box instead of chest_volume"
	case q.MeanAmps > 0 && q.RunningAmps > 0 && q.MeanAmps > q.RunningAmps:
		return "it cannot take " + quantity.FormatCurrent(q.MeanAmps) + " on average and only " + quantity.FormatCurrent(q.RunningAmps) + " while it runs", "Give rated_amps of at most running_amps"
	case q.Age > 0 && q.Warranty > 10:
		return "a second-hand unit has no " + quantity.FormatYears(q.Warranty) + " of warranty", "Give what is left of it"
	}
	return "", ""
}

// namedTwice refuses quotations that share a name: nothing else tells them apart.
func namedTwice(offers []economics.Quotation, places []Input) []Fault {
	seen := map[string]bool{}
	for i, q := range offers {
		if seen[loose(q.Name)] {
			return []Fault{places[i].fault("two quotations are named "+quantity.Quoted(q.Name), "Give each a name of its own")}
		}
		seen[loose(q.Name)] = true
	}
	return nil
}

// OfferParts gives the parts of an offer in the order in which they are asked
// for, name and price first. A part is in place for as long as Asked says so:
// a free-standing chest has no plate, and one figure of its size is enough.
func OfferParts(q *economics.Quotation) []Row {
	chest := func() bool { return q.Form == economics.FreeStanding }
	when := map[string]func() bool{
		"fitting": func() bool { return !chest() }, "fitted_by": func() bool { return !chest() && !q.FittingQuoted },
		"rated_amps": func() bool { return q.Cooling == 0 }, "rated_box": func() bool { return q.Cooling == 0 && q.MeanAmps == 0 },
		"plate": func() bool { return !chest() }, "plate_size": func() bool { return !chest() }, "chest_volume": chest,
	}
	order := []string{"name", "price", "form", "chest_volume", "fitting", "fitted_by", "rated_cooling", "rated_amps", "rated_box",
		"running_amps", "cooled_by", "plate", "plate_size", "control", "refrigerant", "warranty", "noise", "age"}
	asks := map[string]string{"name": "What do you call this offer?", "form": "Is it built in, or a chest?", "cooled_by": "How does it shed its heat?",
		"plate": "What kind of plate has it?", "control": "How is it kept from running all day?", "age": "How old is it, if second-hand?"}
	fields := quotationFields(q)
	var parts []Row
	for _, key := range order {
		row := partOf(fields, key)
		if row.Ask = asks[key]; row.Ask == "" {
			row.Ask = strings.ToUpper(row.Label[:1]) + row.Label[1:] + "?"
		}
		if asked := when[key]; asked != nil {
			row.When = func(economics.Boat) bool { return asked() }
		}
		parts = append(parts, row)
	}
	return parts
}

func partOf(fields []Row, key string) Row {
	return fields[slices.IndexFunc(fields, func(r Row) bool { return r.Key == key })]
}

// PutOffer puts an answer into a part of an offer that is to stand beside the
// boat's others. The error is a Fault of a text that cannot be read, a name that
// another has, or parts that contradict each other; the offer is then as before.
func PutOffer(b *economics.Boat, q *economics.Quotation, key, text string) error {
	part := partOf(quotationFields(q), key)
	v, err := part.parse(text, ownerOf(b))
	if err != nil {
		return faultOf(quotationsKey, Word(text), err)
	}
	before := *q
	part.Field(nil).Put(v)
	faults := sensible(*q, Input{})
	if len(faults) == 0 {
		beside := append(slices.Clone(b.Quotations), *q)
		faults = namedTwice(beside, make([]Input, len(beside)))
	}
	if len(faults) > 0 {
		*q = before
		return faults[0]
	}
	return nil
}
