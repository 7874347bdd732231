package chart

import (
	"fmt"
	"strings"

	"coldreckon/report/sheet"
)

// PriceOfCold shows what a cold day costs by each way on one scale of money,
// against what it is worth.
type PriceOfCold struct {
	Rows []PriceRow // the cheapest first
	// Top is the end of the scale, > 0; Marks are the prices at which dashed
	// lines stand, between 0 and Top.
	Top   float64
	Marks []float64
	// Worth is the owner's own figure under a flag with Flag's words; an empty
	// Flag is no figure.
	Worth float64
	Flag  string
	// Zones are parts of the scale with a word over each, such as NO and YES.
	Zones []PriceZone
	Saves string // what is said of prices below nothing
	// Row is the height of a row, mm, at least 10, where the words over an open bar
	// stand clear of the row above; 0 is priceRow.
	Row float64
	// Say prints a price; nil prints a Number.
	Say func(float64) string
}

// PriceRow is one way. Bar from low to high, mark at the middle one; Low below
// the scale's end runs on under an arrow head, High beyond it is open.
type PriceRow struct {
	Name           string
	Low, Mid, High float64
	Best           bool   // set in bold and filled
	Words          string // said in place of a bar; may be empty
}

// PriceZone is a part of the scale with a word over it.
type PriceZone struct {
	From, To float64
	Label    string
}

const (
	priceRow   = 11.5 // height of a row, mm
	priceBelow = 0.15 // how far the scale reaches below nothing, of its top
	flagHigh   = 5.0
	narrowRow  = 4.5 // more where names stand over their bars
)

func (c PriceOfCold) gutter(w float64) float64 {
	longest := 0.0
	for _, row := range c.Rows {
		longest = max(longest, sheet.Width(row.Name, emboldened(row.Best)))
	}
	return gutter(w, longest+4)
}

func (c PriceOfCold) row(w float64) float64 {
	h := max(c.Row, 10)
	if c.Row == 0 {
		h = priceRow
	}
	if stacked(w) {
		h += narrowRow
	}
	return h
}

func (c PriceOfCold) head() float64 {
	h := 1.0
	if c.Flag != "" {
		h += flagHigh
	}
	if len(c.Zones) > 0 {
		h += pitch(noteType)
	}
	return h
}

// Height implements Drawing.
func (c PriceOfCold) Height(w float64) float64 {
	return c.head() + c.row(w)*float64(len(c.Rows)) + 1.5 + pitch(noteType)
}

// Draw implements Drawing. Errors: a figure that is no number, low above the
// middle or the middle above high, too little room.
func (c PriceOfCold) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "the price of cold"
	if err := enough(c, r, name); err != nil {
		return err
	}
	if !(c.Top > 0) {
		return fmt.Errorf("picture %q: the scale ends at %v; it must be above 0", name, c.Top)
	}
	for _, row := range c.Rows {
		if err := sound(row.Name, row.Low, row.Mid, row.High, c.Worth); err != nil {
			return fmt.Errorf("picture %q: %w", name, err)
		}
		if row.Words == "" && (row.Low > row.Mid || row.Mid > row.High) {
			return fmt.Errorf("picture %q: %s is %v, %v, %v; low, middle and high rise", name, row.Name, row.Low, row.Mid, row.High)
		}
	}
	s.Picture(name)
	high := r.H - c.head() - 1.5 - pitch(noteType)
	plot := sheet.Rect{X: r.X + c.gutter(r.W) + 2, Y: r.Y + c.head(), W: r.W - c.gutter(r.W) - 5, H: high}
	across := scale{-priceBelow * c.Top, c.Top, plot.X, plot.W}
	s.Rect(sheet.Rect{X: plot.X, Y: plot.Y, W: across.of(0) - plot.X, H: plot.H}, sheet.Shade(sheet.Pale), sheet.Pen{})
	down := func(x float64, pen sheet.Pen) {
		s.Line(sheet.Point{X: x, Y: plot.Y}, sheet.Point{X: x, Y: plot.Bottom()}, pen)
	}
	down(across.of(0), sheet.Pen{Width: 0.35, Grey: sheet.Black})
	for _, m := range c.Marks {
		down(across.of(m), dashPen)
	}
	c.drawHead(s, r, plot, across)
	step := plot.H / float64(max(1, len(c.Rows)))
	for i, row := range c.Rows {
		y := plot.Y + step*float64(i)
		if i > 0 {
			s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.Right(), Y: y}, gridPen)
		}
		c.drawRow(s, row, r, sheet.Rect{X: plot.X, Y: y, W: plot.W, H: step}, across)
	}
	c.drawScale(s, r, plot, across)
	return s.Err()
}

func (c PriceOfCold) drawHead(s sheet.Sheet, r, plot sheet.Rect, across scale) {
	y := r.Y
	if c.Flag != "" {
		x := across.of(min(max(c.Worth, 0), c.Top))
		text := sheet.Shorten(c.Flag, nameType, r.W-4)
		w := sheet.Width(text, nameType) + 2.4
		left := max(r.X, min(x-0.45, r.Right()-w))
		s.Line(sheet.Point{X: x, Y: y + flagHigh}, sheet.Point{X: x, Y: plot.Bottom()}, heavyPen)
		s.Rect(sheet.Rect{X: left, Y: y, W: w, H: flagHigh}, solid, sheet.Pen{})
		white := nameType
		white.Grey = sheet.White
		s.Text(left+1.2, middle(y+flagHigh/2, white), text, white)
		y += flagHigh
	}
	for _, z := range c.Zones {
		from, to := across.of(max(z.From, across.low)), across.of(min(z.To, c.Top))
		if sheet.Width(z.Label, nameType) <= to-from-0.5 {
			s.Text((from+to)/2, middle(y+pitch(noteType)/2, nameType), z.Label, nameType.To(sheet.Centre))
		}
	}
}

func (c PriceOfCold) drawRow(s sheet.Sheet, row PriceRow, r, at sheet.Rect, across scale) {
	t, y := emboldened(row.Best), at.Y+at.H/2
	if stacked(r.W) {
		patched(s, across.of(0)+1.5, at.Y+narrowRow/2+1.2, sheet.Shorten(row.Name, t, r.Right()-across.of(0)-3), t)
		y += narrowRow / 2
	} else {
		s.Text(r.X, middle(y, t), sheet.Shorten(row.Name, t, c.gutter(r.W)-2), t)
	}
	if row.Words != "" {
		patched(s, across.of(0)+1.5, y, sheet.Shorten(row.Words, noteType, r.Right()-across.of(0)-3), noteType)
		return
	}
	const half, head = 1.6, 2.2
	left, right := across.of(max(row.Low, across.low)), across.of(min(max(row.High, across.low), c.Top))
	fill := hatched
	if row.Best {
		fill = solid
	}
	if row.Low < across.low { // it runs on below nothing, where it saves
		left += head
		arrowHead(s, sheet.Point{X: left - head, Y: y}, -head, 0, half+0.6)
	}
	bar := sheet.Rect{X: left, Y: y - half, W: max(0.3, right-left), H: 2 * half}
	if row.High > c.Top { // open: no edge at the right, and the figure
		s.Rect(bar, fill, sheet.Pen{})
		s.Polyline([]sheet.Point{{X: bar.Right(), Y: bar.Y}, {X: bar.X, Y: bar.Y}, {X: bar.X, Y: bar.Bottom()}, {X: bar.Right(), Y: bar.Bottom()}}, edgePen)
		patched(s, bar.Right(), y-half-pitch(noteType)/2+0.3, "to "+say(c.Say, row.High, c.Top/20), noteType.To(sheet.Right))
	} else {
		s.Rect(bar, fill, edgePen)
	}
	mid := across.of(min(max(row.Mid, across.low), c.Top))
	s.Rect(sheet.Rect{X: mid - 0.9, Y: y - half - 1.1, W: 1.8, H: 2*half + 2.2}, open, sheet.Pen{Width: 0.35, Grey: sheet.Black})
}

func (c PriceOfCold) drawScale(s sheet.Sheet, r, plot sheet.Rect, across scale) {
	row := tickRow{from: r.X, to: r.Right(), baseline: plot.Bottom() + 1.5 + lead(noteType)}
	if c.Saves != "" {
		right := across.of(0) - sheet.Width(say(c.Say, 0, c.Top/20), noteType)/2 - 1.5
		if left := min(plot.X, right-sheet.Width(c.Saves, noteType)); left >= r.X {
			s.Text(left, row.baseline, c.Saves, noteType)
		}
	}
	for _, v := range append([]float64{0}, c.Marks...) {
		row.put(s, across.of(v), strings.TrimSpace(say(c.Say, v, c.Top/20)))
	}
}
