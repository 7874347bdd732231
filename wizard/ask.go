package wizard

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// errEnough says that the person wants no more questions for the sake of the
// answer.
var errEnough = errors.New("enough questions")

const enoughWord = "enough"

const dontKnow = "don't know"

// ask asks one question of the table, saves its answer and says what follows
// from it.
func (t *conversation) ask(v visit) error {
	switch v.key {
	case patternStep:
		return t.pattern()
	case coldStep:
		return t.mustBeCold()
	case aboardStep:
		return t.aboard()
	case offersKey:
		return t.offers()
	}
	row, ok := questions.Find(v.key)
	if !ok {
		return fmt.Errorf("there is no question %q in the table", v.key)
	}
	for {
		text, err := t.answer(row, v.why)
		if err != nil {
			return err
		}
		if text != "" {
			err = t.keep(row.Key, text)
		}
		var fault questions.Fault
		if errors.As(err, &fault) {
			t.Prompter.Say(sentence(fault))
			continue
		}
		if err != nil {
			return err
		}
		return t.follow(row, v, text)
	}
}

// answer gets the text of one answer, "" when the answer there is stays.
func (t *conversation) answer(row questions.Row, why string) (string, error) {
	switch row.Key {
	case worthKey:
		return t.askWorth(row)
	case historyKey:
		return t.history(row, why)
	}
	if choices := choicesOf(row); choices != nil {
		return t.pick(row, why, choices)
	}
	return t.line(row, why)
}

// line gets the answer of a question that takes any text.
func (t *conversation) line(row questions.Row, why string) (string, error) {
	filled := t.filled()
	q := Question{Why: why, Text: t.place(row.Key) + t.wording(row), Help: row.Help, Enter: "if unsure: " + said(row, &filled)}
	if row.Kind == questions.Months {
		q.Text += " Such as: weekends in summer, or june 6, july 14."
	}
	text, err := t.typed(row, q, func(text string) error {
		if t.otherCurrency(row, text) != "" {
			return nil
		}
		return t.refuse(row.Key, text)
	})
	if err != nil || text == "" || questions.Unsure(text) {
		return text, err
	}
	if sign := t.otherCurrency(row, text); sign != "" {
		if err := t.keep("currency", sign); err != nil {
			return "", err
		}
		t.Prompter.Say("All amounts are in " + sign + " from here on. Nothing is converted.")
	}
	if key := t.meant(row.Key, text); key != row.Key {
		row, _ = questions.Find(key)
	}
	return t.lasting(row, text), nil
}

// typed puts a question to be answered in a line, of which accept says what is
// wrong. It gives "" when the answer there is stays, and the word for not
// knowing where there is none.
func (t *conversation) typed(row questions.Row, q Question, accept func(text string) error) (string, error) {
	boat := t.File.Told()
	standing := answered(&boat, row.Key)
	if standing {
		q.Enter = "keeps " + t.standing(row)
	}
	hadEnough := func(text string) bool {
		return (q.Why != "" || row.Key == worthKey) && strings.EqualFold(text, enoughWord)
	}
	q.Check = func(text string) error {
		if hadEnough(text) || questions.Unsure(text) {
			return nil
		}
		return accept(text)
	}
	text, err := t.Prompter.Line(t.ctx, q)
	switch {
	case err != nil:
		return "", err
	case hadEnough(text):
		return "", errEnough
	case text == "" && !standing:
		return unsureText(row), nil
	}
	return text, nil
}

// said prints the value of a row, in the word that stands for it where one does.
func said(row questions.Row, boat *economics.Boat) string {
	value := fmt.Sprint(row.Field(boat).Get())
	if i := slices.IndexFunc(row.Options, func(o questions.Option) bool { return o.Value == value }); i >= 0 {
		return row.Options[i].Label
	}
	return row.Print(boat)
}

// signed finds the currency in an amount: €2.50, EUR 2.50 or 2,50 €.
var signed = regexp.MustCompile(`^([^\d\s.,/+*()%-]{1,8}) ?\d|\d ?([^\d\s.,/+*()%-]{1,8})(?:/| per |$)`)

// otherCurrency gives the currency of an amount that can only be read in it,
// where no currency was told yet, else "".
func (t *conversation) otherCurrency(row questions.Row, text string) string {
	boat := t.File.Told()
	m := signed.FindStringSubmatch(text)
	if m == nil || row.Kind != questions.Money && row.Kind != questions.PricePerMass || answered(&boat, "currency") {
		return ""
	}
	if _, err := t.File.Try(row.Key, text); err == nil {
		return ""
	}
	sign := m[1] + m[2]
	if !quantity.IsCurrency(sign) || questions.Set(&boat, "currency", sign) != nil || questions.Set(&boat, row.Key, text) != nil {
		return ""
	}
	return sign
}

// refuse tells in a sentence why a text cannot answer a key, nil when it can.
func (t *conversation) refuse(key, text string) error {
	key = t.meant(key, text)
	before := questions.Check(t.File.Told())
	boat, err := t.File.Try(key, text)
	if err != nil {
		var fault questions.Fault
		if errors.As(err, &fault) {
			return errors.New(sentence(fault))
		}
		return err
	}
	for _, fault := range questions.Check(boat) {
		if fault.Key == key && !slices.ContainsFunc(before, func(f questions.Fault) bool { return f.Key == key }) {
			return errors.New(sentence(fault))
		}
	}
	return nil
}

// sentence words a fault for somebody at a prompt.
func sentence(f questions.Fault) string {
	s := strings.ToUpper(f.Wrong[:1]) + f.Wrong[1:] + "."
	if f.Instead != "" {
		s += " " + f.Instead + "."
	}
	if f.Hint != "" {
		hint := strings.ToUpper(f.Hint[:1]) + f.Hint[1:]
		if !strings.HasSuffix(hint, "?") && !strings.HasSuffix(hint, ".") {
			hint += "."
		}
		s += " " + hint
	}
	return s
}

// A reply is one choice and the text it answers with.
type reply struct {
	Choice
	text string
}

// choicesOf gives the choices of a row that has a few fixed answers, else nil.
func choicesOf(row questions.Row) []reply {
	switch row.Kind {
	case questions.YesNo, questions.YesNoUnknown:
		return []reply{{Choice{Label: "yes", Also: []string{"y", "true"}}, "yes"}, {Choice{Label: "no", Also: []string{"n", "false"}}, "no"}}
	case questions.Choice:
		var replies []reply
		for _, o := range row.Options {
			if o.Value == "unknown" && len(row.Options) > 1 && o.Label == "not known" {
				continue // the same as don't know
			}
			also := append([]string{o.Value}, strings.Split(o.Also, "|")...)
			replies = append(replies, reply{Choice{Label: o.Label, Also: also}, o.Value})
		}
		return replies
	}
	return nil
}

// pick gets the answer of a question with a few fixed answers.
func (t *conversation) pick(row questions.Row, why string, replies []reply) (string, error) {
	boat, usual := t.File.Told(), t.usual(row)
	standing := answered(&boat, row.Key)
	now := row.Print(&usual)
	typical := slices.IndexFunc(replies, func(r reply) bool { return r.Label == now })
	enter := -1
	if standing && boat.Known[row.Key] != quantity.Unsure || row.Group == questions.OfBoat {
		enter = typical
	}
	unsure := reply{Choice{Label: dontKnow, Also: []string{"unknown", "not sure", "dk", "not known"}}, unsureText(row)}
	if typical >= 0 && row.Kind == questions.Choice && enter < 0 {
		unsure.Note = "I assume: " + now
	}
	if enter < 0 {
		enter = len(replies)
	}
	replies = append(replies, unsure)
	if why != "" {
		replies = append(replies, reply{Choice{Label: enoughWord}, enoughWord})
	}
	q := Question{Why: why, Text: t.place(row.Key) + t.wording(row), Help: row.Help, Search: len(replies) > mostMatches}
	return t.oneOf(q, replies, enter)
}

// oneOf puts a question to be answered with one of some replies, and gives its
// text.
func (t *conversation) oneOf(q Question, replies []reply, enter int) (string, error) {
	choices := make([]Choice, len(replies))
	for i, r := range replies {
		choices[i] = r.Choice
	}
	i, err := t.Prompter.Choose(t.ctx, q, choices, enter)
	switch {
	case err != nil:
		return "", err
	case replies[i].text == enoughWord:
		return "", errEnough
	}
	return replies[i].text, nil
}

// unsureText is what the file holds where the owner does not know.
func unsureText(row questions.Row) string {
	if row.Kind == questions.Text {
		return "?"
	}
	return "unknown"
}

// standing prints the answer there is: as typed, where it was typed as text.
func (t *conversation) standing(row questions.Row) string {
	boat, filled := t.File.Told(), t.filled()
	if boat.Known[row.Key] == quantity.Unsure {
		return dontKnow
	}
	return row.Print(&filled)
}

// lasting gives a text that means the same whatever units are chosen later: as
// typed where it names its unit, else as printed.
func (t *conversation) lasting(row questions.Row, text string) string {
	boat, err := t.File.Try(row.Key, text)
	if err != nil || !row.Bare(text) {
		return text
	}
	return row.Print(&boat)
}

// insideKey is the answer that gives a box by its inside measures.
const insideKey = "box.inside"

// meant gives the key that a text answers: who is asked for a volume and gives
// length, width and height has answered the better question.
func (t *conversation) meant(key, text string) string {
	if key != "box.volume" {
		return key
	}
	if _, err := quantity.ParseDimensions(text, t.filled().Units); err != nil {
		return key
	}
	if _, err := t.File.Try(key, text); err != nil {
		return insideKey
	}
	return key
}

// keep puts an answer into the file and saves it.
func (t *conversation) keep(key, text string) error {
	key = t.meant(key, text)
	if err := t.File.Set(key, text); err != nil {
		return err
	}
	boat := t.File.Told()
	if key == insideKey && !boat.Box.Inside.Zero() {
		if err := t.File.Remove("box.volume"); err != nil { // the measures are the better of the two
			return err
		}
	}
	return t.changed()
}

// changed saves the file after an answer, and forgets what followed from those before.
func (t *conversation) changed() error {
	t.reckoned, t.full = nil, nil
	t.saved++
	return t.Save(t.File)
}
