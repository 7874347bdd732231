package economics

import (
	"math"
	"strings"
	"testing"

	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// A memory made by the season's loop gives back the leak it was made with, with
// the lid kept closed as in use, bought as from home. A large load tells more
// of the leak than a small one that a warm box melts, and none is surer than
// the memory of its hours, log-sd 0.30 (engineering judgement, from memory).
func TestRememberedIce(t *testing.T) {
	b := cruiser()
	g := groundOf(t, b)
	w := newWorld(&b, g)
	for _, load := range []FirstLoad{Bought, FromHome} {
		b.Ice.FirstLoad = load
		p, err := asDrawn(&b, &w)
		if err != nil {
			t.Fatal(err)
		}
		for _, inUse := range []bool{true, false} {
			for _, leak := range []float64{0.6, 1, 1.7} {
				was := math.Inf(1)
				for _, kg := range []quantity.Kilogram{8, 40} {
					ua := quantity.WattPerKelvin(leak) * p.leak().Total()
					h := heat.IceHistory{Ice: kg, Month: 7, InUse: inUse, Hours: 28 * 24}
					h.Hours = p.lasts(h)(ua)
					e, err := h.Estimate(p.lasts(h))
					if err != nil {
						t.Fatalf("%.0f kg, %.1f h: %v", float64(kg), h.Hours, err)
					}
					almost(t, "leak", float64(e.UA/ua), 1, 1e-6)
					if e.LogSD < 0.30 || inUse && e.LogSD >= was {
						t.Errorf("%.0f kg of ice in use %t: log-sd %.3f, of a smaller load %.3f", float64(kg), inUse, e.LogSD, was)
					}
					was = e.LogSD
				}
			}
		}
	}
}

// A memory that no leak can give is set aside, and said so; the rest counts.
func TestMemorySetAside(t *testing.T) {
	b := cruiser()
	b.Evidence.IceHistory = []heat.IceHistory{{Ice: 10, Hours: 2, Month: 7, InUse: true}, {Ice: 2, Hours: 400, Month: 7, InUse: true}, {Ice: 30, Hours: 60, Month: 7, InUse: true}}
	box, err := Weigh(b, groundOf(t, b))
	if err != nil {
		t.Fatal(err)
	}
	if len(box.SetAside) != 2 || len(box.Evidence.Used) != 2 || box.Evidence.Used[1].Source != heat.FromHistory {
		t.Errorf("set aside %q, used %+v", box.SetAside, box.Evidence.Used)
	}
	for _, note := range box.SetAside {
		if !strings.Contains(box.Evidence.Why, note) {
			t.Errorf("%q does not say %q", box.Evidence.Why, note)
		}
	}
}
