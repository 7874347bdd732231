package report

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"coldreckon/economics"
	"coldreckon/economics/quantity"
	"coldreckon/report/layout"
	"coldreckon/report/words"
)

// What an honest report must do, after the standards for decision aids and
// for printing uncertain figures, as far as a machine can check it. Sources:
// IPDAS (patient decision aids, BMJ 2006, and the 2013 update of its chapter
// on probabilities, Trevena et al.); IPCC guidance on uncertainties; GRADE
// wording; HM Treasury Green Book 5.59-5.71; 10 CFR 436; US Federal Plain
// Language Guidelines.
func TestHonestReport(t *testing.T) {
	for _, boat := range []func() economics.Boat{weekender, islander, liveaboard} {
		in := inputOf(t, boat())
		in.Full = true
		file, err := printedPDF(in)
		if err != nil {
			t.Fatal(err)
		}
		pages := textOf(t, file)
		r := reading{in: in, v: words.Of(in.Reckoning, in.Pack.Book), front: pages[0], all: strings.Join(pages, " ")}
		doc, err := Document(in)
		if err != nil {
			t.Fatal(err)
		}
		r.text = strings.Join(strings.Fields(doc.Text()), " ")
		for _, c := range checks {
			t.Run(in.Reckoning.Boat.Name+"/"+c.must, func(t *testing.T) { c.check(t, r) })
		}
	}
}

type reading struct {
	in               Input
	v                words.Voice
	front, all, text string
}

// holds fails unless a text holds every one of some parts.
func holds(t *testing.T, text string, parts ...string) {
	t.Helper()
	for _, p := range parts {
		if !strings.Contains(text, p) {
			t.Errorf("%q is missing", p)
		}
	}
}

var checks = []struct {
	must   string
	source string
	check  func(*testing.T, reading)
}{
	{"name every option on page one", "IPDAS", func(t *testing.T, r reading) {
		holds(t, r.front, "Ice alone", "Dry stores", "Small unit", "Larger unit")
	}},
	{"give every option the same rows", "IPDAS", func(t *testing.T, r reading) {
		rows := r.v.Rows()
		if len(rows) < 9 {
			t.Errorf("only %d rows", len(rows))
		}
		for _, row := range rows {
			for i, cell := range row.Cells {
				if cell == "" {
					t.Errorf("%s has nothing for %s", row.Label, economics.Options[i])
				}
			}
		}
	}},
	{"answer within the first ninety words", "Plain Language Guidelines", func(t *testing.T, r reading) {
		first := strings.Fields(r.text)
		holds(t, strings.Join(first[:min(90, len(first))], " "), r.v.Answer())
	}},
	{"put a range beside money", "HM Treasury Green Book 5.59", func(t *testing.T, r reading) {
		for _, row := range r.v.Rows() {
			if row.Label != "First cost" && row.Label != "Then each year" && !strings.HasPrefix(row.Label, "Over ") {
				continue
			}
			for _, cell := range row.Cells {
				if !strings.Contains(cell, "–") && !strings.HasSuffix(cell, "0") {
					t.Errorf("%s: %s stands without a range", row.Label, cell)
				}
			}
		}
	}},
	{"say what ranges hold", "IPCC", func(t *testing.T, r reading) { holds(t, r.front, "80 of 100 futures") }},
	{"round money to two digits on page one", "HM Treasury Green Book (spurious accuracy)", func(t *testing.T, r reading) {
		money := regexp.MustCompile(`[$€] ?([0-9][0-9,.]*)`)
		found := money.FindAllStringSubmatch(r.front, -1)
		if len(found) < 8 {
			t.Errorf("only %d amounts of money found", len(found))
		}
		for _, m := range found {
			digits := strings.Trim(strings.NewReplacer(",", "", ".", "").Replace(m[1]), "0")
			if said := regexp.MustCompile(`\.[27]5[.,]?$`).MatchString(m[1]); len(digits) > 2 && !said { // as people say sums of a dollar or two
				t.Errorf("%s has more than two significant digits", m[0])
			}
		}
	}},
	{"count in hundreds that add up", "IPDAS", func(t *testing.T, r reading) {
		sum := 0
		for i := range r.in.Reckoning.Options {
			sum += r.in.Reckoning.Options[i].BestOf100
		}
		if len(r.in.Reckoning.Futures.Weighed) > 0 && sum != 100 {
			t.Errorf("best of 100 adds up to %d", sum)
		}
	}},
	{"keep to one denominator", "IPDAS; Trevena et al.", func(t *testing.T, r reading) {
		for _, m := range regexp.MustCompile(`([0-9]+) of ([0-9]+)( equally likely)? (futures|days|cases|times)`).FindAllStringSubmatch(r.all, -1) {
			if m[2] != "100" {
				t.Errorf("%q does not count in hundreds", m[0])
			}
		}
		if m := regexp.MustCompile(`\b1 in [0-9]+\b`).FindString(r.all); m != "" {
			t.Errorf("%q counts backwards", m)
		}
	}},
	{"count the futures at the worths that the answer turns on", "IPDAS", func(t *testing.T, r reading) {
		if a := must(r.in.author()); a.counted() {
			for _, c := range a.worths() {
				holds(t, r.front, fmt.Sprintf("%d of 100", c.Of100))
			}
		} else if text := r.v.Counts(); text != "" {
			holds(t, r.front, text)
		}
		if n := strings.Count(r.all, words.ScaleText()); n != 1 {
			t.Errorf("the scale is printed %d times; want once", n)
		}
	}},
	{"keep chance and evidence apart", "GRADE; IPCC", func(t *testing.T, r reading) {
		holds(t, r.front, "The evidence is "+string(r.in.Reckoning.Boat.EvidenceGrade()))
		holds(t, r.all, "Of the figures about boat and use, ", "the evidence is "+string(r.in.Reckoning.Boat.EvidenceGrade()))
	}},
	{"say how each figure is known", "GRADE", func(t *testing.T, r reading) {
		holds(t, r.all, "The boat as told", "had to be assumed", "told")
	}},
	{"sort what matters most", "HM Treasury Green Book", func(t *testing.T, r reading) {
		last := math.Inf(1)
		for _, in := range r.v.BySwing() {
			if wide := math.Abs(in.SwingHigh - in.SwingLow); wide > last {
				t.Errorf("%s is wider than what stands before it", in.Name)
			} else {
				last = wide
			}
		}
		holds(t, r.all, "What moves the choice")
	}},
	{"give switching values with their chance", "HM Treasury Green Book 5.70", func(t *testing.T, r reading) {
		known := 0
		for _, in := range r.in.Reckoning.Futures.Inputs {
			answer, preferred := r.in.Reckoning.Answer.Way(), r.in.Reckoning.Futures.Preferred
			away := in.SwitchTo != answer && preferred == answer && in.ChanceBeyond >= 0.05
			otherSide := in.SwitchTo == answer && preferred != answer && in.ChanceBeyond >= 0.5 && in.ChanceBeyond <= 0.95
			if in.SwitchKnown && (away || otherSide) {
				known++
			}
		}
		beyond := 0
		for _, f := range r.v.Flips() {
			if f.Beyond >= 0 {
				beyond++
				holds(t, f.Text, fmt.Sprintf("%d of 100 futures lie there", f.Beyond))
			}
		}
		if beyond != known {
			t.Errorf("%d switching values are worded of %d known", beyond, known)
		}
		if known > 0 {
			holds(t, r.front, "What would change this", r.v.Flips()[beyondFirst(r.v.Flips())].Text)
		}
	}},
	{"say what finding out is worth", "ISPOR-SMDM", func(t *testing.T, r reading) { holds(t, r.all, "What to find out first", r.v.EVPI()) }},
	{"keep first, yearly and lifetime cost apart", "10 CFR 436", func(t *testing.T, r reading) {
		holds(t, r.front, "First cost", "Then each year", "Over "+quantity.FormatYears(r.in.Reckoning.Boat.Money.Years))
		holds(t, r.all, "Prices of today", quantity.FormatShare(r.in.Reckoning.Boat.Money.Discount)+" less for each year")
	}},
	{"name what is left out", "NIST Handbook 135", func(t *testing.T, r reading) {
		holds(t, r.all, "Not counted", "noise", "safety", "climate")
	}},
	{"leave the values to the owner", "IPDAS", func(t *testing.T, r reading) {
		if r.in.Reckoning.Answer.Case == economics.WorthTold {
			holds(t, r.front, "you said")
		}
		holds(t, r.all, "what matters to you is not for this report to say")
	}},
	{"call itself an aid and say what it takes for granted", "ISPOR-SMDM", func(t *testing.T, r reading) {
		holds(t, r.all, "An aid to planning, not a survey.", "What this cannot know", "six flat walls")
	}},
	{"say who, when, from what and until when", "IPDAS", func(t *testing.T, r reading) {
		holds(t, r.all, "coldreckon 0.0.0-test", "1 April 2026", "by 1 April 2027", r.in.Pack.Book.Identity, "seed 1", fmt.Sprintf("%d futures", r.in.Reckoning.Settings.Futures), "Sources", "Nobody paid for this report")
	}},
	{"use short sentences", "Plain Language Guidelines", func(t *testing.T, r reading) {
		texts := append([]string{r.v.Answer(), r.v.Counts(), r.v.Grade(), r.v.EvidenceText(), r.v.LeakText(), r.v.EVPI(), r.in.Pack.Guidance}, r.v.Reasons()...)
		texts = append(texts, r.v.Also()...)
		for _, f := range r.v.Flips() {
			texts = append(texts, f.Text)
		}
		sentences := regexp.MustCompile(`[.:;] |\.$`).Split(strings.Join(texts, " "), -1)
		n := 0
		for _, s := range sentences {
			n += len(strings.Fields(s))
		}
		if mean := float64(n) / float64(len(sentences)); mean >= 20 {
			t.Errorf("a sentence has %.1f words on average; want under 20", mean)
		}
	}},
	{"give a table for every chart", "common practice, no source", func(t *testing.T, r reading) {
		a, err := r.in.author()
		if err != nil {
			t.Fatal(err)
		}
		charts := 0
		var walk func([]layout.Block)
		walk = func(blocks []layout.Block) {
			for _, b := range blocks {
				switch b := b.(type) {
				case layout.Picture:
					charts++
					if len(b.Table.Rows) == 0 {
						t.Errorf("the chart %q has no table", b.Finding)
					}
				case layout.Side:
					if _, table := b.Columns[1][0].(layout.Table); table && len(b.Columns[1]) == 1 {
						charts++ // its figures stand beside it
						continue
					}
					for _, c := range b.Columns {
						walk(c)
					}
				case layout.Kept:
					walk(b)
				case layout.Close:
					walk(b)
				case layout.Note:
					walk(b)
				}
			}
		}
		for _, part := range a.document().Parts {
			walk(part)
		}
		if charts < 5 {
			t.Errorf("only %d charts", charts)
		}
	}},
}

// beyondFirst is the first flip that is a chance.
func beyondFirst(flips []words.Flip) int {
	return slices.IndexFunc(flips, func(f words.Flip) bool { return f.Beyond >= 0 })
}

// The three renderings say the same: every sentence of the words stands in
// each of them.
func TestOneContentThreeWays(t *testing.T) {
	in := inputOf(t, weekender())
	in.Full = true
	v := words.Of(in.Reckoning, in.Pack.Book)
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	file, err := printedPDF(in)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := Document(in)
	if err != nil {
		t.Fatal(err)
	}
	text, markdown := doc.Text(), doc.Markdown()
	for _, line := range strings.Split(text, "\n") {
		if n := utf8.RuneCountInString(line); n > 80 {
			t.Errorf("%d columns: %q", n, line)
		}
	}
	all := map[string]string{"print": flat(strings.Join(textOf(t, file), " ")), "text": flat(text), "Markdown": flat(strings.ReplaceAll(markdown, "\\", ""))}
	sentences := append([]string{v.Answer(), v.EVPI(), v.EvidenceText(), v.LeakText()}, v.Reasons()...)
	for name, got := range all {
		for _, s := range sentences {
			if !strings.Contains(got, s) {
				t.Errorf("%s lacks %q", name, s)
			}
		}
		for _, f := range must(Findings(in.Reckoning, in.Pack)) {
			if !strings.Contains(got, strings.TrimSpace(flat(f.Text))) {
				t.Errorf("%s lacks the caution %s", name, f.ID)
			}
			if !strings.Contains(got, flat(f.Source)) {
				t.Errorf("%s lacks the source of the caution %s", name, f.ID)
			}
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// The cash flows that are printed, brought back to today, give the present
// cost that is printed (NIST Handbook 135: the sum of C/(1+d)^t).
func TestPrintedCashFlowsGivePrintedPresentCost(t *testing.T) {
	in := inputOf(t, weekender())
	in.Full = true
	doc := must(in.author()).document()
	for _, b := range slices.Concat(doc.Parts...) {
		kept, _ := b.(layout.Kept)
		if len(kept) == 0 {
			continue
		}
		flows, ok := kept[len(kept)-1].(layout.Table)
		if !ok || flows.Columns[0].Head != "Paid in year" {
			continue
		}
		for column := 1; column <= 4; column++ {
			present := 0.0
			for _, row := range flows.Rows[:len(flows.Rows)-1] {
				first, last := yearsOf(t, row[0])
				for year := first; year <= last; year++ {
					present += amount(t, row[column]) / math.Pow(1.03, float64(year))
				}
			}
			if printed := amount(t, flows.Rows[len(flows.Rows)-1][column]); math.Abs(present-printed) > 6 { // eleven roundings to a dollar
				t.Errorf("%s: the flows give %.0f, printed is %.0f", flows.Columns[column].Head, present, printed)
			}
		}
		return
	}
	t.Error("there is no table of cash flows")
}

// yearsOf reads "3" or "1 to 10, each".
func yearsOf(t *testing.T, text string) (first, last int) {
	t.Helper()
	if n, err := fmt.Sscanf(text, "%d to %d", &first, &last); n == 2 && err == nil {
		return first, last
	}
	first, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return first, first
}

func amount(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(strings.NewReplacer("$", "", ",", "").Replace(text), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
