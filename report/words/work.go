package words

import (
	"fmt"
	"math"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/energy"
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

// short names a piece inside a sentence.
func (v Voice) short(item economics.FitItem) string {
	switch item.Piece {
	case economics.HabitPiece:
		return "a cold start of each trip"
	case economics.SealPiece:
		return "a tight lid and drain"
	case economics.LidPiece:
		return v.length(item.Size) + " more foam in the lid"
	case economics.FacesPiece:
		return v.length(item.Size) + " more foam on the walls in reach"
	case economics.CoverPiece:
		return "a cover over the food"
	case economics.VentPiece:
		return "ducted air for the unit"
	case economics.PanelPiece:
		return power(item.Size) + " more panel"
	case economics.BatteryPiece:
		return quantity.FormatCharge(quantity.AmpHour(item.Size)) + " more battery"
	}
	return string(item.Piece)
}

// piece describes a piece as it would stand on a shopping list.
func (v Voice) piece(option economics.OptionID, item economics.FitItem) string {
	b := v.r.Boat.Box
	switch item.Piece {
	case economics.HabitPiece:
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
		return fmt.Sprintf("%s more foam in the lid, %s", v.length(item.Size), v.area(v.foamArea(economics.LidPiece)))
	case economics.FacesPiece:
		return fmt.Sprintf("%s more foam on the walls in reach (%s), %s", v.length(item.Size), Join(v.reachable()), v.area(v.foamArea(economics.FacesPiece)))
	case economics.CoverPiece:
		return "Insulating cover to lay over the food"
	case economics.VentPiece:
		return fmt.Sprintf("Duct and fan that bring the unit cool air, and a way out for the warm: %s clear each, or what its maker asks for", v.openArea())
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

// lidSide is the face that the lid is in.
func (v Voice) lidSide() heat.Side {
	if v.r.Boat.Box.Lid == heat.FrontDoor {
		return heat.Inboard
	}
	return heat.Top
}

func (v Voice) reachable() []string {
	var out []string
	for _, side := range heat.Sides {
		if side != v.lidSide() && v.r.Boat.Box.Faces[side].Reach != economics.NotReached {
			out = append(out, string(side))
		}
	}
	return out
}

// foamArea is the inside area that a piece of foam work covers, m².
func (v Voice) foamArea(p economics.Piece) float64 {
	inside := v.r.Boat.Box.Inside
	if inside.Zero() {
		inside = heat.CubeLike(v.r.Box.Volume)
	}
	if p == economics.LidPiece {
		return float64(heat.FaceArea(inside, v.lidSide()))
	}
	var sum float64
	for _, side := range v.reachable() {
		sum += float64(heat.FaceArea(inside, heat.Side(side)))
	}
	return sum
}

// pieceLines are the price-book lines that pay for a piece.
var pieceLines = map[economics.Piece][]string{
	economics.SealPiece:    {"seal", "drain_trap"},
	economics.LidPiece:     {"lid_foam", "foam"},
	economics.FacesPiece:   {"foam"},
	economics.CoverPiece:   {"cover"},
	economics.VentPiece:    {"vent_duct"},
	economics.PanelPiece:   {"panel"},
	economics.BatteryPiece: {"battery_lead", "battery_lithium"},
}

// pieceCost adds up a piece's lines of the option's cost table. Foam for lid
// and walls is one line, shared by area.
func (v Voice) pieceCost(o *economics.OptionFigures, p economics.Piece) string {
	var typical, low, high float64
	for _, line := range o.Fitted.Lines {
		if !slices.Contains(pieceLines[p], line.ID) || line.First == 0 {
			continue
		}
		share := 1.0
		if line.ID == "foam" {
			if total := number(o.Fitted.Facts, "foam_added_m2"); total > 0 {
				share = min(1, v.foamArea(p)/total)
			}
		}
		typical += share * line.First
		if price, ok := v.book.Price(line.ID); ok && price.Price.Typical > 0 {
			low += share * line.First * price.Price.Low / price.Price.Typical
			high += share * line.First * price.Price.High / price.Price.Typical
		}
	}
	if typical == 0 {
		return ""
	}
	return v.about(typical, low, high)
}

// Cable gives the conductor and fuse for a unit: the least section that keeps
// the drop within 3 %, the next size sold and the largest fuse it allows. ok
// is false without a built-in unit or when the run is not known.
func (v Voice) Cable(id economics.OptionID) (text string, ok bool) {
	o, p := v.r.Of(id), v.r.Boat.Power
	runShare, wh := number(o.Fitted.Facts, "run_share_hottest"), number(o.Fitted.Facts, "unit_wh_per_day_hottest")
	if !unit(id) || p.CableRun <= 0 || runShare <= 0 || wh <= 0 {
		return "", false
	}
	bank := energy.Bank{Volts: p.Volts, Chemistry: p.Chemistry}
	running := quantity.Ampere(wh / 24 / min(1, runShare) / float64(bank.MeanVolts()))
	// 1.5 mm² covers AWG 16, the least conductor laid by itself (33 CFR 183.425).
	least := energy.SizeFor(running, p.CableRun, p.Volts, energy.CompressorDrop)
	size, fits := energy.NextMetric(max(1.5, least))
	name := quantity.FormatWireSize(size.Size, quantity.Metric)
	if v.sys == quantity.US {
		size, fits = energy.NextGauge(least)
		name = "AWG " + size.AWG
	}
	if !fits {
		return fmt.Sprintf("No usual cable carries the unit over %s within 3 %% drop: move the battery or the unit.", quantity.FormatRun(p.CableRun, v.sys)), true
	}
	text = fmt.Sprintf("Cable of at least %s copper each way over %s, for %s while the unit runs, to lose no more than 3 %% of the voltage",
		name, quantity.FormatRun(p.CableRun, v.sys), quantity.FormatCurrent(running))
	if fuse, known := size.LargestFuse(); known {
		ampacity, _ := size.Ampacity()
		text += fmt.Sprintf(". Fuse at the battery end, of the size the unit's maker names and never above %s: the cable may carry %s, and less in an engine space",
			quantity.FormatCurrent(fuse), quantity.FormatCurrent(ampacity))
	}
	return text + ".", true
}
