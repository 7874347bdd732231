package measured

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

var update = flag.Bool("update", false, "write the table of DEVELOPERS.md anew")

func points(t *testing.T) []Point {
	t.Helper()
	all, err := Points()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// What the ledgers must reach: in each family of at least four points a
// geometric mean of predicted over measured within 0.8 to 1.25, and four of
// five points measured within their predicted range.
func TestModelsAgainstMeasurements(t *testing.T) {
	all := points(t)
	sources := map[string]bool{}
	for _, p := range all {
		sources[p.Source] = true
		t.Logf("%s: measured %.4g, predicted %.4g (%.4g to %.4g) %s, ratio %.2f", p.Label, p.Measured, p.Predicted.Typical, p.Predicted.Low, p.Predicted.High, p.Unit, p.Ratio())
		if p.Source == "" || len(p.Assumed) == 0 {
			t.Errorf("%s: no source, or nothing assumed", p.Label)
		}
		if spread := p.Predicted.High / p.Predicted.Low; spread > 4.5 {
			t.Errorf("%s: a range of %.1f times tells nothing", p.Label, spread)
		}
	}
	if len(all) < 25 || len(sources) < 12 {
		t.Errorf("%d points from %d sources; want at least 25 from 12", len(all), len(sources))
	}
	inside := 0
	for _, f := range Families(all) {
		inside += f.Inside
		if f.Points >= 4 && (f.Ratio < 0.8 || f.Ratio > 1.25) {
			t.Errorf("%s: predicted over measured is %.2f", f.Name, f.Ratio)
		}
		if f.Points >= 4 && 5*f.Inside < 4*f.Points {
			t.Errorf("%s: %d of %d inside their range", f.Name, f.Inside, f.Points)
		}
	}
	if 5*inside < 4*len(all) {
		t.Errorf("%d of %d inside their range", inside, len(all))
	}
}

// The section of DEVELOPERS.md is written from the points.
func TestDevelopersTable(t *testing.T) {
	const name, from, to = "../../DEVELOPERS.md", "<!-- measured -->\n", "<!-- /measured -->"
	var b strings.Builder
	b.WriteString("| what was measured | points | sources | predicted over measured | inside the range |\n|---|---|---|---|---|\n")
	for _, f := range Families(points(t)) {
		fmt.Fprintf(&b, "| %s | %d | %d | %.2f | %d of %d |\n", f.Name, f.Points, f.Sources, f.Ratio, f.Inside, f.Points)
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(text), from)
	old, after, ok2 := strings.Cut(rest, to)
	if !ok || !ok2 {
		t.Fatalf("%s has no %q and %q", name, from, to)
	}
	if old == b.String() {
		return
	}
	if !*update {
		t.Fatalf("DEVELOPERS.md has\n%swant\n%s(-update writes it)", old, b.String())
	}
	if err := os.WriteFile(name, []byte(before+from+b.String()+to+after), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Each kind of figure against arithmetic by hand, so that a slip here cannot
// pass for one of the ledgers.
func TestKindsByHand(t *testing.T) {
	const boxOf = "volume_l=100 foam_mm=50 leak_factor=1 "
	ua := func(text string) float64 {
		x, err := parseInputs(text)
		if err != nil {
			t.Fatal(err)
		}
		return leak(x)
	}(boxOf)
	// 100 L as 1 : 1 : 1.1 is 0.4497 × 0.4497 × 0.4947 m; U of 50 mm at 0.024 with both films.
	const side, height = 0.44966, 0.49462
	u := func(film float64) float64 { return 1 / (0.05/0.024 + 2/film) }
	walls := side*side*(u(6.1)+u(9.3)) + 4*side*height*u(8.3)
	if rim := ua - walls - 0.08*4*side; rim < 0.05*ua || rim > 0.15*ua {
		t.Errorf("leak %.4f: walls %.4f and seal leave %.4f to edges and corners", ua, walls, rim)
	}
	for _, row := range []struct {
		kind, inputs string
		want         float64
	}{
		{"melt", boxOf + "out_c=24 in_c=4", ua * 20 * 86.4 / (333.6 + 2*4.19)},
		{"melt", boxOf + "out_c=24 in_c=4 stowed_kg=3", (ua*20 + 3*4.19*20/86.4) * 86.4 / (333.6 + 2*4.19)},
		{"melt_density", boxOf + "out_c=24 in_c=4", ua * 20 * 86.4 / (333.6 + 2*4.19) * 2.2046226 / 3.5314667},
		{"fao_k", boxOf + "out_c=25 in_c=0", ua * 3.6 / 333.6},
		{"hours", boxOf + "out_c=30 in_c=2 ice_kg=10", 3336 / 3.6 / ua / 28},
		{"hours", boxOf + "out_c=30 in_c=2 ice_kg=10 ice_c=-18 water_kg=4 water_c=10 end_c=5 liner_c=5",
			(10*(333.6+4.19*5+2.1*18) - 4*4.19*5) / 3.6 / ua / 28},
		{"growth", "growth_per_k=0.05 te_c=-20 from_c=-10", math.Exp(-0.5)},
		{"cop", "eta=0.3 te_c=-10 tc_c=45", 0.3 * 263.15 / 55},
		{"food_c", boxOf + "film_w_per_m2k=9 ice=block ice_kg=9.2 out_c=18 in_c=4", 18 * ua / (ua + 9*6*math.Pow(0.01, 2.0/3))},
		{"foam_added", "foam_mm=40 added_mm=30", (0.04/0.024 + 2/8.3) / (0.04/0.024 + 0.03/0.036 + 2/8.3)},
		{"ah", boxOf + "out_c=24 in_c=4 eta=0.33 rated_w=60 rise_k=15 volts=12.5", whPerDayOf(ua, 24) / 12.5},
		{"wh_of_ramp", boxOf + "base_c=24 peak_c=24 ramp_h=8 in_c=4 eta=0.33 rated_w=60 rise_k=15", whPerDayOf(ua, 24)},
	} {
		p, err := point([]string{"f", "l", row.kind, "1", row.inputs, "s"})
		if err != nil {
			t.Fatalf("%s: %v", row.kind, err)
		}
		if math.Abs(p.Predicted.Typical/row.want-1) > 1e-4 {
			t.Errorf("%s of %s: %.6g, want %.6g", row.kind, row.inputs, p.Predicted.Typical, row.want)
		}
	}
	ramp, err := point([]string{"f", "l", "wh_of_ramp", "1", boxOf + "base_c=14 peak_c=34 ramp_h=11 in_c=4 eta=0.33 rated_w=60 rise_k=15", "s"})
	if err != nil {
		t.Fatal(err)
	}
	// Mean air 24.83 °C; heat and lift grow together, so that the mean of the days lies above the day of the mean.
	if mean := whPerDayOf(ua, 14+20*13.0/24); ramp.Predicted.Typical < mean*1.01 || ramp.Predicted.Typical > mean*1.15 {
		t.Errorf("a ramp takes %.1f Wh, its mean air %.1f", ramp.Predicted.Typical, mean)
	}
}

func whPerDayOf(ua, out float64) float64 {
	unit := energy.Unit{RatedW: 60, Eta: 0.33, CooledBy: energy.LockerFan}
	return float64(unit.Cycle().Duty(energy.Gain{Leak: quantity.WattPerKelvin(ua), Out: quantity.Celsius(out)}, 4, quantity.Celsius(out)).DayWh())
}

// The ledgers' own ranges come in where a point tells none: a drawing of known
// foam spreads by 1.2816 · 0.25 in logarithms, and two factors by √2 of one.
func TestSpread(t *testing.T) {
	p, err := point([]string{"f", "l", "u", "1", "volume_l=100 foam_mm=50", "s"})
	if err != nil {
		t.Fatal(err)
	}
	if got := math.Log(p.Predicted.High / p.Predicted.Typical); math.Abs(got-1.28155*0.25) > 1e-4 {
		t.Errorf("a drawing spreads by %g", got)
	}
	x, err := parseInputs("a=1/2/4 b=1/2/4")
	if err != nil {
		t.Fatal(err)
	}
	r := x.spread(func(x *inputs) float64 { return x.need("a") / x.need("b") })
	if want := math.Exp(math.Sqrt2 * math.Ln2); math.Abs(r.High-want) > 1e-9 || math.Abs(r.Low*want-1) > 1e-9 || r.Typical != 1 {
		t.Errorf("two factors of 2: %v", r)
	}
	if eta, chest := assumedEta(t, "built_in"), assumedEta(t, "chest"); eta != energy.Eta().Range || chest != energy.ChestEta().Range {
		t.Errorf("eta %v, of a chest %v", eta, chest)
	}
	if heat.ChestFoam().Range != (quantity.Range{Low: 0.018, Typical: 0.025, High: 0.035}) {
		t.Error("the points of chests tell another foam than the ledger")
	}
}

func assumedEta(t *testing.T, unit string) quantity.Range {
	t.Helper()
	x, err := parseInputs("unit=" + unit)
	if err != nil {
		t.Fatal(err)
	}
	if err := assumeEta(x); err != nil {
		t.Fatal(err)
	}
	return x.ranges["eta"]
}

func TestBadRows(t *testing.T) {
	for row, want := range map[string]string{
		"a|b|melt|1|volume_l=9":                                          "columns",
		"a|b|speed|1|x=1|s":                                              `kind "speed" is not known`,
		"a|b|cop|none|te_c=1|s":                                          "want a figure over 0",
		"a|b|cop|-1|te_c=1|s":                                            "want a figure over 0",
		"a|b|cop|1|te_c=1 te_c=2|s":                                      "each name once",
		"a|b|cop|1|te_c=3/2/1 tc_c=40|s":                                 "in that order",
		"a|b|cop|1|te_c=1/x/3 tc_c=40|s":                                 "low/typical/high",
		"a|b|cop|1|te_c=-10|s":                                           "tc_c",
		"a|b|cop|1|te_c=-10 tc_c=40 colour=red|s":                        "nothing asks for colour",
		"a|b|u|1|volume_l=90 foam_mm=30 foam=straw|s":                    "straw",
		"a|b|u|1|volume_l=90 foam_mm=30|s\na|b|cop|1|tc_c=40|s":          "row 2",
		"a|b|u|1|volume_l=9 foam_mm=3|s\na|b|u|1|volume_l=9 foam_mm=3|s": "twice",
	} {
		if _, err := read(row); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", row, err, want)
		}
	}
}
