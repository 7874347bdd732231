package heat

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// Weights by hand: 1/0.5² = 4 and 1/0.1² = 100, so ln UA = (4·ln 1 + 100·ln
// 1.5)/104 and sd = 1/√104. Guards weigh: weighing by 1/sd fails.
func TestCombineByHand(t *testing.T) {
	drawing := Estimate{FromDrawing, 1, 0.5}
	ice := Estimate{FromIceTest, 1.5, 0.1}
	c := Combine(drawing, ice)
	within(t, "UA", float64(c.UA), math.Exp(100*math.Log(1.5)/104), 1e-12)
	within(t, "log-sd", c.LogSD, 1/math.Sqrt(104), 1e-12)
	if c.Disagree || len(c.Used) != 2 || len(c.Dropped) != 0 {
		t.Errorf("agreeing estimates: %+v", c)
	}
	if alone := Combine(drawing); alone.UA != 1 || alone.LogSD != 0.5 || len(alone.Used) != 1 || alone.Disagree {
		t.Errorf("drawing alone: %+v", alone)
	}
	r := Estimate{FromIceTest, 2, 0.3}.Range()
	within(t, "10th percentile", r.Low, 2*math.Exp(-0.3*1.28155), 1e-4)
	within(t, "90th percentile", r.High, 2*math.Exp(0.3*1.28155), 1e-4)
}

// Guards the drop of the drawing, the span over the tests, and the widening by
// Birge's factor: ln 3 over √(0.1²+0.25²) is 4.08 times the test's own 0.1.
func TestDisagreement(t *testing.T) {
	drawing := Estimate{FromDrawing, 1, 0.25}
	ice := Estimate{FromIceTest, 3, 0.1}
	c := Combine(drawing, ice)
	if !c.Disagree || len(c.Dropped) != 1 || c.Dropped[0] != drawing || len(c.Used) != 1 {
		t.Fatalf("drawing kept: %+v", c)
	}
	within(t, "the test's leak", float64(c.UA), 3, 1e-12)
	within(t, "the test's spread, widened", c.LogSD, 0.1*math.Log(3)/math.Hypot(0.1, 0.25), 1e-12)
	for _, cause := range []string{"wet or missing foam", "drain", "ice test", "3 times"} {
		if !strings.Contains(c.Why, cause) {
			t.Errorf("%q does not name %q", c.Why, cause)
		}
	}
	c = Combine(Estimate{FromDrawing, 0.5, 0.25}, Estimate{FromIceTest, 2, 0.1})
	if !strings.Contains(c.Why, "leaks 4 times as much") {
		t.Errorf("2 W/K for a drawing of 0.5 is explained by %q", c.Why)
	}
	within(t, "the spread of 2 W/K for a drawing of 0.5", c.LogSD, 0.1*math.Log(4)/math.Hypot(0.1, 0.25), 1e-12)
	less := Combine(drawing, Estimate{FromJugTest, 0.4, 0.1})
	if !strings.Contains(less.Why, "thicker or drier") || !strings.Contains(less.Why, "jug test") {
		t.Errorf("a tight box is explained by %q", less.Why)
	}

	// Two tests at odds, the drawing between them.
	c = Combine(Estimate{FromDrawing, 1, 0.25}, Estimate{FromIceTest, 0.6, 0.1}, Estimate{FromHistory, 1.5, 0.3})
	if !c.Disagree || len(c.Used) != 2 || len(c.Dropped) != 1 {
		t.Fatalf("tests at odds: %+v", c)
	}
	if r := c.Range(); r.Low > 0.6 || r.High < 1.5-1e-9 {
		t.Errorf("10 to 90 band %g to %g leaves out a test", r.Low, r.High)
	}
	if !strings.Contains(c.Why, "differ among themselves by a factor of 2.5,") {
		t.Errorf("tests at odds are explained by %q", c.Why)
	}
}

// Two estimates contradict each other over a factor of 2 and over 1.5 joint
// standard deviations: with 0.25 and 0.1, whose joint is 0.269, the factor
// rules; with 0.5 and 0.3, 1.5 · 0.583 = 0.875 is a factor of 2.40.
//
// Guards both limits of contradicts, and that the joint is a root of squares.
func TestWhenEstimatesContradict(t *testing.T) {
	for _, row := range []struct {
		drawingSD, testSD, factor float64
		disagree                  bool
	}{
		{0.25, 0.1, 1.99, false}, {0.25, 0.1, 2.01, true}, {0.25, 0.1, 1 / 2.01, true},
		{0.5, 0.3, 2.38, false}, {0.5, 0.3, 2.42, true}, {0.5, 0.3, 1 / 2.42, true},
	} {
		c := Combine(Estimate{FromDrawing, 1, row.drawingSD}, Estimate{FromHistory, quantity.WattPerKelvin(row.factor), row.testSD})
		if c.Disagree != row.disagree || len(c.Dropped) != map[bool]int{true: 1}[row.disagree] {
			t.Errorf("a factor of %.3g between %g and %g: %+v", row.factor, row.drawingSD, row.testSD, c)
		}
	}
}

// Guards Combine: weighing in the dropped drawing, or a span over fewer than
// all tests, fails.
func TestCombinedLiesBetween(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 3000 {
		random := func(s Source) Estimate {
			return Estimate{s, quantity.WattPerKelvin(math.Exp(1.2 * r.NormFloat64())), 0.05 + 0.5*r.Float64()}
		}
		drawing := random(FromDrawing)
		var tests []Estimate
		for range r.IntN(4) {
			tests = append(tests, random(pick(r, []Source{FromIceTest, FromJugTest, FromHistory, FromLog})))
		}
		c := Combine(drawing, tests...)
		least, most := spread(c.Used)
		if float64(c.UA) < least*(1-1e-9) || float64(c.UA) > most*(1+1e-9) {
			t.Fatalf("%g W/K lies outside %g to %g: %+v", float64(c.UA), least, most, c)
		}
		if c.Disagree {
			band := c.Range()
			if band.Low > least*(1+1e-9) || band.High < most*(1-1e-9) {
				t.Fatalf("band %+v does not span %g to %g", band, least, most)
			}
			continue
		}
		for _, e := range c.Used {
			if c.LogSD > e.LogSD {
				t.Fatalf("%g: combining widened %+v", c.LogSD, e)
			}
		}
	}
}

// Sources are named as one says them.
func TestNamesOfSources(t *testing.T) {
	for want, tests := range map[string][]Estimate{
		"":                                 nil,
		"the " + string(FromIceTest):       {{Source: FromIceTest}},
		"the " + string(FromIceTest) + "s": {{Source: FromIceTest}, {Source: FromIceTest}},
		"the " + string(FromIceTest) + " and the ice you remember":                                    {{Source: FromHistory}, {Source: FromIceTest}},
		"the " + string(FromIceTest) + ", the " + string(FromJugTest) + " and the " + string(FromLog): {{Source: FromLog}, {Source: FromJugTest}, {Source: FromIceTest}},
	} {
		if got := names(tests); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
