package rules

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/Knetic/govaluate"

	"coldreckon/economics"
)

// calm gives a complete set of facts on which no safety question is open.
func calm(option economics.OptionID) economics.Facts {
	facts := economics.Facts{}
	for _, fact := range economics.Vocabulary() {
		switch fact.Kind {
		case economics.Number:
			facts[fact.Name] = 1.0
		case economics.Truth:
			facts[fact.Name] = false
		case economics.Word:
			first, _, _ := strings.Cut(fact.Unit, " ")
			facts[fact.Name] = first
			if oneWordOf(fact.Unit, "no") {
				facts[fact.Name] = "no"
			}
		}
	}
	return with(facts, economics.Facts{
		"option": string(option), "co_alarm": "yes", "wiring_known": "yes", "latch_opens_inside": "yes",
		"drain_to": "sump", "fitted_unit": "none", "eggs": "unwashed", "cable_known": true,
		"warmest_food_c": 3.5, "cold_share": 1.0, "hours_off_longest": 0.0, "engine_hours_per_day": 0.0,
		"shore_power_share": 0.0, "plate_c": 1.0, "run_share_hottest": 0.5, "cable_drop_share": 0.01,
		"panel_added_wp": 0.0, "battery_added_ah": 0.0, "battery_added_kwh": 0.0, "foam_added_m2": 0.0, "foam_poured_l": 0.0, "spacer_l": 0.0,
		"box_volume_l": 90.0,
	})
}

// with gives a copy of the facts with some changed.
func with(facts economics.Facts, changes economics.Facts) economics.Facts {
	changed := economics.Facts{}
	for name, value := range facts {
		changed[name] = value
	}
	for name, value := range changes {
		changed[name] = value
	}
	return changed
}

func TestConditions(t *testing.T) {
	facts := with(calm(economics.SmallUnit), economics.Facts{"crew": 2.0, "trip_nights": 14.0, "medicine": "unknown", "fitted": true})
	for text, want := range map[string]bool{
		"true":                                        true,
		"fitted":                                      true,
		"!fitted":                                     false,
		"!(fitted && crew > 3)":                       true,
		"crew > 1 && trip_nights < 15":                true,
		"crew>-1":                                     true, // the evaluator alone reads >- as one sign
		"trip_nights - crew - 2 >= 10":                true, // 14 - 2 - 2, from the left
		"trip_nights - crew - 2 > 10":                 false,
		"trip_nights / 2 / 7 <= 1":                    true, // from the left: (14/2)/7
		"trip_nights / 2 * 7 > 48":                    true,
		"crew + 3 * 4 > 13":                           true,
		"(crew + 3) * 4 > 13 && !false":               true,
		"-crew + 3 > 0":                               true,
		"3 > -crew":                                   true,
		"medicine == 'unknown'":                       true,
		`"unknown" == medicine`:                       true,
		"medicine != 'no' || false":                   true,
		"fitted == true":                              true,
		"fitted != (crew > 1)":                        false,
		"fitted || false && false":                    true, // && binds closer
		"crew\n  > 1\n&& fitted":                      true,
		"0.5 * crew < 1.000001":                       true,
		"crew / (2) < 1.000001":                       true,
		strings.Repeat("(fitted) && ", 20) + "fitted": true, // many brackets, none inside another
		"crew * 10 < 20 || crew * 010 > 19":           true, // ten, not eight
		"option == 'small' && unit_form=='none'":      true,
	} {
		c, err := compile(text, economics.Truth)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got, err := c.Holds(facts); err != nil || got != want {
			t.Errorf("%q: got %v, %v; want %v", text, got, err, want)
		}
	}
}

// Every fact that an expression names is checked before it runs, whether or
// not this run would come to it.
func TestImpossibleFactsAreErrors(t *testing.T) {
	c, err := compile("false && (crew > 1 || fitted || medicine == 'no')", economics.Truth)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name  string
		value any
		want  string
	}{
		{"crew", math.NaN(), "crew"},
		{"crew", math.Inf(1), "crew"},
		{"crew", 1e13, "crew"},
		{"crew", 2, "expected a number"},            // an int
		{"crew", float32(0.1), "expected a number"}, // never equal to a literal
		{"crew", "2", "expected a number"},
		{"crew", nil, "expected a number"},
		{"fitted", "yes", "expected true or false"},
		{"fitted", 1.0, "expected true or false"},
		{"medicine", "maybe", "yes no unknown"},
		{"medicine", "", "yes no unknown"},
		{"medicine", "yes no", "yes no unknown"},
		{"medicine", true, "yes no unknown"},
	} {
		_, err := c.Holds(with(calm(economics.IceOnly), economics.Facts{row.name: row.value}))
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s = %v: got %v; want an error with %q", row.name, row.value, err, row.want)
		}
	}
	if _, err := c.Holds(economics.Facts{"fitted": false}); err == nil || !strings.Contains(err.Error(), `"crew" is missing`) {
		t.Errorf("missing fact: got %v", err)
	}
	if _, err := c.Holds(nil); err == nil {
		t.Error("no facts at all: no error")
	}
}

// What the fence lets through cannot leave the finite numbers, whatever the
// facts: the extremes of every sign are tried.
func TestAmountsStayFinite(t *testing.T) {
	for _, text := range []string{
		"crew * crew * crew", "crew / 0.000001", "crew - crew", "-crew * trip_nights + 1000000000000",
		strings.Repeat("crew * ", 24) + "crew", "crew / 0." + strings.Repeat("0", 250) + "1",
	} {
		a, err := compile(text, economics.Number)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		for _, v := range []float64{-maxFact, -1, 0, math.SmallestNonzeroFloat64, 1, maxFact} {
			if got, err := a.Number(economics.Facts{"crew": v, "trip_nights": -v}); err != nil {
				t.Errorf("%q with %g: %v, %v", text, v, got, err)
			}
		}
	}
	for _, text := range []string{strings.Repeat("crew * ", 25) + "crew", "crew / 0." + strings.Repeat("0", 300) + "1"} {
		if _, err := compile(text, economics.Number); err == nil {
			t.Errorf("%q compiles; it can overflow", clip(text))
		}
	}
}

// The evaluator is old and reorders its stages; here random expressions are
// worked out a second time in plain Go, with the precedence of school algebra.
func TestEvaluatorAgreesWithPlainArithmetic(t *testing.T) {
	facts := with(calm(economics.SmallUnit), economics.Facts{"crew": 2.5, "trip_nights": 14.0, "food_target_c": -4.0, "fitted": true})
	r := rand.New(rand.NewPCG(1, 1))
	for range 4000 {
		number, want := randomNumber(r, facts, 3)
		a, err := compile(number, economics.Number)
		if err != nil {
			if strings.Contains(err.Error(), "zero") || strings.Contains(err.Error(), "bytes") {
				continue
			}
			t.Fatalf("%s: %v", number, err)
		}
		if got, err := a.Number(facts); err != nil || math.Abs(got-want) > 1e-9*max(1, math.Abs(want)) {
			t.Fatalf("%s: got %v, %v; want %v", number, got, err, want)
		}
		truth, holds := randomTruth(r, facts, 3)
		c, err := compile(truth, economics.Truth)
		if err != nil {
			if strings.Contains(err.Error(), "bytes") || strings.Contains(err.Error(), "zero") {
				continue
			}
			t.Fatalf("%s: %v", truth, err)
		}
		if got, err := c.Holds(facts); err != nil || got != holds {
			t.Fatalf("%s: got %v, %v; want %v", truth, got, err, holds)
		}
	}
}

// randomNumber writes a random sum of products and works it out.
func randomNumber(r *rand.Rand, facts economics.Facts, depth int) (string, float64) {
	text, total := randomProduct(r, facts, depth)
	for range r.IntN(3) {
		more, value := randomProduct(r, facts, depth)
		if r.IntN(2) == 0 {
			text, total = text+" + "+more, total+value
		} else {
			text, total = text+" - "+more, total-value
		}
	}
	return text, total
}

func randomProduct(r *rand.Rand, facts economics.Facts, depth int) (string, float64) {
	text, product := randomFactor(r, facts, depth)
	for range r.IntN(3) {
		if r.IntN(2) == 0 {
			more, value := randomFactor(r, facts, depth)
			text, product = text+" * "+more, product*value
		} else {
			divisor := 0.5 + float64(r.IntN(8))
			text, product = fmt.Sprintf("%s / %g", text, divisor), product/divisor
		}
	}
	return text, product
}

func randomFactor(r *rand.Rand, facts economics.Facts, depth int) (string, float64) {
	names := []string{"crew", "trip_nights", "food_target_c"}
	var text string
	var value float64
	switch choice := r.IntN(4); {
	case choice == 0 && depth > 0:
		text, value = randomNumber(r, facts, depth-1)
		text = "(" + text + ")"
	case choice == 1:
		value = float64(r.IntN(20)) / 4
		text = fmt.Sprintf("%g", value)
	default:
		text = names[r.IntN(len(names))]
		value = facts[text].(float64)
	}
	if r.IntN(5) == 0 {
		return "-" + text, -value
	}
	return text, value
}

// randomTruth writes a random condition and works it out.
func randomTruth(r *rand.Rand, facts economics.Facts, depth int) (string, bool) {
	text, holds := randomAnd(r, facts, depth)
	for range r.IntN(3) {
		more, value := randomAnd(r, facts, depth)
		text, holds = text+" || "+more, holds || value
	}
	return text, holds
}

func randomAnd(r *rand.Rand, facts economics.Facts, depth int) (string, bool) {
	text, holds := randomTest(r, facts, depth)
	for range r.IntN(3) {
		more, value := randomTest(r, facts, depth)
		text, holds = text+" && "+more, holds && value
	}
	return text, holds
}

func randomTest(r *rand.Rand, facts economics.Facts, depth int) (string, bool) {
	switch choice := r.IntN(5); {
	case choice == 0 && depth > 0:
		text, holds := randomTruth(r, facts, depth-1)
		if r.IntN(2) == 0 {
			return "!(" + text + ")", !holds
		}
		return "(" + text + ")", holds
	case choice == 1:
		return "!fitted", false
	case choice == 2:
		return "medicine != 'no'", facts["medicine"] != "no"
	}
	left, a := randomProduct(r, facts, 0)
	right, b := randomProduct(r, facts, 0)
	switch r.IntN(4) {
	case 0:
		return left + " < " + right, a < b
	case 1:
		return left + " <= " + right, a <= b
	case 2:
		return left + " > " + right, a > b
	}
	return left + " >= " + right, a >= b
}

// No panic of the old evaluator reaches a caller.
func TestEvaluatorPanicsBecomeErrors(t *testing.T) {
	broken := &expression{text: "broken"} // without a program the evaluator dereferences nil
	if _, err := broken.evaluate(nil); err == nil || !strings.Contains(err.Error(), "broken") {
		t.Errorf("got %v; want an error that names the expression", err)
	}
}

// What is no number, or no finite one, is never handed on as an amount.
func TestEvaluatorGivesFiniteNumbersAlone(t *testing.T) {
	for _, text := range []string{"1 / 0", "0 / 0", "true"} {
		program, err := govaluate.NewEvaluableExpression(text)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := (&expression{text: text, program: program}).Number(nil); err == nil || got != 0 {
			t.Errorf("%s: %v, %v; want an error", text, got, err)
		}
	}
}

// One compiled expression serves every core.
func TestExpressionIsSafeForConcurrentUse(t *testing.T) {
	c, err := compile("crew * 2 > 3 && medicine == 'no' || fitted", economics.Truth)
	if err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	for i := range 8 {
		wait.Go(func() {
			facts := with(calm(economics.IceOnly), economics.Facts{"crew": float64(i)})
			for range 500 {
				if got, err := c.Holds(facts); err != nil || got != (i >= 2) {
					t.Errorf("crew %d: %v, %v", i, got, err)
				}
			}
		})
	}
	wait.Wait()
}

// A hostile expression is refused or compiled, and run, in a moment.
func TestHostileExpressionsAreBounded(t *testing.T) {
	start := time.Now()
	for _, text := range []string{
		strings.Repeat("(", 1e6), strings.Repeat("!", 1e6), strings.Repeat("crew+", 1e6), strings.Repeat("9", 900),
		strings.Repeat("-", 900), strings.Repeat("x", 900), strings.Repeat("'", 900), strings.Repeat("\\", 3),
		strings.Repeat("(", 400) + strings.Repeat(")", 400), "\x00", "\xff\xfe", "crew\u00a0> 1", "crew > ١", "", "\n",
		"crew.String > 1", "crew() > 1", "[crew] > 1", "crew > 1; crew", "${crew}", "`crew`", "fitted // && !fitted", "fitted /* no */ && fitted", "func() bool { return true }()",
		"struct{}", "fitted.(bool)", "*fitted", "&fitted", "1i > 0", ".5 > crew", "1_000 > crew", "interface{}", "- -crew > 0",
	} {
		if _, err := compile(text, economics.Truth); err == nil {
			t.Errorf("%q compiles", clip(text))
		}
	}
	const deep = (maxExpressionBytes - len("fitted")) / 2
	c, err := compile(strings.Repeat("(", deep)+"fitted"+strings.Repeat(")", deep), economics.Truth)
	if err != nil {
		t.Fatal(err)
	}
	if holds, err := c.Holds(economics.Facts{"fitted": true}); !holds || err != nil {
		t.Errorf("%d brackets: %v, %v", deep, holds, err)
	}
	if spent := time.Since(start); spent > forEver {
		t.Errorf("took %v", spent)
	}
}

func FuzzCompile(f *testing.F) {
	for _, text := range []string{
		"crew > 1 && !fitted", "medicine == 'yes' || warmest_food_c > 5", "-(crew + 2) * 3 / 4 <= 1", "!(fitted)",
		`\`, "1/0 > 2", "a.b", "2**3", "crew in (1)", "crew > 0x1f", "'2014-01-02' == medicine", "fitted ? 1 : 2", "crew >-1", "--1 > 0",
	} {
		f.Add(text)
	}
	facts := calm(economics.SmallUnit)
	f.Fuzz(func(t *testing.T, text string) {
		if c, err := compile(text, economics.Truth); err == nil {
			if _, err := c.Holds(facts); err != nil {
				t.Errorf("%q compiles and fails: %v", text, err)
			}
		}
		if a, err := compile(text, economics.Number); err == nil {
			if _, err := a.Number(facts); err != nil {
				t.Errorf("%q compiles and fails: %v", text, err)
			}
		}
	})
}

func BenchmarkHolds(b *testing.B) {
	c, err := compile("cold_share < cold_days_wanted - 0.000001", economics.Truth)
	if err != nil {
		b.Fatal(err)
	}
	facts := calm(economics.IceOnly)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Holds(facts); err != nil {
			b.Fatal(err)
		}
	}
}
