package rules

import "testing"

// Common practice, no source: a small unit costs 700 to 2,100 US dollars, 1,300
// in the middle. Inputs taken: the built-in price book, its lines for the unit
// and for fitting it with one's own hands; cable, fuse and work on the box come
// on top.
func TestASmallUnitCostsWhatOwnersReport(t *testing.T) {
	pack, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	line := func(id string) (low, typical, high float64) {
		t.Helper()
		l, ok := pack.Book.Price(id)
		if !ok {
			t.Fatalf("the price book has no line %s", id)
		}
		return l.Price.Low, l.Price.Typical, l.Price.High
	}
	low, typical, high := line("small_unit")
	if low != 700 || typical != 1300 || high != 2100 {
		t.Errorf("a small unit costs %g (%g to %g); practice says 700 to 2100, 1300 in the middle", typical, low, high)
	}
	if pack.Book.Currency != "$" {
		t.Errorf("prices in %q; they are in US dollars", pack.Book.Currency)
	}
	if _, fitting, _ := line("small_fitting_self"); typical+fitting > 1500 {
		t.Errorf("bought and fitted by own hands it costs %g", typical+fitting)
	}
	if _, larger, _ := line("larger_unit"); larger < 1.5*typical {
		t.Errorf("a larger unit costs %g, a small one %g", larger, typical)
	}
}
