package forms

import "coldreckon/report/sheet"

// place is where a box or a square with its words stands, from the upper left
// corner of the room for them.
type place struct {
	x, y  float64
	lines []string // of a tick
}

// boxes gives the width of a box, and where each stands.
func (r row) boxes() (w float64, at []place) {
	n := len(r.Blanks)
	switch {
	case n == 0:
		return 0, nil
	case n == 1 && r.Wide:
		return answerWidth, []place{{}}
	case n == 1:
		return boxWidth, []place{{}}
	}
	across := min(n, boxesAcross)
	w = (answerWidth - boxGap*float64(across-1)) / float64(across)
	for i := range n {
		at = append(at, place{x: float64(i%across) * (w + boxGap), y: float64(i/across) * (r.boxPitch() + partGap)})
	}
	return w, at
}

func (r row) named() bool { return len(r.Blanks) > 0 && r.Blanks[0].Name != "" }

// boxPitch is the height of a box with its name.
func (r row) boxPitch() float64 {
	if r.named() {
		return r.nameHeight() + boxHeight
	}
	return boxHeight
}

// nameHeight is the room of the names over a line of boxes.
func (r row) nameHeight() float64 {
	most, across := 0, min(len(r.Blanks), boxesAcross)
	w := (answerWidth - boxGap*float64(across-1)) / float64(across)
	for _, b := range r.Blanks {
		most = max(most, len(sheet.Wrap(b.Name, names, w)))
	}
	return float64(most) * pitch(names)
}

func (r row) drawBlanks(s sheet.Sheet, x, y float64) {
	w, at := r.boxes()
	for i, b := range r.Blanks {
		left, top := x+at[i].x, y+at[i].y
		if r.named() {
			lines := sheet.Wrap(b.Name, names, w)
			top += r.nameHeight()
			for k, line := range lines {
				s.Text(left, top-float64(len(lines)-k)*pitch(names)+drop(names), line, names)
			}
		}
		box := sheet.Rect{X: left, Y: top, W: w, H: boxHeight}
		s.Rect(box, sheet.Fill{}, boxPen)
		inBlank(s, box, b.Unit, names)
	}
}

// beside reports whether a single tick fits behind a single box.
func (r row) beside() bool {
	return len(r.Blanks) == 1 && !r.Wide && len(r.Ticks) == 1 && boxWidth+tickGap+tickWidth(r.Ticks[0]) <= answerWidth
}

// tickWidth is the room of one tick with its words.
func tickWidth(words string) float64 {
	return squareSide(marks) + squareGap + sheet.Width(words, marks)
}

// ticksTop is where the ticks begin, under the top of the room.
func (r row) ticksTop() float64 {
	switch {
	case r.beside():
		return (boxHeight - pitch(marks)) / 2
	case len(r.Blanks) > 0:
		return r.blanksHeight() + partGap
	}
	return 0
}

func (r row) blanksHeight() float64 {
	_, at := r.boxes()
	if len(at) == 0 {
		return 0
	}
	return at[len(at)-1].y + r.boxPitch()
}

// ticks sets the squares one after another, in as many lines as they need.
func (r row) ticks() (at []place, height float64) {
	x, y, lines := 0.0, 0.0, 1
	if r.beside() {
		x = boxWidth + tickGap
	}
	for _, t := range r.Ticks {
		if x > 0 && x+tickWidth(t) > answerWidth {
			x, y = 0, y+float64(lines)*pitch(marks)
		}
		p := place{x, y, sheet.Wrap(t, marks, answerWidth-x-squareSide(marks)-squareGap)}
		at, lines = append(at, p), len(p.lines)
		x += tickWidth(t) + tickGap
	}
	if len(at) == 0 {
		return nil, 0
	}
	return at, y + float64(lines)*pitch(marks)
}

func (r row) drawTicks(s sheet.Sheet, x, y float64) {
	at, _ := r.ticks()
	for _, p := range at {
		base := y + p.y + drop(marks)
		square(s, x+p.x, base, marks, tickPen)
		for k, line := range p.lines {
			s.Text(x+p.x+squareSide(marks)+squareGap, base+float64(k)*pitch(marks), line, marks)
		}
	}
}

// answerHeight is the room that boxes and squares take.
func (r row) answerHeight() float64 {
	h := r.blanksHeight()
	if _, ticks := r.ticks(); ticks > 0 {
		h = max(h, r.ticksTop()+ticks)
	}
	return h
}

// occupies reports whether boxes or squares with their words stand in a part
// of the room for them.
func (r row) occupies(part sheet.Rect) bool {
	w, boxes := r.boxes()
	for _, p := range boxes {
		if part.Overlaps(sheet.Rect{X: p.x, Y: p.y, W: w, H: r.boxPitch()}) {
			return true
		}
	}
	ticks, _ := r.ticks()
	for i, p := range ticks {
		if part.Overlaps(sheet.Rect{X: p.x, Y: r.ticksTop() + p.y, W: tickWidth(r.Ticks[i]), H: float64(len(p.lines)) * pitch(marks)}) {
			return true
		}
	}
	return false
}
