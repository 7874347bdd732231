package chart

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldreckon/report/sheet"
)

// drawn records a chart in a rectangle of its own page.
func drawn(t *testing.T, c drawing, r sheet.Rect) (*sheet.Recording, error) {
	t.Helper()
	rec, err := sheet.NewRecording(sheet.A4)
	if err != nil {
		t.Fatal(err)
	}
	rec.AddPage()
	return rec, c.Draw(rec, r)
}

func mustDraw(t *testing.T, c drawing, r sheet.Rect) *sheet.Recording {
	t.Helper()
	rec, err := drawn(t, c, r)
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// faults tells what is wrong with a drawing: anything outside its rectangle,
// text over text.
func faults(rec *sheet.Recording, r sheet.Rect) []string {
	var out []string
	// Pens and markers are wider than their paths; a millimetre is theirs.
	loose := r.Inset(-1.3, -1.3, -1.3, -1.3)
	for _, o := range rec.Outside(loose) {
		out = append(out, fmt.Sprintf("outside %v: %v", r, o))
	}
	for _, o := range rec.Outside(r) {
		if o.Kind == sheet.TextOp {
			out = append(out, fmt.Sprintf("text outside %v: %v", r, o))
		}
	}
	for _, p := range rec.Collisions() {
		out = append(out, fmt.Sprintf("text over text: %v\n\t%v", p[0], p[1]))
	}
	return out
}

func said(rec *sheet.Recording, text string) bool {
	var all []string
	for _, o := range rec.Ops {
		all = append(all, o.Text)
	}
	return strings.Contains(strings.Join(all, " "), text)
}

func TestDemoChartsKeepToTheirRectangle(t *testing.T) {
	for _, c := range demoCharts() {
		for _, w := range []float64{166, 171.9, 120} {
			r := sheet.Rect{X: 22, Y: 30, W: w, H: c.height + 12}
			rec := mustDraw(t, c.chart, r)
			for _, f := range faults(rec, r) {
				t.Errorf("%s, %.0f mm wide: %s", c.name, w, f)
			}
		}
	}
}

func TestDemoChartsGolden(t *testing.T) {
	for _, c := range demoCharts() {
		rec := mustDraw(t, c.chart, sheet.Rect{X: 22, Y: 30, W: 166, H: c.height})
		path := filepath.Join("testdata", strings.ReplaceAll(c.name, " ", "-")+".golden")
		got := rec.String()
		if *update {
			if err := os.MkdirAll("testdata", 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s: the drawing has changed; look at it, then run with -update", c.name)
		}
	}
}

func TestBarsStandInProportion(t *testing.T) {
	rec := mustDraw(t, Months{Head: Head{Name: "b", Finding: "f"}, Bars: []ByMonth{byMonth("x", 3, 10, 20, 40)}}, sheet.Rect{W: 150, H: 60})
	var heights []float64
	for _, o := range rec.Ops {
		if o.Kind == sheet.AreaOp {
			heights = append(heights, o.Box.H)
		}
	}
	if len(heights) != 3 || math.Abs(heights[1]/heights[0]-2) > 1e-6 || math.Abs(heights[2]/heights[0]-4) > 1e-6 {
		t.Errorf("bars of 10, 20 and 40 are %v high", heights)
	}
	rec = mustDraw(t, Stacked{Head: Head{Name: "s", Finding: "f"}, Parts: []string{"a", "b"},
		Rows: []StackedRow{{Label: "one", Values: []float64{30, 60}}, {Label: "two", Values: []float64{-15, 90}}}}, sheet.Rect{W: 150, H: 60})
	var widths []float64
	for _, o := range rec.Ops {
		if o.Kind == sheet.AreaOp && o.Box.H > 4 && o.Pen.Width > 0 {
			widths = append(widths, o.Box.W)
		}
	}
	if len(widths) != 4 || math.Abs(widths[1]/widths[0]-2) > 1e-6 || math.Abs(widths[3]/widths[2]-6) > 1e-6 {
		t.Errorf("parts of 30, 60, -15 and 90 are %v wide", widths)
	}
}

func TestHundredDrawsItsCounts(t *testing.T) {
	rec := mustDraw(t, Hundred{Head: Head{Name: "h", Finding: "f"}, Groups: []string{"a", "b", "c"},
		Rows: []HundredRow{{"one", []int{61, 0, 39}}, {"two", []int{0, 100, 0}}}}, sheet.Rect{W: 166, H: 50})
	shades := map[sheet.Grey]int{}
	lines := 0
	for _, o := range rec.Ops {
		switch {
		case o.Kind == sheet.AreaOp && o.Box.W < swatchH-0.1:
			shades[o.Fill.Grey]++
		case o.Kind == sheet.LineOp && o.Box.W < swatchH-0.1:
			lines++
		}
	}
	if shades[sheet.Dark] != 61 || shades[sheet.White] != 100+39 || lines != 2*39 {
		t.Errorf("%v shades and %d strokes; want 61 dark, 139 open of which 39 crossed", shades, lines)
	}
}

func TestEmptyChartsSaySo(t *testing.T) {
	head := Head{Name: "n", Finding: "No finding without data.", Empty: "No nights aboard, so nothing to draw."}
	for _, c := range []drawing{
		Months{Head: head}, Months{Head: head, Bars: []ByMonth{{"x", nil}}}, Stacked{Head: head}, Years{Head: head},
		Years{Head: head, Lines: []OverYears{{Label: "x"}}}, Strips{Head: head}, Strips{Head: head, Strips: []Strip{{Label: "x", Traces: []Trace{{}}}}},
		Hundred{Head: head}, Swing{Head: head},
	} {
		r := sheet.Rect{X: 10, Y: 10, W: 100, H: 40}
		rec := mustDraw(t, c, r)
		if !said(rec, head.Empty) || !said(rec, head.Finding) {
			t.Errorf("%T: an empty chart does not say so", c)
		}
		for _, f := range faults(rec, r) {
			t.Errorf("%T: %s", c, f)
		}
	}
}

func TestFaultyDataIsRefusedByName(t *testing.T) {
	head := Head{Name: "the seventh figure", Finding: "f"}
	nan, inf := math.NaN(), math.Inf(-1)
	for name, c := range map[string]drawing{
		"no finding":       Months{Head: Head{Name: "the seventh figure"}},
		"NaN month":        Months{Head: head, Bars: []ByMonth{byMonth("x", 1, nan)}},
		"thirteenth month": Months{Head: head, Lines: []ByMonth{byMonth("x", 13, 1)}},
		"too many bars":    Months{Head: head, Bars: make([]ByMonth, 4)},
		"huge month":       Months{Head: head, Bars: []ByMonth{byMonth("x", 1, 1e16)}},
		"NaN part":         Stacked{Head: head, Parts: []string{"a"}, Rows: []StackedRow{{"r", []float64{nan}, ""}}},
		"missing part":     Stacked{Head: head, Parts: []string{"a", "b"}, Rows: []StackedRow{{"r", []float64{1}, ""}}},
		"nine parts":       Stacked{Head: head, Parts: make([]string, 9)},
		"infinite year":    Years{Head: head, Lines: []OverYears{{Label: "x", Mid: []float64{1, inf}}}},
		"NaN range":        Years{Head: head, Lines: []OverYears{{Label: "x", Mid: []float64{1, 2}, Low: []float64{1, nan}, High: []float64{2, 3}}}},
		"short range":      Years{Head: head, Lines: []OverYears{{Label: "x", Mid: []float64{1, 2}, Low: []float64{1}, High: []float64{2, 3}}}},
		"unlike years":     Years{Head: head, Lines: []OverYears{{Label: "x", Mid: []float64{1, 2}}, {Label: "y", Mid: []float64{1}}}},
		"fifth style":      Years{Head: head, Lines: []OverYears{{Label: "x", Mid: []float64{1, 2}, Style: 5}}},
		"five lines":       Years{Head: head, Lines: make([]OverYears, 5)},
		"NaN hour":         Strips{Head: head, Strips: []Strip{{Label: "x", Traces: []Trace{{"", []float64{1, nan}}}}}},
		"NaN limit":        Strips{Head: head, Strips: []Strip{{Label: "x", Traces: []Trace{{"", []float64{1}}}, Limit: &Limit{Value: nan}}}},
		"unlike hours":     Strips{Head: head, Strips: []Strip{{Label: "x", Traces: []Trace{{"", []float64{1}}, {"", []float64{1, 2}}}}}},
		"no trace":         Strips{Head: head, Strips: []Strip{{Label: "x"}}},
		"99 of 100":        Hundred{Head: head, Groups: []string{"a"}, Rows: []HundredRow{{"", []int{99}}}},
		"negative count":   Hundred{Head: head, Groups: []string{"a", "b"}, Rows: []HundredRow{{"", []int{101, -1}}}},
		"missing count":    Hundred{Head: head, Groups: []string{"a", "b"}, Rows: []HundredRow{{"", []int{100}}}},
		"seven groups":     Hundred{Head: head, Groups: make([]string, 7)},
		"NaN swing":        Swing{Head: head, Rows: []SwingRow{{"x", nan, 1, "", ""}}},
		"NaN base":         Swing{Head: head, Base: nan},
		"no room":          Swing{Head: head, Rows: make([]SwingRow, 60)},
	} {
		if _, err := drawn(t, c, sheet.Rect{W: 160, H: 70}); err == nil || !strings.Contains(err.Error(), "the seventh figure") {
			t.Errorf("%s: error %v; want one that names the figure", name, err)
		}
	}
	for _, c := range demoCharts() {
		for _, r := range []sheet.Rect{{W: 166, H: 9}, {W: 30, H: 60}, {}} {
			rec, err := drawn(t, c.chart, r)
			if err == nil {
				if bad := faults(rec, r); len(bad) > 0 {
					t.Errorf("%s in %v: no error, but %s", c.name, r, bad[0])
				}
			} else if !strings.Contains(err.Error(), c.name) {
				t.Errorf("%s in %v: error %v does not name the figure", c.name, r, err)
			}
		}
	}
}

// Charts of random data, long names, huge and tiny values, in rectangles of
// all sizes: each either says why not, or keeps to its rectangle with no text
// over another.
func TestInventedCharts(t *testing.T) {
	const rounds = 1500
	refused := map[string]int{}
	for seed := range uint64(rounds) {
		rng := rand.New(rand.NewPCG(seed, 11))
		c := inventedChart(rng)
		r := sheet.Rect{X: 20, Y: 20, W: 90 + 82*rng.Float64(), H: 55 + 60*rng.Float64()}
		rec, err := drawn(t, c, r)
		if err != nil {
			refused[fmt.Sprintf("%T", c)]++
			continue
		}
		for _, f := range faults(rec, r) {
			t.Errorf("seed %d, %T: %s", seed, c, f)
		}
	}
	for kind, n := range refused {
		if n > rounds/7/4 {
			t.Errorf("%s: %d of about %d were refused", kind, n, rounds/7)
		}
	}
}

func inventedChart(rng *rand.Rand) drawing {
	words := strings.Fields("ice small larger unit no-fridge price of nights aboard leak box the errands Kühlgerät upkeep over a year")
	text := func(most int) string {
		var w []string
		for range 1 + rng.IntN(most) {
			w = append(w, words[rng.IntN(len(words))])
		}
		return strings.Join(w, " ")
	}
	size := math.Pow(10, float64(rng.IntN(12)-3))
	value := func() float64 { return size * rng.Float64() }
	either := func() float64 { return size * (2*rng.Float64() - 1) }
	head := Head{Name: "invented", Finding: text(14), Caption: text(10)}
	switch rng.IntN(6) {
	case 0:
		c := Months{Head: head}
		for range rng.IntN(3) {
			c.Bars = append(c.Bars, byMonth(text(3), 1+rng.IntN(4), value(), value(), value(), value()))
		}
		for range rng.IntN(3) {
			c.Lines = append(c.Lines, byMonth(text(3), 1+rng.IntN(4), value(), value(), value(), value()))
		}
		return c
	case 1:
		c := Stacked{Head: head}
		for range 1 + rng.IntN(8) {
			c.Parts = append(c.Parts, text(3))
		}
		for range 1 + rng.IntN(4) {
			row := StackedRow{Label: text(4)}
			for range c.Parts {
				row.Values = append(row.Values, either())
			}
			c.Rows = append(c.Rows, row)
		}
		return c
	case 2:
		c := Years{Head: head}
		years := 1 + rng.IntN(30)
		for range 1 + rng.IntN(4) {
			l := OverYears{Label: text(5)}
			banded := rng.IntN(2) == 0
			for range years {
				v := value()
				l.Mid = append(l.Mid, v)
				if banded {
					l.Low, l.High = append(l.Low, v*0.7), append(l.High, v*1.5)
				}
			}
			c.Lines = append(c.Lines, l)
		}
		return c
	case 3:
		c := Strips{Head: head}
		hours := 1 + rng.IntN(400)
		for range 1 + rng.IntN(3) {
			st := Strip{Label: text(8), Filled: rng.IntN(3) == 0, Zero: rng.IntN(2) == 0}
			for range 1 + rng.IntN(2) {
				tr := Trace{Label: text(2)}
				for range hours {
					tr.Values = append(tr.Values, value())
				}
				st.Traces = append(st.Traces, tr)
			}
			if rng.IntN(2) == 0 {
				st.Limit = &Limit{value(), text(2), rng.IntN(2) == 0}
			}
			c.Strips = append(c.Strips, st)
		}
		return c
	case 4:
		c := Hundred{Head: head}
		n := 1 + rng.IntN(6)
		for range n {
			c.Groups = append(c.Groups, text(4))
		}
		for range 1 + rng.IntN(3) {
			row := HundredRow{text(3), make([]int, n)}
			for range 100 {
				row.Counts[rng.IntN(n)]++
			}
			c.Rows = append(c.Rows, row)
		}
		return c
	default:
		c := Swing{Head: head, Base: either(), Left: text(6), Right: text(6)}
		for range 1 + rng.IntN(8) {
			c.Rows = append(c.Rows, SwingRow{text(4), either(), either(), text(1), text(2)})
		}
		return c
	}
}
