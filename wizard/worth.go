package wizard

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// mostSharpened is how many questions follow the first look, that for the worth
// of a cold day among them, before the answer is laid before the owner, who may
// then ask for more.
const mostSharpened = 2

// weigh gives a first look at the answer once the first round is through, and
// then the question worth most, until nothing left is likely to change the
// answer or the person has had enough.
func (t *conversation) weigh() (visit, error) {
	if t.verdict == nil {
		if err := t.tellFirst(); err != nil {
			return visit{}, err
		}
	}
	r, err := t.figures()
	if err != nil {
		return visit{}, err
	}
	boat := t.File.Told()
	if t.outlook(r).price > 0 && !answered(&boat, worthKey) {
		t.sharpened++
		return visit{key: worthKey}, nil
	}
	if t.enough || t.sharpened >= mostSharpened && !t.onward {
		return visit{}, nil
	}
	s := scaleOf(r)
	best, err := t.worthMost(r, s)
	if err != nil {
		return visit{}, err
	}
	if best.key == "" || s.of(best.worth) < 1 && !t.onward {
		t.enough = true
		return visit{}, nil
	}
	t.sharpened++
	return visit{best.key, t.because(s.why(best.worth, &r.Boat))}, nil
}

// because adds to why a question is asked how to have no more of them, once.
func (t *conversation) because(why string) string {
	if !t.toldEnough {
		t.toldEnough = true
		why += ` Answer "` + enoughWord + `" when you have had enough of these.`
	}
	return why
}

// candidate is an open question and what its answer is worth.
type candidate struct {
	key string
	worth
	asOf int // the answers in when the worth was found
}

// worthMost gives the open question worth most. A figure that the reckoning
// holds for uncertain is worth its expected value of partial perfect
// information, and what it moves the price of a cold day by; what it takes for
// granted is worth what trying other answers shows. Trials are kept from answer to answer: only the one that would be
// asked is made again.
func (t *conversation) worthMost(r *economics.Reckoning, s scale) (candidate, error) {
	boat := t.File.Told()
	best := sharpening(r, s, &boat)
	if s.of(best.worth) >= 1 {
		return best, nil
	}
	if t.trials == nil {
		if err := t.tryAll(r.Futures.Inputs); err != nil {
			return candidate{}, err
		}
	}
	for {
		top := candidateOf(t.trials, s, &boat)
		switch {
		case top == nil || best.key != "" && s.of(top.worth) <= s.of(best.worth):
			return best, nil
		case top.asOf == t.saved || s.of(top.worth) < 1:
			return *top, nil
		}
		if err := t.try(top); err != nil {
			return candidate{}, err
		}
	}
}

// candidateOf gives the open question of a list that is worth most, nil when
// none is open.
func candidateOf(list []candidate, s scale, boat *economics.Boat) *candidate {
	var top *candidate
	for i := range list {
		if open(list[i].key, boat) && (top == nil || s.of(list[i].worth) > s.of(top.worth)) {
			top = &list[i]
		}
	}
	return top
}

// open reports whether a question has sense and no answer.
func open(key string, boat *economics.Boat) bool {
	row, ok := questions.Find(key)
	return ok && row.Asked(*boat) && !answered(boat, key)
}

// sharpening gives the open question of the uncertain input worth most.
func sharpening(r *economics.Reckoning, s scale, boat *economics.Boat) candidate {
	inputs := slices.Clone(r.Futures.Inputs)
	slices.SortStableFunc(inputs, func(a, b economics.InputFigures) int { return cmp.Compare(s.of(worthOf(b)), s.of(worthOf(a))) })
	unit := unitInPlay(r)
	for _, in := range inputs {
		for _, key := range in.SharpenedBy {
			key = strings.Replace(key, "{unit}", unit, 1)
			if open(key, boat) {
				return candidate{key: key, worth: worthOf(in)}
			}
		}
	}
	return candidate{}
}

// rounded cuts a worth to one or two figures that mean something; what is
// less than one is nothing.
func rounded(worth float64) quantity.Money {
	if !(worth >= 1) {
		return 0
	}
	scale := math.Pow(10, math.Max(0, math.Floor(math.Log10(worth))-1))
	return quantity.Money(math.Round(worth/scale) * scale)
}
