package economics

import (
	"maps"
	"math"
	"os"
	"testing"

	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// doWork gives the boat as she is told anew once the work is done.
func doWork(b Boat, id OptionID, fit FitOut) Boat {
	b.Known, b.Box.Faces = maps.Clone(b.Known), maps.Clone(b.Box.Faces)
	perimeter := b.Box.lidPerimeter()
	spec, _, err := fit.apply(b.Box)
	if err != nil {
		panic(err) // the work has been reckoned with
	}
	poured := b.Box // before the inside changes
	// The inside is measured anew; foam, old and new, is told face by face as so
	// much of the old kind: an owner adds the two up.
	b.Box.Inside, b.Box.Volume = spec.Inside, spec.Inside.Volume()
	lid := b.Box.LidSide()
	for side, f := range b.Box.Faces {
		added := quantity.Metre(0)
		switch {
		case side == lid:
			added = fit.LidFoam
		case f.Reach == FromInside:
			added = fit.InsideFoam
		case f.Reach == FromOutside:
			added = fit.OutsideFoam
		}
		if fit.Poured && side != lid {
			added += poured.pouredThickness()
		}
		if side == heat.Fore && fit.Spacer > 0 {
			added += spec.Inside.Length * quantity.Metre(fit.Spacer/(1-fit.Spacer))
		}
		if added > 0 {
			f.Foam, f.Material, f.State = sameAs(f, added)
			b.Box.Faces[side] = f
		}
	}
	if b.Box.LidOpening.Length == 0 { // it stays as it was
		b.Box.LidOpening.Length, b.Box.LidOpening.Width = perimeter/4, perimeter/4
	}
	if fit.Poured {
		b.Box.VoidVolume = 0
	}
	if fit.Spacer > 0 {
		b.Box.SpacerFits = quantity.No
	}
	if fit.Seal {
		b.Box.LidSeal = heat.GoodSeal
	}
	if fit.Drain {
		b.Box.Drain = heat.TrappedDrain
	}
	if fit.Cover {
		b.Box.Cover = quantity.Yes
	}
	if fit.IceShare > 0 {
		b.Ice.ShareOfBox = fit.IceShare
	}
	if fit.NoIceRuns {
		b.Ice.Runs = quantity.No
	}
	if fit.ColdStart {
		b.Cruising.BeforeTrip = Precooled
		if id != IceOnly && !b.SeesShore() {
			b.Cruising.BeforeTrip = Running
		}
	}
	for _, u := range []*Unit{&b.Small, &b.Larger} {
		if fit.Vent {
			u.CooledBy = energy.Fan
		}
	}
	b.Power.SolarWp += fit.PanelWp
	b.Power.MaxPanelWp = max(b.Power.MaxPanelWp, b.Power.SolarWp)
	return b
}

// sameAs gives foam of one kind that holds heat back as a face's own and added
// dry board do together: of all kinds and states the one that is about as thick.
func sameAs(f Face, added quantity.Metre) (quantity.Metre, heat.Material, heat.State) {
	k := func(m heat.Material, s heat.State) float64 {
		dry, _ := heat.Conductivity(m)
		factor, _ := heat.MoistureFactor(m)
		water, _ := heat.WaterContent(s)
		return dry.Range.Typical * math.Exp(factor*float64(water))
	}
	resistance, thick := float64(added)/k(heat.XPS, heat.Dry), added
	if f.State != heat.Missing && f.Foam > 0 {
		resistance, thick = resistance+float64(f.Foam)/k(f.Material, f.State), thick+f.Foam
	}
	best, of, state := quantity.Metre(math.Inf(1)), heat.XPS, heat.Dry
	for _, m := range []heat.Material{heat.OldPolyurethane, heat.Polyurethane, heat.XPS, heat.EPS, heat.Cork} {
		for _, s := range []heat.State{heat.Dry, heat.Damp, heat.Wet} {
			if t := quantity.Metre(resistance * k(m, s)); math.Abs(float64(t-thick)) < math.Abs(float64(best-thick)) {
				best, of, state = t, m, s
			}
		}
	}
	return best, of, state
}

// Once the work is done and the boat told anew, what was fitted is as told: the
// same days are kept in the same futures, to three in a hundred. Batteries of two
// ages cannot be told as one; they stay added. What lives in a box under 100 L is
// guessed from the box as told, which a lining makes smaller: those are left out.
func TestToldAnewIsFitted(t *testing.T) {
	compared, small := 0, os.Getenv("COLDRECKON_SMALL_BOXES") != ""
	eachPond(t, func(p *pond) {
		for k := range p.futures { // who has done the work has seen what is behind the liner
			p.futures[k].Foam = FoamAsTold
		}
		for _, id := range cold {
			fit, anew := p.work[id], FitOut{Battery: p.work[id].Battery}
			if fit == anew {
				continue
			}
			after := doWork(p.boat, id, fit)
			if was, is := p.boat.Box.shape().Volume(), after.Box.shape().Volume(); is < was-1e-6 && is < 100 && !small {
				continue
			}
			compared++
			wasShare, wasWorks := kept(p.lived(p.boat, id, fit))
			share, works := kept(p.lived(after, id, anew))
			if math.Abs(share-wasShare) > 0.03 || math.Abs(works-wasWorks) > 1.5/pondFutures {
				t.Errorf("boat %d, %s, %+v: fitted %.3f kept, works in %.3f; told anew %.3f and %.3f", p.seed, id, fit, wasShare, wasWorks, share, works)
			}
		}
	})
	if compared == 0 {
		t.Error("no work was done")
	}
}
