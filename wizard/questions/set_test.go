package questions

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

func TestSet(t *testing.T) {
	tests := []struct {
		key, text string
		sys       quantity.System
		want      any
	}{
		{"box.volume", "3.2 cu ft", quantity.Metric, quantity.Litre(3.2 * 28.316846592)},
		{"box.volume", "90", quantity.Metric, quantity.Litre(90)},
		{"box.foam", "none", quantity.US, quantity.Metre(0)},
		{"power.solar", "2*50 W", quantity.US, quantity.Watt(100)},
		{"power.solar", "none", quantity.US, quantity.Watt(0)},
		{"money.budget", "no limit", quantity.US, quantity.Money(0)},
		{"cruising.crew", "2 people", quantity.US, 2.0},
		{"cruising.ground", "Cyclades", quantity.US, "aegean-cyclades"},
		{"cruising.ground", "Maine coast, USA", quantity.US, "maine-coast"},
		{"box.lid_seal", "gapped", quantity.US, heat.PoorSeal},
		{"power.chemistry", "AGM", quantity.US, "lead"},
		{"food.medicine", "No.", quantity.US, quantity.No},
		{"box.faces.aft.neighbour", "engine room", quantity.US, heat.Engine},
		{"units_considered.larger.plate", "holding plate", quantity.US, "eutectic"},
		{"money.years", "10 years", quantity.US, quantity.Year(10)},
		{"box.opens_per_day", "12 times a day", quantity.US, 12.0},
		{"boat.name", "  Unknown   Waters ", quantity.US, "Unknown Waters"},
	}
	for _, tt := range tests {
		b := economics.Boat{Units: tt.sys}
		err := Set(&b, tt.key, tt.text)
		row, _ := Find(tt.key)
		got := row.Field(&b).Get()
		if err != nil || !same(got, tt.want) || b.Known[tt.key] != quantity.Told {
			t.Errorf("Set(%s, %q) = %v, %v; want %v", tt.key, tt.text, got, err, tt.want)
		}
	}
}

// same compares values that may have passed through a unit's factor.
func same(a, b any) bool {
	if va, vb := reflect.ValueOf(a), reflect.ValueOf(b); va.CanFloat() && vb.CanFloat() {
		return math.Abs(va.Float()-vb.Float()) <= 1e-9*math.Abs(vb.Float())
	}
	return fmt.Sprint(a) == fmt.Sprint(b)
}

func TestRefusalsOfSet(t *testing.T) {
	tests := []struct {
		key, text string
		sys       quantity.System
		says      string
	}{
		{"box.volum", "90 L", quantity.US, "did you mean box.volume?"},
		{"volume", "90 L", quantity.US, "did you mean box.volume?"},
		{"box.volume", "90 kg", quantity.US, "a mass"},
		{"box.volume", "4.4 L", quantity.Metric, "did you mean 4.4 cu ft?"},
		{"box.volume", "90", quantity.US, "did you mean 90 L?"},
		{"box.foam", "25", quantity.US, "did you mean 25 mm?"},
		{"box.foam", "2", quantity.Metric, "did you mean 2 in?"},
		{"box.inside", "45 x 40 x 50", quantity.Metric, "did you mean 45 x 40 x 50 cm?"},
		{"food.target", "80 °C", quantity.Metric, "did you mean 8 °C?"},
		{"food.target", "40", quantity.Metric, "did you mean 40 °F?"},
		{"food.target", "4", quantity.US, "did you mean 4 °C?"},
		{"power.battery", "12000 Ah", quantity.US, "did you mean 120 Ah?"},
		{"power.battery", "12,000 Ah", quantity.US, "write 12000"},
		{"ice.price", "110 /kg", quantity.Metric, "did you mean $1.10/kg?"},
		{"ice.carry_loss", "8", quantity.US, "did you mean 8 %?"},
		{"box.lid", "tpo", quantity.US, "did you mean top?"},
		{"cruising.ground", "aegaen-cyclades", quantity.US, "did you mean aegean-cyclades?"},
		{"cruising.crew", "NaN", quantity.US, "a number"},
		{"box.volume", "-90 L", quantity.US, "expected from 0.36 to 42 cu ft"},
		{"box.foam", "50 in", quantity.US, "did you mean 50 mm?"},
		{"power.volts", "12 A", quantity.US, "which is a current"},
		{"ice.unit_size", "10 L", quantity.US, "which is a volume"},
		{"ice.price", "-1 /lb", quantity.US, "expected from $0.01/lb"},
		{"box.volume", "90 L 5", quantity.US, "two figures"},
		{"box.volume", "1e309 L", quantity.US, "write the number out"},
		{"cruising.crew", "-2", quantity.US, "from 0.5 to 16 people"},
		{"money.years", "2.5", quantity.US, "a whole number"},
		{"money.budget", "€500", quantity.US, "another currency"},
		{"cruising.nights", "60", quantity.US, "60 nights in summer"},
		{"cruising.nights", "often", quantity.US, "nights by month"},
		{"cruising.nights", "june: 32", quantity.US, "at most the days"},
		{"currency", "12", quantity.US, "sign or code"},
		{"boat.name", strings.Repeat("x", 61), quantity.US, "at most 60 characters"},
		{"units", "furlongs", quantity.US, "one of: us, metric"},
		{"evidence.ice_history", "10 kg", quantity.US, "keys such as ice"},
		{"evidence.ice_history", "ice: 10 kg; hours: 36", quantity.US, "no month"},
		{"evidence.ice_history", "ice: 10 kg; hours: 36; mnth: july", quantity.US, "did you mean month?"},
		{"evidence.jug_tests", "water: 10 kg; hours: 12; start: 9 C; end: 4 C; outside: 20 C", quantity.US, "did not warm up"},
		{"cruising.air_min", "july 20 C", quantity.US, "coldest and the warmest"},
	}
	for _, tt := range tests {
		b := economics.Boat{Units: tt.sys}
		err := Set(&b, tt.key, tt.text)
		if err == nil {
			row, _ := Find(tt.key)
			t.Errorf("Set(%s, %q) is accepted as %v", tt.key, tt.text, row.Print(&b))
			continue
		}
		f, ok := err.(Fault)
		if !ok || f.Key != tt.key || !strings.Contains(f.Error()+"; "+f.Hint, tt.says) {
			t.Errorf("Set(%s, %q): %v; hint %q; want %q", tt.key, tt.text, err, f.Hint, tt.says)
		}
		if len(b.Known) > 0 {
			t.Errorf("a refused answer leaves %v", b.Known)
		}
	}
}

func TestRecords(t *testing.T) {
	var b economics.Boat
	if err := Set(&b, "evidence.ice_history", "ice: 10 kg; hours: 1 1/2 days; month: july | ice 20 lb; hours 20; month aug; in_use no"); err != nil {
		t.Fatal(err)
	}
	want := []heat.IceHistory{{Ice: 10, Hours: 36, Month: 7, InUse: true}, {Ice: 20 * quantity.Pound, Hours: 20, Month: 8}}
	if fmt.Sprintf("%.6v", b.Evidence.IceHistory) != fmt.Sprintf("%.6v", want) || b.Known["evidence.ice_history"] != quantity.Measured {
		t.Errorf("%+v, known %q", b.Evidence.IceHistory, b.Known["evidence.ice_history"])
	}
	given, ok := Given(&b, "evidence.ice_history")
	if list := given.List; !ok || len(list) != 2 || list[0].Pairs[0].Name.Text != "ice" || list[0].Pairs[0].Value.Text != "22 lb" || list[1].Pairs[3].Value.Text != "no" {
		t.Errorf("given back %+v", given)
	}
}

func TestDoubt(t *testing.T) {
	var b economics.Boat
	row, _ := Find("box.volume")
	if err := Set(&b, "box.volume", "600 L"); err != nil {
		t.Fatal(err)
	}
	if s := row.Doubt(&b); !strings.Contains(s, "unusual") {
		t.Errorf("doubt about 600 L: %q", s)
	}
	if err := Set(&b, "box.volume", "100 L"); err != nil {
		t.Fatal(err)
	}
	if s := row.Doubt(&b); s != "" {
		t.Errorf("doubt about 100 L: %q", s)
	}
}
