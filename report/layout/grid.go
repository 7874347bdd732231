package layout

import "coldreckon/report/sheet"

// grid is a table set for paper. Hairlines part the rows, nothing parts the
// columns but air. The head is left out if no column has one.
type grid struct {
	columns []Column
	rows    []gridRow
	fine    bool // set smaller and closer, for long tables
	close   bool // rows set closer
	framed  int  // column in a heavy frame, from 1; 0 is none

	widths []float64 // fixed once the table has been split
}

// gridRow is a row of a grid; missing cells stay empty.
type gridRow struct {
	cells []words
	heavy bool // a darker line above the row, as before a sum
}

// cell is the type of the cells, pad the air above and below each.
func (t grid) cell() (typ sheet.Type, pad float64) {
	switch {
	case t.fine && t.close:
		return fineType, closePad
	case t.fine:
		return fineType, finePad
	case t.close:
		return Cell, closePad
	}
	return Cell, cellPad
}

func (t grid) head() gridRow {
	r := gridRow{}
	for _, c := range t.columns {
		r.cells = append(r.cells, plain(c.Head))
	}
	return r
}

func (r gridRow) cell(i int) words {
	if i < len(r.cells) {
		return r.cells[i]
	}
	return nil
}

// natural gives the width of a text on one line, and of its longest word.
func natural(w words, t sheet.Type) (whole, word float64) {
	for _, l := range w.lines(t, 1e6) {
		whole = max(whole, l.width(t))
	}
	for _, tok := range w.tokens() {
		word = max(word, line(tok.pieces).width(t))
	}
	return whole, word
}

// spread gives the columns' widths for a table w wide. Shares come first; what
// the others leave over when all stands on one line goes by size.
func (t grid) spread(w float64) []float64 {
	if t.widths != nil {
		return t.widths
	}
	n := len(t.columns)
	free := w - cellGap*float64(n-1)
	left := free
	out := make([]float64, n)
	var wish, least []float64
	rows := append([]gridRow{t.head()}, t.rows...)
	for i, c := range t.columns {
		if c.Share > 0 {
			out[i] = free * c.Share
			left -= out[i]
			continue
		}
		var longest, word float64
		for k, r := range rows {
			typ, _ := t.cell()
			if k == 0 {
				typ = headType
			}
			a, b := natural(r.cell(i), typ)
			longest, word = max(longest, a), max(word, b)
		}
		wish, least = append(wish, longest), append(least, word)
	}
	shared := shareWidths(left, wish, least)
	over := left - sum(shared)
	k := 0
	for i, c := range t.columns {
		if c.Share > 0 {
			continue
		}
		out[i] = shared[k]
		if over > 0 && left > over {
			out[i] += over * (wish[k] + 1) / (left - over + float64(len(wish)))
		}
		k++
	}
	return out
}

// shareWidths is the rule by which columns share a width on paper and in plain
// text: what each wishes if there is room for all; else its longest word and a
// part of what is left by what it still wishes; else, where not even the words
// fit, in proportion to them.
func shareWidths(free float64, wish, least []float64) []float64 {
	wishes, leasts := sum(wish), sum(least)
	out := make([]float64, len(wish))
	for i := range out {
		switch {
		case wishes <= free:
			out[i] = wish[i]
		case leasts <= free:
			out[i] = least[i] + (free-leasts)*(wish[i]-least[i])/(wishes-leasts)
		default:
			out[i] = free * least[i] / leasts
		}
	}
	return out
}

func sum(values []float64) (total float64) {
	for _, v := range values {
		total += v
	}
	return total
}

// frameAir is between a framed column and its frame, mm.
const frameAir = 1.0

var headType = sheet.Type{Size: 8.5, Grey: sheet.Dark}

func (t grid) rowHeight(r gridRow, typ sheet.Type, widths []float64) float64 {
	lines := 1
	for i := range t.columns {
		lines = max(lines, len(r.cell(i).lines(typ, widths[i])))
	}
	_, pad := t.cell()
	return float64(lines)*cellPitch(typ) + 2*pad
}

func (t grid) headHeight(widths []float64) float64 {
	if !headed(t.columns) {
		return 0
	}
	return t.rowHeight(t.head(), headType, widths)
}

func (t grid) height(w float64) float64 {
	widths := t.spread(w)
	h := t.headHeight(widths)
	typ, _ := t.cell()
	for _, r := range t.rows {
		h += t.rowHeight(r, typ, widths)
	}
	return h
}

func (t grid) draw(s sheet.Sheet, x, y, w float64) error {
	widths := t.spread(w)
	typ, _ := t.cell()
	top := y
	if headed(t.columns) {
		// Heads stand on a common last line, so that short ones are not lost
		// above long ones.
		t.drawRow(s, t.head(), headType, widths, x, y, 1)
		y += t.headHeight(widths)
		rule(s, x, y, w, sheet.Pen{Width: 0.25, Grey: sheet.Black})
	}
	for i, r := range t.rows {
		switch {
		case r.heavy:
			rule(s, x, y, w, sheet.Pen{Width: 0.25, Grey: sheet.Black})
		case i > 0:
			rule(s, x, y, w, sheet.Pen{Width: 0.1, Grey: sheet.Light})
		}
		t.drawRow(s, r, typ, widths, x, y, 0)
		y += t.rowHeight(r, typ, widths)
	}
	if t.framed > 0 && t.framed < len(widths) {
		left := x
		for i := range t.framed {
			left += widths[i] + cellGap
		}
		right := min(left+widths[t.framed]+frameAir, x+w)
		s.Rect(sheet.Rect{X: left - frameAir, Y: top, W: right - left + frameAir, H: y - top}, sheet.Fill{}, sheet.Pen{Width: 0.5, Grey: sheet.Black})
	}
	return s.Err()
}

func rule(s sheet.Sheet, x, y, w float64, p sheet.Pen) {
	s.Line(sheet.Point{X: x, Y: y}, sheet.Point{X: x + w, Y: y}, p)
}

// drawRow sets one row. sink is the part of a short cell's spare height that
// goes above it: 0 sets it at the top of the row, 1 at the foot.
func (t grid) drawRow(s sheet.Sheet, r gridRow, typ sheet.Type, widths []float64, x, y, sink float64) {
	_, pad := t.cell()
	inner := t.rowHeight(r, typ, widths) - 2*pad
	for i, c := range t.columns {
		typ := typ
		if c.Right {
			typ.Align = sheet.Right
		}
		if c.Quiet {
			typ.Grey = sheet.Dark
		}
		lines := r.cell(i).lines(typ, widths[i])
		spare := inner - float64(len(lines))*cellPitch(typ)
		drawLines(s, lines, typ, cellPitch(typ), x, y+pad+sink*spare, widths[i])
		x += widths[i] + cellGap
	}
}

func (t grid) space() (above, below float64) { return 3, 4 }

// leastRows is how many rows a break leaves on either side.
const leastRows = 2

// split breaks between rows. The head goes with every part.
func (t grid) split(w, room, page float64) (head, rest flow) {
	t.widths = t.spread(w)
	typ, _ := t.cell()
	top := t.headHeight(t.widths)
	y, n := top, 0
	for n < len(t.rows) && y+t.rowHeight(t.rows[n], typ, t.widths) <= room {
		y += t.rowHeight(t.rows[n], typ, t.widths)
		n++
	}
	a, z := t, t
	switch {
	case n == len(t.rows):
	case page == 0 && n > 0: // too few rows are better than no page
	case top+t.rowHeight(t.rows[n], typ, t.widths) > page:
		upper, lower, ok := t.splitRow(t.rows[n], room-y)
		if !ok {
			break
		}
		a.rows, z.rows = append(t.rows[:n:n], upper), append([]gridRow{lower}, t.rows[n+1:]...)
		return a, z
	default:
		if n = min(n, len(t.rows)-leastRows); n < leastRows {
			n = 0
		}
	}
	if n == 0 {
		return nil, t
	}
	a.rows, z.rows = t.rows[:n:n], t.rows[n:]
	return a, z
}

// splitRow divides a row that no page can hold.
func (t grid) splitRow(r gridRow, room float64) (upper, lower gridRow, ok bool) {
	typ, pad := t.cell()
	n := int((room - 2*pad) / cellPitch(typ))
	if n < 1 {
		return gridRow{}, gridRow{}, false
	}
	upper.heavy = r.heavy
	for i := range t.columns {
		lines := r.cell(i).lines(typ, t.widths[i])
		k := min(n, len(lines))
		upper.cells = append(upper.cells, unline(lines[:k]))
		lower.cells = append(lower.cells, unline(lines[k:]))
	}
	return upper, lower, true
}
