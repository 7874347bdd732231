package wizard

import (
	"context"
	"errors"

	"coldreckon/economics/quantity"
)

// What a prompter answers instead of an answer.
var (
	// ErrBack says that the person wants the question before this one.
	ErrBack = errors.New("back to the question before")
	// ErrCancelled says that the person, or a signal, stopped the questions.
	ErrCancelled = errors.New("stopped before the end")
	// ErrInputEnded says that the input ran out while a question was open.
	ErrInputEnded = errors.New("the input ended before the questions did")
	// ErrNoEnd says that more answers came than any conversation needs.
	ErrNoEnd = errors.New("a thousand answers have not brought the questions to an end")
	// ErrNoTerminal says that there is nobody to ask.
	ErrNoTerminal = errors.New("there is no terminal to ask questions on")
)

// Prompter puts questions to a person and brings back what they say.
//
// At every question "?" shows the help and "<" gives ErrBack. A cancelled
// context, or the interrupt key, gives ErrCancelled; after that the prompter
// must not be used again.
type Prompter interface {
	// Say tells something. Line breaks in it are kept; long lines are wrapped.
	Say(text string)
	// Line asks for a line of text. It comes back without spaces round it, and
	// empty when only Enter was pressed. Any other text has passed q.Check.
	Line(ctx context.Context, q Question) (string, error)
	// Choose asks for one of the choices and gives its index. Enter takes the
	// one at index enter.
	Choose(ctx context.Context, q Question, choices []Choice, enter int) (int, error)
}

// Question is what a prompter needs to know of one question.
type Question struct {
	Why   string // said before the question; "" for nothing
	Text  string // the question, one sentence
	Enter string // what Enter alone means, such as "if unsure: 100 L"; of a Line
	Help  string // shown on "?"

	// Check refuses a text with a sentence that says what is wrong; of a Line,
	// nil accepts everything.
	Check func(text string) error
	// Search tells that the choices are too many to read out: a part of a name
	// finds them.
	Search bool
}

// Choice is one answer to choose.
type Choice struct {
	Label   string   // what is shown; no two choices share one
	Note    string   // said after the label, and no word for it
	Also    []string // other words for it
	Heading string   // the part of the list it stands in, or ""
}

// shown is the label and what is said after it.
func (c Choice) shown() string {
	if c.Note == "" {
		return c.Label
	}
	return c.Label + " - " + c.Note
}

// local is a Prompter that says everything in the words of the owner's units.
type local struct {
	Prompter
	units func() quantity.System
}

func (l local) words(text string) string { return quantity.Local(text, l.units()) }

func (l local) question(q Question) Question {
	q.Why, q.Text, q.Enter, q.Help = l.words(q.Why), l.words(q.Text), l.words(q.Enter), l.words(q.Help)
	return q
}

func (l local) Say(text string) { l.Prompter.Say(l.words(text)) }

func (l local) Line(ctx context.Context, q Question) (string, error) {
	return l.Prompter.Line(ctx, l.question(q))
}

func (l local) Choose(ctx context.Context, q Question, choices []Choice, enter int) (int, error) {
	said := make([]Choice, len(choices))
	for i, c := range choices {
		said[i] = Choice{l.words(c.Label), l.words(c.Note), append([]string{c.Label}, c.Also...), l.words(c.Heading)}
	}
	return l.Prompter.Choose(ctx, l.question(q), said, enter)
}
