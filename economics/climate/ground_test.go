package climate

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

func TestEmbeddedTables(t *testing.T) {
	grounds, err := embedded()
	if err != nil {
		t.Fatal(err)
	}
	if len(grounds) != 77 {
		t.Errorf("got %d grounds, want 77", len(grounds))
	}
	read, humid := 0, 0
	for _, g := range grounds {
		checkGround(t, g)
		for _, m := range g.Months {
			for _, origin := range []string{m.Provenance.Air, m.Provenance.AirRange, m.Provenance.AirRange, m.Provenance.Sea, m.Provenance.Sun} {
				if strings.HasPrefix(origin, readPrefix) {
					read++
				}
			}
			if m.HumidityRead {
				humid++
			}
		}
	}
	if read != 2940 {
		t.Errorf("got %d cells read, want the 2940 that data/SOURCES.md states", read)
	}
	if humid != 73*12 {
		t.Errorf("got %d months with humidity read, want %d", humid, 73*12)
	}
}

// checkGround holds for every ground, embedded, estimated or changed.
func checkGround(t *testing.T, g Ground) {
	t.Helper()
	for i, m := range g.Months {
		month := i + 1
		if !(m.AirMin <= m.AirMean && m.AirMean <= m.AirMax) {
			t.Errorf("%s month %d: air %g <= %g <= %g does not hold", g.ID, month, m.AirMin, m.AirMean, m.AirMax)
		}
		if k := g.Clearness(month); !(k >= 0.2-1e-9 && k <= 0.75+1e-9) {
			t.Errorf("%s month %d: clearness %g", g.ID, month, k)
		}
		if !(m.HumidityRatio > 0 && relativeHumidity(m.AirMean, m.HumidityRatio) <= 1+1e-9) {
			t.Errorf("%s month %d: humidity ratio %g at %g °C", g.ID, month, m.HumidityRatio, m.AirMean)
		}
		if m.Provenance.Air == "" || m.Provenance.AirRange == "" || m.Provenance.Sea == "" || m.Provenance.Sun == "" {
			t.Errorf("%s month %d: provenance %+v", g.ID, month, m.Provenance)
		}
	}
}

func TestGroundsIsACopy(t *testing.T) {
	first := Grounds()
	first[0].Name, first[0].Months[0].AirMean = "changed", 99
	if second := Grounds(); second[0].Name == "changed" || second[0].Months[0].AirMean == 99 {
		t.Error("a caller's change reached the tables")
	}
}

func TestFind(t *testing.T) {
	g, err := Find("florida-keys")
	if err != nil || g.Name != "Florida Keys, USA" || g.LatDeg != 24.6 {
		t.Errorf("got %+v, %v", g.Name, err)
	}
	for _, row := range []struct{ id, hint string }{
		{"chesapeke-bay", "did you mean chesapeake-bay?"},
		{"Virgin Islands", "did you mean virgin-islands?"},
		{"florida", "did you mean florida-east-coast or florida-keys or florida-west-coast?"},
		{"xyzzy", "one of the 77 names in the list of grounds"},
		{"", "one of the 77 names in the list of grounds"},
	} {
		_, err := Find(row.id)
		if err == nil || !strings.Contains(err.Error(), row.hint) || !strings.Contains(err.Error(), fmt.Sprintf("%q", row.id)) {
			t.Errorf("Find(%q): got %v, want %s", row.id, err, row.hint)
		}
	}
}

func TestEditDistance(t *testing.T) {
	for _, row := range []struct {
		Source, a, b string
		want         int
	}{
		{"the usual textbook example (Levenshtein 1966)", "kitten", "sitting", 3},
		{"by hand", "", "abc", 3},
		{"by hand", "abc", "", 3},
		{"by hand", "flaw", "lawn", 2},
		{"by hand", "é", "e", 1},
	} {
		if got := editDistance(row.a, row.b); got != row.want {
			t.Errorf("%q to %q: got %d, want %d", row.a, row.b, got, row.want)
		}
	}
}

func TestExplain(t *testing.T) {
	for _, row := range []struct{ provenance, want string }{
		{"read: TMY3-722015+TMY3-722010+TMY2-722010", "read in US typical weather years, 1973 to 2005; US typical weather years, 1961 to 1990"},
		{"read: COADS-cell(25;-81)", "read in ship reports, 2-degree squares, before 1990"},
		{"memory", "memory"},
		{"told", "told"},
	} {
		if got := Explain(row.provenance); got != row.want {
			t.Errorf("Explain(%q) = %q, want %q", row.provenance, got, row.want)
		}
	}
}

// Guards the line of WithAirMean that shifts the three temperatures, and the
// one that keeps relative humidity.
func TestWithAirMean(t *testing.T) {
	before, err := Find("chesapeake-bay")
	if err != nil {
		t.Fatal(err)
	}
	after := before.WithAirMean(7, 30)
	checkGround(t, after)
	was, is := before.Months[6], after.Months[6]
	near(t, "mean", float64(is.AirMean), 30, 1e-12)
	near(t, "span above", float64(is.AirMax-is.AirMean), float64(was.AirMax-was.AirMean), 1e-9)
	near(t, "span below", float64(is.AirMean-is.AirMin), float64(was.AirMean-was.AirMin), 1e-9)
	near(t, "relative humidity", relativeHumidity(is.AirMean, is.HumidityRatio), relativeHumidity(was.AirMean, was.HumidityRatio), 1e-9)
	if is.Provenance.Air != "told" || is.Provenance.AirRange != "told" || is.Provenance.Sun != was.Provenance.Sun {
		t.Errorf("provenance %+v", is.Provenance)
	}
	after.Months[6] = was
	if !reflect.DeepEqual(after, before) {
		t.Error("another month changed")
	}
}

func TestEstimated(t *testing.T) {
	var low, high [12]quantity.Celsius
	for i := range low {
		low[i], high[i] = 16, 26
	}
	g, err := Estimated("our river", 40, low, high)
	if err != nil {
		t.Fatal(err)
	}
	checkGround(t, g)
	// 0.19 √10 of the sun above the atmosphere: FAO-56 eq. 50.
	for month := 1; month <= 12; month++ {
		near(t, "clearness", g.Clearness(month), 0.6008, 1e-4)
		near(t, "sea under steady air", float64(g.Months[month-1].Sea), 21, 1e-9)
	}
	if g.Months[0].HumidityRead || g.Months[0].Provenance.Sea == "memory" {
		t.Errorf("month %+v", g.Months[0])
	}
	for _, row := range []struct {
		what        string
		lat         float64
		low, high   quantity.Celsius
		expected    string
		acceptsThis bool
	}{
		{"too far north", 66.5, 16, 26, "latitude", false},
		{"no latitude", math.NaN(), 16, 26, "latitude", false},
		{"turned round", 40, 26, 16, "month 1", false},
		{"no temperature", 40, quantity.Celsius(math.NaN()), 26, "month 1", false},
		{"too hot", 40, 16, 77, "month 1", false},
		{"no range at all", 40, 20, 20, "", true},
		{"desert range", 40, 10, 40, "", true},
		{"frozen", 66, -38, -30, "", true},
		{"southern edge", -66, -5, 5, "", true},
	} {
		for i := range low {
			low[i], high[i] = row.low, row.high
		}
		g, err := Estimated(row.what, row.lat, low, high)
		if row.acceptsThis {
			if err != nil {
				t.Errorf("%s: %v", row.what, err)
			}
			checkGround(t, g)
			continue
		}
		if err == nil || !strings.Contains(err.Error(), row.expected) {
			t.Errorf("%s: got %v, want an error naming %s", row.what, err, row.expected)
		}
	}
}

// The estimate against the stations of the embedded tables: those read there
// are the outside. Guards the choice of formula (island := ...) and the lag of
// the sea (laggedSea): without it the error is 2.5 K.
func TestEstimatedAgainstStations(t *testing.T) {
	var sun, island, islandByCoast, sea deviation
	for _, g := range Grounds() {
		var low, high [12]quantity.Celsius
		for i, m := range g.Months {
			low[i], high[i] = m.AirMin, m.AirMax
		}
		estimate, err := Estimated(g.Name, g.LatDeg, low, high)
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range g.Months {
			e := estimate.Months[i]
			if strings.HasPrefix(m.Provenance.Sea, readPrefix) {
				sea.add(float64(e.Sea - m.Sea))
			}
			if !strings.HasPrefix(m.Provenance.Sun, readPrefix) || strings.Contains(m.Provenance.Sun, "EK81") {
				continue
			}
			sun.add(float64(e.Sun/m.Sun) - 1)
			if e.Provenance.Sun == sunOfIsland {
				island.add(float64(e.Sun/m.Sun) - 1)
				coast := hargreavesMJ(hargreavesCoast, monthlyExtraterrestrialMJ(g.LatDeg, i+1), float64(m.AirMax-m.AirMin))
				islandByCoast.add(coast/mjPerKWh/float64(m.Sun) - 1)
			}
		}
	}
	t.Logf("sun %v; islands %v, by the coast formula %v; sea %v K", sun, island, islandByCoast, sea)
	if sun.rms() > 0.16 {
		t.Errorf("sun misses by %v, want at most 0.16", sun)
	}
	if island.n < 60 || island.rms() > 0.7*islandByCoast.rms() {
		t.Errorf("island formula misses by %v, coast formula by %v: not worth its lines", island, islandByCoast)
	}
	if sea.rms() > 2.2 {
		t.Errorf("sea misses by %v K, want at most 2.2", sea)
	}
}

// deviation gathers differences.
type deviation struct{ n, sum, squares float64 }

func (d *deviation) add(x float64) { d.n++; d.sum += x; d.squares += x * x }

func (d deviation) rms() float64 { return math.Sqrt(d.squares / d.n) }

func (d deviation) String() string {
	return fmt.Sprintf("bias %+.3f rms %.3f (%g)", d.sum/d.n, d.rms(), d.n)
}
