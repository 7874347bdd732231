package layout

import "coldreckon/report/sheet"

// Column is a column of a table.
type Column struct {
	Head  string // may be empty
	Align sheet.Align
	// Share is the column's part of the table's width without the gaps, up to
	// 1 over all columns; 0 lets the content decide.
	Share float64
	Quiet bool // set in grey
}

// Table sets rows of cells. Hairlines part the rows, nothing parts the
// columns but air. The head is left out if no column has one.
type Table struct {
	Columns []Column
	Rows    []Row
	// Fine sets long tables smaller and closer.
	Fine bool

	widths []float64 // fixed once the table has been split
}

// Row is a row of a table; missing cells stay empty.
type Row struct {
	Cells []Words
	// Heavy draws a darker line above the row, as before a sum.
	Heavy bool
}

// cell is the type of the cells, pad the air above and below each.
func (t Table) cell() (typ sheet.Type, pad float64) {
	if t.Fine {
		return Fine, finePad
	}
	return Cell, cellPad
}

func (t Table) headed() bool {
	for _, c := range t.Columns {
		if c.Head != "" {
			return true
		}
	}
	return false
}

func (t Table) head() Row {
	r := Row{}
	for _, c := range t.Columns {
		r.Cells = append(r.Cells, Plain(c.Head))
	}
	return r
}

func (r Row) cell(i int) Words {
	if i < len(r.Cells) {
		return r.Cells[i]
	}
	return nil
}

// natural gives the width of a text on one line, and of its longest word.
func natural(w Words, t sheet.Type) (whole, word float64) {
	for _, l := range w.lines(t, 1e6) {
		whole = max(whole, l.width(t))
	}
	for _, tok := range w.tokens() {
		word = max(word, line(tok.pieces).width(t))
	}
	return whole, word
}

// spread gives the columns' widths for a table w wide. Shares come first;
// the other columns get their longest word and a part of what is left in
// proportion to their longest text.
func (t Table) spread(w float64) []float64 {
	if t.widths != nil {
		return t.widths
	}
	n := len(t.Columns)
	free := w - cellGap*float64(n-1)
	out, wish, least := make([]float64, n), make([]float64, n), make([]float64, n)
	rows := append([]Row{t.head()}, t.Rows...)
	left := free
	var wishes, leasts float64
	for i, c := range t.Columns {
		if c.Share > 0 {
			out[i] = free * c.Share
			left -= out[i]
			continue
		}
		for k, r := range rows {
			typ, _ := t.cell()
			if k == 0 {
				typ = headType
			}
			whole, word := natural(r.cell(i), typ)
			wish[i], least[i] = max(wish[i], whole), max(least[i], word)
		}
		wishes, leasts = wishes+wish[i], leasts+least[i]
	}
	for i, c := range t.Columns {
		switch {
		case c.Share > 0:
		case wishes <= left: // all on one line: what is left over goes by size
			out[i] = wish[i] + (left-wishes)*(wish[i]+1)/(wishes+float64(n))
		case leasts <= left:
			out[i] = least[i]
			if wishes > leasts {
				out[i] += (left - leasts) * (wish[i] - least[i]) / (wishes - leasts)
			}
		default: // not even the words fit: they will be broken
			out[i] = left * least[i] / leasts
		}
	}
	return out
}

var headType = sheet.Type{Size: 8.5, Grey: sheet.Dark}

func (t Table) rowHeight(r Row, typ sheet.Type, widths []float64) float64 {
	lines := 1
	for i := range t.Columns {
		lines = max(lines, len(r.cell(i).lines(typ, widths[i])))
	}
	_, pad := t.cell()
	return float64(lines)*pitch(typ) + 2*pad
}

func (t Table) headHeight(widths []float64) float64 {
	if !t.headed() {
		return 0
	}
	return t.rowHeight(t.head(), headType, widths)
}

func (t Table) height(w float64) float64 {
	widths := t.spread(w)
	h := t.headHeight(widths)
	typ, _ := t.cell()
	for _, r := range t.Rows {
		h += t.rowHeight(r, typ, widths)
	}
	return h
}

func (t Table) draw(s sheet.Sheet, x, y, w float64) error {
	widths := t.spread(w)
	typ, _ := t.cell()
	if t.headed() {
		// Heads stand on a common last line, so that short ones are not lost
		// above long ones.
		t.drawRow(s, t.head(), headType, widths, x, y, 1)
		y += t.headHeight(widths)
		rule(s, x, y, w, sheet.Pen{Width: 0.25, Grey: sheet.Black})
	}
	for i, r := range t.Rows {
		switch {
		case r.Heavy:
			rule(s, x, y, w, sheet.Pen{Width: 0.25, Grey: sheet.Black})
		case i > 0:
			rule(s, x, y, w, sheet.Pen{Width: 0.1, Grey: sheet.Light})
		}
		t.drawRow(s, r, typ, widths, x, y, 0)
		y += t.rowHeight(r, typ, widths)
	}
	return s.Err()
}

func rule(s sheet.Sheet, x, y, w float64, p sheet.Pen) {
	s.Line(sheet.Point{X: x, Y: y}, sheet.Point{X: x + w, Y: y}, p)
}

// drawRow sets one row. sink is the part of a short cell's spare height that
// goes above it: 0 sets it at the top of the row, 1 at the foot.
func (t Table) drawRow(s sheet.Sheet, r Row, typ sheet.Type, widths []float64, x, y, sink float64) {
	_, pad := t.cell()
	inner := t.rowHeight(r, typ, widths) - 2*pad
	for i, c := range t.Columns {
		typ := typ.To(c.Align)
		if c.Quiet {
			typ.Grey = sheet.Dark
		}
		lines := r.cell(i).lines(typ, widths[i])
		spare := inner - float64(len(lines))*pitch(typ)
		drawLines(s, lines, typ, x, y+pad+sink*spare, widths[i])
		x += widths[i] + cellGap
	}
}

func (t Table) space() (above, below float64) { return 3, 4 }

// leastRows is how many rows a break leaves on either side.
const leastRows = 2

// split breaks between rows. The head goes with every part.
func (t Table) split(w, room, page float64) (head, rest Block) {
	t.widths = t.spread(w)
	typ, _ := t.cell()
	top := t.headHeight(t.widths)
	y, n := top, 0
	for n < len(t.Rows) && y+t.rowHeight(t.Rows[n], typ, t.widths) <= room {
		y += t.rowHeight(t.Rows[n], typ, t.widths)
		n++
	}
	a, z := t, t
	switch {
	case n == len(t.Rows):
	case page == 0 && n > 0: // too few rows are better than no page
	case top+t.rowHeight(t.Rows[n], typ, t.widths) > page:
		upper, lower, ok := t.splitRow(t.Rows[n], room-y)
		if !ok {
			break
		}
		a.Rows, z.Rows = append(t.Rows[:n:n], upper), append([]Row{lower}, t.Rows[n+1:]...)
		return a, z
	default:
		if n = min(n, len(t.Rows)-leastRows); n < leastRows {
			n = 0
		}
	}
	if n == 0 {
		return nil, t
	}
	a.Rows, z.Rows = t.Rows[:n:n], t.Rows[n:]
	return a, z
}

// splitRow divides a row that no page can hold.
func (t Table) splitRow(r Row, room float64) (upper, lower Row, ok bool) {
	typ, pad := t.cell()
	n := int((room - 2*pad) / pitch(typ))
	if n < 1 {
		return Row{}, Row{}, false
	}
	upper.Heavy = r.Heavy
	for i := range t.Columns {
		lines := r.cell(i).lines(typ, t.widths[i])
		k := min(n, len(lines))
		upper.Cells = append(upper.Cells, unline(lines[:k]))
		lower.Cells = append(lower.Cells, unline(lines[k:]))
	}
	return upper, lower, true
}
