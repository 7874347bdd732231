package words

import (
	"fmt"
	"math"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/economics/season"
)

// Row is one line of the table that sets the four options side by side, a
// cell for each in the order of economics.Options.
type Row struct {
	Label string
	Cells [4]string
}

// Rows sets the options side by side, before an arrow as she is and after it
// with the work; money, and what they take, with the work.
func (v Voice) Rows() []Row {
	return v.rows([]rowOf{
		{"Works, of 100", v.works},
		{"Cold days, of 100", v.shares("cold_share", "")},
		{"Cool days more", v.shares("cool_share", "cold_share")},
		{"A " + v.ColdOrCool() + " day costs", v.dayCosts},
		{"First cost", func(o *economics.OptionFigures) string { return v.Tight(o.Fitted.First, o.FittedBands.First) }},
		{"Then each year", func(o *economics.OptionFigures) string { return v.Tight(o.Fitted.PerYear, o.FittedBands.PerYear) }},
		{v.horizon(), func(o *economics.OptionFigures) string { return v.Tight(o.Fitted.Present, o.FittedBands.Present) }},
		{"A day in " + v.hottestName(), func(o *economics.OptionFigures) string { return v.daily(&o.Fitted) }},
		{"Left for food, " + v.volumeUnit(), func(o *economics.OptionFigures) string { return v.room(&o.Fitted) }},
		{"Living with it", v.living},
	})
}

// works counts the futures in which an option does what is wanted.
func (v Voice) works(o *economics.OptionFigures) string {
	switch {
	case v.Nights() == 0:
		return "–"
	case o.ID == economics.DryStores:
		return "keeps nothing cold"
	case len(o.Fit.Items) == 0:
		return fmt.Sprintf("%d, no work", o.WorksOf100)
	case !o.Fit.Cools():
		return fmt.Sprintf("%d, an alarm", o.WorksOf100)
	}
	return fmt.Sprintf("%d → %d", o.AsToldWorksOf100, o.WorksOf100)
}

// shares counts a share of the days aboard, less another, as told and fitted.
func (v Voice) shares(name, less string) func(*economics.OptionFigures) string {
	of := func(o *economics.Outcome) string {
		if v.Nights() == 0 {
			return "–"
		}
		return fmt.Sprint(max(0, share100(number(o.Facts, name))-share100(number(o.Facts, less))))
	}
	return func(o *economics.OptionFigures) string { return toldToFitted(o, of) }
}

// toldToFitted prints a figure as told and fitted, once where they are alike.
func toldToFitted(o *economics.OptionFigures, of func(*economics.Outcome) string) string {
	if len(o.Fit.Items) == 0 {
		return of(&o.AsTold)
	}
	return Turn(of(&o.AsTold), of(&o.Fitted))
}

// Turn prints a figure as she is and with the work, once where they are alike.
func Turn(told, fitted string) string {
	if told == fitted {
		return told
	}
	return told + " → " + fitted
}

// ToldAndFitted sets the options side by side, each as told and fitted.
func (v Voice) ToldAndFitted() []Row {
	return v.rows([]rowOf{
		{"Works, of 100 futures", v.works},
		{"Cold days, of 100 aboard", v.shares("cold_share", "")},
		{"Cool days, of 100 aboard", v.shares("cool_share", "")},
		{"Food seldom over", func(o *economics.OptionFigures) string { return toldToFitted(o, v.warmest) }},
		{"First cost, as is", func(o *economics.OptionFigures) string { return v.Tight(o.AsTold.First, o.AsToldBands.First) }},
		{"Each year, as is", func(o *economics.OptionFigures) string { return v.Tight(o.AsTold.PerYear, o.AsToldBands.PerYear) }},
		{v.horizon() + ", as is", func(o *economics.OptionFigures) string { return v.Tight(o.AsTold.Present, o.AsToldBands.Present) }},
	})
}

// dayCosts gives what a day costs by an option, with its range.
func (v Voice) dayCosts(o *economics.OptionFigures) string {
	p := o.PriceOfCold
	switch {
	case v.Nights() == 0, o.ID == economics.DryStores:
		return "–"
	case math.IsInf(p.Typical, 0), p.Typical > Dearest:
		return "over " + v.Say(Dearest)
	case !v.Priced(o):
		return fmt.Sprintf("%s a year for %s", v.Money(o.Fitted.Yearly), v.days(math.Round(o.ExtraDays.Typical)))
	}
	low, high := v.Say(economics.SayDown(p.Low)), "over "+Unsigned(v.Say(Dearest))
	if p.High <= Dearest {
		high = Unsigned(v.Say(economics.SayUp(p.High)))
	}
	return fmt.Sprintf("%s (%s–%s)", strings.TrimPrefix(v.Price(p.Typical), "about "), Unsigned(low), high)
}

// Unsigned is an amount, of 0 or more, without its currency where that stands before it.
func Unsigned(amount string) string {
	if i := strings.IndexAny(amount, "0123456789"); i > 0 && amount[0] != '-' {
		return amount[i:]
	}
	return amount
}

type rowOf struct {
	label string
	cell  func(*economics.OptionFigures) string
}

func (v Voice) rows(of []rowOf) []Row {
	out := make([]Row, len(of))
	for i, r := range of {
		out[i].Label = r.label
		for k := range v.r.Options {
			out[i].Cells[k] = r.cell(&v.r.Options[k])
		}
	}
	return out
}

// horizon names the years reckoned over: "Over 10 years".
func (v Voice) horizon() string { return "Over " + v.years() }

func (v Voice) hottestName() string {
	if m, ok := v.hottest(); ok {
		return Month(m.Month)
	}
	return "the hottest month"
}

// why gives the reasons an outcome fails in a few words each.
func (v Voice) why(o *economics.Outcome) string {
	var out []string
	for _, c := range o.Failing {
		out = append(out, v.fewWords(c, o.Facts))
	}
	return strings.Join(out, "; ")
}

// fewWords gives a criterion's reason in a few words: its own, those of its kind,
// or the reason itself.
func (v Voice) fewWords(c economics.Criterion, f economics.Facts) string {
	if c.Short != "" {
		return v.fill(c.Short, f)
	}
	switch c.Kind {
	case economics.Warmth:
		return fmt.Sprintf("%s %d days of 100", v.ColdOrCool(), share100(number(f, "kept_share")))
	case economics.Room:
		return fmt.Sprintf("%s short of room", v.Volume(number(f, "food_to_keep_l")-number(f, "room_for_food_l")))
	}
	return strings.TrimSuffix(v.fill(c.Reason, f), ".")
}

// ColdMeans says what the pages call cold, or cool where that decides: the exam
// of a day in a sentence.
func (v Voice) ColdMeans() string {
	limitC := 5.0
	if v.r.Boat.CoolDecides() {
		limitC, _ = season.Limits(v.r.Boat.Food.Target, true)
	}
	return fmt.Sprintf("%s: food no warmer than %s, but for two hours a day.", Capital(v.ColdOrCool()), v.Degrees(limitC))
}

// warmest gives the warmest food of the season, unless nothing is kept cold.
func (v Voice) warmest(o *economics.Outcome) string {
	if o.Facts["option"] == string(economics.DryStores) || number(o.Facts, "nights_per_year") == 0 {
		return "–"
	}
	return v.Degrees(number(o.Facts, "warmest_food_c"))
}

// daily says what an option takes on a day of the hottest month.
func (v Voice) daily(o *economics.Outcome) string {
	switch {
	case o.Facts["option"] == string(economics.IceOnly):
		return v.Mass(number(o.Facts, "ice_per_day_hottest_kg")) + " of ice"
	case o.Facts["option"] == string(economics.DryStores):
		return "nothing"
	}
	wh := number(o.Facts, "unit_wh_per_day_hottest")
	volts := float64(v.r.Boat.Power.Bank().MeanVolts())
	return WattHours(wh) + ", " + Charge(wh/volts)
}

func (v Voice) room(o *economics.Outcome) string {
	if o.Facts["option"] == string(economics.DryStores) {
		return "All of the box, dry"
	}
	bare := func(name string) string {
		return strings.TrimSuffix(v.Volume(number(o.Facts, name)), " "+v.volumeUnit())
	}
	return fmt.Sprintf("%s; needs %s", bare("room_for_food_l"), bare("food_to_keep_l"))
}

// volumeUnit is the unit of the box's room.
func (v Voice) volumeUnit() string { return quantity.VolumeUnit(v.sys) }

// living says what a season with the option is like.
func (v Voice) living(o *economics.OptionFigures) string {
	f := o.Fitted.Facts
	if v.Nights() == 0 {
		return "–"
	}
	switch o.ID {
	case economics.IceOnly:
		text := "No ice to buy"
		if kg := number(f, "ice_bought_kg_per_year"); kg > 0 {
			text = v.Mass(kg) + " to carry a year"
			_, lost := o.Fitted.IceBoughtKg()
			if left := share100(lost); left >= 5 {
				text += fmt.Sprintf(", %d %% of it left over", left)
			}
		}
		if n := number(f, "ice_errands_per_year"); n >= 0.5 {
			text += ", " + Plural(n, "errand")
		}
		return text + "; wet"
	case economics.DryStores:
		if v.r.Drinks != nil {
			return "No milk; ice for the drinks' cooler to carry"
		}
		return "No cold drinks or milk; nothing to carry or mend"
	}
	text := fmt.Sprintf("Hums %s h of 24; ", whole(math.Min(24, 24*number(f, "run_share_hottest"))))
	if low := share100(number(f, "battery_lowest_share")); low > 0 {
		text += fmt.Sprintf("battery over %d %%", low)
	} else {
		text += "battery runs empty at times"
	}
	if h := number(f, "hours_off_longest"); h >= 1 {
		text += fmt.Sprintf("; off for up to %s", Plural(h, "hour"))
	}
	return text
}
