package wizard

import (
	"flag"
	"os"
	"strings"
	"testing"
	"unicode"

	"coldreckon/economics"
)

var update = flag.Bool("update", false, "write the golden records anew")

// firstTimer answers as somebody does who has owned a boat for a month.
var firstTimer = []line{
	{"Which units", "us"},
	{"Where do you cruise", "chesapeake"},
	{"How many nights a year", "weekends in summer and two weeks' holiday"},
	{"leaving home to coming back", "3"},
	{"How many of you", "2"},
	{"How much does the ice box hold", "3.2 cu ft"},
	{"How thick is the insulation", "1 1/2 in"},
	{"What do you pay for ice", "$5 per 10 lb"},
	{"How large is the house battery", "105"},
	{"How many watts of solar", "50"},
	{goingBy, ""}, {"would you pay", "yes"}, {"carbon monoxide alarm", "no"},
	{"Could petrol or cooking gas", "no"},
}

func TestFirstTimer(t *testing.T) {
	if testing.Short() {
		t.Skip("reckons in earnest")
	}
	o := &owner{answers: firstTimer, often: 80}
	var kept string
	p := NewPlain(o, &o.out, func() int { return 80 })
	opts := options(t, p, fresh(t), &kept)
	opts.Reckon = func(b economics.Boat, _ int) (*economics.Reckoning, error) { return reckon(b, 100) }
	if err := run(opts); err != nil {
		t.Error(err)
	}
	o.record.WriteString(o.out.String()[o.heard:])
	within(t, o.out.String())
	compare(t, "testdata/first-time-owner.txt", o.record.String())
	compare(t, "testdata/first-time-owner.yaml", kept)
}

func compare(t *testing.T, name, got string) {
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; run with -update and read the change. Now:\n%s", name, got)
	}
}

// A first answer takes at most so many questions and words of the program's,
// the answer included.
const (
	mostPrompts = 12
	mostWords   = 350
)

func within(t *testing.T, said string) {
	before, after, ok := strings.Cut(said, "First answer: ")
	if !ok {
		t.Fatal("no first answer was given")
	}
	answer, _, _ := strings.Cut(after, "\n\n")
	if n := strings.Count(before, "Answer: "); n > mostPrompts {
		t.Errorf("%d questions before the first answer, expected at most %d", n, mostPrompts)
	}
	words := 0
	for _, word := range strings.Fields(before + "First answer: " + answer) {
		if strings.ContainsFunc(word, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) }) {
			words++
		}
	}
	if words > mostWords {
		t.Errorf("%d words up to the first answer, expected at most %d", words, mostWords)
	}
	t.Logf("%d questions, %d words", strings.Count(before, "Answer: "), words)
}
