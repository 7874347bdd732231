package wizard

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"coldreckon/wizard/questions"
)

// plain asks with lines of text alone, so that it works through pipes and on
// simple terminals, and reads well aloud.
type plain struct {
	in    io.Reader
	out   io.Writer
	width func() int
	fault error // of writing, kept until somebody can be told
	asked int   // answers so far
}

// mostAsked is how many answers are taken in one conversation. A person gives
// some hundred; an input that never ends would go on for ever.
const mostAsked = 1000

// NewPlain gives the line prompter. It takes no byte of in beyond the line
// break of the answer it waits for, and wraps what it writes to the columns that
// width gives, 20 to 90 of them.
func NewPlain(in io.Reader, out io.Writer, width func() int) Prompter {
	return &plain{in: in, out: out, width: width}
}

// forget drops what was typed before it was asked for, on a terminal.
func (p *plain) forget() {
	if f, ok := p.in.(withDescriptor); ok && isTerminal(f) {
		dropTyped(f.Fd())
	}
}

func (p *plain) Say(text string) { p.write("\n" + wrap(text, p.width()) + "\n") }

func (p *plain) write(text string) {
	if _, err := io.WriteString(p.out, text); err != nil && p.fault == nil {
		p.fault = fmt.Errorf("writing the questions: %w", err)
	}
}

// note says something that belongs to the question just asked.
func (p *plain) note(text string) { p.write(wrap(text, p.width()) + "\n") }

func (p *plain) Line(ctx context.Context, q Question) (string, error) {
	if q.Why != "" {
		p.Say(q.Why)
	}
	p.Say(q.Text)
	if q.Enter != "" {
		p.note("Enter " + q.Enter + ".")
	}
	for {
		text, err := p.answer(ctx)
		if err != nil || text == "" {
			return text, err
		}
		if text == "?" {
			p.note(q.Help)
			continue
		}
		if q.Check != nil {
			if err := q.Check(text); err != nil {
				p.note(err.Error())
				continue
			}
		}
		return text, nil
	}
}

func (p *plain) Choose(ctx context.Context, q Question, choices []Choice, enter int) (int, error) {
	if q.Why != "" {
		p.Say(q.Why)
	}
	p.Say(q.Text)
	if q.Search {
		p.note("Type part of a name. Enter: " + choices[enter].shown() + ".")
	} else {
		p.list(choices, enter)
	}
	shown := choices
	for {
		text, err := p.answer(ctx)
		switch {
		case err != nil:
			return 0, err
		case text == "":
			return enter, nil
		case text == "?":
			p.note(q.Help)
			p.list(choices, enter)
			shown = choices
			continue
		}
		found := match(shown, text)
		if len(found) == 0 && len(shown) < len(choices) {
			shown = choices
			found = match(shown, text)
		}
		switch {
		case len(found) == 1:
			only := shown[found[0]].Label
			return slices.IndexFunc(choices, func(c Choice) bool { return c.Label == only }), nil
		case len(found) == 0:
			hint := "Type ? to hear what you can answer."
			if i, ok := nearest(choices, text); ok {
				hint = fmt.Sprintf("Did you mean %s?", choices[i].Label)
			}
			p.note(fmt.Sprintf("%q is none of the answers. %s", shorten(text, 40), hint))
		case len(found) > mostMatches:
			p.note(fmt.Sprintf("%d names match. Type more of it.", len(found)))
		default:
			shown = pick(shown, found)
			p.list(shown, -1)
		}
	}
}

// mostMatches is how many names are read out before more letters are asked for.
const mostMatches = 12

// list reads the choices out with their numbers; enter is the one Enter takes.
func (p *plain) list(choices []Choice, enter int) {
	heading := ""
	for i, c := range choices {
		if c.Heading != heading {
			heading = c.Heading
			p.note(heading + ":")
		}
		line := fmt.Sprintf("  %d. %s", i+1, c.shown())
		if i == enter {
			line += " (Enter)"
		}
		p.note(line)
	}
}

func pick(choices []Choice, indices []int) []Choice {
	var picked []Choice
	for _, i := range indices {
		picked = append(picked, choices[i])
	}
	return picked
}

// answer waits for one line. "<" and "back" give ErrBack.
func (p *plain) answer(ctx context.Context) (string, error) {
	for {
		p.write("Answer: ")
		if p.fault != nil {
			return "", p.fault
		}
		if p.asked++; p.asked > mostAsked {
			return "", ErrNoEnd
		}
		line, err := p.readLine(ctx)
		if err != nil {
			p.write("\n")
			return "", err
		}
		text, err := clean(line)
		if err != nil {
			p.note(err.Error())
			continue
		}
		if goesBack(text) {
			return "", ErrBack
		}
		return text, nil
	}
}

func goesBack(text string) bool { return text == "<" || strings.EqualFold(text, "back") }

// longestLine bounds an answer, in bytes.
const longestLine = 2000

// refusal is what is said of an answer that cannot be taken, in full sentences:
// it is shown to the owner as it stands.
type refusal string

func (s refusal) Error() string { return string(s) }

// clean brings a line read to the text of an answer.
func clean(line []byte) (string, error) {
	if len(line) > longestLine {
		return "", refusal(fmt.Sprintf("That answer is too long. At most %d letters fit.", longestLine))
	}
	text := strings.TrimSpace(strings.TrimPrefix(strings.ToValidUTF8(string(line), "\uFFFD"), "\uFEFF"))
	if strings.ContainsFunc(text, questions.Steers) || strings.ContainsRune(text, '\uFFFD') {
		return "", refusal("There were keys in that answer that are no letters. Please type it again.")
	}
	return text, nil
}

// readLine reads up to the next line break and not a byte further. The last
// line of the input needs none. It gives up when the context is done; the
// reading itself cannot be called off, so nothing may be read after that.
func (p *plain) readLine(ctx context.Context) ([]byte, error) {
	type result struct {
		line []byte
		err  error
	}
	if ctx.Err() != nil {
		return nil, ErrCancelled
	}
	done := make(chan result, 1)
	go func() {
		var line []byte
		one := make([]byte, 1)
		for {
			n, err := p.in.Read(one)
			if n == 1 && one[0] == '\n' {
				done <- result{line, nil}
				return
			}
			if n == 1 && len(line) <= longestLine {
				line = append(line, one[0])
			}
			switch {
			case err == io.EOF && len(line) > 0:
				done <- result{line, nil}
				return
			case err == io.EOF:
				done <- result{nil, ErrInputEnded}
				return
			case err != nil:
				done <- result{nil, fmt.Errorf("reading the answer: %w", err)}
				return
			}
		}
	}()
	select {
	case r := <-done:
		return r.line, r.err
	case <-ctx.Done():
		return nil, ErrCancelled
	}
}
