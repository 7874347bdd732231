package words

import (
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
	if v.Nights() == 0 {
		return []string{
			"No nights aboard were told, so there is no food to keep cold.",
			fmt.Sprintf("A small unit would still cost about %s at first.", v.Money(v.r.Of(economics.SmallUnit).AsTold.First)),
			"Tell how many nights you sleep aboard, month by month, and the answer may change.",
		}
	}
	if !v.r.Verdict.Works {
		return v.failures()
	}
	var out []string
	for _, reason := range []func() string{v.moneyReason, v.failReason, v.coldReason, v.nightsReason, v.workReason, v.heatReason, v.simpleReason} {
		if text := reason(); text != "" && len(out) < 3 {
			out = append(out, text)
		}
	}
	return out
}

// failures says why none of the ways works: the nearest first, each reason once.
func (v Voice) failures() []string {
	var out []string
	ids := append([]economics.OptionID{v.r.Verdict.Option}, economics.Options[:]...)
	for i, id := range ids {
		o := v.r.Of(id)
		if i > 0 && id == ids[0] || len(o.Fitted.Failing) == 0 {
			continue
		}
		for _, c := range o.Fitted.Failing {
			text := v.fill(c.Reason, o.Fitted.Facts)
			if !slices.ContainsFunc(out, func(s string) bool { return strings.HasSuffix(s, text) }) && len(out) < 3 {
				out = append(out, The(id)+": "+text)
			}
		}
	}
	if len(out) < 3 {
		out = append(out, v.heatReason())
	}
	return out
}

// moneyReason sets the answer's cost beside its rival's.
func (v Voice) moneyReason() string {
	d := v.r.Verdict
	o := v.r.Of(d.Option)
	text := fmt.Sprintf("%s cost%s about %s over %s, in today's money.", The(d.Option), s(d.Option),
		v.about(o.Fitted.Present, o.FittedBands.Present.Low, o.FittedBands.Present.High), v.years())
	if d.HasRunner {
		r := v.r.Of(d.Runner)
		text += fmt.Sprintf(" %s cost%s %s.", The(d.Runner), s(d.Runner), v.about(r.Fitted.Present, r.FittedBands.Present.Low, r.FittedBands.Present.High))
		if more, days := o.Fitted.Yearly-r.Fitted.Yearly, o.Fitted.ColdDays-r.Fitted.ColdDays; d.ByWorth && more > 0 && days >= 1 {
			text += fmt.Sprintf(" Each further cold day costs about %s; you put its worth at %s.", v.Money(more/days), v.Money(float64(v.r.Boat.Money.ColdDayWorth)))
		}
	}
	return text
}

// failReason says why an option that many would expect does not do.
func (v Voice) failReason() string {
	d := v.r.Verdict
	for _, id := range []economics.OptionID{d.Runner, economics.IceOnly, economics.SmallUnit, economics.LargerUnit, economics.DryStores} {
		if id == d.Option || id == "" {
			continue
		}
		o := v.r.Of(id)
		if o.WorkableOf100 < 90 {
			text := fmt.Sprintf("%s work%s in %s futures, even with the best work found", The(id), s(id), few100(o.WorkableOf100))
			if why := v.why(&o.Fitted); why != "" {
				text += " (" + why + ")"
			}
			return text + "."
		}
	}
	for _, id := range []economics.OptionID{economics.IceOnly, economics.SmallUnit, economics.LargerUnit} {
		if o := v.r.Of(id); id != d.Option && !o.AsTold.Works() {
			return fmt.Sprintf("As she is, %s will not do (%s).", In(id), v.why(&o.AsTold))
		}
	}
	return ""
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
	return Local(filled, v.sys)
}

// coldReason says how cold the answer keeps the food.
func (v Voice) coldReason() string {
	o := v.r.Of(v.r.Verdict.Option)
	if o.ID == economics.DryStores {
		return fmt.Sprintf("By your account %d parts in 100 of your food must be cold. Dry stores put food that keeps in its place.",
			share100(float64(v.r.Boat.Food.MustBeColdShare)))
	}
	told, fitted := share100(number(o.AsTold.Facts, "cold_share")), share100(number(o.Fitted.Facts, "cold_share"))
	if len(o.Fit.Items) > 0 && fitted > told {
		return fmt.Sprintf("With the work %s keeps the food cold on %s days aboard, up from %d as she is.", In(o.ID), of100(fitted), told)
	}
	return fmt.Sprintf("%s keeps the food cold on %s days aboard; you want %d.", The(o.ID), of100(fitted), share100(float64(v.r.Boat.Food.ColdDaysWanted)))
}

// nightsReason sets the nights aboard beside the break-even.
func (v Voice) nightsReason() string {
	for _, b := range v.r.BreakEven {
		if b.Option == economics.SmallUnit || b.Option == v.r.Verdict.Option {
			return v.breakEven(b)
		}
	}
	return ""
}

// MoreIce says whether more ice would help, where ice does not do with the
// work; empty where it does.
func (v Voice) MoreIce() string {
	o := v.r.Of(economics.IceOnly)
	if v.Nights() == 0 || o.WorkableOf100 >= 90 {
		return ""
	}
	f := o.Fitted.Facts
	text := fmt.Sprintf("Why not more ice? A full load is %s, in the %s of the box that ice is given", v.Mass(number(f, "ice_capacity_kg")), quantity.FormatShare(v.r.Boat.Ice.ShareOfBox))
	if how := v.r.Boat.Known["ice.share_of_box"]; how != quantity.Told {
		text += " (assumed)"
	}
	text += "."
	if h := number(f, "hours_off_longest"); h >= 1 {
		text += fmt.Sprintf(" It is gone for up to %s at a stretch.", Plural(h, "hour"))
	}
	room, need := number(f, "room_for_food_l"), number(f, "food_to_keep_l")
	if need < room/2 {
		return text + fmt.Sprintf(" The food needs only %s of the %s left, so more ice would fit. Give it a larger share and reckon again to see what that does.", v.volume(need), v.volume(room))
	}
	return text + fmt.Sprintf(" The food needs %s of the %s left, so more ice would crowd it out.", v.volume(need), v.volume(room))
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
	o := v.r.Of(v.r.Verdict.Option)
	best := -1
	for i, item := range o.Fit.Items {
		if best < 0 || item.WithoutWorksOf100 < o.Fit.Items[best].WithoutWorksOf100 {
			best = i
		}
	}
	if best < 0 {
		return ""
	}
	item := o.Fit.Items[best]
	return fmt.Sprintf("The work matters: without %s it would do in %s futures, with it in %d.", v.short(item), of100(item.WithoutWorksOf100), o.WorkableOf100)
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
	o := v.r.Of(v.r.Verdict.Option)
	most := 0.0
	for i := range v.r.Options {
		most = math.Max(most, v.r.Options[i].Fitted.First)
	}
	return fmt.Sprintf("It asks for about %s at first; the dearest way asks for %s.", v.Money(o.Fitted.First), v.Money(most))
}
