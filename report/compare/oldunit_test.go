package compare

import (
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// A dead unit gets its line by the boat's own figures: in the page, the CSV and
// the JSON.
func TestADeadUnitGetsItsLine(t *testing.T) {
	pack := rulePack(t)
	boat := asSheIs(drawn("Dabchick", 80, 50, 100, heat.Dry, quantity.Metric, "$"))
	boat.Box.FittedUnit = economics.UnitDead
	row := rowOf(Entry{File: "dabchick.yaml", Boat: boat}, pack, few)
	ground, err := boat.Ground()
	if err != nil {
		t.Fatal(err)
	}
	r, err := economics.Reckon(boat, pack.Book, ground, few)
	if err != nil {
		t.Fatal(err)
	}
	u := row.Old
	if u == nil || !u.Dead || u.Worth != r.RepairWorth || u.Causes != 9 {
		t.Fatalf("found %+v, mending is worth %v", u, r.RepairWorth)
	}
	under := 0
	for _, line := range pack.Book.Prices {
		if strings.HasPrefix(line.ID, "mend_") && line.Price.High <= r.RepairWorth {
			under++
		}
	}
	if u.Mendable != under {
		t.Errorf("%d causes cost less than %v, said %d", under, r.RepairWorth, u.Mendable)
	}
	made := table(t)
	for _, b := range made.oldUnits() {
		t.Errorf("no boat has an old unit: %v", b)
	}
	made.Rows = append(made.Rows, row)
	if got := made.Document().Text(); !strings.Contains(got, "Dead or untried units") || !strings.Contains(got, "Dabchick: a dead unit aboard.") {
		t.Errorf("the page has no line for it:\n%s", got)
	}
	csv, err := made.CSV()
	if err != nil || !strings.Contains(string(csv), ",dead,") {
		t.Errorf("CSV: %v", err)
	}
	data, err := made.JSON()
	if err != nil || strings.Count(string(data), `"old_unit"`) != 1 {
		t.Errorf("JSON: %v", err)
	}
}

func TestMendReplaceOrTakeOut(t *testing.T) {
	made := table(t)
	for _, c := range []struct {
		unit OldUnit
		want string
	}{
		{OldUnit{Dead: true, Worth: 640, Mendable: 7, Causes: 9, Wanted: true}, "a dead unit aboard. Mend it, worth up to $640; over that, replace it. Of 9 usual causes 7"},
		{OldUnit{Worth: 640, Causes: 9}, "that nobody has tried. Her figures ask for no unit: mend it, worth up to $640, or take it out"},
		{OldUnit{Dead: true, Causes: 9, Wanted: true}, "costs no more: replace it."},
		{OldUnit{Dead: true, Causes: 9}, "costs no more: take it out."},
	} {
		row := made.Rows[0]
		row.Old = &c.unit
		if got := made.oldUnit(&row); !strings.Contains(got, c.want) {
			t.Errorf("%+v: %q, want %q", c.unit, got, c.want)
		}
		made.Rows[0] = row
	}
	row := made.Rows[0]
	row.Old, row.Currency = &OldUnit{Worth: 500, Causes: 9, Wanted: true}, "£"
	if got := made.oldUnit(&row); strings.ContainsAny(got, "£$") {
		t.Errorf("a sum in another currency is printed: %q", got)
	}
	made.Rows[2] = row
	made.InCurrency("$", Rates{"£": 1.2})
	if got := made.Rows[2].Old.Worth; got != 600 {
		t.Errorf("500 at 1.2 are %v", got)
	}
}
