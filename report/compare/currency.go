package compare

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Rates says what one unit of a currency is worth in the currency that boats
// are compared in, > 0, by the name that an answers file gives it.
type Rates map[string]float64

// alike are the names that stand for one currency (ISO 4217 and its sign).
var alike = map[string]string{"EUR": "€", "€": "EUR", "GBP": "£", "£": "GBP"}

// of gives the rate of a currency by either of its names.
func (r Rates) of(currency string) (float64, bool) {
	if rate, ok := r[currency]; ok {
		return rate, true
	}
	rate, ok := r[alike[currency]]
	return rate, ok && alike[currency] != ""
}

// ParseRate reads a rate such as "EUR=1.08": one euro is 1.08 of the currency
// that boats are compared in. Errors: anything else.
func ParseRate(text string) (currency string, rate float64, err error) {
	name, figure, _ := strings.Cut(text, "=")
	name = strings.TrimSpace(name)
	rate, err = strconv.ParseFloat(strings.TrimSpace(figure), 64)
	if name == "" || err != nil || !(rate > 0) || math.IsInf(rate, 0) {
		return "", 0, fmt.Errorf("%q is no rate. Give a currency and what one of it is worth, such as EUR=1.08", text)
	}
	return name, rate, nil
}

// ForSums gives the currency to compare in: that of the first boat which could
// be reckoned and has no rate; empty where there is none.
func (t *Table) ForSums(rates Rates) string {
	for i := range t.Rows {
		if _, rated := rates.of(t.Rows[i].Currency); t.Rows[i].Error == "" && !rated {
			return t.Rows[i].Currency
		}
	}
	return ""
}

// InCurrency converts the sums of all boats for which there is a rate, and says
// in which currency the table is. The sums of others stay as they are; nothing
// is ordered by them, and no page prints them.
func (t *Table) InCurrency(currency string, rates Rates) {
	t.Currency = currency
	for i := range t.Rows {
		r := &t.Rows[i]
		rate, ok := rates.of(r.Currency)
		if r.Error != "" || r.Currency == currency || !ok {
			continue
		}
		r.Rate, r.ToldIn, r.Currency = rate, r.Currency, currency
		if r.Old != nil {
			r.Old.Worth *= rate
		}
		for k := range r.Options {
			o := &r.Options[k]
			for _, sum := range []*quantity.Range{&o.WorkCost, &o.Price, &o.AsTold.First, &o.AsTold.PerYear, &o.AsTold.Yearly,
				&o.Fitted.First, &o.Fitted.PerYear, &o.Fitted.Yearly} {
				*sum = sum.Scale(rate)
			}
		}
	}
}

// common is the currency that the page is in.
func (t *Table) common() string { return cmp.Or(t.Currency, t.ForSums(nil)) }

// foreign reports whether a boat's sums are in another currency than the page's.
func (t *Table) foreign(r *Row) bool { return r.Error == "" && r.Currency != t.common() }

// converted gives a boat's told prices in the buyer's currency.
func converted(b economics.Boat, rate float64) economics.Boat {
	for _, u := range []*economics.Unit{&b.Small, &b.Larger} {
		u.Price *= quantity.Money(rate)
		u.Fitting *= quantity.Money(rate)
		u.Upkeep *= quantity.Money(rate)
	}
	return b
}
