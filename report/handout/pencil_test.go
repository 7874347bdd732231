package handout

import (
	"math"
	"strings"
	"testing"
	"time"

	"coldreckon/economics"
	"coldreckon/economics/climate"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
	"coldreckon/rules"
)

func pack(t *testing.T) rules.Pack {
	t.Helper()
	p, err := rules.Load()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func sheets(t *testing.T, ground string, sys quantity.System) *Handout {
	t.Helper()
	g, err := climate.Find(ground)
	if err != nil {
		t.Fatal(err)
	}
	h, err := New(g, sys, pack(t))
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func file(t *testing.T, h *Handout, paper sheet.Paper) []byte {
	t.Helper()
	b, err := h.Document("coldreckon").PDF(sheet.Info{Author: "coldreckon", Lang: "en-GB", Date: time.Unix(1767225600, 0), Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// reader is a person with the two sheets: all figures come from the PDF.
type reader struct {
	sys    quantity.System
	foam   map[string][]float64 // table A, by material; dry, damp, wet, soaked
	leak   grid                 // B
	months map[string][]float64 // C: air, degrees, sun, Ah
	heats  []float64            // D
	ice    []float64
	ah     [3][]float64
	most   []float64
	money  grid // E
}

func read(t *testing.T, pdf []byte, sys quantity.System) reader {
	t.Helper()
	items := textOf(t, pdf)
	r := reader{sys: sys, foam: map[string][]float64{}, months: map[string][]float64{}}
	figures := func(cells []string) []float64 {
		var out []float64
		for _, s := range cells {
			out = append(out, number(t, s))
		}
		return out
	}
	for _, row := range readTable(t, items, "A") {
		if len(row) == 5 && row[0] != "Share of its thickness" {
			r.foam[row[0]] = figures(row[1:])
		}
	}
	r.leak = readGrid(t, readTable(t, items, "B"), map[quantity.System]string{quantity.Metric: "L", quantity.US: "cu ft"}[sys])
	for _, row := range readTable(t, items, "C") {
		if len(row) == 5 && len(row[0]) == 3 {
			r.months[row[0]] = figures(row[1:])
		}
	}
	for _, row := range readTable(t, items, "D") {
		switch {
		case row[0] == "most":
			r.most = figures(row[1:])
		case len(row) == 8 && !strings.HasPrefix(row[0], "Heat"):
			f := figures(row)
			r.heats, r.ice = append(r.heats, f[0]), append(r.ice, f[1])
			for i := range r.ah {
				r.ah[i] = append(r.ah[i], f[3+2*i])
			}
		}
	}
	r.money = readGrid(t, readTable(t, items, "E"), "years")
	if len(r.foam) != 5 || len(r.months) != 12 || len(r.heats) != 10 || len(r.most) != 3 {
		t.Fatalf("read %d materials, %d months, %d heats, %d most", len(r.foam), len(r.months), len(r.heats), len(r.most))
	}
	return r
}

// leakBetween reads the leak table between its columns and rows.
func (r reader) leakBetween(t *testing.T, volume, foam float64) float64 {
	var at, column []float64
	for i, v := range r.leak.down {
		at, column = append(at, number(t, v)), append(column, interpolate(foam, r.leak.across, r.leak.cells[i]))
	}
	return interpolate(volume, at, column)
}

// tripsOf counts a year's trips, and the stops to shop after the first of each,
// as their owner would: every stretch of months aboard in trips of the usual
// length, the last one shorter.
func tripsOf(b economics.Boat) (trips, later float64) {
	first := 0
	for m := range 12 {
		if b.Cruising.Nights[m] > 0 && b.Cruising.Nights[(m+11)%12] == 0 {
			first = m
		}
	}
	stretch := 0.0
	for i := range 13 {
		if n := b.Cruising.Nights[(first+i)%12]; i < 12 && n > 0 {
			stretch += n
			continue
		}
		for ; stretch > 0; stretch -= b.Cruising.TripNights {
			trips++
			later += math.Ceil(math.Min(stretch, b.Cruising.TripNights)/b.Cruising.ShopEveryDays-1e-9) - 1
		}
		stretch = 0
	}
	return trips, later
}
