package chart

import "coldreckon/report/sheet"

// column is a column of names beside a chart's rows.
type column struct {
	cells         [][]string
	types         []sheet.Type
	width, height float64 // the widest and the tallest
}

func (c *column) add(text string, t sheet.Type, most float64) {
	lines := sheet.Wrap(text, t, most)
	for _, l := range lines {
		c.width = max(c.width, sheet.Width(l, t))
	}
	c.height = max(c.height, float64(len(lines))*pitch(t))
	c.cells, c.types = append(c.cells, lines), append(c.types, t)
}

func (c column) draw(s sheet.Sheet, i int, x, mid float64, a sheet.Align) {
	t := c.types[i].To(a)
	top := mid - float64(len(c.cells[i]))*pitch(t)/2
	for k, l := range c.cells[i] {
		s.Text(x, top+lead(t)+float64(k)*pitch(t), l, t)
	}
}

// drawClear draws a name on a clear patch, so that no grid line strikes
// through it.
func (c column) drawClear(s sheet.Sheet, i int, x, mid float64, a sheet.Align) {
	w := 0.0
	for _, l := range c.cells[i] {
		w = max(w, sheet.Width(l, c.types[i]))
	}
	h := float64(len(c.cells[i])) * pitch(c.types[i])
	patch := sheet.Rect{X: x - 0.4, Y: mid - h/2, W: w + 0.8, H: h}
	if a == sheet.Right {
		patch.X -= w
	}
	s.Rect(patch, sheet.Shade(sheet.White), sheet.Pen{})
	c.draw(s, i, x, mid, a)
}
