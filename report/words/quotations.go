package words

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/energy"
	"coldreckon/economics/quantity"
)

// What counts as the same between two quotations: cooling, use and first cost as
// shares, the temperature held in K, and futures of 100. Engineering judgement,
// from memory.
const sameCooling, sameUse, sameCost, sameHeldK, sameWorks = 0.2, 0.1, 0.03, 0.5, 5

// Differ says in a sentence what sets a quotation apart from the one that it is
// held against.
func (v Voice) Differ(base, other *economics.QuotationFigures) string {
	name := other.Quotation.Name
	var parts []string
	apart := func(a, b, share float64) bool { return math.Abs(a-b) > share*math.Max(a, b) }
	switch a, b := base.AsShe.RatedW, other.AsShe.RatedW; {
	case !apart(a, b, sameCooling):
		parts = append(parts, "same compressor class")
	case b > a:
		parts = append(parts, name+" has the larger compressor")
	default:
		parts = append(parts, name+" has the smaller compressor")
	}
	switch a, b := base.Quotation.Age, other.Quotation.Age; {
	case b > a:
		parts = append(parts, fmt.Sprintf("%s is %s old already", name, Plural(float64(b), "year")))
	case a > b && b == 0:
		parts = append(parts, name+" is new")
	case a > b:
		parts = append(parts, fmt.Sprintf("%s is %s younger", name, Plural(float64(a-b), "year")))
	}
	where := "in your box"
	if base.Quotation.Form == economics.FreeStanding || other.Quotation.Form == economics.FreeStanding {
		where = "each in its own box"
	}
	a, b := base.AsShe, other.AsShe
	holds, they := fmt.Sprintf("both hold %s and %s", v.Degrees(b.HeldC), name), ""
	if math.Abs(a.HeldC-b.HeldC) > sameHeldK {
		holds = fmt.Sprintf("%s holds %s, not %s, and", name, v.Degrees(b.HeldC), v.Degrees(a.HeldC))
		they = "uses as much"
	}
	switch {
	case apart(a.AhPerDay, b.AhPerDay, sameUse) && b.AhPerDay > a.AhPerDay:
		they = fmt.Sprintf("uses %.0f %% more", 100*(b.AhPerDay/a.AhPerDay-1))
	case apart(a.AhPerDay, b.AhPerDay, sameUse):
		they = fmt.Sprintf("uses %.0f %% less", 100*(1-b.AhPerDay/a.AhPerDay))
	case they == "":
		holds, they = fmt.Sprintf("both hold %s", v.Degrees(b.HeldC)), "and use the same"
	}
	parts = append(parts, fmt.Sprintf("%s %s %s", where, holds, they))
	works := other.Figures.WorksOf100 - base.Figures.WorksOf100
	switch {
	case works > sameWorks:
		parts = append(parts, fmt.Sprintf("%s works in %s futures, not %d", name, of100(other.Figures.WorksOf100), base.Figures.WorksOf100))
	case works < -sameWorks:
		parts = append(parts, fmt.Sprintf("%s works in only %s futures", name, of100(other.Figures.WorksOf100)))
	}
	first := other.Figures.Fitted.First - base.Figures.Fitted.First
	switch {
	case math.Abs(first) <= sameCost*math.Max(base.Figures.Fitted.First, other.Figures.Fitted.First):
		parts = append(parts, "with their work they cost the same at first")
	case first > 0:
		text := fmt.Sprintf("with its work %s costs %s more at first", name, v.Money(first))
		if more := extra(&base.Quotation, &other.Quotation); more != "" {
			text += ", for " + more
			if works <= sameWorks {
				text += " that you do not need"
			}
		}
		parts = append(parts, text)
	default:
		text := fmt.Sprintf("with its work %s costs %s less at first", name, v.Money(-first))
		if less := extra(&other.Quotation, &base.Quotation); less != "" {
			text += ", without " + less
		}
		parts = append(parts, text)
	}
	return Capital(strings.Join(parts, "; ")) + "."
}

// extra names what a quotation has and the other has not; empty when nothing.
func extra(base, other *economics.Quotation) string {
	var has []string
	if other.Plate == energy.Eutectic && base.Plate != energy.Eutectic {
		has = append(has, "a plate that stores cold")
	}
	if other.CooledBy == energy.Seawater && base.CooledBy != energy.Seawater {
		has = append(has, "cooling by sea water")
	}
	if other.Control == economics.SpeedKnob && base.Control != economics.SpeedKnob {
		has = append(has, "a speed control")
	}
	if area := func(q *economics.Quotation) float64 { return float64(q.PlateSize.Length * q.PlateSize.Width) }; area(base) > 0 && area(other) > 1.15*area(base) {
		has = append(has, "a larger plate")
	}
	return Join(has)
}

// unsaid names what an offer leaves out.
var unsaid = map[economics.Unsaid]string{
	economics.NoCooling:   "watts of cooling and the temperatures they hold at",
	economics.NoAmps:      "amps while it runs",
	economics.NoAmbient:   "the room and the box behind its average",
	economics.NoPlate:     "size of the plate",
	economics.NoCondenser: "how it sheds its heat",
	economics.NoWarranty:  "warranty",
}

// Unsaid lists what a quotation leaves out and is worth asking for.
func Unsaid(q *economics.QuotationFigures) string {
	var names []string
	for _, u := range q.Unsaid {
		names = append(names, unsaid[u])
	}
	if len(names) == 0 {
		return "nothing that matters"
	}
	return strings.Join(names, "; ")
}

// GoesIn says whether a quotation goes in: room, lid and wall.
func (v Voice) GoesIn(q *economics.QuotationFigures) string {
	if q.Quotation.Form == economics.FreeStanding {
		if !q.HasRoom {
			return "a chest of its own: too small for what has to go in"
		}
		return "a chest of its own"
	}
	var parts []string
	if !q.HasRoom {
		parts = append(parts, "leaves too little room for food")
	}
	say := func(is quantity.Tri, yes, no, unknown string) {
		parts = append(parts, map[quantity.Tri]string{quantity.Yes: yes, quantity.No: no, quantity.Unknown: unknown}[is])
	}
	say(q.GoesThrough, "through the lid: yes", "through the lid: no", "through the lid: measure plate and opening")
	say(q.GoesOnWall, "on a wall: yes", "on a wall: no", "on a wall: measure plate and box")
	return strings.Join(parts, "; ")
}

// QuotedWork lists the work that a quotation needs, without the words of a
// shopping list.
func (v Voice) QuotedWork(q *economics.QuotationFigures) string {
	return cmp.Or(strings.Join(v.pieces(q.Figures.Fit.Items), "; "), "none")
}

// WarmerBox says what running a quotation warmer saves and costs.
func (v Voice) WarmerBox(q *economics.QuotationFigures) string {
	return fmt.Sprintf("%s at %s takes %s a day, at %s %s and at %s %s.", Capital(q.Quotation.Name), v.Degrees(float64(v.r.Boat.Food.Target)), Charge(q.Unit.AhPerDay),
		v.Degrees(65.0/9), Charge(q.At45FAhPerDay), v.Degrees(10), Charge(q.At50FAhPerDay)) +
		fmt.Sprintf(" Over %s it is a box for drinks, butter and vegetables: no meat, fish, milk or leftovers.", v.Degrees(5))
}

// StoredCold says what running the box cold before leaving buys.
func (v Voice) StoredCold(q *economics.QuotationFigures) string {
	if q.ColdStoreHours <= 0 {
		return ""
	}
	text := fmt.Sprintf("Run down to %s on shore power before you leave, box and food take about %s to reach %s with %s off.",
		v.Degrees(1), Plural(Round(q.ColdStoreHours), "hour"), v.Degrees(5), q.Quotation.Name)
	if q.Unit.HoldOverHours > 0 {
		text += fmt.Sprintf(" Its plate adds about %s.", Plural(Round(q.Unit.HoldOverHours), "hour"))
	}
	return text + " What touches the plate freezes meanwhile: keep greens, eggs and bottles away from it."
}
