package rules

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strconv"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// notMoney are the units of lines that hold no price; a change of currency
// leaves them alone.
var notMoney = []string{"years", "share", "share a year", "factor"}

// WithPrices lays an owner's own prices over the book: a file of kind
// own-prices whose entries name lines by id and replace low, typical and high.
// A new currency needs either every price replaced or per_dollar, how much of
// it one unit of the book's currency buys. The error is a strict.Faults.
func (p Pack) WithPrices(file string, data []byte) (Pack, error) {
	r, kind := open(file, data, kindOwnPrices)
	if kind == "" {
		return Pack{}, r.Faults()
	}
	return p.overlay(r, data)
}

// overlay lays a parsed file of own prices over the book.
func (p Pack) overlay(r *reader, data []byte) (Pack, error) {
	top, _ := r.mapping(r.Root, "", "kind", "currency", "per_dollar", "prices")
	book := p.Book
	book.Prices = slices.Clone(p.Book.Prices)
	var ids []string
	for _, line := range book.Prices {
		ids = append(ids, line.ID)
	}
	replaced := map[string]bool{}
	each := func(rec record) {
		id := r.id(rec, replaced)
		at := slices.Index(ids, id)
		if at < 0 {
			if id != "" {
				r.fault(rec.fields["id"], id, "id", strconv.Quote(id), "the id of a price line"+didYouMean(id, ids))
			}
			return
		}
		line := &book.Prices[at]
		line.Price = r.ownRange(rec, *line)
		r.inBounds(rec, *line)
		line.Grade = "b"
		line.Source = "own prices: " + r.File
		if rec.fields["source"] != nil {
			line.Source = r.text(rec, "source")
		}
	}
	// A file may change the currency and nothing else.
	if top.fields["currency"] == nil || top.fields["prices"] != nil {
		r.entries(top, "prices", []string{"id", "unit", "low", "typical", "high", "source"}, each)
	}
	if top.fields["currency"] != nil {
		r.exchange(top, &book, replaced)
	} else if n := top.fields["per_dollar"]; n != nil {
		r.fault(n, "", "per_dollar", "a rate of exchange without a currency", "currency: as well")
	}
	if err := r.Faults().OrNil(); err != nil {
		return Pack{}, err
	}
	hash := sha256.New()
	hash.Write([]byte(p.Book.Identity))
	hash.Write(data)
	book.Identity = shortHash(hash.Sum(nil))
	p.Book = book
	return p, nil
}

// ownRange reads a replaced price in the line's own unit.
func (r *reader) ownRange(rec record, line economics.PriceLine) quantity.Range {
	price := r.priceRange(rec)
	if rec.fields["unit"] == nil {
		return price
	}
	unit := r.text(rec, "unit")
	if unit == "" || unit == line.Unit {
		return price
	}
	// Money per lb times the pounds in a kilogram is money per kg.
	factor := quantity.In(1, line.Unit, unit)
	// A day's pay is not 24 times an hour's, and a life no price.
	if what, _ := quantity.Measures(unit); !(factor > 0) || what == "a span of time" {
		r.fault(rec.fields["unit"], rec.rule, "unit", quantity.Quoted(unit), "a price per "+line.Unit)
	}
	return price.Scale(factor)
}

// exchange changes the book's currency.
func (r *reader) exchange(top record, book *economics.Book, replaced map[string]bool) {
	currency := r.currency(top)
	if currency == book.Currency || currency == "" {
		return
	}
	rate := 0.0
	if top.fields["per_dollar"] != nil {
		rate = r.number(top, "per_dollar", 0.0001, 1e6)
	}
	var left []string
	for i, line := range book.Prices {
		if replaced[line.ID] || slices.Contains(notMoney, line.Unit) {
			continue
		}
		left = append(left, line.ID)
		book.Prices[i].Price = line.Price.Scale(rate)
	}
	if rate == 0 && len(left) > 0 {
		r.fault(top.fields["currency"], "", "currency", fmt.Sprintf("%s with the other prices still in %s, such as %s", currency, book.Currency, left[0]),
			"per_dollar: as well, how much of it one "+book.Currency+" buys")
	}
	book.Currency = currency
}
