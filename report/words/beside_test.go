package words

import (
	"math"
	"strings"
	"testing"

	"coldreckon/economics"
)

// voice speaks of the reckoning made by hand, with one change.
func voice(t *testing.T, change func(*economics.Reckoning)) Voice {
	t.Helper()
	r := made()
	r.Months[0].CabinC, r.Months[1].CabinC, r.Box.Volume, r.Box.Leak, r.Boat.Power.Volts = 27, 26, 90, 1.8, 12
	if change != nil {
		change(r)
	}
	return Of(r, economics.Book{})
}

// A line for each way that is left out, each with a figure of the boat, and none
// that a reader could take for advice to build it.
func TestWhyNotNamesAFigureEach(t *testing.T) {
	v := voice(t, nil)
	lines := v.WhyNot()
	if len(lines) != 5 {
		t.Fatalf("%d lines, want five", len(lines))
	}
	for _, l := range lines {
		if !strings.ContainsAny(l.Text, "0123456789") || l.What == "" {
			t.Errorf("%s: %q has no figure", l.What, l.Text)
		}
		if strings.Contains(l.Text, "NaN") || strings.Contains(l.Text, "Inf") {
			t.Errorf("%s: %q", l.What, l.Text)
		}
	}
	if dry := lines[4].Text; !strings.Contains(dry, "smothers") || !strings.Contains(dry, "gloves") {
		t.Errorf("dry ice without its cautions: %q", dry)
	}
}

func TestCoolerStandsBesideIceOnlyWhereToldOf(t *testing.T) {
	if got := voice(t, nil).Cooler(); got != nil {
		t.Errorf("no cooler was told of, found %q", got)
	}
	got := strings.Join(voice(t, func(r *economics.Reckoning) {
		r.Boat.Cooler = economics.Cooler{Stands: economics.CoolerOnDeck, Volume: 60, Wall: 0.05, Price: 180}
		r.Cooler = &economics.CoolerFigures{Ice: *r.Of(economics.IceOnly), LeakW: 0.6, LoadKg: 20, LastsDays: 4.2, BoxLoadKg: 12, BoxLastsDays: 0.9}
		r.Cooler.Ice.WorksOf100 = 93
	}).Cooler(), "\n")
	for _, want := range []string{"on deck", "$180", "lasts 4.2 days", "lasts 22 h", "93 of 100"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in:\n%s", want, got)
		}
	}
	if text := lasts(math.Inf(1)); text != "three weeks or more" {
		t.Errorf("without end: %q", text)
	}
}

func TestFreezingSaysWhatItTakes(t *testing.T) {
	got := voice(t, func(r *economics.Reckoning) {
		r.Boat.Food.Freeze = economics.FreezesMeals
		for _, id := range []economics.OptionID{economics.SmallUnit, economics.LargerUnit} {
			r.Freezing = append(r.Freezing,
				economics.FreezingFigures{Option: id, Wish: economics.FreezesCubes, AhPerDay: 24, MoreAh: 6.5, RunShare: 0.4, PlateC: -12, CornerL: 5, PanelWp: 22},
				economics.FreezingFigures{Option: id, Wish: economics.FreezesMeals, AhPerDay: 80, MoreAh: 30, RunShare: 1.2, PlateC: -12, CornerL: 14, PanelWp: 90})
		}
	}).Freezing()
	if len(got) != 2 {
		t.Fatalf("%d sentences, want one for each wish with one unit: %q", len(got), got)
	}
	for i, want := range []string{"24 Ah a day in all, 6.5 Ah more", "as you want, takes"} {
		if !strings.Contains(got[i], want) {
			t.Errorf("%q is not in %q", want, got[i])
		}
	}
	if !strings.Contains(got[1], "could not do it") {
		t.Errorf("a unit that runs over 100 %% of the time: %q", got[1])
	}
}
