package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
)

// checker walks the words of an expression once, by the grammar
//
//	either  = both { "||" both }
//	both    = test { "&&" test }
//	test    = sum [ ("<" | "<=" | ">" | ">=" | "==" | "!=") sum ]
//	sum     = product { ("+" | "-") product }
//	product = factor { ("*" | "/") factor }
//	factor  = [ "-" | "!" ] single
//	single  = number | fact | quoted word | "true" | "false" | "(" either ")"
//
// and gives each part its kind. Both sides of && and || are walked, so a wrong
// name cannot hide behind a side that is seldom reached.
type checker struct {
	words []string
	next  int
	depth int
	used  map[string]bool
	facts []economics.Fact
}

// part is what is known of a part of an expression before any fact is.
type part struct {
	kind    economics.Kind
	largest float64 // of a Number: no value exceeds it in magnitude
	written bool    // of a Number: a number written in the expression
	set     string  // of a Word fact: the words it can take
	literal string  // of a quoted word
}

// whole checks the complete expression.
func (c *checker) whole() (part, error) {
	p, err := c.either()
	if err != nil {
		return part{}, err
	}
	if c.next < len(c.words) {
		if isEnglish(c.words[c.next]) {
			return part{}, englishOperator(c.words[c.next])
		}
		return part{}, mistake(fmt.Sprintf("%q after %q", c.words[c.next], c.words[c.next-1]), "an operator or the end")
	}
	return p, nil
}

func (c *checker) either() (part, error) { return c.logical("||", c.both) }
func (c *checker) both() (part, error)   { return c.logical("&&", c.test) }

func (c *checker) logical(operator string, operand func() (part, error)) (part, error) {
	left, err := operand()
	for err == nil && c.take(operator) {
		var right part
		if right, err = operand(); err != nil {
			break
		}
		if left.kind != economics.Truth || right.kind != economics.Truth {
			err = mistake(fmt.Sprintf("%s beside %s", describe(notTruth(left, right)), operator), "yes-or-no on both sides")
		}
	}
	return left, err
}

// notTruth gives the kind of the first of two parts that is not a truth.
func notTruth(left, right part) economics.Kind {
	if left.kind != economics.Truth {
		return left.kind
	}
	return right.kind
}

func (c *checker) test() (part, error) {
	left, err := c.sum()
	if err != nil {
		return part{}, err
	}
	operator := c.takeAny("<", "<=", ">", ">=", "==", "!=")
	if operator == "" {
		return left, nil
	}
	right, err := c.sum()
	if err != nil {
		return part{}, err
	}
	if again := c.takeAny("<", "<=", ">", ">=", "==", "!="); again != "" {
		return part{}, mistake(fmt.Sprintf("a second comparison %q", again), "&& between two comparisons")
	}
	if left.kind != right.kind {
		return part{}, mistake(fmt.Sprintf("%s %s %s", describe(left.kind), operator, describe(right.kind)), "the same kind on both sides")
	}
	equality := operator == "==" || operator == "!="
	switch {
	case left.kind == economics.Number && equality:
		return part{}, mistake(fmt.Sprintf("%s between numbers", operator), "<, <=, > or >=, because sums are not exact")
	case left.kind != economics.Number && !equality:
		return part{}, mistake(fmt.Sprintf("%s between words or truths", operator), "== or !=")
	case left.kind == economics.Word:
		if err := comparableWords(left, right); err != nil {
			return part{}, err
		}
	}
	return part{kind: economics.Truth}, nil
}

// comparableWords wants one fact and one quoted word that the fact can take.
func comparableWords(left, right part) error {
	fact, word := left, right
	if fact.set == "" {
		fact, word = right, left
	}
	if fact.set == "" || word.literal == "" {
		return mistake("a comparison of two facts or of two quoted words", "a fact and a quoted word")
	}
	if !oneWordOf(fact.set, word.literal) {
		return mistake(fmt.Sprintf("'%s'", word.literal), fmt.Sprintf("one of: %s%s", fact.set, didYouMean(word.literal, strings.Fields(fact.set))))
	}
	return nil
}

func (c *checker) sum() (part, error) {
	return c.arithmetic(c.product, func(_ string, left, right part) (part, error) {
		return part{kind: economics.Number, largest: left.largest + right.largest}, nil
	}, "+", "-")
}

func (c *checker) product() (part, error) {
	return c.arithmetic(c.factor, func(operator string, left, right part) (part, error) {
		if operator == "*" {
			return part{kind: economics.Number, largest: left.largest * right.largest}, nil
		}
		// A fact can be zero; 0/0 makes every comparison false in silence.
		if !right.written || right.largest == 0 {
			return part{}, mistake("a division by something that may be zero", "a written number, or multiply the other side")
		}
		return part{kind: economics.Number, largest: left.largest / right.largest}, nil
	}, "*", "/")
}

func (c *checker) arithmetic(operand func() (part, error), join func(string, part, part) (part, error), operators ...string) (part, error) {
	left, err := operand()
	if err != nil {
		return part{}, err
	}
	for operator := c.takeAny(operators...); operator != ""; operator = c.takeAny(operators...) {
		right, err := operand()
		if err != nil {
			return part{}, err
		}
		if left.kind != economics.Number || right.kind != economics.Number {
			return part{}, mistake(fmt.Sprintf("%s %s %s", describe(left.kind), operator, describe(right.kind)), "numbers")
		}
		if left, err = join(operator, left, right); err != nil {
			return part{}, err
		}
		if math.IsInf(left.largest, 0) {
			return part{}, mistake("a product that could grow without bound", "fewer factors")
		}
	}
	return left, nil
}

func (c *checker) factor() (part, error) {
	sign := c.takeAny("-", "!")
	p, err := c.single()
	if err != nil || sign == "" {
		return p, err
	}
	want := economics.Number
	if sign == "!" {
		want = economics.Truth
	}
	if p.kind != want {
		return part{}, mistake(fmt.Sprintf("%s after %s", describe(p.kind), sign), describe(want))
	}
	return p, nil
}

func (c *checker) single() (part, error) {
	if c.next == len(c.words) {
		return part{}, mistake("the end", "a fact, a number or a quoted word")
	}
	word := c.words[c.next]
	c.next++
	switch first := word[0]; {
	case word == "(":
		return c.bracket()
	case word == "true" || word == "false":
		return part{kind: economics.Truth}, nil
	case isDigit(first):
		number, err := literalNumber(word)
		return part{kind: economics.Number, largest: number, written: true}, err
	case first == '\'' || first == '"':
		return part{kind: economics.Word, literal: word[1 : len(word)-1]}, nil
	case 'a' <= first && first <= 'z':
		return c.fact(word)
	}
	return part{}, mistake(fmt.Sprintf("%q", word), "a fact, a number or a quoted word")
}

func (c *checker) bracket() (part, error) {
	if c.depth++; c.depth > maxBracketDepth {
		return part{}, mistake(fmt.Sprintf("more than %d brackets inside each other", maxBracketDepth), "fewer")
	}
	p, err := c.either()
	if err != nil {
		return part{}, err
	}
	if !c.take(")") {
		return part{}, mistake("no closing bracket", ")")
	}
	c.depth--
	return p, nil
}

// fact looks a name up in the vocabulary and notes that it is read.
func (c *checker) fact(name string) (part, error) {
	fact, known := factNamed(name)
	if !known {
		switch {
		case isEnglish(name):
			return part{}, englishOperator(name)
		case c.next < len(c.words) && c.words[c.next] == "(":
			return part{}, mistake(fmt.Sprintf("the function %q", name), "no functions: what needs one is a fact of its own")
		}
		return part{}, mistake(fmt.Sprintf("%q", name), fmt.Sprintf("the name of a fact%s", didYouMean(name, factNames())))
	}
	if !c.used[name] {
		c.used[name] = true
		c.facts = append(c.facts, fact)
	}
	p := part{kind: fact.Kind}
	switch fact.Kind {
	case economics.Number:
		p.largest = maxFact
	case economics.Word:
		p.set = fact.Unit
	}
	return p, nil
}

// isEnglish reports whether a name is an operator of other languages.
func isEnglish(name string) bool { return slices.Contains([]string{"and", "or", "not", "in"}, name) }

func englishOperator(name string) error {
	return mistake(fmt.Sprintf("%q", name), "&& for and, || for or, ! for not, == with || for in")
}

// take steps over the given word when it is next.
func (c *checker) take(word string) bool { return c.takeAny(word) != "" }

// takeAny steps over the next word when it is one of those given, and gives it.
func (c *checker) takeAny(words ...string) string {
	if c.next < len(c.words) {
		for _, word := range words {
			if c.words[c.next] == word {
				c.next++
				return word
			}
		}
	}
	return ""
}
