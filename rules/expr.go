package rules

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"github.com/Knetic/govaluate"

	"coldreckon/economics"
)

// Limits on one expression. They bound the time and memory that a hostile
// file can ask for; the longest embedded expression is under a tenth of each.
const (
	maxExpressionBytes = 1000
	maxExpressionWords = 120
	maxBracketDepth    = 12
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

// condition is an economics.Condition.
type condition struct{ *expression }

// amount is an economics.Amount.
type amount struct{ *expression }

// compileCondition compiles a yes-or-no expression over economics.Vocabulary.
// The error says what was found and what is expected.
func compileCondition(text string) (condition, error) {
	e, err := compile(text, economics.Truth)
	return condition{e}, err
}

// compileAmount compiles a number expression over economics.Vocabulary.
func compileAmount(text string) (amount, error) {
	e, err := compile(text, economics.Number)
	return amount{e}, err
}

// Holds implements economics.Condition.
func (c condition) Holds(facts economics.Facts) (bool, error) {
	result, err := c.evaluate(facts)
	if err != nil {
		return false, err
	}
	holds, ok := result.(bool)
	if !ok {
		return false, fmt.Errorf("expression %q gave %v; expected true or false", c.text, result)
	}
	return holds, nil
}

// Number implements economics.Amount.
func (a amount) Number(facts economics.Facts) (float64, error) {
	result, err := a.evaluate(facts)
	if err != nil {
		return 0, err
	}
	number, ok := result.(float64)
	if !ok || math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, fmt.Errorf("expression %q gave %v; expected a finite number", a.text, result)
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

// compile splits the text into words, checks grammar and types, and only then
// hands the words, with single spaces between, to the evaluator. The old
// evaluator therefore never sees a character, an operator or a name that was
// not understood here first.
func compile(text string, want economics.Kind) (e *expression, err error) {
	defer func() {
		if trouble := recover(); trouble != nil {
			e, err = nil, mistake(fmt.Sprintf("%q", text), fmt.Sprintf("an expression that can be read (%v)", trouble))
		}
	}()
	words, err := splitWords(text)
	if err != nil {
		return nil, err
	}
	check := checker{words: words, used: map[string]bool{}}
	got, err := check.whole()
	if err != nil {
		return nil, err
	}
	if got.kind != want {
		return nil, mistake(fmt.Sprintf("%s (%q)", describe(got.kind), text), describe(want))
	}
	program, err := govaluate.NewEvaluableExpression(strings.Join(words, " "))
	if err != nil {
		return nil, mistake(fmt.Sprintf("%q", text), fmt.Sprintf("an expression that can be read (%v)", err))
	}
	if n := len(program.Tokens()); n != len(words) {
		return nil, mistake(fmt.Sprintf("%q", text), fmt.Sprintf("an expression of %d words, the evaluator reads %d", len(words), n))
	}
	return &expression{text: strings.TrimSpace(text), program: program, facts: check.facts}, nil
}

// wordPattern matches the next word of an expression, or the space between two.
var wordPattern = regexp.MustCompile(`^(?:[0-9]+(?:\.[0-9]+)?|[a-z][a-z0-9_]*|'[a-z][a-z0-9_]*'|"[a-z][a-z0-9_]*"|<=|>=|==|!=|&&|\|\||[<>!+*/()-]|[ \n]+)`)

// advice answers the spellings that people try and that are refused. Longer
// spellings come first.
var advice = []struct{ found, want string }{
	{"**", "no powers: multiply instead"},
	{"<<", "no bit operators"},
	{">>", "no bit operators"},
	{"=~", "no patterns: == or !="},
	{"!~", "no patterns: == or !="},
	{"%", "no remainders; a share is written 0.9"},
	{"^", "no powers or bit operators"},
	{"~", "no bit operators"},
	{"?", "no choices: write two rules"},
	{":", "no choices: write two rules"},
	{",", "no lists; a decimal is written 2.5"},
	{"[", "no brackets but ( and )"},
	{"]", "no brackets but ( and )"},
	{"{", "no brackets but ( and )"},
	{"}", "no brackets but ( and )"},
	{`\`, "no backslashes"},
	{".", "names without dots; a number starts with a digit"},
	{"'", "a word in matching quotes, of a-z, 0-9 and _"},
	{`"`, "a word in matching quotes, of a-z, 0-9 and _"},
	{"=", "== to compare words"},
	{"&", "&& for and"},
	{"|", "|| for or"},
}

// splitWords cuts an expression into numbers, names, quoted words and operators.
func splitWords(text string) ([]string, error) {
	if strings.TrimSpace(text) == "" {
		return nil, mistake("nothing", "an expression")
	}
	if len(text) > maxExpressionBytes {
		return nil, mistake(fmt.Sprintf("%d bytes", len(text)), fmt.Sprintf("at most %d", maxExpressionBytes))
	}
	var words []string
	for rest := text; rest != ""; {
		for _, a := range advice {
			quoted := a.found == "'" || a.found == `"`
			if strings.HasPrefix(rest, a.found) && !(quoted && wordPattern.MatchString(rest)) && !goodOperator(rest) {
				return nil, mistake(fmt.Sprintf("%q at %q", a.found, clip(rest)), a.want)
			}
		}
		word := wordPattern.FindString(rest)
		if word == "" {
			return nil, mistake(fmt.Sprintf("%q", clip(rest)), "fact names, numbers, quoted words, comparisons, && || ! + - * / and ( )")
		}
		rest = rest[len(word):]
		switch {
		case strings.TrimSpace(word) == "":
			continue
		case isDigit(word[0]) && rest != "" && isNamePart(rest[0]):
			return nil, mistake(fmt.Sprintf("%q", word+clip(rest)), "a plain number such as 1000 or 0.5, with no exponent and no unit")
		}
		words = append(words, word)
		if len(words) > maxExpressionWords {
			return nil, mistake(fmt.Sprintf("more than %d words", maxExpressionWords), "a shorter expression")
		}
	}
	return words, nil
}

// goodOperator reports whether text starts with a two-sign operator that is
// understood, whose first sign alone would be refused.
func goodOperator(text string) bool {
	return strings.HasPrefix(text, "==") || strings.HasPrefix(text, "&&") || strings.HasPrefix(text, "||")
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
func isNamePart(c byte) bool {
	return isDigit(c) || c == '_' || c == '.' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
}

// clip shortens a found text for an error sentence.
func clip(text string) string { return clipTo(24, text) }

func clipTo(most int, text string) string {
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "..."
}

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

// literalNumber reads a number that wordPattern has matched.
func literalNumber(word string) (float64, error) {
	number, err := strconv.ParseFloat(word, 64)
	if err != nil || number > maxFact {
		return 0, mistake(fmt.Sprintf("%q", clip(word)), "a number up to 1e12")
	}
	return number, nil
}
