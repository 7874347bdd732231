package handout

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics/cost"
	"coldreckon/economics/energy"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/sheet"
)

// chained is the chart to be followed with a pencil, in a unit system's units:
// volume up to foam, leak across to the month, down to nights, back to price,
// and down to money. Each pair of fields shares the scale between them.
type chained struct {
	h       *Handout
	u       units
	foams   []float64
	months  []monthLine
	nights  []float64
	prices  []float64
	perHeat float64 // ice a day for a unit of heat, kg or lb
	hardest int     // the month in which the unit works hardest, 0 for January

	a, b, c, d                   sheet.Rect // the fields
	vol, leak, ice, bought, cost axis
}

// monthLine is a line of field B: months alike, and how much warmer it is then
// outside the box than in it.
type monthLine struct {
	name    string
	degrees float64
}

// Of what the chart takes for granted.
const (
	chartRatedW = 50.0 // cooling of the unit whose amp-hours are shown, W at -10/45 °C
	unitYears   = 10   // that a unit is reckoned over
	unitLife    = 12
	upkeepShare = 0.02 // of its price, a year
)

// The example, in the units of a system: a box and a boat of nobody's.
type example struct {
	volume, thick, more, nights, price, unit, people float64
	trips, fits, later, carried                      float64
}

func exampleOf(sys quantity.System) example {
	e := example{volume: 3.5, thick: 2, more: 0.8, nights: 40, price: 0.4, unit: 1400, people: 2, trips: 10, fits: 50, later: 8, carried: 40}
	if sys != quantity.US {
		e.volume, e.thick, e.more, e.price, e.fits, e.carried = 100, 50, 0.45, 1, 22, 18
	}
	return e
}

// newChained works the chart out for a width; its fields begin at (x, y).
func (h *Handout) newChained(x, y, w float64) *chained {
	u := unitsOf(h.sys)
	c := &chained{h: h, u: u, nights: []float64{10, 20, 40, 80, 160}, prices: []float64{0.5, 1, 2, 4}, foams: []float64{5, 10, 15, 25, 40, 60, 100}}
	c.vol, c.leak = axis{lo: 40, hi: 200}, axis{lo: 0.2, hi: 5}
	if h.sys == quantity.US {
		c.vol, c.leak = axis{lo: 1.5, hi: 7}, axis{lo: 0.4, hi: 9}
		c.prices, c.foams = []float64{0.2, 0.4, 0.8, 1.6}, []float64{0.25, 0.5, 0.75, 1, 1.5, 2.5, 4}
	}
	c.perHeat = float64(heat.MeltKgPerDay(quantity.Watt(u.watt), heat.DrainCelsius)) / u.kilogram
	for m := range h.year {
		if h.year[m].Degrees > h.year[c.hardest].Degrees {
			c.hardest = m
		}
	}
	c.months = monthLines(h.year)
	top := c.leak.hi * 0.8 * c.most() * c.perHeat
	c.ice = axis{lo: top / 35, hi: top}
	c.bought = axis{lo: top / 35 * 20, hi: top * 60}
	c.cost = axis{lo: 20, hi: 2000}

	gap, deep := 20.0, fieldDeep(w)
	wide := (w - gap) / 2
	c.a = sheet.Rect{X: x, Y: y + chartTop, W: wide, H: deep}
	c.b = sheet.Rect{X: x + wide + gap, Y: c.a.Y, W: wide, H: deep}
	c.c = sheet.Rect{X: c.b.X, Y: c.b.Bottom() + betweenFields, W: wide, H: deep}
	c.d = sheet.Rect{X: c.a.X, Y: c.c.Y, W: wide, H: deep}
	c.vol.from, c.vol.to = c.a.X, c.a.Right()
	c.leak.from, c.leak.to = c.a.Bottom(), c.a.Y
	c.ice.from, c.ice.to = c.b.X, c.b.Right()
	c.bought.from, c.bought.to = c.c.Y, c.c.Bottom()
	c.cost.from, c.cost.to = c.d.X, c.d.Right()
	return c
}

const (
	chartTop      = 8.5  // over the fields, for the name of the scale
	betweenFields = 15.0 // for two scales
	rulersDeep    = 27.0 // under the fields, for three rulers
)

// fieldDeep is the height of a field. The narrower paper is the higher one.
func fieldDeep(w float64) float64 {
	if w < 190 {
		return 53
	}
	return 44
}

func chainedHeight(w float64) float64 { return chartTop + 2*fieldDeep(w) + betweenFields + rulersDeep }

// most is what has to be held off in the hardest month.
func (c *chained) most() float64 { return c.h.year[c.hardest].Degrees }

// monthLines puts months together that are alike within a sixth, warmest first;
// months in which little has to be held off have none.
func monthLines(year [12]monthRow) []monthLine {
	order := make([]int, 0, 12)
	for m := range year {
		order = append(order, m)
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(year[b].Degrees, year[a].Degrees) })
	var out []monthLine
	for i := 0; i < len(order) && len(out) < 6; {
		first := year[order[i]].Degrees
		if first < 0.3*year[order[0]].Degrees || first <= 0 {
			break
		}
		var in [12]bool
		sum, n := 0.0, 0
		for ; i < len(order) && year[order[i]].Degrees > first*0.84; i++ {
			in[order[i]] = true
			sum, n = sum+year[order[i]].Degrees, n+1
		}
		out = append(out, monthLine{monthsNamed(in), sum / float64(n)})
	}
	return out
}

// monthsNamed names months, runs of them by their ends: "Jun to Aug, Oct".
func monthsNamed(in [12]bool) string {
	var parts []string
	start := 0 // a month that is not in, so that a run over the year's end is one
	for start < 11 && in[start] {
		start++
	}
	for i := 1; i <= 12; i++ {
		m := (start + i) % 12
		if !in[m] || in[(m+11)%12] && i > 1 {
			continue
		}
		last, length := m, 1
		for length < 12 && in[(last+1)%12] && (last+1)%12 != m {
			last, length = (last+1)%12, length+1
		}
		switch length {
		case 1:
			parts = append(parts, month(m))
		case 2:
			parts = append(parts, month(m), month(last))
		default:
			parts = append(parts, month(m)+" to "+month(last))
		}
	}
	return strings.Join(parts, ", ")
}

// iceDay is what melts in a day through a leak.
func (c *chained) iceDay(leak, degrees float64) float64 { return leak * degrees * c.perHeat }

// ahDay gives the amp-hours at 12 V that the unit takes in the hardest month
// against as much heat as melts that ice; beyond tells that it never pauses.
func (c *chained) ahDay(ice float64) (ah float64, beyond bool) {
	cell := duty(c.h.ground, ice/c.perHeat*c.u.watt, chartRatedW, energy.Fan)
	return cell.Wh / leadWhPerAh, cell.Beyond
}

// iceOfAh is the ice a day at which the unit takes so many amp-hours, and ok
// whether it still pauses there.
func (c *chained) iceOfAh(ah float64) (ice float64, ok bool) {
	ice, ok = cost.Crossing(func(ice float64) float64 {
		got, _ := c.ahDay(ice)
		return got - ah
	}, c.ice.lo/2, c.ice.hi)
	if !ok {
		return 0, false
	}
	_, beyond := c.ahDay(ice)
	return ice, !beyond
}

// pauses is the most ice a day whose heat the unit holds with pauses.
func (c *chained) pauses() float64 { return most(c.h.ground, chartRatedW) / c.u.watt * c.perHeat }

// aYear is what a unit costs a year for each 1.00 that it costs fitted, kept up
// for so many years.
func aYear(years int) float64 {
	line := cost.Line{First: 1, Life: unitLife, Renewal: 1, Yearly: upkeepShare}
	return float64(cost.Schedule([]cost.Line{line}, years, nil).YearlyEquivalent(rate))
}

// followed are the figures of the example along its path.
type followed struct{ foam, walls, leak, withUse, ice, ah, melts, bought, cost, mark, unit, without float64 }

func (c *chained) follow(e example) followed {
	f := followed{foam: e.thick * c.h.counts[0][1]} // old foam, damp
	f.walls = c.u.walls(e.volume, f.foam)
	f.leak = f.walls + e.more
	f.withUse = f.leak + (e.people*usePerPerson+useOfLid)/c.u.leakUnit()
	f.ice = c.iceDay(f.withUse, c.months[0].degrees)
	f.ah, _ = c.ahDay(f.ice)
	f.melts = f.ice * e.nights
	f.bought = e.trips*e.fits + e.later*e.carried
	f.cost = f.bought * e.price
	f.mark = f.cost + e.people*e.nights*c.h.spoiledANight()
	f.unit, f.without = e.unit*aYear(unitYears), e.people*e.nights*c.h.money.dry
	return f
}

// priceLabel prints a price of ice.
func (c *chained) priceLabel(p float64) string {
	return fmt.Sprintf("%s%s a %s", c.h.money.currency, price(p), c.h.words.mass)
}

// through is the line of a field on which y is k times x.
func through(x, y axis, k float64, field sheet.Rect) (from, to sheet.Point, ok bool) {
	low, high := x.lo/100, x.hi*100
	return cut(sheet.Point{X: x.at(low), Y: y.at(k * low)}, sheet.Point{X: x.at(high), Y: y.at(k * high)}, field)
}

// along gives the point a share of the way along a line.
func along(from, to sheet.Point, share float64) sheet.Point {
	return sheet.Point{X: from.X + share*(to.X-from.X), Y: from.Y + share*(to.Y-from.Y)}
}

func disc(s sheet.Sheet, x, y, radius float64, f sheet.Fill, p sheet.Pen) {
	pts := make([]sheet.Point, 20)
	for i := range pts {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(pts)))
		pts[i] = sheet.Point{X: x + radius*sin, Y: y + radius*cos}
	}
	s.Polygon(pts, f, p)
}
