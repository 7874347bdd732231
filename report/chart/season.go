package chart

import (
	"fmt"
	"slices"

	"coldreckon/report/sheet"
)

// Season shows which part of each month's days each way keeps cold, cool and
// warm: a row a way, a block a month, as wide as its nights.
type Season struct {
	Months []SeasonMonth // those with nights aboard, in order
	Rows   []SeasonRow
	// Nights, Cold, Cool, Warm and AsSheIs are the words of the drawing: what
	// the figures over the months are, the key, and what the thin strip is.
	Nights, Cold, Cool, Warm, AsSheIs string
}

// SeasonMonth is a month with its nights aboard, > 0.
type SeasonMonth struct {
	Name   string
	Nights float64
}

// SeasonRow is one way: for each month the shares of its days.
type SeasonRow struct {
	Name      string
	Best      bool
	With, Now []DayShares // with the work, and as she is; Now may be nil
}

// DayShares are the parts of a month's days on which food is cold and cool, each
// 0 to 1 and no more than 1 together; the rest is warm.
type DayShares struct{ Cold, Cool float64 }

const (
	seasonRow   = 9.3 // a way with its strips, mm
	seasonBlock = 5.6
	seasonStrip = 1.6
	monthGap    = 0.6
)

// monthly gives each month's place along a width, in proportion to its nights.
func monthly(months []SeasonMonth, x, w float64) (xs, ws []float64) {
	var nights float64
	for _, m := range months {
		nights += m.Nights
	}
	free := w - monthGap*float64(len(months)-1)
	for _, m := range months {
		part := free * m.Nights / nights
		xs, ws = append(xs, x), append(ws, part)
		x += part + monthGap
	}
	return xs, ws
}

// monthNames writes the names of months over or under their places, shortened
// to a letter or left out where they would touch.
func nameMonths(s sheet.Sheet, months []SeasonMonth, xs, ws []float64, base float64, t sheet.Type) {
	for i, m := range months {
		name := m.Name
		if sheet.Width(name, t) > ws[i]-0.4 && name != "" {
			name = string([]rune(name)[:1])
		}
		if sheet.Width(name, t) <= ws[i]+monthGap {
			s.Text(xs[i]+ws[i]/2, base, name, t.To(sheet.Centre))
		}
	}
}

// checkMonths refuses months without nights.
func checkMonths(name string, months []SeasonMonth) error {
	if len(months) == 0 {
		return fmt.Errorf("picture %q: no months; at least one with nights aboard is drawn", name)
	}
	for _, m := range months {
		if err := sound(m.Name, m.Nights); err != nil || !(m.Nights > 0) {
			return fmt.Errorf("picture %q: %s has %v nights; months without have no place", name, m.Name, m.Nights)
		}
	}
	return nil
}

func (c Season) gutter(w float64) float64 {
	longest := sheet.Width(c.Nights, noteType)
	for _, row := range c.Rows {
		longest = max(longest, sheet.Width(row.Name, emboldened(row.Best)))
	}
	return gutter(w, longest+3)
}

func (c Season) row(w float64) float64 {
	if stacked(w) {
		return seasonRow + pitch(noteType)
	}
	return seasonRow
}

func (c Season) head(w float64) float64 {
	h := pitch(nameType) + pitch(noteType) + 0.8
	if stacked(w) {
		h += pitch(noteType)
	}
	return h
}

func (c Season) key() []string {
	names := []string{c.Cold, c.Cool, c.Warm}
	if c.thin() {
		names = append(names, c.AsSheIs)
	}
	return names
}

// thin reports whether any way has a strip as she is.
func (c Season) thin() bool {
	return slices.ContainsFunc(c.Rows, func(row SeasonRow) bool { return row.Now != nil })
}

// Height implements Drawing.
func (c Season) Height(w float64) float64 {
	return c.head(w) + c.row(w)*float64(len(c.Rows)) + keyHeight(w, c.key()...)
}

// Draw implements Drawing. Errors: no month, one without nights, shares that are
// none, too little room.
func (c Season) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "the season"
	if err := checkMonths(name, c.Months); err != nil {
		return err
	}
	for _, row := range c.Rows {
		for _, shares := range [][]DayShares{row.With, row.Now} {
			if shares != nil && len(shares) != len(c.Months) {
				return fmt.Errorf("picture %q: %s has %d months of %d", name, row.Name, len(shares), len(c.Months))
			}
			for _, d := range shares {
				if !(d.Cold >= 0 && d.Cool >= 0 && d.Cold+d.Cool <= 1+1e-9) {
					return fmt.Errorf("picture %q: %s has shares of %v and %v; parts of 1 are drawn", name, row.Name, d.Cold, d.Cool)
				}
			}
		}
	}
	if err := enough(c, r, name); err != nil {
		return err
	}
	s.Picture(name)
	gutter := c.gutter(r.W)
	xs, ws := monthly(c.Months, r.X+gutter, r.W-gutter)
	y := r.Y
	nameMonths(s, c.Months, xs, ws, y+lead(nameType), nameType)
	y += pitch(nameType)
	if stacked(r.W) {
		s.Text(r.X, y+pitch(noteType)+lead(softType), c.Nights, softType)
	} else {
		s.Text(r.X, y+lead(noteType), c.Nights, noteType)
	}
	for i, m := range c.Months {
		if text := Number(m.Nights, 1); sheet.Width(text, noteType) <= ws[i]+monthGap {
			s.Text(xs[i]+ws[i]/2, y+lead(noteType), text, noteType.To(sheet.Centre))
		}
	}
	y = r.Y + c.head(r.W)
	for _, row := range c.Rows {
		t := emboldened(row.Best)
		if stacked(r.W) {
			s.Text(r.X, y+lead(t), row.Name, t)
			y += pitch(noteType)
		} else {
			s.Text(r.X, middle(y+seasonBlock/2, t), sheet.Shorten(row.Name, t, gutter-2), t)
		}
		for i := range c.Months {
			if row.With != nil {
				row.With[i].draw(s, sheet.Rect{X: xs[i], Y: y, W: ws[i], H: seasonBlock})
			}
			if row.Now != nil {
				row.Now[i].draw(s, sheet.Rect{X: xs[i], Y: y + seasonBlock + 0.5, W: ws[i], H: seasonStrip})
			}
		}
		y += seasonRow
	}
	entries := []entry{swatch(s, c.Cold, solid), swatch(s, c.Cool, hatched), swatch(s, c.Warm, open)}
	if c.thin() {
		entries = append(entries, entry{c.AsSheIs, swatchW, func(at sheet.Rect) {
			s.Rect(at.Inset(0, (at.H-seasonStrip)/2, 0, (at.H-seasonStrip)/2), open, edgePen)
		}})
	}
	key(s, sheet.Rect{X: r.X, Y: y, W: r.W, H: 100}, entries)
	return s.Err()
}

// draw fills a block: cold, cool, warm, by their parts, not by date.
func (d DayShares) draw(s sheet.Sheet, r sheet.Rect) {
	s.Rect(r, open, edgePen)
	cold, cool := r.W*d.Cold, r.W*d.Cool
	const least = 0.05 // mm; less cannot be seen
	if cold > least {
		s.Rect(sheet.Rect{X: r.X, Y: r.Y, W: cold, H: r.H}, solid, edgePen)
	}
	if cool > least {
		s.Rect(sheet.Rect{X: r.X + cold, Y: r.Y, W: min(cool, r.W-cold), H: r.H}, hatched, edgePen)
	}
}
