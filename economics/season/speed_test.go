package season_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldreckon/economics/energy"
	"coldreckon/economics/season"
)

// longSeason is the boat of the speed tests: sixty nights, some on shore, a
// battery that is now and then cut off.
func longSeason(t testing.TB) *aboard {
	c := sloop()
	c.nights, c.tripNights, c.panelWp, c.shore = [12]float64{5: 8, 6: 22, 7: 22, 8: 8}, 6, 60, 0.1
	return c.aboard(t)
}

// yearly gives the runs that are timed, each a year of the boat's.
func yearly(b *aboard) map[string]func(*season.Tally) {
	thin, ice := unitOf(energy.Fan, energy.Thin, season.StartWarm), b.setup.IcePlan(cubes())
	return map[string]func(*season.Tally){
		"unit": func(t *season.Tally) { b.setup.Unit(&b.air, thin, t, nil) },
		"ice":  func(t *season.Tally) { b.setup.Ice(&b.air, &ice, t, nil) },
	}
}

// BenchmarkSeasonHour times an hour of a boat on a unit and on ice.
func BenchmarkSeasonHour(b *testing.B) {
	boat := longSeason(b)
	hours := 24 * len(boat.setup.Plan.Nights)
	for _, name := range []string{"unit", "ice"} {
		run := yearly(boat)[name]
		b.Run(name, func(b *testing.B) {
			var tally season.Tally
			b.ReportAllocs()
			for b.Loop() {
				run(&tally)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*hours), "ns/boat-hour")
		})
	}
	plate := unitOf(energy.Fan, energy.Eutectic, season.StartWarm)
	b.Run("plate", func(b *testing.B) {
		var tally season.Tally
		for b.Loop() {
			boat.setup.Unit(&boat.air, plate, &tally, nil)
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*hours), "ns/boat-hour")
	})
	b.Run("plan", func(b *testing.B) {
		ice := cubes()
		for b.Loop() {
			boat.setup.IcePlan(ice)
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*hours), "ns/boat-hour")
	})
	b.Run("air", func(b *testing.B) {
		for b.Loop() {
			boat.fillAir()
		}
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*hours), "ns/boat-hour")
	})
}

// inC builds testdata/c/season.c and runs a boat's years through it.
func inC(t testing.TB, b *aboard, years int) map[string]cYear {
	t.Helper()
	gcc, err := exec.LookPath("gcc")
	if err != nil {
		t.Skip("no gcc here")
	}
	source, err := os.ReadFile("testdata/c/season.c") // read here, so that a kept result of the test is not used after a change
	if err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(t.TempDir(), "season")
	compile := exec.Command(gcc, "-O3", "-o", program, "-x", "c", "-", "-lm")
	compile.Stdin = bytes.NewReader(source)
	if out, err := compile.CombinedOutput(); err != nil {
		t.Fatalf("gcc: %v\n%s", err, out)
	}
	run := exec.Command(program)
	run.Stdin = b.forC(years)
	var complaint bytes.Buffer
	run.Stderr = &complaint
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, complaint.String())
	}
	found := map[string]cYear{}
	for line := range strings.Lines(string(out)) {
		var name string
		var y cYear
		if _, err := fmt.Sscan(line, &name, &y.nsPerHour, &y.nights, &y.cold, &y.gainWh, &y.unitWh, &y.meltKg, &y.boughtKg, &y.drawnWh, &y.spillWh); err != nil {
			t.Fatalf("%q: %v", line, err)
		}
		found[name] = y
	}
	return found
}

// cYear is a line of the C program's.
type cYear struct {
	nsPerHour                                          float64
	nights, cold                                       int
	gainWh, unitWh, meltKg, boughtKg, drawnWh, spillWh float64
}

// forC writes a boat as the C program reads it, its hours by the oracle.
func (b *aboard) forC(years int) *bytes.Buffer {
	var out bytes.Buffer
	s, p := &b.setup, &b.setup.Power
	r, ice := unitOf(energy.Fan, energy.Thin, season.StartWarm).Cycle, b.setup.IcePlan(cubes())
	l := s.Box.Leak
	for _, v := range []float64{float64(l.Cabin), float64(l.Sea), float64(l.Engine), float64(l.Deck), s.Box.OpensPerDay, s.Box.SwappedL, s.Box.HeatKJPerK,
		s.TargetC, s.LimitC, float64(p.Panel.Wp), float64(p.Bank.FullWh), float64(p.Bank.RestartWh), float64(p.Bank.ChargeEfficiency),
		p.HouseW, p.EngineW, p.EngineHours, float64(r.Rated), r.Eta, float64(r.Plate), float64(r.Rise), float64(r.Condenser), float64(r.Standby),
		ice.FilmWPerM2K, ice.LumpKgPerM3, ice.RoomKg, ice.PortionKg, ice.CarryKg, ice.CarryLoss, s.Goods.StowedC,
		float64(s.Goods.ShopEveryDays), float64(ice.Stops), float64(years), float64(len(s.Plan.Nights))} {
		fmt.Fprintln(&out, v)
	}
	flag := func(is bool) int {
		if is {
			return 1
		}
		return 0
	}
	b.walk(func(_ int, trip season.Trip, firstDay int) {
		for day := range trip.Nights {
			noon := b.around(trip, firstDay, 24*day)
			fmt.Fprintln(&out, noon.month, flag(b.shoreNight(trip.First+day)), flag(day == 0), trip.Nights-day,
				flag(day == 0 || b.weather.Stops[trip.First+day] < ice.FoundShare), noon.seaC, noon.foodKg*3.5/21.6, noon.drinksKg*4.19/3.6,
				ice.MeltKgADay[noon.month], ice.FloorKg[noon.month], ice.ChillKg[noon.month])
			for i := range 24 {
				a := b.around(trip, firstDay, 24*day+i)
				fmt.Fprintln(&out, a.cabinC, a.cabinKJ, a.sunW/float64(p.Panel.Wp), flag(a.opensM3 > 0), flag(a.motoring))
			}
		}
	})
	return &out
}

// TestSameInC holds the season's years to those of the C program, so that the
// two do the same work when they are timed.
func TestSameInC(t *testing.T) {
	b := longSeason(t)
	for name, want := range inC(t, b, 1) {
		var got season.Tally
		yearly(b)[name](&got)
		if got.Nights != want.nights || got.ColdDays != want.cold {
			t.Errorf("%s: %d cold days of %d, in C %d of %d", name, got.ColdDays, got.Nights, want.cold, want.nights)
		}
		for _, row := range []struct {
			what      string
			got, want float64
		}{
			{"gain", total(got.GainWhBy), want.gainWh}, {"unit", got.UnitWh, want.unitWh}, {"melt", total(got.MeltKgBy), want.meltKg},
			{"bought", got.IceBoughtKg, want.boughtKg}, {"drawn", got.DrawnWh, want.drawnWh}, {"spilled", got.SpillWh, want.spillWh},
		} {
			near(t, name+" against C: "+row.what, row.got, row.want, 1e-6*max(1, row.want))
		}
	}
}

// BenchmarkAgainstC times the same years here and in C built with gcc -O3, and
// reports how many times as long an hour takes here. The best of many short runs
// of each counts, as another program may take the machine in between:
//
//	go test ./economics/season -run '^$' -bench AgainstC -benchtime 1x
func BenchmarkAgainstC(b *testing.B) {
	const years, runs = 10, 2000 // as many runs in C
	boat := longSeason(b)
	hours := float64(years * 24 * len(boat.setup.Plan.Nights))
	c := inC(b, boat, years)
	for _, name := range []string{"unit", "ice"} {
		run := yearly(boat)[name]
		b.Run(name, func(b *testing.B) {
			best := math.Inf(1)
			for b.Loop() {
				for range runs {
					var tally season.Tally
					start := time.Now()
					for range years {
						run(&tally)
					}
					best = min(best, float64(time.Since(start).Nanoseconds())/hours)
				}
			}
			b.ReportMetric(best, "ns/boat-hour")
			b.ReportMetric(c[name].nsPerHour, "C-ns/boat-hour")
			b.ReportMetric(best/c[name].nsPerHour, "ratio")
			b.ReportMetric(0, "ns/op")
		})
	}
}
