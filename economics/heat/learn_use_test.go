package heat

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"coldreckon/economics/quantity"
)

// Spells all alike tell nothing of the use, yet of the leak as much as the use
// is known. By hand: 20 K of difference and 5 W of use at 1.3 W/K; a use known
// to 30 % leaves 1.5 W of 20 K, 0.075 W/K. Guards the share of the use taken
// off and its doubt.
func TestLearnIceOfKnownUse(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	spells := meltedBy(alike(kept(r, 8, 1, 1, 0)), 1.3, 1)
	if _, err := LearnIce(spells, 2); err == nil {
		t.Error("leak and use told apart by spells all alike")
	}
	fit, err := LearnIceOfKnownUse(spells, 2, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "leak", float64(fit.UA), 1.3, 1e-9)
	within(t, "its standard error", float64(fit.UASE), 0.075, 1e-9)
	if fit.Use != 1 || fit.UseLogSD != 0 || len(fit.Residuals) != 8 || fit.LogSD < logSDIceLog {
		t.Errorf("fit %+v", fit)
	}

	for want, spoiled := range map[string][]Spell{
		"food and openings melt so much": meltedBy(alike(kept(r, 8, 1, 1, 0)), 0.1, 1),
		"leak nothing":                   meltedBy(alike(kept(r, 8, 1, 1, 0)), 0.1, 0.1),
		"at least 4":                     spells[:3],
		"as cold as the food":            level(spells),
	} {
		if fit, err := LearnIceOfKnownUse(spoiled, 2, 0.3); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %+v, %v; want it to say %q", fit, err, want)
		}
	}
}

func level(spells []Spell) []Spell {
	out := append([]Spell(nil), spells...)
	for i := range out {
		out[i].Difference = 0
	}
	return out
}

// The doubt of what a log teaches: its own relative error and what no log of
// ice can show, as the root of their squares (propagation of errors). The box
// here takes 2.5 times the use that was expected. Guards LogSD and UseLogSD of
// LearnIce.
func TestDoubtOfWhatALogTeaches(t *testing.T) {
	fit, err := LearnIce(kept(rand.New(rand.NewPCG(31, 32)), 12, 1.3, 2.5, 0.3), 2)
	if err != nil {
		t.Fatal(err)
	}
	if fit.Use < 1.8 || fit.UseSE <= 0 {
		t.Fatalf("fit %+v; the check needs a use far from 1", fit)
	}
	within(t, "of the use", fit.UseLogSD, math.Sqrt(math.Pow(fit.UseSE/fit.Use, 2)+logSDIceLog*logSDIceLog), 1e-12)
	within(t, "of the leak", fit.LogSD, math.Sqrt(math.Pow(float64(fit.UASE/fit.UA), 2)+logSDIceLog*logSDIceLog), 1e-12)
}

// A leak is believed where its standard error is half of it or less, however
// large either is. Guards believable.
func TestLeakKnownTooRoughly(t *testing.T) {
	for _, row := range []struct {
		ua, se   float64
		believed bool
	}{{0.1, 0.049, true}, {0.1, 0.051, false}, {4, 1.9, true}, {4, 2.1, false}, {0, 0.1, false}, {-1, 0.1, false}} {
		f := Fit{UA: quantity.WattPerKelvin(row.ua), UASE: quantity.WattPerKelvin(row.se)}
		if err := f.believable(); (err == nil) != row.believed {
			t.Errorf("%g ± %g W/K: %v", row.ua, row.se, err)
		}
	}
}
