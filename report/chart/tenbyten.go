package chart

import (
	"fmt"

	"coldreckon/report/sheet"
)

// TenByTen shows chances as counts: of a hundred equally likely futures, so many
// end this way. One field stands large, several stand small side by side.
type TenByTen struct {
	Fields []HundredFutures // one to four
	// Groups names what the squares mean, in the order of the counts: solid,
	// hatched, hollow. An unused group has no entry in the key.
	Groups [3]string
	// Largest is the side of a field that stands alone, mm, at most LargeField;
	// 0 is that.
	Largest float64
}

// HundredFutures is one field of a hundred squares.
type HundredFutures struct {
	Over, Under string // a line over and under it; may be empty
	Counts      [3]int // >= 0, adding up to 100
}

// LargeField is the side of a field that stands alone, mm.
const LargeField = 47.0

const (
	smallField = 29.0
	fieldGap   = 8.0
)

var groupFills = [3]sheet.Fill{solid, hatched, open}

func (c TenByTen) side(w float64) float64 {
	n := float64(len(c.Fields))
	if n <= 1 {
		if c.Largest > 0 {
			w = min(w, c.Largest)
		}
		return min(w, LargeField)
	}
	return min(smallField, (w-fieldGap*(n-1))/n)
}

// used names the groups that have squares.
func (c TenByTen) used() (names []string, fills []sheet.Fill) {
	for g, name := range c.Groups {
		for _, f := range c.Fields {
			if f.Counts[g] > 0 {
				names, fills = append(names, name), append(fills, groupFills[g])
				break
			}
		}
	}
	return names, fills
}

func (c TenByTen) words(w float64) (over, under float64) {
	for _, f := range c.Fields {
		if f.Over != "" {
			over = max(over, float64(len(sheet.Wrap(f.Over, nameType, c.place(w))))*pitch(nameType)+0.8)
		}
		if f.Under != "" {
			under = max(under, float64(len(sheet.Wrap(f.Under, noteType, c.place(w))))*pitch(noteType)+0.8)
		}
	}
	return over, under
}

// place is the room of one field with its words.
func (c TenByTen) place(w float64) float64 {
	n := float64(max(1, len(c.Fields)))
	if n == 1 {
		return w
	}
	return min(smallField+2*fieldGap, (w-fieldGap*(n-1))/n)
}

// Height implements Drawing.
func (c TenByTen) Height(w float64) float64 {
	over, under := c.words(w)
	names, _ := c.used()
	return over + c.side(w) + under + 2.5 + keyHeight(w, names...)
}

// Draw implements Drawing. Errors: no field or more than four, a count below 0,
// counts that do not add up to 100, too little room.
func (c TenByTen) Draw(s sheet.Sheet, r sheet.Rect) error {
	const name = "of a hundred futures"
	if len(c.Fields) == 0 || len(c.Fields) > 4 {
		return fmt.Errorf("picture %q: %d fields; 1 to 4 are drawn", name, len(c.Fields))
	}
	for _, f := range c.Fields {
		if f.Counts[0] < 0 || f.Counts[1] < 0 || f.Counts[2] < 0 || f.Counts[0]+f.Counts[1]+f.Counts[2] != 100 {
			return fmt.Errorf("picture %q: counts of %v; they are 0 or more and add up to 100", name, f.Counts)
		}
	}
	if h := c.Height(r.W); r.H < h-0.01 || c.side(r.W) < 15 {
		return fmt.Errorf("picture %q: %.0f x %.1f mm; %.1f mm of height are needed", name, r.W, r.H, h)
	}
	s.Picture(name)
	over, under := c.words(r.W)
	side, place := c.side(r.W), c.place(r.W)
	for i, f := range c.Fields {
		x := r.X + float64(i)*(place+fieldGap)
		if f.Over != "" {
			lines(s, x, r.Y, sheet.Wrap(f.Over, nameType, place), nameType)
		}
		f.draw(s, sheet.Rect{X: x, Y: r.Y + over, W: side, H: side})
		if f.Under != "" {
			lines(s, x, r.Y+over+side+0.8, sheet.Wrap(f.Under, noteType, place), noteType)
		}
	}
	names, fills := c.used()
	var entries []entry
	for i, n := range names {
		entries = append(entries, swatch(s, n, fills[i]))
	}
	key(s, sheet.Rect{X: r.X, Y: r.Y + over + side + under + 2.5, W: r.W, H: 100}, entries)
	return s.Err()
}

// draw fills the field from the bottom up, a row from the left.
func (f HundredFutures) draw(s sheet.Sheet, r sheet.Rect) {
	const gap = 0.18 // of a square's place
	step := r.W / (10 - gap)
	k := 0
	for g, n := range f.Counts {
		for range n {
			s.Rect(sheet.Rect{X: r.X + step*float64(k%10), Y: r.Bottom() - step*float64(k/10) - step*(1-gap), W: step * (1 - gap), H: step * (1 - gap)},
				groupFills[g], edgePen)
			k++
		}
	}
}
