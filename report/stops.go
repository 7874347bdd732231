package report

import (
	"maps"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/report/words"
	"coldreckon/rules"
)

// concerns tells whether a caution is one of an option's.
func concerns(f rules.Finding, id economics.OptionID) bool {
	return len(f.Options) == 0 || slices.Contains(f.Options, id)
}

// lead heads a caution: its weight and the options it concerns.
func lead(f rules.Finding) string {
	head := map[rules.Grade]string{rules.Stop: "Stop", rules.Careful: "Caution", rules.WorthANote: "Note"}[f.Grade]
	return head + " (" + forWhom(f) + ")."
}

// forWhom names the ways that a caution concerns.
func forWhom(f rules.Finding) string {
	if len(f.Options) == 0 || len(f.Options) == len(economics.Options) {
		return "every way"
	}
	var names []string
	for _, id := range f.Options {
		names = append(names, words.Bare(id))
	}
	return strings.Join(names, ", ")
}

// answers to the safety questions that lift a stop, and what each asks.
var safest = map[string]struct{ answer, asks string }{
	"fuel_vapour_space":  {"no", "petrol or cooking gas where the unit would sit"},
	"co_alarm":           {"yes", "a carbon monoxide alarm"},
	"lithium":            {"no", "lithium batteries"},
	"drain_to":           {"sump", "where the box drains"},
	"children":           {"no", "children near the box"},
	"latch_opens_inside": {"yes", "a lid that opens from inside"},
	"dry_ice":            {"no", "dry ice"},
	"fish":               {"no", "fish that you catch"},
	"eggs":               {"none", "how your eggs are sold"},
	"wiring_known":       {"yes", "the state of the wiring"},
	"left_unattended":    {"no", "a unit left running alone"},
	"medicine":           {"no", "medicine that must stay cold"},
	"vulnerable":         {"no", "anyone who must not fall ill from food"},
}

// partUntold finds the stops that stand only because a question was not
// answered: those which the safest answer to it would lift. They are told as what
// is not told, never as facts.
func (a *author) partUntold() error {
	stands := func(change []string) (map[string]bool, error) {
		var sets []economics.Facts
		for i := range a.r.Options {
			facts := maps.Clone(a.r.Options[i].Fitted.Facts)
			for _, name := range change {
				if facts[name] == "unknown" {
					facts[name] = safest[name].answer
				}
			}
			sets = append(sets, facts)
		}
		found, err := a.Pack.Judge(sets...)
		stops := map[string]bool{}
		for _, f := range found {
			stops[f.ID] = f.Grade == rules.Stop
		}
		return stops, err
	}
	names := slices.Sorted(maps.Keys(safest))
	known, err := stands(names)
	if err != nil {
		return err
	}
	lifts := make([]map[string]bool, len(names)) // what is left standing by one answer alone
	for i, name := range names {
		if lifts[i], err = stands([]string{name}); err != nil {
			return err
		}
	}
	asked := map[string]bool{}
	for i, f := range a.findings {
		if f.Grade != rules.Stop || known[f.ID] {
			continue
		}
		a.findings[i].Grade = unanswered
		alone := false
		for k, name := range names {
			if !lifts[k][f.ID] {
				asked[name], alone = true, true
			}
		}
		for _, name := range names { // it takes more than one answer
			if !alone && a.r.Options[0].Fitted.Facts[name] == "unknown" {
				asked[name] = true
			}
		}
	}
	for _, name := range names {
		if asked[name] {
			a.untold = append(a.untold, safest[name].asks)
		}
	}
	for i, f := range a.findings { // cautions that say so themselves
		if first, _, _ := strings.Cut(f.Text, ". "); strings.HasPrefix(first, notTold) && f.Grade != rules.Stop {
			a.findings[i].Grade = unanswered
			a.untold = append(a.untold, strings.Join(strings.Fields(strings.TrimPrefix(first, notTold)), " "))
		}
	}
	return nil
}

// notTold opens a caution about what was not told.
const notTold = "Not told: "

// unanswered grades a stop that a question left unanswered has raised.
const unanswered rules.Grade = "unanswered"

// stops lists those that stand whatever is answered: those that concern the way
// told of in full, and the others.
func (a author) stops() (own, others []rules.Finding) {
	for _, f := range a.findings {
		switch {
		case f.Grade != rules.Stop:
		case concerns(f, a.o.ID):
			own = append(own, f)
		default:
			others = append(others, f)
		}
	}
	return own, others
}
