package economics

import (
	"math"
	"strings"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Foam poured round the box lowers its leak and takes no room; a block of foam
// in it takes the room it is long, and lowers the leak by more than foam of its
// thickness on that face alone, as the other faces shrink.
func TestFoamPouredAndFilledIn(t *testing.T) {
	tried := 0
	eachPond(t, func(p *pond) {
		b := p.changed(func(b *Boat) { b.Box.VoidVolume, b.Box.SpacerFits = 40, quantity.Yes })
		w, _ := p.place(&b)
		leak := func(fit FitOut) (*proposal, float64) {
			q, err := newProposal(&b, &p.book, &w, 1, IceOnly, fit)
			if err != nil {
				t.Fatal(err)
			}
			return q, float64(q.leak().Total())
		}
		told, toldW := leak(FitOut{})
		poured, pouredW := leak(FitOut{Poured: true})
		if pouredW >= toldW || poured.volumeL != told.volumeL {
			t.Errorf("boat %d: poured %.3f W/K in %.1f L, told %.3f in %.1f", p.seed, pouredW, poured.volumeL, toldW, told.volumeL)
		}
		last := toldW
		for _, share := range []quantity.Fraction{0.2, 0.4} {
			filled, filledW := leak(FitOut{Spacer: share})
			if want := told.volumeL * (1 - float64(share)); math.Abs(filled.volumeL-want) > 1e-6 {
				t.Errorf("boat %d: a block of %v leaves %.2f L, want %.2f", p.seed, share, filled.volumeL, want)
			}
			if filledW >= last {
				t.Errorf("boat %d: a block of %v leaks %.3f W/K, less of it %.3f", p.seed, share, filledW, last)
			}
			facts := filled.calculator().facts
			if got, want := facts["spacer_l"].(float64), told.volumeL*float64(share); math.Abs(got-want) > 1e-6 {
				t.Errorf("boat %d: the block is billed for %.2f L, it fills %.2f", p.seed, got, want)
			}
			last = filledW
		}
		tried++
	})
	if tried == 0 {
		t.Fatal("no boat tried")
	}
}

// Poured foam by hand: 40 L round a cube of 100 L fill 28 L; over five faces of
// 0.2154 m² each that is 26.0 mm. Worked by hand.
func TestPouredFoamByHand(t *testing.T) {
	b := untold()
	b.Box.Inside = quantity.Dimensions{Length: 0.46416, Width: 0.46416, Height: 0.46416}
	b.Box.VoidVolume = 40
	if mm := 1000 * float64(b.Box.pouredThickness()); math.Abs(mm-26.0) > 0.05 {
		t.Errorf("%.2f mm, by hand 26.0", mm)
	}
	if n := len(b.Box.poured()); n != 5 {
		t.Errorf("foam runs behind %d faces, want all but the lid's", n)
	}
	if front := (Box{Lid: heat.FrontDoor}).poured(); len(front) != 5 || front[0] != heat.Top {
		t.Errorf("of a front door: %v", front)
	}
}

// A unit run by day only offers itself to an owner who would, and where power
// never runs out it keeps no more days than one that runs as it likes; in a good
// box it keeps as many.
func TestByDayOnly(t *testing.T) {
	var keeps [2]int // alone, beside bottles
	eachPond(t, func(p *pond) {
		b := p.changed(func(b *Boat) {
			b.Power.ByDay, b.Small.Form, b.Small.Plate = quantity.Yes, BuiltIn, energy.Thin
			for side, f := range b.Box.Faces { // a good box
				b.Box.Faces[side] = Face{Foam: 0.1, Material: heat.XPS, State: heat.Dry, Neighbour: f.Neighbour, Reach: f.Reach}
			}
			b.Box.LidSeal, b.Box.Drain = heat.GoodSeal, heat.NoDrain
		})
		offered := func(b *Boat) (n int) {
			for _, o := range otherWorks(b, SmallUnit, &b.Small) {
				if o.Bottles && !o.ByDay {
					t.Errorf("boat %d: bottles beside a unit that runs by night", p.seed)
				}
				if o.ByDay {
					n++
				}
			}
			return n
		}
		if no := p.changed(func(b *Boat) { b.Power.ByDay = quantity.Unknown }); offered(&no) != 0 || offered(&b) == 0 {
			t.Errorf("boat %d: offered %d times untold, %d times told", p.seed, offered(&no), offered(&b))
		}
		w, _ := p.place(&b)
		var ideas [3]aYear
		for i, fit := range []FitOut{{}, {ByDay: true}, {ByDay: true, Bottles: true}} {
			q, err := newProposal(&b, &p.book, &w, 1, SmallUnit, fit)
			if err != nil {
				t.Fatal(err)
			}
			var air weatherYears
			air.fill(&b, &w, &Typical, stream{p.seed, 0}, 3)
			ideas[i] = q.live(&Typical, &air, &baseLoads{}, nil)
		}
		for _, by := range ideas[1:] {
			if ideas[0].longestOff == 0 && by.keptShare > ideas[0].keptShare+1e-9 {
				t.Errorf("boat %d: by day it keeps %.3f of the days, always on %.3f", p.seed, by.keptShare, ideas[0].keptShare)
			}
		}
		t.Logf("boat %d: kept %.3f always on, %.3f by day alone, %.3f beside bottles", p.seed, ideas[0].keptShare, ideas[1].keptShare, ideas[2].keptShare)
		if ideas[1].keptShare > ideas[2].keptShare+0.02 {
			t.Errorf("boat %d: by day alone it keeps %.3f of the days, beside bottles %.3f", p.seed, ideas[1].keptShare, ideas[2].keptShare)
		}
		for i := range keeps {
			if ideas[1+i].keptShare > 0.9 {
				keeps[i]++
			}
		}
	})
	if keeps[0] == 0 || keeps[1] <= keeps[0] {
		t.Errorf("carried through the night in %d boats alone, in %d beside bottles: want some, and more", keeps[0], keeps[1])
	}
}

// Once foam is poured and a block put in, and the boat told anew, her box leaks
// and holds what it did with the work, and neither is offered again.
func TestFilledBoxToldAnew(t *testing.T) {
	eachPond(t, func(p *pond) {
		b := p.changed(func(b *Boat) { b.Box.VoidVolume, b.Box.SpacerFits = 40, quantity.Yes })
		w, _ := p.place(&b)
		for _, fit := range []FitOut{{Poured: true}, {Spacer: 0.2}, {Poured: true, Spacer: 0.4}} {
			with, err := newProposal(&b, &p.book, &w, 1, IceOnly, fit)
			if err != nil {
				t.Fatal(err)
			}
			anew := doWork(b, IceOnly, fit)
			told, err := newProposal(&anew, &p.book, &w, 1, IceOnly, FitOut{})
			if err != nil {
				t.Fatal(err)
			}
			if got, want := float64(told.leak().Total()), float64(with.leak().Total()); math.Abs(got/want-1) > 0.03 {
				t.Errorf("boat %d, %+v: told anew %.3f W/K, with the work %.3f", p.seed, fit, got, want)
			}
			if math.Abs(told.volumeL-with.volumeL) > 0.1 {
				t.Errorf("boat %d, %+v: told anew %.2f L, with the work %.2f", p.seed, fit, told.volumeL, with.volumeL)
			}
			for _, again := range boxWorks(&anew, nil) {
				if fit.Poured && again.Poured || fit.Spacer > 0 && again.Spacer > 0 {
					t.Fatalf("boat %d: offered again: %+v", p.seed, again)
				}
			}
		}
	})
}

// What is taken for granted of them is told to the owner whom it concerns.
func TestFilledIsGranted(t *testing.T) {
	keys := func(b Boat) (out string) {
		for _, g := range Granted(b) {
			out += g.Key + " "
		}
		return out
	}
	b := untold()
	for _, key := range []string{"model.poured_fills", "model.bottles_kg"} {
		if strings.Contains(keys(b), key) {
			t.Errorf("%s concerns nobody yet", key)
		}
		filled := b
		filled.Box.VoidVolume, filled.Power.ByDay = 30, quantity.Yes
		if !strings.Contains(keys(filled), key) {
			t.Errorf("%s is not told", key)
		}
	}
}
