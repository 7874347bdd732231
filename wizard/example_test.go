package wizard_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"coldreckon/economics"
	"coldreckon/wizard"
	"coldreckon/wizard/answers"
)

// A boat of whom all but the size of her ice box was told before. That is asked
// first; then the owner has had enough, and confirms all answers with Enter.
// (Package rules makes a Book of rule files; an empty one will do here.)
func ExampleRun() {
	sample, _ := answers.SampleNamed("dunlin")
	file, faults := answers.Read("boat.yaml", strings.NewReader(sample.Text))
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	err := errors.Join(file.Remove("box.inside"), file.Remove("box.volume"), file.Set("money.cold_day_worth", "2"))
	if err != nil {
		fmt.Println(err)
		return
	}
	typed := strings.NewReader("3.2 cu ft\nenough\n\n\n")
	book, saved := economics.Book{}, 0
	err = wizard.Run(context.Background(), wizard.Options{
		Prompter: wizard.NewPlain(typed, io.Discard, func() int { return 80 }),
		File:     file,
		Name:     "boat.yaml",
		Book:     func() economics.Book { return book },
		Reckon: func(boat economics.Boat, futures int) (*economics.Reckoning, error) {
			ground, err := boat.Ground()
			if err != nil {
				return nil, err
			}
			return economics.Reckon(boat, book, ground, economics.Settings{Futures: futures, Seed: 1})
		},
		Headline: func(r *economics.Reckoning) string { return string(r.Answer.Case) },
		Save:     func(*answers.File) error { saved++; return nil },
	})
	fmt.Printf("%.1f L, saved %d times, error %v\n", file.Told().Box.Volume, saved, err)
	// Output: 90.6 L, saved 1 times, error <nil>
}

// What an owner at a simple terminal sees and types.
func ExampleNewPlain() {
	p := wizard.NewPlain(strings.NewReader("perhaps\nyes\n"), os.Stdout, func() int { return 60 })
	i, err := p.Choose(context.Background(), wizard.Question{
		Text: "Is there a drain in the box?",
		Help: "Typical: yes, a hose from the bottom of the box.",
	}, []wizard.Choice{{Label: "yes"}, {Label: "no"}, {Label: "don't know"}}, 2)
	fmt.Println(i, err)
	// Output:
	// Is there a drain in the box?
	//   1. yes
	//   2. no
	//   3. don't know (Enter)
	// Answer: "perhaps" is none of the answers. Type ? to hear what you
	// can answer.
	// Answer: 0 <nil>
}
