package words

import (
	"math"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
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

func TestDrinksInACoolerAreSaidToBe(t *testing.T) {
	if got := voice(t, nil).Drinks(); got != nil {
		t.Errorf("they are in the box: %q", got)
	}
	v := voice(t, func(r *economics.Reckoning) {
		r.Boat.Cooler = economics.Cooler{Stands: economics.CoolerOnDeck, For: economics.CoolerForDrinks, Volume: 60, Wall: 0.05, Price: 180}
		r.Drinks = &economics.DrinksFigures{OpensFewer: 4, IceKg: quantity.Range{Low: 84, Typical: 120, High: 150}, IceCost: quantity.Range{Low: 80, Typical: 130, High: 220}, CoolShare: quantity.Range{Low: 0.84, Typical: 0.93, High: 0.97}, Apart: [4]int{91, 0, 98, 99}, Together: [4]int{44, 0, 95, 99}}
	})
	got := strings.Join(v.Drinks(), "\n")
	for _, want := range []string{"4 times a day less", "costs $180", "120 kg (84 to 150 kg) of ice a year, bought where food is, for $130 ($80 to $220)", "93 % (84 to 97) of days", "Ice alone works so in 91 of 100 futures; with the drinks in the box and the same work, in 44."} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in:\n%s", want, got)
		}
	}
}

// A cooler whose drinks are warm on most days is said to be one where its price stands.
func TestACoolerThatHardlyCoolsIsSaidTo(t *testing.T) {
	for share, warm := range map[float64]bool{0.14: true, 0.49: true, 0.5: false, 0.93: false} {
		v := voice(t, func(r *economics.Reckoning) {
			r.Boat.Cooler = economics.Cooler{Stands: economics.CoolerOnDeck, For: economics.CoolerForDrinks, Volume: 60, Wall: 0.05, Price: 180}
			r.Drinks = &economics.DrinksFigures{IceKg: quantity.Exactly(400), IceCost: quantity.Exactly(430), CoolShare: quantity.Exactly(share)}
		})
		if got := v.DrinksCost(); strings.Contains(got, "cool on only") != warm {
			t.Errorf("cool on %g of days: %q", share, got)
		}
		if got := strings.Join(v.Drinks(), " "); strings.Contains(got, "they are warm") != warm {
			t.Errorf("cool on %g of days: %q", share, got)
		}
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
	for i, want := range []string{"24 Ah a day in all with the work, 6.5 Ah more", "as you want, takes"} {
		if !strings.Contains(got[i], want) {
			t.Errorf("%q is not in %q", want, got[i])
		}
	}
	if !strings.Contains(got[1], "more than the small unit can do") || strings.Contains(got[1], "Ah") {
		t.Errorf("a unit that runs over 100 %% of the time: %q", got[1])
	}
}

func TestByDaySaysWhereAsked(t *testing.T) {
	if got := voice(t, nil).ByDay(); got != "" {
		t.Errorf("nobody would: %q", got)
	}
	got := voice(t, func(r *economics.Reckoning) { r.ByDay = &economics.ByDayFigures{Always: 97, Alone: 4, Bottles: 61} }).ByDay()
	for _, want := range []string{"from sunset to sunrise", "in 4 of 100 futures; with", "in 61 of 100; running as it likes, in 97 of 100."} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in %q", want, got)
		}
	}
}

// The page names the cautions, a cost and a deed for each cause, and follows what
// mending is worth.
func TestAilingFollowsTheBoat(t *testing.T) {
	book := economics.Book{Currency: "$"}
	for _, a := range ailments {
		low, high := 10.0, 60.0
		if a.line == "mend_compressor" {
			low, high = 500, 1200
		}
		book.Prices = append(book.Prices, economics.PriceLine{ID: a.line, Price: quantity.Range{Low: low, Typical: 50, High: high}})
	}
	of := func(change func(*economics.Reckoning)) Voice {
		v := voice(t, change)
		v.book = book
		return v
	}
	last := func(v Voice) string {
		rows := v.Ailing()
		if len(rows) != len(ailments) {
			t.Fatalf("%d rows of %d", len(rows), len(ailments))
		}
		return rows[0].Do + ", " + rows[len(rows)-1].Do
	}
	dead := func(r *economics.Reckoning) { r.HasRepair, r.RepairWorth = true, 300 }
	if got := last(of(dead)); got != "mend, replace" {
		t.Errorf("worth $300, the small unit the answer: %q", got)
	}
	if got := last(of(func(r *economics.Reckoning) { dead(r); r.Answer.Ways = []economics.OptionID{economics.IceOnly} })); got != "mend, take out" {
		t.Errorf("worth $300, ice the answer: %q", got)
	}
	if got := last(of(nil)); got != "hold it against a new one, hold it against a new one" {
		t.Errorf("no old unit: %q", got)
	}
	cautions := strings.Join(of(dead).AilingCautions(), " ")
	for _, want := range []string{"certified", "capacitors", "licensed", "gas circuit shut"} {
		if !strings.Contains(cautions, want) {
			t.Errorf("%q is not among the cautions", want)
		}
	}
	if text := of(nil).AilingWorth(); !strings.Contains(text, "box.fitted_unit") {
		t.Errorf("no old unit: %q", text)
	}
}

func TestChestStandsBesideTheBuiltInUnit(t *testing.T) {
	if got := voice(t, nil).Chest(); got != "" {
		t.Errorf("no chest was told of, found %q", got)
	}
	v := voice(t, func(r *economics.Reckoning) {
		chest := *r.Of(economics.SmallUnit)
		chest.WorksOf100, chest.PriceOfCold, chest.Fitted.First = 81, quantity.Exactly(3.1), 640
		chest.Fitted.Facts = economics.Facts{"box_volume_l": 45.0}
		r.Chest = &chest
	})
	want := "A free-standing chest of 45 L instead of the built-in unit costs $640 at first and works in 81 of 100 futures, at about $3 a cold day, its place not counted; the built-in one in 100, at about $4.50."
	if got := v.Chest(); got != want {
		t.Errorf("found %q, expected %q", got, want)
	}
	if also := strings.Join(v.Also(), " "); !strings.Contains(also, want) {
		t.Errorf("the small unit leads, and beside it stands %q", also)
	}
}

// Work that takes more of the box and saves money is told by what differs.
func TestTighterTellsWhatDiffers(t *testing.T) {
	if got := voice(t, nil).Tighter(economics.SmallUnit); got != "" {
		t.Errorf("nothing is tighter, found %q", got)
	}
	inside := func(mm float64) economics.FitItem { return economics.FitItem{Piece: economics.InsidePiece, Size: mm} }
	bank := economics.FitItem{Piece: economics.BatteryPiece, Size: 300}
	for _, row := range []struct {
		roomy, tight []economics.FitItem
		want         string
	}{
		{[]economics.FitItem{inside(25), bank}, []economics.FitItem{inside(75)}, "It has 75 mm more foam inside the walls in place of 25 mm more foam inside the walls and 300 Ah more battery."},
		{[]economics.FitItem{bank}, []economics.FitItem{inside(75), bank}, "It has 75 mm more foam inside the walls besides."},
		{[]economics.FitItem{inside(75), bank}, []economics.FitItem{inside(75)}, "It does without 300 Ah more battery."},
	} {
		got := voice(t, func(r *economics.Reckoning) {
			r.Boat.Units = quantity.Metric
			o := r.Of(economics.SmallUnit)
			o.Fit = economics.Fit{Items: row.roomy, SearchPresent: 3000, LostShare: 0.2, Tight: &economics.Fit{Items: row.tight, SearchPresent: 2000, LostShare: 0.6}}
		}).Tighter(economics.SmallUnit)
		if !strings.Contains(got, "about $1,000 over") || !strings.Contains(got, "leaves 36 L of the box, against 72 L") || !strings.HasSuffix(got, row.want) {
			t.Errorf("found %q, want it to end in %q", got, row.want)
		}
	}
}

func TestAlarmSaysWhatItCostsAndSaves(t *testing.T) {
	a := economics.Alarm{YearsBetween: quantity.Range{Low: 3, Typical: 8, High: 30}, FoodKg: 6, Lost: quantity.Range{Low: 1.6, Typical: 6, High: 16},
		Saved: quantity.Range{Low: 1.2, Typical: 4.5, High: 12}, Price: quantity.Range{Low: 15, Typical: 30, High: 80}, PricePerYear: 4.1}
	few := a
	few.Saved = quantity.Range{Low: 0.2, Typical: 0.5, High: 1.4}
	aboard := a
	aboard.Aboard, aboard.Lost, aboard.Saved = true, quantity.Exactly(0.3), quantity.Range{}
	for _, row := range []struct {
		alarm    economics.Alarm
		proposed bool
		says     []string
		not      string
	}{
		{a, true, []string{"once in 8 years spent aboard (3 to 30)", "saves $1 to $12 a year", "costs $4 a year", "it is among the work"}, "does not pay"},
		{a, false, []string{"by the food alone it does not pay"}, "it is among"},
		{few, false, []string{"saves up to $1 a year"}, "under $1"},
		{aboard, false, []string{"your alarm saves most of the 6 kg", "under $1 a year"}, "pay"},
	} {
		got := voice(t, nil).Alarm(row.alarm, economics.FitOut{Alarm: row.proposed})
		for _, want := range row.says {
			if !strings.Contains(got, want) {
				t.Errorf("%q is not in: %s", want, got)
			}
		}
		if strings.Contains(got, row.not) {
			t.Errorf("%q is in: %s", row.not, got)
		}
	}
}

// An alarm cools nothing: no arrow from the same count to the same count, and no work besides.
func TestAnAlarmIsNoWorkThatCools(t *testing.T) {
	v := voice(t, func(r *economics.Reckoning) {
		o := r.Of(economics.SmallUnit)
		o.Fit = economics.Fit{Out: economics.FitOut{Alarm: true}, Items: []economics.FitItem{{Piece: economics.AlarmPiece, Size: 1, WithoutWorksOf100: o.WorksOf100}}}
		r.Answer.Case, r.Answer.Ways = economics.ByWorth, []economics.OptionID{economics.SmallUnit}
	})
	if got := v.works(v.r.Of(economics.SmallUnit)); !strings.HasSuffix(got, ", an alarm") {
		t.Errorf("works %q", got)
	}
	if got := v.asShe(); got != "It needs no other work on box or boat than a thermometer with an alarm." {
		t.Errorf("says %q", got)
	}
	if got := v.workReason(); got != "" {
		t.Errorf("says that the work matters: %q", got)
	}
}

// Nine in ten are asked of the work; what does nearly as well for much less, as
// she is, is told before anything is bought.
func TestWhatDoesNearlyAsSheIs(t *testing.T) {
	for _, row := range []struct {
		works        int
		costs, leads float64
		work         bool
		want         string
	}{
		{86, 0, 120, true, "Before you spend: ice alone does what you want in 86 of 100 futures without any work, for up to $2 a year."},
		{74, 0, 120, true, ""},  // too seldom
		{86, 81, 120, true, ""}, // too dear
		{86, 0, 120, false, ""}, // is the fitted one, among the ways
	} {
		got := voice(t, func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.Ways = economics.ByWorth, []economics.OptionID{economics.SmallUnit}
			r.Of(economics.SmallUnit).Fitted.Yearly = row.leads
			r.Of(economics.SmallUnit).Fit, r.Of(economics.LargerUnit).Fit = economics.Fit{}, economics.Fit{}
			ice := r.Of(economics.IceOnly)
			ice.AsToldWorksOf100, ice.AsTold.Yearly, ice.AsTold.Failing = row.works, row.costs, nil
			ice.AsToldBands.Yearly, ice.Fit = quantity.Range{Typical: row.costs, High: row.costs + 2}, economics.Fit{}
			if row.work {
				ice.Fit.Items = []economics.FitItem{{Piece: economics.ColdStartPiece, Size: 1}}
			}
		}).nearly()
		if got != row.want {
			t.Errorf("works in %d for %v against %v: %q, want %q", row.works, row.costs, row.leads, got, row.want)
		}
	}
}

// A headline that says to go without does not speak against medicine that must be
// kept cold, which stands right under it.
func TestGoingWithoutMindsMedicine(t *testing.T) {
	for _, row := range []struct {
		medicine quantity.Tri
		kept     []economics.OptionID
		want     string
	}{
		{quantity.No, []economics.OptionID{economics.SmallUnit}, "Live on food that keeps: no way"},
		{quantity.Yes, nil, "Live on food that keeps: no way"}, // no way keeps it, and the line below says so
		{quantity.Yes, []economics.OptionID{economics.SmallUnit}, "For the food alone live on food that keeps: no way"},
	} {
		got := voice(t, func(r *economics.Reckoning) {
			r.Answer.Case, r.Answer.NoWorth, r.Answer.MedicineKept, r.Boat.Food.Medicine = economics.TooDear, 60, row.kept, row.medicine
		}).Answer()
		if !strings.HasPrefix(got, row.want) {
			t.Errorf("medicine %s, kept by %v: %q, want %q", row.medicine, row.kept, got, row.want)
		}
	}
}
