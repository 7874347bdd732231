package wizard

import (
	"flag"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"coldreckon/economics"
	"coldreckon/report/words"
)

var update = flag.Bool("update", false, "write the golden records anew")

// firstTimer answers as somebody does who has owned a boat for a month.
var firstTimer = []line{
	{"Which units", "us"},
	{"Where do you cruise", "chesapeake"},
	{"When do you sleep aboard", "weekends in summer and two weeks' holiday; we shop every third day"},
	{"How many of you", "2"},
	{"What must be cold", "1, 2, 4"},
	{"How much does the ice box hold", "3.2 cu ft"},
	{"What do you pay for ice", "$5 a bag"},
	{"How heavy is one bag", "10 lb"},
	{"battery for lights", "105"},
	{"How many watts of solar", "50"},
	{"for safety", "3, 10"},
	{goingBy, ""},
}

// The owners whose conversations are kept, to be read aloud.
var owners = []struct {
	name string
	said []line
	long bool // heard in the long run only
}{
	{"first-time-owner", firstTimer, false},
	{"weekender-with-ice", []line{
		{"Which units", "us"}, {"Where do you cruise", "maine"}, {"When do you sleep aboard", "weekends in summer plus July, shop every other day, trips of 2 nights"},
		{"How many of you", "two of us"}, {"What must be cold", "4"}, {"How would you eat", "usual tins"}, {"How much does the ice box hold", "about 3.9 cubic feet"},
		{"How thick is the foam", "2 in"}, {"How long does ice last", "two bags last two days in July"}, {"What do you pay for ice", "$4 a bag"}, {"How heavy is one bag", "10"},
		{"battery for lights", "90"}, {"How many watts of solar", "none"}, {"would you spend", "$600"}, {"would you pay for", "$3 to $6"}, {"for safety", "2, 4, 10"}, {"gas vapor reach", "no"},
	}, true},
	{"live-aboard", []line{
		{"Which units", "us"}, {"Where do you cruise", "windward"}, {"When do you sleep aboard", "live aboard; shop every 5 days; never plugged in"},
		{"How many of you", "2"}, {"What must be cold", "1, 2, 3, 4"}, {"How would you eat", "staples"}, {"How much does the ice box hold", "24 x 22 x 24"},
		{"How thick is the foam", "3 in"}, {"What do you pay for ice", "$0.75/lb"}, {"battery for lights", "2*200"}, {"How many watts of solar", "350"}, {"would you spend", "$6,000"},
		{"would you pay for", "$8"}, {"for safety", "4, 8, 10"},
	}, true},
	{"one-battery-no-sun", []line{
		{"Which units", "us"}, {"Where do you cruise", "chesapeake"}, {"When do you sleep aboard", "30 nights"}, {"how many days between", "3"},
		{"How many of you", "1"}, {"What must be cold", "milk and drinks"}, {"How much does the ice box hold", "2 cu ft"}, {"How thick is the foam", "don't know"},
		{"What do you pay for ice", "don't know"}, {"battery for lights", "75"}, {"How many watts of solar", "none"}, {"would you spend", "$400 to $900"}, {"for safety", "none"},
	}, true},
	{"family-with-dead-unit", []line{
		{"Which units", "metric"}, {"Where do you cruise", "cyclades"}, {"When do you sleep aboard", "all of July and August; trips of 30 nights; shop every 3 days; a quarter of the nights in marinas"},
		{"How many of you", "4"}, {"What must be cold", "1, 2, 3, 4"}, {"How would you eat", "tins"}, {"How much does the ice box hold", "110 l"}, {"How thick is the foam", "50"},
		{"How long does ice last", "8 kg, one day in August"}, {"What do you pay for ice", "€1.60/kg"}, {"battery for lights", "180"}, {"How many watts of solar", "160"}, {"would you spend", "2500"},
		{goingBy + " ", "already fitted"}, {"Is there a refrigerating unit", "dead"}, {"would you pay for", "4"}, {"for safety", "2, 3"}, {"gas vapour reach", "no"}, {"pushed open", "no"},
	}, true},
	{"two-quotations", slices.Concat(firstTimer[:len(firstTimer)-1], []line{
		{"Here is all I go by. ", "offer"}, {"What do you call this offer? ", "yard by the bridge"}, {"Price without fitting? ", "$1,450"}, {"Is it built in, or a chest? ", "built in"},
		{"Fitting as quoted, ", "$380"}, {"Average current,", "0.6 A"}, {"Current while it runs, ", "4.5 A"}, {"How does it shed its heat? ", "locker fan"}, {"What kind of plate has it? ", "thin"},
		{"Width and height of the plate? ", "16 x 10"}, {"How is it kept from running", "enough"}, {"Offers so far: 1.", "yes"},
		{"Price without", "950"}, {"Who fits it?", "enough"},
	}), false},
	{"broker-in-a-hurry", []line{
		{"Where do you cruise", "chesapeake"}, {"When do you sleep aboard", "weekends in summer"}, {"How much does the ice box hold", "100 L"}, {"battery for lights", "100"}, {"would you spend", "2000"},
	}, true},
}

// longRun reports whether what takes minutes is wanted too.
func longRun() bool { return os.Getenv("COLDRECKON_LONG") != "" }

func TestOwners(t *testing.T) {
	for _, who := range owners {
		t.Run(who.name, func(t *testing.T) {
			if who.long && !longRun() {
				t.Skip("another answer to each question is tried in earnest: COLDRECKON_LONG=1")
			}
			o := &owner{answers: who.said, often: 80}
			var kept string
			p := NewPlain(o, &o.out, func() int { return 80 })
			opts := options(t, p, fresh(t), &kept)
			opts.Reckon = func(b economics.Boat, _ int) (*economics.Reckoning, error) { return reckon(b, 20) }
			// The answer as the command and the report say it.
			opts.Headline = func(r *economics.Reckoning) string { return words.Of(r, testBook()).Answer() }
			if err := run(opts); err != nil {
				t.Error(err)
			}
			o.record.WriteString(o.out.String()[o.heard:])
			compare(t, "testdata/"+who.name+".txt", o.record.String())
			compare(t, "testdata/"+who.name+".yaml", kept)
		})
	}
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

// A first look takes at most so many questions and words of the program's, the
// answer included; the last answer so many questions more.
const (
	mostPrompts = 14
	mostWords   = 380
	mostAfter   = 6
)

// What the owners hear is counted in the kept conversations.
func TestOwnersAreNotKeptLong(t *testing.T) {
	for _, who := range owners {
		kept, err := os.ReadFile("testdata/" + who.name + ".txt")
		if err != nil {
			t.Fatal(err)
		}
		said := regexp.MustCompile(`(?m)^(Answer:) .*$`).ReplaceAllString(string(kept), "$1")
		before, after, ok := strings.Cut(said, "First look: ")
		if !ok {
			t.Fatalf("%s: no first look was given", who.name)
		}
		answer, _, _ := strings.Cut(after, "\n\n")
		after, _, _ = strings.Cut(after, goingBy) // what the owner asks for there is their own wish
		words := 0
		for _, word := range strings.Fields(before + "First look: " + answer) {
			if strings.ContainsFunc(word, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) }) {
				words++
			}
		}
		prompts, more := strings.Count(before, "Answer:"), strings.Count(after, "Answer:")+1
		if prompts > mostPrompts || words > mostWords || more > mostAfter {
			t.Errorf("%s: %d questions and %d words to the first answer, then %d questions; expected at most %d, %d and %d",
				who.name, prompts, words, more, mostPrompts, mostWords, mostAfter)
		}
		t.Logf("%s: %d questions, %d words, then %d questions", who.name, prompts, words, more)
	}
}
