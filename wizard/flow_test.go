package wizard

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/wizard/answers"
	"coldreckon/wizard/questions"
)

// essentials is a script of the questions before the first look.
var essentials = []line{
	{"1/13: Which units", "us"},
	{"Where do you cruise", "chesapeake"},
	{"When do you sleep aboard", "weekends in summer; trips of 2; we shop every 2 days"},
	{"That is 32 nights (Jun 8, Jul 8, Aug 8, Sep 8), in trips of 2 nights, shopping every 2 days. 4/13: How many of you", "2"},
	{"What must be cold", "1 2 4"},
	{"How would you eat without cold", "usual tins"},
	{"How much does the ice box hold", "3.2 cu ft"},
	{"How long does ice last", "20 lb, a day and a half in July"},
	{"What do you pay for ice", "$0.50/lb"},
	{"battery for lights", "100"},
	{"How many watts of solar", "50"},
	{"About what would you spend", "$2,000"},
	{"Over how many years", "10"},
}

const (
	aboardAsked = "Last, for safety"
	goingBy     = "Here is all I go by."
	firstSay    = "First look: small, best in 80 of 100."
)

// ending is a script of the questions after those for the answer's sake.
var ending = []line{{aboardAsked, ""}, {goingBy, ""}}

func lines(parts ...[]line) []line { return slices.Concat(parts...) }

func TestConversations(t *testing.T) {
	noRegret := func(key string, alike func(economics.Boat) bool) func(*economics.Boat, *economics.Reckoning) {
		return func(b *economics.Boat, r *economics.Reckoning) {
			if b.Known[key] == quantity.Told && !alike(*b) {
				r.Of(economics.SmallUnit).ExpectedRegret, r.Of(economics.IceOnly).ExpectedRegret = 800, 0
				r.Futures.Preferred = economics.IceOnly
			}
		}
	}
	for _, tt := range []struct {
		name   string
		script []line
		change func(*economics.Boat, *economics.Reckoning)
		told   map[string]string // what the file must answer in the end
	}{
		{
			name:   "from first to last",
			script: lines(essentials, []line{{firstSay, ""}}, ending[1:]),
			told: map[string]string{"units": "us", "cruising.nights": "weekends in summer", "cruising.trip_nights": "2", "cruising.shop_every_days": "2", "box.volume": "3.2 cu ft",
				"power.battery": "100", "safety.fish": "unknown", "safety.eggs": "", "food.cool_is_enough": "no", "food.must_be_cold_share": "", "money.budget": "$2,000"},
		},
		{
			name: "nobody knows anything",
			script: lines([]line{{"Which units", ""}, {"Where do you cruise", ""}, {"When do you sleep", "don't know"}, {"When away, how many days", ""},
				{"How many of you", "no idea"}, {"What must be cold", "don't know"}, {"How would you eat", ""}, {"ice box hold", "not sure"},
				{"How long does ice last", "don't know"}, {"pay for ice", ""}, {"battery for lights", ""}, {"watts of solar", ""}, {"would you spend", ""}, {"how many years", ""}, {firstSay, ""}}, ending[1:]),
			told: map[string]string{"units": "us", "cruising.ground": "unknown", "cruising.nights": "don't know", "box.volume": "not sure"},
		},
		{
			name: "help at a line, at a choice and at a list to tick",
			script: lines([]line{{"Which units", "?"}, {"us in North America", "metric"}}, essentials[1:4],
				[]line{{"What must be cold", "?"}, {"leftovers need 4 °C (40 °F)", "8"}, {`"8" is none of these.`, "drinks and ice cubes"}, {"Only a unit can freeze.", "staples"}, {"ice box hold", "?"}, {"count buckets of water", "90"},
					{"10 kg, two days", "10 kg lasts 36 hours in june"}, {"pay for ice", "1.20/kg"}},
				essentials[9:], []line{{firstSay, "?"}, {"Count guests", "none"}, {goingBy, "?"}, {"change what you know better", ""}}),
			told: map[string]string{"units": "metric", "box.volume": "90 L", "food.cool_is_enough": "yes", "food.freeze": "cubes", "food.must_be_cold_share": "10 %",
				"food.dry_premium": "staples", "safety.lithium": "no", "safety.fuel_vapour_space": "no", "safety.co_alarm": "no"},
		},
		{
			name: "back to change, and forward again by Enter",
			script: lines([]line{{"Which units", "<"}, {"no question before", "us"}}, essentials[1:7],
				[]line{{"How long does ice last", "<"}, {"ice box hold", "back"}, {"How would you eat without cold: staples, usual cans, or pouch meals? Enter keeps $1.60", ""}, {"ice box hold? Enter keeps 3.2 cu ft", "4 cu ft"}},
				essentials[7:], []line{{aboardAsked, "<"}, {"Over how many years", "<"}, {"About what would you spend, all in? Enter keeps $2,000", "900"}, {"Over how many years shall we reckon? Enter keeps 10 years", ""}, {"First look", ""}, {goingBy, "<"}, {aboardAsked, ""}, {goingBy, ""}}),
			told: map[string]string{"box.volume": "4 cu ft", "money.years": "10", "money.budget": "900"},
		},
		{
			name: "slips are refused and asked again",
			script: lines(essentials[:2], []line{{"When do you sleep", "often"}, {"nights by month", "we shop daily"}, {"in which months", "two weeks' holiday, trips of 30 nights; shop daily"},
				{"That is 14 nights (Jul 14), in trips of 30 nights, shopping every day. A trip of 30 nights does not fit into 14 nights aboard in the year", "7"}},
				essentials[3:3], []line{{"How many of you", "2"}}, essentials[4:6],
				[]line{{"ice box hold", "3.2 bushels"}, {"unknown unit", "2 in"}, {"volume", "18*22 in"}, {"volume", "2*1.6"},
					{"How long does ice last", "a while"}, {"how much ice it was", "20 lb"}, {"how long it lasted", "two bags last two days"}},
				essentials[8:], ending),
			told: map[string]string{"cruising.trip_nights": "7", "box.volume": "3.2 cu ft"},
		},
		{
			name: "a price by the bag asks for its weight, a bare one far off asks what it is",
			script: lines(essentials[:8], []line{{"pay for ice", "5 kg"}, {`"5 kg" is a mass. Give a price`, "lots"}, {`"lots" is no amount`, "$4"}, {"Did you mean $4 a bag?", "$4 a bag"}, {"How heavy is one bag or block?", "8 lb"}},
				essentials[9:], ending),
			told: map[string]string{"currency": "", "ice.price": "$4 a bag", "ice.unit_size": "8 lb"},
		},
		{
			name: "measures answer for the volume, in a unit of their own too",
			script: lines(essentials[:6], []line{{"How much does the ice box hold", "18 x 22 in"}, {"volume", "450 x 550 x 400"}, {"That is 17 3/4 x 21 5/8 x 15 3/4 in, or 3.5 cu ft. Taken as", "<"},
				{"ice box hold", "46 x 56 x 40 cm"}, {"That is 46 x 56 x 40 cm, or 3.6 cu ft.", "20 lb, 1.5 days"}},
				essentials[8:], ending),
			told: map[string]string{"box.inside": "46 x 56 x 40 cm", "box.volume": ""},
		},
		{
			name: "nothing cold is nothing, and a span of a list is all of it",
			script: lines(essentials[:4], []line{{"What must be cold", "4-9"}, {`"4-9" is none of these`, "0-3"}, {`"0-3" is none of these`, "3-1"}, {`"3-1" is none of these`, "1-3"}, {"How would you eat", "<"}, {"What must be cold", "none"}},
				[]line{{"How would you eat", "noodles"}, {"Give staples, usual cans, pouch meals, or a figure of your own", "staples"}}, essentials[6:], ending),
			told: map[string]string{"food.must_be_cold_share": "0", "food.drinks_a_day": "none", "food.freeze": "nothing"},
		},
		{
			name: "ice that no box can have kept is said to be set aside",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				if len(b.Evidence.IceHistory) > 0 {
					r.Box.SetAside = []string{"What is remembered does not count."}
				}
			},
			script: lines(essentials[:7], []line{{"How long does ice last", "4 lb, 90 h"}, {"What is remembered does not count. On an August day", "$0.50/lb"}},
				essentials[9:], ending),
			told: map[string]string{"ice.price": "$0.50/lb"},
		},
		{
			name:   "what had to be guessed is said",
			script: lines(essentials[:6], []line{{"ice box hold", "80 to 100 L"}, {"Taken as 3.1 cu ft.", "20 lb, 1.5 days"}}, essentials[8:], ending),
			told:   map[string]string{"box.volume": "80 to 100 L"},
		},
		{
			name: "a ground of one's own brings its questions",
			script: lines(essentials[:1], []line{{"Where do you cruise", "elsewhere"}, {"latitude", "44 N"}, {"How cold", "january 40, july 60"}, {"How warm", "january 50, july 80"}},
				essentials[2:], ending),
			told: map[string]string{"cruising.ground": "own", "cruising.latitude": "44 N", "cruising.air_min": "Jan 40 °F, Feb 41 °F, Mar 45 °F, Apr 50 °F, May 55 °F, Jun 59 °F, Jul 60 °F, Aug 59 °F, Sep 55 °F, Oct 50 °F, Nov 45 °F, Dec 41 °F"},
		},
		{
			name: "what is worth most comes first, two at most, and more on demand",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				for input, key := range map[string]string{"ice_errand": "ice.trip_cost", "battery": "power.battery_age", "cabin": "box.cabin_offset"} {
					if b.Known[key] != quantity.Told {
						knowing(r, input, map[string]float64{"ice_errand": 143, "battery": 90, "cabin": 60}[input])
					}
				}
			},
			script: lines(essentials, []line{{"worth about $140 a year to know. Answer \"enough\" when you have had enough of these. What does an extra errand", "4"},
				{"worth about $90 a year to know. How old is the house battery", "3"}, {aboardAsked, ""}, {goingBy, "more"}, {"worth about $60", "2 F"}, {"only sharpens", "enough"}, {goingBy, ""}}),
			told: map[string]string{"ice.trip_cost": "4", "power.battery_age": "3", "box.cabin_offset": "2 F"},
		},
		{
			name:   "what is taken for granted is asked when another answer would cost",
			change: noRegret("ice.first_load", func(b economics.Boat) bool { return b.Ice.FirstLoad == economics.Bought }),
			script: lines(essentials, []line{{"worth about $240 a year to know. Answer \"enough\" when you have had enough of these. Where does a trip's first ice come from", "bought"}}, ending),
			told:   map[string]string{"ice.first_load": "bought"},
		},
		{
			name: "the worth of a cold day, as a range",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				r.Answer.Case = economics.ByWorth
			},
			script: lines(essentials, []line{{"cost you about $6, for all of you. What would you pay for it, against a day on food that keeps? Count the dearer food it spares you. Would $4 be right, or $10?", "?"},
				{"a range will do", "$3 to $7"}}, ending),
			told: map[string]string{worthKey: "$3 to $7"},
		},
		{
			name: "the worth of a cold day, not known",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				r.Answer.Case = economics.ByWorth
				r.Of(economics.SmallUnit).PriceOfCold.Typical = 5
			},
			script: lines(essentials, []line{{"Enter if you don't know: the answer stays a rule.", ""}}, ending),
			told:   map[string]string{worthKey: "unknown"},
		},
		{
			name: "an answer that changes the answer says so",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				knowing(r, "battery", 90)
				if b.Known["power.battery_age"] == quantity.Told {
					knowing(r, "battery", 0)
					r.Answer.Ways = []economics.OptionID{economics.IceOnly}
				}
			},
			script: lines(essentials, []line{{"How old is", "9 years"}, {"That changes the answer. Now: ice, best", ""}}, ending[1:]),
		},
		{
			name: "what is ticked is asked on",
			script: lines(essentials, []line{{aboardAsked, "gasoline, children and 10"}, {"gas vapor reach", "no"}, {"pushed open from inside", "<"},
				{aboardAsked, "3, 10"}, {"pushed open from inside", "yes"}, {goingBy, ""}}),
			told: map[string]string{"safety.children": "yes", "safety.latch_opens_inside": "yes", "safety.co_alarm": "yes", "safety.fuel_vapour_space": "no", "safety.dry_ice": "no", "food.vulnerable": "no"},
		},
		{
			name: "something changed from the list",
			script: lines(essentials, []line{{aboardAsked, ""}, {goingBy, "foam in the walls"}, {"How thick is the foam round it? Enter if unsure: 1 1/2 in", "25"}, {"Taken as 1 in.", "foam in the walls"}, {"How thick is the foam round it? Enter keeps 1 in", "2 in"},
				{goingBy, "where"}, {"2. Where meltwater goes", "2"}, {"meltwater go", "<"}, {goingBy, "box.drain"}, {"let air through", "trapped"}, {goingBy, "ok"}}),
			told: map[string]string{"box.foam": "2 in", "box.drain": "trapped"},
		},
		{
			name: "offers taken in, refused and taken out again",
			script: lines(essentials, []line{{aboardAsked, ""}, {goingBy, "offer"}, {"call this offer", "<"}, {goingBy, "offer"}, {"Enter calls it offer 1", ""},
				{"Price without fitting", ""}, {"Without a price", "$3"}, {". Give ", "<"}, {"Enter calls it offer 1", "cousin's"}, {"Price without", "$700"}, {"Is it built in", "chest"},
				{"Volume of a free-standing chest", "don't know"}, {"Cooling at", "45 W"}, {"Current while it runs", "3.5"}, {"shed its heat", "5"}, {"How is it kept", "2"}, {"Refrigerant", ""},
				{"Warranty", "2 years"}, {"Noise", "?"}, {"data sheet", "38 dB"}, {"How old", "ENOUGH"},
				{"Offers so far: 1. Another?", "yes"}, {"call this offer", "COUSIN'S"}, {"name of its own", "yard"}, {"Price", "$1,200"}, {"Is it built in", "6"}, {"none of the answers", "enough"},
				{"Offers so far: 2", "yard"}, {"Offers so far: 1", "<"}, {goingBy, "ok"}}),
			told: map[string]string{"quotations": "[map[control:a compressor whose speed can be set form:a free-standing 12 V chest name:cousin's noise:38 decibels price:$700 rated_cooling:45 W running_amps:3.5 A warranty:2 years]]"},
		},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s, p := newScript(t, tt.script...)
			var kept string
			opts := options(t, p, fresh(t), &kept)
			opts.Reckon = sure(tt.change)
			if err := run(opts); err != nil {
				t.Fatalf("%v after:\n%s", err, s.out.String())
			}
			for key, want := range tt.told {
				if got := answerIn(t, kept, key); got != want {
					t.Errorf("%s: found %q in the file, expected %q", key, got, want)
				}
			}
		})
	}
}

// Killed after any number of answers, the questions go on where they stopped,
// and nothing that was told is lost.
func TestResumeAtEveryQuestion(t *testing.T) {
	change := func(b *economics.Boat, r *economics.Reckoning) {
		r.Answer.Case = economics.ByWorth
		for _, w := range []struct {
			input, key string
			evppi      float64
		}{{"ice_errand", "ice.trip_cost", 143}, {"battery", "power.battery_age", 90}} {
			if _, ok := b.Known[w.key]; !ok || b.Known[w.key] == quantity.Assumed {
				knowing(r, w.input, w.evppi)
			}
		}
	}
	said := append([]line{{goingBy, ""}, {"would you pay", "$3 to $6"}, {"extra errand", "$4"}, {"How old is", "3"}}, firstTimer...)
	var whole string
	o := &owner{answers: slices.Clone(said), often: 1000}
	all := heard{Prompter: NewPlain(o, &o.out, func() int { return 80 })}
	opts := options(t, &all, fresh(t), &whole)
	opts.Reckon = sure(change)
	if err := run(opts); err != nil {
		t.Fatalf("%v after ... %s", err, o.out.String()[max(0, o.out.Len()-2000):])
	}
	asked := len(o.typed)
	if n := opts.File.Reads(); n > 2*len(opts.File.Told().Known) {
		t.Errorf("answers were read %d times for %d answers, expected each once or twice", n, len(opts.File.Told().Known))
	}
	if asked < 16 {
		t.Fatalf("only %d questions", asked)
	}
	for stop := range asked {
		var kept string
		first := &owner{answers: slices.Clone(said), often: stop}
		opts := options(t, NewPlain(first, &first.out, func() int { return 80 }), fresh(t), &kept)
		opts.Reckon = sure(change)
		if err := run(opts); !errors.Is(err, ErrInputEnded) {
			t.Fatalf("stopped after %d answers: %v, expected ErrInputEnded", stop, err)
		}
		again := &owner{answers: slices.Clone(said), often: 1000}
		rest := heard{Prompter: NewPlain(again, &again.out, func() int { return 80 })}
		opts = options(t, &rest, read(t, kept), &kept)
		opts.Reckon = sure(change)
		if err := run(opts); err != nil {
			t.Fatal(err)
		}
		if want := resumed(all.questions, stop); !slices.Equal(rest.questions, want) {
			t.Errorf("stopped after %d answers: asked\n%s\nexpected\n%s", stop, strings.Join(rest.questions, "\n"), strings.Join(want, "\n"))
		}
		for line := range strings.SplitSeq(whole, "\n") {
			if !strings.Contains(kept, line) {
				t.Errorf("stopped after %d answers: lost %q of\n%s", stop, line, kept)
			}
		}
	}
}

// resumed gives the questions that should be put after so many answers: those
// that were left. A conversation puts two at most for their worth, so that who
// comes back after one of them meets the third; the list of what is aboard and
// what it leads to are one step, begun anew; and where only the list of answers
// was left to confirm, it is asked first whether it is wanted.
func resumed(all []string, stop int) []string {
	at := func(words string) int {
		return slices.IndexFunc(all, func(q string) bool { return strings.Contains(q, words) })
	}
	first, list := at("would you pay"), at(aboardAsked)
	switch {
	case stop == len(all)-1:
		return []string{"The questions for boat.yaml have been put. Shall the answers stay as they are?"}
	case stop <= first:
		return all[stop:]
	}
	return slices.Concat(all[min(stop, list):list], []string{"How old is the house battery?"}, all[list:])
}

// heard notes the questions that a prompter asks.
type heard struct {
	Prompter
	questions []string
}

func (h *heard) Line(ctx context.Context, q Question) (string, error) {
	h.questions = append(h.questions, q.Text)
	return h.Prompter.Line(ctx, q)
}

func (h *heard) Choose(ctx context.Context, q Question, choices []Choice, enter int) (int, error) {
	h.questions = append(h.questions, q.Text)
	return h.Prompter.Choose(ctx, q, choices, enter)
}

func TestCompleteFile(t *testing.T) {
	var kept string
	whole := func() string {
		o := &owner{answers: slices.Clone(firstTimer), often: 1000}
		if err := run(options(t, NewPlain(o, &o.out, func() int { return 80 }), fresh(t), &kept)); err != nil {
			t.Fatal(err)
		}
		return kept
	}()
	commented := "# ours since spring\n" + whole
	for _, tt := range []struct {
		name    string
		script  []line
		changed bool
	}{
		{"left as it is", []line{{"The questions for boat.yaml have been put. Shall the answers stay as they are?", ""}}, false},
		{"looked through", []line{{"Shall the answers stay", "<"}, {"no question before", "no"}, {goingBy, ""}}, false},
		{"changed", []line{{"Shall the answers stay", "no"}, {goingBy, "people aboard"}, {"How many of you", "3"}, {goingBy, ""}}, true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, p := newScript(t, tt.script...)
			kept = ""
			if err := run(options(t, p, read(t, commented), &kept)); err != nil {
				t.Fatal(err)
			}
			want := ""
			if tt.changed {
				want = strings.Replace(commented, "crew: 2", "crew: 3", 1)
			}
			if kept != want {
				t.Errorf("saved %q, expected %q", kept, want)
			}
		})
	}
}

// Asked for all, every row is asked that has sense, in the order of the table;
// the sides of the box only where they differ.
func TestAll(t *testing.T) {
	for _, differ := range []bool{false, true} {
		o := &owner{often: 1000}
		if differ {
			o.answers = []line{{"Do the sides of the box differ", "yes"}}
		}
		var kept string
		opts := options(t, NewPlain(o, &o.out, func() int { return 80 }), fresh(t), &kept)
		opts.All = true
		if err := run(opts); err != nil {
			t.Fatal(err)
		}
		said, place := unwrapped(o.out.String()), 0
		boat := read(t, kept).Told()
		for _, row := range questions.All() {
			if !row.Asked(boat) || row.Key == worthKey {
				continue
			}
			i := strings.Index(said[place:], unwrapped(quantity.Local(row.Ask, boat.Units)))
			if expected := differ || row.Group != questions.OfFaces; (i >= 0) != expected {
				t.Fatalf("%s was asked in its place: %v, expected %v", row.Key, i >= 0, expected)
			}
			place += max(0, i)
		}
	}
}

func TestSaveFails(t *testing.T) {
	full := errors.New("no room on the disk")
	_, p := newScript(t, line{"Which units", "us"})
	opts := options(t, p, fresh(t), new(string))
	opts.Save = func(*answers.File) error { return full }
	if err := run(opts); !errors.Is(err, full) {
		t.Errorf("found %v, expected the error of saving", err)
	}
}

func TestReckonFails(t *testing.T) {
	broken := errors.New("no sun")
	_, p := newScript(t, essentials[:8]...)
	opts := options(t, p, fresh(t), new(string))
	opts.Reckon = func(economics.Boat, int) (*economics.Reckoning, error) { return nil, broken }
	if err := run(opts); !errors.Is(err, broken) {
		t.Errorf("found %v, expected the error of reckoning", err)
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	var kept string
	opts := options(t, nil, fresh(t), &kept)
	in := make(blocked)
	defer close(in)
	opts.Prompter = NewPlain(in, cancelOn{"Where do you cruise", cancel}, func() int { return 80 })
	go func() { in <- []byte("us\n") }()
	if err := Run(ctx, opts); !errors.Is(err, ErrCancelled) {
		t.Errorf("found %v, expected ErrCancelled", err)
	}
	if !strings.Contains(kept, "units: us") {
		t.Errorf("what was answered is not kept: %q", kept)
	}
}

// blocked is an input that waits for more.
type blocked chan []byte

func (b blocked) Read(p []byte) (int, error) {
	// One byte at a time is asked for.
	text, ok := <-b
	if !ok {
		return 0, errors.New("closed")
	}
	p[0] = text[0]
	if len(text) > 1 {
		go func() { b <- text[1:] }()
	}
	return 1, nil
}

// cancelOn cancels when something is said.
type cancelOn struct {
	words  string
	cancel func()
}

func (c cancelOn) Write(p []byte) (int, error) {
	if strings.Contains(string(p), c.words) {
		c.cancel()
	}
	return len(p), nil
}
