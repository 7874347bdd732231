package questions

import (
	"coldreckon/economics/quantity"
	"coldreckon/rules/strict"
)

// Fault is one thing wrong with the answers, with its place when it was read
// from a file.
type Fault = strict.Fault

// faultOf places a quantity's error at a key and an input.
func faultOf(key string, in Input, err error) Fault {
	f := Fault{Line: in.Line, Column: in.Column, Key: key, Wrong: err.Error()}
	switch e := err.(type) {
	case *quantity.Error:
		f.Wrong, f.Instead, f.Hint = e.Wrong, "Give "+e.Want, e.Hint
	case Fault:
		e.Key, e.Line, e.Column = key, in.Line, in.Column
		return e
	}
	return f
}

// NoSuchKey is the fault of a key that no question has.
func NoSuchKey(key string, line, column int) Fault {
	return Fault{Line: line, Column: column, Key: quantity.Clip(key, 60), Wrong: "no question has this key",
		Instead: "'coldreckon questions' lists those there are", Hint: DidYouMean(key)}
}

// Input is an answer as given, before it is understood: a text, a list or
// pairs of names and inputs, with its place in the file it came from.
type Input struct {
	Text  string
	List  []Input
	Pairs []Pair
	Shape Shape

	Line, Column int // from 1; 0 when not from a file
}

// fault is one of the input, at its place.
func (in Input) fault(wrong, instead string) Fault {
	return Fault{Line: in.Line, Column: in.Column, Wrong: wrong, Instead: instead}
}

// not is the fault of an input of the wrong shape.
func (in Input) not(want string) Fault {
	return in.fault(in.Shape.String()+" stands here", "Give "+want)
}

// Shape tells which of an Input's parts holds the answer.
type Shape int

// The shapes of an Input.
const (
	Scalar Shape = iota // Text
	Listed              // List
	Paired              // Pairs
)

// String names the shape in the words of a Fault.
func (s Shape) String() string { return [...]string{"a text", "a list", "a group of keys"}[s] }

// Pair is one named part of an Input.
type Pair struct {
	Name  Input // a Scalar
	Value Input
}

// Word makes the input of a plain text, from no file.
func Word(text string) Input { return Input{Text: text} }
