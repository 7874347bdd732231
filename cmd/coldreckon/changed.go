package main

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/words"
	"coldreckon/wizard/questions"
)

// changeFutures is how many futures a change of the answer is looked for in: as few
// as are no quick look, whose work may change where the answer does not.
const changeFutures = 200

// answerChanged says in three lines what a lesson does to a boat's answer: what
// it was, what it is now, and whether it stands.
func answerChanged(ctx context.Context, before, after economics.Boat, book economics.Book) (string, error) {
	ground, err := after.Ground()
	if err != nil {
		return "", err
	}
	var said [2]string
	var answers [2]economics.Answer
	for i, boat := range []economics.Boat{before, after} {
		r, err := inBackground(ctx, func() (*economics.Reckoning, error) {
			return economics.Reckon(boat, book, ground, economics.Settings{Futures: changeFutures, Seed: economics.DefaultSettings.Seed})
		})
		if err != nil {
			return "", err
		}
		said[i], answers[i] = lookedAt(r, book), r.Answer
	}
	verdict := "The answer stands."
	if answers[0].Case != answers[1].Case || !slices.Equal(answers[0].Ways, answers[1].Ways) {
		verdict = "That changes the answer."
	}
	return fmt.Sprintf("Before: %s\nNow:    %s\n%s This is a look at %d futures; 'coldreckon report' reckons it in full.\n", said[0], said[1], verdict, changeFutures), nil
}

// lookedAt says in one line what a reckoning finds.
func lookedAt(r *economics.Reckoning, book economics.Book) string {
	text := "leak " + quantity.FormatConductance(r.Box.Leak, r.Boat.Units)
	if len(r.Months) > 0 {
		hot := slices.MaxFunc(r.Months, func(a, b economics.MonthFigures) int { return cmp.Compare(a.CabinC, b.CabinC) })
		text += fmt.Sprintf("; a day in %s %s of ice or %s", questions.MonthName(hot.Month), quantity.FormatMass(quantity.Kilogram(words.Round(hot.IceKgPerDay)), r.Boat.Units),
			quantity.FormatCharge(quantity.AmpHour(words.Round(hot.SmallWhPerDay/float64(r.Boat.Power.Volts)))))
	}
	if way := r.Answer.Way(); way != "" {
		text += fmt.Sprintf("; %s works in %d of 100 futures", words.In(way), r.Of(way).WorksOf100)
	}
	return text + ". " + words.Of(r, book).Answer()
}
