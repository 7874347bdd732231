package economics

import (
	"math"
	"testing"
)

// judged gives options with counts of futures, in the order ice, dry, small,
// larger, all of which work at typical inputs where they work in any future.
func judged(workable, best [4]int, first, yearly, cold [4]float64) [4]OptionFigures {
	var options [4]OptionFigures
	for i, id := range Options {
		options[i] = OptionFigures{ID: id, WorkableOf100: workable[i], BestOf100: best[i], AsToldWorksOf100: workable[i],
			Fitted: Outcome{First: first[i], Yearly: yearly[i], ColdDays: cold[i]}}
		if workable[i] == 0 {
			options[i].Fitted.Failing = []Criterion{{ID: "too-warm"}}
		}
	}
	return options
}

// The verdict follows the counts of futures, in two steps: a unit or none,
// then which way; 60 of 100 names a winner.
func TestVerdictFollowsTheCounts(t *testing.T) {
	all := [4]int{100, 100, 100, 100}
	first := [4]float64{200, 0, 1400, 4000}
	for _, row := range []struct {
		name           string
		workable, best [4]int
		none           int
		option         OptionID
		refrigerate    bool
		works          bool
		step           int
		sureStep, sure bool
		runner         OptionID
	}{
		{"one clear winner", all, [4]int{5, 10, 80, 5}, 0, SmallUnit, true, true, 85, true, true, DryStores},
		{"sure of a unit, not of which", all, [4]int{10, 10, 45, 35}, 0, SmallUnit, true, true, 80, true, false, LargerUnit},
		{"exactly sixty is enough", all, [4]int{0, 40, 60, 0}, 0, SmallUnit, true, true, 60, true, true, DryStores},
		{"fifty-nine is not", all, [4]int{0, 41, 59, 0}, 0, SmallUnit, true, true, 59, false, false, DryStores},
		{"the side wins, not the option", all, [4]int{26, 30, 44, 0}, 0, DryStores, false, true, 56, false, false, SmallUnit},
		{"a tie of sides stays without a unit", all, [4]int{0, 50, 50, 0}, 0, DryStores, false, true, 50, false, false, SmallUnit},
		{"a tie of options goes to the lower first cost", all, [4]int{35, 35, 30, 0}, 0, DryStores, false, true, 70, true, false, IceOnly},
		{"none works where most futures say so", [4]int{30, 0, 38, 0}, [4]int{10, 0, 30, 0}, 60, SmallUnit, true, false, 30, false, false, IceOnly},
		{"none works at all", [4]int{}, [4]int{}, 100, IceOnly, false, false, 0, false, false, ""},
	} {
		options := judged(row.workable, row.best, first, [4]float64{}, [4]float64{})
		f := FuturesFigures{NoneWorksOf100: row.none, RefrigerateOf100: row.best[2] + row.best[3]}
		v := decide(&Boat{}, &options, &f)
		if v.Option != row.option || v.Refrigerate != row.refrigerate || v.Works != row.works {
			t.Errorf("%s: %s, refrigerate %v, works %v; want %s, %v, %v", row.name, v.Option, v.Refrigerate, v.Works, row.option, row.refrigerate, row.works)
		}
		if v.StepOf100 != row.step || v.SureOfStep != row.sureStep || v.SureOfWay != row.sure {
			t.Errorf("%s: %d of 100, sure of the step %v, of the way %v; want %d, %v, %v", row.name, v.StepOf100, v.SureOfStep, v.SureOfWay, row.step, row.sureStep, row.sure)
		}
		if v.HasRunner != (row.runner != "") || v.Runner != row.runner {
			t.Errorf("%s: runner-up %q; want %q", row.name, v.Runner, row.runner)
		}
	}
}

// The worth of a cold day at which the money-only answer turns, by hand: dry
// stores at 192 a year give no cold day, the small unit at 222 gives 60, so it
// turns at 30 / 60 = 0.50; ice at 480 with 45 would turn only at 288 / 45 = 6.40.
func TestWorthAtWhichTheAnswerTurns(t *testing.T) {
	options := judged([4]int{90, 100, 95, 95}, [4]int{0, 90, 10, 0}, [4]float64{0, 0, 1400, 4000}, [4]float64{480, 192, 222, 560}, [4]float64{45, 0, 60, 60})
	v := decide(&Boat{}, &options, &FuturesFigures{RefrigerateOf100: 10})
	if !v.TurnKnown || v.TurnTo != SmallUnit || math.Abs(v.TurnWorth-0.5) > 1e-12 {
		t.Errorf("turns to %s at %v, %v; by hand to the small unit at 0.50", v.TurnTo, v.TurnWorth, v.TurnKnown)
	}
	options = judged([4]int{0, 0, 95, 95}, [4]int{0, 0, 90, 5}, [4]float64{0, 0, 1400, 4000}, [4]float64{480, 192, 222, 560}, [4]float64{45, 0, 60, 60})
	if v := decide(&Boat{}, &options, &FuturesFigures{RefrigerateOf100: 95, NoneWorksOf100: 5}); v.TurnKnown {
		t.Errorf("turns to %s at %v, where nothing gives more cold days", v.TurnTo, v.TurnWorth)
	}
}
