package compare

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/chart"
	"coldreckon/report/layout"
	"coldreckon/report/sheet"
	"coldreckon/report/words"
)

// board is a run of rows, drawn: those with a place on one scale of money, under
// a heavy rule those without.
type board struct {
	t     *Table
	rows  []*Row
	scale priceScale
	tall  float64 // of a row, mm
}

const (
	boardHead = 11.5
	fewBoats  = 6    // that one page holds with room to write on
	roomyRow  = 18.4 // mm
	closeRow  = 13.2
	onFirst   = 9 // rows of closeRow that the first page holds, and each later one
	onLater   = 12
)

// Where the columns of the board begin, of 269 parts of its width.
const (
	boardParts               = 269.0
	wayAt, worksAt, firstAt  = 38.0, 98.0, 131.0
	yearAt, barsAt, priceAt  = 159.0, 180.0, 223.0 // the price stands to the left of priceAt+priceWide
	priceWide                = 13.0
	evidenceAt, stopsAt      = 240.0, 257.0
	worksWide                = 20.0 // of the bar that counts futures
	rowAir                   = 1.8  // above the first line of a row
	barHigh                  = 3.4
	mostPrinted, leastExtras = 50.0, 5.0
)

var (
	boardType = sheet.Type{Size: 9}
	boldType  = boardType.In(sheet.Bold)
	boatType  = sheet.Type{Size: 10, Face: sheet.Bold}
	quietType = sheet.Type{Size: 9, Grey: sheet.Dark}

	solidFill = sheet.Shade(sheet.Black)
	hatchFill = sheet.Fill{Texture: sheet.Rising, Grey: sheet.Black}
	openFill  = sheet.Shade(sheet.White)
	edge      = sheet.Pen{Width: 0.2, Grey: sheet.Black}
	between   = sheet.Pen{Width: 0.15, Grey: sheet.Light}
	heavyRule = sheet.Pen{Width: 0.6, Grey: sheet.Black}
	plainRule = sheet.Pen{Width: 0.3, Grey: sheet.Black}
	dashes    = sheet.Pen{Width: 0.2, Grey: sheet.Dark, Dash: []float64{1.2, 1}}
)

const linePitch = 4.15

// lineAt is the baseline of a line of a row that begins at y, 0 for its first.
func lineAt(y float64, n int) float64 { return y + rowAir + 2.2 + linePitch*float64(n) }

// priceScale is the shared scale of what a cold day costs, from 0 to top.
type priceScale struct {
	top   float64
	marks []float64
}

// scaleFor gives a scale that holds every middle price and the worth, and the
// ranges as far as they are not much longer than that.
func scaleFor(rows []*Row, worth float64) priceScale {
	most, far := worth*1.2, 0.0
	for _, r := range rows {
		if r.priced() {
			p := r.Of(r.Way).Price
			most, far = max(most, p.Typical*1.3), max(far, p.High)
		}
	}
	top := min(max(far, most), 2*most)
	if !(top > 0) {
		top = 1
	}
	out := priceScale{}
	step := chart.Step(top, 4)
	out.top = step * math.Ceil(top/step-1e-9)
	for v := step; v < out.top*(1-1e-9); v += step {
		out.marks = append(out.marks, v)
	}
	return out
}

// priced reports whether a price of a cold day is printed: she has a place, her
// way wins some days, for a price that people say.
func (r *Row) priced() bool {
	if !r.Placed() {
		return false
	}
	o := r.Of(r.Way)
	return o.ExtraDays >= leastExtras && o.Price.Typical <= mostPrinted*max(1, r.Rate)
}

// unpriced says why no price is printed.
func (r *Row) unpriced() string {
	if o := r.Of(r.Way); o.ExtraDays < leastExtras {
		return "too few days for a price"
	}
	return "over " + r.money(mostPrinted*max(1, r.Rate))
}

// price prints the middle price of a cold day.
func (r *Row) price() string {
	return quantity.FormatMoney(quantity.Money(economics.Say(r.Of(r.Way).Price.Typical)), r.Currency)
}

func (b board) height(float64) float64 { return boardHead + b.tall*float64(len(b.rows)) }

// lines is how many lines of text a row holds.
func (b board) lines() int { return int((b.tall - rowAir + 1) / linePitch) }

// placed counts the rows over the heavy rule.
func (b board) placed() int {
	n := 0
	for _, r := range b.rows {
		if b.t.stands(r) {
			n++
		}
	}
	return n
}

func (b board) draw(s sheet.Sheet, r sheet.Rect) error {
	at := func(part float64) float64 { return r.X + part*r.W/boardParts }
	top := r.Y + boardHead
	for _, h := range []struct {
		at         float64
		head, note string
	}{
		{0, "Boat", ""}, {wayAt, "Cold food by", "and the work for it"}, {worksAt, "Works, of 100", "as she is, with work"}, {firstAt, "At first", "80 of 100"},
		{yearAt, "Then a year", ""}, {barsAt, "Price of a cold day", ""}, {evidenceAt, "Evidence", ""}, {stopsAt, "Stops", ""},
	} {
		s.Text(at(h.at), r.Y+3.6, h.head, boldType)
		s.Text(at(h.at), r.Y+8.4, h.note, boardType)
	}
	s.Line(sheet.Point{X: r.X, Y: top}, sheet.Point{X: r.Right(), Y: top}, heavyRule)
	b.drawScale(s, r.Y, top, top+b.tall*float64(b.placed()), at)
	under := false
	for i, row := range b.rows {
		y := top + b.tall*float64(i)
		if i > 0 {
			pen := between
			if !b.t.stands(row) && !under {
				pen = heavyRule
			}
			s.Line(sheet.Point{X: r.X, Y: y}, sheet.Point{X: r.Right(), Y: y}, pen)
		}
		under = under || !b.t.stands(row)
		b.drawRow(s, row, y, at)
	}
	bottom := top + b.tall*float64(len(b.rows))
	s.Line(sheet.Point{X: r.X, Y: bottom}, sheet.Point{X: r.Right(), Y: bottom}, plainRule)
	return s.Err()
}

// across gives where a price stands.
func (b board) across(price float64, at func(float64) float64) float64 {
	return at(barsAt) + (at(priceAt)-at(barsAt))*min(max(price, 0), b.scale.top)/b.scale.top
}

// drawScale draws the prices and their lines through the rows with a place.
func (b board) drawScale(s sheet.Sheet, head, top, bottom float64, at func(float64) float64) {
	if bottom <= top {
		return
	}
	currency := b.t.common()
	worth := b.t.Terms.Worth
	flag, flagX, flagW := "", 0.0, 0.0
	if worth > 0 {
		flag = "worth " + quantity.FormatMoney(quantity.Money(worth), currency)
		flagW = sheet.Width(flag, boldType) + 2.4
		flagX = min(max(b.across(worth, at)-flagW/2, at(barsAt)), at(evidenceAt)-flagW-2)
	}
	right := math.Inf(-1)
	for i, v := range append([]float64{0}, b.scale.marks...) {
		x := b.across(v, at)
		pen := dashes
		if i == 0 {
			pen = plainRule
		}
		s.Line(sheet.Point{X: x, Y: top}, sheet.Point{X: x, Y: bottom}, pen)
		text := quantity.FormatMoney(quantity.Money(v), currency)
		w := sheet.Width(text, boardType)
		left := x - w/2
		if left < right+1.5 || flag != "" && left < flagX+flagW+1 && left+w > flagX-1 {
			continue
		}
		s.Text(left, head+8.4, text, boardType)
		right = left + w
	}
	if flag == "" {
		return
	}
	x := b.across(worth, at)
	s.Line(sheet.Point{X: x, Y: top}, sheet.Point{X: x, Y: bottom}, sheet.Pen{Width: 0.9, Grey: sheet.Black})
	s.Rect(sheet.Rect{X: flagX, Y: head + 5, W: flagW, H: 4.8}, solidFill, sheet.Pen{})
	white := boldType
	white.Grey = sheet.White
	s.Text(flagX+1.2, head+8.5, flag, white)
}

func (b board) drawRow(s sheet.Sheet, row *Row, y float64, at func(float64) float64) {
	cell := func(from, to float64, n int, text string, t sheet.Type) {
		s.Text(at(from), lineAt(y, n), sheet.Shorten(text, t, at(to)-at(from)-1.5), t)
	}
	cell(0, wayAt, 0, row.name(), boatType)
	cell(0, wayAt, 1, row.File, quietType)
	if row.Error == "" && !row.NotTold {
		box := row.Box.Volume.Value + ", foam " + row.Box.Foam.Value
		if sheet.Width(box, quietType) > at(wayAt)-at(0)-1.5 { // the foam stands behind
			box = row.Box.Volume.Value
		}
		cell(0, wayAt, 2, box, quietType)
	}
	if !b.t.stands(row) {
		b.drawWhyNot(s, row, y, at)
		return
	}
	o := row.Of(row.Way)
	cell(wayAt, worksAt, 0, words.Name(row.Way), boldType)
	for i, text := range atMost(words.Capital(row.work()), boardType, at(worksAt)-at(wayAt)-2, b.lines()-1) {
		s.Text(at(wayAt), lineAt(y, i+1), text, boardType)
	}
	drawWorks(s, o, y, at)
	first := row.band(o.Fitted.First)
	sum, bracket, _ := strings.Cut(first, " (")
	cell(firstAt, yearAt, 0, sum, boldType)
	if bracket != "" {
		cell(firstAt, yearAt, 1, "("+bracket, boardType)
	}
	if row.ToldIn != "" {
		cell(firstAt, yearAt, 2, fmt.Sprintf("at %.4g a %s", row.Rate, row.ToldIn), quietType)
	}
	cell(yearAt, barsAt, 0, row.money(o.Fitted.PerYear.Typical), boardType)
	b.drawPrice(s, row, o, y, at)
	b.drawEvidence(s, row, y, at)
}

// drawWorks counts the futures in which her way works, as she is and with the
// work.
func drawWorks(s sheet.Sheet, o *Option, y float64, at func(float64) float64) {
	for i, c := range []struct {
		of100 int
		high  float64
		fill  sheet.Fill
		typ   sheet.Type
	}{{o.AsTold.Works, 2, hatchFill, boardType}, {o.Fitted.Works, barHigh, solidFill, boldType}} {
		mid := y + rowAir + 0.9 + 5*float64(i)
		w := at(worksAt+worksWide) - at(worksAt)
		s.Rect(sheet.Rect{X: at(worksAt), Y: mid - c.high/2, W: w, H: c.high}, openFill, edge)
		if c.of100 > 0 {
			s.Rect(sheet.Rect{X: at(worksAt), Y: mid - c.high/2, W: w * float64(c.of100) / 100, H: c.high}, c.fill, edge)
		}
		s.Text(at(worksAt+worksWide)+1.5, mid+1.2, strconv.Itoa(c.of100), c.typ)
	}
}

func (b board) drawPrice(s sheet.Sheet, row *Row, o *Option, y float64, at func(float64) float64) {
	mid := y + b.tall/2
	if !row.priced() {
		x := at(barsAt) + 2
		for i, text := range sheet.Wrap(row.unpriced(), boardType, at(evidenceAt)-at(barsAt)-6) {
			base := mid + linePitch*float64(i)
			// On white, so that no line strikes through.
			s.Rect(sheet.Rect{X: x - 0.6, Y: base - 3.2, W: sheet.Width(text, boardType) + 1.2, H: 4.2}, openFill, sheet.Pen{})
			s.Text(x, base, text, boardType)
		}
		return
	}
	left, right := b.across(o.Price.Low, at), b.across(o.Price.High, at)
	fill := hatchFill
	if row == b.t.least() {
		fill = solidFill
	}
	bar := sheet.Rect{X: left, Y: mid - 1.7, W: max(0.3, right-left), H: 3.4}
	if o.Price.High > b.scale.top { // open at the end of the scale
		s.Rect(bar, fill, sheet.Pen{})
		s.Polyline([]sheet.Point{{X: bar.Right(), Y: bar.Y}, {X: bar.X, Y: bar.Y}, {X: bar.X, Y: bar.Bottom()}, {X: bar.Right(), Y: bar.Bottom()}}, edge)
	} else {
		s.Rect(bar, fill, edge)
	}
	x := b.across(o.Price.Typical, at)
	s.Rect(sheet.Rect{X: x - 0.8, Y: mid - 2.7, W: 1.6, H: 5.4}, openFill, sheet.Pen{Width: 0.35, Grey: sheet.Black})
	s.Text(at(priceAt+priceWide), mid+1.2, row.price(), boldType.To(sheet.Right))
}

// drawWhyNot gives a row under the heavy rule.
func (b board) drawWhyNot(s sheet.Sheet, row *Row, y float64, at func(float64) float64) {
	head := row.standing()
	if row.Placed() {
		head = words.Name(row.Way)
	}
	s.Text(at(wayAt), lineAt(y, 0), sheet.Shorten(head, boldType, at(worksAt)-at(wayAt)-2), boldType)
	from := worksAt
	if row.Error == "" && !row.NotTold {
		drawWorks(s, row.Of(row.Way), y, at)
		from = firstAt
	}
	for i, text := range atMost(b.t.whyNot(row), boardType, at(evidenceAt)-at(from)-3, b.lines()) {
		s.Text(at(from), lineAt(y, i), text, boardType)
	}
	if row.Error == "" {
		b.drawEvidence(s, row, y, at)
	}
}

// grades are the boxes filled for each grade of evidence, of three.
var grades = map[economics.EvidenceGrade]int{economics.Weak: 1, economics.Fair: 2, economics.Strong: 3}

func (b board) drawEvidence(s sheet.Sheet, row *Row, y float64, at func(float64) float64) {
	const side, gap = 3.0, 0.9
	for i := range len(grades) {
		fill := openFill
		if i < grades[row.Grade] {
			fill = solidFill
		}
		s.Rect(sheet.Rect{X: at(evidenceAt) + (side+gap)*float64(i), Y: y + rowAir - 0.6, W: side, H: side}, fill, edge)
	}
	s.Text(at(evidenceAt), lineAt(y, 1), string(row.Grade), boardType)
	n := len(row.StopsFor(row.Way))
	text, t := "none", boardType
	if n > 0 {
		text, t = strconv.Itoa(n), boldType
	}
	s.Text(at(stopsAt), lineAt(y, 0), text, t)
	if len(row.Unasked) > 0 {
		s.Text(at(stopsAt), lineAt(y, 1), "not all", boardType)
		s.Text(at(stopsAt), lineAt(y, 2), "told", boardType)
	}
}

// atMost breaks a text into at most n lines and marks what is left out.
func atMost(text string, t sheet.Type, w float64, n int) []string {
	if text == "" {
		return nil
	}
	lines := sheet.Wrap(text, t, w)
	if len(lines) <= n {
		return lines
	}
	lines[n-1] = sheet.Shorten(lines[n-1]+" "+lines[n]+" …", t, w)
	return lines[:n]
}

// boards sets the rows over the pages.
func (t *Table) boards() []layout.Block {
	rows := t.inOrder()
	scale := scaleFor(rows, t.Terms.Worth)
	tall, room := closeRow, onFirst
	if len(rows) <= fewBoats {
		tall, room = roomyRow, fewBoats
	}
	var out []layout.Block
	for len(rows) > 0 {
		n := min(room, len(rows))
		b := board{t, rows[:n], scale, tall}
		block := layout.OnPaper{Name: "boats", Height: b.height, Draw: b.draw}
		if len(out) == 0 {
			block.Instead = t.instead()
		}
		out, rows, room = append(out, block), rows[n:], onLater
	}
	return out
}

// instead says on a screen and in text what the board draws: the prices in one
// picture, the rest in a table.
func (t *Table) instead() []layout.Block {
	all := t.answers()
	var rows []chart.PriceRow
	ordered := t.inOrder()
	for _, r := range ordered {
		switch {
		case !t.stands(r):
		case r.priced():
			p := r.Of(r.Way).Price
			rows = append(rows, chart.PriceRow{Name: r.name(), Low: p.Low, Mid: p.Typical, High: p.High, Best: r == t.least()})
		default:
			rows = append(rows, chart.PriceRow{Name: r.name(), Words: r.unpriced()})
		}
	}
	if len(rows) < 2 {
		return []layout.Block{all}
	}
	scale := scaleFor(ordered, t.Terms.Worth)
	prices := chart.PriceOfCold{Rows: rows, Top: scale.top, Marks: scale.marks, Worth: t.Terms.Worth,
		Say: func(v float64) string { return quantity.FormatMoney(quantity.Money(v), t.common()) }}
	if t.Terms.Worth > 0 {
		prices.Flag = "worth " + quantity.FormatMoney(quantity.Money(t.Terms.Worth), t.common())
	}
	picture := chart.Picture(prices, "What a cold day costs on each boat", "The middle future, and the range of 80 of 100.",
		"A bar for each boat with a place, cheapest first; the table below has the figures.", all)
	picture.Shown = true
	return []layout.Block{picture}
}
