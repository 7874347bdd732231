package economics

import (
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// Every row of an uncertain figure has all that is said of it, and a number of
// its own in a future.
func TestUncertainFiguresAreToldInFull(t *testing.T) {
	names, fields := map[string]bool{}, map[*float64]string{}
	var f Future
	for _, row := range uncertain {
		if names[row.Name] {
			t.Errorf("%s stands twice", row.Name)
		}
		names[row.Name] = true
		if other, taken := fields[row.at(&f)]; taken {
			t.Errorf("%s and %s are one number of a future", row.Name, other)
		}
		fields[row.at(&f)] = row.Name
		for what, text := range map[string]string{"name": row.Name, "label": row.Label, "short name": row.Short, "way to find out": row.FindOut} {
			if text == "" {
				t.Errorf("%s has no %s", row.Name, what)
			}
		}
		if strings.Count(row.Beyond, "{more}")+strings.Count(row.Beyond, "{fewer}") != 1 || strings.Count(row.Beyond, "{at}") != 1 {
			t.Errorf("%s: %q wants one {more} or {fewer}, and one {at}", row.Name, row.Beyond)
		}
		if !strings.HasSuffix(row.FindOut, ".") {
			t.Errorf("%s: %q is no whole sentence", row.Name, row.FindOut)
		}
		if strings.Contains(row.FindOut, "{cost}") != (row.cost != nil) {
			t.Errorf("%s: its cost is reckoned and not told, or told and not reckoned", row.Name)
		}
	}
}

// Foam that a single face was told of counts as seen.
func TestFoamOfOneFaceIsKnown(t *testing.T) {
	b := dunlin()
	b.Known, b.Box.FoamThere = nil, quantity.Unknown
	if b.foamKnown() || !mayBeBare(&b, &BoxFigures{}) {
		t.Error("foam is known without an answer")
	}
	b.Known = map[string]quantity.How{"box.faces.top.foam": quantity.Told}
	if b.foamKnown() || mayBeBare(&b, &BoxFigures{}) {
		t.Error("foam was told of a face, its state was not")
	}
	b.Known["box.faces.aft.state"] = quantity.Told
	if !b.foamKnown() {
		t.Error("foam and its state were told of faces")
	}
}
