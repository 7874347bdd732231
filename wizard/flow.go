package wizard

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/answers"
	"coldreckon/wizard/questions"
)

// Options is what a conversation needs.
type Options struct {
	Prompter Prompter
	File     *answers.File // answers so far; it is added to
	Name     string        // of the file, for messages
	// Book gives the price book. It is asked for when the first price is needed, so
	// that the first question need not wait for it.
	Book func() economics.Book
	// Reckon works a filled boat out with a number of futures, the same for the
	// same boat. It is called often and must not keep what it is given.
	Reckon func(boat economics.Boat, futures int) (*economics.Reckoning, error)
	// Headline says in a sentence or three what a reckoning answers.
	Headline func(*economics.Reckoning) string
	// Futures is how many of them the report will look at, and the list of
	// answers that is confirmed at the end; before that it is first looks.
	Futures int
	// Save keeps the file; it is called after every answer.
	Save func(*answers.File) error
	// All asks every question in the order of the table.
	All bool
}

// Run asks until the answers are complete and confirmed. The answers are in
// the file, which was saved after each of them, so that a conversation broken
// off goes on where it stopped when Run is called with the same file again.
//
// It gives ErrCancelled, ErrInputEnded, or the error of Save, of Reckon, or of
// a prompter that cannot read or write.
func Run(ctx context.Context, opts Options) error {
	t := &conversation{Options: opts, ctx: ctx}
	t.Futures = cmp.Or(t.Futures, futures)
	if p, ok := t.Prompter.(interface{ forget() }); ok {
		reckon := t.Reckon
		t.Reckon = func(boat economics.Boat, futures int) (*economics.Reckoning, error) {
			r, err := reckon(boat, futures)
			p.forget() // keys typed meanwhile were for nothing that was asked
			return r, err
		}
	}
	t.Prompter = local{t.Prompter, func() quantity.System { return t.File.Told().Units }}
	t.greet()
	if t.complete() && !t.All {
		change, err := t.mayChange()
		if err != nil || !change {
			return err
		}
	}
	for {
		if err := t.questions(); err != nil {
			return err
		}
		switch err := t.review(); {
		case errors.Is(err, ErrBack) && t.at > 0:
			t.at--
		case errors.Is(err, ErrBack):
			t.Prompter.Say(nothingBefore)
		default:
			return err
		}
	}
}

const nothingBefore = "There is no question before this one."

// conversation is one: where it stands in the questions and what has
// been said.
type conversation struct {
	Options
	ctx context.Context

	asked []visit // questions of this conversation, in order
	at    int     // the next of them to ask; len(asked) asks a new one

	saved    int                  // answers kept in this conversation
	full     *economics.Boat      // the answers with every default; nil when stale
	reckoned *economics.Reckoning // of the answers as they are; nil when stale
	trials   []candidate          // what other answers would do; nil when not tried
	verdict  *outlook             // the last one told

	sharpened  int  // questions asked for their worth
	toldEnough bool // that they may have enough
	toldFaces  bool // whether the sides of the box differ
	alike      bool // they do not
	enough     bool // no more questions for the sake of the answer
	onward     bool // they want the questions that hardly matter
}

// visit is one question asked, and why when it was asked for its worth.
type visit struct{ key, why string }

// greet opens the conversation, and finds the place where one broken off goes on.
func (t *conversation) greet() {
	boat := t.File.Told()
	for _, s := range firstRound() {
		if !s.open(&boat) {
			t.asked = append(t.asked, visit{key: s.key})
		}
	}
	t.at = len(t.asked)
	switch n := len(boat.Known); {
	case n == 0 && t.All:
		t.Prompter.Say("Every question there is, group by group." + manners)
	case n == 0:
		t.Prompter.Say(fmt.Sprintf("%d questions, then a first look.", len(firstRound())) + manners)
	case n == 1:
		t.Prompter.Say(fmt.Sprintf("%s holds one answer already. It is kept.", t.Name))
	default:
		t.Prompter.Say(fmt.Sprintf("%s holds %d answers already. They are kept, and not asked again.", t.Name, n))
	}
}

// complete reports whether the file needs no more questions.
func (t *conversation) complete() bool {
	boat := t.File.Told()
	return !slices.ContainsFunc(slices.Concat(firstRound(), lastRound), func(s step) bool { return s.open(&boat) }) && t.followUp() == ""
}

// mayChange asks before a file that needs no more questions is touched.
func (t *conversation) mayChange() (bool, error) {
	for {
		i, err := t.Prompter.Choose(t.ctx, Question{
			Text: "The questions for " + t.Name + " have been put. Shall the answers stay as they are?",
			Help: "Typical: yes, and the report is written from it. Say no to look through them and change what is no longer true.",
		}, []Choice{{Label: "yes", Also: []string{"y"}}, {Label: "no, show them to me", Also: []string{"no", "n"}}}, 0)
		if errors.Is(err, ErrBack) {
			t.Prompter.Say(nothingBefore)
			continue
		}
		t.enough = true
		return i == 1, err
	}
}

const manners = " Guess, or press Enter if unsure. ? explains, < goes back."

// questions asks until nothing is left to ask.
func (t *conversation) questions() error {
	for {
		v, err := t.next()
		if err == nil && v.key == "" {
			return nil
		}
		before := t.saved
		if err == nil {
			err = t.ask(v)
		}
		if inFirstRound(v.key) && t.saved > before {
			// The first look is to be taken anew, and what came after it asked anew.
			t.verdict, t.enough = nil, false
			if t.at < len(t.asked) {
				later := slices.DeleteFunc(slices.Clone(t.asked[t.at+1:]), func(v visit) bool { return !inFirstRound(v.key) })
				t.asked = append(t.asked[:t.at+1], later...)
			}
		}
		switch {
		case errors.Is(err, ErrBack) && t.at > 0:
			t.at--
		case errors.Is(err, ErrBack):
			t.Prompter.Say(nothingBefore)
		case errors.Is(err, errEnough):
			t.enough = true
			t.asked = t.asked[:t.at]
		case err != nil:
			return err
		default:
			t.at++
		}
	}
}

// next gives the question to ask now; its key is empty when there is none.
func (t *conversation) next() (visit, error) {
	for t.at < len(t.asked) {
		row, ok := questions.Find(t.asked[t.at].key)
		if !ok || row.Asked(t.File.Told()) {
			return t.asked[t.at], nil
		}
		t.asked = append(t.asked[:t.at], t.asked[t.at+1:]...)
	}
	v, err := t.choose()
	if err == nil && v.key != "" {
		t.asked = append(t.asked, v)
	}
	return v, err
}

// choose picks a question that has not been asked: the first round, then, after
// a first look at the answer, what is worth most, then safety.
func (t *conversation) choose() (visit, error) {
	boat := t.File.Told()
	first := func(wanted func(questions.Row) bool) visit {
		for _, row := range questions.All() {
			if wanted(row) && row.Asked(boat) && !answered(&boat, row.Key) {
				return visit{key: row.Key}
			}
		}
		return visit{}
	}
	if t.All {
		v := first(func(r questions.Row) bool { return !t.alike || r.Group != questions.OfFaces })
		if row, _ := questions.Find(v.key); row.Group == questions.OfFaces && !t.toldFaces {
			if err := t.askFaces(); err != nil {
				return visit{}, err
			}
			return t.choose()
		}
		return v, nil
	}
	// A question that another answer calls for follows it at once.
	if v := first(func(r questions.Row) bool { return r.When != nil && !r.Detail }); v.key != "" {
		return v, nil
	}
	if key := t.followUp(); key != "" {
		return visit{key: key}, nil
	}
	for _, s := range firstRound() {
		if s.open(&boat) {
			return visit{key: s.key}, nil
		}
	}
	if v, err := t.weigh(); err != nil || v.key != "" {
		return v, err
	}
	for _, s := range lastRound {
		if s.open(&boat) {
			return visit{key: s.key}, nil
		}
	}
	return visit{}, nil
}

// followUp gives the question that a step of the first round leaves open: how
// often they shop, where the sentence did not tell, and what a bag of ice weighs.
func (t *conversation) followUp() string {
	boat := t.File.Told()
	if answered(&boat, questions.NightsKey) && !answered(&boat, questions.ShopKey) {
		return questions.ShopKey
	}
	price := t.File.Text("ice.price")
	if price == "" || answered(&boat, bagKey) {
		return ""
	}
	if _, byBag := quantity.PricePerBag(price, t.filled().Currency); byBag {
		return bagKey
	}
	return ""
}

// askFaces asks whether the box is to be gone through side by side.
func (t *conversation) askFaces() error {
	i, err := t.Prompter.Choose(t.ctx, Question{
		Text: "Do the sides of the box differ, in foam or in what lies behind them?",
		Help: "Typical: no, or not known. Say yes if the lid has less foam than the walls, or the engine is behind one side.",
	}, []Choice{{Label: "no", Also: []string{"n", dontKnow, "unknown"}}, {Label: "yes", Also: []string{"y"}}}, 0)
	if err == nil {
		t.toldFaces, t.alike = true, i == 0
	}
	return err
}

// answered reports whether a key needs no more asking. The inside measures of
// a box give its volume.
func answered(boat *economics.Boat, key string) bool {
	if key == "box.volume" && answered(boat, insideKey) && !boat.Box.Inside.Zero() {
		return true
	}
	how, ok := boat.Known[key]
	return ok && how != quantity.Assumed
}

// filled gives the boat with every default in it.
func (t *conversation) filled() economics.Boat {
	if t.full == nil {
		boat := t.File.Told()
		questions.Fill(&boat, t.Book())
		t.full = &boat
	}
	return *t.full
}

// usual gives the answers with the defaults up to that of a row.
func (t *conversation) usual(row questions.Row) economics.Boat {
	if t.full != nil {
		return *t.full
	}
	boat := t.File.Told()
	questions.FillTo(&boat, row.Key, t.Book)
	return boat
}

// figures reckons the answers as they are.
func (t *conversation) figures() (*economics.Reckoning, error) {
	if t.reckoned == nil {
		r, err := t.Reckon(t.filled(), futures)
		if err != nil {
			return nil, fmt.Errorf("reckoning the answers so far: %w", err)
		}
		t.reckoned = r
	}
	return t.reckoned, nil
}
