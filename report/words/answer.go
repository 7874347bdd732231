package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Answer is the headline: what to do, and on what that turns, in one to three
// short sentences of at most thirty words in all. It is never empty.
func (v Voice) Answer() string {
	a := &v.r.Answer
	switch a.Case {
	case economics.NoNights:
		return "There is nothing to decide: no nights aboard were told, so no food aboard has to be kept cold."
	case economics.NothingCold:
		return "There is nothing to decide: by your account nothing aboard has to be cold."
	case economics.Forbidden:
		return v.forbidden()
	case economics.NoRoomAtAll:
		o := v.r.Of(a.Way())
		short := number(o.Fitted.Facts, "food_to_keep_l") - number(o.Fitted.Facts, "room_for_food_l")
		return fmt.Sprintf("No way leaves room enough: beside ice or a plate this box is %s short of what has to go in between two shops.", v.Volume(short))
	case economics.CoolOnly:
		return fmt.Sprintf("No way keeps food cold as often as you want. %s keeps drinks, butter and the like cool%s.", the(a.Way()), v.coolPrice())
	case economics.NoneReaches:
		return v.nearest()
	case economics.FewDays:
		return v.fewDays()
	case economics.WorthTold:
		return v.worthTold()
	case economics.PaysForItself:
		return v.paysForItself()
	case economics.NextToNothing:
		return fmt.Sprintf("%s: a %s day costs next to nothing, %s.", Capital(v.do()), v.ColdOrCool(), v.Price(v.Leader().PriceOfCold.Typical))
	case economics.TooDear:
		if a.NoWorth >= Dearest {
			return fmt.Sprintf("%s: no way gives a %s day for %s or less.", v.goWithout("live"), v.ColdOrCool(), v.Say(Dearest))
		}
		return fmt.Sprintf("%s: no way is likely to give a %s day for less than %s.", v.goWithout("live"), v.ColdOrCool(), v.Say(a.NoWorth))
	case economics.RatherNot:
		text := fmt.Sprintf("%s, unless a %s day is worth %s or more to you: then %s.", v.goWithout("live"), v.ColdOrCool(), v.Say(a.YesWorth), v.do())
		if a.NoWorth < a.YesWorth {
			text += fmt.Sprintf(" From %s it is close.", v.Say(a.NoWorth))
		}
		return text
	}
	return v.byWorth()
}

// goWithout says to live on food that keeps, or rather to: where a way keeps
// medicine, which rules that out, for the food's sake only.
func (v Voice) goWithout(verb string) string {
	text := verb + " on food that keeps"
	if v.r.Boat.Food.Medicine == quantity.Yes && len(v.r.Answer.MedicineKept) > 0 {
		return "For the food alone " + text
	}
	return Capital(text)
}

// Dearest is the price of a day above which none is printed.
const Dearest = 50

// Leader is the option that leads the answer; nil where there is nothing to decide.
func (v Voice) Leader() *economics.OptionFigures {
	if a := &v.r.Answer; a.Case == economics.CoolOnly && v.r.Cool != nil {
		return v.r.Cool
	}
	return v.r.Of(v.r.Answer.Way())
}

// do says what to do about the ways that lead: "fit the small unit", "use ice
// or fit either unit".
func (v Voice) do() string {
	ways := v.r.Answer.Ways
	both := slices.Contains(ways, economics.SmallUnit) && slices.Contains(ways, economics.LargerUnit)
	var out []string
	for _, id := range economics.Options {
		switch {
		case !slices.Contains(ways, id):
		case id == economics.IceOnly:
			out = append(out, "use ice")
		case both && id == economics.SmallUnit && !v.UnitAboard():
			return Either(append(out, "fit either unit"))
		case id == economics.SmallUnit && v.UnitAboard():
			out = append(out, "keep the unit aboard")
		case id == economics.SmallUnit && v.r.Boat.Small.Form == economics.FreeStanding:
			out = append(out, "buy the small unit")
		default:
			out = append(out, "fit "+In(id))
		}
	}
	return Either(out)
}

// UnitAboard tells whether the small unit is the one that already works aboard.
func (v Voice) UnitAboard() bool {
	_, offered := v.r.Boat.Offered[economics.SmallUnit]
	return v.r.Boat.Box.FittedUnit == economics.UnitWorks && v.r.Boat.Small.Form != economics.FreeStanding && !offered
}

// ColdOrCool is the word for the days that decide: cold, or cool where that is enough.
func (v Voice) ColdOrCool() string {
	if v.r.Answer.Case == economics.CoolOnly || v.r.Boat.CoolDecides() {
		return "cool"
	}
	return "cold"
}

// Say prints a sum of money that is already one that a person would say.
func (v Voice) Say(x float64) string {
	return quantity.FormatMoney(quantity.Money(x), v.r.Boat.Currency)
}

// leastSaid is the least price of a day that is said.
const leastSaid = 0.25

// Price prints what a day costs, to the nearest step that a person would say:
// "about $4.50". What is less than the least step is "under" it.
func (v Voice) Price(x float64) string {
	switch {
	case math.IsInf(x, 0):
		return "more than " + v.Say(Dearest)
	case x > Dearest:
		return "over " + v.Say(Dearest)
	case economics.SayDown(x) == 0 && x < leastSaid/2:
		return "under " + v.Say(leastSaid)
	}
	return "about " + v.Say(economics.Say(x))
}

func (v Voice) byWorth() string {
	a := &v.r.Answer
	text := fmt.Sprintf("%s if a %s day is worth %s or more to you.", Capital(v.do()), v.ColdOrCool(), v.Say(a.YesWorth))
	switch {
	case a.NoWorth == 0:
		return text + " For less it is close."
	case a.NoWorth >= a.YesWorth:
		return text + " Under that, live on food that keeps."
	}
	return text + fmt.Sprintf(" Under %s, live on food that keeps. Between, it is close.", v.Say(a.NoWorth))
}

// hedges word the confidence of a yes, with its count behind.
var hedges = map[economics.Confidence]string{
	economics.Sure: "it is worth it", economics.Likely: "likely worth it", economics.Leaning: "more likely than not worth it",
}

func (v Voice) worthTold() string {
	a := &v.r.Answer
	costs := fmt.Sprintf("A %s day costs %s", v.ColdOrCool(), v.Price(v.Leader().PriceOfCold.Typical))
	said := fmt.Sprintf("%s and you said %s.", costs, v.Worth())
	if a.Turns() {
		return fmt.Sprintf("At %s a day live on food that keeps; at %s %s (%d and %d of 100). %s.", v.Say(a.Worth.Low), v.Say(a.Worth.High), v.do(), a.YesOf100[0], a.YesOf100[1], costs)
	}
	switch a.Confidence() {
	case economics.Sure, economics.Likely, economics.Leaning:
		return fmt.Sprintf("%s: %s (%s). %s", Capital(v.do()), hedges[a.Confidence()], v.yesOf100(), said)
	}
	few := ""
	if a.YesOf100[0] != a.YesOf100[1] { // what was said stands in the counts
		said = costs + "."
	} else if a.YesOf100[0] > 0 {
		few = "only "
	}
	switch a.Confidence() {
	case economics.CloseCall:
		return fmt.Sprintf("It is a close call whether to %s: worth it in %s. %s", v.do(), v.yesFutures(), said)
	case economics.LeaningNot:
		return fmt.Sprintf("%s: to %s is worth it in %s. %s", v.goWithout("rather live"), v.do(), v.yesFutures(), said)
	}
	return fmt.Sprintf("%s: to %s is worth it in %s%s. %s", v.goWithout("live"), v.do(), few, v.yesFutures(), said)
}

// Worth prints what the owner told a day to be worth.
func (v Voice) Worth() string {
	w := v.r.Answer.Worth
	if w.High <= w.Low {
		return v.Say(w.Low)
	}
	return v.Say(w.Low) + " to " + v.Say(w.High)
}

// yesOf100 counts the futures in which the way is worth what was told.
func (v Voice) yesOf100() string {
	yes := v.r.Answer.YesOf100
	if yes[0] == yes[1] {
		return of100(yes[0])
	}
	return fmt.Sprintf("%d to %d of 100", yes[0], yes[1])
}

// yesFutures is yesOf100 for a sentence; of a worth told as a range, at its ends.
func (v Voice) yesFutures() string {
	a := &v.r.Answer
	count := func(n int) string {
		if n == 0 {
			return "none of 100 futures"
		}
		return of100(n) + " futures"
	}
	if a.YesOf100[0] == a.YesOf100[1] {
		return count(a.YesOf100[0])
	}
	return fmt.Sprintf("%s at %s, in %d at %s", count(a.YesOf100[0]), v.Say(a.Worth.Low), a.YesOf100[1], v.Say(a.Worth.High))
}

func (v Voice) paysForItself() string {
	a := &v.r.Answer
	if a.PremiumTold {
		return fmt.Sprintf("%s: it costs less than the dearer food it spares you, in %s futures.", Capital(v.do()), of100(a.PremiumOf100))
	}
	crew := max(1, v.r.Boat.Cruising.Crew)
	you := "you"
	if crew > 1 {
		you = "each of you"
	}
	return fmt.Sprintf("%s: it pays for itself if food that keeps costs %s %s a night more than fresh. The usual guess is %s.",
		Capital(v.do()), you, v.Say(economics.SayUp(a.YesWorth/crew)), v.Say(economics.UsualPremium))
}

func (v Voice) forbidden() string {
	a := &v.r.Answer
	text := fmt.Sprintf("Do not %s where it is planned: %s.", v.do(), v.whyForbidden())
	switch told := v.r.Boat.Told("money.cold_day_worth"); {
	case told && a.YesOf100[0] >= 60:
		return text + fmt.Sprintf(" Elsewhere it would be worth it (%s).", v.yesOf100())
	case told:
		return text + fmt.Sprintf(" Elsewhere it would be worth it in %s.", v.yesFutures())
	case !math.IsInf(a.YesWorth, 1):
		return text + fmt.Sprintf(" Elsewhere it would be worth it if a %s day is worth %s to you.", v.ColdOrCool(), v.Say(a.YesWorth))
	}
	return text
}

// whyForbidden gives the hazards of the leader in a few words.
func (v Voice) whyForbidden() string {
	o := v.Leader()
	var out []string
	for _, c := range o.Fitted.Failing {
		if c.Kind == economics.Hazard {
			out = append(out, v.fewWords(c, o.Fitted.Facts))
		}
	}
	return Join(out)
}

func (v Voice) nearest() string {
	a := &v.r.Answer
	o := v.Leader()
	text := fmt.Sprintf("No way keeps food %s as often as you want. %s comes nearest: ", v.ColdOrCool(), the(o.ID))
	if a.ReachOf100 > 0 && o.Fitted.Works() {
		return text + fmt.Sprintf("it does so in %s futures.", few100(a.ReachOf100))
	}
	for _, c := range o.Fitted.Failing {
		if c.Kind == economics.Need || c.Kind == economics.Room {
			return text + v.fewWords(c, o.Fitted.Facts) + "."
		}
	}
	return text + fmt.Sprintf("%s on %d days of 100; you want %d.", v.ColdOrCool(), share100(number(o.Fitted.Facts, "kept_share")), share100(float64(v.r.Boat.Food.ColdDaysWanted)))
}

// coolPrice gives the price of a cool day where only that can be had.
func (v Voice) coolPrice() string {
	o := v.Leader()
	if !v.Priced(o) {
		return ""
	}
	return fmt.Sprintf(", for %s a cool day", v.Price(o.PriceOfCold.Typical))
}

// Priced tells whether a price of a day is printed for an option: it gives at
// least five days a year that the empty box does not, for at most fifty each.
func (v Voice) Priced(o *economics.OptionFigures) bool {
	return o.ExtraDays.Typical >= 5 && o.PriceOfCold.Typical <= Dearest
}

func (v Voice) fewDays() string {
	o := v.Leader()
	days := math.Round(o.ExtraDays.Typical)
	if bare := o.KeptDays.Typical - o.ExtraDays.Typical; bare > 2*o.ExtraDays.Typical && bare >= 1 {
		return fmt.Sprintf("The box needs nothing: empty it is %s on %s of the year already, and %s adds %s for about %s a year.",
			v.ColdOrCool(), Plural(bare, "day"), In(o.ID), moreDays(days), v.Money(o.Fitted.Yearly))
	}
	return fmt.Sprintf("There are too few days for a price a day: %s costs about %s a year for %s.", In(o.ID), v.Money(o.Fitted.Yearly), v.days(days))
}

// days counts days of the kind that decides: "3 cold days".
func (v Voice) days(n float64) string {
	if n < 1 {
		return "no " + v.ColdOrCool() + " day"
	}
	return Plural(n, v.ColdOrCool()+" day")
}

func moreDays(n float64) string {
	if n < 1 {
		return "none"
	}
	return fmt.Sprintf("%s more", whole(n))
}

// Counts is the second line: in how many of 100 futures a day costs no more
// than the worths that the answer turns on. It is empty where nothing turns on
// a worth.
func (v Voice) Counts() string {
	a := &v.r.Answer
	switch a.Case {
	case economics.NoNights, economics.NothingCold, economics.NoRoomAtAll, economics.CoolOnly, economics.NoneReaches, economics.FewDays:
		return ""
	}
	var parts []string
	for _, c := range a.Counts {
		if c.Worth > Dearest && c.Worth != a.Worth.Low && c.Worth != a.Worth.High {
			continue
		}
		sum := v.Say(c.Worth) + " or less"
		if c.Worth == 0 {
			sum = "nothing"
		}
		if len(parts) == 0 {
			parts = append(parts, fmt.Sprintf("In %s futures a %s day costs %s", of100(c.Of100), v.ColdOrCool(), sum))
			continue
		}
		parts = append(parts, fmt.Sprintf("in %d, %s", c.Of100, sum))
	}
	if len(parts) == 0 {
		return ""
	}
	return strings.Join(parts, "; ") + "."
}

// Band is one word of the answer, for counts of 100 futures from From up to To.
type Band struct {
	Word     string
	From, To int
}

// Scale is how the answer words its counts, the surest first. Engineering
// judgement, from memory.
var Scale = []Band{
	{"worth it", 90, 100}, {"likely worth it", 75, 89}, {"more likely than not worth it", 60, 74},
	{"a close call", 41, 59}, {"rather not", 26, 40}, {"not worth it", 0, 25},
}

// ScaleText prints the scale in one sentence.
func ScaleText() string {
	var parts []string
	for _, b := range Scale {
		parts = append(parts, fmt.Sprintf("%s %d to %d", b.Word, b.From, b.To))
	}
	return "Words of the answer, by futures of 100: " + strings.Join(parts, "; ") + "."
}
