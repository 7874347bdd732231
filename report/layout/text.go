package layout

import (
	"strings"

	"coldreckon/report/sheet"
)

// Span is text in one face.
type Span struct {
	Text string
	Face sheet.Face
}

// Words is running text whose face may change. A line break in it is kept.
type Words []Span

// Plain is text in the regular face.
func Plain(s string) Words { return Words{{Text: s}} }

// Strong is text in the bold face.
func Strong(s string) Words { return Words{{s, sheet.Bold}} }

// Quiet is text in the italic face.
func Quiet(s string) Words { return Words{{s, sheet.Italic}} }

// Join puts texts one after the other, with no space between.
func Join(parts ...Words) Words {
	var w Words
	for _, p := range parts {
		w = append(w, p...)
	}
	return w
}

// token is a word: pieces of it may stand in different faces.
type token struct {
	pieces []Span
	breaks bool // a line break instead of a word
}

func (w Words) tokens() []token {
	var out []token
	glue := false // the next piece belongs to the last token
	for _, span := range w {
		for i, line := range strings.Split(span.Text, "\n") {
			if i > 0 {
				out, glue = append(out, token{breaks: true}), false
			}
			for j, word := range strings.Split(sheet.Clean(line), " ") {
				glue = glue && j == 0
				if word == "" {
					continue
				}
				piece := Span{word, span.Face}
				if glue {
					last := &out[len(out)-1]
					last.pieces = append(last.pieces, piece)
				} else {
					out = append(out, token{pieces: []Span{piece}})
				}
				glue = true
			}
		}
	}
	return out
}

// line is one line of set text: runs of one face each, spaces included.
type line []Span

func (l line) width(t sheet.Type) float64 {
	var w float64
	for _, r := range l {
		w += sheet.Width(r.Text, t.In(r.Face))
	}
	return w
}

// put appends text to the line, joining it to the last run if it can.
func (l line) put(s Span) line {
	if n := len(l); n > 0 && l[n-1].Face == s.Face {
		l[n-1].Text += s.Text
		return l
	}
	return append(l, s)
}

// lines breaks the text into lines at most w wide, at least one. Widths add
// up, since the faces are set without kerning.
func (w Words) lines(t sheet.Type, width float64) []line {
	const slack = 1e-6 // so that a text fits a width measured from itself
	var out []line
	var now line
	var used float64
	end := func() { out, now, used = append(out, now), nil, 0 }
	for _, tok := range w.tokens() {
		if tok.breaks {
			end()
			continue
		}
		long := line(tok.pieces).width(t)
		if len(now) > 0 {
			space := Span{" ", now[len(now)-1].Face}
			gap := sheet.Width(" ", t.In(space.Face))
			if used+gap+long <= width+slack {
				now, used = now.put(space), used+gap
			} else {
				end()
			}
		}
		for _, p := range tok.pieces {
			face := t.In(p.Face)
			for long > width+slack && used+sheet.Width(p.Text, face) > width+slack {
				head, tail := sheet.Break(p.Text, face, width-used)
				if used > 0 && sheet.Width(head, face) > width-used {
					end() // not one letter fits behind the piece before
					continue
				}
				now, p.Text = now.put(Span{head, p.Face}), tail
				end()
				if tail == "" {
					break
				}
			}
			if p.Text != "" {
				now, used = now.put(p), used+sheet.Width(p.Text, face)
			}
		}
	}
	return append(out, now)
}

// unline makes text of set lines that breaks where they did.
func unline(lines []line) Words {
	var w Words
	for i, l := range lines {
		if i > 0 {
			w = append(w, Span{Text: "\n"})
		}
		w = append(w, l...)
	}
	return w
}

// drawLines sets lines with the first one's top at y.
func drawLines(s sheet.Sheet, lines []line, t sheet.Type, x, y, w float64) {
	for i, l := range lines {
		at := x
		switch t.Align {
		case sheet.Centre:
			at += (w - l.width(t)) / 2
		case sheet.Right:
			at += w - l.width(t)
		}
		for _, r := range l {
			face := t.In(r.Face).To(sheet.Left)
			s.Text(at, y+baseline(t)+float64(i)*pitch(t), r.Text, face)
			at += sheet.Width(r.Text, face)
		}
	}
}

// Text is a paragraph. Broken over a page it leaves two lines at least on
// either side.
type Text struct {
	Words Words
	Type  sheet.Type // the faces come from the words
	Full  bool       // as wide as the column, not held to the reading measure
	Keep  bool       // stays with the block after it
	Tight bool       // close under the block before it, which it belongs to
}

func (p Text) wide(w float64) float64 {
	if p.Full {
		return w
	}
	return min(w, measure*p.Type.Size/Body.Size)
}

func (p Text) lines(w float64) []line { return p.Words.lines(p.Type, p.wide(w)) }

func (p Text) height(w float64) float64 { return float64(len(p.lines(w))) * pitch(p.Type) }

func (p Text) draw(s sheet.Sheet, x, y, w float64) error {
	drawLines(s, p.lines(w), p.Type, x, y, p.wide(w))
	return s.Err()
}

func (p Text) space() (above, below float64) { return paraSpace, paraSpace }

func (p Text) keepsWithNext() bool { return p.Keep }

// split leaves at least two lines on either side.
func (p Text) split(w, room, page float64) (head, rest Block) {
	lines := p.lines(w)
	least := 2
	if page == 0 {
		least = 1
	}
	n := min(int(room/pitch(p.Type)), len(lines)-least)
	if n < least {
		return nil, p
	}
	a, z := p, p
	a.Words, z.Words = unline(lines[:n]), unline(lines[n:])
	return a, z
}

// Heading opens a part, enters the outline and stays with what follows. Levels
// are 0 for a title, 1 and 2; a document that skips one on the way down cannot
// be drawn.
type Heading struct {
	Level int
	Text  string
}

func (h Heading) set() Text {
	t := heads[min(max(h.Level, 0), len(heads)-1)]
	return Text{Words: Words{{h.Text, t.Face}}, Type: t, Full: true}
}

func (h Heading) height(w float64) float64 { return h.set().height(w) }

func (h Heading) draw(s sheet.Sheet, x, y, w float64) error {
	s.Bookmark(h.Text, h.Level, y)
	return h.set().draw(s, x, y, w)
}

func (h Heading) space() (above, below float64) {
	return [3]float64{10, 8, 5}[min(max(h.Level, 0), 2)], [3]float64{4, 2.4, 1.4}[min(max(h.Level, 0), 2)]
}

func (h Heading) split(_, _, _ float64) (head, rest Block) { return nil, h }

func (h Heading) keepsWithNext() bool { return true }
