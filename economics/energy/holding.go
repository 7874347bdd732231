package energy

import "coldreckon/economics/quantity"

// Holding is a thin-plate unit that holds a box at one temperature, hour after
// hour: what Working gives then depends on the coolant alone and is read from a
// table, to 1e-6. Make one with Ready.Holding.
type Holding struct {
	rise float64
	// By condensing temperature over condenserFloorC, in kelvins.
	capacityW, perCOP, perCapacity [holdingSteps]cubic
}

// holdingSteps is how many kelvins of condensing temperature the table spans.
const holdingSteps = 45

// Holding prepares the unit to hold a box. ok is false where the plate would
// stand at its ceiling at some coolant, which no smooth table follows.
func (r *Ready) Holding(box quantity.Celsius, h *Holding) (ok bool) {
	h.rise = float64(r.Rise)
	var capacity, perCOP, perCapacity [holdingSteps + 1]float64
	for i := range capacity {
		w := r.Working(box, quantity.Celsius(condenserFloorC+float64(i)-h.rise))
		if w.Te >= plateCeilingC {
			return false
		}
		capacity[i], perCOP[i], perCapacity[i] = float64(w.CapacityW), 1/w.COP, 1/float64(w.CapacityW)
	}
	through(&capacity, &h.capacityW)
	through(&perCOP, &h.perCOP)
	through(&perCapacity, &h.perCapacity)
	return true
}

// through lays a cubic over each step between values, with the slopes that
// their neighbours give.
func through(values *[holdingSteps + 1]float64, table *[holdingSteps]cubic) {
	slope := func(i int) float64 {
		switch i {
		case 0: // of the parabola through the first three
			return -1.5*values[0] + 2*values[1] - 0.5*values[2]
		case holdingSteps:
			return 1.5*values[i] - 2*values[i-1] + 0.5*values[i-2]
		}
		return (values[i+1] - values[i-1]) / 2
	}
	before := slope(0)
	for i := range table {
		after := slope(i + 1)
		table[i] = hermite(values[i], before, values[i+1], after)
		before = after
	}
}

// At gives the cooling power, W, and the inverses of COP and cooling power
// while the condenser breathes coolant of a temperature. ok is false where the
// table does not reach.
func (h *Holding) At(coolant float64) (capacityW, perCOP, perCapacity float64, ok bool) {
	at := coolant + h.rise - condenserFloorC
	if !(at > 0) {
		return h.capacityW[0][0], h.perCOP[0][0], h.perCapacity[0][0], true
	}
	i := int(at)
	if i >= holdingSteps {
		return 0, 0, 0, false
	}
	u := at - float64(i)
	return h.capacityW[i].at(u), h.perCOP[i].at(u), h.perCapacity[i].at(u), true
}
