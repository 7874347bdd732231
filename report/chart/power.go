package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Power sets what a unit needs against what the sun leaves, month by month: the
// same months as Season, as wide as their nights.
type Power struct {
	Months []PowerMonth
	// With, AsSheIs and Sun are the words of the key; an empty AsSheIs says that
	// Now is Need and is not drawn.
	With, AsSheIs, Sun string
	// Plot is the least height of the plot, mm; 0 is the usual.
	Plot float64
}

// PowerMonth is one month, in any measure of energy a day, all >= 0.
type PowerMonth struct {
	SeasonMonth
	Need float64 // with the work
	Now  float64 // as she is
	Sun  float64 // left after the house
}

const powerPlot = 34.0 // least height of the plot, mm

func (c Power) months() []SeasonMonth {
	var out []SeasonMonth
	for _, m := range c.Months {
		out = append(out, m.SeasonMonth)
	}
	return out
}

// Height implements Drawing.
func (c Power) Height(w float64) float64 {
	plot := powerPlot
	if c.Plot > 0 {
		plot = c.Plot
	}
	return keyHeight(w, c.With, c.AsSheIs, c.Sun) + plot + 1 + pitch(nameType)
}

// Draw implements Drawing. Errors: no month, one without nights, a figure below
// 0 or none, too little room.
func (c Power) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "power by month"
	months := c.months()
	if err := checkMonths(name, months); err != nil {
		return err
	}
	var all []float64
	for _, m := range c.Months {
		for _, v := range []float64{m.Need, m.Now, m.Sun} {
			if err := sound(m.Name, v); err != nil || v < 0 {
				return fmt.Errorf("picture %q: %s has %v; figures are 0 or more", name, m.Name, v)
			}
			all = append(all, v)
		}
	}
	if err := enough(c, r, name); err != nil {
		return err
	}
	s.Picture(name)
	rest := key(s, r, []entry{swatch(s, c.With, sheet.Shade(sheet.Dark)),
		{c.AsSheIs, swatchW, func(at sheet.Rect) { s.Rect(at, sheet.Fill{}, dashPen) }},
		{c.Sun, swatchW, func(at sheet.Rect) {
			s.Line(sheet.Point{X: at.X, Y: at.Y + at.H/2}, sheet.Point{X: at.Right(), Y: at.Y + at.H/2}, heavyPen)
		}}})
	low, high := outer(all...)
	plot, up := upAxis(s, rest.Inset(0, 0, 0, 1+pitch(nameType)), low, high)
	xs, ws := monthly(months, plot.X, plot.W)
	nameMonths(s, months, xs, ws, plot.Bottom()+1+lead(nameType), nameType)
	white := nameType.To(sheet.Centre)
	white.Grey = sheet.White
	for i, m := range c.Months {
		bar := func(v float64) sheet.Rect {
			return sheet.Rect{X: xs[i], Y: up.of(v), W: ws[i], H: plot.Bottom() - up.of(v)}
		}
		s.Rect(bar(m.Need), sheet.Shade(sheet.Dark), edgePen)
		switch {
		case c.AsSheIs == "":
		case m.Now > m.Need:
			s.Rect(bar(m.Now), sheet.Fill{}, dashPen)
		default:
			s.Line(sheet.Point{X: xs[i], Y: up.of(m.Now)}, sheet.Point{X: xs[i] + ws[i], Y: up.of(m.Now)}, sheet.Pen{Width: 0.2, Grey: sheet.White, Dash: dashPen.Dash})
		}
		y := up.of(m.Sun)
		ends := func(pen sheet.Pen) {
			s.Line(sheet.Point{X: xs[i], Y: y}, sheet.Point{X: xs[i] + ws[i], Y: y}, pen)
		}
		ends(sheet.Pen{Width: 1.9, Grey: sheet.White}) // a white edge, so that it shows on the bar
		ends(heavyPen)
		text := Number(m.Need, Step(up.high-up.low, 50))
		foot := plot.Bottom() - 1.2 - white.Ascent()/2
		if sheet.Width(text, white) <= ws[i]-1 && bar(m.Need).H > pitch(white)+1 && (y > plot.Bottom()-0.5 || y < foot-pitch(white)/2-1.2) {
			s.Text(xs[i]+ws[i]/2, middle(foot, white), text, white)
		}
	}
	return s.Err()
}
