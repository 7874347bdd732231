package boxtest

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
)

var (
	papers  = []sheet.Paper{sheet.A4, sheet.Letter}
	systems = []quantity.System{quantity.Metric, quantity.US}
)

func everyPage(t *testing.T, check func(t *testing.T, p sheet.Paper, sys quantity.System)) {
	for _, p := range papers {
		for _, sys := range systems {
			t.Run(string(p)+" "+string(sys), func(t *testing.T) { check(t, p, sys) })
		}
	}
}

func record(t *testing.T, p sheet.Paper, sys quantity.System) *sheet.Recording {
	t.Helper()
	r, err := sheet.NewRecording(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := Document(sys, "coldreckon, version 0.0").Draw(r); err != nil {
		t.Fatal(err)
	}
	return r
}

func TestOnePageWithNothingOverAnything(t *testing.T) {
	everyPage(t, func(t *testing.T, p sheet.Paper, sys quantity.System) {
		r := record(t, p, sys)
		if r.Page() != 1 {
			t.Errorf("%d pages, want 1", r.Page())
		}
		w, h := r.Paper()
		for _, o := range r.Outside(sheet.Rect{W: w, H: h}.Inset(21.9, 20, 21.9, 11)) {
			t.Errorf("outside the margins: %v", o)
		}
		for _, pair := range r.Collisions() {
			t.Errorf("collision: %v\n%v", pair[0], pair[1])
		}
		// Text must also stay clear of the boxes for the pencil, but for the
		// unit at a box's right edge.
		for _, box := range r.Ops {
			if box.Kind != sheet.AreaOp {
				continue
			}
			room := sheet.Rect{X: box.Box.X, Y: box.Box.Y, W: box.Box.W - 15, H: box.Box.H}
			for _, o := range r.Ops {
				if o.Kind == sheet.TextOp && o.Box.Overlaps(room) {
					t.Errorf("%v stands in the box %v", o, box.Box)
				}
			}
		}
	})
}

func TestFileIsValidAndAlwaysTheSame(t *testing.T) {
	everyPage(t, func(t *testing.T, p sheet.Paper, sys quantity.System) {
		build := func() []byte {
			b, err := Document(sys, "coldreckon").PDF(sheet.Info{Author: "coldreckon", Lang: "en-GB", Date: time.Unix(1767225600, 0), Paper: p})
			if err != nil {
				t.Fatal(err)
			}
			return b
		}
		first := build()
		if !bytes.Equal(first, build()) {
			t.Error("two files of the same page differ")
		}
		if err := api.Validate(bytes.NewReader(first), model.NewDefaultConfiguration()); err != nil {
			t.Error(err)
		}
		if len(first) > 100_000 {
			t.Errorf("%d bytes, want under 100 kB", len(first))
		}
	})
}

// page gives the page's text, an operation a line.
func page(t *testing.T, sys quantity.System) string {
	var b strings.Builder
	for _, o := range record(t, sheet.A4, sys).Ops {
		if o.Kind == sheet.TextOp {
			b.WriteString(o.Text + "\n")
		}
	}
	return b.String()
}

// read finds the numbers in the page's text by an expression with groups; an
// empty group is a factor of 1.
func read(t *testing.T, text, expression string) []float64 {
	t.Helper()
	m := regexp.MustCompile(expression).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("%s does not stand on the page:\n%s", expression, text)
	}
	var out []float64
	for _, s := range m[1:] {
		x := 1.0
		if s != "" {
			var err error
			if x, err = strconv.ParseFloat(s, 64); err != nil {
				t.Fatal(err)
			}
		}
		out = append(out, x)
	}
	return out
}

// Guards every factor of factorsOf and both formulas of the page.
func TestFactorsOnThePage(t *testing.T) {
	cases := []struct {
		sys        quantity.System
		expression string
		want       []float64
		within     float64
		source     string
	}{
		{quantity.Metric, `([\d.]+) × C \+ ([\d.]+) × E × F`, []float64{92.7, 1.163}, 0.005, "FAO Fisheries Technical Paper 436 (2003), ch. 7: UA = 92.7 K; the kilocalorie, 1.163 Wh"},
		{quantity.US, `([\d.]+) × C \+ ()E × \(F − 32\)`, []float64{144, 1}, 0.008, "the ton of refrigeration, 2,000 lb of ice at 144 Btu/lb in 24 h; the Btu, a pound of water by 1 °F"},
		{quantity.Metric, `([\d.]+) × A \+ ([\d.]+) × B`, []float64{1.163, heat.BareKJPerKPerL / 3.6}, 0.005, "the kilocalorie; the heat ledger's empty box"},
		{quantity.US, `()A \+ ([\d.]+) × B`, []float64{1, heat.BareKJPerKPerL * 28.3168 / 1.89910}, 0.005, "the Btu; 1 Btu/°F = 1.89910 kJ/K (NIST SP 811)"},
	}
	for _, c := range cases {
		got := read(t, page(t, c.sys), c.expression)
		for i := range c.want {
			if math.Abs(got[i]/c.want[i]-1) > c.within {
				t.Errorf("%s: figure %d is %g, want %g within %g (%s)", c.expression, i+1, got[i], c.want[i], c.within, c.source)
			}
		}
	}
}

// A worked example goes through the pencil's formula, with the figures read
// from the page, and through the heat ledger. Readings invented.
func TestPencilAgreesWithTheLedger(t *testing.T) {
	const lb, cuFt, wPerKPerBtuhF = 0.45359237, 28.316846592, 0.52752792631
	ice := []iceReadings{
		{Before: 12, After: 4.2, Hours: 24, Water: 7.5, WaterTemp: 3, Outside: 24.5, Inside: 3.5},
		{Before: 9, After: 5.5, Hours: 20, Water: 0, WaterTemp: 0, Outside: 31, Inside: 5},
		{Before: 20, After: 2, Hours: 30, Water: 18, WaterTemp: 9, Outside: 19, Inside: 6},
	}
	jugs := []jugReadings{
		{Water: 10, Box: 100, Start: 4, End: 13, Hours: 8, Outside: 24, BoxAir: 12},
		{Water: 6, Box: 240, Start: 5, End: 12, Hours: 5, Outside: 29, BoxAir: 14},
		{Water: 30, Box: 40, Start: 2, End: 6, Hours: 18, Outside: 22, BoxAir: 8},
	}
	const within = 0.006
	metric, us := page(t, quantity.Metric), page(t, quantity.US)
	iceMetric, iceUS := read(t, metric, `([\d.]+) × C \+ ([\d.]+) × E × F`), read(t, us, `([\d.]+) × C \+ ()E × \(F − 32\)`)
	jugMetric, jugUS := read(t, metric, `([\d.]+) × A \+ ([\d.]+) × B`), read(t, us, `()A \+ ([\d.]+) × B`)
	near := func(name string, pencil float64, want heat.Estimate, err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(pencil/float64(want.UA)-1) > within {
			t.Errorf("%s: pencil %.4g W/K, ledger %.4g W/K", name, pencil, float64(want.UA))
		}
	}
	for _, r := range ice {
		want, err := iceTest(r).Estimate()
		f := iceMetric
		near("ice, metric", (f[0]*(r.Before-r.After)+f[1]*r.Water*r.WaterTemp)/(r.Hours*(r.Outside-r.Inside)), want, err)
		// The same box read with American instruments.
		f = iceUS
		a, b, e := r.Before/lb, r.After/lb, r.Water/lb
		ft, out, in := r.WaterTemp*1.8+32, r.Outside*1.8+32, r.Inside*1.8+32
		near("ice, us", wPerKPerBtuhF*(f[0]*(a-b)+f[1]*e*(ft-32))/(r.Hours*(out-in)), want, err)
		_, printed := iceLeak(quantity.US, iceReadings{Before: a, After: b, Hours: r.Hours, Water: e, WaterTemp: ft, Outside: out, Inside: in})
		near("ice, us, as the example is worked", printed*wPerKPerBtuhF, want, err)
		_, printed = iceLeak(quantity.Metric, r)
		near("ice, metric, as the example is worked", printed, want, err)
	}
	for _, r := range jugs {
		want, err := jugTest(r).Estimate(heat.BareKJPerK(quantity.Litre(r.Box)))
		f := jugMetric
		near("jug, metric", (f[0]*r.Water+f[1]*r.Box)*(r.End-r.Start)/(r.Hours*(r.Outside-r.BoxAir)), want, err)
		f = jugUS
		near("jug, us", wPerKPerBtuhF*(f[0]*r.Water/lb+f[1]*r.Box/cuFt)*1.8*(r.End-r.Start)/(r.Hours*1.8*(r.Outside-r.BoxAir)), want, err)
		_, printed := jugLeak(quantity.US, jugReadings{Water: r.Water / lb, Box: r.Box / cuFt, Start: r.Start*1.8 + 32, End: r.End*1.8 + 32,
			Hours: r.Hours, Outside: r.Outside*1.8 + 32, BoxAir: r.BoxAir*1.8 + 32})
		near("jug, us, as the example is worked", printed*wPerKPerBtuhF, want, err)
		_, printed = jugLeak(quantity.Metric, r)
		near("jug, metric, as the example is worked", printed, want, err)
	}
}

// Both examples of a system are one box: the leaks they come to must agree,
// and the ledger must accept the readings.
func TestExamplesAreOneBox(t *testing.T) {
	for _, sys := range systems {
		_, ice := iceLeak(sys, iceExample[sys])
		_, jug := jugLeak(sys, jugExample[sys])
		if math.Abs(ice/jug-1) > 0.02 {
			t.Errorf("%s: the ice test comes to %g, the jug test to %g", sys, ice, jug)
		}
	}
	if ice, jug := trust(); ice < 5 || jug < ice || jug > 30 {
		t.Errorf("tests right within %d and %d in 100, want the ice test the better and both useful", ice, jug)
	}
}

// Each blank of the lines for the answers file carries the letter of the
// reading that belongs there: the worked example, put in by these letters,
// gives the leak that the form works out.
func TestBlanksAreLettered(t *testing.T) {
	for _, sys := range systems {
		var lists [2]map[string]string // blank to letter: the ice test's, the jugs'
		list := -1
		for _, o := range record(t, sheet.A4, sys).Ops {
			if o.Kind != sheet.TextOp || !strings.Contains(o.Text, ": ") {
				continue
			}
			if strings.HasPrefix(o.Text, "- {") {
				list++
				lists[list] = map[string]string{}
			}
			for _, m := range regexp.MustCompile(`(\w+): _(\w+)_`).FindAllStringSubmatch(o.Text, -1) {
				lists[list][m[1]] = m[2]
			}
		}
		i, j, zero := iceExample[sys], jugExample[sys], 0.0
		if sys == quantity.US {
			zero = 32
		}
		line := map[string]float64{"A": i.Before, "B": i.After, "C": i.Before - i.After, "D": i.Hours, "E": i.Water, "F": i.WaterTemp}
		of := func(blank string) float64 { return line[lists[0][blank]] }
		f := factorsOf(sys)
		got := (f.Ice*of("melted") + f.Water*of("water")*(of("water_end")-zero)) / (of("hours") * (i.Outside - i.Inside))
		if _, want := iceLeak(sys, i); math.Abs(got/want-1) > 1e-9 || of("ice") != i.Before {
			t.Errorf("%s: the ice test's blanks %v come to %g, want %g", sys, lists[0], got, want)
		}
		line = map[string]float64{"A": j.Water, "B": j.Box, "D": j.Start, "E": j.End, "F": j.End - j.Start, "G": j.Hours}
		of = func(blank string) float64 { return line[lists[1][blank]] }
		got = (f.Water*of("water") + f.Liner*j.Box) * (of("end") - of("start")) / (of("hours") * (j.Outside - j.BoxAir))
		if _, want := jugLeak(sys, j); math.Abs(got/want-1) > 1e-9 {
			t.Errorf("%s: the jug test's blanks %v come to %g, want %g", sys, lists[1], got, want)
		}
		for k, blanks := range [][]string{{"outside", "inside"}, {"outside", "box_air"}} {
			for _, blank := range blanks {
				if lists[k][blank] != "mean" {
					t.Errorf("%s: %s is %q, want mean", sys, blank, lists[k][blank])
				}
			}
		}
	}
}
