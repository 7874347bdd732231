package rules

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/Knetic/govaluate"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
)

// checker walks an expression once, gives each part its kind, and hands the
// evaluator the tokens it has understood. Both sides of && and || are walked,
// so a wrong name cannot hide behind a side that is seldom reached.
type checker struct {
	text   string
	facts  []economics.Fact // those read, each once, in order of appearance
	tokens []govaluate.ExpressionToken
}

// part is what is known of a part of an expression before any fact is.
type part struct {
	kind    economics.Kind
	largest float64 // of a Number: no value exceeds it in magnitude
	written bool    // of a Number: a number written in the expression
	set     string  // of a Word fact: the words it can take
	literal string  // of a quoted word
}

// what an expression is made of, as an error sentence says it.
const vocabulary = "fact names, numbers, quoted words, < <= > >= == !=, && || ! + - * / and ( )"

var (
	singleQuoted = regexp.MustCompile(`'([a-z][a-z0-9_]*)'`)
	quotedWord   = regexp.MustCompile(`^"[a-z][a-z0-9_]*"$`)
	plainFigure  = regexp.MustCompile(`^[0-9]+(?:\.[0-9]+)?$`)
	english      = []string{"and", "or", "not", "in"}
)

// parse reads the text by Go's grammar, in which words stand in double quotes
// and a line ends a sentence; here they may stand in single ones, and it does not.
func (c *checker) parse() (ast.Expr, error) {
	source := strings.ReplaceAll(singleQuoted.ReplaceAllString(c.text, `"$1"`), "\n", " ")
	if i := max(strings.Index(source, "//"), strings.Index(source, "/*")); i >= 0 {
		return nil, mistake(quantity.Quoted(c.text[i:]), "no comments")
	}
	tree, err := parser.ParseExpr(source)
	var wrong scanner.ErrorList
	if !errors.As(err, &wrong) {
		return tree, err
	}
	rest := c.text[min(wrong[0].Pos.Offset, len(c.text)):]
	found, want := quantity.Quoted(rest), vocabulary
	if rest == "" {
		found = "the end"
	}
	if strings.Contains(wrong[0].Msg, "expected ')'") {
		want = "a closing bracket"
	}
	if word, _, _ := strings.Cut(rest, " "); slices.Contains(english, word) {
		want = "&& for and, || for or, ! for not, == with || for in"
	}
	return nil, mistake(found, want)
}

// written gives a part of the expression as it stands in the text.
func (c *checker) written(e ast.Expr) string {
	return clip(c.text[min(int(e.Pos())-1, len(c.text)):min(int(e.End())-1, len(c.text))])
}

func (c *checker) put(kind govaluate.TokenKind, value any) {
	c.tokens = append(c.tokens, govaluate.ExpressionToken{Kind: kind, Value: value})
}

// part checks a part of the expression.
func (c *checker) part(e ast.Expr) (part, error) {
	switch e := e.(type) {
	case *ast.BinaryExpr:
		return c.binary(e)
	case *ast.UnaryExpr:
		return c.unary(e)
	case *ast.BasicLit:
		return c.literal(e)
	case *ast.ParenExpr:
		c.put(govaluate.CLAUSE, '(')
		p, err := c.part(e.X)
		c.put(govaluate.CLAUSE_CLOSE, ')')
		p.written = p.written && err == nil
		return p, err
	case *ast.Ident:
		if e.Name == "true" || e.Name == "false" {
			c.put(govaluate.BOOLEAN, e.Name == "true")
			return part{kind: economics.Truth}, nil
		}
		return c.fact(e.Name)
	case *ast.CallExpr:
		return part{}, mistake(fmt.Sprintf("the function %q", c.written(e.Fun)), "no functions: what needs one is a fact of its own")
	case *ast.StarExpr:
		return part{}, mistake(strconv.Quote(c.written(e)), "no powers: multiply instead")
	}
	return part{}, mistake(strconv.Quote(c.written(e)), vocabulary)
}

func (c *checker) literal(e *ast.BasicLit) (part, error) {
	switch {
	case quotedWord.MatchString(e.Value):
		word := strings.Trim(e.Value, `"`)
		c.put(govaluate.STRING, word)
		return part{kind: economics.Word, literal: word}, nil
	case e.Kind == token.STRING || e.Kind == token.CHAR:
		return part{}, mistake(clip(e.Value), "a word of a-z, 0-9 and _ in the quotes")
	case !plainFigure.MatchString(e.Value):
		return part{}, mistake(quantity.Quoted(e.Value), "a plain number such as 1000 or 0.5, with no exponent and no unit")
	}
	number, err := strconv.ParseFloat(e.Value, 64)
	if err != nil || number > maxFact {
		return part{}, mistake(quantity.Quoted(e.Value), "a number up to 1e12")
	}
	c.put(govaluate.NUMERIC, number)
	return part{kind: economics.Number, largest: number, written: true}, nil
}

// fact looks a name up in the vocabulary and notes that it is read.
func (c *checker) fact(name string) (part, error) {
	fact, known := factNamed(name)
	if !known {
		return part{}, mistake(quantity.Quoted(name), "the name of a fact"+didYouMean(name, factNames()))
	}
	if !slices.ContainsFunc(c.facts, func(f economics.Fact) bool { return f.Name == name }) {
		c.facts = append(c.facts, fact)
	}
	c.put(govaluate.VARIABLE, name)
	p := part{kind: fact.Kind}
	switch fact.Kind {
	case economics.Number:
		p.largest = maxFact
	case economics.Word:
		p.set = fact.Unit
	}
	return p, nil
}

func (c *checker) unary(e *ast.UnaryExpr) (part, error) {
	want := economics.Number
	switch e.Op {
	case token.NOT:
		want = economics.Truth
	case token.SUB:
	default:
		return part{}, mistake(strconv.Quote(c.written(e)), vocabulary)
	}
	c.put(govaluate.PREFIX, e.Op.String())
	p, err := c.part(e.X)
	if err == nil && p.kind != want {
		err = mistake(fmt.Sprintf("%s after %s", describe(p.kind), e.Op), describe(want))
	}
	return p, err
}

// operators are the binary ones, by the kind of token that the evaluator has for them.
var operators = map[token.Token]govaluate.TokenKind{
	token.LAND: govaluate.LOGICALOP, token.LOR: govaluate.LOGICALOP,
	token.LSS: govaluate.COMPARATOR, token.LEQ: govaluate.COMPARATOR, token.GTR: govaluate.COMPARATOR, token.GEQ: govaluate.COMPARATOR,
	token.EQL: govaluate.COMPARATOR, token.NEQ: govaluate.COMPARATOR,
	token.ADD: govaluate.MODIFIER, token.SUB: govaluate.MODIFIER, token.MUL: govaluate.MODIFIER, token.QUO: govaluate.MODIFIER,
}

func (c *checker) binary(e *ast.BinaryExpr) (part, error) {
	kind, known := operators[e.Op]
	if !known {
		return part{}, mistake(fmt.Sprintf("%q in %q", e.Op, c.written(e)), vocabulary)
	}
	left, err := c.part(e.X)
	if err != nil {
		return part{}, err
	}
	c.put(kind, e.Op.String())
	right, err := c.part(e.Y)
	if err != nil {
		return part{}, err
	}
	beside := fmt.Sprintf("%s %s %s", describe(left.kind), e.Op, describe(right.kind))
	switch kind {
	case govaluate.LOGICALOP:
		if left.kind != economics.Truth || right.kind != economics.Truth {
			return part{}, mistake(beside, "yes-or-no on both sides")
		}
		return part{kind: economics.Truth}, nil
	case govaluate.COMPARATOR:
		if inner, ok := e.X.(*ast.BinaryExpr); ok && operators[inner.Op] == govaluate.COMPARATOR {
			return part{}, mistake("a second comparison "+e.Op.String(), "&& between two comparisons")
		}
		return part{kind: economics.Truth}, compared(e.Op, left, right)
	}
	if left.kind != economics.Number || right.kind != economics.Number {
		return part{}, mistake(beside, "numbers")
	}
	p := part{kind: economics.Number, largest: left.largest + right.largest}
	switch e.Op {
	case token.MUL:
		p.largest = left.largest * right.largest
	case token.QUO:
		// A fact can be zero; 0/0 makes every comparison false in silence.
		if !right.written || right.largest == 0 {
			return part{}, mistake("a division by something that may be zero", "a written number, or multiply the other side")
		}
		p.largest = left.largest / right.largest
	}
	if math.IsInf(p.largest, 0) {
		return part{}, mistake("a product that could grow without bound", "fewer factors")
	}
	return p, nil
}

// compared says what forbids a comparison, nil when nothing does.
func compared(op token.Token, left, right part) error {
	equality := op == token.EQL || op == token.NEQ
	switch {
	case left.kind != right.kind:
		return mistake(fmt.Sprintf("%s %s %s", describe(left.kind), op, describe(right.kind)), "the same kind on both sides")
	case left.kind == economics.Number && equality:
		return mistake(op.String()+" between numbers", "<, <=, > or >=, because sums are not exact")
	case left.kind != economics.Number && !equality:
		return mistake(op.String()+" between words or truths", "== or !=")
	case left.kind != economics.Word:
		return nil
	}
	fact, word := left, right
	if fact.set == "" {
		fact, word = right, left
	}
	if fact.set == "" || word.literal == "" {
		return mistake("a comparison of two facts or of two quoted words", "a fact and a quoted word")
	}
	if !oneWordOf(fact.set, word.literal) {
		return mistake("'"+word.literal+"'", "one of: "+fact.set+didYouMean(word.literal, strings.Fields(fact.set)))
	}
	return nil
}
