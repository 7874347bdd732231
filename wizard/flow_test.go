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

// essentials is a script of the questions before the first answer.
var essentials = []line{
	{"Which units", "us"},
	{"Where do you cruise", "chesapeake"},
	{"How many nights a year", "weekends in summer"},
	{"That is 32 nights", "2"}, // and the length of a trip
	{"How many of you", "2"},
	{"How much does the ice box hold", "3.2 cu ft"},
	{"How thick is the insulation", "1 1/2 in"},
	{"Is that insulation dry", "damp"},
	{"What do you pay for ice", "$0.50/lb"},
	{"At what share", "0.8"},
	{"How large is the house battery", "100"},
	{"How many watts of solar", "50"},
}

// safety is a script of the questions before the verdict, all answered by Enter.
func safety() []line {
	var lines []line
	for _, row := range questions.All() {
		if row.Safety {
			lines = append(lines, line{row.Ask, ""})
		}
	}
	return lines
}

const (
	moment   = "Nothing left to ask is likely to change this."
	goingBy  = "Here is all I go by."
	firstSay = "First answer: fit a small refrigerating unit. How sure: best in 80 of 100"
)

func lines(parts ...[]line) []line { return slices.Concat(parts...) }

func TestConversations(t *testing.T) {
	noRegret := func(key string, alike func(economics.Boat) bool) func(*economics.Boat, *economics.Reckoning) {
		return func(b *economics.Boat, r *economics.Reckoning) {
			if b.Known[key] == quantity.Told && !alike(*b) {
				r.Of(economics.SmallUnit).ExpectedRegret, r.Of(economics.IceOnly).ExpectedRegret = 800, 0
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
			script: lines(essentials, []line{{firstSay, "no"}}, safety(), []line{{goingBy, ""}}),
			told:   map[string]string{"units": "us", "box.volume": "3.2 cu ft", "power.battery": "100", "safety.fish": "unknown"},
		},
		{
			name: "nobody knows anything",
			script: lines([]line{{"Which units", ""}, {"Where do you cruise", ""}, {"How many nights", "don't know"}, {"leaving home", "unknown"},
				{"How many of you", "no idea"}, {"ice box hold", "not sure"}, {"How thick", "I don't know"}, {"Is that insulation dry", "don't know"}, {"pay for ice", ""},
				{"At what share", ""}, {"house battery", ""}, {"watts of solar", ""}, {firstSay, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"units": "us", "cruising.ground": "unknown", "box.volume": "not sure", "box.state": "unknown"},
		},
		{
			name: "help at a line and at a choice",
			script: lines([]line{{"Which units", "?"}, {"us in North America", "metric"}}, essentials[1:5],
				[]line{{"ice box hold", "?"}, {"count buckets of water", "90"}, {"How thick", "40"}, {"dry", "?"}, {"Drill a small hole", "2"}, {"pay for ice", "1.20/kg"}},
				essentials[9:], []line{{moment, "?"}, {"not the choice", ""}}, safety(), []line{{goingBy, "?"}, {"change what you know better", ""}}),
			told: map[string]string{"units": "metric", "box.volume": "90 L", "box.foam": "40 mm", "box.state": "damp"},
		},
		{
			name: "back to change, and forward again by Enter",
			script: lines([]line{{"Which units", "<"}, {"no question before", "us"}}, essentials[1:7],
				[]line{{"Is that insulation dry", "<"}, {"How thick", "back"}, {"ice box hold? Enter keeps 3.2 cu ft", "4 cu ft"}, {"thick is the insulation round the box? Enter keeps 1 1/2 in", ""}},
				essentials[7:], []line{{moment, "<"}, {"watts of solar panel are fitted? Enter keeps 50 W", "80"}, {"First answer", ""}}, safety(), []line{{goingBy, "<"}, {"left running", ""}, {goingBy, ""}}),
			told: map[string]string{"box.volume": "4 cu ft", "box.foam": "1 1/2 in", "power.solar": "80"},
		},
		{
			name: "slips are refused and asked again",
			script: lines(essentials[:2], []line{{"How many nights", "14"}, {"Say in which months", "two weeks' holiday"}, {"leaving home", "30"},
				{"30 nights, but 14 nights aboard", "7"}}, essentials[4:5], []line{{"ice box hold", "3.2 bushels"}, {"unknown unit", "2 in"}, {"volume", "18*22 in"}, {"volume", "2*1.6"}},
				essentials[6:], []line{{moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"cruising.trip_nights": "7", "box.volume": "3.2 cu ft"},
		},
		{
			name: "what is no price is no currency either",
			script: lines(essentials[:8], []line{{"pay for ice", "5 kg"}, {`That was "5 kg", which is a mass; it should be a price`, "lots"}, {`"lots", which is no amount`, "5 bags"}, {"it should be a price", "$0.50/lb"}},
				essentials[9:], []line{{moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"currency": "", "ice.price": "$0.50/lb"},
		},
		{
			name: "measures answer for the volume",
			script: lines(essentials[:5], []line{{"6/12: How much does the ice box hold", "18 x 22 in"}, {"volume", "450 x 550 x 400"}, {"Did you mean 450 x 550 x 400 mm?", "18 x 22 x 16"},
				{"That is 18 x 22 x 16 in, or 3.7 cu ft. 7/12: How thick", "1 1/2 in"}},
				essentials[7:], []line{{moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"box.inside": "18 x 22 x 16 in", "box.volume": ""},
		},
		{
			name: "measures in a unit of their own",
			script: lines(essentials[:5], []line{{"ice box hold", "46 x 56 x 40 cm"}, {"That is 46 x 56 x 40 cm, or 3.6 cu ft.", "1 1/2 in"}},
				essentials[7:], []line{{moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"box.inside": "46 x 56 x 40 cm", "box.volume": ""},
		},
		{
			name: "an answer at odds with an earlier one brings that back",
			script: lines(essentials[:2], []line{{"How many nights", "july 20"}, {"leaving home", "15"}, {"How many of you", "<"}, {"leaving home", "<"},
				{"How many nights a year do you sleep aboard", "july 10"}, {"15 nights, but 10 nights aboard", "5"}, {"leaving home to coming back? Enter keeps 5", ""}}, essentials[4:], []line{{moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"cruising.nights": "july 10", "cruising.trip_nights": "5"},
		},
		{
			name: "a ground of one's own brings its questions",
			script: lines(essentials[:1], []line{{"Where do you cruise", "elsewhere"}, {"latitude", "44 N"}, {"How cold", "january 40, july 60"}, {"How warm", "january 50, july 80"}},
				essentials[2:], []line{{moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"cruising.ground": "own", "cruising.latitude": "44 N", "cruising.air_min": "Jan 40 °F, Feb 41 °F, Mar 45 °F, Apr 50 °F, May 55 °F, Jun 59 °F, Jul 60 °F, Aug 59 °F, Sep 55 °F, Oct 50 °F, Nov 45 °F, Dec 41 °F"},
		},
		{
			name: "what is worth most comes first, and enough ends it",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				worth(r, "ice_errand", 143)
				worth(r, "battery", 90)
				if b.Known["ice.trip_cost"] == quantity.Told {
					worth(r, "ice_errand", 0)
				}
			},
			script: lines(essentials, []line{{"worth about $140 to know. Answer \"enough\" when you have had enough of these. What does an extra errand", "4"},
				{"worth about $90 to know. How old is the house battery", "enough"}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{"ice.trip_cost": "4", "power.battery_age": ""},
		},
		{
			name: "asking on all the same",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				worth(r, "battery", 12)
			},
			script: lines(essentials, []line{{moment, "yes"}, {"worth about $12 to know", "3"}, {"only sharpens", "enough"}}, safety(), []line{{goingBy, ""}}),
			told:   map[string]string{"power.battery_age": "3"},
		},
		{
			name:   "what is taken for granted is asked when another answer would cost",
			change: noRegret("ice.first_load", func(b economics.Boat) bool { return b.Ice.FirstLoad == economics.Bought }),
			script: lines(essentials, []line{{"worth about $240 to know. Answer \"enough\" when you have had enough of these. Where does a trip's first ice come from", "bought"}, {moment, ""}},
				safety(), []line{{goingBy, ""}}),
			told: map[string]string{"ice.first_load": "bought"},
		},
		{
			name:   "what matters and cannot be asked is named",
			change: func(_ *economics.Boat, r *economics.Reckoning) { worth(r, "unit_efficiency", 640) },
			script: lines(essentials, []line{{"a unit's efficiency, worth about $640", ""}}, safety(), []line{{goingBy, ""}}),
		},
		{
			name: "taste in three amounts, with a change of mind",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				r.Verdict.TurnKnown, r.Verdict.TurnWorth = true, 6.2
			},
			script: lines(essentials, []line{{"$6 a night for cold milk and fresh meat: would you pay it?", "no"}, {"$3 a night", "<"}, {"$6 a night", "yes"},
				{"$10 a night", "?"}, {"many would pay", "no"}, {"$8 a night", "yes"}, {moment, ""}}, safety(), []line{{goingBy, ""}}),
			told: map[string]string{worthKey: "$9"},
		},
		{
			name: "taste with a pause at the second amount",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				r.Verdict.TurnKnown, r.Verdict.TurnWorth = true, 5
			},
			script: lines(essentials, []line{{"$5 a night", "yes"}, {"$10 a night", ""}, {"is worth about $7 to you, from your answers.", ""}}, safety(), []line{{goingBy, ""}}),
			told:   map[string]string{worthKey: "$7"},
		},
		{
			name: "an answer that changes the answer says so",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				worth(r, "battery", 90)
				if b.Known["power.battery_age"] == quantity.Told {
					worth(r, "battery", 0)
					r.Verdict.Option, r.Verdict.Refrigerate = economics.IceOnly, false
				}
			},
			script: lines(essentials, []line{{"How old is", "9 years"}, {"That changes the answer. Now: keep to ice.", ""}}, safety(), []line{{goingBy, ""}}),
		},
		{
			name: "how long ice has lasted, in three steps",
			change: func(b *economics.Boat, r *economics.Reckoning) {
				if b.Known[historyKey] == quantity.Assumed {
					worth(r, "leak", 300)
				}
			},
			script: lines(essentials, []line{{"$300 to know. Answer \"enough\" when you have had enough of these. Do you remember how long a load of ice has lasted? If so, how much ice was it?", "?"},
				{"10 kg (22 lb) for a day and a half", "20"}, {"How long did it last?", "<"}, {"how much ice", "15 furlongs"}, {"unknown unit", "20 lb"}, {"How long did it last?", "1.5 days"},
				{"In which month?", "smarch"}, {"march", "july"}, {"answer", ""}}, safety(), []line{{goingBy, ""}}),
		},
		{
			name: "something changed from the list",
			script: lines(essentials, []line{{moment, ""}}, safety(), []line{{goingBy, "foam in the walls"}, {"thick is the insulation round the box? Enter keeps 1 1/2 in", "2 in"},
				{goingBy, "where"}, {"2. Where meltwater goes", "2"}, {"meltwater go", "<"}, {goingBy, "box.drain"}, {"let air through", "trapped"}, {goingBy, "ok"}}),
			told: map[string]string{"box.foam": "2 in", "box.drain": "trapped"},
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
// and come to the same file as without a stop.
func TestResumeAtEveryQuestion(t *testing.T) {
	change := func(b *economics.Boat, r *economics.Reckoning) {
		r.Verdict.TurnKnown, r.Verdict.TurnWorth = true, 6.2
		for _, w := range []struct {
			input, key string
			evppi      float64
		}{{"ice_errand", "ice.trip_cost", 143}, {"battery", "power.battery_age", 90}, {"leak", historyKey, 300}} {
			if _, ok := b.Known[w.key]; !ok || b.Known[w.key] == quantity.Assumed {
				worth(r, w.input, w.evppi)
			}
		}
	}
	said := append([]line{{goingBy, ""}, {"would you pay", "yes"}, {"how long a load of ice", "20 lb"}, {"How long did it last", "30 h"}, {"In which month", "july"}, {"extra errand", "$4"}, {"How old is", "3"}}, firstTimer...)
	var whole string
	o := &owner{answers: slices.Clone(said), often: 1000}
	opts := options(t, NewPlain(o, &o.out, func() int { return 80 }), fresh(t), &whole)
	opts.Reckon = sure(change)
	if err := run(opts); err != nil {
		t.Fatalf("%v after ... %s", err, o.out.String()[max(0, o.out.Len()-2000):])
	}
	asked := len(o.typed)
	if asked < 30 {
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
		opts = options(t, NewPlain(again, &again.out, func() int { return 80 }), read(t, kept), &kept)
		opts.Reckon = sure(change)
		if err := run(opts); err != nil {
			t.Fatal(err)
		}
		if kept != whole {
			t.Errorf("stopped after %d answers: found\n%s\nexpected\n%s", stop, kept, whole)
		}
		// What was answered is not asked again. The taste questions make one
		// answer, and the offer to stop and the list are none.
		if again := len(again.typed); again > asked-stop+4 {
			t.Errorf("stopped after %d of %d answers: %d more were asked for", stop, asked, again)
		}
	}
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
			i := strings.Index(said[place:], unwrapped(row.Ask))
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
