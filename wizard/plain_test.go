package wizard

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"unicode/utf8"
)

var colours = []Choice{{Label: "red"}, {Label: "green", Also: []string{"verde"}}, {Label: "grey"}, {Label: "don't know", Note: "I assume: red"}}

func even(text string) error {
	if len(text)%2 != 0 {
		return errors.New("That was odd.")
	}
	return nil
}

func TestPlain(t *testing.T) {
	long := strings.Repeat("x", longestLine+1)
	for _, tt := range []struct {
		name, in string
		line     bool // ask for a line, not for a choice
		want     string
		err      error
		says     string
	}{
		{"a number", "2\n", false, "green", nil, ""},
		{"a word", "GREY\n", false, "grey", nil, ""},
		{"another word", "Verde\n", false, "green", nil, ""},
		{"the start of a word", "re\n", false, "red", nil, ""},
		{"a start that fits two", "gr\n1\n", false, "green", nil, "  2. grey\n"},
		{"another after a start that fits two", "gr\nred\n", false, "red", nil, ""},
		{"a word of a note is no answer", "take\nred\n", false, "red", nil, `"take" is none of the answers.`},
		{"a slip", "gren\ngreen\n", false, "green", nil, "Did you mean green?"},
		{"a number too far", "5\n\n", false, "don't know", nil, "none of the answers"},
		{"nothing", "\n", false, "don't know", nil, "4. don't know - I assume: red (Enter)"},
		{"apostrophes", "don’t know\n", false, "don't know", nil, ""},
		{"help", "?\n2\n", false, "green", nil, "the help"},
		{"back", "<\n", false, "", ErrBack, ""},
		{"the end", "", false, "", ErrInputEnded, ""},
		{"the end after a slip", "blue\n", false, "", ErrInputEnded, ""},
		{"a line", "  two words \n", true, "two words", nil, "Enter keeps it."},
		{"a line of Windows", "abcd\r\n", true, "abcd", nil, ""},
		{"a last line without a break", "abcd", true, "abcd", nil, ""},
		{"a byte order mark", "\uFEFFabcd\n", true, "abcd", nil, ""},
		{"a line refused", "abc\nabcd\n", true, "abcd", nil, "That was odd."},
		{"an empty line", "\n", true, "", nil, ""},
		{"help at a line", "?\nab\n", true, "ab", nil, "the help"},
		{"back from a line", "Back\n", true, "", ErrBack, ""},
		{"arrow keys", "\x1b[A\nab\n", true, "ab", nil, "keys in that answer"},
		{"bytes that are no text", "\xff\xfe\nab\n", true, "ab", nil, "keys in that answer"},
		{"far too long", long + "\nab\n", true, "ab", nil, "too long"},
		{"letters of other scripts", "Ἀργώ\n", true, "Ἀργώ", nil, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var out bytes.Buffer
			p := NewPlain(strings.NewReader(tt.in), &out, func() int { return 80 })
			q := Question{Text: "Well?", Help: "the help", Enter: "keeps it"}
			var got string
			var err error
			if tt.line {
				q.Check = even
				if tt.name == "a line" || tt.name == "letters of other scripts" {
					q.Check = nil
				}
				got, err = p.Line(context.Background(), q)
			} else {
				var i int
				if i, err = p.Choose(context.Background(), q, colours, 3); err == nil {
					got = colours[i].Label
				}
			}
			if got != tt.want || !errors.Is(err, tt.err) {
				t.Errorf("found %q, %v; expected %q, %v", got, err, tt.want, tt.err)
			}
			if !strings.Contains(out.String(), tt.says) {
				t.Errorf("did not say %q but:\n%s", tt.says, out.String())
			}
		})
	}
}

// Where there are many choices a part of a name finds one; the list is read
// out only when asked for.
func TestPlainSearch(t *testing.T) {
	var many []Choice
	for i := range 40 {
		many = append(many, Choice{Label: fmt.Sprintf("Bay %c%c", 'a'+i%4, 'a'+i/4)})
	}
	many = append(many, Choice{Label: "Île d'Été"})
	for _, tt := range []struct{ in, want, says, not string }{
		{"bay ca\n", "Bay ca", "Type part of a name. Enter: Bay aa.", "1. Bay aa"},
		{"bay\nbay c\n3\n", "Bay cc", "40 names match", "1. Bay aa"},
		{"ile d'ete\n", "Île d'Été", "", ""},
		{"ete\n", "Île d'Été", "", ""},
		{"?\nbay bb\n", "Bay bb", "1. Bay aa", "2. Bay aa"},
		{"\n", "Bay aa", "", ""},
	} {
		var out bytes.Buffer
		p := NewPlain(strings.NewReader(tt.in), &out, func() int { return 80 })
		i, err := p.Choose(context.Background(), Question{Text: "Where?", Search: true}, many, 0)
		if err != nil || many[i].Label != tt.want {
			t.Errorf("%q: found %q, %v; expected %q", tt.in, many[i].Label, err, tt.want)
		}
		if said := out.String(); !strings.Contains(said, tt.says) || tt.not != "" && strings.Contains(said, tt.not) {
			t.Errorf("%q: said\n%s\nexpected %q and not %q", tt.in, said, tt.says, tt.not)
		}
	}
}

// What comes after an answer belongs to the next reader of the pipe.
func TestPlainLeavesTheRest(t *testing.T) {
	in := strings.NewReader("one\ntwo\nthree")
	p := NewPlain(in, io.Discard, func() int { return 80 })
	for _, want := range []string{"one", "two"} {
		if got, err := p.Line(context.Background(), Question{Text: "?"}); got != want || err != nil {
			t.Fatalf("found %q, %v, expected %q", got, err, want)
		}
	}
	rest, _ := io.ReadAll(in)
	if string(rest) != "three" {
		t.Errorf("left %q in the pipe, expected \"three\"", rest)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("closed") }

// An input that never ends is given up. Guards mostAsked: without it this never
// ends.
func TestPlainGivesUp(t *testing.T) {
	p := NewPlain(strings.NewReader(strings.Repeat("y\n", 2*mostAsked)), io.Discard, func() int { return 80 })
	if _, err := p.Choose(t.Context(), Question{Text: "Which?"}, []Choice{{Label: "one"}, {Label: "two"}}, 0); !errors.Is(err, ErrNoEnd) {
		t.Errorf("%v, want %v", err, ErrNoEnd)
	}
}

func TestPlainCannotWrite(t *testing.T) {
	in := strings.NewReader("one\n")
	if _, err := NewPlain(in, full{}, func() int { return 80 }).Line(context.Background(), Question{}); err == nil || in.Len() != 4 {
		t.Errorf("found %v with %d bytes left, expected an error and nothing read", err, in.Len())
	}
}

func TestWrap(t *testing.T) {
	text := "What does the box measure inside, length by width by height?\n  Typical: 18 x 22 x 16 in (450 x 550 x 400 mm) 船名は翻訳されません " + strings.Repeat("long", 30)
	for wide := narrowest; wide <= 200; wide++ {
		got := wrap(text, wide)
		for _, line := range strings.Split(got, "\n") {
			if n := columns(line); n > wide || n > widestProse {
				t.Errorf("at %d columns a line has %d: %q", wide, n, line)
			}
		}
		if squeeze(got) != squeeze(text) {
			t.Errorf("at %d columns the words changed:\n%s", wide, got)
		}
	}
	if got, want := wrap("  1. a b", 20), "  1. a b"; got != want {
		t.Errorf("found %q, expected %q", got, want)
	}
}

func squeeze(text string) string { return strings.Join(strings.Fields(text), "") }

// Unicode Standard Annex 11: ideographs take two columns. Combining marks take none.
func TestColumns(t *testing.T) {
	for text, want := range map[string]int{"boat": 4, "Été": 3, "E\u0301te\u0301": 3, "船": 2, "Лодка": 5, "½ °C": 4} {
		if got := columns(text); got != want {
			t.Errorf("%q: found %d columns, expected %d", text, got, want)
		}
	}
}

// Whatever is typed, the plain prompter comes to an end, says only what can be
// printed, and hands over only text that was checked.
func FuzzPlain(f *testing.F) {
	for _, seed := range []string{"2\n", "gr\n1\n", "?\n<\n", "\r\n", "\xff\n\x00\n", "don't know", "١\n", "grey\u0301\n", strings.Repeat("9", 3000) + "\n"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, in string) {
		for _, search := range []bool{false, true} {
			var out bytes.Buffer
			p := NewPlain(strings.NewReader(in), &out, func() int { return 60 })
			i, err := p.Choose(context.Background(), Question{Text: "Well?", Help: "help", Search: search}, colours, 3)
			if err == nil && (i < 0 || i >= len(colours)) {
				t.Errorf("chose %d of %d", i, len(colours))
			}
			text, err := p.Line(context.Background(), Question{Text: "Well?", Help: "help", Check: even})
			if err == nil && (even(text) != nil || !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\x1b\r\n")) {
				t.Errorf("handed over %q", text)
			}
			if err != nil && !errors.Is(err, ErrBack) && !errors.Is(err, ErrInputEnded) {
				t.Errorf("unexpected error %v", err)
			}
			if said := out.String(); !utf8.ValidString(said) || strings.ContainsAny(said, "\x00\x1b\r") {
				t.Errorf("said %q", said)
			}
		}
	})
}
