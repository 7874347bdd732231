package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/heat"
	"coldreckon/economics/quantity"
)

// Work is one piece of the work an option needs.
type Work struct {
	Piece economics.Piece
	What  string // with its size, in generic terms
	Buys  string // what it does for the option
	// Cost is its first cost by typical prices with the price book's range;
	// empty when it costs nothing.
	Cost string
}

// Work lists the work found for an option, in the order a yard would do it.
func (v Voice) Work(id economics.OptionID) []Work {
	o := v.r.Of(id)
	var out []Work
	for _, item := range o.Fit.Items {
		out = append(out, Work{item.Piece, v.piece(o.ID, item), v.buys(o, item), v.pieceCost(o, item.Piece)})
	}
	return out
}

// pieces names pieces of work inside a sentence.
func (v Voice) pieces(items []economics.FitItem) []string {
	var names []string
	for _, item := range items {
		names = append(names, Piece(item, &v.r.Boat))
	}
	return names
}

// Piece names a piece of work inside a sentence, with its size in the owner's
// units; b is as told.
func Piece(item economics.FitItem, b *economics.Boat) string {
	length := quantity.FormatLength(quantity.Metre(item.Size/1000), b.Units)
	switch item.Piece {
	case economics.SealPiece:
		switch {
		case b.Box.Drain != heat.OpenDrain:
			return "a tight lid"
		case b.Box.LidSeal == heat.GoodSeal:
			return "a tight drain"
		}
		return "a tight lid and drain"
	case economics.LidPiece:
		return length + " more foam in the lid"
	case economics.OutsidePiece:
		return length + " more foam behind the walls"
	case economics.InsidePiece:
		return length + " more foam inside the walls"
	case economics.MoreIcePiece:
		return shareWords(item.Size) + " of the box for ice"
	case economics.PanelPiece:
		return power(item.Size) + " more panel"
	case economics.BatteryPiece:
		return quantity.FormatCharge(quantity.AmpHour(item.Size)) + " more battery"
	}
	return cmp.Or(sizeless[item.Piece], string(item.Piece))
}

// sizeless are the pieces that have no size to tell.
var sizeless = map[economics.Piece]string{
	economics.ColdStartPiece: "a cold start of each trip", economics.PouredPiece: "foam poured round the box",
	economics.SpacerPiece: "a block of foam in the box", economics.CoverPiece: "a cover over the food", economics.NoRunsPiece: "no runs for ice alone",
	economics.ByDayPiece: "running by day only", economics.BottlesPiece: "bottles that freeze for the night", economics.VentPiece: "ducted air for the unit",
	economics.AlarmPiece: "a thermometer with an alarm",
}

// shareWords says a share of the box: "half", "two thirds".
func shareWords(share float64) string {
	switch {
	case math.Abs(share-1.0/3) < 0.01:
		return "a third"
	case math.Abs(share-1.0/2) < 0.01:
		return "half"
	case math.Abs(share-2.0/3) < 0.01:
		return "two thirds"
	}
	return quantity.FormatShare(quantity.Fraction(share))
}

// piece describes a piece as it would stand on a shopping list.
func (v Voice) piece(option economics.OptionID, item economics.FitItem) string {
	b := v.r.Boat.Box
	switch item.Piece {
	case economics.ColdStartPiece:
		if option == economics.IceOnly {
			return "Start each trip with a cold box: put the first ice in the day before"
		}
		if v.r.Boat.SeesShore() {
			return "Start each trip with a cold box: run the unit on shore power the day before"
		}
		return "Start each trip with a cold box: leave the unit running on its own sun"
	case economics.SealPiece:
		var parts []string
		if b.LidSeal != heat.GoodSeal {
			parts = append(parts, "new gasket round the lid")
		}
		if b.Drain == heat.OpenDrain {
			parts = append(parts, "trap or plug in the drain")
		}
		return Capital(Join(parts))
	case economics.LidPiece:
		return fmt.Sprintf("%s more foam in the lid, %s", v.Length(item.Size), v.area(b.AreaM2([]heat.Side{b.LidSide()})))
	case economics.OutsidePiece, economics.InsidePiece:
		from, where := economics.FromInside, "inside"
		if item.Piece == economics.OutsidePiece {
			from, where = economics.FromOutside, "from outside"
		}
		sides := b.Reached(from)
		var names []string
		for _, side := range sides {
			names = append(names, string(side))
		}
		return fmt.Sprintf("%s more foam, put in %s, on the walls in reach (%s), %s", v.Length(item.Size), where, Join(names), v.area(b.AreaM2(sides)))
	case economics.PouredPiece:
		return fmt.Sprintf("Foam poured into the empty space round the box, %s: drill and look first, pour a little at a time", v.Volume(float64(b.VoidVolume)))
	case economics.SpacerPiece:
		return fmt.Sprintf("Loose block of foam at the fore end, over %s of the length: cut to slide in, wrapped against wet", quantity.FormatShare(quantity.Fraction(item.Size)))
	case economics.CoverPiece:
		return "Insulating cover to lay over the food"
	case economics.MoreIcePiece:
		return fmt.Sprintf("Give %s of the box to ice", shareWords(item.Size))
	case economics.NoRunsPiece:
		return "Buy ice only where food is bought: no runs for ice alone"
	case economics.ByDayPiece:
		return "Run the unit only while the sun is up, set a little colder for the night"
	case economics.BottlesPiece:
		return fmt.Sprintf("Bottles of water against the plate, %s in all, frozen by day: their ice carries the night", v.Volume(6))
	case economics.VentPiece:
		return fmt.Sprintf("Duct and fan that bring the unit cool air, and a way out for the warm: %s clear each, or what its maker asks for", v.openArea())
	case economics.AlarmPiece:
		return "Thermometer in the box that sounds an alarm when the unit stops"
	case economics.PanelPiece:
		return fmt.Sprintf("%s more solar panel (%s in all)", power(item.Size), power(float64(v.r.Boat.Power.SolarWp)+item.Size))
	case economics.BatteryPiece:
		return fmt.Sprintf("%s more battery (%s in all)", quantity.FormatCharge(quantity.AmpHour(item.Size)),
			quantity.FormatCharge(v.r.Boat.Power.Battery+quantity.AmpHour(item.Size)))
	}
	return string(item.Piece)
}

// openArea is the clear area of a condenser's inlet, and of its outlet:
// 100 cm². Common practice, no source.
func (v Voice) openArea() string {
	if v.sys == quantity.US {
		return "16 sq in"
	}
	return "100 cm²"
}

// buys says what a piece does for the option: how often it would work without
// it, and what it saves or adds in the mean of the futures that the search
// looked at.
func (v Voice) buys(o *economics.OptionFigures, item economics.FitItem) string {
	switch with := share100(o.Fit.SearchWorks); { // counted over the same futures
	case item.WithoutWorksOf100 > with:
		return fmt.Sprintf("Better left out: works in %d of 100 without it, %d with it.", item.WithoutWorksOf100, with)
	case !o.Fit.Reached:
		return "Helps, but not enough."
	}
	text := fmt.Sprintf("Without it: works in %s.", of100(item.WithoutWorksOf100))
	if item.WithoutWorksOf100 >= 90 {
		text = "Not needed to work."
	}
	switch extra := item.WithoutPresent; {
	case math.Abs(extra) < 1:
	case extra > 0:
		text += fmt.Sprintf(" It saves %s over %s on average.", v.Money(extra), v.years())
	default:
		text += fmt.Sprintf(" It adds %s over %s on average.", v.Money(-extra), v.years())
	}
	return text
}

// pieceCost prints what a piece costs at first, with the price book's range.
func (v Voice) pieceCost(o *economics.OptionFigures, p economics.Piece) string {
	for _, c := range o.PieceCosts {
		if c.Piece == p && c.Cost.Typical != 0 {
			return v.about(c.Cost)
		}
	}
	return ""
}

// Hours prints a stretch of own hands' work, "2 to 10"; empty where there is none.
func Hours(h quantity.Range) string {
	switch {
	case h.High == 0:
		return ""
	case h.High < 1:
		return "under 1"
	case h.Low < 1:
		return fmt.Sprintf("up to\u00a0%.0f", h.High)
	}
	return fmt.Sprintf("%.0f\u00a0to\u00a0%.0f", h.Low, h.High)
}

// Litres says how much of the box the foam of a way takes; empty where it
// takes none.
func (v Voice) Litres(id economics.OptionID) string {
	o := v.r.Of(id)
	if o.Fit.LostShare < 0.005 {
		return ""
	}
	told := float64(v.r.Box.Volume)
	return fmt.Sprintf("The foam takes %s of the box's %s.", v.Volume(o.Fit.LostShare*told), v.Volume(told))
}

// Tighter says what a fit-out that takes more of the box would save, and what it
// has otherwise; empty where there is none.
func (v Voice) Tighter(id economics.OptionID) string {
	o := v.r.Of(id)
	t := o.Fit.Tight
	if t == nil || t.SearchPresent >= o.Fit.SearchPresent {
		return ""
	}
	told := float64(v.r.Box.Volume)
	text := fmt.Sprintf("Cheaper by about %s over %s, but tighter: it leaves %s of the box, against %s.",
		v.Money(o.Fit.SearchPresent-t.SearchPresent), v.years(), v.Volume((1-t.LostShare)*told), v.Volume((1-o.Fit.LostShare)*told))
	switch has, lacks := v.notAmong(t.Items, o.Fit.Items), v.notAmong(o.Fit.Items, t.Items); {
	case has != "" && lacks != "":
		text += fmt.Sprintf(" It has %s in place of %s.", has, lacks)
	case has != "":
		text += fmt.Sprintf(" It has %s besides.", has)
	case lacks != "":
		text += fmt.Sprintf(" It does without %s.", lacks)
	}
	return text
}

// notAmong names the pieces that are not among others in their size.
func (v Voice) notAmong(items, others []economics.FitItem) string {
	return Join(v.pieces(slices.DeleteFunc(slices.Clone(items), func(item economics.FitItem) bool {
		return slices.ContainsFunc(others, func(x economics.FitItem) bool { return x.Piece == item.Piece && x.Size == item.Size })
	})))
}
