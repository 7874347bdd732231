package report

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// abreast is how many quotations stand beside one another in a table.
const abreast = 4

// quotations sets the owner's quotations side by side, as the blocks of a page;
// nil when none are told.
func quotations(r *economics.Reckoning, book economics.Book) []layout.Block {
	if len(r.Quotations) == 0 {
		return nil
	}
	v := words.Of(r, book)
	out := []layout.Block{
		layout.Heading{Level: 1, Text: "Your quotations in this box"},
		layout.Para{Text: "Each is reckoned in your box with the work it needs, on the same weather and prices. " +
			"The best of a class stands for the small or the larger unit among the four ways."},
	}
	best := theBest(r)
	if best != nil {
		out = append(out, layout.Para{Style: layout.Lede, Text: orderText(best)})
	} else {
		best = &r.Quotations[0]
	}
	for from := 0; from < len(r.Quotations); from += abreast {
		out = append(out, quotationTable(v, r, r.Quotations[from:min(len(r.Quotations), from+abreast)]))
	}
	if items := differences(v, r); len(items) > 0 {
		out = append(out, layout.Heading{Level: 2, Text: "What sets them apart"}, layout.List{Items: items})
	}
	out = append(out, layout.Heading{Level: 2, Text: "Warmer, slower, colder"}, layout.Para{Text: v.WarmerBox(best)})
	out = append(out, layout.Paras(layout.Body, v.StoredCold(best))...)
	return append(out, layout.Para{Style: layout.Small, Text: "The figures of a unit hold for the hottest month aboard. First cost and years count the work; " +
		"a price in a quotation is taken as firm. Charge and noise are for the seller to warrant; wiring and any work on the refrigerant are for a licensed hand."})
}

// QuotationsDocument is the comparison by itself, foot at its foot. Offers must be told.
func QuotationsDocument(r *economics.Reckoning, book economics.Book, foot string) layout.Document {
	d := layout.Document{Title: cmp.Or(r.Boat.Name, "Your boat") + ": quotations side by side", Subject: "Offers of refrigeration, each reckoned in this box", Foot: foot, Margins: margins}
	d.Part(layout.Heading{Level: 0, Text: d.Title})
	d.Add(quotations(r, book)...)
	return d
}

// theBest is the quotation that is the cheapest that works in most futures, nil
// where none ever works.
func theBest(r *economics.Reckoning) *economics.QuotationFigures {
	var best *economics.QuotationFigures
	for i := range r.Quotations {
		if q := &r.Quotations[i]; q.CheapestOf100 > 0 && (best == nil || q.CheapestOf100 > best.CheapestOf100) {
			best = q
		}
	}
	return best
}

func orderText(best *economics.QuotationFigures) string {
	text := fmt.Sprintf("Of these, %s is the cheapest that works in %d of 100 futures.", best.Quotation.Name, best.CheapestOf100)
	if best.GoesThrough == quantity.No || best.GoesOnWall == quantity.No {
		return text + " Its plate does not go in as measured: ask for another before you order."
	}
	if best.GoesThrough == quantity.Unknown || best.GoesOnWall == quantity.Unknown {
		text += " Measure that its plate goes in before you order."
	}
	return text
}

func quotationTable(v words.Voice, r *economics.Reckoning, quotes []economics.QuotationFigures) layout.Table {
	sys := r.Boat.Units
	t := layout.Table{Fine: true, ByColumn: true, Columns: []layout.Column{{Quiet: true, Share: 0.24}}}
	for i := range quotes {
		t.Columns = append(t.Columns, layout.Column{Head: quotes[i].Quotation.Name})
	}
	row := func(label string, cell func(q *economics.QuotationFigures) string) {
		cells, any := []string{label}, false
		for i := range quotes {
			text := cell(&quotes[i])
			any = any || text != ""
			cells = append(cells, text)
		}
		if any {
			t.Rows = append(t.Rows, cells)
		}
	}
	row("Taken for", func(q *economics.QuotationFigures) string {
		if q.Stands {
			return words.In(q.Option) + ", and stands for it"
		}
		return words.In(q.Option)
	})
	row("Offered as", func(q *economics.QuotationFigures) string { return offeredAs(&q.Quotation, sys, r.Boat.Currency) })
	row("Work it needs", v.QuotedWork)
	row("Works, of 100 futures", func(q *economics.QuotationFigures) string { return fmt.Sprint(q.Figures.WorksOf100) })
	row("Cheapest that works, of 100", func(q *economics.QuotationFigures) string { return fmt.Sprint(q.CheapestOf100) })
	row("Cold days, of 100 aboard", func(q *economics.QuotationFigures) string {
		cold, _ := q.Figures.Fitted.Shares()
		return fmt.Sprintf("%.0f", math.Round(100*cold))
	})
	row("Temperature it holds", func(q *economics.QuotationFigures) string { return v.Degrees(q.Unit.HeldC) })
	row("Share of the time it runs", func(q *economics.QuotationFigures) string {
		return quantity.FormatShare(quantity.Fraction(words.Round(q.Unit.RunShare)))
	})
	row("Electricity a day, with the work", func(q *economics.QuotationFigures) string { return words.Charge(q.Unit.AhPerDay) })
	row("The same, box as she is", func(q *economics.QuotationFigures) string { return words.Charge(q.AsShe.AhPerDay) })
	row("At its slowest speed", func(q *economics.QuotationFigures) string {
		if q.SlowAhPerDay <= 0 {
			return ""
		}
		return words.Charge(q.SlowAhPerDay)
	})
	row("Cooling a warm box down", func(q *economics.QuotationFigures) string {
		if !q.Unit.PullDownReached {
			return "never gets there"
		}
		return quantity.FormatHours(words.Round(q.Unit.PullDownHours))
	})
	row("Will it go in", v.GoesIn)
	row("First cost, with the work", func(q *economics.QuotationFigures) string {
		return v.Tight(q.Figures.Fitted.First, q.Figures.FittedBands.First)
	})
	row("Over "+quantity.FormatYears(r.Boat.Money.Years), func(q *economics.QuotationFigures) string {
		return v.Tight(q.Figures.Fitted.Present, q.Figures.FittedBands.Present)
	})
	row("A cold day costs", func(q *economics.QuotationFigures) string {
		p := q.Figures.PriceOfCold
		if math.IsInf(p.Typical, 0) {
			return "no day is won"
		}
		return v.Money(p.Typical)
	})
	row("The offer leaves out", words.Unsaid)
	return t
}

// offeredAs lists what a quotation says of itself.
func offeredAs(q *economics.Quotation, sys quantity.System, currency string) string {
	parts := []string{quantity.FormatMoney(q.Price, currency)}
	add := func(is bool, text string) {
		if is {
			parts = append(parts, text)
		}
	}
	add(q.FittingQuoted, "fitting "+quantity.FormatMoney(q.Fitting, currency))
	add(q.Cooling > 0, quantity.FormatPower(q.Cooling))
	add(q.MeanAmps > 0, quantity.FormatCurrent(q.MeanAmps)+" on average")
	add(q.RunningAmps > 0, quantity.FormatCurrent(q.RunningAmps)+" running")
	add(q.BoxUpTo > 0, "boxes up to "+quantity.FormatVolume(q.BoxUpTo, sys))
	add(!q.PlateSize.Zero(), "plate "+quantity.FormatDimensions(q.PlateSize, sys))
	add(q.Control == economics.SpeedKnob, "speed control")
	add(q.Refrigerant != "", q.Refrigerant)
	add(q.NoiseDB > 0, fmt.Sprintf("%.0f dB", q.NoiseDB))
	add(q.Warranty > 0, quantity.FormatYears(q.Warranty)+" of warranty")
	add(q.Age > 0, "second-hand, "+quantity.FormatYears(q.Age)+" old")
	return strings.Join(parts, "; ")
}

// differences holds every quotation against the best of its class, and the best
// of the two classes against each other.
func differences(v words.Voice, r *economics.Reckoning) []layout.Item {
	var items []layout.Item
	add := func(base, other *economics.QuotationFigures) {
		items = append(items, layout.Item{Lead: words.Capital(base.Quotation.Name) + " and " + other.Quotation.Name + ".", Text: v.Differ(base, other)})
	}
	stands := map[economics.OptionID]*economics.QuotationFigures{}
	for i := range r.Quotations {
		if q := &r.Quotations[i]; q.Stands {
			stands[q.Option] = q
		}
	}
	for i := range r.Quotations {
		if q := &r.Quotations[i]; !q.Stands && stands[q.Option] != nil {
			add(stands[q.Option], q)
		}
	}
	if a, b := stands[economics.SmallUnit], stands[economics.LargerUnit]; a != nil && b != nil {
		add(a, b)
	}
	return items
}
