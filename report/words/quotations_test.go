package words

import (
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// quoted is a quotation with the figures that its sentences speak of.
func quoted(name string, ah, first float64, works int) *economics.QuotationFigures {
	q := &economics.QuotationFigures{Quotation: economics.Quotation{Name: name}, HasRoom: true, GoesThrough: quantity.Yes, GoesOnWall: quantity.Unknown}
	q.AsShe.RatedW, q.AsShe.HeldC, q.AsShe.AhPerDay = 60, 4, ah
	q.Figures.Fitted.First, q.Figures.WorksOf100 = first, works
	return q
}

func TestDiffer(t *testing.T) {
	v := Of(made(), economics.Book{})
	base := quoted("A", 30, 1500, 92)
	storing := quoted("B", 31, 1900, 94)
	storing.Quotation.Plate = energy.Eutectic
	large := quoted("C", 20, 1510, 99)
	large.AsShe.RatedW = 110
	chest := quoted("D", 45, 900, 60)
	chest.Quotation.Form, chest.AsShe.RatedW = economics.FreeStanding, 40
	old := quoted("E", 31, 700, 90)
	old.Quotation.Age, old.AsShe.HeldC = 7, 8
	lacks := quoted("F", 29, 1300, 93)
	lacks.Quotation.PlateSize = quantity.Dimensions{Length: 0.2, Width: 0.2}
	base.Quotation.PlateSize, base.Quotation.Control = quantity.Dimensions{Length: 0.4, Width: 0.3}, economics.SpeedKnob
	for _, row := range []struct {
		other *economics.QuotationFigures
		want  string
	}{
		{old, "Same compressor class; E is 7 years old already; in your box E holds 8 °C, not 4 °C, and uses as much; with its work E costs $800 less at first, without a speed control."},
		{lacks, "Same compressor class; in your box both hold 4 °C and use the same; with its work F costs $200 less at first, without a speed control and a larger plate."},
		{storing, "Same compressor class; in your box both hold 4 °C and use the same; with its work B costs $400 more at first, for a plate that stores cold that you do not need."},
		{large, "C has the larger compressor; in your box both hold 4 °C and C uses 33 % less; C works in 99 of 100 futures, not 92; with their work they cost the same at first."},
		{chest, "D has the smaller compressor; each in its own box both hold 4 °C and D uses 50 % more; D works in only 60 of 100 futures; with its work D costs $600 less at first, without a speed control."},
	} {
		got := v.Differ(base, row.other)
		if got != row.want {
			t.Errorf("found  %s\nwanted %s", got, row.want)
		}
	}
}

func TestGoesIn(t *testing.T) {
	v := Of(made(), economics.Book{})
	q := quoted("A", 30, 1500, 92)
	if got := v.GoesIn(q); got != "through the lid: yes; on a wall: measure plate and box" {
		t.Errorf("found %q", got)
	}
	q.HasRoom, q.GoesThrough, q.GoesOnWall = false, quantity.No, quantity.No
	if got := v.GoesIn(q); got != "leaves too little room for food; through the lid: no; on a wall: no" {
		t.Errorf("found %q", got)
	}
}

// Everything an offer may leave out has words.
func TestUnsaidHasWords(t *testing.T) {
	empty := economics.Quotation{MeanAmps: 0.5, BoxUpTo: 100}
	for _, u := range empty.Unsaid() {
		if unsaid[u] == "" {
			t.Errorf("%s has no words", u)
		}
	}
}
