package rules

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/rules/strict"
)

// example is one case written beside a rule: facts, and what the rule makes
// of them.
type example struct {
	file         string
	line, column int
	rule         string
	facts        economics.Facts
	condition    economics.Condition // nil for a price
	amount       economics.Amount
	fires        bool
	gives        float64
}

// RunExamples runs every example of the pack and gives those that do not come
// out as written, nil when all do.
func (p Pack) RunExamples() strict.Faults {
	var failures strict.Faults
	for _, e := range p.examples {
		if found, want := e.run(); found != want {
			fault := strict.Found(found, want)
			fault.File, fault.Line, fault.Column, fault.Key = e.file, e.line, e.column, place(e.rule, "examples")
			failures = append(failures, fault)
		}
	}
	return failures
}

// Examples counts the examples of the pack.
func (p Pack) Examples() int { return len(p.examples) }

// run gives what came out and what should have, in words.
func (e example) run() (found, want string) {
	if e.condition == nil {
		const exact = "%.9g" // sums of tenths differ in the last digits
		want = fmt.Sprintf(exact, e.gives)
		got, err := e.amount.Number(e.facts)
		if err != nil {
			return err.Error(), want
		}
		return fmt.Sprintf(exact, got), want
	}
	words := map[bool]string{true: "fires", false: "stays silent"}
	want = words[e.fires]
	got, err := e.condition.Holds(e.facts)
	if err != nil {
		return err.Error(), want
	}
	return words[got], want
}

// readExamples reads the examples of a rule: of a condition when it is given,
// otherwise of an amount.
func (p *Pack) readExamples(r *reader, rec record, when economics.Condition, quantity economics.Amount, reads []economics.Fact) {
	result := "fires"
	if when == nil {
		result = "gives"
	}
	for _, n := range r.items(rec, "examples") {
		before := r.Count()
		one, ok := r.mapping(n, rec.rule, "facts", result)
		if !ok {
			continue
		}
		e := example{
			file: r.File, line: n.Line, column: n.Column, rule: rec.rule,
			condition: when, amount: quantity, facts: r.exampleFacts(one, reads),
		}
		if when != nil {
			e.fires = r.oneOf(one, "fires", "yes", "no") == "yes"
		} else {
			e.gives = r.number(one, "gives", -maxFact, maxFact)
		}
		if r.Count() == before {
			p.examples = append(p.examples, e)
		}
	}
}

// exampleFacts reads the facts of an example: exactly those the rule reads.
func (r *reader) exampleFacts(one record, reads []economics.Fact) economics.Facts {
	facts := economics.Facts{}
	var names []string
	for _, fact := range reads {
		names = append(names, fact.Name)
	}
	n := one.fields["facts"]
	if n == nil {
		if len(reads) > 0 {
			r.field(one, "facts")
		}
		return facts
	}
	given, ok := r.mapping(n, one.rule, names...)
	if !ok {
		return facts
	}
	for _, fact := range reads {
		if value := r.factValue(given, fact); value != nil {
			facts[fact.Name] = value
		}
	}
	return facts
}

// factValue reads one fact's value by its kind, nil when it cannot be read.
func (r *reader) factValue(given record, fact economics.Fact) any {
	n, ok := r.field(given, fact.Name)
	if !ok {
		return nil
	}
	var value any
	want := describe(fact.Kind)
	switch fact.Kind {
	case economics.Number:
		return r.number(given, fact.Name, -maxFact, maxFact)
	case economics.Truth:
		want = "true or false"
		if n.Kind == yaml.ScalarNode && !strict.Quoted(n) && (n.Value == "true" || n.Value == "false") {
			value = n.Value == "true"
		}
	case economics.Word:
		want = "one of: " + fact.Unit
		if n.Kind == yaml.ScalarNode && oneWordOf(fact.Unit, n.Value) {
			value = n.Value
		}
	}
	if value == nil {
		r.fault(n, given.rule, fact.Name, strict.Describe(n), want)
	}
	return value
}
