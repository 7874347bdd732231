package words

import "coldreckon/economics"

// Leader is the option that leads the answer; nil where there is nothing to decide.
func (v Voice) Leader() *economics.OptionFigures {
	if v.r.Answer.Way() == "" {
		return nil
	}
	return v.leader()
}

// Price prints what a day costs, to the nearest step that a person would say:
// "about $4.50".
func (v Voice) Price(x float64) string { return v.price(x) }

// Priced tells whether a price of a day is printed for an option.
func (v Voice) Priced(o *economics.OptionFigures) bool { return v.priced(o) }

// UnitAboard tells whether the small unit is the one that already works aboard.
func (v Voice) UnitAboard() bool { return v.unitAboard() }
