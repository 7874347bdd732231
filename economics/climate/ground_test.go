package climate

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

func TestEmbeddedTables(t *testing.T) {
	grounds, err := embedded()
	if err != nil {
		t.Fatal(err)
	}
	if rows := linesOf(t, "data/grounds.csv") - 1; len(grounds) != rows {
		t.Errorf("got %d grounds, want the %d of data/grounds.csv", len(grounds), rows)
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
	sources, err := os.ReadFile("data/SOURCES.md")
	if err != nil {
		t.Fatal(err)
	}
	stated := regexp.MustCompile(`Of ([\d,]+) cells ([\d,]+) were read`).FindStringSubmatch(string(sources))
	if stated == nil {
		t.Fatal("data/SOURCES.md does not state how many cells were read")
	}
	number := func(text string) int {
		n, err := strconv.Atoi(strings.ReplaceAll(text, ",", ""))
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	if read != number(stated[2]) || 60*len(grounds) != number(stated[1]) {
		t.Errorf("got %d of %d cells read, data/SOURCES.md states %s of %s", read, 60*len(grounds), stated[2], stated[1])
	}
	if rows := linesOf(t, "data/marine.csv") - 1; humid != rows {
		t.Errorf("got %d months with humidity read, want the %d of data/marine.csv", humid, rows)
	}
}

// linesOf counts the lines of a table.
func linesOf(t *testing.T, name string) int {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Count(strings.TrimSpace(string(text)), "\n") + 1
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

func TestPlacesAreTheGrounds(t *testing.T) {
	places := Places()
	for i, g := range Grounds() {
		if i >= len(places) || places[i] != (Place{g.ID, g.Name}) {
			t.Fatalf("ground %d, %q, is not among %d places at its place", i, g.ID, len(places))
		}
	}
	if len(places) != len(Grounds()) {
		t.Errorf("%d places, %d grounds", len(places), len(Grounds()))
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
		{"xyzzy", fmt.Sprintf("the %d names in the list of grounds", len(Grounds()))},
		{"", fmt.Sprintf("the %d names in the list of grounds", len(Grounds()))},
		{"coast", " or "},
	} {
		_, err := Find(row.id)
		if err == nil || !strings.Contains(err.Error(), row.hint) || !strings.Contains(err.Error(), fmt.Sprintf("%q", row.id)) {
			t.Errorf("Find(%q): got %v, want %s", row.id, err, row.hint)
		} else if strings.Count(err.Error(), " or ") > 2 {
			t.Errorf("Find(%q): %v; want three at most", row.id, err)
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

// deviation gathers differences.
type deviation struct{ n, sum, squares float64 }

func (d *deviation) add(x float64) { d.n++; d.sum += x; d.squares += x * x }

func (d deviation) rms() float64 { return math.Sqrt(d.squares / d.n) }

func (d deviation) bias() float64 { return d.sum / d.n }

func (d deviation) String() string {
	return fmt.Sprintf("bias %+.3f rms %.3f (%g)", d.sum/d.n, d.rms(), d.n)
}
