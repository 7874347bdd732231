package heat

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"coldreckon/economics/quantity"
)

// kept gives spells of a box of known leak and use, with errors of weighing.
func kept(r *rand.Rand, n int, ua, use, sdKg float64) []Spell {
	spells := make([]Spell, n)
	for i := range spells {
		s := Spell{Hours: 24 + 48*r.Float64(), Difference: quantity.Kelvin(10 + 15*r.Float64()), Use: quantity.Watt(3 + 6*r.Float64())}
		kJ := (ua*float64(s.Difference) + use*float64(s.Use)) * 3.6 * s.Hours
		s.Melted = quantity.Kilogram(max(0, kJ/MeltKJPerKg(2)+sdKg*r.NormFloat64()))
		spells[i] = s
	}
	return spells
}

// The certified set "Norris" of NIST's Statistical Reference Datasets: a straight
// line with intercept, 36 rows (data and values from memory; they agree to
// their last digits). Guards the QR solution, the degrees of freedom and the
// standard errors, which are compared before their widening.
func TestLeastSquaresNorris(t *testing.T) {
	x := []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
		556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5}
	y := []float64{0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
		557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2}
	ones := make([]float64, len(x))
	for i := range ones {
		ones[i] = 1
	}
	fit, err := leastSquares([][]float64{ones, x}, y)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "NIST StRD Norris, intercept", fit.value[0], -0.262323073774029, 1e-10)
	within(t, "NIST StRD Norris, slope", fit.value[1], 1.00211681802045, 1e-12)
	within(t, "NIST StRD Norris, residual sd", fit.sd, 0.884796396144373, 1e-10)
	wider := 1.0
	if r := neighbourCorrelation(fit.residuals); r > 0 {
		wider = math.Sqrt((1 + r) / (1 - r))
	}
	within(t, "NIST StRD Norris, standard error of the intercept", fit.se[0]/wider, 0.232818234301152, 1e-10)
	within(t, "NIST StRD Norris, standard error of the slope", fit.se[1]/wider, 0.429796848199937e-3, 1e-12)
}

// Guards the columns of LearnIce: hours or 3.6 left out of one fails at once.
func TestLearnIceRecovers(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	exact, err := LearnIce(kept(r, 8, 1.3, 1.4, 0), 2)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "leak without weighing errors", float64(exact.UA), 1.3, 1e-9)
	within(t, "use without weighing errors", exact.Use, 1.4, 1e-9)
	if len(exact.Residuals) != 8 || exact.LogSD < logSDIceLog {
		t.Errorf("fit %+v", exact)
	}
	sparing, err := LearnIce(kept(r, 8, 1.3, 0.4, 0), 2)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "a use less than expected", sparing.Use, 0.4, 1e-9)

	// With half a kilo of error the true leak lies inside two standard errors
	// about 95 times of 100.
	const tries = 400
	inside, fitted := 0, 0
	for range tries {
		fit, err := LearnIce(kept(r, 15, 1.3, 1.4, 0.5), 2)
		if err != nil {
			continue
		}
		fitted++
		if math.Abs(float64(fit.UA)-1.3) < 2*float64(fit.UASE) {
			inside++
		}
	}
	if share := float64(inside) / float64(fitted); fitted < tries*9/10 || share < 0.89 || share > 0.99 {
		t.Errorf("%d of %d logs fitted, the truth inside two standard errors in %.2f", fitted, tries, share)
	}

	shut := kept(r, 5, 0.9, 0, 0)
	for i := range shut {
		shut[i].Use = 0
	}
	fit, err := LearnIce(shut, 2)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "leak with the lid closed", float64(fit.UA), 0.9, 1e-9)
	within(t, "nothing learnt of use", fit.Use, 1, 0)
}

// Each row names, by the words of its error, the refusal in LearnIce or
// leastSquares that it guards; with that check taken out the row fails.
func TestLearnIceRefuses(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	good := kept(r, 8, 1.3, 1.2, 0)
	for want, spoil := range map[string]func([]Spell) []Spell{
		"at least 4":           func(s []Spell) []Spell { return s[:3] },
		"cannot be told apart": func(s []Spell) []Spell { return alike(s) },
		"hours over 0":         func(s []Spell) []Spell { s[2].Hours = 0; return s },
		"want a number":        func(s []Spell) []Spell { s[2].Melted = quantity.Kilogram(math.NaN()); return s },
		"leak nothing":         func(s []Spell) []Spell { return reversed(s) },
		"scatters":             func(s []Spell) []Spell { return scattered(s) },
		"would bring no heat":  func(s []Spell) []Spell { return meltedBy(s, 1.3, -0.5) },
		"20 to 20.2 K. It takes spells in cooler and warmer w": func(s []Spell) []Spell { return nearlyAlike(s) },
	} {
		fit, err := LearnIce(spoil(append([]Spell(nil), good...)), 2)
		if err == nil {
			t.Errorf("%s: no error, %+v", want, fit)
		} else if !strings.Contains(err.Error(), want) {
			t.Errorf("got %q; want it to say %q", err, want)
		}
	}
}

func alike(s []Spell) []Spell {
	for i := range s {
		s[i].Difference, s[i].Use = 20, 5
	}
	return s
}

// nearlyAlike gives spells whose weather differs by a hundredth: no error of
// weighing is in them, yet any would be taken for the answer.
func nearlyAlike(s []Spell) []Spell {
	for i := range s {
		s[i].Difference, s[i].Use = quantity.Kelvin(20+0.2*float64(i%2)), 5
	}
	return meltedBy(s, 1.3, 1.2)
}

// reversed gives a log whose ice melts the slower the warmer it is.
func reversed(s []Spell) []Spell {
	for i := range s {
		s[i].Melted = quantity.Kilogram(s[i].Hours) * quantity.Kilogram(0.5*float64(s[i].Use)-0.05*float64(s[i].Difference)+2) / 24
	}
	return s
}

func scattered(s []Spell) []Spell {
	for i := range s {
		s[i].Melted = quantity.Kilogram(1 + 29*float64(i%2))
		s[i].Difference, s[i].Hours = quantity.Kelvin(12+i), 48
	}
	return s
}

// meltedBy gives the spells the ice that a leak and a multiplier of use melt.
func meltedBy(s []Spell, ua, use float64) []Spell {
	for i := range s {
		s[i].Melted = quantity.Kilogram((ua*float64(s[i].Difference) + use*float64(s[i].Use)) * 3.6 * s[i].Hours / MeltKJPerKg(2))
	}
	return s
}

var noon = time.Date(2025, 7, 14, 12, 0, 0, 0, time.UTC)

// warming gives readings of a box that warms by itself in a steady cabin,
// exactly, with errors of the thermometer.
func warming(r *rand.Rand, n int, every time.Duration, ua, capacity, sdK float64) []Reading {
	var out []Reading
	for i := range n {
		h := float64(i) * every.Hours()
		box := 27 - 23*math.Exp(-ua*3.6*h/capacity)
		out = append(out, Reading{noon.Add(time.Duration(i) * every), quantity.Celsius(box + sdK*r.NormFloat64()), 27})
	}
	return out
}

// Guards the mean difference between readings in LearnTemperatures: the later
// reading alone misses by over a thousandth.
func TestLearnTemperaturesRecovers(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	for _, ua := range []float64{0.4, 1.1, 2.5} {
		fit, err := LearnTemperatures(warming(r, 60, 10*time.Minute, ua, 120, 0), 120)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "leak from exact readings", float64(fit.UA), ua, 0.001*ua)
		fit, err = LearnTemperatures(warming(r, 60, 10*time.Minute, ua, 120, 0.2), 120)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "leak from readings to 0.2 K", float64(fit.UA), ua, 4*float64(fit.UASE))
		if fit.LogSD < logSDTemperatureLog || len(fit.Residuals) != 60 {
			t.Errorf("fit %+v", fit)
		}
	}
}

// Each row names, by the words of its error, the refusal in LearnTemperatures
// that it guards; with that check taken out the row fails.
func TestLearnTemperaturesRefuses(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 18))
	good := func() []Reading { return warming(r, 40, 15*time.Minute, 1, 120, 0.1) }
	for want, spoil := range map[string]func([]Reading) []Reading{
		"at least 6":          func(x []Reading) []Reading { return x[:5] },
		"two readings are at": func(x []Reading) []Reading { x[3].At = x[2].At; return x },
		"no ice left":         func(x []Reading) []Reading { return steady(x) },
		"a cold box in a wa":  func(x []Reading) []Reading { return follow(x) },
		"leak nothing":        func(x []Reading) []Reading { return swapped(x) },
		"want a number":       func(x []Reading) []Reading { x[1].Box = quantity.Celsius(math.NaN()); return x },
		"or sooner":           func([]Reading) []Reading { return warming(r, 8, 30*time.Hour, 1, 120, 0) },
		"which column is the": func(x []Reading) []Reading { return swapped(x) },
	} {
		fit, err := LearnTemperatures(spoil(good()), 120)
		if err == nil {
			t.Errorf("%s: no error, %+v", want, fit)
		} else if !strings.Contains(err.Error(), want) {
			t.Errorf("got %q; want it to say %q", err, want)
		}
	}
	if _, err := LearnTemperatures(good(), 0); err == nil {
		t.Error("no heat capacity, no error")
	}
}

func steady(x []Reading) []Reading {
	for i := range x {
		x[i].Box = 4
	}
	return x
}

func follow(x []Reading) []Reading {
	for i := range x {
		x[i].Cabin = x[i].Box + 2
	}
	return x
}

func swapped(x []Reading) []Reading {
	for i := range x {
		x[i].Box, x[i].Cabin = 27-x[i].Box, 27
	}
	return x
}
