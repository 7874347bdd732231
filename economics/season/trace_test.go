package season_test

import (
	"bufio"
	"flag"
	"fmt"
	"math"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

var update = flag.Bool("update", false, "write testdata/trace48.tsv anew")

const traceFile = "testdata/trace48.tsv"

const traceHeader = `# Two July nights of a small boat on the Maine coast, hour by hour from noon:
# first with a 50 W unit (thin plate, fan, warm start), then with bought cubes.
# The same weather for both: 6, 5 and 4 kWh/m² from the first day on, air 0, 0
# and -1 K off the month's.
#
# Option   unit or ice
# Trip     number of the trip, from 0
# Hour     of the trip, from 0
# Clock    the hour from Clock to Clock + 1
# Month    0 for January
# CabinC   cabin air at half past, °C
# FoodC    food at the hour's end, °C
# GainW    heat into the box: leak, openings and goods, W
# CooledW  heat taken from it by plate or ice, W
# EvaporatorC, CapacityW, COP  how the unit would work in this hour: plate °C, heat W, heat per electricity
# SunW     from the panel, W
# UnitW    electricity of the unit, fan and standby, W
# ShoreW   from shore power, W
# ChargeWh of the battery over the unit's cut-off, at the hour's end, Wh
# IceKg    at the hour's end, kg
# WaterKg  meltwater kept aboard, likewise
# MeltedKg in the hour
# Counted  1 where the hour counts for the exams
`

// traced runs the boat of the trace.
func traced(t testing.TB) (unit, ice []season.Hour) {
	b := sloop().aboard(t)
	b.weather.SunKWh, b.weather.AirK = []float64{6, 5, 4}, []float64{0, 0, -1}
	b.fillAir()
	_, unit = b.runUnit(unitOf(energy.Fan, energy.Thin, season.StartWarm))
	_, ice = b.runIce(cubes())
	return unit, ice
}

// TestTrace48 keeps the figures of every hour.
//
// Guards every line that an hour passes through: any change of a formula, of
// an order or of a constant shows here first.
func TestTrace48(t *testing.T) {
	unit, ice := traced(t)
	var lines []string
	for _, h := range unit {
		lines = append(lines, "unit\t"+columns(h))
	}
	for _, h := range ice {
		lines = append(lines, "ice\t"+columns(h))
	}
	names := []string{"Option"}
	for _, f := range reflect.VisibleFields(reflect.TypeFor[season.Hour]()) {
		names = append(names, f.Name)
	}
	if *update {
		text := traceHeader + strings.Join(names, "\t") + "\n" + strings.Join(lines, "\n") + "\n"
		if err := os.WriteFile(traceFile, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept := keptTrace(t)
	if len(kept) != len(lines)+1 || kept[0] != strings.Join(names, "\t") {
		t.Fatalf("%s has %d lines and columns %q; want %d lines and %q", traceFile, len(kept), kept[0], len(lines)+1, names)
	}
	for i, line := range lines {
		want, got := strings.Split(kept[i+1], "\t"), strings.Split(line, "\t")
		for c := range got {
			w, errW := strconv.ParseFloat(want[c], 64)
			g, errG := strconv.ParseFloat(got[c], 64)
			if text := errW != nil || errG != nil; text && want[c] != got[c] || !text && math.Abs(g-w) > 2e-6*max(1, math.Abs(w)) {
				t.Errorf("%s hour %s: %s is %s, kept %s", got[0], got[2], names[c], got[c], want[c])
			}
		}
	}
}

func columns(h season.Hour) string {
	var out []string
	v := reflect.ValueOf(h)
	for i := range v.NumField() {
		switch f := v.Field(i); {
		case f.CanInt():
			out = append(out, strconv.FormatInt(f.Int(), 10))
		case f.Kind() == reflect.Bool && f.Bool():
			out = append(out, "1")
		case f.Kind() == reflect.Bool:
			out = append(out, "0")
		default:
			out = append(out, fmt.Sprintf("%.6f", v.Field(i).Float()))
		}
	}
	return strings.Join(out, "\t")
}

func keptTrace(t testing.TB) (lines []string) {
	t.Helper()
	f, err := os.Open(traceFile)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for s := bufio.NewScanner(f); s.Scan(); {
		if !strings.HasPrefix(s.Text(), "#") {
			lines = append(lines, s.Text())
		}
	}
	if len(lines) == 0 {
		t.Fatalf("%s is empty", traceFile)
	}
	return lines
}
