package words

import (
	"fmt"
	"slices"
	"strings"

	"coldreckon/economics"
)

// Grade says in one sentence how well the figures behind the answer are known.
// It belongs beside the headline. It is empty where there is nothing to decide.
func (v Voice) Grade() string {
	switch a := &v.r.Answer; {
	case a.Case == economics.NoNights || a.Case == economics.NothingCold:
		return ""
	case a.Grade == economics.Weak:
		return "The evidence is weak: most figures had to be assumed, so this is the answer for a typical boat of her kind."
	case a.Grade == economics.Strong:
		return "The evidence is strong: the box was measured, and most figures are yours."
	}
	return "The evidence is fair: half the figures or more are yours, the rest assumed."
}

// Medicine speaks of medicine that must stay between 2 and 8 °C. It stands
// above the answer, and is empty where none is aboard.
func (v Voice) Medicine() string {
	if v.r.Boat.Food.Medicine != "yes" || v.Nights() == 0 {
		return ""
	}
	kept := v.r.Answer.MedicineKept
	band := v.Degrees(2) + " to " + v.Degrees(8)
	if len(kept) == 0 {
		return fmt.Sprintf("Medicine aboard: no way found here keeps it at %s in every hour. Ask a pharmacist how to carry it.", band)
	}
	text := fmt.Sprintf("Medicine aboard rules out going without. It is kept at %s by %s", band, v.ways(kept))
	if way := v.r.Answer.Way(); way != "" && !slices.Contains(kept, way) {
		text += fmt.Sprintf(", not by %s", In(way))
	}
	return text + ". Keep a thermometer beside it, and a second way to cool it."
}

// ways joins names of options: "ice alone or the small unit".
func (v Voice) ways(ids []economics.OptionID) string {
	var out []string
	for _, id := range ids {
		out = append(out, In(id))
	}
	return Either(out)
}

// Also says what the headline leaves out, a sentence or two each: which ways
// share the lead, whether work is needed, what becomes of a unit aboard, what it
// does not freeze, a chest instead of the unit, and what the owner's limit does.
func (v Voice) Also() []string {
	a := &v.r.Answer
	if a.Way() == "" {
		return nil
	}
	var out []string
	for _, text := range []string{v.leading(), v.reach(), v.otherwise(), v.wrongCost(), v.asShe(), v.nearly(), v.aboard(), v.unfrozen(), v.chestInstead(), v.Limit()} {
		if text != "" {
			out = append(out, text)
		}
	}
	return out
}

// unfrozen says that a way which freezes nothing is none for what is wanted frozen.
func (v Voice) unfrozen() string {
	way := v.r.Answer.Way()
	if way != economics.IceOnly && way != economics.DryStores {
		return ""
	}
	switch v.r.Boat.Food.Freeze {
	case economics.FreezesCubes:
		return "It makes no ice cubes: you buy those."
	case economics.FreezesMeals:
		return "It keeps nothing frozen: eat the frozen meals first."
	}
	return ""
}

// chestInstead is Chest where the small unit leads.
func (v Voice) chestInstead() string {
	if v.r.Answer.Way() != economics.SmallUnit {
		return ""
	}
	return v.Chest()
}

// leading gives the common price of two or three ways that lead together, and
// what tells them apart besides money.
func (v Voice) leading() string {
	a := &v.r.Answer
	if len(a.Ways) < 2 {
		return ""
	}
	var counts, apart []string
	low, high := v.r.Of(a.Ways[0]).PriceOfCold.Typical, 0.0
	for i, id := range a.Ways {
		o := v.r.Of(id)
		count := fmt.Sprintf("%s in %d", In(id), o.BestOf100)
		if i == 0 {
			count = fmt.Sprintf("%s in %s futures", In(id), of100(o.BestOf100))
		}
		counts = append(counts, count)
		low, high = min(low, o.PriceOfCold.Typical), max(high, o.PriceOfCold.Typical)
		apart = append(apart, fmt.Sprintf("%s: %s", In(id), lower(v.living(o))))
	}
	price := v.Price(low)
	if v.Price(high) != price {
		price = fmt.Sprintf("%s to %s", price, strings.TrimPrefix(v.Price(high), "about "))
	}
	return fmt.Sprintf("Cost hardly tells them apart. Best is %s; a %s day costs %s. Other things do. %s.", Join(counts), v.ColdOrCool(), price, Capital(strings.Join(apart, ". ")))
}

// lower sets the first letter of a cell in lower case.
func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// reach says in how many futures the leader does what is wanted.
func (v Voice) reach() string {
	a := &v.r.Answer
	switch a.Case {
	case economics.NoRoomAtAll, economics.NoneReaches:
		return ""
	case economics.CoolOnly:
		return fmt.Sprintf("%s does that in %s futures.", the(a.Way()), of100(a.ReachOf100))
	}
	text := fmt.Sprintf("%s keeps the food %s as often as you want in %s futures", Capital(v.Named(a.Way())), v.ColdOrCool(), of100(a.ReachOf100))
	if a.ReachOf100 < 87 {
		return text + ", fewer than the 90 aimed at."
	}
	return text + "."
}

// Named names an option, or the unit aboard where it is that.
func (v Voice) Named(id economics.OptionID) string {
	if id == economics.SmallUnit && v.UnitAboard() {
		return "the unit aboard"
	}
	return In(id)
}

func (v Voice) otherwise() string {
	a := &v.r.Answer
	switch {
	case a.Case != economics.Forbidden:
		return ""
	case a.Otherwise == "":
		return "No other way does what you want."
	}
	o := v.r.Of(a.Otherwise)
	text := fmt.Sprintf("Without moving anything, %s %s the best way", In(o.ID), is(o.ID))
	if v.Priced(o) {
		text += fmt.Sprintf(", at %s a %s day", v.Price(o.PriceOfCold.Typical), v.ColdOrCool())
	}
	return text + "."
}

// wrongCost prices the wrong choice where the answer is a close call.
func (v Voice) wrongCost() string {
	a := &v.r.Answer
	if a.Case != economics.WorthTold || a.Confidence() != economics.CloseCall || a.WrongCost < 1 {
		return ""
	}
	return fmt.Sprintf("The wrong choice costs about %s a year, where it is wrong.", v.Money(a.WrongCost))
}

// nearly tells of a way that, as she is, nearly does what is wanted for much less.
func (v Voice) nearly() string {
	id := v.r.NearlyAsShe()
	if id == "" {
		return ""
	}
	o := v.r.Of(id)
	return fmt.Sprintf("Before you spend: %s does what you want in %s futures without any work, for %s a year.",
		In(id), of100(o.AsToldWorksOf100), v.smallRange(o.AsToldBands.Yearly))
}

func (v Voice) asShe() string {
	a := &v.r.Answer
	switch {
	case !a.AsShe && v.Leader().Fit.Cools() || a.Case == economics.NoneReaches || a.Case == economics.NoRoomAtAll || a.Case == economics.CoolOnly:
		return ""
	case a.Way() == economics.IceOnly:
		return "The box needs no work for it: use it as it is."
	}
	if v.Leader().Fit.Out.Alarm {
		return "It needs no other work on box or boat than a thermometer with an alarm."
	}
	return "It needs no other work on box or boat."
}

// Limit says what the owner's limit does to the answer, with what it does buy;
// empty where the way keeps within it, or no limit was told.
func (v Voice) Limit() string {
	a := &v.r.Answer
	if a.OverLimit <= 0 {
		return ""
	}
	text := fmt.Sprintf("With its work %s costs %s over your limit of %s at first.", v.Named(a.Way()), v.Money(a.OverLimit), v.Money(float64(v.r.Boat.Money.Budget)))
	if a.Within != "" {
		o := v.r.Of(a.Within)
		text += fmt.Sprintf(" Within it %s does as well", In(o.ID))
		if v.Priced(o) {
			text += fmt.Sprintf(", at %s a %s day", v.Price(o.PriceOfCold.Typical), v.ColdOrCool())
		}
		return text + "."
	}
	buys := a.LimitBuys
	if buys == nil {
		return text + fmt.Sprintf(" For %s nothing of it can be had that would run.", v.Money(float64(v.r.Boat.Money.Budget)))
	}
	what := "it without any of the work"
	if len(buys.Items) > 0 {
		what = "it with " + Join(v.pieces(buys.Items))
	}
	text += fmt.Sprintf(" The limit does buy %s, for %s: %s on %d days of 100.", what, v.Money(buys.First), v.ColdOrCool(), share100(buys.KeptShare))
	return text + " Nothing of that is lost if the rest follows later."
}
