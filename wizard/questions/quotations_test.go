package questions

import (
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/energy"
)

// Offers invented.
func TestQuotationsAreRead(t *testing.T) {
	b := economics.Boat{Units: "metric", Currency: "$"}
	text := "name: yard by the bridge; price: $1,400; fitting: $0; rated_amps: 0.6 A; rated_box: 110 L; plate_size: 400 x 250 mm; " +
		"control: variable speed; noise: 38 dB; cooled_by: locker fan; refrigerant: R134a; warranty: 2 years" +
		" | name: used one; price: 450; age: 6 years; running_amps: 4 A; class: small; fitted_by: me"
	if err := Set(&b, "quotations", text); err != nil {
		t.Fatal(err)
	}
	if len(b.Quotations) != 2 {
		t.Fatalf("read %d quotations", len(b.Quotations))
	}
	first, second := b.Quotations[0], b.Quotations[1]
	if first.Price != 1400 || !first.FittingQuoted || first.Fitting != 0 || first.MeanAmps != 0.6 || first.PlateSize.Length != 0.4 || first.PlateSize.Width != 0.25 ||
		first.Control != economics.SpeedKnob || first.NoiseDB != 38 || first.CooledBy != energy.LockerFan || first.Warranty != 2 || first.Refrigerant != "R134a" {
		t.Errorf("first quotation read as %+v", first)
	}
	if second.Age != 6 || second.RunningAmps != 4 || second.FittingQuoted || second.FittedBy != economics.Self || second.Class != energy.Small {
		t.Errorf("second quotation read as %+v", second)
	}
	// Written and read again they are the same: a fitting of nothing too.
	in, ok := Given(&b, "quotations")
	if !ok {
		t.Fatal("they are not given back")
	}
	again := economics.Boat{Units: "metric", Currency: "$"}
	if faults := Accept(&again, "quotations", in); len(faults) > 0 {
		t.Fatal(faults)
	}
	for i := range b.Quotations {
		if again.Quotations[i] != b.Quotations[i] {
			t.Errorf("read again as %+v, want %+v", again.Quotations[i], b.Quotations[i])
		}
	}
}

func TestBadQuotationsAreRefused(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"price: 1200", "name is missing"},
		{"name: a; rated_box: 100 L", "price is missing"},
		{"name: a; price: 1200 | name: A; price: 900", "two quotations are named"},
		{"name: a; price: 700; form: free standing; plate_size: 40 x 25 cm", "free-standing chest has its plate"},
		{"name: a; price: 700; chest_volume: 40 L", "has no chest"},
		{"name: a; price: 700; rated_amps: 5 A; running_amps: 4 A", "on average"},
		{"name: a; price: 700; amps: 5 A", "is no part of it"},
		{"name: a; price: 3", "3"},
		{"name: a; price: 700; control: magic", "magic"},
	} {
		b := economics.Boat{Units: "metric", Currency: "$"}
		err := Set(&b, "quotations", row.text)
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, want %q in it", row.text, err, row.want)
		}
		if len(b.Quotations) != 0 {
			t.Errorf("%s: left %v in the boat", row.text, b.Quotations)
		}
	}
	var many []string
	for i := range economics.MostQuotations + 1 {
		many = append(many, "name: offer "+strings.Repeat("x", i+1)+"; price: 900")
	}
	var b economics.Boat
	if err := Set(&b, "quotations", strings.Join(many, " | ")); err == nil {
		t.Errorf("%d quotations are taken", len(many))
	}
}
