package wizard

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/questions"
)

// step is one question of the first round, or the one of safety at its end: a
// row of the table, or several that one question answers.
type step struct {
	key string // of the row; of several, a name of their own
	// fills are the rows that a question of several answers; the first of them
	// is always answered.
	fills []string
}

// The questions of several rows.
const (
	patternStep = "pattern"
	coldStep    = "cold"
	aboardStep  = "aboard"
)

// bagKey is asked for where ice is priced by the bag.
const bagKey = "ice.unit_size"

// opening are the questions that come first of all, in the order of asking.
var opening = []step{
	{key: "units"},
	{key: "cruising.ground"},
	{key: patternStep, fills: []string{questions.NightsKey, questions.TripKey, questions.ShopKey, questions.ShoreKey}},
	{key: "cruising.crew"},
	{key: coldStep, fills: []string{"food.cool_is_enough", "food.must_be_cold_share", "food.medicine", "food.freeze"}},
	{key: "food.dry_premium"},
}

// firstRound are the questions before the first answer, in the order of asking:
// the opening, then the other essential ones of the table, in its order.
var firstRound = sync.OnceValue(func() []step {
	steps := slices.Clone(opening)
	for _, row := range questions.All() {
		if row.Essential && !slices.ContainsFunc(opening, func(s step) bool { return s.key == row.Key || slices.Contains(s.fills, row.Key) }) {
			steps = append(steps, step{key: row.Key})
		}
	}
	return steps
})

// lastRound is asked before the answers are confirmed.
var lastRound = []step{{key: aboardStep, fills: []string{"safety.lithium", "safety.fuel_vapour_space", "safety.children", "safety.fish",
	"safety.dry_ice", "safety.co_alarm", "safety.left_unattended", "food.vulnerable"}}}

// inFirstRound reports whether a question, or one that follows up on its
// answer, comes before the first look.
func inFirstRound(key string) bool {
	return key == questions.ShopKey || key == bagKey || slices.ContainsFunc(firstRound(), func(s step) bool { return s.key == key })
}

// open reports whether a step has sense and no answer.
func (s step) open(boat *economics.Boat) bool {
	if len(s.fills) > 0 {
		return !answered(boat, s.fills[0])
	}
	return open(s.key, boat)
}

// place tells how far the way to the first answer is, before a question on it:
// "7/14: ".
func (t *conversation) place(key string) string {
	at := slices.IndexFunc(firstRound(), func(s step) bool { return s.key == key })
	if t.All || t.verdict != nil || at < 0 {
		return ""
	}
	return fmt.Sprintf("%d/%d: ", at+1, len(firstRound()))
}

// pattern asks for a year's cruising in one sentence.
func (t *conversation) pattern() error {
	row, _ := questions.Find(questions.NightsKey)
	q := Question{
		Text:  t.place(patternStep) + "When do you sleep aboard, and how often do you shop? Such as: weekends in summer, all of August; we shop every third day.",
		Enter: "if unsure: weekends in summer",
		Help:  "Typical: weekends in summer and two weeks in July; we shop every 3 days. You may add the length of a trip (trips of 7 nights) and shore power (half the nights plugged in). Or give each month: june 6, july 14. The log book knows.",
	}
	text, err := t.typed(row, q, func(text string) error {
		tellings := questions.Pattern(text)
		if len(tellings) == 0 || tellings[0].Key != questions.NightsKey {
			return refusal("Please say in which months, or how many nights a year.")
		}
		for _, told := range tellings {
			if err := t.refuse(told.Key, told.Text); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil || text == "" {
		return err
	}
	for _, told := range questions.Pattern(text) {
		if err := t.keep(told.Key, told.Text); err != nil {
			return err
		}
	}
	boat := t.filled()
	if boat.Told(row.Key) {
		said := "That is " + row.Print(&boat)
		trip, _ := questions.Find(questions.TripKey)
		said += ", in trips of " + trip.Print(&boat)
		if shop, _ := questions.Find(questions.ShopKey); boat.Told(shop.Key) {
			said += ", shopping every " + strings.TrimPrefix(shop.Print(&boat), "1 ")
		}
		t.Prompter.Say(said + ".")
	}
	return t.agree(visit{key: row.Key})
}

// placeSpan finds a span of places in a list: "1-4".
var placeSpan = regexp.MustCompile(`^(\d+) ?(?:-|–|to) ?(\d+)$`)

// tick asks which of a list hold: by number, by a word, or several of them
// with commas. It gives none and false where the person does not know.
func (t *conversation) tick(q Question, items []Choice) (ticked []int, known bool, err error) {
	for i, item := range items {
		q.Text += fmt.Sprintf("\n  %d. %s", i+1, item.Label)
	}
	read := func(text string) ([]int, error) {
		if slices.Contains([]string{"none", "no", "nothing", "0", "none of them"}, strings.ToLower(text)) {
			return nil, nil
		}
		var found []int
		for _, part := range strings.FieldsFunc(strings.ReplaceAll(strings.ToLower(text), " and ", ","), func(r rune) bool { return r == ',' || r == ';' || r == '+' }) {
			part = strings.TrimPrefix(strings.TrimPrefix(strings.TrimSpace(part), "only "), "just ")
			if m := placeSpan.FindStringSubmatch(part); m != nil {
				from, _ := strconv.Atoi(m[1])
				to, _ := strconv.Atoi(m[2])
				if from >= 1 && from < to && to <= len(items) { // any other is none of these
					for ; from < to; from++ {
						found = append(found, from-1)
					}
					part = m[2]
				}
			}
			parts := []string{part}
			if _, err := strconv.Atoi(strings.ReplaceAll(part, " ", "")); err == nil {
				parts = strings.Fields(part)
			}
			for _, p := range parts {
				hit := match(items, p)
				if len(hit) != 1 {
					return nil, refusal(fmt.Sprintf("%q is none of these. Give numbers, such as 1, 3, or none.", shorten(p, 40)))
				}
				found = append(found, hit[0])
			}
		}
		return found, nil
	}
	q.Check = func(text string) error {
		if questions.Unsure(text) {
			return nil
		}
		_, err := read(text)
		return err
	}
	text, err := t.Prompter.Line(t.ctx, q)
	if err != nil || text == "" || questions.Unsure(text) {
		return nil, false, err
	}
	ticked, err = read(text)
	return ticked, true, err
}

// mustBeCold asks what has to be cold, as a list to tick.
func (t *conversation) mustBeCold() error {
	boat := t.File.Told()
	cool := "50 °F"
	if boat.Units == quantity.Metric {
		cool = "10 °C"
	}
	items := []Choice{
		{Label: "meat or fish", Also: []string{"meat", "fish"}}, {Label: "milk, soft cheese, eggs", Also: []string{"milk", "cheese", "eggs", "milk and cheese"}},
		{Label: "leftovers or salads", Also: []string{"leftovers", "salad"}},
		{Label: "drinks, butter, fruit: " + cool + " is enough", Also: []string{"drinks", "beer", "cold drinks", "butter", "fruit", "drinks and butter"}},
		{Label: "medicine", Also: []string{"insulin"}},
		{Label: "ice cubes", Also: []string{"cubes"}}, {Label: "frozen meals", Also: []string{"frozen", "freezer"}},
	}
	standing := answered(&boat, "food.cool_is_enough")
	q := Question{
		Text:  t.place(coldStep) + "What must be cold aboard? Numbers, such as 1, 4.",
		Enter: "if unsure: 1, 2, 3, 4",
		Help:  "Typical: 1, 2, 4. Meat, fish, milk, eggs, cut fruit, cooked rice and leftovers need 40 °F (4 °C). If only 4 is ticked, cool days count, which ice gives far more easily.",
	}
	if standing {
		q.Enter = "keeps what you said"
	}
	ticked, told, err := t.tick(q, items)
	switch {
	case err != nil:
		return err
	case !told && standing:
		return nil
	case !told:
		return t.keep("food.cool_is_enough", dontKnow)
	}
	has := func(place int) bool { return slices.Contains(ticked, place) }
	onlyCool := !has(0) && !has(1) && !has(2)
	share, freeze, drinks := "", "nothing", ""
	switch {
	case len(ticked) == 0:
		share, drinks = "0", "none"
	case onlyCool:
		share = "10 %"
	case !has(0):
		share = "20 %"
	}
	switch {
	case has(6):
		freeze = "meals"
	case has(5):
		freeze = "cubes"
	}
	if !has(3) && !onlyCool {
		drinks = "none"
	}
	for _, a := range []questions.Telling{
		{Key: "food.cool_is_enough", Text: yesNo(onlyCool)}, {Key: "food.medicine", Text: yesNo(has(4))},
		{Key: "food.must_be_cold_share", Text: share}, {Key: "food.freeze", Text: freeze}, {Key: "food.drinks_a_day", Text: drinks},
	} {
		if a.Text == "" {
			continue
		}
		if err := t.keep(a.Key, a.Text); err != nil {
			return err
		}
	}
	if has(5) || has(6) {
		t.Prompter.Say("Only a unit can freeze. Where ice is the answer, that wish is left aside.")
	}
	return nil
}

func yesNo(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// aboard asks for what can hurt, as one list to tick. What is not ticked is not
// there; what is ticked is asked on where that matters.
func (t *conversation) aboard() error {
	items := []struct {
		Choice
		key string // that yes answers; "" where asking on does
		on  string // the row to ask on
	}{
		{Choice{Label: "a lithium battery", Also: []string{"lithium"}}, "safety.lithium", ""},
		{Choice{Label: "petrol or cooking gas", Also: []string{"petrol", "gasoline", "gas", "propane", "lpg"}}, "", "safety.fuel_vapour_space"},
		{Choice{Label: "children, guests' children too", Also: []string{"children", "kids", "child"}}, "safety.children", "safety.latch_opens_inside"},
		{Choice{Label: "fish you catch", Also: []string{"fish", "catch"}}, "safety.fish", ""},
		{Choice{Label: "dry ice"}, "safety.dry_ice", ""},
		{Choice{Label: "shore power", Also: []string{"shore"}}, "", "safety.wiring_known"},
		{Choice{Label: "a new hole in the hull", Also: []string{"hole", "seacock"}}, "", "units_considered.small.cooled_by"},
		{Choice{Label: "a fridge left running with nobody aboard", Also: []string{"left running", "unattended"}}, "safety.left_unattended", ""},
		{Choice{Label: "an infant, or anyone pregnant, over 65 or often ill", Also: []string{"infant", "baby", "pregnant", "old"}}, "food.vulnerable", ""},
		{Choice{Label: "a carbon monoxide alarm that works", Also: []string{"alarm", "co alarm", "carbon monoxide alarm"}}, "safety.co_alarm", ""},
	}
	var choices []Choice
	for _, item := range items {
		choices = append(choices, item.Choice)
	}
	boat := t.File.Told()
	standing := answered(&boat, lastRound[0].fills[0])
	q := Question{
		Text:  "Last, for safety: what of this is aboard, or planned? Numbers, or none.",
		Enter: "if you don't know: the warnings stay",
		Help:  "Typical: 1, 4, 10. Count guests and what you mean to buy. What you don't tick is taken not to be there.",
	}
	if standing {
		q.Enter = "keeps what you said"
	}
	ticked, told, err := t.tick(q, choices)
	if err != nil || !told && standing {
		return err
	}
	// Asked on first: broken off in between, the list comes again.
	for _, i := range ticked {
		if items[i].on == "" {
			continue
		}
		err := t.ask(visit{key: items[i].on})
		if errors.Is(err, ErrBack) {
			return t.aboard()
		}
		if err != nil {
			return err
		}
	}
	for i, item := range slices.Backward(items) { // the battery, which tells that the list was answered, last
		is := slices.Contains(ticked, i)
		switch key := item.key; {
		case !told && key != "":
			err = t.keep(key, "unknown")
		case told && key != "":
			err = t.keep(key, yesNo(is))
		case told && item.on == "safety.fuel_vapour_space" && !is:
			err = t.keep(item.on, "no")
		}
		if err != nil {
			return err
		}
	}
	return nil
}
