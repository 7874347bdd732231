package handout

import (
	"math"
	"strconv"

	"coldreckon/report/sheet"
)

var (
	chartType = sheet.Type{Size: 9}
	chartBold = chartType.In(sheet.Bold)
	curvePen  = sheet.Pen{Width: 0.5, Grey: sheet.Black}
	framePen  = sheet.Pen{Width: 0.35, Grey: sheet.Black}
	tickPen   = sheet.Pen{Width: 0.25, Grey: sheet.Black}
	gridPen   = sheet.Pen{Width: 0.12, Grey: sheet.Light}
	pathPen   = sheet.Pen{Width: 0.75, Grey: sheet.Black, Dash: []float64{2.2, 1.2}}
	black     = sheet.Shade(sheet.Black)
	white     = sheet.Shade(sheet.White)
)

// half is from the middle of a line of figures to its baseline, mm.
const half = 1.15

// draw draws the chart, the example's path and the rulers.
func (c *chained) draw(s sheet.Sheet) error {
	for _, f := range []struct {
		at           sheet.Rect
		across, down axis
	}{{c.a, c.vol, c.leak}, {c.b, c.ice, c.leak}, {c.c, c.ice, c.bought}, {c.d, c.cost, c.bought}} {
		drawGrid(s, f.at, f.across, f.down)
	}
	e := exampleOf(c.h.sys)
	f := c.follow(e)
	c.drawPath(s, e, f)
	c.drawFoam(s)
	c.drawMonths(s)
	c.drawNights(s)
	c.drawPrices(s)
	c.drawScales(s)
	c.drawStops(s, e, f)
	for _, f := range []struct {
		mark, name string
		at         sheet.Rect
		below      bool
	}{{"A", "box and foam", c.a, false}, {"B", "the month", c.b, false}, {"C", "nights aboard a year", c.c, true}, {"D", "price of ice where you sail", c.d, true}} {
		y := f.at.Y + 4.6
		if f.below {
			y = f.at.Bottom() - 4.6
		}
		disc(s, f.at.X+4.4, y, 3, black, sheet.Pen{})
		letter := sheet.Type{Size: 11.5, Face: sheet.Bold, Grey: sheet.White, Align: sheet.Centre}
		s.Text(f.at.X+4.4, y+1.5, f.mark, letter)
		tag(s, f.at.X+9, y, f.name, chartType)
	}
	return s.Err()
}

func drawGrid(s sheet.Sheet, field sheet.Rect, across, down axis) {
	all, _ := across.marks()
	for _, v := range all {
		x := across.at(v)
		s.Line(sheet.Point{X: x, Y: field.Y}, sheet.Point{X: x, Y: field.Bottom()}, gridPen)
	}
	all, _ = down.marks()
	for _, v := range all {
		y := down.at(v)
		s.Line(sheet.Point{X: field.X, Y: y}, sheet.Point{X: field.Right(), Y: y}, gridPen)
	}
	s.Rect(field, sheet.Fill{}, framePen)
}

// tag writes text centred on y over a white patch.
func tag(s sheet.Sheet, x, y float64, text string, t sheet.Type) {
	w := sheet.Width(text, t)
	left := x
	if t.Align == sheet.Centre {
		left -= w / 2
	}
	s.Rect(sheet.Rect{X: left - 0.5, Y: y - 1.85, W: w + 1, H: 3.7}, white, sheet.Pen{})
	s.Text(x, y+half, text, t)
}

// drawFoam draws a curve for each thickness of foam over the volumes.
func (c *chained) drawFoam(s sheet.Sheet) {
	const pieces = 24
	for i, foam := range c.foams {
		var pts []sheet.Point
		for k := range pieces + 1 {
			x := c.a.X + c.a.W*float64(k)/pieces
			v := c.vol.lo * math.Pow(c.vol.hi/c.vol.lo, float64(k)/pieces)
			if y := c.leak.at(c.u.walls(v, foam)); y >= c.a.Y && y <= c.a.Bottom() {
				pts = append(pts, sheet.Point{X: x, Y: y})
			}
		}
		if len(pts) < 2 {
			continue
		}
		s.Polyline(pts, curvePen)
		text := short(foam, 3)
		share := 0.1 + 0.09*float64(i%3)
		if i == 0 || i == len(c.foams)-1 {
			text, share = text+" "+c.h.words.foam+" of dry foam", 0.66
		}
		p := pts[int(share*float64(len(pts)-1))]
		w := sheet.Width(text, chartBold)/2 + 1
		tag(s, min(p.X, c.a.Right()-w), p.Y, text, chartBold.To(sheet.Centre))
	}
}

// staggered is where the label of the i-th of n lines stands, as a share of the
// height of its field: each at a height of its own.
func staggered(i, n int) float64 { return 0.2 + 0.65*(float64(i)+0.5)/float64(n) }

// line is the straight part of a line in a field, and its label at a height if
// the line reaches it.
type line struct {
	from, to sheet.Point
	high     float64
	text     string
}

// drawLines draws the lines of a field, their labels over all of them.
func drawLines(s sheet.Sheet, field sheet.Rect, lines []line) {
	for _, l := range lines {
		s.Line(l.from, l.to, curvePen)
	}
	for _, l := range lines {
		y := field.Y + l.high*field.H
		top, bottom := min(l.from.Y, l.to.Y), max(l.from.Y, l.to.Y)
		share := 0.5
		if y > top+3 && y < bottom-3 {
			share = (y - l.from.Y) / (l.to.Y - l.from.Y)
		}
		p := along(l.from, l.to, share)
		w := sheet.Width(l.text, chartBold) / 2
		tag(s, min(max(p.X, field.X+w+1), field.Right()-w-1), p.Y, l.text, chartBold.To(sheet.Centre))
	}
}

// drawMonths draws a line for each group of months: the leak up, ice across.
func (c *chained) drawMonths(s sheet.Sheet) {
	var lines []line
	for i, m := range c.months {
		if from, to, ok := through(c.ice, c.leak, 1/(m.degrees*c.perHeat), c.b); ok {
			lines = append(lines, line{from, to, 1 - staggered(i, len(c.months))*0.9, m.name + " " + short(m.degrees, 2) + "°"})
		}
	}
	drawLines(s, c.b, lines)
}

// drawNights draws a line for each number of nights: ice a day across, a year's
// ice down.
func (c *chained) drawNights(s sheet.Sheet) {
	var lines []line
	for i, n := range c.nights {
		text := short(n, 3)
		if i == 0 || i == len(c.nights)-1 {
			text += " nights"
		}
		if from, to, ok := through(c.ice, c.bought, n, c.c); ok {
			lines = append(lines, line{from, to, staggered(i, len(c.nights)), text})
		}
	}
	drawLines(s, c.c, lines)
}

// drawPrices draws a line for each price of ice: its cost across, a year's ice
// down.
func (c *chained) drawPrices(s sheet.Sheet) {
	var lines []line
	for i, p := range c.prices {
		if from, to, ok := through(c.cost, c.bought, 1/p, c.d); ok {
			lines = append(lines, line{from, to, staggered(len(c.prices)-1-i, len(c.prices)), c.priceLabel(p)})
		}
	}
	drawLines(s, c.d, lines)
}

// scaleAcross draws ticks under a line at y, and their figures.
func scaleAcross(s sheet.Sheet, a axis, y float64, lead string) {
	all, labels := a.marks()
	for _, v := range all {
		s.Line(sheet.Point{X: a.at(v), Y: y}, sheet.Point{X: a.at(v), Y: y + 1.3}, tickPen)
	}
	right := -1.0
	for _, v := range labels {
		text := lead + label(v)
		w := sheet.Width(text, chartType)
		left := min(max(a.at(v)-w/2, a.from), a.to-w)
		if left < right+1.5 {
			continue
		}
		s.Text(left, y+4.7, text, chartType)
		right = left + w
	}
}

// scaleBetween draws the scale in the gutter that two fields share.
func (c *chained) scaleBetween(s sheet.Sheet, a axis) {
	left, right := c.a.Right(), c.b.X
	all, labels := a.marks()
	for _, v := range all {
		y := a.at(v)
		s.Line(sheet.Point{X: left, Y: y}, sheet.Point{X: left + 1.3, Y: y}, tickPen)
		s.Line(sheet.Point{X: right - 1.3, Y: y}, sheet.Point{X: right, Y: y}, tickPen)
	}
	for _, v := range labels {
		tag(s, (left+right)/2, a.at(v), label(v), chartType.To(sheet.Centre))
	}
}

func (c *chained) drawScales(s sheet.Sheet) {
	middle := (c.a.Right() + c.b.X) / 2
	w := c.h.words
	s.Text(middle, c.a.Y-5.6, "leak", chartBold.To(sheet.Centre))
	s.Text(middle, c.a.Y-2, w.leak, chartType.To(sheet.Centre))
	c.scaleBetween(s, c.leak)
	c.scaleBetween(s, c.bought)
	scaleAcross(s, c.vol, c.a.Bottom(), "")
	s.Text(c.a.X, c.a.Bottom()+9, "Start here:", chartBold)
	s.Text(c.a.X+sheet.Width("Start here: ", chartBold)+0.5, c.a.Bottom()+9, "inside volume, "+w.volume, chartType)

	y := c.b.Bottom()
	scaleAcross(s, c.ice, y, "")
	s.Text(c.b.X-4.5, y+4.7, w.mass+" of ice", chartBold.To(sheet.Right))
	s.Text(c.b.X-4.5, y+8.6, "a day, or", chartType.To(sheet.Right))
	s.Text(c.b.X-4.5, y+12.5, "Ah at 12 V", chartBold.To(sheet.Right))
	end := min(max(c.ice.at(c.pauses()), c.b.X), c.b.Right())
	s.Line(sheet.Point{X: c.b.X, Y: y + 7.4}, sheet.Point{X: end, Y: y + 7.4}, tickPen)
	tooMuch := c.b.Right() - sheet.Width("too much", chartType)
	last := -100.0
	for _, ah := range []float64{2, 3, 4, 5, 6, 8, 10, 15, 20, 25, 30, 40, 50, 60, 80} {
		ice, ok := c.iceOfAh(ah)
		if !ok || !c.ice.holds(ice) {
			continue
		}
		x := c.ice.at(ice)
		s.Line(sheet.Point{X: x, Y: y + 7.4}, sheet.Point{X: x, Y: y + 8.6}, tickPen)
		if x-last >= 5.5 && x < tooMuch-3 {
			s.Text(x, y+12.5, label(ah), chartType.To(sheet.Centre))
			last = x
		}
	}
	if c.b.Right()-end > 1 {
		s.Rect(sheet.Rect{X: end, Y: y + 6.9, W: c.b.Right() - end, H: 1}, black, sheet.Pen{})
	}
	s.Text(tooMuch, y+12.5, "too much", chartType)
	c.drawRulers(s)
}

// ruler is a scale under field D: where it begins, and what a unit of it is in
// money a year.
type ruler struct {
	y, worth   float64
	lead, name string
}

// rulers are the three, the first being the field's own.
func (c *chained) rulers() [3]ruler {
	y, cur := c.d.Bottom(), c.h.money.currency
	return [3]ruler{{y, 1, cur, "a year for ice"}, {y + 9, aYear(unitYears), cur, "the unit's price, fitted, with its cable"}, {y + 18, c.h.money.dry, "", "going without: people × nights"}}
}

func (c *chained) drawRulers(s sheet.Sheet) {
	for i, r := range c.rulers() {
		a := c.cost
		a.lo, a.hi = a.lo/r.worth, a.hi/r.worth
		if i > 0 {
			s.Line(sheet.Point{X: c.d.X, Y: r.y}, sheet.Point{X: c.d.Right(), Y: r.y}, framePen)
		}
		scaleAcross(s, a, r.y, r.lead)
		x := c.c.X + 2.1
		disc(s, x, r.y+3.5, 2.1, black, sheet.Pen{})
		s.Text(x, r.y+3.5+half, strconv.Itoa(i+1), sheet.Type{Size: 9, Face: sheet.Bold, Grey: sheet.White, Align: sheet.Centre})
		s.Text(x+3.6, r.y+3.5+half, r.name, sheet.Type{Size: 9.5})
	}
	middle := (c.a.Right() + c.b.X) / 2
	s.Text(middle, c.d.Bottom()+4.7, c.h.words.mass+" of ice", chartBold.To(sheet.Centre))
	s.Text(middle, c.d.Bottom()+8.6, "a year", chartType.To(sheet.Centre))
}

// drawPath draws the example's path through the fields. Figures and curves go
// over it.
func (c *chained) drawPath(s sheet.Sheet, e example, f followed) {
	x1, x3, x5 := c.vol.at(e.volume), c.ice.at(f.ice), c.cost.at(f.cost)
	turn, back := c.a.Right()+2.6, c.b.X-2.6 // where a sum is added by hand
	for _, leg := range [][]sheet.Point{
		{{X: x1, Y: c.a.Bottom()}, {X: x1, Y: c.leak.at(f.walls)}, {X: turn, Y: c.leak.at(f.walls)}, {X: turn, Y: c.leak.at(f.withUse)}},
		{{X: turn, Y: c.leak.at(f.withUse)}, {X: x3, Y: c.leak.at(f.withUse)}, {X: x3, Y: c.b.Bottom()}},
		{{X: x3, Y: c.c.Y}, {X: x3, Y: c.bought.at(f.melts)}, {X: back, Y: c.bought.at(f.melts)}, {X: back, Y: c.bought.at(f.bought)},
			{X: x5, Y: c.bought.at(f.bought)}, {X: x5, Y: c.d.Bottom()}},
	} {
		s.Polyline(leg, pathPen)
	}
}

// drawStops marks where the path turns, and the example's three marks.
func (c *chained) drawStops(s sheet.Sheet, e example, f followed) {
	x3 := c.ice.at(f.ice)
	for _, at := range []sheet.Point{{X: c.vol.at(e.volume), Y: c.leak.at(f.walls)}, {X: x3, Y: c.leak.at(f.withUse)},
		{X: x3, Y: c.bought.at(f.melts)}, {X: c.cost.at(f.cost), Y: c.bought.at(f.bought)}} {
		disc(s, at.X, at.Y, 0.95, white, sheet.Pen{Width: 0.45, Grey: sheet.Black})
	}
	marks := [3]float64{f.mark, f.unit, f.without}
	for i, r := range c.rulers() {
		if c.cost.holds(marks[i]) {
			disc(s, c.cost.at(marks[i]), r.y, 1.25, black, sheet.Pen{})
		}
	}
}
