package energy

import (
	"math"

	"coldreckon/economics/quantity"
)

// RatingPlate is what a maker prints or says of a unit. A zero means that it
// is not told, except for the box temperature.
type RatingPlate struct {
	Amps     quantity.Ampere  // average over a day, running and resting
	Volts    quantity.Volt    // at which Amps is stated
	BoxUpTo  quantity.Litre   // the largest box it is sold for, 10 to 500 L
	Cooling  quantity.Watt    // at -10/45 °C
	Box      quantity.Celsius // temperature of the box, for Amps; see MakerBox
	Ambient  quantity.Range   // °C round box and condenser, for Amps; above Box, see MakerAmbient
	CooledBy Condenser
	Plate    Plate
}

// Meaning is what a rating plate says about the unit, and about the box its
// maker had in mind.
type Meaning struct {
	Cooling quantity.Range // W at -10/45 °C
	Eta     quantity.Range // share of Carnot's efficiency
	// ImpliedLeak, W/K, is the box in which the stated average current comes
	// true. Zero when no current is stated, or none that is more than standby.
	ImpliedLeak quantity.Range
	// ImpliedBox, L, is how large a maker's box that leaks no more than that
	// may be, at most 1,000. Zero when ImpliedLeak is.
	ImpliedBox quantity.Range
	// Fits tells whether current and largest box, where both are told, go
	// together within a factor of 2. If not, the maker had two different
	// boxes in mind, and the current says nothing about efficiency.
	Fits bool
}

// Meaning reads the plate.
//
//   - Cooling: as told, give or take the difference between two standards'
//     rating points. Otherwise what a maker's box of BoxUpTo litres in hot air
//     needs, divided by the run share that a maker allows there, taken back
//     from the plate's temperature to the rating point; combined with what
//     small units usually have.
//   - Eta: what the stated current needs to be true for a maker's box of
//     BoxUpTo litres, combined with the usual range.
//   - ImpliedLeak: with the usual eta, the leak that makes the unit take just
//     the stated current. It does not use BoxUpTo, except for the cooling.
//
// Ranges are carried through by moving one input at a time to its low and high
// mark and adding the logarithms' squares; two estimates are combined in
// logarithms, weighted by inverse variance.
func (p RatingPlate) Meaning() Meaning {
	m := Meaning{Cooling: p.cooling(), Eta: Eta().Range, Fits: true}
	if p.Amps <= 0 || p.meanW() <= Standby().Typical {
		return m
	}
	if p.BoxUpTo > 0 {
		implied := p.impliedEta(m.Cooling)
		ratio := implied.Typical / m.Eta.Typical
		m.Fits = 0.5 <= ratio && ratio <= 2
		if m.Fits {
			m.Eta = combine(m.Eta, implied)
		}
	}
	inputs := []quantity.Range{Eta().Range, m.Cooling, p.Ambient}
	m.ImpliedLeak = propagate(inputs, p.leakFor)
	m.ImpliedBox = propagate(append(inputs, MakerFoam().Range), func(x []float64) float64 {
		return makersBoxFor(p.leakFor(x), x[3])
	})
	return m
}

// meanW is the stated average power.
func (p RatingPlate) meanW() float64 { return float64(p.Amps) * float64(p.Volts) }

func (p RatingPlate) cycle(eta, cooling float64) Cycle {
	return Unit{RatedW: quantity.Watt(cooling), Eta: eta, CooledBy: p.CooledBy, Plate: p.Plate}.Cycle()
}

func (p RatingPlate) cooling() quantity.Range {
	if told := float64(p.Cooling); told > 0 {
		return quantity.Range{Low: told / toldSpread, Typical: told, High: told * toldSpread}
	}
	usual := UsualCooling().Range
	if p.BoxUpTo <= 0 {
		return usual
	}
	inputs := []quantity.Range{MakerFoam().Range, MakerHot().Range, MakerRunShare().Range}
	return combine(usual, propagate(inputs, p.coolingFor))
}

// coolingFor is the cooling at the rating point with which the unit holds a
// maker's box of the stated volume; x holds foam, hot air and run share.
func (p RatingPlate) coolingFor(x []float64) float64 {
	hot := quantity.Celsius(x[1])
	leak := MakersBoxLeak(p.BoxUpTo, quantity.Metre(x[0]))
	needed := float64(leak) * float64(hot-p.Box) / x[2]
	c := p.cycle(Eta().Typical, 1)
	te := min(plateCeilingC, float64(p.Box)-needed/float64(c.Plate))
	return needed / c.capacity(te, c.condensing(hot))
}

// impliedEta is the efficiency that makes the stated current true in a
// maker's box of the stated volume.
func (p RatingPlate) impliedEta(cooling quantity.Range) quantity.Range {
	inputs := []quantity.Range{MakerFoam().Range, p.Ambient, cooling}
	return propagate(inputs, func(x []float64) float64 {
		ambient := quantity.Celsius(x[1])
		c := p.cycle(1, x[2])
		w := c.Working(p.Box, ambient)
		heat := float64(MakersBoxLeak(p.BoxUpTo, quantity.Metre(x[0]))) * float64(ambient-p.Box)
		compressor := p.meanW() - float64(c.Standby) - float64(c.Condenser)*heat/float64(w.CapacityW)
		return heat / max(compressor, 0.01*p.meanW()) / w.COP
	})
}

// leakFor is the leak at which the unit takes the stated power; x holds eta,
// cooling and ambient.
func (p RatingPlate) leakFor(x []float64) float64 {
	ambient := quantity.Celsius(x[2])
	c := p.cycle(x[0], x[1])
	w := c.Working(p.Box, ambient)
	perWatt := 1/w.COP + float64(c.Condenser/w.CapacityW)
	return (p.meanW() - float64(c.Standby)) / perWatt / float64(ambient-p.Box)
}

// toldSpread is the spread of a stated cooling power: the same compressor
// differs by more than a fifth between the rating points of two standards
// (CECOMAF and ASHRAE, trade summary).
const toldSpread = 1.2

// MakerBox is the box temperature behind a maker's average current. Common
// practice, no source: makers state it for 5 to 6 °C.
const MakerBox quantity.Celsius = 5.5

// MakerAmbient is the air behind a maker's average current.
func MakerAmbient() Figure {
	return Figure{"maker_ambient", "air behind a maker's average current", "°C", quantity.Range{Low: 18, Typical: 21, High: 25}, judged}
}

// MakerFoam is the thickness of the dry foam round a maker's box.
func MakerFoam() Figure {
	return Figure{"maker_foam", "foam round a maker's test box", "m", quantity.Range{Low: 0.06, Typical: 0.08, High: 0.12}, judged}
}

// MakerHot is the air in which a unit still holds the largest box it is sold for.
func MakerHot() Figure {
	return Figure{"maker_hot", "air in which the largest box is still held", "°C", quantity.Range{Low: 27, Typical: 32, High: 38}, judged}
}

// MakerRunShare is the share of the day that a unit runs in the largest box it
// is sold for, in MakerHot air.
func MakerRunShare() Figure {
	return Figure{"maker_run_share", "run share allowed in the largest box", "", quantity.Range{Low: 0.3, Typical: 0.5, High: 0.8}, judged}
}

// UsualCooling is the cooling of small direct-current units at -10/45 °C.
func UsualCooling() Figure {
	return Figure{"usual_cooling", "cooling of a small unit at -10/45 °C", "W", quantity.Range{Low: 25, Typical: 45, High: 80}, judged}
}

const (
	makerFoamK    = 0.024   // W/m·K, new dry polyurethane
	makerFilms    = 2 / 8.3 // m²K/W, still air on both sides (ASHRAE Fundamentals, from memory)
	makerSeal     = 0.08    // W/m·K, compressed gasket; engineering judgement, from memory
	makerLidShare = 0.8     // lid opening's side over the box's; engineering judgement, from memory
)

// MakersBoxLeak gives the leak of the box a maker may be taken to have in
// mind: a cube of this inside volume in new dry polyurethane foam of this
// thickness, with one lid that seals. 10 to 500 L, 20 to 200 mm. Walls, edges
// and corners by the conduction shape factors of Langmuir (1913) on inside
// measures, the films counted into the conductivity.
func MakersBoxLeak(volume quantity.Litre, foam quantity.Metre) quantity.WattPerKelvin {
	side, thick := math.Cbrt(float64(volume)/1000), float64(foam)
	conductivity := thick / (thick/makerFoamK + makerFilms)
	shape := 6*side*side/thick + 12*0.54*side + 8*0.15*thick
	return quantity.WattPerKelvin(conductivity*shape + makerSeal*4*makerLidShare*side)
}

// makersBoxFor inverts MakersBoxLeak by halving, between 1 and 1,000 L.
func makersBoxFor(leak, foamM float64) float64 {
	low, high := 1.0, 1e3
	for range 50 {
		middle := math.Sqrt(low * high)
		if float64(MakersBoxLeak(quantity.Litre(middle), quantity.Metre(foamM))) < leak {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// propagate carries independent ranges through a positive function.
func propagate(inputs []quantity.Range, f func(x []float64) float64) quantity.Range {
	x := make([]float64, len(inputs))
	for i, in := range inputs {
		x[i] = in.Typical
	}
	typical := f(x)
	var down, up float64
	for i, in := range inputs {
		var least, most float64
		for _, mark := range [2]float64{in.Low, in.High} {
			x[i] = mark
			swing := math.Log(f(x) / typical)
			least, most = min(least, swing), max(most, swing)
		}
		x[i] = in.Typical
		down, up = math.Hypot(down, least), math.Hypot(up, most)
	}
	return quantity.Range{Low: typical * math.Exp(-down), Typical: typical, High: typical * math.Exp(up)}
}

// combine is the inverse-variance mean of two log-normal estimates of the
// same figure, neither of them exact.
func combine(a, b quantity.Range) quantity.Range {
	weigh := func(r quantity.Range) float64 { s := math.Log(r.High / r.Low); return 1 / (s * s) }
	wa, wb := weigh(a), weigh(b)
	middle := math.Exp((wa*math.Log(a.Typical) + wb*math.Log(b.Typical)) / (wa + wb))
	half := math.Exp(0.5 / math.Sqrt(wa+wb))
	return quantity.Range{Low: middle / half, Typical: middle, High: middle * half}
}
