package wizard

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/AlecAivazis/survey/v2"
	"github.com/creack/pty"
	"golang.org/x/term"

	"coldreckon/economics"
)

const (
	enter = "\r"
	down  = "\x1b[B"
)

// A whole conversation on a terminal, with a way back, help, lists to tick, and a
// change in the list that is confirmed, at three widths.
func TestStoryOnATerminal(t *testing.T) {
	story := lines(essentials[:2], []line{{"When do you sleep aboard", "<"}, {"Where do you cruise", "chesapeake"},
		{"When do you sleep aboard", "?"}, {"Typical: weekends in summer", essentials[2].answer},
		{"How many of you", "2"}}, essentials[4:], []line{{aboardAsked, "3, 10"}, {"pushed open from inside", "no"}, {goingBy, "people aboard"}, {"How many of you", "3"}, {goingBy, ""}})
	for _, columns := range []uint16{60, 80, 200} {
		t.Run(fmt.Sprint(columns), func(t *testing.T) {
			t.Parallel()
			c := newConsole(t, columns)
			var kept string
			opts := options(t, c.prompter(map[string]string{"TERM": "xterm", "NO_COLOR": "1"}), fresh(t), &kept)
			done := make(chan error, 1)
			go func() { done <- run(opts) }()
			for _, l := range story {
				c.expect(l.expect)
				c.send(l.answer + enter)
			}
			c.ends(done)
			for key, value := range map[string]string{"units": "us", "cruising.ground": "chesapeake-bay", "cruising.nights": "weekends in summer",
				"cruising.crew": "3", "food.cool_is_enough": "no", "box.volume": "3.2 cu ft", "power.battery": "100", "money.budget": "$2,000",
				"safety.children": "yes", "safety.latch_opens_inside": "no", "safety.co_alarm": "yes", "safety.fish": "no"} {
				if got := answerIn(t, kept, key); got != value {
					t.Errorf("%s: found %q, expected %q", key, got, value)
				}
			}
			if shown := c.text(0); strings.Contains(c.shown.String(), "\x1b[3") || strings.Contains(c.shown.String(), "\x1b[0;3") {
				t.Errorf("NO_COLOR, but colours in:\n%s", shown)
			}
		})
	}
}

// Enter takes what the letters mean best, wherever the highlight stood before.
func TestListTakesTheBestMatch(t *testing.T) {
	yesNo := []Choice{{Label: "yes", Also: []string{"y"}}, {Label: "no", Also: []string{"n"}}, {Label: dontKnow, Also: []string{"unknown", "not sure"}}}
	states := []Choice{{Label: "dry"}, {Label: "damp"}, {Label: "wet"}, {Label: "soaked: water runs out"}, {Label: "no insulation there"}, {Label: dontKnow, Note: "I assume: damp"}}
	volts := []Choice{{Label: "12 V"}, {Label: "24 V"}}
	var many []Choice
	for i := range 40 {
		many = append(many, Choice{Label: fmt.Sprintf("Bay %c%c", 'a'+i%4, 'a'+i/4)})
	}
	for _, tt := range []struct {
		name    string
		choices []Choice
		search  bool
		enter   int
		keys    string
		says    string
		want    string
	}{
		{"a word that another ends with", yesNo, false, 2, "no" + enter, "2. no", "no"},
		{"its short form", yesNo, false, 2, "n" + enter, "2. no", "no"},
		{"the start of a word", yesNo, false, 0, "d" + enter, "", dontKnow},
		{"a start before the middle", states, false, 5, "w" + enter, "", "wet"},
		{"the middle of a word", states, false, 5, "am" + enter, "", "damp"},
		{"a note is no word", states, false, 0, "take" + enter + "\x17" + enter, "nothing like that here", "dry"},
		{"a number", states, false, 5, "4" + enter, "4. soaked", "soaked: water runs out"},
		{"a figure of a label", volts, false, 0, "24" + enter, "2. 24 V", "24 V"},
		{"letters taken back", states, false, 5, "we\b\b" + enter, "", dontKnow},
		{"down among those found", states, false, 0, "d" + down + enter, "", "damp"},
		{"up past the start", states, false, 0, "\x1b[A\x1b[A" + enter, "", dontKnow},
		{"back", states, false, 0, "<" + enter, "", "back"},
		{"what Enter takes stands first to search in", many, true, 20, enter, "29 more below; type a few letters", "Bay af"},
		{"a part of a name", many, true, 20, "bc" + enter, "", "Bay bc"},
		{"the number of a line", many, true, 20, "2" + enter, "", "Bay aa"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := newConsole(t, 80)
			p := c.prompter(map[string]string{"TERM": "xterm", "NO_COLOR": "1"})
			done := make(chan string, 1)
			go func() {
				i, err := p.Choose(context.Background(), Question{Text: "Well?", Help: "help", Search: tt.search}, tt.choices, tt.enter)
				switch {
				case errors.Is(err, ErrBack):
					done <- "back"
				case err != nil:
					done <- err.Error()
				default:
					done <- tt.choices[i].Label
				}
			}()
			c.expect("Well?")
			c.send(tt.keys)
			select {
			case got := <-done:
				if got != tt.want {
					t.Errorf("found %q, expected %q", got, tt.want)
				}
			case <-time.After(patience):
				t.Fatalf("still waiting:\n%s", c.text(0))
			}
			c.waits(tt.says, func() bool { return strings.Contains(c.text(0), tt.says) })
		})
	}
}

func TestTerminalStops(t *testing.T) {
	for _, tt := range []struct {
		name string
		ask  func(context.Context, Prompter) error
		keys string
		want error
	}{
		{"interrupt key at a line", askLine, "abc\x03", ErrCancelled},
		{"interrupt key at a list", askList, "\x03", ErrCancelled},
		{"end of input at a list without a match", askList, "zzz\x04", ErrInputEnded},
		{"signal at a line", askLine, "", ErrCancelled},
		{"signal at a list", askList, "", ErrCancelled},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := newConsole(t, 80)
			before, err := term.GetState(int(c.tty.Fd()))
			if err != nil {
				t.Fatal(err)
			}
			p := c.prompter(map[string]string{"TERM": "xterm"})
			ctx, cancel := context.WithCancel(context.Background())
			defer cancel()
			done := make(chan error, 1)
			go func() { done <- tt.ask(ctx, p) }()
			c.expect("Well?")
			if tt.keys == "" {
				cancel()
			} else {
				c.send(tt.keys)
			}
			select {
			case err := <-done:
				if !errors.Is(err, tt.want) {
					t.Errorf("found %v, expected %v", err, tt.want)
				}
			case <-time.After(patience):
				t.Fatal("still waiting")
			}
			after, err := term.GetState(int(c.tty.Fd()))
			if err != nil || *after != *before {
				t.Errorf("the terminal is not as it was (%v)", err)
			}
			if tt.want == ErrCancelled {
				c.waits("the cursor again", func() bool {
					c.mu.Lock()
					defer c.mu.Unlock()
					return strings.LastIndex(c.shown.String(), "\x1b[?25l") <= strings.LastIndex(c.shown.String(), "\x1b[?25h")
				})
			}
		})
	}
}

// However the window was resized while a question stands, its help comes with
// the whole question under it: after "?" nothing is left to where the library
// thinks that the old one stands.
func TestHelpAfterResize(t *testing.T) {
	long := Question{Text: "When do you sleep aboard, and how often do you shop? Such as: weekends in summer and all of August.", Help: "Typical: weekends."}
	for name, ask := range map[string]func(Prompter) error{
		"a line": func(p Prompter) error { _, err := p.Line(context.Background(), long); return err },
		"a list": func(p Prompter) error { _, err := p.Choose(context.Background(), long, colours, 0); return err },
	} {
		t.Run(name, func(t *testing.T) {
			c := newConsole(t, 80)
			p := c.prompter(map[string]string{"TERM": "xterm", "NO_COLOR": "1"})
			done := make(chan error, 1)
			go func() { done <- ask(p) }()
			c.expect("all of August. - Answer:")
			for _, rows := range []uint16{60, 24, 40} {
				if err := pty.Setsize(c.master, &pty.Winsize{Rows: rows, Cols: 80}); err != nil {
					t.Fatal(err)
				}
			}
			from := c.heeded
			c.send("?")
			if name == "a line" {
				c.send(enter)
			}
			c.expect("all of August. - Answer:")
			if after := c.text(from); !strings.Contains(after, long.Help+" When do you sleep aboard") {
				t.Errorf("expected the help and the question under it, was shown:\n%s", after)
			}
			c.send("red" + enter)
			if err := <-done; err != nil {
				t.Error(err)
			}
		})
	}
}

// What is typed while it reckons answers no question: the next one waits.
func TestKeysTypedWhileReckoningAreDropped(t *testing.T) {
	for _, plain := range []string{"", "1"} {
		t.Run("plain "+plain, func(t *testing.T) {
			t.Parallel()
			c := newConsole(t, 80)
			p := c.prompter(map[string]string{"TERM": "xterm", "NO_COLOR": "1", "ACCESSIBLE": plain})
			var kept string
			opts := options(t, p, fresh(t), &kept)
			reckoning, goOn := make(chan bool), make(chan bool)
			quick := opts.Reckon
			once := sync.OnceFunc(func() { reckoning <- true; <-goOn })
			opts.Reckon = func(b economics.Boat, futures int) (*economics.Reckoning, error) {
				if answered(&b, "money.budget") {
					once()
				}
				return quick(b, futures)
			}
			done := make(chan error, 1)
			go func() { done <- run(opts) }()
			for _, l := range essentials {
				c.expect(l.expect)
				c.send(l.answer + enter)
			}
			<-reckoning
			c.send("3, 10" + enter + "2" + enter)
			time.Sleep(500 * time.Millisecond) // until the terminal has them
			goOn <- true
			c.expect(aboardAsked)
			c.send("none" + enter)
			c.expect(goingBy)
			c.send(enter)
			c.ends(done)
			if got := answerIn(t, kept, "safety.children"); got != "no" {
				t.Errorf("children %q by keys that were struck before the question", got)
			}
		})
	}
}

// broken is a prompt that the library fails on.
type broken struct{}

func (broken) Prompt(*survey.PromptConfig) (any, error) { panic("a riddle") }
func (broken) Cleanup(*survey.PromptConfig, any) error  { return nil }
func (broken) Error(*survey.PromptConfig, error) error  { return nil }

// A panic of the library is an error, and the terminal is restored. Guards the
// recover in ask.
func TestPromptPanicBecomesAnError(t *testing.T) {
	c := newConsole(t, 80)
	before, err := term.GetState(int(c.tty.Fd()))
	if err != nil {
		t.Fatal(err)
	}
	l := lists{in: c.tty, out: c.tty, width: func() int { return 80 }}
	var answer string
	if err := l.ask(t.Context(), broken{}, &answer); err == nil || !strings.Contains(err.Error(), "a riddle") {
		t.Errorf("error %v", err)
	}
	after, err := term.GetState(int(c.tty.Fd()))
	if err != nil || *after != *before {
		t.Errorf("the terminal is not as it was (%v)", err)
	}
}

func askLine(ctx context.Context, p Prompter) error {
	_, err := p.Line(ctx, Question{Text: "Well?", Help: "help"})
	return err
}

func askList(ctx context.Context, p Prompter) error {
	_, err := p.Choose(ctx, Question{Text: "Well?", Help: "help"}, colours, 0)
	return err
}

func TestNewPrompter(t *testing.T) {
	c := newConsole(t, 80)
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	io.WriteString(w, "red\n")
	w.Close()
	for _, tt := range []struct {
		name    string
		in, out *os.File
		env     map[string]string
		plain   bool
		want    string
	}{
		{"a terminal", c.tty, c.tty, map[string]string{"TERM": "xterm"}, false, "lists"},
		{"a simple terminal", c.tty, c.tty, map[string]string{"TERM": "dumb"}, false, "plain"},
		{"for a screen reader", c.tty, c.tty, map[string]string{"TERM": "xterm", "ACCESSIBLE": "1"}, false, "plain"},
		{"plain asked for", c.tty, c.tty, map[string]string{"TERM": "xterm"}, true, "plain"},
		{"a pipe in", r, c.tty, map[string]string{"TERM": "xterm"}, false, "none"},
		{"a pipe out", c.tty, w, map[string]string{"TERM": "xterm"}, false, "none"},
		{"a pipe in, plain asked for", r, c.tty, nil, true, "plain"},
	} {
		p, err := NewPrompter(tt.in, tt.out, Terminal{Getenv: func(name string) string { return tt.env[name] }, Plain: tt.plain})
		got := "none"
		switch p.(type) {
		case *lists:
			got = "lists"
		case *plain:
			got = "plain"
		}
		if got != tt.want || (err != nil) != (tt.want == "none") || err != nil && !errors.Is(err, ErrNoTerminal) {
			t.Errorf("%s: found %s, %v; expected %s", tt.name, got, err, tt.want)
		}
	}
	if rest, _ := io.ReadAll(r); string(rest) != "red\n" {
		t.Errorf("left %q in the pipe, expected all of it", rest)
	}
}
