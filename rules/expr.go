package rules

import (
	"fmt"
	"math"
	"strings"

	"github.com/Knetic/govaluate"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/rules/strict"
)

// Limits on one expression.
const (
	// maxExpressionBytes bounds the time and memory that a hostile file can ask
	// for; the longest embedded expression is under a tenth of it.
	maxExpressionBytes = 1000
	// maxFact bounds the magnitude of facts and of written numbers, so that
	// no sum or product of them can leave the range of a float64.
	maxFact = 1e12
)

// expression is one compiled text over the vocabulary. Its type and every
// name in it were checked when it was compiled. It is safe for concurrent use.
type expression struct {
	text    string
	program *govaluate.EvaluableExpression
	facts   []economics.Fact // those it reads, each once, in order of appearance
}

// Holds implements economics.Condition, for an expression of economics.Truth.
func (e *expression) Holds(facts economics.Facts) (bool, error) {
	result, err := e.evaluate(facts)
	if err != nil {
		return false, err
	}
	holds, ok := result.(bool)
	if !ok {
		return false, fmt.Errorf("expression %q gave %v; expected true or false", e.text, result)
	}
	return holds, nil
}

// Number implements economics.Amount, for an expression of economics.Number.
func (e *expression) Number(facts economics.Facts) (float64, error) {
	result, err := e.evaluate(facts)
	if err != nil {
		return 0, err
	}
	number, ok := result.(float64)
	if !ok || math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, fmt.Errorf("expression %q gave %v; expected a finite number", e.text, result)
	}
	return number, nil
}

// String gives the expression as written.
func (e *expression) String() string { return e.text }

// evaluate checks every fact that the expression reads, then runs it. All are
// checked first because the evaluator stops early: a missing fact behind
// "false &&" would otherwise pass unseen.
func (e *expression) evaluate(facts economics.Facts) (result any, err error) {
	defer func() {
		if trouble := recover(); trouble != nil {
			result, err = nil, fmt.Errorf("expression %q failed: %v", e.text, trouble)
		}
	}()
	for i := range e.facts {
		if err := checkFact(&e.facts[i], facts); err != nil {
			return nil, err
		}
	}
	parameters := map[string]any(facts)
	if parameters == nil {
		parameters = map[string]any{}
	}
	return e.program.Evaluate(parameters)
}

// checkFact reports a fact that is missing, of another kind, or not finite.
func checkFact(fact *economics.Fact, facts economics.Facts) error {
	value, present := facts[fact.Name]
	if !present {
		return fmt.Errorf("fact %q is missing", fact.Name)
	}
	switch fact.Kind {
	case economics.Number:
		number, ok := value.(float64)
		if !ok || !(math.Abs(number) <= maxFact) {
			return fmt.Errorf("fact %q is %v; expected a number between -1e12 and 1e12", fact.Name, value)
		}
	case economics.Truth:
		if _, ok := value.(bool); !ok {
			return fmt.Errorf("fact %q is %v; expected true or false", fact.Name, value)
		}
	case economics.Word:
		word, ok := value.(string)
		if !ok || !oneWordOf(fact.Unit, word) {
			return fmt.Errorf("fact %q is %q; expected one of: %s", fact.Name, fmt.Sprint(value), fact.Unit)
		}
	}
	return nil
}

// oneWordOf reports whether word is in a set written with spaces between. It
// allocates nothing, because it runs for every fact of every future.
func oneWordOf(set, word string) bool {
	if word == "" || strings.Contains(word, " ") {
		return false
	}
	for start := 0; start < len(set); {
		end := strings.IndexByte(set[start:], ' ')
		if end < 0 {
			return set[start:] == word
		}
		if set[start:start+end] == word {
			return true
		}
		start += end + 1
	}
	return false
}

// compile parses a text over economics.Vocabulary and checks its names and kinds,
// and only then hands the evaluator the tokens that were understood. It never sees
// the text. The error says what was found and what is expected.
func compile(text string, want economics.Kind) (e *expression, err error) {
	unread := func(trouble any) error {
		return mistake(quantity.Quoted(text), fmt.Sprintf("an expression that can be read (%v)", trouble))
	}
	defer func() {
		if trouble := recover(); trouble != nil {
			e, err = nil, unread(trouble)
		}
	}()
	text = strings.TrimSpace(text)
	switch {
	case text == "":
		return nil, mistake("nothing", "an expression")
	case len(text) > maxExpressionBytes:
		return nil, mistake(fmt.Sprintf("%d bytes", len(text)), fmt.Sprintf("at most %d", maxExpressionBytes))
	}
	c := &checker{text: text}
	tree, err := c.parse()
	if err != nil {
		return nil, err
	}
	got, err := c.part(tree)
	if err != nil {
		return nil, err
	}
	if got.kind != want {
		return nil, mistake(fmt.Sprintf("%s (%q)", describe(got.kind), clip(text)), describe(want))
	}
	program, err := govaluate.NewEvaluableExpressionFromTokens(c.tokens)
	if err != nil {
		return nil, unread(err)
	}
	return &expression{text: text, program: program, facts: c.facts}, nil
}

// clip shortens a found text for an error sentence.
func clip(text string) string { return quantity.Clip(text, 40) }

// describe names a kind in the words of an error.
func describe(kind economics.Kind) string {
	switch kind {
	case economics.Number:
		return "a number"
	case economics.Truth:
		return "a yes-or-no expression"
	}
	return "a word"
}

// mistake is a fault in an expression, before it has a place.
func mistake(found, want string) error { return strict.Found(found, want) }
