package rules

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
)

func ids(findings []Finding) []string {
	var out []string
	for _, f := range findings {
		out = append(out, f.ID)
	}
	return out
}

func find(findings []Finding, id string) (Finding, bool) {
	i := slices.IndexFunc(findings, func(f Finding) bool { return f.ID == id })
	if i < 0 {
		return Finding{}, false
	}
	return findings[i], true
}

func TestJudgePrintsStopsFirst(t *testing.T) {
	pack := load(t)
	var sets []economics.Facts
	for _, option := range economics.Options {
		sets = append(sets, with(calm(option), economics.Facts{"fish": "yes", "lithium": "yes", "plate_c": -10.0, "unit_added": true}))
	}
	findings, err := pack.Judge(sets...)
	if err != nil {
		t.Fatal(err)
	}
	last := 0
	seen := map[string]bool{}
	for _, f := range findings {
		rank := slices.Index(grades, f.Grade)
		if rank < last {
			t.Errorf("%s (%s) comes after a lower grade", f.ID, f.Grade)
		}
		last = rank
		if seen[f.ID] {
			t.Errorf("%s twice", f.ID)
		}
		seen[f.ID] = true
	}
	// The order of the sets changes nothing.
	slices.Reverse(sets)
	again, err := pack.Judge(sets...)
	if err != nil || !slices.Equal(ids(findings), ids(again)) {
		t.Errorf("other order: %v, %v\nwant %v", ids(again), err, ids(findings))
	}
	for range 20 {
		again, err := pack.Judge(sets...)
		if err != nil || !reflect.DeepEqual(again, findings) {
			t.Fatalf("another run differs: %v, %v", ids(again), err)
		}
	}
	if f, ok := find(findings, "lithium"); !ok || !slices.Equal(f.Options, economics.Options[:]) {
		t.Errorf("lithium: %v, %v; expected all four options", f.Options, ok)
	}
	if f, ok := find(findings, "plate-freezes"); !ok || !slices.Equal(f.Options, []economics.OptionID{economics.SmallUnit, economics.LargerUnit}) {
		t.Errorf("plate-freezes: %v, %v; expected small and larger", f.Options, ok)
	}
	if f, ok := find(findings, "fish-histamine"); !ok || !slices.Equal(f.Options, []economics.OptionID{economics.DryStores}) {
		t.Errorf("fish-histamine: %v, %v; expected dry alone", f.Options, ok)
	}
}

func TestJudgePrintsOnlyTheHighestOfAGroup(t *testing.T) {
	pack := load(t)
	ice := with(calm(economics.IceOnly), economics.Facts{"warmest_food_c": 12.0})
	small := with(calm(economics.SmallUnit), economics.Facts{"warmest_food_c": 6.0})
	findings, err := pack.Judge(ice, small)
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string]string{"food-over-10c": "ice", "food-over-8c": "", "food-over-5c": "small"} {
		f, ok := find(findings, id)
		if ok != (want != "") || ok && (len(f.Options) != 1 || string(f.Options[0]) != want) {
			t.Errorf("%s: fired %v for %v; want %q", id, ok, f.Options, want)
		}
	}
}

// A caution must not fall silent because a fact was forgotten.
func TestJudgeRefusesIncompleteFacts(t *testing.T) {
	pack := load(t)
	facts := calm(economics.SmallUnit)
	for name := range facts {
		incomplete := with(facts, nil)
		delete(incomplete, name)
		_, err := pack.Judge(incomplete)
		read := slices.ContainsFunc(pack.Cautions, func(c Caution) bool {
			return c.concerns(economics.SmallUnit) && slices.ContainsFunc(c.When.(*expression).facts, func(f economics.Fact) bool { return f.Name == name })
		})
		if (read || name == "option") != (err != nil) {
			t.Errorf("without %s: error %v; read by a caution %v", name, err, read)
		}
		if err != nil && !strings.Contains(err.Error(), name) {
			t.Errorf("without %s: the error does not name it: %v", name, err)
		}
	}
	if _, err := pack.Judge(with(facts, economics.Facts{"option": "barrel"})); err == nil {
		t.Error("an unknown option is accepted")
	}
	if findings, err := pack.Judge(); err != nil || len(findings) != 0 {
		t.Errorf("no facts: %v, %v", findings, err)
	}
}

// Cautions asked for by name, and the boat that brings each about.
func TestNamedHazards(t *testing.T) {
	pack := load(t)
	for _, row := range []struct {
		hazard, id string
		option     economics.OptionID
		facts      economics.Facts
	}{
		{"old refrigerant in a dead unit", "refrigerant-old", economics.IceOnly, economics.Facts{"fitted_unit": "dead"}},
		{"insurer told of lithium", "insurer", economics.IceOnly, economics.Facts{"lithium": "yes"}},
		{"insurer told of gas", "insurer", economics.SmallUnit, economics.Facts{"unit_added": true}},
		{"insurer told of new holes", "insurer", economics.LargerUnit, economics.Facts{"holes_below_waterline": true}},
		{"child shut in a chest", "child-trap", economics.SmallUnit, economics.Facts{"children": "yes", "latch_opens_inside": "no"}},
		{"ice pick through the liner", "ice-pick", economics.IceOnly, nil},
		{"unit left running unattended", "unattended", economics.SmallUnit, economics.Facts{"left_unattended": "yes"}},
		{"food after an unseen power gap", "unseen-gap", economics.SmallUnit, economics.Facts{"left_unattended": "yes"}},
		{"new continuous load on old wiring", "old-wiring", economics.SmallUnit, economics.Facts{"wiring_known": "no"}},
		{"fuel vapour", "fuel-vapour", economics.SmallUnit, economics.Facts{"fuel_vapour_space": "yes"}},
		{"charging without an alarm", "co-charging-blind", economics.IceOnly, economics.Facts{"engine_hours_per_day": 1.0, "co_alarm": "no"}},
		{"dry ice below", "dry-ice", economics.IceOnly, economics.Facts{"dry_ice": "yes"}},
	} {
		before, err := pack.Judge(calm(row.option))
		if err != nil {
			t.Fatal(err)
		}
		after, err := pack.Judge(with(calm(row.option), row.facts))
		if err != nil {
			t.Fatal(err)
		}
		if _, ok := find(after, row.id); !ok {
			t.Errorf("%s: %s does not fire", row.hazard, row.id)
		}
		if _, ok := find(before, row.id); ok && row.facts != nil {
			t.Errorf("%s: %s fires on a calm boat too", row.hazard, row.id)
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	pack := load(b)
	var sets []economics.Facts
	for _, option := range economics.Options {
		sets = append(sets, calm(option))
	}
	for b.Loop() {
		if _, err := pack.Judge(sets...); err != nil {
			b.Fatal(err)
		}
	}
}
