package wizard

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"testing"

	"gopkg.in/yaml.v3"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/answers"
)

// A line of a script: what the prompter must have said since the last answer,
// and the answer to give.
type line struct{ expect, answer string }

// script answers a plain prompter. It fails the test when a question comes
// that was not expected, and when one that was expected does not come.
type script struct {
	t     *testing.T
	lines []line
	out   bytes.Buffer // all that was said
	heard int          // bytes of out that earlier answers belong to
	left  []byte       // of the answer being read
}

func newScript(t *testing.T, lines ...line) (*script, Prompter) {
	s := &script{t: t, lines: lines}
	t.Cleanup(func() {
		for _, l := range s.lines {
			t.Errorf("expected question %q was not asked", l.expect)
		}
	})
	return s, NewPlain(s, &s.out, func() int { return 80 })
}

func (s *script) Read(p []byte) (int, error) {
	if len(s.left) == 0 {
		said := unwrapped(s.out.String()[s.heard:])
		s.heard = s.out.Len()
		if len(s.lines) == 0 {
			s.t.Errorf("unexpected question:\n%s", said)
			return 0, io.EOF
		}
		next := s.lines[0]
		s.lines = s.lines[1:]
		if !strings.Contains(said, next.expect) {
			s.t.Errorf("expected %q, heard:\n%s", next.expect, said)
			return 0, io.EOF
		}
		s.left = []byte(next.answer + "\n")
	}
	n := copy(p, s.left)
	s.left = s.left[n:]
	return n, nil
}

// unwrapped undoes the wrapping of lines.
func unwrapped(text string) string { return strings.Join(strings.Fields(text), " ") }

// owner answers a plain prompter by what is asked, whatever the order: the
// first of her answers whose words are in the question, else Enter. Asked
// more than often, the input ends.
type owner struct {
	answers []line
	often   int
	out     bytes.Buffer
	typed   []string
	heard   int
	left    []byte
	record  bytes.Buffer // both sides, as on a screen
}

func (o *owner) Read(p []byte) (int, error) {
	if len(o.left) == 0 {
		said := o.out.String()[o.heard:]
		o.heard = o.out.Len()
		o.record.WriteString(said)
		if len(o.typed) >= o.often {
			return 0, io.EOF
		}
		answer := ""
		for i, l := range o.answers {
			if l.expect != "" && strings.Contains(unwrapped(said), l.expect) {
				answer = l.answer
				if strings.HasSuffix(l.expect, " ") { // once only
					o.answers[i].expect = ""
				}
				break
			}
		}
		o.typed = append(o.typed, answer)
		o.record.WriteString(answer + "\n")
		o.left = []byte(answer + "\n")
	}
	n := copy(p, o.left)
	o.left = o.left[n:]
	return n, nil
}

// reckoned are the boats that were worked out already, by all that is told of
// them: conversations tell of the same boats now and then.
var reckoned sync.Map

// reckon works a boat out in earnest.
func reckon(b economics.Boat, futures int) (*economics.Reckoning, error) {
	ground, err := b.Ground()
	if err != nil {
		return nil, err
	}
	told := fmt.Sprintf("%d %+v", futures, b)
	if before, ok := reckoned.Load(told); ok {
		r := *before.(*economics.Reckoning)
		return &r, nil
	}
	r, err := economics.Reckon(b, testBook(), ground, economics.Settings{Futures: futures, Seed: 1})
	if err == nil {
		reckoned.Store(told, r)
	}
	return r, err
}

func fresh(t testing.TB) *answers.File {
	f, err := answers.Fresh(economics.Boat{})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func text(t testing.TB, f *answers.File) string {
	var b strings.Builder
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func read(t testing.TB, written string) *answers.File {
	if strings.TrimSpace(written) == "" {
		return fresh(t)
	}
	f, faults := answers.Read("test.yaml", strings.NewReader(written))
	if len(faults) > 0 {
		t.Fatalf("%v in:\n%s", faults, written)
	}
	return f
}

// answerIn gives one answer of an answers file, as it stands there; "" when
// there is none.
func answerIn(t testing.TB, written, key string) string {
	t.Helper()
	var at any
	if err := yaml.Unmarshal([]byte(written), &at); err != nil {
		t.Fatal(err)
	}
	for part := range strings.SplitSeq(key, ".") {
		group, _ := at.(map[string]any)
		at = group[part]
	}
	if at == nil {
		return ""
	}
	return fmt.Sprint(at)
}

// options gives those of a test: nothing is saved but to *kept, and reckoned
// is what sure gives.
func options(t testing.TB, p Prompter, f *answers.File, kept *string) Options {
	return Options{Prompter: p, File: f, Name: "boat.yaml", Book: testBook, Reckon: sure(nil), Headline: headline, Save: func(f *answers.File) error {
		*kept = text(t, f)
		return nil
	}}
}

var sample = sync.OnceValue(func() *economics.Reckoning {
	s, _ := answers.SampleNamed("dunlin")
	f, faults := answers.Read("dunlin", strings.NewReader(s.Text))
	if len(faults) > 0 {
		panic(faults)
	}
	b, _ := f.Boat(testBook())
	r, err := reckon(b, 20)
	if err != nil {
		panic(err)
	}
	return r
})

// sure gives a reckoning that costs no time: that of a sample, with a small
// unit as a sure answer and nothing worth knowing. Then change, if any, has
// its way with it.
func sure(change func(b *economics.Boat, r *economics.Reckoning)) func(economics.Boat, int) (*economics.Reckoning, error) {
	return func(b economics.Boat, _ int) (*economics.Reckoning, error) {
		r := *sample()
		r.Boat = b
		r.Answer = economics.Answer{Case: economics.PaysForItself, Ways: []economics.OptionID{economics.SmallUnit}, WayOf100: 80}
		r.Futures.Weighed, r.Futures.Preferred, r.Futures.Runner = []economics.OptionID{economics.IceOnly, economics.SmallUnit, economics.LargerUnit}, economics.SmallUnit, economics.IceOnly
		r.Futures.Inputs = slices.Clone(r.Futures.Inputs)
		for i := range r.Futures.Inputs {
			r.Futures.Inputs[i].EVPPI, r.Futures.Inputs[i].PriceLow, r.Futures.Inputs[i].PriceHigh = 0, 6.2, 6.2
		}
		for i := range r.Options {
			r.Options[i].ExpectedRegret, r.Options[i].WorksOf100 = 100, 100
			r.Options[i].PriceOfCold = quantity.Exactly(6.2)
		}
		r.Of(economics.SmallUnit).ExpectedRegret = 0
		r.Of(economics.SmallUnit).Fitted.Yearly = 240
		if change != nil {
			change(&b, &r)
		}
		return &r, nil
	}
}

// headline says which way leads and how often.
func headline(r *economics.Reckoning) string {
	return fmt.Sprintf("%s, best in %d of 100.", r.Answer.Way(), r.Answer.WayOf100)
}

// knowing sets the worth of knowing an input.
func knowing(r *economics.Reckoning, input string, evppi float64) {
	for i := range r.Futures.Inputs {
		if r.Futures.Inputs[i].Name == input {
			r.Futures.Inputs[i].EVPPI = evppi
		}
	}
}

func run(opts Options) error { return Run(context.Background(), opts) }

func ExampleNewPlain() {
	p := NewPlain(strings.NewReader("two\nthe rest is left alone"), io.Discard, func() int { return 80 })
	i, err := p.Choose(context.Background(), Question{Text: "How many?"}, []Choice{{Label: "one"}, {Label: "two"}}, 0)
	fmt.Println(i, err)
	// Output: 1 <nil>
}
