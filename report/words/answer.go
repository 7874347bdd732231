package words

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// Answer is the main answer in one sentence: refrigerate or not, which way,
// and whether the boat needs work for it.
func (v Voice) Answer() string {
	d := v.r.Verdict
	switch {
	case v.Nights() == 0:
		return fmt.Sprintf("With no nights aboard %s needs no refrigeration, and nothing else on these pages can pay for itself.", v.boat())
	case !d.Works:
		return fmt.Sprintf("None of the four ways works well enough for %s as reckoned; %s come%s nearest, in %s futures.",
			v.boat(), In(d.Option), s(d.Option), of100(v.r.Of(d.Option).WorkableOf100))
	case !d.SureOfStep:
		return fmt.Sprintf("Whether %s should have refrigeration is too close to call: %s.", v.boat(), v.rivals())
	case !d.SureOfWay:
		return fmt.Sprintf("%s, but which way is too close to call for %s: %s.", v.step(), v.boat(), v.rivals())
	}
	lead := v.step()
	if hedge := [3]string{"", "Probably ", "Perhaps "}[v.doubt()]; hedge != "" && d.Refrigerate {
		lead = hedge + "refrigerate"
	} else if hedge != "" {
		lead = hedge + "not"
	}
	return fmt.Sprintf("%s: %s %s the %s way that works for %s, %s.", lead, In(d.Option), v.verb(d.Option), v.merit(), v.boat(), v.condition())
}

// longName is the length of a boat's name, in letters, over which sentences
// do without it.
const longName = 24

// boat names the boat inside a sentence.
func (v Voice) boat() string {
	switch name := v.r.Boat.Name; {
	case utf8.RuneCountInString(name) > longName:
		return "this boat"
	case v.r.Boat.Known["boat.name"] == quantity.Assumed:
		return "your boat"
	default:
		return name
	}
}

func (v Voice) step() string {
	if v.r.Verdict.Refrigerate {
		return "Refrigerate"
	}
	return "Do not refrigerate"
}

// merit is what the answer was chosen by.
func (v Voice) merit() string {
	if v.r.Verdict.ByWorth {
		return "most worthwhile"
	}
	return "cheapest"
}

// rivals gives the two best options with their counts.
func (v Voice) rivals() string {
	d := v.r.Verdict
	text := fmt.Sprintf("%s %s best in %s futures", In(d.Option), is(d.Option), of100(d.WayOf100))
	if d.HasRunner {
		text += fmt.Sprintf(", %s in %d", In(d.Runner), v.r.Of(d.Runner).BestOf100)
	}
	return text
}

// doubt grades the answer, from 0, firm, to 2: firm only where both the count
// of futures and the evidence carry it.
func (v Voice) doubt() int {
	step := 2
	switch n := v.r.Verdict.WayOf100; {
	case n >= 90:
		step = 0
	case n >= 66:
		step = 1
	}
	if v.Evidence().Grade == Weak {
		step = min(step+1, 2)
	}
	return step
}

// verb says how sure the answer is.
func (v Voice) verb(id economics.OptionID) string {
	if id == economics.DryStores {
		return [3]string{"are", "are probably", "may be"}[v.doubt()]
	}
	return [3]string{"is", "is probably", "may be"}[v.doubt()]
}

// condition says what the boat needs first.
func (v Voice) condition() string {
	o := v.r.Of(v.r.Verdict.Option)
	if len(o.Fit.Items) == 0 {
		return "just as she is"
	}
	var pieces []string
	for _, item := range o.Fit.Items {
		pieces = append(pieces, v.short(item))
	}
	if len(pieces) > 3 {
		pieces = append(pieces[:2:2], fmt.Sprintf("%s more on page two", Plural(float64(len(pieces)-2), "piece")))
	}
	if v.r.Verdict.AsToldWorks {
		return "as she is, and cheaper still after some work (" + Join(pieces) + ")"
	}
	return "after some work (" + Join(pieces) + ")"
}

// Condition is what the answer rests on, in one or two sentences: money
// alone, and the worth of a cold day at which it turns; or the worth told.
func (v Voice) Condition() string {
	d := v.r.Verdict
	b := v.r.Boat
	switch {
	case v.Nights() == 0 || !d.Works:
		return ""
	case d.ByWorth:
		return fmt.Sprintf("This counts a cold day as worth %s to you, as you told. %s", v.Money(float64(b.Money.ColdDayWorth)), v.byMoneyAlone())
	}
	text := "Money alone decides this: you have not said what a cold day is worth to you."
	if turn := v.turn(); turn != "" {
		text += " " + turn
	}
	return text
}

// byMoneyAlone says what the counts would be if a cold day were worth nothing.
func (v Voice) byMoneyAlone() string {
	best := &v.r.Options[0]
	for i := range v.r.Options {
		if o := &v.r.Options[i]; o.CheapestOf100 > best.CheapestOf100 {
			best = o
		}
	}
	return fmt.Sprintf("By money alone %s would be cheapest in %s futures.", In(best.ID), of100(best.CheapestOf100))
}

// turn says at which worth of a cold day a money-only answer turns.
func (v Voice) turn() string {
	d := v.r.Verdict
	if d.ByWorth || !d.TurnKnown {
		return ""
	}
	worth := "more than about " + v.Money(d.TurnWorth)
	if d.TurnWorth < 1 {
		worth = "as little as " + v.Money(1)
	}
	return fmt.Sprintf("If a day with cold food is worth %s to you, %s %s the better way.", worth, In(d.TurnTo), is(d.TurnTo))
}

// Sure says how often the answer holds, as counts of 100, a sentence each: first
// how often it is best and is not, or that nothing works; next how often any
// unit is best. Then come the word for the likelihood, and which way costs least
// on average where that is not the answer; both may be missing. It is nil
// without nights aboard.
func (v Voice) Sure() []string {
	d := v.r.Verdict
	if v.Nights() == 0 {
		return nil
	}
	with, none := v.r.Futures.RefrigerateOf100, v.r.Futures.NoneWorksOf100
	out := []string{}
	if !d.Works {
		out = append(out, fmt.Sprintf("Nothing works in %s equally likely futures; something does in %d.", of100(none), 100-none))
	} else {
		out = append(out, fmt.Sprintf("%s %s best in %s equally likely futures, and not best in %d.",
			The(d.Option), is(d.Option), of100(d.WayOf100), 100-d.WayOf100))
	}
	text := fmt.Sprintf("A unit is best in %d of 100, no unit in %d", with, 100-with-none)
	if none > 0 {
		text += fmt.Sprintf(", and nothing works in %d", none)
	}
	out = append(out, text+".")
	if d.Works {
		out = append(out, fmt.Sprintf("It is %s that %s %s best.", likely(d.WayOf100), In(d.Option), is(d.Option)))
	}
	switch lead := v.r.Futures.Preferred; {
	case !d.Works || lead == d.Option || lead == "":
	case v.r.Of(lead).WorkableOf100 < 60:
		out = append(out, fmt.Sprintf("To try %s first costs least on average: where it fails, little money is lost before you turn to the next way.", In(lead)))
	default:
		out = append(out, fmt.Sprintf("Where %s %s not best, %s can cost far more: averaged over all futures %s cost%s least.",
			In(d.Option), is(d.Option), it(d.Option), In(lead), s(lead)))
	}
	return out
}

func it(id economics.OptionID) string {
	if id == economics.DryStores {
		return "they"
	}
	return "it"
}

// likely gives the word for a count of 100 with the count: "likely (72 of 100)".
func likely(n int) string {
	for _, b := range Scale {
		if n >= b.From {
			return fmt.Sprintf("%s (%s)", b.Word, of100(n))
		}
	}
	return ""
}

// Band is one word of the scale of likelihood, for counts of 100 from From up
// to To.
type Band struct {
	Word     string
	From, To int
}

// Scale is the one scale of likelihood, the highest band first. Source: IPCC
// Fourth Assessment Report, working group II, front matter (disjoint bands).
var Scale = []Band{
	{"virtually certain", 100, 100}, {"very likely", 90, 99}, {"likely", 66, 89}, {"about as likely as not", 33, 65},
	{"unlikely", 10, 32}, {"very unlikely", 1, 9}, {"exceptionally unlikely", 0, 0},
}

// ScaleText prints the scale in one sentence.
func ScaleText() string {
	var parts []string
	for _, b := range Scale {
		if b.From == b.To {
			parts = append(parts, fmt.Sprintf("%s %d", b.Word, b.From))
			continue
		}
		parts = append(parts, fmt.Sprintf("%s %d to %d", b.Word, b.From, b.To))
	}
	return "Words for chances, in futures of 100: " + strings.Join(parts, "; ") + "."
}
