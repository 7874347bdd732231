package rules

import (
	"fmt"
	"strings"

	"coldreckon/economics"
)

// Listing gives the whole pack as plain text: criteria, cautions, prices.
func (p Pack) Listing() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Rule book %s, prices in %s\n\nAn option does not work here when\n", p.Book.Identity, p.Book.Currency)
	for _, c := range p.Book.Criteria {
		fmt.Fprintf(&b, "  %s (%s): %v\n      %s\n", c.ID, optionList(c.Options), c.Fails, c.Reason)
	}
	b.WriteString("\nCautions\n")
	for _, c := range p.Cautions {
		fmt.Fprintf(&b, "  %s, %s (%s): %v\n      %s\n      source: %s\n", c.ID, c.Grade, optionList(c.Options), c.When, c.Text, c.Source)
	}
	b.WriteString("\nPrices (low, typical, high)\n")
	for _, l := range p.Book.Prices {
		fmt.Fprintf(&b, "  %s: %g, %g, %g per %s, %s (%s)\n      %s; grade %s, %s\n",
			l.ID, l.Price.Low, l.Price.Typical, l.Price.High, l.Unit, l.Billing, optionList(l.Options), l.Label, l.Grade, l.Source)
		if l.Quantity != nil {
			fmt.Fprintf(&b, "      how many: %v\n", l.Quantity)
		}
	}
	return b.String()
}

// optionList writes options with commas; none means all.
func optionList(options []economics.OptionID) string {
	if len(options) == 0 || len(options) == len(economics.Options) {
		return "all"
	}
	names := make([]string, len(options))
	for i, o := range options {
		names[i] = string(o)
	}
	return strings.Join(names, ", ")
}
