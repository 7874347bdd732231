package layout

import (
	"strings"

	"coldreckon/report/sheet"
)

// span is text in one face.
type span struct {
	Text string
	Face sheet.Face
}

// words is running text whose face may change. A line break in it is kept.
type words []span

// plain is text in the regular face.
func plain(s string) words { return words{{Text: s}} }

// strong is text in the bold face.
func strong(s string) words { return words{{s, sheet.Bold}} }

// quiet is text in the italic face.
func quiet(s string) words { return words{{s, sheet.Italic}} }

// join puts texts one after the other, with no space between.
func join(parts ...words) words {
	var w words
	for _, p := range parts {
		w = append(w, p...)
	}
	return w
}

// token is a word: pieces of it may stand in different faces.
type token struct {
	pieces []span
	breaks bool // a line break instead of a word
}

func (w words) tokens() []token {
	var out []token
	glue := false // the next piece belongs to the last token
	for _, run := range w {
		for i, line := range strings.Split(run.Text, "\n") {
			if i > 0 {
				out, glue = append(out, token{breaks: true}), false
			}
			for j, word := range strings.Split(sheet.Clean(line), " ") {
				glue = glue && j == 0
				if word == "" {
					continue
				}
				piece := span{word, run.Face}
				if glue {
					last := &out[len(out)-1]
					last.pieces = append(last.pieces, piece)
				} else {
					out = append(out, token{pieces: []span{piece}})
				}
				glue = true
			}
		}
	}
	return out
}

// line is one line of set text: runs of one face each, spaces included.
type line []span

func (l line) width(t sheet.Type) float64 {
	var w float64
	for _, r := range l {
		w += sheet.Width(r.Text, t.In(r.Face))
	}
	return w
}

// put appends text to the line, joining it to the last run if it can.
func (l line) put(s span) line {
	if n := len(l); n > 0 && l[n-1].Face == s.Face {
		l[n-1].Text += s.Text
		return l
	}
	return append(l, s)
}

// lines breaks the text into lines at most w wide, at least one. Widths add
// up, since the faces are set without kerning.
func (w words) lines(t sheet.Type, width float64) []line {
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
			space := span{" ", now[len(now)-1].Face}
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
				now, p.Text = now.put(span{head, p.Face}), tail
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
func unline(lines []line) words {
	var w words
	for i, l := range lines {
		if i > 0 {
			w = append(w, span{Text: "\n"})
		}
		w = append(w, l...)
	}
	return w
}

// drawLines sets lines, pitch apart, with the first one's top at y.
func drawLines(s sheet.Sheet, lines []line, t sheet.Type, pitch, x, y, w float64) {
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
			s.Text(at, y+baselineAt(t, pitch)+float64(i)*pitch, r.Text, face)
			at += sheet.Width(r.Text, face)
		}
	}
}

// paragraph is text set for paper. Broken over a page it leaves two lines at
// least on either side.
type paragraph struct {
	words words
	typ   sheet.Type // the faces come from the words
	full  bool       // as wide as the column, not held to the reading measure
	keep  bool       // stays with the block after it
	tight bool       // close under the block before it, which it belongs to
}

func (p paragraph) wide(w float64) float64 {
	if p.full {
		return w
	}
	return min(w, measure*p.typ.Size/bodyType.Size)
}

func (p paragraph) lines(w float64) []line { return p.words.lines(p.typ, p.wide(w)) }

func (p paragraph) height(w float64) float64 { return float64(len(p.lines(w))) * pitch(p.typ) }

func (p paragraph) draw(s sheet.Sheet, x, y, w float64) error {
	drawLines(s, p.lines(w), p.typ, pitch(p.typ), x, y, p.wide(w))
	return s.Err()
}

func (p paragraph) space() (above, below float64) { return paraSpace, paraSpace }

func (p paragraph) keepsWithNext() bool { return p.keep }

// split leaves at least two lines on either side.
func (p paragraph) split(w, room, page float64) (head, rest flow) {
	lines := p.lines(w)
	least := 2
	if page == 0 {
		least = 1
	}
	n := min(int(room/pitch(p.typ)), len(lines)-least)
	if n < least {
		return nil, p
	}
	a, z := p, p
	a.words, z.words = unline(lines[:n]), unline(lines[n:])
	return a, z
}

// title is a heading set for paper.
type title struct {
	paragraph
	text  string
	level int
}

func setTitle(h Heading) title {
	level := min(max(h.Level, 0), len(heads)-1)
	t := heads[level]
	return title{paragraph{words: words{{bound(h.Text), t.Face}}, typ: t, full: true, keep: true}, h.Text, h.Level}
}

func (t title) draw(s sheet.Sheet, x, y, w float64) error {
	s.Bookmark(t.text, t.level, y)
	return t.paragraph.draw(s, x, y, w)
}

func (t title) space() (above, below float64) {
	level := min(max(t.level, 0), len(heads)-1)
	return [3]float64{10, 8, 5}[level], [3]float64{4, 2.4, 1.4}[level]
}

func (t title) split(_, _, _ float64) (head, rest flow) { return nil, t }
