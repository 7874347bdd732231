package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// piece is one piece of board, mm.
type piece struct {
	number int
	name   string
	w, h   float64
	thick  float64
	note   string // why it is as it is
}

// cutting is what is cut from sheets of board, in the order of setting.
type cutting struct {
	pieces []piece
	sheets []chart.CutSheet
	thick  []float64 // of each sheet, mm
	joints float64   // that tape has to cover, m
	cut    bool      // a piece had to be cut to pass the lid, or for a sheet
}

// sheetOf is the usual sheet of board: 1,200 by 600 mm, or 4 by 2 ft. Common
// practice, no source.
func sheetOf(sys quantity.System) (long, short quantity.Metre) {
	if sys == quantity.US {
		return 1.2192, 0.6096
	}
	return 1.2, 0.6
}

// cuts gives the pieces for the work: the bottom whole, two ends stand on it, two
// sides between them. Each must pass the lid on the slant.
func (a author) cuts() cutting {
	var out cutting
	if a.chest() {
		return out
	}
	long, short := sheetOf(a.r.Boat.Units)
	for _, p := range faces(a.told.Box, a.r.Boat.Box, a.o.Fit.Out) {
		most := math.Inf(1) // width that passes the lid
		if o := a.r.Boat.Box.LidOpening; o.Length > 0 && p.note == "" {
			most = 1000*math.Hypot(float64(o.Length), float64(o.Width)) - p.thick
		}
		for _, q := range p.toPass(most, 1000*float64(long), 1000*float64(short)) {
			q.number = len(out.pieces) + 1
			out.cut = out.cut || q.w != p.w || q.h != p.h
			out.joints += 2 * (q.w + q.h) / 1000
			out.pieces = append(out.pieces, q)
		}
	}
	out.joints = math.Ceil(out.joints)
	out.sheets, out.thick = pack(out.pieces, 1000*float64(long), 1000*float64(short))
	return out
}

// faces gives a piece for each face that is lined, in the order of setting.
func faces(walls heat.Spec, b economics.Box, f economics.FitOut) []piece {
	in := walls.Inside
	long, wide, high := 1000*float64(in.Length), 1000*float64(in.Width), 1000*float64(in.Height)
	lid := b.LidSide()
	board := map[heat.Side]float64{} // put in from inside
	behind := map[heat.Side]float64{}
	for _, side := range heat.Sides {
		t := f.InsideFoam
		switch {
		case side == lid:
			t = f.LidFoam
		case b.Faces[side].Reach == economics.FromOutside:
			t = f.OutsideFoam
		}
		mm := math.Round(1000 * float64(t))
		switch b.Faces[side].Reach {
		case economics.FromInside:
			board[side] = mm
		case economics.FromOutside:
			behind[side] = mm
		}
	}
	tall := high - board[heat.Bottom] - board[heat.Top]
	var out []piece
	add := func(side heat.Side, w, h float64) {
		name := string(side)
		if side == lid {
			name = "lid"
		}
		if mm := board[side]; mm > 0 {
			out = append(out, piece{name: name, w: w, h: h, thick: mm})
		}
		if mm := behind[side]; mm > 0 {
			out = append(out, piece{name: name, w: w, h: h, thick: mm, note: "behind the wall"})
		}
	}
	add(heat.Bottom, long, wide)
	add(heat.Fore, wide, tall)
	add(heat.Aft, wide, tall)
	between := long - board[heat.Fore] - board[heat.Aft]
	if lid != heat.Inboard {
		add(heat.Inboard, between, tall)
	}
	add(heat.Outboard, between, tall)
	add(heat.Top, long, wide)
	if lid == heat.Inboard {
		add(heat.Inboard, between, tall)
	}
	return out
}

// toPass cuts a piece where it would not pass the lid, or come out of a sheet.
func (p piece) toPass(most, long, short float64) []piece {
	w, h := max(p.w, p.h), min(p.w, p.h)
	across := math.Ceil(h / min(most, short) * (1 - 1e-9))
	along := math.Ceil(w / long * (1 - 1e-9))
	if across < 1 || math.IsNaN(across) || across > 20 {
		across = 1
	}
	n := int(across * max(1, along))
	if n <= 1 {
		return []piece{p}
	}
	var out []piece
	for k := range n {
		q := p
		q.name = fmt.Sprintf("%s %d", p.name, k+1)
		if p.w >= p.h {
			q.w, q.h = p.w/max(1, along), p.h/across
		} else {
			q.h, q.w = p.h/max(1, along), p.w/across
		}
		out = append(out, q)
	}
	return out
}

// pack sets pieces on sheets in rows, the highest first: plain, and seldom a sheet
// worse than the best.
func pack(pieces []piece, long, short float64) (sheets []chart.CutSheet, thick []float64) {
	order := slices.Clone(pieces)
	for i, p := range order { // lying, where they fit the sheet so
		if p.h > p.w && p.h <= long || p.h > short {
			order[i].w, order[i].h = p.h, p.w
		}
	}
	slices.SortStableFunc(order, func(x, y piece) int { return cmp.Or(cmp.Compare(y.thick, x.thick), cmp.Compare(y.h, x.h)) })
	type row struct {
		sheet   int
		x, y, h float64
	}
	var rows []row
	used := []float64{} // height taken of each sheet
	for _, p := range order {
		at := slices.IndexFunc(rows, func(r row) bool {
			return thick[r.sheet] == p.thick && r.x+p.w <= long+0.01 && p.h <= r.h+0.01
		})
		if at < 0 {
			sheet := 0
			for sheet < len(sheets) && !(thick[sheet] == p.thick && used[sheet]+p.h <= short+0.01) {
				sheet++
			}
			if sheet == len(sheets) {
				sheets, thick, used = append(sheets, chart.CutSheet{W: long, H: short}), append(thick, p.thick), append(used, 0)
			}
			at, rows = len(rows), append(rows, row{sheet, 0, used[sheet], p.h})
			used[sheet] += p.h
		}
		r := &rows[at]
		sheets[r.sheet].Pieces = append(sheets[r.sheet].Pieces, chart.CutPiece{Number: p.number, Name: p.name, X: r.x, Y: r.y, W: p.w, H: p.h})
		r.x += p.w
	}
	return sheets, thick
}

// ofThickness is how many sheets of a thickness are bought.
type ofThickness struct {
	mm     float64
	sheets int
}

func (c cutting) byThickness() []ofThickness {
	var out []ofThickness
	for _, mm := range c.thick {
		if n := len(out); n > 0 && out[n-1].mm == mm {
			out[n-1].sheets++
			continue
		}
		out = append(out, ofThickness{mm, 1})
	}
	return out
}

// boards says how thick the board is.
func (a author) boards() string {
	var out []string
	for _, g := range a.cuts().byThickness() {
		out = append(out, a.v.Length(g.mm))
	}
	return words.Join(out) + " thick"
}

// cutList shows the pieces on their sheets, with their sizes.
func (a author) cutList(s setting) []layout.Block {
	c := a.cuts()
	if len(c.pieces) == 0 {
		return nil
	}
	bare := func(mm float64) string { return chart.Number(math.Round(mm), 1) }
	unit := "mm"
	if a.r.Boat.Units == quantity.US {
		unit = "in"
		bare = func(mm float64) string { return a.v.Length(mm)[:len(a.v.Length(mm))-3] }
	}
	t := layout.Table{Close: true, Columns: []layout.Column{{Head: "Piece"}, {Head: "Size, " + unit, Right: true}, {Head: "Thick", Right: true}}}
	for _, p := range c.pieces {
		name := fmt.Sprintf("%d %s", p.number, p.name)
		if p.note != "" {
			name += ", " + p.note
		}
		t.Rows = append(t.Rows, []string{name, bare(p.w) + " × " + bare(p.h), bare(p.thick)})
	}
	finding := fmt.Sprintf("Cut %s from %s, and set them in this order", words.Plural(float64(len(c.pieces)), "piece"), words.Plural(float64(len(c.sheets)), "sheet"))
	if len(c.pieces) == 1 {
		finding = "Cut one piece from one sheet"
	}
	note := "Measure first. The ends stand on the bottom, the sides between them. "
	switch o := a.r.Boat.Box.LidOpening; {
	case c.cut:
		note += "Pieces too wide for the lid or a sheet are cut: stagger and tape their joints."
	case o.Length > 0:
		note += fmt.Sprintf("Each passes the lid on the slant, up to %s wide.", a.v.Length(1000*math.Hypot(float64(o.Length), float64(o.Width))-c.pieces[0].thick))
	default:
		note += "The lid's opening was not told: see that each piece passes it, else cut it."
	}
	drawing := chart.CutList{Highest: [...]float64{52, 40, 26, 26, 18, 18}[s.tight], Sheets: c.sheets, LeftOver: "left over", Say: bare}
	const beside = 24                            // mm to spare that the drawing takes more than words
	if s.tight == tightest && s.spare < beside { // the sizes say it too
		var sizes []string
		for _, row := range t.Rows {
			sizes = append(sizes, row[0]+", "+row[1])
		}
		return []layout.Block{layout.Heading{Level: 1, Text: finding}, layout.Para{Style: layout.Fine, Text: strings.Join(sizes, "; ") + " " + unit + ", " + a.boards() + ". " + note, Wide: true}}
	}
	const wide = 114 // mm that the drawing has beside its words, on the narrower paper
	small := layout.Para{Style: layout.Small, Text: note}
	picture := chart.Picture(drawing, "", "", finding+". "+note, layout.Table{})
	if drawing.Tells(wide) && len(c.byThickness()) == 1 {
		picture.Table = t
		small.Text = "Sizes in " + map[string]string{"mm": "millimetres", "in": "inches"}[unit] + ". " + note
		return []layout.Block{layout.Heading{Level: 1, Text: finding}, layout.Side{Shares: []float64{116, 56}, Columns: [][]layout.Block{{picture}, {small}}}}
	}
	return []layout.Block{layout.Heading{Level: 1, Text: finding},
		layout.Side{Shares: []float64{116, 60}, Columns: [][]layout.Block{{picture}, {t}}}, small}
}
