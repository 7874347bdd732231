package figures

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"coldreckon/economics"
)

var update = flag.Bool("update", false, "write the golden files anew")

// keys lists every path of a JSON value, elements of a list as [].
func keys(v any, at string, into map[string]bool) {
	switch v := v.(type) {
	case map[string]any:
		for k, inner := range v {
			if at == ".inputs.known" {
				k = "KEY" // of the answers file: whatever was answered
			}
			into[at+"."+k] = true
			keys(inner, at+"."+k, into)
		}
	case []any:
		for _, inner := range v {
			keys(inner, at+"[]", into)
		}
	}
}

// The key set is a promise to scripts: it changes with this list only. Two boats
// have among them all that can stand beside the ways.
func TestKeysAreFrozen(t *testing.T) {
	drinks, food := outfitted(economics.CoolerForDrinks), outfitted(economics.CoolerForIce)
	food.Quotations = nil // an offer stands in for the unit and its plate
	found := map[string]bool{}
	for _, b := range []economics.Boat{drinks, food} {
		text, _ := textOf(t, b)
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatal(err)
		}
		keys(v, "", found)
	}
	var list []string
	for k := range found {
		list = append(list, k)
	}
	slices.Sort(list)
	got := fmt.Sprintf("schema %d\n%s\n", Schema, strings.Join(list, "\n"))
	const golden = "testdata/keys.txt"
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the keys differ from %s:\n%s", golden, difference(string(want), got))
	}
}

// difference lists the lines that only one of two texts has.
func difference(want, got string) string {
	var b strings.Builder
	wants, gots := strings.Split(want, "\n"), strings.Split(got, "\n")
	for _, l := range wants {
		if !slices.Contains(gots, l) {
			b.WriteString("- " + l + "\n")
		}
	}
	for _, l := range gots {
		if !slices.Contains(wants, l) {
			b.WriteString("+ " + l + "\n")
		}
	}
	return b.String()
}

// printed is what the tests read back of the figures.
type printed struct {
	Answer  struct{ Case, Headline string }
	Options []struct {
		ID     string
		Best   int       `json:"best_of_100"`
		AsTold costsRead `json:"as_told"`
		Fitted costsRead
	}
	Money struct {
		Discount float64
		Years    int
	}
	Box struct {
		Parts []struct {
			Source string
			UA     *float64 `json:"ua_w_per_k"`
			HeatW  float64  `json:"heat_w"`
		} `json:"heat_by_source"`
		PartsOf   int      `json:"heat_by_source_month"`
		HeatGainW *float64 `json:"heat_gain_w"`
	}
	Months []struct {
		Month  int
		CabinC float64 `json:"cabin_c"`
	}
	Inputs struct {
		Food struct {
			TargetC float64 `json:"target_c"`
		}
	}
}

// costsRead is the money of one case.
type costsRead struct {
	First   float64   `json:"first_cost"`
	Present float64   `json:"present_cost"`
	Yearly  float64   `json:"yearly_equivalent"`
	Flows   []float64 `json:"cash_flows"`
	Lines   []struct {
		First float64
	} `json:"cost_lines"`
}

// read reads printed figures back.
func read(t *testing.T, text []byte) (s printed) {
	t.Helper()
	if err := json.Unmarshal(text, &s); err != nil {
		t.Fatal(err)
	}
	return s
}

// What promises of the sheet hold for boats at the edges of what can be told.
func TestPromises(t *testing.T) {
	boats := map[string]func(*economics.Boat){
		"as she is":   func(*economics.Boat) {},
		"no nights":   func(b *economics.Boat) { b.Cruising.Nights = [12]float64{}; b.Cruising.TripNights = 1 },
		"no discount": func(b *economics.Boat) { b.Money.Discount = 0; b.Money.Years = 1 },
		"worth told": func(b *economics.Boat) {
			b.Money.ColdDayWorth = 6
			b.Known["money.cold_day_worth"] = "told"
		},
		"dear": func(b *economics.Boat) { b.Small.Price, b.Larger.Price = 12_345_678, 98_765_432 },
	}
	for name, change := range boats {
		t.Run(name, func(t *testing.T) {
			b := dunlin()
			change(&b)
			text, in := textOf(t, b)
			if bytes.Contains(text, []byte("NaN")) || bytes.Contains(text, []byte("Inf")) {
				t.Error("the sheet holds NaN or Inf")
			}
			if !bytes.Equal(text, inJSON(t, in)) {
				t.Error("two printings differ")
			}
			s, best := read(t, text), 0
			for _, o := range s.Options {
				best += o.Best
				for _, c := range []costsRead{o.AsTold, o.Fitted} {
					checkMoney(t, o.ID, c, s.Money.Discount, s.Money.Years)
				}
			}
			if len(in.Reckoning.Futures.Weighed) > 0 && best != 100 {
				t.Errorf("best of 100 over the ways weighed adds up to %d", best)
			}
			if s.Answer.Case == "" || s.Answer.Headline == "" {
				t.Errorf("no answer: %+v", s.Answer)
			}
			var heat float64
			for _, p := range s.Box.Parts {
				heat += p.HeatW
			}
			if s.Box.PartsOf > 0 && math.Abs(heat-*s.Box.HeatGainW) > 1e-9*heat {
				t.Errorf("heat by source adds up to %v W, the month gains %v W", heat, *s.Box.HeatGainW)
			}
		})
	}
}

// checkMoney brings the cash flows back to today by hand: the sum of C/(1+d)^t
// is the present cost (NIST Handbook 135, life-cycle cost), and d·P/(1-(1+d)^-N)
// its yearly equivalent (capital recovery factor).
func checkMoney(t *testing.T, option string, c costsRead, d float64, years int) {
	t.Helper()
	if len(c.Flows) != years+1 {
		t.Fatalf("%s: %d cash flows for %d years", option, len(c.Flows), years)
	}
	present, first := 0.0, 0.0
	for year, x := range c.Flows {
		present += x / math.Pow(1+d, float64(year))
	}
	for _, l := range c.Lines {
		first += l.First
	}
	recovery := 1 / float64(years)
	if d > 0 {
		recovery = d / (1 - math.Pow(1+d, -float64(years)))
	}
	same := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
			t.Errorf("%s: %s is %v; by hand %v", option, what, got, want)
		}
	}
	same("present cost", c.Present, present)
	same("yearly equivalent", c.Yearly, present*recovery)
	same("first cost", c.First, first)
	same("year 0", c.Flows[0], first)
}

// Edges and corners take what the other sources leave; a box without sea or
// deck beside it shows whether that is their own share.
func TestEdgesAndCornersGetTheirOwnShare(t *testing.T) {
	b := dunlin()
	for side, f := range b.Box.Faces {
		f.Neighbour = "cabin"
		b.Box.Faces[side] = f
	}
	text, _ := textOf(t, b)
	s := read(t, text)
	for _, p := range s.Box.Parts {
		if p.Source != "edges and corners" {
			continue
		}
		month := s.Months[0]
		for _, m := range s.Months {
			if m.Month == s.Box.PartsOf {
				month = m
			}
		}
		want := *p.UA * (month.CabinC - s.Inputs.Food.TargetC)
		if math.Abs(p.HeatW-want) > 1e-6 {
			t.Errorf("edges and corners let in %v W, want %v W", p.HeatW, want)
		}
		return
	}
	t.Error("no edges and corners among the sources")
}

func TestNumberWithoutValueIsNull(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if text, err := json.Marshal(Object{{"x", x}, {"list", []float64{x}}}); err != nil || string(text) != `{"x":null,"list":[null]}` {
			t.Errorf("%v prints as %s, %v", x, text, err)
		}
	}
}

// The terminal's lines fit 80 columns, whatever the name and the prices.
func TestPlainFitsATerminal(t *testing.T) {
	b := dunlin()
	b.Name = "The Most Honourable Company of Merchant Adventurers' Packet of the Western Approaches"
	b.Small.Price, b.Larger.Price = 12_345_678, 98_765_432
	_, in := textOf(t, b)
	r := in.Reckoning
	text := Plain(Input{Reckoning: r})
	if len(text) < 1000 {
		t.Fatalf("only %d bytes of figures", len(text))
	}
	for _, line := range strings.Split(text, "\n") {
		if n := utf8.RuneCountInString(line); n > 80 {
			t.Errorf("%d columns: %q", n, line)
		}
	}
	t.Log("\n" + text)
}
