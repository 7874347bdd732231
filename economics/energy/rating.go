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
	Size     Size // anything unknown counts as Small
}

// Meaning is what a rating plate says about the unit, and about the box its
// maker had in mind.
type Meaning struct {
	Cooling quantity.Range // W at -10/45 °C
	Eta     quantity.Range // share of Carnot's efficiency, within Eta's range
	// ImpliedLeak, W/K, is the box in which the stated average current comes
	// true with Cooling and Eta. Zero when no current is stated, or none that is
	// more than standby.
	ImpliedLeak quantity.Range
	// ImpliedBox, L, is how large a maker's box that leaks no more than that
	// may be, at most 1,000. Zero when ImpliedLeak is.
	ImpliedBox quantity.Range
	// Fits tells whether some efficiency of the usual range gives the stated
	// current in a maker's box of BoxUpTo litres, both told. If not, the maker's
	// box or room differs from it.
	Fits bool
}

// Meaning reads the plate. A worse plate, of more current for the same box or
// a smaller box for the same current, never means a better unit.
//
//   - Cooling: as told, give or take the difference between two standards'
//     rating points. Otherwise that of the usual compressor of its size, for
//     nearly all units are built round one kind; more only where a maker's box
//     of BoxUpTo litres in hot air would need more.
//   - Eta: what makes the stated current true in a maker's box of BoxUpTo
//     litres, combined with the usual range and held to its ends.
//   - ImpliedLeak: the leak that makes this unit take just the stated current.
//     It does not use BoxUpTo, except for the two above.
//
// Ranges are carried through by moving one input at a time to its low and high
// mark and adding the logarithms' squares; two estimates are combined in
// logarithms, weighted by inverse variance.
func (p RatingPlate) Meaning() Meaning {
	m := Meaning{Cooling: p.cooling(), Eta: Eta().Range, Fits: true}
	if p.Amps <= 0 {
		return m
	}
	if p.BoxUpTo > 0 {
		usual := Eta().Range
		implied := p.impliedEta(quantity.Watt(m.Cooling.Typical))
		m.Fits = implied.High >= usual.Low && implied.Low <= usual.High
		m.Eta = combine(usual, implied)
		for _, mark := range [...]*float64{&m.Eta.Low, &m.Eta.Typical, &m.Eta.High} {
			*mark = min(usual.High, max(usual.Low, *mark))
		}
	}
	if p.meanW() <= Standby().Typical {
		return m
	}
	inputs := []quantity.Range{m.Eta, m.Cooling, p.Ambient}
	m.ImpliedLeak = propagate(inputs, p.leakFor)
	m.ImpliedBox = propagate(append(inputs, makerFoam().Range), func(x []float64) float64 {
		return makersBoxFor(p.leakFor(x), x[3])
	})
	return m
}

// meanW is the stated average power.
func (p RatingPlate) meanW() float64 { return float64(p.Amps) * float64(p.Volts) }

// cycle is the unit as its maker tests it: with free air round its condenser
// and a fan, or in water.
func (p RatingPlate) cycle(eta, cooling float64) Cycle {
	by := Fan
	if p.CooledBy == Seawater {
		by = Seawater
	}
	return Unit{RatedW: quantity.Watt(cooling), Eta: eta, CooledBy: by, Plate: p.Plate}.Cycle()
}

func (p RatingPlate) cooling() quantity.Range {
	if told := float64(p.Cooling); told > 0 {
		return quantity.Range{Low: told / toldSpread, Typical: told, High: told * toldSpread}
	}
	usual := UsualCooling(p.Size).Range
	if p.BoxUpTo <= 0 {
		return usual
	}
	need := p.coolingFor()
	return quantity.Range{Low: max(usual.Low, need), Typical: max(usual.Typical, need), High: max(usual.High, need)}
}

// coolingFor is the cooling at the rating point with which the unit just holds a
// maker's box of the stated volume in hot air, up to 1 kW.
func (p RatingPlate) coolingFor() float64 {
	hot := quantity.Celsius(makerHot().Typical)
	heat := quantity.Watt(makersBoxLeak(p.BoxUpTo, quantity.Metre(makerFoam().Typical))) * quantity.Watt(hot-p.Box)
	return firstEnough(0.1, 1e3, func(w float64) bool { return p.cycle(Eta().Typical, w).Working(p.Box, hot).CapacityW >= heat })
}

// firstEnough finds by halving, as ratios go, the figure between two from which on
// something is enough.
func firstEnough(low, high float64, enough func(float64) bool) float64 {
	for range 50 {
		if middle := math.Sqrt(low * high); enough(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// impliedEta is the efficiency that makes the stated current true in a
// maker's box of the stated volume, 10 at most. Its spread is that of a 100 L box for any plate, so that it weighs the
// same beside the usual range whatever is stated.
func (p RatingPlate) impliedEta(cooling quantity.Watt) quantity.Range {
	c := p.cycle(1, float64(cooling))
	heatPerCOP := func(volume quantity.Litre, x []float64) (w, shareOn float64) {
		ambient := quantity.Celsius(x[1])
		work := c.Working(p.Box, ambient)
		heat := float64(makersBoxLeak(volume, quantity.Metre(x[0]))) * float64(ambient-p.Box)
		return heat / work.COP, heat / float64(work.CapacityW)
	}
	inputs := []quantity.Range{makerFoam().Range, p.Ambient}
	spread := propagate(inputs, func(x []float64) float64 { w, _ := heatPerCOP(100, x); return w })

	w, shareOn := heatPerCOP(p.BoxUpTo, []float64{makerFoam().Typical, p.Ambient.Typical})
	compressor := p.meanW() - float64(c.Standby) - float64(c.Condenser)*shareOn
	eta := w / max(compressor, w/10) // fan and standby alone may take all of the stated current
	return spread.Scale(eta / spread.Typical)
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

// makerFoam is the thickness of the dry foam round a maker's box.
func makerFoam() Figure {
	return Figure{"maker_foam", "foam round a maker's test box", "m", quantity.Range{Low: 0.04, Typical: 0.05, High: 0.08}, judged}
}

// makerHot is the air in which a unit still holds the largest box it is sold for.
func makerHot() Figure {
	return Figure{"maker_hot", "air in which the largest box is still held", "°C", quantity.Range{Low: 27, Typical: 32, High: 38}, judged}
}

// UsualCooling is the cooling at -10/45 °C of the compressors that 12 V units
// are built round. A size that is not known counts as Small.
func UsualCooling(s Size) Figure {
	return Figure{"usual_cooling", "cooling of a small unit at -10/45 °C", "W", quantity.Range{Low: 45, Typical: 60, High: 90},
		"common practice, no source"}.
		or(s == Larger, "cooling of a larger unit at -10/45 °C", quantity.Range{Low: 75, Typical: 100, High: 150})
}

const (
	makerFoamK    = 0.024   // W/m·K, new dry polyurethane
	makerFilms    = 2 / 8.3 // m²K/W, still air on both sides (ASHRAE Fundamentals, from memory)
	makerSeal     = 0.08    // W/m·K, compressed gasket; engineering judgement, from memory
	makerLidShare = 0.8     // lid opening's side over the box's; engineering judgement, from memory
)

// makersBoxLeak gives the leak of the box a maker may be taken to have in
// mind: a cube of this inside volume in new dry polyurethane foam of this
// thickness, with one lid that seals. 10 to 500 L, 20 to 200 mm. Walls, edges
// and corners by the conduction shape factors of Langmuir (1913) on inside
// measures, the films counted into the conductivity.
func makersBoxLeak(volume quantity.Litre, foam quantity.Metre) quantity.WattPerKelvin {
	side, thick := math.Cbrt(float64(volume)/1000), float64(foam)
	conductivity := thick / (thick/makerFoamK + makerFilms)
	shape := 6*side*side/thick + 12*0.54*side + 8*0.15*thick
	return quantity.WattPerKelvin(conductivity*shape + makerSeal*4*makerLidShare*side)
}

// makersBoxFor inverts makersBoxLeak, between 1 and 1,000 L.
func makersBoxFor(leak, foamM float64) float64 {
	return firstEnough(1, 1e3, func(litres float64) bool {
		return float64(makersBoxLeak(quantity.Litre(litres), quantity.Metre(foamM))) >= leak
	})
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
	weigh := func(r quantity.Range) float64 { return 1 / (r.LogSD() * r.LogSD()) }
	wa, wb := weigh(a), weigh(b)
	middle := math.Exp((wa*math.Log(a.Typical) + wb*math.Log(b.Typical)) / (wa + wb))
	return quantity.Spread(middle, 1/math.Sqrt(wa+wb))
}
