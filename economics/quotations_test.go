package economics_test

import (
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// tenderer is the fixture with a lid's opening and inside measures, so that
// plates can be tried on.
func tenderer() economics.Boat {
	b := economics.Dunlin()
	b.Box.Inside = quantity.Dimensions{Length: 0.5, Width: 0.4, Height: 0.45}
	b.Box.LidOpening = quantity.Dimensions{Length: 0.3, Width: 0.25}
	return b
}

// Common practice, no source: makers print 0.4 A for boxes up to about 100 L
// and 0.5 A up to about 200 L on the same compressor. As two quotations they
// must use nearly the same in one box: the label tells of the maker's box.
func TestMakersPairUsesTheSameInOneBox(t *testing.T) {
	b := tenderer()
	b.Quotations = []economics.Quotation{
		{Name: "the 100 L one", Price: 1100, MeanAmps: 0.4, BoxUpTo: 100},
		{Name: "the 200 L one", Price: 1500, MeanAmps: 0.5, BoxUpTo: 200},
	}
	r := reckon(t, b, few)
	if len(r.Quotations) != 2 {
		t.Fatalf("%d quotations come back", len(r.Quotations))
	}
	a, c := r.Quotations[0].AsShe, r.Quotations[1].AsShe
	t.Logf("in the box as she is %.1f and %.1f Ah a day", a.AhPerDay, c.AhPerDay)
	if !near(a.AhPerDay, c.AhPerDay, 0.1) {
		t.Errorf("they take %.1f and %.1f Ah a day, more than a tenth apart", a.AhPerDay, c.AhPerDay)
	}
	if a.AhPerDay < 0.4*24 {
		t.Errorf("an inch of damp foam takes %.1f Ah a day, less than a maker prints for his thick box", a.AhPerDay)
	}
	for _, q := range r.Quotations {
		if q.Option != economics.SmallUnit {
			t.Errorf("%s is taken for the %s unit", q.Quotation.Name, q.Option)
		}
	}
	if first, second := r.Quotations[0], r.Quotations[1]; !first.Stands || second.Stands {
		t.Errorf("stands: %v and %v; the cheaper of two that use the same must stand", first.Stands, second.Stands)
	}
}

// The best quotation of a class stands for it in the four ways, and is paid at
// its quoted price in every future.
func TestTheBestQuotationStands(t *testing.T) {
	b := tenderer()
	b.Quotations = []economics.Quotation{
		{Name: "dear", Price: 3000, Fitting: 900, FittingQuoted: true, Cooling: 60},
		{Name: "fair", Price: 1000, Fitting: 100, FittingQuoted: true, Cooling: 60},
		{Name: "big", Price: 2500, Fitting: 500, FittingQuoted: true, Cooling: 110, CooledBy: energy.Fan},
	}
	r := reckon(t, b, few)
	if got := r.Boat.Offered[economics.SmallUnit].Name; got != "fair" {
		t.Errorf("%q stands for the small unit", got)
	}
	if got := r.Boat.Offered[economics.LargerUnit].Name; got != "big" {
		t.Errorf("%q stands for the larger unit", got)
	}
	small := r.Of(economics.SmallUnit)
	if unit := line(&small.AsTold, "unit"); unit.First != 1000 || unit.Renew != 1000 {
		t.Errorf("the unit's line is %+v, want the quoted price", unit)
	}
	if fit := line(&small.AsTold, "fitting"); fit.First != 100 {
		t.Errorf("fitting costs %g, quoted at 100", fit.First)
	}
	if small.Fitted.Present != r.Quotations[1].Figures.Fitted.Present || small.WorksOf100 != r.Quotations[1].Figures.WorksOf100 {
		t.Error("the small unit of the four ways is not the quotation that stands for it")
	}
	sum := 0
	for _, q := range r.Quotations {
		sum += q.CheapestOf100
	}
	if sum > 101 || r.Quotations[0].CheapestOf100 != 0 {
		t.Errorf("cheapest in %d futures of 100 together, the dear one in %d", sum, r.Quotations[0].CheapestOf100)
	}
}

// A boat without quotations is reckoned as before, and one whose only quotation
// says what the boat says comes to the same but for the quoted price's certainty.
func TestAQuotationLikeTheUnitChangesNothing(t *testing.T) {
	b := tenderer()
	plain := reckon(t, b, few)
	b.Quotations = []economics.Quotation{{Name: "the same", Price: b.Small.Price, Fitting: b.Small.Fitting, FittingQuoted: true,
		Cooling: b.Small.RatedCooling, CooledBy: b.Small.CooledBy, Plate: b.Small.Plate}}
	r := reckon(t, b, few)
	for _, id := range economics.Options {
		a, c := plain.Of(id), r.Of(id)
		if !near(a.AsTold.Present, c.AsTold.Present, 1e-9) || !near(a.AsTold.ColdDays, c.AsTold.ColdDays, 1e-9) {
			t.Errorf("%s: %.2f with %.1f cold days became %.2f with %.1f", id, a.AsTold.Present, a.AsTold.ColdDays, c.AsTold.Present, c.AsTold.ColdDays)
		}
	}
}

func TestWillItGoIn(t *testing.T) {
	b := tenderer().Box
	plate := func(w, h quantity.Metre) *economics.Quotation {
		return &economics.Quotation{PlateSize: quantity.Dimensions{Length: w, Width: h}}
	}
	for _, row := range []struct {
		name        string
		q           *economics.Quotation
		lining      quantity.Metre
		through, on quantity.Tri
	}{
		{"a small plate", plate(0.35, 0.25), 0, quantity.Yes, quantity.Yes},
		{"one that only foam keeps off the wall", plate(0.4, 0.4), 0.05, quantity.No, quantity.No},
		{"long but narrow: on edge through 0.39 m of diagonal", plate(0.45, 0.3), 0, quantity.Yes, quantity.Yes},
		{"longer than any wall", plate(0.7, 0.2), 0, quantity.Yes, quantity.No},
		{"nothing told", &economics.Quotation{}, 0, quantity.Unknown, quantity.Unknown},
		{"a chest", &economics.Quotation{Form: economics.FreeStanding}, 0, quantity.Yes, quantity.Yes},
	} {
		if got := row.q.GoesThrough(b); got != row.through {
			t.Errorf("%s: through the lid %s, want %s", row.name, got, row.through)
		}
		if got := row.q.GoesOnWall(b, row.lining); got != row.on {
			t.Errorf("%s: on a wall %s, want %s", row.name, got, row.on)
		}
	}
	b.Inside, b.LidOpening = quantity.Dimensions{}, quantity.Dimensions{}
	if q := plate(0.3, 0.2); q.GoesThrough(b) != quantity.Unknown || q.GoesOnWall(b, 0) != quantity.Unknown {
		t.Error("a box that was not measured is known to take a plate")
	}
}

// Set-points and storing cold move the way they must; a second-hand unit has part
// of its life behind it and is followed by a new one.
func TestSetPointsOfAQuotation(t *testing.T) {
	b := tenderer()
	b.Box.LidSeal = heat.GoodSeal
	b.Quotations = []economics.Quotation{{Name: "knob", Price: 1200, Cooling: 80, Class: energy.Small, Control: economics.SpeedKnob, CooledBy: energy.Fan, Age: 9}}
	r := reckon(t, b, few)
	q := r.Quotations[0]
	if unit := line(&r.Of(economics.SmallUnit).AsTold, "unit"); unit.First != 1200 || unit.Used != 9 || unit.Renew != float64(b.Small.Price) {
		t.Errorf("the second-hand unit's line is %+v", unit)
	}
	if !(q.At50FAhPerDay < q.At45FAhPerDay && q.At45FAhPerDay < q.Unit.AhPerDay) {
		t.Errorf("%g Ah at 50 °F, %g at 45 °F, %g at the target", q.At50FAhPerDay, q.At45FAhPerDay, q.Unit.AhPerDay)
	}
	if q.SlowAhPerDay <= 0 || q.SlowAhPerDay > 1.02*q.Unit.AhPerDay {
		t.Errorf("slow it takes %g Ah, else %g", q.SlowAhPerDay, q.Unit.AhPerDay)
	}
	if q.ColdStoreHours <= 0 || q.ColdStoreHours > 24 {
		t.Errorf("4 K of box and food last %g hours", q.ColdStoreHours)
	}
	if q.Option != economics.SmallUnit {
		t.Errorf("told small, taken for the %s", q.Option)
	}
}
