package layout

import "coldreckon/report/sheet"

// styles are the types of the styles.
var styles = map[Style]sheet.Type{Body: bodyType, Lede: ledeType, Small: smallType, Fine: fineType, Tiny: tinyType}

func setAll(blocks []Block) stack {
	var out stack
	for _, b := range blocks {
		out = append(out, b.set())
	}
	return out
}

func (h Heading) set() flow { return setTitle(h) }

func (p Para) set() flow {
	return paragraph{words: led(p.Lead, p.Text), typ: styles[p.Style], full: p.Wide || p.Style != Body, keep: p.Keep}
}

// led sets a bold lead before a text.
func led(lead, text string) words {
	switch {
	case lead == "":
		return plain(bound(text))
	case text == "":
		return strong(bound(lead))
	}
	return join(strong(bound(lead+" ")), plain(bound(text)))
}

func (l List) set() flow {
	typ := bodyType
	switch {
	case l.Fine:
		typ = fineType
	case l.Steps:
		typ = stepType
	}
	var items []flow
	for _, entry := range l.Items {
		w := led(entry.Lead, entry.Text)
		if entry.Source != "" {
			w = join(w, quiet(bound(" "+entry.Source)))
		}
		items = append(items, paragraph{words: w, typ: typ, full: true})
	}
	return setItems(l.Mark, items...)
}

func (t Table) set() flow {
	out := grid{columns: t.Columns, fine: t.Fine, close: t.Close, framed: t.Framed}
	for i, cells := range t.Rows {
		row := gridRow{heavy: t.Sum && i == len(t.Rows)-1}
		for _, c := range cells {
			row.cells = append(row.cells, plain(bound(c)))
		}
		out.rows = append(out.rows, row)
	}
	return out
}

func (p Picture) set() flow {
	var out stack
	if p.Finding != "" {
		out = append(out, paragraph{words: strong(bound(p.Finding)), typ: findingType, full: true, keep: true})
	}
	if p.Caption != "" {
		out = append(out, paragraph{words: plain(bound(p.Caption)), typ: smallType, full: true, keep: true, tight: true})
	}
	air := pictureAir
	if len(out) > 0 {
		air = paraSpace
	}
	out = append(out, drawing{tall: p.Height, ink: p.Draw, air: air})
	if p.Shown {
		out = append(out, p.Table.set())
	}
	if len(out) == 1 {
		return out[0]
	}
	return out
}

func (n Note) set() flow { return note{setAll(n)} }

func (s Side) set() flow {
	out := beside{shares: s.Shares}
	for _, c := range s.Columns {
		out.blocks = append(out.blocks, setAll(c))
	}
	return out
}

func (k Kept) set() flow { return together{setAll(k)} }

func (c Close) set() flow {
	var out stack
	for _, b := range c {
		switch in := b.(type) { // what they hold is as close
		case Kept:
			out = append(out, closer{together{Close(in).set().(stack)}})
		case Side:
			side := Side{Shares: in.Shares}
			for _, column := range in.Columns {
				side.Columns = append(side.Columns, []Block{Close(column)})
			}
			out = append(out, closer{side.set()})
		case Note:
			out = append(out, closer{Note{Close(in)}.set()})
		default:
			out = append(out, closer{b.set()})
		}
	}
	return out
}

// closer halves the air around a block.
type closer struct{ flow }

func (c closer) space() (above, below float64) {
	above, below = c.flow.space()
	return above / 2, below / 2
}

func (c closer) keepsWithNext() bool { return keeps(c.flow) }

func (c closer) split(w, room, page float64) (head, rest flow) {
	if head, rest = c.flow.split(w, room, page); head == nil {
		return nil, c
	}
	return closer{head}, closer{rest}
}

func (r Rows) set() flow {
	var out stack
	for _, b := range r {
		out = append(out, flush{b.set()})
	}
	return out
}

// flush takes the air from around a block, and keeps it whole.
type flush struct{ flow }

func (flush) space() (above, below float64)             { return 0, 0 }
func (f flush) split(_, _, _ float64) (head, rest flow) { return nil, f }

func (o OnPaper) set() flow {
	return drawing{name: o.Name, tall: o.Height, ink: o.Draw, air: pictureAir}
}
