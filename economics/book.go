package economics

import "coldreckon/economics/quantity"

// OptionID names one of the four ways to eat aboard.
type OptionID string

// The options, in the order they are always printed.
const (
	IceOnly    OptionID = "ice"
	DryStores  OptionID = "dry"
	SmallUnit  OptionID = "small"
	LargerUnit OptionID = "larger"
)

// Options lists the four in printing order.
var Options = [4]OptionID{IceOnly, DryStores, SmallUnit, LargerUnit}

// Facts holds one option's named facts: float64, bool or string by the kind
// in Vocabulary, which lists the names.
type Facts map[string]any

// Condition is a compiled yes-or-no expression over facts.
type Condition interface {
	// Holds evaluates the condition. It fails when a fact is missing or not finite.
	Holds(Facts) (bool, error)
}

// Amount is a compiled number expression over facts.
type Amount interface {
	// Number evaluates the amount. It fails when a fact is missing or the result is not finite.
	Number(Facts) (float64, error)
}

// Billing tells when a price line falls due.
type Billing string

// The billings.
const (
	Once    Billing = "once"    // with the first outlay
	Renewed Billing = "renewed" // with the first outlay, and again at the end of each life
	Yearly  Billing = "yearly"  // at each year's end
	Rate    Billing = "rate"    // not billed by itself: the models look it up by its id
)

// PriceLine is one line of the price book.
type PriceLine struct {
	ID       string
	Label    string         // as printed on a shopping list or in a cost table
	Unit     string         // what one of it is: "W", "m²", "kWh", "person-night", "each"
	Price    quantity.Range // per unit: money in the book's currency, or years, a share or a factor as Unit says
	Billing  Billing
	Life     quantity.Range // years, for Renewed
	Hours    quantity.Range // of own hands' work for each unit; 0 where it takes none to speak of
	Options  []OptionID     // which options can carry it
	Quantity Amount         // how many units, a year where billed yearly; nil for a Rate
	Standing bool           // Quantity asks for standing facts alone: it is the same in every year
	Work     bool           // includes labour, which a yard multiplies by the rate "yard_factor"
	Grade    string         // where Price is from: "a" read in an official source, "b" read elsewhere, "c" from memory
	Source   string
}

// CriterionKind tells in which way an option that fails a criterion fails.
type CriterionKind string

// The kinds. Days lost to Warmth are counted day by day; an option that fails
// for Room or Need gives no cold day at all; one that a Hazard forbids would
// work elsewhere.
const (
	Warmth CriterionKind = "warmth" // too few days are cold
	Room   CriterionKind = "room"   // what has to go in does not
	Need   CriterionKind = "need"   // something is missing without which it cannot run
	Hazard CriterionKind = "hazard" // it may not stand where it is planned
)

// CriterionKinds lists the kinds.
var CriterionKinds = [4]CriterionKind{Warmth, Room, Need, Hazard}

// Criterion makes an option unworkable when it holds.
type Criterion struct {
	ID      string
	Kind    CriterionKind
	Options []OptionID
	Fails   Condition
	// Standing tells that Fails asks for standing facts alone: it is the same in every year.
	Standing bool
	Reason   string // plain words, with {fact} places filled by the rules package
	Short    string // the same in a few words, for tables; "" where its kind or Reason says it
}

// Book is what a reckoning takes from the rule files: prices and criteria.
type Book struct {
	Currency string
	Prices   []PriceLine
	Criteria []Criterion
	Identity string // short hash of the files, printed in the report
}

// Price finds a line by its id; ok is false when the book has none.
func (b Book) Price(id string) (line PriceLine, ok bool) {
	for _, line := range b.Prices {
		if line.ID == id {
			return line, true
		}
	}
	return PriceLine{}, false
}

// typical gives the typical price of a line, with a figure for a book without it.
func (b *Book) typical(id string, otherwise float64) float64 {
	if line, ok := b.Price(id); ok {
		return line.Price.Typical
	}
	return otherwise
}
