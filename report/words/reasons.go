package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/rules"
)

// Reasons gives the three strongest reasons for the answer, each from figures.
func (v Voice) Reasons() []string {
	switch v.r.Answer.Case {
	case economics.NoNights:
		return []string{
			"No nights aboard were told, so there is no food to keep cold.",
			fmt.Sprintf("A small unit would still cost about %s at first.", v.Money(v.r.Of(economics.SmallUnit).AsTold.First)),
			"Tell how many nights you sleep aboard, month by month, and the answer may change.",
		}
	case economics.NothingCold:
		return []string{
			"By your account no food aboard must be cold, and nobody wants a cold drink.",
			fmt.Sprintf("A small unit would still cost about %s at first.", v.Money(v.r.Of(economics.SmallUnit).AsTold.First)),
			"Tell of fresh meat, fish or milk, or of cold drinks, and the answer may change.",
		}
	case economics.NoRoomAtAll, economics.NoneReaches, economics.CoolOnly:
		return v.failures()
	}
	var out []string
	for _, reason := range []func() string{v.priceReason, v.whichReason, v.coldReason, v.workReason, v.daysReason, v.heatReason, v.simpleReason} {
		if text := reason(); text != "" && len(out) < 3 {
			out = append(out, text)
		}
	}
	return out
}

// failures says why none of the ways does: the nearest first, each reason once.
func (v Voice) failures() []string {
	var out []string
	ids := append([]economics.OptionID{v.r.Answer.Way()}, economics.IceOnly, economics.SmallUnit, economics.LargerUnit)
	for i, id := range ids {
		o := v.r.Of(id)
		if i > 0 && id == ids[0] {
			continue
		}
		if o.Fitted.Works() && len(out) < 3 {
			out = append(out, fmt.Sprintf("%s does in %s futures what you want, at its best.", the(id), few100(o.WorksOf100)))
		}
		for _, c := range o.Fitted.Failing {
			text := v.fill(c.Reason, o.Fitted.Facts)
			if !slices.ContainsFunc(out, func(s string) bool { return strings.HasSuffix(s, text) }) && len(out) < 3 {
				out = append(out, the(id)+": "+text)
			}
		}
	}
	if len(out) < 3 {
		out = append(out, v.heatReason())
	}
	return out
}

// priceReason gives the price of a day, and the dearer food it is set against.
func (v Voice) priceReason() string {
	o := v.Leader()
	if !v.Priced(o) {
		return fmt.Sprintf("%s costs about %s a year, all in all, and gives %s that the empty box does not.", the(o.ID), v.Money(o.Fitted.Yearly), v.days(math.Round(o.ExtraDays.Typical)))
	}
	text := fmt.Sprintf("%s gives a %s day for %s", the(o.ID), v.ColdOrCool(), v.Price(o.PriceOfCold.Typical))
	if high := o.PriceOfCold.High; high <= Dearest {
		text += fmt.Sprintf(" (%s to %s in 80 of 100 futures)", v.Say(economics.SayDown(o.PriceOfCold.Low)), v.Say(economics.SayUp(high)))
	}
	return text + ". " + v.premium()
}

// premium says what the dearer food of going without comes to a day.
func (v Voice) premium() string {
	crew := max(1, v.r.Boat.Cruising.Crew)
	people := "one"
	if crew > 1 {
		people = whole(crew)
		if n := int(crew); float64(n) == crew && n < len(counted) {
			people = counted[n]
		}
	}
	if v.r.Boat.Told("food.dry_premium") {
		premium := crew * float64(v.r.Boat.Food.DryPremium)
		if premium <= 0 {
			return "Food that keeps costs you nothing more, you said."
		}
		return fmt.Sprintf("Food that keeps costs you %s a day more, you said, for %s.", v.Money(premium), people)
	}
	return fmt.Sprintf("Food that keeps is usually %s a day dearer than fresh for %s.", v.Money(crew*economics.UsualPremium), people)
}

var counted = [...]string{"none", "one", "two", "three", "four", "five", "six"}

// whichReason says why it is this way and not another.
func (v Voice) whichReason() string {
	way := v.r.Answer.Way()
	var out []string
	for _, id := range [3]economics.OptionID{economics.IceOnly, economics.SmallUnit, economics.LargerUnit} {
		o := v.r.Of(id)
		switch {
		case slices.Contains(v.r.Answer.Ways, id):
		case o.WorksOf100 < 75:
			text := fmt.Sprintf("%s does it in %s futures", In(id), few100(o.WorksOf100))
			if why := v.why(&o.Fitted); why != "" {
				text += " (" + why + ")"
			}
			out = append(out, text)
		case math.IsInf(o.PriceOfCold.Typical, 0) || o.PriceOfCold.Typical > Dearest:
			out = append(out, fmt.Sprintf("with %s a %s day costs over %s", In(id), v.ColdOrCool(), v.Say(Dearest)))
		case v.Priced(o) && o.PriceOfCold.Typical > v.r.Of(way).PriceOfCold.Typical:
			out = append(out, fmt.Sprintf("with %s a %s day costs %s", In(id), v.ColdOrCool(), v.Price(o.PriceOfCold.Typical)))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return Capital(strings.Join(out, "; ")) + "."
}

// because gives the first reason an outcome fails, with a space before it.
func (v Voice) because(o *economics.Outcome) string {
	if len(o.Failing) == 0 {
		return ""
	}
	return " " + v.fill(o.Failing[0].Reason, o.Facts)
}

func (v Voice) fill(text string, facts economics.Facts) string {
	filled, err := rules.Fill(text, facts, v.sys, v.r.Boat.Currency)
	if err != nil {
		return text // the pack was checked on load, so every place can be filled
	}
	return quantity.Local(filled, v.sys)
}

// coldReason says how cold the answer keeps the food.
func (v Voice) coldReason() string {
	o := v.Leader()
	told, fitted := share100(number(o.AsTold.Facts, "kept_share")), share100(number(o.Fitted.Facts, "kept_share"))
	if len(o.Fit.Items) > 0 && fitted > told {
		return fmt.Sprintf("With the work %s keeps the food %s on %s days aboard, up from %d as she is.", In(o.ID), v.ColdOrCool(), of100(fitted), told)
	}
	return fmt.Sprintf("%s keeps the food %s on %s days aboard; you want %d.", the(o.ID), v.ColdOrCool(), of100(fitted), share100(float64(v.r.Boat.Food.ColdDaysWanted)))
}

// daysReason says how many days the answer adds to those of the empty box.
func (v Voice) daysReason() string {
	o := v.Leader()
	return fmt.Sprintf("%s gives %s a year that the empty box does not.", the(o.ID), v.days(math.Round(o.ExtraDays.Typical)))
}

// MoreIce says whether more ice would help, where ice does not do with the
// work; empty where it does.
func (v Voice) MoreIce() string {
	o := v.r.Of(economics.IceOnly)
	if v.Nights() == 0 || o.WorksOf100 >= 90 {
		return ""
	}
	f := o.Fitted.Facts
	text := fmt.Sprintf("Why not more ice? A full load is %s, in %s of the box that ice is given", v.Mass(number(f, "ice_capacity_kg")), shareWords(float64(cmp.Or(o.Fit.Out.IceShare, v.r.Boat.Ice.ShareOfBox))))
	if !v.r.Boat.Told("ice.share_of_box") && o.Fit.Out.IceShare == 0 {
		text += " (assumed)"
	}
	text += "."
	if h := number(f, "hours_off_longest"); h >= 1 {
		text += fmt.Sprintf(" It is gone for up to %s at a stretch.", Plural(h, "hour"))
	}
	return text + fmt.Sprintf(" The food needs %s of the %s left. Larger shares of the box, up to two thirds, were tried too.", v.Volume(number(f, "food_to_keep_l")), v.Volume(number(f, "room_for_food_l")))
}

// breakEven says at how many nights a unit costs what ice costs.
func (v Voice) breakEven(b economics.BreakEven) string {
	switch {
	case !b.Known && b.Option == economics.SmallUnit && !b.UnitCheaper && v.Nights() > 0:
		return "As she is, the small unit costs more than ice alone at any number of nights a year."
	case !b.Known:
		return ""
	}
	return fmt.Sprintf("As she is, %s costs less than ice alone from %s a year on. You spend %.0f.", In(b.Option), Plural(b.Nights, "night"), v.Nights())
}

// workReason names the piece of work that matters most.
func (v Voice) workReason() string {
	o := v.Leader()
	best := -1
	for i, item := range o.Fit.Items {
		if best < 0 || item.WithoutWorksOf100 < o.Fit.Items[best].WithoutWorksOf100 {
			best = i
		}
	}
	if best < 0 || o.Fit.Items[best].WithoutWorksOf100 >= o.WorksOf100 {
		return ""
	}
	item := o.Fit.Items[best]
	return fmt.Sprintf("The work matters: without %s it would do in %s futures, with it in %d.", Piece(item, &v.r.Boat), of100(item.WithoutWorksOf100), o.WorksOf100)
}

// heatReason says what the box asks for in the hottest month aboard.
func (v Voice) heatReason() string {
	m, ok := v.hottest()
	if !ok {
		return ""
	}
	return fmt.Sprintf("In %s the box as she has it lets in %s of heat. That melts %s of ice a day.", Month(m.Month), power(m.HeatGainW), v.Mass(m.IceKgPerDay))
}

// simpleReason falls back on the first outlay.
func (v Voice) simpleReason() string {
	o := v.Leader()
	most := 0.0
	for i := range v.r.Options {
		most = math.Max(most, v.r.Options[i].Fitted.First)
	}
	return fmt.Sprintf("It asks for about %s at first; the dearest way asks for %s.", v.Money(o.Fitted.First), v.Money(most))
}
