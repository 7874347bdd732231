package economics

import (
	"fmt"

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
	if len(b.Evidence.IceHistory) > 0 {
		p, err := asDrawn(b, w)
		if err != nil {
			return BoxFigures{}, err
		}
		for i, h := range b.Evidence.IceHistory {
			e, err := h.Estimate(p.circumstances(h.Month - 1))
			if err := add("evidence.ice_history", i, e, err); err != nil {
				return BoxFigures{}, err
			}
		}
	}
	for _, l := range b.Evidence.Logs {
		tests = append(tests, l.Estimate())
	}
	all := heat.Combine(heat.Drawing(walls, b.foamKnown()), tests...)
	r := all.Range()
	capacity, err := heat.CapacityKg(volume, b.Ice.ShareOfBox, b.Ice.Kind)
	if err != nil {
		return BoxFigures{}, fmt.Errorf("ice.kind: %w", err)
	}
	return BoxFigures{
		Volume: volume, Drawn: walls, Leak: all.UA, Evidence: all, IceKg: float64(capacity),
		LeakLow: quantity.WattPerKelvin(r.Low), LeakHigh: quantity.WattPerKelvin(r.High),
	}, nil
}

// asDrawn gives the box on ice, leaking as its drawing says: what evidence is
// read with.
func asDrawn(b *Boat, w *world) (*proposal, error) {
	return newProposal(b, nil, w, 1, IceOnly, FitOut{})
}

// circumstances gives what a remembered spell of ice in a month, 0 for
// January, is read with: mean air, and the use the model expects. The empty
// box was warm at the start of it.
func (p *proposal) circumstances(month int) heat.Circumstances {
	s := p.setup(&Typical)
	mean := s.Mean(month, s.TargetC)
	return heat.Circumstances{
		Out:      p.walls.OutsideC(quantity.Celsius(mean.CabinC), quantity.Celsius(mean.SeaC), false),
		In:       quantity.Celsius(s.TargetC),
		Drain:    heat.DrainCelsius,
		Use:      quantity.Watt(mean.OpeningsW + mean.GoodsW),
		PullDown: quantity.Kilojoule(float64(heat.BareKJPerK(quantity.Litre(p.volumeL))) * max(0, mean.CabinC-s.TargetC)),
	}
}
