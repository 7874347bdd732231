package energy

import "coldreckon/economics/quantity"

// Holding is a thin-plate unit that holds a box at one temperature, hour after
// hour: what Working gives then depends on the coolant alone and is read from a
// table, to 1e-6. Make one with Ready.Holding.
type Holding struct {
	rise float64
	// By condensing temperature over condenserFloorC, in kelvins.
	steps [holdingSteps]struct{ perCOP, perCapacity cubic }
}

// holdingSteps is how many kelvins of condensing temperature the table spans.
const holdingSteps = 45

// Holding prepares the unit to hold a box. ok is false where the plate would
// stand at its ceiling at some coolant, which no smooth table follows.
func (r *Ready) Holding(box quantity.Celsius, h *Holding) (ok bool) {
	h.rise = float64(r.Rise)
	var perCOP, perCapacity [holdingSteps + 1]float64
	for i := range perCOP {
		w := r.Working(box, quantity.Celsius(condenserFloorC+float64(i)-h.rise))
		if w.Te >= plateCeilingC {
			return false
		}
		perCOP[i], perCapacity[i] = 1/w.COP, 1/float64(w.CapacityW)
	}
	for i := range h.steps {
		h.steps[i].perCOP, h.steps[i].perCapacity = through(&perCOP, i), through(&perCapacity, i)
	}
	return true
}

// through gives the cubic over step i between values, with the slopes that
// their neighbours give.
func through(values *[holdingSteps + 1]float64, i int) cubic {
	slope := func(i int) float64 {
		switch i {
		case 0: // of the parabola through the first three
			return -1.5*values[0] + 2*values[1] - 0.5*values[2]
		case holdingSteps:
			return 1.5*values[i] - 2*values[i-1] + 0.5*values[i-2]
		}
		return (values[i+1] - values[i-1]) / 2
	}
	return hermite(values[i], slope(i), values[i+1], slope(i+1))
}

// At gives the inverses of COP and of cooling power, per W, while the condenser breathes coolant of a temperature. ok is false where the
// table does not reach.
func (h *Holding) At(coolant float64) (perCOP, perCapacity float64, ok bool) {
	at := coolant + h.rise - condenserFloorC
	if !(at > 0) {
		return h.steps[0].perCOP[0], h.steps[0].perCapacity[0], true
	}
	i := int(at)
	if i >= holdingSteps {
		return 0, 0, false
	}
	u, step := at-float64(i), &h.steps[i]
	return step.perCOP.at(u), step.perCapacity.at(u), true
}
