package economics

import (
	"fmt"
	"strings"
	"testing"

	"coldreckon/economics/energy"
)

// What is taken for granted has a value and an origin, each once, and follows
// the boat: a lithium bank and a sea-cooled unit bring their own figures.
func TestGrantedFollowsTheBoat(t *testing.T) {
	boat := dunlin()
	keys := func() map[string]string {
		out := map[string]string{}
		for _, g := range Granted(boat) {
			if g.Figure() == "" || g.Why == "" || g.Label == "" {
				t.Errorf("%+v: something is missing", g)
			}
			if _, twice := out[g.Key]; twice {
				t.Errorf("%s stands twice", g.Key)
			}
			out[g.Key] = g.Label + ": " + g.Assumption().Value
		}
		return out
	}
	before := keys()
	if got := before["model.unit_eta"]; got != "share of the ideal efficiency: 0.33 (0.26 to 0.42)" {
		t.Errorf("found %q", got)
	}
	boat.Power.Chemistry, boat.Larger.CooledBy = energy.Lithium, energy.Seawater
	var changed []string
	for key, was := range before {
		if now := keys()[key]; now != was {
			changed = append(changed, was+" -> "+now)
		}
	}
	if all := strings.Join(changed, "; "); !strings.Contains(all, "lead") {
		t.Errorf("a lithium bank changed only %q", all)
	}
	if all := fmt.Sprint(keys()); !strings.Contains(all, "lithium") || !strings.Contains(all, "sea") {
		t.Errorf("lithium or sea water stand nowhere: %s", all)
	}
}
