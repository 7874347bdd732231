package layout

import (
	"fmt"

	"coldreckon/report/sheet"
)

// Block is a piece of the flow. The blocks of this package are all there
// are; Figure is the one to draw something of one's own.
type Block interface {
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
	split(w, room, page float64) (head, rest Block)
}

// keeper is a block that stays with the one after it.
type keeper interface{ keepsWithNext() bool }

func keeps(b Block) bool {
	k, ok := b.(keeper)
	return ok && k.keepsWithNext()
}

// Stack sets blocks below one another. A page may end between any two of them,
// and inside those that can be broken.
type Stack []Block

func (s Stack) gap(i int) float64 {
	if i == 0 {
		return 0
	}
	if t, ok := s[i].(Text); ok && t.Tight {
		return tightSpace
	}
	_, below := s[i-1].space()
	above, _ := s[i].space()
	return max(below, above)
}

func (s Stack) height(w float64) float64 {
	var h float64
	for i, b := range s {
		h += s.gap(i) + b.height(w)
	}
	return h
}

func (s Stack) draw(out sheet.Sheet, x, y, w float64) error {
	for i, b := range s {
		y += s.gap(i)
		if err := b.draw(out, x, y, w); err != nil {
			return err
		}
		y += b.height(w)
	}
	return nil
}

func (s Stack) space() (above, below float64) {
	if len(s) == 0 {
		return 0, 0
	}
	above, _ = s[0].space()
	_, below = s[len(s)-1].space()
	return above, below
}

func (s Stack) keepsWithNext() bool { return len(s) > 0 && keeps(s[len(s)-1]) }

func (s Stack) split(w, room, page float64) (head, rest Block) {
	var y float64
	for i, b := range s {
		y += s.gap(i)
		h := b.height(w)
		if y+h <= room {
			y += h
			continue
		}
		if a, z := b.split(w, room-y, page); a != nil {
			return append(s[:i:i], a), append(Stack{z}, s[i+1:]...)
		}
		for i > 0 && keeps(s[i-1]) {
			i--
		}
		if i == 0 {
			return nil, s
		}
		return s[:i:i], s[i:]
	}
	return s, Stack(nil)
}

// Together keeps blocks on one page, below one another, unless a page is too
// small for them.
func Together(blocks ...Block) Block { return together{blocks} }

type together struct{ Stack }

func (t together) split(w, room, page float64) (head, rest Block) {
	if t.height(w) <= page {
		return nil, t
	}
	return t.Stack.split(w, room, page)
}

// Figure is a drawing of fixed height, as wide as its column. A page never ends
// inside it.
type Figure struct {
	Name   string  // for errors; a drawing that names itself needs none
	Height float64 // mm, > 0, and no more than the frame's
	// Draw draws within r, which is as high as the figure.
	Draw func(s sheet.Sheet, r sheet.Rect) error
}

func (f Figure) height(float64) float64 { return f.Height }
func (f Figure) draw(s sheet.Sheet, x, y, w float64) error {
	s.Figure(f.Name)
	defer s.Figure("")
	if err := f.Draw(s, sheet.Rect{X: x, Y: y, W: w, H: f.Height}); err != nil {
		if f.Name == "" {
			return err
		}
		return fmt.Errorf("figure %q: %w", f.Name, err)
	}
	return s.Err()
}
func (f Figure) space() (above, below float64)            { return 4, 4 }
func (f Figure) split(_, _, _ float64) (head, rest Block) { return nil, f }

// Note is text set apart by a rule at its left, heavier for weightier notes.
type Note struct {
	Weight  float64 // width of the rule, mm; 0 draws a hairline
	Content Stack
}

const noteInset = 4.0

func (n Note) height(w float64) float64 { return n.Content.height(w - noteInset) }
func (n Note) draw(s sheet.Sheet, x, y, w float64) error {
	pen := sheet.Hairline
	if n.Weight > 0 {
		pen = sheet.Pen{Width: n.Weight, Grey: sheet.Black}
	}
	mid := x + pen.Width/2
	s.Line(sheet.Point{X: mid, Y: y}, sheet.Point{X: mid, Y: y + n.height(w)}, pen)
	return n.Content.draw(s, x+noteInset, y, w-noteInset)
}
func (n Note) space() (above, below float64) { return 3.5, 3.5 }
func (n Note) split(w, room, page float64) (head, rest Block) {
	a, z := n.Content.split(w-noteInset, room, page)
	if a == nil {
		return nil, n
	}
	return Note{n.Weight, Stack{a}}, Note{n.Weight, Stack{z}}
}

// Columns sets blocks side by side, 8 mm apart, each as wide as its share.
type Columns struct {
	Shares []float64 // one for each block, > 0, in any measure; nil is equal parts
	Blocks []Block   // from left to right
}

const columnGap = 8.0 // mm

// places gives each block's x offset and width.
func (c Columns) places(w float64) (xs, ws []float64) {
	var sum float64
	share := func(i int) float64 {
		if c.Shares == nil {
			return 1
		}
		return c.Shares[i]
	}
	for i := range c.Blocks {
		sum += share(i)
	}
	x, free := 0.0, w-columnGap*float64(len(c.Blocks)-1)
	for i := range c.Blocks {
		part := free * share(i) / sum
		xs, ws = append(xs, x), append(ws, part)
		x += part + columnGap
	}
	return xs, ws
}

func (c Columns) height(w float64) float64 {
	var h float64
	_, ws := c.places(w)
	for i, b := range c.Blocks {
		h = max(h, b.height(ws[i]))
	}
	return h
}

func (c Columns) draw(s sheet.Sheet, x, y, w float64) error {
	xs, ws := c.places(w)
	for i, b := range c.Blocks {
		if err := b.draw(s, x+xs[i], y, ws[i]); err != nil {
			return err
		}
	}
	return nil
}

func (c Columns) space() (above, below float64) {
	for _, b := range c.Blocks {
		a, z := b.space()
		above, below = max(above, a), max(below, z)
	}
	return above, below
}

func (c Columns) split(w, room, page float64) (head, rest Block) {
	_, ws := c.places(w)
	heads, rests := make([]Block, len(c.Blocks)), make([]Block, len(c.Blocks))
	for i, b := range c.Blocks {
		if b.height(ws[i]) <= room {
			heads[i], rests[i] = b, Stack(nil)
			continue
		}
		if heads[i], rests[i] = b.split(ws[i], room, page); heads[i] == nil {
			return nil, c
		}
	}
	return Columns{c.Shares, heads}, Columns{c.Shares, rests}
}
