package rules

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// counted is the quantity of a price line: an amount that counts only while
// its condition holds. Without a condition it always counts.
type counted struct {
	when    economics.Condition // nil: always
	howMany *expression
}

// Number implements economics.Amount.
func (c counted) Number(facts economics.Facts) (float64, error) {
	if c.when != nil {
		if holds, err := c.when.Holds(facts); err != nil || !holds {
			return 0, err
		}
	}
	return c.howMany.Number(facts)
}

// String gives the quantity as written.
func (c counted) String() string {
	if c.when == nil {
		return c.howMany.String()
	}
	return fmt.Sprintf("%s, if %s", c.howMany, c.when)
}

func (p *Pack) readPrices(r *reader) {
	top, _ := r.mapping(r.Root, "", "kind", "currency", "prices")
	p.Book.Currency = r.currency(top)
	seen := map[string]bool{}
	known := []string{"id", "label", "unit", "low", "typical", "high", "billing", "life", "hours", "work", "options", "when", "quantity", "grade", "source", "examples"}
	r.entries(top, "prices", known, func(rec record) {
		line := economics.PriceLine{
			ID:      r.id(rec, seen),
			Label:   r.text(rec, "label"),
			Unit:    r.text(rec, "unit"),
			Price:   r.priceRange(rec),
			Billing: economics.Billing(r.oneOf(rec, "billing", string(economics.Once), string(economics.Renewed), string(economics.Yearly), string(economics.Rate))),
			Options: r.options(rec),
			Grade:   r.provenance(rec),
			Source:  r.text(rec, "source"),
		}
		if len(line.Options) == 0 {
			line.Options = slices.Clone(economics.Options[:])
		}
		r.inBounds(rec, line)
		line.Life = r.life(rec, line.Billing)
		line.Hours = r.hours(rec)
		line.Work = rec.fields["work"] != nil && r.oneOf(rec, "work", "yes", "no") == "yes"
		p.readQuantity(r, rec, &line)
		p.Book.Prices = append(p.Book.Prices, line)
	})
}

// inBounds checks the marks of lines that hold a share or a life, not money.
func (r *reader) inBounds(rec record, line economics.PriceLine) {
	switch {
	case strings.HasPrefix(line.Unit, "share") && line.Price.High > 1:
		r.fault(rec.node, rec.rule, "high", plainNumber(line.Price.High), "a share, at most 1")
	case line.Unit == "years" && line.Price.Low < 1:
		r.fault(rec.node, rec.rule, "low", plainNumber(line.Price.Low), "at least 1 year")
	}
}

// life reads the years that a renewed line lasts; no other line may have it.
func (r *reader) life(rec record, billing economics.Billing) quantity.Range {
	n := rec.fields["life"]
	if billing != economics.Renewed {
		if n != nil {
			r.fault(n, rec.rule, "life", "a life on a line that is not renewed", "no life, or billing: renewed")
		}
		return quantity.Range{}
	}
	if n == nil {
		r.field(rec, "life")
		return quantity.Range{}
	}
	life := r.marks(rec, n)
	if life != (quantity.Range{}) && life.Low < 1 {
		r.fault(n, rec.rule, "life", "a life under a year", "at least 1 year")
	}
	return life
}

// hours reads how long a unit of the line takes own hands; most lines take none.
func (r *reader) hours(rec record) quantity.Range {
	if n := rec.fields["hours"]; n != nil {
		return r.marks(rec, n)
	}
	return quantity.Range{}
}

// marks reads a low, a typical and a high figure below a field of a rule.
func (r *reader) marks(rec record, n *yaml.Node) quantity.Range {
	marks, ok := r.mapping(n, rec.rule, "low", "typical", "high")
	if !ok {
		return quantity.Range{}
	}
	return r.priceRange(marks)
}

// readQuantity reads how many units a billed line counts; a rate has none.
func (p *Pack) readQuantity(r *reader, rec record, line *economics.PriceLine) {
	if line.Billing == economics.Rate {
		for _, key := range []string{"quantity", "when", "examples"} {
			if n := rec.fields[key]; n != nil {
				r.fault(n, rec.rule, key, "a value on a rate", "none: a rate is looked up, not billed")
			}
		}
		return
	}
	howMany := r.expression(rec, "quantity", economics.Number)
	if howMany == nil {
		return
	}
	q := counted{howMany: howMany}
	reads := howMany.facts
	if rec.fields["when"] != nil {
		when := r.expression(rec, "when", economics.Truth)
		if when == nil {
			return
		}
		q.when = when
		reads = slices.Clone(when.facts)
		for _, fact := range howMany.facts {
			if !slices.ContainsFunc(reads, func(f economics.Fact) bool { return f.Name == fact.Name }) {
				reads = append(reads, fact)
			}
		}
	}
	line.Quantity = q
	line.Standing = standing(reads)
	p.readExamples(r, rec, nil, q, reads)
}

// standing tells whether facts are all known before any year.
func standing(facts []economics.Fact) bool {
	return !slices.ContainsFunc(facts, func(f economics.Fact) bool { return !f.Standing() })
}

// currency reads the sign or code of a currency.
func (r *reader) currency(top record) string {
	currency := r.text(top, "currency")
	if len(currency) > 8 || strings.ContainsAny(currency, "0123456789") {
		r.fault(top.fields["currency"], "", "currency", clip(currency), "a sign or a code, such as $ or EUR")
	}
	return currency
}
