package layout

import (
	"fmt"

	"coldreckon/report/sheet"
)

// flow is a block set for paper: what is laid out over the pages.
type flow interface {
	// height is what the block takes when set w wide.
	height(w float64) float64
	// draw puts the block at a place, w wide.
	draw(s sheet.Sheet, x, y, w float64) error
	// space is the air the block wants above and below. Neighbours share it,
	// and the top of a page takes none.
	space() (above, below float64)
	// split divides a block that is taller than room: head fits, rest
	// follows on the next page. A nil head says that nothing fits. page is
	// the height of an empty page, 0 to break what is otherwise kept whole.
	split(w, room, page float64) (head, rest flow)
}

// keeper is a block that stays with the one after it.
type keeper interface{ keepsWithNext() bool }

func keeps(b flow) bool {
	k, ok := b.(keeper)
	return ok && k.keepsWithNext()
}

// stack sets blocks below one another. A page may end between any two of them,
// and inside those that can be broken.
type stack []flow

func (s stack) gap(i int) float64 {
	if i == 0 {
		return 0
	}
	if t, ok := s[i].(paragraph); ok && t.tight {
		return tightSpace
	}
	_, below := s[i-1].space()
	above, _ := s[i].space()
	return max(below, above)
}

func (s stack) height(w float64) float64 {
	var h float64
	for i, b := range s {
		h += s.gap(i) + b.height(w)
	}
	return h
}

func (s stack) draw(out sheet.Sheet, x, y, w float64) error {
	for i, b := range s {
		y += s.gap(i)
		if err := b.draw(out, x, y, w); err != nil {
			return err
		}
		y += b.height(w)
	}
	return nil
}

func (s stack) space() (above, below float64) {
	if len(s) == 0 {
		return 0, 0
	}
	above, _ = s[0].space()
	_, below = s[len(s)-1].space()
	return above, below
}

func (s stack) keepsWithNext() bool { return len(s) > 0 && keeps(s[len(s)-1]) }

func (s stack) split(w, room, page float64) (head, rest flow) {
	var y float64
	for i, b := range s {
		y += s.gap(i)
		h := b.height(w)
		if y+h <= room {
			y += h
			continue
		}
		if a, z := b.split(w, room-y, page); a != nil {
			return append(s[:i:i], a), append(stack{z}, s[i+1:]...)
		}
		at := i
		for i > 0 && keeps(s[i-1]) {
			i--
		}
		if i == 0 && page == 0 { // rather a heading alone than no page
			i = at
		}
		if i == 0 {
			return nil, s
		}
		return s[:i:i], s[i:]
	}
	return s, stack(nil)
}

// together keeps its blocks on one page, unless a page is too small for them.
type together struct{ stack }

func (t together) split(w, room, page float64) (head, rest flow) {
	if t.height(w) <= page {
		return nil, t
	}
	return t.stack.split(w, room, page)
}

// drawing is drawn by somebody else. A page never ends inside it.
type drawing struct {
	name string // for errors; a drawing that names itself needs none
	tall func(w float64) float64
	ink  func(s sheet.Sheet, r sheet.Rect) error
	air  float64 // above and below
}

func (d drawing) height(w float64) float64 { return d.tall(w) }

func (d drawing) draw(s sheet.Sheet, x, y, w float64) error {
	s.Picture(d.name)
	defer s.Picture("")
	if err := d.ink(s, sheet.Rect{X: x, Y: y, W: w, H: d.tall(w)}); err != nil {
		if d.name == "" {
			return err
		}
		return fmt.Errorf("picture %q: %w", d.name, err)
	}
	return s.Err()
}
func (d drawing) space() (above, below float64)           { return d.air, d.air }
func (d drawing) split(_, _, _ float64) (head, rest flow) { return nil, d }

// note is text set apart by a rule at its left.
type note struct{ content stack }

const noteInset, noteRule = 4.0, 0.8 // mm

func (n note) height(w float64) float64 { return n.content.height(w - noteInset) }
func (n note) draw(s sheet.Sheet, x, y, w float64) error {
	mid := x + noteRule/2
	s.Line(sheet.Point{X: mid, Y: y}, sheet.Point{X: mid, Y: y + n.height(w)}, sheet.Pen{Width: noteRule, Grey: sheet.Black})
	return n.content.draw(s, x+noteInset, y, w-noteInset)
}
func (n note) space() (above, below float64) { return 3.5, 3.5 }
func (n note) split(w, room, page float64) (head, rest flow) {
	a, z := n.content.split(w-noteInset, room, page)
	if a == nil {
		return nil, n
	}
	return note{stack{a}}, note{stack{z}}
}

// beside sets blocks side by side, 8 mm apart, each as wide as its share; below
// one another where that leaves too little, as in large print.
type beside struct {
	shares []float64 // one for each block, > 0, in any measure; nil is equal parts
	blocks []flow    // from left to right
}

const (
	columnGap = 8.0   // mm
	narrow    = 120.0 // of a page, mm, on which nothing stands side by side
)

// places gives each block's x offset and width.
func (c beside) places(w float64) (xs, ws []float64) {
	var sum float64
	share := func(i int) float64 {
		if c.shares == nil {
			return 1
		}
		return c.shares[i]
	}
	for i := range c.blocks {
		sum += share(i)
	}
	x, free := 0.0, w-columnGap*float64(len(c.blocks)-1)
	for i := range c.blocks {
		part := free * share(i) / sum
		xs, ws = append(xs, x), append(ws, part)
		x += part + columnGap
	}
	return xs, ws
}

func (c beside) height(w float64) float64 {
	if w < narrow {
		return stack(c.blocks).height(w)
	}
	var h float64
	_, ws := c.places(w)
	for i, b := range c.blocks {
		h = max(h, b.height(ws[i]))
	}
	return h
}

func (c beside) draw(s sheet.Sheet, x, y, w float64) error {
	if w < narrow {
		return stack(c.blocks).draw(s, x, y, w)
	}
	xs, ws := c.places(w)
	for i, b := range c.blocks {
		if err := b.draw(s, x+xs[i], y, ws[i]); err != nil {
			return err
		}
	}
	return nil
}

func (c beside) space() (above, below float64) {
	for _, b := range c.blocks {
		a, z := b.space()
		above, below = max(above, a), max(below, z)
	}
	return above, below
}

func (c beside) split(w, room, page float64) (head, rest flow) {
	if w < narrow {
		return stack(c.blocks).split(w, room, page)
	}
	_, ws := c.places(w)
	heads, rests := make([]flow, len(c.blocks)), make([]flow, len(c.blocks))
	for i, b := range c.blocks {
		if b.height(ws[i]) <= room {
			heads[i], rests[i] = b, stack(nil)
			continue
		}
		if heads[i], rests[i] = b.split(ws[i], room, page); heads[i] == nil {
			return nil, c
		}
	}
	return beside{c.shares, heads}, beside{c.shares, rests}
}
