package handout

import (
	"errors"
	"fmt"
	"unicode"
	"unicode/utf8"

	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/report/forms"
	"coldreckon/report/layout"
	"coldreckon/rules"
)

// Handout is the two sheets for one cruising ground and one unit system.
type Handout struct {
	ground climate.Ground
	sys    quantity.System
	words  words
	money  money
	pack   rules.Pack
	checks []forms.Check

	counts  [][]float64
	leaks   [][]float64
	year    [12]monthRow
	days    []day
	factors [][]float64
}

// New works the tables out. The pack gives prices and cautions. Errors: a unit system that is not known, a price line or a caution that
// the worksheet needs and the pack does not have.
func New(ground climate.Ground, sys quantity.System, pack rules.Pack) (*Handout, error) {
	if sys != quantity.Metric && sys != quantity.US {
		return nil, fmt.Errorf("unit system %q is not known; want metric or us", sys)
	}
	money, noPrice := moneyOf(pack)
	checks, noCaution := checklist(pack, sys)
	if err := errors.Join(noPrice, noCaution); err != nil {
		return nil, err
	}
	u := unitsOf(sys)
	return &Handout{
		ground: ground, sys: sys, words: wordsOf(sys), money: money, pack: pack, checks: checks,
		counts: counts(), leaks: leaks(u), year: year(ground, u), days: days(ground, u), factors: factors(),
	}, nil
}

// Title names the file and heads its pages: a question, and the ground.
func (h *Handout) Title() string { return "Ice, dry stores or a fridge? " + h.ground.Name }

// Document is the two sheets. foot stands at the foot of each, such as a program
// and version.
func (h *Handout) Document(foot string) layout.Document {
	doc := layout.Document{Title: h.Title(), Subject: "A worksheet for pencil, with its tables", Foot: foot,
		Margins: layout.Margins{Side: 12, Top: 16, Bottom: 14.5}}
	doc.Part(h.worksheet()...)
	doc.Part(h.tables()...)
	return doc
}

// money is what the worksheet takes from the price book.
type money struct {
	currency    string
	spoilage    float64 // a kg of chilled food and warm day
	cable, hull float64 // first cost beside the unit; of sea-water cooling
	dry         float64 // a person and night
}

func moneyOf(pack rules.Pack) (money, error) {
	var missing []error
	price := func(id string) float64 {
		line, ok := pack.Book.Price(id)
		if !ok {
			missing = append(missing, fmt.Errorf("the price book has no line %q; the handout needs it", id))
		}
		return line.Price.Typical
	}
	m := money{
		currency: pack.Book.Currency,
		spoilage: price("spoilage"), cable: price("cable_fuse"), hull: price("haul_out") + price("seacock"),
		dry: price("dry_premium"),
	}
	if last, _ := utf8.DecodeLastRuneInString(m.currency); unicode.IsLetter(last) {
		m.currency += " " // EUR 12, €12
	}
	return m, errors.Join(missing...)
}
