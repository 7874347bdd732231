package chart

import (
	"fmt"
	"strings"

	"coldreckon/report/sheet"
)

// Months shows up to three quantities as bars and up to two as lines, month
// by month, on one axis from zero.
type Months struct {
	Head
	Bars  []ByMonth // at most three
	Lines []ByMonth // at most two
	// Say prints a value; nil prints a Number.
	Say func(float64) string
}

// ByMonth is one quantity through the year: month 1 to 12 to its value.
// Months without a value are left blank.
type ByMonth struct {
	Label  string
	Values map[int]float64
}

var monthNames = strings.Fields("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec")

func (m Months) all() ([]float64, error) {
	var all []float64
	for _, series := range append(append([]ByMonth(nil), m.Bars...), m.Lines...) {
		n := 0
		for month := 1; month <= 12; month++ {
			v, ok := series.Values[month]
			if !ok {
				continue
			}
			n++
			if err := sound(fmt.Sprintf("%s in %s", series.Label, monthNames[month-1]), v); err != nil {
				return nil, err
			}
			all = append(all, v)
		}
		if n != len(series.Values) {
			return nil, fmt.Errorf("%s has a month that is not 1 to 12", series.Label)
		}
	}
	return all, nil
}

// Draw draws the chart in r. Errors: more bars or lines than can be told
// apart, a month that is not 1 to 12.
func (m Months) Draw(s sheet.Sheet, r sheet.Rect) error { return m.end(s, m.draw(s, r)) }

func (m Months) draw(s sheet.Sheet, r sheet.Rect) error {
	if len(m.Bars) > 3 || len(m.Lines) > 2 {
		return fmt.Errorf("%d bars and %d lines; 3 and 2 are the most", len(m.Bars), len(m.Lines))
	}
	all, err := m.all()
	if err != nil {
		return err
	}
	r, err = m.begin(s, r)
	if err != nil {
		return err
	}
	if len(all) == 0 {
		m.nothing(s, r)
		return nil
	}
	var entries []entry
	for i, b := range m.Bars {
		entries = append(entries, area(s, b.Label, barFill(i)))
	}
	for i, l := range m.Lines {
		entries = append(entries, stroke(s, l.Label, i))
	}
	if len(entries) > 1 {
		r = key(s, r, entries)
	}
	foot := pitch(tickType) + 1
	if err := roomy(r.Inset(0, 0, 0, foot)); err != nil {
		return err
	}
	low, high := outer(all...)
	alone := len(m.Bars) == 1 && len(m.Lines) == 0
	if alone {
		high *= 1.06 // room for the value over the tallest bar
	}
	plot, up := upAxis(s, r.Inset(0, 0, 0, foot), low, high, m.Say)
	slot := plot.W / 12
	for month := 1; month <= 12; month++ {
		mid := plot.X + slot*(float64(month)-0.5)
		name := monthNames[month-1]
		if slot < 7 {
			name = name[:1]
		}
		s.Text(mid, plot.Bottom()+1+lead(tickType), name, tickType.To(sheet.Centre))
		m.drawBars(s, month, mid, slot, up, alone)
	}
	for i, l := range m.Lines {
		drawMonthLine(s, l, i, plot.X, slot, up)
	}
	return nil
}

// barFill leaves the darkest shades to the lines drawn over the bars.
func barFill(i int) sheet.Fill {
	return [3]sheet.Fill{
		{Texture: sheet.Solid, Grey: sheet.Light},
		{Texture: sheet.Rising, Grey: sheet.Dark},
		{Texture: sheet.Solid, Grey: sheet.Dark},
	}[i]
}

func (m Months) drawBars(s sheet.Sheet, month int, mid, slot float64, up scale, alone bool) {
	const filled = 0.68 // of the slot
	w := slot * filled / float64(max(1, len(m.Bars)))
	for i, b := range m.Bars {
		v, ok := b.Values[month]
		if !ok {
			continue
		}
		x := mid - slot*filled/2 + w*float64(i)
		top, foot := min(up.of(v), up.of(0)), max(up.of(v), up.of(0))
		s.Rect(sheet.Rect{X: x, Y: top, W: w, H: foot - top}, barFill(i), outline)
		text := say(m.Say, v, step(up.high-up.low, 50))
		if alone && v >= 0 && sheet.Width(text, tickType) < slot-0.5 {
			s.Text(mid, top-1, text, tickType.To(sheet.Centre))
		}
	}
}

// drawMonthLine draws a line through neighbouring months, broken where a
// month has no value, over a white edge that parts it from the bars.
func drawMonthLine(s sheet.Sheet, l ByMonth, i int, x, slot float64, up scale) {
	var run, dots []sheet.Point
	flush := func() {
		if len(run) > 1 {
			s.Polyline(run, sheet.Pen{Width: strokes(i).Width + 0.7, Grey: sheet.White})
			s.Polyline(run, strokes(i))
		}
		run = nil
	}
	for month := 1; month <= 12; month++ {
		v, ok := l.Values[month]
		if !ok {
			flush()
			continue
		}
		p := sheet.Point{X: x + slot*(float64(month)-0.5), Y: up.of(v)}
		run, dots = append(run, p), append(dots, p)
	}
	flush()
	for _, p := range dots {
		marker(s, i, p)
	}
}
