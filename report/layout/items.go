package layout

import (
	"strconv"

	"coldreckon/report/sheet"
)

// setItems sets blocks below one another, each behind its mark. Numbers count
// from 1.
func setItems(m Mark, bodies ...flow) flow {
	s := make(stack, len(bodies))
	for i, b := range bodies {
		s[i] = item{m, i + 1, b}
	}
	return s
}

// item is one entry; number 0 draws no mark, for the rest of a split entry.
type item struct {
	mark   Mark
	number int
	body   flow
}

func (it item) height(w float64) float64 { return it.body.height(w - indent) }

func (it item) draw(s sheet.Sheet, x, y, w float64) error {
	t := firstType(it.body)
	base := y + baseline(t)
	switch {
	case it.number == 0:
	case it.mark == Number:
		s.Text(x, base, strconv.Itoa(it.number)+".", t)
	case it.mark == Tick:
		side := t.Ascent() * 0.95
		s.Rect(sheet.Rect{X: x + 0.1, Y: base - side, W: side, H: side}, sheet.Fill{}, sheet.Pen{Width: 0.2, Grey: sheet.Dark})
	default:
		s.Text(x, base, "–", t)
	}
	return it.body.draw(s, x+indent, y, w-indent)
}

func (it item) space() (above, below float64) {
	if firstType(it.body).Size < bodyType.Size {
		return 0.7, 0.7
	}
	return 1.2, 1.2
}

func (it item) split(w, room, page float64) (head, rest flow) {
	a, z := it.body.split(w-indent, room, page)
	if a == nil {
		return nil, it
	}
	return item{it.mark, it.number, a}, item{it.mark, 0, z}
}

// firstType is the type a block opens with, so that a mark stands on its line.
func firstType(b flow) sheet.Type {
	switch b := b.(type) {
	case paragraph:
		return b.typ.In(sheet.Regular)
	case stack:
		if len(b) > 0 {
			return firstType(b[0])
		}
	case together:
		return firstType(b.stack)
	}
	return bodyType
}
