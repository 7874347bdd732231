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

// boat is page two: where the heat comes in, what the work changes, and that it
// holds all season.
func (a author) boat(s setting) []layout.Block {
	if !a.aboard() {
		return []layout.Block{layout.Heading{Level: 1, Text: "The box and the boat"}, layout.Para{Text: "There are no nights aboard, so there is no season to show."}}
	}
	out := headed(a.box(s))
	if last := len(out) - 1; a.Enlarged > 1 { // the two sections fill a page
		out = slices.Insert(out, last, layout.Block(a.room()))
	} else {
		out = append(out, a.room())
	}
	out = append(out, headed(a.season(s))...)
	if text := a.v.Elsewhere(a.o.ID); text != "" {
		out = append(out, layout.Para{Text: text, Wide: true})
	}
	out = append(out, a.upkeep(s)...)
	if a.cutsAhead {
		out = append(out, a.cutList(setting{tight: tightest})...)
	}
	return out
}

// headed sets a picture's finding as a heading.
func headed(p layout.Picture) []layout.Block {
	h := layout.Heading{Level: 1, Text: p.Finding}
	p.Finding = ""
	if p.Caption == "" {
		return []layout.Block{h, p}
	}
	caption := layout.Para{Style: layout.Small, Text: p.Caption, Keep: true}
	p.Caption = ""
	return []layout.Block{h, caption, p}
}

// worked reports whether the way shown needs work on box or boat.
func (a author) worked() bool { return a.o.Fit.Cools() }

// heatW prints a heat without its unit, no finer than a leak known to a quarter
// lets one tell.
func heatW(w float64) string {
	if math.Abs(w) < 9.95 {
		return fmt.Sprintf("%.1f", w+0)
	}
	return watts(w)
}

// watts prints a power or energy without its unit, to the two digits that a leak
// known to a quarter bears.
func watts(x float64) string { return chart.Number(math.Round(words.Round(x)), 1) }

// through is the heat of one way in, as told and with the work.
func (a author) through(part string, side heat.Side) (now, with float64) {
	of := func(c economics.CaseFigures) float64 {
		for _, s := range c.Heat {
			if s.Part == part && s.Side == side {
				return s.HeatW
			}
		}
		return 0
	}
	return of(a.told), of(a.fitted)
}

// box draws the box with its heat.
func (a author) box(s setting) layout.Picture {
	month := words.Month(a.told.Month)
	finding := fmt.Sprintf("In %s the box takes up %s W", month, heatW(a.told.HeatW))
	if works := a.boxWork(); works != "" && heatW(a.told.HeatW) != heatW(a.fitted.HeatW) {
		verb := "takes"
		if strings.Contains(works, " and ") {
			verb = "take"
		}
		if s.tight > 3 { // page three names them
			works, verb = "the work", "takes"
		}
		finding = fmt.Sprintf("%s %s the heat in %s from %s to %s W", words.Capital(works), verb, month, heatW(a.told.HeatW), heatW(a.fitted.HeatW))
	}
	drawn := "Your box to scale"
	if a.chest() {
		drawn = "The chest to scale"
	} else if a.r.Boat.Box.Inside.Zero() {
		drawn += fmt.Sprintf(", drawn as 1 : 1 : 1.1 since only its %s were told", a.v.Volume(a.told.VolumeL))
	}
	edgesNow, edges := a.through(economics.EdgesPart, "")
	opensNow, opens := a.through(economics.OpeningsPart, "")
	goodsNow, goods := a.through(economics.GoodsPart, "")
	heats := "as she is → with the work; arrows as wide as the latter"
	if heatW(a.told.HeatW) == heatW(a.fitted.HeatW) {
		heats = "in the box as she is; arrows as wide as it is large"
	}
	caption := fmt.Sprintf("%s. Heat in W, %s. Besides, edges and corners let in %s W, the lid's opening %s W, food and drink bring %s W.",
		drawn, heats, words.Turn(heatW(edgesNow), heatW(edges)), words.Turn(heatW(opensNow), heatW(opens)), words.Turn(heatW(goodsNow), heatW(goods)))
	t := layout.Table{Sum: true, Columns: []layout.Column{{Head: "Way in"}, {Head: "As she is, W", Right: true}, {Head: "With the work, W", Right: true}}}
	for _, s := range a.told.Heat {
		now, with := a.through(s.Part, s.Side)
		t.Rows = append(t.Rows, []string{words.Capital(s.Name()), heatW(now), heatW(with)})
	}
	t.Rows = append(t.Rows, []string{"All", heatW(a.told.HeatW), heatW(a.fitted.HeatW)})
	if !a.worked() {
		t = t.Without(2)
	}
	return chart.Picture(a.sections(s), finding, caption, finding+". "+a.layers(), t)
}

// chest reports whether the way shown is a chest with walls of its own.
func (a author) chest() bool {
	return a.o.ID == economics.SmallUnit && a.r.Boat.Small.Form == economics.FreeStanding ||
		a.o.ID == economics.LargerUnit && a.r.Boat.Larger.Form == economics.FreeStanding
}

// boxWork names the work on the box, for a sentence; empty where there is none.
func (a author) boxWork() string {
	var out []string
	for _, item := range a.o.Fit.Items {
		switch item.Piece {
		case economics.SealPiece, economics.LidPiece, economics.OutsidePiece, economics.InsidePiece, economics.PouredPiece, economics.SpacerPiece, economics.CoverPiece:
			out = append(out, words.Piece(item, &a.r.Boat))
		}
	}
	return words.Join(out)
}

// layers says which faces are lined with how much.
func (a author) layers() string {
	var out []string
	for _, f := range a.told.Box.Faces {
		out = append(out, fmt.Sprintf("%s: %s of foam", f.Side, a.v.Length(thickness(f))))
	}
	return "As she is, " + strings.Join(out, ", ") + "."
}

// thickness is the foam of a face, mm.
func thickness(f heat.FaceSpec) (mm float64) {
	for _, l := range f.Layers {
		if l.State != heat.Missing {
			mm += 1000 * float64(l.Thickness)
		}
	}
	return mm
}

// lower is the height of a drawing, less where the pieces stand on its page too.
func (a author) lower(height float64) float64 {
	if a.cutsAhead {
		return 0.8 * height
	}
	return height
}

// sections gives the box as it is drawn.
func (a author) sections(s setting) chart.BoxSections {
	in, b := a.told.Box.Inside, a.r.Boat.Box
	mm := func(l quantity.Metre) float64 { return 1000 * float64(l) }
	c := chart.BoxSections{
		Across: mm(in.Width), Deep: mm(in.Length), High: mm(in.Height), Highest: a.lower([...]float64{70, 60, 50, 42, 36, 30}[s.tight]) + s.spare/3,
		Volume: a.v.Volume(a.fitted.VolumeL), Sections: [2]string{"Cut across, looking aft", "From above, lid off"},
		Foam: "foam there", Board: "board to add inside", PlateName: "plate",
		SayHeat: heatW, SayLength: a.v.Length,
	}
	c.Unit = 25.4
	if a.r.Boat.Units == quantity.Metric {
		c.Unit = 10
		c.SayLength = func(mm float64) string { return chart.Number(mm/10, 1) + " cm" }
	}
	if a.v.Volume(a.told.VolumeL) != c.Volume {
		c.Was = "was " + a.v.Volume(a.told.VolumeL)
	}
	c.Plate = a.unit() && !a.chest()
	lid := economics.Box{Lid: a.told.Box.Lid}.LidSide()
	if c.Front = lid == heat.Inboard; c.Front {
		c.Sections[1] = "From above"
	}
	if o := b.LidOpening; lid == heat.Top && !a.chest() && o.Length > 0 {
		c.Opening = [2]float64{mm(o.Width), mm(o.Length)}
	}
	with, usual, lined := a.fitted.Box.Faces, a.usualState(), false
	if usual != "" {
		c.Foam += ", " + usual
	}
	for i, f := range a.told.Box.Faces {
		face := chart.BoxFace{Foam: thickness(f)}
		face.Name = string(f.Side)
		if f.Side == lid {
			face.Name = "lid"
		}
		if st := wetness(f); st != usual {
			face.Name += ", " + st
		}
		face.Beyond = map[heat.Neighbour]string{heat.Sea: "sea", heat.Engine: "engine space"}[f.Neighbour]
		face.Now, face.With = a.through(heat.FacePart, f.Side)
		board, behind := a.added(f, with[i])
		if board > 0.5 {
			face.Board = board
		}
		if behind > 0.5 {
			text := "+" + a.v.Length(behind)
			if face.Beyond == "" {
				face.Beyond = text + " behind"
			} else {
				face.Beyond = text + ", " + face.Beyond
			}
		}
		lined = lined || face.Board > 0
		*map[heat.Side]*chart.BoxFace{heat.Top: &c.Lid, heat.Bottom: &c.Bottom, heat.Inboard: &c.Inboard, heat.Outboard: &c.Outboard, heat.Fore: &c.Fore, heat.Aft: &c.Aft}[f.Side] = face
	}
	if !lined {
		c.Board = ""
	}
	leak := func(name, part string) chart.BoxLeak {
		now, with := a.through(part, "")
		if now == 0 && with == 0 {
			return chart.BoxLeak{}
		}
		return chart.BoxLeak{Name: name, Now: now, With: with}
	}
	c.Seal, c.Drain = leak("seal", heat.SealPart), leak("drain", heat.DrainPart)
	return c
}

// wetness names the state of a face's foam.
func wetness(f heat.FaceSpec) string {
	for _, l := range f.Layers {
		return string(l.State)
	}
	return "bare"
}

// usualState is the state of most faces' foam.
func (a author) usualState() string {
	count, best := map[string]int{}, ""
	for _, f := range a.told.Box.Faces {
		st := wetness(f)
		if count[st]++; best == "" || count[st] > count[best] {
			best = st
		}
	}
	return best
}

// added gives the foam that the work adds to a face, mm: in front of the layers
// that were there, and behind them. Of a bare face the reach tells which it is.
func (a author) added(told, with heat.FaceSpec) (board, behind float64) {
	all := thickness(with) - thickness(told)
	if n := len(told.Layers); n > 0 {
		for at := range len(with.Layers) - n + 1 {
			if slices.Equal(with.Layers[at:at+n], told.Layers) {
				board = thickness(heat.FaceSpec{Layers: with.Layers[:at]})
				return board, all - board
			}
		}
	}
	if a.r.Boat.Box.Faces[told.Side].Reach == economics.FromOutside {
		return 0, all
	}
	return all, 0
}

// unit reports whether the way shown is a unit.
func (a author) unit() bool {
	return a.o.ID == economics.SmallUnit || a.o.ID == economics.LargerUnit
}

// unitFigures are those of the larger unit where it is the way shown, else of the small one.
func (a author) unitFigures() economics.UnitFigures {
	if a.o.ID == economics.LargerUnit {
		return a.r.Units[1]
	}
	return a.r.Units[0]
}

// warmestCabin is the month aboard with the warmest cabin, of at least one.
func (a author) warmestCabin() economics.MonthFigures {
	return slices.MaxFunc(a.r.Months, func(x, y economics.MonthFigures) int { return cmp.Compare(x.CabinC, y.CabinC) })
}

// room shows what fills the box before and after.
func (a author) room() layout.Picture {
	cooling := "ice"
	if a.unit() {
		cooling = "plate"
	}
	sys := a.r.Boat.Units
	in := func(l float64) float64 { return l }
	say := func(v float64) string {
		if v < 0.095 {
			return fmt.Sprintf("%.2f", v)
		}
		return fmt.Sprintf("%.1f", v)
	}
	c := chart.Room{Unit: "L"}
	if sys == quantity.US {
		c.Unit, c.Say = "cu ft", say
		in = func(l float64) float64 { return l / 28.316846592 }
	}
	bar := func(name string, r economics.RoomFigures) {
		b := chart.RoomBar{Name: name}
		for _, p := range []chart.RoomPart{{Name: "food", Volume: r.Food, Use: chart.Food}, {Name: "drinks", Volume: r.Drinks, Use: chart.Other}, {Name: "jars", Volume: r.Lives, Use: chart.Other},
			{Name: cooling, Volume: r.Cooling, Use: chart.Other}, {Name: "free", Volume: r.Free}, {Name: "board", Volume: r.Board, Use: chart.Added}} {
			if p.Volume > 0 {
				p.Volume = in(p.Volume)
				b.Parts = append(b.Parts, p)
			}
		}
		c.Bars = append(c.Bars, b)
	}
	bar("as she is", a.told.Room)
	if a.told.Room != a.fitted.Room {
		bar("with the work", a.fitted.Room)
	}
	finding := fmt.Sprintf("Room inside: %s are free beside all that goes in", a.v.Volume(a.fitted.Room.Free))
	if short := a.fitted.Room.Short; short > 0.5 {
		finding = fmt.Sprintf("Room inside: the box is %s short of all that goes in", a.v.Volume(short))
	}
	t := layout.Table{Columns: []layout.Column{{Head: "Room, " + c.Unit}}}
	for _, b := range c.Bars {
		t.Columns = append(t.Columns, layout.Column{Head: words.Capital(b.Name), Right: true})
	}
	for _, name := range []string{"food", "drinks", "jars", cooling, "free", "board"} {
		row := []string{words.Capital(name)}
		for _, b := range c.Bars {
			cell := "0"
			for _, p := range b.Parts {
				if p.Name == name {
					cell = say(p.Volume)
				}
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return chart.Picture(c, finding, "", finding+".", t)
}
