package economics

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"coldreckon/economics/climate"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Weigh gives the box as it stands: the leak that its drawing and all it has
// shown of itself lead to. The boat must be complete. It fails when walls or
// evidence do not make sense, naming the answer.
func Weigh(b Boat, ground climate.Ground) (BoxFigures, error) {
	w := newWorld(&b, ground)
	return boxEvidence(&b, &w)
}

// boxEvidence weighs the drawing of the box against what it has shown of itself.
func boxEvidence(b *Boat, w *world) (BoxFigures, error) {
	walls, err := b.Box.spec().Conductance()
	if err != nil {
		return BoxFigures{}, fmt.Errorf("box: %w", err)
	}
	volume := b.Box.shape().Volume()
	var tests []heat.Estimate
	add := func(key string, i int, e heat.Estimate, err error) error {
		if err != nil {
			return fmt.Errorf("%s[%d]: %w", key, i, err)
		}
		tests = append(tests, e)
		return nil
	}
	for i, t := range b.Evidence.IceTests {
		e, err := t.Estimate()
		if err := add("evidence.ice_tests", i, e, err); err != nil {
			return BoxFigures{}, err
		}
	}
	for i, t := range b.Evidence.JugTests {
		e, err := t.Estimate(heat.BareKJPerK(volume))
		if err := add("evidence.jug_tests", i, e, err); err != nil {
			return BoxFigures{}, err
		}
	}
	var setAside []string
	if len(b.Evidence.IceHistory) > 0 {
		p, err := asDrawn(b, w)
		if err != nil {
			return BoxFigures{}, err
		}
		for i, h := range b.Evidence.IceHistory {
			e, err := h.Estimate(p.lasts(h))
			if errors.Is(err, heat.ErrNoLeak) {
				setAside = append(setAside, fmt.Sprintf("What is remembered of ice in %s is set aside: %v.", time.Month(h.Month), err))
				continue
			}
			if err := add("evidence.ice_history", i, e, err); err != nil {
				return BoxFigures{}, err
			}
		}
	}
	for _, l := range b.Evidence.Logs {
		tests = append(tests, l.Estimate())
	}
	all := heat.Combine(heat.Drawing(walls, b.foamKnown()), tests...)
	all.Why = strings.Join(append([]string{all.Why}, setAside...), " ")
	r := all.Range()
	capacity, err := heat.CapacityKg(volume, b.Ice.ShareOfBox, b.Ice.Kind)
	if err != nil {
		return BoxFigures{}, fmt.Errorf("ice.kind: %w", err)
	}
	return BoxFigures{
		Volume: volume, Drawn: walls, Leak: all.UA, Evidence: all, SetAside: setAside, IceKg: float64(capacity),
		LeakLow: quantity.WattPerKelvin(r.Low), LeakHigh: quantity.WattPerKelvin(r.High),
	}, nil
}

// asDrawn gives the box on ice, leaking as its drawing says: what evidence is
// read with. What is remembered is of a box that held the drinks.
func asDrawn(b *Boat, w *world) (*proposal, error) {
	together := b.drinksTogether()
	return newProposal(&together, nil, w, 1, IceOnly, FitOut{})
}

// lasts gives how long a remembered load lasts by the season's own loop: in the
// month's mean weather, with the use that the model expects and the box as the
// owner starts his trips. With the lid kept closed nothing goes in, and the box
// is bare.
func (p *proposal) lasts(h heat.IceHistory) func(quantity.WattPerKelvin) float64 {
	s, ice := p.setup(&Typical), p.icing(&Typical)
	if !h.InUse {
		s.Box.OpensPerDay, s.Goods.PerishableKgPerDay, s.Goods.DrinksKgPerDay = 0, 0, 0
		s.Box.HeatKJPerK = float64(heat.BareKJPerK(quantity.Litre(p.volumeL)))
	}
	return func(ua quantity.WattPerKelvin) float64 {
		s.Box.Leak = p.leak().Scale(float64(ua / p.leak().Total()))
		return s.IceLasts(h.Month-1, ice, float64(h.Ice), heat.GoneShare, h.Hours)
	}
}
