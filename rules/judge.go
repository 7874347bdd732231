package rules

import (
	"fmt"
	"slices"

	"coldreckon/economics"
)

// Finding is a caution that fired.
type Finding struct {
	ID      string // of the caution
	Grade   Grade
	Options []economics.OptionID // for which it fired, in printing order
	Text    string               // as in Caution
	Source  string
}

// Judge runs every caution over the given sets of facts, one set for each
// option as told or fitted; the set's "option" says which. It gives stops
// first, then cautions, then notes, each in the order of the pack. A missing
// or impossible fact is an error: a caution must not fall silent for it.
func (p Pack) Judge(sets ...economics.Facts) ([]Finding, error) {
	fired := make([]map[economics.OptionID]bool, len(p.Cautions))
	for _, facts := range sets {
		option, ok := facts["option"].(string)
		if !ok || !slices.Contains(economics.Options[:], economics.OptionID(option)) {
			return nil, fmt.Errorf("fact \"option\" is %v; expected one of: ice dry small larger", facts["option"])
		}
		holding, err := p.holding(economics.OptionID(option), facts)
		if err != nil {
			return nil, err
		}
		for _, i := range holding {
			if fired[i] == nil {
				fired[i] = map[economics.OptionID]bool{}
			}
			fired[i][economics.OptionID(option)] = true
		}
	}
	var findings []Finding
	for _, grade := range grades {
		for i, c := range p.Cautions {
			if c.Grade != grade || fired[i] == nil {
				continue
			}
			f := Finding{ID: c.ID, Grade: c.Grade, Text: c.Text, Source: c.Source}
			for _, option := range economics.Options {
				if fired[i][option] {
					f.Options = append(f.Options, option)
				}
			}
			findings = append(findings, f)
		}
	}
	return findings, nil
}

// holding gives the places of the cautions that hold for one set of facts,
// only the highest rank of each group.
func (p Pack) holding(option economics.OptionID, facts economics.Facts) ([]int, error) {
	var holding []int
	highest := map[string]int{}
	for i, c := range p.Cautions {
		if !c.concerns(option) {
			continue
		}
		holds, err := c.When.Holds(facts)
		if err != nil {
			return nil, fmt.Errorf("caution %s for option %s: %w", c.ID, option, err)
		}
		if holds {
			holding = append(holding, i)
			highest[c.Group] = max(highest[c.Group], c.Rank)
		}
	}
	return slices.DeleteFunc(holding, func(i int) bool {
		c := p.Cautions[i]
		return c.Group != "" && c.Rank < highest[c.Group]
	}), nil
}
