package wizard

import (
	"fmt"

	"coldreckon/economics"
)

// ways names the options as things to do.
var ways = map[economics.OptionID]string{
	economics.IceOnly:    "keep to ice",
	economics.DryStores:  "live on food that keeps, with neither ice nor refrigeration",
	economics.SmallUnit:  "fit a small refrigerating unit",
	economics.LargerUnit: "fit a larger refrigerating unit",
}

// names names the options as things.
var names = map[economics.OptionID]string{
	economics.IceOnly:    "ice",
	economics.DryStores:  "food that keeps",
	economics.SmallUnit:  "a small unit",
	economics.LargerUnit: "a larger unit",
}

// wording puts a verdict in words, and how sure it is.
func wording(v economics.Verdict) string {
	if !v.Works {
		return fmt.Sprintf("nothing does all you want. The nearest is to %s.", ways[v.Option])
	}
	s := ways[v.Option]
	switch {
	case !v.SureOfWay && v.HasRunner:
		s += fmt.Sprintf(", but it is close: best in %d of 100 ways things may turn out; %s may be better.", v.WayOf100, names[v.Runner])
	default:
		s += fmt.Sprintf(". How sure: best in %d of 100 ways things may turn out.", v.WayOf100)
	}
	if !v.AsToldWorks {
		s += " It needs some work on box or boat; the report lists it."
	}
	return s
}

// tellFirst gives the provisional answer.
func (t *talk) tellFirst() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	t.Prompter.Say("First answer: " + wording(r.Verdict))
	t.verdict = &r.Verdict
	return nil
}

// tellIfChanged says what an answer did to the verdict.
func (t *talk) tellIfChanged() error {
	r, err := t.figures()
	if err != nil {
		return err
	}
	before, now := t.verdict, &r.Verdict
	t.verdict = now
	switch {
	case before == nil || before.Option != now.Option || before.Works != now.Works:
		t.trials = nil // they were for another choice
		t.Prompter.Say("That changes the answer. Now: " + wording(*now))
	case before.WayOf100 != now.WayOf100 && now.Works:
		t.Prompter.Say(fmt.Sprintf("Still %s, now best in %d of 100; it was %d.", names[now.Option], now.WayOf100, before.WayOf100))
	default:
		t.Prompter.Say("That leaves the answer as it was.")
	}
	return nil
}
